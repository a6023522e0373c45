//! What cannot work at all, and what should be thought of, said plainly.
//!
//! **Question answered:** is there anything that no weather could mend?
//!
//! **Method.** Loads that are on together by their schedules, in every quarter-hour of the week and month, against inverter
//! and bank; of those without a time only the largest counts. The hardest start is added to the highest load. An array's
//! open-circuit voltage at the record low stands against its controller's highest.
//!
//! **Left out:** cables, fuses, contacts; starts of two motors in the same moment.

use crate::bank::freezing_point;
use crate::document::{Chemistry, ControllerKind, Supply, When};
use crate::load::{DayKind, Load, presence};
use crate::quantity::{Amps, Celsius, Percent, VoltAmps, Volts, Watts};
use crate::sky::STEPS_PER_DAY;
use crate::source::START_MARGIN;
use crate::system::System;

/// Touching voltage beyond which direct current is dangerous.
const SHOCK: Volts = Volts(60.0);

/// Something that stops the plan from working, or that its owner must know.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Obstacle {
    /// A load on alternating current and no inverter.
    NoInverter {
        /// Its place in the plan.
        load: u16,
    },
    /// Loads at one time beyond the inverter's continuous output.
    InverterOverloaded {
        /// Power at that time.
        peak: Watts,
        /// What the inverter can.
        rated: Watts,
    },
    /// Loads at one time beyond the inverter's continuous output by their power factor alone.
    InverterOverApparent {
        /// Volts times amps at that time.
        peak: VoltAmps,
        /// What the inverter can.
        rated: VoltAmps,
    },
    /// A start beyond the inverter's short output.
    InverterSurge {
        /// The load that starts.
        load: u16,
        /// Volts times amps in that moment.
        peak: VoltAmps,
        /// What the inverter can.
        surge: VoltAmps,
    },
    /// Loads at one time beyond the bank's continuous discharge limit.
    BankOverloaded {
        /// Current at the lowest voltage.
        current: Amps,
        /// What the bank can.
        limit: Amps,
    },
    /// A start beyond the bank's peak discharge limit.
    BankSurge {
        /// The load that starts.
        load: u16,
        /// Current in that moment.
        current: Amps,
        /// What the bank can.
        limit: Amps,
    },
    /// An inverter that could draw more than the bank can give.
    InverterBeyondBank {
        /// Its current at full output.
        current: Amps,
        /// What the bank can.
        limit: Amps,
    },
    /// A bank whose voltage falls under the usual low cut-off for a moment, near its reserve and in the coldest month.
    BankSags {
        /// The load that starts; none where running loads suffice.
        load: Option<u16>,
        /// Voltage in that moment.
        voltage: Volts,
        /// Where inverters and protection usually cut off.
        cut_off: Volts,
    },
    /// An array that its controller cannot take in the cold.
    ArrayVoltageTooHigh {
        /// Its place in the plan.
        array: u16,
        /// Open-circuit voltage at that temperature.
        voltage: Volts,
        /// The temperature.
        at: Celsius,
        /// What the controller can.
        limit: Volts,
    },
    /// An array whose voltage does not reach the bank's.
    ArrayVoltageTooLow {
        /// Its place in the plan.
        array: u16,
        /// Its best-point voltage.
        voltage: Volts,
        /// What it takes.
        needed: Volts,
    },
    /// The record low is not known, so the cold voltage was not checked.
    ColdNotKnown {
        /// The array's place in the plan.
        array: u16,
    },
    /// The bank is too cold to be charged in these months.
    TooColdToCharge {
        /// Bits of the months, January first.
        months: u16,
        /// Not to be charged below this.
        least: Celsius,
    },
    /// The coldest that the bank may get freezes its electrolyte if it has sunk to its reserve.
    MayFreeze {
        /// The coldest.
        coldest: Celsius,
        /// Where it freezes.
        freezes: Celsius,
        /// At this state of charge.
        charge: Percent,
    },
    /// The engine charges a bank with a protection that may open: that can destroy the alternator.
    ProtectionMayOpen,
    /// A life depends on a load: it needs a backup and an alarm of its own.
    VitalLoad {
        /// Its place in the plan.
        load: u16,
    },
    /// The bank's voltage can kill.
    DangerousVoltage {
        /// The highest voltage while charging.
        voltage: Volts,
    },
}

