//! What the plan expects of a day, hour by hour: what is used, and what comes in.
//!
//! **Method.** The typical day of each month that has readings, at nominal voltage; sun and other sources apart. How far the sun of
//! single days strays is that of the place's clearness over its mean.

use chrono::{Datelike, NaiveDateTime, TimeDelta, Timelike};

use crate::outlook::discharge_current;
use crate::place::Origin;
use crate::quantity::{AmpHours, Amps, Celsius, Volts};
use crate::simulate::{Almanac, Sunlight};
use crate::sky::{Trust, persistence};
use crate::system::System;

use super::reading::Readings;

const HOURS: usize = 24;
const WEEK: usize = 7;
/// Longest stretch that is added up \[hours\].
const LONGEST: usize = HOURS * 32;
/// Least spread of daily yields over their mean: no place has less.
const LEAST_SPREAD: f64 = 0.05;

/// Currents of the plan through the hours of a month's days \[A\].
#[derive(Clone, Debug)]
struct Month {
    month: usize,
    used: [[f64; HOURS]; WEEK],
    solar: [[f64; HOURS]; WEEK],
    other: [[f64; HOURS]; WEEK],
    /// Hours whose light or other source charges.
    lit: [bool; HOURS],
}

/// What the plan expects between two moments.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Stretch {
    /// Length \[h\].
    pub hours: f64,
    /// Used \[Ah\].
    pub used: f64,
    /// Used while nothing charges \[Ah\].
    pub used_unlit: f64,
    /// From the sun \[Ah\].
    pub solar: f64,
    /// From all else \[Ah\].
    pub other: f64,
    /// Hours in which something charges.
    pub lit: f64,
}

/// What a plan expects, for the months of some readings.
#[derive(Clone, Debug)]
pub struct Expected {
    months: Vec<Month>,
    /// What the bank holds between full and empty by the plan.
    pub full: AmpHours,
    /// Mean discharge current.
    pub current: Amps,
    /// Temperature of the bank.
    pub temperature: Celsius,
    /// Standard deviation of the logarithm of a day's yield.
    pub day_spread: f64,
    /// What one day keeps of the deviation of the one before (ratio).
    pub keeps: f64,
    /// Standard deviation of the logarithm of what is known of the climate.
    pub doubt: f64,
}

impl Expected {
    /// What a plan expects in the months of its readings; `spread` is that of the daily clearness of each month.
    #[must_use]
    pub fn of(system: &System, spread: &[f64; 12], readings: &Readings) -> Self {
        let mut sunlight = Sunlight::default();
        let mut almanac = Almanac::new(system, &mut sunlight);
        let mut present: Vec<usize> = Vec::new();
        for reading in readings.all() {
            let month = reading.at.month0() as usize;
            if !present.contains(&month) {
                present.push(month);
            }
        }
        let newest = readings.newest().map_or(system.start.date.month0(), |own| own.at.month0());
        let newest = newest as usize;
        let months: Vec<Month> =
            present.iter().map(|month| Month::of(&mut almanac, *month)).collect();
        let day = *almanac.day(newest, 0);
        let temperature = day.iter().map(|own| own.temperature.0).sum::<f64>() / day.len() as f64;
        let current = discharge_current(system, &[(&day, 1.0)]);
        let temperature = Celsius(temperature);
        let (latitude, climate) = (system.site.latitude, &system.climate);
        let mean = climate.clearness.get(newest).copied().unwrap_or(0.5);
        let spread = spread.get(newest).copied().unwrap_or_default() / f64::max(mean, 0.05);
        let trust = if climate.origin == Origin::Own { Trust::Own } else { Trust::Grid };
        let (all, each) = trust.doubt();
        Self {
            months,
            full: system.bank.capacity(current, temperature, &mut ()).full,
            current,
            temperature,
            day_spread: f64::max(libm::log1p(spread * spread).sqrt(), LEAST_SPREAD),
            keeps: persistence(latitude),
            doubt: (all * all + each * each).sqrt(),
        }
    }

