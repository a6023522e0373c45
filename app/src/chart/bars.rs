//! Bars that only stretch: their heights as portions of the room they have, and a scale beside them.

use super::scale::{tick_label, ticks};
use sunlarder_engine::quantity::Within;

/// The largest finite value of a series, at least 0.
pub(crate) fn largest(values: impl IntoIterator<Item = f64>) -> f64 {
    values.into_iter().filter(|v| v.is_finite()).fold(0.0, f64::max)
}

/// How much of the room a value takes, 0 to 1; negative values and a largest of nothing take none.
pub(crate) fn share(value: f64, largest: f64) -> f64 {
    let share = value / largest;
    if share.is_finite() { share.within(0.0, 1.0) } else { 0.0 }
}

/// Round figures above zero for a scale that ends at `largest`: the share of the room and the figure.
pub(crate) fn scale(largest: f64, at_most: usize) -> Vec<(f64, String)> {
    let found = ticks(0.0, largest, at_most);
    let step = found.get(1).copied().unwrap_or(largest);
    found
        .into_iter()
        .skip(1)
        .map(|value| (share(value, largest), tick_label(value, step)))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_stay_within_their_room() {
        assert_eq!(share(30.0, 60.0), 0.5);
        assert_eq!(share(90.0, 60.0), 1.0);
        assert_eq!(share(-3.0, 60.0), 0.0);
        assert_eq!(share(0.0, 0.0), 0.0);
        assert_eq!(share(f64::NAN, 60.0), 0.0);
    }

    #[test]
    fn the_largest_ignores_what_is_no_number() {
        assert_eq!(largest([3.0, f64::NAN, 7.0, f64::INFINITY]), 7.0);
        assert_eq!(largest([]), 0.0);
        assert_eq!(largest([-4.0]), 0.0);
    }

    #[test]
    fn a_scale_has_round_figures_and_no_zero() {
        assert_eq!(scale(61.0, 3), [(50.0 / 61.0, "50".to_owned())]);
        assert_eq!(scale(0.0, 3), []);
        let figures: Vec<String> = scale(1.0, 2).into_iter().map(|(_, figure)| figure).collect();
        assert_eq!(figures, ["0.5", "1.0"]);
    }
}
