//! The edges of the page: address, storage, the starter script. Effects live here and nowhere else.

use core::time::Duration;

use crate::signal::*;
use sunlarder_engine::words::Label as L;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

use crate::address::{Asked, asked};
use crate::bind::watch;
use crate::keep;
use crate::store::{Face, Store, WORDS, words};

/// Opens what the address asks for, else the plan last open, else the choice of starts.
pub(crate) fn open_first(store: Store) {
    if open_asked(store) {
        return;
    }
    match keep::current() {
        Some(kept) => match kept.plan {
            Ok(plan) => store.open(kept.id, plan),
            Err(problem) => {
                let why = words().problem(&problem, &|_| None);
                store.complain(format!("{} {why}", WORDS.label(L::StoredPlanUnreadable)));
            }
        },
        None => store.face.set(Face::Start),
    }
}

/// Opens the plan behind the `#` of the address and takes it out of there: what is edited next is no longer that link.
fn open_asked(store: Store) -> bool {
    let Some(window) = web_sys::window() else { return false };
    let hash = window.location().hash().unwrap_or_default();
    let opened = match asked(&hash) {
        Asked::Nothing => return false,
        Asked::Plan(plan) => {
            store.open_new(*plan);
            true
        }
        Asked::Question(what, plan) => {
            store.open_new(*plan);
            store.guessed.set(what);
            store.face.set(Face::Guess);
            // The address stays, so that the answer does not come up when the page is loaded anew.
            return true;
        }
        Asked::Unreadable(problem) => {
            store.complain(format!(
                "{} {}",
                words().problem(&problem, &|_| None),
                WORDS.unchanged()
            ));
            false
        }
    };
    bare_address();
    opened
}

/// Takes what stands behind the `#` out of the address.
pub(crate) fn bare_address() {
    put_into_address(this_page().split('#').next().unwrap_or_default());
}

/// Makes a link the page's address without loading it.
pub(crate) fn put_into_address(link: &str) {
    if let Ok(history) = window().history() {
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(link));
    }
}

/// This page's address.
pub(crate) fn this_page() -> String {
    window().location().href().unwrap_or_default()
}

/// Follows links that are opened while the page stands.
pub(crate) fn follow_address(store: Store) {
    on_window("hashchange", move || {
        open_asked(store);
    });
}

/// Does something once what has just changed is on the screen; of quick changes only the last is acted on.
pub(crate) fn after_words(read: impl Fn() + 'static, act: impl Fn() + Copy + 'static) {
    after_rest(read, act, Duration::ZERO);
}

/// The same after nothing has changed for so long.
pub(crate) fn after_rest(
    read: impl Fn() + 'static,
    act: impl Fn() + Copy + 'static,
    rest: Duration,
) {
    let turn = StoredValue::new(0u32);
    watch(Box::new(move || {
        read();
        turn.update_value(|turn| *turn = turn.wrapping_add(1));
        let mine = turn.get_value();
        let act = move || {
            if turn.get_value() == mine {
                act();
            }
        };
        if rest.is_zero() {
            // The callback comes before the frame is painted, its timer after.
            request_animation_frame(move || set_timeout(act, rest));
        } else {
            set_timeout(act, rest);
        }
    }));
}

/// A row of quick edits is kept once. What is not kept yet when the page goes is kept then.
const KEPT_AFTER: Duration = Duration::from_millis(400);

/// What stands below the curve waits for a pause: no hand sees both, and a slider stays quick.
const BELOW_AFTER: Duration = Duration::from_millis(150);

/// Keeps the plan on the device after every change; tells once if that is refused.
pub(crate) fn keep_saved(store: Store) {
    let told = StoredValue::new(false);
    let changed = move || {
        store.plan.track();
        store.id.track();
        store.face.track();
    };
    let keep = move || match store.keep_now() {
        Ok(()) => told.set_value(false),
        Err(()) if !told.get_value() => {
            told.set_value(true);
            store.complain(WORDS.label(L::StorageRefused));
        }
        Err(()) => {}
    };
    after_rest(changed, keep, KEPT_AFTER);
}

