//! The sheet that is printed: what a dealer hands over.
//!
//! The page puts into it what only the page has: its pictures and what weather does, each at a place with `data-put`. Rows
//! are written here, and how they lie on paper stands in `style/sheet.css`.

use chrono::Datelike as _;
use sunlarder_engine::document::{Document, date_from};
use sunlarder_engine::outlook::{Obstacle, Verdict};
use sunlarder_engine::quantity::{AmpHours, Percent};
use sunlarder_engine::share;
use sunlarder_engine::words::sheet::{OnSheet as S, Rule};
use sunlarder_engine::words::{Label as L, Words};
use sunlarder_engine::working::Tag;

use super::About;
use super::assumed::assumed;
use super::code;
use super::parts::{comes_in, runs, stores};
use crate::paper::Paper;

/// The sheet; the argument is the day, a space and the page's address.
pub(super) fn write(argument: &str, about: About<'_>) -> Option<String> {
    let (day, page) = argument.split_once(' ')?;
    let mut paper = Paper::default();
    head(&mut paper, day, about);
    verdict(&mut paper, about);
    facts(&mut paper, about);
    pictures(&mut paper, about);
    cautions(&mut paper, about);
    runs(&mut paper, about);
    paper.class("div", "sheet-pair");
    stores(&mut paper, about);
    comes_in(&mut paper, about);
    paper.close();
    assumed(&mut paper, about);
    foot(&mut paper, page, about);
    Some(paper.finish())
}

/// What the plan is called.
fn name(document: &Document, words: Words) -> &str {
    if document.name.is_empty() { words.label(L::UnnamedPlan) } else { &document.name }
}

/// What the place is called, or its coordinates.
fn place(document: &Document, words: Words) -> String {
    let place = &document.place;
    if !place.name.is_empty() {
        return place.name.clone();
    }
    if !document.has_place() {
        return words.label(L::NoPlaceYet).to_owned();
    }
    format!("{}°, {}°", words.rounded(place.latitude_deg), words.rounded(place.longitude_deg))
}

pub(super) fn head(paper: &mut Paper, day: &str, about: About<'_>) {
    let About { words, document, .. } = about;
    let day = date_from(day).map(|day| words.worked_out_on(day)).unwrap_or_default();
    let start = &document.start;
    let beginning = words.where_and_when(
        &place(document, words),
        start.date.month0() as usize,
        start.date.weekday().num_days_from_monday() as usize,
        &words.clock(start.time.0),
        &words.amount(Percent(start.charge_pct)),
    );
    paper
        .class("p", "sheet-mark")
        .said("span", "brand", "Sunlarder")
        .said("span", "", words.on_sheet(S::PlanningFigures))
        .said("span", "", &day)
        .close()
        .said("h1", "", name(document, words))
        .class("p", "sheet-where")
        .text(&beginning)
        .text(". ")
        .text(&words.begins_on(start.date))
        .close();
}

fn verdict(paper: &mut Paper, about: About<'_>) {
    let About { words, document, system, outlook } = about;
    let headline = words.headline(outlook);
    let name_of = |tag: Tag| words.name_in(document, tag);
    paper
        .class("p", "sheet-verdict")
        .text(&headline.before)
        .said("strong", "", &headline.key)
        .text(&headline.after)
        .close();
    if let Some(vital) = words.vital(outlook, &name_of) {
        paper.said("p", "vital", &vital);
    }
    paper.said("p", "", &words.explanation(outlook, system, &name_of));
    let speaks = !matches!(outlook.verdict, Verdict::NothingRuns | Verdict::CannotWork { .. });
    if !speaks {
        return;
    }
    let text = if document.has_place() {
        // The page puts into its place what is known by then.
        paper.open("p").attr("data-put", "chance");
        words.on_sheet(S::NoWeatherYet)
    } else {
        paper.open("p");
        words.label(L::WeatherNeedsPlace)
    };
    paper.text(text).close();
}

