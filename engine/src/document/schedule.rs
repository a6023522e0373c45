//! When something runs: hours of the day, days of the week, months of the year.

use core::fmt;

use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

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

impl Serialize for ClockTime {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for ClockTime {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        text.parse().map_err(|()| de::Error::invalid_value(de::Unexpected::Str(&text), &"a time"))
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

impl Serialize for Span {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Span {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        text.parse().map_err(|()| de::Error::invalid_value(de::Unexpected::Str(&text), &"a span"))
    }
}

/// The hours of a day in which something runs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
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
    const NAMES: [&'static str; 7] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

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

impl Serialize for Days {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_seq(
            (0..7u8).filter(|day| self.has(*day)).map(|day| Self::NAMES[usize::from(day)]),
        )
    }
}

impl<'de> Deserialize<'de> for Days {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let mut bits = 0;
        for name in Vec::<String>::deserialize(from)? {
            let place = Self::NAMES.iter().position(|known| *known == name).ok_or_else(|| {
                de::Error::invalid_value(de::Unexpected::Str(&name), &"mon to sun")
            })?;
            bits |= 1 << place;
        }
        Ok(Self(bits))
    }
}

impl Serialize for Months {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_seq((0..12u8).filter(|month| self.has(*month)).map(|month| month + 1))
    }
}

impl<'de> Deserialize<'de> for Months {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let mut bits = 0;
        for month in Vec::<u8>::deserialize(from)? {
            if !(1..=12).contains(&month) {
                let found = de::Unexpected::Unsigned(month.into());
                return Err(de::Error::invalid_value(found, &"1 to 12"));
            }
            bits |= 1 << (month - 1);
        }
        Ok(Self(bits))
    }
}

/// When something runs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Schedule {
    /// The hours of the day, in clock time.
    pub when: When,
    /// The days of the week.
    #[serde(default = "all_days", skip_serializing_if = "is_all_days")]
    pub days: Days,
    /// The months of the year.
    #[serde(default = "all_months", skip_serializing_if = "is_all_months")]
    pub months: Months,
}

impl Schedule {
    /// Every day of the year at these hours.
    #[must_use]
    pub fn daily(when: When) -> Self {
        Self { when, days: Days::ALL, months: Months::ALL }
    }
}

fn all_days() -> Days {
    Days::ALL
}

fn is_all_days(days: &Days) -> bool {
    *days == Days::ALL
}

fn all_months() -> Months {
    Months::ALL
}

fn is_all_months(months: &Months) -> bool {
    *months == Months::ALL
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

    #[test]
    fn days_and_months_survive_json() {
        let schedule = Schedule {
            when: When::Spans(vec![Span { from_min: 60, to_min: 120 }]),
            days: Days(0b110_0000),
            months: Months(0b11),
        };
        let text = serde_json::to_string(&schedule).unwrap();
        assert_eq!(
            text,
            r#"{"when":{"spans":["01:00-02:00"]},"days":["sat","sun"],"months":[1,2]}"#
        );
        assert_eq!(serde_json::from_str::<Schedule>(&text).unwrap(), schedule);
    }
}
