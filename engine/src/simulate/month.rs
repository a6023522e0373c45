//! Typical days of one month, one after another: does the bank hold its level?
//!
//! **Method.** Quarter-hours in mean weather from a given state of charge, Monday first, with the capacity of the month.

use super::almanac::Almanac;
use super::prepared::{Prepared, State};
use super::run::STEP;
use crate::quantity::AmpHours;

/// Days that begin with states of charge that differ by less than this go alike (ratio).
const REPEATS: f64 = 1e-9;

fn alike(one: State, other: State) -> bool {
    let near = |one: f64, other: f64| (one - other).abs() < REPEATS;
    near(one.charge, other.charge) && near(one.available, other.available) && one.ran == other.ran
}

/// What typical days of a month did to the bank. States of charge are ratios.
#[derive(Clone, Debug, PartialEq)]
pub struct MonthRun {
    /// State of charge at the end of each day.
    pub midnights: Vec<f64>,
    /// Lowest state of charge.
    pub lowest: f64,
    /// What the loads wanted and did not get.
    pub unmet: AmpHours,
}

/// Runs typical days of one month from a state of charge, Monday first.
///
/// A day that begins as an earlier one of its kind did is not run again. It stops with the day in which a load goes short or the bank falls
/// under `least`.
#[must_use]
pub fn run_month(
    almanac: &mut Almanac<'_>,
    full: AmpHours,
    month: usize,
    charge: f64,
    least: f64,
    days: usize,
) -> MonthRun {
    let system = almanac.system;
    let bank = Prepared::new(&system.bank, full, STEP).with_generator(system.generator.as_ref());
    let mut run = MonthRun { midnights: Vec::new(), lowest: charge, unmet: AmpHours::ZERO };
    let mut now = bank.rested(charge);
    // Of each day that was run: its kind, and the states that it began and ended with.
    let mut known: Vec<(u8, State, State)> = Vec::new();
    for place in 0..days {
        let kind = almanac.kind_of(place);
        let before = now;
        let same = known.iter().find(|own| own.0 == kind && alike(own.1, before));
        if let Some((.., after)) = same {
            now = *after;
        } else {
            for forcing in almanac.day(month, kind) {
                let moved = bank.moved(now, forcing, &mut ());
                now = moved.state;
                run.unmet += moved.unmet;
                if now.charge < run.lowest {
                    run.lowest = now.charge;
                }
            }
            known.push((kind, before, now));
        }
        run.midnights.push(now.charge);
        if run.unmet.0 > 0.0 || run.lowest < least {
            break;
        }
    }
    run
}
