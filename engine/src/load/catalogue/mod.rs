//! The starter catalogue: what does a thing of daily life draw, and how long does it usually run?
//!
//! The figures are rounded typical values of the trade, read as one reads rating plates: a starting point that people
//! replace by their own plate, never a measurement. Each entry carries the range in which most of its kind fall, so that
//! the page can say how far the guess may be off. Power is what the appliance *takes in while it runs*: a microwave sold
//! as 800 W takes about 1250 W. Duty is the share of its hours in which it runs; of refrigerators it is stated for one air
//! temperature, from which the load room scales it.
//!
//! Shared links store the *number* of an appliance and never its figures. Numbers are frozen: never changed, never given
//! to another appliance (`tests/reference/appliance_numbers.tsv` holds every number ever given and only grows). Names and
//! search words are in [`crate::words`].
//!
//! Left out: power factor, standby draw of appliances on alternating current, and anything that depends on a maker.

mod table;

pub use table::Appliance;

use crate::document::{Cooling, Load, Rating, Schedule, Span, Supply, When};
use crate::quantity::{Celsius, Hours, Percent, Volts, WattHours, Watts};

/// Where people look for an appliance.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Group {
    /// Lamps of every kind.
    Light,
    /// Refrigerators, freezers and cool boxes.
    Cold,
    /// Pumps and water treatment.
    Water,
    /// Cooking and hot drinks.
    Kitchen,
    /// Heating, cooling and fresh air.
    Air,
    /// Chargers, computers and networks.
    Computing,
    /// Television, sound and projection.
    Media,
    /// Steering, mooring and radio afloat.
    Afloat,
    /// Alarms, tracking, radio and what is always on.
    Watch,
    /// Washing, cleaning and care of the body.
    Household,
    /// Tools.
    Workshop,
    /// Clinic and care at home.
    Health,
    /// Farm, garden and market stall.
    Trade,
}

impl Group {
    /// Every group, in the order in which it is shown.
    pub const ALL: [Self; 13] = [
        Self::Light,
        Self::Cold,
        Self::Water,
        Self::Kitchen,
        Self::Air,
        Self::Computing,
        Self::Media,
        Self::Household,
        Self::Afloat,
        Self::Watch,
        Self::Workshop,
        Self::Health,
        Self::Trade,
    ];
}

/// When an appliance usually runs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pattern {
    /// Day and night.
    Always,
    /// So many hours of the day \[h\], above 0 and at most 24, at no stated time.
    HoursPerDay(f64),
    /// Between two clock times, in minutes after midnight (0 to 1440); through midnight where the end is the earlier one.
    Between {
        /// Start \[min\].
        from_min: u16,
        /// End \[min\].
        to_min: u16,
    },
}

impl Pattern {
    /// Hours of the day in which it is switched on \[h\], 0 to 24.
    #[must_use]
    pub fn hours(self) -> Hours {
        match self {
            Self::Always => Hours(24.0),
            Self::HoursPerDay(hours) => Hours(hours),
            Self::Between { from_min, to_min } if from_min <= to_min => {
                Hours(f64::from(to_min - from_min) / 60.0)
            }
            Self::Between { from_min, to_min } => Hours(24.0 - f64::from(from_min - to_min) / 60.0),
        }
    }
}

/// What a refrigerator keeps, and the air for which its duty is stated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heat {
    /// Mean temperature of what is kept cold \[°C\].
    pub inside: Celsius,
    /// Temperature of the air around it at which [`Entry::duty`] holds \[°C\].
    pub reference: Celsius,
}

/// How much depends on a load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Care {
    /// Without it life is less comfortable.
    None,
    /// Lives depend on it: medicine, breath, a dry bilge, a call for help, a warning of gas.
    Critical,
}

/// The typical figures of an appliance: defaults to edit, rounded values of the trade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Entry {
    /// Whose figures these are.
    pub appliance: Appliance,
    /// Where it is listed.
    pub group: Group,
    /// Input power of one piece while it runs \[W\].
    pub power: Watts,
    /// Lower end of what is commonly met \[W\].
    pub low: Watts,
    /// Upper end of what is commonly met \[W\].
    pub high: Watts,
    /// What feeds it.
    pub supply: Supply,
    /// Pieces a household of two usually has of it.
    pub quantity: u16,
    /// When it usually runs.
    pub pattern: Pattern,
    /// Share of these hours in which it draws its power \[%\].
    pub duty: Percent,
    /// Power at start over running power, at least 1 (1 for none).
    pub surge: f64,
    /// Set for what is refrigerated.
    pub heat: Option<Heat>,
    /// Whether lives depend on it.
    pub care: Care,
}

