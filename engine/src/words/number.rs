//! Numbers as people read them: no more digits than they mean, by the marks of their language and in the units of their habits.

use super::decimal::{decimal, padded};
use super::{ClockHabit, Words};
use crate::document::Field;
use crate::quantity::{Quantity, Unit};

impl Words {
    /// Puts the decimal mark of the language into a number.
    fn marked(self, text: String) -> String {
        if self.writes_comma() { text.replace('.', ",") } else { text }
    }

    /// A number with as many digits as its size deserves: 0.85, 8.5, 85, 850; thousands in groups.
    #[must_use]
    pub fn rounded(self, value: f64) -> String {
        self.marked(rounded(value))
    }

    /// A number with four significant digits and no idle zeros, for workings that people redo; thousands in groups.
    ///
    /// Whole thousands keep all their digits. Under a billionth of a thousandth it is 0.
    #[must_use]
    pub fn precise(self, value: f64) -> String {
        self.marked(precise(value))
    }

    /// A number with at most so many decimals and no idle zeros, or as it is typed back into a box.
    #[must_use]
    pub fn decimal(self, value: f64, digits: u32) -> String {
        self.marked(decimal(value, digits))
    }

    /// A number with exactly so many decimals.
    #[must_use]
    pub fn padded(self, value: f64, digits: u32) -> String {
        self.marked(padded(value, digits))
    }

    /// A number as a person gave it, to twelve digits; very large and very small ones with a power of ten.
    #[must_use]
    pub(crate) fn as_given(self, value: f64) -> String {
        self.marked(as_given(value))
    }

    /// A quantity with its unit, a no-break space between them.
    #[must_use]
    pub fn amount<Q: Quantity>(self, quantity: Q) -> String {
        let number = self.rounded(self.in_habit(quantity.value(), Q::UNIT));
        behind(number, self.unit(Q::UNIT))
    }

    /// A temperature without decimals.
    #[must_use]
    pub fn whole_degrees(self, temperature: crate::quantity::Celsius) -> String {
        let shown = self.in_habit(temperature.0, Unit::Celsius);
        behind(self.decimal(shown, 0), self.unit(Unit::Celsius))
    }

    /// The number of a field as its box shows it.
    #[must_use]
    pub fn shown(self, field: Field, value: f64) -> f64 {
        self.in_habit(value, field.range().unit)
    }

    /// The value of a field that a person means by the number typed into its box.
    #[must_use]
    pub fn meant(self, field: Field, typed: f64) -> f64 {
        self.out_of_habit(typed, field.range().unit)
    }

    /// A value of a field as a text for its box. In degrees Fahrenheit a whole number comes back as the whole number that was typed,
    /// though the plan keeps tenths of degrees Celsius.
    #[must_use]
    pub fn boxed(self, field: Field, value: f64) -> String {
        let shown = self.shown(field, value);
        if self.unit(field.range().unit) == field.range().unit.symbol() {
            return self.decimal(shown, 3);
        }
        let whole = shown.round();
        self.decimal(if (shown - whole).abs() < NEARLY_WHOLE { whole } else { shown }, 1)
    }

    /// A clock time from minutes after midnight: `07:05`, or by the clock of twelve hours.
    #[must_use]
    pub fn clock(self, minutes: u16) -> String {
        match self.habits.clock {
            ClockHabit::Hours24 => clock(minutes),
            ClockHabit::Hours12 => self.half_day(minutes, &format!(":{:02}", minutes % 60)),
        }
    }

    /// The end of a stretch of the day; the end of the day is 24:00, not 00:00.
    #[must_use]
    pub fn clock_end(self, minutes: u16) -> String {
        match (self.habits.clock, minutes) {
            (ClockHabit::Hours24, 1440) => "24:00".to_owned(),
            _ => self.clock(minutes),
        }
    }

    /// An hour of the day under a picture or in a table: `07`.
    #[must_use]
    pub fn hour_mark(self, hour: u16) -> String {
        match self.habits.clock {
            ClockHabit::Hours24 => format!("{hour:02}"),
            ClockHabit::Hours12 => self.half_day(hour * 60, ""),
        }
    }

