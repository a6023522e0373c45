//! How much current a conductor may carry without its insulation growing too warm.
//!
//! **Method.** A table for air of 30 °C, times what bundling and warm air leave. Afloat the table is that of single conductors with
//! insulation for 105 °C; a space with an engine leaves 0.85. On land the column of the insulation is only for such losses: the result
//! never exceeds the column of the terminals, 60 °C up to 1 AWG and 75 °C above, nor the limits of fuses for 14, 12 and 10 AWG.
//! Cold air adds nothing, which is the safe side.
//!
//! **Range.** Air of 10 to 50 °C; 18 to 4/0 AWG afloat, 14 to 4/0 on land.

use super::basis::{Basis, Bundle, HOT_AMBIENT, Insulation, TABLE_AMBIENT, Tables};
use super::conductor::Gauge;
use crate::quantity::{Amps, Celsius};
use crate::working::{Formula, Source, Trace, term};

/// Afloat: a single conductor outside a space with an engine, insulation for 105 °C, from 18 AWG on.
const MARINE: [f64; Gauge::COUNT] = [
    20.0, 25.0, 35.0, 45.0, 60.0, 80.0, 120.0, 160.0, 180.0, 210.0, 245.0, 285.0, 330.0, 385.0,
    445.0,
];
/// What a space with an engine leaves afloat.
pub const ENGINE_SPACE: f64 = 0.85;

/// On land, insulation or terminals for 60, 75 and 90 °C, from 14 AWG on.
const LAND: [[f64; Gauge::COUNT - 2]; 3] = [
    [15.0, 20.0, 30.0, 40.0, 55.0, 70.0, 85.0, 95.0, 110.0, 125.0, 145.0, 165.0, 195.0],
    [20.0, 25.0, 35.0, 50.0, 65.0, 85.0, 100.0, 115.0, 130.0, 150.0, 175.0, 200.0, 230.0],
    [25.0, 30.0, 40.0, 55.0, 75.0, 95.0, 115.0, 130.0, 145.0, 170.0, 195.0, 225.0, 260.0],
];
/// The thickest gauge whose terminals count as those for 60 °C on land.
const TERMINALS_60: i32 = 1;

/// What surrounds a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Surroundings {
    /// The usual air.
    Usual,
    /// A space with an engine.
    Engine,
    /// A roof in the sun.
    Roof,
}

/// What a table says of a gauge; nothing if it is not in the table.
#[must_use]
pub fn table_ampacity(tables: Tables, insulation: Insulation, gauge: Gauge) -> Option<Amps> {
    let column = match (tables, insulation) {
        (Tables::Land, Insulation::C60) => 0,
        (Tables::Land, Insulation::C75) => 1,
        (Tables::Land, Insulation::C90) => 2,
        (Tables::Marine | Tables::Vehicle, Insulation::C105) => {
            return MARINE.get(gauge.place()).copied().map(Amps);
        }
        _ => return None,
    };
    LAND.get(column)?.get(gauge.place().checked_sub(2)?).copied().map(Amps)
}

/// What warm air leaves: √((T_i − T_a) / (T_i − 30 °C)); more than 1 in cold air.
#[must_use]
pub fn ambient_factor(insulation: Insulation, ambient: Celsius) -> f64 {
    let limit = insulation.temperature();
    let room = (limit - ambient).0 / (limit - TABLE_AMBIENT).0;
    if room > 0.0 { libm::sqrt(room) } else { 0.0 }
}

/// What bundling leaves. The tables of land are made for three conductors; a larger bundle there is refused before.
#[must_use]
pub fn bundle_factor(tables: Tables, bundle: Bundle) -> f64 {
    match (tables, bundle) {
        (_, Bundle::Alone) | (Tables::Land, Bundle::UpTo3) => 1.0,
        (_, Bundle::UpTo3) => 0.7,
        (_, Bundle::UpTo6) => 0.6,
        (_, Bundle::UpTo24) => 0.5,
        (_, Bundle::More) => 0.4,
    }
}

/// The largest fuse for a thin conductor on land, whatever it may carry.
#[must_use]
pub fn largest_fuse(tables: Tables, gauge: Gauge) -> Option<Amps> {
    match (tables, gauge.number()) {
        (Tables::Land, 14) => Some(Amps(15.0)),
        (Tables::Land, 12) => Some(Amps(20.0)),
        (Tables::Land, 10) => Some(Amps(30.0)),
        _ => None,
    }
}

