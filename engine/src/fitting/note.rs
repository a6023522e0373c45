//! What whoever does the work must know: cautions and what is left to others, as values without text.
//!
//! Each is said where it matters: a note stands in the results if and only if the plan has what it is about. Local codes, makers'
//! instructions and licensed practice stand on every sheet.

use super::array::{ArrayCheck, Cold};
use super::basis::{Basis, Tables};
use super::current::{Feed, Wiring};
use super::{Fitting, RunKind};
use crate::document::Chemistry;
use crate::outlook::{Obstacle, Outlook};
use crate::quantity::{Amps, Volts, Watts};

/// What most fuses carry for some seconds, over their rating: typical, the maker's curve decides.
const CARRIED_BRIEFLY: f64 = 2.0;
/// Touching voltage beyond which direct current is dangerous.
const SHOCK: Volts = Volts(60.0);
/// Capacitors of an inverter so large are charged through a resistor first: usual from here on, no document behind it.
const LARGE_INVERTER: Watts = Watts(2000.0);
/// The same of any inverter at such a nominal voltage, where the spark is hotter.
const HIGH_VOLTAGE: Volts = Volts(40.0);

/// Something to know before or while the work is done.
#[derive(Clone, Debug, PartialEq)]
pub enum Note {
    /// Local codes, makers' instructions and licensed practice come first.
    CodesFirst,
    /// The plan cannot work as it stands: mend it before anything is bought.
    PlanCannotWork,
    /// The mains side is left to a licensed person.
    MainsLicensed,
    /// Voltages that can kill.
    ShockAndArc {
        /// The highest of bank and arrays.
        voltage: Volts,
    },
    /// Modules are live in daylight.
    ModulesLive,
    /// Gas of charging must leave.
    Ventilate,
    /// Sealed batteries vent too when they are overcharged.
    SealedVents,
    /// Lithium and sodium can burn, and their protection is never bridged.
    KeepProtection,
    /// Exhaust gas kills.
    CarbonMonoxide,
    /// Batteries are held down and their posts covered.
    Restrain,
    /// Disconnect before work, and in which order.
    WorkOrder,
    /// Strings in parallel: equal lengths, ends taken crosswise.
    EqualLengths {
        /// How many.
        strings: f64,
    },
    /// They are brought to the same voltage before they are joined.
    BalanceFirst,
    /// Links between batteries in a row are as thick as what follows them.
    SeriesLinks {
        /// Batteries in a row.
        batteries: f64,
    },
    /// The starter battery stays apart.
    StarterApart,
    /// The charger on the engine takes more on the engine's side than it gives.
    EngineSide,
    /// An alternator must not lose its battery while it charges.
    ProtectionMayOpen,
    /// What stays alive when the isolator is open.
    KeepAlive {
        /// The loads, by their place in the plan.
        loads: Vec<u16>,
    },
    /// A large inverter is charged through a resistor before it is connected.
    PreCharge,
    /// A start that may open a fuse: its curve is to be looked at.
    StartOverFuse {
        /// Of which run.
        run: RunKind,
        /// The current of that moment.
        peak: Amps,
        /// The fuse.
        rating: Amps,
    },
    /// Torque is by the maker's sheet.
    Torque,
    /// All negatives of loads and chargers on the load side of the shunt.
    BehindShunt,
    /// The order of lugs on a stud.
    LugOrder,
    /// A fuse protects a conductor at each end that can feed it.
    BothEnds,
    /// The bank's short-circuit current is assumed.
    MakersShortCircuit {
        /// What was assumed.
        assumed: Amps,
    },
    /// An array would destroy its controller.
    ColdTooHigh {
        /// What was found.
        check: ArrayCheck,
    },
    /// An array stays under its controller's limit.
    ColdFits {
        /// What was found.
        check: ArrayCheck,
    },
    /// The record low is not known.
    RecordUnknown {
        /// What was found.
        check: ArrayCheck,
    },
    /// The controller's limit is not known.
    LimitUnknown {
        /// What was found.
        check: ArrayCheck,
    },
    /// A fuse for each string, no larger than the modules allow.
    StringFuses {
        /// The array, from 0.
        array: u16,
    },
    /// A switch between array and controller.
    ArraySwitch {
        /// The array, from 0.
        array: u16,
        /// For this voltage.
        voltage: Volts,
    },
    /// A turbine is wired by its maker's sheet.
    TurbineBySheet,
    /// Lengths that nobody measured.
    LengthsAssumed {
        /// How many.
        runs: usize,
    },
    /// The tables of boats stand in for those of vehicles.
    VehicleTables,
    /// Which tables, for which insulation, air and bundling.
    TablesUsed {
        /// By which rules.
        basis: Basis,
    },
    /// A voltage over that for which the marine table is made.
    OverTableVoltage {
        /// The highest voltage.
        voltage: Volts,
    },
}

/// The voltage up to which the marine table is made.
const MARINE_VOLTS: Volts = Volts(50.0);

/// All notes of a fitting, those that can kill first.
pub(super) fn notes(wiring: &Wiring<'_>, outlook: &Outlook, fitting: &Fitting) -> Vec<Note> {
    let mut found = vec![Note::CodesFirst];
    if outlook.obstacles.iter().any(Obstacle::stops) {
        found.push(Note::PlanCannotWork);
    }
    dangers(wiring, fitting, &mut found);
    arrays(wiring, fitting, &mut found);
    bank(wiring, fitting, &mut found);
    starts(fitting, &mut found);
    hands(wiring, &mut found);
    assumptions(wiring, fitting, &mut found);
    found
}

