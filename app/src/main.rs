//! The Sunlarder planner page.
use leptos::prelude::*;

fn main() {
    mount_to_body(|| view! { <main><h1>"Sunlarder"</h1></main> });
}
