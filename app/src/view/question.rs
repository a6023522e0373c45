//! A question of the ledger, with its one-line answer at the right.

use crate::signal::*;
use sunlarder_engine::words::Label;

use crate::dom::node::{View, node, nothing};
use crate::dom::part::{Listener, dynamic, is_open};
use crate::store::WORDS;

/// A question that opens; its inside is made when it first does.
pub(crate) fn question(
    title: Label,
    answer: Signal<String>,
    open: bool,
    mut inside: impl FnMut() -> View + 'static,
) -> View {
    let opened = RwSignal::new(open);
    let toggled: Listener = Box::new(move |event| {
        if is_open(&event) && !opened.get_untracked() {
            opened.set(true);
        }
    });
    let inside = dynamic(move || if opened.get() { inside() } else { nothing() });
    node("details")
        .attr("class", "question")
        .attr("open", open)
        .on("toggle", toggled)
        .child(
            node("summary")
                .child(node("span").attr("class", "mark").attr("aria-hidden", "true").view())
                .child(node("h2").child(WORDS.label(title)).view())
                .child(node("span").attr("class", "answer").child(answer).view())
                .view(),
        )
        .child(node("div").attr("class", "inside").child(inside).view())
        .view()
}
