//! How a figure was worked out: its equations with the numbers put in, down to the sources.

use leptos::prelude::*;
use leptos::web_sys;
use sunlarder_engine::words::{Label, Line, lines};
use sunlarder_engine::working::Working;
use wasm_bindgen::JsCast;

use crate::store::{Solved, Store, WORDS};

/// The working of a figure, computed when it is opened and then kept up to date.
#[component]
pub(crate) fn Worked(
    /// What is asked.
    title: Label,
    /// Computes the figure once more with the record on.
    work: fn(&Solved, &mut Working),
) -> impl IntoView {
    let store = Store::get();
    let open = RwSignal::new(false);
    let worked = Memo::new(move |_| {
        if !open.get() {
            return Vec::new();
        }
        store.answers.with(|answers| {
            let Some(solved) = answers.solved() else { return Vec::new() };
            let mut working = Working::new();
            work(solved, &mut working);
            lines(&working, WORDS, &|tag| store.name_of(tag))
        })
    });
    view! {
        <details class="working" on:toggle=move |event| {
            let details = event.target().and_then(|own| own.dyn_into::<web_sys::Element>().ok());
            open.set(details.is_some_and(|own| own.has_attribute("open")));
        }>
            <summary>{WORDS.label(title)}</summary>
            {move || worked.get().into_iter().rev().map(step).collect_view()}
        </details>
    }
}

/// One step: what it is, the equation in symbols and in numbers, what the symbols mean.
fn step(line: Line) -> impl IntoView {
    let inputs = line.inputs.into_iter().map(|input| {
        view! {
            <li>
                <span class="symbol">{input.symbol}</span> " " {input.meaning}
                {input.owner.map(|owner| format!(" ({owner})"))} ": " {input.value}
                <span class="source">" · " {input.source}</span>
            </li>
        }
    });
    let owner = line.owner.map(|owner| format!(" – {owner}"));
    view! {
        <div class="step">
            <h4>{line.title} {owner}</h4>
            <p class="equation">{line.symbol} " = " {line.equation}</p>
            <p class="equation">"= " {line.numbers} " = " <strong>{line.result}</strong></p>
            <ul class="symbols">{inputs.collect_view()}</ul>
            <p class="source">{line.source}</p>
        </div>
    }
}
