//! The commissioning sheet: what the gauge is told with room to tick, and every check with room for its reading.

use sunlarder_engine::gauge::{Check, Note};
use sunlarder_engine::words::gauge::OnGauge as G;
use sunlarder_engine::working::Tag;

use super::super::{About, sheet};
use super::{card, checks, expected, set_up, to_know};
use crate::paper::Paper;

/// The sheet; the argument is the day, a space and the page's address.
pub(in super::super) fn write_sheet(argument: &str, about: About<'_>) -> Option<String> {
    let (day, page) = argument.split_once(' ')?;
    let words = about.words;
    let (card, sheet_of) = set_up(about);
    let mut paper = Paper::default();
    sheet::head(&mut paper, day, about);
    paper.class("div", "fitting-sheet");
    paper.said("p", "caution", &words.gauge_note(&Note::SheetFirst));
    paper.said("h2", "", words.on_gauge(G::Settings)).open("table").open("tbody");
    for own in &card.settings {
        let [value, range] = card::figure(words, &card, own);
        paper.open("tr").class("th", "tick").attr("scope", "row");
        paper.text(words.setting(own.kind).name).close();
        paper.said("td", "", &value).said("td", "", &range).close();
    }
    paper.close().close();
    to_know(&mut paper, "h2", &card, about);
    let heads = [G::Checks, G::Expected, G::Passes, G::Reading];
    paper.class("table", "checks").open("thead").open("tr");
    for head in heads {
        paper.open("th").attr("scope", "col").text(words.on_gauge(head)).close();
    }
    paper.close().close().open("tbody");
    let mut before = "";
    for own in &sheet_of.checks {
        let how = checks::once(&mut before, words.how_to_check(&own.point));
        row(&mut paper, own, how, about);
    }
    paper.close().close();
    paper.said("p", "blank", words.on_gauge(G::Signed)).close();
    sheet::foot(&mut paper, page, about);
    Some(paper.finish())
}

/// A check: what, how, what is expected, and what was read or room for it.
fn row(paper: &mut Paper, check: &Check, how: &str, about: About<'_>) {
    let About { words, document, .. } = about;
    let name_of = |tag: Tag| words.name_in(document, tag);
    let [at, passes] = expected(words, check);
    let what = words.checked(&check.point, &name_of);
    paper.open("tr").open("th").attr("scope", "row").said("b", "", &what).said("p", "", how);
    let read = check.read_in(document);
    if read.is_some() {
        paper.said("p", "", &format!("→ {}", checks::verdict(check, about)));
    }
    paper.close().said("td", "", &at).said("td", "", &passes).open("td");
    let figures = read.filter(|_| check.point.unit().is_some());
    let second = checks::second(&check.point)
        .map(|(what, unit)| (words.on_gauge(what), figures.and_then(|own| own.beside), unit));
    match check.point.unit() {
        None => {
            let done = read.is_some_and(|own| own.value > 0.0);
            paper.said("p", if done { "tick done" } else { "tick" }, words.on_gauge(G::Done));
        }
        Some(unit) => {
            let first = ("", figures.map(|own| own.value), unit);
            for (name, value, unit) in core::iter::once(first).chain(second) {
                let value = value.map(|own| format!(" {}", words.metered(own, unit)));
                paper.class("p", "blank").said("small", "", name);
                paper.text(&value.unwrap_or_default()).close();
            }
        }
    }
    paper.close().close();
}
