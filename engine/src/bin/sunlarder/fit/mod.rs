//! How a plan is wired, and the two ways to print it.

mod json;
mod text;

pub(crate) use json::json;
pub(crate) use text::text;

use sunlarder_engine::document::Document;
use sunlarder_engine::fitting::{Basis, Fitting, Lengths};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::Climate;
use sunlarder_engine::system::System;
use sunlarder_engine::words::command_line::Fault;
use sunlarder_engine::working::Tag;

use crate::words;

/// A plan with its wiring.
pub(crate) struct Fitted {
    /// As it was given.
    plan: Document,
    /// How it is wired, by the usual basis and lengths of its kind.
    fitting: Fitting,
}

impl Fitted {
    /// Wires a plan.
    pub(crate) fn of(plan: Document) -> Result<Self, Fault> {
        let system =
            System::assemble(&plan, Climate::embedded(), &mut ()).map_err(Fault::Refused)?;
        let outlook = Outlook::of(&system);
        let (basis, lengths) = (Basis::stated(&plan), Lengths::stated(&plan));
        let fitting = Fitting::of(&plan, &system, &outlook, &basis, &lengths);
        Ok(Self { fitting: fitting.map_err(Fault::Unfit)?, plan })
    }

    /// The name of a load, if it has one.
    fn name_of(&self, tag: Tag) -> Option<String> {
        words().name_in(&self.plan, tag)
    }
}
