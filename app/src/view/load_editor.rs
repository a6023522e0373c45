//! One load, open for editing.

use crate::signal::*;
use sunlarder_engine::document::{
    Cooling, Document, Field, List, Load, Rating, Supply, TextField, When, loads_moved,
};
use sunlarder_engine::quantity::Within;
use sunlarder_engine::words::{Label as L, Term};
use sunlarder_worker::leaf::{Leaf, Topic};

use super::field::{
    Figure, button, button_unless, choice, fields, fresh_id, more, select, text_box, toggle,
};
use super::help::with_help;
use super::load_list::{Loads, row_of};
use super::mend::inverter_button;
use super::schedule::schedule_editor;
use crate::bind::{edit, of_load, part, to_load, watch};
use crate::dom::node::{Child as _, View, group, node, nothing};
use crate::dom::paper::elements;
use crate::dom::part::{dynamic, typed, when};
use crate::dom::sight::{focus_soon, show_soon};
use crate::load_row;
use crate::store::{Store, WORDS};

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
pub(crate) fn load_editor(store: Store, place: usize, loads: Loads) -> View {
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
        .child(
            node("div")
                .attr("class", "fields")
                .child(name_box(store, place))
                .child(QUANTITY.view(store, place))
                .child(group_box(store, place, loads))
                .view(),
        )
        .child(power(store, place))
        .child(schedule_editor(store, schedule, set_schedule))
        .child(with_help(
            store,
            L::FedBy,
            Topic::Term(Term::Supply),
            choice(L::FedBy, &[L::OnTheBank, L::ByInverter], supply, set_supply),
        ))
        .child(inverter_button(store))
        .child(more(L::More, move || details(store, place)))
        .child(actions(store, place, loads))
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
    let known =
        part(store, place, |plan, place| of_load(plan, place, |load| load.appliance).flatten());
    // It is not of the plan, so it is asked for once and not anew with every edit.
    let written = RwSignal::new(String::new());
    watch(Box::new(move || {
        if let Some(number) = known.get() {
            // The editor may be closed when it comes.
            let take = Callback::new(move |paper| written.set(paper));
            store.worked.once(Leaf::UsualRange, number.to_string(), take);
        }
    }));
    let range = dynamic(move || match known.get() {
        Some(_) => written.with(|paper| elements(paper)),
        None => nothing(),
    });
    let boxes = dynamic(move || match way.get() {
        0 => fields(store, place, &POWER),
        1 => fields(store, place, &PLATE),
        2 => fields(store, place, &LABEL),
        _ => fields(store, place, &OUTPUT),
    });
    let ways = WAYS.iter().map(|way| WORDS.label(*way)).collect();
    group(vec![select(L::PowerIsStated, ways, way, set_way).view(), boxes.view(), range.view()])
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

/// The person's own group, taken once it is typed out: on every letter the load would go elsewhere.
fn group_box(store: Store, place: usize, loads: Loads) -> View {
    let (id, list) = (fresh_id("group"), fresh_id("groups"));
    let own = part(store, place, |plan, place| {
        of_load(plan, place, |load| load.group.clone()).unwrap_or_default()
    });
    let set = edit(store, "load group", place, |plan, place, group: String| {
        to_load(plan, place, |load| load.group = group.trim().chars().take(LONGEST).collect());
    });
    let known = dynamic(move || {
        let option = |name: String| node("option").attr("value", name).view();
        loads.groups().into_iter().map(option).collect::<Vec<_>>().view()
    });
    node("div")
        .attr("class", "field")
        .child(node("label").attr("for", id.clone()).child(WORDS.label(L::GroupName)).view())
        .child(
            node("div")
                .attr("class", "entry")
                .child(
                    node("input")
                        .attr("id", id)
                        .attr("type", "text")
                        .attr("maxlength", "80")
                        .attr("autocomplete", "off")
                        .attr("list", list.clone())
                        .prop("value", own)
                        .on("change", typed(move |text| set.run(text)))
                        .view(),
                )
                .child(node("datalist").attr("id", list).child(known).view())
                .view(),
        )
        .child(node("p").attr("class", "hint").child(WORDS.label(L::GroupHint)).view())
        .view()
}

/// Most characters of a group's name.
const LONGEST: usize = TextField::GroupName.limit();

fn actions(store: Store, place: usize, loads: Loads) -> View {
    let (first, last) = (loads.can_step(place, false), loads.can_step(place, true));
    let not = |can: Signal<bool>| Signal::derive(move || !can.get());
    let full = part(store, 0, |plan, _| plan.loads.len() >= List::Loads.limit());
    let duplicate = move || {
        store.edit("duplicate load", &mut |plan| {
            if let Some(copy) = plan.loads.get(place).cloned() {
                plan.loads.insert(place + 1, copy);
                let behind = |own| usize::from(own) > place;
                loads_moved(&mut plan.checks, &|own| Some(own + u16::from(behind(own))));
            }
        });
        loads.fresh.set(Some(place + 1));
        loads.open.set(Some(place + 1));
        show_soon(row_of(place + 1));
        focus_soon(format!("{} .load-open", row_of(place + 1)));
    };
    let delete = move || {
        let name = store.plan.with_untracked(|plan| of_load(plan, place, load_row::name));
        loads.open.set(None);
        loads.fresh.set(None);
        store.edit("delete load", &mut |plan| {
            if place < plan.loads.len() {
                plan.loads.remove(place);
                let to = |own: usize| (own != place).then(|| own - usize::from(own > place));
                loads_moved(&mut plan.checks, &|own| to(own.into()).map(|own| own as u16));
            }
        });
        store.say_changed(WORDS.deleted(&name.unwrap_or_default()));
        let left = store.plan.with_untracked(|plan| plan.loads.len());
        focus_soon(match left.checked_sub(1) {
            Some(last) => format!("{} .load-open", row_of(place.min(last))),
            None => "#add-something".to_owned(),
        });
    };
    node("div")
        .attr("class", "row")
        .child(button_unless(L::Duplicate, "button quiet", full, duplicate))
        .child(button_unless(L::MoveUp, "button quiet move-up", not(first), move || {
            loads.step(place, false, ".move-up");
        }))
        .child(button_unless(L::MoveDown, "button quiet move-down", not(last), move || {
            loads.step(place, true, ".move-down");
        }))
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
