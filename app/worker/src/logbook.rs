//! What the readings of a plan say, weighed once for all leaves that tell of them.

use sunlarder_engine::digits;
use sunlarder_engine::document::Document;
use sunlarder_engine::logbook::{GaugeSetUp, Readings, Slip, Study};
use sunlarder_engine::system::System;

use crate::message::spread_of;

/// The readings of a plan, and what they say.
#[derive(Debug)]
pub struct Weighed {
    /// The spreads that they were weighed with, to know them again.
    spreads: String,
    /// Those that can be used.
    pub readings: Readings,
    /// The others by their place in the plan.
    pub slips: Vec<(usize, Slip)>,
    /// What they say.
    pub study: Study,
}

impl Weighed {
    /// Weighs the readings of a plan; `spreads` are the twelve of the daily clearness, with blanks between. Nothing if they are none, or
    /// if no reading can be weighed.
    #[must_use]
    pub fn of(spreads: &str, plan: &Document, system: &System) -> Option<Self> {
        let numbers: Option<Vec<f64>> = spreads.split(' ').map(digits::number).collect();
        let spread = spread_of(&numbers?)?;
        let (readings, slips) = Readings::stated(plan, system);
        let gauge = GaugeSetUp::stated(plan, system);
        let study = Study::of(system, &spread, &gauge, &readings);
        Some(Self { spreads: spreads.to_owned(), readings, slips, study })
    }

    /// Whether they were weighed with these spreads.
    #[must_use]
    pub fn is_with(&self, spreads: &str) -> bool {
        self.spreads == spreads
    }
}
