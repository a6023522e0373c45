//! How the plan is wired: runs, what belongs at the bank, what must be known, what to buy, and the diagram; on the page and as a sheet.

use sunlarder_engine::fitting::{
    Basis, Bought, Fitting, Lengths, Pole, Refusal, Run, Shape, Unfit, Wire, shortened,
};
use sunlarder_engine::words::fitting::OnFitting as F;
use sunlarder_engine::words::{Label as L, Words, decimal, lines};
use sunlarder_engine::working::{Source, Tag, Working};

use super::About;
use super::sheet;
use super::working;
use crate::paper::Paper;

/// The wiring of a plan by what it states.
fn fitting(about: About<'_>) -> Result<(Fitting, Lengths), Unfit> {
    let About { document, system, outlook, .. } = about;
    let lengths = Lengths::stated(document);
    Fitting::of(document, system, outlook, &Basis::stated(document), &lengths)
        .map(|own| (own, lengths))
}

/// The wiring for the page, below its question.
pub(super) fn write(about: About<'_>) -> String {
    let mut paper = Paper::default();
    body(&mut paper, "h3", true, about);
    paper.finish()
}

/// The wiring as a sheet; the argument is the day, a space and the page's address.
pub(super) fn write_sheet(argument: &str, about: About<'_>) -> Option<String> {
    let (day, page) = argument.split_once(' ')?;
    let mut paper = Paper::default();
    sheet::head(&mut paper, day, about);
    paper.class("div", "fitting-sheet");
    body(&mut paper, "h2", false, about);
    paper.close();
    sheet::foot(&mut paper, page, about);
    Some(paper.finish())
}

/// How a run was worked out; the argument is its place among the runs.
pub(super) fn write_working(argument: &str, about: About<'_>) -> Option<String> {
    let About { words, document, system, .. } = about;
    let (own, lengths) = fitting(about).ok()?;
    let run = own.runs.get(argument.parse::<usize>().ok()?)?;
    let mut trace = Working::new();
    own.work(run.asked.kind, (document, system), &lengths, &mut trace);
    let name_of = |tag: Tag| words.name_in(document, tag);
    Some(working::sheet(&lines(&trace, words, &name_of)))
}

/// All of it; `asks` puts a button beside each run that asks how it was worked out.
fn body(paper: &mut Paper, heading: &str, asks: bool, about: About<'_>) {
    let About { words, document, .. } = about;
    let name_of = |tag: Tag| words.name_in(document, tag);
    paper.said("p", "caution", words.label(L::FittingDeference));
    let own = match fitting(about) {
        Ok((own, _)) => own,
        Err(unfit) => {
            paper.said("p", "caution", &words.unfit(&unfit, &name_of));
            return;
        }
    };
    paper.said(heading, "", words.on_fitting(F::Runs)).class("ul", "runs");
    for (place, run) in own.runs.iter().enumerate() {
        paper.class("li", "run").said("b", "", &words.run_name(run.asked.kind, &name_of));
        match &run.wire {
            Ok(wire) => wired(paper, words, run, wire),
            Err(refusal) => refused(paper, words, refusal),
        }
        if asks {
            paper.class("button", "button quiet").attr("type", "button");
            paper.attr("data-fold", &decimal(place as f64, 0)).attr("aria-expanded", "false");
            paper.text(words.label(L::HowWorkedOut)).close();
        }
        paper.close();
    }
    paper.close();
    at_the_bank(paper, heading, &own, about);
    drawing(paper, heading, &own, about);
    paper.said(heading, "", words.on_fitting(F::ToKnow)).open("ul");
    for note in &own.notes {
        paper.said("li", "", &words.fitting_note(note, &name_of));
    }
    paper.close();
    paper.said(heading, "", words.on_fitting(F::ToBuy)).class("ul", "to-buy");
    for run in own.runs.iter().filter(|own| own.wire.is_err()) {
        let name = words.run_name(run.asked.kind, &name_of);
        paper.said("li", "wrong", &format!("{}: {name}", words.on_fitting(F::Refused)));
    }
    for bought in &own.shopping {
        paper.said("li", "", &format!("{} {}", count(words, bought), words.to_buy(&bought.item)));
    }
    paper.close();
}

/// Pieces, or metres.
fn count(words: Words, own: &Bought) -> String {
    match own.metres() {
        Some(metres) => words.amount(metres),
        None => format!("{}\u{a0}×", words.rounded(own.count)),
    }
}

fn refused(paper: &mut Paper, words: Words, refusal: &Refusal) {
    paper.said("p", "wrong", &words.refusal(refusal));
}

