//! Words of the command line.

use chrono::{Datelike, NaiveDateTime, Timelike};

use super::calendar::month;
use super::{problems, weather_file};
use crate::logbook::Symptom;
use crate::place::TemperatureOrigin;
use crate::quantity::{Amps, Celsius, Degrees, Percent};
use crate::words::command_line::{Caption, Fault, Operand};
use crate::words::{NameOf, Words};

/// How the command line is used.
pub const USAGE: &str = "\
sunlarder answers what runs, what is stored, what comes in and how long it lasts.

  sunlarder plan PLAN [--json | --csv] [--without-sun] [--weather FILE]
      budget and outlook; --csv gives the run, one row a step
  sunlarder working PLAN FIGURE [--month 1..12]
      how a figure comes about: capacity, budget, autonomy or month
  sunlarder size PLAN [--promise through | short-days=N | without-sun=N | trip=N]
                 [--chance PERCENT] [--season 5-9] [--price AH,W] [--weight AH,W]
                 [--json]
      how big bank and array must be to keep a promise, and what would help
  sunlarder fit PLAN [--json]
      how it is wired: conductors, fuses, shunt, what to buy, and the drawing (in JSON)
  sunlarder gauge PLAN [--json] [--mistake NAME] [--commission]
      how a gauge is set up, what it would show in a year, also with a mistake;
      --commission gives the sheet of checks
  sunlarder logbook PLAN READINGS [--gauge-ah AH] [--gauge-efficiency PERCENT]
                    [--day-first | --month-first] [--json]
      what readings of a gauge say: real use, real capacity, current past the shunt ...
  sunlarder symptom PLAN NAME [READINGS] [options of logbook]
      what may be behind it, and the meter test that decides: never-full, cuts-out-early,
      empty-by-morning, full-but-dim, jumps, falls-at-rest
  sunlarder care PLAN
      upkeep and winter lay-up of its bank
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

READINGS is a table of date, time, percentage or amp-hours, volts, amps; currents into the bank are positive.
PLAN is a file, a link or its code, or - for what comes on standard input.
North and east are positive. Instants are in universal time unless they state an offset.
With --without-sun the run goes on without any sun; shore power and engine stay.
With --language es any of them speaks Spanish.
A promise is through the season without a short day, at most N short days in ten years, N days without
any sun, or a trip of N days from full; with a chance of 90 % unless you state another.
--price and --weight state what an amp-hour of the bank and a watt of the array cost or weigh.
With --weather the plan also goes through the year of hourly weather in an EPW file.
";

/// A word or two beside a figure, or over a column.
// One flat list, longer than a function should be: it is a dictionary, and the compiler checks that it is complete.
#[must_use]
pub fn caption(caption: Caption) -> &'static str {
    use Caption as C;
    match caption {
        C::Unnamed => "Plan without a name",
        C::Generator => "generator",
        C::InverterIdle => "Inverter, idle draw",
        C::Standing => "Standing draw",
        C::Protection => "Battery protection",
        C::All => "All",
        C::WhatStored => "What you store",
        C::Rated => "Rated",
        C::Autonomy => "Days of autonomy",
        C::YearOfWeather => "In the year of weather you brought",
        C::BelowReserve => "below reserve",
        C::ShortOf => "loads short",
        C::HowLong => "How long it lasts",
        C::RealWeather => "In weather as it may be",
        C::OfTenYears => "of ten years above reserve",
        C::AverageWeather => "average weather",
        C::WithoutSun => "without sun",
        C::ToReserve => "To the reserve",
        C::ToEmpty => "To empty",
        C::ToFull => "To full",
        C::MonthByMonth => "Month by month, on a mean day",
        C::PeakSun => "peak sun hours",
        C::ComesIn => "comes in",
        C::Used => "used",
        C::Balance => "balance",
        C::Lowest => "lowest charge",
        C::KeepsUp => "keeps up",
        C::Yes => "yes",
        C::No => "no",
        C::InTheWay => "What stands in the way",
        C::Caution => "Mind",
        C::Obstacle => "Stops it",
        C::Estimates => {
            "These are estimates for planning. Makers' instructions, local codes and licensed practice come first."
        }
        C::Month => "month",
        C::Clearness => "clearness",
        C::Spread => "spread",
        C::Irradiation => "on the level",
        C::Outside => "outside the air",
        C::Temperature => "temperature",
        C::TemperatureFrom => "Temperature",
        C::Elevation => "Elevation",
        C::Azimuth => "Azimuth, clockwise from north",
        C::Declination => "Declination",
        C::EquationOfTime => "Equation of time",
        C::SolarTime => "Solar time",
        C::FacingSun => "Irradiance outside the air, facing the sun",
        C::OnTheLevel => "Irradiance outside the air, on the level",
        C::OfTheDay => "Irradiation of the day outside the air, on the level",
        C::Sunrise => "Sunrise, universal time",
        C::Sunset => "Sunset, universal time",
        C::PolarNight => "The sun does not rise on this day",
        C::PolarDay => "The sun does not set on this day",
        C::Source => "Source",
        C::ThePromise => "What is promised",
        C::WhatKeepsIt => "What keeps it",
        C::SmallestTogether => "The smallest that keep it together, as the map has them",
        C::Chance => "chance",
        C::TheBank => "bank",
        C::TheArray => "array",
        C::Price => "price",
        C::Weight => "weight",
        C::Cheapest => "Cheapest",
        C::Lightest => "Lightest",
        C::WouldHelp => "What would help",
        C::Unchanged => "As it is",
        C::ShortDaysYear => "short days a year",
        C::TrialsFailing => "trials that fail",
        C::Voltages => "System voltages and the largest currents they mean",
        C::SystemVoltage => "system",
        C::LoadsAtOnce => "to the loads",
        C::ArraysAtOnce => "from the array",
        C::AsItIs => "as planned",
    }
}