    fn half_day(self, minutes: u16, rest: &str) -> String {
        let hour = minutes / 60 % 24;
        let half = speak!(self.language, calendar::half_of_day(hour >= 12));
        format!("{}{rest}\u{a0}{half}", (hour + 11) % 12 + 1)
    }
}

/// A temperature this near to a whole degree Fahrenheit is shown as that: half a tenth of a degree Celsius, and a hair.
const NEARLY_WHOLE: f64 = 0.0901;

/// A number and its unit.
fn behind(number: String, unit: &str) -> String {
    match unit {
        "" => number,
        "°" => format!("{number}°"),
        unit => format!("{number}\u{a0}{unit}"),
    }
}

fn rounded(value: f64) -> String {
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

fn precise(value: f64) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let size = value.abs();
    let exponent = if size > 0.0 { libm::floor(libm::log10(size)) as i32 } else { 0 };
    // Four digits; where rounding makes it one more, as of 99.996, the last is a zero and goes.
    let text = decimal(size, (3 - exponent).clamp(0, 12) as u32);
    let sign = if value < 0.0 && text != "0" { "−" } else { "" };
    format!("{sign}{}", grouped(&text))
}

/// Digits of a given number that are shown.
const GIVEN_DIGITS: i32 = 12;

fn as_given(value: f64) -> String {
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

/// A clock time `07:05` from minutes after midnight, as files and time boxes have it.
#[must_use]
pub fn clock(minutes: u16) -> String {
    format!("{:02}:{:02}", minutes / 60 % 24, minutes % 60)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{AmpHours, Degrees};
    use crate::words::{Habits, Language, Temperature};

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
        let own = Words::of(Language::ALL[0]);
        assert!(own.amount(AmpHours(60.84)).ends_with("8\u{a0}Ah"));
        assert_eq!(own.amount(Degrees(35.0)), "35°");
    }

    #[test]
    fn each_language_writes_its_own_mark() {
        for language in Language::ALL {
            let own = Words::of(*language);
            let mark = if own.writes_comma() { ',' } else { '.' };
            assert_eq!(own.rounded(8.54), format!("8{mark}5"));
            assert_eq!(own.precise(0.083_333), format!("0{mark}08333"));
            assert_eq!(own.as_given(123_456.75), format!("123\u{202f}456{mark}75"));
            assert_eq!(own.padded(12.0, 1), format!("12{mark}0"));
            assert_eq!(own.rounded(12_345.6), "12\u{202f}346");
        }
    }

    #[test]
    fn clocks_run_by_habit() {
        let usual = Words::of(Language::ALL[0]);
        let habits = Habits { clock: ClockHabit::Hours12, ..Habits::USUAL };
        let own = Words { habits, ..usual };
        assert_eq!((usual.clock(425), usual.clock_end(1440)), ("07:05".into(), "24:00".into()));
        assert_eq!(usual.hour_mark(6), "06");
        let hours = [0, 60, 719, 720, 780, 1439].map(|minutes| own.clock(minutes));
        for (text, start) in hours.iter().zip(["12:00", "1:00", "11:59", "12:00", "1:00", "11:59"])
        {
            assert!(text.starts_with(&format!("{start}\u{a0}")), "{text}");
        }
        assert_ne!(hours[0], hours[3]);
        assert_eq!(own.clock_end(1440), own.clock(0));
        assert!(own.hour_mark(18).starts_with("6\u{a0}"));
    }

    #[test]
    fn whole_degrees_fahrenheit_come_back_as_they_were_typed() {
        let usual = Words::of(Language::ALL[0]);
        let habits = Habits { temperature: Temperature::Fahrenheit, ..Habits::USUAL };
        let own = Words { habits, ..usual };
        let field = Field::AirTemperature;
        for typed in -110..140 {
            let kept = field.range().rounded(own.meant(field, f64::from(typed)));
            assert_eq!(own.boxed(field, kept), typed.to_string());
        }
        assert_eq!(usual.boxed(Field::LoadPower, 40.0), "40");
        assert_eq!(own.boxed(Field::LoadPower, 40.0), "40");
        assert_eq!(own.whole_degrees(crate::quantity::Celsius(20.0)), "68\u{a0}°F");
    }
}
