//! How a plan is wired: currents, conductors, fuses, shunt, bus bars, checks of arrays, what to buy, and a diagram of it.
//!
//! **Question answered:** which cable, which fuse and which shunt belong to this plan, and what must whoever fits them know?
//!
//! **Method.** Each run has a current at the lowest working voltage (`current`), a conductor by a chosen [`Basis`] and a fuse between
//! the two (`run`, `ampacity`, `fuse`), against the short circuit that the bank can drive (`short_circuit`). All figures are rounded to
//! the safe side: to the next conductor, the next fuse, the least copper, the hottest air, all loads at once. Every figure has its
//! working by [`Fitting::work`].
//!
//! **Range.** Direct current of up to 125 V at the bank, 600 A, 120 mm² and air of 10 to 50 °C. Beyond it a run is refused with the
//! reason, never extrapolated. **Left out:** everything at mains voltage, which is named and left to a licensed person; earthing and
//! corrosion afloat; the strength of lugs, which is by the maker's sheet.
//!
//! These are planning figures and not the design of an installation: local codes, makers' instructions and licensed practice come first.

mod ampacity;
mod array;
mod basis;
mod conductor;
mod current;
mod diagram;
mod drawing;
mod fuse;
mod note;
mod parts;
mod run;
mod shopping;
mod short_circuit;
mod stated;

pub use ampacity::{
    ENGINE_SPACE, Surroundings, ambient_factor, bundle_factor, largest_fuse, table_ampacity,
};
pub use array::{ArrayCheck, Cold};
pub use basis::{Basis, Bundle, Insulation, Lengths, ShortCircuit, Tables};
pub use conductor::{FILLING, Gauge, Stretch, gauge_section, loop_resistance};
pub use diagram::{Diagram, Line, Node, Part, Pole};
pub use drawing::{Shape, Tick, shortened};
pub use fuse::{Fuse, FuseClass, FusePlace, NEAR_MM, RATINGS, ROOM, next_rating};
pub use note::Note;
pub use parts::{BusBars, ShuntChoice};
pub use run::{Asked, Refusal, Run, RunCurrent, RunKind, Wire};
pub use shopping::{Bought, Item};
pub use short_circuit::{Prospective, by_cranking, highest_voltage, prospective};

use crate::document::Document;
use crate::outlook::Outlook;
use crate::quantity::{Amps, Celsius, Metres, Ohms};
use crate::system::System;
use crate::working::{Trace, Working};

use array::check;
use current::Wiring;
use run::Fault;

/// A working that nobody reads: with it wiring is compiled once, with its trace, where speed matters less than what the page fetches.
fn untold() -> Working {
    Working::new()
}

/// Why nothing can be said by a basis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unfit {
    /// Air outside the table that corrects for it.
    Ambient {
        /// What was asked.
        at: Celsius,
        /// The least.
        least: Celsius,
        /// The most.
        most: Celsius,
    },
    /// Insulation for which these tables say nothing.
    Insulation {
        /// Whose tables.
        tables: Tables,
        /// The insulation.
        insulation: Insulation,
    },
    /// More than three conductors together on land.
    Bundled,
    /// A length that is none.
    Length {
        /// Of which run.
        run: RunKind,
        /// What was asked.
        length: Metres,
        /// The least.
        least: Metres,
        /// The most.
        most: Metres,
    },
    /// A short-circuit current or cranking amps that no bank has.
    ShortCircuit {
        /// What was asked.
        value: Amps,
        /// The least.
        least: Amps,
        /// The most.
        most: Amps,
    },
    /// Cranking amps of a bank for which they say nothing.
    Cranking,
}

/// How a plan is wired.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitting {
    /// By which rules.
    pub basis: Basis,
    /// What the bank can drive through a short circuit.
    pub short_circuit: Prospective,
    /// Every run, the bank's first.
    pub runs: Vec<Run>,
    /// The shunt of the battery gauge; none where the current is beyond those that are common.
    pub shunt: Option<ShuntChoice>,
    /// Bus bars or studs.
    pub bus_bars: BusBars,
    /// What was checked of each array.
    pub arrays: Vec<ArrayCheck>,
    /// What must be known.
    pub notes: Vec<Note>,
    /// What to buy.
    pub shopping: Vec<Bought>,
    /// The drawing.
    pub diagram: Diagram,
}

