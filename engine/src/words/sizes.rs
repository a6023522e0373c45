//! What the map of sizes says; the words are in the folder of each language.

use super::sizing::Sized;
use super::{Language, Words};

/// A point of note on the map.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// The plan as it is.
    Own,
    /// The least to add.
    Suggested,
    /// The cheapest that keeps the promise.
    Cheapest,
    /// The lightest that keeps it.
    Lightest,
}

impl Language {
    /// What a mark is.
    #[must_use]
    pub fn mark(self, mark: Mark) -> &'static str {
        speak!(self, sizes::mark(mark))
    }
}

impl Words {
    /// What the thick line is.
    #[must_use]
    pub fn promised_line(self, chance: f64) -> String {
        speak!(self.language, sizes::promised_line(self, chance))
    }

    /// The map in a sentence: from which to which size it reaches.
    #[must_use]
    pub fn map_of_sizes(self, least: Sized, most: Sized) -> String {
        speak!(self.language, sizes::map_of_sizes(self, least, most))
    }

    /// A point of the map, with the chance there (ratio) as far as it is known.
    #[must_use]
    pub fn point_of_map(self, size: Sized, chance: Option<f64>) -> String {
        speak!(self.language, sizes::point_of_map(self, size, chance))
    }

    /// How far the work is (ratio), and how many seconds it may still take.
    #[must_use]
    pub fn sizes_coming(self, done: f64, seconds: Option<u32>) -> String {
        speak!(self.language, sizes::sizes_coming(self, done, seconds))
    }

    /// What a change comes to: the chance with it (ratio), and the short days a year or, of trials, the share that fails.
    #[must_use]
    pub fn helped(self, change: &str, chance: f64, shortage: f64, trials: bool) -> String {
        speak!(self.language, sizes::helped(self, change, chance, shortage, trials))
    }

    /// How sizes and changes are worked out, in sentences.
    #[must_use]
    pub fn sizes_method(self, years: usize) -> [String; 3] {
        speak!(self.language, sizes::method(years))
    }

    /// The size that costs or weighs least, with its price or its weight \[kg\].
    #[must_use]
    pub fn least_of_all(self, size: Sized, sum: f64, weight: bool) -> String {
        speak!(self.language, sizes::least_of_all(self, size, sum, weight))
    }
}
