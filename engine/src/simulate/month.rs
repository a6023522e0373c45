//! Typical days of one month, one after another: does the bank hold its level?
//!
//! **Method.** Quarter-hours in mean weather from a given state of charge, Monday first, with the capacity of the month.

use super::almanac::Almanac;
use super::prepared::Prepared;
use super::run::STEP;
use crate::quantity::AmpHours;

/// Days whose state of charge at midnight differs by less than this repeat for ever (ratio).
const REPEATS: f64 = 1e-9;

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
/// It stops early where more days would tell nothing new: once a load went short, and, if all weekdays are alike, once a day ends
/// as it began.
#[must_use]
pub fn run_month(
    almanac: &mut Almanac<'_>,
    full: AmpHours,
    month: usize,
    charge: f64,
    days: usize,
) -> MonthRun {
    let system = almanac.system;
    let bank = Prepared::new(&system.bank, full, STEP).with_generator(system.generator.as_ref());
    let alike = almanac.days_of_week() == 1;
    let mut run = MonthRun { midnights: Vec::new(), lowest: charge, unmet: AmpHours::ZERO };
    let mut now = bank.rested(charge);
    for place in 0..days {
        let before = now;
        for forcing in almanac.day(month, (place % 7) as u8) {
            let after = bank.step(now, forcing, &mut ());
            now = after.state;
            run.unmet += after.flows.unmet;
            if now.charge < run.lowest {
                run.lowest = now.charge;
            }
        }
        run.midnights.push(now.charge);
        let same = (now.charge - before.charge).abs() < REPEATS && now.ran == before.ran;
        if run.unmet.0 > 0.0 || alike && place > 0 && same {
            break;
        }
    }
    run
}
