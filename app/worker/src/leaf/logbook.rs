//! The logbook of the gauge: what became of a table, the readings themselves, what they say, what may be behind a symptom, and upkeep.

use sunlarder_engine::document::{Document, Field, Problem, date_text};
use sunlarder_engine::logbook::{
    Bounds, Hints, Learned, Order, Reading, Symptom, Taken, adoptable, from_newest, lay_up, paste,
    start_at_newest, suspects, upkeep,
};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::quantity::Celsius;
use sunlarder_engine::share;
use sunlarder_engine::words::logbook::OnLogbook as O;
use sunlarder_engine::words::{Label as L, decimal, lines};
use sunlarder_engine::working::{Tag, Working};

use super::About;
use super::parts::heads;
use super::working;
use crate::logbook::Weighed;
use crate::paper::Paper;
use crate::sentences::PART;

/// Over the voltage that chargers hold in the cold, a reading may lie by what meters differ (ratio): a choice.
const OVER: f64 = 1.02;

/// Most lines that are told one by one.
const TOLD: usize = 100;

/// What became of a table: the link code of the plan with its readings, blank if none is new, then whether lines are left, blank if not, and
/// what is to be said, with a [`PART`] between. The argument is the order in dates (0 as they tell it, 1 the day first, 2 the month) and the text.
pub(super) fn take(argument: &str, about: About<'_>) -> Option<String> {
    let About { words, document, system, .. } = about;
    let (order, text) = argument.split_at_checked(1)?;
    let order = match order {
        "1" => Some(Order::DayFirst),
        "2" => Some(Order::MonthFirst),
        _ => None,
    };
    let bounds = Bounds::of(system.bank.nominal, system.bank.rated);
    let pasted = paste(text, &Hints { order, columns: None }, &bounds);
    let taken = Taken::of(document, &pasted);
    let mut paper = Paper::default();
    paper.said("p", "", &words.taken(&taken));
    list(&mut paper, ("h3", words.on_logbook(O::Guessed)), &pasted.guesses, |own| {
        words.pasted_guess(*own).to_owned()
    });
    let few = taken.slips.get(..TOLD).unwrap_or(&taken.slips);
    list(&mut paper, ("h3", words.on_logbook(O::NotRead)), few, |(line, slip)| {
        words.slip_in(*line, slip)
    });
    if taken.slips.len() > TOLD {
        paper.said("p", "", &words.more_lines(taken.slips.len() - TOLD));
    }
    let plan = Document { logbook: Some(taken.logbook), ..document.clone() };
    let code = if taken.new > 0 { share::encode(&plan).ok()? } else { String::new() };
    let whole = taken.slips.is_empty() && taken.new + taken.known > 0;
    let left = if whole { "" } else { "1" };
    Some(format!("{code}{PART}{left}{PART}{}", paper.finish()))
}

/// Lines under a heading; nothing where there are none.
fn list<T>(
    paper: &mut Paper,
    (level, heading): (&str, &str),
    all: &[T],
    say: impl Fn(&T) -> String,
) {
    if all.is_empty() {
        return;
    }
    paper.said(level, "", heading).open("ul");
    for own in all {
        paper.said("li", "", &say(own));
    }
    paper.close();
}

/// The readings as a table, the newest first, each with a button that takes it away by its place.
pub(super) fn table(about: About<'_>) -> String {
    let About { words, document, .. } = about;
    let readings = document.logbook.as_ref().map_or(&[][..], |own| &own.readings);
    let mut paper = Paper::default();
    let title = words.label(L::ReadingsOfGauge);
    paper.class("div", "table").attr("tabindex", "0").attr("role", "region");
    paper.attr("aria-label", title).open("table");
    let columns = [
        words.label(L::DayOfReading),
        words.label(L::GaugeShows),
        words.field(Field::ReadVolts),
        words.field(Field::ReadAmps),
        words.label(L::Delete),
    ];
    heads(&mut paper, &columns);
    paper.open("tbody");
    for (place, logged) in readings.iter().enumerate().rev() {
        let own = Reading::from(logged);
        let at = format!("{} {}", date_text(logged.date), words.clock(logged.time.0));
        paper.open("tr").open("th").attr("scope", "row").text(&at).close();
        let cells = [
            own.shown.map(|own| words.shown_by_gauge(own)),
            own.volts.map(|own| words.amount(own)),
            own.amps.map(|own| words.amount(own)),
        ];
        for cell in cells {
            paper.said("td", "", cell.as_deref().unwrap_or("–"));
        }
        let remove = format!("{}: {at}", words.label(L::RemoveReading));
        paper.open("td").class("button", "button quiet").attr("type", "button");
        paper.attr("data-remove", &decimal(place as f64, 0)).attr("aria-label", &remove);
        paper.text("×").close().close().close();
    }
    paper.close().close().close();
    paper.finish()
}

