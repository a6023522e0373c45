//! The twelve typical months: what comes in against what goes out, and what a run of such days does to the bank.
//!
//! **Question answered:** which months keep up, and what is missing in the others?
//!
//! **Method.** The balance is the gain of a mean day, less what charging loses by the chemistry's mean efficiency, less the
//! day's use. Whether a month keeps up is simulated: two weeks of its typical days from full must stay above the reserve,
//! leave no load short, and end the second week as they ended the first.
//!
//! **Left out:** weather. These are mean months; the share of real ones that keep up is the ensemble's.

use super::budget::discharge_current;
use crate::document::ControllerKind;
use crate::quantity::{
    AmpHours, Amps, Celsius, Hours, Irradiation, Litres, LitresPerHour, LitresPerKilowattHour,
    Percent, WattHours,
};
use crate::simulate::{Almanac, Day, STEP, Sunlight, run_month, typical_diffuse_share};
use crate::sky::{SkyDay, SkyStep};
use crate::source::Array;
use crate::system::System;
use crate::working::{Formula, Source, Tag, Term, Trace, term};

/// Typical days run for each month: two weeks, of which the second tells whether the bank holds its level.
const DAYS: usize = 14;
/// A level that falls by less than this from one week to the next holds (ratio).
const HOLDS: f64 = 0.002;

/// What comes in on a mean day of a month.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Gain {
    /// From the sun, at the bank.
    pub solar: AmpHours,
    /// From a turbine.
    pub turbine: AmpHours,
    /// From the engine.
    pub engine: AmpHours,
    /// From shore power.
    pub shore: AmpHours,
    /// All of it after the loss of charging; the generator makes up for what this lacks.
    pub kept: AmpHours,
}

/// A typical month.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Month {
    /// January being 0.
    pub month: usize,
    /// Light on the level \[kWh/m² a day\].
    pub irradiation: Irradiation,
    /// Mean temperature of the bank.
    pub bank_temperature: Celsius,
    /// What comes in on a mean day.
    pub gain: Gain,
    /// What goes out on a mean day.
    pub need: AmpHours,
    /// Gain kept less need.
    pub balance: AmpHours,
    /// Charge between full and empty.
    pub full: AmpHours,
    /// Charge between full and the reserve.
    pub usable: AmpHours,
    /// Mean discharge current.
    pub current: Amps,
    /// Whether the bank holds its level above the reserve without a load going short.
    pub keeps_up: bool,
    /// Whether the bank is too cold to be charged at its mean temperature.
    pub too_cold_to_charge: bool,
    /// What the generator has to do on a mean day; none if there is none.
    pub generator: Option<Generated>,
}

/// What a generator has to do on a mean day, to make up for what else comes in.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Generated {
    /// So long it runs.
    pub hours: Hours,
    /// So much it burns, if that is stated.
    pub fuel: Option<Litres>,
}

/// Days that stand for a week, each with its share.
type Week<'a> = [(&'a Day, f64)];

/// A typical month, simulated.
///
/// `yields` are those of all arrays, from which the working of the gain goes on; without them it begins with their sum.
pub fn month(
    almanac: &mut Almanac<'_>,
    month: usize,
    need: AmpHours,
    yields: &[ArrayDay],
    trace: &mut impl Trace,
) -> Month {
    let system = almanac.system;
    let tag = Tag::Month(month as u8 + 1);
    let sky = almanac.sky(month);
    let (irradiation, bank_temperature) = (sky.irradiation, bank_temperature(system, sky));
    let week = almanac.week_of(month);
    let gain = gain(system, &week, yields, tag, trace);
    let balance = trace.step_of(
        tag,
        Formula::Balance,
        gain.kept - need,
        &[term(gain.kept).of(tag), term(need)],
    );
    let current = discharge_current(system, &week);
    let capacity = system.bank.capacity(current, bank_temperature, &mut ());
    let reserve = system.bank.reserve.ratio();
    // Over two weeks a generator's long cycle may look like a fall; what counts is whether it can make up for what is missing.
    let backed = generator_most(system, &week) + balance >= AmpHours::ZERO;
    let run = run_month(almanac, capacity.full, month, 1.0, reserve, DAYS);
    let charge_after = |days: usize| {
        days.checked_sub(1).and_then(|at| run.midnights.get(at)).map_or(1.0, |at| *at)
    };
    let half = run.midnights.len() / 2;
    let holds = charge_after(run.midnights.len()) >= charge_after(half) - HOLDS;
    let holds = holds || system.generator.is_some() && backed;
    let above = run.lowest >= reserve && run.unmet.0 <= 0.0;
    Month {
        month,
        irradiation,
        bank_temperature,
        gain,
        need,
        balance,
        full: capacity.full,
        usable: capacity.usable,
        current,
        keeps_up: holds && above,
        too_cold_to_charge: system
            .bank
            .typical
            .charge_above
            .is_some_and(|least| bank_temperature < least),
        generator: generated(system, balance, tag, trace),
    }
}

