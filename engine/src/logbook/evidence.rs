//! What readings bear witness of: charge that the gauge counted, moments at which it said full, and voltages.
//!
//! A gauge adds up what flows through its shunt, so two percentages say how much that was; but while it says full it cannot count, and
//! when it is set to full it forgets. The voltage between the posts knows nothing of all that: it is the independent witness.

use crate::system::System;

use super::expected::{Expected, Stretch};
use super::reading::{GaugeSetUp, Reading, Readings};

/// Newest readings that are weighed.
pub(super) const MOST_WEIGHED: usize = 90;
/// From this level on the gauge says full (ratio).
pub(super) const SAYS_FULL: f64 = 0.995;
/// From this level on it may have been set to full and fallen since (ratio).
const MAY_HAVE_SAID: f64 = 0.7;
/// Up to this level it says empty (ratio).
const SAYS_EMPTY: f64 = 0.015;
/// How exact full is, when it was shown and when it was passed between two readings (ratio).
const FULL_SHOWN: f64 = 0.015;
const FULL_PASSED: f64 = 0.025;
/// A level that use since charging explains, within this share and this much, was full before it.
const USE_SPREAD: f64 = 1.15;
const LEVEL_SPREAD: f64 = 0.01;
/// Currents over the capacity in an hour at which a voltage still tells the charge: out, and in.
const MOST_OUT: f64 = 0.15;
const MOST_IN: f64 = 0.004;
/// Hours after charging in which the voltage still stands too high.
const FRESH: f64 = 6.0;
/// A voltage within this share of the absorption voltage, with a current near the tail, is that of a full bank.
const AT_ABSORPTION: f64 = 0.985;
const NEAR_TAIL: f64 = 1.5;
/// Below this loads may have been shut off (ratio).
const NEAR_EMPTY: f64 = 0.1;

/// A voltage that tells the charge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Witness {
    /// What was read \[V\].
    pub(super) volts: f64,
    /// Current out of the bank \[A\].
    pub(super) out: f64,
    /// Whether the current was read, and not taken from the plan.
    pub(super) read: bool,
    /// Whether it was charged a short time before.
    pub(super) fresh: bool,
}

/// A reading with a level of the gauge, and the time before it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Mark {
    /// Its place among the readings.
    pub(super) place: usize,
    /// What the gauge showed (ratio).
    pub(super) level: f64,
    /// What the gauge counted since the mark before \[Ah\].
    pub(super) counted: f64,
    /// How exact it is that the bank was full since then, as the gauge says; none where it does not.
    pub(super) claim: Option<f64>,
    /// Whether the count may have jumped since then: set to full, rightly or not, or stopped at nothing.
    pub(super) set: bool,
    /// Whether the gauge stood at nothing, where it cannot count, at this mark or the one before.
    pub(super) bottom: bool,
    /// What the plan uses between the last charging and the mark \[Ah\].
    pub(super) since: f64,
    /// What the plan expects of the time since the mark before.
    pub(super) stretch: Stretch,
    /// The voltage, if it tells the charge.
    pub(super) witness: Option<Witness>,
    /// Whether voltage and current say that the bank is full.
    pub(super) full: bool,
    /// Whether loads may have been shut off: the bank is at its end.
    pub(super) spent: bool,
}

/// All that is weighed.
#[derive(Clone, Debug)]
pub(super) struct Evidence {
    pub(super) marks: Vec<Mark>,
    pub(super) expected: Expected,
    /// What the gauge takes for full \[Ah\].
    pub(super) gauge: GaugeSetUp,
}

impl Evidence {
    pub(super) fn of(
        system: &System,
        expected: Expected,
        gauge: &GaugeSetUp,
        readings: &Readings,
    ) -> Self {
        let all = readings.all();
        let first = all.len().saturating_sub(MOST_WEIGHED);
        let mut marks: Vec<Mark> = Vec::new();
        for (place, reading) in all.iter().enumerate().skip(first) {
            let Some(shown) = reading.shown else { continue };
            let before = marks.last().copied();
            let mark = Looked { system, expected: &expected, gauge, all, before };
            marks.push(mark.at(place, reading, gauge.level(shown)));
        }
        Self { marks, expected, gauge: *gauge }
    }

