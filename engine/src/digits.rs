//! Numbers in plain digits, as files and messages write them, and where a part stands in a text.
//!
//! **Why not the standard library's.** Its exact reader of any number brings a table of 10 kB that does not compress, and the
//! page would carry it for this alone.
//!
//! **Exact** for up to fifteen digits with a power of ten up to 22, which is all that they hold: a whole number below 2⁵³ over an
//! exact power of ten is rounded once (Clinger 1990, *How to read floating point numbers accurately*, PLDI). Beyond, to some units of
//! the last place.

/// Where a part stands in a text, one place after the other.
///
/// Std's search for long texts takes a kilobyte of the page; what is searched here is a line.
pub fn places_of<'a>(text: &'a str, part: &'a str) -> impl Iterator<Item = usize> + 'a {
    let is_at = move |at: &usize| text.get(*at..).is_some_and(|rest| rest.starts_with(part));
    text.char_indices().map(|(at, _)| at).filter(is_at)
}

/// Whole numbers with more than 17 digits are cut there; the rest counts as zeros.
const MOST: u64 = 100_000_000_000_000_000;
/// Larger powers of ten are no number of the world.
const MOST_POWER: i32 = 400;

/// The number of a text: a sign, digits with at most one point, a power of ten; none if it is anything else or has no end.
#[must_use]
pub fn number(text: &str) -> Option<f64> {
    let (sign, unsigned) = match text.strip_prefix('-') {
        Some(rest) => (-1.0, rest),
        None => (1.0, text.strip_prefix('+').unwrap_or(text)),
    };
    let (digits, power) = match unsigned.split_once(['e', 'E']) {
        Some((digits, power)) => (digits, power.parse().ok()?),
        None => (unsigned, 0_i32),
    };
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    if whole.is_empty() && part.is_empty() {
        return None;
    }
    let mut power = power.clamp(-MOST_POWER, MOST_POWER);
    let mut mantissa = 0_u64;
    for (place, digit) in whole.bytes().chain(part.bytes()).enumerate() {
        if !digit.is_ascii_digit() {
            return None;
        }
        let (kept, of_part) = (mantissa < MOST, place >= whole.len());
        if kept {
            mantissa = mantissa * 10 + u64::from(digit - b'0');
        }
        power += i32::from(!kept) - i32::from(of_part);
    }
    let value = sign * scaled(mantissa, power);
    value.is_finite().then_some(value)
}

/// A whole number times a power of ten.
fn scaled(mantissa: u64, power: i32) -> f64 {
    if mantissa == 0 {
        return 0.0;
    }
    // Every power of ten up to 22 is exact, and so are the products on the way.
    let ten = (0..power.abs().min(MOST_POWER)).fold(1.0, |ten, _| ten * 10.0);
    if power < 0 { mantissa as f64 / ten } else { mantissa as f64 * ten }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_of_files_are_those_of_the_standard_library() {
        let own =
            ["0", "-0", "9999", "-12.7", "99.9", "47.45000", "+8.5", ".5", "5.", "0.1", "1013.25"];
        let more = ["123456789.012345", "1e3", "2.5E-7", "9.9e22", "-3e+2", "0.000000000000001"];
        for text in own.into_iter().chain(more) {
            let expected: f64 = text.parse().unwrap();
            assert_eq!(number(text).map(f64::to_bits), Some(expected.to_bits()), "{text}");
        }
        for tenths in -700..=20_000 {
            let text = format!("{:.1}", f64::from(tenths) / 10.0);
            assert_eq!(number(&text), text.parse().ok(), "{text}");
        }
    }

    #[test]
    fn long_ones_are_near_and_huge_ones_are_no_surprise() {
        for text in
            ["3.14159265358979323846264338327950288", "123456789012345678901234567890", "1e-300"]
        {
            let (own, expected) = (number(text).unwrap(), text.parse::<f64>().unwrap());
            assert!((own / expected - 1.0).abs() < 1e-13, "{text}: {own}");
        }
        assert_eq!((number("1e999999"), number("-9e999")), (None, None));
        assert_eq!((number("1e-999"), number("0e999")), (Some(0.0), Some(0.0)));
    }

    #[test]
    fn what_is_no_number_is_none() {
        let wrong = [
            "", "-", ".", "e5", "1e", "1e5.0", "1.2.3", "12 W", "0x1F", "inf", "NaN", "--1", "1,5",
            "１",
        ];
        for text in wrong {
            assert_eq!(number(text), None, "{text}");
        }
    }
}
