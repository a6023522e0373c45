//! The twelve months of sun and temperature that are used, and a person's own figures instead.

use leptos::prelude::*;
use sunlarder_engine::document::{Document, Field, Place};
use sunlarder_engine::words::{Label as L, rounded};

use super::field::{NumberField, Toggle};
use crate::bind::{edit, part};
use crate::store::{Store, WORDS};

/// Sun and temperature of each month as the plan now uses them.
fn used(store: Store) -> ([f64; 12], [f64; 12]) {
    store.answers.with(|answers| {
        answers.solved().map_or(([0.0; 12], [0.0; 12]), |solved| {
            let climate = &solved.system.climate;
            (climate.irradiation().map(|sun| sun.0), climate.temperature.map(|own| own.0))
        })
    })
}

/// The table, with switches to put in one's own.
#[component]
pub(crate) fn OwnClimate() -> impl IntoView {
    let store = Store::get();
    let own_sun = part(store, |plan| plan.place.peak_sun_h.is_some());
    let own_air = part(store, |plan| plan.place.temperature_c.is_some());
    let round = |field: Field, values: [f64; 12]| values.map(|value| field.range().rounded(value));
    let set_sun = edit(store, "own sun", move |plan: &mut Document, own: bool| {
        plan.place.peak_sun_h = own.then(|| round(Field::PeakSun, untrack(|| used(store).0)));
    });
    let set_air = edit(store, "own air", move |plan: &mut Document, own: bool| {
        plan.place.temperature_c =
            own.then(|| round(Field::AirTemperature, untrack(|| used(store).1)));
    });
    let row = move |month: usize| {
        view! {
            <tr>
                <th scope="row">{WORDS.month(month)}</th>
                <td>{move || rounded(used(store).0[month])}</td>
                <td>{move || rounded(used(store).1[month])}</td>
            </tr>
        }
    };
    view! {
        <div class="table" tabindex="0" role="region" aria-label=WORDS.label(L::SunAndTemperature)>
            <table>
                <thead>
                    <tr>
                        <th scope="col">{WORDS.label(L::Month)}</th>
                        <th scope="col">{WORDS.label(L::PeakSunHours)}</th>
                        <th scope="col">"°C"</th>
                    </tr>
                </thead>
                <tbody>{(0..12).map(row).collect_view()}</tbody>
            </table>
        </div>
        <Toggle label=WORDS.label(L::OwnSun) value=own_sun set=set_sun />
        {move || own_sun.get().then(|| view! {
            <Twelve field=Field::PeakSun unit="h" get=|place| place.peak_sun_h set=|place, own| place.peak_sun_h = own />
        })}
        <Toggle label=WORDS.label(L::OwnAir) value=own_air set=set_air />
        {move || own_air.get().then(|| view! {
            <Twelve field=Field::AirTemperature unit="°C" get=|place| place.temperature_c set=|place, own| place.temperature_c = own />
        })}
    }
}

/// Twelve boxes, one a month.
#[component]
fn Twelve(
    field: Field,
    unit: &'static str,
    get: fn(&Place) -> Option<[f64; 12]>,
    set: fn(&mut Place, Option<[f64; 12]>),
) -> impl IntoView {
    let store = Store::get();
    let one = move |month: usize| {
        let value = part(store, move |plan| get(&plan.place).map(|own| own[month]));
        let change = edit(store, "own climate", move |plan: &mut Document, value: Option<f64>| {
            if let (Some(mut own), Some(value)) = (get(&plan.place), value) {
                own[month] = value;
                set(&mut plan.place, Some(own));
            }
        });
        view! { <NumberField label=WORDS.month(month) field=field unit=unit value=value set=change /> }
    };
    view! { <div class="fields">{(0..12).map(one).collect_view()}</div> }
}
