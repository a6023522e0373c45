//! Habits: the units and the clock in which somebody thinks. They change what is shown and what is typed, never a plan.

use super::{Label, Words};
use crate::fitting::gauge_section;
use crate::quantity::{AmpHours, Quantity as _, Unit, Volts, WattHours};

/// A habit of several ways: an enum whose first way is the usual one.
macro_rules! habit {
    ($(#[$doc:meta])* $name:ident { $($(#[$way_doc:meta])* $way:ident,)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
        pub enum $name {
            $($(#[$way_doc])* $way,)+
        }

        impl $name {
            /// Every way, the usual one first.
            pub const ALL: &[Self] = &[$(Self::$way,)+];
        }
    };
}

habit! {
    /// How temperatures are told.
    Temperature {
        /// In degrees Celsius.
        #[default]
        Celsius,
        /// In degrees Fahrenheit.
        Fahrenheit,
    }
}
habit! {
    /// How the hours of a day are told.
    ClockHabit {
        /// From 0 to 24.
        #[default]
        Hours24,
        /// Twice from 12 to 11.
        Hours12,
    }
}
habit! {
    /// The day that begins a week.
    FirstDay {
        /// Monday.
        #[default]
        Monday,
        /// Sunday.
        Sunday,
        /// Saturday.
        Saturday,
    }
}
habit! {
    /// The unit in which charge is told first.
    LeadingUnit {
        /// Amp-hours.
        #[default]
        AmpHours,
        /// Watt-hours at the nominal voltage of the bank.
        WattHours,
    }
}
habit! {
    /// How distances are told.
    Distance {
        /// In kilometres.
        #[default]
        Kilometres,
        /// In miles.
        Miles,
    }
}
habit! {
    /// How weights are told.
    Mass {
        /// In kilograms.
        #[default]
        Kilograms,
        /// In pounds.
        Pounds,
    }
}
habit! {
    /// How the size of a wire is told.
    WireSize {
        /// By its cross-section in square millimetres.
        #[default]
        SquareMillimetres,
        /// By its number in the American wire gauge.
        AmericanGauge,
    }
}

/// The habits of a person.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Habits {
    /// Of temperatures.
    pub temperature: Temperature,
    /// Of the clock.
    pub clock: ClockHabit,
    /// Of the week.
    pub first_day: FirstDay,
    /// Of charge and energy.
    pub leading: LeadingUnit,
    /// Of distances.
    pub distance: Distance,
    /// Of weights.
    pub mass: Mass,
    /// Of wires.
    pub wire: WireSize,
}

/// Bits that one habit takes in the number of all.
const BITS: u32 = 2;
/// Which of them are set.
const MASK: u32 = (1 << BITS) - 1;

/// The way of that place, or the usual one.
fn way<T: Copy + Default>(all: &[T], place: u32) -> T {
    all.get(place as usize).copied().unwrap_or_default()
}

impl Habits {
    /// Those of whoever has not chosen.
    pub const USUAL: Self = Self {
        temperature: Temperature::Celsius,
        clock: ClockHabit::Hours24,
        first_day: FirstDay::Monday,
        leading: LeadingUnit::AmpHours,
        distance: Distance::Kilometres,
        mass: Mass::Kilograms,
        wire: WireSize::SquareMillimetres,
    };

    /// How many habits there are.
    pub const COUNT: usize = 7;

    /// The place of the chosen way of each habit, in the order of the fields.
    #[must_use]
    pub const fn places(self) -> [u32; Self::COUNT] {
        [
            self.temperature as u32,
            self.clock as u32,
            self.first_day as u32,
            self.leading as u32,
            self.distance as u32,
            self.mass as u32,
            self.wire as u32,
        ]
    }

    /// The habits of these places; an unknown place is the usual way.
    #[must_use]
    pub fn of_places(places: [u32; Self::COUNT]) -> Self {
        let [temperature, clock, first_day, leading, distance, mass, wire] = places;
        Self {
            temperature: way(Temperature::ALL, temperature),
            clock: way(ClockHabit::ALL, clock),
            first_day: way(FirstDay::ALL, first_day),
            leading: way(LeadingUnit::ALL, leading),
            distance: way(Distance::ALL, distance),
            mass: way(Mass::ALL, mass),
            wire: way(WireSize::ALL, wire),
        }
    }

    /// All of them in one number, to be kept and sent. New habits only join at the end, and new ways at the end of theirs.
    #[must_use]
    pub fn bits(self) -> u32 {
        let places = self.places().into_iter().zip(0..);
        places.fold(0, |bits, (place, habit)| bits | place << (BITS * habit))
    }

    /// The habits of such a number; what it does not say is usual.
    #[must_use]
    pub fn of_bits(bits: u32) -> Self {
        Self::of_places(core::array::from_fn(|habit| bits >> (BITS * habit as u32) & MASK))
    }
}

/// Degrees Fahrenheit in one degree Celsius, and those at 0 °C.
const FAHRENHEIT: (f64, f64) = (1.8, 32.0);
/// Kilometres in a mile (international, exact).
const KM_IN_MILE: f64 = 1.609_344;
/// Kilograms in a pound (international, exact).
const KG_IN_POUND: f64 = 0.453_592_37;
impl Words {
    /// A number as it is shown of a quantity with this unit.
    #[must_use]
    pub fn in_habit(self, value: f64, unit: Unit) -> f64 {
        match (unit, self.habits.temperature) {
            (Unit::Celsius, Temperature::Fahrenheit) => value * FAHRENHEIT.0 + FAHRENHEIT.1,
            _ => value,
        }
    }

    /// The number that is meant by one that was typed in the unit that is shown.
    #[must_use]
    pub fn out_of_habit(self, shown: f64, unit: Unit) -> f64 {
        match (unit, self.habits.temperature) {
            (Unit::Celsius, Temperature::Fahrenheit) => (shown - FAHRENHEIT.1) / FAHRENHEIT.0,
            _ => shown,
        }
    }

    /// The symbol of the unit that is shown.
    #[must_use]
    pub const fn unit(self, unit: Unit) -> &'static str {
        match (unit, self.habits.temperature) {
            (Unit::Celsius, Temperature::Fahrenheit) => "°F",
            _ => unit.symbol(),
        }
    }

    /// The unit in which charge is told.
    #[must_use]
    pub const fn charge_unit(self) -> &'static str {
        match self.habits.leading {
            LeadingUnit::AmpHours => Unit::AmpHour.symbol(),
            LeadingUnit::WattHours => Unit::WattHour.symbol(),
        }
    }

    /// A charge of a bank as a number of that unit: as the engine counts energy, at the nominal voltage.
    #[must_use]
    pub fn charge_value(self, charge: AmpHours, nominal: Volts) -> f64 {
        match self.habits.leading {
            LeadingUnit::AmpHours => charge.value(),
            LeadingUnit::WattHours => WattHours::value(charge * nominal),
        }
    }

    /// The same as a text without its unit.
    #[must_use]
    pub fn charge_number(self, charge: AmpHours, nominal: Volts) -> String {
        self.rounded(self.charge_value(charge, nominal))
    }

    /// The same with its unit.
    #[must_use]
    pub fn charge(self, charge: AmpHours, nominal: Volts) -> String {
        format!("{}\u{a0}{}", self.charge_number(charge, nominal), self.charge_unit())
    }

    /// The label that says the same with the units of these habits.
    #[must_use]
    pub const fn fitting(self, label: Label) -> Label {
        let energy = matches!(self.habits.leading, LeadingUnit::WattHours);
        let fahrenheit = matches!(self.habits.temperature, Temperature::Fahrenheit);
        match label {
            Label::InAh if energy => Label::InWh,
            Label::OutAh if energy => Label::OutWh,
            Label::BalanceAh if energy => Label::BalanceWh,
            Label::UsableAh if energy => Label::UsableWh,
            Label::BaselineBalance if energy => Label::BaselineBalanceWh,
            Label::MonthLegend if energy => Label::MonthLegendWh,
            Label::MeanTemperature if fahrenheit => Label::MeanTemperatureFahrenheit,
            own => own,
        }
    }

    /// The seven days, Monday being 0, as a week runs.
    #[must_use]
    pub fn week(self) -> [usize; 7] {
        let first = match self.habits.first_day {
            FirstDay::Monday => 0,
            FirstDay::Saturday => 5,
            FirstDay::Sunday => 6,
        };
        core::array::from_fn(|day| (first + day) % 7)
    }

    /// A distance, to two digits: `210 km`.
    #[must_use]
    pub fn distance(self, km: f64) -> String {
        let (value, unit) = match self.habits.distance {
            Distance::Kilometres => (km, "km"),
            Distance::Miles => (km / KM_IN_MILE, "mi"),
        };
        format!("{}\u{a0}{unit}", self.rounded(value.round()))
    }

    /// A weight: `12.5 kg`.
    #[must_use]
    pub fn mass(self, kg: f64) -> String {
        let (value, unit) = match self.habits.mass {
            Mass::Kilograms => (kg, "kg"),
            Mass::Pounds => (kg / KG_IN_POUND, "lb"),
        };
        format!("{}\u{a0}{unit}", self.rounded(value))
    }

    /// The size of a wire of at least a cross-section: `16 mm²`, or the smallest gauge that has as much, `AWG 4`.
    #[must_use]
    pub fn wire(self, mm2: f64) -> String {
        if matches!(self.habits.wire, WireSize::SquareMillimetres) {
            return format!("{}\u{a0}mm²", self.rounded(mm2));
        }
        // A hair of slack, so that the section of a gauge is that gauge.
        let number = (-3..=36).rev().find(|number| gauge_section(*number) >= mm2 * 0.999_999);
        match number {
            Some(number @ 1..) => format!("AWG\u{a0}{number}"),
            Some(number) => format!("AWG\u{a0}{}/0", 1 - number),
            // Beyond the gauges cables are sold by their section.
            None => format!("{}\u{a0}mm²", self.rounded(mm2)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Language;

    fn words(habits: Habits) -> Words {
        Words { language: Language::ALL[0], habits }
    }

    #[test]
    fn habits_survive_their_number_and_unknown_ones_are_usual() {
        let mut seen = Vec::new();
        for bits in 0..1 << (BITS * Habits::COUNT as u32) {
            let habits = Habits::of_bits(bits);
            assert_eq!(Habits::of_bits(habits.bits()), habits);
            assert_eq!(Habits::of_places(habits.places()), habits);
            if habits.bits() == bits {
                seen.push(habits);
            }
        }
        assert_eq!(seen.len(), 2 * 2 * 3 * 2 * 2 * 2 * 2);
        assert_eq!(Habits::of_bits(0), Habits::USUAL);
        assert_eq!(Habits::of_bits(u32::MAX), Habits::USUAL);
        assert_eq!(Habits::default(), Habits::USUAL);
    }

    #[test]
    fn degrees_go_both_ways() {
        let own = words(Habits { temperature: Temperature::Fahrenheit, ..Habits::USUAL });
        assert_eq!((own.in_habit(0.0, Unit::Celsius), own.unit(Unit::Celsius)), (32.0, "°F"));
        assert!((own.in_habit(-40.0, Unit::Celsius) + 40.0).abs() < 1e-12);
        assert_eq!((own.in_habit(5.0, Unit::Volt), own.unit(Unit::Volt)), (5.0, "V"));
        for tenths in -900..600 {
            let value = f64::from(tenths) / 10.0;
            let back = own.out_of_habit(own.in_habit(value, Unit::Celsius), Unit::Celsius);
            assert!((back - value).abs() < 1e-9, "{value}");
        }
    }

    #[test]
    fn charge_is_told_in_the_unit_that_leads() {
        let (charge, nominal) = (AmpHours(60.84), Volts(12.8));
        let own = words(Habits { leading: LeadingUnit::WattHours, ..Habits::USUAL });
        assert!(own.charge(charge, nominal).ends_with("779\u{a0}Wh"));
        assert!(words(Habits::USUAL).charge(charge, nominal).ends_with("Ah"));
        assert_eq!(own.fitting(Label::InAh), Label::InWh);
        assert_eq!(words(Habits::USUAL).fitting(Label::InAh), Label::InAh);
        assert_eq!(own.fitting(Label::Close), Label::Close);
    }

    #[test]
    fn a_week_begins_where_it_should() {
        let own = |first_day| words(Habits { first_day, ..Habits::USUAL }).week();
        assert_eq!(own(FirstDay::Monday), [0, 1, 2, 3, 4, 5, 6]);
        assert_eq!(own(FirstDay::Sunday), [6, 0, 1, 2, 3, 4, 5]);
        assert_eq!(own(FirstDay::Saturday), [5, 6, 0, 1, 2, 3, 4]);
    }

    #[test]
    fn lengths_weights_and_wires_are_told_by_habit() {
        let metric = words(Habits::USUAL);
        let other = words(Habits {
            distance: Distance::Miles,
            mass: Mass::Pounds,
            wire: WireSize::AmericanGauge,
            ..Habits::USUAL
        });
        assert_eq!(
            (metric.distance(210.3), other.distance(210.3)),
            ("210\u{a0}km".into(), "131\u{a0}mi".into())
        );
        assert_eq!(
            (metric.mass(100.0), other.mass(100.0)),
            ("100\u{a0}kg".into(), "220\u{a0}lb".into())
        );
        assert_eq!(metric.wire(16.0), "16\u{a0}mm²");
        // Sections of ASTM B258: AWG 10 has 5.26 mm², AWG 4 21.15, AWG 4/0 107.2.
        let cases =
            [(5.26, "10"), (5.27, "9"), (16.0, "5"), (21.1, "4"), (53.4, "1/0"), (107.2, "4/0")];
        for (mm2, gauge) in cases {
            assert_eq!(other.wire(mm2), format!("AWG\u{a0}{gauge}"), "{mm2}");
        }
        assert_eq!(other.wire(120.0), "120\u{a0}mm²");
    }

    #[test]
    fn energy_is_counted_as_the_engine_counts_it() {
        use crate::outlook::Outlook;
        use crate::system::System;
        let plan = crate::document::Document {
            loads: vec![crate::document::Load::default()],
            standing_a: 0.2,
            ..crate::document::Document::default()
        };
        let earth = crate::place::Climate::embedded();
        let system = System::assemble(&plan, earth, &mut ()).unwrap();
        let budget = Outlook::of(&system).budget.clone();
        let own = words(Habits { leading: LeadingUnit::WattHours, ..Habits::USUAL });
        let told = own.charge_value(budget.total, system.bank.nominal);
        assert!(
            told > 0.0 && (told - budget.total_energy.0).abs() < 1e-9 * told,
            "{told} {budget:?}"
        );
    }
}
