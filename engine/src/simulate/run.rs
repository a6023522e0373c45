//! A run: from any date, clock time and state of charge, quarter-hour by quarter-hour.
//!
//! **Question answered:** when is the reserve reached, when does the bank fail its loads, when is it full?
//!
//! **Method.** The first step may be shorter, so that all others begin at a quarter of the clock. A crossing within a step is
//! placed by a straight line. Every sample can be replayed with its working.
//!
//! **Left out:** a capacity that changes on the way: it is that of the month of the start.

use super::almanac::Almanac;
use super::days::Day;
use super::flows::{Flows, Forcing};
use super::prepared::{Prepared, State};
use crate::bank::Bank;
use crate::quantity::{AmpHours, Hours, Litres, Volts, WattHours, Within};
use crate::sky::STEPS_PER_DAY;
use crate::system::System;
use crate::working::{Formula, Source, Trace, term};

/// Length of a full step.
pub const STEP: Hours = Hours(24.0 / STEPS_PER_DAY as f64);
/// Minutes of a full step.
const STEP_MIN: u16 = 15;
/// Days for which room is made at once.
const MOST_DAYS: usize = 366;
/// Below this state of charge the bank counts as empty.
const EMPTY: f64 = 1e-6;

/// Whether the sun shines in a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sun {
    /// In the mean weather of the month.
    Mean,
    /// Not at all.
    None,
}

/// A moment of a run, at the end of a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// Time since the start.
    pub at: Hours,
    /// State of charge (ratio).
    pub charge: f64,
    /// How full the available well of lead-acid is (ratio); the state of charge of every other chemistry.
    pub available: f64,
    /// How long the generator has been running without a stop; nothing while it stands still.
    pub ran: Hours,
    /// Voltage between the posts during the step.
    pub volts: Volts,
    /// What acted in the step.
    pub forcing: Forcing,
    /// What flowed in the step.
    pub flows: Flows,
}

/// A finished run.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// Charge between full and empty.
    pub full: AmpHours,
    /// State of charge at the start (ratio).
    pub initial: f64,
    /// One sample a step.
    pub samples: Vec<Sample>,
    /// Sums over the run.
    pub totals: Flows,
    /// When the reserve is first reached, or the bank fails its loads before.
    pub reserve_at: Option<Hours>,
    /// When the bank first fails its loads: it is empty, its charge at hand is, or they pull it under its cut-off voltage.
    pub empty_at: Option<Hours>,
    /// When charging has first ended: at the tail current, or at full.
    pub full_at: Option<Hours>,
    /// Time since charging last ended, or since the start: lead-acid that waits for weeks sulphates.
    pub since_full: Hours,
    /// The longest of these times.
    pub longest_since_full: Hours,
    /// State at the start.
    start: State,
}

impl Run {
    fn new(bank: &Bank, initial: f64, full: AmpHours, steps: usize) -> Self {
        Self {
            full,
            initial,
            samples: Vec::with_capacity(steps),
            totals: Flows::default(),
            reserve_at: None,
            empty_at: None,
            full_at: None,
            since_full: Hours::ZERO,
            longest_since_full: Hours::ZERO,
            start: Prepared::new(bank, full, STEP).rested(initial),
        }
    }

    /// Adds a step and notes what is crossed in it.
    fn push(&mut self, bank: &Prepared<'_>, reserve: f64, forcing: &Forcing, time: Hours) {
        let from = self.samples.last().map_or(Hours::ZERO, |last| last.at);
        let before = self.state_before(self.samples.len());
        let after = bank.step(before, forcing, &mut ());
        let State { charge, available, ran } = after.state;
        let before = before.charge;
        if self.empty_at.is_none() && (charge <= EMPTY || after.carried.is_some()) {
            self.empty_at = Some(from + time * after.carried.unwrap_or(1.0));
        }
        if self.reserve_at.is_none() {
            let part = if before > charge { (before - reserve) / (before - charge) } else { 0.0 };
            let crossed = charge <= reserve && charge < before;
            let crossed = crossed.then(|| from + time * part.within(0.0, 1.0));
            // In one step both may come: the loads go out before what is left is drawn by whatever the bank still carries.
            self.reserve_at = match (crossed, self.empty_at) {
                (Some(crossed), Some(empty)) => Some(crossed.at_most(empty)),
                (crossed, empty) => crossed.or(empty),
            };
        }
        self.since_full += time;
        if after.filled {
            self.full_at = self.full_at.or(Some(from + time));
            self.since_full = Hours::ZERO;
        }
        self.longest_since_full = self.longest_since_full.at_least(self.since_full);
        self.totals += after.flows;
        let (volts, flows, forcing) = (after.volts, after.flows, *forcing);
        let at = from + time;
        self.samples.push(Sample { at, charge, available, ran, volts, forcing, flows });
    }

    /// The sample of the step that contains this time.
    #[must_use]
    pub fn sample_at(&self, at: Hours) -> Option<&Sample> {
        let place = self.samples.partition_point(|sample| sample.at < at);
        self.samples.get(place).or(self.samples.last())
    }

    /// State of charge before a step (ratio).
    #[must_use]
    pub fn charge_before(&self, place: usize) -> f64 {
        place
            .checked_sub(1)
            .and_then(|before| self.samples.get(before))
            .map_or(self.initial, |sample| sample.charge)
    }

