//! Readings as a plan keeps them.

use chrono::{NaiveTime, Timelike};

use crate::document::{ClockTime, Document, Field, List, Logbook, Logged, LoggedCharge};
use crate::quantity::{AmpHours, Amps, Percent, Volts};
use crate::system::System;

use super::paste::Pasted;
use super::reading::{Bounds, GaugeSetUp, Part, Reading, Readings, Shown, Slip};

impl From<&Logged> for Reading {
    fn from(own: &Logged) -> Self {
        let minutes = u32::from(own.time.0);
        let time = NaiveTime::from_hms_opt(minutes / 60, minutes % 60, 0).unwrap_or_default();
        Self {
            at: own.date.and_time(time),
            shown: match own.shown {
                LoggedCharge::Nothing => None,
                LoggedCharge::Percent(own) => Some(Shown::Percent(Percent(own))),
                LoggedCharge::Left(own) => Some(Shown::Left(AmpHours(own))),
                LoggedCharge::Taken(own) => Some(Shown::Taken(AmpHours(own))),
            },
            volts: own.volts.map(Volts),
            amps: own.amps.map(Amps),
        }
    }
}

/// A value as a plan keeps it; what no plan keeps is a slip.
fn kept(part: Part, field: Field, value: f64) -> Result<f64, Slip> {
    let range = field.range();
    let (least, most) = (range.min, range.max);
    let holds = range.holds(value);
    let rounded = range.rounded(value);
    holds.then_some(rounded).ok_or(Slip::OutOfRange { part, value, least, most })
}

impl Reading {
    /// It as a plan keeps it, in the resolutions of its fields.
    ///
    /// # Errors
    /// Why no plan can keep it.
    pub fn logged(&self) -> Result<Logged, Slip> {
        let time = self.at.time();
        let charge = |field, own: AmpHours| kept(Part::AmpHours, field, own.0);
        let own = Logged {
            date: self.at.date(),
            time: ClockTime((time.hour() * 60 + time.minute()) as u16),
            shown: match self.shown {
                None => LoggedCharge::Nothing,
                Some(Shown::Percent(own)) => {
                    LoggedCharge::Percent(kept(Part::Percent, Field::ReadPercent, own.0)?)
                }
                Some(Shown::Left(own)) => LoggedCharge::Left(charge(Field::ReadLeft, own)?),
                Some(Shown::Taken(own)) => LoggedCharge::Taken(charge(Field::ReadTaken, own)?),
            },
            volts: self.volts.map(|own| kept(Part::Volts, Field::ReadVolts, own.0)).transpose()?,
            amps: self.amps.map(|own| kept(Part::Amps, Field::ReadAmps, own.0)).transpose()?,
        };
        if own.is_in_years() { Ok(own) } else { Err(Slip::OutsideYears) }
    }
}

impl GaugeSetUp {
    /// What a plan says that its gauge was told; else as the bank is rated and its chemistry usually is.
    #[must_use]
    pub fn stated(plan: &Document, system: &System) -> Self {
        let own = plan.logbook.as_ref();
        let capacity = own.and_then(|own| own.capacity_ah).map(AmpHours);
        let efficiency = own.and_then(|own| own.efficiency_pct).map(|own| Percent(own).ratio());
        Self {
            capacity: capacity.unwrap_or(system.bank.rated),
            efficiency: efficiency.unwrap_or(system.bank.mean_efficiency),
        }
    }
}

impl Readings {
    /// Those of a plan; what cannot be used is given back by its place among them, with the reason.
    #[must_use]
    pub fn stated(plan: &Document, system: &System) -> (Self, Vec<(usize, Slip)>) {
        let all = plan.logbook.iter().flat_map(|own| &own.readings).map(Reading::from);
        Self::of(&all.collect::<Vec<_>>(), &Bounds::of(system.bank.nominal, system.bank.rated))
    }
}

/// What became of pasted readings.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Taken {
    /// The logbook with them.
    pub logbook: Logbook,
    /// How many are new.
    pub new: usize,
    /// How many were there already.
    pub known: usize,
    /// How many found no room: the oldest, old ones and new ones alike.
    pub dropped: usize,
    /// Lines that were not taken, by their number from 1.
    pub slips: Vec<(usize, Slip)>,
}

impl Taken {
    /// Puts pasted readings to those of a plan.
    #[must_use]
    pub fn of(plan: &Document, pasted: &Pasted) -> Self {
        let logbook = plan.logbook.clone().unwrap_or_default();
        let mut own = Self { logbook, slips: pasted.slips.clone(), ..Self::default() };
        for (reading, line) in pasted.readings.iter().zip(&pasted.lines) {
            match reading.logged() {
                Ok(logged) => own.take(logged, *line),
                Err(slip) => own.slips.push((*line, slip)),
            }
        }
        own
    }

    fn take(&mut self, logged: Logged, line: usize) {
        let same = |own: &&Logged| (own.date, own.time) == (logged.date, logged.time);
        match self.logbook.readings.iter().find(same) {
            None => {
                self.logbook.add(logged);
                self.new += 1;
                if self.logbook.readings.len() > List::Readings.limit() {
                    self.logbook.readings.remove(0);
                    self.dropped += 1;
                }
            }
            Some(own) if *own == logged => self.known += 1,
            Some(_) => self.slips.push((line, Slip::Twice)),
        }
    }
}
