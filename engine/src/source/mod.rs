//! Sources: what can charge the bank, before the bank has its say.
//!
//! **Question answered:** what could come in during a step, if the bank took all of it?
//!
//! **Method.** Arrays follow the sky; chargers on shore power or on the engine give their limit, less what heat takes, while
//! their source is there; a turbine gives its mean of the month; a generator runs by the state of charge. What the bank does
//! not accept is left over, and the step in `simulate` says so. When several charge at once the sun is used first, then the
//! turbine, the engine, the generator, and shore power last.
//!
//! **Left out:** how a charger's output follows the speed of the engine, the weakness of a shore supply, and what a charger
//! itself takes from its side. Whether a source exists at a time is its schedule's, not chance.

mod array;
mod generator;
mod turbine;

pub use array::{
    Array, Feed, MPPT_EFFICIENCY, Module, POWER_PER_K, SERIES_DROP, START_MARGIN, VOLTAGE_PER_K,
};
pub use generator::{Fuel, Generator};
pub use turbine::{Flow, Turbine};

use crate::document::{Charger as Section, Schedule};
use crate::quantity::{Amps, Percent};

/// A charger that gives its limit at times.
#[derive(Clone, Debug, PartialEq)]
pub struct Charger {
    /// Output limit, less what heat takes of it.
    pub limit: Amps,
    /// When its source is there.
    pub schedule: Schedule,
}

impl Charger {
    /// Reads its section; none if it is switched off.
    #[must_use]
    pub fn parse(section: &Section) -> Option<Self> {
        let limit = Amps(section.limit_a) * Percent(section.derating_pct).remainder();
        section.on.then(|| Self { limit, schedule: section.schedule.clone() })
    }
}
