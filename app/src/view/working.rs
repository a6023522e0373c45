//! How a figure was worked out: its equations with the numbers put in, down to the sources.

use leptos::prelude::*;
use sunlarder_engine::words::{InputLine, Label, Line, lines};
use sunlarder_engine::working::Working;

use super::field::more_while;
use crate::store::{Solved, Store, WORDS};

/// The working of a figure, computed while it is open.
pub(crate) fn worked(store: Store, title: Label, work: fn(&Solved, &mut Working)) -> AnyView {
    more_while("working", title, move || {
        let lines = store.answers.with(|answers| {
            let Some(solved) = answers.solved() else { return Vec::new() };
            let mut working = Working::new();
            work(solved, &mut working);
            lines(&working, WORDS, &|tag| store.name_of(tag))
        });
        lines.into_iter().enumerate().rev().map(step).collect::<Vec<_>>().into_any()
    })
}

/// One step, by the number under which others refer to it: what it is, the equation in symbols and in numbers, what the symbols mean.
fn step((at, line): (usize, Line)) -> AnyView {
    let inputs: Vec<AnyView> = line.inputs.into_iter().map(input).collect();
    let owner = line.owner.map(|owner| format!(" – {owner}")).unwrap_or_default();
    view! {
        <div class="step">
            <h3>{at + 1} ". " {line.title} {owner}</h3>
            <p class="equation">{line.symbol} " = " {line.equation}</p>
            <p class="equation">"= " {line.numbers} " = " <strong>{line.result}</strong></p>
            <ul class="symbols">{inputs}</ul>
            <p class="source">{line.source}</p>
        </div>
    }
    .into_any()
}

fn input(input: InputLine) -> AnyView {
    let owner = input.owner.map(|owner| format!(" ({owner})")).unwrap_or_default();
    view! {
        <li>
            <b>{input.symbol}</b> " " {input.meaning} {owner} ": " {input.value}
            <span class="source">" · " {input.source}</span>
        </li>
    }
    .into_any()
}
