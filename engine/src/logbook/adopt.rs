//! What a plan can take over of what was learned, and how it goes on from the newest reading.
//!
//! **In a plan.** More use is more power of each load, for there are no parts of pieces and not every load states its hours; the rest are
//! fields of the bank and the standing current. What a field cannot say is cut to its range, and that is told.
//!
//! **Left out.** What the arrays bring is never taken over: in weeks nobody can tell weak arrays from dull weather. The inverter's own draw
//! stays as it was planned.

use chrono::Timelike;

use crate::bank::ChargeEfficiency;
use crate::document::{ClockTime, Document, Field, Rating};
use crate::quantity::{Amps, Percent, Within};
use crate::system::{Start, System};

use super::learned::{Study, What};
use super::reading::Readings;

/// One thing that a plan can take over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Adoption {
    /// All use times this (ratio).
    Use(f64),
    /// What age has left of the capacity.
    Health(Percent),
    /// A standing current more than planned.
    Standing(Amps),
    /// The share of the charge put in that comes out again.
    Efficiency(Percent),
}

/// Smaller departures from a plan are no reason to change it (ratio).
const WORTH: f64 = 0.05;
/// A bank farther from its plan than this is no matter of age: first look for what else is wrong (ratios to the plan's capacity; twice the
/// spread that is supposed before anything was read).
const AGE: core::ops::RangeInclusive<f64> = 0.6..=1.4;

/// What of it is worth taking over. Consumption and hidden drain only where chance does not explain them; capacity and efficiency
/// where the readings tell them and the plan's own lie outside the interval.
#[must_use]
pub fn adoptable(study: &Study, system: &System) -> Vec<Adoption> {
    let mut all = Vec::new();
    let of = |what: What| study.get(what);
    if let Some(own) = of(What::NightUse).filter(|own| own.alarm) {
        all.push(Adoption::Use(own.estimate.best));
    }
    if let Some(own) = of(What::Capacity).filter(|own| {
        own.estimate.told && !own.estimate.holds(1.0) && AGE.contains(&own.estimate.best)
    }) {
        let health = (system.bank.health.0 * own.estimate.best).within(1.0, 100.0);
        if (health / system.bank.health.0 - 1.0).abs() > WORTH {
            all.push(Adoption::Health(Percent(health)));
        }
    }
    if let Some(own) = of(What::HiddenDrain).filter(|own| own.alarm) {
        all.push(Adoption::Standing(Amps(own.estimate.best)));
    }
    let planned = system.bank.mean_efficiency;
    if let Some(own) = of(What::Efficiency).filter(|own| own.estimate.told)
        && !own.estimate.holds(planned)
        && (own.estimate.best - planned).abs() > WORTH
    {
        all.push(Adoption::Efficiency(Percent::of_ratio(own.estimate.best)));
    }
    all
}

impl Adoption {
    /// Puts it on a system.
    pub fn put_on(self, system: &mut System) {
        match self {
            Self::Use(share) => {
                for load in &mut system.loads {
                    load.quantity *= share;
                }
                system.own_standing = system.own_standing * share;
                system.standing = system.standing * share;
            }
            Self::Health(health) => system.bank.health = health,
            Self::Standing(more) => {
                system.own_standing += more;
                system.standing += more;
            }
            Self::Efficiency(own) => {
                let own = own.ratio();
                system.bank.mean_efficiency = own;
                system.bank.efficiency = match system.bank.efficiency {
                    ChargeEfficiency::Flat(_) => ChargeEfficiency::Flat(own),
                    ChargeEfficiency::FallingNearFull(_) => ChargeEfficiency::FallingNearFull(own),
                };
            }
        }
    }
}

/// Sets a field of a plan; nothing if it can say so, else the field and what it should have said.
fn set(own: &mut f64, field: Field, value: f64) -> Option<(Field, f64)> {
    let range = field.range();
    *own = range.rounded(value.within(range.min, range.max));
    (!range.holds(value)).then_some((field, value))
}

impl Adoption {
    /// Writes it into a plan. Gives back the fields that cannot say all of it, with what they should have said.
    pub fn write(self, plan: &mut Document) -> Vec<(Field, f64)> {
        let mut cut = Vec::new();
        match self {
            Self::Use(share) => {
                for load in &mut plan.loads {
                    let (own, field) = match &mut load.rating {
                        Rating::PowerW(own) => (own, Field::LoadPower),
                        Rating::Plate { current_a, .. } => (current_a, Field::LoadCurrent),
                        Rating::LabelKwhPerYear(own) => (own, Field::LabelEnergy),
                        Rating::Output { power_w, .. } => (power_w, Field::OutputPower),
                    };
                    let more = *own * share;
                    cut.extend(set(own, field, more));
                }
                let more = plan.standing_a * share;
                cut.extend(set(&mut plan.standing_a, Field::StandingCurrent, more));
            }
            Self::Health(own) => {
                cut.extend(set(&mut plan.bank.health_pct, Field::Health, own.0));
            }
            Self::Standing(more) => {
                let more = plan.standing_a + more.0;
                cut.extend(set(&mut plan.standing_a, Field::StandingCurrent, more));
            }
            Self::Efficiency(own) => {
                let efficiency = plan.bank.charge_efficiency_pct.get_or_insert_default();
                cut.extend(set(efficiency, Field::ChargeEfficiency, own.0));
            }
        }
        cut
    }
}

/// Has a plan start at the newest reading, at the charge that the readings together give it; nothing if no reading tells it.
pub fn start_at_newest(plan: &mut Document, study: &Study, readings: &Readings) -> Option<()> {
    let (newest, charge) = (readings.newest()?, study.charge_now?);
    let at = newest.at.time();
    plan.start.date = newest.at.date();
    plan.start.time = ClockTime((at.hour() * 60 + at.minute()) as u16);
    set(&mut plan.start.charge_pct, Field::StartCharge, Percent::of_ratio(charge.best).0);
    Some(())
}

/// The system as it goes on from the newest reading, at the charge that the readings together give it, with what was taken over. None
/// if no reading tells the charge. Its [`Outlook`](crate::outlook::Outlook) says how long it lasts.
#[must_use]
pub fn from_newest(
    system: &System,
    study: &Study,
    readings: &Readings,
    adopted: &[Adoption],
) -> Option<System> {
    let (newest, charge) = (readings.newest()?, study.charge_now?);
    let at = newest.at.time();
    let minute = (at.hour() * 60 + at.minute()) as u16;
    let mut own = system.clone();
    own.start = Start { date: newest.at.date(), minute, charge: charge.best };
    for adoption in adopted {
        adoption.put_on(&mut own);
    }
    Some(own)
}
