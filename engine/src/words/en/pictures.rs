//! What stands in and behind the year carpet and the picture of a day's flow.

use super::calendar::month;
use crate::outlook::{DayFlow, End};
use crate::quantity::{Percent, WattHours};
use crate::simulate::YearRun;
use crate::words::{amount, decimal, rounded};

/// Hours of a year under the reserve from which they are told as days.
const MANY_HOURS: f64 = 72.0;
/// Energy from which it is told in thousands of watt-hours.
const MANY_WATT_HOURS: f64 = 9_999.5;

/// A year in a sentence or two: its lowest charge and how long it is under the reserve.
#[must_use]
pub fn year(run: &YearRun, reserve: Percent) -> String {
    let months = run.months.iter().enumerate();
    let lowest = months.reduce(|low, own| if own.1.lowest < low.1.lowest { own } else { low });
    let lowest = lowest.map_or_else(String::new, |(at, own)| {
        let charge = decimal(own.lowest * 100.0, 0);
        format!("The lowest charge is {charge} %, in {}.", month(at))
    });
    let below = run.below_reserve().0;
    if below <= 0.0 {
        return format!("Never under the reserve of {}. {lowest}", amount(reserve));
    }
    let long = if below < 1.0 {
        "For less than an hour".to_owned()
    } else if below < MANY_HOURS {
        format!("For {} hours", decimal(below, 0))
    } else {
        format!("For {} days’ worth of hours", decimal(below / 24.0, 0))
    };
    format!("{long} under the reserve of {}. {lowest}", amount(reserve))
}

/// States of charge from one to another, both \[%\].
#[must_use]
pub fn charge_between(from: f64, to: f64) -> String {
    format!("{}–{} %", decimal(from, 0), decimal(to, 0))
}

/// What the hatched hours are.
#[must_use]
pub fn under_reserve() -> &'static str {
    "under the reserve"
}

/// What the lines across the carpet are.
#[must_use]
pub fn sunrise_and_sunset() -> &'static str {
    "sunrise, sunset"
}

/// The heads of the table behind the carpet.
#[must_use]
pub fn year_heads() -> [&'static str; 6] {
    ["Month", "Lowest, %", "Under reserve, h", "Loads short, h", "Days fuller", "Days to full"]
}

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
#[must_use]
pub fn small_losses() -> &'static str {
    "Small losses"
}

/// Energy as it stands in the picture.
#[must_use]
pub fn energy(energy: WattHours) -> String {
    if energy.0 >= MANY_WATT_HOURS {
        format!("{} kWh", rounded(energy.0 / 1000.0))
    } else {
        amount(energy)
    }
}

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
pub fn flow(flow: &DayFlow) -> String {
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
        energy(came),
        share(given / came)
    );
    if flow.unmet.0 > 0.0 {
        said.push_str(&format!(" They go without {} more.", energy(flow.unmet)));
    }
    said
}

/// The heads of the table behind the flow.
#[must_use]
pub fn flow_heads() -> [&'static str; 3] {
    ["Of an average day", "Wh", "Share"]
}

/// What comes in, as a row over its parts.
#[must_use]
pub fn comes_in() -> &'static str {
    "All that comes"
}

/// What goes out, as a row under its parts.
#[must_use]
pub fn goes_out() -> &'static str {
    "All that goes"
}

/// What the loads went without.
#[must_use]
pub fn went_without() -> &'static str {
    "Wanted and not given"
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn energy_and_shares_stay_short() {
        assert_eq!(energy(WattHours(512.4)), "512\u{a0}Wh");
        assert_eq!(energy(WattHours(123_456.0)), "123 kWh");
        assert_eq!(share(0.0), "0 %");
        assert_eq!(share(0.001), "< 1 %");
        assert_eq!(share(0.316), "32 %");
    }

    #[test]
    fn a_day_of_nothing_is_said() {
        let nothing = DayFlow { month: 3, ..DayFlow::default() };
        assert_eq!(
            flow(&nothing),
            "On an average day in April nothing comes in and nothing goes out."
        );
    }
}