    /// Counts a level as passed full if the use since charging explains it; consumption is a share of the plan's.
    pub(super) fn claim_passed(&mut self, consumption: f64) {
        for mark in &mut self.marks {
            let passed = USE_SPREAD * consumption * mark.since / self.gauge.capacity.0;
            if mark.set && mark.claim.is_none() && 1.0 - mark.level <= passed + LEVEL_SPREAD {
                mark.claim = Some(FULL_PASSED);
            }
        }
    }

    /// Charge put into the bank before a mark \[Ah\], if consumption is this share of the plan's.
    pub(super) fn put_in(&self, mark: &Mark, consumption: f64) -> f64 {
        if mark.stretch.lit <= 0.0 {
            return 0.0;
        }
        let gained = mark.counted + consumption * mark.stretch.used_unlit;
        if gained > 0.0 { gained / self.gauge.efficiency } else { 0.0 }
    }

    /// Marks before which the gauge may have been set to full.
    pub(super) fn settings(&self) -> impl Iterator<Item = usize> + '_ {
        self.marks.iter().enumerate().filter(|(_, own)| own.set).map(|(at, _)| at)
    }
}

/// What is at hand where a reading is looked at.
struct Looked<'a> {
    system: &'a System,
    expected: &'a Expected,
    gauge: &'a GaugeSetUp,
    all: &'a [Reading],
    before: Option<Mark>,
}

impl Looked<'_> {
    fn at(&self, place: usize, reading: &Reading, level: f64) -> Mark {
        let Self { expected, before, .. } = *self;
        let since = before.and_then(|own| self.all.get(own.place));
        let stretch =
            since.map_or_else(Stretch::default, |own| expected.between(own.at, reading.at));
        let counted = before.map_or(0.0, |own| self.gauge.between(own.level, level).0);
        let charged = before.is_none() || stretch.lit > 0.0;
        let (since, hours) = expected.since_charging(reading.at);
        let claim = (charged && level >= SAYS_FULL).then_some(FULL_SHOWN);
        let bottom = level <= SAYS_EMPTY || before.is_some_and(|own| own.level <= SAYS_EMPTY);
        let high = charged && before.is_some() && level >= MAY_HAVE_SAID;
        let low = |volts| self.system.bank.charge_at(volts) < NEAR_EMPTY;
        Mark {
            place,
            level,
            counted,
            claim,
            set: claim.is_some() || high || bottom,
            bottom,
            since,
            stretch,
            witness: self.witness(reading, hours),
            full: self.is_full(reading),
            spent: level < NEAR_EMPTY || reading.volts.is_some_and(low),
        }
    }

    /// Its voltage, if little enough flows; so many hours after charging.
    fn witness(&self, reading: &Reading, hours: f64) -> Option<Witness> {
        let into = reading.amps.map_or_else(|| self.expected.current(reading.at), |own| own.0);
        let limits = self.expected.full.0;
        let tells = into <= MOST_IN * limits && -into <= MOST_OUT * limits;
        reading.volts.filter(|_| tells).map(|volts| Witness {
            volts: volts.0,
            out: if into < 0.0 { -into } else { 0.0 },
            read: reading.amps.is_some(),
            fresh: hours < FRESH,
        })
    }

    /// Whether voltage and current are those of a full bank.
    fn is_full(&self, reading: &Reading) -> bool {
        let bank = &self.system.bank;
        let held = bank.absorption_voltage(self.expected.temperature) * AT_ABSORPTION;
        let tail = bank.tail_current() * NEAR_TAIL;
        reading.volts.is_some_and(|own| own >= held)
            && reading.amps.is_some_and(|own| own.0 >= 0.0 && own <= tail)
    }
}
