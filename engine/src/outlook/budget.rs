//! The daily budget: what each load takes on a mean day of a month, at the bank.
//!
//! **Question answered:** where do the amp-hours go?
//!
//! **Method.** Energy is the load's power times its quantity, the hours in which it is on and its duty; charge is that over
//! the nominal voltage, as anyone can redo by hand. Loads on the inverter carry their share of its losses that grow with the
//! output; its idle draw is a line of its own.
//!
//! **Left out:** that the voltage is not the nominal one. The runs know it, so they take a little more or less charge for the
//! same loads.

use crate::document::Supply;
use crate::load::{Inverter, Load, LoadDay};
use crate::quantity::{AmpHours, Amps, Hours, Percent, WattHours};
use crate::simulate::{Almanac, Day, STEP};
use crate::system::System;
use crate::working::{Formula, Source, Symbol, Tag, Trace, term};

/// What one load takes on a mean day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadBudget {
    /// Its place in the plan.
    pub place: u16,
    /// Hours in which it is on by its schedule.
    pub hours: Hours,
    /// Share of these in which it runs, in the air of the month.
    pub duty: Percent,
    /// Energy at the load.
    pub own_energy: WattHours,
    /// Energy at the bank.
    pub energy: WattHours,
    /// Charge at the bank.
    pub charge: AmpHours,
}

/// What the inverter takes for itself.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct InverterBudget {
    /// Hours in which it is on.
    pub hours: Hours,
    /// Energy of its idle draw, and of its search for loads the rest of the day.
    pub energy: WattHours,
    /// Charge of the same.
    pub charge: AmpHours,
}

/// What all takes on a mean day of a month.
#[derive(Clone, Debug, PartialEq)]
pub struct Budget {
    /// The month, January being 0.
    pub month: usize,
    /// Load by load.
    pub loads: Vec<LoadBudget>,
    /// The inverter's idle draw.
    pub inverter: InverterBudget,
    /// Standing draw.
    pub standing: AmpHours,
    /// Protection circuits.
    pub protection: AmpHours,
    /// All of it.
    pub total: AmpHours,
    /// Energy of all of it.
    pub total_energy: WattHours,
}

/// Sums of the inverter over a mean day.
#[derive(Clone, Copy, Debug, Default)]
struct InverterDay {
    hours: Hours,
    output: WattHours,
    growing_loss: WattHours,
}

/// The budget of a month, January being 0.
pub fn budget(almanac: &mut Almanac<'_>, month: usize, trace: &mut impl Trace) -> Budget {
    let system = almanac.system;
    let inverter_day = inverter_day(almanac, month);
    let mean_days = mean_days(almanac, month);
    let loads: Vec<LoadBudget> = system
        .loads
        .iter()
        .zip(&mean_days)
        .map(|(load, mean)| load_budget(system, load, mean, &inverter_day, trace))
        .collect();
    let inverter = inverter_budget(system, &inverter_day, trace);
    let day = Hours(24.0);
    let current = standing_current(system, trace);
    let standing = trace.step(
        Formula::StandingCharge,
        current * day,
        &[term(current), term(day).from(Source::Definition)],
    );
    let protection = trace.step(
        Formula::ProtectionDay,
        system.bank.protection * day,
        &[
            term(system.bank.protection).from(system.bank.protection_source),
            term(day).from(Source::Definition),
        ],
    );
    let sum: AmpHours = loads.iter().map(|load| load.charge).sum();
    let total = sum + inverter.charge + standing + protection;
    let mut terms: Vec<_> =
        loads.iter().map(|load| term(load.charge).of(Tag::Load(load.place))).collect();
    let rest = [
        (inverter.charge, Symbol::InverterDay),
        (standing, Symbol::StandingDay),
        (protection, Symbol::ProtectionDay),
    ];
    terms.extend(rest.map(|(charge, symbol)| term(charge).named(symbol)));
    let total = trace.step(Formula::DayTotal, total, &terms);
    Budget {
        month,
        loads,
        inverter,
        standing,
        protection,
        total,
        total_energy: total * system.bank.nominal,
    }
}

/// The standing current with what the charge controllers take.
fn standing_current(system: &System, trace: &mut impl Trace) -> Amps {
    if system.controllers.0 <= 0.0 {
        return system.standing;
    }
    trace.step(
        Formula::StandingWithControllers,
        system.standing,
        &[
            term(system.own_standing).named(Symbol::OwnStanding),
            term(system.controllers),
            term(system.bank.nominal),
        ],
    )
}

/// How long each load is on in the mean of a week.
fn mean_days(almanac: &mut Almanac<'_>, month: usize) -> Vec<LoadDay> {
    let mut means = vec![LoadDay::default(); almanac.system.loads.len()];
    for (weekday, share) in almanac.week() {
        for (mean, load) in means.iter_mut().zip(&almanac.demand(month, weekday).loads) {
            mean.on += load.on * share;
            mean.runs += load.runs * share;
        }
    }
    means
}

