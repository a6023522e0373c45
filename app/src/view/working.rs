//! How a figure was worked out: its equations with the numbers put in, down to the sources.

use sunlarder_engine::outlook::Question;
use sunlarder_engine::words::Label;
use sunlarder_worker::sheet::{HEAD, INPUT, PART, STEP};

use super::field::more_while;
use crate::dom::node::{Child as _, View, node};
use crate::dom::part::dynamic;
use crate::store::Store;
use leptos::prelude::*;

/// The working of a figure, asked of the worker while it is open.
pub(crate) fn worked(store: Store, title: Label, question: Question) -> View {
    more_while("working", title, move || {
        let sheet = store.worked.ask(question);
        dynamic(move || sheet.with(|sheet| sheet.split(STEP).map(step).collect::<Vec<_>>()).view())
            .view()
    })
}

/// One step: what it is, the equation in symbols and in numbers, what the symbols mean. A text without parts is a sentence.
fn step(step: &str) -> View {
    let parts: Vec<&str> = step.split(PART).collect();
    let part = |tag, class, place: usize| {
        let text = parts.get(place).copied().unwrap_or_default();
        node(tag).attr("class", class).child(text.to_owned())
    };
    if parts.len() < HEAD {
        return part("p", "hint", 0).view();
    }
    let inputs: Vec<View> = parts[HEAD..].chunks(INPUT).map(input).collect();
    node("div")
        .attr("class", "step")
        .child(part("h3", "", 0).view())
        .child(part("p", "equation", 1).view())
        .child(part("p", "equation", 2).child(part("strong", "", 3).view()).view())
        .child(node("ul").attr("class", "symbols").child(inputs).view())
        .child(part("p", "source", 4).view())
        .view()
}

fn input(parts: &[&str]) -> View {
    let part = |place: usize| parts.get(place).copied().unwrap_or_default().to_owned();
    node("li")
        .child(node("b").child(part(0)).view())
        .child(part(1))
        .child(node("span").attr("class", "source").child(part(2)).view())
        .view()
}
