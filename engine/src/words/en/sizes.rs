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
        None => format!("{charge} and {power}: not worked out yet."),
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

/// What a change comes to.
#[must_use]
pub fn helped(words: Words, change: &str, chance: f64, shortage: f64, trials: bool) -> String {
    let chance = words.chance(chance);
    if trials {
        return format!("{change}: kept with a chance of {chance}.");
    }
    let days = words.rounded(shortage);
    format!("{change}: kept with a chance of {chance}; {days} short days a year are left.")
}

/// How sizes and changes are worked out.
#[must_use]
pub fn method(years: usize) -> [String; 3] {
    [
        format!("Each size is taken hour by hour through {years} invented years of weather, or as many trials as fit in. A chance is the share of them in which the promise is kept."),
        "The map reckons with voltages and charging that are rounded a little; what is suggested, the smallest bank and array, hours of a charger and every change are run again by the whole model.".to_owned(),
        "A bank of twice the size is two of yours side by side, an array of twice the size has twice the strings and twice the controller. They are estimates, not a promise of the weather.".to_owned(),
    ]
}

/// The size that costs or weighs least.
#[must_use]
pub fn least_of_all(words: Words, size: Sized, sum: f64, weight: bool) -> String {
    let (charge, power) = (words.amount(size.charge), words.amount(size.power));
    let sum = words.rounded(sum);
    if weight {
        format!(
            "The lightest that keeps it: a bank of {charge} and an array of {power}, {sum}\u{a0}kg in all."
        )
    } else {
        format!(
            "The cheapest that keeps it: a bank of {charge} and an array of {power}, {sum} in all."
        )
    }
}
