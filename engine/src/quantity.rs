//! Quantities: numbers that know their unit.
//!
//! Each quantity is a newtype over `f64` in the trade's own unit (amp-hours, not coulombs; degrees Celsius, not kelvin),
//! because people type and read tenths of those units and a detour over base units would not give them back exactly.
//! Only products that mean something are defined: volts times amps are watts, amps times hours are amp-hours; everything
//! else does not compile. They serialise as plain numbers; the unit stands in the field's name.

use core::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

use serde::{Deserialize, Serialize};

/// The unit in which a quantity is held and shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Unit {
    /// A plain number, a ratio or a count.
    One,
    /// Volt \[V\].
    Volt,
    /// Ampere \[A\].
    Amp,
    /// Amp-hour \[Ah\].
    AmpHour,
    /// Watt \[W\].
    Watt,
    /// Volt-ampere of alternating current \[VA\].
    VoltAmp,
    /// Watt-hour \[Wh\].
    WattHour,
    /// Hour \[h\].
    Hour,
    /// Degree Celsius \[°C\].
    Celsius,
    /// Percent \[%\].
    Percent,
    /// Ohm \[Ω\].
    Ohm,
    /// Degree of arc \[°\].
    Degree,
    /// Watt per square metre \[W/m²\].
    WattPerSquareMetre,
    /// Kilowatt-hour per square metre \[kWh/m²\].
    KilowattHourPerSquareMetre,
    /// Litre \[l\].
    Litre,
    /// By the hour, of a rate \[1/h\].
    PerHour,
    /// Litre an hour \[l/h\].
    LitrePerHour,
    /// Litre for a kilowatt-hour \[l/kWh\].
    LitrePerKilowattHour,
    /// Metre \[m\].
    Metre,
    /// Square millimetre \[mm²\].
    SquareMillimetre,
}

impl Unit {
    /// The international symbol, the same in every language; empty for a plain number.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::One => "",
            Self::Volt => "V",
            Self::Amp => "A",
            Self::AmpHour => "Ah",
            Self::Watt => "W",
            Self::VoltAmp => "VA",
            Self::WattHour => "Wh",
            Self::Hour => "h",
            Self::Celsius => "°C",
            Self::Percent => "%",
            Self::Ohm => "Ω",
            Self::Degree => "°",
            Self::WattPerSquareMetre => "W/m²",
            Self::KilowattHourPerSquareMetre => "kWh/m²",
            Self::Litre => "l",
            Self::PerHour => "h⁻¹",
            Self::LitrePerHour => "l/h",
            Self::LitrePerKilowattHour => "l/kWh",
            Self::Metre => "m",
            Self::SquareMillimetre => "mm²",
        }
    }
}

/// A number with a unit: what every quantity type has in common.
pub trait Quantity: Copy {
    /// The unit in which [`Quantity::value`] is given.
    const UNIT: Unit;
    /// The bare number in [`Quantity::UNIT`].
    fn value(self) -> f64;
}

impl Quantity for f64 {
    const UNIT: Unit = Unit::One;
    fn value(self) -> f64 {
        self
    }
}

/// Holds a number between two bounds.
pub trait Within {
    /// The number, or the bound that it lies beyond; what is no number stays none.
    ///
    /// Unlike std's `clamp` it does not panic if the bounds are crossed (then the lower one counts), and so does not bring
    /// the printing of floats along, which takes 4 kB of the page.
    #[must_use]
    fn within(self, low: Self, high: Self) -> Self;

    /// The number less as many wholes as leave it from 0 up to one of them: hours of a clock, degrees of a circle.
    ///
    /// Where it lies within a few wholes it is the same as std's remainder, which takes 1 kB of the page to be right for all others.
    #[must_use]
    fn turned(self, whole: Self) -> Self;
}

impl Within for f64 {
    #[inline]
    fn within(self, low: Self, high: Self) -> Self {
        let value = if self > high { high } else { self };
        if value < low { low } else { value }
    }

    #[inline]
    fn turned(self, whole: Self) -> Self {
        let rest = self - whole * (self / whole).floor();
        // Just below nothing it may come out as a whole.
        if rest < whole { rest } else { 0.0 }
    }
}

macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident: $unit:ident;)+) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(pub f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);

            /// The smaller of the two; a comparison and a choice, which vectorises where `f64::min` does not.
            #[inline]
            #[must_use]
            pub fn at_most(self, other: Self) -> Self {
                if self.0 < other.0 { self } else { other }
            }

            /// The larger of the two.
            #[inline]
            #[must_use]
            pub fn at_least(self, other: Self) -> Self {
                if self.0 > other.0 { self } else { other }
            }

            /// The size without its sign.
            #[inline]
            #[must_use]
            pub fn abs(self) -> Self {
                Self(self.0.abs())
            }
        }

        impl Quantity for $name {
            const UNIT: Unit = Unit::$unit;
            #[inline]
            fn value(self) -> f64 {
                self.0
            }
        }

        impl Add for $name {
            type Output = Self;
            #[inline]
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl AddAssign for $name {
            #[inline]
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }
        impl Sub for $name {
            type Output = Self;
            #[inline]
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl SubAssign for $name {
            #[inline]
            fn sub_assign(&mut self, other: Self) {
                self.0 -= other.0;
            }
        }
        impl Neg for $name {
            type Output = Self;
            #[inline]
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            #[inline]
            fn mul(self, by: f64) -> Self {
                Self(self.0 * by)
            }
        }
        impl Div<f64> for $name {
            type Output = Self;
            #[inline]
            fn div(self, by: f64) -> Self {
                Self(self.0 / by)
            }
        }
        impl Div for $name {
            type Output = f64;
            #[inline]
            fn div(self, by: Self) -> f64 {
                self.0 / by.0
            }
        }
        impl core::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
                items.fold(Self::ZERO, |sum, item| sum + item)
            }
        }
    )+};
}

