//! What comes in? Arrays with their controllers, shore power, the engine.

use leptos::prelude::*;
use sunlarder_engine::document::{Array, Charger, ControllerKind, Document, Field, List, Mounting};
use sunlarder_engine::outlook::best_tilts;
use sunlarder_engine::source::POWER_PER_K;
use sunlarder_engine::words::{Label as L, rounded};

use super::field::{Figure, button, button_unless, choice, fields, more, toggle};
use super::question::question;
use super::schedule::schedule_editor;
use crate::bind::{edit, memo, part, said};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::{dynamic, when};
use crate::store::{Solved, Store, WORDS};

/// The question with its answer and the sources.
pub(crate) fn sources(store: Store) -> View {
    question(L::WhatComesIn, said(store, answer), false, move || inside(store))
}

fn answer(solved: &Solved) -> String {
    let system = &solved.system;
    let sun: f64 = system.arrays.iter().map(|array| array.rated().0).sum();
    let mut parts = Vec::new();
    if sun > 0.0 {
        parts.push(WORDS.of_sun(&rounded(sun)));
    }
    for (charger, label) in [(&system.alternator, L::Engine), (&system.shore, L::Shore)] {
        if charger.is_some() {
            parts.push(WORDS.label(label).to_owned());
        }
    }
    if parts.is_empty() { WORDS.label(L::Nothing).to_owned() } else { parts.join(", ") }
}

fn inside(store: Store) -> View {
    let count = part(store, 0, |plan, _| plan.arrays.len());
    let full = Signal::derive(move || count.get() >= List::Arrays.limit());
    let arrays = dynamic(move || {
        (0..count.get()).map(|place| array_editor(store, place)).collect::<Vec<_>>().view()
    });
    let add = move || {
        store.edit("add array", &mut |plan| {
            let azimuth_deg = if plan.place.latitude_deg < 0.0 { 0.0 } else { 180.0 };
            plan.arrays.push(Array { azimuth_deg, ..Array::default() });
        });
    };
    group(vec![
        arrays.view(),
        node("div")
            .attr("class", "row")
            .child(button_unless(L::AddArray, "button", full, add))
            .view(),
        charger(store, L::ThereIsAnAlternator, &ALTERNATOR, "alternator", ALTERNATOR_PART).view(),
        charger(store, L::ThereIsShore, &SHORE, "shore", SHORE_PART).view(),
    ])
}

fn own(plan: &Document, place: usize) -> Option<&Array> {
    plan.arrays.get(place)
}

fn change(plan: &mut Document, place: usize, set: impl FnOnce(&mut Array)) {
    if let Some(array) = plan.arrays.get_mut(place) {
        set(array);
    }
}

/// A figure of an array that must be there.
macro_rules! figure {
    ($field:ident, $($part:ident).+) => {
        Figure::new(
            Field::$field,
            |plan, place| own(plan, place).map(|own| own.$($part).+),
            |plan, place, value| change(plan, place, |own| own.$($part).+ = value),
        )
    };
}

/// A figure of an array that is typical unless the sheet says otherwise.
macro_rules! typical {
    ($field:ident, $($part:ident).+, $typical:expr) => {
        Figure::new(
            Field::$field,
            |plan, place| own(plan, place)?.$($part).+,
            |plan, place, value| change(plan, place, |own| own.$($part).+ = Some(value)),
        )
        .or_typical(|plan, place| change(plan, place, |own| own.$($part).+ = None), $typical)
    };
}

const MODULES: [Figure; 3] = [
    figure!(ModulePower, module_w),
    figure!(InSeries, in_series).label(L::ModulesInSeries),
    figure!(InParallel, in_parallel).label(L::StringsInParallel),
];

const POSITION: [Figure; 2] = [
    figure!(Tilt, tilt_deg).hint(L::TiltHint).slider(0.0, 90.0, 5.0),
    figure!(Azimuth, azimuth_deg).hint(L::AzimuthHint).slider(0.0, 360.0, 5.0),
];

