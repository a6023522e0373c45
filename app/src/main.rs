//! The Sunlarder planner page.
use leptos::prelude::*;

fn main() {
    console_error_panic_hook::set_once();
    if let Some(skeleton) = document().get_element_by_id("skeleton") {
        skeleton.remove();
    }
    mount_to_body(|| view! { <main><h1>"Sunlarder"</h1></main> });
    if let Some(root) = document().document_element() {
        // Browser tests wait for this.
        let _ = root.set_attribute("data-ready", "1");
    }
}
