//! A generator that starts and stops by the state of charge.
//!
//! **Method.** It starts when the state of charge is down to its start, and goes on until it is up to its stop or charging has
//! ended, but for its shortest run at least. Outside its allowed hours it never runs, not even to end a run. While it runs it
//! offers the output of its charger after everything else but shore power; what the bank does not take costs hours all the same.
//!
//! **Fuel** is litres an hour whatever it gives, plus litres for each kilowatt-hour that it brings to the bank: the straight line
//! that makers' tables of consumption follow. What is not stated is not counted.
//!
//! **Left out.** Failed starts, warming up, the weather; hours without a time spread its output over the day.

use crate::document::{Generator as Section, Problem, Schedule};
use crate::quantity::{Amps, Hours, Litres, Percent, WattHours};

/// What a generator burns.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Fuel {
    /// In an hour, whatever it gives \[l/h\].
    pub per_hour: Option<f64>,
    /// For the energy it brings to the bank \[l/kWh\].
    pub per_kwh: Option<f64>,
}

impl Fuel {
    /// What so many hours and so much energy burn; nothing is known if neither figure is.
    #[must_use]
    pub fn of(&self, hours: Hours, energy: WattHours) -> Option<Litres> {
        self.per_hour.or(self.per_kwh)?;
        let (per_hour, per_kwh) = (self.per_hour.unwrap_or(0.0), self.per_kwh.unwrap_or(0.0));
        Some(Litres(per_hour * hours.0 + per_kwh * energy.0 / 1000.0))
    }
}

/// A generator.
#[derive(Clone, Debug, PartialEq)]
pub struct Generator {
    /// Output of its charger.
    pub limit: Amps,
    /// State of charge at which it starts (ratio).
    pub start: f64,
    /// State of charge at which it stops (ratio).
    pub stop: f64,
    /// Its shortest run.
    pub shortest: Hours,
    /// When it may run.
    pub schedule: Schedule,
    /// What it burns.
    pub fuel: Fuel,
}

impl Generator {
    /// Reads its section; none if it is switched off.
    ///
    /// # Errors
    /// If it would stop at or under the state of charge at which it starts.
    pub fn parse(section: &Section) -> Result<Option<Self>, Problem> {
        let (start, stop) = (Percent(section.start_pct), Percent(section.stop_pct));
        if !section.on {
            return Ok(None);
        }
        if stop <= start {
            return Err(Problem::GeneratorStops { start, stop });
        }
        Ok(Some(Self {
            limit: Amps(section.limit_a),
            start: start.ratio(),
            stop: stop.ratio(),
            shortest: Hours(section.minimum_run_min / 60.0),
            schedule: section.schedule.clone(),
            fuel: Fuel { per_hour: section.fuel_l_per_h, per_kwh: section.fuel_l_per_kwh },
        }))
    }

    /// Whether it runs in a step of which a share is allowed, from a state of charge, having `ran` so long without a stop.
    #[inline]
    #[must_use]
    pub fn runs(&self, ran: Hours, charge: f64, allowed: f64) -> bool {
        allowed > 0.0 && (ran.0 > 0.0 || charge <= self.start)
    }

    /// How long it has run without a stop after a step of this length that it ran through; nothing if it stops with it.
    #[inline]
    #[must_use]
    pub fn ran_after(&self, ran: Hours, time: Hours, charge: f64, filled: bool) -> Hours {
        let ran = ran + time;
        let done = filled || charge >= self.stop;
        // Sums of quarters are exact; a shorter first step may leave one a rounding short.
        if done && ran.0 + 1e-9 >= self.shortest.0 { Hours::ZERO } else { ran }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parse(section: Section) -> Result<Option<Generator>, Problem> {
        Generator::parse(&section)
    }

    #[test]
    fn it_starts_low_and_stops_high() {
        let generator = parse(Section::default()).unwrap().unwrap();
        let off = Hours::ZERO;
        assert!(generator.runs(off, 0.3, 1.0) && !generator.runs(off, 0.31, 1.0));
        assert!(generator.runs(Hours(0.25), 0.7, 1.0), "once started it goes on");
        assert!(!generator.runs(Hours(0.25), 0.1, 0.0), "never outside its hours");
    }

    #[test]
    fn it_ends_at_its_stop_or_at_full_but_not_before_its_shortest_run() {
        let generator = parse(Section::default()).unwrap().unwrap();
        let after =
            |ran, charge, filled| generator.ran_after(Hours(ran), Hours(0.25), charge, filled);
        assert_eq!(after(0.25, 0.9, false), Hours(0.5), "an hour at least");
        assert_eq!(after(0.75, 0.8, false), Hours::ZERO);
        assert_eq!(after(0.75, 0.7, true), Hours::ZERO);
        assert_eq!(after(7.75, 0.7, false), Hours(8.0));
    }

    #[test]
    fn a_stop_under_the_start_is_refused_and_one_that_is_off_is_none() {
        let crossed = Section { start_pct: 60.0, stop_pct: 60.0, ..Section::default() };
        let (start, stop) = (Percent(60.0), Percent(60.0));
        assert_eq!(parse(crossed.clone()), Err(Problem::GeneratorStops { start, stop }));
        assert_eq!(parse(Section { on: false, ..crossed }), Ok(None));
    }

    #[test]
    fn fuel_is_counted_by_what_is_stated() {
        let of = |per_hour, per_kwh| Fuel { per_hour, per_kwh }.of(Hours(2.0), WattHours(3000.0));
        assert_eq!(of(None, None), None);
        assert_eq!(of(Some(0.2), None), Some(Litres(0.4)));
        assert_eq!(of(Some(0.2), Some(0.5)), Some(Litres(1.9)));
    }
}