/// The conductor and the fuse of a run, then what they follow from.
fn wired(paper: &mut Paper, words: Words, run: &Run, wire: &Wire) {
    let asked = &run.asked;
    let fuse = match &wire.fuse {
        Some(fuse) => format!(
            "{} {} {}, {}",
            words.on_fitting(F::Fuse),
            words.amount(fuse.rating),
            words.fuse_class(fuse.class),
            words.fuse_place(fuse.place)
        ),
        None => format!("{} {}", words.on_fitting(F::Fuse), words.on_fitting(F::NoFuse)),
    };
    paper.said("p", "run-wire", &format!("{}; {fuse}", words.conductor(wire.gauge)));
    let typical = asked.length_source == Source::Typical;
    let assumed = if typical { words.on_fitting(F::Assumed) } else { "" };
    let length = format!("{} {assumed}", words.amount(asked.length));
    let facts = [
        (F::OneWay, length.trim_end().to_owned()),
        (F::Continuous, words.amount(asked.current.continuous)),
        (F::Moment, words.amount(asked.current.peak)),
        (F::MayCarry, words.amount(wire.ampacity)),
        (F::Drop, words.amount(wire.drop_share)),
        (F::Heat, words.amount(wire.loss)),
    ];
    pairs(paper, &facts.map(|(label, value)| (words.on_fitting(label), value)));
}

/// What things are called and what they are.
pub(super) fn pairs(paper: &mut Paper, facts: &[(&str, String)]) {
    paper.class("dl", "run-facts");
    for (label, value) in facts {
        paper.open("div").said("dt", "", label).said("dd", "", value).close();
    }
    paper.close();
}

fn at_the_bank(paper: &mut Paper, heading: &str, own: &Fitting, about: About<'_>) {
    let About { words, document, .. } = about;
    let name_of = |tag: Tag| words.name_in(document, tag);
    let short = &own.short_circuit;
    let current = format!("{}, {}", words.amount(short.current), words.amount(short.volts));
    let on = |what| words.on_fitting(what);
    let mut facts = vec![(on(F::ShortCircuit), current)];
    if let Some(own) = &own.shunt {
        let drop = words.rounded((own.shunt.drop.0 * 1000.0).round());
        let rated = words.amount(own.shunt.rated);
        let class = words.rounded(own.class.0);
        facts.push((on(F::Shunt), format!("{rated}, {drop}\u{a0}mV ({class}\u{a0}%)")));
    }
    if let Some(rating) = own.bus_bars.rating.filter(|_| own.bus_bars.needed) {
        facts.push((on(F::BusBars), words.amount(rating)));
    }
    let order = own.bus_bars.order.iter().map(|kind| words.run_name(*kind, &name_of));
    let order = order.collect::<Vec<_>>().join("; ");
    paper.said(heading, "", words.on_fitting(F::AtTheBank));
    pairs(paper, &facts);
    paper.said("p", "", &format!("{}: {order}.", words.on_fitting(F::LugOrder)));
}

fn drawing(paper: &mut Paper, heading: &str, own: &Fitting, about: About<'_>) {
    let About { words, document, .. } = about;
    let name_of = |tag: Tag| words.name_in(document, tag);
    let at = |value: f64| decimal(value, 1);
    let title = words.label(L::OneLineDiagram);
    let (width, height) = own.diagram.size();
    paper.said(heading, "", title).class("div", "diagram").attr("tabindex", "0");
    paper.attr("role", "region").attr("aria-label", title);
    paper.draw("svg").attr("viewBox", &format!("0 0 {} {}", at(width), at(height)));
    paper.attr("width", &at(width)).attr("role", "img").attr("aria-label", title);
    for shape in own.diagram.shapes() {
        match shape {
            Shape::Line { ends: [from, to], pole } => {
                let path = format!("M{} {}L{} {}", at(from.0), at(from.1), at(to.0), at(to.1));
                paper.draw("path").attr("d", &path);
                match pole {
                    Some(Pole::Plus) => paper.attr("class", "plus").close(),
                    Some(Pole::Minus) => paper.attr("class", "minus").close(),
                    Some(Pole::Both) | None => paper.close(),
                };
            }
            Shape::Box { at: corner, size } => {
                paper.draw("rect").attr("x", &at(corner.0)).attr("y", &at(corner.1));
                paper.attr("width", &at(size.0)).attr("height", &at(size.1)).close();
            }
            Shape::Label { at: point, part } => {
                let own = words.fitting_label(own, part, &name_of);
                for (line, below) in own.iter().filter(|own| !own.is_empty()).zip([0.0, 12.0]) {
                    paper.draw("text").attr("x", &at(point.0)).attr("y", &at(point.1 + below));
                    paper.text(&shortened(line)).close();
                }
            }
        }
    }
    paper.close().close();
}
