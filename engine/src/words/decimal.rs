//! Numbers with a point, for attributes, styles and boxes that people type in.
//!
//! Made with whole numbers. Rust's own writing of floats takes tables and code of its own, and nothing on the page needs more than
//! a few decimals.

/// A number with at most `digits` decimals and no idle zeros. What is no number is 0; beyond about 10¹⁸ units of the last
/// decimal, it stays there.
#[must_use]
pub fn decimal(value: f64, digits: u32) -> String {
    let text = padded(value, digits);
    if digits == 0 {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A number with exactly `digits` decimals, halves away from zero; otherwise as [`decimal`].
#[must_use]
pub fn padded(value: f64, digits: u32) -> String {
    let units = 10_u64.pow(digits.min(MOST));
    // The cast makes 0 of what is no number and stops at the ends of i64.
    let count = (value * units as f64).round() as i64;
    let sign = if count < 0 { "-" } else { "" };
    let (whole, rest) = (count.unsigned_abs() / units, count.unsigned_abs() % units);
    if digits == 0 {
        return format!("{sign}{whole}");
    }
    let width = digits.min(MOST) as usize;
    format!("{sign}{whole}.{rest:0width$}")
}

/// More decimals than this are not kept.
const MOST: u32 = 12;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn decimals_have_no_idle_zeros() {
        let shown = [1.0, 0.1, 12.96, -7.5, 100.0, 0.0].map(|value| decimal(value, 3));
        assert_eq!(shown, ["1", "0.1", "12.96", "-7.5", "100", "0"]);
        assert_eq!(decimal(250.4, 0), "250");
    }

    #[test]
    fn rounding_carries_and_leaves_no_negative_zero() {
        assert_eq!(decimal(9.9996, 3), "10");
        assert_eq!(decimal(-0.0004, 3), "0");
        assert_eq!(decimal(2.5, 0), "3");
    }

    #[test]
    fn padded_ones_keep_their_zeros() {
        assert_eq!([padded(12.0, 1), padded(0.05, 2), padded(-3.0, 0)], ["12.0", "0.05", "-3"]);
    }

    #[test]
    fn what_was_typed_is_shown_again() {
        for thousandths in -20_000..20_000_i64 {
            let value = thousandths as f64 / 1000.0;
            assert_eq!(decimal(value, 3), value.to_string(), "{value}");
        }
    }

    #[test]
    fn any_float_is_a_number_in_digits() {
        for value in [f64::NAN, f64::INFINITY, -f64::INFINITY, f64::MAX, f64::MIN_POSITIVE, 1e17] {
            let text = decimal(value, 3);
            assert!(text.parse::<f64>().is_ok_and(f64::is_finite), "{value}: {text}");
        }
    }
}
