//! What the command line has to say, as typed messages; the words are in the folder of each language.

use super::{Language, NameOf, Words};
use crate::document::Problem;
use crate::fitting::Unfit;
use crate::logbook::Slip;
use crate::place::{TemperatureOrigin, WeatherFileFault};
use crate::quantity::{Amps, Celsius, Degrees, Percent};

/// Why the command line stops.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// No command was given.
    NoCommand,
    /// A command that there is not.
    UnknownCommand(String),
    /// An option that the command does not have.
    UnknownOption(String),
    /// Something the command needs was not given.
    Missing(Operand),
    /// More was given than the command takes.
    TooMuch(String),
    /// Two options that exclude each other.
    JsonOrCsv,
    /// A figure that has no working.
    UnknownFigure(String),
    /// A language that is not spoken.
    UnknownLanguage(String),
    /// A month that is none.
    NoMonth(String),
    /// Text where a number should be.
    NotANumber(Operand, String),
    /// An instant that cannot be read.
    NotAnInstant(String),
    /// A file that is not there.
    NoFile(String),
    /// A file that cannot be read.
    Unreadable(String),
    /// A file that is no text.
    NotText(String),
    /// A weather file that is not there.
    NoWeather(String),
    /// A weather file that is refused.
    Weather(WeatherFileFault),
    /// A file of readings that is not there.
    NoReadings(String),
    /// A file of readings of which no line can be used, with the first reason.
    NothingRead(String, Option<(usize, Slip)>),
    /// A symptom that there is not.
    UnknownSymptom(String),
    /// A year of weather and CSV, which has no room for it.
    WeatherInCsv,
    /// A promise that there is not.
    UnknownPromise(String),
    /// A mistake of a gauge that there is not.
    UnknownMistake {
        /// What was typed.
        given: String,
        /// All that there are.
        known: String,
    },
    /// A season that cannot be read.
    NoSeason(String),
    /// Something that is to be two numbers and is not.
    NotTwoNumbers(Operand, String),
    /// A number out of its range.
    Beyond(Operand, f64, (f64, f64)),
    /// A plan that is refused.
    Refused(Problem),
    /// A basis of wiring that is outside its tables.
    Unfit(Unfit),
    /// The figure does not exist for this plan: nothing is used, so it lasts for ever.
    NothingUsed,
}

impl Fault {
    /// Whether the command line itself was wrong, rather than what it was given.
    #[must_use]
    pub const fn is_usage(&self) -> bool {
        matches!(
            self,
            Self::NoCommand
                | Self::UnknownCommand(_)
                | Self::UnknownOption(_)
                | Self::Missing(_)
                | Self::TooMuch(_)
                | Self::JsonOrCsv
                | Self::WeatherInCsv
                | Self::UnknownFigure(_)
                | Self::UnknownSymptom(_)
                | Self::NoMonth(_)
                | Self::UnknownPromise(_)
                | Self::UnknownMistake { .. }
                | Self::NoSeason(_)
                | Self::NotTwoNumbers(..)
                | Self::Beyond(..)
                | Self::UnknownLanguage(_)
        )
    }
}

/// Something a command is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Operand {
    /// A file, a link, or `-`.
    Plan,
    /// A latitude.
    Latitude,
    /// A longitude.
    Longitude,
    /// An instant.
    Instant,
    /// A figure.
    Figure,
    /// A month.
    Month,
    /// A weather file.
    Weather,
    /// A language.
    Language,
    /// A promise.
    Promise,
    /// A chance.
    Chance,
    /// Months that count.
    Season,
    /// What an amp-hour and a watt cost.
    Price,
    /// What they weigh.
    Weight,
    /// A mistake of a gauge.
    Mistake,
    /// A file of readings.
    Readings,
    /// A symptom.
    Symptom,
    /// The capacity that a gauge was told.
    GaugeAh,
    /// The charge efficiency that it was told.
    GaugeEfficiency,
}

