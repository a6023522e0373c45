//! The days of a plan, each computed once: the sun by its causes, the loads by the plan.
//!
//! The dear part of a day is its sun: its way over the sky and what falls on each array. It follows from the place, the arrays and
//! the date, and not from the loads, so a [`Sunlight`] may be kept from one plan to the next: what depends on something that
//! has changed is forgotten, by comparing the causes and not by anybody's promise.

use std::rc::Rc;

use chrono::{Datelike, Days, NaiveDate};

use super::days::{Day, day, fed, sky_of, typical_sky};
use super::wants::Wants;
use crate::document::Schedule;
use crate::load::{DayDemand, DayKind};
use crate::place::{Clock, MonthlyClimate};
use crate::quantity::Volts;
use crate::sky::{Horizon, STEPS_PER_DAY, SkyDay};
use crate::source::{Array, Feed};
use crate::sun::Site;
use crate::system::System;

/// A day's sky and what the arrays make of it.
#[derive(Clone, Debug, PartialEq)]
pub struct LitDay {
    /// The sky.
    pub sky: SkyDay,
    /// What all arrays together give in each step.
    pub solar: [Feed; STEPS_PER_DAY],
}

impl LitDay {
    pub(super) fn under(sky: SkyDay, system: &System) -> Self {
        let mut solar = [Feed::default(); STEPS_PER_DAY];
        for (sum, step) in solar.iter_mut().zip(&sky.steps) {
            *sum = fed(system, step);
        }
        Self { sky, solar }
    }
}

/// All that the sun of a plan depends on.
#[derive(Clone, Debug, PartialEq)]
struct Causes {
    site: Site,
    clock: Clock,
    climate: MonthlyClimate,
    first: NaiveDate,
    albedo: f64,
    horizon: Option<Horizon>,
    arrays: Vec<Array>,
    charging: Volts,
}

impl Causes {
    fn of(system: &System) -> Self {
        Self {
            site: system.site,
            clock: system.clock,
            climate: system.climate.clone(),
            first: system.start.date,
            albedo: system.albedo,
            horizon: system.horizon.clone(),
            arrays: system.arrays.clone(),
            charging: system.bank.charging_voltage(),
        }
    }
}

/// The sun of a plan, kept for the next plan that shares its causes.
#[derive(Clone, Debug, Default)]
pub struct Sunlight {
    causes: Option<Causes>,
    months: Vec<(usize, LitDay)>,
    dates: Vec<LitDay>,
}

impl Sunlight {
    /// Forgets what follows from other causes than a system's.
    fn turn_to(&mut self, system: &System) {
        let causes = Some(Causes::of(system));
        if self.causes != causes {
            *self = Self { causes, ..Self::default() };
        }
    }

    fn month(&mut self, system: &System, month: usize) -> &LitDay {
        let known = self.months.iter().position(|(own, _)| *own == month);
        let place = known.unwrap_or_else(|| {
            let sky = typical_sky(system, month, &mut ());
            self.months.push((month, LitDay::under(sky, system)));
            self.months.len() - 1
        });
        &self.months[place].1
    }

    fn date(&mut self, system: &System, place: usize, date: NaiveDate) -> &LitDay {
        while self.dates.len() <= place {
            let back = Days::new((place - self.dates.len()) as u64);
            let sky = sky_of(system, date.checked_sub_days(back).unwrap_or(date));
            self.dates.push(LitDay::under(sky, system));
        }
        &self.dates[place]
    }
}

/// What loads want on a typical day, and what acts on the bank then.
struct TypicalDay {
    month: usize,
    weekday: u8,
    demand: Rc<DayDemand>,
    acting: Day,
}

/// Days of a week.
const WEEK: usize = 7;

/// The first weekday with the same schedules as each weekday, Monday being 0.
fn alike(system: &System) -> [u8; WEEK] {
    let chargers = system.shore.iter().chain(&system.alternator).map(|charger| &charger.schedule);
    let schedules = system.loads.iter().map(|load| &load.schedule).chain(chargers);
    // What a schedule tells apart: whether it holds on the day and, if it can run over midnight, on the day before.
    let told = |schedule: &Schedule, day: usize| {
        let before = schedule.runs_over_midnight() && schedule.days.has(((day + 6) % WEEK) as u8);
        (schedule.days.has(day as u8), before)
    };
    let schedules: Vec<&Schedule> = schedules.collect();
    let same = |a: usize, b: usize| schedules.iter().all(|own| told(own, a) == told(own, b));
    core::array::from_fn(|day| (0..day).find(|first| same(*first, day)).unwrap_or(day) as u8)
}

