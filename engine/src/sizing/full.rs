//! One size through the whole course by the one step of the simulation: what is suggested is proved by it.

use super::course::Course;
use super::promise::{Counts, Promise};
use super::{Size, Sizing};
use crate::quantity::{Amps, Hours};
use crate::simulate::{Forcing, Prepared, State};

/// Length of a step, but for a generator.
const HOUR: Hours = Hours(1.0);

impl Sizing {
    /// What happens to a plan of this size in each year of a course, by the full step hour by hour, beside a generator by
    /// quarter-hours. A charger that gives `more` round the clock may help.
    #[must_use]
    pub fn proved(&self, course: &Course, size: Size, more: Amps) -> Vec<Counts> {
        let system = size.of(self.system());
        let parts: u32 = if system.generator.is_some() { 4 } else { 1 };
        let banks = self.holds(&system).map(|full| {
            Prepared::new(&system.bank, full, HOUR / f64::from(parts))
                .with_generator(system.generator.as_ref())
        });
        let reserve = system.bank.reserve.ratio();
        let mut counts = vec![Counts::default(); course.years()];
        for stretch in &course.stretches {
            let first = stretch.days.first().map_or(0, |day| day.month());
            let mut state = banks[first].rested(1.0);
            for trial in stretch.days.chunks(course.every.unwrap_or(stretch.days.len()).max(1)) {
                let mut failed = false;
                if let (Some(_), Some(day)) = (course.every, trial.first()) {
                    state = banks[day.month()].rested(1.0);
                }
                for day in trial {
                    let bank = &banks[day.month()];
                    let mut low = false;
                    for forcing in &self.day(*day) {
                        let forcing = sized(forcing, size, more);
                        low |= hour(bank, &mut state, &forcing, parts, reserve);
                    }
                    if course.every.is_none() {
                        counts[stretch.unit][day.month()] += u8::from(low);
                    }
                    failed |= low;
                }
                // A trial that the end of the year cuts short does not count.
                let whole = course.every == Some(trial.len());
                if let (true, true, Some(day)) = (failed, whole, trial.first()) {
                    counts[stretch.unit][day.month()] += 1;
                }
            }
        }
        counts
    }

    /// Chance that a plan of this size keeps a promise (ratio), by the full step.
    #[must_use]
    pub fn chance(&self, course: &Course, promise: &Promise, size: Size, more: Amps) -> f64 {
        promise.chance_of(&self.proved(course, size, more), &course.trials)
    }
}

fn sized(forcing: &Forcing, size: Size, more: Amps) -> Forcing {
    Forcing {
        solar_power: forcing.solar_power * size.array,
        solar_current: forcing.solar_current * size.array,
        shore: forcing.shore + more,
        ..*forcing
    }
}

/// Whether the bank is under its reserve in an hour, or fails its loads.
#[inline]
fn hour(
    bank: &Prepared<'_>,
    state: &mut State,
    forcing: &Forcing,
    parts: u32,
    reserve: f64,
) -> bool {
    let mut low = false;
    for _ in 0..parts {
        let after = bank.step(*state, forcing, &mut ());
        *state = after.state;
        low |= after.state.charge < reserve || after.carried.is_some();
    }
    low
}
