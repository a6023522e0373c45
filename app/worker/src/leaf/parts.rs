//! What runs, what stores and what comes in, as tables of the printed sheet.

use sunlarder_engine::document::Document;
use sunlarder_engine::quantity::{AmpHours, Percent};
use sunlarder_engine::words::sheet::{ArrayInShort, OnSheet as S};
use sunlarder_engine::words::{Label as L, Words};
use sunlarder_engine::working::Tag;

use super::About;
use crate::paper::Paper;

/// More rows than this stand in two columns.
const LONG: usize = 14;
/// More rows than this go over the end of a sheet of paper; fewer stay together.
const TORN: usize = 30;

/// The name of a load or array, in any case.
fn name(words: Words, document: &Document, tag: Tag) -> String {
    words.name_in(document, tag).or_else(|| words.unnamed(tag)).unwrap_or_default()
}

/// A row of cells, the first of which names it.
pub(super) fn row(paper: &mut Paper, cells: &[&str]) {
    paper.open("tr");
    for (at, cell) in cells.iter().enumerate() {
        match at {
            0 => paper.open("th").attr("scope", "row").text(cell).close(),
            _ => paper.said("td", "", cell),
        };
    }
    paper.close();
}

/// The heads of columns.
pub(super) fn heads(paper: &mut Paper, cells: &[&str]) {
    paper.open("thead").open("tr");
    for cell in cells {
        paper.open("th").attr("scope", "col").text(cell).close();
    }
    paper.close().close();
}

/// Load by load, the inverter and all that is always on, and the sum.
pub(super) fn runs(paper: &mut Paper, about: About<'_>) {
    let About { words, outlook, .. } = about;
    let rows = loads(about);
    paper.class("section", "sheet-runs").said("h2", "", &words.runs_in(outlook.month));
    if rows.is_empty() {
        paper.said("p", "", words.on_sheet(S::NothingRuns)).close();
        return;
    }
    let titles = [S::Load, S::Power, S::Hours, S::ADay, S::Share].map(|own| words.on_sheet(own));
    let half = if rows.len() > LONG { rows.len().div_ceil(2) } else { rows.len() };
    paper.class(
        "div",
        match rows.len() {
            all if all > TORN => "sheet-pair sheet-torn",
            all if all > half => "sheet-pair",
            _ => "sheet-whole",
        },
    );
    for rows in rows.chunks(half) {
        paper.open("table");
        heads(paper, &titles);
        paper.open("tbody");
        for cells in rows {
            row(paper, &cells.each_ref().map(String::as_str));
        }
        paper.close().close();
    }
    paper.close().close();
}

/// The rows of what runs; none if nothing does.
fn loads(about: About<'_>) -> Vec<[String; 5]> {
    let About { words, document, system, outlook } = about;
    let budget = &outlook.budget;
    let nominal = system.bank.nominal;
    let share = |charge: AmpHours| match budget.total {
        all if all.0 > 0.0 => words.amount(Percent::of_ratio(charge / all)),
        _ => String::new(),
    };
    let mut rows = Vec::new();
    for own in &budget.loads {
        let load = system.loads.iter().find(|load| load.place == own.place);
        let (power, count) =
            load.map_or((String::new(), 1.0), |load| (words.amount(load.running()), load.quantity));
        let name = name(words, document, Tag::Load(own.place));
        let name =
            if count > 1.0 { format!("{} × {name}", words.decimal(count, 0)) } else { name };
        let runs = own.hours * own.duty.ratio();
        rows.push([
            name,
            power,
            words.amount(runs),
            words.charge(own.charge, nominal),
            share(own.charge),
        ]);
    }
    let blank = String::new;
    let idle = &budget.inverter;
    let rest = [
        (words.on_sheet(S::InverterIdle), words.amount(idle.hours), idle.charge),
        (words.label(L::StandingDraw), blank(), budget.standing),
        (words.label(L::ProtectionCircuits), blank(), budget.protection),
    ];
    for (name, hours, charge) in rest.into_iter().filter(|own| own.2.0 > 0.0) {
        rows.push([name.to_owned(), blank(), hours, words.charge(charge, nominal), share(charge)]);
    }
    if !rows.is_empty() {
        let all = words.on_sheet(S::All).to_owned();
        rows.push([
            all,
            blank(),
            blank(),
            words.charge(budget.total, nominal),
            share(budget.total),
        ]);
    }
    rows
}