const CONTROLLER: [Figure; 2] = [
    figure!(ChargerCurrent, controller.limit_a).label(L::ControllerLimit),
    typical!(ControllerVoltage, controller.max_v, |_, _| None).hint(L::ControllerVoltageHint),
];

const SHADE: [Figure; 3] = [
    figure!(Shading, shading.morning_pct).label(L::ShadeMorning).slider(0.0, 100.0, 5.0),
    figure!(Shading, shading.midday_pct).label(L::ShadeMidday).slider(0.0, 100.0, 5.0),
    figure!(Shading, shading.afternoon_pct).label(L::ShadeAfternoon).slider(0.0, 100.0, 5.0),
];

const SHEET: [Figure; 8] = [
    figure!(Loss, losses.dirt_pct).label(L::Dirt),
    figure!(Loss, losses.cable_pct).label(L::Cable),
    figure!(Loss, losses.ageing_pct).label(L::Ageing),
    figure!(Loss, losses.other_pct).label(L::OtherLosses),
    typical!(ModuleVoltage, best_point_v, |solved, place| module(solved, place)
        .map(|own| own.best.0))
    .label(L::BestPoint),
    typical!(ModuleVoltage, open_circuit_v, |solved, place| module(solved, place)
        .map(|own| own.open.0))
    .label(L::OpenCircuit),
    typical!(ModuleCurrent, short_circuit_a, |solved, place| module(solved, place)
        .map(|own| own.short.0)),
    typical!(PowerCoefficient, power_pct_per_k, |_, _| Some(POWER_PER_K.0)),
];

fn resolved(solved: &Solved, place: usize) -> Option<&sunlarder_engine::source::Array> {
    solved.system.arrays.iter().find(|own| usize::from(own.place) == place)
}

fn module(solved: &Solved, place: usize) -> Option<sunlarder_engine::source::Module> {
    resolved(solved, place).map(|array| array.module)
}

fn array_editor(store: Store, place: usize) -> View {
    let on = part(store, place, |plan, place| own(plan, place).is_some_and(|own| own.on));
    let set_on =
        edit(store, "array on", place, |plan, place, on| change(plan, place, |own| own.on = on));
    let delete = move || {
        store.edit("delete array", &mut |plan| {
            if place < plan.arrays.len() {
                plan.arrays.remove(place);
            }
        });
    };
    let shade = more(L::Shade, move || {
        group(vec![
            node("p").attr("class", "hint").child(WORDS.label(L::ShadeHint)).view(),
            fields(store, place, &SHADE).view(),
        ])
    });
    let sheet = more(L::LossesAndSheet, move || {
        group(vec![
            node("p").attr("class", "hint").child(WORDS.label(L::SheetFirst)).view(),
            fields(store, place, &SHEET).view(),
            node("p").attr("class", "hint").child(WORDS.label(L::HeatIsComputed)).view(),
        ])
    });
    node("section")
        .attr("class", "editor part")
        .attr("aria-label", WORDS.array(place))
        .child(node("h3").child(WORDS.array(place)).view())
        .child(toggle(L::Counted, on, set_on))
        .child(fields(store, place, &MODULES))
        .child(position(store, place))
        .child(controller(store, place))
        .child(shade)
        .child(sheet)
        .child(
            node("div")
                .attr("class", "row")
                .child(button(L::DeleteArray, "button quiet danger", delete))
                .view(),
        )
        .view()
}

