//! When something runs: hours of the day, days of the week, months of the year.
//!
//! A stretch may go over midnight; it belongs to the day on which it starts. Minutes are kept, though steps are
//! quarter-hours.

use core::fmt;

/// Minutes in a day.
pub const DAY_MIN: u16 = 1440;

/// A stretch of the day from one minute to another; it may run over midnight. Written `17:00-23:00`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Span {
    /// First minute of the day, 0 to 1439.
    pub from_min: u16,
    /// Minute at which it ends, 1 to 1440; smaller than the first one if it runs over midnight.
    pub to_min: u16,
}

impl Span {
    /// Whether both ends lie in a day and it is not empty.
    #[must_use]
    pub fn is_valid(self) -> bool {
        self.from_min < DAY_MIN
            && self.to_min >= 1
            && self.to_min <= DAY_MIN
            && self.from_min != self.to_min
    }

    /// The one or two stretches that do not run over midnight.
    #[must_use]
    pub fn unwrapped(self) -> [(u16, u16); 2] {
        if self.from_min < self.to_min {
            [(self.from_min, self.to_min), (0, 0)]
        } else {
            [(self.from_min, DAY_MIN), (0, self.to_min)]
        }
    }
}

/// A clock time of a day, in minutes from midnight. Written `17:00`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ClockTime(pub u16);

impl fmt::Display for ClockTime {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}:{:02}", self.0 / 60, self.0 % 60)
    }
}

/// Reads `h:mm` or `hh:mm` up to 24:00.
fn minutes(text: &str) -> Option<u16> {
    let (hours, minutes) = text.trim().split_once(':')?;
    let (hours, minutes): (u16, u16) = (hours.parse().ok()?, minutes.parse().ok()?);
    (hours <= 24 && minutes < 60).then(|| hours * 60 + minutes).filter(|at| *at <= DAY_MIN)
}

impl core::str::FromStr for ClockTime {
    type Err = ();
    fn from_str(text: &str) -> Result<Self, ()> {
        minutes(text).filter(|at| *at < DAY_MIN).map(Self).ok_or(())
    }
}

impl fmt::Display for Span {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}", ClockTime(self.from_min), ClockTime(self.to_min))
    }
}

impl core::str::FromStr for Span {
    type Err = ();
    fn from_str(text: &str) -> Result<Self, ()> {
        let (from, to) = text.split_once('-').ok_or(())?;
        let (Some(from_min), Some(to_min)) = (minutes(from), minutes(to)) else { return Err(()) };
        Some(Self { from_min, to_min }).filter(|span| span.is_valid()).ok_or(())
    }
}

/// The hours of a day in which something runs.
#[derive(Clone, Debug, PartialEq)]
pub enum When {
    /// Round the clock.
    Always,
    /// So many hours a day at no stated time, spread evenly over the day.
    HoursPerDay(f64),
    /// In these stretches of the day.
    Spans(Vec<Span>),
}

/// Days of the week as bits, Monday first. Written as a list of English three-letter names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Days(pub u8);

impl Days {
    /// All seven.
    pub const ALL: Self = Self(0x7f);

    /// Whether the day with this number, Monday being 0, is among them.
    #[must_use]
    pub fn has(self, day: u8) -> bool {
        self.0 >> day & 1 == 1
    }
}

/// Months of the year as bits, January first. Written as a list of numbers from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Months(pub u16);

impl Months {
    /// All twelve.
    pub const ALL: Self = Self(0xfff);

    /// Whether the month with this number, January being 0, is among them.
    #[must_use]
    pub fn has(self, month: u8) -> bool {
        self.0 >> month & 1 == 1
    }
}

/// When something runs.
#[derive(Clone, Debug, PartialEq)]
pub struct Schedule {
    /// The hours of the day, in clock time.
    pub when: When,
    /// The days of the week.
    pub days: Days,
    /// The months of the year.
    pub months: Months,
}

impl Schedule {
    /// Every day of the year at these hours.
    #[must_use]
    pub fn daily(when: When) -> Self {
        Self { when, days: Days::ALL, months: Months::ALL }
    }

    /// Whether a stretch of it runs into the next day.
    #[must_use]
    pub fn runs_over_midnight(&self) -> bool {
        match &self.when {
            When::Spans(spans) => spans.iter().any(|span| span.from_min >= span.to_min),
            When::Always | When::HoursPerDay(_) => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_and_spans_read_as_people_write_them() {
        assert_eq!("7:05".parse(), Ok(ClockTime(425)));
        assert_eq!("22:00-6:30".parse(), Ok(Span { from_min: 1320, to_min: 390 }));
        assert_eq!("00:00-24:00".parse(), Ok(Span { from_min: 0, to_min: 1440 }));
        for wrong in ["24:00", "7", "25:00", "7:60", "", "-1:00", "60000:00"] {
            assert_eq!(wrong.parse::<ClockTime>(), Err(()), "{wrong}");
        }
        for wrong in ["7:00-7:00", "24:00-6:00", "7:00", "a-b"] {
            assert_eq!(wrong.parse::<Span>(), Err(()), "{wrong}");
        }
    }

    #[test]
    fn a_span_over_midnight_falls_into_two() {
        let night = Span { from_min: 1320, to_min: 390 };
        assert_eq!(night.unwrapped(), [(1320, 1440), (0, 390)]);
    }
}
