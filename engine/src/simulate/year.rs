//! A whole year, hour by hour: the state of charge that a carpet of days and hours shows.
//!
//! **Question answered.** When in the year, and at which hours, does the bank stand low?
//!
//! **Method.** The one step of this engine, in quarter-hours, through every date of the year in which the plan starts, and through
//! the whole year before it to settle, so that the first of January follows from a December and not from a decree. In the *mean
//! year* each date has its own sun in the mean weather of its month. In a *weather year* it has a day of synthetic weather as in an
//! ensemble, hour by hour; it is one of many that might be, and no forecast.
//!
//! **Left out.** What [`Acting`] leaves out, of a weather year; a 29 February has the weather of the 28th. A bank that changes its
//! capacity with the month keeps its state of charge; wear.

use chrono::{Datelike, NaiveDate};

use super::acting::Acting;
use super::almanac::LitDay;
use super::days::{Day, sky_of};
use super::flows::{Flows, Forcing};
use super::prepared::{Prepared, State};
use super::run::STEP;
use super::wants::Wants;
use crate::load::DayKind;
use crate::quantity::{AmpHours, Hours, Volts};
use crate::sky::{DAYS_PER_YEAR, STEPS_PER_DAY, Weather};
use crate::system::System;

/// Hours of a day.
const HOURS: usize = 24;
/// Quarter-hours of an hour.
const PARTS: usize = STEPS_PER_DAY / HOURS;
/// A day ends fuller than it began if it gains more than this (ratio).
const GAINS: f64 = 1e-6;

/// What an hour of the year came to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct YearHour {
    /// State of charge at its end (ratio).
    pub charge: f64,
    /// Mean voltage between the posts.
    pub volts: Volts,
    /// What came from all sources.
    pub came: AmpHours,
    /// What the loads got.
    pub load: AmpHours,
    /// How long in it the bank was under its reserve, or failed its loads.
    pub low: Hours,
}

/// What a month of the year came to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct YearMonth {
    /// Sums of what flowed.
    pub flows: Flows,
    /// Lowest state of charge (ratio).
    pub lowest: f64,
    /// Time under the reserve, or with loads that the bank failed.
    pub below_reserve: Hours,
    /// Time in which a load got less than it wanted.
    pub short: Hours,
    /// Days that end fuller than they began.
    pub fuller_days: u32,
    /// Days on which charging ended.
    pub full_days: u32,
    /// All its days.
    pub days: u32,
}

/// A plan through a year.
#[derive(Clone, Debug, PartialEq)]
pub struct YearRun {
    /// The first day: 1 January of the year in which the plan starts.
    pub first: NaiveDate,
    /// State of charge when it begins (ratio).
    pub initial: f64,
    /// The hours, 24 for each day.
    pub hours: Vec<YearHour>,
    /// January first.
    pub months: [YearMonth; 12],
}

impl YearRun {
    /// Days of the year.
    #[must_use]
    pub fn days(&self) -> usize {
        self.hours.len() / HOURS
    }

    /// The date of a day from 0.
    #[must_use]
    pub fn date(&self, day: usize) -> NaiveDate {
        let date = self.first.checked_add_days(chrono::Days::new(day as u64));
        date.unwrap_or(self.first)
    }

    /// Time of the year under the reserve, or with loads that the bank failed.
    #[must_use]
    pub fn below_reserve(&self) -> Hours {
        self.months.iter().map(|month| month.below_reserve).sum()
    }

    /// Takes a system through the year in which it starts, after the same dates once before; `day` says what acts on a day of the
    /// year, from 0, first of the year before and then of the year itself.
    fn through(
        system: &System,
        full: [AmpHours; 12],
        day: &mut dyn FnMut(bool, usize, NaiveDate) -> Day,
    ) -> Self {
        let banks = full.map(|full| {
            Prepared::new(&system.bank, full, STEP).with_generator(system.generator.as_ref())
        });
        let first = first_day(system);
        let dates: Vec<NaiveDate> = dates(first.year()).collect();
        let mut state = banks[11].rested(1.0);
        for (place, date) in dates.iter().enumerate() {
            for forcing in &day(false, place, *date) {
                state = banks[date.month0() as usize].step(state, forcing, &mut ()).state;
            }
        }
        let mut year = Self {
            first,
            initial: state.charge,
            hours: Vec::with_capacity(dates.len() * HOURS),
            months: [YearMonth { lowest: f64::INFINITY, ..YearMonth::default() }; 12],
        };
        let reserve = system.bank.reserve.ratio();
        for (place, date) in dates.iter().enumerate() {
            let month = date.month0() as usize;
            let acting = day(true, place, *date);
            state = year.day(&banks[month], reserve, month, state, &acting);
        }
        year
    }

