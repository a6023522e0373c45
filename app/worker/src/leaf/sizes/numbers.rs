//! The numbers that go along with the map, so that the page can read it out: one flat list.

use sunlarder_engine::sizing::map::SIDE;

/// Share done, chance of the plan as it is, then banks \[Ah\], arrays \[W\], and chances by bank and then by array (ratio); what is not known
/// is less than nothing. Without a map the list ends after the second.
#[derive(Clone, Copy, Debug)]
pub struct SizesNumbers<'a>(pub &'a [f64]);

/// Banks \[Ah\], arrays \[W\], and chances by bank and then by array (ratio) as far as they are known.
type Known = ([f64; SIDE], [f64; SIDE], Vec<Option<f64>>);

/// What stands before the sizes.
const HEAD: usize = 2;
/// What is not known.
const UNKNOWN: f64 = -1.0;

impl SizesNumbers<'_> {
    /// Banks and arrays of the map.
    pub const SIDE: usize = SIDE;

    /// The list of these.
    #[must_use]
    pub(super) fn list(done: f64, standing: Option<f64>, map: Option<Known>) -> Vec<f64> {
        let mut list = vec![done, standing.unwrap_or(UNKNOWN)];
        if let Some((banks, arrays, chances)) = map {
            list.extend(banks);
            list.extend(arrays);
            list.extend(chances.into_iter().map(|own| own.unwrap_or(UNKNOWN)));
        }
        list
    }

    /// The share that is done; nothing yet of an empty list.
    #[must_use]
    pub fn done(&self) -> f64 {
        self.0.first().copied().unwrap_or(0.0)
    }

    /// The chance of the plan as it is, if it is known.
    #[must_use]
    pub fn standing(&self) -> Option<f64> {
        self.0.get(1).copied().filter(|own| *own >= 0.0)
    }

    /// Whether there is a map.
    #[must_use]
    pub fn is_map(&self) -> bool {
        self.0.len() == HEAD + 2 * SIDE + SIDE * SIDE
    }

    /// Bank, array, and the chance there as far as it is known, at a place of the map.
    #[must_use]
    pub fn at(&self, bank: usize, array: usize) -> Option<(f64, f64, Option<f64>)> {
        let sizes = self.0.get(HEAD..)?;
        let (banks, arrays, chances) =
            (sizes.get(..SIDE)?, sizes.get(SIDE..2 * SIDE)?, sizes.get(2 * SIDE..)?);
        let chance = *chances.get(bank * SIDE + array)?;
        Some((*banks.get(bank)?, *arrays.get(array)?, Some(chance).filter(|own| *own >= 0.0)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_listed_is_read() {
        let banks: [f64; SIDE] = core::array::from_fn(|at| 10.0 + at as f64);
        let arrays: [f64; SIDE] = core::array::from_fn(|at| 100.0 + at as f64);
        let chances = (0..SIDE * SIDE).map(|at| (at != 5).then_some(at as f64 / 1000.0)).collect();
        let list = SizesNumbers::list(0.4, Some(0.7), Some((banks, arrays, chances)));
        let read = SizesNumbers(&list);
        assert!(read.is_map());
        assert_eq!((read.done(), read.standing()), (0.4, Some(0.7)));
        assert_eq!(read.at(1, 2), Some((11.0, 102.0, Some(0.026))));
        assert_eq!(read.at(0, 5), Some((10.0, 105.0, None)));
        assert_eq!(read.at(SIDE, 0), None);
        let few = SizesNumbers::list(0.1, None, None);
        assert!(!SizesNumbers(&few).is_map());
        assert_eq!((SizesNumbers(&few).standing(), SizesNumbers(&[]).done()), (None, 0.0));
        assert_eq!(SizesNumbers(&few).at(0, 0), None);
    }
}
