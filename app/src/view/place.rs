//! Where and when? A place by name, coordinates or the device; the start; the sun and temperature that are used.

use crate::signal::*;
use chrono::{Datelike, NaiveDate};
use sunlarder_engine::document::{ClockTime, Document, Field, date_from, date_text};
use sunlarder_engine::place::{SEA, SummerTime, Town};
use sunlarder_engine::quantity::{Degrees, Within};
use sunlarder_engine::sun::Site;
use sunlarder_engine::words::Label as L;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

use super::field::{Figure, button, fields, more, select, text_box};
use super::own_climate::own_climate;
use super::question::question;
use super::replay::replay;
use super::world_map::world_map;
use crate::assets::{Coming, ask_for_names};
use crate::bind::{edit, fixed, part, signal};
use crate::dom::node::{Child as _, View, group, node, nothing};
use crate::dom::part::{Listener, act, dynamic, typed};
use crate::drawers::drawer;
use crate::store::{Store, WORDS, words};

/// Puts a town into the plan.
pub(crate) fn move_to(plan: &mut Document, town: &Town) {
    place_at(plan, town.name, town.latitude.0, town.longitude.0);
    plan.place.utc_offset_min = town.clock.utc_offset_min.into();
    plan.place.summer_time = town.clock.summer_time;
}

/// Puts a point into the plan. What was a fact of the old place goes with it.
fn place_at(plan: &mut Document, name: &str, latitude: f64, longitude: f64) {
    let place = &mut plan.place;
    place.name = name.to_owned();
    place.latitude_deg = Field::Latitude.range().rounded(latitude);
    place.longitude_deg = Field::Longitude.range().rounded(longitude);
    place.peak_sun_h = None;
    place.temperature_c = None;
    place.record_low_c = None;
    place.horizon_deg = None;
}

/// The zone by the sun, where no town is known.
pub(crate) fn zone_of(longitude: f64) -> f64 {
    (longitude / 15.0).round() * 60.0
}

/// The same date in another month, the next time that it comes; its last day if the month is shorter.
pub(crate) fn in_month(date: NaiveDate, month0: usize, today: NaiveDate) -> NaiveDate {
    let month = month0 as u32 + 1;
    let in_year = |year: i32| {
        let days = (1..=date.day()).rev();
        days.filter_map(|day| NaiveDate::from_ymd_opt(year, month, day)).next().unwrap_or(date)
    };
    let years = [date.year(), today.year(), today.year() + 1];
    years.map(in_year).into_iter().find(|date| *date >= today).unwrap_or(date)
}

/// Today by the clock of the device.
pub(crate) fn today() -> NaiveDate {
    let now = js_sys::Date::new_0();
    let (year, month, day) = (now.get_full_year(), now.get_month() + 1, now.get_date());
    NaiveDate::from_ymd_opt(year as i32, month, day).unwrap_or_default()
}

/// A figure of the place.
macro_rules! figure {
    ($field:ident, $part:ident) => {
        Figure::new(
            Field::$field,
            |plan, _| Some(plan.place.$part),
            |plan, _, value| plan.place.$part = value,
        )
    };
}

const COORDINATES: [Figure; 3] = [
    figure!(Latitude, latitude_deg).hint(L::LatitudeHint),
    figure!(Longitude, longitude_deg).hint(L::LongitudeHint),
    figure!(UtcOffset, utc_offset_min).hint(L::ClockHint),
];

const SURROUNDINGS: [Figure; 3] = [
    figure!(InsideTemperature, inside_c).hint(L::InsideHint),
    Figure::new(
        Field::RecordLow,
        |plan, _| plan.place.record_low_c,
        |plan, _, value| plan.place.record_low_c = Some(value),
    )
    .or_typical(|plan, _| plan.place.record_low_c = None, |_, _| None)
    .hint(L::RecordLowHint),
    figure!(Albedo, albedo_pct).hint(L::AlbedoHint),
];

static START_CHARGE: Figure = Figure::new(
    Field::StartCharge,
    |plan, _| Some(plan.start.charge_pct),
    |plan, _, value| plan.start.charge_pct = value,
)
.slider(0.0, 100.0, 1.0);

/// The question with its answer.
pub(crate) fn place_section(store: Store) -> View {
    let answer = part(store, 0, |plan, _| {
        format!("{}, {}", place_name(plan), WORDS.month(plan.start.date.month0() as usize))
    });
    question(L::WhereAndWhen, answer, false, move || {
        drawer(store, move |drawers| (drawers.place)(store))
    })
}

pub(super) fn inside(store: Store) -> View {
    // Asked for as soon as the section opens: a tap on the map takes the clock of the town next to it.
    let names = RwSignal::new(Coming::Unasked);
    ask_for_names(names);
    group(vec![
        town_search(store, names).view(),
        world_map(store, names),
        start_fields(store).view(),
        more(L::CoordinatesAndClock, move || coordinates(store)).view(),
        more(L::TemperaturesAndGround, move || fields(store, 0, &SURROUNDINGS)).view(),
        more(L::SunAndTemperature, move || own_climate(store)).view(),
        replay(store),
    ])
}