    /// What it expects between two moments; at most a month of it.
    #[must_use]
    pub fn between(&self, from: NaiveDateTime, to: NaiveDateTime) -> Stretch {
        let mut sum = Stretch::default();
        let mut at = from;
        for _ in 0..LONGEST {
            let hour = at.hour() as usize;
            let begun = TimeDelta::seconds(i64::from(at.minute() * 60 + at.second()));
            let next = at
                .checked_sub_signed(begun)
                .and_then(|begin| begin.checked_add_signed(TimeDelta::hours(1)))
                .unwrap_or(to);
            let end = if next < to { next } else { to };
            let hours = (end - at).num_seconds() as f64 / 3600.0;
            let month = at.month0() as usize;
            let day = at.weekday().num_days_from_monday() as usize;
            if let Some(own) = self.months.iter().find(|own| own.month == month) {
                own.add(&mut sum, day, hour, hours);
            }
            at = end;
            if at >= to {
                break;
            }
        }
        sum
    }

    /// What is used from the last hour that charges until a moment \[Ah\], and how long that is \[h\]; of at most a day.
    #[must_use]
    pub fn since_charging(&self, at: NaiveDateTime) -> (f64, f64) {
        let (mut used, mut hours) = (0.0, 0.0);
        let mut to = at;
        for _ in 0..HOURS {
            // The hour that ends now; on the hour it is the one before.
            let from = if to.minute() == 0 && to.second() == 0 {
                to.checked_sub_signed(TimeDelta::hours(1))
            } else {
                let begun = i64::from(to.minute() * 60 + to.second());
                to.checked_sub_signed(TimeDelta::seconds(begun))
            };
            let Some(from) = from else { break };
            let own = self.between(from, to);
            if own.solar + own.other > own.used {
                break;
            }
            used += own.used;
            hours += own.hours;
            to = from;
        }
        (used, hours)
    }

    /// The current that the plan expects at a moment, into the bank positive, in mean weather \[A\].
    #[must_use]
    pub fn current(&self, at: NaiveDateTime) -> f64 {
        let day = at.weekday().num_days_from_monday() as usize;
        let hour = at.hour() as usize;
        let own = self.months.iter().find(|own| own.month == at.month0() as usize);
        own.map_or(0.0, |own| own.solar[day][hour] + own.other[day][hour] - own.used[day][hour])
    }
}

impl Month {
    fn of(almanac: &mut Almanac<'_>, month: usize) -> Self {
        let bank = &almanac.system.bank;
        let (nominal, protection) = (bank.nominal, bank.protection.0);
        let charging: Volts = bank.charging_voltage();
        let mut own = Self {
            month,
            used: [[0.0; HOURS]; WEEK],
            solar: [[0.0; HOURS]; WEEK],
            other: [[0.0; HOURS]; WEEK],
            lit: [false; HOURS],
        };
        for weekday in 0..WEEK {
            let day = *almanac.day(month, weekday as u8);
            let parts = day.len() / HOURS;
            for (at, acting) in day.iter().enumerate() {
                let (hour, share) = (at / parts, 1.0 / parts as f64);
                let used = acting.demand / nominal + acting.standing;
                let solar = acting.solar_power / charging + acting.solar_current;
                let turbine = acting.turbine_power / charging + acting.turbine_current;
                let other = acting.shore + acting.engine + turbine;
                own.used[weekday][hour] += (used.0 + protection) * share;
                own.solar[weekday][hour] += solar.0 * share;
                own.other[weekday][hour] += other.0 * share;
            }
        }
        let all = |hour: usize| -> f64 {
            (0..WEEK).map(|day| own.solar[day][hour] + own.other[day][hour]).sum()
        };
        let most = (0..HOURS).map(all).fold(0.0, f64::max);
        let lit = core::array::from_fn(|hour| all(hour) > 0.1 * most);
        Self { lit, ..own }
    }

    fn add(&self, sum: &mut Stretch, day: usize, hour: usize, hours: f64) {
        let used = self.used[day][hour] * hours;
        sum.hours += hours;
        sum.used += used;
        sum.solar += self.solar[day][hour] * hours;
        sum.other += self.other[day][hour] * hours;
        if self.lit[hour] {
            sum.lit += hours;
        } else {
            sum.used_unlit += used;
        }
    }
}
