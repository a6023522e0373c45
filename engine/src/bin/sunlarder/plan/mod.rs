//! A plan with all its answers, and the three ways to print it.

mod json;
mod text;

pub(crate) use json::json;
pub(crate) use text::text;

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid, WeatherFile};
use sunlarder_engine::simulate::{Chances, Extent, Replayed, Run, Sun};
use sunlarder_engine::sky::Trust;
use sunlarder_engine::system::System;
use sunlarder_engine::words::command_line::Fault;
use sunlarder_engine::working::Tag;

use crate::words;

/// A plan, resolved and answered.
pub(crate) struct Answered {
    /// As it was given.
    pub(crate) plan: Document,
    /// Resolved.
    pub(crate) system: System,
    /// All answers.
    pub(crate) outlook: Outlook,
    /// What decades of weather say about it.
    pub(crate) chances: Chances,
    /// How far the climate is known.
    pub(crate) trust: Trust,
    /// Which of the two runs was asked for.
    pub(crate) sun: Sun,
    /// What a year of weather does with it, if one was brought.
    pub(crate) replayed: Option<Replayed>,
}

impl Answered {
    /// Answers a plan, also in a year of weather if there is one.
    pub(crate) fn of(
        plan: Document,
        sun: Sun,
        weather: Option<&WeatherFile>,
    ) -> Result<Self, Fault> {
        let system =
            System::assemble(&plan, Climate::embedded(), &mut ()).map_err(Fault::Refused)?;
        let outlook = Outlook::of(&system);
        let spread = SpreadGrid::embedded().at(system.site);
        let mut ensemble = outlook.ensemble(&system, &spread, Extent::default());
        while ensemble.advance() {}
        let (chances, trust) = (ensemble.chances(), ensemble.trust());
        drop(ensemble);
        let replayed = weather.map(|file| outlook.replay(&system, file));
        Ok(Self { plan, system, outlook, chances, trust, sun, replayed })
    }

    /// The run that was asked for.
    pub(crate) fn run(&self) -> &Run {
        match self.sun {
            Sun::Mean => &self.outlook.run,
            Sun::None => &self.outlook.dark,
        }
    }

    /// The name of a load, in any case.
    pub(crate) fn name(&self, load: u16) -> String {
        let tag = Tag::Load(load);
        self.name_of(tag).or_else(|| words().unnamed(tag)).unwrap_or_default()
    }

    /// The name of a load, if it has one.
    pub(crate) fn name_of(&self, tag: Tag) -> Option<String> {
        words().name_in(&self.plan, tag)
    }
}
