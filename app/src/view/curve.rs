//! The pictures of the page itself that can be read and saved: the remaining-time curve and the typical day.

use crate::signal::*;
use sunlarder_engine::document::Field;
use sunlarder_engine::outlook::{Question, Verdict};
use sunlarder_engine::words::{Label as L, Term};
use sunlarder_worker::leaf::Topic;

use super::compare;
use super::field::more_while;
use super::help::with_help;
use super::leaf::worked;
use super::pictures::save;
use super::reader::{Cells, reader};
use super::table::table;
use crate::bind::{drawn, edit, fixed, part, said, signal};
use crate::chart::{CurveData, Start, day_strip, remaining_curve};
use crate::dom::node::{Child as _, View, node};
use crate::dom::part::{dynamic, when};
use crate::outlook_data as data;
use crate::store::{Answers, Solved, Store, WORDS};

/// The remaining-time curve; where the plan cannot work, why there is none.
pub(crate) fn now(store: Store) -> View {
    let stuck = said(store, |solved| matches!(solved.opening.verdict, Verdict::CannotWork { .. }));
    let shown = dynamic(move || {
        if stuck.get() {
            return node("p")
                .attr("class", "note")
                .attr("id", "no-curve")
                .child(WORDS.label(L::NoCurve))
                .view();
        }
        untrack(|| curve(store))
    });
    shown.view()
}

/// The remaining-time curve with its legend, its reading and its table.
fn curve(store: Store) -> View {
    let cursor = RwSignal::new(None::<f64>);
    let reading = Callback::new(move |hour: f64| {
        store.drawn.with(|answers| {
            let read = |solved| store.worked.band.with(|band| data::reading(solved, hour, band));
            let read = answers.solved().map(|solved| read(solved)).unwrap_or_default();
            read + &compare::reading(store, hour)
        })
    });
    let readout = memo(Box::new(move || match cursor.get() {
        Some(hour) => reading.run(hour),
        None => WORDS.label(L::ScrubHint).to_owned(),
    }));
    let key = |class: &'static str, label: L| {
        node("li").attr("class", class).child(WORDS.label(label)).view()
    };
    let path = store.worked.path;
    let drawn = drawn(store.drawn, data::curve);
    let curve = memo(Box::new(move || CurveData {
        band: store.worked.band.get(),
        replayed: path.get(),
        ..drawn.get()
    }));
    let curve = compare::with_curve(store, curve);
    let there = memo(Box::new(move || path.with(|path| !path.is_empty())));
    let keys = vec![
        key("key key-typical", L::MeanWeather),
        key("key key-band", L::EightOfTen),
        key("key key-dark", L::WithoutSun),
        when(there, move || key("key key-replayed", L::OwnYear)).view(),
        key("key key-reserve", L::ReserveWord),
        compare::key(store),
    ];
    node("figure")
        .attr("class", "now")
        .attr("aria-label", WORDS.label(L::RemainingTime))
        .child(node("h2").attr("class", "unseen").child(WORDS.label(L::RemainingTime)).view())
        .child(remaining_curve(
            curve,
            cursor,
            reading,
            fixed(WORDS.label(L::ReadTheCurve)),
            start_of(store),
        ))
        .child(node("p").attr("class", "readout").child(signal(readout)).view())
        .child(with_help(
            store,
            L::StateOfCharge,
            Topic::Term(Term::StateOfCharge),
            node("ul").attr("class", "legend").child(keys).view(),
        ))
        .child(more_while("more", L::AsATable, move || {
            let rows = memo(Box::new(move || {
                let (band, path) = (store.worked.band.get(), path.get());
                let rows = |answers: &Answers| {
                    let solved = answers.solved()?;
                    let rows = |baseline: Option<&Solved>| {
                        data::curve_rows(solved, &band, &path, baseline)
                    };
                    Some(compare::with_baseline(store, rows))
                };
                store.drawn.with(rows).unwrap_or_default()
            }));
            let own = move || {
                let mut heads = vec![
                    L::Time,
                    L::MeanWeatherPercent,
                    L::EightOfTenPercent,
                    L::WithoutSunPercent,
                ];
                if there.get() {
                    heads.push(L::OwnYearPercent);
                }
                let heads = compare::heads(store, &heads, L::BaselinePercent);
                table(L::RemainingTime, heads, rows)
            };
            compare::anew(own)
        }))
        .child(save(store, L::RemainingTime))
        .child(worked(store, L::HowWorkedOut, Question::Run))
        .view()
}

/// The charge at the start, which the first point of the curve sets.
fn start_of(store: Store) -> Start {
    Start {
        label: WORDS.field(Field::StartCharge),
        charge: part(store, 0, |plan, _| plan.start.charge_pct),
        set: edit(store, "start charge", 0, |plan, _, charge| plan.start.charge_pct = charge),
    }
}

/// The typical day of the month.
pub(crate) fn day_picture(store: Store) -> View {
    let title = drawn(store.drawn_below, |solved| WORDS.a_day_in(solved.outlook.month));
    let cursor = RwSignal::new(None::<usize>);
    let reading = memo(Box::new(move || {
        let Some(hour) = cursor.get() else { return String::new() };
        store.drawn_below.with(|answers| {
            answers.solved().map(|solved| data::day_reading(solved, hour)).unwrap_or_default()
        })
    }));
    let cells = Signal::stored(Cells { columns: 24, rows: 1, page: 6 });
    node("figure")
        .attr("class", "picture")
        .child(
            node("figcaption")
                .attr("class", "picture-head")
                .child(node("h2").child(title).view())
                .child(node("span").attr("class", "soft").child(WORDS.label(L::DayLegend)).view())
                .view(),
        )
        .child(
            node("div")
                .attr("class", "day-frame")
                .child(day_strip(compare::with_day(store, drawn(store.drawn_below, data::day))))
                .child(reader(cells, cursor, L::ReadTheDay, reading))
                .view(),
        )
        .child(node("p").attr("class", "readout").child(signal(reading)).view())
        .child(more_while("more", L::AsATable, move || {
            table(
                L::DayInWords,
                vec![L::Hour, L::InWatts24, L::OutWatts24],
                drawn(store.drawn_below, data::day_rows),
            )
        }))
        .child(save(store, L::DayInWords))
        .child(worked(store, L::HowBudget, Question::Budget))
        .view()
}