/// A word or two beside a figure, or over a column.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Caption {
    /// A plan without a name.
    Unnamed,
    /// What a generator does.
    Generator,
    /// The inverter's own draw.
    InverterIdle,
    /// The standing draw.
    Standing,
    /// The battery protection.
    Protection,
    /// All of it.
    All,
    /// Over what is stored.
    WhatStored,
    /// The rated capacity.
    Rated,
    /// Days of autonomy.
    Autonomy,
    /// Heading of the year of weather that was brought.
    YearOfWeather,
    /// Over the hours under the reserve.
    BelowReserve,
    /// Over the hours in which a load goes short.
    ShortOf,
    /// Over the times.
    HowLong,
    /// Heading of what decades of weather say.
    RealWeather,
    /// Heading of the years of ten in which a month stays over the reserve.
    OfTenYears,
    /// In average weather.
    AverageWeather,
    /// Without sun.
    WithoutSun,
    /// Time to the reserve.
    ToReserve,
    /// Time to empty.
    ToEmpty,
    /// Time to full.
    ToFull,
    /// Over the months.
    MonthByMonth,
    /// Peak sun hours.
    PeakSun,
    /// What comes in and is kept.
    ComesIn,
    /// What is used.
    Used,
    /// What is left or lacks.
    Balance,
    /// The lowest state of charge.
    Lowest,
    /// Whether the month keeps up.
    KeepsUp,
    /// It does.
    Yes,
    /// It does not.
    No,
    /// Over the obstacles.
    InTheWay,
    /// Before a caution.
    Caution,
    /// Before an obstacle.
    Obstacle,
    /// That the figures are estimates.
    Estimates,
    /// A month.
    Month,
    /// Clearness.
    Clearness,
    /// Spread of the clearness.
    Spread,
    /// Irradiation on the level.
    Irradiation,
    /// Irradiation outside the air.
    Outside,
    /// Air temperature.
    Temperature,
    /// Before where the temperature comes from.
    TemperatureFrom,
    /// Elevation of the sun.
    Elevation,
    /// Azimuth of the sun.
    Azimuth,
    /// Declination of the sun.
    Declination,
    /// Equation of time.
    EquationOfTime,
    /// Solar time.
    SolarTime,
    /// Irradiance outside the air, facing the sun.
    FacingSun,
    /// Irradiance outside the air on the level.
    OnTheLevel,
    /// Irradiation of the day outside the air.
    OfTheDay,
    /// Sunrise in universal time.
    Sunrise,
    /// Sunset in universal time.
    Sunset,
    /// The sun does not rise.
    PolarNight,
    /// The sun does not set.
    PolarDay,
    /// Before the source of a formula.
    Source,
    /// Heading of a promise.
    ThePromise,
    /// Heading of what keeps it.
    WhatKeepsIt,
    /// Heading of the smallest combinations.
    SmallestTogether,
    /// Over the chances.
    Chance,
    /// Over the banks.
    TheBank,
    /// Over the arrays.
    TheArray,
    /// Over the prices.
    Price,
    /// Over the weights.
    Weight,
    /// Before the cheapest combination.
    Cheapest,
    /// Before the lightest.
    Lightest,
    /// Heading of what would help.
    WouldHelp,
    /// Without any change.
    Unchanged,
    /// Over the short days a year.
    ShortDaysYear,
    /// Over the share of trials that fail.
    TrialsFailing,
    /// Heading of the system voltages.
    Voltages,
    /// Over the system voltages.
    SystemVoltage,
    /// Over the largest current of the loads.
    LoadsAtOnce,
    /// Over the current of the arrays.
    ArraysAtOnce,
    /// Beside the voltage of the plan.
    AsItIs,
}

impl Language {
    /// How the command line is used.
    #[must_use]
    pub fn usage(self) -> &'static str {
        speak!(self, command_line::USAGE)
    }

    /// A word or two beside a figure, or over a column.
    #[must_use]
    pub fn caption(self, caption: Caption) -> &'static str {
        speak!(self, command_line::caption(caption))
    }

    /// The heading of the budget of a month.
    #[must_use]
    pub fn budget_of(self, month: usize) -> String {
        speak!(self, command_line::budget_of(month))
    }

    /// That something does not come within the longest run.
    #[must_use]
    pub fn not_within(self, days: usize) -> String {
        speak!(self, command_line::not_within(days))
    }

    /// Where the temperature of a place comes from, and how far it may be off.
    #[must_use]
    pub fn temperature_origin(self, origin: TemperatureOrigin) -> &'static str {
        speak!(self, command_line::temperature_origin(origin))
    }
}

impl Words {
    /// Why the command line stops, in one sentence or two.
    #[must_use]
    pub fn fault(self, fault: &Fault, name_of: NameOf<'_>) -> String {
        speak!(self.language, command_line::fault(self, fault, name_of))
    }

    /// A point on the globe.
    #[must_use]
    pub fn point(self, latitude: Degrees, longitude: Degrees) -> String {
        speak!(self.language, command_line::point(self, latitude, longitude))
    }

    /// When a run starts, and how full.
    #[must_use]
    pub fn beginning(self, at: chrono::NaiveDateTime, charge: Percent) -> String {
        speak!(self.language, command_line::beginning(self, at, charge))
    }

    /// The full capacity under the circumstances of a month.
    #[must_use]
    pub fn full_at(self, temperature: Celsius, current: Amps) -> String {
        speak!(self.language, command_line::full_at(self, temperature, current))
    }

    /// The usable capacity above a reserve.
    #[must_use]
    pub fn usable_above(self, reserve: Percent) -> String {
        speak!(self.language, command_line::usable_above(self, reserve))
    }
}
