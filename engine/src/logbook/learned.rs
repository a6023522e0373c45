//! What the readings say, figure by figure.

use chrono::NaiveDateTime;

use crate::quantity::{AmpHours, Amps, Celsius, Hours};
use crate::system::System;
use crate::working::{Formula, Source, Trace, term};

use super::consumption::{Days, Nights, days, nights};
use super::estimate::Estimate;
use super::evidence::Evidence;
use super::expected::{Expected, Stretch};
use super::fit::{EFFICIENCY, Puzzle, RESTED, SETTINGS};
use super::posterior::{HIDDEN, Judged, judged};
use super::reading::{GaugeSetUp, Readings};

/// What can be learned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// Use by night over the plan's (ratio).
    NightUse,
    /// Use by day over the plan's (ratio).
    DayUse,
    /// Current that flows by night beyond the plan, as if it flowed always \[A\].
    NightDrain,
    /// Yield of the arrays over the plan's mean weather (ratio).
    Yield,
    /// Capacity between full and empty over the plan's (ratio).
    Capacity,
    /// Share of the charge put in that comes out again (ratio).
    Efficiency,
    /// Current into the bank past the shunt while something charges \[A\]; negative if it is taken out.
    Bypass,
    /// Current out of the bank past the shunt at all times \[A\].
    HiddenDrain,
    /// Charge that was missing when the gauge said full (ratio).
    FalseFull,
    /// Voltage at rest beyond that of the chemistry \[V\].
    RestVoltage,
}

/// One figure that was learned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Learned {
    /// What.
    pub what: What,
    /// How much.
    pub estimate: Estimate,
    /// Whether it is beyond what chance makes of a healthy system.
    pub alarm: bool,
}

/// What readings say about a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Study {
    /// Everything that was looked for.
    pub learned: Vec<Learned>,
    /// The state of charge at the newest reading of the gauge (ratio); none if no reading is of the gauge.
    pub charge_now: Option<Estimate>,
    /// Sums over the nights, for the working: counted out of the bank, from the sun instead, planned \[Ah\].
    pub night_sums: [AmpHours; 3],
    /// Mean discharge current and temperature of the bank by the plan, for its capacity.
    pub conditions: (Amps, Celsius),
    /// Hours of a day in which something charges, by the plan \[h\].
    pub charging_hours: f64,
    /// The capacity of the plan in the months of the readings.
    pub full: AmpHours,
    /// When the gauge falsely said full, if it did.
    pub false_full: Option<NaiveDateTime>,
    /// Nights that were weighed.
    pub nights: usize,
    /// Days that ended less than full.
    pub open_days: usize,
    /// Times that the gauge said full.
    pub fulls: usize,
    /// Voltages that tell the charge.
    pub voltages: usize,
}

/// Standard deviations from the plan at which chance is no longer believed.
const ALARM: f64 = 3.3;
/// How unsure it is how long something charges, and what stays of it (ratio).
const HOURS_UNSURE: f64 = 0.2;
/// The same of what goes out at all times: it also moves what the gauge calls full.
const DRAIN_UNSURE: f64 = 0.6;
/// What is known before shrinks at least to this share if the readings tell something (ratio).
const TOLD: f64 = 0.6;

impl Study {
    /// What readings say; `spread` is that of the daily clearness of each month.
    #[must_use]
    pub fn of(
        system: &System,
        spread: &[f64; 12],
        gauge: &GaugeSetUp,
        readings: &Readings,
    ) -> Self {
        let expected = Expected::of(system, spread, readings);
        let full = expected.full;
        let mut evidence = Evidence::of(system, expected, gauge, readings);
        let least = readings.all().iter().filter_map(|own| own.amps).filter(|own| own.0 < 0.0);
        let least = least.map(|own| -own.0).reduce(f64::min);
        let nights = nights(&evidence, least);
        evidence.claim_passed(nights.share.best);
        let days = days(&evidence, &nights);
        let mut study = Self {
            learned: Vec::new(),
            charge_now: None,
            night_sums: [nights.counted, nights.solar, nights.planned].map(AmpHours),
            conditions: (evidence.expected.current, evidence.expected.temperature),
            charging_hours: charging_hours(&evidence),
            full,
            false_full: None,
            nights: nights.count,
            open_days: days.open,
            fulls: evidence.marks.iter().filter(|own| own.claim.is_some()).count(),
            voltages: evidence.marks.iter().filter(|own| own.witness.is_some()).count(),
        };
        study.by_count(&nights, &days);
        study.by_voltage(system, &evidence, &nights, readings);
        study
    }

    fn add(&mut self, what: What, estimate: Estimate, alarm: bool) {
        self.learned.push(Learned { what, estimate, alarm });
    }

    /// One figure.
    #[must_use]
    pub fn get(&self, what: What) -> Option<&Learned> {
        self.learned.iter().find(|own| own.what == what)
    }

