//! Words of the map of sizes.

use crate::words::Words;
use crate::words::sizes::Mark;
use crate::words::sizing::Sized;

/// What a mark is.
#[must_use]
pub fn mark(mark: Mark) -> &'static str {
    match mark {
        Mark::Own => "your plan",
        Mark::Suggested => "least to add",
        Mark::Cheapest => "cheapest",
        Mark::Lightest => "lightest",
    }
}

/// What the thick line is.
#[must_use]
pub fn promised_line(words: Words, chance: f64) -> String {
    format!("kept with {}: the promise", words.chance(chance))
}

/// From which to which size the map reaches.
#[must_use]
pub fn map_of_sizes(words: Words, least: Sized, most: Sized) -> String {
    format!(
        "The chance of keeping the promise, for banks from {} to {} across and arrays from {} to {} upwards.",
        words.amount(least.charge),
        words.amount(most.charge),
        words.amount(least.power),
        words.amount(most.power),
    )
}

/// A point of the map.
#[must_use]
pub fn point_of_map(words: Words, size: Sized, chance: Option<f64>) -> String {
    let (charge, power) = (words.amount(size.charge), words.amount(size.power));
    match chance {
        Some(chance) => {
            format!("{} and {}: kept with a chance of {}.", charge, power, words.chance(chance))
        }
        None => format!("{} and {}: not worked out yet.", charge, power),
    }
}

/// How far the work is.
#[must_use]
pub fn sizes_coming(words: Words, done: f64, seconds: Option<u32>) -> String {
    match seconds {
        None => format!("Being worked out: {}.", words.chance(done)),
        Some(seconds) => {
            format!("Being worked out: {}, about {seconds} s more.", words.chance(done))
        }
    }
}
