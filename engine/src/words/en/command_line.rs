//! Words of the command line.

use chrono::{Datelike, NaiveDateTime};

use super::calendar::month;
use super::problems;
use crate::quantity::{Amps, Celsius, Degrees, Percent};
use crate::words::command_line::{Fault, Label, Operand};
use crate::words::{NameOf, amount, precise};

/// How the command line is used.
pub const USAGE: &str = "\
sunlarder answers what runs, what is stored, what comes in and how long it lasts.

  sunlarder plan PLAN [--json | --csv] [--without-sun]
      budget and outlook; --csv gives the run, one row a step
  sunlarder working PLAN FIGURE [--month 1..12]
      how a figure comes about: capacity, budget, autonomy or month
  sunlarder link PLAN
      the link code of a plan
  sunlarder file PLAN
      the file of a plan
  sunlarder climate LATITUDE LONGITUDE [--json | --csv]
      twelve months of clearness, irradiation and temperature
  sunlarder sun LATITUDE LONGITUDE INSTANT [--json]
      where the sun stands, as in: sunlarder sun 52.1 5.2 2026-06-21T12:00
  sunlarder help
  sunlarder version

PLAN is a file, a link or its code, or - for what comes on standard input.
North and east are positive. Instants are in universal time unless they state an offset.
With --without-sun the run goes on without any sun; shore power and engine stay.
";

/// A word or two beside a figure, or over a column.
// One flat list, longer than a function should be: it is a dictionary, and the compiler checks that it is complete.
#[must_use]
pub fn label(label: Label) -> &'static str {
    use Label as L;
    match label {
        L::Unnamed => "Plan without a name",
        L::InverterIdle => "Inverter, idle draw",
        L::Standing => "Standing draw",
        L::Protection => "Battery protection",
        L::All => "All",
        L::WhatStored => "What you store",
        L::Rated => "Rated",
        L::Autonomy => "Days of autonomy",
        L::HowLong => "How long it lasts",
        L::AverageWeather => "average weather",
        L::WithoutSun => "without sun",
        L::ToReserve => "To the reserve",
        L::ToEmpty => "To empty",
        L::ToFull => "To full",
        L::MonthByMonth => "Month by month, on a mean day",
        L::PeakSun => "peak sun hours",
        L::ComesIn => "comes in",
        L::Used => "used",
        L::Balance => "balance",
        L::Lowest => "lowest charge",
        L::KeepsUp => "keeps up",
        L::Yes => "yes",
        L::No => "no",
        L::InTheWay => "What stands in the way",
        L::Caution => "Mind",
        L::Obstacle => "Stops it",
        L::Estimates => {
            "These are estimates for planning. Makers' instructions, local codes and licensed practice come first."
        }
        L::Month => "month",
        L::Clearness => "clearness",
        L::Spread => "spread",
        L::Irradiation => "on the level",
        L::Outside => "outside the air",
        L::Temperature => "temperature",
        L::ClearnessFrom => "Clearness",
        L::TemperatureFrom => "Temperature",
        L::Elevation => "Elevation",
        L::Azimuth => "Azimuth, clockwise from north",
        L::Declination => "Declination",
        L::EquationOfTime => "Equation of time",
        L::SolarTime => "Solar time",
        L::FacingSun => "Irradiance outside the air, facing the sun",
        L::OnTheLevel => "Irradiance outside the air, on the level",
        L::OfTheDay => "Irradiation of the day outside the air, on the level",
        L::Sunrise => "Sunrise, universal time",
        L::Sunset => "Sunset, universal time",
        L::PolarNight => "The sun does not rise on this day",
        L::PolarDay => "The sun does not set on this day",
        L::Source => "Source",
    }
}

