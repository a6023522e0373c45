//! What the page and its worker say to each other.
//!
//! Every message is a flat list that begins with its kind and a serial. The serial is that of the plan it is about: a
//! newer plan makes all older ones stale, and nobody answers or heeds what is stale.
//!
//! | direction | list |
//! |---|---|
//! | page to worker | [`PLAN`], serial, link code, [bits](Habits::bits) of the habits of whoever reads the answers, the [numbers](climate_numbers) of the climate there; an empty code and no numbers while something is wrong with the plan |
//! | page to worker | [`WEATHER`], serial, twelve spreads of the daily clearness |
//! | page to worker | [`LEAF`], serial, number of the wish, place in [`Leaf::ALL`], argument |
//! | page to worker | [`YEAR`], serial (not heeded), link code of the plan that it is for, text of a weather file; without a text that of before is taken away |
//! | page to worker | [`REPLAY`], serial |
//! | worker to page | [`WRITTEN`], serial, number of the wish, text, numbers |
//! | worker to page | [`FORETOLD`], serial, share done, [sentences](crate::sentences), that of the verdict first, then the twelve months, the band: low, high and share that has reached the reserve, of each hour in turn \[%\] |
//! | worker to page | [`REPLAYED`], serial, sentences as above, hour from the start and state of charge \[%\] in turn; both are empty once the plan is at another place |

use sunlarder_engine::place::{MonthlyClimate, Origin, TemperatureOrigin};
use sunlarder_engine::quantity::Celsius;
use sunlarder_engine::sun::Site;
use sunlarder_engine::words::Habits;

use crate::leaf::{Leaf, Written};

/// A plan and the climate of its place.
pub const PLAN: u8 = 0;
/// What to write about the plan.
pub const LEAF: u8 = 1;
/// What was written.
pub const WRITTEN: u8 = 2;

/// What weather may do with the plan.
pub const WEATHER: u8 = 3;
/// What it does.
pub const FORETOLD: u8 = 4;

/// A year of weather that somebody brought, or that it is taken away.
pub const YEAR: u8 = 5;
/// To replay it.
pub const REPLAY: u8 = 6;
/// What it does with the plan.
pub const REPLAYED: u8 = 7;

/// Months in a row of the climate.
pub const MONTHS: usize = 12;
/// Origins of clearness by their numbers.
const ORIGINS: [Origin; 6] =
    [Origin::Own, Origin::Land, Origin::Model, Origin::Regression, Origin::Ocean, Origin::Guess];
/// Origins of temperature by their numbers.
const TEMPERATURE_ORIGINS: [TemperatureOrigin; 2] =
    [TemperatureOrigin::Own, TemperatureOrigin::Reanalysis];

/// What the page asks.
#[derive(Clone, Debug, PartialEq)]
pub enum Request {
    /// To turn to a plan; `climate` are the numbers of its place's climate.
    Plan {
        /// Its serial.
        serial: u32,
        /// Its link code.
        code: String,
        /// In which units to answer.
        habits: Habits,
        /// Numbers of the climate.
        climate: Vec<f64>,
    },
    /// To run the plan through weather; `spread` is that of the daily clearness in each month.
    Weather {
        /// The plan's serial.
        serial: u32,
        /// Standard deviation by month.
        spread: [f64; MONTHS],
    },
    /// To keep the text of a weather file for the place of a plan, in the place of any other; to keep none if there is no text.
    Year {
        /// Link code of that plan.
        code: String,
        /// Text of the file.
        text: Option<String>,
    },
    /// To take the plan through the year that is kept.
    Replay {
        /// The plan's serial.
        serial: u32,
    },
    /// To write about the plan.
    Leaf {
        /// The plan's serial.
        serial: u32,
        /// The page's number of the wish, given back with what was written.
        wish: u32,
        /// What to write.
        leaf: Leaf,
        /// What to write it of; see [`Leaf`].
        argument: String,
    },
}