/// What the readings say, what they do not, and how the plan goes on.
pub(crate) fn write(weighed: &Weighed, about: About<'_>) -> String {
    let About { words, document, .. } = about;
    let mut paper = Paper::default();
    if document.logbook.as_ref().is_none_or(|own| own.readings.is_empty()) {
        return paper.said("p", "hint", words.label(L::NoReadings)).take();
    }
    let study = &weighed.study;
    paper.said("p", "caution", words.measuring_caution());
    let moment = |place: usize| {
        let all = document.logbook.as_ref().map_or(&[][..], |own| &own.readings);
        all.get(place).map(|own| Reading::from(own).at).unwrap_or_default()
    };
    list(&mut paper, ("h4", words.on_logbook(O::NotUsed)), &weighed.slips, |(place, slip)| {
        words.slip_at(moment(*place), slip)
    });
    paper.said("p", "", &words.weighed(study)).said("p", "hint", words.on_logbook(O::Interval));
    let group = |own: &Learned| match own {
        own if own.alarm => 0,
        // Nothing at all is known of it.
        own if own.estimate.low >= own.estimate.high => 3,
        own if own.estimate.told => 1,
        _ => 2,
    };
    paper.class("div", "fitted found");
    let beyond = volts_beyond(weighed, about);
    for own in &beyond {
        paper.said("p", "caution", own);
    }
    if !study.learned.iter().any(|own| group(own) < 2) {
        paper.said("p", "", words.on_logbook(O::TooFew));
    } else if beyond.is_empty() && !study.learned.iter().any(|own| own.alarm) {
        paper.said("p", "", words.on_logbook(O::NothingFound));
    }
    for (at, heading) in [O::Found, O::Agrees, O::Untold].into_iter().enumerate() {
        if at == 1 {
            paper.close();
        }
        let own = study.learned.iter().enumerate().filter(|(_, own)| group(own) == at);
        learned(&mut paper, words.on_logbook(heading), own, weighed, about);
    }
    list(&mut paper, ("h4", words.on_logbook(O::Next)), &study.next(), |own| {
        words.next_reading(*own).to_owned()
    });
    onwards(&mut paper, weighed, about);
    paper.finish()
}

/// The lowest reading under the voltage at which loads are cut off, and the highest over what chargers should hold.
fn volts_beyond(weighed: &Weighed, about: About<'_>) -> Vec<String> {
    let About { words, system, .. } = about;
    let (least, most) = (system.bank.low_voltage(), system.bank.absorption_voltage(Celsius::ZERO));
    let read = || weighed.readings.all().iter().filter_map(|own| Some((own.at, own.volts?)));
    let low = read().filter(|own| own.1 < least).min_by(|a, b| a.1.0.total_cmp(&b.1.0));
    let high = read().filter(|own| own.1 > most * OVER).max_by(|a, b| a.1.0.total_cmp(&b.1.0));
    let told = low.map(|own| (own, least)).into_iter().chain(high.map(|own| (own, most)));
    told.map(|((at, volts), limit)| words.volts_beyond(at, volts, limit)).collect()
}

/// What was learned of some things, each with a button for its working where it has one; nothing where there are none.
fn learned<'a>(
    paper: &mut Paper,
    heading: &str,
    all: impl Iterator<Item = (usize, &'a Learned)>,
    weighed: &Weighed,
    about: About<'_>,
) {
    let About { words, system, .. } = about;
    let study = &weighed.study;
    let mut all = all.peekable();
    if all.peek().is_none() {
        return;
    }
    paper.said("h4", "", heading).open("ul");
    for (place, own) in all {
        paper.open("li").said("p", "", &words.learned(own, study.false_full));
        if study.work(own.what, system, &mut ()).is_some() {
            paper.class("button", "button quiet").attr("type", "button");
            paper.attr("data-fold", &decimal(place as f64, 0)).attr("aria-expanded", "false");
            paper.text(words.label(L::HowWorkedOut)).close();
        }
        paper.close();
    }
    paper.close();
}

