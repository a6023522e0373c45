//! What a gauge is asked when it is set up, in words that no maker owns.

use crate::quantity::Unit;
use crate::working::{Source, Symbol};

/// A question under which settings stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    /// How big is it?
    HowBig,
    /// When may it say full?
    WhenFull,
    /// What is lost on the way?
    WhatIsLost,
    /// When should it warn?
    WhenToWarn,
}

impl Ask {
    /// All of them, in the order of a card.
    pub const ALL: [Self; 4] = [Self::HowBig, Self::WhenFull, Self::WhatIsLost, Self::WhenToWarn];
}

/// A figure that a gauge is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Capacity.
    Capacity,
    /// Hours for which it holds; lead-acid only.
    HourRate,
    /// Voltage from which the bank may be full.
    FullVoltage,
    /// Current up to which it may be, of the capacity in an hour.
    Tail,
    /// How long both must hold.
    Hold,
    /// Share of the charge put in that comes out again.
    Efficiency,
    /// Exponent by which faster discharge counts more; lead-acid only.
    Exponent,
    /// What standing takes in a month.
    SelfDischarge,
    /// What the batteries draw inside; only where they have protection circuits.
    Inside,
    /// Current under which nothing is counted.
    Threshold,
    /// State of charge down to which the time left is told.
    Floor,
    /// State of charge at which it warns.
    Warn,
    /// Time over which it averages the current for the time left.
    Averaged,
}

impl Kind {
    /// All of them, in the order of a card.
    pub const ALL: [Self; 13] = [
        Self::Capacity,
        Self::HourRate,
        Self::FullVoltage,
        Self::Tail,
        Self::Hold,
        Self::Efficiency,
        Self::Exponent,
        Self::SelfDischarge,
        Self::Inside,
        Self::Threshold,
        Self::Floor,
        Self::Warn,
        Self::Averaged,
    ];

    /// The question under which it stands.
    #[must_use]
    pub const fn ask(self) -> Ask {
        match self {
            Self::Capacity | Self::HourRate => Ask::HowBig,
            Self::FullVoltage | Self::Tail | Self::Hold => Ask::WhenFull,
            Self::Floor | Self::Warn | Self::Averaged => Ask::WhenToWarn,
            Self::Efficiency
            | Self::Exponent
            | Self::SelfDischarge
            | Self::Inside
            | Self::Threshold => Ask::WhatIsLost,
        }
    }

    /// The unit of its figure.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self {
            Self::Capacity => Unit::AmpHour,
            Self::FullVoltage => Unit::Volt,
            Self::HourRate | Self::Hold | Self::Averaged => Unit::Hour,
            Self::Inside | Self::Threshold => Unit::Amp,
            Self::Exponent => Unit::One,
            Self::Tail | Self::Efficiency | Self::SelfDischarge | Self::Floor | Self::Warn => {
                Unit::Percent
            }
        }
    }

    /// The symbol of the step of its working that gives its figure; none where it is taken as it stands.
    #[must_use]
    pub const fn symbol(self) -> Option<Symbol> {
        match self {
            Self::Capacity => Some(Symbol::FullCapacity),
            Self::FullVoltage => Some(Symbol::FullVoltage),
            Self::Tail => Some(Symbol::GaugeTail),
            Self::Warn => Some(Symbol::WarnCharge),
            Self::Threshold => Some(Symbol::Threshold),
            _ => None,
        }
    }
}

/// A figure to enter into a gauge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// Which.
    pub kind: Kind,
    /// The figure, in the unit of its kind.
    pub value: f64,
    /// The least that makes sense for this plan.
    pub least: f64,
    /// The most.
    pub most: f64,
    /// Where the figure comes from, if it has no working.
    pub source: Source,
}
