//! What sizes have to say: promises, what keeps them, and what that takes; the words are in the folder of each language.

use super::{Language, Words};
use crate::document::Months;
use crate::quantity::{AmpHours, Amps, Degrees, Percent, Watts};
use crate::sizing::{Arrival, Change, Promise};

/// A bank and an array, as amounts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sized {
    /// Rated charge of the bank.
    pub charge: AmpHours,
    /// Power of all arrays.
    pub power: Watts,
}

impl Language {
    /// What a short day is.
    #[must_use]
    pub fn short_day(self) -> &'static str {
        speak!(self, sizing::SHORT_DAY)
    }

    /// That a life may depend on the plan, and what that asks for.
    #[must_use]
    pub fn life_depends(self) -> &'static str {
        speak!(self, sizing::LIFE_DEPENDS)
    }

    /// The months that count, behind a comma.
    #[must_use]
    pub fn season(self, season: Months) -> String {
        speak!(self, sizing::season(season))
    }
}

impl Words {
    /// A promise as a sentence.
    #[must_use]
    pub fn promise(self, promise: &Promise) -> String {
        speak!(self.language, sizing::promise(self, promise))
    }

    /// How likely a plan keeps it as it stands, and how far luck alone may move that (ratios).
    #[must_use]
    pub fn standing_chance(self, chance: f64, error: f64, years: usize) -> String {
        speak!(self.language, sizing::standing_chance(self, chance, error, years))
    }

    /// A chance (ratio) as a whole percentage.
    #[must_use]
    pub fn chance(self, chance: f64) -> String {
        format!("{}\u{a0}%", self.decimal(chance * 100.0, 0))
    }

    /// What to make of bank and array; none if no size that was looked at is enough.
    #[must_use]
    pub fn suggested_size(self, size: Option<Sized>) -> String {
        speak!(self.language, sizing::suggested_size(self, size))
    }

    /// The smallest bank beside the array as it is.
    #[must_use]
    pub fn smallest_bank(self, size: Option<Sized>) -> String {
        speak!(self.language, sizing::smallest_bank(self, size))
    }

    /// The smallest array beside the bank as it is.
    #[must_use]
    pub fn smallest_array(self, size: Option<Sized>) -> String {
        speak!(self.language, sizing::smallest_array(self, size))
    }

    /// Hours a week of a charger that close the gap.
    #[must_use]
    pub fn charger_hours(self, hours: Option<u32>, charger: Amps) -> String {
        speak!(self.language, sizing::charger_hours(self, hours, charger))
    }

    /// The tilt that brings most in a month, facing the equator, and the chance of the promise with it (ratio).
    #[must_use]
    pub fn tilt_for(self, tilt: Degrees, south: bool, month: usize, chance: f64) -> String {
        speak!(self.language, sizing::tilt_for(self, tilt, south, month, chance))
    }

    /// A change that may help, by the name of what it changes.
    #[must_use]
    pub fn change(self, change: &Change, name: &str) -> String {
        speak!(self.language, sizing::change(self, change, name))
    }

    /// Two changes at the same time, as they were said.
    #[must_use]
    pub fn both_changes(self, first: &str, second: &str) -> String {
        speak!(self.language, sizing::both_changes(first, second))
    }

    /// What the promise comes to with another reserve, which is less than the plan's or more; the chance is a ratio.
    #[must_use]
    pub fn reserve_kept(self, to: Percent, less: bool, chance: f64) -> String {
        speak!(self.language, sizing::reserve_kept(self, to, less, chance))
    }

    /// How late one can arrive with the bank at its reserve and still leave with a full one.
    #[must_use]
    pub fn arrival(self, arrival: &Arrival) -> String {
        speak!(self.language, sizing::arrival(self, arrival))
    }
}