/// Keeps the plan at once when the page may go: a tab that is left, a new version that is taken.
pub(crate) fn keep_before_leaving(store: Store) {
    for event in ["pagehide", "blur", "visibilitychange"] {
        on_window(event, move || {
            store.keep_change_now();
        });
    }
}

/// Lets the pictures follow the answers once the words are on the screen.
pub(crate) fn draw_after_words(store: Store) {
    after_words(
        move || store.answers.track(),
        move || {
            // What weather does with another plan is no band of this one.
            store.worked.band.set(Vec::new());
            // A point of the other line stays, which nobody sees, and with it the key: the legend must not jump.
            store.worked.path.update(|path| path.truncate(1));
            store.drawn.set(store.solved());
        },
    );
    let below = move || store.drawn_below.set(store.drawn.get_untracked());
    after_rest(move || store.drawn.track(), below, BELOW_AFTER);
}

/// Shows the page from its top: whoever starts a plan wants its verdict first, wherever the page of before was scrolled to.
pub(crate) fn to_top() {
    window().scroll_to_with_x_and_y(0.0, 0.0);
}

/// Whether a new version waits.
pub(crate) fn update_waits() -> bool {
    let root = document().document_element();
    root.and_then(|root| root.get_attribute("data-update")).as_deref() == Some("waiting")
}

/// Listens to an event of the window for as long as the page lives.
pub(crate) fn on_window(event: &str, heard: impl Fn() + 'static) {
    let heard = Closure::<dyn FnMut()>::new(heard);
    let _ = window().add_event_listener_with_callback(event, heard.as_ref().unchecked_ref());
    heard.forget();
}

/// Listens to an event that the starter script sends.
pub(crate) fn on_document(event: &str, heard: impl Fn(web_sys::CustomEvent) + 'static) {
    let heard = Closure::<dyn FnMut(_)>::new(heard);
    let _ = document().add_event_listener_with_callback(event, heard.as_ref().unchecked_ref());
    heard.forget();
}

/// Tells the starter script that the person agreed to the new version.
pub(crate) fn take_over() {
    send("sunlarder:take-over", &JsValue::NULL);
}

/// Sends an event to the starter script.
pub(crate) fn send(name: &str, detail: &JsValue) {
    let options = web_sys::CustomEventInit::new();
    options.set_detail(detail);
    if let Ok(event) = web_sys::CustomEvent::new_with_event_init_dict(name, &options) {
        let _ = document().dispatch_event(&event);
    }
}

/// Tells why the program stops. A release has no such messages: the starter script notices the trap.
#[cfg(debug_assertions)]
pub(crate) fn catch_panics() {
    std::panic::set_hook(Box::new(|panic| {
        console_error_panic_hook::hook(panic);
        send("sunlarder:stopped", &JsValue::from_str(&panic.to_string()));
    }));
}

/// Says on the first paint that the page cannot stand, and offers to try again.
pub(crate) fn tell_that_it_cannot_stand() {
    let Some(place) = document().get_element_by_id("loading") else { return };
    place.set_text_content(Some(WORDS.label(L::NoClimate)));
    let _ = place.set_attribute("role", "alert");
    let Ok(button) = document().create_element("button") else { return };
    button.set_class_name("button");
    button.set_text_content(Some(WORDS.label(L::TryAgain)));
    let again = Closure::<dyn FnMut()>::new(|| {
        let _ = window().location().reload();
    });
    let _ = button.add_event_listener_with_callback("click", again.as_ref().unchecked_ref());
    again.forget();
    let _ = place.after_with_node_1(&button);
}

/// Tells that the page stands: takes the first paint away and lets tests begin.
pub(crate) fn stand() {
    if let Some(skeleton) = document().get_element_by_id("skeleton") {
        skeleton.remove();
    }
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("data-ready", "1");
    }
    send("sunlarder:stands", &JsValue::NULL);
}