fn coordinates(store: Store) -> View {
    let name = part(store, 0, |plan, _| plan.place.name.clone());
    let set_name = edit(store, "place name", 0, |plan, _, name| plan.place.name = name);
    let rule = part(store, 0, |plan, _| {
        SummerTime::ALL.iter().position(|own| *own == plan.place.summer_time).unwrap_or(0)
    });
    let set_rule = edit(store, "clock", 0, |plan, _, at: usize| {
        plan.place.summer_time = SummerTime::ALL.get(at).copied().unwrap_or_default();
    });
    let rules = SummerTime::ALL.iter().map(|own| WORDS.summer_time(*own)).collect();
    group(vec![
        text_box(WORDS.label(L::PlaceName), name, fixed(""), set_name).view(),
        fields(store, 0, &COORDINATES).view(),
        select(L::SummerTime, rules, rule, set_rule).view(),
    ])
}

/// Whether somebody has said where. Nobody plans for the middle of the Gulf of Guinea: a blank plan has no place yet.
pub(crate) fn has_place(plan: &Document) -> bool {
    plan.has_place()
}

/// What the place is called, or its coordinates.
pub(crate) fn place_name(plan: &Document) -> String {
    words().place_name(plan)
}

/// The same with the coordinates behind a name.
pub(super) fn coordinates_of(plan: &Document) -> String {
    let place = &plan.place;
    let latitude = words().rounded(place.latitude_deg);
    let longitude = words().rounded(place.longitude_deg);
    if place.name.is_empty() {
        return place_name(plan);
    }
    format!("{} · {latitude}°, {longitude}°", place.name)
}

/// Search of towns by name, and the device's own place.
fn town_search(store: Store, names: RwSignal<Coming>) -> View {
    let query = RwSignal::new(String::new());
    let take = Callback::new(move |town: Town<'static>| {
        store.edit("town", &mut |plan| move_to(plan, &town));
        query.set(String::new());
    });
    let found = dynamic(move || query.with(|query| found(query, names.get(), take)));
    let type_in = typed(move |text| {
        // Once more, should the way to them have been cut.
        ask_for_names(names);
        query.set(text);
    });
    node("div")
        .attr("class", "search")
        .child(node("label").attr("for", "search-town").child(WORDS.label(L::SearchTown)).view())
        .child(
            node("input")
                .attr("id", "search-town")
                .attr("type", "search")
                .attr("autocomplete", "off")
                .attr("placeholder", part(store, 0, |plan, _| place_name(plan)))
                .prop("value", signal(query))
                .on("input", type_in)
                .view(),
        )
        .child(found)
        .child(button(L::WhereIAm, "button quiet", move || locate(store, names)))
        .view()
}

/// Most towns that a search shows.
const SHOWN: usize = 8;

pub(super) fn hint(label: L) -> View {
    node("p").attr("class", "hint").child(WORDS.label(label)).view()
}

fn found(query: &str, names: Coming, take: Callback<Town<'static>>) -> View {
    if query.trim().is_empty() {
        return nothing();
    }
    let names = match names {
        Coming::Here(names) => names,
        Coming::Unasked | Coming::Asked => return nothing(),
        Coming::Missed => return hint(L::NoTowns),
    };
    let towns = names.towns.find(query, SHOWN);
    if towns.is_empty() {
        return hint(L::NoSuchTown);
    }
    let one = |town: Town<'static>| {
        let country = names.countries.name(town.country).unwrap_or(town.country);
        node("li")
            .child(
                node("button")
                    .attr("type", "button")
                    .on("click", act(move || take.run(town)))
                    .child(node("span").attr("class", "result-name").child(town.name).view())
                    .child(node("span").attr("class", "result-figure").child(country).view())
                    .view(),
            )
            .view()
    };
    let items: Vec<View> = towns.into_iter().map(one).collect();
    node("ul").attr("class", "results").child(items).view()
}

/// A town as near as this gives the place its clock, and this near its own name \[km\].
const SAME_CLOCK: f64 = 300.0;
const SAME_PLACE: f64 = 25.0;