    /// Goes on by a day of a month.
    fn day(
        &mut self,
        bank: &Prepared<'_>,
        reserve: f64,
        month: usize,
        mut state: State,
        acting: &Day,
    ) -> State {
        let month = &mut self.months[month];
        let began = state.charge;
        let mut filled = false;
        for parts in acting.as_chunks::<PARTS>().0 {
            let mut hour = YearHour::default();
            for forcing in parts {
                let after = bank.step(state, forcing, &mut ());
                state = after.state;
                hour.volts += after.volts / PARTS as f64;
                hour.came += after.flows.came();
                hour.load += after.flows.load;
                if state.charge < reserve || after.carried.is_some() {
                    hour.low += STEP;
                }
                if after.flows.unmet.0 > 0.0 {
                    month.short += STEP;
                }
                filled |= after.filled;
                month.flows += after.flows;
                month.lowest = month.lowest.min(state.charge);
            }
            hour.charge = state.charge;
            month.below_reserve += hour.low;
            self.hours.push(hour);
        }
        month.days += 1;
        month.full_days += u32::from(filled);
        month.fuller_days += u32::from(state.charge > began + GAINS);
        state
    }
}

/// The first of January of the year in which a plan starts.
fn first_day(system: &System) -> NaiveDate {
    let start = system.start.date;
    NaiveDate::from_yo_opt(start.year(), 1).unwrap_or(start)
}

/// Every date of a year.
fn dates(year: i32) -> impl Iterator<Item = NaiveDate> {
    (1..=366).filter_map(move |day| NaiveDate::from_yo_opt(year, day))
}

/// A system through a year of mean weather; `full` is what the bank holds in each month.
#[must_use]
pub fn mean_year(system: &System, full: [AmpHours; 12]) -> YearRun {
    let mut wants = Wants::default();
    let acting = |date: NaiveDate| {
        let lit = LitDay::under(sky_of(system, date), system);
        wants.acting(system, DayKind::of(date), &lit)
    };
    let days: Vec<Day> = dates(first_day(system).year()).map(acting).collect();
    let nothing = [Forcing::default(); STEPS_PER_DAY];
    let mut day = |_, place: usize, _| days.get(place).copied().unwrap_or(nothing);
    YearRun::through(system, full, &mut day)
}

/// A system through one year of weather that might be; `number` says which of the weathers of an ensemble.
#[must_use]
pub fn weather_year(
    system: &System,
    full: [AmpHours; 12],
    weather: &Weather,
    number: u32,
) -> YearRun {
    let tables = Acting::new(system);
    let mut replica = weather.replica(number);
    let years = [replica.next_year(), replica.next_year()];
    let mut day = |counted: bool, _, date: NaiveDate| {
        let weekday = date.weekday().num_days_from_monday() as usize;
        let hours = tables.day(&years[usize::from(counted)], day_of_weather(date), weekday);
        core::array::from_fn(|at| hours[at / PARTS])
    };
    YearRun::through(system, full, &mut day)
}

/// The day of a synthetic year that a date has: all its years have 365.
pub(super) fn day_of_weather(date: NaiveDate) -> usize {
    let leap_passed = date.leap_year() && date.ordinal0() >= 59;
    (date.ordinal0() as usize - usize::from(leap_passed)).min(DAYS_PER_YEAR - 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_leap_day_has_the_weather_of_the_day_before() {
        let place = |date: &str| day_of_weather(date.parse().unwrap());
        assert_eq!([place("2024-02-28"), place("2024-02-29"), place("2024-03-01")], [58, 58, 59]);
        assert_eq!([place("2023-03-01"), place("2023-12-31"), place("2024-12-31")], [59, 364, 364]);
    }
}
