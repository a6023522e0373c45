//! What is folded away until somebody opens it.

use crate::signal::*;
use sunlarder_engine::words::Label;

use crate::dom::node::{View, node, nothing};
use crate::dom::part::{Dynamic, Listener, dynamic, is_open, typed, when};
use crate::store::WORDS;

/// What is folded away under a summary, made when it is first opened and then kept.
pub(crate) fn more(label: Label, mut inside: impl FnMut() -> View + 'static) -> View {
    let opened = RwSignal::new(false);
    let toggled = typed(move |_| {
        if !opened.get_untracked() {
            opened.set(true);
        }
    });
    let inside = dynamic(move || if opened.get() { inside() } else { nothing() });
    folded("more", label, toggled, inside)
}

/// What is folded away under a summary and is there only while it is open, because keeping it up to date costs something.
pub(crate) fn more_while(
    class: &'static str,
    label: Label,
    inside: impl FnMut() -> View + 'static,
) -> View {
    let open = RwSignal::new(false);
    let toggled: Listener = Box::new(move |event| open.set(is_open(&event)));
    folded(class, label, toggled, when(open.into(), inside))
}

fn folded(class: &'static str, label: Label, toggled: Listener, inside: Dynamic) -> View {
    node("details")
        .attr("class", class)
        .on("toggle", toggled)
        .child(node("summary").child(WORDS.label(label)).view())
        .child(inside)
        .view()
}
