//! The answers for people.

use sunlarder_engine::sizing::{Answer, Change, Rates, Size, Study};
use sunlarder_engine::words::command_line::Caption;

use super::{is_vital, kept, said, sized};
use crate::table::Table;
use crate::words;

/// Changes that are told, at most.
const CHANGES: usize = 8;

/// The whole page.
pub(crate) fn text(study: &Study) -> String {
    let parts = [
        standing(study),
        answers(study),
        smallest(study),
        helpful(study),
        common_voltages(study),
        format!("{}\n", words().caption(Caption::Estimates)),
    ];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("\n")
}

/// The promise, and how likely the plan keeps it.
fn standing(study: &Study) -> String {
    let mut lines =
        vec![words().promise(&study.question().promise), words().short_day().to_owned()];
    lines.extend(
        study.standing().map(|own| words().standing_chance(own.chance, own.error, own.years)),
    );
    lines.extend(is_vital(study.plan()).then(|| words().life_depends().to_owned()));
    format!("{}\n  {}\n", words().caption(Caption::ThePromise), lines.join("\n  "))
}

/// What keeps the promise.
fn answers(study: &Study) -> String {
    let told = |size: Answer<Size>| size.found().map(|size| sized(study, size));
    let mut lines = Vec::new();
    if !kept(study) {
        lines.push(words().suggested_size(told(study.suggested())));
    }
    lines.push(words().smallest_bank(told(study.smallest_bank())));
    lines.push(words().smallest_array(told(study.smallest_array())));
    if !kept(study) {
        let charger = study.sizing().charger();
        lines.push(words().charger_hours(study.charger_hours().found(), charger));
    }
    let south = study.sizing().system().site.latitude.0 >= 0.0;
    lines.extend(
        study
            .tilt()
            .and_then(|own| Some(words().tilt_for(own.tilt, south, own.month, own.chance?))),
    );
    let own = study.sizing().system().bank.reserve;
    lines.extend(study.reserves().filter_map(|helped| match helped.change {
        Change::Reserve { to } => Some(words().reserve_kept(to, to.0 < own.0, helped.chance)),
        _ => None,
    }));
    lines.extend(study.arrival().map(|own| words().arrival(&own)));
    format!("{}\n  {}\n", words().caption(Caption::WhatKeepsIt), lines.join("\n  "))
}

/// The frontier of the map: a row for each of the smallest combinations, and the cheapest and the lightest.
fn smallest(study: &Study) -> String {
    let (map, question) = (study.map(), study.question());
    let frontier = study.frontier();
    if frontier.is_empty() {
        return String::new();
    }
    let rates = [(Caption::Price, question.price), (Caption::Weight, question.weight)];
    let rates = rates.into_iter().filter_map(|(name, rates)| Some((name, rates?)));
    let rates: Vec<(Caption, Rates)> = rates.collect();
    let mut table = Table::default();
    let columns = [Caption::TheBank, Caption::TheArray, Caption::Chance];
    let columns = columns.into_iter().chain(rates.iter().map(|(name, _)| *name));
    table.row(columns.map(|name| words().caption(name)));
    for (bank, array) in frontier {
        let size = sized(study, map.size(bank, array));
        let chance = map.chance(&question.promise, bank, array).unwrap_or_default();
        let sums = rates.iter().map(|(_, rates)| {
            words().rounded(size.charge.0 * rates.bank_ah + size.power.0 * rates.array_w)
        });
        let cells =
            [words().amount(size.charge), words().amount(size.power), words().chance(chance)];
        table.row(cells.into_iter().chain(sums));
    }
    let least = [(Caption::Cheapest, study.cheapest()), (Caption::Lightest, study.lightest())];
    let least = least.into_iter().filter_map(|(name, least)| {
        let (size, sum) = least?;
        let (size, sum) = (sized(study, size), words().rounded(sum));
        let name = words().caption(name);
        let (charge, power) = (words().amount(size.charge), words().amount(size.power));
        Some(format!("  {name}: {charge}, {power}: {sum}\n"))
    });
    let least: String = least.collect();
    format!("{}\n{}{least}", words().caption(Caption::SmallestTogether), table.text())
}

/// What would help most.
fn helpful(study: &Study) -> String {
    let Some(standing) = study.standing().filter(|own| own.shortage > 0.0) else {
        return String::new();
    };
    let ranked = study.helped();
    if study.own().array <= 0.0 {
        return String::new();
    }
    let mut table = Table::default();
    let trials = study.question().promise.trial_days().is_some();
    let left = if trials { Caption::TrialsFailing } else { Caption::ShortDaysYear };
    table.row(["", words().caption(Caption::Chance), words().caption(left)]);
    let of = |shortage: f64| {
        if trials { words().chance(shortage) } else { words().rounded(shortage) }
    };
    let unchanged = words().caption(Caption::Unchanged).to_owned();
    table.row([unchanged, words().chance(standing.chance), of(standing.shortage)]);
    for helped in ranked.iter().take(CHANGES) {
        table.row([said(study, helped), words().chance(helped.chance), of(helped.shortage)]);
    }
    format!("{}\n{}", words().caption(Caption::WouldHelp), table.text())
}

/// What the common system voltages mean.
fn common_voltages(study: &Study) -> String {
    let mut table = Table::default();
    let columns = [Caption::SystemVoltage, Caption::LoadsAtOnce, Caption::ArraysAtOnce];
    table.row(columns.map(|name| words().caption(name)));
    for voltage in study.voltages() {
        let own = if voltage.own { words().caption(Caption::AsItIs) } else { "" };
        table.row([
            words().amount(voltage.nominal),
            words().amount(voltage.loads),
            words().amount(voltage.arrays),
            own.to_owned(),
        ]);
    }
    format!("{}\n{}", words().caption(Caption::Voltages), table.text())
}