/// Why the command line stops.
#[must_use]
pub fn fault(words: Words, fault: &Fault, name_of: NameOf<'_>) -> String {
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
        Fault::UnknownLanguage(given) => {
            format!("“{given}” is no language that is spoken here; give en or es.")
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
        Fault::NoWeather(given) => format!("There is no weather file “{given}”."),
        Fault::Weather(fault) => weather_file::fault(words, fault),
        Fault::NoReadings(given) => format!("There is no file of readings “{given}”."),
        Fault::NothingRead(given, first) => {
            let why = first.as_ref().map(|(line, slip)| words.slip_in(*line, slip));
            let text = format!(
                "No line of “{given}” is a reading that can be used. {}",
                why.unwrap_or_default()
            );
            text.trim_end().to_owned()
        }
        Fault::UnknownSymptom(given) => {
            let all = Symptom::ALL.map(Symptom::name).join(", ");
            format!("There is no symptom “{given}”: ask for one of {all}.")
        }
        Fault::WeatherInCsv => {
            "The year of weather has no CSV: leave --csv or --weather away.".into()
        }
        Fault::UnknownMistake { given, known } => {
            format!("There is no mistake “{given}”; there are {known}.")
        }
        Fault::UnknownPromise(given) => format!(
            "There is no promise “{given}”: ask for through, short-days=N, without-sun=N or trip=N."
        ),
        Fault::NoSeason(given) => {
            format!("“{given}” is no season; give months by their numbers, as in 5-9 or 12,1.")
        }
        Fault::NotTwoNumbers(operand, given) => {
            format!(
                "{}: “{given}” is not two numbers with a comma between them.",
                self::operand(*operand)
            )
        }
        Fault::Beyond(operand, given, (least, most)) => format!(
            "{} has the number {}; it goes from {} to {}.",
            self::operand(*operand),
            words.as_given(*given),
            words.as_given(*least),
            words.as_given(*most)
        ),
        Fault::Refused(problem) => problems::problem(words, problem, name_of),
        Fault::Unfit(unfit) => words.unfit(unfit, name_of),
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
        Operand::Weather => "The weather file",
        Operand::Language => "The language",
        Operand::Promise => "The promise",
        Operand::Chance => "The chance in per cent",
        Operand::Season => "The season",
        Operand::Price => "The price",
        Operand::Weight => "The weight",
        Operand::Mistake => "The mistake",
        Operand::Readings => "The file of readings",
        Operand::Symptom => "The symptom",
        Operand::GaugeAh => "The gauge's capacity in amp-hours",
        Operand::GaugeEfficiency => "The gauge's charge efficiency in per cent",
    }
}

/// A point on the globe: `53.28° N, 4.39° W`.
#[must_use]
pub fn point(words: Words, latitude: Degrees, longitude: Degrees) -> String {
    let side = |value: Degrees, ahead, back| {
        let side = if value.0 < 0.0 { back } else { ahead };
        format!("{}° {side}", words.as_given(value.abs().0))
    };
    format!("{}, {}", side(latitude, "N", "S"), side(longitude, "E", "W"))
}

/// When a run starts, and how full.
#[must_use]
pub fn beginning(words: Words, at: NaiveDateTime, charge: Percent) -> String {
    let date = at.date();
    let name = month(date.month0() as usize);
    let (day, year) = (date.day(), date.year());
    let (time, charge) =
        (words.clock((at.hour() * 60 + at.minute()) as u16), words.precise(charge.0));
    format!("from {day} {name} {year}, {time}, at {charge}\u{a0}%")
}

/// The heading of the budget of a month.
#[must_use]
pub fn budget_of(at: usize) -> String {
    format!("What you run, on a mean day of {}", month(at))
}

/// The full capacity under the circumstances of a month.
#[must_use]
pub fn full_at(words: Words, temperature: Celsius, current: Amps) -> String {
    format!("Full, at {} and {}", words.amount(temperature), words.amount(current))
}

/// The usable capacity above a reserve.
#[must_use]
pub fn usable_above(words: Words, reserve: Percent) -> String {
    format!("Usable, above the reserve of {}\u{a0}%", words.precise(reserve.0))
}

/// That something does not come within the longest run.
#[must_use]
pub fn not_within(days: usize) -> String {
    format!("not in {days} days")
}

/// Where the temperature of a place comes from, and how far it may be off.
#[must_use]
pub fn temperature_origin(origin: TemperatureOrigin) -> &'static str {
    match origin {
        TemperatureOrigin::Own => "your own temperatures",
        TemperatureOrigin::Reanalysis => {
            "weather reanalysis of 2000 to 2025 over some 500 km; off by about 2 °C, by 5 °C in mountains"
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const WORDS: Words = Words::of(crate::words::Language::English);

    #[test]
    fn points_and_beginnings_read_well() {
        assert_eq!(point(WORDS, Degrees(53.28), Degrees(-4.39)), "53.28° N, 4.39° W");
        assert_eq!(point(WORDS, Degrees(-33.9), Degrees(18.4)), "33.9° S, 18.4° E");
        let at = chrono::NaiveDate::from_ymd_opt(2026, 11, 26).unwrap().and_hms_opt(16, 5, 0);
        let text = beginning(WORDS, at.unwrap(), Percent(92.0)).replace('\u{a0}', " ");
        assert_eq!(text, "from 26 November 2026, 16:05, at 92 %");
    }
}
