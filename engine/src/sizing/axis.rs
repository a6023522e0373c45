//! The sizes that a map shows, of banks and of arrays: in equal ratios from less than the plan needs or has to more than both.

use super::Sizing;
use super::map::SIDE;
use super::promise::Promise;

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

    /// The place of the size nearest to one, in ratios.
    pub(super) fn nearest(&self, size: f64) -> usize {
        let off = |place: usize| f64::max(self.0[place] / size, size / self.0[place]);
        (0..SIDE).min_by(|a, b| off(*a).total_cmp(&off(*b))).unwrap_or_default()
    }

    /// Between the last place at which something is not yet so and the first at which it is; none if it is so nowhere.
    pub(super) fn where_it_begins(&self, so: impl Fn(usize) -> bool) -> Option<f64> {
        let first = (0..SIDE).find(|place| so(*place))?;
        Some(libm::sqrt(self.0[first.max(1) - 1] * self.0[first]))
    }
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
