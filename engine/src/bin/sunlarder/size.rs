//! How big it must be: a promise, what keeps it, and what would help.

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::quantity::Amps;
use sunlarder_engine::sizing::promise::error;
use sunlarder_engine::sizing::{
    Change, Counts, Course, Map, Promise, Rates, Size, Sizing, YEARS, beside_an_array, has_array,
    help, voltages,
};
use sunlarder_engine::system::System;
use sunlarder_engine::words::command_line::{Caption, Fault};
use sunlarder_engine::words::sizing::Sized;
use sunlarder_engine::working::Tag;

use crate::table::Table;
use crate::words;

/// Changes that are told, at most.
const CHANGES: usize = 8;

/// A plan ready to be sized, and what it comes to as it stands.
struct Asked {
    plan: Document,
    sizing: Sizing,
    spread: [f64; 12],
    promise: Promise,
    /// Its own size: without arrays it has none of the one that it is sized by.
    own: Size,
    map: Map,
    counts: Vec<Counts>,
}

/// A promise with the chance that is usual for a plan.
pub(crate) fn usual(plan: &Document, promise: Promise) -> Promise {
    promise.with_usual_chance(is_vital(plan))
}

/// Whether a life may depend on something that runs.
fn is_vital(plan: &Document) -> bool {
    plan.loads.iter().any(|load| load.on && load.vital)
}

/// The whole page.
pub(crate) fn text(
    plan: Document,
    promise: Promise,
    price: Option<Rates>,
    weight: Option<Rates>,
) -> Result<String, Fault> {
    let asked = Asked::of(plan, promise)?;
    let parts = [
        standing(&asked),
        answers(&asked),
        smallest(&asked, price, weight),
        helpful(&asked),
        common_voltages(&asked),
        format!("{}\n", words().caption(Caption::Estimates)),
    ];
    Ok(parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("\n"))
}

fn assemble(plan: &Document) -> Result<System, Fault> {
    System::assemble(plan, Climate::embedded(), &mut ()).map_err(Fault::Refused)
}

impl Asked {
    fn of(plan: Document, promise: Promise) -> Result<Self, Fault> {
        let system = assemble(&plan)?;
        let spread = SpreadGrid::embedded().at(system.site);
        let ready = |system: &System| Sizing::new(system, &Outlook::of(system), &spread, YEARS);
        let sizing = ready(&system);
        let (plan, sizing, own) = if has_array(&system) {
            (plan, sizing, Size::OWN)
        } else {
            let plan = beside_an_array(&plan, &system, sizing.tightest(&promise));
            let sizing = ready(&assemble(&plan)?);
            (plan, sizing, Size { array: 0.0, ..Size::OWN })
        };
        let mut map = Map::new(&sizing, &promise);
        while map.advance(&sizing) {}
        let counts = sizing.proved(map.course(), own, Amps::ZERO);
        Ok(Self { plan, sizing, spread, promise, own, map, counts })
    }

    fn course(&self) -> &Course {
        self.map.course()
    }

    fn chance(&self) -> f64 {
        self.promise.chance_of(&self.counts, &self.course().trials)
    }

    fn keeps(&self) -> bool {
        self.promise.is_kept_by(self.chance())
    }

    fn sized(&self, size: Size) -> Sized {
        let system = self.sizing.system();
        Sized { charge: size.charge(system), power: size.power(system) }
    }
}

/// The promise, and how likely the plan keeps it.
fn standing(asked: &Asked) -> String {
    let (chance, years) = (asked.chance(), asked.course().years());
    let mut lines = vec![words().promise(&asked.promise), words().short_day().to_owned()];
    lines.push(words().standing_chance(chance, error(chance, years), years));
    lines.extend(is_vital(&asked.plan).then(|| words().life_depends().to_owned()));
    format!("{}\n  {}\n", words().caption(Caption::ThePromise), lines.join("\n  "))
}

/// What keeps the promise.
fn answers(asked: &Asked) -> String {
    let (sizing, promise, course, own) = (&asked.sizing, &asked.promise, asked.course(), asked.own);
    let sized = |size: Option<Size>| size.map(|size| asked.sized(size));
    let mut lines = Vec::new();
    if !asked.keeps() {
        lines.push(words().suggested_size(sized(sizing.suggested(&asked.map, promise, own))));
    }
    let bank = sizing.smallest_bank(course, promise, own.array);
    lines.push(words().smallest_bank(sized(bank)));
    lines.push(words().smallest_array(sized(sizing.smallest_array(course, promise, own.bank))));
    if !asked.keeps() {
        let hours = sizing.charger_hours(course, promise, own);
        lines.push(words().charger_hours(hours, sizing.charger()));
    }
    lines.extend(tilted(asked));
    format!("{}\n  {}\n", words().caption(Caption::WhatKeepsIt), lines.join("\n  "))
}

