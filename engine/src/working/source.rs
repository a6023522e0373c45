//! Where formulas and constants come from.

macro_rules! sources {
    ($($(#[$doc:meta])* $name:ident = $text:literal;)+) => {
        /// Where a formula or a value comes from.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Source {
            /// The plan itself: somebody entered it.
            Plan,
            /// It follows from the definition of the quantities.
            Definition,
            /// A rounded typical value of the trade; the maker's sheet comes first.
            Typical,
            /// A choice of this engine, explained in its documentation.
            Choice,
            $($(#[$doc])* $name,)+
        }

        impl Source {
            /// Every source.
            pub const ALL: &[Self] =
                &[Self::Plan, Self::Definition, Self::Typical, Self::Choice, $(Self::$name,)+];

            /// The publication in the form of a reference list; `None` for the four that are no publication.
            #[must_use]
            pub const fn citation(self) -> Option<&'static str> {
                match self {
                    Self::Plan | Self::Definition | Self::Typical | Self::Choice => None,
                    $(Self::$name => Some($text),)+
                }
            }
        }
    };
}

sources! {
    /// Textbook of solar engineering.
    DuffieBeckman = "Duffie & Beckman, Solar Engineering of Thermal Processes, 4th ed., Wiley 2013";
}
