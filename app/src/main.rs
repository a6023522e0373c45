//! The Sunlarder planner page. It holds no physics: it binds controls to the plan and shows what the engine says of it.

mod address;
mod bind;
mod chart;
mod edge;
mod history;
mod keep;
mod load_row;
mod outlook_data;
mod store;
mod view;

use leptos::prelude::*;

fn main() {
    edge::catch_panics();
    mount_to_body(|| {
        let store = store::Store::provide();
        edge::open_first(store);
        edge::follow_address(store);
        edge::keep_saved(store);
        view! { <view::Shell /> }
    });
    edge::stand();
}
