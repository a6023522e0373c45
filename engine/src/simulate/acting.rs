//! What acts on the bank in each hour of a day of any weather, from tables made once for a system.
//!
//! **Method.** Loads and chargers follow the clock, so a typical day for each month and kind of weekday stands for all. What the
//! arrays give follows the clearness of the day: a [`DayTable`] for each month, scaled by the [`Season`] to the day. Quarter-hours are
//! joined to hours.
//!
//! **Left out** against the quarter-hour run: refrigerators follow the month's air and not the day's; the clock's switch to summer time
//! counts from the month whose typical day has it; a controller's current limit is met by the table and not by the scaled day.

use super::almanac::{Almanac, Sunlight};
use super::days::{fed, typical_spec};
use super::flows::Forcing;
use crate::quantity::{Amps, Celsius, Watts};
use crate::sky::{DayTable, STEPS_PER_DAY, Season, SkyStep, Year, month_of_day};
use crate::source::Feed;
use crate::system::System;

/// Hours of a day.
pub(super) const HOURS: usize = 24;
/// Quarter-hours of an hour.
const PARTS: usize = STEPS_PER_DAY / HOURS;
/// Days of a week.
const WEEK: usize = 7;

/// What acts in each hour of a day.
pub type HourlyDay = [Forcing; HOURS];

/// What acts in a month whatever the weather, and what the arrays make of a clearness.
#[derive(Debug)]
struct Month {
    /// By weekday, Monday first; without the sun.
    days: [HourlyDay; WEEK],
    /// Air outside by hour.
    air: [Celsius; HOURS],
    power: DayTable<HOURS>,
    current: DayTable<HOURS>,
}

/// What acts on the bank of a system in any weather.
#[derive(Debug)]
pub struct Acting {
    /// The system.
    pub system: System,
    months: Vec<Month>,
    season: Season,
}

impl Acting {
    /// Makes the tables of a system.
    #[must_use]
    pub fn new(system: &System) -> Self {
        let mut sunlight = Sunlight::default();
        let mut almanac = Almanac::new(system, &mut sunlight);
        Self {
            system: system.clone(),
            months: (0..12).map(|month| Month::new(&mut almanac, month)).collect(),
            season: Season::new(system.site.latitude),
        }
    }

    /// What acts on a day of a synthetic year, from 0, that falls on this weekday, Monday being 0.
    #[must_use]
    pub fn day(&self, year: &Year, day: usize, weekday: usize) -> HourlyDay {
        let month = &self.months[month_of_day(day)];
        let clearness = year.clearness.get(day).copied().unwrap_or_default();
        let warmer = year.warmer.get(day).copied().unwrap_or_default();
        let scale = self.season.scale(day);
        let (mut power, mut current) = ([0.0; HOURS], [0.0; HOURS]);
        month.power.day(clearness).write(scale, &mut power);
        month.current.day(clearness).write(scale, &mut current);
        let mut acting = month.days[weekday % WEEK];
        for (hour, forcing) in acting.iter_mut().enumerate() {
            forcing.solar_power = Watts(power[hour]);
            forcing.solar_current = Amps(current[hour]);
            let air = month.air[hour] + warmer;
            forcing.temperature = self.system.bank.temperature(air, self.system.inside_least);
        }
        acting
    }

    /// Charge that sun, wind and water bring on a day, at nominal voltage \[Ah\].
    #[must_use]
    pub fn brought(&self, day: &HourlyDay) -> f64 {
        let nominal = self.system.bank.nominal;
        let at = |own: &Forcing| {
            let power = own.solar_power + own.turbine_power;
            (power / nominal + own.solar_current + own.turbine_current).0
        };
        day.iter().map(at).sum()
    }

    /// Charge that is used on a mean day of a month, at nominal voltage \[Ah\].
    #[must_use]
    pub fn mean_need(&self, month: usize) -> f64 {
        let nominal = self.system.bank.nominal;
        let days = self.months.get(month).map_or(&[][..], |month| &month.days);
        let sum: f64 =
            days.iter().flatten().map(|own| (own.demand / nominal + own.standing).0).sum();
        sum / WEEK as f64 + self.system.bank.protection.0 * HOURS as f64
    }
}

impl Month {
    fn new(almanac: &mut Almanac<'_>, month: usize) -> Self {
        let system = almanac.system;
        let clearness = system.climate.clearness.get(month).copied().unwrap_or_default();
        let spec = typical_spec(system, month);
        let table =
            |of: fn(Feed) -> f64| DayTable::new(&spec, clearness, |step| of(feed(system, step)));
        let air = hourly(|at| almanac.sky(month).steps[at].air.0).map(Celsius);
        Self {
            days: core::array::from_fn(|weekday| hours(almanac.day(month, weekday as u8))),
            air,
            power: table(|feed| feed.power.0),
            current: table(|feed| feed.current.0),
        }
    }
}

/// What all arrays give under a step of the sky.
fn feed(system: &System, step: &SkyStep) -> Feed {
    match &system.horizon {
        Some(horizon) => fed(system, &horizon.around(step)),
        None => fed(system, step),
    }
}

/// Means over the quarter-hours of each hour.
fn hourly(mut value: impl FnMut(usize) -> f64) -> [f64; HOURS] {
    core::array::from_fn(|hour| {
        (0..PARTS).map(|part| value(hour * PARTS + part)).sum::<f64>() / PARTS as f64
    })
}

/// A day in hours, without the sun and the weather's warmth.
fn hours(day: &[Forcing; STEPS_PER_DAY]) -> HourlyDay {
    let demand = hourly(|at| day[at].demand.0);
    let shore = hourly(|at| day[at].shore.0);
    let engine = hourly(|at| day[at].engine.0);
    let turbine_power = hourly(|at| day[at].turbine_power.0);
    let turbine_current = hourly(|at| day[at].turbine_current.0);
    let generator_allowed = hourly(|at| day[at].generator_allowed);
    core::array::from_fn(|hour| Forcing {
        demand: Watts(demand[hour]),
        standing: day[0].standing,
        shore: Amps(shore[hour]),
        engine: Amps(engine[hour]),
        turbine_power: Watts(turbine_power[hour]),
        turbine_current: Amps(turbine_current[hour]),
        generator_allowed: generator_allowed[hour],
        ..Forcing::default()
    })
}
