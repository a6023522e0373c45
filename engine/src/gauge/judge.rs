//! What a reading that is typed back says about a system.

use super::sheet::{Check, METERS_LEAST, METERS_SHARE, Point};
use crate::quantity::{Amps, Unit, Volts};

/// What was read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// The figure; 1 for done and 0 for not done where there is none.
    pub value: f64,
    /// What the gauge showed of a current beside the clamp meter, where discharge counts below nothing; of a drop the current at which
    /// it was read.
    pub beside: Option<f64>,
}

/// What a reading means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Judged {
    /// As it should be.
    Pass,
    /// Off, by so much in the unit of the check, and what to do.
    Off {
        /// Over what passes if above nothing, under it if below.
        by: f64,
        /// What to do.
        todo: Todo,
    },
}

/// What to do about a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Todo {
    /// It was not done: do it before anything is switched on.
    DoIt,
    /// Plus and minus are exchanged: connect nothing.
    Reversed,
    /// The bank is too low, or not the one of the plan.
    NotThisBank,
    /// The insulation was not measured or does not suffice: a licensed person.
    Insulation,
    /// Something draws or the gauge is not at nothing: clamp meter first, then its own zero.
    Zero,
    /// The gauge shows charging for discharging: its two leads are exchanged.
    LeadsExchanged,
    /// The gauge sees little or none of it: the load is ahead of the shunt.
    Ahead,
    /// The gauge shows another figure: the shunt that it was told.
    OtherShunt,
    /// The gauge is right, the load takes less or more than the plan says: correct the plan.
    CorrectPlan,
    /// More is lost than the cable takes: contacts, lugs, fuse holder, a thinner or longer cable.
    Contacts,
    /// A set-point differs: set it by the maker's sheet, and the plan too.
    SetPoint,
    /// It did not set itself to full: were voltage, tail and time met? Only then by hand.
    NotSetToFull,
}

/// A reading that cannot be one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unread {
    /// Of which check.
    pub point: Point,
    /// What was typed.
    pub value: f64,
    /// The least that is taken.
    pub least: f64,
    /// The most.
    pub most: f64,
}

/// Of what the clamp meter reads, a gauge that sees less than this does not see the load.
const SEEN: f64 = 0.5;
/// The highest current and voltage that are taken.
const MOST: f64 = 2000.0;

/// What is taken as a reading.
const fn range(point: &Point) -> (f64, f64) {
    match point.unit() {
        None => (0.0, 1.0),
        Some(Unit::Percent) => (0.0, 100.0),
        Some(_) => (-MOST, MOST),
    }
}

impl Check {
    /// What a reading means.
    ///
    /// # Errors
    /// A reading that cannot be one: no number, or outside of what such a figure can be.
    pub fn judge(&self, reading: &Reading) -> Result<Judged, Unread> {
        let (point, (least, most)) = (self.point, range(&self.point));
        for value in core::iter::once(reading.value).chain(reading.beside) {
            if !(value >= least && value <= most) {
                return Err(Unread { point, value, least, most });
            }
        }
        if let (Point::LoadCurrent(_), Some(gauge)) = (point, reading.beside)
            && let Some(off) = meters(reading.value, gauge)
        {
            return Ok(off);
        }
        if let (Point::Drop { .. }, Some(current)) = (point, reading.beside) {
            let own = Reading { beside: None, ..*reading };
            return self.at_current(Amps(current.abs())).judge(&own);
        }
        // Clamp meters are held either way round.
        let value = match point {
            Point::LoadCurrent(_) | Point::Drop { .. } => reading.value.abs(),
            _ => reading.value,
        };
        // What is expected may be no number; then nothing passes.
        if value >= self.least && value <= self.most {
            return Ok(Judged::Pass);
        }
        let by = if value < self.least { value - self.least } else { value - self.most };
        Ok(Judged::Off { by, todo: self.todo(value) })
    }

    fn todo(&self, value: f64) -> Todo {
        match self.point {
            Point::Polarity if value < 0.0 => Todo::Reversed,
            Point::Polarity => Todo::NotThisBank,
            Point::Tightness => Todo::DoIt,
            Point::Insulation(_) => Todo::Insulation,
            Point::ZeroCurrent => Todo::Zero,
            Point::LoadCurrent(_) => Todo::CorrectPlan,
            Point::Drop { .. } => Todo::Contacts,
            Point::Absorption | Point::Float | Point::CutOff => Todo::SetPoint,
            Point::FirstFull => Todo::NotSetToFull,
        }
    }

