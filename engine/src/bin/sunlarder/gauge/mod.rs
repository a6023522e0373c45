//! How a gauge is set up for a plan, what it would show, and how it is checked; and the ways to print it.

mod json;
mod text;

pub(crate) use json::json;
pub(crate) use text::{sheet, text};

use sunlarder_engine::document::Document;
use sunlarder_engine::gauge::{Card, Check, Course, Mistake, Sheet, Trial, Tried, Truth, Years};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::sky::DAYS_PER_YEAR;
use sunlarder_engine::system::System;
use sunlarder_engine::words::command_line::Fault;
use sunlarder_engine::words::gauge::OnGauge;
use sunlarder_engine::working::Tag;

use crate::words;

/// Years of weather that a gauge is taken through.
const YEARS: u32 = 10;
/// How mistakes are typed.
const MISTAKES: [(&str, Mistake); 17] = [
    ("capacity-high", Mistake::CapacityHigh),
    ("capacity-low", Mistake::CapacityLow),
    ("efficiency-high", Mistake::EfficiencyHigh),
    ("efficiency-low", Mistake::EfficiencyLow),
    ("full-voltage-low", Mistake::FullVoltageLow),
    ("full-voltage-high", Mistake::FullVoltageHigh),
    ("tail-large", Mistake::TailLarge),
    ("tail-small", Mistake::TailSmall),
    ("offset-up", Mistake::OffsetUp),
    ("offset-down", Mistake::OffsetDown),
    ("shunt-large", Mistake::ShuntLarge),
    ("shunt-small", Mistake::ShuntSmall),
    ("shunt-reversed", Mistake::ShuntReversed),
    ("load-ahead", Mistake::LoadAhead),
    ("charger-ahead", Mistake::ChargerAhead),
    ("threshold-high", Mistake::ThresholdHigh),
    ("full-on-empty", Mistake::FullOnEmpty),
];

/// A mistake as it is typed.
pub(crate) fn mistake(given: &str) -> Result<Mistake, Fault> {
    let found = MISTAKES.iter().find(|(name, _)| *name == given).map(|(_, own)| *own);
    found.ok_or_else(|| {
        let known = MISTAKES.map(|(name, _)| name).join(", ");
        Fault::UnknownMistake { given: given.to_owned(), known }
    })
}

/// A plan with its gauge.
pub(crate) struct Gauged {
    /// As it was given.
    plan: Document,
    /// Resolved.
    system: System,
    /// The settings.
    card: Card,
    /// What is checked.
    sheet: Sheet,
    /// A year of the gauge that is set up by the card.
    right: Trial,
    /// The same in several years of weather.
    years: Option<Years>,
    /// A mistake, tried.
    tried: Option<Tried>,
}

impl Gauged {
    /// Sets up the gauge of a plan and takes it through a year, also with a mistake if one is asked for.
    pub(crate) fn of(plan: Document, mistake: Option<Mistake>) -> Result<Self, Fault> {
        let system =
            System::assemble(&plan, Climate::embedded(), &mut ()).map_err(Fault::Refused)?;
        let outlook = Outlook::of(&system);
        let card = Card::of(&system, &outlook);
        let spread = SpreadGrid::embedded().at(system.site);
        let through = |number| {
            Course::of((&system, &outlook), Truth::ByMonth, (&spread, number), DAYS_PER_YEAR)
        };
        let course = through(0);
        let trial = |number| Trial::of(&through(number), &card.gauge(), 0);
        Ok(Self {
            sheet: Sheet::of_plan((&plan, &system, &outlook), &card),
            years: Years::of(&mut (0..YEARS).map(trial)),
            right: Trial::of(&course, &card.gauge(), 0),
            tried: mistake.map(|own| own.tried(&card, &system, &course)),
            card,
            plan,
            system,
        })
    }

    /// What the plan says was read of a check, and what that means.
    fn read(&self, check: &Check) -> Option<(String, String)> {
        let read = check.read_in(&self.plan)?;
        let name_of = |tag| self.name_of(tag);
        let unit = check.point.unit();
        let figure = unit.map_or(words().on_gauge(OnGauge::Done).to_owned(), |unit| {
            format!("{} {}", words().on_gauge(OnGauge::Reading), words().metered(read.value, unit))
        });
        let meaning = match check.judge(&read) {
            Ok(judged) => words().judged(check, &judged),
            Err(unread) => words().unread(&unread, &name_of),
        };
        Some((figure, meaning))
    }

    /// The name of a load, if it has one.
    fn name_of(&self, tag: Tag) -> Option<String> {
        words().name_in(&self.plan, tag)
    }
}
