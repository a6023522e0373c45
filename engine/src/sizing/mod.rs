//! The simulation turned round: how big must it be to keep a promise?
//!
//! **Question answered.** Which banks and arrays keep what is promised ([`Promise`]), and which are the smallest of them?
//!
//! **Method.** Weather years and load hours are the same for all sizes, so they are worked out once ([`Course`]). A [`Map`] takes banks and
//! arrays of many sizes through them together ([`lanes`]): one row of cells, which is one bank beside many arrays, is one piece of
//! work. The [frontier](Map::frontier) of what keeps the promise is read off it. Whatever is suggested or answered is proved by the one
//! step of [`simulate`](crate::simulate) over the same hours ([`Proof`]), and made larger until it holds. A [`Study`]
//! is the whole question, in small pieces.
//!
//! **Weather.** Each year has a climate of its own, the same as the block of that number in an [`Ensemble`](crate::simulate::Ensemble). It
//! begins with the brightest month and a full bank, so that no year starts in want by decree, and goes round through the end of the
//! calendar.
//!
//! **How near the map is.** Over all examples its chances and those of the one step at the same sizes differ by what
//! `tests/tests/sizing.rs` states; what the map leaves out stands in [`lanes`] and `store.rs`.
//!
//! **Left out.** What [`Acting`] leaves out; batteries and modules of other sizes than the plan's; that a larger array may need another controller, a larger bank another place.

pub mod answers;
pub mod arrival;
mod axis;
pub mod course;
mod full;
pub mod help;
mod hours;
pub mod map;
pub mod promise;
mod search;
mod size;
mod stated;
mod store;
mod study;
mod suggest;
mod units;

pub use answers::{Voltage, largest_power, voltages};
pub use arrival::Arrival;
pub use axis::Axis;
pub use course::Course;
pub use full::Proof;
pub use help::{Change, Helped};
pub use map::{Map, Rates};
pub use promise::{Kind, Promise};
pub use search::Answer;
pub use size::Size;
pub use study::{Question, Standing, Study, Tilted};
pub use sunlarder_lanes as lanes;
pub use sunlarder_lanes::{Counts, Rows, Store, Track};
pub use units::{Units, Whole};

use crate::document::{Array, Document, Field, array_removed};
use crate::outlook::{Outlook, WEATHER_SEED};
use crate::quantity::{AmpHours, Amps, Celsius};
use crate::simulate::{Acting, Extent, typical_sky};
use crate::sky::{MONTH_DAYS, Weather, WeatherSpec, Year, best_tilt, equatorward};
use crate::system::System;

/// Weather years of a map.
pub const YEARS: usize = 20;
/// Months of a year.
const MONTHS: usize = 12;

/// A plan ready to be sized: what acts on it in every weather.
#[derive(Debug)]
pub struct Sizing {
    acting: Acting,
    /// Mean discharge current and temperature of the bank in each month, by which it holds more or less.
    months: [(Amps, Celsius); MONTHS],
    years: Vec<Year>,
    /// The day of the year with which every weather year begins.
    first: usize,
    /// Charge used, and that which one array of the plan's size brings, on a mean day of each month \[Ah\].
    daily: [(f64, f64); MONTHS],
}

impl Sizing {
    /// Makes a plan ready. The outlook is that of the system, the spread that of the daily clearness in each month.
    #[must_use]
    pub fn new(system: &System, outlook: &Outlook, spread: &[f64; MONTHS], years: usize) -> Self {
        let weather = Weather::new(WeatherSpec::of_place(&system.climate, spread), WEATHER_SEED);
        // The climates of an ensemble's blocks come behind those of its runs.
        let number = |year: usize| Extent::default().runs + year as u32;
        let month = |at: usize| outlook.months.get(at);
        let lit = |at: usize| month(at).map_or(0.0, |own| own.irradiation.0);
        let brightest = (0..MONTHS).max_by(|a, b| lit(*a).total_cmp(&lit(*b))).unwrap_or_default();
        Self {
            acting: Acting::new(system),
            months: core::array::from_fn(|at| {
                month(at).map_or((outlook.current, outlook.bank_temperature), |own| {
                    (own.current, own.bank_temperature)
                })
            }),
            years: (0..years).map(|year| weather.replica(number(year)).next_year()).collect(),
            first: MONTH_DAYS[..brightest].iter().sum(),
            daily: core::array::from_fn(|at| {
                month(at).map_or((0.0, 0.0), |own| (own.need.0, own.gain.solar.0))
            }),
        }
    }

    /// The system as the plan has it.
    #[must_use]
    pub fn system(&self) -> &System {
        &self.acting.system
    }

    /// What a bank of this size holds in each month.
    fn holds(&self, sized: &System) -> [AmpHours; MONTHS] {
        self.months
            .map(|(current, temperature)| sized.bank.capacity(current, temperature, &mut ()).full)
    }

    /// The month that counts in which most is used of what one array of the plan's size brings.
    #[must_use]
    pub fn tightest(&self, promise: &Promise) -> usize {
        let want = |month: usize| {
            let (need, brought) = self.daily[month];
            need / f64::max(brought, 1e-6 + 1e-6 * need)
        };
        let counted = (0..MONTHS).filter(|month| promise.season.has(*month as u8));
        counted.max_by(|a, b| want(*a).total_cmp(&want(*b))).unwrap_or_default()
    }
}

/// Whether a plan has an array that can be made larger.
#[must_use]
pub fn has_array(system: &System) -> bool {
    !system.arrays.is_empty()
}

/// A plan without arrays beside a module of a common size that faces the equator, at the best tilt for a month.
#[must_use]
pub fn beside_an_array(plan: &Document, system: &System, month: usize) -> Document {
    let azimuth = equatorward(system.site.latitude);
    let days = [typical_sky(system, month, &mut ())];
    let (tilt, _) = best_tilt(&days, &[1.0], azimuth, system.albedo);
    let mut plan = plan.clone();
    let volts = system.bank.charging_voltage();
    let mut array = Array { tilt_deg: tilt.0, azimuth_deg: azimuth.0, ..Array::default() };
    // As many in a row as the controller needs to start.
    let most = Field::InSeries.range().max;
    while array.in_series < most && !crate::source::Array::parse(&array, 0).starts(volts) {
        array.in_series += 1.0;
    }
    for (place, _) in plan.arrays.clone().iter().enumerate().rev().filter(|(_, own)| !own.on) {
        plan.arrays.remove(place);
        array_removed(&mut plan.checks, place as u16);
    }
    plan.arrays.push(array);
    plan
}
