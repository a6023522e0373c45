//! Checks as a plan keeps what was read of them.

use super::judge::Reading;
use super::sheet::{Check, Point};
use crate::document::{self, Checked, Document};
use crate::fitting::RunKind;
use crate::quantity::Amps;

/// The check of the drop over a run, and the run of a load or array at a place.
type Drop = (Checked, fn(u16) -> RunKind);

/// Runs by the check of the drop over them.
const RUNS: [Drop; 11] = [
    (Checked::DropBatteryString, |_| RunKind::BatteryString),
    (Checked::DropBattery, |_| RunKind::Battery),
    (Checked::DropInverter, |_| RunKind::Inverter),
    (Checked::DropDistribution, |_| RunKind::Distribution),
    (Checked::DropBranch, RunKind::Branch),
    (Checked::DropController, RunKind::Controller),
    (Checked::DropArray, RunKind::Array),
    (Checked::DropModuleString, RunKind::ModuleString),
    (Checked::DropAlternator, |_| RunKind::Alternator),
    (Checked::DropShore, |_| RunKind::Shore),
    (Checked::DropGenerator, |_| RunKind::Generator),
];

impl Point {
    /// The check of a reading; of a drop at the current that was read beside it, or none.
    #[must_use]
    pub fn of(own: &document::Check) -> Self {
        let place = own.of.unwrap_or_default();
        match own.what {
            Checked::Polarity => Self::Polarity,
            Checked::Tightness => Self::Tightness,
            Checked::Insulation => Self::Insulation(place),
            Checked::ZeroCurrent => Self::ZeroCurrent,
            Checked::LoadCurrent => Self::LoadCurrent(place),
            Checked::Absorption => Self::Absorption,
            Checked::Float => Self::Float,
            Checked::CutOff => Self::CutOff,
            Checked::FirstFull => Self::FirstFull,
            drop => {
                let run = RUNS.iter().find(|(own, _)| *own == drop);
                let run = run.map_or(RunKind::Battery, |(_, run)| run(place));
                Self::Drop { run, current: Amps(own.beside_a.unwrap_or_default()) }
            }
        }
    }

    /// By what a plan knows its reading: the check, and the place of the load or array that it is of.
    #[must_use]
    pub fn kept_as(&self) -> (Checked, Option<u16>) {
        match *self {
            Self::Polarity => (Checked::Polarity, None),
            Self::Tightness => (Checked::Tightness, None),
            Self::Insulation(place) => (Checked::Insulation, Some(place)),
            Self::ZeroCurrent => (Checked::ZeroCurrent, None),
            Self::LoadCurrent(place) => (Checked::LoadCurrent, Some(place)),
            Self::Absorption => (Checked::Absorption, None),
            Self::Float => (Checked::Float, None),
            Self::CutOff => (Checked::CutOff, None),
            Self::FirstFull => (Checked::FirstFull, None),
            Self::Drop { run, .. } => {
                let place = match run {
                    RunKind::Branch(place)
                    | RunKind::Controller(place)
                    | RunKind::Array(place)
                    | RunKind::ModuleString(place) => Some(place),
                    _ => None,
                };
                let own = RUNS.iter().find(|(_, own)| own(place.unwrap_or_default()) == run);
                (own.map_or(Checked::DropBattery, |own| own.0), place)
            }
        }
    }
}

impl Check {
    /// What a plan says was read. What is done or not counts as not done once anything was read.
    #[must_use]
    pub fn read_in(&self, plan: &Document) -> Option<Reading> {
        let (what, of) = self.point.kept_as();
        let own = plan.checks.iter().find(|own| own.what == what && own.of == of);
        match (own, what.field()) {
            (Some(own), Some(_)) => Some(Reading { value: own.read, beside: own.beside_a }),
            (own, None) if !plan.checks.is_empty() => {
                Some(Reading { value: f64::from(u8::from(own.is_some())), beside: None })
            }
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_check_is_found_again() {
        for what in Checked::ALL {
            let own = document::Check { what, of: Some(3), ..document::Check::default() };
            let (found, of) = Point::of(&own).kept_as();
            assert_eq!(found, what);
            assert!(of.is_none_or(|of| of == 3), "{what:?}");
        }
    }
}
