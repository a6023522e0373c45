//! What is often wrong with a gauge, and by what it shows.
//!
//! **Method.** A mistake is the gauge of the card with one thing changed, by as much as is common enough to meet. It and the gauge of the card
//! go through the same course; the telltale is a statement about the two that can be checked. Different mistakes may share one: then
//! a meter decides.
//!
//! The sizes of the mistakes are choices, made to be seen in a year and not to be likely.

use super::card::Card;
use super::counter::{Gauge, Unseen};
use super::course::Course;
use super::trial::Trial;
use crate::bank::ChargeEfficiency;
use crate::quantity::{Hours, Percent};
use crate::system::System;

/// A thing that is wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mistake {
    /// The capacity is a third too high.
    CapacityHigh,
    /// The capacity is a third too low.
    CapacityLow,
    /// The efficiency is 100 %.
    EfficiencyHigh,
    /// The efficiency is 10 % too low.
    EfficiencyLow,
    /// The full voltage is 7 % too low.
    FullVoltageLow,
    /// The full voltage is 5 % of the nominal voltage too high: over what chargers hold.
    FullVoltageHigh,
    /// The tail current is five times too large.
    TailLarge,
    /// The tail current is a hundredth.
    TailSmall,
    /// It reads a thousandth of the capacity in an hour where nothing flows, as if it charged.
    OffsetUp,
    /// The same, as if it discharged.
    OffsetDown,
    /// It was told a shunt that is half as large again as it is.
    ShuntLarge,
    /// It was told a shunt of two thirds.
    ShuntSmall,
    /// The two leads of the shunt are exchanged.
    ShuntReversed,
    /// 30 % of what the loads take does not pass the shunt.
    LoadAhead,
    /// What charges the bank most does not pass the shunt.
    ChargerAhead,
    /// It counts nothing under a fiftieth of the capacity in an hour.
    ThresholdHigh,
    /// It was set to full when the bank was emptiest.
    FullOnEmpty,
}

/// By what a mistake shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Telltale {
    /// It moves less than the bank: it still shows charge when the lights dim.
    TooSlow,
    /// It moves more than the bank: it shows nothing when there is much left.
    TooFast,
    /// From full to full it rises against the truth.
    CreepsUp,
    /// From full to full it falls against the truth.
    CreepsDown,
    /// It sets itself to full when much is missing.
    FullTooEarly,
    /// It never or hardly ever sets itself to full.
    NeverFull,
    /// It falls to nothing though there is charge.
    FallsToNothing,
    /// It shows far too much until it is next full.
    FarTooMuch,
    /// It rises while the bank empties.
    Backwards,
}

impl Telltale {
    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::TooSlow,
        Self::TooFast,
        Self::CreepsUp,
        Self::CreepsDown,
        Self::FullTooEarly,
        Self::NeverFull,
        Self::FallsToNothing,
        Self::FarTooMuch,
        Self::Backwards,
    ];
}

/// A pace that differs by this much is seen (ratio).
const PACE: f64 = 0.1;
/// A drift that differs by this much is seen \[% a day\].
const DRIFT: f64 = 0.05;
/// A tenth of the times at full is hardly ever.
const SELDOM: usize = 10;
/// So much over the truth is far too much (ratio).
const FAR: f64 = 0.25;

impl Mistake {
    /// All of them.
    pub const ALL: [Self; 17] = [
        Self::CapacityHigh,
        Self::CapacityLow,
        Self::EfficiencyHigh,
        Self::EfficiencyLow,
        Self::FullVoltageLow,
        Self::FullVoltageHigh,
        Self::TailLarge,
        Self::TailSmall,
        Self::OffsetUp,
        Self::OffsetDown,
        Self::ShuntLarge,
        Self::ShuntSmall,
        Self::ShuntReversed,
        Self::LoadAhead,
        Self::ChargerAhead,
        Self::ThresholdHigh,
        Self::FullOnEmpty,
    ];

