//! Words: turns typed messages, working and ids into sentences. Only the page, its worker and the command line use it.
//!
//! One folder per language. [`Language`] says what never carries a figure, [`Words`] the rest: a language together with the
//! [`Habits`] of whoever reads it. Each method goes through `speak!`, which names every language, so a language that lacks a
//! message does not compile. Within a language every message is an exhaustive match, so a message that lacks words does not
//! compile.
//!
//! Each language is a feature of this crate: the page is built once a language and carries no other.
//!
//! **To add a language:** a feature in `Cargo.toml`, a variant of [`Language`] with its arms below, a line in `speak!`, a copy of
//! the folder `en`, translated, and `index.tsv` in it for the words of the bare page; then follow the compiler; a line in
//! `other_pages` of `dev`, and one in [`SITE`].

/// Says something in whichever language it is: `room::message(arguments)` or `room::TEXT` of that language's folder.
macro_rules! speak {
    ($language:expr, $room:ident::$message:ident $(($($given:expr),* $(,)?))?) => {
        match $language {
            #[cfg(feature = "english")]
            $crate::words::Language::English => $crate::words::en::$room::$message $(($($given),*))?,
            #[cfg(feature = "spanish")]
            $crate::words::Language::Spanish => $crate::words::es::$room::$message $(($($given),*))?,
        }
    };
}

#[cfg(feature = "cli")]
pub mod command_line;
mod compare;
mod countries;
mod decimal;
#[cfg(feature = "english")]
pub mod en;
mod entries;
#[cfg(feature = "spanish")]
pub mod es;
mod explained;
pub mod fitting;
pub mod gauge;
mod habits;
mod label;
mod loads;
pub mod logbook;
mod number;
mod page;
mod pictures;
mod reading;
mod sentence;
pub mod sheet;
pub mod sizes;
pub mod sizing;
mod worked;

#[cfg(not(any(feature = "english", feature = "spanish")))]
compile_error!("choose a language: the features `english` and `spanish`");

use core::ops::Deref;

pub use countries::Countries;
pub use decimal::{decimal, padded};
pub use entries::DifferenceLine;
pub use explained::Term;
pub use habits::{
    ClockHabit, Distance, FirstDay, Habits, LeadingUnit, Mass, Temperature, WireSize,
};
pub use label::Label;
pub use number::clock;
pub use reading::Typed;
pub use sentence::{Sentence, Tone};
pub use worked::{InputLine, Line, lines};

use crate::document::{Document, Field, Problem};
use crate::load::catalogue::Appliance;
use crate::place::WeatherFileFault;
use crate::working::{Formula, Source, Symbol, Tag};

/// Gives the name of a load or array, if it has one.
pub type NameOf<'a> = &'a dyn Fn(Tag) -> Option<String>;

/// A language that the program speaks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Language {
    /// English.
    #[cfg(feature = "english")]
    English,
    /// Spanish.
    #[cfg(feature = "spanish")]
    Spanish,
}

/// The languages of the site: tag and name in itself. Each has a page of its own, which knows no other but by this list; the first
/// stands at the root and the others in folders of their tags.
pub const SITE: [(&str, &str); 2] = [("en", "English"), ("es", "Español")];

/// A language and the habits of whoever reads it: what sentences with figures need.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Words {
    /// In which language.
    pub language: Language,
    /// In which units, by which clock.
    pub habits: Habits,
}

impl Words {
    /// A language with the habits that nobody has chosen otherwise.
    #[must_use]
    pub const fn of(language: Language) -> Self {
        Self { language, habits: Habits::USUAL }
    }
}

impl Deref for Words {
    type Target = Language;

    fn deref(&self) -> &Language {
        &self.language
    }
}

impl Language {
    /// Every language that is built in.
    pub const ALL: &[Self] = &[
        #[cfg(feature = "english")]
        Self::English,
        #[cfg(feature = "spanish")]
        Self::Spanish,
    ];

    /// Its tag, as in the `lang` of a page (BCP 47).
    #[must_use]
    pub const fn tag(self) -> &'static str {
        match self {
            #[cfg(feature = "english")]
            Self::English => "en",
            #[cfg(feature = "spanish")]
            Self::Spanish => "es",
        }
    }

    /// The language of a tag, if it is built in.
    #[must_use]
    pub fn of_tag(tag: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|own| own.tag() == tag)
    }

    /// Whether a comma parts the decimals, and not a point.
    #[must_use]
    pub const fn writes_comma(self) -> bool {
        match self {
            #[cfg(feature = "english")]
            Self::English => false,
            #[cfg(feature = "spanish")]
            Self::Spanish => true,
        }
    }

    /// Name of a month, January being 0.
    #[must_use]
    pub fn month(self, month: usize) -> &'static str {
        speak!(self, calendar::month(month))
    }

    /// Short name of a month, January being 0.
    #[must_use]
    pub fn month_short(self, month: usize) -> &'static str {
        speak!(self, calendar::month_short(month))
    }

    /// First letter of a month, January being 0.
    #[must_use]
    pub fn month_initial(self, month: usize) -> &'static str {
        speak!(self, calendar::month_initial(month))
    }

    /// Name of a day of the week, Monday being 0.
    #[must_use]
    pub fn weekday(self, day: usize) -> &'static str {
        speak!(self, calendar::weekday(day))
    }

    /// Short name of a day of the week, Monday being 0.
    #[must_use]
    pub fn weekday_short(self, day: usize) -> &'static str {
        speak!(self, calendar::weekday_short(day))
    }

    /// What stands behind a refusal where a plan is open.
    #[must_use]
    pub fn unchanged(self) -> &'static str {
        speak!(self, problems::unchanged())
    }

    /// The label of an input box.
    #[must_use]
    pub fn field(self, field: Field) -> &'static str {
        speak!(self, problems::field(field))
    }

    /// A load or array that has no name, by its place.
    #[must_use]
    pub fn unnamed(self, tag: Tag) -> Option<String> {
        speak!(self, problems::unnamed(tag))
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
        Some(self.appliance(appliance).to_owned())
    }

    /// What a symbol of a formula means.
    #[must_use]
    pub fn symbol(self, symbol: Symbol) -> &'static str {
        speak!(self, working::symbol(symbol))
    }

    /// The title of a step of a working.
    #[must_use]
    pub fn formula(self, formula: Formula) -> &'static str {
        speak!(self, working::formula(formula))
    }

    /// Where a formula or a value comes from.
    #[must_use]
    pub fn source(self, source: Source) -> String {
        speak!(self, working::source(source))
    }

    /// That an earlier step made a value; steps count from 1.
    #[must_use]
    pub fn from_step(self, number: usize) -> String {
        speak!(self, working::from_step(number))
    }
}

impl Words {
    /// Why something was refused: what was found where, what is allowed, what to do.
    #[must_use]
    pub fn problem(self, problem: &Problem, name_of: NameOf<'_>) -> String {
        speak!(self.language, problems::problem(self, problem, name_of))
    }

    /// Why a weather file was refused.
    #[must_use]
    pub fn weather_file_fault(self, fault: &WeatherFileFault) -> String {
        speak!(self.language, weather_file::fault(self, fault))
    }

    /// The unit of an input box; empty for counts.
    #[must_use]
    pub fn field_unit(self, field: Field) -> &'static str {
        speak!(self.language, problems::unit(self, field))
    }
}
