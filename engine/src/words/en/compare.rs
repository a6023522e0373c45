//! Two plans beside each other, and guesses beside the answer.

use super::calendar::{month, month_short, weekday};
use super::verdict::duration;
use crate::document::Part;
use crate::outlook::{Figure, Guessed, HORIZON_DAYS};
use crate::quantity::{AmpHours, Hours, Watts};
use crate::words::Words;

/// A part of a plan that is none of several.
#[must_use]
pub fn part(part: Part) -> &'static str {
    match part {
        Part::Plan | Part::Load(_) | Part::Array(_) | Part::Check(_) => "Plan",
        Part::Place => "Place",
        Part::Start => "Start",
        Part::Bank => "Bank",
        Part::Inverter => "Inverter",
        Part::Shore => "Shore power",
        Part::Alternator => "Engine",
        Part::Generator => "Generator",
        Part::Turbine => "Wind or water",
        Part::Promise => "What it shall keep",
        Part::Wiring => "How it is wired",
        Part::Logbook => "Logbook of the gauge",
    }
}

/// What a figure is.
#[must_use]
pub fn figure(figure: Figure) -> &'static str {
    match figure {
        Figure::Out => "Out, a day",
        Figure::In => "In, a day",
        Figure::Balance => "Balance of a day",
        Figure::Usable => "May be used",
        Figure::Rated => "Rated capacity",
        Figure::Sun => "Power of the arrays",
        Figure::MonthsKept => "Months that keep up on average",
        Figure::Tightest => "Balance in the tightest month",
        Figure::ToReserve => "Mean weather, until the reserve",
        Figure::ToEmpty => "Mean weather, until empty",
        Figure::DarkToReserve => "No sun at all, until the reserve",
        Figure::DarkToEmpty => "No sun at all, until empty",
        Figure::Autonomy => "Days of autonomy",
    }
}

/// A figure as a size; charges have their unit elsewhere.
#[must_use]
pub fn size(words: Words, of: Figure, value: f64) -> String {
    match of {
        Figure::Sun => words.amount(Watts(value)),
        Figure::MonthsKept if value == 1.0 => "1 month".into(),
        Figure::MonthsKept => format!("{} months", words.rounded(value)),
        Figure::Autonomy => format!("{} days", words.rounded(value)),
        _ => duration(Hours(value)),
    }
}

/// That two figures are alike.
pub const SAME: &str = "the same";

/// That a figure is more or less by a size.
#[must_use]
pub fn more(size: &str, is: bool) -> String {
    format!("{size} {}", if is { "more" } else { "less" })
}

/// That a figure is more or less than that of another plan, or the same, by its name.
#[must_use]
pub fn than(more: Option<&str>, name: &str) -> String {
    match more {
        Some(more) => format!("{more} than {}", called(name)),
        None => format!("{SAME} as {}", called(name)),
    }
}

/// The figure of another plan, where there is nothing to take off.
#[must_use]
pub fn beside(value: &str, name: &str) -> String {
    let name = if name.is_empty() { "The baseline".into() } else { called(name) };
    format!("{name}: {value}")
}

/// Another plan by its name, which is empty where that would not tell it from this one.
fn called(name: &str) -> String {
    if name.is_empty() { "the baseline".into() } else { quoted(name) }
}

/// A name in the quotes of the language.
#[must_use]
pub fn quoted(name: &str) -> String {
    format!("“{name}”")
}

/// A part that only one plan has.
#[must_use]
pub fn there(is: bool) -> &'static str {
    if is { "there" } else { "–" }
}

/// Yes or no.
#[must_use]
pub fn yes_or_no(is: bool) -> &'static str {
    if is { "yes" } else { "no" }
}

/// Days of the week from bits.
#[must_use]
pub fn days(bits: u32) -> String {
    if bits & 0x7f == 0x7f {
        return "every day".into();
    }
    listed((0..7).filter(|day| bits >> day & 1 == 1).map(weekday))
}

/// Months from bits.
#[must_use]
pub fn months(bits: u32) -> String {
    if bits & 0xfff == 0xfff {
        return "all year".into();
    }
    listed((0..12).filter(|month| bits >> month & 1 == 1).map(month_short))
}

fn listed<'a>(names: impl Iterator<Item = &'a str>) -> String {
    let names: Vec<&str> = names.collect();
    if names.is_empty() { "none".into() } else { names.join(", ") }
}

/// That every month keeps up, as a guess.
pub const NO_MONTH: &str = "none, it keeps up all year";

/// Names for variants of a plan, the first not yet taken to be proposed.
pub const VARIANTS: &[&str] = &["basic", "comfort", "winter", "summer", "larger bank", "more sun"];

