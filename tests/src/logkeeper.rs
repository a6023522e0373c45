//! Readings of systems that are simulated, with faults that are known: what the logbook must find again.
//!
//! It shares the loads, the mean sun and the open-circuit curve of the plan with the engine, and nothing else: its bank is a count with
//! a slow overvoltage and hysteresis, its weather a chain of logarithms, its gauge a counter that is set to full by voltage and tail.

#![allow(clippy::expect_used, reason = "a test stops at what it cannot make")]

use chrono::{Datelike, Days, NaiveDate, NaiveDateTime, TimeDelta};
use sunlarder_engine::document::Document;
use sunlarder_engine::logbook::{GaugeSetUp, Reading, Shown};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::quantity::{Amps, Percent, Volts};
use sunlarder_engine::simulate::{Almanac, Sunlight};
use sunlarder_engine::sky::Stream;
use sunlarder_engine::system::System;

/// Quarter-hours of a day.
const QUARTERS: usize = 96;
/// Days that are kept.
const DAYS: u64 = 14;

/// What is wrong with a system.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// Nothing.
    None,
    /// The bank holds this share of the plan.
    Capacity(f64),
    /// Everything uses this share of the plan.
    Consumption(f64),
    /// So many amps go into the bank past the shunt while the sun charges.
    Bypass(f64),
    /// The gauge is set to full once while it is not.
    FalseFull,
    /// So many amps go out of the bank past the shunt at all times.
    Drain(f64),
    /// A cell is failing: all voltages lie so much lower.
    Cell(f64),
    /// Nothing, but one voltage was written down with its digits the wrong way round.
    Slip,
}

/// A plan whose readings are kept.
#[derive(Debug)]
pub struct Stage {
    /// The plan.
    pub system: System,
    /// Spread of the daily clearness.
    pub spread: [f64; 12],
    /// What the gauge was told.
    pub gauge: GaugeSetUp,
    /// What the bank holds by the plan \[Ah\].
    pub full: f64,
    start: NaiveDate,
    /// By weekday, Monday first.
    used: [[f64; QUARTERS]; 7],
    sun: [f64; QUARTERS],
    peak: f64,
}

/// What is true in one case.
#[derive(Clone, Debug, PartialEq)]
pub struct Kept {
    /// What was written down.
    pub readings: Vec<Reading>,
    /// When the gauge was falsely set to full, and what was missing then (ratio).
    pub false_full: Option<(NaiveDateTime, f64)>,
    /// How often the bank was truly full.
    pub fulls: usize,
}

impl Stage {
    /// A plan from a date on.
    ///
    /// # Panics
    /// If the plan does not open.
    #[must_use]
    pub fn new(text: &str, start: NaiveDate) -> Self {
        let mut plan = Document::from_json(text).expect("the plan opens");
        plan.start.date = start;
        // At anchor: an engine whose hours nobody knows would hide what the sun does.
        plan.alternator = None;
        let system = System::assemble(&plan, Climate::embedded(), &mut ()).expect("it assembles");
        let spread = SpreadGrid::embedded().at(system.site);
        let full = Outlook::of(&system).capacity.full;
        let mut sunlight = Sunlight::default();
        let mut almanac = Almanac::new(&system, &mut sunlight);
        let month = start.month0() as usize;
        let (nominal, charging) = (system.bank.nominal.0, system.bank.charging_voltage().0);
        let protection = system.bank.protection.0;
        let used = core::array::from_fn(|weekday| {
            let day = *almanac.day(month, weekday as u8);
            day.map(|own| own.demand.0 / nominal + own.standing.0 + protection)
        });
        let day = *almanac.day(month, 0);
        let sun = day.map(|own| own.solar_power.0 / charging + own.solar_current.0);
        let gauge = GaugeSetUp { capacity: full, efficiency: system.bank.mean_efficiency };
        let peak = sun.iter().copied().fold(0.0, f64::max);
        Self { spread, gauge, full: full.0, start, used, sun, peak, system }
    }

    /// Keeps two weeks of readings of one case.
    #[must_use]
    pub fn keep(&self, fault: Fault, seed: u64) -> Kept {
        let mut case = Case::new(self, fault, seed);
        for day in 0..DAYS {
            case.day(day);
        }
        case.kept
    }
}

