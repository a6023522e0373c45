//! What stands on the printed sheet and around the code of a link, as typed messages; the words are in the folder of each
//! language. None of it is in the page: the worker writes the sheet.

use chrono::NaiveDate;

use super::{Language, Words};
use crate::document::{ControllerKind, Kept};
use crate::place::TemperatureOrigin;
use crate::quantity::{AmpHours, Amps, Degrees, Percent, Volts, Watts};

/// A word or two on the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OnSheet {
    /// What the sheet is.
    PlanningFigures,
    /// Over the names of the loads.
    Load,
    /// Over their power.
    Power,
    /// Over their hours.
    Hours,
    /// Over what a day takes or brings.
    ADay,
    /// Over shares of the day.
    Share,
    /// The inverter's own draw.
    InverterIdle,
    /// The last line of the loads.
    All,
    /// Heading of what was assumed.
    Assumed,
    /// Over who chose a figure.
    Whose,
    /// The person chose it.
    Yours,
    /// It is typical of its kind.
    Typical,
    /// It comes from the climate map.
    FromMap,
    /// It was worked out.
    WorkedOut,
    /// It is not stated, so nothing was checked by it.
    NotStated,
    /// The air of the month.
    Air,
    /// The bank's temperature in the month.
    BankTemperature,
    /// Peak sun hours of the month.
    Sun,
    /// The horizon.
    Horizon,
    /// A level one.
    Level,
    /// Hills and trees that the person entered.
    Entered,
    /// Charge that comes out again.
    ChargeEfficiency,
    /// Capacity that age has left.
    Health,
    /// Hours of the rated capacity.
    HourRate,
    /// Efficiency of the inverter at half load.
    InverterEfficiency,
    /// Losses of the arrays but heat.
    ArrayLosses,
    /// Lowest temperature on record.
    RecordLow,
    /// One battery.
    Batteries,
    /// The whole bank.
    Bank,
    /// What it holds in the month.
    Full,
    /// Limits of the bank.
    ChargeLimit,
    /// Limits of the bank.
    DischargeLimit,
    /// Where the bank stands.
    Stands,
    /// All arrays together.
    FromSun,
    /// From the engine.
    Engine,
    /// From shore power.
    Shore,
    /// From a turbine.
    Turbine,
    /// A generator.
    Generator,
    /// What is lost by charging.
    ChargingLoss,
    /// Nothing comes in.
    NothingComesIn,
    /// Nothing runs.
    NothingRuns,
    /// Heading of what stands on every sheet.
    Standing,
    /// That weather was not yet worked out.
    NoWeatherYet,
    /// Over the link.
    OpenThisPlan,
    /// What a code is, for those who do not see it.
    Code,
    /// That a link is too long for a code.
    CodeTooLong,
}

/// What stands on every sheet, in order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rule {
    /// Estimates, not a design.
    Estimates,
    /// Codes, makers, licensed practice.
    CodesFirst,
    /// What can burn.
    Fire,
    /// Loads that lives depend on.
    Lives,
}

impl Rule {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Estimates, Self::CodesFirst, Self::Fire, Self::Lives];
}

/// An array in numbers.
#[derive(Clone, Copy, Debug)]
pub struct ArrayInShort {
    /// Modules in all.
    pub modules: f64,
    /// Power of one.
    pub each: Watts,
    /// Its tilt.
    pub tilt: Degrees,
    /// The direction that it faces.
    pub azimuth: Degrees,
    /// Its controller...
    pub controller: ControllerKind,
    /// ...and what that gives at most.
    pub limit: Amps,
}

impl Language {
    /// A word or two on the sheet.
    #[must_use]
    pub fn on_sheet(self, what: OnSheet) -> &'static str {
        speak!(self, sheet::on_sheet(what))
    }

    /// What stands on every sheet.
    #[must_use]
    pub fn rule(self, rule: Rule) -> &'static str {
        speak!(self, sheet::rule(rule))
    }

    /// On which day the sheet was worked out.
    #[must_use]
    pub fn worked_out_on(self, date: NaiveDate) -> String {
        speak!(self, sheet::worked_out_on(date))
    }

    /// On which day the run of a plan begins.
    #[must_use]
    pub fn begins_on(self, date: NaiveDate) -> String {
        speak!(self, sheet::begins_on(date))
    }

    /// Heading of the loads on a mean day of a month.
    #[must_use]
    pub fn runs_in(self, month: usize) -> String {
        speak!(self, sheet::runs_in(month))
    }

    /// Where the temperatures of a place come from, as a sentence.
    #[must_use]
    pub fn temperatures_from(self, origin: TemperatureOrigin) -> &'static str {
        speak!(self, sheet::temperatures_from(origin))
    }
}

impl Words {
    /// An array in a line.
    #[must_use]
    pub fn array_in_short(self, array: &ArrayInShort) -> String {
        speak!(self.language, sheet::array_in_short(self, array))
    }

    /// Batteries of a bank in a line.
    #[must_use]
    pub fn batteries(self, series: f64, strings: f64, volts: Volts, charge: AmpHours) -> String {
        speak!(self.language, sheet::batteries(self, series, strings, volts, charge))
    }

    /// Where a bank stands.
    #[must_use]
    pub fn kept(self, kept: Kept) -> String {
        speak!(self.language, sheet::kept(self, kept))
    }

    /// A charger by what it gives at most.
    #[must_use]
    pub fn up_to(self, limit: Amps) -> String {
        speak!(self.language, sheet::up_to(self, limit))
    }

    /// A generator by its charger and when it starts and stops.
    #[must_use]
    pub fn generator_in_short(self, limit: Amps, start: Percent, stop: Percent) -> String {
        speak!(self.language, sheet::generator_in_short(self, limit, start, stop))
    }

    /// The usable charge above a reserve.
    #[must_use]
    pub fn above_reserve(self, reserve: Percent) -> String {
        speak!(self.language, sheet::above_reserve(self, reserve))
    }
}
