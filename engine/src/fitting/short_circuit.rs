//! The current that flows when something falls across the bank.
//!
//! **Question answered:** what must a fuse be able to break?
//!
//! **Method.** The maker's figure goes first. Without it: of lead-acid the highest charging voltage over the lowest resistance that such
//! batteries have (new, warm, full), with no credit for cable at the post; of lithium and sodium more than 10 kA is assumed, so that a
//! fuse for 20 kA is asked for, and the same of every bank over 500 Ah or 2200 cold-cranking amps (ABYC E-11). Where cable lies
//! between bank and fuse, its cold resistance is added. Strings in parallel add, batteries in series do not.
//!
//! **Left out:** what motors and capacitors add, and what a battery's own protection would stop.

use super::basis::{Basis, ShortCircuit};
use crate::bank::Bank;
use crate::document::Chemistry;
use crate::quantity::{AmpHours, Amps, Celsius, Ohms, Volts};
use crate::system::System;
use crate::working::{Formula, Source, Trace, term};

/// What is assumed where no figure is known and none can be worked out.
const ASSUMED: Amps = Amps(20_000.0);
/// Banks over this need the maker's figure or what is assumed (ABYC E-11).
const LARGE_BANK: AmpHours = AmpHours(500.0);
/// Cranking amps over which the same holds (ABYC E-11).
const LARGE_CRANKING: Amps = Amps(2200.0);
/// The lowest resistances of a cell of 100 Ah \[mΩ\]: a sixth of 4, 2.5 and 5 mΩ of a battery of 12 V, the low ends of what is typical; no
/// document behind them.
const LOWEST_MILLIOHM: [(Chemistry, f64); 3] = [
    (Chemistry::FloodedLeadAcid, 4.0 / 6.0),
    (Chemistry::Agm, 2.5 / 6.0),
    (Chemistry::Gel, 5.0 / 6.0),
];
/// Charge that these are stated for.
const STATED_FOR: AmpHours = AmpHours(100.0);
/// Nominal voltages for which cranking amps say something (ABYC E-11).
const CRANKING_VOLTS: (Volts, Volts) = (Volts(11.0), Volts(26.0));
/// The highest charging voltage is that of a bank as cold as this, unless the record low of the place is lower.
const COLD: Celsius = Celsius(0.0);

/// What a bank could drive through a short circuit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prospective {
    /// The current at the posts, of all strings.
    pub current: Amps,
    /// The highest voltage, at which a fuse must break it.
    pub volts: Volts,
    /// What fuses in the branches of a panel must break, where a table says it.
    pub branch: Option<Amps>,
    /// Whether it is assumed, so that the maker's figure should be asked for.
    pub assumed: bool,
    /// Where the current comes from, if it was not worked out.
    pub source: Source,
}

/// Whether cranking amps say something of a bank.
pub(super) fn may_crank(bank: &Bank) -> bool {
    let (least, most) = CRANKING_VOLTS;
    bank.lead_acid.is_some() && bank.nominal >= least && bank.nominal <= most
}

/// What main fuses and those of branches must break by the cold-cranking amps of all batteries together, 12 to 24 V (ABYC E-11).
#[must_use]
pub fn by_cranking(cranking: Amps) -> (Amps, Amps) {
    if cranking > LARGE_CRANKING {
        (ASSUMED, ASSUMED)
    } else if cranking > Amps(1100.0) {
        (Amps(5000.0), Amps(2500.0))
    } else if cranking > Amps(650.0) {
        (Amps(3000.0), Amps(1500.0))
    } else {
        (Amps(1500.0), Amps(750.0))
    }
}

/// The highest voltage of a bank: the absorption voltage in the cold.
#[must_use]
pub fn highest_voltage(system: &System) -> Volts {
    let coldest = system.record_low.map_or(COLD, |low| low.at_most(COLD));
    let coldest = system.bank.temperature(coldest, system.inside_least).at_most(COLD);
    system.bank.absorption_voltage(coldest)
}

