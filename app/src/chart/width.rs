//! The width a chart has, as a signal.
//!
//! Charts are laid out in sixteenths of the reader's type size (of `1rem`), which are CSS pixels at the usual size: where
//! somebody reads larger type, the text in charts grows too, and the layout knows that it has less room.

use leptos::html::Div;
use leptos::prelude::*;
use leptos::web_sys;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::ResizeObserver;

/// Units of a chart in the reader's type size.
const UNITS: f64 = 16.0;

/// A chart's length as a CSS length.
pub(crate) fn css(length: f64) -> String {
    format!("{:.4}rem", length / UNITS)
}

/// The reader's type size \[CSS px\].
fn type_size() -> Option<f64> {
    let root = document().document_element()?;
    let style = window().get_computed_style(&root).ok()??;
    // The browser reads the number in front of `px`; Rust's own reader would bring a table of 10 kB.
    let size = js_sys::parse_float(&style.get_property_value("font-size").ok()?);
    (size > 0.0).then_some(size)
}

/// The inner width of the element in units of a chart; 0 until it stands on the page, and while it is hidden.
pub(crate) fn width_of(node: NodeRef<Div>) -> ReadSignal<f64> {
    let (width, set_width) = signal(0.0);
    let measure = move || {
        let Some(element) = node.get_untracked() else { return };
        let now = f64::from(element.client_width()) * UNITS / type_size().unwrap_or(UNITS);
        if now != width.get_untracked() {
            set_width.set(now);
        }
    };
    Effect::new(move || {
        let Some(element) = node.get() else { return };
        measure();
        let callback = Closure::<dyn FnMut()>::new(measure);
        // Without an observer the chart keeps the width it had at first.
        let Ok(observer) = ResizeObserver::new(callback.as_ref().unchecked_ref()) else { return };
        observer.observe(&element);
        // The observer calls the closure, so both live for as long as the chart stands.
        let watch = StoredValue::new_local((observer, callback));
        on_cleanup(move || {
            watch.try_with_value(|(observer, _)| observer.disconnect());
        });
    });
    width
}
