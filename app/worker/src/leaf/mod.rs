//! The leaves: pieces of the page, or texts to keep, that the worker writes about a plan.
//!
//! **To add one:** a variant at the end of [`Leaf`] and of [`Leaf::ALL`], a file here that writes it, its arm in [`write`]; the page
//! shows it by `view::leaf` or takes its text by `Worked::once`.

mod flow;
mod working;
mod year;

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{DayFlow, Outlook, Question};
use sunlarder_engine::simulate::Sunlight;
use sunlarder_engine::system::System;
use sunlarder_engine::words::Words;

use crate::paper::Paper;

/// What can be written. Each has an argument, a text whose meaning is said here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leaf {
    /// How a figure was worked out; the argument is the place of the question in [`Question::ALL`].
    Working,
    /// The carpet of a year; the argument is `mean` for mean weather, or the number of a weather and the twelve spreads of the daily
    /// clearness. Its numbers are state of charge \[%\], voltage, current in and out \[A\] of every hour.
    Year,
    /// The table behind it; the same argument.
    YearTable,
    /// Where the energy of a day comes from and goes to; the argument means nothing.
    Flow,
    /// The table behind it.
    FlowTable,
}

impl Leaf {
    /// All in the order of their numbers.
    pub const ALL: [Self; 5] =
        [Self::Working, Self::Year, Self::YearTable, Self::Flow, Self::FlowTable];

    /// Whether it takes so long that it is written only once somebody rests.
    #[must_use]
    pub const fn waits_for_rest(self) -> bool {
        matches!(self, Self::Year | Self::YearTable)
    }

    /// The one of a number.
    #[must_use]
    pub fn from_number(number: usize) -> Option<Self> {
        Self::ALL.get(number).copied()
    }
}

/// A plan with its answers, about which a leaf is written.
#[derive(Clone, Copy, Debug)]
pub struct About<'a> {
    /// The language to write in, and the habits of whoever reads it.
    pub words: Words,
    /// The plan.
    pub document: &'a Document,
    /// The plan, resolved.
    pub system: &'a System,
    /// Its answers.
    pub outlook: &'a Outlook,
}

/// What was written: a text, mostly of a [`Paper`](crate::paper::Paper), and numbers to go with it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Written {
    /// The text.
    pub text: String,
    /// The numbers, where the page reads some of them out.
    pub numbers: Vec<f64>,
}

impl Written {
    /// Without numbers.
    fn of(text: String) -> Self {
        Self { text, numbers: Vec::new() }
    }
}

/// Writes a leaf; nothing for an argument that means nothing.
#[must_use]
pub fn write(leaf: Leaf, argument: &str, about: About<'_>) -> Written {
    match leaf {
        Leaf::Working => {
            let question = argument.parse().ok().and_then(|place: usize| Question::ALL.get(place));
            question.map(|own| Written::of(working::write(*own, about))).unwrap_or_default()
        }
        Leaf::Year => year::write(argument, about),
        Leaf::YearTable => year::write_table(argument, about),
        Leaf::Flow => flow::write(&day_flow(about), about),
        Leaf::FlowTable => flow::write_table(&day_flow(about), about),
    }
}

fn day_flow(about: About<'_>) -> DayFlow {
    about.outlook.day_flow(about.system, &mut Sunlight::default())
}

/// A table of the page: the first column names its rows.
fn table(title: &str, heads: &[&str], rows: &[Vec<String>]) -> String {
    let mut paper = Paper::default();
    paper.class("div", "table").attr("tabindex", "0").attr("role", "region");
    paper.attr("aria-label", title).open("table").open("thead").open("tr");
    for head in heads {
        paper.open("th").attr("scope", "col").text(head).close();
    }
    paper.close().close().open("tbody");
    for row in rows {
        paper.open("tr");
        for (at, text) in row.iter().enumerate() {
            if at == 0 {
                paper.open("th").attr("scope", "row").text(text).close();
            } else {
                paper.said("td", "", text);
            }
        }
        paper.close();
    }
    paper.close().close().close();
    paper.finish()
}
