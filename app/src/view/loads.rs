//! What do you run? The list of loads, each with its charge and its share; what the system itself takes.

use leptos::prelude::*;
use sunlarder_engine::document::{Field, List, Load};
use sunlarder_engine::load::catalogue::{Appliance, Group, entry};
use sunlarder_engine::quantity::AmpHours;
use sunlarder_engine::words::{Label as L, amount, rounded};

use super::field::{Figure, button, fields};
use super::inverter::inverter_editor;
use super::load_editor::load_editor;
use super::part::{Listener, act, dynamic, is_open, typed, when};
use super::question::question;
use crate::bind::{fixed, memo, of_load, part, said, said_of, signal, watch};
use crate::load_row;
use crate::store::{Solved, Store, WORDS};

const STANDING: [Figure; 1] = [Figure::new(
    Field::StandingCurrent,
    |plan, _| Some(plan.standing_a),
    |plan, _, value| plan.standing_a = value,
)
.hint(L::StandingHint)];

/// The question with its answer and all that is run.
pub(crate) fn loads(store: Store) -> AnyView {
    let total = said(store, |solved| WORDS.per_day(solved.outlook.budget.total));
    question(L::WhatDoYouRun, total, true, move || inside(store))
}

fn inside(store: Store) -> AnyView {
    let open = RwSignal::new(None::<usize>);
    let count = part(store, 0, |plan, _| plan.loads.len());
    let rows = dynamic(move || {
        (0..count.get()).map(|place| row(store, place, open)).collect::<Vec<_>>().into_any()
    });
    let own = dynamic(move || own_rows(store));
    view! {
        <ul class="loads">{rows} {own}</ul>
        {adder(store, open)}
        {inverter_editor(store)}
        {fields(store, 0, &STANDING)}
    }
    .into_any()
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
    format!("{:.1}%", if share.is_finite() { share.clamp(0.0, 1.0) * 100.0 } else { 0.0 })
}

fn row(store: Store, place: usize, open: RwSignal<Option<usize>>) -> AnyView {
    let name =
        part(store, place, |plan, place| of_load(plan, place, load_row::name).unwrap_or_default());
    let when_on = part(store, place, |plan, place| {
        of_load(plan, place, load_row::summary).unwrap_or_default()
    });
    let off =
        part(store, place, |plan, place| of_load(plan, place, |load| !load.on).unwrap_or_default());
    let charge = said_of(store, place, |solved, place| {
        charge_of(solved, place).map(|charge| rounded(charge.0)).unwrap_or_default()
    });
    let unit = said_of(store, place, |solved, place| {
        charge_of(solved, place).map(|_| "Ah".to_owned()).unwrap_or_default()
    });
    let width =
        said_of(store, place, |solved, place| share(charge_of(solved, place), largest(solved)));
    let is_open = memo(Box::new(move || open.get() == Some(place)));
    let expanded = Signal::derive(move || is_open.get().to_string());
    let press = act(move || open.update(|open| *open = (*open != Some(place)).then_some(place)));
    view! {
        <li class="load" class:off=off>
            <button type="button" class="load-open" aria-expanded=expanded on:click=press>
                <span class="load-name">{name}</span>
                <span class="load-when">{when_on}</span>
                <span class="load-charge">{charge} " " <span class="unit">{unit}</span></span>
            </button>
            <div class="share"><i style:width=width></i></div>
            {when(is_open.into(), move || load_editor(store, place, open))}
        </li>
    }
    .into_any()
}

/// What the system itself takes: the idle inverter, the standing draw, the protection circuits.
fn own_rows(store: Store) -> AnyView {
    let rows = store.answers.with(|answers| {
        let Some(solved) = answers.solved() else { return Vec::new() };
        let budget = &solved.outlook.budget;
        let most = largest(solved);
        let always = || WORDS.always().to_owned();
        [
            (L::InverterAwake, WORDS.hours_a_day(budget.inverter.hours.0), budget.inverter.charge),
            (L::StandingDraw, always(), budget.standing),
            (L::ProtectionCircuits, always(), budget.protection),
        ]
        .into_iter()
        .filter(|(.., charge)| charge.0 > 0.0)
        .map(|(label, when, charge)| own_row(label, when, charge, share(Some(charge), most)))
        .collect()
    });
    rows.into_any()
}

