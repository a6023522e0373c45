//! Numbers as people read them: no more digits than they mean.

use super::decimal::{decimal, padded};
use crate::quantity::{Quantity, Unit};

/// A number with as many digits as its size deserves: 0.85, 8.5, 85, 850; thousands in groups.
#[must_use]
pub fn rounded(value: f64) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let size = value.abs();
    // What was given as a whole number is said as one.
    let digits = if size < 0.005 || libm::trunc(size) == size {
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

/// Digits of a given number that are shown.
const GIVEN_DIGITS: i32 = 12;

/// A number as a person gave it, to twelve digits; very large and very small ones with a power of ten.
#[must_use]
pub(crate) fn as_given(value: f64) -> String {
    let size = value.abs();
    let exponent = if size > 0.0 { libm::floor(libm::log10(size)) as i32 } else { 0 };
    let text = if (-6..9).contains(&exponent) {
        grouped(&decimal(size, (GIVEN_DIGITS - 1 - exponent).clamp(0, 9) as u32))
    } else {
        let of_ten = size / libm::pow(10.0, f64::from(exponent));
        format!("{}e{exponent}", decimal(of_ten, 9))
    };
    if value < 0.0 { format!("−{text}") } else { text }
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
            (24.0, "24"),
            (23.98, "24.0"),
            (854.4, "854"),
            (-12345.6, "−12\u{202f}346"),
            (f64::NAN, "–"),
        ];
        for (value, text) in cases {
            assert_eq!(rounded(value), text);
        }
    }

    #[test]
    fn what_was_given_is_said_again() {
        let cases = [
            (0.0, "0"),
            (-12.75, "−12.75"),
            (0.000_012_5, "0.0000125"),
            (123_456.789, "123\u{202f}456.789"),
            (1e300, "1e300"),
            (-2.5e-9, "−2.5e-9"),
            (1e9, "1e9"),
            (999_999_999.0, "999\u{202f}999\u{202f}999"),
        ];
        for (value, text) in cases {
            assert_eq!(as_given(value), text);
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
    fn units_stand_behind_a_no_break_space() {
        assert_eq!(amount(AmpHours(60.84)), "60.8\u{a0}Ah");
        assert_eq!(amount(Degrees(35.0)), "35°");
    }
}