/// Puts the plan on a point: under the name of the town or sea there, with the clock of the nearest town, or far from any by the sun.
pub(super) fn put_near(store: Store, names: RwSignal<Coming>, latitude: f64, longitude: f64) {
    let latitude = latitude.within(-90.0, 90.0);
    let near = match names.get_untracked() {
        Coming::Here(names) => {
            let (north, east) = (Degrees(latitude), Degrees(longitude));
            names.towns.nearest(Site { latitude: north, longitude: east })
        }
        _ => None,
    };
    let near = near.filter(|(_, far)| *far < SAME_CLOCK);
    let name = near.map_or_else(String::new, |(town, far)| {
        if far < SAME_PLACE || town.country == SEA {
            town.name.to_owned()
        } else {
            WORDS.near(town.name)
        }
    });
    let clock = near.map(|(town, _)| town.clock);
    store.edit("map", &mut |plan| {
        place_at(plan, &name, latitude, longitude);
        let place = &mut plan.place;
        place.utc_offset_min =
            clock.map_or_else(|| zone_of(longitude), |own| own.utc_offset_min.into());
        place.summer_time = clock.map_or(SummerTime::None, |own| own.summer_time);
    });
}

/// Asks the device where it is; only ever on a tap.
fn locate(store: Store, names: RwSignal<Coming>) {
    let geolocation = web_sys::window().and_then(|window| window.navigator().geolocation().ok());
    let found = Closure::once_into_js(move |position: web_sys::Position| {
        let at = position.coords();
        put_near(store, names, at.latitude(), at.longitude());
        store.edit("map", &mut |plan| plan.place.name = WORDS.label(L::HereName).to_owned());
        store.say(WORDS.label(L::LocationTaken));
    });
    let refused =
        Closure::once_into_js(move |_: JsValue| store.complain(WORDS.label(L::NoLocation)));
    let asked = geolocation.and_then(|own| {
        own.get_current_position_with_error_callback(
            found.unchecked_ref(),
            Some(refused.unchecked_ref()),
        )
        .ok()
    });
    if asked.is_none() {
        store.complain(WORDS.label(L::NoLocation));
    }
}

/// Month, day, time and state of charge of the start.
fn start_fields(store: Store) -> View {
    let month = part(store, 0, |plan, _| plan.start.date.month0() as usize);
    let months = (0..12).map(|month| WORDS.month(month)).collect();
    let set_month = edit(store, "month", 0, |plan, _, month| {
        plan.start.date = in_month(plan.start.date, month, today());
    });
    let date = typed(move |text| set_date(store, &text));
    let time = typed(move |text| {
        if let Ok(time) = text.parse::<ClockTime>() {
            store.edit("time", &mut |plan| plan.start.time = time);
        }
    });
    node("div")
        .attr("class", "fields")
        .child(select(L::Month, months, month, set_month))
        .child(moment_box(
            "start-date",
            "date",
            L::FirstDay,
            part(store, 0, |plan, _| date_text(plan.start.date)),
            date,
        ))
        .child(moment_box(
            "start-time",
            "time",
            L::StartTime,
            part(store, 0, |plan, _| plan.start.time.to_string()),
            time,
        ))
        .child(START_CHARGE.view(store, 0))
        .view()
}

fn set_date(store: Store, text: &str) {
    let Some(date) = date_from(text) else { return };
    let mut plan = store.plan.get_untracked();
    plan.start.date = date;
    match plan.checked() {
        Ok(_) => store.edit("date", &mut |plan| plan.start.date = date),
        Err(problem) => store.complain(words().problem(&problem, &|_| None)),
    }
}

/// A box for a day or a time.
pub(super) fn moment_box(
    id: &'static str,
    kind: &'static str,
    label: L,
    value: Signal<String>,
    change: Listener,
) -> View {
    node("div")
        .attr("class", "field")
        .child(node("label").attr("for", id).child(WORDS.label(label)).view())
        .child(
            node("div")
                .attr("class", "entry")
                .child(
                    node("input")
                        .attr("id", id)
                        .attr("type", kind)
                        .prop("value", value)
                        .on("change", change)
                        .view(),
                )
                .view(),
        )
        .view()
}

#[cfg(test)]
mod tests {
    use super::*;
    use sunlarder_engine::place::Gazetteer;

    #[test]
    fn a_date_keeps_its_day_in_another_month_where_it_can() {
        let date = NaiveDate::from_ymd_opt(2026, 1, 31).unwrap();
        let first = "2026-01-01".parse().unwrap();
        assert_eq!(in_month(date, 1, first).to_string(), "2026-02-28");
        assert_eq!(in_month(date, 6, first).to_string(), "2026-07-31");
        let late = "2027-11-25".parse().unwrap();
        assert_eq!(in_month(date, 6, late).to_string(), "2028-07-31");
        assert_eq!(in_month(date, 11, late).to_string(), "2027-12-31");
    }

    #[test]
    fn moving_takes_the_clock_and_drops_what_was_measured_elsewhere() {
        let mut plan = Document::default();
        plan.place.peak_sun_h = Some([3.0; 12]);
        plan.place.record_low_c = Some(-20.0);
        let town = Gazetteer::embedded().find("nairobi", 1)[0];
        move_to(&mut plan, &town);
        assert_eq!(
            (plan.place.utc_offset_min, plan.place.peak_sun_h, plan.place.record_low_c),
            (180.0, None, None)
        );
        assert!(plan.checked().is_ok());
    }
}
