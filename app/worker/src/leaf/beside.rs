//! Two plans beside each other: what each comes to, every figure with the difference, and in what the plans differ.

use chrono::Datelike;
use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{Figure, Outlook};
use sunlarder_engine::words::{Label as L, Words};

use super::About;
use super::drawing::{curve, highest, months, span};
use super::other::Other;
use crate::paper::Paper;

/// The figures that stand under each plan.
const HEAD: [Figure; 4] = [Figure::Out, Figure::In, Figure::Usable, Figure::MonthsKept];

/// What the pictures of both share, so that they can be held against each other.
#[derive(Clone, Copy)]
struct Scale {
    hours: f64,
    highest: f64,
}

/// Both plans; a sentence if the other one cannot be worked out.
pub(super) fn write(argument: &str, about: About<'_>) -> String {
    let mut paper = Paper::default();
    let About { words, document, system, outlook } = about;
    let Some(other) = Other::read(argument) else {
        return paper.said("p", "problem", words.label(L::OnesPlan)).take();
    };
    let second =
        About { words, document: &other.document, system: &other.system, outlook: &other.outlook };
    let scale = Scale {
        hours: span(outlook).max(span(&other.outlook)),
        highest: highest(about).max(highest(second)),
    };
    paper.class("div", "beside-plans");
    plan(&mut paper, about, scale);
    plan(&mut paper, second, scale);
    paper.close();
    let names = [name(words, document), name(words, &other.document)];
    let heads = [words.label(L::Figure), &names[0], &names[1], words.label(L::Difference)];
    let rows = Figure::ALL.map(|figure| {
        let own = words.figure_value(outlook, system, figure);
        let others = words.figure_value(&other.outlook, &other.system, figure);
        [
            words.figure(figure).to_owned(),
            words.figure_of(outlook, system, figure),
            words.figure_of(&other.outlook, &other.system, figure),
            // Of the second against the first, as the columns are read.
            words.difference(figure, others, own),
        ]
    });
    paper.class("section", "picture").said("h2", "", words.label(L::EveryFigure));
    table(&mut paper, words.label(L::EveryFigure), &heads, &rows);
    paper.close().class("section", "picture").said("h2", "", words.label(L::WhatDiffers));
    let lines = words.difference_lines(document, &other.document);
    if lines.is_empty() {
        paper.said("p", "", words.label(L::NothingDiffers));
    } else {
        let rows: Vec<_> = lines.into_iter().map(|own| [own.what, own.first, own.second]).collect();
        let heads = [words.label(L::WhatDiffers), &names[0], &names[1]];
        table(&mut paper, words.label(L::WhatDiffers), &heads, &rows);
    }
    paper.close().take()
}

/// What a plan is called.
fn name(words: Words, plan: &Document) -> String {
    if plan.name.is_empty() { words.label(L::UnnamedPlan).to_owned() } else { plan.name.clone() }
}

/// Place, month and start of a plan.
pub(super) fn start(words: Words, plan: &Document) -> String {
    let start = &plan.start;
    words.where_and_when(
        &words.place_name(plan),
        start.date.month0() as usize,
        start.date.weekday().num_days_from_monday() as usize,
        &words.clock(start.time.0),
        &format!("{} %", words.decimal(start.charge_pct, 1)),
    )
}

/// One of the two.
fn plan(paper: &mut Paper, about: About<'_>, scale: Scale) {
    let About { words, document, system, outlook } = about;
    let headline = words.headline(outlook);
    paper
        .class("section", "beside-plan")
        .said("h2", "", &name(words, document))
        .said("p", "where", &start(words, document))
        .class("p", "beside-verdict")
        .text(&headline.before)
        .said("em", headline.tone.class(), &headline.key)
        .text(&headline.after)
        .close();
    let name_of = |tag| words.name_in(document, tag);
    // One thing, whether there is a warning or not: what follows stands side by side with the other plan's.
    paper.open("div");
    if let Some(vital) = words.vital(outlook, &name_of) {
        paper.said("p", "vital", &vital);
    }
    paper.said("p", "", &words.explanation(outlook, system, &name_of)).close().class("dl", "facts");
    for figure in HEAD {
        paper
            .class("div", "fact")
            .said("dt", "fact-label", words.figure(figure))
            .said("dd", "fact-value", &words.figure_of(outlook, system, figure))
            .close();
    }
    paper.close();
    curve(paper, (words, outlook), system.bank.reserve.0, scale.hours, &curve_words(about));
    let tightest = words.tightest(outlook, system.bank.nominal);
    months(paper, about, scale.highest, &tightest);
    paper.said("p", "note", &tightest).close();
}

fn curve_words(about: About<'_>) -> String {
    let outlook: &Outlook = about.outlook;
    about.words.curve_in_words(&about.words.short(outlook), outlook.month)
}

/// A table that scrolls by itself where it must; the first column names its rows.
pub(super) fn table<const N: usize>(
    paper: &mut Paper,
    title: &str,
    heads: &[&str; N],
    rows: &[[String; N]],
) {
    paper
        .class("div", "table")
        .attr("tabindex", "0")
        .attr("role", "region")
        .attr("aria-label", title)
        .open("table")
        .open("thead")
        .open("tr");
    for head in heads {
        paper.open("th").attr("scope", "col").text(head).close();
    }
    paper.close().close().open("tbody");
    for row in rows {
        paper.open("tr");
        for (at, cell) in row.iter().enumerate() {
            if at == 0 {
                paper.open("th").attr("scope", "row").text(cell).close();
            } else {
                paper.said("td", "", cell);
            }
        }
        paper.close();
    }
    paper.close().close().close();
}
