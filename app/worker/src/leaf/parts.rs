//! What runs, what stores and what comes in, as tables of the printed sheet.

use sunlarder_engine::document::Document;
use sunlarder_engine::quantity::{AmpHours, Percent};
use sunlarder_engine::words::sheet::{ArrayInShort, OnSheet as S};
use sunlarder_engine::words::{Label as L, Language, amount};
use sunlarder_engine::working::Tag;

use super::About;
use crate::paper::Paper;

/// More rows than this stand in two columns.
const LONG: usize = 14;
/// More rows than this go over the end of a sheet of paper; fewer stay together.
const TORN: usize = 30;

/// The name of a load or array, in any case.
fn name(language: Language, document: &Document, tag: Tag) -> String {
    language.name_in(document, tag).or_else(|| language.unnamed(tag)).unwrap_or_default()
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
    let About { language, outlook, .. } = about;
    let rows = loads(about);
    paper.class("section", "sheet-runs").said("h2", "", &language.runs_in(outlook.month));
    if rows.is_empty() {
        paper.said("p", "", language.on_sheet(S::NothingRuns)).close();
        return;
    }
    let titles =
        [S::Load, S::Power, S::Hours, S::AhADay, S::Share].map(|own| language.on_sheet(own));
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
    let About { language, document, system, outlook } = about;
    let budget = &outlook.budget;
    let share = |charge: AmpHours| match budget.total {
        all if all.0 > 0.0 => amount(Percent::of_ratio(charge / all)),
        _ => String::new(),
    };
    let mut rows = Vec::new();
    for own in &budget.loads {
        let load = system.loads.iter().find(|load| load.place == own.place);
        let (power, count) =
            load.map_or((String::new(), 1.0), |load| (amount(load.running()), load.quantity));
        let name = name(language, document, Tag::Load(own.place));
        let name = if count > 1.0 { format!("{count} × {name}") } else { name };
        let runs = own.hours * own.duty.ratio();
        rows.push([name, power, amount(runs), amount(own.charge), share(own.charge)]);
    }
    let blank = String::new;
    let idle = &budget.inverter;
    let rest = [
        (language.on_sheet(S::InverterIdle), amount(idle.hours), idle.charge),
        (language.label(L::StandingDraw), blank(), budget.standing),
        (language.label(L::ProtectionCircuits), blank(), budget.protection),
    ];
    for (name, hours, charge) in rest.into_iter().filter(|own| own.2.0 > 0.0) {
        rows.push([name.to_owned(), blank(), hours, amount(charge), share(charge)]);
    }
    if !rows.is_empty() {
        let all = language.on_sheet(S::All).to_owned();
        rows.push([all, blank(), blank(), amount(budget.total), share(budget.total)]);
    }
    rows
}

/// The bank.
pub(super) fn stores(paper: &mut Paper, about: About<'_>) {
    let About { language, document, system, outlook } = about;
    let (bank, section) = (&system.bank, &document.bank);
    let volts = sunlarder_engine::quantity::Volts(section.battery_v);
    let one = AmpHours(section.capacity_ah);
    let batteries = language.batteries(section.in_series, section.in_parallel, volts, one);
    let limit = |limit: Option<sunlarder_engine::quantity::Amps>| {
        limit.map_or_else(|| language.on_sheet(S::NotStated).to_owned(), amount)
    };
    let whole = format!("{} {}", amount(bank.nominal), amount(bank.slowest));
    let rows = [
        (language.label(L::Chemistry), language.chemistry(bank.chemistry).to_owned()),
        (language.on_sheet(S::Batteries), batteries),
        (language.on_sheet(S::Bank), whole),
        (language.on_sheet(S::Stands), language.kept(bank.kept)),
        (language.on_sheet(S::Full), amount(outlook.capacity.full)),
        (&language.above_reserve(bank.reserve), amount(outlook.capacity.usable)),
        (language.on_sheet(S::ChargeLimit), amount(bank.charge_limit)),
        (language.on_sheet(S::DischargeLimit), limit(bank.discharge_limit)),
    ];
    paper.open("section").said("h2", "", language.label(L::WhatDoYouStore)).open("table");
    paper.open("tbody");
    for (name, value) in &rows {
        row(paper, &[name, value]);
    }
    paper.close().close().close();
}

/// The sources with what each gives on a mean day.
pub(super) fn comes_in(paper: &mut Paper, about: About<'_>) {
    let About { language, outlook, .. } = about;
    let rows = sources(about);
    paper.open("section").said("h2", "", language.label(L::WhatComesIn));
    if rows.is_empty() {
        paper.said("p", "", language.on_sheet(S::NothingComesIn)).close();
        return;
    }
    paper.open("table");
    heads(paper, &[language.month(outlook.month), language.on_sheet(S::AhADay)]);
    paper.open("tbody");
    for [name, charge] in &rows {
        row(paper, &[name, charge]);
    }
    paper.close().close().close();
}

fn sources(about: About<'_>) -> Vec<[String; 2]> {
    let About { language, system, outlook, .. } = about;
    let Some(month) = outlook.months.get(outlook.month) else { return Vec::new() };
    let gain = &month.gain;
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
        let name =
            format!("{}: {}", language.array(array.place.into()), language.array_in_short(&short));
        rows.push([name, String::new()]);
    }
    // A single array has its gain in its own row.
    match rows.as_mut_slice() {
        [] => {}
        [only] => only[1] = amount(gain.solar),
        _ => rows.push([language.on_sheet(S::FromSun).to_owned(), amount(gain.solar)]),
    }
    let charger =
        |what: S, limit| format!("{}, {}", language.on_sheet(what), language.up_to(limit));
    if let Some(own) = &system.alternator {
        rows.push([charger(S::Engine, own.limit), amount(gain.engine)]);
    }
    if let Some(own) = &system.shore {
        rows.push([charger(S::Shore, own.limit), amount(gain.shore)]);
    }
    if system.turbine.is_some() {
        rows.push([language.on_sheet(S::Turbine).to_owned(), amount(gain.turbine)]);
    }
    if !rows.is_empty() {
        rows.push([language.on_sheet(S::ChargingLoss).to_owned(), amount(gain.kept)]);
    }
    if let Some(own) = &system.generator {
        let percent = |ratio: f64| Percent::of_ratio(ratio);
        let short = language.generator_in_short(own.limit, percent(own.start), percent(own.stop));
        let needs = month.generator.map(|own| language.generated(&own)).unwrap_or_default();
        rows.push([
            format!("{}, {short}; {needs}", language.on_sheet(S::Generator)),
            String::new(),
        ]);
    }
    rows
}
