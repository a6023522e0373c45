//! What charges beside the sun: the engine, a generator, shore power, wind or water.

use crate::signal::*;
use sunlarder_engine::document::{
    Charger, Document, Field, Generator, Schedule, Turbine, TurbineOutput,
};
use sunlarder_engine::words::Label as L;

use super::field::{Figure, choice, fields, toggle};
use super::schedule::schedule_editor;
use crate::bind::{edit, part, said};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::{dynamic, when};
use crate::store::{Opened, Store, WORDS, words};

/// A source with hours of its own, where it stands in the plan.
struct Timed {
    title: L,
    kind: &'static str,
    figures: &'static [Figure],
    there: fn(&Document) -> bool,
    /// Switched off it keeps its figures.
    switch: fn(&mut Document, bool),
    schedule: fn(&mut Document) -> Option<&mut Schedule>,
    get: fn(&Document) -> Option<&Schedule>,
    /// What it comes to.
    said: Option<fn(&Opened) -> String>,
}

/// A figure of a section that may be missing; without one it is empty.
macro_rules! figure {
    ($section:ident, $field:ident, $part:ident) => {
        Figure::new(
            Field::$field,
            |plan, _| plan.$section.as_ref().map(|own| own.$part),
            |plan, _, value| {
                if let Some(own) = &mut plan.$section {
                    own.$part = value;
                }
            },
        )
    };
}

/// A figure that is not counted unless stated.
macro_rules! unstated {
    ($section:ident, $field:ident, $part:ident) => {
        Figure::new(
            Field::$field,
            |plan, _| plan.$section.as_ref()?.$part,
            |plan, _, value| {
                if let Some(own) = &mut plan.$section {
                    own.$part = Some(value);
                }
            },
        )
        .or_typical(
            |plan, _| {
                if let Some(own) = &mut plan.$section {
                    own.$part = None;
                }
            },
            |_, _| None,
        )
    };
}

/// A source with hours of its own by the field of its section.
macro_rules! timed {
    ($title:ident, $kind:literal, $figures:expr, $section:ident, $default:ident, $said:expr) => {
        Timed {
            title: L::$title,
            kind: $kind,
            figures: $figures,
            there: |plan| plan.$section.as_ref().is_some_and(|own| own.on),
            switch: |plan, on| match &mut plan.$section {
                Some(own) => own.on = on,
                none => *none = on.then($default::default),
            },
            schedule: |plan| plan.$section.as_mut().map(|own| &mut own.schedule),
            get: |plan| plan.$section.as_ref().map(|own| &own.schedule),
            said: $said,
        }
    };
}

static ALTERNATOR: Timed = timed!(
    ThereIsAnAlternator,
    "alternator",
    &[
        figure!(alternator, ChargerCurrent, limit_a)
            .label(L::ChargerLimit)
            .hint(L::AlternatorHint)
            .usual(20.0),
        figure!(alternator, Derating, derating_pct).hint(L::DeratingHint),
    ],
    alternator,
    Charger,
    None
);
static GENERATOR: Timed = timed!(
    ThereIsAGenerator,
    "generator",
    &[
        figure!(generator, ChargerCurrent, limit_a)
            .label(L::ChargerLimit)
            .hint(L::GeneratorHint)
            .usual(40.0),
        figure!(generator, GeneratorStart, start_pct).usual(30.0),
        figure!(generator, GeneratorStop, stop_pct).usual(80.0),
        figure!(generator, MinimumRun, minimum_run_min).usual(60.0),
        unstated!(generator, FuelPerHour, fuel_l_per_h),
        unstated!(generator, FuelPerEnergy, fuel_l_per_kwh),
    ],
    generator,
    Generator,
    Some(generated)
);
static SHORE: Timed = timed!(
    ThereIsShore,
    "shore",
    &[figure!(shore, ChargerCurrent, limit_a)
        .label(L::ChargerLimit)
        .hint(L::ShoreHint)
        .usual(20.0)],
    shore,
    Charger,
    None
);

/// What the generator does on a mean day of the month.
fn generated(own: &Opened) -> String {
    words().generator_in(&own.opening.now)
}

/// All of them, each there or not.
pub(crate) fn chargers(store: Store) -> View {
    group(vec![
        timed(store, &ALTERNATOR),
        timed(store, &GENERATOR),
        timed(store, &SHORE),
        turbine(store),
    ])
}

fn timed(store: Store, own: &'static Timed) -> View {
    let there = memo(Box::new(move || store.plan.with(own.there)));
    let switch =
        Callback::new(move |on: bool| store.edit(own.kind, &mut |plan| (own.switch)(plan, on)));
    let figures = when(there, move || {
        let schedule = memo(Box::new(move || {
            let schedule = store.plan.with(|plan| (own.get)(plan).cloned());
            schedule.unwrap_or_else(|| Charger::default().schedule)
        }));
        let set = Callback::new(move |schedule| {
            let mut schedule = Some(schedule);
            store.edit(own.kind, &mut |plan| {
                if let (Some(own), Some(schedule)) = ((own.schedule)(plan), schedule.take()) {
                    *own = schedule;
                }
            });
        });
        let told = own.said.map(|say| {
            node("p").attr("class", "note").attr("aria-live", "polite").child(said(store, say))
        });
        group(vec![
            fields(store, 0, own.figures).view(),
            schedule_editor(store, schedule, set).view(),
            told.map(|told| told.view()).view(),
        ])
    });
    node("div").attr("class", "part").child(toggle(own.title, there, switch)).child(figures).view()
}

