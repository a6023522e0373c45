//! The printed sheet.

use chrono::{Datelike, NaiveDate};

use super::calendar::month;
use crate::document::{ControllerKind, Kept};
use crate::place::TemperatureOrigin;
use crate::quantity::{AmpHours, Amps, Celsius, Degrees, Percent, Volts};
use crate::words::Words;
use crate::words::sheet::{ArrayInShort, OnSheet, Rule};

/// A word or two on the sheet.
// One flat list, longer than a function should be: it is a dictionary, and the compiler checks that it is complete.
#[must_use]
pub fn on_sheet(what: OnSheet) -> &'static str {
    use OnSheet as S;
    match what {
        S::PlanningFigures => "Planning figures",
        S::Load => "Load",
        S::Power => "Power",
        S::Hours => "Hours a day",
        S::ADay => "A day",
        S::Share => "Share",
        S::InverterIdle => "Inverter, awake",
        S::All => "All",
        S::Assumed => "What was assumed",
        S::Whose => "From",
        S::Yours => "your choice",
        S::Typical => "typical",
        S::FromMap => "climate map",
        S::WorkedOut => "worked out",
        S::NotStated => "not stated",
        S::Air => "Air, mean of the month",
        S::BankTemperature => "Bank, mean of the month",
        S::Sun => "Peak sun hours a day",
        S::Horizon => "Horizon",
        S::Level => "level",
        S::Entered => "as entered",
        S::ChargeEfficiency => "Charge efficiency",
        S::Health => "Capacity left with age",
        S::HourRate => "Hours of the rated capacity",
        S::InverterEfficiency => "Inverter at half load",
        S::ArrayLosses => "Array losses besides heat",
        S::RecordLow => "Record low",
        S::Batteries => "Batteries",
        S::Bank => "Whole bank",
        S::Full => "Full, in that month",
        S::ChargeLimit => "Charge limit",
        S::DischargeLimit => "Discharge limit",
        S::Stands => "Where it stands",
        S::FromSun => "From the sun",
        S::Engine => "Engine",
        S::Shore => "Shore power or mains",
        S::Turbine => "Wind or water",
        S::Generator => "Generator",
        S::ChargingLoss => "Kept after the loss of charging",
        S::NothingComesIn => "Nothing comes in.",
        S::NothingRuns => "Nothing runs yet.",
        S::Standing => "Before anything is bought or built",
        S::NoWeatherYet => {
            "Real weather was still being worked out when this was printed: what stands here is for average weather."
        }
        S::OpenThisPlan => "Open this plan",
        S::Code => "Code of the link to this plan, for a phone's camera",
        S::CodeTooLong => {
            "This plan is too long for a code that phones read. Send the link or the file."
        }
    }
}

/// What stands on every sheet.
#[must_use]
pub fn rule(rule: Rule) -> &'static str {
    match rule {
        Rule::Estimates => {
            "These are estimates for planning, not the design of an installation. Weather, use and age will differ."
        }
        Rule::CodesFirst => {
            "Local codes and the makers' instructions come first. Let a licensed person do or check mains and high-current work."
        }
        Rule::Fire => {
            "Batteries and cables can burn, and charging can give off explosive gas: fuse at the bank, keep it aired."
        }
        Rule::Lives => {
            "What a life depends on needs an independent backup and an alarm, whatever this sheet says."
        }
    }
}

fn in_full(date: NaiveDate) -> String {
    format!("{} {} {}", date.day(), month(date.month0() as usize), date.year())
}

/// On which day the sheet was worked out.
#[must_use]
pub fn worked_out_on(date: NaiveDate) -> String {
    format!("Worked out on {}", in_full(date))
}

/// On which day the run of a plan begins.
#[must_use]
pub fn begins_on(date: NaiveDate) -> String {
    format!("The run begins on {}.", in_full(date))
}

/// Heading of the loads on a mean day of a month.
#[must_use]
pub fn runs_in(of_month: usize) -> String {
    format!("What runs, on a mean day of {}", month(of_month))
}

