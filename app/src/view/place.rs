//! Where and when? A place by name, coordinates or the device; the start; the sun and temperature that are used.

use chrono::{Datelike, NaiveDate};
use leptos::prelude::*;
use leptos::web_sys;
use sunlarder_engine::document::{ClockTime, Document, Field};
use sunlarder_engine::place::{Origin, SummerTime, Town};
use sunlarder_engine::words::{Label as L, rounded};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

use super::field::{NumberField, Select, TextField};
use super::own_climate::OwnClimate;
use super::question::Question;
use crate::assets::{Coming, ask_for_names};
use crate::bind::{edit, figure, part};
use crate::store::{Store, WORDS};

/// Puts a town into the plan.
pub(crate) fn move_to(plan: &mut Document, town: &Town<'_>) {
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
}

/// The zone by the sun, where no town is known.
pub(crate) fn zone_of(longitude: f64) -> f64 {
    (longitude / 15.0).round() * 60.0
}

/// The same date in another month; its last day if the month is shorter.
pub(crate) fn in_month(date: NaiveDate, month0: usize) -> NaiveDate {
    let month = month0 as u32 + 1;
    let days =
        (1..=date.day()).rev().find_map(|day| NaiveDate::from_ymd_opt(date.year(), month, day));
    days.unwrap_or(date)
}

/// The question with its answer.
#[component]
pub(crate) fn PlaceSection() -> impl IntoView {
    let store = Store::get();
    let answer = move || {
        store.plan.with(|plan| {
            let name = place_name(plan);
            format!("{name}, {}", WORDS.month(plan.start.date.month0() as usize))
        })
    };
    let latitude = figure(
        store,
        "place",
        |plan| plan.place.latitude_deg,
        |plan, value| plan.place.latitude_deg = value,
    );
    let longitude = figure(
        store,
        "place",
        |plan| plan.place.longitude_deg,
        |plan, value| plan.place.longitude_deg = value,
    );
    let inside = figure(
        store,
        "inside",
        |plan| plan.place.inside_c,
        |plan, value| plan.place.inside_c = value,
    );
    let albedo = figure(
        store,
        "albedo",
        |plan| plan.place.albedo_pct,
        |plan, value| plan.place.albedo_pct = value,
    );
    let low = part(store, |plan| plan.place.record_low_c);
    let set_low =
        edit(store, "record low", |plan: &mut Document, value| plan.place.record_low_c = value);
    view! {
        <Question title=L::WhereAndWhen answer=answer>
            <TownSearch />
            <StartFields />
            <details class="more">
                <summary>{WORDS.label(L::CoordinatesAndClock)}</summary>
                <TextField label=WORDS.label(L::PlaceName) value=part(store, |plan| plan.place.name.clone())
                    set=edit(store, "place name", |plan: &mut Document, name| plan.place.name = name) />
                <div class="fields">
                    <NumberField field=Field::Latitude value=latitude.0 set=latitude.1 hint=WORDS.label(L::LatitudeHint) />
                    <NumberField field=Field::Longitude value=longitude.0 set=longitude.1 hint=WORDS.label(L::LongitudeHint) />
                </div>
                <ClockFields />
            </details>
            <details class="more">
                <summary>{WORDS.label(L::TemperaturesAndGround)}</summary>
                <div class="fields">
                    <NumberField field=Field::InsideTemperature value=inside.0 set=inside.1 hint=WORDS.label(L::InsideHint) />
                    <NumberField field=Field::RecordLow value=low set=set_low optional=true hint=WORDS.label(L::RecordLowHint) />
                    <NumberField field=Field::Albedo value=albedo.0 set=albedo.1 hint=WORDS.label(L::AlbedoHint) />
                </div>
            </details>
            <details class="more">
                <summary>{WORDS.label(L::SunAndTemperature)}</summary>
                <p class="hint">{move || store.answers.with(|answers| answers.solved().map(|solved| origin(solved.system.climate.origin)))}</p>
                <OwnClimate />
            </details>
        </Question>
    }
}

fn origin(origin: Origin) -> String {
    WORDS.climate_origin(origin).to_owned()
}

/// What the place is called, or its coordinates.
pub(crate) fn place_name(plan: &Document) -> String {
    let place = &plan.place;
    if place.name.is_empty() {
        format!("{}°, {}°", rounded(place.latitude_deg), rounded(place.longitude_deg))
    } else {
        place.name.clone()
    }
}

