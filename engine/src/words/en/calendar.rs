//! Names of months and weekdays.

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

const WEEKDAYS: [&str; 7] =
    ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];

/// Letters of a short name; English months and weekdays stay apart with three.
const SHORT: usize = 3;

/// Name of a month, January being 0; “–” for any number above 11.
#[must_use]
pub fn month(month: usize) -> &'static str {
    MONTHS.get(month).copied().unwrap_or("–")
}

/// Its name in three letters.
#[must_use]
pub fn month_short(at: usize) -> &'static str {
    month(at).get(..SHORT).unwrap_or("–")
}

/// Its first letter, for narrow charts; not unique.
#[must_use]
pub fn month_initial(at: usize) -> &'static str {
    month(at).get(..1).unwrap_or("–")
}

/// Name of a day of the week, Monday being 0; “–” for any number above 6.
#[must_use]
pub fn weekday(day: usize) -> &'static str {
    WEEKDAYS.get(day).copied().unwrap_or("–")
}

/// Its name in three letters.
#[must_use]
pub fn weekday_short(day: usize) -> &'static str {
    weekday(day).get(..SHORT).unwrap_or("–")
}

/// The half of the day, before noon or after it.
#[must_use]
pub fn half_of_day(after_noon: bool) -> &'static str {
    if after_noon { "pm" } else { "am" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_whole_and_short_names_stay_apart() {
        assert_eq!((month(0), month_short(11), month_initial(4)), ("January", "Dec", "M"));
        assert_eq!((weekday(0), weekday_short(6)), ("Monday", "Sun"));
        assert_eq!((month(12), weekday(7), month_short(12)), ("–", "–", "–"));
        let mut months: Vec<_> = (0..12).map(month_short).collect();
        let mut days: Vec<_> = (0..7).map(weekday_short).collect();
        months.sort_unstable();
        months.dedup();
        days.sort_unstable();
        days.dedup();
        assert_eq!((months.len(), days.len()), (12, 7));
    }
}
