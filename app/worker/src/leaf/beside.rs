//! Two plans beside each other: what each comes to, every figure with the difference, and in what the plans differ.

use chrono::Datelike;
use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{Figure, Outlook};
use sunlarder_engine::words::{Label as L, Language, decimal};

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
    let About { language, document, system, outlook } = about;
    let Some(other) = Other::read(argument) else {
        return paper.said("p", "problem", language.label(L::OnesPlan)).take();
    };
    let scale = Scale {
        hours: span(outlook).max(span(&other.outlook)),
        highest: highest(&outlook.months).max(highest(&other.outlook.months)),
    };
    let second = About {
        language,
        document: &other.document,
        system: &other.system,
        outlook: &other.outlook,
    };
    paper.class("div", "beside-plans");
    plan(&mut paper, about, scale);
    plan(&mut paper, second, scale);
    paper.close();
    let names = [name(language, document), name(language, &other.document)];
    let heads = [language.label(L::Figure), &names[0], &names[1], language.label(L::Difference)];
    let rows = Figure::ALL.map(|figure| {
        let own = outlook.figure(system, figure);
        let others = other.outlook.figure(&other.system, figure);
        [
            language.figure(figure).to_owned(),
            language.figure_of(outlook, system, figure),
            language.figure_of(&other.outlook, &other.system, figure),
            // Of the second against the first, as the columns are read.
            language.difference(figure, others, own),
        ]
    });
    paper.class("section", "picture").said("h2", "", language.label(L::EveryFigure));
    table(&mut paper, language.label(L::EveryFigure), &heads, &rows);
    paper.close().class("section", "picture").said("h2", "", language.label(L::WhatDiffers));
    let lines = language.difference_lines(document, &other.document);
    if lines.is_empty() {
        paper.said("p", "", language.label(L::NothingDiffers));
    } else {
        let rows: Vec<_> = lines.into_iter().map(|own| [own.what, own.first, own.second]).collect();
        let heads = [language.label(L::WhatDiffers), &names[0], &names[1]];
        table(&mut paper, language.label(L::WhatDiffers), &heads, &rows);
    }
    paper.close().take()
}

/// What a plan is called.
fn name(language: Language, plan: &Document) -> String {
    if plan.name.is_empty() { language.label(L::UnnamedPlan).to_owned() } else { plan.name.clone() }
}

/// Place, month and start of a plan.
pub(super) fn start(language: Language, plan: &Document) -> String {
    let start = &plan.start;
    language.where_and_when(
        &language.place_name(plan),
        start.date.month0() as usize,
        start.date.weekday().num_days_from_monday() as usize,
        &start.time.to_string(),
        &format!("{} %", decimal(start.charge_pct, 1)),
    )
}

/// One of the two.
fn plan(paper: &mut Paper, about: About<'_>, scale: Scale) {
    let About { language, document, system, outlook } = about;
    let headline = language.headline(outlook);
    paper
        .class("section", "beside-plan")
        .said("h2", "", &name(language, document))
        .said("p", "where", &start(language, document))
        .class("p", "beside-verdict")
        .text(&headline.before)
        .said("em", headline.tone.class(), &headline.key)
        .text(&headline.after)
        .close()
        .said(
            "p",
            "",
            &language.explanation(outlook, system, &|tag| language.name_in(document, tag)),
        )
        .class("dl", "facts");
    for figure in HEAD {
        paper
            .class("div", "fact")
            .said("dt", "fact-label", language.figure(figure))
            .said("dd", "fact-value", &language.figure_of(outlook, system, figure))
            .close();
    }
    paper.close();
    curve(paper, (language, outlook), system.bank.reserve.0, scale.hours, &curve_words(about));
    let tightest = language.tightest(outlook);
    months(paper, language, &outlook.months, scale.highest, &tightest);
    paper.said("p", "note", &tightest).close();
}

fn curve_words(about: About<'_>) -> String {
    let outlook: &Outlook = about.outlook;
    about.language.curve_in_words(&about.language.short(outlook), outlook.month)
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
