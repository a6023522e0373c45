//! Questions asked of simulations: what goes out, what comes in, how long it lasts, which month is tightest, what cannot
//! work.
//!
//! **Question answered:** what does this plan come to?
//!
//! **Method.** An [`Outlook`] is worked out in the mean weather of the months, fast enough to follow an edit, with the run
//! without any sun beside it as the other bound. What lies between the two is the [`Ensemble`]'s, which begins from the
//! answers of the outlook ([`Outlook::ensemble`]) and may be worked out elsewhere and later. The one verdict says what
//! decides.
//!
//! **Range.** Runs end after [`HORIZON_DAYS`]. **Left out:** the verdict itself knows mean weather only; a month that keeps
//! up in it may fail in a dull year, which the chances say.

mod budget;
mod csv;
mod figure;
mod flow;
mod guess;
mod months;
mod obstacle;
mod opening;
mod question;
mod verdict;

pub use budget::{Budget, InverterBudget, LoadBudget, budget, discharge_current};
pub use csv::csv;
pub use figure::Figure;
pub use flow::{DayFlow, End, Flow, day_flow};
pub use guess::{Guessed, NEAR, median};
pub use months::{ArrayDay, Gain, Generated, Month, array_yield, lowest_of, month};
pub use obstacle::{Obstacle, Peak, fitting_inverter, largest_power, obstacles};
pub use opening::{Opening, Times, Voltages};
pub use question::Question;
pub use verdict::{Verdict, clock_time};

use core::ops::Deref;
use std::sync::Arc;

use crate::bank::Capacity;
use crate::place::WeatherFile;
use crate::quantity::{AmpHours, Degrees, Irradiation};
use crate::simulate::{
    Almanac, Ensemble, Extent, Replayed, Sunlight, YearRun, mean_year, replay, typical_sky,
    weather_year,
};
use crate::sky::{Weather, WeatherSpec, best_tilt, equatorward};
use crate::source::Array;
use crate::system::System;
use crate::working::Trace;

/// Seed of the weather: the same for all plans, so that two of them meet the same weather and their difference is their own.
pub(crate) const WEATHER_SEED: u64 = 2026;
/// Days of the longest run.
pub const HORIZON_DAYS: usize = 31;
/// Days of the months, for means over the year.
const MONTH_DAYS: [f64; 12] =
    [31.0, 28.25, 31.0, 30.0, 31.0, 30.0, 31.0, 31.0, 30.0, 31.0, 30.0, 31.0];

/// Why a month is the tightest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tight {
    /// Nothing comes in, in any month.
    NoSource,
    /// Less comes in than in the mean of the year.
    LittleSun,
    /// More goes out than in the mean of the year.
    MuchUse,
}

/// The month with the worst balance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tightest {
    /// The month, January being 0.
    pub month: usize,
    /// Its balance a day.
    pub balance: AmpHours,
    /// Why.
    pub why: Tight,
}

/// All answers about a plan: what it comes to from its start on, as that opens with, and what the year is like.
#[derive(Clone, Debug, PartialEq)]
pub struct Outlook {
    /// What it comes to from its start on.
    pub opening: Arc<Opening>,
    /// The twelve months.
    pub months: Vec<Month>,
    /// The worst of them.
    pub tightest: Tightest,
}

impl Deref for Outlook {
    type Target = Opening;

    fn deref(&self) -> &Opening {
        &self.opening
    }
}

impl Outlook {
    /// Answers all questions about a system.
    #[must_use]
    pub fn of(system: &System) -> Self {
        Self::in_sunlight(system, &mut Sunlight::default())
    }

    /// The same over what is known of the sun from an earlier plan: the same answers, sooner.
    #[must_use]
    pub fn in_sunlight(system: &System, sunlight: &mut Sunlight) -> Self {
        Self::opened(Arc::new(Opening::in_sunlight(system, sunlight)), system, sunlight)
    }

    /// The rest of the answers, once the opening is known; `system` must be the one that it is of.
    #[must_use]
    pub fn opened(opening: Arc<Opening>, system: &System, sunlight: &mut Sunlight) -> Self {
        let months = opening.months(&mut Almanac::new(system, sunlight));
        Self { tightest: tightest(&months), months, opening }
    }

    /// The ensemble of weathers that belongs to these answers; `spread` is that of the daily clearness in each month.
    #[must_use]
    pub fn ensemble(&self, system: &System, spread: &[f64; 12], extent: Extent) -> Ensemble {
        Ensemble::new(system, self.full(), spread, extent, WEATHER_SEED)
    }

    /// The plan through a year of hourly weather that somebody brought.
    #[must_use]
    pub fn replay(&self, system: &System, file: &WeatherFile) -> Replayed {
        replay(system, self.full(), file)
    }

    /// The plan through a year of mean weather.
    #[must_use]
    pub fn mean_year(&self, system: &System) -> YearRun {
        mean_year(system, self.full())
    }

