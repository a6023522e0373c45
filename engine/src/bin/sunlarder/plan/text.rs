//! A plan's answers as a page of text.

use sunlarder_engine::outlook::{HORIZON_DAYS, Month, clock_time, lowest_of};
use sunlarder_engine::quantity::{Hours, Percent, Quantity};
use sunlarder_engine::system::System;
use sunlarder_engine::words::command_line::Caption;

use super::Answered;
use crate::table::Table;
use crate::words;

/// The whole page.
pub(crate) fn text(answered: &Answered) -> String {
    let parts = [
        head(answered),
        verdict(answered),
        budget(answered),
        stored(answered),
        times(answered),
        months(answered),
        chances(answered),
        replayed(answered),
        obstacles(answered),
        format!("{}\n", caption(Caption::Estimates)),
    ];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("\n")
}

fn caption(caption: Caption) -> &'static str {
    words().caption(caption)
}

fn head(answered: &Answered) -> String {
    let (plan, system) = (&answered.plan, &answered.system);
    let name = if plan.name.is_empty() { caption(Caption::Unnamed) } else { &plan.name };
    let mut place = words().point(system.site.latitude, system.site.longitude);
    if !plan.place.name.is_empty() {
        place = format!("{} ({place})", plan.place.name);
    }
    let start = clock_time(system, Hours::ZERO);
    let beginning = words().beginning(start, Percent::of_ratio(system.start.charge));
    format!("{name}\n{place}, {beginning}\n")
}

fn verdict(answered: &Answered) -> String {
    let outlook = &answered.outlook;
    let name_of = |tag| answered.name_of(tag);
    let explanation = words().explanation(outlook, &answered.system, &name_of);
    let vital =
        words().vital(outlook, &name_of).map_or(String::new(), |vital| format!("{vital}\n"));
    format!("{}\n{vital}{explanation}\n", words().headline(outlook).text())
}

fn budget(answered: &Answered) -> String {
    let budget = &answered.outlook.budget;
    let mut table = Table::default();
    for load in &budget.loads {
        table.row([
            answered.name(load.place),
            words().amount(load.hours),
            words().amount(load.duty),
            words().amount(load.energy),
            words().amount(load.charge),
        ]);
    }
    let idle = &budget.inverter;
    let nominal = answered.system.bank.nominal;
    let none = String::new;
    if idle.charge.0 > 0.0 {
        let (hours, energy, charge) =
            (words().amount(idle.hours), words().amount(idle.energy), words().amount(idle.charge));
        table.row([caption(Caption::InverterIdle).to_owned(), hours, none(), energy, charge]);
    }
    let rest = [(Caption::Standing, budget.standing), (Caption::Protection, budget.protection)];
    for (name, charge) in rest.into_iter().filter(|(_, charge)| charge.0 > 0.0) {
        let energy = words().amount(charge * nominal);
        table.row([caption(name).to_owned(), none(), none(), energy, words().amount(charge)]);
    }
    let (energy, charge) = (words().amount(budget.total_energy), words().amount(budget.total));
    table.row([caption(Caption::All).to_owned(), none(), none(), energy, charge]);
    format!("{}\n{}", words().budget_of(budget.month), table.text())
}

fn stored(answered: &Answered) -> String {
    let (bank, outlook) = (&answered.system.bank, &answered.outlook);
    let full = words().full_at(outlook.bank_temperature, outlook.current);
    let mut table = Table::default();
    table.row([caption(Caption::Rated).to_owned(), words().amount(bank.slowest)]);
    table.row([full, words().amount(outlook.capacity.full)]);
    let usable = words().usable_above(bank.reserve);
    table.row([usable, words().amount(outlook.capacity.usable)]);
    table.row([caption(Caption::Autonomy).to_owned(), words().autonomy(outlook.autonomy_days)]);
    let fit = bank.fit_quality().map(|quality| words().fit(&quality));
    let voltages = words().voltages(&outlook.voltages(&answered.system));
    let lines: String =
        fit.into_iter().chain([voltages]).map(|line| format!("  {line}\n")).collect();
    format!("{}\n{}{lines}", caption(Caption::WhatStored), table.text())
}

