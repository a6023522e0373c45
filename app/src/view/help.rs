//! The quiet question mark beside a label, and the sentence that it opens, which the worker writes.

use crate::signal::*;
use sunlarder_engine::words::{Label, decimal};
use sunlarder_worker::leaf::{Leaf, Topic};

use super::field::fresh_id;
use super::leaf::leaf;
use crate::dom::node::{View, node};
use crate::dom::part::{act, when};
use crate::store::{Store, WORDS};

/// The button, and an element of that tag for what it opens.
pub(crate) fn asked(store: Store, label: &str, topic: Topic, tag: &'static str) -> [View; 2] {
    let open = RwSignal::new(false);
    let id = fresh_id("explained");
    let expanded = memo(Box::new(move || if open.get() { "true" } else { "false" }.to_owned()));
    let button = node("button")
        .attr("type", "button")
        .attr("class", "ask")
        .attr("aria-label", WORDS.what_is(label))
        .attr("aria-expanded", expanded)
        .attr("aria-controls", id.clone())
        .on("click", act(move || open.update(|open| *open = !*open)))
        .child("?");
    let argument = move || decimal(topic.number() as f64, 0);
    let inside = when(open.into(), move || leaf(store, Leaf::Explained, argument()));
    let inside = node(tag)
        .attr("class", "explained")
        .attr("id", id)
        .attr("aria-live", "polite")
        .child(inside);
    [button.view(), inside.view()]
}

/// Something with a trade word in its title, and what explains it.
pub(crate) fn with_help(store: Store, label: Label, topic: Topic, what: View) -> View {
    let [button, inside] = asked(store, WORDS.label(label), topic, "div");
    node("div").attr("class", "asked").child(what).child(button).child(inside).view()
}
