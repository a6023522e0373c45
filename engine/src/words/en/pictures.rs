//! What stands in and behind the year carpet and the picture of a day's flow.

use super::calendar::month;
use crate::outlook::{DayFlow, End};
use crate::quantity::{Percent, WattHours};
use crate::simulate::YearRun;
use crate::words::{Words, decimal};

/// Hours of a year under the reserve from which they are told as days.
const MANY_HOURS: f64 = 72.0;

/// A year in a sentence or two: its lowest charge and how long it is under the reserve.
#[must_use]
pub fn year(words: Words, run: &YearRun, reserve: Percent) -> String {
    let months = run.months.iter().enumerate();
    let lowest = months.reduce(|low, own| if own.1.lowest < low.1.lowest { own } else { low });
    let lowest = lowest.map_or_else(String::new, |(at, own)| {
        let charge = decimal(own.lowest * 100.0, 0);
        format!("The lowest charge is {charge} %, in {}.", month(at))
    });
    let below = run.below_reserve().0;
    if below <= 0.0 {
        return format!("Never under the reserve of {}. {lowest}", words.amount(reserve));
    }
    let long = if below < 1.0 {
        "For less than an hour".to_owned()
    } else if below < 1.5 {
        "For an hour".to_owned()
    } else if below < MANY_HOURS {
        format!("For {} hours", decimal(below, 0))
    } else {
        format!("For {} days’ worth of hours", decimal(below / 24.0, 0))
    };
    format!("{long} under the reserve of {}. {lowest}", words.amount(reserve))
}

/// States of charge from one to another, both \[%\].
#[must_use]
pub fn charge_between(from: f64, to: f64) -> String {
    format!("{}–{} %", decimal(from, 0), decimal(to, 0))
}

/// What the hatched hours are.
pub const UNDER_RESERVE: &str = "under the reserve";

/// What the lines across the carpet are.
pub const SUNRISE_AND_SUNSET: &str = "sunrise, sunset";

/// The heads of the table behind the carpet.
pub const YEAR_HEADS: [&str; 6] = [
    "Month",
    "Lowest, %",
    "Under reserve, h",
    "Loads short, h",
    "Days that end fuller",
    "Days filled",
];

/// Where energy comes from or goes; a load goes by its name.
#[must_use]
pub fn end(end: End) -> &'static str {
    match end {
        End::Sun => "Sun",
        End::Turbine => "Wind or water",
        End::Engine => "Engine",
        End::Generator => "Generator",
        End::Shore => "Shore power",
        End::FromBank => "Out of the bank",
        End::Load(_) => "A load",
        End::Conversion => "Lost in the inverter",
        End::InverterIdle => "Inverter’s idle draw",
        End::Standing => "Standing draw",
        End::Controller => "Lost in the controller",
        End::Charging => "Lost in charging",
        End::SelfDischarge => "Self-discharge",
        End::Protection => "Protection circuits",
        End::NotTaken => "Not taken: bank full",
        End::IntoBank => "Into the bank",
    }
}

/// What a source gives \[W\].
#[must_use]
pub fn power_from(source: End, watts: &str) -> String {
    let name = match source {
        End::Sun => "sun",
        End::Turbine => "wind or water",
        End::Engine => "engine",
        _ => "shore power",
    };
    format!("{name} {watts} W")
}

/// What is read at an hour of a typical day: in by source, and out \[W\].
#[must_use]
pub fn day_reading(from: &str, to: &str, into: &[String], out: &str) -> String {
    let into = if into.is_empty() { "nothing".to_owned() } else { into.join(", ") };
    format!("{from} to {to}: in {into}; out {out} W.")
}

/// So many loads that are too small to be drawn one by one.
#[must_use]
pub fn other_loads(count: usize) -> String {
    if count == 1 { "1 smaller load".into() } else { format!("{count} smaller loads") }
}

/// Losses that are too small to be drawn one by one.
pub const SMALL_LOSSES: &str = "Small losses";

/// A part of a whole (ratio).
#[must_use]
pub fn share(part: f64) -> String {
    if part > 0.0 && part < 0.005 {
        "< 1 %".into()
    } else {
        format!("{} %", decimal(part * 100.0, 0))
    }
}

/// The flow of a day in a sentence or two.
#[must_use]
pub fn flow(words: Words, flow: &DayFlow) -> String {
    let came = flow.came();
    if came.0 <= 0.0 {
        return format!(
            "On an average day in {} nothing comes in and nothing goes out.",
            month(flow.month)
        );
    }
    let given = flow.to.iter().filter(|own| matches!(own.end, End::Load(_)));
    let given: WattHours = given.map(|own| own.energy).sum();
    let mut said = format!(
        "On an average day in {}, once such days have settled, {} flows; your loads get {} of it.",
        month(flow.month),
        words.energy(came),
        share(given / came)
    );
    if flow.unmet.0 > 0.0 {
        said.push_str(&format!(" They go without {} more.", words.energy(flow.unmet)));
    }
    said
}

/// The heads of the table behind the flow.
pub const FLOW_HEADS: [&str; 3] = ["Of an average day", "Wh", "Share"];

/// What comes in and what goes out, as rows beside their parts, and what the loads went without.
pub const FLOW_SUMS: [&str; 3] = ["All that comes", "All that goes", "Wanted and not given"];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Language;

    #[test]
    fn shares_stay_short() {
        assert_eq!(share(0.0), "0 %");
        assert_eq!(share(0.001), "< 1 %");
        assert_eq!(share(0.316), "32 %");
    }

    #[test]
    fn a_day_of_nothing_is_said() {
        let nothing = DayFlow { month: 3, ..DayFlow::default() };
        assert_eq!(
            flow(Words::of(Language::English), &nothing),
            "On an average day in April nothing comes in and nothing goes out."
        );
    }
}