/// What is asked.
#[must_use]
pub fn asked(what: Guessed, of_month: usize) -> String {
    let now = month(of_month);
    match what {
        Guessed::Hours => {
            format!("How many hours until the reserve is reached, in average {now} weather?")
        }
        Guessed::Charge => format!("How many amp-hours are used on an average day in {now}?"),
        Guessed::Month => {
            format!("From {now} on, which is the first month that does not keep up?")
        }
    }
}

/// What the plan comes to.
#[must_use]
pub fn answer(words: Words, what: Guessed, value: Option<f64>) -> String {
    match (what, value) {
        (_, None) => format!("The reserve is not reached within {HORIZON_DAYS} days."),
        (Guessed::Hours, Some(hours)) => {
            format!(
                "The reserve is reached after {}: {}.",
                words.amount(Hours(hours)),
                duration(Hours(hours))
            )
        }
        (Guessed::Charge, Some(charge)) => {
            format!("{} are used a day.", words.amount(AmpHours(charge)))
        }
        (Guessed::Month, Some(value)) if value < 12.0 => {
            format!("{} is the first month that does not keep up.", month(value as usize))
        }
        (Guessed::Month, Some(_)) => "Every month keeps up.".into(),
    }
}

/// The one in the middle of the guesses.
#[must_use]
pub fn median(middle: &str) -> String {
    format!("Half of the guesses lie above {middle} and half below.")
}

/// How many guesses were near.
#[must_use]
pub fn near(what: Guessed, near: usize, of: usize) -> String {
    let of = if of == 1 { "the one guess".into() } else { format!("{of} guesses") };
    match what {
        Guessed::Month => format!("Of {of}, {near} named the month."),
        _ => format!("Of {of}, {near} came within 20 % of the answer."),
    }
}

/// Why a guess was refused.
#[must_use]
pub fn guess_refused(typed: &str, most: &str) -> String {
    if typed.is_empty() {
        format!("The guess is missing; type a number from 0 to {most}.")
    } else {
        format!("Guess: “{typed}” does not do. Type a number from 0 to {most}.")
    }
}

/// That no more guesses are taken.
#[must_use]
pub fn full_of_guesses(limit: usize) -> String {
    format!("No more than {limit} guesses are taken. Reveal the answer, or take some out.")
}

/// How many guesses there are.
#[must_use]
pub fn guesses(count: usize) -> String {
    match count {
        0 => "No guess yet.".into(),
        1 => "1 guess.".into(),
        count => format!("{count} guesses."),
    }
}

/// Somebody who gave no name.
#[must_use]
pub fn guesser(place: usize) -> String {
    format!("Guess {}", place + 1)
}

/// The picture of the guesses in words.
#[must_use]
pub fn spread(low: &str, high: &str, answer: &str) -> String {
    format!("A dot for each guess, from {low} to {high}. {answer}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Language;

    const WORDS: Words = Words::of(Language::English);

    #[test]
    fn differences_are_said_as_people_would() {
        let cases = [
            (Figure::Out, 12.0, "12\u{a0}Ah more than “Winter”"),
            (Figure::In, -3.2, "3.2\u{a0}Ah less than “Winter”"),
            (Figure::MonthsKept, 1.0, "1 month more than “Winter”"),
            (Figure::MonthsKept, -4.0, "4 months less than “Winter”"),
            (Figure::ToReserve, 28.0, "1 day 4 hours more than “Winter”"),
            (Figure::Out, 0.0, "the same as “Winter”"),
            (Figure::Out, -0.001, "the same as “Winter”"),
        ];
        for (figure, more, text) in cases {
            assert_eq!(WORDS.than(figure, more, "Winter"), text);
        }
        assert_eq!(WORDS.than(Figure::Out, 0.0, ""), "the same as the baseline");
        assert_eq!(beside("54 %", ""), "The baseline: 54 %");
        assert_eq!(WORDS.difference(Figure::Sun, Some(0.0), Some(100.0)), "100\u{a0}W less");
    }

    #[test]
    fn a_refused_guess_says_what_would_do() {
        let refused = WORDS.guess_refused(Guessed::Hours, " many ");
        assert_eq!(
            refused.replace(['\u{a0}', '\u{202f}'], " "),
            "Guess: “many” does not do. Type a number from 0 to 100 000 h."
        );
        assert!(WORDS.guess_refused(Guessed::Charge, "").contains("missing"));
    }

    #[test]
    fn bits_are_listed() {
        assert_eq!(days(0x7f), "every day");
        assert_eq!(days(0b110_0000), "Saturday, Sunday");
        assert_eq!(months(0b11), "Jan, Feb");
        assert_eq!(months(0), "none");
    }
}