/// Lowest state of charge in two weeks of a month's typical days from full, or until a load goes short (ratio).
#[must_use]
pub fn lowest_of(system: &System, month: &Month) -> f64 {
    let sunlight = &mut Sunlight::default();
    run_month(&mut Almanac::new(system, sunlight), month.full, month.month, 1.0, 0.0, DAYS).lowest
}

/// The most that the generator can add on a mean day.
fn generator_most(system: &System, week: &Week<'_>) -> AmpHours {
    let Some(generator) = &system.generator else { return AmpHours::ZERO };
    let allowed = |day: &Day| day.iter().map(|forcing| forcing.generator_allowed).sum::<f64>();
    let allowed: f64 = week.iter().map(|(day, share)| allowed(day) * share).sum();
    generator.limit * (STEP * allowed) * system.bank.mean_efficiency
}

/// What the generator has to do to make up for a balance.
fn generated(
    system: &System,
    balance: AmpHours,
    tag: Tag,
    trace: &mut impl Trace,
) -> Option<Generated> {
    let generator = system.generator.as_ref()?;
    if balance >= AmpHours::ZERO {
        let nothing = Generated::default();
        return Some(Generated {
            fuel: generator.fuel.of(nothing.hours, WattHours::ZERO),
            ..nothing
        });
    }
    let efficiency = Percent::of_ratio(system.bank.mean_efficiency);
    let hours = trace.step_of(
        tag,
        Formula::GeneratorDay,
        -balance / (generator.limit * efficiency.ratio()),
        &[
            term(balance).of(tag),
            term(generator.limit),
            term(efficiency).from(system.bank.efficiency_source),
        ],
    );
    let nominal = system.bank.nominal;
    let fuel = generator.fuel.of(hours, nominal * generator.limit * hours).map(|fuel| {
        let (per_hour, per_kwh) = (generator.fuel.per_hour, generator.fuel.per_kwh);
        trace.step_of(
            tag,
            Formula::GeneratorFuel,
            fuel,
            &[
                term(LitresPerHour(per_hour.unwrap_or(0.0))),
                term(hours).of(tag),
                term(LitresPerKilowattHour(per_kwh.unwrap_or(0.0))),
                term(nominal),
                term(generator.limit),
            ],
        )
    });
    Some(Generated { hours, fuel })
}

/// Mean temperature of the bank on a day under this sky.
pub(super) fn bank_temperature(system: &System, sky: &SkyDay) -> Celsius {
    let of = |step: &SkyStep| system.bank.temperature(step.air, system.inside_least).0;
    Celsius(sky.steps.iter().map(of).sum::<f64>() / sky.steps.len() as f64)
}