/// One case on its way.
struct Case<'a> {
    stage: &'a Stage,
    fault: Fault,
    random: Stream,
    real: f64,
    bypass: f64,
    drain: f64,
    lower: f64,
    consumption: f64,
    /// Charge in the bank and in the gauge \[Ah\].
    held: f64,
    counted: f64,
    slow: f64,
    lag: f64,
    weather: f64,
    climate: f64,
    gain: f64,
    offset: f64,
    steeper: f64,
    shifted: f64,
    near_tail: usize,
    false_day: u64,
    kept: Kept,
}

impl<'a> Case<'a> {
    fn new(stage: &'a Stage, fault: Fault, seed: u64) -> Self {
        let mut random = Stream::branch(7_301, seed);
        let share = if let Fault::Capacity(share) = fault { share } else { 1.0 };
        let real = stage.full * share;
        let level = 0.75 + 0.2 * random.uniform();
        let lead = stage.system.bank.lead_acid.is_some();
        let cells = stage.system.bank.cells;
        Self {
            fault,
            real,
            bypass: if let Fault::Bypass(amps) = fault { amps } else { 0.0 },
            drain: if let Fault::Drain(amps) = fault { amps } else { 0.0 },
            lower: if let Fault::Cell(volts) = fault { volts } else { 0.0 },
            consumption: if let Fault::Consumption(share) = fault { share } else { 1.0 },
            held: real * level,
            counted: stage.full * (level + 0.02 * random.normal()).clamp(0.3, 1.0),
            slow: 0.0,
            lag: 0.0,
            weather: random.normal(),
            climate: 0.12 * random.normal(),
            gain: 0.005 * random.normal(),
            offset: 0.01 * random.normal(),
            steeper: 0.05 * random.normal(),
            shifted: cells * if lead { 0.006 } else { 0.003 } * random.normal(),
            near_tail: 0,
            false_day: 2 + (random.uniform() * 9.0) as u64,
            kept: Kept { readings: Vec::new(), false_full: None, fulls: 0 },
            random,
            stage,
        }
    }

    fn level(&self) -> f64 {
        self.held / self.real
    }

    /// Voltage between the posts while so much flows in.
    fn volts(&self, into: f64) -> f64 {
        let bank = &self.stage.system.bank;
        let curve = |level: f64| bank.open_circuit(level.clamp(0.0, 1.0)).0;
        let open = curve(self.level()) + self.steeper * (curve(self.level()) - curve(0.95));
        let charge_rise = if into > 0.0 && bank.lead_acid.is_some() { 3.0 } else { 1.0 };
        open - self.lower
            + self.shifted
            + self.slow
            + self.lag
            + into * charge_rise * bank.resistance().0
    }

    /// The most that the bank takes \[A\].
    fn takes(&self) -> f64 {
        let left = (1.0 - self.level()).max(0.0);
        let lead = self.stage.system.bank.lead_acid.is_some();
        let (most, per_left) = if lead { (0.2, 1.2) } else { (0.5, 2.0) };
        (self.real * most).min(self.real * per_left * left)
    }

    /// The share of what goes in that stays.
    fn stays(&self) -> f64 {
        let bank = &self.stage.system.bank;
        if bank.lead_acid.is_none() {
            return bank.mean_efficiency;
        }
        // 0.95 up to eight tenths, falling to two thirds at full.
        0.95 - 0.28 * ((self.level() - 0.8) / 0.2).clamp(0.0, 1.0)
    }

    fn day(&mut self, day: u64) {
        self.weather = 0.35 * self.weather + 0.937 * self.random.normal();
        let clear = (0.38 * self.weather - 0.07 + self.climate).exp().min(1.5);
        let habit = self.consumption * (0.1 * self.random.normal() - 0.005).exp();
        let at = |hour: f64, random: &mut Stream, spread: f64| {
            (((hour + spread * random.normal()) * 4.0) as usize).clamp(0, QUARTERS - 1)
        };
        let morning = at(6.75, &mut self.random, 0.4);
        let evening = at(20.75, &mut self.random, 0.6);
        let date = self.stage.start.checked_add_days(Days::new(day)).expect("a date");
        let weekday = date.weekday().num_days_from_monday() as usize;
        for quarter in 0..QUARTERS {
            let cloud = (0.25 * self.random.normal() - 0.031).exp();
            let sun = self.stage.sun[quarter] * clear * cloud;
            let used = self.stage.used[weekday][quarter]
                * habit
                * (0.3 * self.random.normal() - 0.045).exp();
            let through = self.quarter(day, quarter, sun, used);
            if quarter == morning || quarter == evening {
                self.write(day, quarter, through);
            }
        }
    }

