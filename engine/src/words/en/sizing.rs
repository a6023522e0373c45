//! Words of promises and sizes.

use super::calendar::month;
use crate::document::Months;
use crate::quantity::{Amps, Degrees, Percent};
use crate::sizing::{Arrival, Change, Kind, Promise};
use crate::words::Words;
use crate::words::sizing::Sized;

/// What a short day is.
pub const SHORT_DAY: &str =
    "A short day is one on which the bank sinks below its reserve or cannot carry a load.";

/// That a life may depend on the plan.
pub const LIFE_DEPENDS: &str = "A life may depend on this: unless you state another chance no invented year may fail. That is no proof; it needs a backup and an alarm of its own.";

/// The months that count, behind a comma.
#[must_use]
pub fn season(season: Months) -> String {
    let has = |at: usize| season.has((at % 12) as u8);
    let count = (0..12).filter(|at| has(*at)).count();
    if count == 12 {
        return "all year round".to_owned();
    }
    // A season that runs in one piece, perhaps over the new year, is said by its ends.
    let begins: Vec<usize> = (0..12).filter(|at| has(*at) && !has(at + 11)).collect();
    match begins.as_slice() {
        [first] if count == 1 => format!("in {}", month(*first)),
        [first] => format!("from {} to {}", month(*first), month((first + count - 1) % 12)),
        _ => {
            let names: Vec<&str> = (0..12).filter(|at| has(*at)).map(month).collect();
            format!("in {}", names.join(", "))
        }
    }
}

fn days(days: u16) -> String {
    if days == 1 { "1 day".to_owned() } else { format!("{days} days") }
}

/// A promise as a sentence.
#[must_use]
pub fn promise(words: Words, promise: &Promise) -> String {
    let (when, chance) = (season(promise.season), words.chance(promise.chance.ratio()));
    let what = match promise.kind {
        Kind::Through => format!("No short day {when}"),
        Kind::ShortDays { most: 0 } => format!("No short day in ten years, {when}"),
        Kind::ShortDays { most: 1 } => format!("At most 1 short day in ten years, {when}"),
        Kind::ShortDays { most } => format!("At most {most} short days in ten years, {when}"),
        Kind::WithoutSun { days: count } => {
            format!("{} without any sun from full, {when}", days(count))
        }
        Kind::Trip { days: count } => format!("A trip of {} from full, {when}", days(count)),
    };
    format!("{what}, with a chance of at least {chance}.")
}

/// How likely a plan keeps it as it stands.
#[must_use]
pub fn standing_chance(words: Words, chance: f64, error: f64, years: usize) -> String {
    let (chance, error) = (words.chance(chance), words.chance(error));
    if years <= 1 {
        return format!("As it stands the plan keeps this with a chance of {chance}.");
    }
    format!(
        "As it stands the plan keeps this with a chance of {chance}, give or take {error}, from {years} years of invented weather."
    )
}

fn both(words: Words, size: Sized) -> String {
    format!("a bank of {} and an array of {}", words.amount(size.charge), words.amount(size.power))
}

/// What to make of bank and array.
#[must_use]
pub fn suggested_size(words: Words, size: Option<Sized>) -> String {
    match size {
        Some(size) => format!("Least to add: {} keep it.", both(words, size)),
        None => "No bank and array that were looked at keep it: use less, or bring another source."
            .to_owned(),
    }
}

/// The smallest bank beside the array as it is.
#[must_use]
pub fn smallest_bank(words: Words, size: Option<Sized>) -> String {
    match size {
        Some(size) => {
            format!(
                "Beside this array the smallest bank that keeps it is {}.",
                words.amount(size.charge)
            )
        }
        None => "Beside this array no bank is enough.".to_owned(),
    }
}

/// The smallest array beside the bank as it is.
#[must_use]
pub fn smallest_array(words: Words, size: Option<Sized>) -> String {
    match size {
        Some(size) => {
            format!(
                "Beside this bank the smallest array that keeps it is {}.",
                words.amount(size.power)
            )
        }
        None => "Beside this bank no array is enough.".to_owned(),
    }
}

