//! What comes in? Arrays with their controllers, shore power, the engine.

use leptos::prelude::*;
use sunlarder_engine::document::{
    Array, Charger, Controller, ControllerKind, Document, Field, List, Mounting,
};
use sunlarder_engine::outlook::best_tilts;
use sunlarder_engine::words::{Label as L, rounded};

use super::field::{Choice, NumberField, Toggle};
use super::question::Question;
use super::schedule::ScheduleEditor;
use crate::bind::{edit, figure, part};
use crate::store::{Store, WORDS};

/// The question with its answer and the sources.
#[component]
pub(crate) fn Sources() -> impl IntoView {
    let store = Store::get();
    let count = Memo::new(move |_| store.plan.with(|plan| plan.arrays.len()));
    let answer = move || {
        store.answers.with(|answers| {
            let Some(solved) = answers.solved() else { return String::new() };
            let sun: f64 = solved.system.arrays.iter().map(|array| array.rated().0).sum();
            let others = [
                solved.system.alternator.as_ref().map(|_| L::Engine),
                solved.system.shore.as_ref().map(|_| L::Shore),
            ];
            let sun = (sun > 0.0).then(|| WORDS.of_sun(&rounded(sun)));
            let all: Vec<String> = sun
                .into_iter()
                .chain(others.into_iter().flatten().map(|label| WORDS.label(label).to_lowercase()))
                .collect();
            if all.is_empty() { WORDS.label(L::Nothing).to_owned() } else { all.join(", ") }
        })
    };
    let full = move || count.get() >= List::Arrays.limit();
    let add = move |_| {
        store.edit("add array", |plan| {
            let azimuth_deg = if plan.place.latitude_deg < 0.0 { 0.0 } else { 180.0 };
            plan.arrays.push(Array { azimuth_deg, ..Array::default() });
        });
    };
    view! {
        <Question title=L::WhatComesIn answer=answer>
            <For each=move || 0..count.get() key=|place| *place children=|place| view! { <ArrayEditor place=place /> } />
            <div class="row">
                <button type="button" class="button" disabled=full on:click=add>
                    {WORDS.label(L::AddArray)}
                </button>
            </div>
            <ChargerEditor title=L::ThereIsAnAlternator kind="alternator"
                get=|plan| plan.alternator.as_ref() get_mut=|plan| &mut plan.alternator hint=L::AlternatorHint />
            <ChargerEditor title=L::ThereIsShore kind="shore"
                get=|plan| plan.shore.as_ref() get_mut=|plan| &mut plan.shore hint=L::ShoreHint />
        </Question>
    }
}

fn own(
    store: Store,
    place: usize,
    get: fn(&Array) -> f64,
    set: fn(&mut Array, f64),
) -> (Signal<Option<f64>>, Callback<Option<f64>>) {
    figure(
        store,
        "array",
        move |plan| plan.arrays.get(place).map_or_else(|| get(&Array::default()), get),
        move |plan, value| {
            if let Some(array) = plan.arrays.get_mut(place) {
                set(array, value);
            }
        },
    )
}

fn option(
    store: Store,
    place: usize,
    get: fn(&Array) -> Option<f64>,
    set: fn(&mut Array, Option<f64>),
) -> (Signal<Option<f64>>, Callback<Option<f64>>) {
    let value = part(store, move |plan| plan.arrays.get(place).and_then(get));
    let set = array_edit(store, place, set);
    (value, set)
}

fn array_part<T: PartialEq + Clone + Send + Sync + 'static>(
    store: Store,
    place: usize,
    get: fn(&Array) -> T,
) -> Signal<T> {
    part(store, move |plan| plan.arrays.get(place).map_or_else(|| get(&Array::default()), get))
}

fn array_edit<T: 'static>(store: Store, place: usize, set: fn(&mut Array, T)) -> Callback<T> {
    edit(store, "array", move |plan: &mut Document, value| {
        if let Some(array) = plan.arrays.get_mut(place) {
            set(array, value);
        }
    })
}

#[component]
fn ArrayEditor(place: usize) -> impl IntoView {
    let store = Store::get();
    let power = own(store, place, |array| array.module_w, |array, value| array.module_w = value);
    let series = own(store, place, |array| array.in_series, |array, value| array.in_series = value);
    let parallel =
        own(store, place, |array| array.in_parallel, |array, value| array.in_parallel = value);
    let on = array_part(store, place, |array| array.on);
    let delete = move |_| {
        store.edit("delete array", |plan| {
            if place < plan.arrays.len() {
                plan.arrays.remove(place);
            }
        });
    };
    view! {
        <section class="editor part" aria-label=WORDS.array(place)>
            <h3>{WORDS.array(place)}</h3>
            <Toggle label=WORDS.label(L::Counted) value=on set=array_edit(store, place, |array, on| array.on = on) />
            <div class="fields">
                <NumberField field=Field::ModulePower value=power.0 set=power.1 />
                <NumberField label=WORDS.label(L::ModulesInSeries) field=Field::InSeries value=series.0 set=series.1 />
                <NumberField label=WORDS.label(L::StringsInParallel) field=Field::InParallel value=parallel.0 set=parallel.1 />
            </div>
            <Position place=place />
            <ControllerEditor place=place />
            <details class="more"><summary>{WORDS.label(L::Shade)}</summary><ShadeEditor place=place /></details>
            <details class="more"><summary>{WORDS.label(L::LossesAndSheet)}</summary><LossEditor place=place /></details>
            <div class="row">
                <button type="button" class="button quiet danger" on:click=delete>{WORDS.label(L::DeleteArray)}</button>
            </div>
        </section>
    }
}

