//! What of a simulated gauge a person turns to see it being fooled.

use super::counter::{Gauge, Unseen};
use super::misset::Figure;
use super::setting::Kind;
use crate::bank::ChargeEfficiency;
use crate::quantity::{AmpHours, Amps, Hours, Percent, Volts, Within};
use crate::system::System;

/// Minutes of an hour.
const MINUTES: f64 = 60.0;

/// A figure that is turned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Knob {
    /// The capacity that it was told.
    Capacity,
    /// The efficiency that it was told.
    Efficiency,
    /// From which voltage it may say full.
    FullVoltage,
    /// Up to which current.
    Tail,
    /// For how long.
    Hold,
    /// Under which current it counts nothing.
    Threshold,
    /// What it reads where nothing flows.
    Offset,
    /// By how much it reads too much.
    Gain,
    /// Which share of the loads does not pass its shunt.
    UnseenLoads,
    /// Which share of what charges most does not.
    UnseenCharger,
}

impl Knob {
    /// All of them, in the order in which they stand.
    pub const ALL: [Self; 10] = [
        Self::Capacity,
        Self::Efficiency,
        Self::FullVoltage,
        Self::Tail,
        Self::Hold,
        Self::Threshold,
        Self::Offset,
        Self::Gain,
        Self::UnseenLoads,
        Self::UnseenCharger,
    ];

    /// The figure that it is.
    #[must_use]
    pub const fn figure(self) -> Figure {
        match self {
            Self::Capacity => Figure::Set(Kind::Capacity),
            Self::Efficiency => Figure::Set(Kind::Efficiency),
            Self::FullVoltage => Figure::Set(Kind::FullVoltage),
            Self::Tail => Figure::Set(Kind::Tail),
            Self::Hold => Figure::Set(Kind::Hold),
            Self::Threshold => Figure::Set(Kind::Threshold),
            Self::Offset => Figure::Offset,
            Self::Gain => Figure::Gain,
            Self::UnseenLoads => Figure::UnseenLoads,
            Self::UnseenCharger => Figure::UnseenCharger,
        }
    }

    /// Its figure in a gauge, in its unit; a time in minutes.
    #[must_use]
    pub fn of(self, gauge: &Gauge) -> f64 {
        let Unseen { load, solar, engine, others } = gauge.unseen;
        match self {
            Self::Capacity => gauge.capacity.0,
            Self::Efficiency => match gauge.efficiency {
                ChargeEfficiency::Flat(own) | ChargeEfficiency::FallingNearFull(own) => own * 100.0,
            },
            Self::FullVoltage => gauge.full_voltage.0,
            Self::Tail => gauge.tail.0,
            Self::Hold => gauge.hold.0 * MINUTES,
            Self::Threshold => gauge.threshold.0,
            Self::Offset => gauge.error.offset.0,
            Self::Gain => gauge.error.gain.0,
            Self::UnseenLoads => load.0,
            Self::UnseenCharger => solar.0.max(engine.0).max(others.0),
        }
    }

    /// Turns it to a figure, for the system of a plan.
    pub fn turn(self, gauge: &mut Gauge, value: f64, system: &System) {
        match self {
            Self::Capacity => gauge.capacity = AmpHours(value),
            Self::Efficiency => gauge.efficiency = ChargeEfficiency::Flat(value / 100.0),
            Self::FullVoltage => gauge.full_voltage = Volts(value),
            Self::Tail => gauge.tail = Percent(value),
            Self::Hold => gauge.hold = Hours(value / MINUTES),
            Self::Threshold => gauge.threshold = Amps(value),
            Self::Offset => gauge.error.offset = Amps(value),
            Self::Gain => gauge.error.gain = Percent(value),
            Self::UnseenLoads => gauge.unseen.load = Percent(value),
            Self::UnseenCharger => {
                let load = gauge.unseen.load;
                gauge.unseen = Unseen { load, ..Unseen::of_charger(system, Percent(value)) };
            }
        }
    }

    /// From where to where a slider goes for the gauge of a card: wide enough for every [`Mistake`](super::Mistake), never over what is taken.
    #[must_use]
    pub fn span(self, card: &Gauge) -> (f64, f64) {
        let hours = |hours: f64| (card.capacity / Hours(hours)).0;
        let own = self.of(card);
        let (least, most) = match self {
            Self::Capacity => (own * 0.3, own * 2.0),
            Self::Efficiency => (own - 30.0, 100.0),
            Self::FullVoltage => (own * 0.9, own * 1.1),
            Self::Tail => (0.0, own * 6.0),
            Self::Hold => (0.0, MINUTES),
            Self::Threshold => (0.0, hours(40.0).max(own * 2.0)),
            Self::Offset => (-hours(200.0), hours(200.0)),
            Self::Gain => (-200.0, 100.0),
            Self::UnseenLoads | Self::UnseenCharger => (0.0, 100.0),
        };
        let (low, high) = self.figure().range();
        (least.within(low, high), most.within(low, high))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;
    use crate::gauge::{Card, Mistake};
    use crate::outlook::Outlook;
    use crate::place::Climate;

    /// What each mistake changes stands on the knobs, and turning them makes the same gauge.
    #[test]
    fn every_mistake_can_be_turned() {
        for text in [
            include_str!("../../../examples/boat.json"),
            include_str!("../../../examples/camper.json"),
        ] {
            let plan = Document::from_json(text).unwrap();
            let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
            let card = Card::of(&system, &Outlook::of(&system));
            for mistake in Mistake::ALL {
                let wrong = mistake.made(&card, &system);
                let mut turned = card.gauge();
                for knob in Knob::ALL {
                    let value = knob.of(&wrong);
                    let (least, most) = knob.span(&card.gauge());
                    assert!(value >= least && value <= most, "{mistake:?} {knob:?}: {value}");
                    knob.turn(&mut turned, value, &system);
                    assert!((knob.of(&turned) - value).abs() < 1e-9, "{mistake:?} {knob:?}");
                }
                assert!(turned.checked().is_ok(), "{mistake:?}");
                assert_eq!(turned.unseen, wrong.unseen, "{mistake:?}");
            }
        }
    }
}
