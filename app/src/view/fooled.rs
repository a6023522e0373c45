//! The simulated gauge: figures to turn, and what it would show beside the truth. The worker writes the boxes and all that is said.

use crate::signal::*;
use js_sys::Reflect;
use sunlarder_engine::digits;
use sunlarder_engine::words::{Label as L, Typed};
use sunlarder_worker::leaf::Leaf;
use sunlarder_worker::sentences::PART;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, Event};

use super::field::more_while;
use super::leaf::{shown, turned};
use super::pictures::save;
use super::place::{has_place, hint};
use super::sizing::spreads;
use crate::bind::watch;
use crate::dom::node::{View, group, node};
use crate::dom::part::{Listener, dynamic};
use crate::store::{Store, words};

/// The choice of a mistake.
const MISTAKE: &str = "mistake";
/// The choice that stands for any other figures.
const OWN: &str = "own";

fn element(id: &str) -> Option<Element> {
    document().get_element_by_id(id)
}

/// What stands in a box.
fn value(element: &Element) -> String {
    let value = Reflect::get(element, &JsValue::from_str("value"));
    value.ok().and_then(|own| own.as_string()).unwrap_or_default()
}

fn set(id: &str, value: &str) {
    if let Some(element) = element(id) {
        let _ = Reflect::set(&element, &JsValue::from_str("value"), &JsValue::from_str(value));
    }
}

/// Moves a slider to what was typed, if that is a number.
fn slide(place: &str, typed: &str) {
    if let Typed::Number(digits) = words().typed(typed) {
        set(&format!("slide-{place}"), &digits);
    }
}

/// Boxes and sliders follow each other and the choice; what stands in the boxes then.
fn follow(target: &Element) -> String {
    let id = target.id();
    if id == MISTAKE {
        let chosen = format!("#{MISTAKE} option[value='{}']", value(target));
        let chosen = document().query_selector(&chosen).ok().flatten();
        let figures = chosen.and_then(|own| own.get_attribute("data-figures")).unwrap_or_default();
        for (place, figure) in figures.split(PART).filter(|own| !own.is_empty()).enumerate() {
            let place = place.to_string();
            set(&format!("knob-{place}"), figure);
            slide(&place, figure);
        }
    } else if let Some(place) = id.strip_prefix("slide-") {
        let number = digits::number(&value(target)).unwrap_or_default();
        set(&format!("knob-{place}"), &words().precise(number));
        set(MISTAKE, OWN);
    } else if let Some(place) = id.strip_prefix("knob-") {
        slide(place, &value(target));
        set(MISTAKE, OWN);
    }
    let mistake = element(MISTAKE).map(|own| value(&own)).filter(|own| own != OWN);
    let mut figures = mistake.unwrap_or_default();
    for place in 0_usize.. {
        let Some(own) = element(&format!("knob-{place}")) else { break };
        figures.push(PART);
        figures.push_str(&value(&own));
    }
    figures
}

/// Figures to turn, what the gauge then shows, and the table behind it.
pub(super) fn fooled(store: Store) -> View {
    let place =
        memo(Box::new(move || store.plan.with(has_place) && store.worked.spread.get().is_some()));
    let inside =
        dynamic(
            move || {
                if place.get() { untrack(|| playing(store)) } else { hint(L::WeatherNeedsPlace) }
            },
        );
    node("div").attr("id", "fooled").child(inside).view()
}

fn playing(store: Store) -> View {
    let knobs = store.worked.ask(Leaf::Knobs, String::new()).said;
    let figures = RwSignal::new(String::new());
    // Another plan has another card, from which everything begins anew.
    watch(Box::new(move || {
        knobs.track();
        figures.set(String::new());
    }));
    let spreads = spreads(store);
    let argument = memo(Box::new(move || format!("{}{PART}{}", spreads.get(), figures.get())));
    let heard = move |chosen: bool| -> Listener {
        Box::new(move |event: Event| {
            let target = event.target().and_then(|own| own.dyn_into::<Element>().ok());
            if let Some(target) = target.filter(|own| (own.id() == MISTAKE) == chosen) {
                figures.set(follow(&target));
            }
        })
    };
    group(vec![
        node("div").on("input", heard(false)).on("change", heard(true)).child(shown(knobs)).view(),
        node("figure")
            .attr("class", "picture")
            .child(
                node("div")
                    .attr("class", "fitted")
                    .child(turned(store, Leaf::GaugeYear, argument))
                    .view(),
            )
            .child(save(store, L::SeeItFooled))
            .view(),
        more_while("more", L::AsATable, move || turned(store, Leaf::GaugeYearTable, argument)),
    ])
}