/// The bank.
pub(super) fn stores(paper: &mut Paper, about: About<'_>) {
    let About { words, document, system, outlook } = about;
    let (bank, section) = (&system.bank, &document.bank);
    let nominal = bank.nominal;
    let volts = sunlarder_engine::quantity::Volts(section.battery_v);
    let one = AmpHours(section.capacity_ah);
    let batteries = words.batteries(section.in_series, section.in_parallel, volts, one);
    let limit = |limit: Option<sunlarder_engine::quantity::Amps>| {
        limit.map_or_else(|| words.on_sheet(S::NotStated).to_owned(), |own| words.amount(own))
    };
    let whole = format!("{} {}", words.amount(nominal), words.amount(bank.slowest));
    let rows = [
        (words.label(L::Chemistry), words.chemistry(bank.chemistry).to_owned()),
        (words.on_sheet(S::Batteries), batteries),
        (words.on_sheet(S::Bank), whole),
        (words.on_sheet(S::Stands), words.kept(bank.kept)),
        (words.on_sheet(S::Full), words.charge(outlook.capacity.full, nominal)),
        (&words.above_reserve(bank.reserve), words.charge(outlook.capacity.usable, nominal)),
        (words.on_sheet(S::ChargeLimit), words.amount(bank.charge_limit)),
        (words.on_sheet(S::DischargeLimit), limit(bank.discharge_limit)),
    ];
    paper.open("section").said("h2", "", words.label(L::WhatDoYouStore)).open("table");
    paper.open("tbody");
    for (name, value) in &rows {
        row(paper, &[name, value]);
    }
    paper.close().close().close();
}

/// The sources with what each gives on a mean day.
pub(super) fn comes_in(paper: &mut Paper, about: About<'_>) {
    let About { words, outlook, .. } = about;
    let rows = sources(about);
    paper.open("section").said("h2", "", words.label(L::WhatComesIn));
    if rows.is_empty() {
        paper.said("p", "", words.on_sheet(S::NothingComesIn)).close();
        return;
    }
    paper.open("table");
    heads(paper, &[words.month(outlook.month), words.on_sheet(S::ADay)]);
    paper.open("tbody");
    for [name, charge] in &rows {
        row(paper, &[name, charge]);
    }
    paper.close().close().close();
}

fn sources(about: About<'_>) -> Vec<[String; 2]> {
    let About { words, system, outlook, .. } = about;
    let Some(month) = outlook.months.get(outlook.month) else { return Vec::new() };
    let gain = &month.gain;
    let nominal = system.bank.nominal;
    let mut rows = Vec::new();
    for array in &system.arrays {
        let short = ArrayInShort {
            modules: array.series * array.parallel,
            each: array.module.power,
            tilt: array.plane.tilt,
            azimuth: array.plane.azimuth,
            controller: array.controller,
            limit: array.limit,
        };
        let name = format!("{}: {}", words.array(array.place.into()), words.array_in_short(&short));
        rows.push([name, String::new()]);
    }
    // A single array has its gain in its own row.
    match rows.as_mut_slice() {
        [] => {}
        [only] => only[1] = words.charge(gain.solar, nominal),
        _ => rows.push([words.on_sheet(S::FromSun).to_owned(), words.charge(gain.solar, nominal)]),
    }
    let charger = |what: S, limit| format!("{}, {}", words.on_sheet(what), words.up_to(limit));
    if let Some(own) = &system.alternator {
        rows.push([charger(S::Engine, own.limit), words.charge(gain.engine, nominal)]);
    }
    if let Some(own) = &system.shore {
        rows.push([charger(S::Shore, own.limit), words.charge(gain.shore, nominal)]);
    }
    if system.turbine.is_some() {
        rows.push([words.on_sheet(S::Turbine).to_owned(), words.charge(gain.turbine, nominal)]);
    }
    if !rows.is_empty() {
        rows.push([words.on_sheet(S::ChargingLoss).to_owned(), words.charge(gain.kept, nominal)]);
    }
    if let Some(own) = &system.generator {
        let percent = |ratio: f64| Percent::of_ratio(ratio);
        let short = words.generator_in_short(own.limit, percent(own.start), percent(own.stop));
        let needs = month.generator.map(|own| words.generated(&own)).unwrap_or_default();
        rows.push([format!("{}, {short}; {needs}", words.on_sheet(S::Generator)), String::new()]);
    }
    rows
}