fn times(answered: &Answered) -> String {
    let times = answered.outlook.times();
    let say = |time: Option<Hours>| {
        time.map_or_else(|| words().not_within(HORIZON_DAYS), |time| words().duration(time))
    };
    let mut table = Table::default();
    table.row(["", caption(Caption::AverageWeather), caption(Caption::WithoutSun)]);
    let rows = [
        (Caption::ToReserve, times.to_reserve, times.dark_to_reserve),
        (Caption::ToEmpty, times.to_empty, times.dark_to_empty),
        (Caption::ToFull, times.to_full, answered.outlook.dark.full_at),
    ];
    for (name, lit, dark) in rows {
        table.row([caption(name).to_owned(), say(lit), say(dark)]);
    }
    format!("{}\n{}", caption(Caption::HowLong), table.text())
}

fn months(answered: &Answered) -> String {
    let mut table = Table::default();
    let columns = [
        Caption::PeakSun,
        Caption::ComesIn,
        Caption::Used,
        Caption::Balance,
        Caption::Lowest,
        Caption::KeepsUp,
        Caption::OfTenYears,
    ];
    let generator = answered.system.generator.is_some();
    let last = generator.then_some(caption(Caption::Generator));
    table.row(core::iter::once("").chain(columns.map(caption)).chain(last));
    for month in &answered.outlook.months {
        let years = words().of_ten_years(&answered.chances.months_kept[month.month.min(11)]);
        let generated = month.generator.map(|own| words().generated(&own));
        table.row(month_row(&answered.system, month).into_iter().chain([years]).chain(generated));
    }
    let tightest = words().tightest(&answered.outlook, answered.system.bank.nominal);
    format!("{}\n{}{tightest}\n", caption(Caption::MonthByMonth), table.text())
}

/// The year of weather that was brought: what it comes to, and its months.
fn replayed(answered: &Answered) -> String {
    let Some(replayed) = &answered.replayed else { return String::new() };
    let mut table = Table::default();
    let columns = [Caption::PeakSun, Caption::Temperature, Caption::BelowReserve, Caption::ShortOf];
    table.row(core::iter::once("").chain(columns.map(caption)));
    for (at, month) in replayed.months.iter().enumerate() {
        table.row([
            words().month(at).to_owned(),
            words().amount(Hours(month.irradiation.0)),
            words().amount(month.temperature),
            words().amount(month.below_reserve),
            words().amount(month.short),
        ]);
    }
    let lines = words().replayed(replayed, &answered.system).join("\n  ");
    format!("{}\n  {lines}\n{}", caption(Caption::YearOfWeather), table.text())
}

fn month_row(system: &System, month: &Month) -> [String; 7] {
    let plus = if month.balance.value() > 0.0 { "+" } else { "" };
    [
        words().month(month.month).to_owned(),
        words().amount(Hours(month.irradiation.0)),
        words().amount(month.gain.kept),
        words().amount(month.need),
        format!("{plus}{}", words().amount(month.balance)),
        words().amount(Percent::of_ratio(lowest_of(system, month))),
        caption(if month.keeps_up { Caption::Yes } else { Caption::No }).to_owned(),
    ]
}

/// What decades of weather say.
fn chances(answered: &Answered) -> String {
    let chances = &answered.chances;
    let mut lines = vec![
        words().when_reserve_comes(chances, &answered.system),
        words().month_kept(chances, &answered.outlook),
    ];
    lines.extend(words().over_years(chances));
    lines.push(words().doubt(answered.trust, chances));
    lines.retain(|line| !line.is_empty());
    format!("{}\n  {}\n", caption(Caption::RealWeather), lines.join("\n  "))
}

/// What stands in the way, and what must be known; nothing if there is nothing.
fn obstacles(answered: &Answered) -> String {
    let mut obstacles = answered.outlook.cautions().peekable();
    if obstacles.peek().is_none() {
        return String::new();
    }
    let name_of = |tag| answered.name_of(tag);
    let mut text = format!("{}\n", caption(Caption::InTheWay));
    for obstacle in obstacles {
        let kind = caption(if obstacle.stops() { Caption::Obstacle } else { Caption::Caution });
        text.push_str(&format!("  {kind}: {}\n", words().obstacle(obstacle, &name_of)));
    }
    text
}
