//! Clock time of a place: how far is the wall clock ahead of universal time on a given date?
//!
//! Schedules are in clock time and the sun is not, so the two are tied by an offset that may change twice a year. The
//! rules are those in force for 2026 and after, from the IANA time zone database, release 2026f (files `europe`,
//! `northamerica`, `australasia`, `southamerica`, `africa`, `asia`). They are applied to every year, past ones too: a plan is
//! about days to come.
//!
//! Resolution is the day: a switch counts for the whole local date on which it happens. Where a place switches late in the
//! evening (Greenland, Easter Island) the date of the rule's home is taken, so that the evening before is an hour off.
//! Left out: rules that move with Ramadan and one-off decrees.

use chrono::{Datelike, Days, NaiveDate, Weekday};
use serde::{Deserialize, Serialize};

use crate::quantity::Hours;

/// A rule by which clocks are put forward for part of the year. The order is frozen: shared links count it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[repr(u8)]
pub enum SummerTime {
    /// The clock never changes.
    #[default]
    None = 0,
    /// Last Sunday of March to last Sunday of October, at 01:00 universal time; also Moldova and Lebanon, whose dates agree.
    Europe = 1,
    /// Second Sunday of March to first Sunday of November, at 02:00 clock time; also Bermuda, Haiti and Cuba.
    NorthAmerica = 2,
    /// First Sunday of October to first Sunday of April, at 02:00 standard time: the southern states, Norfolk Island.
    Australia = 3,
    /// The days of [`Self::Australia`], but by half an hour.
    LordHowe = 4,
    /// Last Sunday of September to first Sunday of April, at 02:00 standard time; also the Chathams and stations supplied
    /// from New Zealand.
    NewZealand = 5,
    /// First Sunday from 2 September to first Sunday from 2 April, at 04:00 universal time; not Magallanes and Aysén.
    Chile = 6,
    /// Last Friday of April, 00:00, to the end of the last Thursday of October.
    Egypt = 7,
    /// Friday before the last Sunday of March to last Sunday of October, at 02:00 clock time.
    Israel = 8,
    /// Saturday before the last Sunday of March to Saturday before the last Sunday of October, at 02:00 clock time.
    Palestine = 9,
}

/// The first such weekday on or after a day of the year: "last Sunday of March" is the first one from 25 March.
#[derive(Clone, Copy)]
struct Turn {
    month: u32,
    day: u32,
    weekday: Weekday,
}

impl Turn {
    const fn first(weekday: Weekday, day: u32, month: u32) -> Self {
        Self { month, day, weekday }
    }

    /// The date in a year; nothing only at the end of the calendar's range.
    fn date(self, year: i32) -> Option<NaiveDate> {
        let earliest = NaiveDate::from_ymd_opt(year, self.month, self.day)?;
        let wait = self.weekday.days_since(earliest.weekday());
        earliest.checked_add_days(Days::new(u64::from(wait)))
    }
}

impl SummerTime {
    /// Every rule, in the frozen order.
    pub const ALL: [Self; 10] = [
        Self::None,
        Self::Europe,
        Self::NorthAmerica,
        Self::Australia,
        Self::LordHowe,
        Self::NewZealand,
        Self::Chile,
        Self::Egypt,
        Self::Israel,
        Self::Palestine,
    ];

    /// Minutes by which the clock is ahead of standard time while the rule holds.
    const fn shift_min(self) -> i16 {
        match self {
            Self::None => 0,
            Self::LordHowe => 30,
            _ => 60,
        }
    }

    /// First day with summer time and first day without.
    const fn turns(self) -> Option<(Turn, Turn)> {
        use Weekday::{Fri, Sat, Sun};
        let first = Turn::first;
        match self {
            Self::None => None,
            Self::Europe => Some((first(Sun, 25, 3), first(Sun, 25, 10))),
            Self::NorthAmerica => Some((first(Sun, 8, 3), first(Sun, 1, 11))),
            Self::Australia | Self::LordHowe => Some((first(Sun, 1, 10), first(Sun, 1, 4))),
            Self::NewZealand => Some((first(Sun, 24, 9), first(Sun, 1, 4))),
            Self::Chile => Some((first(Sun, 2, 9), first(Sun, 2, 4))),
            Self::Egypt => Some((first(Fri, 24, 4), first(Fri, 26, 10))),
            Self::Israel => Some((first(Fri, 23, 3), first(Sun, 25, 10))),
            Self::Palestine => Some((first(Sat, 24, 3), first(Sat, 24, 10))),
        }
    }

    /// Whether summer time holds on a date.
    fn holds_on(self, date: NaiveDate) -> bool {
        let Some((start, end)) = self.turns() else { return false };
        let (Some(start), Some(end)) = (start.date(date.year()), end.date(date.year())) else {
            return false;
        };
        if start < end { start <= date && date < end } else { date < end || start <= date }
    }
}

/// The clock of a place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Clock {
    /// Standard time ahead of universal time \[min\], -720 to 840; west is negative.
    pub utc_offset_min: i16,
    /// When it is put forward.
    pub summer_time: SummerTime,
}