    /// One quarter-hour; gives the current through the shunt.
    fn quarter(&mut self, day: u64, quarter: usize, sun: f64, used: f64) -> f64 {
        let lit = self.stage.sun[quarter] > 0.1 * self.stage.peak;
        let spent = self.level() < 0.03;
        let used = if spent { used.min(sun) } else { used };
        let wanted = sun + if lit { self.bypass } else { 0.0 } - used;
        let into = wanted.min(self.takes());
        let past = if lit && into > 0.0 {
            self.bypass.min(into)
        } else if lit && into > wanted - 1e-9 {
            self.bypass
        } else {
            0.0
        };
        let through = into - past;
        let stays = if into > 0.0 { self.stays() } else { 1.0 };
        let drained = if spent { 0.0 } else { self.drain };
        self.held = (self.held + (into * stays - drained) * 0.25).clamp(0.0, self.real);
        let seen = through * (1.0 + self.gain) + self.offset;
        let counts = if seen > 0.0 { self.stage.gauge.efficiency } else { 1.0 };
        self.counted = (self.counted + seen * counts * 0.25).clamp(0.0, self.stage.full);
        let bank = &self.stage.system.bank;
        let aim = into * bank.resistance().0 * if into > 0.0 { 2.0 } else { 1.5 };
        self.slow += (aim - self.slow) * 0.16;
        let width = if bank.lead_acid.is_none() { 0.006 * bank.cells } else { 0.0 };
        let moved = into * 0.25 / self.real / 0.05;
        self.lag = (self.lag + moved * width).clamp(-width, width);
        // Set to full by a charge that the bank no longer takes.
        let full = self.level() > 0.975
            && into >= self.takes() - 1e-9
            && into < 0.04 * self.real
            && into > 0.0;
        self.near_tail = if full { self.near_tail + 1 } else { 0 };
        if self.near_tail == 3 {
            self.counted = self.stage.full;
            self.kept.fulls += 1;
        }
        let shown = self.counted / self.stage.full;
        let may = self.fault == Fault::FalseFull
            && self.kept.false_full.is_none()
            && day >= self.false_day;
        // Late in the day, so that the sun does not make it true before anybody looks.
        if may && quarter >= 62 && lit && shown < 0.88 && shown > 0.5 {
            self.kept.false_full = Some((self.time(day, quarter), 0.0));
            self.counted = self.stage.full;
        }
        through
    }

    fn time(&self, day: u64, quarter: usize) -> NaiveDateTime {
        let date = self.stage.start.checked_add_days(Days::new(day)).expect("a date");
        date.and_hms_opt(0, 0, 0).expect("midnight") + TimeDelta::minutes(15 * quarter as i64 + 15)
    }

    fn write(&mut self, day: u64, quarter: usize, through: f64) {
        let bank = &self.stage.system.bank;
        let noise = if bank.lead_acid.is_some() { 0.002 } else { 0.001 } * bank.cells;
        let mut volts = self.volts(through) + noise * self.random.normal();
        if self.fault == Fault::Slip && day == self.false_day && quarter > 60 {
            volts = if volts > 13.0 { volts - 0.9 } else { volts + 0.9 };
        }
        let amps = through * (1.0 + self.gain) + self.offset;
        // What was missing, by the first reading that has it.
        let missing = 1.0 - (self.stage.full - self.counted) / self.real - self.level();
        if let Some((at, 0.0)) = self.kept.false_full {
            self.kept.false_full = Some((at, missing));
        }
        let shown = (self.counted / self.stage.full * 100.0).round();
        self.kept.readings.push(Reading {
            at: self.time(day, quarter),
            shown: Some(Shown::Percent(Percent(shown))),
            volts: Some(Volts((volts * 100.0).round() / 100.0)),
            amps: Some(Amps((amps * 10.0).round() / 10.0)),
        });
    }
}