impl Obstacle {
    /// Whether the plan cannot work with it; otherwise it is a caution.
    #[must_use]
    pub const fn stops(&self) -> bool {
        matches!(
            self,
            Self::NoInverter { .. }
                | Self::InverterOverloaded { .. }
                | Self::InverterOverApparent { .. }
                | Self::InverterSurge { .. }
                | Self::BankOverloaded { .. }
                | Self::BankSurge { .. }
                | Self::ArrayVoltageTooHigh { .. }
                | Self::ArrayVoltageTooLow { .. }
        )
    }

    /// Whether another inverter would take it away.
    #[must_use]
    pub const fn is_of_inverter(&self) -> bool {
        matches!(
            self,
            Self::NoInverter { .. }
                | Self::InverterOverloaded { .. }
                | Self::InverterOverApparent { .. }
                | Self::InverterSurge { .. }
        )
    }
}

/// The most that is drawn at one time.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Peak {
    /// Output of the inverter.
    pub ac: Watts,
    /// The same in volts times amps.
    pub apparent: VoltAmps,
    /// Power of loads on direct current.
    pub dc: Watts,
}

/// All obstacles of a plan, those that stop it first. `cold_months` are the bits of the months too cold to charge.
#[must_use]
pub fn obstacles(system: &System, cold_months: u16) -> Vec<Obstacle> {
    let mut found = Vec::new();
    let steps = running_by_step(system);
    inverter(system, &steps, &mut found);
    bank(system, &steps, &mut found);
    if !found.iter().any(Obstacle::stops) {
        found.extend(sag(system, &steps));
    }
    arrays(system, &mut found);
    if let (Some(least), true) = (system.bank.typical.charge_above, cold_months != 0) {
        found.push(Obstacle::TooColdToCharge { months: cold_months, least });
    }
    found.extend(frost(system));
    if system.alternator.is_some() && system.bank.typical.discharge_rate.is_some() {
        found.push(Obstacle::ProtectionMayOpen);
    }
    let vital = system.loads.iter().filter(|load| load.vital);
    found.extend(vital.map(|load| Obstacle::VitalLoad { load: load.place }));
    let voltage = system.bank.charging_voltage();
    if voltage > SHOCK {
        found.push(Obstacle::DangerousVoltage { voltage });
    }
    let (mut first, others): (Vec<_>, Vec<_>) = found.into_iter().partition(Obstacle::stops);
    first.extend(others);
    first
}

/// Whether a bank of flooded lead-acid may freeze: at the record low of the place, or where that is not known in its coldest month.
fn frost(system: &System) -> Option<Obstacle> {
    if system.bank.chemistry != Chemistry::FloodedLeadAcid {
        return None;
    }
    let coldest =
        system.climate.temperature.iter().fold(Celsius(f64::INFINITY), |a, b| a.at_most(*b));
    let coldest = system.record_low.unwrap_or(coldest);
    let coldest = system.bank.temperature(coldest, system.inside_least);
    let charge = system.bank.reserve;
    let freezes = freezing_point(charge);
    (coldest < freezes).then_some(Obstacle::MayFreeze { coldest, freezes, charge })
}

/// Whether a load can be on at any time, because nobody said when.
fn untimed(load: &Load) -> bool {
    matches!(load.schedule.when, When::HoursPerDay(_))
}