/// What the bank of a system could drive, with its working.
pub fn prospective(system: &System, basis: &Basis, trace: &mut impl Trace) -> Prospective {
    let volts = highest_voltage(system);
    let source = Source::MarineInterrupting;
    let of = |current, assumed| Prospective { current, volts, branch: None, assumed, source };
    match basis.short_circuit {
        Some(ShortCircuit::Stated(current)) => {
            return Prospective { source: Source::Plan, ..of(current, false) };
        }
        Some(ShortCircuit::Cranking(cranking)) => {
            let (main, branch) = by_cranking(cranking);
            return Prospective { branch: Some(branch), ..of(main, cranking > LARGE_CRANKING) };
        }
        None => {}
    }
    let bank = &system.bank;
    let lowest = LOWEST_MILLIOHM.iter().find(|(chemistry, _)| *chemistry == bank.chemistry);
    let Some((_, milliohm)) = lowest.filter(|_| bank.rated <= LARGE_BANK) else {
        return of(ASSUMED, true);
    };
    let resistance = Ohms(milliohm / 1000.0 * bank.cells * (STATED_FOR / bank.rated));
    let inputs = [term(volts).from(Source::Typical), term(resistance).from(Source::Typical)];
    of(trace.step(Formula::ShortCircuit, volts / resistance, &inputs), false)
}

impl Prospective {
    /// The current where cable of this resistance lies between, with its working.
    pub fn behind(&self, cable: Ohms, trace: &mut impl Trace) -> Amps {
        let current = Amps(self.volts.0 / (self.volts.0 / self.current.0 + cable.0));
        let own = term(self.current).from(self.source);
        let inputs =
            [term(self.volts).from(Source::Typical), own, term(cable).from(Source::WireGauge)];
        trace.step(Formula::ShortCircuitBehind, current, &inputs)
    }

    /// The most that flows through the fuse of one of these strings: what it gives itself, or all others together.
    #[must_use]
    pub fn of_string(&self, strings: f64) -> Amps {
        if self.assumed {
            return self.current;
        }
        let others = strings - 1.0;
        self.current * (if others > 1.0 { others } else { 1.0 } / strings)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;
    use crate::fitting::Tables;
    use crate::place::Climate;

    fn system(edit: impl Fn(&mut Document)) -> System {
        let mut plan = Document::default();
        edit(&mut plan);
        System::assemble(&plan, Climate::embedded(), &mut ()).unwrap()
    }

    #[test]
    fn lead_acid_by_its_lowest_resistance_and_large_or_lithium_banks_by_assumption() {
        let basis = Basis::of(Tables::Land);
        let lead = |ah| {
            system(|plan| {
                plan.bank.chemistry = Chemistry::Agm;
                plan.bank.battery_v = 12.0;
                plan.bank.capacity_ah = ah;
            })
        };
        // 14.5 V and 4 mV a cell and kelvin from 25 to 0 °C are 15.1 V; 2.5 mΩ.
        let own = prospective(&lead(100.0), &basis, &mut ());
        assert!((own.volts.0 - 15.1).abs() < 1e-9 && (own.current.0 - 6040.0).abs() < 1e-6);
        assert!(!own.assumed);
        assert!(prospective(&lead(501.0), &basis, &mut ()).assumed);
        let lithium = prospective(&system(|_| {}), &basis, &mut ());
        assert_eq!((lithium.current, lithium.assumed), (Amps(20_000.0), true));
        let stated = Basis { short_circuit: Some(ShortCircuit::Stated(Amps(3000.0))), ..basis };
        assert_eq!(prospective(&system(|_| {}), &stated, &mut ()).current, Amps(3000.0));
    }

    #[test]
    fn cable_and_strings_take_their_part() {
        let own = Prospective {
            current: Amps(6000.0),
            volts: Volts(12.0),
            branch: None,
            assumed: false,
            source: Source::Plan,
        };
        // 2 mΩ of the bank and 2 mΩ of cable.
        assert!((own.behind(Ohms(0.002), &mut ()).0 - 3000.0).abs() < 1e-9);
        assert_eq!((own.of_string(2.0), own.of_string(3.0)), (Amps(3000.0), Amps(4000.0)));
        assert_eq!(own.of_string(1.0), Amps(6000.0));
    }
}