/// Why the command line stops.
#[must_use]
pub fn fault(fault: &Fault, name_of: NameOf<'_>) -> String {
    match fault {
        Fault::NoCommand => "Say what to do; “sunlarder help” lists the commands.".into(),
        Fault::UnknownCommand(given) => {
            format!("There is no command “{given}”; “sunlarder help” lists those there are.")
        }
        Fault::UnknownOption(given) => {
            format!("This command has no option “{given}”; “sunlarder help” lists those it has.")
        }
        Fault::Missing(operand) => {
            format!("{} is missing; “sunlarder help” shows the order.", self::operand(*operand))
        }
        Fault::TooMuch(given) => {
            format!("“{given}” is more than this command takes; “sunlarder help” shows the order.")
        }
        Fault::JsonOrCsv => "Choose one of --json and --csv.".into(),
        Fault::UnknownFigure(given) => {
            format!(
                "There is no working of “{given}”: ask for capacity, budget, autonomy or month."
            )
        }
        Fault::NoMonth(given) => format!("“{given}” is no month; give a number from 1 to 12."),
        Fault::NotANumber(operand, given) => {
            format!("{} “{given}” is not a number.", self::operand(*operand))
        }
        Fault::NotAnInstant(given) => {
            format!("“{given}” is no instant; write it as 2026-06-21T12:00, in universal time.")
        }
        Fault::NoFile(given) => {
            format!("There is no file “{given}”, and it is not a link of a plan either.")
        }
        Fault::Unreadable(given) => format!("“{given}” cannot be read."),
        Fault::NotText(given) => format!("“{given}” is not text, so it is no plan."),
        Fault::Refused(problem) => problems::problem(problem, name_of),
        Fault::NothingUsed => {
            "This plan uses nothing, so there are no days of autonomy to work out.".into()
        }
    }
}

fn operand(operand: Operand) -> &'static str {
    match operand {
        Operand::Plan => "The plan (a file, a link, or -)",
        Operand::Latitude => "Latitude",
        Operand::Longitude => "Longitude",
        Operand::Instant => "The instant",
        Operand::Figure => "The figure",
        Operand::Month => "The month",
    }
}

/// A point on the globe: `53.28° N, 4.39° W`.
#[must_use]
pub fn point(latitude: Degrees, longitude: Degrees) -> String {
    let side = |value: Degrees, ahead, back| {
        let side = if value.0 < 0.0 { back } else { ahead };
        format!("{}° {side}", value.abs().0)
    };
    format!("{}, {}", side(latitude, "N", "S"), side(longitude, "E", "W"))
}

/// When a run starts, and how full.
#[must_use]
pub fn beginning(at: NaiveDateTime, charge: Percent) -> String {
    let date = at.date();
    let name = month(date.month0() as usize);
    let (day, year) = (date.day(), date.year());
    let (time, charge) = (at.format("%H:%M"), precise(charge.0));
    format!("from {day} {name} {year}, {time}, at {charge}\u{a0}%")
}

/// The heading of the budget of a month.
#[must_use]
pub fn budget_of(at: usize) -> String {
    format!("What you run, on a mean day of {}", month(at))
}

/// The full capacity under the circumstances of a month.
#[must_use]
pub fn full_at(temperature: Celsius, current: Amps) -> String {
    format!("Full, at {} and {}", amount(temperature), amount(current))
}

/// The usable capacity above a reserve.
#[must_use]
pub fn usable_above(reserve: Percent) -> String {
    format!("Usable, above the reserve of {}\u{a0}%", precise(reserve.0))
}

/// That something does not come within the longest run.
#[must_use]
pub fn not_within(days: usize) -> String {
    format!("not in {days} days")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_and_beginnings_read_well() {
        assert_eq!(point(Degrees(53.28), Degrees(-4.39)), "53.28° N, 4.39° W");
        assert_eq!(point(Degrees(-33.9), Degrees(18.4)), "33.9° S, 18.4° E");
        let at = chrono::NaiveDate::from_ymd_opt(2026, 11, 26).unwrap().and_hms_opt(16, 5, 0);
        let text = beginning(at.unwrap(), Percent(92.0)).replace('\u{a0}', " ");
        assert_eq!(text, "from 26 November 2026, 16:05, at 92 %");
    }
}
