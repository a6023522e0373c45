//! What a field or a trade word means, in one plain sentence: its ids, and dispatch to the languages.

use super::Language;
use crate::document::Field;

macro_rules! terms {
    ($($(#[$doc:meta])* $name:ident,)+) => {
        /// A word of the trade that stands on the page without being a field.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Term {
            $($(#[$doc])* $name,)+
        }

        impl Term {
            /// Every term, in the order of their numbers.
            pub const ALL: &[Self] = &[$(Self::$name,)+];
        }
    };
}

terms! {
    /// State of charge.
    StateOfCharge,
    /// What goes out in a day, in amp-hours.
    OutADay,
    /// What comes in in a day.
    InADay,
    /// Usable capacity and depth of discharge.
    Usable,
    /// Months that keep up.
    KeepsUp,
    /// Series-regulating against maximum-power-point.
    ChargeController,
    /// Kinds of battery.
    Chemistry,
    /// How modules are mounted.
    Mounting,
    /// Direct current or mains.
    Supply,
}

impl Language {
    /// What a field means, in one plain sentence.
    #[must_use]
    pub fn explain_field(self, field: Field) -> &'static str {
        speak!(self, explained::field(field))
    }

    /// What a trade word means, in one plain sentence.
    #[must_use]
    pub fn explain_term(self, term: Term) -> &'static str {
        speak!(self, explained::term(term))
    }

    /// The question for such an explanation, as a button is called.
    #[must_use]
    pub fn what_is(self, label: &str) -> String {
        speak!(self, explained::what_is(label))
    }
}
