//! The answer in one sentence, as a typed message.

use chrono::{Duration, NaiveDateTime};

use super::obstacle::Obstacle;
use crate::quantity::{AmpHours, Hours, Percent};
use crate::system::System;

/// What the plan comes to.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// Nothing is run, so there is nothing to answer.
    NothingRuns,
    /// It cannot work at all.
    CannotWork {
        /// The first reason.
        why: Obstacle,
    },
    /// It starts at or below its reserve.
    StartsBelowReserve {
        /// State of charge at the start.
        charge: Percent,
        /// The reserve.
        reserve: Percent,
    },
    /// In the mean weather of the month the reserve is never reached.
    KeepsUp {
        /// Whether it does so in all months.
        all_year: bool,
    },
    /// In the mean weather of the month the reserve is not reached within the longest run, yet the month does not hold its level.
    HoldsLong {
        /// Days of the run.
        days: u16,
        /// What is missing on a mean day.
        short: AmpHours,
    },
    /// In the mean weather of the month the reserve is reached.
    ReachesReserve {
        /// When, in clock time.
        at: NaiveDateTime,
        /// After how long.
        after: Hours,
    },
}

/// The clock time so many hours after the start, to the minute.
#[must_use]
pub fn clock_time(system: &System, after: Hours) -> NaiveDateTime {
    let minutes = f64::from(system.start.minute) + (after.0 * 60.0).round();
    system.start.date.and_time(chrono::NaiveTime::MIN) + Duration::minutes(minutes as i64)
}