/// The peaks of every quarter-hour of every kind of day: loads that are on by their schedule together, and of those without a
/// stated time only the largest of each supply, because people do not boil, dry and iron at once.
fn running_by_step(system: &System) -> Vec<Peak> {
    let mut peaks = Vec::new();
    let largest = |supply| {
        let of = system.loads.iter().filter(|load| load.supply == supply && untimed(load));
        of.map(Load::running).fold(Watts::ZERO, Watts::at_least)
    };
    let untimed_ac = system.loads.iter().filter(|load| load.supply == Supply::Ac && untimed(load));
    let base = Peak {
        ac: largest(Supply::Ac),
        apparent: untimed_ac
            .map(|load| load.apparent(load.running()))
            .fold(VoltAmps::ZERO, VoltAmps::at_least),
        dc: largest(Supply::Dc),
    };
    let kind = |at: u8| DayKind::inside(at / 7, at % 7);
    let holds = |load: &Load, at: u8| kind(at).holds(&load.schedule);
    let same = |one, other| system.loads.iter().all(|load| holds(load, one) == holds(load, other));
    for at in 0..12 * 7 {
        if (0..at).any(|before| same(before, at)) {
            continue;
        }
        let kind = kind(at);
        let mut day = [base; STEPS_PER_DAY];
        for load in system.loads.iter().filter(|load| !untimed(load)) {
            for (peak, share) in day.iter_mut().zip(presence(&load.schedule, kind)) {
                if share > 0.0 {
                    match load.supply {
                        Supply::Ac => {
                            peak.ac += load.running();
                            peak.apparent += load.apparent(load.running());
                        }
                        Supply::Dc => peak.dc += load.running(),
                    }
                }
            }
        }
        peaks.extend(day);
    }
    peaks
}

/// The load whose start adds most.
fn hardest_start(system: &System) -> Option<&Load> {
    system
        .loads
        .iter()
        .max_by(|a, b| a.start_extra().0.total_cmp(&b.start_extra().0))
        .filter(|load| load.start_extra().0 > 0.0)
}

fn inverter(system: &System, steps: &[Peak], found: &mut Vec<Obstacle>) {
    let Some(inverter) = &system.inverter else {
        let stranded = system.loads.iter().find(|load| load.supply == Supply::Ac);
        found.extend(stranded.map(|load| Obstacle::NoInverter { load: load.place }));
        return;
    };
    let peak = steps.iter().map(|step| step.ac).fold(Watts::ZERO, Watts::at_least);
    if peak > inverter.rated {
        found.push(Obstacle::InverterOverloaded { peak, rated: inverter.rated });
        return;
    }
    let (rated, surge) = (VoltAmps(inverter.rated.0), VoltAmps(inverter.surge.0));
    let (peak, start) = asked_of_inverter(system, steps);
    if peak > rated {
        found.push(Obstacle::InverterOverApparent { peak, rated });
    } else if let Some((load, moment)) = start.filter(|(_, moment)| *moment > surge) {
        found.push(Obstacle::InverterSurge { load, peak: moment, surge });
    }
}

/// The most that loads ask of an inverter at one time, and in the moment of the hardest start, with the load that starts.
fn asked_of_inverter(system: &System, steps: &[Peak]) -> (VoltAmps, Option<(u16, VoltAmps)>) {
    let peak = steps.iter().map(|step| step.apparent).fold(VoltAmps::ZERO, VoltAmps::at_least);
    let starts = system.loads.iter().filter(|load| load.supply == Supply::Ac);
    let extra = |load: &Load| load.apparent(load.start_extra());
    let hardest = starts.max_by(|a, b| extra(a).0.total_cmp(&extra(b).0));
    let hardest = hardest.filter(|load| extra(load).0 > 0.0);
    let moment = |load: &Load| peak.at_least(load.apparent(load.power)) + extra(load);
    (peak, hardest.map(|load| (load.place, moment(load))))
}

/// Continuous outputs in which inverters are commonly sold \[W\]: rounded values of the trade.
const SIZES: [f64; 16] = [
    150.0, 300.0, 500.0, 800.0, 1000.0, 1500.0, 2000.0, 2500.0, 3000.0, 4000.0, 5000.0, 6000.0,
    8000.0, 10_000.0, 15_000.0, 20_000.0,
];
/// Room above what runs together: inverters give about a fifth less in a warm compartment than at 25 °C, by the usual derating of
/// their data sheets.
const ROOM: f64 = 1.25;

/// The smallest common inverter that feeds all loads that need one, with room and with their hardest start; nothing if none needs one,
/// or if they need more than is common.
#[must_use]
pub fn fitting_inverter(system: &System) -> Option<Watts> {
    let (peak, start) = asked_of_inverter(system, &running_by_step(system));
    let moment = start.map_or(VoltAmps::ZERO, |(_, moment)| moment);
    let fits = |rated: f64| {
        let usual = crate::document::Inverter { rated_w: rated, ..Default::default() };
        let surge = crate::load::Inverter::parse(&usual).map_or(rated, |own| own.surge.0);
        rated >= peak.0 * ROOM && surge >= moment.0
    };
    let needed = system.loads.iter().any(|load| load.supply == Supply::Ac);
    SIZES.into_iter().find(|rated| needed && fits(*rated)).map(Watts)
}