impl Fitting {
    /// Wires a plan; `system` and `outlook` must be its own.
    ///
    /// # Errors
    /// What of the basis or of the lengths is outside the tables.
    pub fn of(
        plan: &Document,
        system: &System,
        outlook: &Outlook,
        basis: &Basis,
        lengths: &Lengths,
    ) -> Result<Self, Unfit> {
        basis.checked(system)?;
        lengths.checked()?;
        let wiring = &Wiring { plan, system, basis, lengths };
        let short_circuit = prospective(system, basis, &mut untold());
        let mut fitting = Self {
            basis: *basis,
            short_circuit,
            runs: Vec::new(),
            shunt: None,
            bus_bars: BusBars::default(),
            arrays: system.arrays.iter().map(|own| check(wiring, own, &mut untold())).collect(),
            notes: Vec::new(),
            shopping: Vec::new(),
            diagram: Diagram::default(),
        };
        for kind in wiring.kinds() {
            let run = fitting.run_of(wiring, kind, &mut untold());
            fitting.runs.extend(run);
        }
        let whole = fitting.run(RunKind::Battery).map(|run| run.asked.current.continuous);
        fitting.shunt = whole.and_then(|current| parts::shunt(current, &mut untold()));
        fitting.bus_bars = parts::bus_bars(&fitting);
        fitting.notes = note::notes(wiring, outlook, &fitting);
        fitting.shopping = shopping::list(&fitting);
        fitting.diagram = diagram::draw(&fitting);
        Ok(fitting)
    }

    /// A run, if the plan has it.
    #[must_use]
    pub fn run(&self, kind: RunKind) -> Option<&Run> {
        self.runs.iter().find(|run| run.asked.kind == kind)
    }

    /// The working of a run: its current, its conductor, the drop over it, and the short circuit that its fuse may meet.
    pub fn work(
        &self,
        kind: RunKind,
        (plan, system): (&Document, &System),
        lengths: &Lengths,
        trace: &mut impl Trace,
    ) -> Option<Run> {
        let wiring = &Wiring { plan, system, basis: &self.basis, lengths };
        if let RunKind::Array(place) | RunKind::ModuleString(place) = kind {
            let array = system.arrays.iter().find(|own| own.place == place);
            array.map(|own| check(wiring, own, trace));
        } else {
            prospective(system, &self.basis, trace);
        }
        let run = self.run_of(wiring, kind, trace)?;
        if kind == RunKind::Battery {
            parts::shunt(run.asked.current.continuous, trace);
        }
        Some(run)
    }

    fn run_of(&self, wiring: &Wiring<'_>, kind: RunKind, trace: &mut impl Trace) -> Option<Run> {
        let asked = wiring.asked(kind, trace)?;
        let checked = |place: u16| self.arrays.iter().find(move |own| own.array == place);
        if let RunKind::Array(place) | RunKind::ModuleString(place) = kind
            && let Some(own) = checked(place).filter(|own| own.cold == Cold::TooHigh)
            && let Some(limit) = own.limit
        {
            let voltage = own.voltage;
            return Some(Run { asked, wire: Err(Refusal::ColdVoltage { voltage, limit }) });
        }
        let fault = self.fault(&asked, wiring.system, trace);
        let wire = run::wire(&asked, wiring.basis, fault, trace);
        Some(Run { asked, wire })
    }

    /// The short circuit that the fuse of a run may meet; the runs ahead of it are chosen before.
    fn fault(&self, asked: &Asked, system: &System, trace: &mut impl Trace) -> Fault {
        let own = &self.short_circuit;
        let whole = Fault::at_post(own);
        let cable = |kinds: &[RunKind]| -> Option<Ohms> {
            let of = |kind: &RunKind| {
                let run = self.run(*kind)?;
                run.wire.as_ref().ok().map(|wire| wire.cold_resistance(run.asked.length))
            };
            kinds.iter().try_fold(Ohms::ZERO, |sum, kind| Some(sum + of(kind)?))
        };
        match (asked.fused, asked.kind) {
            (Some(FusePlace::Post), RunKind::BatteryString) => {
                Fault { current: own.of_string(system.bank.strings), ..whole }
            }
            (Some(FusePlace::Combiner), RunKind::ModuleString(place)) => {
                let array = self.arrays.iter().find(|own| own.array == place);
                let others = asked.count - 1.0;
                let current = asked.current.continuous * others;
                Fault { current, volts: array.map_or(own.volts, |own| own.voltage) }
            }
            (Some(FusePlace::Panel), _) => match own.branch {
                Some(current) => Fault { current, ..whole },
                None => cable(&[RunKind::Battery, RunKind::Distribution])
                    .map_or(whole, |cable| Fault { current: own.behind(cable, trace), ..whole }),
            },
            (Some(FusePlace::Bus), kind) if kind != RunKind::Battery => cable(&[RunKind::Battery])
                .map_or(whole, |cable| Fault { current: own.behind(cable, trace), ..whole }),
            _ => whole,
        }
    }
}
