//! The logbook for people.

use sunlarder_engine::logbook::{Learned, Suspect, Symptom, lay_up, upkeep};
use sunlarder_engine::system::System;
use sunlarder_engine::words::command_line::Caption;
use sunlarder_engine::words::logbook::OnLogbook;

use super::{Read, sorted};
use crate::words;

fn part(heading: OnLogbook, lines: Vec<String>) -> String {
    if lines.is_empty() {
        return String::new();
    }
    format!("{}\n  {}\n", words().on_logbook(heading), lines.join("\n  "))
}

fn joined(parts: Vec<String>) -> String {
    let parts = parts.into_iter().filter(|part| !part.is_empty());
    parts.collect::<Vec<_>>().join("\n") + "\n" + words().caption(Caption::Estimates) + "\n"
}

/// The whole page.
pub(crate) fn text(read: &Read) -> String {
    let study = &read.study;
    let [found, agrees, untold] = sorted(study);
    let told = |all: Vec<&Learned>| {
        all.into_iter().map(|own| words().learned(own, study.false_full)).collect::<Vec<_>>()
    };
    let mut found = told(found);
    if found.is_empty() {
        found.push(words().on_logbook(OnLogbook::NothingFound).to_owned());
    }
    let slips = read.pasted.slips.iter().chain(&read.left_out);
    joined(vec![
        format!("{}\n", words().weighed(study)),
        part(OnLogbook::Found, found),
        part(OnLogbook::Agrees, told(agrees)),
        part(OnLogbook::Untold, told(untold)),
        part(
            OnLogbook::Next,
            study.next().into_iter().map(|own| words().next_reading(own).to_owned()).collect(),
        ),
        part(OnLogbook::Adopt, read.adoptions.iter().map(|own| words().adoption(own)).collect()),
        part(OnLogbook::FromHere, ahead(read)),
        part(
            OnLogbook::Guessed,
            read.pasted.guesses.iter().map(|own| words().pasted_guess(*own).to_owned()).collect(),
        ),
        part(OnLogbook::NotRead, slips.map(|(line, slip)| words().slip_in(*line, slip)).collect()),
        format!("{}\n", words().measuring_caution()),
    ])
}

/// How it goes on.
fn ahead(read: &Read) -> Vec<String> {
    let mut lines: Vec<String> =
        read.study.charge_now.iter().map(|own| words().charge_now(own)).collect();
    let Some(outlook) = &read.ahead else { return lines };
    lines.push(words().headline(outlook).text());
    let times = outlook.times();
    let ways =
        [(Caption::ToReserve, times.dark_to_reserve), (Caption::ToEmpty, times.dark_to_empty)];
    let without = words().caption(Caption::WithoutSun);
    lines.extend(ways.into_iter().filter_map(|(caption, time)| {
        Some(format!("{} ({without}): {}", words().caption(caption), words().duration(time?)))
    }));
    lines
}

/// The causes of a symptom.
pub(crate) fn symptom_text(symptom: Symptom, suspects: &[Suspect]) -> String {
    let line = |own: &Suspect| {
        format!(
            "{} ({})\n    {}: {}",
            words().cause(own.cause),
            words().cause_standing(own.standing),
            words().on_logbook(OnLogbook::Test),
            words().meter_test(&own.test)
        )
    };
    joined(vec![
        format!("{}\n", words().symptom(symptom)),
        part(OnLogbook::Causes, suspects.iter().map(line).collect()),
        format!("{}\n", words().measuring_caution()),
    ])
}

/// Winter lay-up and upkeep of a bank.
pub(crate) fn care(system: &System) -> String {
    let told = |all: Vec<_>| all.iter().map(|own| words().care(own)).collect();
    joined(vec![
        part(OnLogbook::Upkeep, told(upkeep(&system.bank))),
        part(OnLogbook::LayUp, told(lay_up(&system.bank))),
    ])
}
