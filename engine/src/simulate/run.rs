//! A run: from any date, clock time and state of charge, quarter-hour by quarter-hour.

use super::almanac::Almanac;
use super::days::Day;
use super::step::{Flows, Forcing, State, step};
use crate::quantity::{AmpHours, Hours, Volts};
use crate::sky::STEPS_PER_DAY;
use crate::system::System;
use crate::working::{Formula, Source, Trace, term};

/// Length of a full step.
pub const STEP: Hours = Hours(24.0 / STEPS_PER_DAY as f64);
/// Minutes of a full step.
const STEP_MIN: u16 = 15;
/// From this state of charge on the bank counts as full: the taper never quite ends.
pub(super) const FULL: f64 = 0.995;
/// Below this it counts as empty.
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
    /// When the reserve is first reached.
    pub reserve_at: Option<Hours>,
    /// When the bank is first empty.
    pub empty_at: Option<Hours>,
    /// When it is first full.
    pub full_at: Option<Hours>,
}

impl Run {
    fn new(initial: f64, full: AmpHours) -> Self {
        Self {
            full,
            initial,
            samples: Vec::new(),
            totals: Flows::default(),
            reserve_at: None,
            empty_at: None,
            full_at: None,
        }
    }

    /// Adds a step and notes what is crossed in it.
    fn push(&mut self, system: &System, forcing: &Forcing, time: Hours) {
        let (from, before) =
            self.samples.last().map_or((Hours::ZERO, self.initial), |last| (last.at, last.charge));
        let state = State { charge: before, full: self.full };
        let (charge, flows, volts) = step(&system.bank, state, forcing, time, &mut ());
        let crossing = |level: f64| {
            let part = if before > charge { (before - level) / (before - charge) } else { 0.0 };
            Some(from + time * part.clamp(0.0, 1.0))
        };
        let reserve = system.bank.reserve.ratio();
        if self.reserve_at.is_none() && charge <= reserve && charge < before {
            self.reserve_at = crossing(reserve);
        }
        if self.empty_at.is_none() && (charge <= EMPTY || flows.unmet.0 > 0.0 && charge < 0.01) {
            self.empty_at = crossing(0.0);
        }
        if self.full_at.is_none() && charge >= FULL {
            self.full_at = Some(from + time);
        }
        self.totals += flows;
        self.samples.push(Sample { at: from + time, charge, volts, forcing: *forcing, flows });
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

    /// The balance of a step with its working: what came, what went, what is left.
    pub fn replay(&self, system: &System, place: usize, trace: &mut impl Trace) -> Option<f64> {
        let sample = self.samples.get(place)?;
        // Only the first step can be shorter; differences of times would carry the rounding of their sum.
        let time = if place == 0 { sample.at } else { STEP };
        let state = State { charge: self.charge_before(place), full: self.full };
        let (charge, ..) = step(&system.bank, state, &sample.forcing, time, trace);
        Some(charge)
    }

    /// The state of charge at the end from the sums of the run, with its working.
    pub fn account(&self, trace: &mut impl Trace) -> f64 {
        let came = self.totals.solar + self.totals.engine + self.totals.shore;
        let came = trace.step(
            Formula::ChargeCame,
            came,
            &[
                term(self.totals.solar).from(Source::Steps),
                term(self.totals.engine).from(Source::Steps),
                term(self.totals.shore).from(Source::Steps),
            ],
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

/// Sun, engine and shore power taken away.
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
    let mut run = Run::new(system.start.charge, full);
    let (mut place, mut minute) = (0, system.start.minute);
    let end = Hours(days as f64 * 24.0);
    while let Some(today) = almanac.date(place) {
        let today = if sun == Sun::None { darkened(*today) } else { *today };
        while minute < 24 * 60 {
            let next = (minute / STEP_MIN + 1) * STEP_MIN;
            let time = Hours(f64::from(next - minute) / 60.0);
            run.push(system, &today[usize::from(minute / STEP_MIN)], time);
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