/// Search of towns by name, and the device's own place.
#[component]
fn TownSearch() -> impl IntoView {
    let store = Store::get();
    let query = RwSignal::new(String::new());
    let take = move |town: Town<'static>| {
        store.edit("town", |plan| move_to(plan, &town));
        query.set(String::new());
    };
    let names = RwSignal::new(Coming::Unasked);
    let item = move |town: Town<'static>, country: &'static str| {
        view! {
            <li>
                <button type="button" on:click=move |_| take(town)>
                    <span class="result-name">{town.name}</span>
                    <span class="result-figure">{country}</span>
                </button>
            </li>
        }
    };
    let found = move || {
        let query = query.get();
        if query.trim().is_empty() {
            return ().into_any();
        }
        let names = match names.get() {
            Coming::Here(names) => names,
            Coming::Unasked | Coming::Asked => return ().into_any(),
            Coming::Missed => {
                return view! { <p class="hint">{WORDS.label(L::NoTowns)}</p> }.into_any();
            }
        };
        let item = move |town: Town<'static>| {
            item(town, names.countries.name(town.country).unwrap_or(town.country))
        };
        let towns = names.towns.find(&query, 8);
        if towns.is_empty() {
            return view! { <p class="hint">{WORDS.label(L::NoSuchTown)}</p> }.into_any();
        }
        view! { <ul class="results">{towns.into_iter().map(item).collect_view()}</ul> }.into_any()
    };
    view! {
        <div class="search">
            <label for="search-town">{WORDS.label(L::SearchTown)}</label>
            <input
                id="search-town"
                type="search"
                autocomplete="off"
                placeholder=part(store, place_name)
                prop:value=move || query.get()
                on:focus=move |_| ask_for_names(names)
                on:input:target=move |event| query.set(event.target().value())
            />
            {found}
            <button type="button" class="button quiet" on:click=move |_| locate(store)>{WORDS.label(L::WhereIAm)}</button>
        </div>
    }
}

/// Asks the device where it is; only ever on a tap.
fn locate(store: Store) {
    let Some(geolocation) =
        web_sys::window().and_then(|window| window.navigator().geolocation().ok())
    else {
        store.complain(WORDS.label(L::NoLocation));
        return;
    };
    let found = Closure::once_into_js(move |position: web_sys::Position| {
        let at = position.coords();
        store.edit("town", |plan| {
            place_at(plan, WORDS.label(L::HereName), at.latitude(), at.longitude());
            plan.place.utc_offset_min = zone_of(at.longitude());
            plan.place.summer_time = SummerTime::None;
        });
        store.say(WORDS.label(L::LocationTaken));
    });
    let refused = Closure::once_into_js(move |_: wasm_bindgen::JsValue| {
        store.complain(WORDS.label(L::NoLocation));
    });
    if geolocation
        .get_current_position_with_error_callback(
            found.unchecked_ref(),
            Some(refused.unchecked_ref()),
        )
        .is_err()
    {
        store.complain(WORDS.label(L::NoLocation));
    }
}

/// Month, day, time and state of charge of the start.
#[component]
fn StartFields() -> impl IntoView {
    let store = Store::get();
    let month = part(store, |plan| plan.start.date.month0() as usize);
    let months = (0..12).map(|month| (month, WORDS.month(month).to_owned())).collect();
    let set_month = edit(store, "month", |plan: &mut Document, month| {
        plan.start.date = in_month(plan.start.date, month);
    });
    let charge = figure(
        store,
        "start charge",
        |plan| plan.start.charge_pct,
        |plan, value| plan.start.charge_pct = value,
    );
    let set_date = move |text: String| {
        let Ok(date) = text.parse::<NaiveDate>() else { return };
        let plan = store.plan.with_untracked(|plan| {
            let mut plan = plan.clone();
            plan.start.date = date;
            plan.checked()
        });
        match plan {
            Ok(_) => store.edit("date", |plan| plan.start.date = date),
            Err(problem) => store.complain(WORDS.problem(&problem, &|_| None)),
        }
    };
    let set_time = move |text: String| {
        if let Ok(time) = text.parse::<ClockTime>() {
            store.edit("time", |plan| plan.start.time = time);
        }
    };
    view! {
        <div class="fields">
            <Select label=WORDS.label(L::Month) options=months value=month set=set_month />
            <div class="field">
                <label for="start-date">{WORDS.label(L::FirstDay)}</label>
                <div class="entry">
                    <input id="start-date" type="date" min="2020-01-01" max="2099-12-31"
                        prop:value=part(store, |plan| plan.start.date.to_string())
                        on:change:target=move |event| set_date(event.target().value()) />
                </div>
            </div>
            <div class="field">
                <label for="start-time">{WORDS.label(L::StartTime)}</label>
                <div class="entry">
                    <input id="start-time" type="time"
                        prop:value=part(store, |plan| plan.start.time.to_string())
                        on:change:target=move |event| set_time(event.target().value()) />
                </div>
            </div>
            <NumberField field=Field::StartCharge value=charge.0 set=charge.1 slider=(0.0, 100.0, 1.0) />
        </div>
    }
}

#[component]
fn ClockFields() -> impl IntoView {
    let store = Store::get();
    let offset = figure(
        store,
        "clock",
        |plan| plan.place.utc_offset_min,
        |plan, value| plan.place.utc_offset_min = value,
    );
    let summer = part(store, |plan| plan.place.summer_time);
    let rules =
        SummerTime::ALL.iter().map(|rule| (*rule, WORDS.summer_time(*rule).to_owned())).collect();
    view! {
        <div class="fields">
            <NumberField field=Field::UtcOffset unit="min" value=offset.0 set=offset.1 hint=WORDS.label(L::ClockHint) />
            <Select label=WORDS.label(L::SummerTime) options=rules value=summer
                set=edit(store, "clock", |plan: &mut Document, rule| plan.place.summer_time = rule) />
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use sunlarder_engine::place::Gazetteer;

    #[test]
    fn a_date_keeps_its_day_in_another_month_where_it_can() {
        let date = NaiveDate::from_ymd_opt(2026, 1, 31).unwrap();
        assert_eq!(in_month(date, 1).to_string(), "2026-02-28");
        assert_eq!(in_month(date, 6).to_string(), "2026-07-31");
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
