//! One load, open for editing.

use leptos::prelude::*;
use sunlarder_engine::document::{Cooling, Field, Load, Rating, Supply, When};
use sunlarder_engine::load::catalogue::{Appliance, entry};
use sunlarder_engine::words::{Label as L, amount};

use super::field::{Choice, NumberField, Select, TextField, Toggle};
use super::schedule::ScheduleEditor;
use crate::bind::{load_edit, load_figure, load_part};
use crate::load_row;
use crate::store::{Store, WORDS};

/// How a power is stated.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stated {
    Power,
    Plate,
    Label,
    Output,
}

fn stated(rating: &Rating) -> Stated {
    match rating {
        Rating::PowerW(_) => Stated::Power,
        Rating::Plate { .. } => Stated::Plate,
        Rating::LabelKwhPerYear(_) => Stated::Label,
        Rating::Output { .. } => Stated::Output,
    }
}

/// Running power of a load, to carry it over when it is stated another way.
fn watts(load: &Load) -> f64 {
    sunlarder_engine::load::Load::parse(load, 0, &mut ()).power.0
}

/// The same power stated another way.
fn restated(load: &Load, way: Stated) -> Rating {
    let power = watts(load);
    let at_v = if load.supply == Supply::Ac { 230.0 } else { 12.0 };
    let within = |field: Field, value: f64| {
        let range = field.range();
        range.rounded(value.clamp(range.min, range.max))
    };
    match way {
        Stated::Power => Rating::PowerW(within(Field::LoadPower, power)),
        Stated::Plate => {
            Rating::Plate { current_a: within(Field::LoadCurrent, power / at_v), at_v }
        }
        Stated::Label => {
            let year = power * load.duty_pct / 100.0 * 8.76;
            Rating::LabelKwhPerYear(within(Field::LabelEnergy, year))
        }
        Stated::Output => Rating::Output {
            power_w: within(Field::OutputPower, power * 0.64),
            efficiency_pct: 64.0,
        },
    }
}

/// The editor of one load.
#[component]
pub(crate) fn LoadEditor(
    /// Its place in the plan.
    place: usize,
    /// Which load is open.
    open: RwSignal<Option<usize>>,
) -> impl IntoView {
    let store = Store::get();
    let own_name = load_part(store, place, |load| load.name.clone());
    let usual_name = load_part(store, place, |load| {
        load_row::name(&Load { name: String::new(), ..load.clone() })
    });
    let on = load_part(store, place, |load| load.on);
    let supply = load_part(store, place, |load| load.supply);
    let vital = load_part(store, place, |load| load.vital);
    let (quantity, set_quantity) = load_figure(
        store,
        place,
        "quantity",
        |load| load.quantity,
        |load, value| load.quantity = value,
    );
    let schedule = load_part(store, place, |load| load.schedule.clone());
    let supplies = vec![
        (Supply::Dc, WORDS.label(L::OnTheBank).to_owned()),
        (Supply::Ac, WORDS.label(L::ByInverter).to_owned()),
    ];
    view! {
        <div class="editor">
            <Toggle label=WORDS.label(L::Counted) value=on set=load_edit(store, place, "load on", |load, on| load.on = on) />
            <div class="fields">
                <TextField
                    label=WORDS.label(L::Name)
                    value=own_name
                    typical=usual_name
                    set=load_edit(store, place, "load name", |load, name| load.name = name)
                />
                <NumberField field=Field::Quantity value=quantity set=set_quantity />
            </div>
            <Power place=place />
            <ScheduleEditor value=schedule set=load_edit(store, place, "load hours", |load, new| load.schedule = new) />
            <Choice
                legend=WORDS.label(L::FedBy)
                options=supplies
                value=supply
                set=load_edit(store, place, "load supply", |load, new| load.supply = new)
            />
            <details class="more">
                <summary>{WORDS.label(L::More)}</summary>
                <Details place=place />
                <Toggle label=WORDS.label(L::Vital) value=vital set=load_edit(store, place, "load vital", |load, new| load.vital = new) />
            </details>
            <Actions place=place open=open />
        </div>
    }
}