fn position(store: Store, place: usize) -> View {
    let mounting = part(store, place, |plan, place| {
        usize::from(own(plan, place).is_some_and(|own| own.mounting == Mounting::Flush))
    });
    let set = edit(store, "mounting", place, |plan, place, at: usize| {
        change(plan, place, |own| {
            own.mounting = if at == 1 { Mounting::Flush } else { Mounting::Open }
        });
    });
    // Searching for the best tilt costs more than an edit may: it is done when asked for.
    let asked = RwSignal::new(false);
    let best = dynamic(move || {
        if !asked.get() {
            return button(L::WhichTiltIsBest, "button quiet", move || asked.set(true));
        }
        let sentence = store.answers.with(|answers| {
            let solved = answers.solved()?;
            let best = best_tilts(&solved.system, resolved(solved, place)?);
            Some(WORDS.best_tilt(&best, solved.outlook.month))
        });
        sentence.unwrap_or_default().view()
    });
    group(vec![
        fields(store, place, &POSITION).view(),
        choice(L::Mounting, &[L::MountedOpen, L::MountedFlush], mounting, set).view(),
        node("div").attr("class", "note").attr("aria-live", "polite").child(best).view(),
    ])
}

fn controller(store: Store, place: usize) -> View {
    let kind = part(store, place, |plan, place| {
        usize::from(own(plan, place).is_some_and(|own| own.controller.kind == ControllerKind::Pwm))
    });
    let set = edit(store, "controller", place, |plan, place, at: usize| {
        let kind = if at == 1 { ControllerKind::Pwm } else { ControllerKind::Mppt };
        change(plan, place, |own| own.controller.kind = kind);
    });
    group(vec![
        choice(L::ChargeController, &[L::Mppt, L::Pwm], kind, set).view(),
        fields(store, place, &CONTROLLER).view(),
    ])
}

/// Where a charger stands in the plan.
#[derive(Clone, Copy)]
struct ChargerPart {
    get: fn(&Document) -> Option<&Charger>,
    get_mut: fn(&mut Document) -> &mut Option<Charger>,
}

const ALTERNATOR_PART: ChargerPart =
    ChargerPart { get: |plan| plan.alternator.as_ref(), get_mut: |plan| &mut plan.alternator };
const SHORE_PART: ChargerPart =
    ChargerPart { get: |plan| plan.shore.as_ref(), get_mut: |plan| &mut plan.shore };

const ALTERNATOR: [Figure; 1] = [Figure::new(
    Field::ChargerCurrent,
    |plan, _| plan.alternator.as_ref().map(|own| own.limit_a),
    |plan, _, value| {
        if let Some(own) = &mut plan.alternator {
            own.limit_a = value;
        }
    },
)
.label(L::ChargerLimit)
.hint(L::AlternatorHint)];
const SHORE: [Figure; 1] = [Figure::new(
    Field::ChargerCurrent,
    |plan, _| plan.shore.as_ref().map(|own| own.limit_a),
    |plan, _, value| {
        if let Some(own) = &mut plan.shore {
            own.limit_a = value;
        }
    },
)
.label(L::ChargerLimit)
.hint(L::ShoreHint)];

/// A charger that is there or not, with its limit and hours.
fn charger(
    store: Store,
    title: L,
    figures: &'static [Figure],
    kind: &'static str,
    at: ChargerPart,
) -> View {
    let there =
        memo(Box::new(move || store.plan.with(|plan| (at.get)(plan).is_some_and(|own| own.on))));
    let set_there = Callback::new(move |on: bool| {
        store.edit(kind, &mut |plan| match ((at.get_mut)(plan), on) {
            (Some(charger), on) => charger.on = on,
            (none, true) => *none = Some(Charger::default()),
            (_, false) => {}
        });
    });
    let figures = when(there, move || {
        let schedule = memo(Box::new(move || {
            store.plan.with(|plan| {
                (at.get)(plan)
                    .map_or_else(|| Charger::default().schedule, |own| own.schedule.clone())
            })
        }));
        let set = Callback::new(move |schedule| {
            let mut schedule = Some(schedule);
            store.edit(kind, &mut |plan| {
                if let (Some(own), Some(schedule)) = ((at.get_mut)(plan), schedule.take()) {
                    own.schedule = schedule;
                }
            });
        });
        group(vec![fields(store, 0, figures).view(), schedule_editor(schedule, set).view()])
    });
    node("div").attr("class", "part").child(toggle(title, there, set_there)).child(figures).view()
}
