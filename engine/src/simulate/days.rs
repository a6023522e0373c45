//! What acts on the bank through a day: loads by the clock, sun by the sky, chargers by their hours.
//!
//! **Method.** Light is that of the date in the mean weather of its month, taken off by the horizon; everything else follows
//! the clock. A month's typical day is Klein's day of the month in standard or summer time as on that day of the starting
//! year.

use chrono::{Datelike, NaiveDate};

use super::almanac::LitDay;
use super::flows::Forcing;
use crate::load::{DayKind, Demand, presence};
use crate::quantity::{Amps, Celsius, Hours};
use crate::sky::{DaySpec, STEPS_PER_DAY, SkyDay, SkyStep, mean_day, mean_diffuse_share};
use crate::source::{Charger, Feed, Flow};
use crate::sun::MONTH_DAY;
use crate::system::System;
use crate::working::Trace;

/// Quarter-hours of an hour.
const STEPS_PER_HOUR: usize = STEPS_PER_DAY / 24;

/// What acts in each quarter-hour of a day.
pub type Day = [Forcing; STEPS_PER_DAY];

/// The sky of a date within the horizon of the place: its own sun in the mean weather of its month.
#[must_use]
pub fn sky_of(system: &System, date: NaiveDate) -> SkyDay {
    let offset = system.clock.offset_on(date);
    sky(system, date.month0() as usize, date.ordinal() as u16, offset, &mut ())
}

/// The sky of a month's typical day; in standard time or summer time as on that day of the starting year.
#[must_use]
pub fn typical_sky(system: &System, month: usize, trace: &mut impl Trace) -> SkyDay {
    let (day, offset) = typical_date(system, month);
    sky(system, month, day, offset, trace)
}

/// Diffuse share of the light of a month's typical day (ratio), before the horizon takes its part.
#[must_use]
pub fn typical_diffuse_share(system: &System, month: usize) -> f64 {
    mean_diffuse_share(&typical_spec(system, month))
}

/// A month's typical day in mean weather, before its sky is worked out.
pub(super) fn typical_spec(system: &System, month: usize) -> DaySpec {
    let (day, offset) = typical_date(system, month);
    spec(system, month, day, offset, &mut ())
}

fn typical_date(system: &System, month: usize) -> (u16, Hours) {
    let day = MONTH_DAY.get(month).copied().unwrap_or(1);
    let date = NaiveDate::from_yo_opt(system.start.date.year(), day.into());
    (day, system.clock.offset_on(date.unwrap_or(system.start.date)))
}

fn spec(
    system: &System,
    month: usize,
    day_of_year: u16,
    utc_offset: Hours,
    trace: &mut impl Trace,
) -> DaySpec {
    DaySpec {
        site: system.site,
        day_of_year,
        utc_offset,
        clearness: system.climate.clearness_of(month, trace),
        mean_temperature: system.climate.temperature.get(month).copied().unwrap_or_default(),
    }
}

fn sky(
    system: &System,
    month: usize,
    day_of_year: u16,
    utc_offset: Hours,
    trace: &mut impl Trace,
) -> SkyDay {
    let mut day = mean_day(&spec(system, month, day_of_year, utc_offset, trace), trace);
    if let Some(horizon) = &system.horizon {
        for step in &mut day.steps {
            *step = horizon.around(step);
        }
    }
    day
}

/// What all arrays give under a step of the sky, the horizon being taken off it.
pub(super) fn fed(system: &System, step: &SkyStep) -> Feed {
    let charging = system.bank.charging_voltage();
    let mut sum = Feed::default();
    for array in &system.arrays {
        let feed = array.feed(step, system.albedo, charging);
        sum.power += feed.power;
        sum.current += feed.current;
    }
    sum
}

/// Temperatures inside through a day.
#[must_use]
pub fn inside_air(system: &System, sky: &SkyDay) -> [Celsius; STEPS_PER_DAY] {
    let mut air = [Celsius::ZERO; STEPS_PER_DAY];
    for (air, step) in air.iter_mut().zip(&sky.steps) {
        *air = system.inside(step.air);
    }
    air
}

/// Current of a charger through a day.
fn charger(charger: Option<&Charger>, kind: DayKind) -> [Amps; STEPS_PER_DAY] {
    charger.map_or([Amps::ZERO; STEPS_PER_DAY], |charger| {
        presence(&charger.schedule, kind).map(|share| charger.limit * share)
    })
}

/// What acts on the bank through a day of this kind under this sky, the loads being known.
pub(super) fn day(
    system: &System,
    kind: DayKind,
    lit: &LitDay,
    demand: &[Demand; STEPS_PER_DAY],
) -> Day {
    let shore = charger(system.shore.as_ref(), kind);
    let engine = charger(system.alternator.as_ref(), kind);
    let generator = system.generator.as_ref();
    let allowed =
        generator.map_or([0.0; STEPS_PER_DAY], |generator| presence(&generator.schedule, kind));
    let turbine = |at: usize| {
        let turbine = system.turbine.as_ref();
        turbine.map_or(Flow::default(), |own| own.at(kind.month.into(), at / STEPS_PER_HOUR))
    };
    let mut day = [Forcing::default(); STEPS_PER_DAY];
    for (at, (forcing, step)) in day.iter_mut().zip(&lit.sky.steps).enumerate() {
        let turbine = turbine(at);
        *forcing = Forcing {
            demand: demand[at].at_bank(system.inverter.as_ref()),
            standing: system.standing,
            solar_power: lit.solar[at].power,
            solar_current: lit.solar[at].current,
            shore: shore[at],
            engine: engine[at],
            turbine_power: turbine.power,
            turbine_current: turbine.current,
            generator_allowed: allowed[at],
            temperature: system.bank.temperature(step.air, system.inside_least),
        };
    }
    day
}
