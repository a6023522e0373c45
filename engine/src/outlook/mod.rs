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
mod question;
mod verdict;

pub use budget::{Budget, InverterBudget, LoadBudget, budget, discharge_current};
pub use csv::csv;
pub use figure::Figure;
pub use flow::{DayFlow, End, Flow, day_flow};
pub use guess::{Guessed, NEAR, median};
pub use months::{ArrayDay, Gain, Generated, Month, array_yield, lowest_of, month};
pub use obstacle::{Obstacle, Peak, fitting_inverter, largest_power, obstacles};
pub use question::Question;
pub use verdict::{Verdict, clock_time};

use crate::bank::Capacity;
use crate::place::WeatherFile;
use crate::quantity::{AmpHours, Amps, Celsius, Degrees, Hours, Irradiation, Percent, Volts};
use crate::simulate::{
    Almanac, Ensemble, Extent, Replayed, Run, Sun, Sunlight, YearRun, mean_year, replay, run,
    typical_sky, weather_year,
};
use crate::sky::{Weather, WeatherSpec, best_tilt, equatorward};
use crate::source::Array;
use crate::system::System;
use crate::working::{Formula, Trace, term};

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

/// All answers about a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Outlook {
    /// Month of the start, January being 0.
    pub month: usize,
    /// Budget of that month.
    pub budget: Budget,
    /// Temperature of the bank in that month.
    pub bank_temperature: Celsius,
    /// Mean discharge current in that month.
    pub current: Amps,
    /// What the bank holds in that month.
    pub capacity: Capacity,
    /// Days that the usable charge lasts without any source; none if nothing is used.
    pub autonomy_days: Option<f64>,
    /// The twelve months.
    pub months: Vec<Month>,
    /// The worst of them.
    pub tightest: Tightest,
    /// The run in the mean weather.
    pub run: Run,
    /// The run without any sun.
    pub dark: Run,
    /// What cannot work, and what must be known.
    pub obstacles: Vec<Obstacle>,
    /// The answer in one sentence.
    pub verdict: Verdict,
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
        let almanac = &mut Almanac::new(system, sunlight);
        let month_of_start = almanac.month_of_start();
        let budgets: Vec<Budget> = (0..12).map(|month| budget(almanac, month, &mut ())).collect();
        let months: Vec<Month> =
            (0..12).map(|at| month(almanac, at, budgets[at].total, &[], &mut ())).collect();
        let now = &months[month_of_start];
        let capacity = system.bank.capacity(now.current, now.bank_temperature, &mut ());
        let lit = run(almanac, capacity.full, Sun::Mean, HORIZON_DAYS, true);
        let dark = run(almanac, capacity.full, Sun::None, HORIZON_DAYS, true);
        let cold_months = bits(&months, |month| month.too_cold_to_charge);
        let obstacles = obstacles(system, cold_months);
        let verdict = verdict(system, &months, month_of_start, &lit, &obstacles);
        let budget = budgets.into_iter().nth(month_of_start);
        let budget = budget.unwrap_or_else(|| self::budget(almanac, 0, &mut ()));
        Self {
            month: month_of_start,
            bank_temperature: now.bank_temperature,
            current: now.current,
            capacity,
            autonomy_days: autonomy(capacity.usable, budget.total, &mut ()),
            tightest: tightest(&months),
            budget,
            run: lit,
            dark,
            obstacles,
            verdict,
            months,
        }
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
        autonomy(capacity.usable, need, trace)
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
        bits(&self.months, |month| month.keeps_up)
    }

    /// Whether a life may depend on something that runs.
    #[must_use]
    pub fn is_vital(&self) -> bool {
        self.obstacles.iter().any(|own| matches!(own, Obstacle::VitalLoad { .. }))
    }

    /// Obstacles that the explanation of the verdict does not tell already: it tells what decides, and by name what lives depend
    /// on.
    pub fn cautions(&self) -> impl Iterator<Item = &Obstacle> {
        let told = |own: &Obstacle| match &self.verdict {
            _ if matches!(own, Obstacle::VitalLoad { .. }) => true,
            Verdict::CannotWork { why } => why == own,
            _ => false,
        };
        self.obstacles.iter().filter(move |own| !told(own))
    }
}

fn bits(months: &[Month], is: impl Fn(&Month) -> bool) -> u16 {
    months.iter().filter(|month| is(month)).map(|month| 1 << month.month).sum()
}

/// Days that the usable charge lasts without any source.
fn autonomy(usable: AmpHours, need: AmpHours, trace: &mut impl Trace) -> Option<f64> {
    (need.0 > 0.0)
        .then(|| trace.step(Formula::Autonomy, usable / need, &[term(usable), term(need)]))
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

fn verdict(
    system: &System,
    months: &[Month],
    month: usize,
    lit: &Run,
    obstacles: &[Obstacle],
) -> Verdict {
    if let Some(why) = obstacles.iter().find(|obstacle| obstacle.stops()) {
        return Verdict::CannotWork { why: *why };
    }
    if system.loads.is_empty() && system.standing.0 <= 0.0 {
        return Verdict::NothingRuns;
    }
    let reserve = system.bank.reserve;
    if system.start.charge <= reserve.ratio() {
        let charge = Percent::of_ratio(system.start.charge);
        return Verdict::StartsBelowReserve { charge, reserve };
    }
    if let Some(after) = lit.reserve_at {
        return Verdict::ReachesReserve { at: clock_time(system, after), after };
    }
    match months.get(month) {
        Some(now) if !now.keeps_up && now.balance.0 < 0.0 => {
            Verdict::HoldsLong { days: HORIZON_DAYS as u16, short: -now.balance }
        }
        _ => Verdict::KeepsUp { months: bits(months, |month| month.keeps_up) },
    }
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

/// Time until something happens in a run, in hours from the start.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Times {
    /// To the reserve with the mean sun.
    pub to_reserve: Option<Hours>,
    /// To empty with the mean sun.
    pub to_empty: Option<Hours>,
    /// To the reserve without sun.
    pub dark_to_reserve: Option<Hours>,
    /// To empty without sun.
    pub dark_to_empty: Option<Hours>,
    /// To full with the mean sun.
    pub to_full: Option<Hours>,
}

/// Voltages between the posts of a bank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Voltages {
    /// At rest, at the start.
    pub rest: Volts,
    /// The lowest of a quarter-hour in the run in the mean weather; a start can pull it down further for a moment.
    pub lowest: Volts,
    /// Where loads go off.
    pub cut_off: Volts,
}

impl Outlook {
    /// Voltages that the plan comes to; `system` must be the one that the outlook is of.
    #[must_use]
    pub fn voltages(&self, system: &System) -> Voltages {
        let rest = system.bank.open_circuit(system.start.charge);
        let lowest = self.run.samples.iter().map(|sample| sample.volts).reduce(Volts::at_most);
        Voltages { rest, lowest: lowest.unwrap_or(rest), cut_off: system.bank.low_voltage() }
    }

    /// The times of both runs.
    #[must_use]
    pub fn times(&self) -> Times {
        Times {
            to_reserve: self.run.reserve_at,
            to_empty: self.run.empty_at,
            dark_to_reserve: self.dark.reserve_at,
            dark_to_empty: self.dark.empty_at,
            to_full: self.run.full_at,
        }
    }
}