/// What the worker answers.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// What was written about the plan.
    Written {
        /// The plan's serial.
        serial: u32,
        /// Number of the wish.
        wish: u32,
        /// What was written.
        written: Written,
    },
    /// What weather does with the plan, as far as it is known.
    Foretold {
        /// The plan's serial.
        serial: u32,
        /// Share of the work that is done.
        done: f64,
        /// [Sentences](crate::sentences): first what belongs to the verdict, then of ten years those in which each month stays
        /// over the reserve (nothing while no year is known), then one by one what the years come to.
        sentences: String,
        /// Low and high edge of the band and the share of the weathers that has reached the reserve, hour by hour \[%\].
        band: Vec<f64>,
        /// Whether the month of the start stays over the reserve in less than half of the years.
        seldom: bool,
    },
    /// What the year that was brought does with the plan.
    Replayed {
        /// The plan's serial.
        serial: u32,
        /// [Sentences](crate::sentences), or why the file was refused; empty if it is of another place than the plan.
        sentences: String,
        /// Hour and state of charge in turn \[h, %\].
        path: Vec<f64>,
    },
}

/// The twelve spreads from a row of numbers; nothing if it is no such row.
#[must_use]
pub fn spread_of(numbers: &[f64]) -> Option<[f64; MONTHS]> {
    numbers.try_into().ok()
}

/// A climate as a row of numbers: twelve clearnesses, twelve temperatures \[°C\], the numbers of the two origins.
#[must_use]
pub fn climate_numbers(climate: &MonthlyClimate) -> Vec<f64> {
    let place = |is: Option<usize>| is.map_or(-1.0, |place| place as f64);
    let origin = ORIGINS.iter().position(|own| *own == climate.origin);
    let temperature_origin =
        TEMPERATURE_ORIGINS.iter().position(|own| *own == climate.temperature_origin);
    let mut numbers = climate.clearness.to_vec();
    numbers.extend(climate.temperature.map(|temperature| temperature.0));
    numbers.extend([place(origin), place(temperature_origin)]);
    numbers
}

/// The climate of a site from its row of numbers; nothing if it is no such row.
#[must_use]
pub fn climate_of(site: Site, numbers: &[f64]) -> Option<MonthlyClimate> {
    let (clearness, rest) = numbers.split_first_chunk::<MONTHS>()?;
    let (temperature, rest) = rest.split_first_chunk::<MONTHS>()?;
    let [origin, temperature_origin] = rest else { return None };
    let place = |number: &f64| (*number >= 0.0).then_some(*number as usize);
    Some(MonthlyClimate {
        site,
        clearness: *clearness,
        temperature: temperature.map(Celsius),
        origin: *ORIGINS.get(place(origin)?)?,
        temperature_origin: *TEMPERATURE_ORIGINS.get(place(temperature_origin)?)?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use sunlarder_engine::quantity::Degrees;

    #[test]
    fn a_climate_survives_its_numbers() {
        let site = Site { latitude: Degrees(-33.9), longitude: Degrees(18.4) };
        for origin in ORIGINS {
            for temperature_origin in TEMPERATURE_ORIGINS {
                let climate = MonthlyClimate {
                    site,
                    clearness: core::array::from_fn(|month| 0.1 + month as f64 / 30.0),
                    temperature: core::array::from_fn(|month| Celsius(month as f64 - 5.3)),
                    origin,
                    temperature_origin,
                };
                assert_eq!(climate_of(site, &climate_numbers(&climate)), Some(climate));
            }
        }
    }

    #[test]
    fn other_rows_are_no_climate() {
        let site = Site { latitude: Degrees(0.0), longitude: Degrees(0.0) };
        let row = |origin: f64, length: usize| {
            let mut row = vec![0.5; length];
            row[length - 1] = 1.0;
            row[length - 2] = origin;
            row
        };
        assert!(climate_of(site, &row(1.0, 26)).is_some());
        for wrong in [row(1.0, 25), row(1.0, 27), row(6.0, 26), row(-1.0, 26), row(f64::NAN, 26)] {
            assert_eq!(climate_of(site, &wrong), None);
        }
        assert_eq!(climate_of(site, &[]), None);
    }

    #[test]
    fn every_leaf_has_its_number() {
        for (number, leaf) in Leaf::ALL.into_iter().enumerate() {
            assert_eq!(leaf as usize, number);
            assert_eq!(Leaf::from_number(number), Some(leaf));
        }
        assert_eq!(Leaf::from_number(Leaf::ALL.len()), None);
    }
}
