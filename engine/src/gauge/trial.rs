//! A gauge taken through a course: what it would show beside the truth, and where it would be fooled.
//!
//! **Method.** The count follows the current that passes the shunt, quarter-hour by quarter-hour. A jump to full is *wrong* where truly
//! more than [`MARGIN`] is missing, a fall to nothing where truly more than that is left. The drift is how far the count moves against the
//! truth in a day, without what setting itself to full takes away at once.

use chrono::Datelike;

use super::counter::{Counter, Gauge};
use super::course::Course;
use crate::quantity::{Amps, Hours, Percent};
use crate::simulate::STEP;
use crate::system::System;

/// More than this beside the truth is wrong (ratio): a choice, larger than what a good gauge strays in a cycle.
pub const MARGIN: f64 = 0.1;
/// Quarter-hours of an hour.
const PARTS: usize = 4;
/// Hours of a mean month.
const MONTH: Hours = Hours(crate::bank::MONTH_HOURS);

/// What a gauge shows at the end of an hour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shown {
    /// State of charge that it shows (ratio).
    pub shown: f64,
    /// State of charge by amp-hours (ratio).
    pub truth: f64,
    /// Time left that it shows; none while it shows none.
    pub gauge_left: Option<Hours>,
    /// Time until the reserve is truly reached; none where it is not, to the end of the course.
    pub plan_left: Option<Hours>,
}

/// Something that happened to the count.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Jump {
    /// The quarter-hour of the course.
    pub place: usize,
    /// State of charge by amp-hours then (ratio).
    pub truth: f64,
}

/// What came of a gauge in a course.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Trial {
    /// Hour by hour.
    pub hours: Vec<Shown>,
    /// Each time it set itself to full, after a time in which it had not.
    pub fulls: Vec<Jump>,
    /// Each time from which it showed nothing though there was more.
    pub wrong_empties: Vec<Jump>,
    /// The most that it showed over the truth (ratio).
    pub over: f64,
    /// The most that it showed under it (ratio).
    pub under: f64,
    /// Mean of how far it was off, either way (ratio).
    pub mean_off: f64,
    /// How far its count moves against the truth in a day; upwards if positive.
    pub drift: Percent,
    /// How far what it shows moves for each part that the truth moves (ratio): 1 if it is right, less if it is slow, negative if it counts
    /// backwards.
    pub pace: f64,
    /// Charge that went out over charge that came in, as it was read between the first and the last time that it set itself to full: what
    /// an owner can find the efficiency by.
    pub efficiency: Option<Percent>,
    /// Time since it was last set to full.
    pub since_full: Hours,
    /// The longest of such times.
    pub longest_since_full: Hours,
}

/// What was read to go in and out since the first time at full.
#[derive(Clone, Copy, Debug, Default)]
struct InAndOut {
    /// In and out so far, once it has been full.
    now: Option<(f64, f64)>,
    /// The same when it was last full.
    last: (f64, f64),
}

impl InAndOut {
    fn add(&mut self, read: Amps) {
        if let Some((into, out)) = &mut self.now {
            *(if read.0 > 0.0 { into } else { out }) += read.0.abs();
        }
    }

    fn at_full(&mut self) {
        self.last = *self.now.get_or_insert_default();
    }

    fn efficiency(&self) -> Option<Percent> {
        let (into, out) = self.last;
        (into > 0.0).then(|| Percent::of_ratio(out / into))
    }
}

impl Trial {
    /// Takes a gauge through a course, from a quarter-hour of it on.
    #[must_use]
    pub fn of(course: &Course, gauge: &Gauge, from: usize) -> Self {
        let left = course.times_left();
        let mut trial = Self::default();
        let mut counter = Counter::at(gauge.start.unwrap_or(course.before(from)));
        let (mut off_sum, mut moved, mut alike, mut squares) = (0.0, 0.0, 0.0, 0.0);
        let (mut was_full, mut was_empty) = (false, false);
        let mut sums = InAndOut::default();
        let rest = course.moments.get(from..).unwrap_or_default();
        for (at, moment) in (from..).zip(rest) {
            let before = counter.shown;
            let set = !moment.off
                && counter.step(gauge, moment.passes(&gauge.unseen), moment.volts, STEP);
            if moment.off {
                counter.pause(STEP);
            }
            let off = counter.shown - moment.charge;
            trial.longest_since_full = trial.longest_since_full.at_least(counter.since_full);
            let jump = Jump { place: at, truth: moment.charge };
            sums.add(counter.read);
            if set && !was_full {
                trial.fulls.push(jump);
                sums.at_full();
            }
            if !set {
                let truly = moment.charge - course.before(at);
                let shown = counter.shown - before;
                moved += shown - truly;
                alike += shown * truly;
                squares += truly * truly;
            }
            let empty = counter.shown <= 0.0 && moment.charge > MARGIN;
            if empty && !was_empty {
                trial.wrong_empties.push(jump);
            }
            (was_full, was_empty) = (set, empty);
            trial.over = trial.over.max(off);
            trial.under = trial.under.max(-off);
            off_sum += off.abs();
            if at % PARTS == PARTS - 1 {
                let (shown, truth) = (counter.shown, moment.charge);
                let gauge_left = counter.time_left(gauge, &mut ());
                let plan_left = left.get(at).copied().flatten();
                trial.hours.push(Shown { shown, truth, gauge_left, plan_left });
            }
        }
        let count = rest.len() as f64;
        if count > 0.0 {
            trial.mean_off = off_sum / count;
            trial.drift = Percent::of_ratio(moved / (count * STEP.0 / 24.0));
        }
        trial.pace = if squares > 0.0 { alike / squares } else { 1.0 };
        trial.efficiency = sums.efficiency();
        trial.since_full = counter.since_full;
        trial
    }

    /// Each time it set itself to full though more than [`MARGIN`] was missing.
    pub fn wrong_fulls(&self) -> impl Iterator<Item = &Jump> {
        self.fulls.iter().filter(|jump| jump.truth < 1.0 - MARGIN)
    }

    /// How often it set itself to full in a mean month.
    #[must_use]
    pub fn fulls_a_month(&self) -> f64 {
        let time = Hours(self.hours.len() as f64);
        if time.0 > 0.0 { self.fulls.len() as f64 * (MONTH / time) } else { 0.0 }
    }

    /// How often in each month of the calendar, January first; `system` must be that of the course.
    #[must_use]
    pub fn fulls_by_month(&self, system: &System) -> [u16; 12] {
        let mut months = [0; 12];
        for full in &self.fulls {
            months[Course::ends(system, full.place).month0() as usize] += 1;
        }
        months
    }

    /// The least that was truly there when it set itself to full (ratio).
    #[must_use]
    pub fn emptiest_full(&self) -> Option<f64> {
        self.fulls.iter().map(|jump| jump.truth).reduce(f64::min)
    }

    /// The hour in which the bank was emptiest; the first of several.
    #[must_use]
    pub fn at_lowest(&self) -> Option<&Shown> {
        let emptier = |one: &&Shown, other: &&Shown| one.truth.total_cmp(&other.truth);
        self.hours.iter().min_by(emptier)
    }
}
