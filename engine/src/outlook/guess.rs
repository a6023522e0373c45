//! Guesses of people who have not seen the answer, and how near they came.
//!
//! **Question answered:** what did they think, and how far was it from what the plan comes to?
//!
//! **Method.** The median of all guesses, straight between the two in the middle; a guess is near if it misses the answer by no more
//! than [`NEAR`] of it, and of a month, if it is that month.

use super::{HORIZON_DAYS, Outlook};

/// How far a guess may be from the answer and still count as near (ratio).
pub const NEAR: f64 = 0.2;

/// What people guess.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Guessed {
    /// Hours from the start until the reserve is reached, in the mean weather.
    Hours,
    /// Amp-hours that are used on an average day in the month of the start.
    Charge,
    /// The first month, from that of the start on, that does not keep up: January is 0, and 12 is none.
    Month,
}

/// The months that [`Guessed::Month`] may be, and one for none.
const MONTHS: f64 = 12.0;
/// The most hours and amp-hours that are taken as a guess.
const MOST: f64 = 100_000.0;

impl Guessed {
    /// All in the order of their numbers.
    pub const ALL: [Self; 3] = [Self::Hours, Self::Charge, Self::Month];

    /// The largest guess that is taken; the least is nothing.
    #[must_use]
    pub const fn most(self) -> f64 {
        match self {
            Self::Hours | Self::Charge => MOST,
            Self::Month => MONTHS,
        }
    }

    /// Whether a guess lies within its range.
    #[must_use]
    pub fn holds(self, guess: f64) -> bool {
        guess >= 0.0 && guess <= self.most()
    }

    /// What the plan comes to; none where the reserve is not reached within the longest run.
    #[must_use]
    pub fn answer(self, outlook: &Outlook) -> Option<f64> {
        match self {
            Self::Hours => outlook.run.reserve_at.map(|at| at.0),
            Self::Charge => Some(outlook.budget.total.0),
            Self::Month => {
                let kept = outlook.months_kept();
                let months = (0..12).map(|ahead| (outlook.month + ahead) % 12);
                let short = months.into_iter().find(|month| kept >> month & 1 == 0);
                Some(short.map_or(MONTHS, |month| month as f64))
            }
        }
    }

    /// Whether a guess is near the answer. Where the reserve is never reached, that is one beyond the longest run.
    #[must_use]
    pub fn near(self, guess: f64, answer: Option<f64>) -> bool {
        match (self, answer) {
            (_, None) => guess >= HORIZON_DAYS as f64 * 24.0,
            (Self::Month, Some(answer)) => guess == answer,
            (_, Some(answer)) => (guess - answer).abs() <= NEAR * answer,
        }
    }
}

/// The one in the middle of some guesses, which are put in order; none of none.
#[must_use]
pub fn median(guesses: &mut [f64]) -> Option<f64> {
    guesses.sort_unstable_by(f64::total_cmp);
    let (low, high) =
        (guesses.get(guesses.len().checked_sub(1)? / 2)?, guesses.get(guesses.len() / 2)?);
    Some((low + high) / 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Array, Document, Load};
    use crate::place::Climate;
    use crate::system::System;

    fn outlook(plan: &Document) -> Outlook {
        Outlook::of(&System::assemble(plan, Climate::embedded(), &mut ()).unwrap())
    }

    #[test]
    fn the_middle_is_the_middle() {
        assert_eq!(median(&mut [9.0, 1.0, 4.0]), Some(4.0));
        assert_eq!(median(&mut [9.0, 1.0, 4.0, 6.0]), Some(5.0));
        assert_eq!(median(&mut [2.0]), Some(2.0));
        assert_eq!(median(&mut []), None);
    }

    #[test]
    fn near_is_within_a_fifth_and_a_month_is_itself() {
        for (guess, near) in [(80.0, true), (120.0, true), (79.9, false), (120.1, false)] {
            assert_eq!(Guessed::Hours.near(guess, Some(100.0)), near, "{guess}");
        }
        assert!(Guessed::Month.near(3.0, Some(3.0)) && !Guessed::Month.near(4.0, Some(3.0)));
        assert!(Guessed::Hours.near(800.0, None) && !Guessed::Hours.near(700.0, None));
    }

    #[test]
    fn only_sound_guesses_are_taken() {
        for wrong in [-1.0, f64::NAN, 1e300] {
            assert!(Guessed::ALL.iter().all(|own| !own.holds(wrong)), "{wrong}");
        }
        assert!(Guessed::Month.holds(12.0) && !Guessed::Month.holds(13.0));
    }

    #[test]
    fn answers_are_those_of_the_outlook() {
        let mut plan = Document { loads: vec![Load::default()], ..Document::default() };
        let empty = outlook(&plan);
        assert_eq!(Guessed::Hours.answer(&empty), empty.run.reserve_at.map(|at| at.0));
        assert_eq!(Guessed::Charge.answer(&empty), Some(empty.budget.total.0));
        // Nothing comes in, so that the month of the start already falls short.
        assert_eq!(Guessed::Month.answer(&empty), Some(empty.month as f64));
        plan.arrays = vec![Array { module_w: 2000.0, ..Array::default() }];
        plan.arrays[0].controller.limit_a = 200.0;
        let sunny = outlook(&plan);
        assert_eq!(sunny.months_kept(), 0xfff);
        assert_eq!(Guessed::Month.answer(&sunny), Some(12.0));
    }
}
