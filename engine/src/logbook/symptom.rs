//! From what somebody sees to what may be behind it, and the meter that decides.
//!
//! **Method.** Each symptom has causes with a weight by what the trade meets (a choice of this engine: one rare, five common). What the
//! plan makes likely or unlikely, and what the readings say for or against, multiply it. No order of causes is a proof: each comes with
//! the test that decides.

use crate::bank::Bank;
use crate::outlook::Outlook;
use crate::quantity::{AmpHours, Amps, Celsius, Percent, Volts};
use crate::system::System;

use super::learned::{Study, What};

/// What somebody sees.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Symptom {
    /// The gauge never reaches full.
    NeverFull,
    /// The inverter or the loads go off while the gauge shows plenty.
    CutsOutEarly,
    /// Full in the evening, empty in the morning.
    EmptyByMorning,
    /// The gauge shows full and lights are dim.
    FullButDim,
    /// The percentage jumps.
    Jumps,
    /// The percentage falls with everything off.
    FallsAtRest,
}

impl Symptom {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::NeverFull,
        Self::CutsOutEarly,
        Self::EmptyByMorning,
        Self::FullButDim,
        Self::Jumps,
        Self::FallsAtRest,
    ];

    /// Its name on a command line.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::NeverFull => "never-full",
            Self::CutsOutEarly => "cuts-out-early",
            Self::EmptyByMorning => "empty-by-morning",
            Self::FullButDim => "full-but-dim",
            Self::Jumps => "jumps",
            Self::FallsAtRest => "falls-at-rest",
        }
    }
}

/// What may be behind it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// By the plan itself less comes in than goes out.
    PlanShort,
    /// More is used than the plan says.
    UsesMore,
    /// The arrays bring less than they should.
    ArrayWeak,
    /// The bank holds less than its label.
    CapacityLost,
    /// The gauge was told another capacity.
    CapacitySet,
    /// The gauge was told another charge efficiency.
    EfficiencySet,
    /// The gauge was set to full while the bank was not.
    FalseFull,
    /// The gauge's conditions for full are never met.
    FullNotSeen,
    /// A charger or load hangs on the wrong side of the shunt while something charges.
    Bypass,
    /// A load hangs on the wrong side of the shunt.
    HiddenDrain,
    /// Something draws when everything is off.
    StandingDrain,
    /// The gauge shows a current where there is none.
    ZeroOff,
    /// A cell or a battery is failing.
    DyingCell,
    /// Cables, lugs or fuses drop too much voltage.
    CableDrop,
    /// The cut-off voltage is set too high.
    CutOffHigh,
    /// The loads pull the voltage down.
    DrawTooLarge,
    /// Charging ends too early or at too low a voltage.
    ChargeEndsEarly,
    /// It is too cold.
    TooCold,
    /// The bank discharges by itself.
    SelfDischarge,
}

impl Cause {
    /// All of them.
    pub const ALL: [Self; 19] = [
        Self::PlanShort,
        Self::UsesMore,
        Self::ArrayWeak,
        Self::CapacityLost,
        Self::CapacitySet,
        Self::EfficiencySet,
        Self::FalseFull,
        Self::FullNotSeen,
        Self::Bypass,
        Self::HiddenDrain,
        Self::StandingDrain,
        Self::ZeroOff,
        Self::DyingCell,
        Self::CableDrop,
        Self::CutOffHigh,
        Self::DrawTooLarge,
        Self::ChargeEndsEarly,
        Self::TooCold,
        Self::SelfDischarge,
    ];
}

