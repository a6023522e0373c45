//! Figures of a gauge that cannot be: refused with what is allowed, before anything is counted by them.

use super::counter::Gauge;
use super::setting::Kind;
use crate::bank::ChargeEfficiency;
use crate::quantity::Unit;

/// A figure of a gauge, or of what is wrong with it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// A setting.
    Set(Kind),
    /// What it reads where nothing flows.
    Offset,
    /// Share by which it reads too much.
    Gain,
    /// Share of the loads that does not pass its shunt.
    UnseenLoads,
    /// Share of a charger that does not.
    UnseenCharger,
    /// What it was set to show at first.
    Start,
}

impl Figure {
    /// Its unit.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self {
            Self::Set(kind) => kind.unit(),
            Self::Offset => Unit::Amp,
            Self::Gain | Self::UnseenLoads | Self::UnseenCharger | Self::Start => Unit::Percent,
        }
    }

    /// The least and the most that is taken, in its unit: wide enough for the card of any plan.
    #[must_use]
    pub const fn range(self) -> (f64, f64) {
        match self {
            Self::Set(kind) => match kind {
                Kind::Capacity => (0.001, 1e7),
                Kind::HourRate => (0.1, 240.0),
                Kind::FullVoltage => (0.1, 1e5),
                Kind::Tail => (0.001, 1e4),
                Kind::Hold => (0.0, 24.0),
                Kind::Efficiency => (1.0, 100.0),
                Kind::Exponent => (1.0, 2.0),
                Kind::SelfDischarge => (0.0, 100.0),
                Kind::Inside => (0.0, 1000.0),
                Kind::Threshold => (0.0, 1e5),
                Kind::Floor | Kind::Warn => (0.0, 99.0),
                Kind::Averaged => (0.01, 24.0),
            },
            Self::Offset => (-1000.0, 1000.0),
            Self::Gain => (-300.0, 300.0),
            Self::UnseenLoads | Self::UnseenCharger | Self::Start => (0.0, 100.0),
        }
    }
}

/// A figure that cannot be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Misset {
    /// Which.
    pub figure: Figure,
    /// What was given, in its unit.
    pub value: f64,
}

impl Gauge {
    /// The same gauge, if every figure of it can be.
    ///
    /// # Errors
    /// The first that cannot: no number, or out of [`Figure::range`].
    pub fn checked(self) -> Result<Self, Misset> {
        let efficiency = match self.efficiency {
            ChargeEfficiency::Flat(own) | ChargeEfficiency::FallingNearFull(own) => own * 100.0,
        };
        let set = Figure::Set;
        let unseen = self.unseen;
        let figures = [
            (set(Kind::Capacity), self.capacity.0),
            (set(Kind::HourRate), self.hour_rate.0),
            (set(Kind::FullVoltage), self.full_voltage.0),
            (set(Kind::Tail), self.tail.0),
            (set(Kind::Hold), self.hold.0),
            (set(Kind::Efficiency), efficiency),
            (set(Kind::Exponent), self.exponent),
            (set(Kind::SelfDischarge), self.self_discharge.0),
            (set(Kind::Inside), self.inside.0),
            (set(Kind::Threshold), self.threshold.0),
            (set(Kind::Floor), self.floor.0),
            (set(Kind::Averaged), self.averaged.0),
            (Figure::Offset, self.error.offset.0),
            (Figure::Gain, self.error.gain.0),
            (Figure::UnseenLoads, unseen.load.0),
            (Figure::UnseenCharger, unseen.solar.0),
            (Figure::UnseenCharger, unseen.engine.0),
            (Figure::UnseenCharger, unseen.others.0),
            (Figure::Start, self.start.unwrap_or_default() * 100.0),
        ];
        let wrong = figures.into_iter().find(|(figure, value)| {
            let (least, most) = figure.range();
            !(*value >= least && *value <= most)
        });
        wrong.map_or(Ok(self), |(figure, value)| Err(Misset { figure, value }))
    }
}
