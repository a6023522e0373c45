//! What all loads of a plan want through a day, step by step.
//!
//! **Method.** Each load's running power times the share of the step in which it is on times its duty, in sums by supply.
//! Losses of the inverter go with the square of its output, so the mean of the square is kept beside the mean; within a step
//! loads are taken to be on together as far as they can.
//!
//! **Left out:** when exactly within a quarter-hour something starts, and which pauses of two cycling loads meet.

use super::{DayKind, Inverter, Load, presence};
use crate::document::Supply;
use crate::quantity::{Celsius, VoltAmps, Watts};
use crate::sky::STEPS_PER_DAY;

/// What all loads together want in one step.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Demand {
    /// Mean power of the loads on direct current.
    pub dc: Watts,
    /// Mean output of the inverter.
    pub ac: Watts,
    /// Mean of that output in volts times amps.
    pub apparent: VoltAmps,
    /// Mean square of the apparent output over the rated one.
    pub ac_square: f64,
    /// Share of the step in which the inverter is on.
    pub awake: f64,
}

impl Demand {
    /// Power taken from the bank.
    #[inline]
    #[must_use]
    pub fn at_bank(&self, inverter: Option<&Inverter>) -> Watts {
        match inverter {
            Some(inverter) => {
                let standby = inverter.search * (1.0 - self.awake);
                let idle = inverter.idle() * self.awake;
                self.dc + self.ac + (idle + standby) + self.loss(inverter)
            }
            // Without an inverter the loads on alternating current do not run.
            None => self.dc,
        }
    }

    /// What the inverter loses beyond its idle draw.
    #[inline]
    #[must_use]
    pub fn loss(&self, inverter: &Inverter) -> Watts {
        inverter.growing_loss(self.apparent, self.ac_square)
    }
}

/// What all loads want through a day, and how long each of them is on.
#[derive(Clone, Debug)]
pub struct DayDemand {
    /// Step by step.
    pub steps: [Demand; STEPS_PER_DAY],
    /// Load by load, in the order of the plan.
    pub loads: Vec<LoadDay>,
}

/// A load's day, in steps.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LoadDay {
    /// So long it is on by its schedule.
    pub on: f64,
    /// So long it runs then.
    pub runs: f64,
}

/// Mean square of the apparent output over the rated one, of loads by the share of the step in which each is on and its power over the
/// rated one then.
///
/// Those on at times are taken to be on together, the shorter ones while the longer ones are: nobody knows better, and the
/// loss is rather too large than too small. So another load never makes it smaller.
fn mean_square(parts: &mut [(f64, f64)]) -> f64 {
    // By insertion, which is small and quick for a handful; the order of equal shares stays, so that sums have the same bits
    // everywhere.
    for end in 1..parts.len() {
        let mut place = end;
        while place > 0 && parts[place - 1].0 < parts[place].0 {
            parts.swap(place - 1, place);
            place -= 1;
        }
    }
    let (mut sum, mut square) = (0.0, 0.0);
    for (at, (share, power)) in parts.iter().enumerate() {
        sum += power;
        let next = parts.get(at + 1).map_or(0.0, |next| next.0);
        square += sum * sum * (share - next);
    }
    square
}

/// A load's share and apparent power over the inverter's rated one, in each step of a day.
type Part = [(f64, f64); STEPS_PER_DAY];

/// What all loads want in each step of a day whose inside air has these temperatures.
#[must_use]
pub fn day_demand(
    loads: &[Load],
    inverter: Option<&Inverter>,
    kind: DayKind,
    air: &[Celsius; STEPS_PER_DAY],
) -> DayDemand {
    let mut day = DayDemand {
        steps: [Demand::default(); STEPS_PER_DAY],
        loads: Vec::with_capacity(loads.len()),
    };
    let mut on_inverter: Vec<Part> = Vec::new();
    for load in loads {
        let on = presence(&load.schedule, kind);
        let duty = load.duties(air);
        day.loads.push(LoadDay::of(&on, &duty));
        let running = load.running();
        match load.supply {
            Supply::Dc => {
                for ((demand, on), duty) in day.steps.iter_mut().zip(&on).zip(&duty) {
                    demand.dc += running * (on * duty);
                }
            }
            Supply::Ac => {
                let apparent = load.apparent(running);
                for ((demand, on), duty) in day.steps.iter_mut().zip(&on).zip(&duty) {
                    demand.ac += running * (on * duty);
                    demand.apparent += apparent * (on * duty);
                    // The longest keeps the inverter awake.
                    demand.awake = demand.awake.max(*on);
                }
                if let Some(inverter) = inverter {
                    let rated = VoltAmps(inverter.rated.0);
                    let mut part = [(0.0, 0.0); STEPS_PER_DAY];
                    for ((part, on), duty) in part.iter_mut().zip(on).zip(duty) {
                        *part = (on, apparent * duty / rated);
                    }
                    on_inverter.push(part);
                }
            }
        }
    }
    finish(&mut day.steps, inverter, &on_inverter);
    day
}

