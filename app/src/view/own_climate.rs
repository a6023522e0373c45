//! The twelve months of sun and temperature that are used, and a person's own figures instead.

use crate::signal::*;
use sunlarder_engine::document::{Document, Field};
use sunlarder_engine::words::Label as L;
use sunlarder_worker::leaf::{Leaf, Topic};

use super::field::{Figure, toggle};
use super::help::with_help;
use super::leaf::leaf;
use crate::bind::part;
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::when;
use crate::store::{Store, WORDS};

/// What explains the two kinds of figures.
const SUN_TOPIC: Topic = Topic::Field(Field::PeakSun);
const AIR_TOPIC: Topic = Topic::Field(Field::AirTemperature);

/// The box of a month's own peak sun hours; the place is the month.
static SUN: Figure = Figure::new(
    Field::PeakSun,
    |plan, month| plan.place.peak_sun_h?.get(month).copied(),
    |plan, month, value| set(&mut plan.place.peak_sun_h, month, value),
);
/// The box of a month's own temperature.
static AIR: Figure = Figure::new(
    Field::AirTemperature,
    |plan, month| plan.place.temperature_c?.get(month).copied(),
    |plan, month, value| set(&mut plan.place.temperature_c, month, value),
);

fn set(own: &mut Option<[f64; 12]>, month: usize, value: f64) {
    if let Some(own) = own.as_mut().and_then(|own| own.get_mut(month)) {
        *own = value;
    }
}

/// Sun and temperature of each month as the plan now uses them, at the resolution of their boxes.
fn used(store: Store) -> Option<([f64; 12], [f64; 12])> {
    store.answers.with_untracked(|answers| {
        let climate = &answers.solved()?.system.climate;
        let (sun, air) = (Field::PeakSun.range(), Field::AirTemperature.range());
        Some((
            climate.irradiation().map(|own| sun.rounded(own.0)),
            climate.temperature.map(|own| air.rounded(own.0)),
        ))
    })
}

/// What is used, as the worker draws and tells it, with switches to put in one's own.
pub(crate) fn own_climate(store: Store) -> View {
    let own_sun = part(store, 0, |plan, _| plan.place.peak_sun_h.is_some());
    let own_air = part(store, 0, |plan, _| plan.place.temperature_c.is_some());
    let set_sun =
        switch(store, |plan, values| plan.place.peak_sun_h = values.map(|values| values.0));
    let set_air =
        switch(store, |plan, values| plan.place.temperature_c = values.map(|values| values.1));
    let boxes = move |title: L, figure: &'static Figure| {
        let all: Vec<View> =
            (0..12).map(|month| figure.named(store, month, WORDS.month(month))).collect();
        node("div")
            .attr("class", "fields twelve")
            .attr("role", "group")
            .attr("aria-label", WORDS.label(title))
            .child(all)
            .view()
    };
    group(vec![
        leaf(store, Leaf::Climate, String::new()),
        with_help(store, L::OwnSun, SUN_TOPIC, toggle(L::OwnSun, own_sun, set_sun)),
        when(own_sun, move || boxes(L::OwnSun, &SUN)).view(),
        with_help(store, L::OwnAir, AIR_TOPIC, toggle(L::OwnAir, own_air, set_air)),
        when(own_air, move || boxes(L::OwnAir, &AIR)).view(),
    ])
}

/// Sun and temperature of twelve months.
type Years = ([f64; 12], [f64; 12]);

/// A switch that begins one's own figures with those in use.
fn switch(store: Store, set: fn(&mut Document, Option<Years>)) -> Callback<bool> {
    Callback::new(move |own: bool| {
        let values = if own { used(store) } else { None };
        store.edit("own climate", &mut |plan| set(plan, values));
    })
}
