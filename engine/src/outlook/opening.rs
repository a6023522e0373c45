//! What a plan comes to from its start on: all that can be said before the other months of the year are worked out.
//!
//! **Question answered:** how long does it last from the start, and what decides?
//!
//! **Method.** The budget and the balance of the month of the start, the run from the start in its mean weather, and the run without any
//! sun. Of the other months only so many are worked out as the verdict needs: whether a plan keeps up all year round is known with
//! the first month in which it does not, and the darkest are tried first.

use super::HORIZON_DAYS;
use super::budget::{Budget, budget};
use super::months::{Month, bank_temperature, month};
use super::obstacle::{Obstacle, obstacles};
use super::verdict::{Verdict, clock_time};
use crate::bank::Capacity;
use crate::quantity::{AmpHours, Amps, Celsius, Hours, Percent, Volts};
use crate::simulate::{Almanac, Run, Sun, Sunlight, run};
use crate::system::System;
use crate::working::{Formula, Trace, term};

/// Months of a year.
const MONTHS: usize = 12;

/// What a plan comes to from its start on.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// Month of the start, January being 0.
    pub month: usize,
    /// That month.
    pub now: Month,
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
    /// The run in the mean weather.
    pub run: Run,
    /// The run without any sun.
    pub dark: Run,
    /// What cannot work, and what must be known.
    pub obstacles: Vec<Obstacle>,
    /// The answer in one sentence.
    pub verdict: Verdict,
    /// Other months that the verdict needed.
    others: Vec<Month>,
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

impl Opening {
    /// What a system comes to, over what is known of the sun from an earlier plan.
    #[must_use]
    pub fn in_sunlight(system: &System, sunlight: &mut Sunlight) -> Self {
        let almanac = &mut Almanac::new(system, sunlight);
        let at = almanac.month_of_start();
        let budget = budget(almanac, at, &mut ());
        let now = month(almanac, at, budget.total, &[], &mut ());
        let capacity = system.bank.capacity(now.current, now.bank_temperature, &mut ());
        let run_in =
            |almanac: &mut Almanac<'_>, sun| run(almanac, capacity.full, sun, HORIZON_DAYS, true);
        let lit = run_in(almanac, Sun::Mean);
        let dark = run_in(almanac, Sun::None);
        let obstacles = obstacles(system, cold_months(almanac));
        let mut others = Vec::new();
        let all_year = || keeps_up_all_year(almanac, &now, &mut others);
        let verdict = verdict(system, &now, &lit, &obstacles, all_year);
        Self {
            month: at,
            bank_temperature: now.bank_temperature,
            current: now.current,
            capacity,
            autonomy_days: autonomy(capacity.usable, budget.total, &mut ()),
            now,
            budget,
            run: lit,
            dark,
            obstacles,
            verdict,
            others,
        }
    }

    /// All twelve months, as far as they are known already.
    pub(super) fn months(&self, almanac: &mut Almanac<'_>) -> Vec<Month> {
        (0..MONTHS)
            .map(|at| {
                let known = self.others.iter().chain([&self.now]).find(|own| own.month == at);
                known.copied().unwrap_or_else(|| other_month(almanac, at))
            })
            .collect()
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

    /// Voltages that the plan comes to; `system` must be the one that the opening is of.
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

fn other_month(almanac: &mut Almanac<'_>, at: usize) -> Month {
    let need = budget(almanac, at, &mut ()).total;
    month(almanac, at, need, &[], &mut ())
}

/// Bits of the months in which the bank is too cold to be charged, January first.
fn cold_months(almanac: &mut Almanac<'_>) -> u16 {
    let system = almanac.system;
    let Some(least) = system.bank.typical.charge_above else { return 0 };
    let is_cold = |at: &usize| bank_temperature(system, almanac.sky(*at)) < least;
    (0..MONTHS).filter(is_cold).map(|at| 1 << at).sum()
}

/// Whether all months keep up; what was worked out for that is noted.
fn keeps_up_all_year(almanac: &mut Almanac<'_>, now: &Month, others: &mut Vec<Month>) -> bool {
    if !now.keeps_up {
        return false;
    }
    let light: Vec<f64> = (0..MONTHS).map(|at| almanac.sky(at).irradiation.0).collect();
    let mut left: Vec<usize> = (0..MONTHS).filter(|at| *at != now.month).collect();
    while let Some(darkest) =
        left.iter().copied().min_by(|one, other| light[*one].total_cmp(&light[*other]))
    {
        left.retain(|at| *at != darkest);
        let own = other_month(almanac, darkest);
        others.push(own);
        if !own.keeps_up {
            return false;
        }
    }
    true
}

/// Days that the usable charge lasts without any source.
pub(super) fn autonomy(usable: AmpHours, need: AmpHours, trace: &mut impl Trace) -> Option<f64> {
    (need.0 > 0.0)
        .then(|| trace.step(Formula::Autonomy, usable / need, &[term(usable), term(need)]))
}

fn verdict(
    system: &System,
    now: &Month,
    lit: &Run,
    obstacles: &[Obstacle],
    all_year: impl FnOnce() -> bool,
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
    if !now.keeps_up && now.balance.0 < 0.0 {
        return Verdict::HoldsLong { days: HORIZON_DAYS as u16, short: -now.balance };
    }
    Verdict::KeepsUp { all_year: all_year() }
}
