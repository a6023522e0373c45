//! Sources: what can charge the bank, before the bank has its say.
//!
//! **Question answered:** what could come in during a quarter-hour, if the bank took all of it?
//!
//! Arrays follow the sky; chargers on shore power or on the engine give their limit while their source is there. What the bank does not
//! accept is left over, and the step in `simulate` says so.

mod array;

pub use array::{Array, Feed, MPPT_EFFICIENCY, Module, POWER_PER_K, START_MARGIN, VOLTAGE_PER_K};

use crate::document::{Charger as Section, Schedule};
use crate::quantity::Amps;

/// A charger that gives its limit at times.
#[derive(Clone, Debug, PartialEq)]
pub struct Charger {
    /// Output limit.
    pub limit: Amps,
    /// When its source is there.
    pub schedule: Schedule,
}

impl Charger {
    /// Reads its section; none if it is switched off.
    #[must_use]
    pub fn parse(section: &Section) -> Option<Self> {
        section
            .on
            .then(|| Self { limit: Amps(section.limit_a), schedule: section.schedule.clone() })
    }
}
