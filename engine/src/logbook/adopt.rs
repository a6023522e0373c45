//! What a plan can take over of what was learned, and how it goes on from the newest reading.
//!
//! **Left out.** What the arrays bring is never taken over: in weeks nobody can tell weak arrays from dull weather. The inverter's own draw
//! stays as it was planned.

use chrono::Timelike;

use crate::bank::ChargeEfficiency;
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

/// What of it is worth taking over. Consumption and hidden drain only where chance does not explain them; capacity and efficiency
/// where the readings tell them.
#[must_use]
pub fn adoptable(study: &Study, system: &System) -> Vec<Adoption> {
    let mut all = Vec::new();
    let of = |what: What| study.get(what);
    if let Some(own) = of(What::NightUse).filter(|own| own.alarm) {
        all.push(Adoption::Use(own.estimate.best));
    }
    if let Some(own) = of(What::Capacity).filter(|own| own.estimate.told) {
        let health = (system.bank.health.0 * own.estimate.best).within(1.0, 100.0);
        if (health / system.bank.health.0 - 1.0).abs() > WORTH {
            all.push(Adoption::Health(Percent(health)));
        }
    }
    if let Some(own) = of(What::HiddenDrain).filter(|own| own.alarm) {
        all.push(Adoption::Standing(Amps(own.estimate.best)));
    }
    if let Some(own) = of(What::Efficiency).filter(|own| own.estimate.told)
        && (own.estimate.best - system.bank.mean_efficiency).abs() > WORTH
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