impl Entry {
    /// Energy of a day as the entry stands, all pieces, before any inverter \[Wh\].
    #[must_use]
    pub fn daily(&self) -> WattHours {
        self.power * self.pattern.hours() * (f64::from(self.quantity) * self.duty.ratio())
    }

    /// A load with these figures, to be edited, in a plan of this nominal voltage. It hangs on the bank where such an appliance is sold for
    /// it; on banks above [`DIRECT_UP_TO`] an inverter, if there is one, feeds also what elsewhere would hang on the bank.
    #[must_use]
    pub fn load(&self, nominal: Volts, has_inverter: bool) -> Load {
        let when = match self.pattern {
            Pattern::Always => When::Always,
            Pattern::HoursPerDay(hours) => When::HoursPerDay(hours),
            Pattern::Between { from_min, to_min } => When::Spans(vec![Span { from_min, to_min }]),
        };
        let supply = if has_inverter && nominal > DIRECT_UP_TO { Supply::Ac } else { self.supply };
        let heat = |own: Heat| Cooling { inside_c: own.inside.0, reference_c: own.reference.0 };
        Load {
            appliance: Some(self.appliance.number()),
            quantity: self.quantity.into(),
            rating: Rating::PowerW(self.power.0),
            supply,
            duty_pct: self.duty.0,
            schedule: Schedule::daily(when),
            surge: self.surge,
            cooling: self.heat.map(heat),
            vital: self.care == Care::Critical,
            ..Load::default()
        }
    }
}

/// Appliances of daily life for direct current are made for banks of 12 and 24 V; a full 24 V bank stands near 30 V.
pub const DIRECT_UP_TO: Volts = Volts(32.0);

