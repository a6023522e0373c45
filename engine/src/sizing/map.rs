//! The reliability map: bank size across, array size up, and at each the chance of keeping the promise.
//!
//! **Method.** A piece of work is one bank beside all arrays through some years: first every third bank through the first few, for a coarse
//! picture, then all of them through all, bank by bank, while somebody else may come to meet it from the largest. A year in which the
//! promise is broken beside every array is not gone through to its end. Counts are kept, so that another chance is read off without
//! another run.
//!
//! **Frontier.** For each bank the smallest array that keeps the promise, as far as no smaller bank does with as small an array.

use sunlarder_lanes::{Counting, Counts, Rows, Store, Track};

use super::axis::Axis;
use super::course::Course;
use super::promise::Promise;
use super::store::store;
use super::{MONTHS, Size, Sizing};
use crate::sky::DAYS_PER_YEAR;

/// Banks, and arrays, of a map.
pub const SIDE: usize = 24;
/// Every so many banks make the coarse map.
const COARSE: usize = 3;

/// Price or weight of a unit of bank and array, as somebody entered it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rates {
    /// For an amp-hour of the bank.
    pub bank_ah: f64,
    /// For a watt of the array.
    pub array_w: f64,
}

/// Years of the coarse map.
const EARLY: usize = 4;
/// Years of a row that are one piece of work: some milliseconds.
const AT_ONCE: usize = 3;
/// Days of hours that are one piece of work: some milliseconds.
const HOURS_AT_ONCE: usize = 4 * DAYS_PER_YEAR;

/// What comes next.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Stage {
    /// Hours from a stretch up to another.
    Hours { made: usize, until: usize },
    /// The first bank of the coarse map that is not known; all but so many of its banks, from the largest on, were given to somebody else.
    Coarse { given: usize },
    /// The next years of the first bank that is not whole.
    Fine,
    /// Nothing.
    Whole,
}

/// A map in the making.
#[derive(Clone, Debug)]
pub struct Map {
    course: Course,
    counting: Counting,
    /// Bank sizes.
    pub banks: Axis,
    /// Array sizes.
    pub arrays: Axis,
    /// Counts by bank, then by array, of as many years as are known.
    cells: Vec<Vec<Counts>>,
    /// The bank for which somebody else was asked last, and up to which year; those behind it are theirs, too.
    handed: (usize, usize),
    stage: Stage,
}

impl Map {
    /// A map of which nothing is known yet.
    #[must_use]
    pub fn new(sizing: &Sizing, promise: &Promise) -> Self {
        let [banks, arrays] = sizing.axes(promise);
        Self::over(sizing, promise, banks, arrays)
    }

    /// The same over sizes of one's own.
    #[must_use]
    pub fn over(sizing: &Sizing, promise: &Promise, banks: Axis, arrays: Axis) -> Self {
        let course = Course::of(sizing, promise);
        let until = course.within(EARLY);
        let cells = vec![Vec::new(); SIDE * SIDE];
        let stage = Stage::Hours { made: 0, until };
        let counting = promise.counting();
        Self { course, counting, banks, arrays, cells, handed: (SIDE, usize::MAX), stage }
    }

    /// What all its cells go through.
    #[must_use]
    pub fn course(&self) -> &Course {
        &self.course
    }

    /// Works out the next piece; whether there was one.
    pub fn advance(&mut self, sizing: &Sizing, rows: &mut dyn Rows) -> bool {
        match self.stage {
            Stage::Hours { made, until } => self.add_hours(sizing, rows, made, until),
            Stage::Coarse { given } => self.add_coarse(sizing, rows, given),
            Stage::Fine => self.go_on(sizing, rows),
            Stage::Whole => return false,
        }
        true
    }

    /// Hands the hours of the next days to whoever takes rows through them.
    fn add_hours(&mut self, sizing: &Sizing, rows: &mut dyn Rows, made: usize, until: usize) {
        if made == 0 {
            rows.begin(self.counting);
        }
        let piece = self.course.piece(made, HOURS_AT_ONCE);
        let end = piece.end.min(until);
        for stretch in &self.course.stretches[made.min(end)..end] {
            rows.add(stretch.unit, self.course.hours_of(sizing, stretch));
        }
        self.stage = match () {
            () if end < until => Stage::Hours { made: end, until },
            () if self.is_coarse() => Stage::Fine,
            () => Stage::Coarse { given: SIDE / COARSE },
        };
        if self.is_coarse() {
            self.take_in(rows);
            // The years of which no hour is missing.
            let ready = self.course.stretches.get(end).map_or(usize::MAX, |next| next.unit);
            self.give(sizing, rows, 0, ready);
        }
    }