    /// The gauge of a card with this mistake.
    #[must_use]
    pub fn made(self, card: &Card, system: &System) -> Gauge {
        let mut gauge = card.gauge();
        let a_thousandth = gauge.capacity / Hours(1000.0);
        let set = system.bank.mean_efficiency;
        let mut gain = 0.0;
        match self {
            Self::CapacityHigh => gauge.capacity = gauge.capacity * (4.0 / 3.0),
            Self::CapacityLow => gauge.capacity = gauge.capacity * (2.0 / 3.0),
            Self::EfficiencyHigh => gauge.efficiency = ChargeEfficiency::Flat(1.0),
            Self::EfficiencyLow => gauge.efficiency = ChargeEfficiency::Flat(set - 0.1),
            Self::FullVoltageLow => gauge.full_voltage = gauge.full_voltage * 0.93,
            Self::FullVoltageHigh => {
                gauge.full_voltage += system.bank.nominal * 0.05;
            }
            Self::TailLarge => gauge.tail = gauge.tail * 5.0,
            Self::TailSmall => gauge.tail = gauge.tail * 0.01,
            Self::OffsetUp => gauge.error.offset = a_thousandth,
            Self::OffsetDown => gauge.error.offset = -a_thousandth,
            // The current is the voltage over the resistance that it was told.
            Self::ShuntLarge => gain = 50.0,
            Self::ShuntSmall => gain = -100.0 / 3.0,
            Self::ShuntReversed => gain = -200.0,
            Self::LoadAhead => gauge.unseen.load = Percent(30.0),
            Self::ChargerAhead => gauge.unseen = Unseen::of_charger(system, Percent(100.0)),
            Self::ThresholdHigh => gauge.threshold = gauge.capacity / Hours(50.0),
            Self::FullOnEmpty => gauge.start = Some(1.0),
        }
        gauge.error.gain = Percent(gain);
        gauge
    }

    /// By what it shows.
    #[must_use]
    pub const fn telltale(self) -> Telltale {
        match self {
            Self::CapacityHigh | Self::ShuntSmall | Self::ThresholdHigh => Telltale::TooSlow,
            Self::CapacityLow | Self::ShuntLarge => Telltale::TooFast,
            Self::EfficiencyHigh | Self::OffsetUp | Self::LoadAhead => Telltale::CreepsUp,
            Self::EfficiencyLow | Self::OffsetDown => Telltale::CreepsDown,
            Self::FullVoltageLow | Self::TailLarge => Telltale::FullTooEarly,
            Self::FullVoltageHigh | Self::TailSmall => Telltale::NeverFull,
            Self::ChargerAhead => Telltale::FallsToNothing,
            Self::ShuntReversed => Telltale::Backwards,
            Self::FullOnEmpty => Telltale::FarTooMuch,
        }
    }

    /// This mistake and the gauge of the card through the same course.
    #[must_use]
    pub fn tried(self, card: &Card, system: &System, course: &Course) -> Tried {
        let from = if self == Self::FullOnEmpty { course.lowest() } else { 0 };
        Tried {
            mistake: self,
            wrong: Trial::of(course, &self.made(card, system), from),
            right: Trial::of(course, &card.gauge(), from),
        }
    }
}

/// A mistake beside the gauge of the card.
#[derive(Clone, Debug, PartialEq)]
pub struct Tried {
    /// The mistake.
    pub mistake: Mistake,
    /// What came of it.
    pub wrong: Trial,
    /// What came of the gauge of the card.
    pub right: Trial,
}

impl Tried {
    /// Whether the mistake shows in this plan by its telltale.
    #[must_use]
    pub fn shows(&self) -> bool {
        self.has(self.mistake.telltale())
    }

    /// Whether a telltale can be seen.
    #[must_use]
    pub fn has(&self, telltale: Telltale) -> bool {
        telltale.is_seen(&self.wrong, &self.right)
    }
}

impl Telltale {
    /// Whether it can be seen in what came of a gauge beside that of the card.
    #[must_use]
    pub fn is_seen(self, wrong: &Trial, right: &Trial) -> bool {
        let drift = wrong.drift.0 - right.drift.0;
        match self {
            Telltale::TooSlow => (0.0..right.pace - PACE).contains(&wrong.pace),
            Telltale::TooFast => wrong.pace > right.pace + PACE,
            Telltale::CreepsUp => drift > DRIFT,
            Telltale::CreepsDown => drift < -DRIFT,
            Telltale::FullTooEarly => wrong.wrong_fulls().count() > right.wrong_fulls().count(),
            Telltale::NeverFull => wrong.fulls.len() * SELDOM < right.fulls.len(),
            Telltale::FallsToNothing => wrong.wrong_empties.len() > right.wrong_empties.len(),
            Telltale::FarTooMuch => wrong.over > right.over + FAR,
            Telltale::Backwards => wrong.pace < 0.0,
        }
    }
}
