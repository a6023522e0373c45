//! What a plan promises, and how likely it keeps it.
//!
//! **Question answered:** in how many of the weathers that may come is it long enough?
//!
//! **Method.** A *short day* is one on which the bank sinks under its reserve or fails a load. Every promise is judged over weather years of
//! which each has a climate of its own that might be the true one, and only by the months that count. Ten years are ten of those
//! years drawn one by one, exactly: their sums are folded together.
//!
//! **How sure.** A share of 20 years is known to within some 5 to 11 %; [`error`] says how far. Ten years drawn from ten climates are
//! more alike than ten years of one climate: where a promise is mostly kept its chance is a little less than said here, where it
//! is mostly broken a little more.

use sunlarder_lanes::{Counting, Counts};

use crate::document::Months;
use crate::quantity::Percent;

/// What is promised.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// At most so many short days in ten years.
    ShortDays {
        /// So many.
        most: u16,
    },
    /// Through every month that counts without a short day.
    Through,
    /// So many days without any sun, from full.
    WithoutSun {
        /// So many.
        days: u16,
    },
    /// A trip of so many days in weather as it comes, from full.
    Trip {
        /// So many.
        days: u16,
    },
}

/// Fewest and most days of a trip or without sun, and most short days in ten years.
pub const DAYS: (u16, u16) = (1, 60);
/// See there.
pub const SHORT_DAYS: (u16, u16) = (0, 1000);
/// Least and greatest chance that can be asked for \[%\].
pub const CHANCE: (f64, f64) = (1.0, 100.0);

/// A promise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Promise {
    /// What.
    pub kind: Kind,
    /// With what chance at least.
    pub chance: Percent,
    /// The months that count.
    pub season: Months,
}

impl Default for Promise {
    /// Through the year without a short day, with a chance of 90 %.
    fn default() -> Self {
        Self { kind: Kind::Through, chance: Percent(90.0), season: Months::ALL }
    }
}

/// Less than any difference between two chances.
const ROUNDING: f64 = 1e-9;

impl Promise {
    /// The same with the chance that is asked for where nobody stated one: no year may fail where a life may depend on it.
    #[must_use]
    pub fn with_usual_chance(self, vital: bool) -> Self {
        let chance = if vital { Percent(CHANCE.1) } else { Self::default().chance };
        Self { chance, ..self }
    }

    /// Days after which every trial begins anew; none if years are gone through.
    #[must_use]
    pub fn trial_days(&self) -> Option<usize> {
        match self.kind {
            Kind::ShortDays { .. } | Kind::Through => None,
            Kind::WithoutSun { days } | Kind::Trip { days } => Some(days.max(1).into()),
        }
    }

    /// How it wants things counted: once a year is lost, more of it is of no account.
    pub(super) fn counting(&self) -> Counting {
        let enough = match self.kind {
            Kind::Through => 1,
            Kind::ShortDays { most } => most.saturating_add(1),
            Kind::WithoutSun { .. } | Kind::Trip { .. } => 0,
        };
        let trial_days = self.trial_days().unwrap_or_default();
        Counting { trial_days, months: self.season.0, enough }
    }

    /// Whether the trials are without any sun.
    #[must_use]
    pub fn is_dark(&self) -> bool {
        matches!(self.kind, Kind::WithoutSun { .. })
    }

    /// Sum over the months that count.
    fn counted(&self, counts: &Counts) -> u32 {
        let months = (0u8..).zip(counts).filter(|(month, _)| self.season.has(*month));
        months.map(|(_, count)| u32::from(*count)).sum()
    }

    /// Chance of keeping it (ratio), from what happened in each year and how many trials there were.
    #[must_use]
    pub fn chance_of(&self, years: &[Counts], trials: &[Counts]) -> f64 {
        let sums: Vec<u32> = years.iter().map(|counts| self.counted(counts)).collect();
        match self.kind {
            Kind::Through => {
                let kept = sums.iter().filter(|sum| **sum == 0).count();
                kept as f64 / (sums.len() as f64).max(1.0)
            }
            Kind::ShortDays { most } => ten_years(&sums, most.into()),
            Kind::WithoutSun { .. } | Kind::Trip { .. } => {
                let all: u32 = trials.iter().map(|counts| self.counted(counts)).sum();
                1.0 - f64::from(sums.iter().sum::<u32>()) / f64::from(all.max(1))
            }
        }
    }

