//! What a gauge would show beside the truth: in words, through its first fourteen days, through the year, and as a table.

use chrono::{Datelike, NaiveDate, Timelike};
use sunlarder_engine::digits;
use sunlarder_engine::gauge::{Course, Gauge, Jump, Knob, Mistake, Shown, Trial};
use sunlarder_engine::sun::{Daylight, daylight};
use sunlarder_engine::words::gauge::OnGauge as G;
use sunlarder_engine::words::{Label as L, Typed, decimal};

use super::super::drawing::{LEFT, WIDTH, line, path, picture, point, text};
use super::super::year::key;
use super::super::{About, table};
use super::knobs::boxed;
use crate::gauging::Gauging;
use crate::paper::Paper;
use crate::sentences::PART;

/// Days of the first picture.
const DAYS: usize = 14;
/// Hours of a day, and quarter-hours of an hour.
const HOURS: usize = 24;
const PARTS: usize = 4;
/// The hour at which the picture of the year looks.
const MORNING: u32 = 6;
/// Top and bottom of a plot.
const TOP: f64 = 12.0;
const BOTTOM: f64 = 132.0;

/// A gauge that somebody turned, taken through the course of its plan.
struct Played {
    mistake: Option<Mistake>,
    /// The quarter-hour of the course at which it begins.
    from: usize,
    trial: Trial,
}

/// The gauge of what follows the spreads in an argument: the place of a mistake, or nothing, then what stands in the boxes; or why it cannot
/// be.
fn turned(
    about: About<'_>,
    own: &Gauging,
    given: &str,
) -> Result<(Option<Mistake>, Gauge), String> {
    let About { words, system, .. } = about;
    let mut parts = given.split(PART);
    let place = parts.next().and_then(|own| own.parse::<usize>().ok());
    let mistake = place.and_then(|place| Mistake::ALL.get(place).copied());
    let mut gauge = mistake.map_or(own.card.gauge(), |mistake| mistake.made(&own.card, system));
    for (knob, given) in Knob::ALL.into_iter().zip(parts) {
        // A box shows four digits: what nobody changed stays what it is.
        if given == boxed(words, knob, &gauge) {
            continue;
        }
        let number = match words.typed(given) {
            Typed::Number(own) => digits::number(&own),
            _ => None,
        };
        let number = number.ok_or_else(|| words.misset_text(knob.figure(), given))?;
        knob.turn(&mut gauge, number, system);
    }
    gauge.checked().map(|gauge| (mistake, gauge)).map_err(|misset| words.misset(&misset))
}

fn played(about: About<'_>, own: &Gauging, given: &str) -> Result<Played, String> {
    let (mistake, gauge) = turned(about, own, given)?;
    let from = if mistake == Some(Mistake::FullOnEmpty) { own.course.lowest() } else { 0 };
    Ok(Played { mistake, from, trial: Trial::of(&own.course, &gauge, from) })
}

/// What it shows, in words and pictures; see [`turned`] for what is given.
pub(crate) fn write_year(about: About<'_>, own: &Gauging, given: &str) -> String {
    let words = about.words;
    let mut paper = Paper::default();
    let played = match played(about, own, given) {
        Ok(played) => played,
        Err(sentence) => return paper.said("p", "caution", &sentence).take(),
    };
    let Played { mistake, from, trial } = &played;
    if let Some(mistake) = *mistake {
        let telltale = mistake.telltale();
        let shows = match from {
            0 => telltale.is_seen(trial, &own.right),
            _ => telltale.is_seen(trial, &Trial::of(&own.course, &own.card.gauge(), *from)),
        };
        let shows = words.on_gauge(if shows { G::ShowsHere } else { G::HiddenHere });
        let telltale = words.mistake_shows(telltale);
        let known = format!("{}: {telltale}", words.on_gauge(G::KnownBy));
        paper.said("p", "caution", &known).said("p", "", shows);
    }
    paper.said("p", "", &words.trial(trial)).said("p", "", &words.drift(trial));
    if let Some(first) = trial.hours.iter().find(|own| own.gauge_left.is_some()) {
        paper.said("p", "", &words.times_left(first.gauge_left, first.plan_left));
    }
    pictures(&mut paper, about, &played);
    paper.finish()
}

/// The same as a table, month by month.
pub(crate) fn write_year_table(about: About<'_>, own: &Gauging, given: &str) -> String {
    let About { words, system, .. } = about;
    let Ok(Played { from, trial, .. }) = played(about, own, given) else { return String::new() };
    let month = |place: usize| Course::ends(system, place).month0() as usize;
    let (mut over, mut under, mut wrong) = ([0.0_f64; 12], [0.0_f64; 12], [0.0; 12]);
    for (hour, shown) in trial.hours.iter().enumerate() {
        let (at, off) = (month(from + hour * PARTS), shown.shown - shown.truth);
        over[at] = over[at].max(off);
        under[at] = under[at].max(-off);
    }
    for jump in trial.wrong_fulls().chain(&trial.wrong_empties) {
        wrong[month(jump.place)] += 1.0;
    }
    let fulls = trial.fulls_by_month(system);
    let row = |at: usize| {
        let figures = [over[at] * 100.0, under[at] * 100.0, fulls[at].into(), wrong[at]];
        let name = words.month(at).to_owned();
        core::iter::once(name).chain(figures.map(|own| decimal(own, 0))).collect()
    };
    let rows: Vec<Vec<String>> = (0..12).map(row).collect();
    let percent = |what| format!("{} [%]", words.on_gauge(what));
    let (over, under) = (percent(G::TooMuch), percent(G::TooLittle));
    let (fulls, wrong) = (words.on_gauge(G::SetToFull), words.on_gauge(G::WrongJumps));
    let heads = [words.label(L::Month), &over, &under, fulls, wrong];
    table(words.on_gauge(G::InAYear), &heads, &rows)
}

