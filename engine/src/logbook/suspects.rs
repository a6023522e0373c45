//! From what somebody sees to what may be behind it, and the meter that decides.
//!
//! **Method.** Each symptom has causes with a weight by what the trade meets (a choice of this engine: one rare, five common). What the
//! plan makes likely or unlikely, and what the readings say for or against, multiply it. No order of causes is a proof: each comes with
//! the test that decides.

use crate::outlook::Outlook;
use crate::quantity::Celsius;
use crate::system::System;

use super::learned::{Study, What};
use super::meter::{MeterTest, balance, largest_current, test};
use super::symptom::{Cause, Symptom, causes};

/// How a cause stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// The readings say so.
    Seen,
    /// It fits plan and readings.
    Likely,
    /// It may be.
    Possible,
    /// Plan or readings speak against it.
    Unlikely,
}

/// A cause with its rank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Suspect {
    /// What may be behind it.
    pub cause: Cause,
    /// Its weight over that of the others.
    pub weight: f64,
    /// How it stands.
    pub standing: Standing,
    /// What decides.
    pub test: MeterTest,
}

/// What an alarm of the readings multiplies a cause by, and what their silence does where they could tell.
const SEEN: f64 = 8.0;
const NOT_SEEN: f64 = 0.25;
/// What the plan multiplies a cause by that it makes likely, and one that it does not.
const FITS: f64 = 2.0;
const FITS_NOT: f64 = 0.3;
/// Over this share of the heaviest a cause is likely, over the other possible.
const LIKELY: f64 = 0.5;
const POSSIBLE: f64 = 0.2;

/// What may be behind a symptom, the likeliest first. `outlook` is that of the plan, `study` what readings say, if there are any.
#[must_use]
pub fn suspects(
    symptom: Symptom,
    system: &System,
    outlook: &Outlook,
    study: Option<&Study>,
) -> Vec<Suspect> {
    let mut all: Vec<Suspect> = Vec::new();
    for (cause, weight) in causes(symptom) {
        let told = by_readings(*cause, study);
        let weight = weight * by_plan(*cause, system, outlook) * told.unwrap_or(1.0);
        let seen = told.is_some_and(|own| own > 1.0);
        let standing = if seen { Standing::Seen } else { Standing::Unlikely };
        let own = Suspect { cause: *cause, weight, standing, test: test(*cause, system, outlook) };
        all.insert(all.partition_point(|other| other.weight >= weight), own);
    }
    let sum: f64 = all.iter().map(|own| own.weight).sum();
    let most = all.first().map_or(1.0, |own| own.weight);
    for own in &mut all {
        if own.standing != Standing::Seen {
            own.standing = if own.weight >= LIKELY * most {
                Standing::Likely
            } else if own.weight >= POSSIBLE * most {
                Standing::Possible
            } else {
                Standing::Unlikely
            };
        }
        own.weight /= sum;
    }
    all
}

/// What readings make of a cause; nothing if they do not tell.
fn by_readings(cause: Cause, study: Option<&Study>) -> Option<f64> {
    let what = match cause {
        Cause::UsesMore | Cause::StandingDrain => What::NightUse,
        Cause::ArrayWeak => What::Yield,
        Cause::CapacityLost => What::Capacity,
        Cause::FalseFull => What::FalseFull,
        Cause::Bypass => What::Bypass,
        Cause::HiddenDrain => What::HiddenDrain,
        Cause::DyingCell => What::RestVoltage,
        _ => return None,
    };
    let own = study?.get(what)?;
    let (best, low) = (own.estimate.best, own.estimate.low);
    let against = match what {
        // Less than planned is no reason for a lack.
        What::NightUse if own.alarm => return Some(if best > 1.0 { SEEN } else { NOT_SEEN }),
        What::NightUse => own.estimate.high < 1.15,
        What::Yield | What::Capacity => low > 0.85,
        What::RestVoltage => low > -0.1 * best.abs() - 0.1,
        What::FalseFull => own.estimate.high < 0.15,
        _ => true,
    };
    match (own.alarm, own.estimate.told && against) {
        (true, _) => Some(SEEN),
        (false, true) => Some(NOT_SEEN),
        _ => None,
    }
}

/// What the plan makes of a cause.
fn by_plan(cause: Cause, system: &System, outlook: &Outlook) -> f64 {
    let choose = |fits: bool| if fits { FITS } else { FITS_NOT };
    let bank = &system.bank;
    match cause {
        Cause::PlanShort => choose(balance(outlook).0 < 0.0),
        Cause::ArrayWeak if system.arrays.is_empty() => 0.0,
        Cause::TooCold => {
            let least = bank.typical.charge_above.unwrap_or(Celsius(0.0));
            choose(outlook.capacity.cold < 0.85 || outlook.bank_temperature < least)
        }
        Cause::DrawTooLarge => {
            let most = bank.most_before_cut_off(0.6, outlook.bank_temperature);
            let largest = largest_current(system);
            choose(largest > most * 0.5)
        }
        Cause::CapacityLost => {
            if bank.health.0 >= 99.5 {
                1.0
            } else {
                FITS * 0.75
            }
        }
        Cause::SelfDischarge => choose(bank.lead_acid.is_some()),
        Cause::EfficiencySet | Cause::ChargeEndsEarly if bank.lead_acid.is_some() => 1.5,
        _ => 1.0,
    }
}
