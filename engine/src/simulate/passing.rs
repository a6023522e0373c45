//! Quarter-hours as they truly pass: what a gauge on the wall could have seen, beside what was so.
//!
//! **Question answered.** From the start of the plan on, through weather that might be: what flowed and which voltage stood between
//! the posts in each quarter-hour, and how full was the bank?
//!
//! **Method.** The one step of this engine, in quarter-hours, from the date, the clock time and the state of charge of the start, in
//! one of the weathers of an ensemble, hour by hour.
//!
//! **Left out.** What [`Acting`] leaves out. A bank that changes its capacity with the month keeps its state of charge; wear.

use chrono::{Datelike, Days};

use super::acting::Acting;
use super::flows::Flows;
use super::prepared::Prepared;
use super::run::STEP;
use super::year::day_of_weather;
use crate::quantity::{AmpHours, Volts};
use crate::sky::{STEPS_PER_DAY, Weather};
use crate::system::System;

/// Quarter-hours of an hour.
const PARTS: usize = STEPS_PER_DAY / 24;

/// A quarter-hour that passed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Passed {
    /// State of charge before it (ratio).
    pub before: f64,
    /// State of charge after it (ratio).
    pub charge: f64,
    /// Voltage between the posts.
    pub volts: Volts,
    /// What flowed.
    pub flows: Flows,
    /// Whether charging has ended.
    pub filled: bool,
}

/// Takes a system from its start through so many days of weather that might be; `full` is what the bank holds in each month, `number`
/// says which of the weathers of an ensemble. The last day may be a part of one, as the first is.
pub fn pass(
    system: &System,
    full: [AmpHours; 12],
    (weather, number): (&Weather, u32),
    days: usize,
    each: &mut dyn FnMut(&Passed),
) {
    let banks = full.map(|full| {
        Prepared::new(&system.bank, full, STEP).with_generator(system.generator.as_ref())
    });
    let tables = Acting::new(system);
    let mut replica = weather.replica(number);
    let start = system.start.date;
    let mut year = (start.year(), replica.next_year());
    let first = usize::from(system.start.minute) * STEPS_PER_DAY / (24 * 60);
    let mut state = banks[start.month0() as usize].rested(system.start.charge);
    let mut left = days * STEPS_PER_DAY;
    for place in 0..=days {
        let Some(date) = start.checked_add_days(Days::new(place as u64)) else { return };
        if date.year() != year.0 {
            year = (date.year(), replica.next_year());
        }
        let weekday = date.weekday().num_days_from_monday() as usize;
        let acting = tables.day(&year.1, day_of_weather(date), weekday);
        let bank = &banks[date.month0() as usize];
        let from = if place == 0 { first } else { 0 };
        for at in from..STEPS_PER_DAY {
            if left == 0 {
                return;
            }
            left -= 1;
            let before = state.charge;
            let after = bank.step(state, &acting[at / PARTS], &mut ());
            state = after.state;
            let (volts, flows, filled) = (after.volts, after.flows, after.filled);
            each(&Passed { before, charge: state.charge, volts, flows, filled });
        }
    }
}
