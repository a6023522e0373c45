//! The reliability map: bank size across, array size up, and at each the chance of keeping the promise.
//!
//! **Method.** Sizes grow in equal ratios from less than the plan needs or has to more than both. A piece of work is one bank beside some
//! arrays through the whole course: first every third bank beside every third array, for a coarse picture, then the rest, bank by bank.
//! Counts are kept, so that another chance, season or number of short days is read off without another run.
//!
//! **Frontier.** For each bank the smallest array that keeps the promise, as far as no smaller bank does with as small an array.

use super::course::Course;
use super::hours::Hour;
use super::lanes::{AMPLE, Lanes};
use super::promise::{Counts, Promise};
use super::store::Store;
use super::{MONTHS, Size, Sizing};

/// Banks, and arrays, of a map.
pub const SIDE: usize = 24;
/// Every so many banks and arrays make the coarse map.
const COARSE: usize = 3;
/// Arrays of the coarse map, and of the finest.
const FEW: usize = SIDE / COARSE;

/// Days that the smallest and the largest bank of a map last without a source, and arrays over one that brings in the tightest month what is
/// used in it.
const BANK_DAYS: (f64, f64) = (0.4, 14.0);
/// See there.
const BALANCE: (f64, f64) = (0.4, 6.0);
/// Where the sun brings next to nothing, so that more than so many of the plan's arrays would be in balance, arrays of a map go by the
/// plan's own.
const MOST_ARRAYS: f64 = 16.0;
/// See there.
const OWN_ARRAY: (f64, f64) = (0.25, 8.0);
/// A map reaches so far beyond the plan's own sizes.
const BEYOND: f64 = 1.5;

/// Sizes of a map, over those of the plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axis([f64; SIDE]);

impl Axis {
    /// From one size to another in equal ratios.
    #[must_use]
    pub fn between(least: f64, most: f64) -> Self {
        let ratio = libm::log(most / least) / (SIDE - 1) as f64;
        Self(core::array::from_fn(|place| least * libm::exp(ratio * place as f64)))
    }

    /// The sizes, the smallest first.
    #[must_use]
    pub fn sizes(&self) -> &[f64; SIDE] {
        &self.0
    }
}

/// Price or weight of a unit of bank and array, as somebody entered it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rates {
    /// For an amp-hour of the bank.
    pub bank_ah: f64,
    /// For a watt of the array.
    pub array_w: f64,
}

/// A map in the making.
#[derive(Clone, Debug)]
pub struct Map {
    course: Course,
    /// Bank sizes.
    pub banks: Axis,
    /// Array sizes.
    pub arrays: Axis,
    /// Counts by bank, then by array; none where nothing is known yet.
    cells: Vec<Option<Vec<Counts>>>,
    pieces: usize,
}

