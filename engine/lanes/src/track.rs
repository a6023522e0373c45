//! All hours that sizes go through, and rows of sizes through them.

use core::ops::Range;

use crate::COMPACT;
use crate::hour::HoursOfDay;
use crate::lanes::{AMPLE, Lanes};
use crate::store::Store;

/// Months of a year.
pub const MONTHS: usize = 12;

/// What happened in the twelve months of a weather year: short days, or trials that failed.
pub type Counts = [u8; MONTHS];

/// Whoever takes rows of sizes through hours: [`Track`] in this program, or another program beside it.
pub trait Rows {
    /// Forgets all hours. Trials of so many days begin anew after each other; 0 where whole years are gone through.
    fn begin(&mut self, trial_days: usize);

    /// Takes over the hours of the next days, which follow each other; they count for this year, from 0.
    fn add(&mut self, year: usize, days: Vec<HoursOfDay>);

    /// One bank, as it is in each month, beside these arrays through the days of these years, each stretch of them from full. What happened
    /// is set in `counts`, which has a place for each array and, within it, for each year of the range.
    fn row(
        &mut self,
        stores: &[Store; MONTHS],
        arrays: &[f32],
        years: Range<usize>,
        counts: &mut [Counts],
    );
}

/// Hours by stretches of days, each of which begins with a full bank.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Track {
    trial_days: usize,
    stretches: Vec<(usize, Vec<HoursOfDay>)>,
}

/// Lanes that are stepped together: enough to fill vectors, few enough to stay at hand.
const MANY: usize = 24;
/// The same for what is left over.
const FEW: usize = 8;

impl Rows for Track {
    fn begin(&mut self, trial_days: usize) {
        self.trial_days = trial_days;
        self.stretches.clear();
    }

    fn add(&mut self, year: usize, days: Vec<HoursOfDay>) {
        self.stretches.push((year, days));
    }

    fn row(
        &mut self,
        stores: &[Store; MONTHS],
        arrays: &[f32],
        years: Range<usize>,
        counts: &mut [Counts],
    ) {
        let many = if COMPACT { 0 } else { arrays.len() / MANY * MANY };
        let (whole, rest) = arrays.split_at(many);
        let (first, last) = counts.split_at_mut((many * years.len()).min(counts.len()));
        if !COMPACT {
            self.parts::<MANY>(stores, whole, &years, first);
        }
        self.parts::<FEW>(stores, rest, &years, last);
    }
}

impl Track {
    /// Hours of all stretches.
    #[must_use]
    pub fn days(&self) -> impl Iterator<Item = &HoursOfDay> {
        self.stretches.iter().flat_map(|(_, days)| days)
    }

    /// The row, so many lanes at a time.
    fn parts<const N: usize>(
        &self,
        stores: &[Store; MONTHS],
        arrays: &[f32],
        years: &Range<usize>,
        counts: &mut [Counts],
    ) {
        let apart = (N * years.len()).max(1);
        for (arrays, counts) in arrays.chunks(N).zip(counts.chunks_mut(apart)) {
            let mut lanes = [0.0; N];
            // Lanes that nobody asked for go along with the last one.
            for (place, lane) in lanes.iter_mut().enumerate() {
                *lane = arrays.get(place).or(arrays.last()).copied().unwrap_or_default();
            }
            counts.fill(Counts::default());
            for (year, days) in self.stretches.iter().filter(|own| years.contains(&own.0)) {
                let at = |lane: usize| lane * years.len() + year - years.start;
                self.stretch(stores, lanes, days, &mut |lane, month| {
                    let count = counts.get_mut(at(lane)).and_then(|year| year.get_mut(month));
                    if let Some(count) = count {
                        *count = count.saturating_add(1);
                    }
                });
            }
        }
    }

    /// One bank beside arrays through one stretch; calls `short` with the lane and the month of whatever failed.
    fn stretch<const N: usize>(
        &self,
        stores: &[Store; MONTHS],
        arrays: [f32; N],
        days: &[HoursOfDay],
        short: &mut impl FnMut(usize, usize),
    ) {
        // Where whole years are gone through every day is counted, and none begins anew.
        let (length, anew) = (self.trial_days.max(1), self.trial_days > 0);
        let mut lanes = Lanes::full(arrays, &stores[0]);
        // A trial that the end of the stretch cuts short does not count.
        for trial in days.chunks_exact(length) {
            if anew {
                lanes.fill(&stores[0]);
            }
            lanes.margin = [AMPLE; N];
            for day in trial {
                let store = stores.get(usize::from(day.month)).unwrap_or(&stores[0]);
                lanes.pass(store, &day.hours);
            }
            let month = trial.first().map_or(0, |day| usize::from(day.month));
            for (lane, margin) in lanes.margin.iter().enumerate() {
                if *margin < 0.0 {
                    short(lane, month);
                }
            }
        }
    }
}
