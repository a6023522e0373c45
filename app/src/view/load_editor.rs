//! One load, open for editing.

use leptos::prelude::*;
use sunlarder_engine::document::{Cooling, Document, Field, Load, Rating, Supply, When};
use sunlarder_engine::load::catalogue::{Appliance, entry};
use sunlarder_engine::quantity::Within;
use sunlarder_engine::words::Label as L;

use super::field::{Figure, button, button_unless, choice, fields, more, select, text_box, toggle};
use super::schedule::schedule_editor;
use crate::bind::{edit, of_load, part, to_load};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::{dynamic, when};
use crate::load_row;
use crate::store::{Store, WORDS, words};

/// How a power is stated, in the order in which it is offered.
const WAYS: [L; 4] = [L::InWatts, L::InVoltsAndAmps, L::ByEnergyLabel, L::ByOutput];

fn way_of(rating: &Rating) -> usize {
    match rating {
        Rating::PowerW(_) => 0,
        Rating::Plate { .. } => 1,
        Rating::LabelKwhPerYear(_) => 2,
        Rating::Output { .. } => 3,
    }
}

/// Running power of a load, to carry it over when it is stated another way.
fn watts(load: &Load) -> f64 {
    sunlarder_engine::load::Load::parse(load, 0, &mut ()).power.0
}

/// The same power stated another way.
fn restated(load: &Load, way: usize) -> Rating {
    let power = watts(load);
    let at_v = if load.supply == Supply::Ac { 230.0 } else { 12.0 };
    let within = |field: Field, value: f64| {
        let range = field.range();
        range.rounded(value.within(range.min, range.max))
    };
    match way {
        0 => Rating::PowerW(within(Field::LoadPower, power)),
        1 => Rating::Plate { current_a: within(Field::LoadCurrent, power / at_v), at_v },
        2 => {
            let year = power * load.duty_pct / 100.0 * 8.76;
            Rating::LabelKwhPerYear(within(Field::LabelEnergy, year))
        }
        _ => Rating::Output {
            power_w: within(Field::OutputPower, power * 0.64),
            efficiency_pct: 64.0,
        },
    }
}

const POWER: [Figure; 1] = [Figure::new(
    Field::LoadPower,
    |plan, place| match plan.loads.get(place)?.rating {
        Rating::PowerW(power) => Some(power),
        _ => None,
    },
    |plan, place, value| to_load(plan, place, |load| load.rating = Rating::PowerW(value)),
)];

const PLATE: [Figure; 2] = [
    Figure::new(
        Field::LoadCurrent,
        |plan, place| match plan.loads.get(place)?.rating {
            Rating::Plate { current_a, .. } => Some(current_a),
            _ => None,
        },
        |plan, place, value| {
            to_load(plan, place, |load| {
                if let Rating::Plate { current_a, .. } = &mut load.rating {
                    *current_a = value;
                }
            });
        },
    ),
    Figure::new(
        Field::PlateVoltage,
        |plan, place| match plan.loads.get(place)?.rating {
            Rating::Plate { at_v, .. } => Some(at_v),
            _ => None,
        },
        |plan, place, value| {
            to_load(plan, place, |load| {
                if let Rating::Plate { at_v, .. } = &mut load.rating {
                    *at_v = value;
                }
            });
        },
    ),
];

const LABEL: [Figure; 1] = [Figure::new(
    Field::LabelEnergy,
    |plan, place| match plan.loads.get(place)?.rating {
        Rating::LabelKwhPerYear(energy) => Some(energy),
        _ => None,
    },
    |plan, place, value| to_load(plan, place, |load| load.rating = Rating::LabelKwhPerYear(value)),
)
.hint(L::LabelHint)];

const OUTPUT: [Figure; 2] = [
    Figure::new(
        Field::OutputPower,
        |plan, place| match plan.loads.get(place)?.rating {
            Rating::Output { power_w, .. } => Some(power_w),
            _ => None,
        },
        |plan, place, value| {
            to_load(plan, place, |load| {
                if let Rating::Output { power_w, .. } = &mut load.rating {
                    *power_w = value;
                }
            });
        },
    ),
    Figure::new(
        Field::OutputEfficiency,
        |plan, place| match plan.loads.get(place)?.rating {
            Rating::Output { efficiency_pct, .. } => Some(efficiency_pct),
            _ => None,
        },
        |plan, place, value| {
            to_load(plan, place, |load| {
                if let Rating::Output { efficiency_pct, .. } = &mut load.rating {
                    *efficiency_pct = value;
                }
            });
        },
    )
    .hint(L::OutputHint),
];

