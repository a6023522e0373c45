//! How a figure was worked out: its equations with the numbers put in, down to the sources.

use leptos::prelude::*;
use sunlarder_engine::words::{InputLine, Label, Line, lines};
use sunlarder_engine::working::Working;

use super::field::more_while;
use super::node::{Child as _, View, node};
use crate::store::{Solved, Store, WORDS};

/// The working of a figure, computed while it is open.
pub(crate) fn worked(store: Store, title: Label, work: fn(&Solved, &mut Working)) -> View {
    more_while("working", title, move || {
        let lines = store.answers.with(|answers| {
            let Some(solved) = answers.solved() else { return Vec::new() };
            let mut working = Working::new();
            work(solved, &mut working);
            lines(&working, WORDS, &|tag| store.name_of(tag))
        });
        lines.into_iter().enumerate().rev().map(step).collect::<Vec<_>>().view()
    })
}

/// One step, by the number under which others refer to it: what it is, the equation in symbols and in numbers, what the
/// symbols mean.
fn step((at, line): (usize, Line)) -> View {
    let inputs: Vec<View> = line.inputs.into_iter().map(input).collect();
    let owner = line.owner.map(|owner| format!(" – {owner}")).unwrap_or_default();
    node("div")
        .attr("class", "step")
        .child(node("h3").child(format!("{}. ", at + 1)).child(line.title).child(owner).view())
        .child(
            node("p")
                .attr("class", "equation")
                .child(line.symbol)
                .child(" = ")
                .child(line.equation)
                .view(),
        )
        .child(
            node("p")
                .attr("class", "equation")
                .child("= ")
                .child(line.numbers)
                .child(" = ")
                .child(node("strong").child(line.result).view())
                .view(),
        )
        .child(node("ul").attr("class", "symbols").child(inputs).view())
        .child(node("p").attr("class", "source").child(line.source).view())
        .view()
}

fn input(input: InputLine) -> View {
    let owner = input.owner.map(|owner| format!(" ({owner})")).unwrap_or_default();
    node("li")
        .child(node("b").child(input.symbol).view())
        .child(" ")
        .child(input.meaning)
        .child(owner)
        .child(": ")
        .child(input.value)
        .child(node("span").attr("class", "source").child(" · ").child(input.source).view())
        .view()
}
