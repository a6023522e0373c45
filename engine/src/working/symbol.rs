//! Symbols of the formulas. Their meaning in a language is in `words`.

macro_rules! symbols {
    ($($(#[$doc:meta])* $name:ident = $text:literal;)+) => {
        /// A symbol that stands in a formula.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Symbol {
            $($(#[$doc])* $name,)+
        }

        impl Symbol {
            /// Every symbol.
            pub const ALL: &[Self] = &[$(Self::$name,)+];

            /// How it is written; the same in every language.
            #[must_use]
            pub const fn text(self) -> &'static str {
                match self { $(Self::$name => $text,)+ }
            }
        }
    };
}

symbols! {
    /// Power of a load at the bank.
    LoadPower = "P";
    /// Voltage of the bank.
    BankVoltage = "U";
    /// Current of a load.
    LoadCurrent = "I";
    /// A length of time.
    Time = "t";
    /// Charge.
    Charge = "Q";
}