quantities! {
    /// Electric potential \[V\].
    Volts: Volt;
    /// Electric current \[A\].
    Amps: Amp;
    /// Electric charge \[Ah\].
    AmpHours: AmpHour;
    /// Power \[W\].
    Watts: Watt;
    /// Apparent power of alternating current: volts times amps \[VA\].
    VoltAmps: VoltAmp;
    /// Energy \[Wh\].
    WattHours: WattHour;
    /// A length of time \[h\].
    Hours: Hour;
    /// Temperature \[°C\]; differences are in kelvin, which is the same step.
    Celsius: Celsius;
    /// A share of a hundred \[%\].
    Percent: Percent;
    /// Electric resistance \[Ω\].
    Ohms: Ohm;
    /// An angle \[°\].
    Degrees: Degree;
    /// Irradiance \[W/m²\].
    Irradiance: WattPerSquareMetre;
    /// Irradiation of a day, which is also its peak sun hours \[kWh/m²\].
    Irradiation: KilowattHourPerSquareMetre;
    /// Volume of fuel \[l\].
    Litres: Litre;
    /// A rate: the share that moves in an hour \[1/h\].
    PerHour: PerHour;
    /// Fuel that an hour takes \[l/h\].
    LitresPerHour: LitrePerHour;
    /// Fuel that a kilowatt-hour takes \[l/kWh\].
    LitresPerKilowattHour: LitrePerKilowattHour;
    /// A length \[m\].
    Metres: Metre;
    /// Cross-section of a conductor \[mm²\].
    SquareMillimetres: SquareMillimetre;
}

macro_rules! products {
    ($($a:ident * $b:ident = $c:ident;)+) => {$(
        impl Mul<$b> for $a {
            type Output = $c;
            #[inline]
            fn mul(self, other: $b) -> $c {
                $c(self.0 * other.0)
            }
        }
        impl Mul<$a> for $b {
            type Output = $c;
            #[inline]
            fn mul(self, other: $a) -> $c {
                $c(self.0 * other.0)
            }
        }
        impl Div<$a> for $c {
            type Output = $b;
            #[inline]
            fn div(self, by: $a) -> $b {
                $b(self.0 / by.0)
            }
        }
        impl Div<$b> for $c {
            type Output = $a;
            #[inline]
            fn div(self, by: $b) -> $a {
                $a(self.0 / by.0)
            }
        }
    )+};
}

products! {
    Volts * Amps = Watts;
    Amps * Hours = AmpHours;
    Watts * Hours = WattHours;
    Volts * AmpHours = WattHours;
    Amps * Ohms = Volts;
}

impl Percent {
    /// The same as a ratio: 50 % is 0.5.
    #[inline]
    #[must_use]
    pub fn ratio(self) -> f64 {
        self.0 / 100.0
    }

    /// What is left of the whole: 30 % leaves 0.7.
    #[inline]
    #[must_use]
    pub fn remainder(self) -> f64 {
        1.0 - self.0 / 100.0
    }

    /// A ratio as percent.
    #[inline]
    #[must_use]
    pub fn of_ratio(ratio: f64) -> Self {
        Self(ratio * 100.0)
    }
}

impl Degrees {
    /// The same angle in radians.
    #[inline]
    #[must_use]
    pub fn radians(self) -> f64 {
        self.0 * (core::f64::consts::PI / 180.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn products_and_quotients_keep_their_units() {
        assert_eq!(Volts(12.0) * Amps(2.0), Watts(24.0));
        assert_eq!(Watts(24.0) / Volts(12.0), Amps(2.0));
        assert_eq!(Amps(2.0) * Hours(3.0), AmpHours(6.0));
        assert_eq!(WattHours(60.0) / Volts(12.0), AmpHours(5.0));
        assert_eq!(Amps(10.0) * Ohms(0.01), Volts(0.1));
        assert_eq!(AmpHours(6.0) / AmpHours(3.0), 2.0);
    }

    #[test]
    fn quantities_are_plain_numbers_outside() {
        assert_eq!(serde_json::to_string(&Volts(12.8)).unwrap(), "12.8");
        assert_eq!(serde_json::from_str::<AmpHours>("0.1").unwrap(), AmpHours(0.1));
    }

    #[test]
    fn numbers_are_held_between_bounds() {
        let held = [-1.0, 0.25, 2.0, f64::INFINITY].map(|value: f64| value.within(0.0, 1.0));
        assert_eq!(held, [0.0, 0.25, 1.0, 1.0]);
        assert!(f64::NAN.within(0.0, 1.0).is_nan());
        assert_eq!(0.5.within(1.0, 0.0), 1.0, "crossed bounds end nothing");
    }

    #[test]
    fn percent_converts_both_ways() {
        assert_eq!(Percent(50.0).ratio(), 0.5);
        assert_eq!(Percent(30.0).remainder(), 0.7);
        assert_eq!(Percent::of_ratio(0.25), Percent(25.0));
    }
}
