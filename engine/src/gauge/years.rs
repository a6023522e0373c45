//! A gauge through several years of weather: the least and the most of what came of it.

use super::trial::Trial;
use crate::quantity::Hours;

/// The least and the most of a gauge's years.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Years {
    /// How many.
    pub count: usize,
    /// How often it set itself to full in a mean month.
    pub fulls_a_month: (f64, f64),
    /// The longest time without full.
    pub longest_since_full: (Hours, Hours),
    /// The most that it showed over the truth, in the best and in the worst year (ratio).
    pub over: (f64, f64),
    /// The most that it showed under it (ratio).
    pub under: (f64, f64),
}

impl Years {
    /// Those of trials of one gauge; none if there are none.
    pub fn of(trials: &mut dyn Iterator<Item = Trial>) -> Option<Self> {
        let one = |trial: Trial| {
            let (fulls, longest) = (trial.fulls_a_month(), trial.longest_since_full);
            Self {
                count: 1,
                fulls_a_month: (fulls, fulls),
                longest_since_full: (longest, longest),
                over: (trial.over, trial.over),
                under: (trial.under, trial.under),
            }
        };
        let both = |own: (f64, f64), other: (f64, f64)| (own.0.min(other.0), own.1.max(other.1));
        trials.map(one).reduce(|own, other| {
            let (least, most) = (own.longest_since_full, other.longest_since_full);
            Self {
                count: own.count + other.count,
                fulls_a_month: both(own.fulls_a_month, other.fulls_a_month),
                longest_since_full: (least.0.at_most(most.0), least.1.at_least(most.1)),
                over: both(own.over, other.over),
                under: both(own.under, other.under),
            }
        })
    }
}