    /// The plan through one year of weather that might be; `spread` is that of the daily clearness in each month, `number` says
    /// which of the weathers of its ensemble.
    #[must_use]
    pub fn weather_year(&self, system: &System, spread: &[f64; 12], number: u32) -> YearRun {
        let weather = Weather::new(WeatherSpec::of_place(&system.climate, spread), WEATHER_SEED);
        weather_year(system, self.full(), &weather, number)
    }

    /// Where the energy of a mean day of the month of the start comes from and where it goes.
    #[must_use]
    pub fn day_flow(&self, system: &System, sunlight: &mut Sunlight) -> DayFlow {
        day_flow(&mut Almanac::new(system, sunlight), self.month, self.capacity.full, &self.budget)
    }

    /// What the bank holds in each month between full and empty.
    pub(crate) fn full(&self) -> [AmpHours; 12] {
        core::array::from_fn(|month| {
            self.months.get(month).map_or(self.capacity.full, |month| month.full)
        })
    }

    /// Usable capacity with every step of its working, that of several rated capacities first.
    pub fn capacity_worked(&self, system: &System, trace: &mut impl Trace) -> Capacity {
        system.bank.ratings_worked(trace);
        system.bank.capacity(self.current, self.bank_temperature, trace)
    }

    /// Days of autonomy with their working.
    pub fn autonomy_worked(&self, system: &System, trace: &mut impl Trace) -> Option<f64> {
        let capacity = self.capacity_worked(system, trace);
        let need = self.budget_worked(system, trace).total;
        opening::autonomy(capacity.usable, need, trace)
    }

    /// The budget with its working.
    pub fn budget_worked(&self, system: &System, trace: &mut impl Trace) -> Budget {
        let sunlight = &mut Sunlight::default();
        budget(&mut Almanac::new(system, sunlight), self.month, trace)
    }

    /// A month's balance with its working: each array's yield, the gain, the need.
    pub fn month_worked(&self, system: &System, at: usize, trace: &mut impl Trace) -> Month {
        let yields: Vec<_> =
            system.arrays.iter().map(|array| array_yield(system, array, at, trace)).collect();
        let sunlight = &mut Sunlight::default();
        let almanac = &mut Almanac::new(system, sunlight);
        let need = budget(almanac, at, trace).total;
        month(almanac, at, need, &yields, trace)
    }

    /// Bits of the months that keep up, January first.
    #[must_use]
    pub fn months_kept(&self) -> u16 {
        self.months.iter().filter(|month| month.keeps_up).map(|month| 1 << month.month).sum()
    }
}

fn tightest(months: &[Month]) -> Tightest {
    let mean = |of: fn(&Month) -> f64| {
        months.iter().map(of).sum::<f64>() / f64::max(months.len() as f64, 1.0)
    };
    let (gain, need) = (mean(|month| month.gain.kept.0), mean(|month| month.need.0));
    let worst = months.iter().min_by(|a, b| a.balance.0.total_cmp(&b.balance.0));
    worst.map_or(Tightest { month: 0, balance: AmpHours::ZERO, why: Tight::NoSource }, |worst| {
        let less = gain - worst.gain.kept.0;
        let more = worst.need.0 - need;
        let why = if gain <= 0.0 {
            Tight::NoSource
        } else if less >= more {
            Tight::LittleSun
        } else {
            Tight::MuchUse
        };
        Tightest { month: worst.month, balance: worst.balance, why }
    })
}

/// The best fixed tilt of an array.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BestTilt {
    /// Whether the equator lies to the south.
    pub south: bool,
    /// Facing the equator, for the month of the start: tilt and light on the plane a day.
    pub month: (Degrees, Irradiation),
    /// Facing the equator, for the year.
    pub year: (Degrees, Irradiation),
    /// What the array gets as it stands, in the month and over the year.
    pub now: (Irradiation, Irradiation),
}

/// The best fixed tilts at a place, beside what an array gets as it stands.
#[must_use]
pub fn best_tilts(system: &System, array: &Array) -> BestTilt {
    let days: Vec<_> = (0..12).map(|month| typical_sky(system, month, &mut ())).collect();
    let month = chrono::Datelike::month0(&system.start.date) as usize;
    let azimuth = equatorward(system.site.latitude);
    let mut only = [0.0; 12];
    only[month] = 1.0;
    let facing = array.plane.facing();
    let got = |weights: &[f64; 12]| {
        let total: f64 = weights.iter().sum();
        let sum: f64 = days
            .iter()
            .zip(weights)
            .map(|(day, weight)| {
                let light = day.steps.iter().map(|step| facing.irradiance(step, system.albedo).0);
                weight * light.sum::<f64>()
            })
            .sum();
        Irradiation(sum * crate::simulate::STEP.0 / 1000.0 / total)
    };
    BestTilt {
        south: azimuth.0 > 90.0,
        month: best_tilt(&days, &only, azimuth, system.albedo),
        year: best_tilt(&days, &MONTH_DAYS, azimuth, system.albedo),
        now: (got(&only), got(&MONTH_DAYS)),
    }
}