/// The days of one system.
pub struct Almanac<'a> {
    /// The system.
    pub system: &'a System,
    sunlight: &'a mut Sunlight,
    /// Each in a box: they are large, and a growing list moves what it holds.
    typical: Vec<Box<TypicalDay>>,
    run: Vec<Day>,
    wants: Wants,
    /// The weekday that each weekday is like: the first with the same schedules.
    alike: [u8; WEEK],
}

impl<'a> Almanac<'a> {
    /// The almanac of a system, over what is known of its sun.
    #[must_use]
    pub fn new(system: &'a System, sunlight: &'a mut Sunlight) -> Self {
        sunlight.turn_to(system);
        let (typical, run, wants) = Default::default();
        Self { system, sunlight, typical, run, wants, alike: alike(system) }
    }

    /// The weekdays that stand for a week, those like an earlier one left out, each with its share of the days.
    #[must_use]
    pub fn week(&self) -> Vec<(u8, f64)> {
        let share = |own: u8| {
            let count = self.alike.iter().filter(|like| **like == own).count();
            (own, count as f64 / WEEK as f64)
        };
        (0..WEEK as u8).filter(|own| self.alike[usize::from(*own)] == *own).map(share).collect()
    }

    /// The sky of a month's typical day.
    pub fn sky(&mut self, month: usize) -> &SkyDay {
        &self.sunlight.month(self.system, month).sky
    }

    /// The weekday that stands for a day after a Monday: the first with the same schedules.
    #[must_use]
    pub fn kind_of(&self, place: usize) -> u8 {
        self.alike[place % WEEK]
    }

    /// What acts on the bank on the days that stand for a week of a month, each with its share.
    pub fn week_of(&mut self, month: usize) -> Vec<(&Day, f64)> {
        let week = self.week();
        let places: Vec<_> =
            week.iter().map(|(own, share)| (self.place_of(month, *own), *share)).collect();
        places.into_iter().map(|(at, share)| (&self.typical[at].acting, share)).collect()
    }

    fn typical(&mut self, month: usize, weekday: u8) -> &TypicalDay {
        let place = self.place_of(month, weekday);
        &self.typical[place]
    }

    /// Where a month's typical day lies; it is worked out when it is first asked for.
    fn place_of(&mut self, month: usize, weekday: u8) -> usize {
        let weekday = self.alike[usize::from(weekday) % WEEK];
        let known =
            self.typical.iter().position(|own| (own.month, own.weekday) == (month, weekday));
        known.unwrap_or_else(|| {
            let kind = DayKind::inside(month as u8, weekday);
            let lit = self.sunlight.month(self.system, month);
            let demand = self.wants.on(self.system, kind, &lit.sky);
            let acting = day(self.system, kind, lit, &demand.steps);
            self.typical.push(Box::new(TypicalDay { month, weekday, demand, acting }));
            self.typical.len() - 1
        })
    }

    /// What the loads want on a month's typical day, Monday being weekday 0.
    pub fn demand(&mut self, month: usize, weekday: u8) -> &DayDemand {
        &self.typical(month, weekday).demand
    }

    /// What acts on the bank through that day.
    pub fn day(&mut self, month: usize, weekday: u8) -> &Day {
        &self.typical(month, weekday).acting
    }

    /// What acts on the bank on a day of the run, the first being 0; nothing past the end of the calendar.
    pub fn date(&mut self, place: usize) -> Option<&Day> {
        while self.run.len() <= place {
            let at = self.run.len();
            let date = self.system.start.date.checked_add_days(Days::new(at as u64))?;
            let lit = self.sunlight.date(self.system, at, date);
            self.run.push(self.wants.acting(self.system, DayKind::of(date), lit));
        }
        self.run.get(place)
    }

    /// The month of the start, January being 0.
    #[must_use]
    pub fn month_of_start(&self) -> usize {
        self.system.start.date.month0() as usize
    }
}