/// What comes in on a mean day if the bank takes all of it.
fn gain(
    system: &System,
    week: &Week<'_>,
    yields: &[ArrayDay],
    tag: Tag,
    trace: &mut impl Trace,
) -> Gain {
    let (mut power, mut current) = (WattHours::ZERO, AmpHours::ZERO);
    let (mut turbine_energy, mut turbine) = (WattHours::ZERO, AmpHours::ZERO);
    let (mut engine, mut shore) = (AmpHours::ZERO, AmpHours::ZERO);
    for (day, share) in week {
        let per_day = STEP * *share;
        for forcing in *day {
            power += forcing.solar_power * per_day;
            current += forcing.solar_current * per_day;
            turbine_energy += forcing.turbine_power * per_day;
            turbine += forcing.turbine_current * per_day;
            engine += forcing.engine * per_day;
            shore += forcing.shore * per_day;
        }
    }
    from_arrays(system, yields, power, current, trace);
    let solar = trace.step_of(
        tag,
        Formula::SolarDay,
        power / system.bank.nominal + current,
        &[
            term(power).from(Source::Steps),
            term(system.bank.nominal),
            term(current).from(Source::Steps),
        ],
    );
    let turbine = turbine + turbine_energy / system.bank.nominal;
    let efficiency = Percent::of_ratio(system.bank.mean_efficiency);
    let kept = trace.step_of(
        tag,
        Formula::GainKept,
        (solar + turbine + engine + shore) * efficiency.ratio(),
        &[
            term(solar).of(tag),
            term(turbine).from(Source::Steps),
            term(engine).from(Source::Steps),
            term(shore).from(Source::Steps),
            term(efficiency).from(system.bank.efficiency_source),
        ],
    );
    Gain { solar, turbine, engine, shore, kept }
}

/// The working of what all arrays give on a day, by power and by current, from the yield of each.
fn from_arrays(
    system: &System,
    yields: &[ArrayDay],
    power: WattHours,
    current: AmpHours,
    trace: &mut impl Trace,
) {
    let by = |kind| yields.iter().filter(move |day| day.controller == kind);
    let powers: Vec<_> = by(ControllerKind::Mppt).map(ArrayDay::term).collect();
    if !powers.is_empty() {
        trace.step(Formula::ArraysEnergy, power, &powers);
    }
    let charging = system.bank.charging_voltage();
    let inputs = |day: &ArrayDay| [day.term(), term(charging).from(Source::Typical)];
    let currents: Vec<_> = by(ControllerKind::Pwm)
        .map(|day| {
            let charge = day.energy / charging;
            let charge = trace.step_of(day.tag, Formula::ArrayCharge, charge, &inputs(day));
            term(charge).of(day.tag)
        })
        .collect();
    if !currents.is_empty() {
        trace.step(Formula::ArraysCharge, current, &currents);
    }
}

/// What one array gives on a month's typical day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArrayDay {
    /// Which array.
    pub tag: Tag,
    /// How its controller works.
    pub controller: ControllerKind,
    /// Energy at the bank, at the bank's charging voltage for a series regulator.
    pub energy: WattHours,
}

impl ArrayDay {
    fn term(&self) -> Term {
        term(self.energy).of(self.tag)
    }
}

/// The yield of one array on a month's typical day with its working, from the light to the energy at the bank.
///
/// Heat, low light and the controller's limit come out as one factor: what the step-by-step sum gives over the product of all
/// others.
pub fn array_yield(
    system: &System,
    array: &Array,
    month: usize,
    trace: &mut impl Trace,
) -> ArrayDay {
    let tag = Tag::Array(array.place);
    let sky = crate::simulate::typical_sky(system, month, trace);
    let charging = system.bank.charging_voltage();
    let mut plane = Irradiation::ZERO;
    let mut energy = WattHours::ZERO;
    for step in &sky.steps {
        plane += Irradiation(array.light(step, system.albedo).0 * STEP.0 / 1000.0);
        let feed = array.feed(step, system.albedo, charging);
        energy += feed.power * STEP + charging * (feed.current * STEP);
    }
    let plane = trace.step_of(
        tag,
        Formula::PlaneIrradiation,
        plane,
        &[
            term(sky.irradiation),
            term(typical_diffuse_share(system, month)),
            term(array.plane.tilt),
            term(array.plane.azimuth),
        ],
    );
    let kept = array.light_kept() * array.cable.remainder();
    let ideal = array.rated().0 * plane.0 * kept;
    let running = if ideal > 0.0 { energy.0 / ideal } else { 0.0 };
    let energy = trace.step_of(
        tag,
        Formula::ArrayYield,
        energy,
        &[
            term(array.rated()),
            term(plane).of(tag),
            term(array.dirt),
            term(array.ageing),
            term(array.other),
            term(array.cable),
            term(Percent::of_ratio(running)).from(Source::Steps),
        ],
    );
    ArrayDay { tag, controller: array.controller, energy }
}