/// The best tilt of the plan's own arrays, where it would change something.
fn tilted(asked: &Asked) -> Option<String> {
    let (tilt, month) = asked.sizing.best_tilt(&asked.promise);
    let south = asked.sizing.system().site.latitude.0 >= 0.0;
    let changes = help::changes(&asked.plan, &asked.sizing, &asked.promise);
    let (change, plan) =
        changes.into_iter().find(|(change, _)| matches!(change, Change::Tilted { .. }))?;
    let judged = help::judged(change, &plan, &asked.sizing, &asked.spread, &asked.promise)?;
    (asked.own.array > 0.0).then(|| words().tilt_for(tilt, south, month, judged.chance))
}

/// The frontier of the map: a row for each of the smallest combinations, and the cheapest and the lightest.
fn smallest(asked: &Asked, price: Option<Rates>, weight: Option<Rates>) -> String {
    let (map, promise) = (&asked.map, &asked.promise);
    let frontier = map.frontier(promise);
    if frontier.is_empty() {
        return String::new();
    }
    let rates = [(Caption::Price, price), (Caption::Weight, weight)];
    let rates = rates.into_iter().filter_map(|(name, rates)| Some((name, rates?)));
    let rates: Vec<(Caption, Rates)> = rates.collect();
    let mut table = Table::default();
    let columns = [Caption::TheBank, Caption::TheArray, Caption::Chance];
    let columns = columns.into_iter().chain(rates.iter().map(|(name, _)| *name));
    table.row(columns.map(|name| words().caption(name)));
    for (bank, array) in frontier {
        let size = asked.sized(map.size(bank, array));
        let chance = map.chance(promise, bank, array).unwrap_or_default();
        let sums = rates.iter().map(|(_, rates)| {
            words().rounded(size.charge.0 * rates.bank_ah + size.power.0 * rates.array_w)
        });
        let cells =
            [words().amount(size.charge), words().amount(size.power), words().chance(chance)];
        table.row(cells.into_iter().chain(sums));
    }
    let least = [(Caption::Cheapest, price), (Caption::Lightest, weight)];
    let least = least.into_iter().filter_map(|(name, rates)| {
        let (size, sum) = map.least_by(&asked.sizing, promise, rates?)?;
        let (size, sum) = (asked.sized(size), words().rounded(sum));
        let name = words().caption(name);
        let (charge, power) = (words().amount(size.charge), words().amount(size.power));
        Some(format!("  {name}: {charge}, {power}: {sum}\n"))
    });
    let least: String = least.collect();
    format!("{}\n{}{least}", words().caption(Caption::SmallestTogether), table.text())
}

/// What would help most, each change by itself.
fn helpful(asked: &Asked) -> String {
    if asked.promise.shortage_of(&asked.counts, &asked.course().trials) <= 0.0
        || asked.own.array <= 0.0
    {
        return String::new();
    }
    let (sizing, promise) = (&asked.sizing, &asked.promise);
    let changes = help::changes(&asked.plan, sizing, promise);
    let judged = changes
        .into_iter()
        .filter_map(|(change, plan)| help::judged(change, &plan, sizing, &asked.spread, promise));
    let ranked = help::ranked(judged.collect(), promise, &asked.counts, &asked.course().trials);
    let mut table = Table::default();
    let trials = asked.promise.trial_days().is_some();
    let left = if trials { Caption::TrialsFailing } else { Caption::ShortDaysYear };
    table.row(["", words().caption(Caption::Chance), words().caption(left)]);
    let of = |shortage: f64| {
        if trials { words().chance(shortage) } else { words().rounded(shortage) }
    };
    let now = promise.shortage_of(&asked.counts, &asked.course().trials);
    let unchanged = words().caption(Caption::Unchanged).to_owned();
    table.row([unchanged, words().chance(asked.chance()), of(now)]);
    for helped in ranked.iter().take(CHANGES) {
        let change = words().change(&helped.change, &name(asked, &helped.change));
        table.row([change, words().chance(helped.chance), of(helped.shortage)]);
    }
    format!("{}\n{}", words().caption(Caption::WouldHelp), table.text())
}

/// The name of the load that a change is about; of any other nothing.
fn name(asked: &Asked, change: &Change) -> String {
    match change {
        Change::LessUse { load, .. } | Change::Direct { load } => {
            let tag = Tag::Load(*load);
            let own = words().name_in(&asked.plan, tag);
            own.or_else(|| words().unnamed(tag)).unwrap_or_default()
        }
        _ => String::new(),
    }
}

/// What the common system voltages mean.
fn common_voltages(asked: &Asked) -> String {
    let mut table = Table::default();
    let columns = [Caption::SystemVoltage, Caption::LoadsAtOnce, Caption::ArraysAtOnce];
    table.row(columns.map(|name| words().caption(name)));
    let mut system = asked.sizing.system().clone();
    if asked.own.array <= 0.0 {
        system.arrays.clear();
    }
    for voltage in voltages(&system) {
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
