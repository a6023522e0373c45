//! By which rules a system is wired: tables, insulation, air, bundling, and how long the runs are.
//!
//! **Question answered:** what was assumed where nobody said otherwise? A plan with something of a boat is wired by the marine tables,
//! one with an engine or an array flat on a roof as a vehicle, any other by the tables of land. Every default is a typical one of its
//! kind with no document behind it, and is marked as assumed wherever it is used.

use super::{RunKind, Unfit};
use crate::document::{Document, Mounting};
use crate::load::catalogue::{Appliance, Group, entry};
use crate::quantity::{Amps, Celsius, Metres};
use crate::system::System;
use crate::working::Source;

/// Whose tables say how much a conductor may carry.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Tables {
    /// Those of boats.
    Marine,
    /// Those of boats too, since none of vehicles could be verified.
    Vehicle,
    /// Those of buildings.
    Land,
}

impl Tables {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Marine, Self::Vehicle, Self::Land];

    /// Where they come from.
    #[must_use]
    pub const fn source(self) -> Source {
        match self {
            Self::Marine | Self::Vehicle => Source::MarineAmpacity,
            Self::Land => Source::LandAmpacity,
        }
    }
}

/// For which temperature a conductor's insulation is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Insulation {
    /// 60 °C.
    C60,
    /// 75 °C.
    C75,
    /// 90 °C.
    C90,
    /// 105 °C.
    C105,
}

impl Insulation {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::C60, Self::C75, Self::C90, Self::C105];

    /// The temperature.
    #[must_use]
    pub const fn temperature(self) -> Celsius {
        Celsius(match self {
            Self::C60 => 60.0,
            Self::C75 => 75.0,
            Self::C90 => 90.0,
            Self::C105 => 105.0,
        })
    }
}

/// How many conductors that carry current lie together; plus and minus of a run side by side are two.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Bundle {
    /// Each alone in free air.
    Alone,
    /// Two or three.
    UpTo3,
    /// Four to six.
    UpTo6,
    /// Seven to twenty-four.
    UpTo24,
    /// More than that.
    More,
}

impl Bundle {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Alone, Self::UpTo3, Self::UpTo6, Self::UpTo24, Self::More];
}

/// What is known of the bank's short-circuit current.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ShortCircuit {
    /// The maker's figure for the whole bank.
    Stated(Amps),
    /// The cold-cranking amps of all batteries together, of lead-acid of 12 to 24 V.
    Cranking(Amps),
}

/// By which rules a system is wired.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Basis {
    /// Whose tables.
    pub tables: Tables,
    /// The insulation of battery cable.
    pub insulation: Insulation,
    /// The hottest air around the runs; those on roofs and beside engines count as 50 °C at least.
    pub ambient: Celsius,
    /// Whether bank and runs are in a space with an engine.
    pub engine_space: bool,
    /// How many conductors lie together.
    pub bundle: Bundle,
    /// What is known of the short-circuit current; otherwise it is worked out.
    pub short_circuit: Option<ShortCircuit>,
}

/// Air for which the tables of ampacity are made.
pub(super) const TABLE_AMBIENT: Celsius = Celsius(30.0);
/// Air in a space with an engine, and over a roof in the sun.
pub(super) const HOT_AMBIENT: Celsius = Celsius(50.0);
/// Ends of the table that corrects for warm air.
const AMBIENT: (Celsius, Celsius) = (Celsius(10.0), Celsius(50.0));
/// Ends of a length that is asked for.
const LENGTH: (Metres, Metres) = (Metres(0.1), Metres(200.0));
/// Ends of a short-circuit current or of cranking amps.
const SHORT_CIRCUIT: (Amps, Amps) = (Amps(50.0), Amps(200_000.0));

impl Basis {
    /// The usual one of a kind.
    #[must_use]
    pub const fn of(tables: Tables) -> Self {
        // A closed vehicle in the sun is as hot inside as a roof.
        let (insulation, ambient) = match tables {
            Tables::Marine => (Insulation::C105, TABLE_AMBIENT),
            Tables::Vehicle => (Insulation::C105, HOT_AMBIENT),
            Tables::Land => (Insulation::C90, TABLE_AMBIENT),
        };
        Self {
            tables,
            insulation,
            ambient,
            engine_space: false,
            bundle: Bundle::UpTo3,
            short_circuit: None,
        }
    }

    /// The usual one of a plan's kind.
    #[must_use]
    pub fn usual(plan: &Document) -> Self {
        let afloat = |number: u16| {
            Appliance::from_number(number).is_some_and(|own| entry(own).group == Group::Afloat)
        };
        let mut loads = plan.loads.iter().filter(|load| load.on);
        if loads.any(|load| load.appliance.is_some_and(afloat)) {
            return Self::of(Tables::Marine);
        }
        let engine = plan.alternator.as_ref().is_some_and(|own| own.on);
        let on_roof = |own: &crate::document::Array| {
            own.on && own.mounting == Mounting::Flush && own.tilt_deg <= 5.0
        };
        if engine || plan.arrays.iter().any(on_roof) {
            return Self::of(Tables::Vehicle);
        }
        Self::of(Tables::Land)
    }

