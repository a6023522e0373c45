//! What sizes there are to be had: whole batteries and whole strings of modules as the plan has them.
//!
//! **Method.** A bank grows by one more of the plan's own strings of batteries in parallel, arrays by the least step at which every one of
//! them has whole strings. **Left out:** batteries and modules of other sizes than the plan's own.

use super::Size;
use super::axis::Axis;
use crate::document::{Document, Field};
use crate::quantity::Within as _;

/// So little of a unit is none.
const SLIVER: f64 = 1e-6;

/// The least steps by which bank and arrays of a plan can grow in whole batteries and modules, over its own size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Units {
    /// One string of batteries.
    pub bank: f64,
    /// One string of modules, or as many as leave every array with whole ones.
    pub array: f64,
    /// Batteries of a step, and modules.
    batteries: f64,
    modules: f64,
    /// Most steps.
    most: (f64, f64),
}

/// A size that is to be had: how many there are of it, and at which factor over the plan's own size it lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Whole {
    /// Batteries or modules.
    pub count: u32,
    /// Over the plan's own size.
    pub factor: f64,
}

fn common(a: f64, b: f64) -> f64 {
    if b < 0.5 { a } else { common(b, a.turned(b)) }
}

impl Units {
    /// Those of a plan.
    #[must_use]
    pub fn of(plan: &Document) -> Self {
        let bank = &plan.bank;
        let strings = bank.in_parallel.round().max(1.0);
        let arrays = || plan.arrays.iter().filter(|array| array.on);
        let parallel = arrays().map(|array| array.in_parallel.round().max(1.0));
        let shared = parallel.clone().reduce(common).unwrap_or(1.0);
        let most = Field::InParallel.range().max;
        let widest = parallel.reduce(f64::max).unwrap_or(1.0);
        Self {
            bank: 1.0 / strings,
            array: 1.0 / shared,
            batteries: bank.in_series,
            modules: arrays().map(|array| array.in_series * array.in_parallel).sum::<f64>()
                / shared,
            most: (most, (most * shared / widest + SLIVER).floor()),
        }
    }

    /// The least whole size that is no smaller; as it is where there are not that many.
    #[must_use]
    pub fn raised(&self, size: Size) -> Size {
        let up = |own: f64, unit: f64, most: f64| {
            let count = libm::ceil(own / unit - SLIVER);
            if count <= most { count * unit } else { own }
        };
        Size {
            bank: up(size.bank, self.bank, self.most.0).max(self.bank),
            array: up(size.array, self.array, self.most.1),
        }
    }

    /// Whole banks within an axis, the smallest first.
    #[must_use]
    pub fn banks(&self, axis: &Axis) -> Vec<Whole> {
        within(axis, self.bank, self.batteries, self.most.0)
    }

    /// Whole arrays within an axis, the smallest first.
    #[must_use]
    pub fn arrays(&self, axis: &Axis) -> Vec<Whole> {
        within(axis, self.array, self.modules, self.most.1)
    }
}

fn within(axis: &Axis, unit: f64, each: f64, most: f64) -> Vec<Whole> {
    let (first, last) = (axis.sizes()[0], axis.sizes()[axis.sizes().len() - 1]);
    let from = libm::ceil(first / unit - SLIVER).max(1.0) as u32;
    let to = libm::floor(f64::min(last / unit + SLIVER, most)) as u32;
    let count = |strings: u32| (f64::from(strings) * each + 0.5) as u32;
    (from..=to)
        .map(|strings| Whole { count: count(strings), factor: f64::from(strings) * unit })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Array, Bank};

    #[test]
    fn whole_batteries_and_modules_stand_at_their_factors() {
        let plan = Document {
            bank: Bank { in_series: 2.0, in_parallel: 2.0, ..Bank::default() },
            arrays: vec![
                Array { in_parallel: 2.0, ..Array::default() },
                Array { in_parallel: 4.0, in_series: 3.0, ..Array::default() },
            ],
            ..Document::default()
        };
        let units = Units::of(&plan);
        assert_eq!((units.bank, units.array), (0.5, 0.5));
        let axis = Axis::between(0.4, 2.0);
        let banks: Vec<_> = units.banks(&axis).iter().map(|own| (own.count, own.factor)).collect();
        assert_eq!(banks, [(2, 0.5), (4, 1.0), (6, 1.5), (8, 2.0)]);
        // 2 and 4 strings of 3 are 14 modules; half of them 7.
        assert_eq!(units.arrays(&axis)[0], Whole { count: 7, factor: 0.5 });
        let raised = units.raised(Size { bank: 1.01, array: 1.5 });
        assert_eq!(raised, Size { bank: 1.5, array: 1.5 });
        let none = units.raised(Size { bank: 0.1, array: 0.0 });
        assert_eq!(none, Size { bank: 0.5, array: 0.0 });
    }
}
