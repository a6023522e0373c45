//! The gauge of a plan: its card, the sheet of checks for print, what readings mean, and the simulated gauge.

mod card;
mod checks;
mod knobs;
mod sheet;
mod year;

pub(super) use card::{write, write_working};
pub(super) use checks::write_checks;
pub(super) use knobs::write_knobs;
pub(super) use sheet::write_sheet;
pub(crate) use year::{write_year, write_year_table};

use sunlarder_engine::gauge::{Card, Check, Note, Sheet};
use sunlarder_engine::words::Words;
use sunlarder_engine::words::gauge::OnGauge as G;

use super::About;
use crate::paper::Paper;

/// The card of a plan and its checks.
fn set_up(about: About<'_>) -> (Card, Sheet) {
    let About { document, system, outlook, .. } = about;
    let card = Card::of(system, outlook);
    let sheet = Sheet::of_plan((document, system, outlook), &card);
    (card, sheet)
}

/// What must be known, without what comes first of all.
fn to_know(paper: &mut Paper, heading: &str, card: &Card, about: About<'_>) {
    let words = about.words;
    paper.said(heading, "", words.on_gauge(G::ToKnow)).open("ul");
    for note in Note::of(about.system, card).iter().filter(|own| **own != Note::SheetFirst) {
        paper.said("li", "", &words.gauge_note(note));
    }
    paper.close();
}

/// What is expected of a check and what passes; blank where it is done or not.
fn expected(words: Words, check: &Check) -> [String; 2] {
    match check.point.unit().zip(check.expected) {
        Some((unit, expected)) => {
            [words.metered(expected, unit), words.metered_between(check.least, check.most, unit)]
        }
        None => Default::default(),
    }
}