fn facts(paper: &mut Paper, about: About<'_>) {
    let About { words, system, outlook, .. } = about;
    let nominal = system.bank.nominal;
    let gain = outlook.months.get(outlook.month).map_or(AmpHours::ZERO, |month| month.gain.kept);
    let of = words.of_rated(system.bank.slowest, nominal);
    let figures = [
        (L::OutADay, words.charge(outlook.budget.total, nominal), String::new()),
        (L::InADay, words.charge(gain, nominal), String::new()),
        (L::MayBeUsed, words.charge(outlook.capacity.usable, nominal), of),
        (L::Autonomy, words.autonomy(outlook.autonomy_days), String::new()),
        (L::KeepsUp, words.months_kept(outlook.months_kept()), String::new()),
    ];
    paper.class("dl", "sheet-facts");
    for (label, figure, of) in figures {
        paper.open("div").said("dt", "", words.label(label)).open("dd").text(&figure);
        if !of.is_empty() {
            paper.text(" ").said("small", "", &of);
        }
        paper.close().close();
    }
    paper.close();
}

/// The titles and keys of the pictures, and the places that the page fills.
fn pictures(paper: &mut Paper, about: About<'_>) {
    let About { words, system, outlook, .. } = about;
    if matches!(outlook.verdict, Verdict::NothingRuns) {
        return;
    }
    let head = |paper: &mut Paper, title: &str, legend: &str| {
        paper.open("h2").text(title);
        if !legend.is_empty() {
            paper.text(" ").said("small", "", legend);
        }
        paper.close();
    };
    let place = |paper: &mut Paper, name: &str| {
        paper.open("div").attr("data-put", name).close();
    };
    paper.class("section", "sheet-picture");
    head(paper, words.label(L::RemainingTime), "");
    place(paper, "curve");
    paper.class("ul", "legend");
    let keys = [
        ("key key-typical", L::MeanWeather),
        ("key key-band", L::EightOfTen),
        ("key key-dark", L::WithoutSun),
        ("key key-reserve", L::ReserveWord),
    ];
    for (class, label) in keys {
        paper.said("li", class, words.label(label));
    }
    paper.close().close().class("div", "sheet-pictures").class("section", "sheet-picture");
    head(paper, &words.a_day_in(outlook.month), words.label(L::DayLegend));
    place(paper, "day");
    paper.close().class("section", "sheet-picture");
    head(paper, words.label(L::MonthByMonth), "");
    place(paper, "months");
    paper.said("p", "", &words.tightest(outlook, system.bank.nominal)).close().close();
    paper.open("section").attr("data-put", "years").close();
}

/// What cannot work and what must be known. What decides the verdict already stands under it.
fn cautions(paper: &mut Paper, about: About<'_>) {
    let About { words, document, outlook, .. } = about;
    let decides =
        |own: &Obstacle| matches!(&outlook.verdict, Verdict::CannotWork { why } if why == own);
    let all: Vec<&Obstacle> = outlook.obstacles.iter().filter(|own| !decides(own)).collect();
    if all.is_empty() {
        return;
    }
    let name_of = |tag: Tag| words.name_in(document, tag);
    paper.class("section", "sheet-cautions").said("h2", "", words.label(L::Cautions)).open("ul");
    for own in all {
        paper.said("li", "", &words.obstacle(own, &name_of));
    }
    paper.close().close();
}

/// What stands on every sheet, and the way back to the plan.
pub(super) fn foot(paper: &mut Paper, page: &str, about: About<'_>) {
    let About { words, document, .. } = about;
    paper.class("section", "sheet-foot").open("div");
    paper.said("h2", "", words.on_sheet(S::Standing)).open("ul");
    for rule in Rule::ALL {
        paper.said("li", "", words.rule(rule));
    }
    paper.close();
    let link = share::encode(document).map(|code| code::link(page, &code)).unwrap_or_default();
    paper
        .said("h2", "", words.on_sheet(S::OpenThisPlan))
        .said("p", "sheet-link", &link)
        .said("p", "sheet-version", &words.version(env!("CARGO_PKG_VERSION")))
        .close();
    code::draw(paper, &link, words);
    paper.close();
}
