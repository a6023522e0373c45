//! The formulas that the engine uses, each with its symbol, its inputs and its source.
//!
//! A template is the right-hand side with `{0}`, `{1}`... for the inputs; `each: + ` joins as many inputs as there are.

use super::{Source, Symbol};

macro_rules! formulas {
    ($($(#[$doc:meta])* $name:ident: $symbol:ident = $template:literal [$($input:ident),* $(,)?] $source:ident;)+) => {
        /// A formula of the engine.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Formula {
            $($(#[$doc])* $name,)+
        }

        impl Formula {
            /// Every formula.
            pub const ALL: &[Self] = &[$(Self::$name,)+];

            /// The symbol of its result.
            #[must_use]
            pub const fn symbol(self) -> Symbol {
                match self { $(Self::$name => Symbol::$symbol,)+ }
            }

            /// Its right-hand side with numbered places for the inputs.
            #[must_use]
            pub const fn template(self) -> &'static str {
                match self { $(Self::$name => $template,)+ }
            }

            /// The symbols of its inputs, in order.
            #[must_use]
            pub const fn inputs(self) -> &'static [Symbol] {
                match self { $(Self::$name => &[$(Symbol::$input),*],)+ }
            }

            /// Where the formula comes from.
            #[must_use]
            pub const fn source(self) -> Source {
                match self { $(Self::$name => Source::$source,)+ }
            }
        }
    };
}

formulas! {
    /// Current that a power draws.
    LoadCurrent: LoadCurrent = "{0} / {1}" [LoadPower, BankVoltage] Definition;
    /// Charge that a current moves in a time.
    Charge: Charge = "{0} · {1}" [LoadCurrent, Time] Definition;
}

impl Formula {
    /// The symbol of the input at `place`; a formula over many things repeats its last one.
    #[must_use]
    pub fn input(self, place: usize) -> Symbol {
        let inputs = self.inputs();
        inputs.get(place).or(inputs.last()).copied().unwrap_or(self.symbol())
    }
}