static QUANTITY: Figure = Figure::new(
    Field::Quantity,
    |plan, place| of_load(plan, place, |load| load.quantity),
    |plan, place, value| to_load(plan, place, |load| load.quantity = value),
);

const DETAILS: [Figure; 3] = [
    Figure::new(
        Field::Duty,
        |plan, place| of_load(plan, place, |load| load.duty_pct),
        |plan, place, value| to_load(plan, place, |load| load.duty_pct = value),
    )
    .hint(L::DutyHint),
    Figure::new(
        Field::Surge,
        |plan, place| of_load(plan, place, |load| load.surge),
        |plan, place, value| to_load(plan, place, |load| load.surge = value),
    )
    .hint(L::SurgeHint),
    Figure::new(
        Field::PowerFactor,
        |plan, place| of_load(plan, place, |load| load.power_factor),
        |plan, place, value| to_load(plan, place, |load| load.power_factor = value),
    )
    .hint(L::PowerFactorHint),
];

const COOLING: [Figure; 2] = [
    Figure::new(
        Field::FridgeInside,
        |plan, place| Some(plan.loads.get(place)?.cooling?.inside_c),
        |plan, place, value| to_cooling(plan, place, |own| own.inside_c = value),
    ),
    Figure::new(
        Field::FridgeReference,
        |plan, place| Some(plan.loads.get(place)?.cooling?.reference_c),
        |plan, place, value| to_cooling(plan, place, |own| own.reference_c = value),
    )
    .hint(L::ReferenceHint),
];

fn to_cooling(plan: &mut Document, place: usize, set: impl FnOnce(&mut Cooling)) {
    to_load(plan, place, |load| {
        if let Some(cooling) = &mut load.cooling {
            set(cooling);
        }
    });
}

/// The editor of one load.
pub(crate) fn load_editor(store: Store, place: usize, open: RwSignal<Option<usize>>) -> View {
    let on =
        part(store, place, |plan, place| of_load(plan, place, |load| load.on).unwrap_or_default());
    let set_on =
        edit(store, "load on", place, |plan, place, on| to_load(plan, place, |load| load.on = on));
    let schedule = part(store, place, |plan, place| {
        of_load(plan, place, |load| load.schedule.clone())
            .unwrap_or_else(|| Load::default().schedule)
    });
    let set_schedule = edit(store, "load hours", place, |plan, place, new| {
        to_load(plan, place, |load| load.schedule = new);
    });
    let supply = part(store, place, |plan, place| {
        usize::from(of_load(plan, place, |load| load.supply == Supply::Ac).unwrap_or_default())
    });
    let set_supply = edit(store, "load supply", place, |plan, place, at: usize| {
        to_load(plan, place, |load| load.supply = if at == 1 { Supply::Ac } else { Supply::Dc });
    });
    node("div")
        .attr("class", "editor")
        .child(toggle(L::Counted, on, set_on))
        .child(
            node("div")
                .attr("class", "fields")
                .child(name_box(store, place))
                .child(QUANTITY.view(store, place))
                .view(),
        )
        .child(power(store, place))
        .child(schedule_editor(schedule, set_schedule))
        .child(choice(L::FedBy, &[L::OnTheBank, L::ByInverter], supply, set_supply))
        .child(more(L::More, move || details(store, place)))
        .child(actions(store, place, open))
        .view()
}

fn name_box(store: Store, place: usize) -> View {
    let own = part(store, place, |plan, place| {
        of_load(plan, place, |load| load.name.clone()).unwrap_or_default()
    });
    let usual = part(store, place, |plan, place| {
        let unnamed = |load: &Load| load_row::name(&Load { name: String::new(), ..load.clone() });
        of_load(plan, place, unnamed).unwrap_or_default()
    });
    let set = edit(store, "load name", place, |plan, place, name| {
        to_load(plan, place, |load| load.name = name);
    });
    text_box(WORDS.label(L::Name), own, usual, set)
}

