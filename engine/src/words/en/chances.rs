//! What an ensemble of weathers says, in ranges and never finer than the sample knows.

use super::calendar::month;
use super::verdict::moment;
use crate::bank::{Ageing, Wear};
use crate::outlook::clock_time;
use crate::quantity::{Hours, Within};
use crate::simulate::{BLOCK_YEARS, Chances, GeneratorYears, RUN_DAYS, Range};
use crate::sky::Trust;
use crate::system::System;

/// Most and fewest of ten years, and the middle.
fn of_ten(range: &Range) -> [u32; 3] {
    [range.low, range.middle, range.high].map(|years| years.round().within(0.0, 10.0) as u32)
}

/// In how many of ten years a month stays over the reserve; of what lives depend on, in how many it does not.
#[must_use]
pub fn month_kept(chances: &Chances, of: usize, vital: bool) -> String {
    let name = month(of);
    let Some(range) = chances.months_kept.get(of) else { return String::new() };
    if vital {
        return month_missed(range, name);
    }
    let years = match of_ten(range) {
        [10, ..] => "all of ten years".to_owned(),
        [_, _, 0] => "none of ten years".to_owned(),
        [low, _, high] if low == high => format!("{low} of ten years"),
        [low, middle, high] => format!("{low} to {high} of ten years, most likely {middle}"),
    };
    format!("In {name} you stay above the reserve in {years}.")
}

/// Nine of ten is no comfort where a life may depend on it: what counts are the years in which it fails.
fn month_missed(range: &Range, name: &str) -> String {
    let years = match of_ten(range).map(|kept| 10 - kept) {
        [0, ..] => {
            return format!(
                "In no invented {name} does the bank sink below your reserve; a life must not rest on that alone."
            );
        }
        [_, _, 10] => "every year".to_owned(),
        [most, _, least] if most == least => format!("{most} of ten years"),
        [10, _, 0] => "none to all of ten years".to_owned(),
        [10, _, least] => format!("{least} of ten years or more"),
        [most, _, 0] => format!("up to {most} of ten years"),
        [most, _, least] => format!("{least} to {most} of ten years"),
    };
    format!(
        "In {years} {name} takes the bank below your reserve. Where a life may depend on it, not one such year will do: make the bank or the array larger."
    )
}

/// The same in a table: `9 (6–10)`.
#[must_use]
pub fn of_ten_years(range: &Range) -> String {
    match of_ten(range) {
        [low, middle, high] if low == high => format!("{middle}"),
        [low, middle, high] => format!("{middle} ({low}–{high})"),
    }
}

/// When the reserve comes, from the start of the plan.
#[must_use]
pub fn when(chances: &Chances, system: &System) -> String {
    if system.start.charge <= system.bank.reserve.ratio() {
        return String::new();
    }
    let span = (RUN_DAYS * 24) as f64;
    let at = |hours: f64| moment(clock_time(system, Hours(hours)), Hours(hours));
    let Range { low, middle, high } = chances.to_reserve;
    let reached = chances.reached.last().copied().unwrap_or_default();
    if high < span {
        let (low, high) = (at(low), at(high));
        return if low == high {
            format!("In eight of ten weathers your reserve comes on {low}.")
        } else {
            format!("In eight of ten weathers your reserve comes between {low} and {high}.")
        };
    }
    if low < span {
        let share = (reached * 10.0).round().within(1.0, 9.0) as u32;
        let usual =
            if middle < span { format!(", most likely by {}", at(middle)) } else { String::new() };
        return format!(
            "In {share} of ten weathers your reserve comes within {RUN_DAYS} days{usual}; in the dullest one of ten by {}.",
            at(low)
        );
    }
    let runs = chances.runs;
    match (reached * f64::from(runs)).round() as u32 {
        0 => format!("In none of {runs} weathers does your reserve come within {RUN_DAYS} days."),
        few => format!("In {few} of {runs} weathers your reserve comes within {RUN_DAYS} days."),
    }
}

/// A range of counts with a word for their unit.
fn counts(range: &Range, one: &str, many: &str) -> String {
    let [low, high] = [range.low, range.high].map(|at| two_digits(at.max(0.0)));
    match (low == high, low.as_str()) {
        (true, "1") => format!("1 {one}"),
        (true, _) => format!("{low} {many}"),
        _ => format!("{low} to {high} {many}"),
    }
}

/// Two digits and no fraction: ranges of weather know no more.
fn two_digits(value: f64) -> String {
    let mut unit = 1.0;
    // Beyond a year's hours there is nothing to count.
    while value >= 100.0 * unit && unit < 1e6 {
        unit *= 10.0;
    }
    format!("{}", ((value / unit).round() * unit) as u64)
}

