//! What do you run? The list of loads, each with its charge and its share; what the system itself takes.

use leptos::prelude::*;
use sunlarder_engine::document::{Field, List};
use sunlarder_engine::load::catalogue::{Appliance, Group, entry};
use sunlarder_engine::words::{Label as L, amount, rounded};

use super::field::NumberField;
use super::inverter::InverterEditor;
use super::load_editor::LoadEditor;
use super::question::Question;
use crate::bind::{edit, figure, load_part, said};
use crate::load_row;
use crate::store::{Store, WORDS};

/// The question with its answer and all that is run.
#[component]
pub(crate) fn Loads() -> impl IntoView {
    let store = Store::get();
    let open = RwSignal::new(None::<usize>);
    let count = Memo::new(move |_| store.plan.with(|plan| plan.loads.len()));
    let total = said(store, |solved| WORDS.per_day(solved.outlook.budget.total));
    view! {
        <Question title=L::WhatDoYouRun answer=total open=true>
            <ul class="loads">
                <For
                    each=move || 0..count.get()
                    key=|place| *place
                    children=move |place| view! { <Row place=place open=open /> }
                />
                <OwnRows />
            </ul>
            <Adder open=open />
            <InverterEditor />
            <Standing />
        </Question>
    }
}

/// A load's charge of a day, if it is counted.
fn charge_of(store: Store, place: usize) -> Option<f64> {
    store.answers.with(|answers| {
        let budget = &answers.solved()?.outlook.budget;
        let own = budget.loads.iter().find(|own| usize::from(own.place) == place)?;
        Some(own.charge.0)
    })
}

/// The largest charge in the list, which makes a full underline.
fn largest(store: Store) -> f64 {
    store.answers.with(|answers| {
        answers.solved().map_or(0.0, |solved| {
            let budget = &solved.outlook.budget;
            let own = [budget.inverter.charge, budget.standing, budget.protection];
            let all = budget.loads.iter().map(|load| load.charge).chain(own);
            all.map(|charge| charge.0).fold(0.0, f64::max)
        })
    })
}

/// Width of a share's underline.
fn share_width(charge: f64, largest: f64) -> String {
    let share = if largest > 0.0 { (charge / largest).clamp(0.0, 1.0) } else { 0.0 };
    format!("{:.1}%", share * 100.0)
}

#[component]
fn Row(place: usize, open: RwSignal<Option<usize>>) -> impl IntoView {
    let store = Store::get();
    let name = load_part(store, place, load_row::name);
    let when = load_part(store, place, |load| {
        let times =
            if load.quantity > 1.0 { format!("{} × ", load.quantity) } else { String::new() };
        times + &load_row::when(load)
    });
    let on = load_part(store, place, |load| load.on);
    let charge = Memo::new(move |_| charge_of(store, place));
    let is_open = Memo::new(move |_| open.get() == Some(place));
    view! {
        <li class="load" class:off=move || !on.get()>
            <button
                type="button"
                class="load-open"
                aria-expanded=move || is_open.get().to_string()
                on:click=move |_| open.update(|open| *open = (*open != Some(place)).then_some(place))
            >
                <span class="load-name">{name}</span>
                <span class="load-when">{move || if on.get() { when.get() } else { WORDS.label(L::LeftAtHome).to_owned() }}</span>
                <span class="load-charge">
                    {move || charge.get().map(|charge| view! { {rounded(charge)} " " <span class="unit">"Ah"</span> })}
                </span>
            </button>
            <div class="share"><i style:width=move || share_width(charge.get().unwrap_or(0.0), largest(store))></i></div>
            {move || is_open.get().then(|| view! { <LoadEditor place=place open=open /> })}
        </li>
    }
}

