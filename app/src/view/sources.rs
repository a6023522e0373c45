//! What comes in? Arrays with their controllers, the horizon around them, and what else charges.

use crate::signal::*;
use sunlarder_engine::document::{
    Array, ControllerKind, Document, Field, List, Mounting, array_removed,
};
use sunlarder_engine::outlook::best_tilts;
use sunlarder_engine::quantity::Degrees;
use sunlarder_engine::sky::equatorward;
use sunlarder_engine::source::POWER_PER_K;
use sunlarder_engine::words::{Label as L, Term, decimal};
use sunlarder_worker::leaf::Topic;

use super::chargers::chargers;
use super::field::{Figure, button, button_saying, button_unless, choice, fields, more, toggle};
use super::help::with_help;
use super::question::question;
use crate::bind::{edit, part, said};
use crate::dom::node::{Child as _, View, group, node, nothing};
use crate::dom::part::{dynamic, when};
use crate::drawers::drawer;
use crate::store::{Opened, Store, WORDS, words};

/// The question with its answer and the sources.
pub(crate) fn sources(store: Store) -> View {
    question(L::WhatComesIn, said(store, answer), false, move || {
        drawer(store, move |drawers| (drawers.sources)(store))
    })
}

fn answer(solved: &Opened) -> String {
    let system = &solved.system;
    let sun: f64 = system.arrays.iter().map(|array| array.rated().0).sum();
    let mut parts = Vec::new();
    if sun > 0.0 {
        parts.push(WORDS.of_sun(&words().rounded(sun)));
    }
    let others = [
        (system.turbine.is_some(), L::Turbine),
        (system.alternator.is_some(), L::Engine),
        (system.generator.is_some(), L::Generator),
        (system.shore.is_some(), L::Shore),
    ];
    let others = others.into_iter().filter(|(there, _)| *there);
    parts.extend(others.map(|(_, label)| WORDS.label(label).to_owned()));
    if parts.is_empty() { WORDS.label(L::Nothing).to_owned() } else { parts.join(", ") }
}

pub(super) fn inside(store: Store) -> View {
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
        chargers(store),
        more(L::HorizonAround, move || horizon(store)).view(),
    ])
}

/// The horizon in a direction; the place counts by 30° clockwise from north.
static HORIZON: Figure = Figure::new(
    Field::Horizon,
    |plan, place| plan.place.horizon_deg?.get(place).copied(),
    |plan, place, value| {
        let own = plan.place.horizon_deg.as_mut();
        if let Some(own) = own.and_then(|own| own.get_mut(place)) {
            *own = value;
        }
    },
);
/// The same all around, while it is.
static HORIZON_OF_ALL: Figure = Figure::new(
    Field::Horizon,
    |plan, _| {
        let all = plan.place.horizon_deg?;
        all.first().copied().filter(|first| all.iter().all(|own| own == first))
    },
    |plan, _, value| {
        if let Some(all) = &mut plan.place.horizon_deg {
            *all = [value; 12];
        }
    },
)
.blank();

fn horizon(store: Store) -> View {
    let there = part(store, 0, |plan, _| plan.place.horizon_deg.is_some());
    let switch = edit(store, "horizon", 0, |plan, _, on: bool| {
        plan.place.horizon_deg = on.then_some([0.0; 12]);
    });
    let boxes = when(there, move || {
        let named = |place| HORIZON.named(store, place, WORDS.direction(place));
        let all: Vec<View> = (0..12).map(named).collect();
        group(vec![
            HORIZON_OF_ALL.named(store, 0, WORDS.label(L::SameForAll)),
            node("div").attr("class", "fields").child(all).view(),
        ])
    });
    group(vec![
        node("p").attr("class", "hint").child(WORDS.label(L::HorizonHint)).view(),
        toggle(L::HorizonIsKnown, there, switch).view(),
        boxes.view(),
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

const CONTROLLER: [Figure; 3] = [
    figure!(ChargerCurrent, controller.limit_a).label(L::ControllerLimit),
    typical!(ControllerVoltage, controller.max_v, |_, _| None).hint(L::ControllerVoltageHint),
    figure!(ControllerSelfUse, controller_self_use_w),
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

fn resolved(solved: &Opened, place: usize) -> Option<&sunlarder_engine::source::Array> {
    solved.system.arrays.iter().find(|own| usize::from(own.place) == place)
}

fn module(solved: &Opened, place: usize) -> Option<sunlarder_engine::source::Module> {
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
                array_removed(&mut plan.checks, place as u16);
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
        let best = store.answers.with(|answers| {
            let solved = answers.solved()?;
            let best = best_tilts(&solved.system, resolved(solved, place)?);
            Some((WORDS.best_tilt(&best, solved.opening.month), best))
        });
        let Some((sentence, best)) = best else { return nothing() };
        let mut tilts = vec![best.month.0, best.year.0];
        tilts.dedup();
        let take = |tilt: Degrees| {
            let words = WORDS.use_tilt(&format!("{}°", decimal(tilt.0, 0)));
            button_saying(words, "button quiet", move || {
                store.edit("tilt", &mut |plan| {
                    let azimuth = equatorward(Degrees(plan.place.latitude_deg)).0;
                    change(plan, place, |own| {
                        (own.tilt_deg, own.azimuth_deg) = (tilt.0.round(), azimuth);
                    });
                });
            })
        };
        group(vec![
            node("p").child(sentence).view(),
            node("div")
                .attr("class", "row")
                .child(tilts.into_iter().map(take).collect::<Vec<_>>())
                .view(),
        ])
    });
    group(vec![
        fields(store, place, &POSITION).view(),
        with_help(
            store,
            L::Mounting,
            Topic::Term(Term::Mounting),
            choice(L::Mounting, &[L::MountedOpen, L::MountedFlush], mounting, set),
        ),
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
        with_help(
            store,
            L::ChargeController,
            Topic::Term(Term::ChargeController),
            choice(L::ChargeController, &[L::Mppt, L::Pwm], kind, set),
        ),
        fields(store, place, &CONTROLLER).view(),
    ])
}
