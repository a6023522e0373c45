//! Rules and lengths as a plan states them.

use super::{Basis, Bundle, Insulation, Lengths, RunKind, ShortCircuit, Tables};
use crate::document::{Bundled, CableInsulation, Document, WiredBy};
use crate::quantity::{Amps, Celsius, Metres};

impl Basis {
    /// What a plan states; what it does not is as usual.
    #[must_use]
    pub fn stated(plan: &Document) -> Self {
        let Some(own) = &plan.wiring else { return Self::usual(plan) };
        let usual = match own.tables {
            WiredBy::Usual => Self::usual(plan),
            WiredBy::Marine => Self::of(Tables::Marine),
            WiredBy::Vehicle => Self::of(Tables::Vehicle),
            WiredBy::Land => Self::of(Tables::Land),
        };
        let stated = own.short_circuit_a.map(|amps| ShortCircuit::Stated(Amps(amps)));
        let cranking = own.cranking_a.map(|amps| ShortCircuit::Cranking(Amps(amps)));
        Self {
            insulation: match own.insulation {
                CableInsulation::Usual => usual.insulation,
                CableInsulation::C60 => Insulation::C60,
                CableInsulation::C75 => Insulation::C75,
                CableInsulation::C90 => Insulation::C90,
                CableInsulation::C105 => Insulation::C105,
            },
            bundle: match own.bundle {
                Bundled::Usual => usual.bundle,
                Bundled::Alone => Bundle::Alone,
                Bundled::UpTo6 => Bundle::UpTo6,
                Bundled::UpTo24 => Bundle::UpTo24,
                Bundled::More => Bundle::More,
            },
            engine_space: own.engine_space,
            ambient: own.ambient_c.map_or(usual.ambient, Celsius),
            short_circuit: stated.or(cranking),
            ..usual
        }
    }
}

impl Lengths {
    /// What a plan states, for every run of its kind.
    #[must_use]
    pub fn stated(plan: &Document) -> Self {
        let Some(own) = &plan.wiring else { return Self::default() };
        let mut lengths = Vec::new();
        let mut add = |length: Option<f64>, run: RunKind| {
            lengths.extend(length.map(|own| (run, Metres(own))));
        };
        add(own.battery_m, RunKind::Battery);
        add(own.inverter_m, RunKind::Inverter);
        add(own.panel_m, RunKind::Distribution);
        for charger in [RunKind::Alternator, RunKind::Shore, RunKind::Generator] {
            add(own.charger_m, charger);
        }
        for place in 0..plan.loads.len() as u16 {
            add(own.load_m, RunKind::Branch(place));
        }
        for place in 0..plan.arrays.len() as u16 {
            add(own.controller_m, RunKind::Controller(place));
            add(own.array_m, RunKind::Array(place));
        }
        Self { own: lengths }
    }
}
