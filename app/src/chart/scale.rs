//! Where a value stands on an axis, and which values get a tick.

use sunlarder_engine::quantity::Within;

use crate::store::words;

/// A straight map from a domain of values to a range of pixels; either may run backwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Linear {
    domain: (f64, f64),
    range: (f64, f64),
}

impl Linear {
    /// A map that takes the ends of `domain` to the ends of `range`.
    pub(crate) const fn new(domain: (f64, f64), range: (f64, f64)) -> Self {
        Self { domain, range }
    }

    /// The pixel of `value`, kept within the range. A domain without extent puts everything in the middle.
    pub(crate) fn at(self, value: f64) -> f64 {
        let (from, to) = self.range;
        from + (to - from) * portion(value, self.domain)
    }
}

/// How far `value` lies from the first end of `span` to the second, 0 to 1. The halves keep the widest spans finite.
fn portion(value: f64, (from, to): (f64, f64)) -> f64 {
    let way = (value / 2.0 - from / 2.0) / (to / 2.0 - from / 2.0);
    if way.is_finite() { way.within(0.0, 1.0) } else { 0.5 }
}

/// Round values from `low` to `high`, in steps of 1, 2 or 5 times a power of ten, at most `at_most` steps.
///
/// Empty when there is nothing to divide: no extent, no steps, or ends that are no numbers.
pub(crate) fn ticks(low: f64, high: f64, at_most: usize) -> Vec<f64> {
    let Some(step) = round_step((high - low) / at_most as f64) else { return Vec::new() };
    // A hair of slack, so that an end which is a multiple but for rounding keeps its tick.
    const SLACK: f64 = 1e-9;
    let first = (low / step - SLACK).ceil();
    let last = (high / step + SLACK).floor();
    if !(first.is_finite() && last.is_finite()) {
        return Vec::new();
    }
    (0..=at_most).map(|i| first + i as f64).take_while(|n| *n <= last).map(|n| n * step).collect()
}

/// The smallest of 1, 2 or 5 times a power of ten that is not below `rough`.
fn round_step(rough: f64) -> Option<f64> {
    if !(rough.is_finite() && rough > 0.0) {
        return None;
    }
    let power = 10_f64.powi(rough.log10().floor() as i32);
    // Again a hair of slack: 0.2 / 0.1 must not count as more than two.
    let step =
        [1.0, 2.0, 5.0, 10.0].map(|n| n * power).into_iter().find(|s| *s >= rough * 0.999_999)?;
    (step.is_normal()).then_some(step)
}

/// A tick's figure, with as many decimals as its step needs; in powers of ten beyond a million.
pub(crate) fn tick_label(value: f64, step: f64) -> String {
    if value.abs() >= 1e6 {
        let power = value.abs().log10().floor() as i32;
        return format!("{}e{power}", words().decimal(value / 10_f64.powi(power), 3));
    }
    let decimals = (-step.abs().log10().floor()).within(0.0, 6.0);
    words().padded(value, decimals as u32)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_scale_maps_a_domain_to_a_range() {
        let percent = Linear::new((0.0, 100.0), (260.0, 10.0));
        assert_eq!(percent.at(0.0), 260.0);
        assert_eq!(percent.at(100.0), 10.0);
        assert_eq!(percent.at(50.0), 135.0);
    }

    #[test]
    fn a_scale_keeps_to_its_frame() {
        let scale = Linear::new((0.0, 10.0), (0.0, 300.0));
        assert_eq!(scale.at(-5.0), 0.0);
        assert_eq!(scale.at(1e300), 300.0);
        assert_eq!(scale.at(f64::NEG_INFINITY), 150.0);
    }

    #[test]
    fn a_scale_without_extent_stands_in_the_middle() {
        assert_eq!(Linear::new((7.0, 7.0), (0.0, 300.0)).at(7.0), 150.0);
    }

    #[test]
    fn a_scale_spans_the_widest_domain() {
        let all = Linear::new((-f64::MAX, f64::MAX), (0.0, 300.0));
        assert_eq!(all.at(0.0), 150.0);
        assert_eq!(all.at(f64::MAX), 300.0);
    }

    #[test]
    fn ticks_are_round() {
        assert_eq!(ticks(0.0, 100.0, 4), [0.0, 50.0, 100.0]);
        assert_eq!(ticks(0.0, 100.0, 5), [0.0, 20.0, 40.0, 60.0, 80.0, 100.0]);
        assert_eq!(ticks(0.0, 61.0, 3), [0.0, 50.0]);
        assert_eq!(ticks(-3.0, 7.5, 4), [0.0, 5.0]);
        assert_eq!(ticks(-6.0, 7.5, 5), [-5.0, 0.0, 5.0]);
    }

    #[test]
    fn ticks_survive_rounding_at_their_ends() {
        let tenths = ticks(0.0, 0.1 + 0.2, 3);
        assert_eq!(tenths.len(), 4);
        assert!((tenths[3] - 0.3).abs() < 1e-12);
    }

    #[test]
    fn ticks_of_any_size_stay_few_and_inside() {
        for size in [1e-300, 1e-12, 0.7, 1.0, 42.0, 9.9e5, 1e300] {
            let found = ticks(0.0, size, 4);
            assert!((2..=5).contains(&found.len()), "{size}: {found:?}");
            assert!(
                found.iter().all(|t| (0.0..=size * 1.000_001).contains(t)),
                "{size}: {found:?}"
            );
        }
    }

    #[test]
    fn nothing_to_divide_has_no_ticks() {
        for (low, high, steps) in [
            (5.0, 5.0, 4),
            (5.0, 1.0, 4),
            (0.0, f64::NAN, 4),
            (-f64::MAX, f64::MAX, 4),
            (0.0, 1.0, 0),
        ] {
            assert_eq!(ticks(low, high, steps), [0.0; 0], "{low} to {high} in {steps}");
        }
    }

    #[test]
    fn labels_have_the_decimals_of_their_step() {
        assert_eq!(tick_label(50.0, 25.0), "50");
        assert_eq!(tick_label(0.5, 0.5), "0.5");
        assert_eq!(tick_label(0.02, 0.02), "0.02");
        assert_eq!(tick_label(-20.0, 20.0), "-20");
        assert_eq!(tick_label(2e6, 1e6), "2e6");
        assert_eq!(tick_label(1.5e300, 5e299), "1.5e300");
    }
}
