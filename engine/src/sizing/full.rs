//! One size through the whole course by the one step of the simulation: what is suggested is proved by it.

use sunlarder_lanes::Counts;

use super::course::{Course, Stretch};
use super::promise::Promise;
use super::{MONTHS, Size, Sizing};
use crate::quantity::{Amps, Hours};
use crate::simulate::{Forcing, Prepared, State};
use crate::sky::DAYS_PER_YEAR;

/// Length of a step, but for a generator.
const HOUR: Hours = Hours(1.0);

/// Days of a piece of work: some milliseconds.
const PIECE_DAYS: usize = 3 * DAYS_PER_YEAR;

/// A size on its way through a course: piece by piece, so that it can be given up between them.
#[derive(Clone, Debug, PartialEq)]
pub struct Proof {
    /// Which size.
    pub size: Size,
    /// What a charger gives round the clock beside it.
    pub more: Amps,
    /// What happened in each year so far.
    pub counts: Vec<Counts>,
    next: usize,
}

impl Proof {
    /// One that has yet to begin.
    #[must_use]
    pub fn new(course: &Course, size: Size, more: Amps) -> Self {
        Self { size, more, counts: vec![Counts::default(); course.years()], next: 0 }
    }

    /// Goes through the next years, by the full step hour by hour, beside a generator by quarter-hours; whether there were any.
    pub fn advance(&mut self, sizing: &Sizing, course: &Course) -> bool {
        let piece = course.piece(self.next, PIECE_DAYS);
        if piece.is_empty() {
            return false;
        }
        let system = self.size.of(sizing.system());
        let parts: u32 = if system.generator.is_some() { 4 } else { 1 };
        let banks = sizing.holds(&system).map(|full| {
            Prepared::new(&system.bank, full, HOUR / f64::from(parts))
                .with_generator(system.generator.as_ref())
        });
        let through = Through { sizing, banks, parts, reserve: system.bank.reserve.ratio() };
        for stretch in &course.stretches[piece.clone()] {
            through.stretch(self, stretch, course.every);
        }
        self.next = piece.end;
        true
    }

    /// Whether it has gone through all of it.
    #[must_use]
    pub fn is_whole(&self, course: &Course) -> bool {
        self.next >= course.stretches.len()
    }

    /// Share of it that is done.
    #[must_use]
    pub fn done(&self, course: &Course) -> f64 {
        self.next as f64 / (course.stretches.len() as f64).max(1.0)
    }
}

/// A bank of one size, ready to go through stretches.
struct Through<'a> {
    sizing: &'a Sizing,
    banks: [Prepared<'a>; MONTHS],
    parts: u32,
    reserve: f64,
}

impl Through<'_> {
    /// Counts in a proof what happens in a stretch.
    fn stretch(&self, proof: &mut Proof, stretch: &Stretch, every: Option<usize>) {
        let counts = &mut proof.counts[stretch.unit];
        let first = stretch.days.first().map_or(0, |day| day.month());
        let mut state = self.banks[first].rested(1.0);
        for trial in stretch.days.chunks(every.unwrap_or(stretch.days.len()).max(1)) {
            let mut failed = false;
            if let (Some(_), Some(day)) = (every, trial.first()) {
                state = self.banks[day.month()].rested(1.0);
            }
            for day in trial {
                let bank = &self.banks[day.month()];
                let mut low = false;
                for forcing in &self.sizing.day(*day) {
                    let forcing = sized(forcing, proof.size, proof.more);
                    low |= hour(bank, &mut state, &forcing, self.parts, self.reserve);
                }
                if every.is_none() {
                    counts[day.month()] += u8::from(low);
                }
                failed |= low;
            }
            // A trial that the end of the year cuts short does not count.
            let whole = every == Some(trial.len());
            if let (true, true, Some(day)) = (failed, whole, trial.first()) {
                counts[day.month()] += 1;
            }
        }
    }
}

impl Sizing {
    /// What happens to a plan of this size in each year of a course, by the full step. A charger that gives `more` round the clock may
    /// help.
    #[must_use]
    pub fn proved(&self, course: &Course, size: Size, more: Amps) -> Vec<Counts> {
        let mut proof = Proof::new(course, size, more);
        while proof.advance(self, course) {}
        proof.counts
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
