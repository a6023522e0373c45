//! A year of hourly weather that a person brings, and what it does with the plan.

use std::rc::Rc;

use sunlarder_engine::words::Label as L;
use sunlarder_worker::sentences::PART;
use wasm_bindgen::JsValue;

use super::field::button;
use super::place::hint;
use super::share::file_button;
use crate::dom::node::{View, node};
use crate::dom::part::{dynamic, when};
use crate::signal::memo;
use crate::store::Store;
use crate::worker::bring;

/// A button for the file, what it comes to, and a way to take it away.
pub(crate) fn replay(store: Store) -> View {
    let said = store.worked.replayed;
    let there = memo(Box::new(move || said.with(|said| !said.is_empty())));
    let sentences = dynamic(move || {
        let line = |text: &str| node("li").child(text.to_owned()).view();
        let lines = said.with(|said| {
            let said = said.split(PART).filter(|text| !text.is_empty());
            said.map(line).collect::<Vec<_>>()
        });
        node("ul").attr("class", "weather").child(lines).view()
    });
    let away =
        move || button(L::TakeYearAway, "button quiet", move || bring(store, &JsValue::NULL));
    node("div")
        .attr("class", "part")
        .attr("id", "replay")
        .child(file_button(L::ReplayYear, ".epw", Rc::new(move |text| bring(store, &text))))
        .child(hint(L::ReplayHint))
        .child(node("div").attr("role", "status").child(sentences).view())
        .child(when(there, away))
        .view()
}