/// How something that was learned was worked out; the argument begins with its place.
pub(crate) fn write_working(argument: &str, weighed: &Weighed, about: About<'_>) -> Option<String> {
    let About { words, document, system, .. } = about;
    let place: usize = argument.split(' ').next()?.parse().ok()?;
    let mut trace = Working::new();
    weighed.study.work(weighed.study.learned.get(place)?.what, system, &mut trace)?;
    let name_of = |tag: Tag| words.name_in(document, tag);
    Some(working::sheet(&lines(&trace, words, &name_of)))
}

/// How it goes on from the newest reading, and what the plan can take over.
fn onwards(paper: &mut Paper, weighed: &Weighed, about: About<'_>) {
    let About { words, document, system, .. } = about;
    let Weighed { study, readings, .. } = weighed;
    let adoptions = adoptable(study, system);
    let mut lines: Vec<String> = study.charge_now.iter().map(|own| words.charge_now(own)).collect();
    if let Some(ahead) = from_newest(system, study, readings, &adoptions) {
        let outlook = Outlook::of(&ahead);
        lines.push(words.headline(&outlook).text());
        let times = outlook.times();
        let dark = [(L::UntilReserve, times.dark_to_reserve), (L::UntilEmpty, times.dark_to_empty)];
        lines.extend(dark.into_iter().filter_map(|(label, time)| {
            let without = words.label(L::WithoutSun);
            Some(format!("{} ({without}): {}", words.label(label), words.duration(time?)))
        }));
    }
    list(paper, ("h4", words.on_logbook(O::FromHere)), &lines, String::clone);
    let mut plan = document.clone();
    if start_at_newest(&mut plan, study, readings).is_some() {
        button(paper, "data-start", &plan, words.label(L::GoOnFromReading));
    }
    if adoptions.is_empty() {
        paper.said("p", "", words.on_logbook(O::NothingToAdopt));
        return;
    }
    list(paper, ("h4", words.on_logbook(O::Adopt)), &adoptions, |own| words.adoption(own));
    let cut: Vec<_> = adoptions.iter().flat_map(|own| own.write(&mut plan)).collect();
    for (field, value) in cut {
        let problem = Problem::OutOfRange { field, at: Tag::None, value };
        paper.said("p", "wrong", &words.problem(&problem, &|_| None));
    }
    paper.said("p", "hint", words.on_logbook(O::HowAdopted));
    button(paper, "data-adopt", &plan, words.label(L::AdoptLearned));
}

/// A button with the link code of a plan.
fn button(paper: &mut Paper, name: &str, plan: &Document, label: &str) {
    if let Ok(code) = share::encode(plan) {
        paper
            .class("button", "button")
            .attr("type", "button")
            .attr(name, &code)
            .text(label)
            .close();
    }
}

/// The causes of a symptom, the likeliest first, each with the test that decides. The argument begins with the place of the symptom.
pub(crate) fn causes(
    argument: &str,
    weighed: Option<&Weighed>,
    about: About<'_>,
) -> Option<String> {
    let About { words, system, outlook, .. } = about;
    let place: usize = argument.split(' ').next()?.parse().ok()?;
    let symptom = *Symptom::ALL.get(place)?;
    let weighed = weighed.filter(|own| !own.readings.all().is_empty());
    let all = suspects(symptom, system, outlook, weighed.map(|own| &own.study));
    let mut paper = Paper::default();
    paper.said("p", "caution", words.measuring_caution());
    paper.said("h4", "", words.on_logbook(O::Causes)).class("ol", "suspects");
    for own in &all {
        paper.open("li").said("b", "", words.cause(own.cause));
        paper.text(" (").text(words.cause_standing(own.standing)).text(")");
        let test = format!("{}: {}", words.on_logbook(O::Test), words.meter_test(&own.test));
        paper.said("p", "", &test).close();
    }
    paper.close();
    Some(paper.finish())
}

/// Upkeep and winter lay-up of the bank.
pub(super) fn care(about: About<'_>) -> String {
    let About { words, system, .. } = about;
    let mut paper = Paper::default();
    list(&mut paper, ("h4", words.on_logbook(O::Upkeep)), &upkeep(&system.bank), |own| {
        words.care(own)
    });
    list(&mut paper, ("h4", words.on_logbook(O::LayUp)), &lay_up(&system.bank), |own| {
        words.care(own)
    });
    paper.finish()
}