    /// Works out the next bank of the coarse map, while somebody else may come to meet it there, too.
    fn add_coarse(&mut self, sizing: &Sizing, rows: &mut dyn Rows, given: usize) {
        self.take_in(rows);
        let early = self.early();
        let made = self.course.within(early);
        let mut missing = Self::coarse().filter(|bank| self.known(*bank) == 0);
        let Some(bank) = missing.next() else {
            self.stage = Stage::Hours { made, until: self.course.stretches.len() };
            return;
        };
        let next = Self::coarse().take(given).last().filter(|last| *last > bank);
        if let Some(last) = next {
            let (stores, arrays) = self.row_of(sizing, last);
            if rows.ahead(last, &stores, &arrays, 0..early) {
                self.stage = Stage::Coarse { given: given - 1 };
            }
        }
        self.row(sizing, rows, bank, early);
    }

    /// Banks of the coarse map.
    fn coarse() -> impl Iterator<Item = usize> {
        (0..SIDE / COARSE).map(|row| COARSE * row + COARSE / 2)
    }

    /// Years of which the coarse map is made.
    fn early(&self) -> usize {
        EARLY.min(self.course.years())
    }

    /// Share of the work that is done.
    #[must_use]
    pub fn done(&self) -> f64 {
        let share = |part: usize, of: usize| part as f64 / of.max(1) as f64;
        let stretches = self.course.stretches.len();
        // Measured: shares of the map that all hours and the coarse map take.
        const HOURS: f64 = 0.15;
        const FIRST: f64 = 0.08;
        match self.stage {
            Stage::Hours { made, .. } => {
                HOURS * share(made, stretches) + if self.is_coarse() { FIRST } else { 0.0 }
            }
            Stage::Coarse { .. } => {
                let hours = share(self.course.within(self.early()), stretches);
                let rows = Self::coarse().filter(|bank| self.known(*bank) > 0).count();
                HOURS * hours + FIRST * share(rows, SIDE / COARSE)
            }
            Stage::Fine => {
                let known = (0..SIDE).map(|bank| self.known(bank)).sum();
                let before = HOURS + FIRST;
                before + (1.0 - before) * share(known, SIDE * self.course.years())
            }
            Stage::Whole => 1.0,
        }
    }

    /// Whether the coarse map is there.
    #[must_use]
    pub fn is_coarse(&self) -> bool {
        Self::coarse().all(|bank| self.known(bank) > 0)
    }

    /// Whether all of it is there.
    #[must_use]
    pub fn is_whole(&self) -> bool {
        self.stage == Stage::Whole
    }

    /// Years that are known of a bank, whatever the array.
    fn known(&self, bank: usize) -> usize {
        self.cells.get(bank * SIDE).map_or(0, Vec::len)
    }

    /// Takes in what somebody else has done, asks for more of it from the largest bank on, and works out the next years of the
    /// smallest bank that nobody does; in the end of one that somebody has not brought yet.
    fn go_on(&mut self, sizing: &Sizing, rows: &mut dyn Rows) {
        let all = self.course.years();
        self.take_in(rows);
        let Some(bank) = (0..SIDE).find(|bank| self.known(*bank) < all) else {
            self.stage = Stage::Whole;
            return;
        };
        self.give(sizing, rows, bank, all);
        self.row(sizing, rows, bank, (self.known(bank) + AT_ONCE).min(all));
    }

    /// Takes in what somebody else has done.
    fn take_in(&mut self, rows: &mut dyn Rows) {
        while let Some((bank, first, counts)) = rows.taken() {
            // What was meanwhile worked out here, too, is the same.
            if first == self.known(bank) {
                self.keep(bank, &counts);
            }
        }
    }

    /// Asks somebody else for the next years of the largest bank that nobody does, before the year `ready` and behind a bank.
    fn give(&mut self, sizing: &Sizing, rows: &mut dyn Rows, bank: usize, ready: usize) {
        let all = self.course.years();
        let (mut last, mut from) = self.handed;
        // Of few years the coarse map has all.
        while last > bank && from >= all {
            last -= 1;
            from = self.known(last);
        }
        let until = (from + AT_ONCE).min(all).min(ready);
        if last > bank && from < until {
            let (stores, arrays) = self.row_of(sizing, last);
            if rows.ahead(last, &stores, &arrays, from..until) {
                self.handed = (last, until);
            }
        }
    }

    /// What a row is made of: the bank at a place, and all arrays.
    fn row_of(&self, sizing: &Sizing, bank: usize) -> ([Store; MONTHS], [f32; SIDE]) {
        let size = self.banks.sizes().get(bank).copied().unwrap_or_default();
        (sizing.stores(size), self.arrays.sizes().map(|array| array as f32))
    }

