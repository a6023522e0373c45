//! Where formulas and constants come from.
//!
//! A citation is written once, here, and stands beside each figure that rests on it. The headers of the rooms name further
//! publications, of methods whose single steps no person is shown.

macro_rules! sources {
    ($($(#[$doc:meta])* $name:ident = $text:literal;)+) => {
        /// Where a formula or a value comes from.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Source {
            /// The plan itself: somebody entered it, or it follows from what was entered.
            Plan,
            /// Added up over the quarter-hours of a day or a run.
            Steps,
            /// Readings of a gauge that somebody wrote down.
            Readings,
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
                &[Self::Plan, Self::Steps, Self::Readings, Self::Definition, Self::Typical, Self::Choice, $(Self::$name,)+];

            /// The publication in the form of a reference list; `None` for the six that are no publication.
            #[must_use]
            pub const fn citation(self) -> Option<&'static str> {
                match self {
                    Self::Plan
                    | Self::Steps
                    | Self::Readings
                    | Self::Definition
                    | Self::Typical
                    | Self::Choice => None,
                    $(Self::$name => Some($text),)+
                }
            }
        }
    };
}

sources! {
    /// Textbook of solar engineering.
    DuffieBeckman = "Duffie & Beckman, Solar Engineering of Thermal Processes, 4th ed., Wiley 2013";
    /// Relation of capacity and current of lead-acid, in the form with a reference rate.
    Peukert = "Peukert 1897, Elektrotechnische Zeitschrift 18:287, in the form with the reference hour rate";
    /// Lead-acid as two wells.
    ManwellMcGowan = "Manwell & McGowan 1993, Solar Energy 50:399, doi:10.1016/0038-092X(93)90060-2";
    /// Capacity of lead-acid by temperature.
    StandardCold = "IEEE Std 450/485, temperature correction of capacity; slow discharge after Copetti, Lorenzo & Chenlo 1993, Prog. Photovolt. 1:283";
    /// Rested voltages of lead-acid by state of charge.
    RestVoltageTable = "Published table of rested voltages by state of charge at 26.7 °C";
    /// Open-circuit curves measured on cells.
    CellMeasurement = "Open-circuit voltage measured at a small current on a commercial cell";
    /// Loss of inverters as a polynomial of the output.
    SchmidtSauer = "Schmidt & Sauer 1996, Sonnenenergie 21(4): loss = p0 + k1·p + k2·p²";
    /// Light on a tilted plane.
    HayDavies = "Hay & Davies 1980, Proc. First Canadian Solar Radiation Data Workshop; as in Duffie & Beckman, 4th ed., Wiley 2013, sec. 2.16";
    /// Heat pump between evaporator and condenser at a fixed share of the ideal efficiency.
    HeatPump = "Heat leak over ideal efficiency between evaporator and condenser; compare Harrington, Aye & Fuller 2018, Applied Energy 211:346";
    /// What readings tell of unknowns together.
    TierneyKadane = "Posterior moments by Laplace's approximation: Tierney & Kadane 1986, J. Am. Stat. Assoc. 81:82, doi:10.1080/01621459.1986.10478240";
    /// Series for declination, equation of time and distance.
    Spencer1971 = "Spencer 1971, Search 2(5):172, as in Duffie & Beckman, 4th ed., Wiley 2013, eqs 1.4.1b, 1.5.3, 1.6.1b";
    /// Diffuse share of a day or month.
    Erbs1982 = "Erbs, Klein & Duffie 1982, Solar Energy 28:293, doi:10.1016/0038-092X(82)90302-4";
    /// Climate of the earth in cells of 5 degrees.
    ClimateGrid = "MERRA-2 2011-2015 (NASA), corrected on typical-year stations; oceans after Esbensen & Kushnir 1981; temperature ERA5 2000-2025 (Copernicus Climate Change Service)";
    /// Diameters and sections of the American wire gauge.
    WireGauge = "ASTM B258, standard nominal diameters of solid wires in the American wire gauge: 0.127 mm · 92^((36 − n)/39); conductivity of annealed copper, IACS 1913";
    /// Currents that conductors may carry afloat.
    MarineAmpacity = "ABYC E-11, allowable amperage of single conductors up to 50 V with insulation for 105 °C, as quoted in public; its edition was not seen";
    /// Currents that conductors may carry on land.
    LandAmpacity = "NFPA 70 (National Electrical Code) in the numbering of 2020, Table 310.16, copper, air of 30 °C; limits of 240.4(D) and 110.14(C)";
    /// The same where the air is warmer.
    LandCorrection = "NFPA 70 (National Electrical Code) in the numbering of 2020, 310.15(B): √((T_c − T_a) / (T_c − 30 °C))";
    /// Currents of arrays.
    SolarCircuits = "NFPA 70 (National Electrical Code) in the numbering of 2020, 690.8 and 690.9: 125 % of 125 % of the short-circuit current";
    /// What fuses afloat must be able to break.
    MarineInterrupting = "ABYC E-11, interrupting capacity by cold-cranking amps, 12 to 24 V, as quoted in public; its edition was not seen";
}