    /// The same if every part of it is in its tables.
    ///
    /// # Errors
    /// What is outside them.
    pub(super) fn checked(&self, system: &System) -> Result<(), Unfit> {
        let (least, most) = AMBIENT;
        // The other way round, so that what is no number is refused too.
        if !(self.ambient >= least && self.ambient <= most) {
            return Err(Unfit::Ambient { at: self.ambient, least, most });
        }
        let marine = self.tables != Tables::Land;
        if marine != (self.insulation == Insulation::C105) {
            return Err(Unfit::Insulation { tables: self.tables, insulation: self.insulation });
        }
        if !marine && !matches!(self.bundle, Bundle::Alone | Bundle::UpTo3) {
            return Err(Unfit::Bundled);
        }
        // What air of 50 °C leaves of insulation for 60 °C is in the table, on land; afloat it is always for 105 °C.
        match self.short_circuit {
            Some(ShortCircuit::Stated(value) | ShortCircuit::Cranking(value))
                if !(value >= SHORT_CIRCUIT.0 && value <= SHORT_CIRCUIT.1) =>
            {
                Err(Unfit::ShortCircuit { value, least: SHORT_CIRCUIT.0, most: SHORT_CIRCUIT.1 })
            }
            Some(ShortCircuit::Cranking(_)) if !super::short_circuit::may_crank(&system.bank) => {
                Err(Unfit::Cranking)
            }
            _ => Ok(()),
        }
    }
}

/// How long the runs are, one way. What nobody stated is the usual length of its kind.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lengths {
    /// Those that somebody measured.
    pub own: Vec<(RunKind, Metres)>,
}

impl Lengths {
    /// The length of a run, and where it comes from.
    #[must_use]
    pub fn of(&self, run: RunKind, tables: Tables) -> (Metres, Source) {
        let own = self.own.iter().find(|(kind, _)| *kind == run);
        own.map_or((usual_length(run, tables), Source::Typical), |(_, own)| (*own, Source::Plan))
    }

    /// The same if every length is one.
    ///
    /// # Errors
    /// The first that is not.
    pub(super) fn checked(&self) -> Result<(), Unfit> {
        let (least, most) = LENGTH;
        let bad = |(_, own): &&(RunKind, Metres)| !(*own >= least && *own <= most);
        match self.own.iter().find(bad) {
            Some((run, length)) => Err(Unfit::Length { run: *run, length: *length, least, most }),
            None => Ok(()),
        }
    }
}

/// Usual lengths one way: typical of a van, a boat of some ten metres and a small house, no document behind them.
fn usual_length(run: RunKind, tables: Tables) -> Metres {
    let by_kind = |marine, vehicle, land| match tables {
        Tables::Marine => marine,
        Tables::Vehicle => vehicle,
        Tables::Land => land,
    };
    Metres(match run {
        RunKind::BatteryString => 0.5,
        RunKind::Battery | RunKind::Inverter => 1.0,
        RunKind::Controller(_) | RunKind::Shore | RunKind::Generator => 1.5,
        RunKind::Distribution => by_kind(3.0, 2.0, 3.0),
        RunKind::Branch(_) => by_kind(8.0, 5.0, 8.0),
        // The charger stands by the bank; its other side is by its sheet.
        RunKind::Alternator => 2.0,
        RunKind::ModuleString(_) => 3.0,
        RunKind::Array(_) => by_kind(8.0, 5.0, 12.0),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Array, Load};

    #[test]
    fn the_tables_follow_the_kind_of_plan() {
        let mut plan = Document::default();
        let tables = |plan: &Document| Basis::usual(plan).tables;
        assert_eq!(tables(&plan), Tables::Land);
        plan.arrays = vec![Array { mounting: Mounting::Flush, tilt_deg: 0.0, ..Array::default() }];
        assert_eq!(tables(&plan), Tables::Vehicle);
        // 157 is a light at anchor.
        plan.loads = vec![Load { appliance: Some(157), ..Load::default() }];
        assert_eq!(tables(&plan), Tables::Marine);
        plan.loads[0].on = false;
        assert_eq!(tables(&plan), Tables::Vehicle);
    }

    #[test]
    fn a_length_that_was_measured_goes_before_the_usual_one() {
        let lengths = Lengths { own: vec![(RunKind::Inverter, Metres(2.5))] };
        let of = |run| lengths.of(run, Tables::Land);
        assert_eq!(of(RunKind::Inverter), (Metres(2.5), Source::Plan));
        assert_eq!(of(RunKind::Battery), (Metres(1.0), Source::Typical));
        for bad in [0.0, -1.0, 1e9, f64::NAN] {
            let lengths = Lengths { own: vec![(RunKind::Inverter, Metres(bad))] };
            assert!(matches!(lengths.checked(), Err(Unfit::Length { .. })), "{bad}");
        }
    }
}