    /// One bank beside all arrays through the years up to one that are not yet known.
    fn row(&mut self, sizing: &Sizing, rows: &mut dyn Rows, bank: usize, until: usize) {
        let years = self.known(bank)..until;
        let (stores, arrays) = self.row_of(sizing, bank);
        let mut counts = vec![Counts::default(); SIDE * years.len()];
        rows.row(&stores, &arrays, years, &mut counts);
        self.keep(bank, &counts);
    }

    /// Keeps the next years of a bank: as many for each array.
    fn keep(&mut self, bank: usize, counts: &[Counts]) {
        let cells = self.cells.iter_mut().skip(bank * SIDE);
        for (cell, counts) in cells.zip(counts.chunks((counts.len() / SIDE).max(1))) {
            cell.extend_from_slice(counts);
        }
    }

    /// What happened at a bank and an array, by their places, until the year was lost beside every array; none while it is not known.
    #[must_use]
    pub fn counts(&self, bank: usize, array: usize) -> Option<&[Counts]> {
        self.cells.get(bank * SIDE + array).map(Vec::as_slice).filter(|cell| !cell.is_empty())
    }

    /// Chance of keeping a promise there (ratio); none while it is not known, and of one for which things are not counted like this.
    #[must_use]
    pub fn chance(&self, promise: &Promise, bank: usize, array: usize) -> Option<f64> {
        let counts = self.counts(bank, array).filter(|_| promise.counting() == self.counting)?;
        let trials = self.course.trials.get(..counts.len()).unwrap_or(&self.course.trials);
        Some(promise.chance_of(counts, trials))
    }

    /// The size at these places.
    #[must_use]
    pub fn size(&self, bank: usize, array: usize) -> Size {
        Size {
            bank: self.banks.sizes()[bank.min(SIDE - 1)],
            array: self.arrays.sizes()[array.min(SIDE - 1)],
        }
    }

    /// Places of the smallest combinations that keep a promise, from the smallest bank to the smallest array.
    #[must_use]
    pub fn frontier(&self, promise: &Promise) -> Vec<(usize, usize)> {
        let kept = |bank: usize, array: usize| self.keeps(promise, bank, array);
        let mut found: Vec<(usize, usize)> = Vec::new();
        for bank in 0..SIDE {
            let least = (0..SIDE).find(|array| kept(bank, *array));
            let smaller = found.last().map_or(SIDE, |last| last.1);
            found.extend(least.filter(|array| *array < smaller).map(|array| (bank, array)));
        }
        found
    }

    /// The smallest bank that keeps a promise beside an array of this size, between places of the axis; a guess, none if there is none.
    pub(super) fn least_bank(&self, promise: &Promise, array: f64) -> Option<f64> {
        let beside = self.arrays.nearest(array);
        self.banks.where_it_begins(|bank| self.keeps(promise, bank, beside))
    }

    /// The smallest array, likewise.
    pub(super) fn least_array(&self, promise: &Promise, bank: f64) -> Option<f64> {
        let beside = self.banks.nearest(bank);
        self.arrays.where_it_begins(|array| self.keeps(promise, beside, array))
    }

    fn keeps(&self, promise: &Promise, bank: usize, array: usize) -> bool {
        self.chance(promise, bank, array).is_some_and(|chance| promise.is_kept_by(chance))
    }

    /// The point of the frontier with the least sum of what its bank and array cost or weigh, and that sum.
    #[must_use]
    pub fn least_by(
        &self,
        sizing: &Sizing,
        promise: &Promise,
        rates: Rates,
    ) -> Option<(Size, f64)> {
        let system = sizing.system();
        let sum = |size: Size| {
            size.charge(system).0 * rates.bank_ah + size.power(system).0 * rates.array_w
        };
        let sizes = self.frontier(promise).into_iter().map(|(bank, array)| self.size(bank, array));
        sizes.map(|size| (size, sum(size))).min_by(|a, b| a.1.total_cmp(&b.1))
    }
}

impl Sizing {
    /// A bank of a size as the lanes need it, in each month.
    #[must_use]
    pub fn stores(&self, bank: f64) -> [Store; MONTHS] {
        let system = Size { bank, array: 1.0 }.of(self.system());
        self.holds(&system).map(|full| store(&system.bank, full, system.generator.as_ref()))
    }

    /// The hours of a course, ready for rows of sizes; everything that happens is counted.
    #[must_use]
    pub fn track(&self, course: &Course) -> Track {
        let mut track = Track::default();
        let trial_days = course.every.unwrap_or_default();
        track.begin(Counting { trial_days, ..Counting::default() });
        for stretch in &course.stretches {
            track.add(stretch.unit, course.hours_of(self, stretch));
        }
        track
    }
}