fn own_row(label: L, when: String, charge: AmpHours, width: String) -> AnyView {
    view! {
        <li class="load own">
            <div class="load-open">
                <span class="load-name">{WORDS.label(label)}</span>
                <span class="load-when">{when}</span>
                <span class="load-charge">{rounded(charge.0)} " " <span class="unit">"Ah"</span></span>
            </div>
            <div class="share"><i style:width=fixed(width)></i></div>
        </li>
    }
    .into_any()
}

/// Search in the catalogue, or a load by hand.
fn adder(store: Store, open: RwSignal<Option<usize>>) -> AnyView {
    let searching = RwSignal::new(false);
    let full = part(store, 0, |plan, _| plan.loads.len() >= List::Loads.limit());
    let expanded = Signal::derive(move || searching.get().to_string());
    let press = act(move || searching.update(|searching| *searching = !*searching));
    let full_words = Signal::derive(move || {
        if full.get() { WORDS.full_of_loads(List::Loads.limit()) } else { String::new() }
    });
    view! {
        <div class="row">
            <button type="button" class="button" id="add-something" disabled=full aria-expanded=expanded on:click=press>
                {WORDS.label(L::AddSomething)}
            </button>
            <span class="soft">{full_words}</span>
        </div>
        {when(searching.into(), move || search(store, searching, open))}
    }
    .into_any()
}

fn add(store: Store, load: Load) {
    let mut load = Some(load);
    store.edit("add load", &mut |plan| plan.loads.extend(load.take()));
}

fn search(store: Store, searching: RwSignal<bool>, open: RwSignal<Option<usize>>) -> AnyView {
    let query = RwSignal::new(String::new());
    let input = NodeRef::<leptos::html::Input>::new();
    watch(Box::new(move || {
        if let Some(input) = input.get() {
            let _ = input.focus();
        }
    }));
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
    let found = dynamic(move || query.with(|query| found(query, take)));
    view! {
        <div class="search">
            <label for="search-appliance">{WORDS.label(L::SearchAppliance)}</label>
            <input id="search-appliance" type="search" autocomplete="off" node_ref=input
                prop:value=signal(query) on:input=typed(move |text| query.set(text)) />
            {found}
            {button(L::AddByHand, "button quiet", by_hand)}
        </div>
    }
    .into_any()
}

/// Most appliances that a search shows.
const SHOWN: usize = 12;

/// What was found, or the groups while nothing is typed.
fn found(query: &str, take: Callback<Appliance>) -> AnyView {
    if query.trim().is_empty() {
        return Group::ALL.into_iter().map(|own| group(own, take)).collect::<Vec<_>>().into_any();
    }
    let found = load_row::find(query);
    if found.is_empty() {
        return view! { <p class="hint">{WORDS.label(L::NothingFound)}</p> }.into_any();
    }
    results(found.into_iter().take(SHOWN), take)
}

fn results(all: impl Iterator<Item = Appliance>, take: Callback<Appliance>) -> AnyView {
    let items: Vec<AnyView> = all.map(|own| result(own, take)).collect();
    view! { <ul class="results">{items}</ul> }.into_any()
}

fn result(appliance: Appliance, take: Callback<Appliance>) -> AnyView {
    view! {
        <li>
            <button type="button" on:click=act(move || take.run(appliance))>
                <span class="result-name">{WORDS.appliance(appliance)}</span>
                <span class="result-figure">{amount(entry(appliance).power)}</span>
            </button>
        </li>
    }
    .into_any()
}

fn group(group: Group, take: Callback<Appliance>) -> AnyView {
    let opened = RwSignal::new(false);
    let toggled: Listener = Box::new(move |event| opened.set(is_open(&event)));
    let inside = when(opened.into(), move || {
        results(Appliance::ALL.iter().copied().filter(|own| entry(*own).group == group), take)
    });
    view! {
        <details class="more" on:toggle=toggled><summary>{WORDS.appliance_group(group)}</summary>{inside}</details>
    }
    .into_any()
}