    /// What the count of the gauge says.
    fn by_count(&mut self, nights: &Nights, days: &Days) {
        let off = nights.share.best - 1.0;
        let alarm = nights.count > 2 && off.abs() > ALARM * nights.error && off.abs() > 0.05;
        self.add(What::NightUse, nights.share, alarm);
        self.add(What::DayUse, days.share, false);
        let per_hour = if nights.hours > 0.0 { nights.planned / nights.hours } else { 0.0 };
        let drain = |share: f64| (share - 1.0) * per_hour;
        let share = nights.share;
        let most = nights.least_current.unwrap_or(f64::MAX);
        let drain = Estimate {
            best: drain(share.best),
            low: drain(share.low),
            high: drain(share.high),
            told: false,
        };
        self.add(What::NightDrain, drain.within(0.0, most), false);
        let wide = (libm::log(days.yielded.high / days.yielded.low)) / 3.29;
        let both = (wide * wide + days.by_weather * days.by_weather).sqrt();
        let low = -libm::log(days.yielded.best) > ALARM * both;
        self.add(What::Yield, days.yielded, low);
    }

    /// What the voltages say against the count.
    fn by_voltage(
        &mut self,
        system: &System,
        evidence: &Evidence,
        nights: &Nights,
        readings: &Readings,
    ) {
        let puzzle = Puzzle::new(&system.bank, evidence, nights.share.best);
        let priors = puzzle.priors();
        let Some(own) = judged(&puzzle) else { return };
        if !evidence.marks.is_empty() {
            let (charge, spread) = own.posterior.charge_now(&puzzle);
            self.charge_now = Some(Estimate::normal(charge, spread, true).within(0.0, 1.0));
        }
        let (capacity, z) = own.posterior.capacity();
        self.add(What::Capacity, capacity, z < -2.5 && !own.supposed.cell);
        let (mean, spread) = own.posterior.of_unknown(EFFICIENCY);
        let before = priors.get(EFFICIENCY).map_or(1.0, |own| own.spread);
        let told = spread < TOLD * before;
        let (mean, spread) = puzzle.efficiency((mean, spread));
        let shifted = Estimate::normal(mean, spread, told);
        self.add(What::Efficiency, shifted.within(0.0, 1.0), false);
        for (way, what) in [What::Bypass, What::HiddenDrain].into_iter().enumerate() {
            let (mean, spread) = own.hidden[way];
            let told = spread < TOLD * puzzle.hidden_spread(HIDDEN[way]);
            let unsure = if what == What::Bypass { HOURS_UNSURE } else { DRAIN_UNSURE };
            let hours = unsure * mean;
            let estimate = Estimate::normal(mean, (spread * spread + hours * hours).sqrt(), told);
            // A charger that runs day and night would be in the plan.
            let least = if what == What::HiddenDrain { 0.0 } else { f64::MIN };
            self.add(what, estimate.within(least, f64::MAX), own.supposed.hidden[way]);
        }
        let (mean, spread) = own.posterior.of_unknown(RESTED);
        let before = priors.get(RESTED).map_or(1.0, |own| own.spread);
        let low = own.supposed.cell || mean < -ALARM * before;
        self.add(What::RestVoltage, Estimate::normal(mean, spread, spread < TOLD * before), low);
        self.false_full(&own, evidence, readings);
    }

    fn false_full(&mut self, own: &Judged, evidence: &Evidence, readings: &Readings) {
        let estimate = match own.supposed.false_full {
            Some((first, _)) => {
                let mark = evidence.settings().nth(first).and_then(|at| evidence.marks.get(at));
                let at = mark.and_then(|mark| readings.all().get(mark.place));
                self.false_full = at.map(|own| own.at);
                let (mean, spread) = own.posterior.of_unknown(SETTINGS + first);
                Estimate::normal(mean, spread, true).within(0.0, 1.0)
            }
            None => Estimate { best: 0.0, low: 0.0, high: own.unnoticed, told: self.fulls > 0 },
        };
        self.add(What::FalseFull, estimate.within(0.0, 1.0), own.supposed.false_full.is_some());
    }
}

/// Hours of a day in which something charges, over all stretches.
fn charging_hours(evidence: &Evidence) -> f64 {
    let sum =
        |of: fn(&Stretch) -> f64| evidence.marks.iter().map(|own| of(&own.stretch)).sum::<f64>();
    24.0 * sum(|own| own.lit) / f64::max(sum(|own| own.hours), 1.0)
}

impl Study {
    /// Works a figure out with its steps: use by night, capacity, what passes the shunt in a day. Nothing for the others.
    ///
    /// `system` must be the one that the study is of.
    pub fn work(&self, what: What, system: &System, trace: &mut impl Trace) -> Option<f64> {
        let best = self.get(what)?.estimate.best;
        let fitted = |value: f64| term(value).from(Source::TierneyKadane);
        match what {
            What::NightUse => {
                let [counted, solar, planned] = self.night_sums;
                let inputs = [
                    term(counted).from(Source::Readings),
                    term(solar).from(Source::Steps),
                    term(planned).from(Source::Steps),
                ];
                (planned.0 > 0.0).then(|| trace.step(Formula::UseByReadings, best, &inputs))
            }
            What::Capacity => {
                let (current, temperature) = self.conditions;
                let full = system.bank.capacity(current, temperature, trace).full;
                let inputs = [fitted(best), term(full)];
                Some(trace.step(Formula::CapacityByReadings, full * best, &inputs).0)
            }
            What::Bypass | What::HiddenDrain => {
                let day = if what == What::Bypass { self.charging_hours } else { 24.0 };
                let (current, hours) = (Amps(best), Hours(day));
                let inputs =
                    [term(current).from(Source::TierneyKadane), term(hours).from(Source::Steps)];
                Some(trace.step(Formula::PastShunt, current * hours, &inputs).0)
            }
            _ => None,
        }
    }
}
