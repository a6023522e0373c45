//! Dates as they are written in a file, `2026-11-26`: the calendar date of ISO 8601 in its extended form.
//!
//! The calendar itself is `chrono`'s. Its own reader of dates also reads months by name, zones and more, which a page would
//! have to carry for the sake of eight digits.

use chrono::{Datelike, NaiveDate};

/// Reads `YYYY-MM-DD`, all digits written out; nothing for anything else, or for a day that the calendar does not have.
#[must_use]
pub fn date_from(text: &str) -> Option<NaiveDate> {
    let [a, b, c, d, b'-', e, f, b'-', g, h] = *text.as_bytes() else { return None };
    let number = |digits: &[u8]| {
        digits.iter().try_fold(0, |sum: u32, digit| {
            digit.is_ascii_digit().then(|| sum * 10 + u32::from(digit - b'0'))
        })
    };
    let year = number(&[a, b, c, d])?;
    NaiveDate::from_ymd_opt(i32::try_from(year).ok()?, number(&[e, f])?, number(&[g, h])?)
}

/// The same date as text.
#[must_use]
pub fn date_text(date: NaiveDate) -> String {
    format!("{:04}-{:02}-{:02}", date.year(), date.month(), date.day())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_date_survives_its_text() {
        for (year, month, day) in [(2026, 11, 26), (2020, 1, 1), (2099, 12, 31), (2028, 2, 29)] {
            let date = NaiveDate::from_ymd_opt(year, month, day).unwrap();
            assert_eq!(date_from(&date_text(date)), Some(date));
            // The standard form, as the calendar's own printing has it.
            assert_eq!(date_text(date), date.to_string());
        }
    }

    #[test]
    fn what_is_no_date_is_refused() {
        for wrong in [
            "",
            "2026-11-31",
            "2027-02-29",
            "2026-13-01",
            "2026-00-10",
            "2026-1-1",
            "26-01-01",
            "2026-01-01 ",
            "2026-01-01T00:00",
            "+2026-01-1",
            "2026/01/01",
            "２026-01-1",
        ] {
            assert_eq!(date_from(wrong), None, "{wrong}");
        }
    }
}
