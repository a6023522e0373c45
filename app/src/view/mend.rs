//! Buttons that mend what stands against the plan.

use sunlarder_engine::document::{Field, Inverter};
use sunlarder_engine::outlook::Obstacle;
use sunlarder_engine::quantity::Watts;
use sunlarder_worker::leaf::Leaf;
use wasm_bindgen::JsCast;
use web_sys::Event;

use super::leaf::leaf;
use crate::bind::said;
use crate::dom::node::{View, node};
use crate::dom::part::{Listener, when};
use crate::store::{Store, WORDS, words};

/// A button for the inverter that the loads need, while one is missing or too small.
pub(crate) fn inverter_button(store: Store) -> View {
    let wanted =
        said(store, |solved| solved.opening.obstacles.iter().any(Obstacle::is_of_inverter));
    let pressed: Listener = Box::new(move |event: Event| {
        let target = event.target().and_then(|own| own.dyn_into::<web_sys::Element>().ok());
        let Some(rated) = target.and_then(|own| own.get_attribute("data-inverter")) else { return };
        let rated = js_sys::parse_float(&rated);
        if Field::InverterRated.range().holds(rated) {
            store.edit("fitting inverter", &mut |plan| {
                let own = plan.inverter.get_or_insert_with(Inverter::default);
                // What was stated of the smaller one does not hold for this.
                (own.rated_w, own.surge_w, own.idle_w) = (rated, None, None);
            });
            store.say_changed(WORDS.added_inverter(&words().amount(Watts(rated))));
        }
    });
    node("div")
        .attr("class", "mend")
        .on("click", pressed)
        .child(when(wanted, move || leaf(store, Leaf::Inverter, String::new())))
        .view()
}
