//! Numbers as people read them: no more digits than they mean.

use crate::quantity::{Quantity, Unit};

/// A number with as many digits as its size deserves: 0.85, 8.5, 85, 850; thousands in groups.
#[must_use]
pub fn rounded(value: f64) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let size = value.abs();
    let digits = if size < 0.005 {
        0
    } else if size < 1.0 {
        2
    } else if size < 99.95 {
        1
    } else {
        0
    };
    let text = padded(size, digits);
    let sign = if value < 0.0 && text.bytes().any(|digit| (b'1'..=b'9').contains(&digit)) {
        "−"
    } else {
        ""
    };
    format!("{sign}{}", grouped(&text))
}

/// A number with four significant digits and no idle zeros, for workings that people redo; thousands in groups.
///
/// Whole thousands keep all their digits. Under a billionth of a thousandth it is 0.
#[must_use]
pub fn precise(value: f64) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let size = value.abs();
    // The exponent after rounding to four digits: 99.996 counts as 100.0.
    let exponent: i32 = format!("{size:.3e}")
        .split_once('e')
        .and_then(|(_, exponent)| exponent.parse().ok())
        .unwrap_or_default();
    let digits = (3 - exponent).clamp(0, 12) as usize;
    let text = format!("{size:.digits$}");
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        text.as_str()
    };
    let sign = if value < 0.0 && text != "0" { "−" } else { "" };
    format!("{sign}{}", grouped(text))
}

/// A number with exactly `digits` decimals, halves away from zero. What is no number is 0; beyond about 10¹⁸ units of the last
/// decimal, it stays there.
///
/// Made with whole numbers. The shortest text that a float can be read back from, which `to_string` looks for, takes tables and
/// code of its own (5 kB of the page after compression), and nothing that people read needs more than a few decimals.
#[must_use]
pub fn padded(value: f64, digits: u32) -> String {
    let units = 10_u64.pow(digits.min(MOST_DIGITS));
    // The cast makes 0 of what is no number and stops at the ends of i64.
    let count = (value * units as f64).round() as i64;
    let sign = if count < 0 { "-" } else { "" };
    let (whole, rest) = (count.unsigned_abs() / units, count.unsigned_abs() % units);
    if digits == 0 {
        return format!("{sign}{whole}");
    }
    let width = digits.min(MOST_DIGITS) as usize;
    format!("{sign}{whole}.{rest:0width$}")
}

/// More decimals than this are not kept.
const MOST_DIGITS: u32 = 9;

/// The same with at most so many decimals and no idle zeros.
#[must_use]
pub fn decimal(value: f64, digits: u32) -> String {
    let text = padded(value, digits);
    if digits == 0 {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A number as a person gave it, to a millionth; very large and very small ones with a power of ten.
#[must_use]
pub(crate) fn as_given(value: f64) -> String {
    let size = value.abs();
    if !size.is_finite() {
        return "–".to_owned();
    }
    let text = if size >= 1e9 || size > 0.0 && size < 1e-6 {
        with_power(size)
    } else {
        grouped(&decimal(size, 6))
    };
    if value < 0.0 { format!("−{text}") } else { text }
}

/// A size as digits and a power of ten: `1.5e300`.
fn with_power(mut size: f64) -> String {
    let mut power = 0;
    while size >= 10.0 {
        size /= 10.0;
        power += 1;
    }
    while size < 1.0 {
        size *= 10.0;
        power -= 1;
    }
    format!("{}e{power}", decimal(size, 6))
}

/// A count with its thousands in groups.
#[must_use]
pub(crate) fn grouped_count(count: usize) -> String {
    grouped(&count.to_string())
}

/// Groups the digits before the point by threes with a thin space, from five digits on.
fn grouped(text: &str) -> String {
    let (whole, rest) = text.find('.').map_or((text, ""), |point| text.split_at(point));
    if whole.len() < 5 {
        return text.to_owned();
    }
    let mut out = String::new();
    for (place, digit) in whole.chars().enumerate() {
        if place > 0 && (whole.len() - place).is_multiple_of(3) {
            out.push('\u{202f}');
        }
        out.push(digit);
    }
    out + rest
}

/// A quantity with its unit, a no-break space between them.
#[must_use]
pub fn amount<Q: Quantity>(quantity: Q) -> String {
    let number = rounded(quantity.value());
    match Q::UNIT {
        Unit::One => number,
        Unit::Degree => format!("{number}°"),
        unit => format!("{number}\u{a0}{}", unit.symbol()),
    }
}

/// A clock time `07:05` from minutes after midnight.
#[must_use]
pub fn clock(minutes: u16) -> String {
    format!("{:02}:{:02}", minutes / 60 % 24, minutes % 60)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{AmpHours, Degrees};

    #[test]
    fn numbers_carry_what_they_mean() {
        let cases = [
            (0.0, "0"),
            (-0.001, "0"),
            (0.854, "0.85"),
            (8.54, "8.5"),
            (85.44, "85.4"),
            (854.4, "854"),
            (-12345.6, "−12\u{202f}346"),
            (f64::NAN, "–"),
        ];
        for (value, text) in cases {
            assert_eq!(rounded(value), text);
        }
    }

    #[test]
    fn workings_keep_four_digits() {
        let cases = [
            (0.0, "0"),
            (12.8, "12.8"),
            (1234.56, "1235"),
            (99.996, "100"),
            (0.083_333, "0.08333"),
            (-0.25, "−0.25"),
            (123_456.7, "123\u{202f}457"),
            (0.000_123_456, "0.0001235"),
            (1e-15, "0"),
            (f64::INFINITY, "–"),
        ];
        for (value, text) in cases {
            assert_eq!(precise(value), text);
        }
    }

    #[test]
    fn what_was_given_is_told_again() {
        let cases = [
            (0.0, "0"),
            (-0.5, "−0.5"),
            (48.000_001, "48.000001"),
            (123_456.7, "123\u{202f}456.7"),
            (1e300, "1e300"),
            (-2.5e-9, "−2.5e-9"),
            (f64::MAX, "1.797693e308"),
            (f64::NAN, "–"),
        ];
        for (value, text) in cases {
            assert_eq!(as_given(value), text);
        }
    }

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

    #[test]
    fn units_stand_behind_a_no_break_space() {
        assert_eq!(amount(AmpHours(60.84)), "60.8\u{a0}Ah");
        assert_eq!(amount(Degrees(35.0)), "35.0°");
    }
}