impl Clock {
    /// Hours by which the clock is ahead of universal time on a date \[h\].
    #[must_use]
    pub fn offset_on(&self, date: NaiveDate) -> Hours {
        let standard = f64::from(self.utc_offset_min);
        let shift = if self.summer_time.holds_on(date) { self.summer_time.shift_min() } else { 0 };
        Hours((standard + f64::from(shift)) / 60.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A year, its first day with summer time and its first day without.
    type Year = (i32, &'static str, &'static str);

    /// First day with summer time and first day without, of five years each, as the IANA time zone database 2026f has them
    /// at noon: read with Python's `zoneinfo` from the zones Europe/Berlin, America/New_York, Australia/Sydney,
    /// Australia/Lord_Howe, Pacific/Auckland, America/Santiago, Africa/Cairo, Asia/Jerusalem and Asia/Gaza.
    #[rustfmt::skip]
    const DATES: [(SummerTime, [Year; 5]); 9] = [
        (SummerTime::Europe, [(2026, "03-29", "10-25"), (2027, "03-28", "10-31"), (2028, "03-26", "10-29"), (2029, "03-25", "10-28"), (2030, "03-31", "10-27")]),
        (SummerTime::NorthAmerica, [(2026, "03-08", "11-01"), (2027, "03-14", "11-07"), (2028, "03-12", "11-05"), (2029, "03-11", "11-04"), (2030, "03-10", "11-03")]),
        (SummerTime::Australia, [(2026, "10-04", "04-05"), (2027, "10-03", "04-04"), (2028, "10-01", "04-02"), (2029, "10-07", "04-01"), (2030, "10-06", "04-07")]),
        (SummerTime::LordHowe, [(2026, "10-04", "04-05"), (2027, "10-03", "04-04"), (2028, "10-01", "04-02"), (2029, "10-07", "04-01"), (2030, "10-06", "04-07")]),
        (SummerTime::NewZealand, [(2026, "09-27", "04-05"), (2027, "09-26", "04-04"), (2028, "09-24", "04-02"), (2029, "09-30", "04-01"), (2030, "09-29", "04-07")]),
        (SummerTime::Chile, [(2026, "09-06", "04-05"), (2027, "09-05", "04-04"), (2028, "09-03", "04-02"), (2029, "09-02", "04-08"), (2030, "09-08", "04-07")]),
        (SummerTime::Egypt, [(2026, "04-24", "10-30"), (2027, "04-30", "10-29"), (2028, "04-28", "10-27"), (2029, "04-27", "10-26"), (2030, "04-26", "11-01")]),
        (SummerTime::Israel, [(2026, "03-27", "10-25"), (2027, "03-26", "10-31"), (2028, "03-24", "10-29"), (2029, "03-23", "10-28"), (2030, "03-29", "10-27")]),
        (SummerTime::Palestine, [(2026, "03-28", "10-24"), (2027, "03-27", "10-30"), (2028, "03-25", "10-28"), (2029, "03-24", "10-27"), (2030, "03-30", "10-26")]),
    ];

    fn date(year: i32, month_day: &str) -> NaiveDate {
        format!("{year}-{month_day}").parse().unwrap()
    }

    fn noon_offset(clock: Clock, date: NaiveDate) -> f64 {
        clock.offset_on(date).0
    }

    #[test]
    fn clocks_change_on_the_days_of_the_time_zone_database() {
        for (summer_time, years) in DATES {
            let clock = Clock { utc_offset_min: 120, summer_time };
            let summer = if summer_time == SummerTime::LordHowe { 2.5 } else { 3.0 };
            for (year, start, end) in years {
                let (start, end) = (date(year, start), date(year, end));
                let before = |d: NaiveDate| d.pred_opt().unwrap();
                assert_eq!(
                    noon_offset(clock, before(start)),
                    2.0,
                    "{summer_time:?} before {start}"
                );
                assert_eq!(noon_offset(clock, start), summer, "{summer_time:?} on {start}");
                assert_eq!(noon_offset(clock, before(end)), summer, "{summer_time:?} before {end}");
                assert_eq!(noon_offset(clock, end), 2.0, "{summer_time:?} on {end}");
            }
        }
    }

    #[test]
    fn the_south_has_its_summer_over_new_year() {
        let sydney = Clock { utc_offset_min: 600, summer_time: SummerTime::Australia };
        assert_eq!(noon_offset(sydney, date(2026, "12-31")), 11.0);
        assert_eq!(noon_offset(sydney, date(2027, "01-01")), 11.0);
        assert_eq!(noon_offset(sydney, date(2026, "07-01")), 10.0);
    }

    #[test]
    fn offsets_of_a_quarter_hour_and_west_of_greenwich_are_kept() {
        let nepal = Clock { utc_offset_min: 345, summer_time: SummerTime::None };
        assert_eq!(noon_offset(nepal, date(2026, "06-21")), 5.75);
        let newfoundland = Clock { utc_offset_min: -210, summer_time: SummerTime::NorthAmerica };
        assert_eq!(noon_offset(newfoundland, date(2026, "01-15")), -3.5);
        assert_eq!(noon_offset(newfoundland, date(2026, "06-21")), -2.5);
    }

    #[test]
    fn the_ends_of_the_calendar_are_ordinary_dates() {
        for summer_time in SummerTime::ALL {
            let clock = Clock { utc_offset_min: 0, summer_time };
            for date in [NaiveDate::MIN, NaiveDate::MAX] {
                assert!((0.0..=1.0).contains(&clock.offset_on(date).0));
            }
        }
    }

    #[test]
    fn clocks_are_written_in_plain_words() {
        let clock = Clock { utc_offset_min: 780, summer_time: SummerTime::NewZealand };
        let text = serde_json::to_string(&clock).unwrap();
        assert_eq!(text, r#"{"utc_offset_min":780,"summer_time":"new_zealand"}"#);
        assert_eq!(serde_json::from_str::<Clock>(&text).unwrap(), clock);
        for (number, summer_time) in SummerTime::ALL.into_iter().enumerate() {
            assert_eq!(summer_time as usize, number, "the order is frozen");
        }
    }
}