    /// The same check at another current than was expected: a drop grows with it.
    #[must_use]
    pub fn at_current(&self, own: Amps) -> Self {
        match self.point {
            Point::Drop { run, current } if current.0 > 0.0 && own.0 > 0.0 && own.0 <= MOST => {
                let by = own / current;
                let drop = Volts(self.expected.unwrap_or_default()) * by;
                Self {
                    point: Point::Drop { run, current: own },
                    expected: Some(drop.0),
                    most: self.most * by,
                    ..*self
                }
            }
            _ => *self,
        }
    }
}

/// How a gauge differs from a clamp meter that reads a load, if it does.
fn meters(clamp: f64, gauge: f64) -> Option<Judged> {
    let clamp = clamp.abs();
    let within = METERS_LEAST.0.max(METERS_SHARE.ratio() * clamp);
    // A load discharges, which counts below nothing.
    let by = -gauge - clamp;
    if by.abs() <= within {
        return None;
    }
    let todo = if (gauge - clamp).abs() <= within && clamp > within {
        Todo::LeadsExchanged
    } else if -gauge < clamp * SEEN {
        Todo::Ahead
    } else {
        Todo::OtherShunt
    };
    Some(Judged::Off { by, todo })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fitting::RunKind;

    fn load() -> Check {
        Check { point: Point::LoadCurrent(0), expected: Some(10.0), least: 7.5, most: 12.5 }
    }

    fn judged(check: &Check, value: f64, gauge: Option<f64>) -> Judged {
        check.judge(&Reading { value, beside: gauge }).unwrap()
    }

    fn todo(check: &Check, value: f64, gauge: Option<f64>) -> Option<Todo> {
        match judged(check, value, gauge) {
            Judged::Pass => None,
            Judged::Off { todo, .. } => Some(todo),
        }
    }

    #[test]
    fn gauge_and_clamp_meter_are_held_against_each_other_before_the_plan() {
        assert_eq!(todo(&load(), 10.0, Some(-10.4)), None);
        assert_eq!(todo(&load(), -10.0, Some(-10.0)), None, "the clamp was held the other way");
        assert_eq!(todo(&load(), 10.0, Some(10.1)), Some(Todo::LeadsExchanged));
        assert_eq!(todo(&load(), 10.0, Some(0.0)), Some(Todo::Ahead));
        assert_eq!(todo(&load(), 10.0, Some(-15.0)), Some(Todo::OtherShunt));
        assert_eq!(todo(&load(), 14.0, Some(-14.0)), Some(Todo::CorrectPlan));
        assert_eq!(judged(&load(), 14.0, None), Judged::Off { by: 1.5, todo: Todo::CorrectPlan });
        assert_eq!(judged(&load(), 5.0, None), Judged::Off { by: -2.5, todo: Todo::CorrectPlan });
    }

    #[test]
    fn a_drop_is_judged_at_the_current_of_the_moment() {
        let point = Point::Drop { run: RunKind::Inverter, current: Amps(20.0) };
        let check = Check { point, expected: Some(0.2), least: 0.0, most: 0.27 };
        assert_eq!(todo(&check, 0.26, None), None);
        assert_eq!(todo(&check, 0.3, None), Some(Todo::Contacts));
        let half = check.at_current(Amps(10.0));
        assert!((half.expected.unwrap() - 0.1).abs() < 1e-12);
        assert_eq!(todo(&half, 0.2, None), Some(Todo::Contacts));
        let unknown = Check { most: f64::NAN, ..check };
        assert_eq!(
            todo(&unknown, 0.1, None),
            Some(Todo::Contacts),
            "what is not known passes nothing"
        );
    }

    #[test]
    fn what_is_done_or_not_and_what_is_reversed_is_told() {
        let tight = Check { point: Point::Tightness, expected: None, least: 1.0, most: 1.0 };
        assert_eq!((todo(&tight, 1.0, None), todo(&tight, 0.0, None)), (None, Some(Todo::DoIt)));
        let pole = Check { point: Point::Polarity, expected: Some(12.6), least: 11.0, most: 14.4 };
        assert_eq!(todo(&pole, -12.6, None), Some(Todo::Reversed));
        assert_eq!(todo(&pole, 9.0, None), Some(Todo::NotThisBank));
        assert_eq!(todo(&pole, 12.7, None), None);
    }

    #[test]
    fn what_cannot_be_a_reading_is_refused_with_its_range() {
        let refused = load().judge(&Reading { value: f64::NAN, beside: None }).unwrap_err();
        assert!(refused.value.is_nan() && (refused.least, refused.most) == (-2000.0, 2000.0));
        let gauge = load().judge(&Reading { value: 1.0, beside: Some(1e9) });
        assert_eq!(gauge.unwrap_err().value, 1e9);
        let full =
            Check { point: Point::FirstFull, expected: Some(100.0), least: 99.0, most: 100.0 };
        assert!(full.judge(&Reading { value: 101.0, beside: None }).is_err());
        assert_eq!(todo(&full, 97.0, None), Some(Todo::NotSetToFull));
    }
}
