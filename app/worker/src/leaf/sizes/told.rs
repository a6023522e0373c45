//! What the sizes come to and what would help, in sentences.

use sunlarder_engine::document::Document;
use sunlarder_engine::share;
use sunlarder_engine::sizing::{Answer, Change, Helped, Size, Study};
use sunlarder_engine::words::sizing::Sized;
use sunlarder_engine::words::{Label as L, Words};
use sunlarder_engine::working::Tag;

use super::super::{Written, table};
use super::sized;
use crate::paper::Paper;

/// Changes that are told, at most.
const CHANGES: usize = 6;

/// How the plan does as it stands, and the least to add.
#[must_use]
pub fn write_sizing(study: &Study, words: Words) -> Written {
    let mut paper = Paper::default();
    standing(&mut paper, study, words);
    suggested(&mut paper, study, words);
    Written::of(paper.finish())
}

/// The direct answers, and what would help.
#[must_use]
pub fn write_helping(study: &Study, words: Words) -> Written {
    let mut paper = Paper::default();
    smallest(&mut paper, study, words);
    helpful(&mut paper, study, words);
    voltages(&mut paper, study, words);
    method(&mut paper, study, words);
    Written::of(paper.finish())
}

fn kept(study: &Study) -> bool {
    study.standing().is_some_and(|own| own.kept)
}

/// The promise, and how likely the plan keeps it.
fn standing(paper: &mut Paper, study: &Study, words: Words) {
    paper.said("p", "promise", &words.promise(&study.question().promise));
    paper.said("p", "hint", words.short_day());
    if let Some(own) = study.standing() {
        let said = words.standing_chance(own.chance, own.error, own.years);
        paper.class("p", "standing").attr("id", "standing").text(&said).close();
    }
    if study.plan().loads.iter().any(|load| load.on && load.vital) {
        paper.said("p", "vital", words.life_depends());
    }
}

/// A button that takes a plan into the place of this one.
fn take(paper: &mut Paper, plan: &Document, label: &str) {
    if let Ok(code) = share::encode(plan) {
        paper.class("button", "button").attr("type", "button").attr("data-plan", &code);
        paper.text(label).close();
    }
}

/// The least to add, with a button that does it.
fn suggested(paper: &mut Paper, study: &Study, words: Words) {
    if kept(study) {
        return;
    }
    let told = |size: Size| sized(study, size);
    match study.suggested() {
        Answer::Open => {}
        Answer::Never => {
            paper.said("p", "suggested", &words.suggested_size(None));
        }
        Answer::Is(size) => {
            paper.class("div", "suggested");
            paper.said("p", "", &words.suggested_size(Some(told(size))));
            take(paper, &size.adopted(study.plan()), words.label(L::TakeThisSize));
            paper.close();
        }
    }
}

/// The smallest bank and array, the cheapest and the lightest, hours of a charger, the best tilt, another reserve, how late one can arrive.
fn smallest(paper: &mut Paper, study: &Study, words: Words) {
    let told = |size: Answer<Size>| -> Option<Option<Sized>> {
        (size != Answer::Open).then(|| size.found().map(|size| sized(study, size)))
    };
    let mut lines = Vec::new();
    lines.extend(told(study.smallest_bank()).map(|size| words.smallest_bank(size)));
    lines.extend(told(study.smallest_array()).map(|size| words.smallest_array(size)));
    if study.map().is_whole() {
        for (least, weight) in [(study.cheapest(), false), (study.lightest(), true)] {
            lines.extend(
                least.map(|(size, sum)| words.least_of_all(sized(study, size), sum, weight)),
            );
        }
    }
    if !kept(study) && study.charger_hours() != Answer::Open {
        let charger = study.sizing().charger();
        lines.push(words.charger_hours(study.charger_hours().found(), charger));
    }
    let south = study.sizing().system().site.latitude.0 >= 0.0;
    lines.extend(
        study.tilt().and_then(|own| Some(words.tilt_for(own.tilt, south, own.month, own.chance?))),
    );
    let own = study.sizing().system().bank.reserve;
    lines.extend(study.reserves().filter_map(|helped| match helped.change {
        Change::Reserve { to } => Some(words.reserve_kept(to, to.0 < own.0, helped.chance)),
        _ => None,
    }));
    lines.extend(study.arrival().map(|own| words.arrival(&own)));
    if lines.is_empty() {
        return;
    }
    paper.class("ul", "answers");
    for line in &lines {
        paper.said("li", "", line);
    }
    paper.close();
}

