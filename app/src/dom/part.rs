//! Closures behind pointers: parts of the page that change, and listeners.

use crate::signal::*;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::Event;

use super::node::{View, nothing};

/// A part of the page that is made anew when what it reads has changed.
pub(crate) type Dynamic = Box<dyn FnMut() -> View>;

/// What listens to an event.
pub(crate) type Listener = Box<dyn FnMut(Event)>;

/// A part that changes.
pub(crate) fn dynamic(make: impl FnMut() -> View + 'static) -> Dynamic {
    Box::new(make)
}

/// A part that is there while something holds.
pub(crate) fn when(holds: Signal<bool>, mut make: impl FnMut() -> View + 'static) -> Dynamic {
    Box::new(move || if holds.get() { untrack(&mut make) } else { nothing() })
}

/// What a press does.
pub(crate) fn act(mut press: impl FnMut() + 'static) -> Listener {
    Box::new(move |_| press())
}

/// What a new value of a control does.
pub(crate) fn typed(mut take: impl FnMut(String) + 'static) -> Listener {
    Box::new(move |event: Event| {
        // Inputs, selects and text areas all have a value; no type of theirs is needed to read it.
        let target = event.target().map(JsValue::from).unwrap_or(JsValue::NULL);
        let value = js_sys::Reflect::get(&target, &JsValue::from_str("value"));
        take(value.ok().and_then(|value| value.as_string()).unwrap_or_default());
    })
}

/// Whether the `details` element of a toggle event is open.
pub(crate) fn is_open(event: &Event) -> bool {
    let details = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    details.is_some_and(|details| details.has_attribute("open"))
}