/// The sag is looked at near the reserve, but not deeper than this: any bank is under its cut-off when it is empty.
const SAG_AT: Percent = Percent(10.0);

/// The largest current of loads that run together, at the lowest voltage.
fn largest_current(system: &System, steps: &[Peak]) -> Amps {
    let low = system.bank.low_voltage();
    let drawn = |peak: &Peak| drawn(system, peak) / low + system.standing;
    steps.iter().map(drawn).fold(Amps::ZERO, Amps::at_least)
}

/// What is drawn from the bank at one time.
fn drawn(system: &System, peak: &Peak) -> Watts {
    let inverter = system.inverter.as_ref().filter(|_| peak.ac.0 > 0.0);
    peak.dc + inverter.map_or(Watts::ZERO, |own| own.input_of(peak.ac, peak.apparent))
}

/// The largest power of loads that run together, at the bank; standing draws are not among them.
#[must_use]
pub fn largest_power(system: &System) -> Watts {
    let steps = running_by_step(system);
    steps.iter().map(|peak| drawn(system, peak)).fold(Watts::ZERO, Watts::at_least)
}

/// Whether the hardest start, or what runs together, pulls the bank under its cut-off near the reserve in the coldest month.
fn sag(system: &System, steps: &[Peak]) -> Option<Obstacle> {
    let (bank, cut_off) = (&system.bank, system.bank.low_voltage());
    let coldest =
        system.climate.temperature.iter().fold(Celsius(f64::INFINITY), |a, b| a.at_most(*b));
    let temperature = bank.temperature(coldest, system.inside_least);
    let running = largest_current(system, steps);
    let start = hardest_start(system);
    let moment = running + start.map_or(Amps::ZERO, |load| load.start_extra() / cut_off);
    let charge = bank.reserve.at_least(SAG_AT).ratio();
    let under = |current| bank.under_load(charge, current, temperature);
    let voltage = under(moment);
    let load = start.filter(|_| under(running) >= cut_off).map(|load| load.place);
    (voltage < cut_off && moment.0 > 0.0).then_some(Obstacle::BankSags { load, voltage, cut_off })
}

fn bank(system: &System, steps: &[Peak], found: &mut Vec<Obstacle>) {
    let Some(limit) = system.bank.discharge_limit else { return };
    let low = system.bank.low_voltage();
    let current = largest_current(system, steps);
    if current > limit {
        found.push(Obstacle::BankOverloaded { current, limit });
    } else if let (Some(load), Some(peak)) = (hardest_start(system), system.bank.peak_limit) {
        let moment = current + load.start_extra() / low;
        if moment > peak {
            let load = load.place;
            found.push(Obstacle::BankSurge { load, current: moment, limit: peak });
        }
    }
    if let Some(inverter) = &system.inverter {
        let full = inverter.input(inverter.rated) / low;
        if full > limit && current <= limit {
            found.push(Obstacle::InverterBeyondBank { current: full, limit });
        }
    }
}

fn arrays(system: &System, found: &mut Vec<Obstacle>) {
    let charging = system.bank.charging_voltage();
    for array in &system.arrays {
        let place = array.place;
        if !array.starts(charging) {
            let needed = match array.controller {
                ControllerKind::Mppt => charging + START_MARGIN,
                ControllerKind::Pwm => charging,
            };
            let voltage = array.module.best * array.series;
            found.push(Obstacle::ArrayVoltageTooLow { array: place, voltage, needed });
        }
        let Some(limit) = array.max_voltage else { continue };
        // Without a record low, what is too much in the standard test is too much all the more in the cold.
        let at = system.record_low.unwrap_or(Celsius(25.0));
        let voltage = array.cold_voltage(at);
        if voltage > limit {
            found.push(Obstacle::ArrayVoltageTooHigh { array: place, voltage, at, limit });
        } else if system.record_low.is_none() {
            found.push(Obstacle::ColdNotKnown { array: place });
        }
    }
}
