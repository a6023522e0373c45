//! How the clearness of the days of a month is distributed.
//!
//! **Method.** The clearness is a logistic curve of a normal number between two bounds (a logit-normal distribution):
//! `K = low + (high − low)/(1 + exp(−(μ + s·z)))`. The bounds follow from mean and spread; μ and s are found so that both
//! come out right, by Newton's method on 61 nodes of the normal number.
//!
//! **Why.** The usual family with one parameter (Bendt, Collares-Pereira & Rabl 1981) takes the spread from the mean. On
//! measured decades it is far too wide in the tropics.
//!
//! **Range.** Means of 0.08 to 0.80, spreads of 0.02 to 0.26; what lies outside is held there, and so is a
//! spread that would leave no days between the bounds (0.15 and more at a mean of 0.1; months of polar twilight only).

use crate::quantity::Within;

/// Fitted means.
const MEANS: (f64, f64) = (0.08, 0.80);
/// Fitted spreads.
const SPREADS: (f64, f64) = (0.02, 0.26);
/// Clearness of the darkest days, our own fit to measured decades.
const DARKEST: f64 = 0.04;
/// Most of the spread that days at the two bounds alone would have: nearer to it the distribution is a mere toss.
const MOST_OF_WIDEST: f64 = 0.8;
/// Nodes of the normal number, from −4.5 to 4.5: the rest weighs less than 1e-5.
const NODES: usize = 61;
const FIRST_NODE: f64 = -4.5;
const NODE_STEP: f64 = 0.15;
/// The fit ends when mean and spread of the logistic are met within this; they are then good to 13 digits, because the
/// error of Newton's method squares from step to step.
const CLOSE_ENOUGH: f64 = 1e-7;
/// Newton's method takes 3 to 8 steps in the whole range; this only bounds it.
const MOST_STEPS: usize = 40;
/// Largest change of μ and of the logarithm of s in a step, which keeps the method from jumping off.
const LONGEST_STEP: f64 = 0.7;

/// Weights of the nodes, which add up to 1.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Nodes([f64; NODES]);

impl Nodes {
    pub(crate) fn new() -> Self {
        let weights: [f64; NODES] = core::array::from_fn(|place| {
            let node = node(place);
            libm::exp(-node * node / 2.0)
        });
        let sum: f64 = weights.iter().sum();
        Self(weights.map(|weight| weight / sum))
    }
}

fn node(place: usize) -> f64 {
    FIRST_NODE + NODE_STEP * place as f64
}

/// The distribution of daily clearness in a month.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Marginal {
    /// Lower bound.
    pub(crate) low: f64,
    /// Upper bound.
    pub(crate) high: f64,
    /// μ, the logit of the median.
    pub(crate) middle: f64,
    /// s, the slope of the logit.
    pub(crate) slope: f64,
}

/// Mean and spread of the logistic of `middle + slope·z`, and how they change with both.
#[derive(Default)]
struct Moments {
    mean: f64,
    spread: f64,
    mean_by_middle: f64,
    mean_by_slope: f64,
    spread_by_middle: f64,
    spread_by_slope: f64,
}

impl Moments {
    fn of(middle: f64, slope: f64, nodes: &Nodes) -> Self {
        let mut at = Self::default();
        let (mut squares, mut squares_by_middle, mut squares_by_slope) = (0.0, 0.0, 0.0);
        for (place, weight) in nodes.0.iter().enumerate() {
            let node = node(place);
            let share = logistic(middle + slope * node);
            let rise = weight * share * (1.0 - share);
            at.mean += weight * share;
            squares += weight * share * share;
            at.mean_by_middle += rise;
            at.mean_by_slope += rise * node;
            squares_by_middle += 2.0 * share * rise;
            squares_by_slope += 2.0 * share * rise * node;
        }
        at.spread = libm::sqrt((squares - at.mean * at.mean).max(f64::MIN_POSITIVE));
        let halved = 0.5 / at.spread;
        at.spread_by_middle = (squares_by_middle - 2.0 * at.mean * at.mean_by_middle) * halved;
        at.spread_by_slope = (squares_by_slope - 2.0 * at.mean * at.mean_by_slope) * halved;
        at
    }
}

fn logistic(logit: f64) -> f64 {
    1.0 / (1.0 + libm::exp(-logit))
}

impl Marginal {
    /// The distribution of a mean and a spread (standard deviation) of daily clearness.
    pub(crate) fn fit(mean: f64, spread: f64, nodes: &Nodes) -> Self {
        let (mean, spread) = held(mean, spread);
        let low = DARKEST.min(mean / 2.0);
        let high = (0.72 + 0.10 * mean).max(mean + spread);
        let share = (mean - low) / (high - low);
        let widest = MOST_OF_WIDEST * libm::sqrt(share * (1.0 - share));
        let start = libm::log(share / (1.0 - share));
        let width = (spread / (high - low)).min(widest);
        let slope = width / (share * (1.0 - share));
        Self { low, high, middle: start, slope }.refined(share, width, nodes)
    }

