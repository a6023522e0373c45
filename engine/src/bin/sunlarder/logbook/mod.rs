//! What readings say about a plan, what may be behind a symptom, and how a bank is looked after.

mod json;
mod text;

use sunlarder_engine::document::Document;
use sunlarder_engine::logbook::{
    Adoption, Bounds, GaugeSetUp, Hints, Learned, Order, Pasted, Readings, Slip, Study, Suspect,
    Symptom, adoptable, from_newest, paste, suspects,
};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::quantity::{AmpHours, Percent};
use sunlarder_engine::system::System;
use sunlarder_engine::words::command_line::Fault;

pub(crate) use json::{json, symptom_json};
pub(crate) use text::{care, symptom_text, text};

/// What was typed of the gauge and its readings.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Told {
    /// The capacity that the gauge was told.
    pub(crate) capacity: Option<AmpHours>,
    /// The charge efficiency that it was told.
    pub(crate) efficiency: Option<Percent>,
    /// Whether day or month comes first in dates.
    pub(crate) order: Option<Order>,
}

/// Readings of a plan with all that they say.
pub(crate) struct Read {
    pub(crate) pasted: Pasted,
    pub(crate) readings: Readings,
    /// Readings that were left out after all were put in order, by their lines.
    pub(crate) left_out: Vec<(usize, Slip)>,
    pub(crate) study: Study,
    pub(crate) adoptions: Vec<Adoption>,
    /// What the plan comes to from the newest reading on, with what was learned.
    pub(crate) ahead: Option<Outlook>,
}

/// The system of a plan.
pub(crate) fn system(plan: &Document) -> Result<System, Fault> {
    System::assemble(plan, Climate::embedded(), &mut ()).map_err(Fault::Refused)
}

/// Reads and weighs readings of a plan; what is not typed of its gauge is as the plan states it.
pub(crate) fn read(
    (plan, system): (&Document, &System),
    path: &str,
    told: Told,
    readings: &str,
) -> Result<Read, Fault> {
    let bounds = Bounds::of(system.bank.nominal, system.bank.rated);
    let pasted = paste(readings, &Hints { order: told.order, columns: None }, &bounds);
    let (readings, left) = Readings::of(&pasted.readings, &bounds);
    if readings.all().is_empty() {
        return Err(Fault::NothingRead(path.to_owned(), pasted.slips.into_iter().next()));
    }
    let line = |place: usize| pasted.lines.get(place).copied().unwrap_or_default();
    let left_out = left.into_iter().map(|(place, slip)| (line(place), slip)).collect();
    let stated = GaugeSetUp::stated(plan, system);
    let gauge = GaugeSetUp {
        capacity: told.capacity.unwrap_or(stated.capacity),
        efficiency: told.efficiency.map_or(stated.efficiency, Percent::ratio),
    };
    let spread = SpreadGrid::embedded().at(system.site);
    let study = Study::of(system, &spread, &gauge, &readings);
    let adoptions = adoptable(&study, system);
    let ahead = from_newest(system, &study, &readings, &adoptions);
    let ahead = ahead.map(|own| Outlook::of(&own));
    Ok(Read { pasted, readings, left_out, study, adoptions, ahead })
}

/// The causes of a symptom of a plan, ranked with its readings if there are any.
pub(crate) fn ranked(system: &System, symptom: Symptom, read: Option<&Read>) -> Vec<Suspect> {
    let outlook = Outlook::of(system);
    suspects(symptom, system, &outlook, read.map(|own| &own.study))
}

/// What was learned, as it is told: what does not agree, what does, and what is not told.
fn sorted(study: &Study) -> [Vec<&Learned>; 3] {
    let of = |group: usize| {
        let all = study.learned.iter();
        all.filter(|own| if own.alarm { 0 } else { 2 - usize::from(own.estimate.told) } == group)
            .collect()
    };
    [of(0), of(1), of(2)]
}
