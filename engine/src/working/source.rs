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
    /// Series for declination, equation of time and distance.
    Spencer1971 = "Spencer 1971, Search 2(5):172, as in Duffie & Beckman, 4th ed., Wiley 2013, eqs 1.4.1b, 1.5.3, 1.6.1b";
    /// Diffuse share of a day or month.
    Erbs1982 = "Erbs, Klein & Duffie 1982, Solar Energy 28:293, doi:10.1016/0038-092X(82)90302-4";
    /// Climate of the earth in cells of 5 degrees.
    ClimateGrid = "MERRA-2 2011-2015 (NASA), corrected on typical-year stations; oceans after Esbensen & Kushnir 1981; temperature ERA5 2000-2025 (Copernicus Climate Change Service)";
}