/// `4 modules of 100 W, tilt 15°, facing 180° · MPPT up to 20 A`.
#[must_use]
pub fn array_in_short(words: Words, array: &ArrayInShort) -> String {
    let ArrayInShort { modules, each, tilt, azimuth, controller, limit } = *array;
    let modules = match words.rounded(modules).as_str() {
        "1" => "1 module".to_owned(),
        count => format!("{count} modules"),
    };
    let lies = if tilt.0 <= 0.0 {
        "flat".to_owned()
    } else {
        format!("tilt {}, facing {}", words.amount(tilt), compass(words, azimuth))
    };
    let controller = match controller {
        ControllerKind::Mppt => "MPPT",
        ControllerKind::Pwm => "PWM",
    };
    format!("{modules} of {}, {lies} · {controller} {}", words.amount(each), up_to(words, limit))
}

/// A direction as degrees with its point of the compass.
fn compass(words: Words, azimuth: Degrees) -> String {
    const POINTS: [&str; 8] = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"];
    let eighth = (azimuth.0 / 45.0).round().rem_euclid(8.0) as usize;
    format!("{} ({})", words.amount(azimuth), POINTS.get(eighth).copied().unwrap_or_default())
}

/// `2 in series × 3 side by side, each 12.8 V 100 Ah`.
#[must_use]
pub fn batteries(
    words: Words,
    series: f64,
    strings: f64,
    volts: Volts,
    charge: AmpHours,
) -> String {
    let each = format!("{} {}", words.amount(volts), words.amount(charge));
    match (series > 1.0, strings > 1.0) {
        (false, false) => format!("1 of {each}"),
        (true, false) => format!("{} in series, each {each}", words.rounded(series)),
        (false, true) => format!("{} side by side, each {each}", words.rounded(strings)),
        (true, true) => format!(
            "{} in series × {} side by side, each {each}",
            words.rounded(series),
            words.rounded(strings)
        ),
    }
}

/// Where a bank stands.
#[must_use]
pub fn kept(words: Words, kept: Kept) -> String {
    match kept {
        Kept::Inside => "inside".into(),
        Kept::Outside => "outside".into(),
        Kept::AtC(own) => format!("kept at {}", words.amount(Celsius(own))),
    }
}

/// A charger by what it gives at most.
#[must_use]
pub fn up_to(words: Words, limit: Amps) -> String {
    format!("up to {}", words.amount(limit))
}

/// A generator by its charger and when it starts and stops.
#[must_use]
pub fn generator_in_short(words: Words, limit: Amps, start: Percent, stop: Percent) -> String {
    format!(
        "{}, starts at {}, stops at {}",
        up_to(words, limit),
        words.amount(start),
        words.amount(stop)
    )
}

/// The usable charge above a reserve.
#[must_use]
pub fn above_reserve(words: Words, reserve: Percent) -> String {
    format!("May be used, above {}", words.amount(reserve))
}

/// Where the temperatures of a place come from.
#[must_use]
pub fn temperatures_from(origin: TemperatureOrigin) -> &'static str {
    match origin {
        TemperatureOrigin::Own => "Temperatures are your own.",
        TemperatureOrigin::Reanalysis => {
            "Temperatures are from weather reanalysis of 2000 to 2025 over some 500 km: off by about 2 °C, by 5 °C in mountains."
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Watts;
    use crate::words::Language;

    const WORDS: Words = Words::of(Language::English);

    #[test]
    fn parts_of_a_plan_fit_into_a_line() {
        let array = ArrayInShort {
            modules: 4.0,
            each: Watts(100.0),
            tilt: Degrees(15.0),
            azimuth: Degrees(350.0),
            controller: ControllerKind::Mppt,
            limit: Amps(20.0),
        };
        let plain = |text: String| text.replace('\u{a0}', " ");
        assert_eq!(
            plain(array_in_short(WORDS, &array)),
            "4 modules of 100 W, tilt 15°, facing 350° (N) · MPPT up to 20 A"
        );
        let flat = ArrayInShort { modules: 1.0, tilt: Degrees(0.0), ..array };
        assert_eq!(
            plain(array_in_short(WORDS, &flat)),
            "1 module of 100 W, flat · MPPT up to 20 A"
        );
        let batteries = |series, strings| {
            plain(batteries(WORDS, series, strings, Volts(12.8), AmpHours(100.0)))
        };
        assert_eq!(batteries(1.0, 1.0), "1 of 12.8 V 100 Ah");
        assert_eq!(batteries(2.0, 3.0), "2 in series × 3 side by side, each 12.8 V 100 Ah");
    }
}