/// A month's output of the turbine; the place is the month.
fn output(plan: &Document, month: usize) -> Option<f64> {
    match &plan.turbine.as_ref()?.output {
        TurbineOutput::MeanW(months) | TurbineOutput::AhPerDay(months) => {
            months.get(month).copied()
        }
    }
}

fn set_output(plan: &mut Document, month: usize, value: f64) {
    let own = plan.turbine.as_mut().map(|own| &mut own.output);
    if let Some(TurbineOutput::MeanW(months) | TurbineOutput::AhPerDay(months)) = own
        && let Some(own) = months.get_mut(month)
    {
        *own = value;
    }
}

/// The output of all months, while it is the same.
fn output_of_all(plan: &Document, _: usize) -> Option<f64> {
    let all: Vec<f64> = (0..12).filter_map(|month| output(plan, month)).collect();
    all.first().copied().filter(|first| all.iter().all(|own| own == first))
}

fn set_output_of_all(plan: &mut Document, _: usize, value: f64) {
    for month in 0..12 {
        set_output(plan, month, value);
    }
}

static POWER_OF_ALL: Figure =
    Figure::new(Field::TurbinePower, output_of_all, set_output_of_all).usual(10.0);
static CHARGE_OF_ALL: Figure =
    Figure::new(Field::TurbineCharge, output_of_all, set_output_of_all).blank();
static POWER: Figure = Figure::new(Field::TurbinePower, output, set_output).usual(10.0);
static CHARGE: Figure = Figure::new(Field::TurbineCharge, output, set_output);
/// An hour's share of the turbine's day; the place is the hour.
static SHARE: Figure = Figure::new(
    Field::HourShare,
    |plan, hour| plan.turbine.as_ref()?.hours?.get(hour).copied(),
    |plan, hour, value| {
        let hours = plan.turbine.as_mut().and_then(|own| own.hours.as_mut());
        if let Some(own) = hours.and_then(|hours| hours.get_mut(hour)) {
            *own = value;
        }
    },
);
/// How the hours of the day are called.
const HOURS: [&str; 24] = [
    "0 h", "1 h", "2 h", "3 h", "4 h", "5 h", "6 h", "7 h", "8 h", "9 h", "10 h", "11 h", "12 h",
    "13 h", "14 h", "15 h", "16 h", "17 h", "18 h", "19 h", "20 h", "21 h", "22 h", "23 h",
];

fn turbine(store: Store) -> View {
    let there = part(store, 0, |plan, _| plan.turbine.as_ref().is_some_and(|own| own.on));
    let switch = edit(store, "turbine", 0, |plan, _, on: bool| match &mut plan.turbine {
        Some(own) => own.on = on,
        none => *none = on.then(Turbine::default),
    });
    let way = part(store, 0, |plan, _| {
        let output = plan.turbine.as_ref().map(|own| &own.output);
        usize::from(matches!(output, Some(TurbineOutput::AhPerDay(_))))
    });
    let set_way = edit(store, "turbine output", 0, |plan, _, at: usize| {
        // Figures are not carried over: which voltage they would take is nobody's guess.
        let output = if at == 1 { TurbineOutput::AhPerDay } else { TurbineOutput::MeanW };
        if let Some(own) = &mut plan.turbine {
            own.output = output([0.0; 12]);
        }
    });
    let by_hour =
        part(store, 0, |plan, _| plan.turbine.as_ref().is_some_and(|own| own.hours.is_some()));
    let set_by_hour = edit(store, "turbine hours", 0, |plan, _, on: bool| {
        if let Some(own) = &mut plan.turbine {
            own.hours = on.then_some([1.0; 24]);
        }
    });
    let boxes = move |figure: &'static Figure, count: usize, name: fn(usize) -> &'static str| {
        let all: Vec<View> =
            (0..count).map(|place| figure.named(store, place, name(place))).collect();
        node("div").attr("class", "fields").child(all).view()
    };
    let figures = when(there, move || {
        let months = dynamic(move || {
            let (all, each) =
                if way.get() == 1 { (&CHARGE_OF_ALL, &CHARGE) } else { (&POWER_OF_ALL, &POWER) };
            group(vec![
                all.named(store, 0, WORDS.label(L::SameForAll)),
                boxes(each, 12, |at| WORDS.month(at)),
            ])
        });
        group(vec![
            node("p").attr("class", "hint").child(WORDS.label(L::TurbineHint)).view(),
            choice(L::PowerIsStated, &[L::InWatts, L::InAhADay], way, set_way).view(),
            months.view(),
            toggle(L::ByHour, by_hour, set_by_hour).view(),
            when(by_hour, move || {
                boxes(&SHARE, HOURS.len(), |at| HOURS.get(at).copied().unwrap_or_default())
            })
            .view(),
        ])
    });
    node("div")
        .attr("class", "part")
        .child(toggle(L::ThereIsATurbine, there, switch))
        .child(figures)
        .view()
}
