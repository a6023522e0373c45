//! A map of the world to put the plan on: by a tap, or with the arrow keys.
//!
//! The land is a file of its own (`app/web/world.svg`), which the style sheet lays over the sea as a mask; here is only what is
//! pressed and the marker.

use crate::signal::*;
use sunlarder_engine::words::Label as L;
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent, PointerEvent};

use super::place::{coordinates_of, hint, put_near};
use crate::assets::Coming;
use crate::bind::part;
use crate::dom::node::{View, node};
use crate::dom::part::Listener;
use crate::store::{Store, WORDS};
use sunlarder_engine::words::decimal;

/// How far an arrow key goes, and with the shift key \[°\].
const STEP: f64 = 1.0;
const LONG_STEP: f64 = 10.0;

/// The map with its marker and what it says below.
pub(super) fn world_map(store: Store, names: RwSignal<Coming>) -> View {
    let left = part(store, 0, |plan, _| percent((plan.place.longitude_deg + 180.0) / 3.6));
    let top = part(store, 0, |plan, _| percent((90.0 - plan.place.latitude_deg) / 1.8));
    let land = node("i").attr("class", "land").view();
    let marker =
        node("i").attr("class", "marker").style_now("left", left).style_now("top", top).view();
    node("div")
        .attr("class", "world-with-words")
        .child(
            node("div")
                .attr("class", "world")
                .attr("tabindex", "0")
                .attr("role", "application")
                .attr("aria-label", WORDS.label(L::WorldMap))
                .attr("aria-describedby", "world-says")
                .on("click", Box::new(move |event| tapped(store, names, &event)))
                .on("keydown", moved(store, names))
                .child(land)
                .child(marker)
                .view(),
        )
        .child(
            node("p")
                .attr("class", "note")
                .attr("id", "world-says")
                .attr("role", "status")
                .child(part(store, 0, |plan, _| coordinates_of(plan)))
                .view(),
        )
        .child(hint(L::WorldMapHint))
        .view()
}

fn percent(share: f64) -> String {
    decimal(share, 2) + "%"
}

/// Puts the plan where the map was tapped. Everything on the map lets presses through, so that they are measured from its corner.
fn tapped(store: Store, names: RwSignal<Coming>, event: &Event) {
    let event: &PointerEvent = event.unchecked_ref();
    let target = event.current_target().and_then(|own| own.dyn_into::<web_sys::Element>().ok());
    let Some(map) = target else { return };
    let share = |at: i32, size: i32| f64::from(at) / f64::from(size.max(1));
    let east = share(event.offset_x(), map.client_width()) * 360.0 - 180.0;
    let north = 90.0 - share(event.offset_y(), map.client_height()) * 180.0;
    put_near(store, names, north, east);
}

/// Moves the plan with the arrow keys; east goes on behind the date line.
fn moved(store: Store, names: RwSignal<Coming>) -> Listener {
    Box::new(move |event| {
        let event: KeyboardEvent = event.unchecked_into();
        let step = if event.shift_key() { LONG_STEP } else { STEP };
        let (north, east) = match event.key().as_str() {
            "ArrowUp" => (step, 0.0),
            "ArrowDown" => (-step, 0.0),
            "ArrowLeft" => (0.0, -step),
            "ArrowRight" => (0.0, step),
            _ => return,
        };
        event.prevent_default();
        let (latitude, longitude) =
            store.plan.with_untracked(|plan| (plan.place.latitude_deg, plan.place.longitude_deg));
        let around = longitude + east;
        let around = if around > 180.0 {
            around - 360.0
        } else if around < -180.0 {
            around + 360.0
        } else {
            around
        };
        put_near(store, names, latitude + north, around);
    })
}
