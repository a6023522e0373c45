//! What do you run? The list of loads, each with its charge and its share; what the system itself takes.

use leptos::prelude::*;
use leptos::web_sys;
use sunlarder_engine::document::{Field, List, Load};
use sunlarder_engine::load::catalogue::{Appliance, Group, entry};
use sunlarder_engine::quantity::{AmpHours, Within};
use sunlarder_engine::words::Label as L;

use wasm_bindgen::JsCast;

use super::field::{Figure, button, fields};
use super::inverter::inverter_editor;
use super::question::question;
use crate::bind::{memo, of_load, part, said, said_of, signal};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::{Listener, act, dynamic, is_open, typed, when};
use crate::drawers::drawer;
use crate::load_row;
use crate::store::{Solved, Store, WORDS, words};
use sunlarder_engine::words::decimal;

const STANDING: [Figure; 1] = [Figure::new(
    Field::StandingCurrent,
    |plan, _| Some(plan.standing_a),
    |plan, _, value| plan.standing_a = value,
)
.hint(L::StandingHint)];

/// The question with its answer and all that is run.
pub(crate) fn loads(store: Store) -> View {
    let total = said(store, |solved| {
        words().per_day(solved.outlook.budget.total, solved.system.bank.nominal)
    });
    question(L::WhatDoYouRun, total, true, move || inside(store))
}

fn inside(store: Store) -> View {
    let open = RwSignal::new(None::<usize>);
    let count = part(store, 0, |plan, _| plan.loads.len());
    let rows = dynamic(move || {
        (0..count.get()).map(|place| row(store, place, open)).collect::<Vec<_>>().view()
    });
    let own = dynamic(move || own_rows(store));
    group(vec![
        node("ul").attr("class", "loads").child(rows).child(own).view(),
        adder(store, open).view(),
        inverter_editor(store).view(),
        fields(store, 0, &STANDING).view(),
    ])
}

/// A load's charge of a day, if it is counted.
fn charge_of(solved: &Solved, place: usize) -> Option<AmpHours> {
    let loads = &solved.outlook.budget.loads;
    loads.iter().find(|own| usize::from(own.place) == place).map(|own| own.charge)
}

/// The largest charge in the list, which makes a full underline.
fn largest(solved: &Solved) -> AmpHours {
    let budget = &solved.outlook.budget;
    let own = [budget.inverter.charge, budget.standing, budget.protection];
    budget.loads.iter().map(|load| load.charge).chain(own).fold(AmpHours::ZERO, AmpHours::at_least)
}

/// Width of a share's underline.
fn share(charge: Option<AmpHours>, largest: AmpHours) -> String {
    let share = charge.map_or(0.0, |charge| charge / largest);
    format!("{}%", decimal(share.within(0.0, 1.0) * 100.0, 1))
}

fn row(store: Store, place: usize, open: RwSignal<Option<usize>>) -> View {
    let name =
        part(store, place, |plan, place| of_load(plan, place, load_row::name).unwrap_or_default());
    let when_on = part(store, place, |plan, place| {
        of_load(plan, place, load_row::summary).unwrap_or_default()
    });
    let off =
        part(store, place, |plan, place| of_load(plan, place, |load| !load.on).unwrap_or_default());
    let charge = said_of(store, place, |solved, place| {
        let nominal = solved.system.bank.nominal;
        let charge = charge_of(solved, place);
        charge.map(|charge| words().charge_number(charge, nominal)).unwrap_or_default()
    });
    let unit = said_of(store, place, |solved, place| {
        charge_of(solved, place).map(|_| words().charge_unit().to_owned()).unwrap_or_default()
    });
    let width =
        said_of(store, place, |solved, place| share(charge_of(solved, place), largest(solved)));
    let is_open = memo(Box::new(move || open.get() == Some(place)));
    let expanded = Signal::derive(move || is_open.get().to_string());
    let press = act(move || open.update(|open| *open = (*open != Some(place)).then_some(place)));
    node("li")
        .attr("class", "load")
        .class_while("off", off)
        .child(
            node("button")
                .attr("type", "button")
                .attr("class", "load-open")
                .attr("aria-expanded", expanded)
                .on("click", press)
                .child(node("span").attr("class", "load-name").child(name).view())
                .child(node("span").attr("class", "load-when").child(when_on).view())
                .child(
                    node("span")
                        .attr("class", "load-charge")
                        .child(charge)
                        .child(" ")
                        .child(node("span").attr("class", "unit").child(unit).view())
                        .view(),
                )
                .view(),
        )
        .child(
            node("div")
                .attr("class", "share")
                .child(node("i").style_now("width", width).view())
                .view(),
        )
        .child(when(is_open, move || drawer(store, move |own| (own.load)(store, place, open))))
        .view()
}

/// What the system itself takes: the idle inverter, the standing draw, the protection circuits.
fn own_rows(store: Store) -> View {
    let rows = store.answers.with(|answers| {
        let Some(solved) = answers.solved() else { return Vec::new() };
        let budget = &solved.outlook.budget;
        let most = largest(solved);
        let always = || WORDS.always().to_owned();
        [
            (
                L::InverterAwake,
                words().hours_a_day(budget.inverter.hours.0),
                budget.inverter.charge,
            ),
            (L::StandingDraw, always(), budget.standing),
            (L::ProtectionCircuits, always(), budget.protection),
        ]
        .into_iter()
        .filter(|(.., charge)| charge.0 > 0.0)
        .map(|(label, when, charge)| {
            let told = words().charge_number(charge, solved.system.bank.nominal);
            own_row(label, when, told, share(Some(charge), most))
        })
        .collect()
    });
    rows.view()
}

