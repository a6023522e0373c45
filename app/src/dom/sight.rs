//! Brings what has just come or moved into sight, and gives it the focus.

use crate::signal::*;
use wasm_bindgen::{JsCast, JsValue};

/// Does something with the element of a selector once what has just changed stands in the page.
fn soon(selector: String, act: fn(&web_sys::HtmlElement)) {
    request_animation_frame(move || {
        if let Ok(Some(found)) = document().query_selector(&selector) {
            act(found.unchecked_ref());
        }
    });
}

/// Gives the element the focus.
pub(crate) fn focus_soon(selector: String) {
    soon(selector, |own| {
        let _ = own.focus();
    });
}

/// Scrolls no further than it takes to see the element.
pub(crate) fn show_soon(selector: String) {
    soon(selector, |own| show(own, "nearest"));
}

/// Scrolls an element to where it is wanted, at once.
pub(crate) fn show(element: &web_sys::Element, block: &str) {
    let options = js_sys::Object::new();
    let _ = js_sys::Reflect::set(&options, &JsValue::from_str("block"), &JsValue::from_str(block));
    element.scroll_into_view_with_scroll_into_view_options(options.unchecked_ref());
}