    /// State of charge at a time (ratio), straight between the ends of its step; that of the end beyond it.
    #[must_use]
    pub fn charge_at(&self, at: Hours) -> f64 {
        let place = self.samples.partition_point(|sample| sample.at < at);
        let before = self.charge_before(place);
        let Some(sample) = self.samples.get(place) else { return before };
        let from = place.checked_sub(1).and_then(|place| self.samples.get(place));
        let from = from.map_or(Hours::ZERO, |from| from.at);
        before + (sample.charge - before) * ((at - from) / (sample.at - from))
    }

    /// State of the bank before a step.
    fn state_before(&self, place: usize) -> State {
        let before = place.checked_sub(1).and_then(|before| self.samples.get(before));
        before.map_or(self.start, |sample| State {
            charge: sample.charge,
            available: sample.available,
            ran: sample.ran,
        })
    }

    /// The balance of a step with its working: what came, what went, what is left.
    pub fn replay(&self, system: &System, place: usize, trace: &mut impl Trace) -> Option<f64> {
        let sample = self.samples.get(place)?;
        // Only the first step can be shorter; differences of times would carry the rounding of their sum.
        let time = if place == 0 { sample.at } else { STEP };
        let bank = prepared(system, self.full, time);
        Some(bank.step(self.state_before(place), &sample.forcing, trace).state.charge)
    }

    /// What the generator has burnt over the run; nothing if there is none or its fuel is not stated.
    #[must_use]
    pub fn fuel(&self, system: &System) -> Option<Litres> {
        let fuel = system.generator.as_ref()?.fuel;
        fuel.of(self.totals.generator_time, self.generator_energy())
    }

    /// Energy that the generator has brought to the bank, as far as used.
    #[must_use]
    pub fn generator_energy(&self) -> WattHours {
        self.samples.iter().map(|sample| sample.volts * sample.flows.generator).sum()
    }

    /// The state of charge at the end from the sums of the run, with its working.
    pub fn account(&self, trace: &mut impl Trace) -> f64 {
        let totals = &self.totals;
        let came = trace.step(
            Formula::ChargeCame,
            totals.came(),
            &[totals.solar, totals.turbine, totals.engine, totals.generator, totals.shore]
                .map(|charge| term(charge).from(Source::Steps)),
        );
        let lost = self.totals.charge_loss + self.totals.self_discharge + self.totals.protection;
        let lost = trace.step(
            Formula::ChargeLost,
            lost,
            &[
                term(self.totals.charge_loss).from(Source::Steps),
                term(self.totals.self_discharge).from(Source::Steps),
                term(self.totals.protection).from(Source::Steps),
            ],
        );
        let end = self.initial + (came - self.totals.load - lost) / self.full;
        trace.step(
            Formula::ChargeAtEnd,
            end,
            &[
                term(self.initial),
                term(came),
                term(self.totals.load).from(Source::Steps),
                term(lost),
                term(self.full),
            ],
        )
    }
}

/// The bank of a system beside its generator, for steps of this length.
fn prepared(system: &System, full: AmpHours, time: Hours) -> Prepared<'_> {
    Prepared::new(&system.bank, full, time).with_generator(system.generator.as_ref())
}

/// The sun taken away; all other sources stay.
fn darkened(mut day: Day) -> Day {
    for forcing in &mut day {
        *forcing = Forcing {
            solar_power: crate::quantity::Watts::ZERO,
            solar_current: crate::quantity::Amps::ZERO,
            ..*forcing
        };
    }
    day
}

/// Steps of so many days, for which room is made at once: a run moves no samples while it grows.
fn steps_of(days: usize) -> usize {
    days.min(MOST_DAYS).saturating_mul(STEPS_PER_DAY)
}

/// Runs a system from its start for so many days, or until it is empty if `stop_when_empty`.
#[must_use]
pub fn run(
    almanac: &mut Almanac<'_>,
    full: AmpHours,
    sun: Sun,
    days: usize,
    stop_when_empty: bool,
) -> Run {
    let system = almanac.system;
    let mut day = |place| {
        let today = *almanac.date(place)?;
        Some(if sun == Sun::None { darkened(today) } else { today })
    };
    run_through(system, full, &mut day, days, stop_when_empty)
}

/// The same through days that somebody else makes, the first being that of the start; it ends where there is none.
pub(super) fn run_through(
    system: &System,
    full: AmpHours,
    day: &mut dyn FnMut(usize) -> Option<Day>,
    days: usize,
    stop_when_empty: bool,
) -> Run {
    let mut run = Run::new(&system.bank, system.start.charge, full, steps_of(days) + 1);
    let whole_step = prepared(system, full, STEP);
    let reserve = system.bank.reserve.ratio();
    let (mut place, mut minute) = (0, system.start.minute);
    let end = Hours(days as f64 * 24.0);
    while let Some(today) = day(place) {
        while minute < 24 * 60 {
            let next = (minute / STEP_MIN + 1) * STEP_MIN;
            let time = Hours(f64::from(next - minute) / 60.0);
            let part_step = (time < STEP).then(|| prepared(system, full, time));
            let bank = part_step.as_ref().unwrap_or(&whole_step);
            run.push(bank, reserve, &today[usize::from(minute / STEP_MIN)], time);
            minute = next;
            let over = run.samples.last().is_some_and(|last| last.at >= end);
            if over || stop_when_empty && run.empty_at.is_some() {
                return run;
            }
        }
        minute = 0;
        place += 1;
    }
    run
}
