//! The section of what a gauge was told and showed: its logbook.

use chrono::NaiveDate;

use super::schedule::ClockTime;
use super::{LAST_DAY, first_date};

/// What a gauge showed of the charge.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum LoggedCharge {
    /// Nothing was noted.
    #[default]
    Nothing,
    /// Of full \[%\].
    Percent(f64),
    /// What is left \[Ah\].
    Left(f64),
    /// What was taken since full \[Ah\].
    Taken(f64),
}

/// A reading; whatever was not noted is nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Logged {
    /// The day.
    pub date: NaiveDate,
    /// By the clock of the place.
    pub time: ClockTime,
    /// What the gauge showed.
    pub shown: LoggedCharge,
    /// Voltage between the posts of the bank \[V\].
    pub volts: Option<f64>,
    /// Current through the shunt, into the bank positive \[A\].
    pub amps: Option<f64>,
}

impl Default for Logged {
    fn default() -> Self {
        let shown = LoggedCharge::Nothing;
        Self { date: first_date(), time: ClockTime(0), shown, volts: None, amps: None }
    }
}

/// Minutes in a day.
const DAY: u64 = 1440;

impl Logged {
    /// Whether it is of the years that a plan knows.
    #[must_use]
    pub fn is_in_years(&self) -> bool {
        super::walk::date_in_range(self.date)
    }

    /// Minutes since the first date allowed.
    pub(crate) fn minute(&self) -> u64 {
        let days = self.date.signed_duration_since(first_date()).num_days().max(0) as u64;
        days * DAY + u64::from(self.time.0)
    }

    /// Puts it at a minute; nothing if no plan reaches there.
    pub(crate) fn put_at(&mut self, minute: u64) -> Option<()> {
        let day = minute / DAY;
        if day > u64::from(LAST_DAY) {
            return None;
        }
        self.date = first_date() + chrono::Days::new(day);
        self.time = ClockTime((minute % DAY) as u16);
        Some(())
    }
}

/// What the gauge of a plan was told, and what it showed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Logbook {
    /// The capacity that it was told \[Ah\]; else the rated one of the bank.
    pub capacity_ah: Option<f64>,
    /// The charge efficiency that it was told \[%\]; else the usual one of the bank.
    pub efficiency_pct: Option<f64>,
    /// What it showed, the oldest first.
    pub readings: Vec<Logged>,
}

impl Logbook {
    /// Adds a reading behind all that are no later.
    pub fn add(&mut self, reading: Logged) {
        let at = self.readings.partition_point(|own| own.minute() <= reading.minute());
        self.readings.insert(at, reading);
    }

    /// Puts the readings in order, those of the same minute as they stood.
    pub(super) fn put_in_order(&mut self) {
        if self.readings.is_sorted_by_key(Logged::minute) {
            return;
        }
        for reading in core::mem::take(&mut self.readings) {
            self.add(reading);
        }
    }
}