#[component]
fn Position(place: usize) -> impl IntoView {
    let store = Store::get();
    let tilt = own(store, place, |array| array.tilt_deg, |array, value| array.tilt_deg = value);
    let azimuth =
        own(store, place, |array| array.azimuth_deg, |array, value| array.azimuth_deg = value);
    let mounting = array_part(store, place, |array| array.mounting);
    let options = vec![
        (Mounting::Open, WORDS.label(L::MountedOpen).to_owned()),
        (Mounting::Flush, WORDS.label(L::MountedFlush).to_owned()),
    ];
    // Searching for the best tilt costs more than an edit may: it is done when asked for.
    let asked = RwSignal::new(false);
    let best = Memo::new(move |_| {
        asked.get().then(|| {
            store.answers.with(|answers| {
                let solved = answers.solved()?;
                let array =
                    solved.system.arrays.iter().find(|own| usize::from(own.place) == place)?;
                let best = best_tilts(&solved.system, array);
                Some(WORDS.best_tilt(&best, solved.outlook.month))
            })
        })
    });
    view! {
        <div class="fields">
            <NumberField field=Field::Tilt value=tilt.0 set=tilt.1 slider=(0.0, 90.0, 5.0) hint=WORDS.label(L::TiltHint) />
            <NumberField field=Field::Azimuth value=azimuth.0 set=azimuth.1 slider=(0.0, 360.0, 5.0) hint=WORDS.label(L::AzimuthHint) />
        </div>
        <Choice legend=WORDS.label(L::Mounting) options=options value=mounting set=array_edit(store, place, |array, new| array.mounting = new) />
        <p class="note">
            {move || match best.get().flatten() {
                Some(sentence) => sentence.into_any(),
                None => view! {
                    <button type="button" class="button quiet" on:click=move |_| asked.set(true)>{WORDS.label(L::WhichTiltIsBest)}</button>
                }.into_any(),
            }}
        </p>
    }
}

#[component]
fn ControllerEditor(place: usize) -> impl IntoView {
    let store = Store::get();
    let kind = array_part(store, place, |array| array.controller.kind);
    let limit = own(
        store,
        place,
        |array| array.controller.limit_a,
        |array, value| array.controller.limit_a = value,
    );
    let voltage = option(
        store,
        place,
        |array| array.controller.max_v,
        |array, value| array.controller.max_v = value,
    );
    let options = vec![
        (ControllerKind::Mppt, WORDS.label(L::Mppt).to_owned()),
        (ControllerKind::Pwm, WORDS.label(L::Pwm).to_owned()),
    ];
    view! {
        <Choice legend=WORDS.label(L::ChargeController) options=options value=kind
            set=array_edit(store, place, |array, kind| array.controller = Controller { kind, ..array.controller }) />
        <div class="fields">
            <NumberField label=WORDS.label(L::ControllerLimit) field=Field::ChargerCurrent value=limit.0 set=limit.1 />
            <NumberField field=Field::ControllerVoltage value=voltage.0 set=voltage.1 optional=true hint=WORDS.label(L::ControllerVoltageHint) />
        </div>
    }
}

#[component]
fn ShadeEditor(place: usize) -> impl IntoView {
    let store = Store::get();
    let morning = own(
        store,
        place,
        |array| array.shading.morning_pct,
        |array, value| array.shading.morning_pct = value,
    );
    let midday = own(
        store,
        place,
        |array| array.shading.midday_pct,
        |array, value| array.shading.midday_pct = value,
    );
    let afternoon = own(
        store,
        place,
        |array| array.shading.afternoon_pct,
        |array, value| array.shading.afternoon_pct = value,
    );
    view! {
        <p class="hint">{WORDS.label(L::ShadeHint)}</p>
        <div class="fields">
            <NumberField label=WORDS.label(L::ShadeMorning) field=Field::Shading value=morning.0 set=morning.1 slider=(0.0, 100.0, 5.0) />
            <NumberField label=WORDS.label(L::ShadeMidday) field=Field::Shading value=midday.0 set=midday.1 slider=(0.0, 100.0, 5.0) />
            <NumberField label=WORDS.label(L::ShadeAfternoon) field=Field::Shading value=afternoon.0 set=afternoon.1 slider=(0.0, 100.0, 5.0) />
        </div>
    }
}

