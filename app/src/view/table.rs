//! A table behind a picture.

use leptos::prelude::*;
use sunlarder_engine::words::Label;

use super::part::dynamic;
use crate::store::WORDS;

/// A table whose first column names its rows.
pub(crate) fn table(title: Label, heads: Vec<Label>, rows: Signal<Vec<Vec<String>>>) -> AnyView {
    let heads: Vec<AnyView> = heads
        .iter()
        .map(|head| view! { <th scope="col">{WORDS.label(*head)}</th> }.into_any())
        .collect();
    let body = dynamic(move || rows.get().into_iter().map(row).collect::<Vec<_>>().into_any());
    view! {
        <div class="table" tabindex="0" role="region" aria-label=WORDS.label(title)>
            <table><thead><tr>{heads}</tr></thead><tbody>{body}</tbody></table>
        </div>
    }
    .into_any()
}

fn row(cells: Vec<String>) -> AnyView {
    let cell = |(at, text): (usize, String)| {
        if at == 0 {
            view! { <th scope="row">{text}</th> }.into_any()
        } else {
            view! { <td>{text}</td> }.into_any()
        }
    };
    let cells: Vec<AnyView> = cells.into_iter().enumerate().map(cell).collect();
    view! { <tr>{cells}</tr> }.into_any()
}
