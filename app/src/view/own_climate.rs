//! The twelve months of sun and temperature that are used, and a person's own figures instead.

use leptos::prelude::*;
use sunlarder_engine::document::{Document, Field};
use sunlarder_engine::quantity::Unit;
use sunlarder_engine::words::Label as L;

use super::field::{Figure, toggle};
use super::table::table;
use crate::bind::{part, said};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::when;
use crate::store::{Solved, Store, WORDS, words};

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

fn rows(solved: &Solved) -> Vec<Vec<String>> {
    let climate = &solved.system.climate;
    let sun = climate.irradiation();
    let row = |month: usize| {
        vec![
            WORDS.month(month).to_owned(),
            words().rounded(sun[month].0),
            words().rounded(words().in_habit(climate.temperature[month].0, Unit::Celsius)),
        ]
    };
    (0..12).map(row).collect()
}

/// The table, with switches to put in one's own.
pub(crate) fn own_climate(store: Store) -> View {
    let own_sun = part(store, 0, |plan, _| plan.place.peak_sun_h.is_some());
    let own_air = part(store, 0, |plan, _| plan.place.temperature_c.is_some());
    let set_sun =
        switch(store, |plan, values| plan.place.peak_sun_h = values.map(|values| values.0));
    let set_air =
        switch(store, |plan, values| plan.place.temperature_c = values.map(|values| values.1));
    let heads = vec![L::Month, L::PeakSunHours, words().fitting(L::MeanTemperature)];
    let boxes = move |figure: &'static Figure| {
        let all: Vec<View> =
            (0..12).map(|month| figure.named(store, month, WORDS.month(month))).collect();
        node("div").attr("class", "fields").child(all).view()
    };
    let origin =
        said(store, |solved| WORDS.climate_origin(solved.system.climate.origin).to_owned());
    group(vec![
        node("p").attr("class", "hint").child(origin).view(),
        table(L::SunAndTemperature, heads, said(store, rows)).view(),
        toggle(L::OwnSun, own_sun, set_sun).view(),
        when(own_sun, move || boxes(&SUN)).view(),
        toggle(L::OwnAir, own_air, set_air).view(),
        when(own_air, move || boxes(&AIR)).view(),
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
