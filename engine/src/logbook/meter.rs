//! Tests by a meter, with the figures of the plan.

use crate::bank::Bank;
use crate::outlook::Outlook;
use crate::quantity::{AmpHours, Amps, Celsius, Percent, Volts};
use crate::system::System;

use super::symptom::Cause;

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

/// What a mean day of the month leaves.
pub(super) fn balance(outlook: &Outlook) -> AmpHours {
    outlook.months.get(outlook.month).map_or(AmpHours::ZERO, |own| own.balance)
}

/// The current of everything that may run at once.
pub(super) fn largest_current(system: &System) -> Amps {
    let power: f64 = system.loads.iter().map(|own| own.running().0).sum();
    Amps(power / system.bank.nominal.0)
}

/// The test that decides a cause, with the figures of the plan.
pub(super) fn test(cause: Cause, system: &System, outlook: &Outlook) -> MeterTest {
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