/// Hours short, dull spells, days without a full charge.
#[must_use]
pub fn over_years(chances: &Chances) -> Vec<String> {
    let mut lines = Vec::new();
    if chances.blocks == 0 {
        return lines;
    }
    lines.push(if chances.short_hours.high < 1.0 {
        "No load goes short for as much as an hour a year.".to_owned()
    } else {
        format!("Loads go short for {} a year.", counts(&chances.short_hours, "hour", "hours"))
    });
    if chances.low_hours.high >= 1.0 {
        let hours = counts(&chances.low_hours, "hour", "hours");
        lines.push(format!("The bank is below its reserve for {hours} a year."));
    }
    if let Some(dull) = &chances.dull_days {
        lines.push(if dull.high < 1.0 {
            "No day brings less than half of what you use.".to_owned()
        } else {
            format!(
                "The longest row of days that bring less than half of what you use, in {BLOCK_YEARS} years: {}.",
                counts(dull, "day", "days")
            )
        });
    }
    lines.extend(chances.generator.as_ref().map(generator));
    lines.extend(chances.ageing.as_ref().map(life));
    lines.push(between_full(&chances.days_without_full));
    lines
}

/// How long the generator runs, and what it burns where that is known.
fn generator(years: &GeneratorYears) -> String {
    let hours = counts(&years.hours, "hour", "hours");
    match &years.fuel {
        Some(fuel) => {
            let fuel = counts(fuel, "litre", "litres");
            format!("The generator runs for {hours} a year and burns {fuel}.")
        }
        None => format!("The generator runs for {hours} a year."),
    }
}

/// The longest time between two full charges; a whole block of years is never.
fn between_full(days: &Range) -> String {
    let never = (BLOCK_YEARS * 365) as f64;
    if days.low >= never {
        return format!("In {BLOCK_YEARS} years the bank is never charged to the full.");
    }
    let time = if days.high >= never {
        format!("{} days to all of them", two_digits(days.low))
    } else {
        counts(days, "day", "days")
    };
    format!("The longest time between two full charges, in {BLOCK_YEARS} years: {time}.")
}

/// How long the bank lives, and what shortens that.
fn life(ageing: &Ageing) -> String {
    let (low, high) = ageing.years;
    let years = counts(&Range { low, middle: low, high }, "year", "years");
    let why = match ageing.shortened_by {
        Wear::Cycles => "cycling",
        Wear::Years => "time itself",
        Wear::Warmth => "its warmth",
    };
    if high <= 0.0 {
        return "The bank is already down to 80 % of its rated capacity, where its life is taken to end.".into();
    }
    let cycles = match two_digits(ageing.full_cycles).as_str() {
        "0" => "hardly ever empty it".to_owned(),
        "1" => "use it over about once a year".to_owned(),
        cycles => format!("use it {cycles} times over a year"),
    };
    format!(
        "By what is typical of its kind the bank is down to 80 % after {years}; {why} takes most of it, and you {cycles}."
    )
}

/// How far the climate itself is known, said in sizes of the array, and what the ranges are.
#[must_use]
pub fn doubt(trust: Trust, chances: &Chances) -> String {
    let years = chances.blocks as usize * BLOCK_YEARS;
    let known = match trust {
        Trust::Grid => {
            "The sun of a place is known from the climate map to within 15 to 20 % of the array's size; peak sun hours of your own halve that."
        }
        Trust::Own => "Your own peak sun hours leave a doubt as large as 10 % of the array's size.",
        Trust::Certain => "The climate is taken as certain.",
    };
    format!(
        "Ranges hold eight of ten results, from {years} years of invented weather and {} starts. {known}",
        chances.runs
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn range(low: f64, middle: f64, high: f64) -> Range {
        Range { low, middle, high }
    }

    #[test]
    fn months_are_counted_in_ten_years() {
        let mut chances = Chances { blocks: 40, ..Chances::default() };
        let said = |chances: &Chances| month_kept(chances, 11, false);
        chances.months_kept[11] = range(5.8, 9.2, 10.0);
        assert_eq!(
            said(&chances),
            "In December you stay above the reserve in 6 to 10 of ten years, most likely 9."
        );
        chances.months_kept[11] = range(10.0, 10.0, 10.0);
        assert_eq!(said(&chances), "In December you stay above the reserve in all of ten years.");
        chances.months_kept[11] = range(0.0, 0.0, 0.0);
        assert_eq!(said(&chances), "In December you stay above the reserve in none of ten years.");
        assert_eq!(of_ten_years(&range(5.8, 9.2, 10.0)), "9 (6–10)");
    }

    #[test]
    fn where_a_life_may_depend_on_it_the_years_that_fail_are_told() {
        let mut chances = Chances { blocks: 40, ..Chances::default() };
        for (kept, said) in [
            (range(5.8, 9.2, 10.0), "In up to 4 of ten years December takes the bank below"),
            (range(2.0, 5.0, 8.0), "In 2 to 8 of ten years December takes the bank below"),
            (range(0.0, 0.0, 0.0), "In every year December takes the bank below"),
            (range(9.9, 10.0, 10.0), "In no invented December does the bank sink below"),
        ] {
            chances.months_kept[11] = kept;
            let text = month_kept(&chances, 11, true);
            assert!(text.starts_with(said), "{text}");
            assert!(!text.contains("stay above") && !text.contains("9 of ten"), "{text}");
        }
    }

    #[test]
    fn counts_have_two_digits_and_their_plural() {
        assert_eq!(counts(&range(0.0, 20.0, 1234.0), "hour", "hours"), "0 to 1200 hours");
        assert_eq!(counts(&range(1.0, 1.0, 1.2), "day", "days"), "1 day");
        assert_eq!(counts(&range(6.6, 8.0, 13.4), "day", "days"), "7 to 13 days");
    }
}