fn x(share: f64) -> f64 {
    LEFT + (WIDTH - LEFT - 6.0) * share
}

fn y(charge: f64) -> f64 {
    BOTTOM - (BOTTOM - TOP) * charge
}

fn pictures(paper: &mut Paper, about: About<'_>, played: &Played) {
    let About { words, system, .. } = about;
    let Played { from, trial, .. } = played;
    let clock = |hour: usize| Course::ends(system, from + hour * PARTS);
    let count = trial.hours.len();
    let days = count.min(DAYS * HOURS);
    let figures: Vec<(usize, String)> =
        (0..days / HOURS).step_by(2).map(|day| (day * HOURS, decimal(day as f64, 0))).collect();
    let shapes = night(about, clock(0), days);
    let hours = (0..days).collect();
    plot(paper, about, played, (G::FirstDays, &shapes), hours, (days, &figures));
    let first = (0..HOURS).find(|hour| clock(*hour).hour() == MORNING).unwrap_or(0);
    let mornings: Vec<usize> = (first..count).step_by(HOURS).collect();
    let begins = |hour: &&usize| clock(**hour).day() == 1;
    let months: Vec<(usize, String)> = mornings
        .iter()
        .filter(begins)
        .map(|hour| (*hour, words.month_initial(clock(*hour).month0() as usize).to_owned()))
        .collect();
    plot(paper, about, played, (G::EachMorning, ""), mornings, (count, &months));
    paper.class("ul", "legend");
    key(paper, &[("typical-line", "M0 6h20")], words.on_gauge(G::Truth));
    key(paper, &[("replayed-line", "M0 6h20")], words.on_gauge(G::Shown));
    key(paper, &[("jump", "M6 10h8l-4 -8z")], words.on_gauge(G::WrongJump));
    paper.close();
}

/// The dark hours of the first days as a path.
fn night(about: About<'_>, begins: chrono::NaiveDateTime, hours: usize) -> String {
    let system = about.system;
    let mut along = String::new();
    let mut dark = |from: f64, to: f64| {
        let (from, to) = (from.max(0.0) / hours as f64, to.min(hours as f64) / hours as f64);
        if from < to {
            along.push_str(&format!(
                "M{}H{}V{}H{}Z",
                point((x(from), TOP)),
                decimal(x(to), 1),
                decimal(BOTTOM, 1),
                decimal(x(from), 1)
            ));
        }
    };
    let date: NaiveDate = begins.date();
    let before = f64::from(begins.hour()) + f64::from(begins.minute()) / 60.0;
    for (day, date) in date.iter_days().take(hours / HOURS + 1).enumerate() {
        let midnight = (day * HOURS) as f64 - before;
        let offset = system.clock.offset_on(date);
        match daylight(system.site, date.ordinal() as u16, offset) {
            Daylight::Between { rise, set } => {
                dark(midnight, midnight + rise.0);
                dark(midnight + set.0, midnight + HOURS as f64);
            }
            Daylight::Night => dark(midnight, midnight + HOURS as f64),
            Daylight::Day => {}
        }
    }
    along
}

/// Truth and what is shown at some hours of so many, with the wrong jumps among them and words under it.
fn plot(
    paper: &mut Paper,
    about: About<'_>,
    played: &Played,
    (title, shade): (G, &str),
    hours: Vec<usize>,
    (count, under): (usize, &[(usize, String)]),
) {
    let title = about.words.on_gauge(title);
    let trial = &played.trial;
    let at = |hour: f64| x(hour / count as f64);
    let along = |charge: fn(&Shown) -> f64| {
        let mut along = String::new();
        for hour in &hours {
            if let Some(own) = trial.hours.get(*hour) {
                along.push(if along.is_empty() { 'M' } else { 'L' });
                along.push_str(&point((at(*hour as f64), y(charge(own)))));
            }
        }
        along
    };
    paper.said("h3", "", title);
    let (truth, shown) = (about.words.on_gauge(G::Truth), about.words.on_gauge(G::Shown));
    picture(paper, "dots", 156.0, &format!("{title}: {truth}, {shown}"));
    path(paper, "night", shade);
    for charge in [0.0, 0.5, 1.0] {
        line(paper, "grid", (LEFT, y(charge)), (WIDTH - 6.0, y(charge)));
        text(paper, (LEFT - 6.0, y(charge) + 4.5), "end", &decimal(charge * 100.0, 0));
    }
    for (hour, said) in under {
        text(paper, (at(*hour as f64) + 2.0, 150.0), "start", said);
    }
    path(paper, "typical-line", &along(|own| own.truth));
    path(paper, "replayed-line", &along(|own| own.shown));
    let mut marks = String::new();
    let mut mark = |jump: &Jump, height: f64, tall: f64| {
        let hour = (jump.place - played.from) as f64 / PARTS as f64;
        if hour < count as f64 {
            let from = point((at(hour) - 4.0, height));
            marks.push_str(&format!("M{from}h8l-4 {}z", decimal(tall, 0)));
        }
    };
    for jump in trial.wrong_fulls() {
        mark(jump, TOP, -8.0);
    }
    for jump in &trial.wrong_empties {
        mark(jump, BOTTOM, 8.0);
    }
    path(paper, "jump", &marks);
    paper.close();
}
