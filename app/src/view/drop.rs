//! A plan file or a link, dropped anywhere on the page.

use crate::signal::*;
use sunlarder_engine::words::Label as L;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::Event;

use super::share::{read_text, text_of};
use crate::dom::node::{Child as _, View, node};
use crate::dom::part::when;
use crate::store::{Store, WORDS};

/// The target, there while something is dragged over the page.
pub(crate) fn drop_target(store: Store) -> View {
    let over = RwSignal::new(false);
    hear("dragover", move |event| {
        if !is_ours(event) {
            return;
        }
        event.prevent_default();
        over.set(true);
    });
    // Out of the window, not from one element to the next.
    hear("dragleave", move |event| {
        if event.related_target().is_none() {
            over.set(false);
        }
    });
    hear("drop", move |event| {
        over.set(false);
        if is_ours(event) {
            event.prevent_default();
            take(store, event);
        }
    });
    let target = move || node("p").attr("class", "drop").child(WORDS.label(L::DropHere)).view();
    when(over.into(), target).view()
}

fn hear(name: &str, act: impl Fn(&web_sys::DragEvent) + 'static) {
    let act = Closure::<dyn FnMut(_)>::new(move |event: Event| act(event.unchecked_ref()));
    let _ = document().add_event_listener_with_callback(name, act.as_ref().unchecked_ref());
    // The page listens as long as it lives.
    act.forget();
}

/// Whether a file or text is dragged that the page may take: text over a box is the box's.
fn is_ours(event: &web_sys::DragEvent) -> bool {
    let Some(data) = event.data_transfer() else { return false };
    let types = data.types();
    let has = |name: &str| types.includes(&name.into(), 0);
    let box_below = event
        .target()
        .and_then(|own| own.dyn_into::<web_sys::Element>().ok())
        .is_some_and(|own| own.tag_name() == "INPUT");
    has("Files") || has("text/plain") && !box_below
}

fn take(store: Store, event: &web_sys::DragEvent) {
    let Some(data) = event.data_transfer() else { return };
    let file = data.files().and_then(|files| files.get(0));
    let done = move |text: String| {
        if text.trim().is_empty() {
            store.complain(format!("{} {}", WORDS.label(L::NothingToOpen), WORDS.unchanged()));
            return;
        }
        match read_text(&text) {
            Ok(plan) => store.open_new(plan),
            Err(why) => store.complain(why),
        }
    };
    match file {
        Some(file) => text_of(&file, done),
        None => done(data.get_data("text/plain").unwrap_or_default()),
    }
}