/// Hours a week of a charger that close the gap.
#[must_use]
pub fn charger_hours(words: Words, hours: Option<u32>, charger: Amps) -> String {
    let charger = words.amount(charger);
    match hours {
        Some(1) => format!(
            "One hour a week of a charger of {charger}, on shore power or a generator, is enough as well."
        ),
        Some(hours) => format!(
            "{hours} hours a week of a charger of {charger}, on shore power or a generator, are enough as well."
        ),
        None => format!("A charger of {charger} round the clock is not enough."),
    }
}

/// The tilt that brings most in a month.
#[must_use]
pub fn tilt_for(words: Words, tilt: Degrees, south: bool, of: usize, chance: f64) -> String {
    let (month, chance) = (month(of), words.chance(chance));
    if tilt.0 <= 0.0 {
        return format!(
            "Lying flat the array brings most in {month}; the chance is then {chance}."
        );
    }
    let side = if south { "south" } else { "north" };
    format!(
        "Facing {side} at {} the array brings most in {month}; the chance is then {chance}.",
        words.amount(tilt)
    )
}

/// A change that may help.
#[must_use]
pub fn change(words: Words, change: &Change, name: &str) -> String {
    match change {
        Change::LessUse { hours, .. } => {
            format!("Use “{name}” {} a day less", words.amount(*hours))
        }
        Change::Direct { .. } => format!("Run “{name}” on direct current"),
        Change::MoreArray { .. } => "One more string of modules".to_owned(),
        Change::Tilted { tilt } => {
            format!("Tilt the array by {} towards the equator", words.amount(*tilt))
        }
        Change::Tracking => "A controller that finds the best point".to_owned(),
        Change::MoreBank => "One more battery in parallel".to_owned(),
        Change::Warmer { at } => format!("Keep the bank at {}", words.amount(*at)),
        Change::LongerEngine { hours } => {
            format!("Run the engine {} a day more", words.amount(*hours))
        }
        Change::OtherMonths { season: other } => format!("Choose another time: {}", season(*other)),
        Change::Reserve { to } => format!("Keep {} back", words.amount(*to)),
    }
}

/// Two changes at the same time.
#[must_use]
pub fn both_changes(first: &str, second: &str) -> String {
    format!("{first} + {second}")
}

/// What another reserve would come to.
#[must_use]
pub fn reserve_kept(words: Words, to: Percent, less: bool, chance: f64) -> String {
    let (to, chance) = (words.amount(to), words.chance(chance));
    if less {
        format!(
            "Were only {to} kept back, the chance would be {chance}; so much less would be left when something goes wrong."
        )
    } else {
        format!(
            "Were {to} kept back, the chance would be {chance}; so much more would be left when something goes wrong."
        )
    }
}

/// The evenings of a stay.
const EVENINGS: [&str; 3] = ["the same evening", "the next evening", "the evening after that"];

/// How late one can arrive at the reserve and still leave full.
#[must_use]
pub fn arrival(words: Words, arrival: &Arrival) -> String {
    let month = month(arrival.month);
    let mut parts = Vec::new();
    for (latest, evening) in arrival.latest.iter().zip(EVENINGS) {
        match latest {
            Some(Arrival::WHENEVER) => {
                parts.push(format!("by {evening} whenever you arrive"));
                break;
            }
            Some(hour) => {
                let clock = words.clock(u16::from(*hour) * 60);
                parts.push(format!("by {evening} if you arrive by {clock}"));
            }
            None => {}
        }
    }
    if parts.is_empty() {
        return format!(
            "Under a typical sky of {month} a bank at its reserve is not full within three days."
        );
    }
    format!("Under a typical sky of {month} a bank at its reserve is full {}.", parts.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn seasons_are_said_by_their_ends() {
        assert_eq!(season(Months::ALL), "all year round");
        assert_eq!(season(Months(0b0001_1111_0000)), "from May to September");
        assert_eq!(season(Months(0b1000_0000_0001)), "from December to January");
        assert_eq!(season(Months(1 << 11)), "in December");
        assert_eq!(season(Months(0b0000_0100_0001)), "in January, July");
    }
}