fn inverter_day(almanac: &mut Almanac<'_>, month: usize) -> InverterDay {
    let Some(inverter) = &almanac.system.inverter else { return InverterDay::default() };
    let mut sum = InverterDay::default();
    for (weekday, share) in almanac.week() {
        for demand in &almanac.demand(month, weekday).steps {
            sum.hours += STEP * (demand.awake * share);
            sum.output += demand.ac * STEP * share;
            sum.growing_loss += demand.loss(inverter) * STEP * share;
        }
    }
    sum
}

fn load_budget(
    system: &System,
    load: &Load,
    mean: &LoadDay,
    inverter: &InverterDay,
    trace: &mut impl Trace,
) -> LoadBudget {
    let LoadDay { on, runs } = *mean;
    let hours = STEP * on;
    let duty = Percent::of_ratio(if on > 0.0 { runs / on } else { load.duty.ratio() });
    let duty_source = if load.cooling.is_some() { Source::Steps } else { Source::Plan };
    let tag = Tag::Load(load.place);
    let own_energy = trace.step_of(
        tag,
        Formula::LoadEnergy,
        load.running() * STEP * runs,
        &[term(load.power).of(tag), term(load.quantity), term(hours), term(duty).from(duty_source)],
    );
    let energy = at_bank(system, load, own_energy, inverter, trace);
    let charge = trace.step_of(
        tag,
        Formula::LoadCharge,
        energy / system.bank.nominal,
        &[term(energy).of(tag), term(system.bank.nominal)],
    );
    LoadBudget { place: load.place, hours, duty, own_energy, energy, charge }
}

/// Energy at the bank: with the load's part of the inverter's losses, and nothing if there is no inverter for it.
fn at_bank(
    system: &System,
    load: &Load,
    own: WattHours,
    inverter: &InverterDay,
    trace: &mut impl Trace,
) -> WattHours {
    let tag = Tag::Load(load.place);
    match (load.supply, &system.inverter) {
        (Supply::Dc, _) => trace.step_of(tag, Formula::EnergyDirect, own, &[term(own).of(tag)]),
        (Supply::Ac, None) => WattHours::ZERO,
        (Supply::Ac, Some(_)) => {
            let loss =
                if inverter.output.0 > 0.0 { inverter.growing_loss / inverter.output } else { 0.0 };
            trace.step_of(
                tag,
                Formula::EnergyByInverter,
                own * (1.0 + loss),
                &[term(own).of(tag), term(Percent::of_ratio(loss)).from(Source::Steps)],
            )
        }
    }
}

fn inverter_budget(system: &System, day: &InverterDay, trace: &mut impl Trace) -> InverterBudget {
    let idle = system.inverter.as_ref().map(Inverter::idle).unwrap_or_default();
    let idle_source = system.inverter.map_or(Source::Plan, |inverter| inverter.idle_source);
    if let Some(inverter) = system.inverter.filter(|inverter| inverter.search.0 > 0.0) {
        return searching(system, &inverter, day, trace);
    }
    let energy = idle * day.hours;
    let charge = trace.step(
        Formula::InverterIdle,
        energy / system.bank.nominal,
        &[
            term(idle).from(idle_source),
            term(day.hours).from(Source::Steps),
            term(system.bank.nominal),
        ],
    );
    InverterBudget { hours: day.hours, energy, charge }
}

/// The same of an inverter that looks for loads while none is on.
fn searching(
    system: &System,
    inverter: &Inverter,
    day: &InverterDay,
    trace: &mut impl Trace,
) -> InverterBudget {
    let (idle, whole) = (inverter.idle(), Hours(24.0));
    let energy = idle * day.hours + inverter.search * (whole - day.hours);
    let charge = trace.step(
        Formula::InverterSearch,
        energy / system.bank.nominal,
        &[
            term(idle).from(inverter.idle_source),
            term(day.hours).from(Source::Steps),
            term(inverter.search).from(inverter.search_source),
            term(whole).from(Source::Definition),
            term(system.bank.nominal),
        ],
    );
    InverterBudget { hours: day.hours, energy, charge }
}

/// The current at which the bank is usually discharged: the mean weighted by charge, which is what bears on its capacity.
///
/// Σ I² / Σ I over the steps of the days: an hour at 50 A counts fifty times one at 1 A.
#[must_use]
pub fn discharge_current(system: &System, week: &[(&Day, f64)]) -> Amps {
    let (mut squares, mut sum) = (0.0, 0.0);
    for (day, share) in week {
        for forcing in *day {
            let current = (forcing.demand / system.bank.nominal + forcing.standing).0;
            squares += current * current * share;
            sum += current * share;
        }
    }
    Amps(if sum > 0.0 { squares / sum } else { 0.0 })
}
