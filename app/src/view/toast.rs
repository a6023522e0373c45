//! What is said in passing: it goes by itself unless it is grave, stays while somebody is at it, and gives way to what has the focus.

use core::time::Duration;

use crate::signal::*;

use sunlarder_engine::words::Label as L;

use super::field::button;
use crate::bind::watch;
use crate::dom::node::{View, node, nothing};
use crate::dom::part::{Listener, act, dynamic, when};
use crate::edge::on_document;
use crate::store::{Notice, Store};

/// Long enough to read a sentence and to reach its button.
const STAYS: Duration = Duration::from_secs(10);

/// What is said in passing.
pub(crate) fn toast(store: Store) -> View {
    // While the pointer or the focus is on it, nothing goes.
    let held = RwSignal::new(false);
    let turn = StoredValue::new(0u32);
    watch(Box::new(move || {
        let waits = store.notice.with(|notice| notice.as_ref().is_some_and(|own| !own.grave));
        turn.update_value(|turn| *turn = turn.wrapping_add(1));
        let mine = turn.get_value();
        if waits && !held.get() {
            let fade = move || {
                if turn.try_get_value() == Some(mine) {
                    store.notice.set(None);
                }
            };
            set_timeout(fade, STAYS);
        }
    }));
    let hold = move |is: bool| -> Listener { act(move || held.set(is)) };
    let notice = dynamic(move || match store.notice.get() {
        None => {
            held.set(false);
            nothing()
        }
        Some(notice) => {
            give_way_soon();
            one(store, notice)
        }
    });
    on_document("focusin", |_| give_way());
    node("div")
        .attr("class", "toasts")
        .attr("role", "status")
        .attr("aria-live", "polite")
        .on("pointerenter", hold(true))
        .on("pointerleave", hold(false))
        .on("focusin", hold(true))
        .on("focusout", hold(false))
        .child(notice)
        .view()
}

fn one(store: Store, Notice { text, grave, turn }: Notice) -> View {
    let class = if grave { "toast grave" } else { "toast" };
    let close = button(L::Close, "button quiet", move || store.notice.set(None));
    let may = memo(Box::new(move || turn.is_some_and(|turn| store.is_turn(turn))));
    let undo = when(may, move || {
        button(L::Undo, "button quiet", move || {
            store.undo();
            store.notice.set(None);
        })
    });
    node("div")
        .attr("class", class)
        .child(node("p").child(text).view())
        .child(node("div").attr("class", "toast-acts").child(undo).child(close).view())
        .view()
}

/// The same once what is said stands on the page.
fn give_way_soon() {
    request_animation_frame(give_way);
}

/// Puts what is said to the top of the page while it would lie over what has the focus.
fn give_way() {
    let find = |selector| document().query_selector(selector).ok().flatten();
    let (Some(toast), Some(focused)) = (find(".toasts > .toast"), document().active_element())
    else {
        return;
    };
    if focused.tag_name() == "BODY" || toast.contains(Some(&focused)) {
        return;
    }
    let classes = toast.class_list();
    let _ = classes.remove_1("above");
    // With its label and what is wrong with it.
    let around = focused.closest(".field, .strip").ok().flatten().unwrap_or(focused);
    let (toast, field) = (toast.get_bounding_client_rect(), around.get_bounding_client_rect());
    if field.bottom() > toast.top() && field.top() < toast.bottom() {
        let _ = classes.add_1("above");
    }
}
