//! The wiring of a plan as a page of text.

use sunlarder_engine::fitting::{Bought, Run};
use sunlarder_engine::words::command_line::Caption;
use sunlarder_engine::words::fitting::OnFitting;
use sunlarder_engine::working::{Source, Tag};

use super::Fitted;
use crate::table::Table;
use crate::words;

/// The whole page.
pub(crate) fn text(fitted: &Fitted) -> String {
    let plan = &fitted.plan;
    let name = if plan.name.is_empty() { words().caption(Caption::Unnamed) } else { &plan.name };
    let parts = [
        format!("{name}\n"),
        runs(fitted),
        refused(fitted),
        at_the_bank(fitted),
        to_know(fitted),
        to_buy(fitted),
    ];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("\n")
}

fn on(what: OnFitting) -> &'static str {
    words().on_fitting(what)
}

fn name(fitted: &Fitted, run: &Run) -> String {
    words().run_name(run.asked.kind, &|tag: Tag| fitted.name_of(tag))
}

fn runs(fitted: &Fitted) -> String {
    use OnFitting as F;
    let mut table = Table::default();
    let columns = [
        F::OneWay,
        F::Continuous,
        F::Moment,
        F::Conductor,
        F::MayCarry,
        F::Drop,
        F::Heat,
        F::Fuse,
        F::FuseAt,
    ];
    table.row(core::iter::once("").chain(columns.map(on)));
    for run in &fitted.fitting.runs {
        let Ok(wire) = &run.wire else { continue };
        let (asked, say) = (&run.asked, words());
        let assumed = if asked.length_source == Source::Typical { on(F::Assumed) } else { "" };
        let length = format!("{} {assumed}", say.amount(asked.length));
        let (fuse, place) = match &wire.fuse {
            Some(fuse) => (
                format!("{} {}", say.amount(fuse.rating), say.fuse_class(fuse.class)),
                say.fuse_place(fuse.place),
            ),
            None => (on(F::NoFuse).to_owned(), ""),
        };
        table.row([
            name(fitted, run),
            length.trim_end().to_owned(),
            say.amount(asked.current.continuous),
            say.amount(asked.current.peak),
            say.conductor(wire.gauge),
            say.amount(wire.ampacity),
            say.amount(wire.drop_share),
            say.amount(wire.loss),
            fuse,
            place.to_owned(),
        ]);
    }
    format!("{}\n{}", on(F::Runs), table.text())
}

fn refused(fitted: &Fitted) -> String {
    let refused = fitted.fitting.runs.iter().filter_map(|run| {
        let refusal = run.wire.as_ref().err()?;
        Some(format!("  {}: {}\n", name(fitted, run), words().refusal(refusal)))
    });
    let lines: String = refused.collect();
    if lines.is_empty() { lines } else { format!("{}\n{lines}", on(OnFitting::Refused)) }
}

fn at_the_bank(fitted: &Fitted) -> String {
    let (fitting, say) = (&fitted.fitting, words());
    let short = &fitting.short_circuit;
    let mut table = Table::default();
    let current = format!("{}, {}", say.amount(short.current), say.amount(short.volts));
    table.row([on(OnFitting::ShortCircuit).to_owned(), current]);
    if let Some(own) = &fitting.shunt {
        let millivolts = say.rounded((own.shunt.drop.0 * 1000.0).round());
        let class = say.rounded(own.class.0);
        let shunt =
            format!("{}, {millivolts}\u{a0}mV ({class}\u{a0}%)", say.amount(own.shunt.rated));
        table.row([on(OnFitting::Shunt).to_owned(), shunt]);
    }
    if let Some(rating) = fitting.bus_bars.rating.filter(|_| fitting.bus_bars.needed) {
        table.row([on(OnFitting::BusBars).to_owned(), say.amount(rating)]);
    }
    let name_of = |tag: Tag| fitted.name_of(tag);
    let order = fitting.bus_bars.order.iter().map(|kind| say.run_name(*kind, &name_of));
    let order = order.collect::<Vec<_>>().join("; ");
    let order = format!("  {}: {order}.\n", on(OnFitting::LugOrder));
    format!("{}\n{}{order}", on(OnFitting::AtTheBank), table.text())
}

fn to_know(fitted: &Fitted) -> String {
    let note = |own| words().fitting_note(own, &|tag: Tag| fitted.name_of(tag));
    let lines: String =
        fitted.fitting.notes.iter().map(|own| format!("  {}\n", note(own))).collect();
    format!("{}\n{lines}", on(OnFitting::ToKnow))
}

fn to_buy(fitted: &Fitted) -> String {
    let mut table = Table::default();
    for own in &fitted.fitting.shopping {
        table.row([words().to_buy(&own.item), count(own)]);
    }
    format!("{}\n{}", on(OnFitting::ToBuy), table.text())
}

/// Pieces, or metres.
fn count(own: &Bought) -> String {
    own.metres().map_or_else(|| words().rounded(own.count), |metres| words().amount(metres))
}