#[component]
fn LossEditor(place: usize) -> impl IntoView {
    let store = Store::get();
    let dirt = own(
        store,
        place,
        |array| array.losses.dirt_pct,
        |array, value| array.losses.dirt_pct = value,
    );
    let cable = own(
        store,
        place,
        |array| array.losses.cable_pct,
        |array, value| array.losses.cable_pct = value,
    );
    let ageing = own(
        store,
        place,
        |array| array.losses.ageing_pct,
        |array, value| array.losses.ageing_pct = value,
    );
    let other = own(
        store,
        place,
        |array| array.losses.other_pct,
        |array, value| array.losses.other_pct = value,
    );
    let best =
        option(store, place, |array| array.best_point_v, |array, value| array.best_point_v = value);
    let open = option(
        store,
        place,
        |array| array.open_circuit_v,
        |array, value| array.open_circuit_v = value,
    );
    let short = option(
        store,
        place,
        |array| array.short_circuit_a,
        |array, value| array.short_circuit_a = value,
    );
    let heat = option(
        store,
        place,
        |array| array.power_pct_per_k,
        |array, value| array.power_pct_per_k = value,
    );
    let module = move |of: fn(&sunlarder_engine::source::Module) -> f64| {
        Signal::derive(move || {
            store.answers.with(|answers| {
                let solved = answers.solved();
                let array = solved.and_then(|solved| {
                    solved.system.arrays.iter().find(|own| usize::from(own.place) == place)
                });
                array.map(|array| format!("{:.1}", of(&array.module))).unwrap_or_default()
            })
        })
    };
    view! {
        <p class="hint">{WORDS.label(L::SheetFirst)}</p>
        <div class="fields">
            <NumberField label=WORDS.label(L::Dirt) field=Field::Loss value=dirt.0 set=dirt.1 />
            <NumberField label=WORDS.label(L::Cable) field=Field::Loss value=cable.0 set=cable.1 />
            <NumberField label=WORDS.label(L::Ageing) field=Field::Loss value=ageing.0 set=ageing.1 />
            <NumberField label=WORDS.label(L::OtherLosses) field=Field::Loss value=other.0 set=other.1 />
            <NumberField label=WORDS.label(L::BestPoint) field=Field::ModuleVoltage value=best.0 set=best.1 optional=true typical=module(|own| own.best.0) />
            <NumberField label=WORDS.label(L::OpenCircuit) field=Field::ModuleVoltage value=open.0 set=open.1 optional=true typical=module(|own| own.open.0) />
            <NumberField field=Field::ModuleCurrent value=short.0 set=short.1 optional=true typical=module(|own| own.short.0) />
            <NumberField field=Field::PowerCoefficient unit="%/K" value=heat.0 set=heat.1 optional=true
                typical=Signal::derive(|| format!("{}", sunlarder_engine::source::POWER_PER_K.0)) />
        </div>
        <p class="hint">{WORDS.label(L::HeatIsComputed)}</p>
    }
}

/// A charger that is there or not, with its limit and hours.
#[component]
fn ChargerEditor(
    title: L,
    hint: L,
    kind: &'static str,
    get: fn(&Document) -> Option<&Charger>,
    get_mut: fn(&mut Document) -> &mut Option<Charger>,
) -> impl IntoView {
    let store = Store::get();
    let there = part(store, move |plan| get(plan).is_some_and(|charger| charger.on));
    let set_there =
        edit(store, kind, move |plan: &mut Document, on: bool| match (get_mut(plan), on) {
            (Some(charger), on) => charger.on = on,
            (none, true) => *none = Some(Charger::default()),
            (_, false) => {}
        });
    let limit = figure(
        store,
        kind,
        move |plan| get(plan).map_or(20.0, |charger| charger.limit_a),
        move |plan, value| {
            if let Some(charger) = get_mut(plan) {
                charger.limit_a = value
            }
        },
    );
    let schedule = part(store, move |plan| {
        get(plan).map_or_else(|| Charger::default().schedule, |charger| charger.schedule.clone())
    });
    let set_schedule = edit(store, kind, move |plan: &mut Document, new| {
        if let Some(charger) = get_mut(plan) {
            charger.schedule = new;
        }
    });
    view! {
        <div class="part">
            <Toggle label=WORDS.label(title) value=there set=set_there />
            {move || there.get().then(|| view! {
                <NumberField label=WORDS.label(L::ChargerLimit) field=Field::ChargerCurrent value=limit.0 set=limit.1 hint=WORDS.label(hint) />
                <ScheduleEditor value=schedule set=set_schedule />
            })}
        </div>
    }
}
