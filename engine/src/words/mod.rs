//! Words: turns typed messages, working and ids into sentences. Only the app and the command line use it.
//!
//! One folder per language. [`Language`] dispatches; each method matches every language, so a language that lacks a message does
//! not compile. Within a language every message is an exhaustive match, so a message that lacks words does not compile.
//!
//! **To add a language:** add a variant to [`Language`], copy the folder `en`, translate it, and follow the compiler.

pub mod en;
mod number;

pub use number::{amount, clock, rounded};

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
    pub fn weekday(self, day: u8) -> &'static str {
        match self {
            Self::English => en::calendar::weekday(day),
        }
    }

    /// Short name of a day of the week, Monday being 0.
    #[must_use]
    pub fn weekday_short(self, day: u8) -> &'static str {
        match self {
            Self::English => en::calendar::weekday_short(day),
        }
    }
}