    /// Short days a year, or share of trials that failed: what tells two plans apart that both keep it, or both do not.
    #[must_use]
    pub fn shortage_of(&self, years: &[Counts], trials: &[Counts]) -> f64 {
        let sum: u32 = years.iter().map(|counts| self.counted(counts)).sum();
        let of = match self.trial_days() {
            None => years.len() as u32,
            Some(_) => trials.iter().map(|counts| self.counted(counts)).sum(),
        };
        f64::from(sum) / f64::from(of.max(1))
    }

    /// Whether a chance (ratio) keeps it.
    #[must_use]
    pub fn is_kept_by(&self, chance: f64) -> bool {
        chance + ROUNDING >= self.chance.ratio()
    }
}

/// Chance that ten years, each drawn from these, have at most so many short days in all.
fn ten_years(sums: &[u32], most: usize) -> f64 {
    let share = 1.0 / (sums.len() as f64).max(1.0);
    let mut chances = vec![0.0; most + 1];
    chances[0] = 1.0;
    for _ in 0..10 {
        let mut next = vec![0.0; most + 1];
        for sum in sums {
            let sum = (*sum as usize).min(most + 1);
            for (to, from) in next[sum.min(most)..].iter_mut().zip(&chances) {
                *to += if sum > most { 0.0 } else { from * share };
            }
        }
        chances = next;
    }
    chances.iter().sum()
}

/// How far a chance (ratio) from so many years may be off by luck alone: half the width of Wilson's interval of one standard deviation.
#[must_use]
pub fn error(chance: f64, years: usize) -> f64 {
    let count = (years as f64).max(1.0);
    let spread = chance * (1.0 - chance) / count + 0.25 / (count * count);
    libm::sqrt(f64::max(spread, 0.0)) / (1.0 + 1.0 / count)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn year(december: u8, june: u8) -> Counts {
        let mut counts = [0; 12];
        (counts[11], counts[5]) = (december, june);
        counts
    }

    #[test]
    fn a_year_is_kept_without_a_short_day_in_the_months_that_count() {
        let years = [year(0, 0), year(3, 0), year(0, 1), year(0, 0)];
        let all = Promise::default();
        assert_eq!(all.chance_of(&years, &[]), 0.5);
        let june = Promise { season: Months(1 << 5), ..all };
        assert_eq!(june.chance_of(&years, &[]), 0.75);
        assert!(!june.is_kept_by(0.75) && june.is_kept_by(0.9));
        assert_eq!(all.shortage_of(&years, &[]), 1.0);
    }

    #[test]
    fn ten_years_add_up() {
        // Half the years have one short day: the sum of ten is binomial.
        let years = [year(1, 0), year(0, 0)];
        let of = |most| {
            let promise = Promise { kind: Kind::ShortDays { most }, ..Promise::default() };
            promise.chance_of(&years, &[])
        };
        assert!((of(0) - 1.0 / 1024.0).abs() < 1e-12);
        assert!((of(1) - 11.0 / 1024.0).abs() < 1e-12);
        assert!((of(5) - 638.0 / 1024.0).abs() < 1e-12);
        assert_eq!(of(10), 1.0);
    }

    #[test]
    fn trials_are_counted_in_the_season_alone() {
        let trip =
            Promise { kind: Kind::Trip { days: 7 }, season: Months(1 << 11), ..Promise::default() };
        let trials = [year(4, 4), year(4, 4)];
        assert_eq!(trip.chance_of(&[year(1, 4), year(1, 4)], &trials), 0.75);
        assert_eq!(trip.chance_of(&[year(0, 0); 2], &[year(0, 0); 2]), 1.0);
    }

    #[test]
    fn few_years_leave_a_wide_error() {
        assert!((error(0.5, 20) - 0.109).abs() < 2e-3, "{}", error(0.5, 20));
        assert!(error(1.0, 20) > 0.02 && error(0.9, 400) < 0.016);
    }
}
