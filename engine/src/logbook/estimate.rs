//! What was learned, with the interval that holds it nine times in ten.

use crate::quantity::Within;

/// Standard deviations of a normal number to either side of nine tenths of it.
pub(super) const NINE_TENTHS: f64 = 1.645;

/// A value with its 90 % interval, in the unit of its kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The best value.
    pub best: f64,
    /// Below this it lies one time in twenty.
    pub low: f64,
    /// Above this it lies one time in twenty.
    pub high: f64,
    /// Whether the readings tell it; otherwise it is hardly more than what was known before them.
    pub told: bool,
}

impl Estimate {
    /// How large it is, whichever way it goes, and whether it goes the other way: under zero.
    #[must_use]
    pub fn size(&self) -> (Self, bool) {
        if self.best >= 0.0 {
            return (*self, false);
        }
        (Self { best: -self.best, low: -self.high, high: -self.low, told: self.told }, true)
    }

    /// Of a normal number.
    pub(super) fn normal(mean: f64, spread: f64, told: bool) -> Self {
        let half = NINE_TENTHS * spread;
        Self { best: mean, low: mean - half, high: mean + half, told }
    }

    /// The same within bounds.
    pub(super) fn within(self, low: f64, high: f64) -> Self {
        Self {
            best: self.best.within(low, high),
            low: self.low.within(low, high),
            high: self.high.within(low, high),
            ..self
        }
    }

    /// Whether it holds a value.
    #[must_use]
    pub fn holds(&self, value: f64) -> bool {
        value >= self.low && value <= self.high
    }
}

/// What Student's number stands at in place of 1.645, for so many degrees of freedom; within a hundredth of it from 3 on.
pub(super) fn student(freedom: f64) -> f64 {
    let over = 1.0 / freedom;
    NINE_TENTHS + over * (1.524 + over * (1.42 + over * 1.6))
}

/// The mean, and the points that one and nineteen of twenty parts lie below, of weights on a row of values that rises.
pub(super) fn points(values: &[f64], weights: &[f64]) -> (f64, f64, f64, f64) {
    let all: f64 = weights.iter().sum();
    let mean = values.iter().zip(weights).map(|(value, weight)| value * weight).sum::<f64>() / all;
    let variance =
        values.iter().zip(weights).map(|(v, w)| (v - mean) * (v - mean) * w).sum::<f64>() / all;
    // Each value stands for the stretch half-way to its neighbours.
    let edge = |at: usize| -> f64 {
        let value = |at: usize| values.get(at).copied().unwrap_or(mean);
        if at == 0 {
            value(0)
        } else if at >= values.len() {
            value(values.len() - 1)
        } else {
            f64::midpoint(value(at - 1), value(at))
        }
    };
    let point = |part: f64| {
        let mut sum = 0.0;
        for (at, weight) in weights.iter().enumerate() {
            let next = sum + weight / all;
            if next >= part && next > sum {
                return edge(at) + (edge(at + 1) - edge(at)) * (part - sum) / (next - sum);
            }
            sum = next;
        }
        mean
    };
    (mean, point(0.05), point(0.95), variance.sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn students_number_is_that_of_the_table() {
        for (freedom, table) in [(3.0, 2.353), (5.0, 2.015), (10.0, 1.812), (30.0, 1.697)] {
            assert!((student(freedom) - table).abs() < 0.02, "{freedom}: {}", student(freedom));
        }
    }

    #[test]
    fn a_size_has_its_ends_in_order_whichever_way_it_goes() {
        let own = Estimate { best: -3.9, low: -5.0, high: 0.5, told: true };
        let (size, other_way) = own.size();
        assert_eq!((size.low, size.best, size.high, other_way), (-0.5, 3.9, 5.0, true));
        assert_eq!(size.size(), (size, false));
    }

    #[test]
    fn points_of_a_normal_row() {
        let values: Vec<f64> = (-400..=400).map(|at| f64::from(at) / 100.0).collect();
        let weights: Vec<f64> = values.iter().map(|v| libm::exp(-v * v / 2.0)).collect();
        let (mean, low, high, spread) = points(&values, &weights);
        assert!(mean.abs() < 1e-9 && (spread - 1.0).abs() < 0.01);
        assert!((low + 1.645).abs() < 0.02 && (high - 1.645).abs() < 0.02, "{low} {high}");
    }
}
