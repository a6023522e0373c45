//! How big it must be: a promise, what keeps it, and what would help; and the two ways to print it.

mod json;
mod text;

pub(crate) use json::json;
pub(crate) use text::text;

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::sizing::{Change, Helped, Promise, Question, Size, Study, Track};
use sunlarder_engine::system::System;
use sunlarder_engine::words::command_line::Fault;
use sunlarder_engine::words::sizing::Sized;
use sunlarder_engine::working::Tag;

use crate::words;

/// A promise with the chance that is usual for a plan.
pub(crate) fn usual(plan: &Document, promise: Promise) -> Promise {
    promise.with_usual_chance(is_vital(plan))
}

/// Whether a life may depend on something that runs.
fn is_vital(plan: &Document) -> bool {
    plan.loads.iter().any(|load| load.on && load.vital)
}

/// A plan with the answers to what was asked about it.
pub(crate) fn studied(plan: &Document, question: Question) -> Result<Study, Fault> {
    let system = System::assemble(plan, Climate::embedded(), &mut ()).map_err(Fault::Refused)?;
    let spread = SpreadGrid::embedded().at(system.site);
    let mut study = Study::new(plan, &system, &Outlook::of(&system), &spread, question)
        .map_err(Fault::Refused)?;
    let mut rows = Track::default();
    while study.advance(&mut rows) {}
    Ok(study)
}

/// A size as amounts.
fn sized(study: &Study, size: Size) -> Sized {
    let system = study.sizing().system();
    Sized { charge: size.charge(system), power: size.power(system) }
}

/// Whether the plan keeps its promise as it stands.
fn kept(study: &Study) -> bool {
    study.standing().is_some_and(|standing| standing.kept)
}

/// A change, or two together, in words.
fn said(study: &Study, helped: &Helped) -> String {
    let said = |change: &Change| words().change(change, &name(study, change));
    match &helped.with {
        Some(with) => words().both_changes(&said(&helped.change), &said(with)),
        None => said(&helped.change),
    }
}

/// The name of the load that a change is about; of any other nothing.
fn name(study: &Study, change: &Change) -> String {
    match change {
        Change::LessUse { load, .. } | Change::Direct { load } => {
            let tag = Tag::Load(*load);
            let own = words().name_in(study.plan(), tag);
            own.or_else(|| words().unnamed(tag)).unwrap_or_default()
        }
        _ => String::new(),
    }
}
