//! A question of the ledger, with its one-line answer at the right.

use leptos::prelude::*;
use sunlarder_engine::words::Label;

use super::part::{Listener, dynamic, is_open};
use crate::store::WORDS;

/// A question that opens; its inside is made when it first does.
pub(crate) fn question(
    title: Label,
    answer: Signal<String>,
    open: bool,
    mut inside: impl FnMut() -> AnyView + Send + 'static,
) -> AnyView {
    let opened = RwSignal::new(open);
    let toggled: Listener = Box::new(move |event| {
        if is_open(&event) && !opened.get_untracked() {
            opened.set(true);
        }
    });
    let inside = dynamic(move || if opened.get() { inside() } else { ().into_any() });
    view! {
        <details class="question" open=open on:toggle=toggled>
            <summary>
                <span class="mark" aria-hidden="true"></span>
                <h2>{WORDS.label(title)}</h2>
                <span class="answer">{answer}</span>
            </summary>
            <div class="inside">{inside}</div>
        </details>
    }
    .into_any()
}
