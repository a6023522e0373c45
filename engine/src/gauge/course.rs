//! The truth that a gauge is held against: each quarter-hour of a plan in weather that might be.

use chrono::NaiveDateTime;

use super::counter::Unseen;
use crate::outlook::{Outlook, WEATHER_SEED, clock_time};
use crate::quantity::{AmpHours, Amps, Hours, Volts};
use crate::simulate::{STEP, pass};
use crate::sky::{Weather, WeatherSpec};
use crate::system::System;

/// Which capacity the bank truly has through a course.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Truth {
    /// That of the month of the start all the time: so a count of amp-hours can be right.
    OneCapacity,
    /// That of each month.
    ByMonth,
}

/// A quarter-hour as it truly was.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// State of charge after it, by amp-hours (ratio).
    pub charge: f64,
    /// Voltage between the posts.
    pub volts: Volts,
    /// What the loads took.
    pub load: Amps,
    /// What came from the sun.
    pub solar: Amps,
    /// What came from the engine.
    pub engine: Amps,
    /// What came from turbine, generator and shore.
    pub others: Amps,
    /// Whether charging had truly ended.
    pub filled: bool,
    /// Whether the protection of the batteries had shut them off: the gauge is without supply and counts nothing.
    pub off: bool,
}

impl Moment {
    /// The current that passes the shunt, positive into the bank.
    #[must_use]
    pub fn passes(&self, unseen: &Unseen) -> Amps {
        self.solar * unseen.solar.remainder()
            + self.engine * unseen.engine.remainder()
            + self.others * unseen.others.remainder()
            - self.load * unseen.load.remainder()
    }
}

/// A plan as it truly went from its start on.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// State of charge at the start (ratio).
    pub initial: f64,
    /// State of charge not to be undercut (ratio).
    pub reserve: f64,
    /// The quarter-hours.
    pub moments: Vec<Moment>,
}

impl Course {
    /// Takes a plan through so many days of weather that might be; `outlook` must be its own, `spread` is that of the daily clearness in
    /// each month, `number` says which of the weathers of its ensemble.
    #[must_use]
    pub fn of(
        (system, outlook): (&System, &Outlook),
        truth: Truth,
        (spread, number): (&[f64; 12], u32),
        days: usize,
    ) -> Self {
        let full = match truth {
            Truth::OneCapacity => [outlook.capacity.full; 12],
            Truth::ByMonth => outlook.full(),
        };
        let weather = Weather::new(WeatherSpec::of_place(&system.climate, spread), WEATHER_SEED);
        let mut moments = Vec::new();
        // What their protection draws while they are on, less a hair: sums of currents are not exact.
        let drawn = system.bank.protection * STEP * 0.999;
        pass(system, full, (&weather, number), days, &mut |passed| {
            let amps = |charge: AmpHours| charge / STEP;
            let flows = &passed.flows;
            moments.push(Moment {
                charge: passed.charge,
                volts: passed.volts,
                load: amps(flows.load),
                solar: amps(flows.solar),
                engine: amps(flows.engine),
                others: amps(flows.turbine + flows.generator + flows.shore),
                filled: passed.filled,
                off: drawn.0 > 0.0 && flows.protection < drawn,
            });
        });
        Self { initial: system.start.charge, reserve: system.bank.reserve.ratio(), moments }
    }

    /// State of charge before a quarter-hour (ratio).
    #[must_use]
    pub fn before(&self, place: usize) -> f64 {
        let before = place.checked_sub(1).and_then(|before| self.moments.get(before));
        before.map_or(self.initial, |own| own.charge)
    }

    /// The quarter-hour after which the bank was emptiest; the first of several.
    #[must_use]
    pub fn lowest(&self) -> usize {
        let mut lowest = (0, f64::INFINITY);
        for (place, moment) in self.moments.iter().enumerate() {
            if moment.charge < lowest.1 {
                lowest = (place, moment.charge);
            }
        }
        lowest.0
    }

    /// The time from the end of each quarter-hour until the reserve is truly reached; none where it is not, to the end of the course.
    #[must_use]
    pub fn times_left(&self) -> Vec<Option<Hours>> {
        let mut left = vec![None; self.moments.len()];
        let mut next: Option<Hours> = None;
        for (own, moment) in left.iter_mut().zip(&self.moments).rev() {
            next = if moment.charge <= self.reserve { Some(Hours::ZERO) } else { next };
            *own = next;
            next = next.map(|time| time + STEP);
        }
        left
    }

    /// The clock time at which a quarter-hour of a plan's course ends.
    #[must_use]
    pub fn ends(system: &System, place: usize) -> NaiveDateTime {
        clock_time(system, STEP * (place as f64 + 1.0))
    }
}
