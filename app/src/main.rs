//! The Sunlarder planner page. It holds no physics: it binds controls to the plan and shows what the engine says of it.

mod address;
mod assets;
mod bind;
mod chart;
#[expect(unreachable_pub, reason = "wasm-bindgen exports only what is public")]
mod desk;
mod dom;
mod drawers;
mod edge;
mod history;
mod keep;
mod load_row;
mod outlook_data;
mod plan_file;
mod signal;
mod speech;
mod store;
mod view;
mod worker;

use any_spawner::Executor;
use reactive_graph::owner::Owner;
use sunlarder_engine::place::Climate;

/// Half the size of std's, as quick.
#[cfg(target_arch = "wasm32")]
#[global_allocator]
static ALLOCATOR: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();

fn main() {
    // In the worker there is no page to be made; app/web/worker.js opens the desk.
    if web_sys::window().is_none() {
        return;
    }
    #[cfg(debug_assertions)]
    edge::catch_panics();
    wasm_bindgen_futures::spawn_local(async {
        match assets::climate().await {
            Ok(earth) => stand(earth),
            Err(()) => edge::tell_that_it_cannot_stand(),
        }
    });
}

/// The page stands as soon as it knows the climate.
fn stand(earth: &'static Climate) {
    // Effects run as the browser's tasks. It is refused only if it was said before.
    let _ = Executor::init_wasm_bindgen();
    // Nothing of the page ends before it does.
    let owner = Box::leak(Box::new(Owner::new()));
    owner.with(move || {
        speech::recall();
        let store = store::Store::new(earth);
        edge::open_first(store);
        edge::follow_address(store);
        edge::keep_saved(store);
        edge::keep_before_leaving(store);
        edge::draw_after_words(store);
        worker::follow(store);
        dom::node::put_into_body(view::shell(store));
        drawers::fetch(store);
    });
    edge::stand();
}
