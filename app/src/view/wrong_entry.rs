//! Says at the top that the answer is of the plan before a wrong entry, and leads there.

use crate::signal::*;
use wasm_bindgen::JsCast;

use crate::bind::signal;
use crate::dom::node::{View, node};
use crate::dom::part::{act, when};
use crate::dom::sight::show;
use crate::edge::{after_words, on_document};
use crate::store::{Store, WORDS};

/// The first box with a wrong entry; one of a reading that is being typed bears on no answer.
fn wrong_box() -> Option<web_sys::HtmlElement> {
    let found =
        document().query_selector(".ledger [aria-invalid=\"true\"]:not(#reading *)").ok()??;
    found.dyn_into().ok()
}

/// What a box is called.
fn name_of(own: &web_sys::Element) -> Option<String> {
    own.closest(".field").ok()??.query_selector("label").ok()??.text_content()
}

/// Keeps watch over the boxes for as long as the page lives.
pub(crate) fn watch_entries(store: Store) {
    let look = move || {
        let now = wrong_box().and_then(|own| name_of(&own)).unwrap_or_default();
        if store.wrong.with_untracked(|wrong| *wrong != now) {
            store.wrong.set(now);
        }
    };
    // A wrong entry changes no plan; what undo clears makes no input.
    let entries = RwSignal::new(0u32);
    on_document("input", move |_| entries.update(|count| *count = count.wrapping_add(1)));
    let changed = move || {
        entries.track();
        store.plan.track();
        store.face.track();
    };
    after_words(changed, look);
}

/// Whose entry is wrong, with a button that leads to it; nothing while none is.
pub(crate) fn wrong_entry(store: Store) -> View {
    let there = memo(Box::new(move || store.wrong.with(|wrong| !wrong.is_empty())));
    let go = || {
        let Some(own) = wrong_box() else { return };
        let mut fold = own.closest("details:not([open])").ok().flatten();
        while let Some(details) = fold {
            let _ = details.toggle_attribute_with_force("open", true);
            fold = own.closest("details:not([open])").ok().flatten();
        }
        show(&own, "center");
        let _ = own.focus();
    };
    let mark = when(there, move || {
        node("p")
            .attr("class", "problem")
            .child(WORDS.before_wrong_entry())
            .child(" ")
            .child(
                node("button")
                    .attr("type", "button")
                    .attr("class", "button quiet")
                    .on("click", act(go))
                    .child(signal(store.wrong))
                    .view(),
            )
            .view()
    });
    node("div").attr("class", "wrong-entry").attr("role", "status").child(mark).view()
}