fn power(store: Store, place: usize) -> View {
    let way = part(store, place, |plan, place| {
        of_load(plan, place, |load| way_of(&load.rating)).unwrap_or_default()
    });
    let set_way = edit(store, "load rating", place, |plan, place, way| {
        to_load(plan, place, |load| load.rating = restated(load, way));
    });
    let range = part(store, place, |plan, place| {
        let known =
            of_load(plan, place, |load| load.appliance).flatten().and_then(Appliance::from_number);
        known
            .map(|known| {
                WORDS.usual_range(
                    &words().amount(entry(known).low),
                    &words().amount(entry(known).high),
                )
            })
            .unwrap_or_default()
    });
    let boxes = dynamic(move || match way.get() {
        0 => fields(store, place, &POWER),
        1 => fields(store, place, &PLATE),
        2 => fields(store, place, &LABEL),
        _ => fields(store, place, &OUTPUT),
    });
    let ways = WAYS.iter().map(|way| WORDS.label(*way)).collect();
    group(vec![
        select(L::PowerIsStated, ways, way, set_way).view(),
        boxes.view(),
        node("p").attr("class", "hint").child(range).view(),
    ])
}

/// Duty, start, how it follows the heat, and whether a life depends on it.
fn details(store: Store, place: usize) -> View {
    let cools = part(store, place, |plan, place| {
        of_load(plan, place, |load| load.cooling.is_some()).unwrap_or_default()
    });
    let set_cools = edit(store, "cooling", place, |plan, place, on: bool| {
        to_load(plan, place, |load| {
            load.cooling = on.then_some(Cooling { inside_c: 4.0, reference_c: 25.0 });
            if on {
                load.schedule.when = When::Always;
            }
        });
    });
    let vital = part(store, place, |plan, place| {
        of_load(plan, place, |load| load.vital).unwrap_or_default()
    });
    let set_vital = edit(store, "load vital", place, |plan, place, on| {
        to_load(plan, place, |load| load.vital = on);
    });
    group(vec![
        fields(store, place, &DETAILS).view(),
        toggle(L::FollowsTheHeat, cools, set_cools).view(),
        when(cools, move || fields(store, place, &COOLING)).view(),
        toggle(L::Vital, vital, set_vital).view(),
    ])
}

fn actions(store: Store, place: usize, open: RwSignal<Option<usize>>) -> View {
    let last = part(store, place, |plan, place| place + 1 >= plan.loads.len());
    let duplicate = move || {
        store.edit("duplicate load", &mut |plan| {
            if let Some(copy) = plan.loads.get(place).cloned() {
                plan.loads.insert(place + 1, copy);
            }
        });
        open.set(Some(place + 1));
    };
    let swap = move |other: usize| {
        store.edit("move load", &mut |plan| {
            if place < plan.loads.len() && other < plan.loads.len() {
                plan.loads.swap(place, other);
            }
        });
        open.set(Some(other));
    };
    let delete = move || {
        let name = store.plan.with_untracked(|plan| of_load(plan, place, load_row::name));
        open.set(None);
        store.edit("delete load", &mut |plan| {
            if place < plan.loads.len() {
                plan.loads.remove(place);
            }
        });
        store.say(WORDS.deleted(&name.unwrap_or_default()));
    };
    node("div")
        .attr("class", "row")
        .child(button(L::Duplicate, "button quiet", duplicate))
        .child(button_unless(L::MoveUp, "button quiet", Signal::stored(place == 0), move || {
            swap(place.saturating_sub(1));
        }))
        .child(button_unless(L::MoveDown, "button quiet", last, move || swap(place + 1)))
        .child(button(L::Delete, "button quiet danger", delete))
        .view()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stating_a_power_another_way_keeps_it() {
        let load = Load { rating: Rating::PowerW(120.0), duty_pct: 40.0, ..Load::default() };
        for way in 1..WAYS.len() {
            let rating = restated(&load, way);
            assert_eq!(way_of(&rating), way);
            let other = Load { rating, ..load.clone() };
            assert!((watts(&other) / 120.0 - 1.0).abs() < 0.01, "{}", watts(&other));
        }
    }
}