fn own_row(label: L, when: String, charge: String, width: String) -> View {
    node("li")
        .attr("class", "load own")
        .child(
            node("div")
                .attr("class", "load-open")
                .child(node("span").attr("class", "load-name").child(WORDS.label(label)).view())
                .child(node("span").attr("class", "load-when").child(when).view())
                .child(
                    node("span")
                        .attr("class", "load-charge")
                        .child(charge)
                        .child(" ")
                        .child(
                            node("span").attr("class", "unit").child(words().charge_unit()).view(),
                        )
                        .view(),
                )
                .view(),
        )
        .child(
            node("div")
                .attr("class", "share")
                .child(node("i").style("width", &width).view())
                .view(),
        )
        .view()
}

/// Search in the catalogue, or a load by hand.
fn adder(store: Store, open: RwSignal<Option<usize>>) -> View {
    let searching = RwSignal::new(false);
    let full = part(store, 0, |plan, _| plan.loads.len() >= List::Loads.limit());
    let expanded = Signal::derive(move || searching.get().to_string());
    let press = act(move || searching.update(|searching| *searching = !*searching));
    let full_words = Signal::derive(move || {
        if full.get() { WORDS.full_of_loads(List::Loads.limit()) } else { String::new() }
    });
    group(vec![
        node("div")
            .attr("class", "row")
            .child(
                node("button")
                    .attr("type", "button")
                    .attr("class", "button")
                    .attr("id", "add-something")
                    .attr("disabled", full)
                    .attr("aria-expanded", expanded)
                    .on("click", press)
                    .child(WORDS.label(L::AddSomething))
                    .view(),
            )
            .child(node("span").attr("class", "soft").child(full_words).view())
            .view(),
        when(searching.into(), move || {
            drawer(store, move |own| (own.search)(store, searching, open))
        })
        .view(),
    ])
}

fn add(store: Store, load: Load) {
    let mut load = Some(load);
    store.edit("add load", &mut |plan| plan.loads.extend(load.take()));
}

pub(super) fn search(
    store: Store,
    searching: RwSignal<bool>,
    open: RwSignal<Option<usize>>,
) -> View {
    let query = RwSignal::new(String::new());
    let take = Callback::new(move |appliance: Appliance| {
        add(store, load_row::from_catalogue(appliance));
        store.say(WORDS.added(WORDS.appliance(appliance)));
        searching.set(false);
    });
    let by_hand = move || {
        add(store, Load::default());
        searching.set(false);
        open.set(store.plan.with_untracked(|plan| plan.loads.len().checked_sub(1)));
    };
    let input = node("input")
        .attr("id", "search-appliance")
        .attr("type", "search")
        .attr("autocomplete", "off")
        .prop("value", signal(query))
        .on("input", typed(move |text| query.set(text)));
    focus_soon(input.element());
    node("div")
        .attr("class", "search")
        .child(
            node("label")
                .attr("for", "search-appliance")
                .child(WORDS.label(L::SearchAppliance))
                .view(),
        )
        .child(input.view())
        .child(dynamic(move || query.with(|query| found(query, take))))
        .child(button(L::AddByHand, "button quiet", by_hand))
        .view()
}

/// Gives an element the focus once it stands in the page.
fn focus_soon(element: web_sys::Element) {
    let element: web_sys::HtmlElement = element.unchecked_into();
    request_animation_frame(move || {
        let _ = element.focus();
    });
}

/// Most appliances that a search shows.
const SHOWN: usize = 12;

/// What was found, or the groups while nothing is typed.
fn found(query: &str, take: Callback<Appliance>) -> View {
    if query.trim().is_empty() {
        return Group::ALL.into_iter().map(|own| shelf(own, take)).collect::<Vec<_>>().view();
    }
    let found = load_row::find(query);
    if found.is_empty() {
        return node("p").attr("class", "hint").child(WORDS.label(L::NothingFound)).view();
    }
    results(found.into_iter().take(SHOWN), take)
}

fn results(all: impl Iterator<Item = Appliance>, take: Callback<Appliance>) -> View {
    let items: Vec<View> = all.map(|own| result(own, take)).collect();
    node("ul").attr("class", "results").child(items).view()
}

fn result(appliance: Appliance, take: Callback<Appliance>) -> View {
    node("li")
        .child(
            node("button")
                .attr("type", "button")
                .on("click", act(move || take.run(appliance)))
                .child(
                    node("span")
                        .attr("class", "result-name")
                        .child(WORDS.appliance(appliance))
                        .view(),
                )
                .child(
                    node("span")
                        .attr("class", "result-figure")
                        .child(words().amount(entry(appliance).power))
                        .view(),
                )
                .view(),
        )
        .view()
}

fn shelf(group: Group, take: Callback<Appliance>) -> View {
    let opened = RwSignal::new(false);
    let toggled: Listener = Box::new(move |event| opened.set(is_open(&event)));
    let inside = when(opened.into(), move || {
        results(Appliance::ALL.iter().copied().filter(|own| entry(*own).group == group), take)
    });
    node("details")
        .attr("class", "more")
        .on("toggle", toggled)
        .child(node("summary").child(WORDS.appliance_group(group)).view())
        .child(inside)
        .view()
}
