//! All hours that sizes go through, and rows of sizes through them.

use core::ops::Range;

use crate::hour::HoursOfDay;
use crate::lanes::{AMPLE, Lanes};
use crate::store::Store;

/// Months of a year.
pub const MONTHS: usize = 12;

/// What happened in the twelve months of a weather year, or in those before it was left ([`Counting`]): short days, or trials that failed.
pub type Counts = [u8; MONTHS];

/// How what happens is counted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counting {
    /// Days of a trial, each of which begins anew after the other; 0 where whole years are gone through.
    pub trial_days: usize,
    /// The months that decide, as bits from January on.
    pub months: u16,
    /// A year is left once so much has happened in those months beside every array of a row, as more of it changes nothing; 0 where
    /// everything is counted.
    pub enough: u16,
}

/// Whoever takes rows of sizes through hours: [`Track`] in this program, or another program beside it.
pub trait Rows {
    /// Forgets all hours, and counts like this from now on.
    fn begin(&mut self, counting: Counting);

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

    /// Has a row worked out meanwhile by somebody else, under a number by which it comes back; false if nobody is free.
    fn ahead(
        &mut self,
        _number: usize,
        _stores: &[Store; MONTHS],
        _arrays: &[f32],
        _years: Range<usize>,
    ) -> bool {
        false
    }

    /// A row that somebody else has worked out since [`begin`](Self::begin), if there is one that was not given yet: its number, its first
    /// year and the counts.
    fn taken(&mut self) -> Option<(usize, usize, Vec<Counts>)> {
        None
    }
}

/// Hours by stretches of days, each of which begins with a full bank.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Track {
    counting: Counting,
    stretches: Vec<Stretch>,
}

/// Days in a row.
#[derive(Clone, Debug, PartialEq)]
struct Stretch {
    /// The year for which they count.
    year: usize,
    days: Vec<HoursOfDay>,
}

/// Lanes that are stepped together: enough to fill vectors, few enough to stay at hand. A step of twelve costs a lane a fifth more in browsers
/// and three times as much natively.
pub const LANES: usize = 24;
impl Rows for Track {
    fn begin(&mut self, counting: Counting) {
        self.counting = counting;
        self.stretches.clear();
    }

    fn add(&mut self, year: usize, days: Vec<HoursOfDay>) {
        self.stretches.push(Stretch { year, days });
    }

    fn row(
        &mut self,
        stores: &[Store; MONTHS],
        arrays: &[f32],
        years: Range<usize>,
        counts: &mut [Counts],
    ) {
        let apart = (LANES * years.len()).max(1);
        for (arrays, counts) in arrays.chunks(LANES).zip(counts.chunks_mut(apart)) {
            // Lanes that nobody asked for go along with the last one.
            let last = arrays.last().copied().unwrap_or_default();
            let mut lanes = [last; LANES];
            lanes[..arrays.len()].copy_from_slice(arrays);
            counts.fill(Counts::default());
            for stretch in self.stretches.iter().filter(|own| years.contains(&own.year)) {
                let short = |lane: usize, month: usize| {
                    let at = lane * years.len() + stretch.year - years.start;
                    let count = counts.get_mut(at).and_then(|year| year.get_mut(month));
                    if let Some(count) = count {
                        *count = count.saturating_add(1);
                    }
                };
                with_widest(
                    #[inline(always)]
                    || self.through(stores, lanes, &stretch.days, short),
                );
            }
        }
    }
}

/// Does a piece of work, whatever is inlined into it, with the widest vectors that the processor has.
#[cfg(target_arch = "x86_64")]
fn with_widest(work: impl FnOnce()) {
    pulp::Arch::new().dispatch(work);
}

/// Does a piece of work with the vectors that the program is built for.
#[cfg(not(target_arch = "x86_64"))]
fn with_widest(work: impl FnOnce()) {
    work();
}

impl Track {
    /// The days of all stretches.
    pub fn days(&self) -> impl Iterator<Item = &HoursOfDay> {
        self.stretches.iter().flat_map(|stretch| &stretch.days)
    }

    /// One bank beside arrays through a stretch; calls `short` with the lane and the month of whatever failed.
    #[inline(always)]
    fn through(
        &self,
        stores: &[Store; MONTHS],
        arrays: [f32; LANES],
        days: &[HoursOfDay],
        mut short: impl FnMut(usize, usize),
    ) {
        // Where whole years are gone through every day is counted, and none begins anew.
        let Counting { trial_days, months, enough } = self.counting;
        let (length, anew) = (trial_days.max(1), trial_days > 0);
        let mut happened = [0_u16; LANES];
        let mut lanes = Lanes::full(arrays, &stores[0]);
        // A trial that the end of the stretch cuts short does not count.
        for trial in days.chunks_exact(length) {
            if anew {
                lanes.fill(&stores[0]);
            }
            lanes.margin = [AMPLE; LANES];
            for day in trial {
                let store = &stores[usize::from(day.month) % MONTHS];
                for hour in &day.hours {
                    lanes.pass(store, hour);
                }
            }
            let month = trial.first().map_or(0, |day| usize::from(day.month));
            let decides = months >> month & 1;
            for (lane, (margin, happened)) in lanes.margin.iter().zip(&mut happened).enumerate() {
                if *margin < 0.0 {
                    short(lane, month);
                    *happened = happened.saturating_add(decides);
                }
            }
            if enough > 0 && happened.iter().all(|own| *own >= enough) {
                return;
            }
        }
    }
}