/// What can hurt or kill.
fn dangers(wiring: &Wiring<'_>, fitting: &Fitting, found: &mut Vec<Note>) {
    let system = wiring.system;
    let arrays = fitting.arrays.iter().map(|check| check.voltage);
    let voltage = arrays.fold(fitting.short_circuit.volts, Volts::at_least);
    if voltage > SHOCK {
        found.push(Note::ShockAndArc { voltage });
    }
    if system.inverter.is_some() || system.shore.is_some() || system.generator.is_some() {
        found.push(Note::MainsLicensed);
    }
    match system.bank.chemistry {
        Chemistry::FloodedLeadAcid => found.push(Note::Ventilate),
        Chemistry::Agm | Chemistry::Gel => found.push(Note::SealedVents),
        Chemistry::Lifepo4 | Chemistry::Nmc | Chemistry::SodiumIon => {
            found.push(Note::KeepProtection);
        }
    }
    if system.generator.is_some() || system.alternator.is_some() {
        found.push(Note::CarbonMonoxide);
    }
    if !system.arrays.is_empty() {
        found.push(Note::ModulesLive);
    }
    found.extend([Note::Restrain, Note::WorkOrder]);
}

fn arrays(wiring: &Wiring<'_>, fitting: &Fitting, found: &mut Vec<Note>) {
    for check in &fitting.arrays {
        let check = *check;
        found.push(match check.cold {
            Cold::TooHigh => Note::ColdTooHigh { check },
            Cold::Fits => Note::ColdFits { check },
            Cold::RecordUnknown => Note::RecordUnknown { check },
            Cold::LimitUnknown => Note::LimitUnknown { check },
        });
        let array = check.array;
        if check.string_fuses {
            found.push(Note::StringFuses { array });
        }
        found.push(Note::ArraySwitch { array, voltage: check.voltage });
    }
    if wiring.system.turbine.is_some() {
        found.push(Note::TurbineBySheet);
    }
}

fn bank(wiring: &Wiring<'_>, fitting: &Fitting, found: &mut Vec<Note>) {
    let system = wiring.system;
    if system.bank.strings > 1.0 {
        found.push(Note::EqualLengths { strings: system.bank.strings });
        found.push(Note::BalanceFirst);
    }
    let batteries = system.bank.batteries / system.bank.strings;
    if batteries > 1.0 {
        found.push(Note::SeriesLinks { batteries });
    }
    if system.alternator.is_some() {
        found.extend([Note::StarterApart, Note::EngineSide]);
        if system.bank.typical.discharge_rate.is_some() {
            found.push(Note::ProtectionMayOpen);
        }
    }
    if fitting.short_circuit.assumed {
        found.push(Note::MakersShortCircuit { assumed: fitting.short_circuit.current });
    }
}

/// Starts that are more than what fuses usually carry for some seconds.
fn starts(fitting: &Fitting, found: &mut Vec<Note>) {
    for run in &fitting.runs {
        let (peak, rating) = (run.asked.current.peak, run.fuse().map(|fuse| fuse.rating));
        if let Some(rating) = rating.filter(|rating| peak > *rating * CARRIED_BRIEFLY) {
            found.push(Note::StartOverFuse { run: run.asked.kind, peak, rating });
        }
    }
}

/// What the hands do.
fn hands(wiring: &Wiring<'_>, found: &mut Vec<Note>) {
    let system = wiring.system;
    let alive: Vec<u16> = wiring
        .direct()
        .filter(|load| wiring.feed(load) == Feed::Ahead)
        .map(|load| load.place)
        .collect();
    if !alive.is_empty() {
        found.push(Note::KeepAlive { loads: alive });
    }
    let large = |inverter: &crate::load::Inverter| {
        inverter.rated >= LARGE_INVERTER || system.bank.nominal > HIGH_VOLTAGE
    };
    if system.inverter.as_ref().is_some_and(large) {
        found.push(Note::PreCharge);
    }
    found.extend([Note::BehindShunt, Note::LugOrder, Note::BothEnds, Note::Torque]);
}

/// What was assumed.
fn assumptions(wiring: &Wiring<'_>, fitting: &Fitting, found: &mut Vec<Note>) {
    let basis = wiring.basis;
    found.push(Note::TablesUsed { basis: *basis });
    if basis.tables == Tables::Vehicle {
        found.push(Note::VehicleTables);
    }
    let of_arrays = |kind: RunKind| matches!(kind, RunKind::Array(_) | RunKind::ModuleString(_));
    let arrays = fitting.runs.iter().filter(|run| of_arrays(run.asked.kind));
    let volts = arrays.map(|run| run.asked.current.volts);
    let voltage = volts.fold(wiring.system.bank.nominal, Volts::at_least);
    if basis.tables != Tables::Land && voltage > MARINE_VOLTS {
        found.push(Note::OverTableVoltage { voltage });
    }
    let typical = crate::working::Source::Typical;
    let assumed = fitting.runs.iter().filter(|run| run.asked.length_source == typical);
    let runs = assumed.count();
    if runs > 0 {
        found.push(Note::LengthsAssumed { runs });
    }
}