/// What would help, the best first, each with a button that does it.
fn helpful(paper: &mut Paper, study: &Study, words: Words) {
    let now = study.standing().map_or(0.0, |own| own.shortage);
    let helped = study.helped();
    let mut shown = helped.iter().filter(|own| own.kept || own.shortage < NO_HELP * now).peekable();
    if shown.peek().is_none() {
        return;
    }
    let trials = study.question().promise.trial_days().is_some();
    paper.said("h3", "", words.label(L::WhatWouldHelp)).class("ol", "helped");
    for own in shown.take(CHANGES) {
        let change = said(study, own, words);
        paper.open("li").said("span", "", &words.helped(&change, own.chance, own.shortage, trials));
        paper.text(" ");
        let label = words.label(L::DoThis);
        let latitude = study.sizing().system().site.latitude;
        let made = own.change.made(study.plan(), latitude);
        let made = own.with.map_or_else(|| made.clone(), |with| with.made(&made, latitude));
        if let Ok(code) = share::encode(&made) {
            paper.class("button", "button quiet").attr("type", "button").attr("data-plan", &code);
            paper.attr("aria-label", &format!("{label}: {change}")).text(label).close();
        }
        paper.close();
    }
    paper.close();
}

/// What leaves more of the short days than this is no help worth telling (ratio).
const NO_HELP: f64 = 0.95;

/// A change, or two together.
fn said(study: &Study, helped: &Helped, words: Words) -> String {
    let one = |change: &Change| words.change(change, &name(study, change, words));
    let first = one(&helped.change);
    helped.with.map_or_else(|| first.clone(), |with| words.both_changes(&first, &one(&with)))
}

/// The name of the load that a change is about; of any other nothing.
fn name(study: &Study, change: &Change, words: Words) -> String {
    match change {
        Change::LessUse { load, .. } | Change::Direct { load } => {
            let tag = Tag::Load(*load);
            let own = words.name_in(study.plan(), tag);
            own.or_else(|| words.unnamed(tag)).unwrap_or_default()
        }
        _ => String::new(),
    }
}

/// What the common system voltages mean.
fn voltages(paper: &mut Paper, study: &Study, words: Words) {
    let rows: Vec<Vec<String>> = study
        .voltages()
        .iter()
        .map(|own| {
            let nominal = words.amount(own.nominal);
            let nominal =
                if own.own { format!("{nominal} ({})", words.label(L::AsItIs)) } else { nominal };
            vec![nominal, words.amount(own.loads), words.amount(own.arrays)]
        })
        .collect();
    let heads = [L::SystemVoltage, L::LoadsAtOnce, L::ArraysAtOnce].map(|own| words.label(own));
    paper.open("details").attr("class", "more");
    paper.said("summary", "", words.label(L::OtherVoltages));
    paper.said("p", "hint", words.label(L::OtherVoltagesHint));
    paper.piece(&table(words.label(L::OtherVoltages), &heads, &rows)).close();
}

/// How all this was worked out.
fn method(paper: &mut Paper, study: &Study, words: Words) {
    let lines = words.sizes_method(study.map().course().years());
    paper.open("details").attr("class", "more");
    paper.said("summary", "", words.label(L::HowSizes));
    for line in lines {
        paper.said("p", "hint", &line);
    }
    paper.close();
}