#[component]
fn Power(place: usize) -> impl IntoView {
    let store = Store::get();
    let way = load_part(store, place, |load| stated(&load.rating));
    let set_way =
        load_edit(store, place, "load rating", |load, way| load.rating = restated(load, way));
    let ways = vec![
        (Stated::Power, WORDS.label(L::InWatts).to_owned()),
        (Stated::Plate, WORDS.label(L::InVoltsAndAmps).to_owned()),
        (Stated::Label, WORDS.label(L::ByEnergyLabel).to_owned()),
        (Stated::Output, WORDS.label(L::ByOutput).to_owned()),
    ];
    let range = load_part(store, place, |load| {
        let known = load.appliance.and_then(Appliance::from_number).map(entry);
        known.map(|known| WORDS.usual_range(&amount(known.low), &amount(known.high)))
    });
    view! {
        <Select label=WORDS.label(L::PowerIsStated) options=ways value=way set=set_way />
        {move || match way.get() {
            Stated::Power => power_box(store, place).into_any(),
            Stated::Plate => plate_boxes(store, place).into_any(),
            Stated::Label => label_box(store, place).into_any(),
            Stated::Output => output_boxes(store, place).into_any(),
        }}
        <p class="hint">{range}</p>
    }
}

fn power_box(store: Store, place: usize) -> impl IntoView {
    let (value, set) = load_figure(
        store,
        place,
        "load power",
        |load| if let Rating::PowerW(power) = load.rating { power } else { 0.0 },
        |load, value| load.rating = Rating::PowerW(value),
    );
    view! { <NumberField field=Field::LoadPower value=value set=set /> }
}

fn plate_boxes(store: Store, place: usize) -> impl IntoView {
    let amps = load_figure(
        store,
        place,
        "load plate",
        |load| if let Rating::Plate { current_a, .. } = load.rating { current_a } else { 0.0 },
        |load, value| {
            if let Rating::Plate { current_a, .. } = &mut load.rating {
                *current_a = value
            }
        },
    );
    let volts = load_figure(
        store,
        place,
        "load plate",
        |load| if let Rating::Plate { at_v, .. } = load.rating { at_v } else { 12.0 },
        |load, value| {
            if let Rating::Plate { at_v, .. } = &mut load.rating {
                *at_v = value
            }
        },
    );
    view! {
        <div class="fields">
            <NumberField field=Field::LoadCurrent value=amps.0 set=amps.1 />
            <NumberField field=Field::PlateVoltage value=volts.0 set=volts.1 />
        </div>
    }
}

fn label_box(store: Store, place: usize) -> impl IntoView {
    let (value, set) = load_figure(
        store,
        place,
        "load label",
        |load| if let Rating::LabelKwhPerYear(energy) = load.rating { energy } else { 0.0 },
        |load, value| load.rating = Rating::LabelKwhPerYear(value),
    );
    view! { <NumberField field=Field::LabelEnergy unit="kWh" value=value set=set hint=WORDS.label(L::LabelHint) /> }
}

fn output_boxes(store: Store, place: usize) -> impl IntoView {
    let output = load_figure(
        store,
        place,
        "load output",
        |load| if let Rating::Output { power_w, .. } = load.rating { power_w } else { 0.0 },
        |load, value| {
            if let Rating::Output { power_w, .. } = &mut load.rating {
                *power_w = value
            }
        },
    );
    let share = load_figure(
        store,
        place,
        "load output",
        |load| {
            if let Rating::Output { efficiency_pct, .. } = load.rating {
                efficiency_pct
            } else {
                64.0
            }
        },
        |load, value| {
            if let Rating::Output { efficiency_pct, .. } = &mut load.rating {
                *efficiency_pct = value
            }
        },
    );
    view! {
        <div class="fields">
            <NumberField field=Field::OutputPower value=output.0 set=output.1 />
            <NumberField field=Field::OutputEfficiency value=share.0 set=share.1 hint=WORDS.label(L::OutputHint) />
        </div>
    }
}

