//! Does the gauge agree? Readings are typed or pasted here; what they say, and what may be behind a symptom, are leaves.

use std::rc::Rc;

use crate::signal::*;
use chrono::{Days, NaiveDate};
use sunlarder_engine::document::{
    ClockTime, Document, Field, List, Logbook, Logged, Problem, date_from,
};
use sunlarder_engine::logbook::Symptom;
use sunlarder_engine::share;
use sunlarder_engine::words::{Label as L, decimal};
use sunlarder_worker::leaf::Leaf;
use sunlarder_worker::sentences::PART;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::Event;

use super::dialogs::{open_variant, variant_name};
use super::field::{Figure, button, button_unless, fields, more, more_while, select};
use super::fitting::fold_working;
use super::leaf::leaf;
use super::place::{hint, today};
use super::question::question;
use super::reading_row::reading_row;
use super::share::file_button;
use super::sizing::spreads;
use crate::bind::{part, said, signal};
use crate::dom::node::{View, group, node, nothing};
use crate::dom::paper::elements;
use crate::dom::part::{Listener, dynamic, typed, when};
use crate::drawers::drawer;
use crate::store::{Store, WORDS, words};

fn own(plan: &Document) -> Logbook {
    plan.logbook.clone().unwrap_or_default()
}

/// How many readings there are.
fn count(plan: &Document, _: usize) -> usize {
    plan.logbook.as_ref().map_or(0, |own| own.readings.len())
}

/// Changes the logbook; an empty one is none.
fn change(plan: &mut Document, set: impl FnOnce(&mut Logbook)) {
    let mut logbook = own(plan);
    set(&mut logbook);
    plan.logbook = Some(logbook).filter(|own| *own != Logbook::default());
}

/// What the gauge was told; blank is as the bank has it.
const TOLD: [Figure; 2] = [
    Figure::new(
        Field::ToldCapacity,
        |plan, _| own(plan).capacity_ah,
        |plan, _, value| change(plan, |own| own.capacity_ah = Some(value)),
    )
    .or_typical(
        |plan, _| change(plan, |own| own.capacity_ah = None),
        |solved, _| Some(solved.system.bank.rated.0),
    ),
    Figure::new(
        Field::ToldEfficiency,
        |plan, _| own(plan).efficiency_pct,
        |plan, _, value| change(plan, |own| own.efficiency_pct = Some(value)),
    )
    .or_typical(
        |plan, _| change(plan, |own| own.efficiency_pct = None),
        |solved, _| Some(solved.system.bank.mean_efficiency * 100.0),
    ),
];

/// The question, with the count of readings. Nothing is asked of the worker before somebody looks.
pub(crate) fn agree_section(store: Store) -> View {
    let answer = part(store, 0, |plan, _| match count(plan, 0) {
        0 => String::new(),
        count => decimal(count as f64, 0),
    });
    let question = question(L::DoesGaugeAgree, answer, false, move || {
        drawer(store, move |drawers| (drawers.logbook)(store))
    });
    node("div").attr("id", "agree").child(question).view()
}

/// What stands in the fold.
pub(crate) fn inside(store: Store) -> View {
    let spreads = spreads(store);
    let pressed: Listener = Box::new(move |event: Event| {
        let target = event.target().and_then(|own| own.dyn_into::<web_sys::Element>().ok());
        if let Some(button) = target {
            press(store, &button, spreads);
        }
    });
    let weighed = dynamic(move || leaf(store, Leaf::Logbook, spreads.get()));
    node("div")
        .attr("id", "logbook")
        .on("click", pressed)
        .child(group(vec![
            reading_row(store),
            more(L::PasteReadings, move || table_box(store)),
            more(L::GaugeWasTold, move || fields(store, 0, &TOLD)),
            readings(store),
            node("h3").child(WORDS.label(L::WhatReadingsSay)).view(),
            node("div").attr("class", "fitted weighed").child(weighed).view(),
            node("h3").child(WORDS.label(L::StartFromSymptom)).view(),
            symptoms(store, spreads),
            more_while("more", L::CareOfBank, move || {
                let care = leaf(store, Leaf::Care, String::new());
                node("div").attr("class", "fitted").child(care).view()
            }),
        ]))
        .view()
}

/// What the buttons of the leaves do: each has what it does as an attribute.
fn press(store: Store, button: &web_sys::Element, spreads: Signal<String>) {
    let of = |name: &str| button.get_attribute(name);
    let plan = |name: &str| share::decode(&of(name)?).ok();
    if let Some(place) = of("data-remove").and_then(|own| own.parse::<usize>().ok()) {
        // The row goes with its button; the focus stays near.
        let fold = button.closest("details").ok().flatten();
        let near = fold.and_then(|own| own.query_selector("summary").ok().flatten());
        if let Some(near) = near.and_then(|own| own.dyn_into::<web_sys::HtmlElement>().ok()) {
            let _ = near.focus();
        }
        store.edit("remove reading", &mut |plan| {
            change(plan, |own| {
                if place < own.readings.len() {
                    own.readings.remove(place);
                }
            });
        });
        store.say_changed(WORDS.label(L::ReadingGone));
    } else if button.has_attribute("data-fold") {
        let more = format!(" {}", spreads.get_untracked());
        fold_working(store, ("logbook", Leaf::LearnedWorking), button, &more);
    } else if let Some(started) = plan("data-start") {
        store.edit("start at reading", &mut |plan| plan.start = started.start.clone());
        store.say_changed(WORDS.label(L::StartMoved));
    } else if let Some(adopted) = plan("data-adopt") {
        let name = variant_name(store, WORDS.label(L::AsRead));
        let present = store.plan.get_untracked();
        open_variant(store, Document { name, ..adopted }, Some(&present));
    }
}