/// The causes of each symptom, with their weights.
fn causes(symptom: Symptom) -> &'static [(Cause, f64)] {
    use Cause as C;
    match symptom {
        Symptom::NeverFull => &[
            (C::FullNotSeen, 4.0),
            (C::PlanShort, 3.0),
            (C::UsesMore, 3.0),
            (C::ArrayWeak, 3.0),
            (C::ChargeEndsEarly, 3.0),
            (C::Bypass, 2.0),
            (C::EfficiencySet, 2.0),
            (C::CapacitySet, 2.0),
            (C::TooCold, 1.0),
            (C::DyingCell, 1.0),
        ],
        Symptom::CutsOutEarly => &[
            (C::CapacityLost, 4.0),
            (C::CableDrop, 4.0),
            (C::FalseFull, 3.0),
            (C::DyingCell, 3.0),
            (C::DrawTooLarge, 3.0),
            (C::CutOffHigh, 2.0),
            (C::CapacitySet, 2.0),
            (C::HiddenDrain, 2.0),
            (C::TooCold, 2.0),
        ],
        Symptom::EmptyByMorning => &[
            (C::UsesMore, 4.0),
            (C::StandingDrain, 3.0),
            (C::CapacityLost, 3.0),
            (C::PlanShort, 3.0),
            (C::FalseFull, 2.0),
            (C::ChargeEndsEarly, 2.0),
            (C::HiddenDrain, 2.0),
            (C::TooCold, 1.0),
            (C::DyingCell, 1.0),
        ],
        Symptom::FullButDim => &[
            (C::FalseFull, 4.0),
            (C::CableDrop, 4.0),
            (C::DyingCell, 4.0),
            (C::CapacityLost, 3.0),
            (C::HiddenDrain, 2.0),
            (C::DrawTooLarge, 1.0),
        ],
        Symptom::Jumps => &[
            (C::FalseFull, 4.0),
            (C::EfficiencySet, 3.0),
            (C::Bypass, 3.0),
            (C::CapacitySet, 2.0),
            (C::HiddenDrain, 2.0),
            (C::ZeroOff, 2.0),
            (C::CapacityLost, 1.0),
        ],
        Symptom::FallsAtRest => &[
            (C::StandingDrain, 5.0),
            (C::ZeroOff, 3.0),
            (C::SelfDischarge, 1.0),
            (C::DyingCell, 1.0),
        ],
    }
}

/// The measurement that decides whether a cause is the one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MeterTest {
    /// The plan's own balance; no meter is needed.
    Balance {
        /// What a mean day of the month lacks; negative if it leaves something.
        short: AmpHours,
    },
    /// Current with the usual things on, by night.
    NightCurrent {
        /// The plan's mean.
        planned: Amps,
    },
    /// Current of the arrays at noon under a clear sky, into a bank that is not full.
    NoonCurrent {
        /// About what the plan's mean noon gives.
        planned: Amps,
    },
    /// A counted discharge from full at a known current.
    CountedDischarge {
        /// A current that empties it in about twenty hours.
        current: Amps,
        /// What it should give above its reserve.
        usable: AmpHours,
    },
    /// The gauge's capacity against the bank's.
    CapacityBack {
        /// What it should be told.
        capacity: AmpHours,
    },
    /// Amp-hours out over amp-hours in between two times at truly full.
    FullToFull {
        /// The usual share of the chemistry.
        usual: Percent,
    },
    /// Voltage and current at the moment that it says full.
    AtFull {
        /// The absorption voltage.
        volts: Volts,
        /// The tail current.
        tail: Amps,
    },
    /// A clamp on the battery's own cable against the gauge while it charges.
    ClampCharging,
    /// A clamp on the battery's own cable with everything off.
    ClampAllOff {
        /// What the plan says it still draws.
        planned: Amps,
    },
    /// What the gauge shows with the battery's cable off, or everything isolated.
    ZeroCurrent,
    /// The rested voltage of each battery, or cell, against the others.
    EachBattery {
        /// What a half full battery has at rest.
        half: Volts,
    },
    /// The drop from the posts to the load at a large current.
    DropUnderLoad {
        /// A current to do it at.
        current: Amps,
        /// Three hundredths of the nominal voltage.
        most: Volts,
    },
    /// The voltage at the posts when it goes off.
    PostsAtCutOff {
        /// Where it should.
        cut_off: Volts,
    },
    /// The voltage at the posts while it absorbs.
    PostsAbsorbing {
        /// What it should be.
        volts: Volts,
    },
    /// The temperature of the bank.
    Temperature {
        /// Not to be charged below this, if there is such a limit.
        least: Option<Celsius>,
    },
    /// The rested voltage twice, some weeks apart, disconnected.
    RestedTwice {
        /// What a month should take.
        a_month: Percent,
    },
}

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
    let mut all: Vec<Suspect> = causes(symptom)
        .iter()
        .map(|(cause, weight)| {
            let told = by_readings(*cause, study);
            let weight = weight * by_plan(*cause, system, outlook) * told.unwrap_or(1.0);
            let seen = told.is_some_and(|own| own > 1.0);
            let standing = if seen { Standing::Seen } else { Standing::Unlikely };
            Suspect { cause: *cause, weight, standing, test: test(*cause, system, outlook) }
        })
        .collect();
    all.sort_by(|a, b| b.weight.total_cmp(&a.weight));
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

