//! The width a chart has, as a signal.

use leptos::html::Div;
use leptos::prelude::*;
use leptos::web_sys;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::ResizeObserver;

/// The inner width of the element in CSS pixels; 0 until it stands on the page, and while it is hidden.
pub(crate) fn width_of(node: NodeRef<Div>) -> ReadSignal<f64> {
    let (width, set_width) = signal(0.0);
    let measure = move || {
        let Some(element) = node.get_untracked() else { return };
        let now = f64::from(element.client_width());
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
