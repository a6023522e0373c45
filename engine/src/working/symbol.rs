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

    /// Latitude, north positive.
    Latitude = "φ";
    /// Longitude, east positive.
    Longitude = "λ";
    /// Day of the year with its fraction in universal time.
    DayOfYear = "n";
    /// Angle of the year.
    DayAngle = "B";
    /// Declination of the sun.
    Declination = "δ";
    /// Hour angle of sunset.
    SunsetHourAngle = "ω_s";
    /// Irradiance outside the air at normal incidence.
    ExtraterrestrialNormal = "G_on";
    /// Irradiation of a day outside the air on the horizontal.
    DailyExtraterrestrial = "H₀";
    /// Clearness: irradiation on the horizontal over that outside the air.
    Clearness = "K_T";
    /// Irradiation of a day on the horizontal.
    DailyIrradiation = "H";
    /// Diffuse share of a day's irradiation.
    DiffuseShare = "H_d/H";
}