/// Duty, start, and how it follows the heat.
#[component]
fn Details(place: usize) -> impl IntoView {
    let store = Store::get();
    let duty = load_figure(
        store,
        place,
        "duty",
        |load| load.duty_pct,
        |load, value| load.duty_pct = value,
    );
    let surge =
        load_figure(store, place, "surge", |load| load.surge, |load, value| load.surge = value);
    let cools = load_part(store, place, |load| load.cooling.is_some());
    let set_cools = load_edit(store, place, "cooling", |load, on: bool| {
        load.cooling = on.then_some(Cooling { inside_c: 4.0, reference_c: 25.0 });
        if on {
            load.schedule.when = When::Always;
        }
    });
    let inside = load_figure(
        store,
        place,
        "cooling",
        |load| load.cooling.map_or(4.0, |own| own.inside_c),
        |load, value| {
            if let Some(own) = &mut load.cooling {
                own.inside_c = value
            }
        },
    );
    let reference = load_figure(
        store,
        place,
        "cooling",
        |load| load.cooling.map_or(25.0, |own| own.reference_c),
        |load, value| {
            if let Some(own) = &mut load.cooling {
                own.reference_c = value
            }
        },
    );
    view! {
        <div class="fields">
            <NumberField field=Field::Duty value=duty.0 set=duty.1 hint=WORDS.label(L::DutyHint) />
            <NumberField field=Field::Surge unit="×" value=surge.0 set=surge.1 hint=WORDS.label(L::SurgeHint) />
        </div>
        <Toggle label=WORDS.label(L::FollowsTheHeat) value=cools set=set_cools />
        {move || cools.get().then(|| view! {
            <div class="fields">
                <NumberField field=Field::FridgeInside value=inside.0 set=inside.1 />
                <NumberField field=Field::FridgeReference value=reference.0 set=reference.1 hint=WORDS.label(L::ReferenceHint) />
            </div>
        })}
    }
}

#[component]
fn Actions(place: usize, open: RwSignal<Option<usize>>) -> impl IntoView {
    let store = Store::get();
    let last = move || store.plan.with(|plan| place + 1 >= plan.loads.len());
    let duplicate = move |_| {
        store.edit("duplicate load", |plan| {
            if let Some(copy) = plan.loads.get(place).cloned() {
                plan.loads.insert(place + 1, copy);
            }
        });
        open.set(Some(place + 1));
    };
    let swap = move |other: usize| {
        store.edit("move load", |plan| {
            if place < plan.loads.len() && other < plan.loads.len() {
                plan.loads.swap(place, other);
            }
        });
        open.set(Some(other));
    };
    let delete = move |_| {
        let name = store.plan.with_untracked(|plan| plan.loads.get(place).map(load_row::name));
        open.set(None);
        store.edit("delete load", |plan| {
            if place < plan.loads.len() {
                plan.loads.remove(place);
            }
        });
        store.say(WORDS.deleted(&name.unwrap_or_default()));
    };
    view! {
        <div class="row">
            <button type="button" class="button quiet" on:click=duplicate>{WORDS.label(L::Duplicate)}</button>
            <button type="button" class="button quiet" disabled=place == 0 on:click=move |_| swap(place.saturating_sub(1))>
                {WORDS.label(L::MoveUp)}
            </button>
            <button type="button" class="button quiet" disabled=last on:click=move |_| swap(place + 1)>
                {WORDS.label(L::MoveDown)}
            </button>
            <button type="button" class="button quiet danger" on:click=delete>{WORDS.label(L::Delete)}</button>
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stating_a_power_another_way_keeps_it() {
        let load = Load { rating: Rating::PowerW(120.0), duty_pct: 40.0, ..Load::default() };
        for way in [Stated::Plate, Stated::Label, Stated::Output] {
            let rating = restated(&load, way);
            let other = Load { rating, ..load.clone() };
            assert!((watts(&other) / 120.0 - 1.0).abs() < 0.01, "{}", watts(&other));
        }
    }
}
