//! A question of the ledger, with its one-line answer at the right.

use leptos::prelude::*;
use sunlarder_engine::words::Label;

use crate::store::WORDS;

/// A question that opens.
#[component]
pub(crate) fn Question(
    /// The question.
    title: Label,
    /// Its answer in a few words.
    #[prop(into)]
    answer: Signal<String>,
    /// Whether it is open at first.
    #[prop(optional)]
    open: bool,
    /// What is inside.
    children: Children,
) -> impl IntoView {
    view! {
        <details class="question" open=open>
            <summary>
                <span class="mark" aria-hidden="true"></span>
                <h2>{WORDS.label(title)}</h2>
                <span class="answer">{answer}</span>
            </summary>
            <div class="inside">{children()}</div>
        </details>
    }
}
