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
use sunlarder_engine::words::{Label as L, Language, amount, rounded};
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
fn name(document: &Document, language: Language) -> &str {
    if document.name.is_empty() { language.label(L::UnnamedPlan) } else { &document.name }
}

/// What the place is called, or its coordinates.
fn place(document: &Document, language: Language) -> String {
    let place = &document.place;
    if !place.name.is_empty() {
        return place.name.clone();
    }
    if !document.has_place() {
        return language.label(L::NoPlaceYet).to_owned();
    }
    format!("{}°, {}°", rounded(place.latitude_deg), rounded(place.longitude_deg))
}

fn head(paper: &mut Paper, day: &str, about: About<'_>) {
    let About { language, document, .. } = about;
    let day = date_from(day).map(|day| language.worked_out_on(day)).unwrap_or_default();
    let start = &document.start;
    let beginning = language.where_and_when(
        &place(document, language),
        start.date.month0() as usize,
        start.date.weekday().num_days_from_monday() as usize,
        &start.time.to_string(),
        &amount(Percent(start.charge_pct)),
    );
    paper
        .class("p", "sheet-mark")
        .said("span", "brand", "Sunlarder")
        .said("span", "", language.on_sheet(S::PlanningFigures))
        .said("span", "", &day)
        .close()
        .said("h1", "", name(document, language))
        .class("p", "sheet-where")
        .text(&beginning)
        .text(". ")
        .text(&language.begins_on(start.date))
        .close();
}

fn verdict(paper: &mut Paper, about: About<'_>) {
    let About { language, document, system, outlook } = about;
    let headline = language.headline(outlook);
    let name_of = |tag: Tag| language.name_in(document, tag);
    paper
        .class("p", "sheet-verdict")
        .text(&headline.before)
        .said("strong", "", &headline.key)
        .text(&headline.after)
        .close()
        .said("p", "", &language.explanation(outlook, system, &name_of));
    let speaks = !matches!(outlook.verdict, Verdict::NothingRuns | Verdict::CannotWork { .. });
    if !speaks {
        return;
    }
    let text = if document.has_place() {
        // The page puts into its place what is known by then.
        paper.open("p").attr("data-put", "chance");
        language.on_sheet(S::NoWeatherYet)
    } else {
        paper.open("p");
        language.label(L::WeatherNeedsPlace)
    };
    paper.text(text).close();
}

fn facts(paper: &mut Paper, about: About<'_>) {
    let About { language, system, outlook, .. } = about;
    let gain = outlook.months.get(outlook.month).map_or(AmpHours::ZERO, |month| month.gain.kept);
    let of = language.of_rated(&rounded(system.bank.slowest.0));
    let figures = [
        (L::OutADay, amount(outlook.budget.total), String::new()),
        (L::InADay, amount(gain), String::new()),
        (L::MayBeUsed, amount(outlook.capacity.usable), of),
        (L::Autonomy, language.autonomy(outlook.autonomy_days), String::new()),
        (L::KeepsUp, language.months_kept(outlook.months_kept()), String::new()),
    ];
    paper.class("dl", "sheet-facts");
    for (label, figure, of) in figures {
        paper.open("div").said("dt", "", language.label(label)).open("dd").text(&figure);
        if !of.is_empty() {
            paper.text(" ").said("small", "", &of);
        }
        paper.close().close();
    }
    paper.close();
}

/// The titles and keys of the pictures, and the places that the page fills.
fn pictures(paper: &mut Paper, about: About<'_>) {
    let About { language, outlook, .. } = about;
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
    head(paper, language.label(L::RemainingTime), "");
    place(paper, "curve");
    paper.class("ul", "legend");
    let keys = [
        ("key key-typical", L::MeanWeather),
        ("key key-band", L::EightOfTen),
        ("key key-dark", L::WithoutSun),
        ("key key-reserve", L::ReserveWord),
    ];
    for (class, label) in keys {
        paper.said("li", class, language.label(label));
    }
    paper.close().close().class("div", "sheet-pictures").class("section", "sheet-picture");
    head(paper, &language.a_day_in(outlook.month), language.label(L::DayLegend));
    place(paper, "day");
    paper.close().class("section", "sheet-picture");
    head(paper, language.label(L::MonthByMonth), "");
    place(paper, "months");
    paper.said("p", "", &language.tightest(outlook)).close().close();
    paper.open("section").attr("data-put", "years").close();
}

/// What cannot work and what must be known. What decides the verdict already stands under it.
fn cautions(paper: &mut Paper, about: About<'_>) {
    let About { language, document, outlook, .. } = about;
    let decides =
        |own: &Obstacle| matches!(&outlook.verdict, Verdict::CannotWork { why } if why == own);
    let all: Vec<&Obstacle> = outlook.obstacles.iter().filter(|own| !decides(own)).collect();
    if all.is_empty() {
        return;
    }
    let name_of = |tag: Tag| language.name_in(document, tag);
    paper.class("section", "sheet-cautions").said("h2", "", language.label(L::Cautions)).open("ul");
    for own in all {
        paper.said("li", "", &language.obstacle(own, &name_of));
    }
    paper.close().close();
}

/// What stands on every sheet, and the way back to the plan.
fn foot(paper: &mut Paper, page: &str, about: About<'_>) {
    let About { language, document, .. } = about;
    paper.class("section", "sheet-foot").open("div");
    paper.said("h2", "", language.on_sheet(S::Standing)).open("ul");
    for rule in Rule::ALL {
        paper.said("li", "", language.rule(rule));
    }
    paper.close();
    let link = share::encode(document).map(|code| code::link(page, &code)).unwrap_or_default();
    paper
        .said("h2", "", language.on_sheet(S::OpenThisPlan))
        .said("p", "sheet-link", &link)
        .said("p", "sheet-version", &language.version(env!("CARGO_PKG_VERSION")))
        .close();
    code::draw(paper, &link, language);
    paper.close();
}
