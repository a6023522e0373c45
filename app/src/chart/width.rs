//! The width a chart has, as a signal.
//!
//! Charts are laid out in sixteenths of the reader's type size (of `1rem`), which are CSS pixels at the usual size: where
//! somebody reads larger type, the text in charts grows too, and the layout knows that it has less room.

use crate::signal::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::ResizeObserver;

use crate::bind::watch;
use sunlarder_engine::words::decimal;

/// Units of a chart in the reader's type size.
const UNITS: f64 = 16.0;

/// A chart's length as a CSS length.
pub(crate) fn css(length: f64) -> String {
    format!("{}rem", decimal(length / UNITS, 4))
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
pub(crate) fn width_of(element: &web_sys::Element) -> Signal<f64> {
    let width = RwSignal::new(0.0);
    let own = element.clone();
    let measure = move || {
        let now = f64::from(own.client_width()) * UNITS / type_size().unwrap_or(UNITS);
        if now != width.get_untracked() {
            width.set(now);
        }
    };
    // Once now that the element is about to stand on the page: without an observer the chart keeps the width it had at first.
    watch(Box::new(measure.clone()));
    let callback = Closure::<dyn FnMut()>::new(measure);
    let Ok(observer) = ResizeObserver::new(callback.as_ref().unchecked_ref()) else {
        return width.into();
    };
    observer.observe(element);
    // The observer calls the closure, so both live for as long as the chart stands.
    let watch = StoredValue::new((observer, callback));
    on_cleanup(move || {
        watch.update_value(|(observer, _)| observer.disconnect());
    });
    width.into()
}
