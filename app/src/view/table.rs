//! A table behind a picture.

use crate::signal::*;
use sunlarder_engine::words::Label;

use crate::dom::node::{Child as _, View, node};
use crate::dom::part::dynamic;
use crate::store::WORDS;

/// A table whose first column names its rows.
pub(crate) fn table(title: Label, heads: Vec<Label>, rows: Signal<Vec<Vec<String>>>) -> View {
    let heads: Vec<View> = heads
        .iter()
        .map(|head| node("th").attr("scope", "col").child(WORDS.label(*head)).view())
        .collect();
    let body = dynamic(move || rows.get().into_iter().map(row).collect::<Vec<_>>().view());
    node("div")
        .attr("class", "table")
        .attr("tabindex", "0")
        .attr("role", "region")
        .attr("aria-label", WORDS.label(title))
        .child(
            node("table")
                .child(node("thead").child(node("tr").child(heads).view()).view())
                .child(node("tbody").child(body).view())
                .view(),
        )
        .view()
}

fn row(cells: Vec<String>) -> View {
    let cell = |(at, text): (usize, String)| {
        if at == 0 {
            node("th").attr("scope", "row").child(text).view()
        } else {
            node("td").child(text).view()
        }
    };
    let cells: Vec<View> = cells.into_iter().enumerate().map(cell).collect();
    node("tr").child(cells).view()
}