/// Whether a day has not come yet, wherever somebody is.
fn is_to_come(day: NaiveDate) -> bool {
    day > today() + Days::new(1)
}

/// Adds a reading, or says why it cannot be added.
pub(super) fn add(store: Store, reading: Logged) -> Result<(), String> {
    let full = store.plan.with_untracked(|plan| count(plan, 0));
    if is_to_come(reading.date) {
        return Err(WORDS.label(L::DayToCome).to_owned());
    }
    let problem = if full >= List::Readings.limit() {
        Some(Problem::TooMany { list: List::Readings, length: full + 1 })
    } else if !reading.is_in_years() {
        Some(Problem::DateOutOfRange { date: reading.date })
    } else {
        None
    };
    if let Some(problem) = problem {
        return Err(words().problem(&problem, &|_| None));
    }
    store.edit("reading", &mut |plan| change(plan, |own| own.add(reading)));
    store.say_changed(WORDS.label(L::ReadingTaken));
    Ok(())
}

/// The day and the time of two boxes.
pub(super) fn moment(date: &str, time: &str) -> Option<Logged> {
    Some(Logged {
        date: date_from(date)?,
        time: time.parse::<ClockTime>().ok()?,
        ..Logged::default()
    })
}

/// The box for a table. Its text stays until all of it was taken.
fn table_box(store: Store) -> View {
    let text = RwSignal::new(String::new());
    let order = RwSignal::new(0_usize);
    let told = RwSignal::new(String::new());
    let fault = RwSignal::new(String::new());
    let unsolved = said(store, |_| true);
    let off = memo(Box::new(move || !unsolved.get() || text.with(|own| own.trim().is_empty())));
    let take = move || {
        let argument = format!("{}{}", order.get_untracked(), text.get_untracked());
        let then = Callback::new(move |said: String| {
            fault.set(String::new());
            let mut parts = said.splitn(3, PART);
            let mut next = || parts.next().unwrap_or_default();
            let (code, left) = (next(), next());
            told.set(next().to_owned());
            if let Ok(with) = share::decode(code) {
                if with.logbook.iter().flat_map(|own| &own.readings).any(|own| is_to_come(own.date))
                {
                    told.set(String::new());
                    fault.set(WORDS.label(L::DayToCome).to_owned());
                    return;
                }
                store.edit("table", &mut |plan| plan.logbook = with.logbook.clone());
                store.say_changed(WORDS.label(L::ReadingsTaken));
            }
            if left.is_empty() {
                text.set(String::new());
            }
        });
        store.worked.once(Leaf::TakenReadings, argument, then);
    };
    let file = move |own: JsValue| text.set(own.as_string().unwrap_or_default());
    let orders = [L::DatesTell, L::DatesWithDay, L::DatesWithMonth].map(|own| WORDS.label(own));
    group(vec![
        node("div")
            .attr("class", "field")
            .child(node("label").attr("for", "table").child(WORDS.label(L::PasteReadings)).view())
            .child(
                node("div")
                    .attr("class", "entry")
                    .child(
                        node("textarea")
                            .attr("id", "table")
                            .attr("rows", "6")
                            .attr("spellcheck", "false")
                            .prop("value", signal(text))
                            .on("input", typed(move |own| text.set(own)))
                            .view(),
                    )
                    .view(),
            )
            .view(),
        hint(L::PasteReadingsHint),
        file_button(L::OpenFile, ".csv,.txt,.tsv,text/plain,text/csv", Rc::new(file)),
        select(
            L::InDatesFirst,
            orders.into(),
            order.into(),
            Callback::new(move |at| order.set(at)),
        ),
        button_unless(L::TakeReadings, "button", off, take),
        node("p").attr("class", "wrong").attr("role", "alert").child(signal(fault)).view(),
        node("div")
            .attr("class", "fitted taken")
            .attr("role", "status")
            .child(dynamic(move || told.with(|own| elements(own))))
            .view(),
    ])
}

/// The readings that are kept.
fn readings(store: Store) -> View {
    let there = part(store, 0, |plan, _| count(plan, 0) > 0);
    let clear = move || {
        store.edit("remove readings", &mut |plan| change(plan, |own| own.readings.clear()));
        store.say_changed(WORDS.label(L::ReadingsGone));
    };
    let fold = when(there, move || {
        more_while("more", L::ReadingsOfGauge, move || {
            group(vec![
                leaf(store, Leaf::Readings, String::new()),
                button(L::RemoveReadings, "button quiet danger", clear),
            ])
        })
    });
    node("div").child(fold).view()
}

/// From a symptom to its causes.
fn symptoms(store: Store, spreads: Signal<String>) -> View {
    let chosen = RwSignal::new(0_usize);
    let names = ["–"].into_iter().chain(Symptom::ALL.map(|own| WORDS.symptom(own))).collect();
    let causes = dynamic(move || match chosen.get().checked_sub(1) {
        None => nothing(),
        Some(at) => {
            leaf(store, Leaf::Suspects, format!("{} {}", decimal(at as f64, 0), spreads.get()))
        }
    });
    let set = Callback::new(move |at| chosen.set(at));
    node("div")
        .child(select(L::WhatYouSee, names, chosen.into(), set))
        .child(node("div").attr("class", "fitted").child(causes).view())
        .view()
}
