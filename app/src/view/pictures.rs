//! The pictures that the worker draws, the year carpet and the day's flow, and the buttons that save any picture.

use crate::signal::*;
use chrono::{Datelike, Duration, NaiveDate};
use sunlarder_engine::words::{Label as L, decimal};
use sunlarder_worker::leaf::Leaf;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::Event;

use super::dialogs::plan_name;
use super::field::more_while;
use super::leaf::{leaf, leaf_of};
use super::place::has_place;
use super::reader::{Cells, reader};
use crate::bind::signal;
use crate::dom::node::{Child as _, View, node};
use crate::dom::part::{Listener, dynamic, when};
use crate::edge::send;
use crate::outlook_data::hour_reading;
use crate::store::{Store, WORDS};

/// Hours of a day.
const HOURS: usize = 24;
/// Numbers of an hour of the year.
const NUMBERS: usize = 4;

/// The head of a picture.
fn head(title: L) -> View {
    node("figcaption")
        .attr("class", "picture-head")
        .child(node("h2").child(WORDS.label(title)).view())
        .view()
}

/// The year carpet: in mean weather or in one weather of many.
pub(crate) fn carpet(store: Store) -> View {
    let weather = RwSignal::new(None::<u32>);
    let cursor = RwSignal::new(None::<usize>);
    let numbers = RwSignal::new(Vec::new());
    let place =
        memo(Box::new(move || store.plan.with(has_place) && store.worked.spread.get().is_some()));
    let argument = memo(Box::new(move || {
        let number = weather.get().filter(|_| place.get());
        let spread = store.worked.spread.get();
        let site = store.answers.with(|own| own.solved().map(|solved| solved.system.site));
        match (number, spread, site) {
            (Some(number), Some(spread), Some(site)) => {
                let mut argument = decimal(f64::from(number), 0);
                for own in spread.at(site) {
                    argument.push(' ');
                    argument.push_str(&decimal(own, 9));
                }
                argument
            }
            _ => "mean".to_owned(),
        }
    }));
    let drawn = dynamic(move || {
        let (view, own) = leaf_of(store, Leaf::Year, argument.get());
        // Those of before stay until others come, and with them whoever is reading.
        crate::bind::watch(Box::new(move || {
            let own = own.get();
            if !own.is_empty() {
                numbers.set(own);
            }
        }));
        view
    });
    let cells = memo(Box::new(move || Cells {
        columns: numbers.with(Vec::len) / NUMBERS / HOURS,
        rows: HOURS,
        page: 30,
    }));
    let reading = memo(Box::new(move || match cursor.get() {
        Some(hour) => numbers.with(|numbers| read(store, numbers, hour)),
        None => WORDS.label(L::YearHint).to_owned(),
    }));
    let known = memo(Box::new(move || !numbers.with(Vec::is_empty)));
    let over = when(known, move || reader(cells, cursor, L::ReadTheYear, reading));
    node("figure")
        .attr("class", "picture carpet")
        .attr("id", "carpet")
        .child(head(L::YearCarpet))
        .child(when(place, move || weathers(weather)))
        .child(node("div").attr("class", "carpet-frame").child(drawn).child(over).view())
        .child(node("p").attr("class", "readout").child(signal(reading)).view())
        .child(more_while("more", L::AsATable, move || {
            dynamic(move || leaf(store, Leaf::YearTable, argument.get())).view()
        }))
        .child(save(store, L::YearCarpet))
        .view()
}

/// What is read at an hour of the year.
fn read(store: Store, numbers: &[f64], hour: usize) -> String {
    let year = store.plan.with(|plan| plan.start.date.year());
    let first = NaiveDate::from_yo_opt(year, 1).unwrap_or_default();
    let at = first.and_time(chrono::NaiveTime::MIN) + Duration::hours(hour as i64);
    match numbers.get(hour * NUMBERS..).and_then(|own| own.first_chunk()) {
        Some(own) => hour_reading(at, *own),
        None => String::new(),
    }
}

/// The choice between mean weather and one weather of many.
fn weathers(weather: RwSignal<Option<u32>>) -> View {
    let choose = |label: L, mean: bool| {
        let pressed = memo(Box::new(move || {
            Some(if weather.get().is_none() == mean { "true" } else { "false" })
        }));
        node("button")
            .attr("type", "button")
            .attr("aria-pressed", pressed)
            .on("click", crate::dom::part::act(move || weather.set((!mean).then_some(0))))
            .child(WORDS.label(label))
            .view()
    };
    let other = memo(Box::new(move || weather.get().is_some()));
    let next = move || {
        let next = move || weather.update(|own| *own = own.map(|number| (number + 1) % 200));
        super::field::button(L::AnotherWeatherYear, "button quiet", next)
    };
    let hint = move || super::place::hint(L::OneWeatherYearHint);
    node("div")
        .child(
            node("div")
                .attr("class", "chips")
                .child(choose(L::MeanWeather, true))
                .child(choose(L::OneWeatherYear, false))
                .child(when(other, next))
                .view(),
        )
        .child(when(other, hint))
        .view()
}

/// Where the energy of a day comes from and goes to.
pub(crate) fn flow(store: Store) -> View {
    node("figure")
        .attr("class", "picture flow")
        .attr("id", "flow")
        .child(head(L::DayFlow))
        .child(leaf(store, Leaf::Flow, String::new()))
        .child(more_while("more", L::AsATable, move || leaf(store, Leaf::FlowTable, String::new())))
        .child(save(store, L::DayFlow))
        .view()
}

/// Buttons that save the picture of the figure in which they stand; the starter does it.
pub(crate) fn save(store: Store, title: L) -> View {
    let one = |label: L, kind: &'static str| {
        let press: Listener = Box::new(move |event: Event| {
            let button = event.current_target().and_then(|own| own.dyn_into().ok());
            let figure =
                button.and_then(|button: web_sys::Element| button.closest("figure").ok().flatten());
            let name = store.plan.with_untracked(plan_name);
            let figure = figure.map_or(JsValue::NULL, JsValue::from);
            let ask =
                js_sys::Array::of4(&figure, &kind.into(), &name.into(), &WORDS.label(title).into());
            send("sunlarder:picture", &ask);
        });
        node("button")
            .attr("type", "button")
            .attr("class", "button quiet")
            .on("click", press)
            .child(WORDS.label(label))
            .view()
    };
    node("div")
        .attr("class", "row save no-print")
        .child(one(L::SavePicture, "svg"))
        .child(one(L::SavePhoto, "png"))
        .view()
}