impl Sizing {
    /// The sizes that a map of a promise shows: of banks and of arrays.
    #[must_use]
    pub fn axes(&self, promise: &Promise) -> [Axis; 2] {
        let (need, brought) = self.daily[self.tightest(promise)];
        let usable = self.system().bank.slowest.0 * self.system().bank.reserve.remainder();
        let days = f64::max(need, 1e-3) / f64::max(usable, 1e-3);
        let balance = need / f64::max(brought, 1e-9);
        let arrays = if balance > 0.0 && balance < MOST_ARRAYS {
            (balance * BALANCE.0, balance * BALANCE.1)
        } else {
            OWN_ARRAY
        };
        let around = |(least, most): (f64, f64)| {
            let own = (1.0 / BEYOND, BEYOND);
            let least = if least < own.0 { least } else { own.0 };
            Axis::between(least, if most > own.1 { most } else { own.1 })
        };
        [around((days * BANK_DAYS.0, days * BANK_DAYS.1)), around(arrays)]
    }
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
        Self { course, banks, arrays, cells: vec![None; SIDE * SIDE], pieces: 0 }
    }

    /// What all its cells go through.
    #[must_use]
    pub fn course(&self) -> &Course {
        &self.course
    }

    /// Works out the next piece; whether there was one.
    pub fn advance(&mut self, sizing: &Sizing) -> bool {
        if self.course.advance(sizing) {
            return true;
        }
        let piece = self.pieces;
        self.pieces += 1;
        if piece < FEW {
            let bank = COARSE * piece + COARSE / 2;
            let arrays = core::array::from_fn(|place| COARSE * place + COARSE / 2);
            self.row::<FEW>(sizing, bank, arrays);
            return true;
        }
        let bank = piece - FEW;
        if bank < SIDE {
            self.row::<SIDE>(sizing, bank, core::array::from_fn(|place| place));
            return true;
        }
        self.pieces = piece;
        false
    }

    /// Share of the work that is done.
    #[must_use]
    pub fn done(&self) -> f64 {
        // Hours cost a tenth of what the cells do.
        0.1 * self.course.done() + 0.9 * self.pieces as f64 / (FEW + SIDE) as f64
    }

    /// Whether the coarse map is there.
    #[must_use]
    pub fn is_coarse(&self) -> bool {
        self.pieces >= FEW
    }

    /// One bank beside some arrays through the whole course.
    fn row<const N: usize>(&mut self, sizing: &Sizing, bank: usize, places: [usize; N]) {
        let array = places.map(|place| self.arrays.0[place] as f32);
        let counts = sizing.row(&self.course, self.banks.0[bank], array);
        for (place, counts) in places.into_iter().zip(counts) {
            self.cells[bank * SIDE + place] = Some(counts);
        }
    }

    /// What happened at a bank and an array, by their places; none while it is not known.
    #[must_use]
    pub fn counts(&self, bank: usize, array: usize) -> Option<&[Counts]> {
        self.cells.get(bank * SIDE + array)?.as_deref()
    }

    /// Chance of keeping a promise of the same course there (ratio).
    #[must_use]
    pub fn chance(&self, promise: &Promise, bank: usize, array: usize) -> Option<f64> {
        Some(promise.chance_of(self.counts(bank, array)?, &self.course.trials))
    }

    /// The size at these places.
    #[must_use]
    pub fn size(&self, bank: usize, array: usize) -> Size {
        Size { bank: self.banks.0[bank.min(SIDE - 1)], array: self.arrays.0[array.min(SIDE - 1)] }
    }

    /// Places of the smallest combinations that keep a promise, from the smallest bank to the smallest array.
    #[must_use]
    pub fn frontier(&self, promise: &Promise) -> Vec<(usize, usize)> {
        let kept = |bank: usize, array: usize| {
            self.chance(promise, bank, array).is_some_and(|chance| promise.is_kept_by(chance))
        };
        let mut found: Vec<(usize, usize)> = Vec::new();
        for bank in 0..SIDE {
            let least = (0..SIDE).find(|array| kept(bank, *array));
            let smaller = found.last().map_or(SIDE, |last| last.1);
            found.extend(least.filter(|array| *array < smaller).map(|array| (bank, array)));
        }
        found
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
        self.holds(&system).map(|full| Store::new(&system.bank, full, system.generator.as_ref()))
    }

    /// The first hours of a course, at most so many.
    #[must_use]
    pub fn hours(&self, promise: &Promise, most: usize) -> Vec<Hour> {
        let mut course = Course::of(self, promise);
        let _ = course.advance(self);
        let days = course.stretches.iter().flat_map(|stretch| &stretch.hours);
        days.flat_map(|day| day.hours).take(most).collect()
    }

    /// One bank beside arrays of these sizes through a whole course: what happened to each in each year.
    #[must_use]
    pub fn row<const N: usize>(
        &self,
        course: &Course,
        bank: f64,
        arrays: [f32; N],
    ) -> [Vec<Counts>; N] {
        let stores = self.stores(bank);
        let mut counts = core::array::from_fn(|_| vec![Counts::default(); course.years()]);
        let mut lanes = Lanes::full(arrays, &stores[0]);
        for stretch in &course.stretches {
            lanes.fill(&stores[0]);
            lanes.margin = [AMPLE; N];
            for (place, day) in stretch.hours.iter().enumerate() {
                let month = usize::from(day.month);
                lanes.pass(&stores[month], &day.hours);
                let (ends, began) = match course.every {
                    None => (true, month),
                    Some(every) => {
                        let began = place - place % every;
                        let began = usize::from(stretch.hours[began].month);
                        ((place + 1) % every == 0, began)
                    }
                };
                if ends {
                    for (counts, margin) in counts.iter_mut().zip(lanes.margin) {
                        counts[stretch.unit][began] += u8::from(margin < 0.0);
                    }
                    lanes.margin = [AMPLE; N];
                    if course.every.is_some() {
                        lanes.fill(&stores[0]);
                    }
                }
            }
        }
        counts
    }
}