/// What the system itself takes: the idle inverter, the standing draw, the protection circuits.
#[component]
fn OwnRows() -> impl IntoView {
    let store = Store::get();
    let rows = move || {
        store.answers.with(|answers| {
            let Some(solved) = answers.solved() else { return Vec::new() };
            let budget = &solved.outlook.budget;
            let inverter = WORDS.hours_a_day(budget.inverter.hours.0);
            let always = WORDS.always().to_owned();
            [
                (L::InverterAwake, inverter, budget.inverter.charge),
                (L::StandingDraw, always.clone(), budget.standing),
                (L::ProtectionCircuits, always, budget.protection),
            ]
            .into_iter()
            .filter(|(.., charge)| charge.0 > 0.0)
            .collect()
        })
    };
    let row = move |(label, when, charge): (L, String, sunlarder_engine::quantity::AmpHours)| {
        view! {
            <li class="load own">
                <div class="load-open">
                    <span class="load-name">{WORDS.label(label)}</span>
                    <span class="load-when">{when}</span>
                    <span class="load-charge">{rounded(charge.0)} " " <span class="unit">"Ah"</span></span>
                </div>
                <div class="share"><i style:width=share_width(charge.0, largest(store))></i></div>
            </li>
        }
    };
    move || rows().into_iter().map(row).collect_view()
}

#[component]
fn Standing() -> impl IntoView {
    let store = Store::get();
    let (value, set) =
        figure(store, "standing", |plan| plan.standing_a, |plan, value| plan.standing_a = value);
    view! {
        <div class="fields">
            <NumberField field=Field::StandingCurrent value=value set=set hint=WORDS.label(L::StandingHint) />
        </div>
    }
}

/// Search in the catalogue, or a load by hand.
#[component]
fn Adder(open: RwSignal<Option<usize>>) -> impl IntoView {
    let store = Store::get();
    let searching = RwSignal::new(false);
    let query = RwSignal::new(String::new());
    let full = Memo::new(move |_| store.plan.with(|plan| plan.loads.len() >= List::Loads.limit()));
    let add = edit(store, "add load", |plan, load| plan.loads.push(load));
    let take = move |appliance: Appliance| {
        add.run(load_row::from_catalogue(appliance));
        store.say(WORDS.added(WORDS.appliance(appliance)));
        query.set(String::new());
        searching.set(false);
    };
    let by_hand = move |_| {
        add.run(sunlarder_engine::document::Load::default());
        searching.set(false);
        open.set(store.plan.with_untracked(|plan| plan.loads.len().checked_sub(1)));
    };
    let input = NodeRef::<leptos::html::Input>::new();
    Effect::new(move |_| {
        if let (true, Some(input)) = (searching.get(), input.get()) {
            let _ = input.focus();
        }
    });
    view! {
        <div class="row">
            <button
                type="button"
                class="button"
                id="add-something"
                disabled=move || full.get()
                aria-expanded=move || searching.get().to_string()
                on:click=move |_| searching.update(|searching| *searching = !*searching)
            >
                {WORDS.label(L::AddSomething)}
            </button>
            {move || full.get().then(|| WORDS.full_of_loads(List::Loads.limit()))}
        </div>
        {move || searching.get().then(|| view! {
            <div class="search">
                <label for="search-appliance">{WORDS.label(L::SearchAppliance)}</label>
                <input
                    id="search-appliance"
                    type="search"
                    autocomplete="off"
                    node_ref=input
                    prop:value=move || query.get()
                    on:input:target=move |event| query.set(event.target().value())
                />
                <Found query=query take=take />
                <button type="button" class="button quiet" on:click=by_hand>{WORDS.label(L::AddByHand)}</button>
            </div>
        })}
    }
}

/// What was found, or the groups while nothing is typed.
#[component]
fn Found(query: RwSignal<String>, #[prop(into)] take: Callback<Appliance>) -> impl IntoView {
    let item = move |appliance: Appliance| {
        let typical = entry(appliance);
        view! {
            <li>
                <button type="button" on:click=move |_| take.run(appliance)>
                    <span class="result-name">{WORDS.appliance(appliance)}</span>
                    <span class="result-figure">{amount(typical.power)}</span>
                </button>
            </li>
        }
    };
    let group = move |group: Group| {
        let of = Appliance::ALL.iter().copied().filter(move |own| entry(*own).group == group);
        view! {
            <details class="more">
                <summary>{WORDS.appliance_group(group)}</summary>
                <ul class="results">{of.map(item).collect_view()}</ul>
            </details>
        }
    };
    move || {
        let query = query.get();
        if query.trim().is_empty() {
            return Group::ALL.into_iter().map(group).collect_view().into_any();
        }
        let found = load_row::find(&query);
        if found.is_empty() {
            return view! { <p class="hint">{WORDS.label(L::NothingFound)}</p> }.into_any();
        }
        view! { <ul class="results">{found.into_iter().take(12).map(item).collect_view()}</ul> }
            .into_any()
    }
}
