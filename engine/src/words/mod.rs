//! Words: turns typed messages, working and ids into sentences. Only the page, its worker and the command line use it.
//!
//! One folder per language. [`Language`] dispatches; each method matches every language, so a language that lacks a message
//! does not compile. Within a language every message is an exhaustive match, so a message that lacks words does not compile.
//!
//! **To add a language:** add a variant to [`Language`], copy the folder `en`, translate it, and follow the compiler.

#[cfg(feature = "cli")]
pub mod command_line;
mod countries;
mod decimal;
pub mod en;
mod label;
mod number;
mod page;
mod pictures;
mod sentence;
mod worked;

pub use countries::Countries;
pub use decimal::{decimal, padded};
pub use label::Label;
pub use number::{amount, clock, precise, rounded};
pub use sentence::{Sentence, Tone};
pub use worked::{InputLine, Line, lines};

use crate::document::{Document, Field, Problem};
use crate::load::catalogue::Appliance;
use crate::place::WeatherFileFault;
use crate::working::{Formula, Source, Symbol, Tag};

/// Gives the name of a load or array, if it has one.
pub type NameOf<'a> = &'a dyn Fn(Tag) -> Option<String>;

/// A language that the program speaks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Language {
    /// English.
    #[default]
    English,
}

impl Language {
    /// Name of a month, January being 0.
    #[must_use]
    pub fn month(self, month: usize) -> &'static str {
        match self {
            Self::English => en::calendar::month(month),
        }
    }

    /// Short name of a month, January being 0.
    #[must_use]
    pub fn month_short(self, month: usize) -> &'static str {
        match self {
            Self::English => en::calendar::month_short(month),
        }
    }

    /// First letter of a month, January being 0.
    #[must_use]
    pub fn month_initial(self, month: usize) -> &'static str {
        match self {
            Self::English => en::calendar::month_initial(month),
        }
    }

    /// Name of a day of the week, Monday being 0.
    #[must_use]
    pub fn weekday(self, day: usize) -> &'static str {
        match self {
            Self::English => en::calendar::weekday(day),
        }
    }

    /// Short name of a day of the week, Monday being 0.
    #[must_use]
    pub fn weekday_short(self, day: usize) -> &'static str {
        match self {
            Self::English => en::calendar::weekday_short(day),
        }
    }

    /// Why something was refused: what was found where, what is allowed, what to do.
    #[must_use]
    pub fn problem(self, problem: &Problem, name_of: NameOf<'_>) -> String {
        match self {
            Self::English => en::problems::problem(problem, name_of),
        }
    }

    /// What stands behind a refusal where a plan is open.
    #[must_use]
    pub fn unchanged(self) -> &'static str {
        match self {
            Self::English => en::problems::unchanged(),
        }
    }

    /// Why a weather file was refused.
    #[must_use]
    pub fn weather_file_fault(self, fault: &WeatherFileFault) -> String {
        match self {
            Self::English => en::weather_file::fault(fault),
        }
    }

    /// The label of an input box.
    #[must_use]
    pub fn field(self, field: Field) -> &'static str {
        match self {
            Self::English => en::problems::field(field),
        }
    }

    /// The unit of an input box; empty for counts.
    #[must_use]
    pub fn field_unit(self, field: Field) -> &'static str {
        match self {
            Self::English => en::problems::unit(field),
        }
    }

    /// A load or array that has no name, by its place.
    #[must_use]
    pub fn unnamed(self, tag: Tag) -> Option<String> {
        match self {
            Self::English => en::problems::unnamed(tag),
        }
    }

    /// The name of a load in a plan: its own, or its appliance's, or none.
    #[must_use]
    pub fn name_in(self, plan: &Document, tag: Tag) -> Option<String> {
        let Tag::Load(place) = tag else { return None };
        let load = plan.loads.get(usize::from(place))?;
        if !load.name.is_empty() {
            return Some(load.name.clone());
        }
        let appliance = Appliance::from_number(load.appliance?)?;
        match self {
            Self::English => Some(en::appliances::name(appliance).to_owned()),
        }
    }

    /// What a symbol of a formula means.
    #[must_use]
    pub fn symbol(self, symbol: Symbol) -> &'static str {
        match self {
            Self::English => en::working::symbol(symbol),
        }
    }

    /// The title of a step of a working.
    #[must_use]
    pub fn formula(self, formula: Formula) -> &'static str {
        match self {
            Self::English => en::working::formula(formula),
        }
    }

    /// Where a formula or a value comes from.
    #[must_use]
    pub fn source(self, source: Source) -> String {
        match self {
            Self::English => en::working::source(source),
        }
    }

    /// That an earlier step made a value; steps count from 1.
    #[must_use]
    pub fn from_step(self, number: usize) -> String {
        match self {
            Self::English => en::working::from_step(number),
        }
    }
}