/// The typical figures of an appliance.
#[must_use]
pub fn entry(appliance: Appliance) -> Entry {
    let figures = appliance.figures();
    Entry {
        appliance,
        group: figures.group,
        power: Watts(figures.power),
        low: Watts(figures.low),
        high: Watts(figures.high),
        supply: figures.supply,
        quantity: figures.quantity,
        pattern: figures.pattern,
        duty: Percent(f64::from(figures.duty)),
        surge: f64::from(figures.surge),
        heat: figures.heat.map(|(inside, reference)| Heat {
            inside: Celsius(f64::from(inside)),
            reference: Celsius(f64::from(reference)),
        }),
        care: figures.care,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Language;
    use std::collections::{BTreeMap, BTreeSet};

    /// Every number ever given, with the variant's name.
    const FROZEN: &str = include_str!("../../../../tests/reference/appliance_numbers.tsv");

    fn entries() -> impl Iterator<Item = Entry> {
        Appliance::ALL.iter().copied().map(entry)
    }

    #[test]
    fn numbers_are_those_ever_given() {
        let frozen: BTreeMap<u16, &str> = FROZEN
            .lines()
            .filter(|line| !line.starts_with('#'))
            .map(|line| line.split_once('\t').unwrap())
            .map(|(number, name)| (number.parse().unwrap(), name))
            .collect();
        assert!(frozen.len() >= 85);
        for (&number, &name) in &frozen {
            let appliance = Appliance::from_number(number).unwrap();
            assert_eq!(format!("{appliance:?}"), name, "number {number} was given to {name}");
        }
        assert_eq!(frozen.len(), Appliance::ALL.len(), "write new numbers to the frozen list");
    }

    #[test]
    fn every_appliance_makes_a_load_within_its_limits() {
        for e in entries() {
            let load = e.load(Volts(12.8), true);
            let plan =
                crate::document::Document { loads: vec![load.clone()], ..Default::default() };
            let checked = plan.checked().unwrap();
            assert_eq!(checked.loads[0], load, "{:?} is not at its resolution", e.appliance);
            assert_eq!(load.supply, e.supply);
        }
    }

    #[test]
    fn what_is_sold_for_the_bank_hangs_on_it() {
        let supply =
            |volts, inverter| entry(Appliance::CeilingLight).load(Volts(volts), inverter).supply;
        assert_eq!([supply(12.8, true), supply(25.6, true)], [Supply::Dc; 2]);
        assert_eq!([supply(51.2, true), supply(51.2, false)], [Supply::Ac, Supply::Dc]);
    }

    #[test]
    fn numbers_are_unique_and_lead_back() {
        let numbers: BTreeSet<u16> = Appliance::ALL.iter().map(|a| a.number()).collect();
        assert_eq!(numbers.len(), Appliance::ALL.len());
        for number in 0..=u16::MAX {
            let found = Appliance::from_number(number);
            assert_eq!(found.map(Appliance::number), numbers.get(&number).copied());
        }
    }

    #[test]
    fn figures_are_sane() {
        for e in entries() {
            let who = e.appliance;
            assert!(0.0 < e.low.0 && e.low <= e.power && e.power <= e.high, "{who:?}");
            assert!(e.high.0 <= 10_000.0 && e.high.0 <= 10.0 * e.low.0, "{who:?}: range too wide");
            assert!(e.low < e.high, "{who:?}: a range says how far the guess may be off");
            assert!((1..=20).contains(&e.quantity), "{who:?}");
            assert!(e.duty.0 > 0.0 && e.duty.0 <= 100.0, "{who:?}");
            assert!((1.0..=7.0).contains(&e.surge), "{who:?}");
            let hours = e.pattern.hours().0;
            assert!(hours > 0.0 && hours <= 24.0, "{who:?} runs {hours} h");
            let daily = e.daily().0;
            assert!(daily > 0.2 && daily < 15_000.0, "{who:?} takes {daily} Wh a day");
        }
    }

    #[test]
    fn only_what_is_cold_has_a_reference_temperature() {
        for e in entries() {
            if let Some(heat) = e.heat {
                let who = e.appliance;
                assert!((-25.0..=10.0).contains(&heat.inside.0), "{who:?}");
                assert!((20.0..=43.0).contains(&heat.reference.0), "{who:?}");
                assert!((20.0..=60.0).contains(&e.duty.0), "{who:?}: a duty has room above it");
            }
        }
        assert!(entries().filter(|e| e.heat.is_some()).count() >= 10);
    }

    #[test]
    fn a_refrigerators_day_is_that_of_its_label() {
        // Common on energy labels of these sizes [kWh a year]; rounded values of the trade, like the entries.
        for (appliance, low, high) in [
            (Appliance::HouseFridge, 90.0, 200.0),
            (Appliance::FridgeFreezer, 180.0, 320.0),
            (Appliance::ChestFreezer, 180.0, 300.0),
        ] {
            let year = entry(appliance).daily().0 * 365.0 / 1000.0;
            assert!((low..=high).contains(&year), "{appliance:?}: {year} kWh a year");
        }
    }

    #[test]
    fn the_loads_lives_depend_on_are_told() {
        for appliance in [
            Appliance::VaccineFridge,
            Appliance::BilgePump,
            Appliance::VhfListening,
            Appliance::VhfTransmitting,
            Appliance::OxygenConcentrator,
            Appliance::SuctionPump,
            Appliance::BreathingDevice,
            Appliance::GasDetector,
        ] {
            assert_eq!(entry(appliance).care, Care::Critical, "{appliance:?}");
        }
        assert_eq!(entry(Appliance::Kettle).care, Care::None);
    }

    #[test]
    fn a_microwave_is_planned_with_its_input() {
        assert_eq!(entry(Appliance::Microwave).power, Watts(1250.0));
    }

    #[test]
    fn a_pattern_may_pass_midnight() {
        assert_eq!(Pattern::Between { from_min: 1080, to_min: 1350 }.hours(), Hours(4.5));
        assert_eq!(Pattern::Between { from_min: 1320, to_min: 360 }.hours(), Hours(8.0));
        assert_eq!(Pattern::Always.hours(), Hours(24.0));
    }

    #[test]
    fn every_appliance_and_group_can_be_found_by_words() {
        assert!(Appliance::ALL.len() >= 85);
        for language in Language::ALL {
            let mut names = BTreeSet::new();
            for &appliance in Appliance::ALL {
                let name = language.appliance(appliance);
                let search = language.appliance_words(appliance);
                assert!(names.insert(name), "{name} twice");
                assert!(name.chars().count() <= 40, "{name} is too long for a list");
                assert!(!name.starts_with(char::is_lowercase), "{name}");
                assert!(!search.is_empty() && search == search.to_lowercase(), "{name}: {search}");
                assert!(search.split(' ').all(|word| !word.is_empty()), "{name}: {search}");
            }
            let groups = entries().map(|entry| language.appliance_group(entry.group));
            let listed: BTreeSet<&str> = groups.collect();
            assert_eq!(listed.len(), Group::ALL.len(), "each group has entries and its own name");
        }
    }
}