fn balance(outlook: &Outlook) -> AmpHours {
    outlook.months.get(outlook.month).map_or(AmpHours::ZERO, |own| own.balance)
}

/// The current of everything that may run at once.
fn largest_current(system: &System) -> Amps {
    let power: f64 = system.loads.iter().map(|own| own.running().0).sum();
    Amps(power / system.bank.nominal.0)
}

/// The test that decides a cause, with the figures of the plan.
fn test(cause: Cause, system: &System, outlook: &Outlook) -> MeterTest {
    use MeterTest as T;
    let bank: &Bank = &system.bank;
    let temperature = outlook.bank_temperature;
    let standing = system.standing + bank.protection;
    match cause {
        Cause::PlanShort => T::Balance { short: -balance(outlook) },
        Cause::UsesMore => T::NightCurrent { planned: outlook.current },
        Cause::ArrayWeak => {
            let noon = outlook.run.samples.iter().map(|own| {
                own.forcing.solar_power / bank.charging_voltage() + own.forcing.solar_current
            });
            T::NoonCurrent { planned: noon.fold(Amps::ZERO, Amps::at_least) }
        }
        Cause::CapacityLost => T::CountedDischarge {
            current: Amps(bank.rated.0 / 20.0),
            usable: outlook.capacity.usable,
        },
        Cause::CapacitySet => T::CapacityBack { capacity: outlook.capacity.full },
        Cause::EfficiencySet => T::FullToFull { usual: Percent::of_ratio(bank.mean_efficiency) },
        Cause::FalseFull | Cause::FullNotSeen => {
            T::AtFull { volts: bank.absorption_voltage(temperature), tail: bank.tail_current() }
        }
        Cause::Bypass => T::ClampCharging,
        Cause::HiddenDrain | Cause::StandingDrain => T::ClampAllOff { planned: standing },
        Cause::ZeroOff => T::ZeroCurrent,
        Cause::DyingCell => {
            T::EachBattery { half: bank.of_one_battery(bank.open_circuit(0.5) / bank.cells) }
        }
        Cause::CableDrop => {
            let current = largest_current(system).at_most(Amps(bank.rated.0 / 5.0));
            T::DropUnderLoad { current, most: bank.nominal * 0.03 }
        }
        Cause::CutOffHigh | Cause::DrawTooLarge => T::PostsAtCutOff { cut_off: bank.low_voltage() },
        Cause::ChargeEndsEarly => T::PostsAbsorbing { volts: bank.absorption_voltage(temperature) },
        Cause::TooCold => T::Temperature { least: bank.typical.charge_above },
        Cause::SelfDischarge => {
            T::RestedTwice { a_month: Percent::of_ratio(bank.self_discharge_per_hour * 730.0) }
        }
    }
}
