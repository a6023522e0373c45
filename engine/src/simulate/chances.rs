//! What an ensemble answers: ranges over what it worked out.
//!
//! **Method.** Quantiles of 10, 50 and 90 %, straight between neighbouring results. Times to the reserve are over the runs;
//! everything a year or in ten years is over the blocks, each of which has a climate of its own: so the range holds the doubt
//! about the climate as well as chance.
//!
//! **How sure.** With the usual 40 blocks each edge of a range rests on the four outermost of them, so `words` says two
//! digits and no more.

use crate::bank::Ageing;

/// The middle of several results and the range that holds eight of ten.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Range {
    /// One of ten is lower.
    pub low: f64,
    /// Half are lower.
    pub middle: f64,
    /// One of ten is higher.
    pub high: f64,
}

impl Range {
    /// The range of some values, which are put in order; of none it is nothing.
    #[must_use]
    pub fn of(values: &mut [f64]) -> Self {
        values.sort_unstable_by(f64::total_cmp);
        Self {
            low: quantile(values, 0.1),
            middle: quantile(values, 0.5),
            high: quantile(values, 0.9),
        }
    }
}

/// A quantile of values in order, straight between its two neighbours.
fn quantile(sorted: &[f64], share: f64) -> f64 {
    let Some(last) = sorted.len().checked_sub(1) else { return 0.0 };
    let at = last as f64 * share;
    let below = (at as usize).min(last);
    let above = (below + 1).min(last);
    sorted[below] + (sorted[above] - sorted[below]) * (at - below as f64)
}

/// What a generator does in a year.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct GeneratorYears {
    /// Hours that it runs.
    pub hours: Range,
    /// Litres that it burns, if that is stated.
    pub fuel: Option<Range>,
}

/// How an ensemble answers.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Chances {
    /// Runs that are in it.
    pub runs: u32,
    /// Blocks of ten years that are in it.
    pub blocks: u32,
    /// State of charge after each whole hour from the start on, over the runs \[%\].
    pub band: Vec<Range>,
    /// Share of the runs that had reached the reserve by then.
    pub reached: Vec<f64>,
    /// Hours to the reserve over all runs; those that never reach it within the span count as the whole of it.
    pub to_reserve: Range,
    /// Of ten years, those in which the month stays over the reserve: January first.
    pub months_kept: [Range; 12],
    /// The same over all years of all blocks (ratio).
    pub months_share: [f64; 12],
    /// Hours a year under the reserve.
    pub low_hours: Range,
    /// Hours a year in which a load got less than it wanted.
    pub short_hours: Range,
    /// Share of the wanted charge that was not served.
    pub unserved: Range,
    /// Longest row of days, in ten years, that bring less than half of what is used; none without arrays.
    pub dull_days: Option<Range>,
    /// Most days between two on which the bank is full, in ten years.
    pub days_without_full: Range,
    /// What the generator does in a year; none without one.
    pub generator: Option<GeneratorYears>,
    /// How the bank ages in the middle one of the blocks; none where no life is held for its chemistry.
    pub ageing: Option<Ageing>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_range_holds_eight_of_ten() {
        let mut values: Vec<f64> = (0..=10).rev().map(f64::from).collect();
        assert_eq!(Range::of(&mut values), Range { low: 1.0, middle: 5.0, high: 9.0 });
        assert_eq!(Range::of(&mut []), Range::default());
        assert_eq!(Range::of(&mut [4.0]), Range { low: 4.0, middle: 4.0, high: 4.0 });
    }
}