impl Basis {
    /// The hottest air around a run with where that comes from, and the most that its surroundings leave (ratio).
    pub(super) fn around(&self, surroundings: Surroundings) -> (Celsius, Source, f64) {
        let hot = self.ambient.at_least(HOT_AMBIENT);
        match surroundings {
            Surroundings::Roof => (hot, Source::Choice, 1.0),
            Surroundings::Engine => (hot, Source::Choice, ENGINE_SPACE),
            Surroundings::Usual if self.engine_space => (hot, Source::Choice, ENGINE_SPACE),
            Surroundings::Usual => {
                let usual = self.ambient == Self::of(self.tables).ambient;
                (self.ambient, if usual { Source::Typical } else { Source::Plan }, 1.0)
            }
        }
    }

    /// Where the insulation comes from: what is usual, or what somebody chose.
    pub(super) fn insulation_source(&self) -> Source {
        let usual = self.insulation == Self::of(self.tables).insulation;
        if usual { Source::Typical } else { Source::Plan }
    }

    /// What a gauge may carry in a run; nothing if it is not in the table.
    pub fn ampacity(
        &self,
        gauge: Gauge,
        surroundings: Surroundings,
        trace: &mut impl Trace,
    ) -> Option<Amps> {
        let table = table_ampacity(self.tables, self.insulation, gauge)?;
        let (ambient, ambient_source, most) = self.around(surroundings);
        let warm = ambient_factor(self.insulation, ambient);
        let warm = if warm < most { warm } else { most };
        let limit = self.insulation.temperature();
        let most_source = if most < 1.0 { Source::MarineAmpacity } else { Source::Choice };
        let inputs = [
            term(most).from(most_source),
            term(limit).from(self.insulation_source()),
            term(ambient).from(ambient_source),
            term(TABLE_AMBIENT).from(self.tables.source()),
        ];
        let warm = trace.step(Formula::AmbientFactor, warm, &inputs);
        let bundle = bundle_factor(self.tables, self.bundle);
        let carried = table * (bundle * warm);
        let inputs = [
            term(table).from(self.tables.source()),
            term(bundle).from(self.tables.source()),
            term(warm),
        ];
        if self.tables != Tables::Land {
            return Some(trace.step(Formula::Ampacity, carried, &inputs));
        }
        let thin = gauge.number() >= TERMINALS_60;
        let terminals = if thin { Insulation::C60 } else { Insulation::C75 };
        let terminals = table_ampacity(self.tables, terminals, gauge)?;
        let [table, bundle, warm] = inputs;
        let inputs = [table, bundle, warm, term(terminals).from(Source::LandAmpacity)];
        Some(trace.step(Formula::AmpacityLand, carried.at_most(terminals), &inputs))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn gauge(number: i32) -> Gauge {
        Gauge::all().find(|own| own.number() == number).unwrap()
    }

    #[test]
    fn warmth_and_bundling_only_take_away() {
        for tables in Tables::ALL {
            let usual = Basis::of(tables);
            for gauge in Gauge::all() {
                let of = |basis: Basis, around| basis.ampacity(gauge, around, &mut ());
                let single = of(Basis { bundle: Bundle::Alone, ..usual }, Surroundings::Usual);
                for around in [Surroundings::Usual, Surroundings::Engine, Surroundings::Roof] {
                    assert!(of(usual, around) <= single, "{tables:?} {gauge:?}");
                }
                // The table is for 30 °C; colder air adds nothing.
                let at =
                    |ambient| of(Basis { ambient: Celsius(ambient), ..usual }, Surroundings::Usual);
                assert_eq!(at(10.0), at(30.0));
            }
        }
    }

    #[test]
    fn land_is_capped_by_its_terminals() {
        let land = Basis::of(Tables::Land);
        let of = |number| land.ampacity(gauge(number), Surroundings::Usual, &mut ());
        // 10 AWG for 90 °C is in the table with 40 A; its terminals leave 30 A. 2/0: 195 A and 175 A.
        assert_eq!((of(10), of(-1)), (Some(Amps(30.0)), Some(Amps(175.0))));
        assert_eq!((of(16), largest_fuse(Tables::Land, gauge(12))), (None, Some(Amps(20.0))));
    }

    #[test]
    fn an_engine_leaves_what_the_table_says() {
        let boat = Basis { bundle: Bundle::Alone, ..Basis::of(Tables::Marine) };
        let near = boat.ampacity(gauge(10), Surroundings::Engine, &mut ()).unwrap();
        assert!((near.0 - 51.0).abs() < 1e-9, "{near:?}");
        // Over a roof √(55/75) counts instead.
        let roof = boat.ampacity(gauge(10), Surroundings::Roof, &mut ()).unwrap();
        assert!((roof.0 - 60.0 * 0.856_348_8).abs() < 1e-4, "{roof:?}");
    }
}
