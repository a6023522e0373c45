//! How late one can arrive with a bank at its reserve and still leave with a full one.
//!
//! **Question answered:** what is the latest hour at which a bank that is down to its reserve is full again on the evening of the same day, of the
//! next, or of the one after?
//!
//! **Method.** The typical sky of the month in which the plan starts, its loads and its sources, by the one step in quarter-hours from every
//! whole hour of a day on. Full is where charging ends. **Left out:** dull days; where it is tight, the weather decides.

use super::Sizing;
use crate::quantity::AmpHours;
use crate::simulate::{Almanac, Day, Prepared, STEP, Sunlight};
use crate::system::System;

/// Days of a stay that are looked at.
pub const STAY_DAYS: usize = 3;
/// Hours of a day.
const HOURS: u8 = 24;
/// Steps of an hour.
const PARTS: usize = 4;

/// The latest arrival after which a bank at its reserve is full by the evening.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Arrival {
    /// In the typical sky of this month, January being 0.
    pub month: usize,
    /// Latest whole hour of the day of arrival, for a stay until the evening of that day, of the next, and of the one after; none if no hour is
    /// early enough.
    pub latest: [Option<u8>; STAY_DAYS],
}

impl Arrival {
    /// The last hour: whoever may arrive then may arrive whenever.
    pub const WHENEVER: u8 = HOURS - 1;

    /// The days of the shortest stay after which the bank is full, whenever one arrives early enough on the first.
    #[must_use]
    pub fn shortest(&self) -> Option<usize> {
        self.latest.iter().position(Option::is_some).map(|place| place + 1)
    }
}

impl Sizing {
    /// How late one can arrive with the bank at its reserve.
    #[must_use]
    pub fn arrival(&self) -> Arrival {
        let system = self.system();
        let mut sunlight = Sunlight::default();
        let mut almanac = Almanac::new(system, &mut sunlight);
        let month = almanac.month_of_start();
        let full = self.holds(system)[month];
        let days: Vec<Day> = (0..STAY_DAYS).map(|day| *almanac.day(month, day as u8)).collect();
        let mut latest = [None; STAY_DAYS];
        for hour in 0..HOURS {
            if let Some(first) = filled_on(system, full, &days, hour) {
                for latest in &mut latest[first..] {
                    *latest = Some(hour);
                }
            }
        }
        Arrival { month, latest }
    }
}

/// On which day a bank that is at its reserve at this hour of the first is full.
fn filled_on(system: &System, full: AmpHours, days: &[Day], hour: u8) -> Option<usize> {
    let bank = Prepared::new(&system.bank, full, STEP).with_generator(system.generator.as_ref());
    let mut state = bank.rested(system.bank.reserve.ratio());
    for (place, day) in days.iter().enumerate() {
        let from = if place == 0 { usize::from(hour) * PARTS } else { 0 };
        for forcing in day.iter().skip(from) {
            let after = bank.step(state, forcing, &mut ());
            if after.filled {
                return Some(place);
            }
            state = after.state;
        }
    }
    None
}
