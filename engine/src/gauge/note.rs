//! What whoever sets up a gauge must know.

use super::card::Card;
use crate::document::Chemistry;
use crate::quantity::{AmpHours, Volts};
use crate::system::System;

/// Over this a shock can kill \[V\].
const SHOCK: Volts = Volts(60.0);
/// A capacity that differs from the label by less is not worth a word (ratio).
const DIFFERS: f64 = 0.02;

/// Something to know before and while a gauge is set up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Note {
    /// Makers' sheets, local codes and licensed practice come first.
    SheetFirst,
    /// Why the capacity is not the label's.
    NotTheLabel {
        /// What the label says.
        label: AmpHours,
        /// What the bank holds.
        holds: AmpHours,
    },
    /// All minus leads on the load side of the shunt.
    LoadSide,
    /// Charge until it is truly full, then set to full.
    FirstUse,
    /// Never set to full on a bank that is not.
    NeverOnEmpty,
    /// After replacing a battery: all of it anew.
    AfterReplacing,
    /// What to do about batteries of lead-acid: full by the tail is not quite full.
    NearlyFull,
    /// These batteries cannot be told by their voltage.
    NotByVoltage,
    /// The efficiency may be found as amp-hours out over in between two times at full.
    FindEfficiency,
    /// Never bridge the protection of a battery, nor turn its limits up.
    KeepProtection,
    /// Vented batteries give off hydrogen when charged high.
    Hydrogen,
    /// Over 60 V shock and arc: a licensed person.
    Shock,
    /// Modules are live in daylight.
    ModulesLive,
    /// A life may depend on a load: an alarm and a backup that need no gauge.
    Vital,
}

impl Note {
    /// Those of a plan.
    #[must_use]
    pub fn of(system: &System, card: &Card) -> Vec<Self> {
        let bank = &system.bank;
        let lead_acid = bank.lead_acid.is_some();
        let (label, holds) = (card.label, card.gauge().capacity);
        let differs = (holds / label - 1.0).abs() > DIFFERS;
        let highest = bank.absorption_voltage(crate::quantity::Celsius::ZERO);
        let flat = bank.chemistry == Chemistry::Lifepo4;
        let all = [
            (true, Self::SheetFirst),
            (differs, Self::NotTheLabel { label, holds }),
            (true, Self::LoadSide),
            (true, Self::FirstUse),
            (true, Self::NeverOnEmpty),
            (true, Self::AfterReplacing),
            (lead_acid, Self::NearlyFull),
            (flat, Self::NotByVoltage),
            (lead_acid, Self::FindEfficiency),
            (!lead_acid, Self::KeepProtection),
            (lead_acid, Self::Hydrogen),
            (highest > SHOCK, Self::Shock),
            (!system.arrays.is_empty(), Self::ModulesLive),
            (system.loads.iter().any(|load| load.vital), Self::Vital),
        ];
        all.into_iter().filter(|(holds, _)| *holds).map(|(_, note)| note).collect()
    }
}