    /// Newton's method on μ and ln s, so that s stays positive, for mean and spread between the bounds (0 to 1).
    fn refined(mut self, mean: f64, spread: f64, nodes: &Nodes) -> Self {
        for _ in 0..MOST_STEPS {
            let at = Moments::of(self.middle, self.slope, nodes);
            let (mean_off, spread_off) = (mean - at.mean, spread - at.spread);
            let (mean_by_log, spread_by_log) =
                (at.mean_by_slope * self.slope, at.spread_by_slope * self.slope);
            let whole = at.mean_by_middle * spread_by_log - mean_by_log * at.spread_by_middle;
            let middle = (mean_off * spread_by_log - spread_off * mean_by_log) / whole;
            let log = (spread_off * at.mean_by_middle - mean_off * at.spread_by_middle) / whole;
            if !(middle.is_finite() && log.is_finite()) {
                break;
            }
            self.middle += middle.within(-LONGEST_STEP, LONGEST_STEP);
            self.slope *= libm::exp(log.within(-LONGEST_STEP, LONGEST_STEP));
            if mean_off.abs() < CLOSE_ENOUGH && spread_off.abs() < CLOSE_ENOUGH {
                break;
            }
        }
        self
    }

    /// The clearness of a normal number.
    #[inline]
    pub(crate) fn clearness(&self, normal: f64) -> f64 {
        self.low + (self.high - self.low) * logistic(self.middle + self.slope * normal)
    }
}

/// Mean and spread as far as they can be fitted.
pub(crate) fn held(mean: f64, spread: f64) -> (f64, f64) {
    let mean = if mean.is_nan() { MEANS.0 } else { mean.within(MEANS.0, MEANS.1) };
    let spread = if spread.is_nan() { SPREADS.0 } else { spread.within(SPREADS.0, SPREADS.1) };
    (mean, spread)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Mean, spread, bounds, μ and s as a damped fixed point finds them, to four digits.
    const FITS: [[f64; 6]; 6] = [
        [0.27, 0.17, 0.0400, 0.7470, -1.0033, 1.4320],
        [0.45, 0.10, 0.0400, 0.7650, 0.2859, 0.6068],
        [0.50, 0.16, 0.0400, 0.7700, 0.6752, 1.1607],
        [0.67, 0.09, 0.0400, 0.7870, 1.9661, 0.9562],
        [0.12, 0.07, 0.0400, 0.7320, -2.3830, 0.9979],
        [0.78, 0.05, 0.0400, 0.8300, 3.1005, 0.9943],
    ];

    #[test]
    fn fits_agree_with_another_method() {
        let nodes = Nodes::new();
        for [mean, spread, low, high, middle, slope] in FITS {
            let fit = Marginal::fit(mean, spread, &nodes);
            let found = [fit.low, fit.high, fit.middle, fit.slope];
            for (found, expected) in found.into_iter().zip([low, high, middle, slope]) {
                assert!((found - expected).abs() < 5.1e-5, "{mean} {spread}: {fit:?}");
            }
        }
    }

    #[test]
    fn mean_and_spread_come_out_right_in_the_whole_range() {
        let nodes = Nodes::new();
        for mean in (8..=80).map(|percent| f64::from(percent) / 100.0) {
            for spread in (2..=26).map(|percent| f64::from(percent) / 100.0) {
                let fit = Marginal::fit(mean, spread, &nodes);
                let at = Moments::of(fit.middle, fit.slope, &nodes);
                let width = fit.high - fit.low;
                let widest = MOST_OF_WIDEST * (at.mean * (1.0 - at.mean)).sqrt();
                let spread = spread.min(widest * width);
                let (got, wide) = (fit.low + width * at.mean, width * at.spread);
                assert!((got - mean).abs() < 1e-9, "{mean} {spread}: {fit:?} {got}");
                assert!((wide - spread).abs() < 1e-9, "{mean} {spread}: {fit:?} {wide}");
            }
        }
    }

    #[test]
    fn what_is_no_climate_is_held_in_range() {
        let nodes = Nodes::new();
        for (mean, spread) in [(f64::NAN, f64::NAN), (-1.0, 9.0), (9.0, -1.0), (f64::INFINITY, 0.1)]
        {
            let fit = Marginal::fit(mean, spread, &nodes);
            for normal in [-6.0, 0.0, 6.0] {
                assert!((0.0..=1.1).contains(&fit.clearness(normal)), "{fit:?}");
            }
        }
    }
}