/// Adds what only all loads of an inverter together tell.
fn finish(steps: &mut [Demand], inverter: Option<&Inverter>, on_inverter: &[Part]) {
    let mut parts = Vec::with_capacity(on_inverter.len());
    for (step, demand) in steps.iter_mut().enumerate() {
        if demand.awake > 0.0 {
            parts.clear();
            parts.extend(on_inverter.iter().map(|part| part[step]).filter(|(on, _)| *on > 0.0));
            demand.ac_square = mean_square(&mut parts);
        }
        if inverter.is_some_and(|inverter| inverter.always) {
            demand.awake = 1.0;
        }
    }
}

impl LoadDay {
    fn of(on: &[f64], duty: &[f64]) -> Self {
        let mut sum = Self::default();
        for (on, duty) in on.iter().zip(duty) {
            sum.on += on;
            sum.runs += on * duty;
        }
        sum
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Load as Section, Rating, Schedule, When};

    fn parse(section: Section) -> Load {
        Load::parse(&section, 0, &mut ())
    }

    #[test]
    fn the_inverter_idles_once_for_all_its_loads() {
        let lamp = Section {
            rating: Rating::PowerW(100.0),
            supply: Supply::Ac,
            schedule: Schedule::daily(When::HoursPerDay(6.0)),
            ..Section::default()
        };
        let loads = [parse(lamp.clone()), parse(lamp)];
        let inverter = Inverter::parse(&crate::document::Inverter::default()).unwrap();
        let air = [Celsius(20.0); STEPS_PER_DAY];
        let demand = day_demand(&loads, Some(&inverter), DayKind::inside(0, 0), &air).steps[0];
        assert_eq!((demand.ac, demand.awake), (Watts(50.0), 0.25));
        let both = demand.at_bank(Some(&inverter));
        assert!((both.0 - inverter.input(Watts(200.0)).0 / 4.0).abs() < 1e-9);
        assert_eq!(demand.at_bank(None), Watts::ZERO);
    }

    /// A load of 100 W on the inverter, for so many hours a day.
    fn reactive(hours: f64, power_factor: f64) -> Load {
        parse(Section {
            rating: Rating::PowerW(100.0),
            supply: Supply::Ac,
            schedule: Schedule::daily(When::HoursPerDay(hours)),
            power_factor,
            ..Section::default()
        })
    }

    fn taken(load: Load, section: &crate::document::Inverter) -> f64 {
        let inverter = Inverter::parse(section).unwrap();
        let air = [Celsius(20.0); STEPS_PER_DAY];
        let day = day_demand(&[load], Some(&inverter), DayKind::inside(0, 0), &air);
        day.steps[0].at_bank(Some(&inverter)).0
    }

    #[test]
    fn a_poor_power_factor_costs_losses_and_no_power() {
        let section = crate::document::Inverter::default();
        let inverter = Inverter::parse(&section).unwrap();
        let (good, poor) =
            (taken(reactive(24.0, 1.0), &section), taken(reactive(24.0, 0.5), &section));
        // The power of 100 W with the loss at 200 VA.
        let loss = inverter.input(Watts(200.0)).0 - 200.0;
        assert!((poor - 100.0 - loss).abs() < 1e-9 && poor > good, "{good} {poor}");
    }

    #[test]
    fn an_inverter_that_searches_takes_little_while_nothing_is_on() {
        use crate::document::{Awake, Inverter as Section};
        let of = |awake| {
            taken(reactive(6.0, 1.0), &Section { awake, search_w: Some(2.0), ..Section::default() })
        };
        let (off, search, always) = (of(Awake::WithLoads), of(Awake::Search), of(Awake::Always));
        assert!((search - off - 2.0 * 0.75).abs() < 1e-9, "{off} {search}");
        assert!((always - off - 12.0 * 0.75).abs() < 1e-9, "{off} {always}");
    }

    #[test]
    fn a_small_load_that_runs_long_does_not_cheapen_a_large_one() {
        let of = |power_w, hours| {
            parse(Section {
                rating: Rating::PowerW(power_w),
                supply: Supply::Ac,
                schedule: Schedule::daily(When::HoursPerDay(hours)),
                ..Section::default()
            })
        };
        let inverter = Inverter::parse(&crate::document::Inverter::default()).unwrap();
        let taken = |loads: &[Load]| {
            let air = [Celsius(20.0); STEPS_PER_DAY];
            let day = day_demand(loads, Some(&inverter), DayKind::inside(0, 0), &air);
            day.steps[0].at_bank(Some(&inverter)).0
        };
        let kettle = taken(&[of(900.0, 6.0)]);
        assert!((kettle - inverter.input(Watts(900.0)).0 / 4.0).abs() < 1e-9);
        let with_charger = taken(&[of(1.0, 24.0), of(900.0, 6.0)]);
        let least = inverter.idle().0 * 0.75 + 1.0;
        assert!(with_charger >= kettle + least, "{kettle} {with_charger}");
    }
}
