//! What all sizes go through: years of weather, trips, or days without sun.
//!
//! **Method.** A course is made of stretches, each of which begins with a full bank at midnight. A year is one stretch; trials of some
//! days follow each other through the years. *Without sun* they begin with the typical days of each month, on every weekday. The
//! hours are worked out stretch by stretch, once for all sizes.

use core::ops::Range;

use sunlarder_lanes::{Counts, HOURS, HoursOfDay};

use super::hours::hours_of;
use super::promise::Promise;
use super::{MONTHS, Sizing};
use crate::quantity::{Amps, Celsius, Watts};
use crate::simulate::HourlyDay;
use crate::sky::{DAYS_PER_YEAR, MONTH_DAYS, Year, month_of_day};

/// Days of a week.
const WEEK: usize = 7;

/// A day that is gone through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Day {
    /// Which weather year; none without sun.
    year: Option<usize>,
    /// Of the year, from 0.
    day: usize,
    weekday: usize,
}

impl Day {
    /// Its month, January being 0.
    pub(super) fn month(self) -> usize {
        month_of_day(self.day)
    }
}

/// Days in a row.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Stretch {
    /// Which of the years its counts belong to.
    pub(super) unit: usize,
    pub(super) days: Vec<Day>,
}

/// What all sizes go through.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    pub(super) stretches: Vec<Stretch>,
    /// Days of a trial; none where years are gone through.
    pub(super) every: Option<usize>,
    /// How many trials begin in each month of each year; nothing where years are gone through.
    pub trials: Vec<Counts>,
}

impl Course {
    /// That by which a promise is judged.
    #[must_use]
    pub fn of(sizing: &Sizing, promise: &Promise) -> Self {
        let every = promise.trial_days();
        let stretches = match every {
            Some(days) if promise.is_dark() => dark(days),
            _ => years(sizing),
        };
        let units = if promise.is_dark() { 1 } else { sizing.years.len() };
        let mut trials = vec![Counts::default(); units];
        if let Some(days) = every {
            for stretch in &stretches {
                for trial in stretch.days.chunks_exact(days) {
                    trials[stretch.unit][trial[0].month()] += 1;
                }
            }
        }
        Self { stretches, every, trials }
    }

    /// Years for which things are counted.
    #[must_use]
    pub fn years(&self) -> usize {
        self.trials.len()
    }

    /// Hours of all stretches.
    #[must_use]
    pub fn hours(&self) -> usize {
        self.stretches.iter().map(|stretch| stretch.days.len() * HOURS).sum()
    }

    /// The stretches that follow on one at this place, as many as make a piece of work of about so many days: at least one while there is one.
    pub(super) fn piece(&self, from: usize, days: usize) -> Range<usize> {
        let mut left = days;
        let rest = self.stretches.get(from..).unwrap_or_default();
        let wanted = rest.iter().take_while(|stretch| {
            let begins = left > 0;
            left = left.saturating_sub(stretch.days.len());
            begins
        });
        from..from + wanted.count()
    }

    /// How many stretches belong to the first so many years.
    pub(super) fn within(&self, years: usize) -> usize {
        self.stretches.iter().take_while(|stretch| stretch.unit < years).count()
    }

    /// The hours of a stretch.
    pub(super) fn hours_of(&self, sizing: &Sizing, stretch: &Stretch) -> Vec<HoursOfDay> {
        let hours = |day: &Day| HoursOfDay {
            month: day.month() as u8,
            hours: hours_of(&sizing.acting, &sizing.day(*day)),
        };
        stretch.days.iter().map(hours).collect()
    }
}

fn years(sizing: &Sizing) -> Vec<Stretch> {
    let day = |unit: usize, place: usize| Day {
        year: Some(unit),
        day: (sizing.first + place) % DAYS_PER_YEAR,
        weekday: (unit * DAYS_PER_YEAR + place) % WEEK,
    };
    let days = |unit: usize| (0..DAYS_PER_YEAR).map(|place| day(unit, place)).collect();
    let stretch = |unit| Stretch { unit, days: days(unit) };
    (0..sizing.years.len()).map(stretch).collect()
}

/// So many days from the first of each month on, beginning on each weekday.
fn dark(length: usize) -> Vec<Stretch> {
    let stretch = |month: usize, weekday: usize| {
        let first: usize = MONTH_DAYS[..month].iter().sum();
        let day = |place: usize| Day {
            year: None,
            day: (first + place) % DAYS_PER_YEAR,
            weekday: (weekday + place) % WEEK,
        };
        Stretch { unit: 0, days: (0..length).map(day).collect() }
    };
    (0..MONTHS).flat_map(|month| (0..WEEK).map(move |day| stretch(month, day))).collect()
}

impl Sizing {
    /// What acts on the plan's own bank and array on a day.
    pub(super) fn day(&self, own: Day) -> HourlyDay {
        let Some(year) = own.year.and_then(|year| self.years.get(year)) else {
            let dull =
                Year { clearness: [0.0; DAYS_PER_YEAR], warmer: [Celsius::ZERO; DAYS_PER_YEAR] };
            let mut day = self.acting.day(&dull, own.day, own.weekday);
            for hour in &mut day {
                (hour.solar_power, hour.solar_current) = (Watts::ZERO, Amps::ZERO);
            }
            return day;
        };
        self.acting.day(year, own.day, own.weekday)
    }
}
