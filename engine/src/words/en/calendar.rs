//! Months and weekdays.

const MONTHS: [&str; 12] = [
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
    "November", "December",
];
const WEEKDAYS: [&str; 7] =
    ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];

/// A month, January being 0.
#[must_use]
pub fn month(month: usize) -> &'static str {
    MONTHS.get(month).copied().unwrap_or("–")
}

/// A month in three letters.
#[must_use]
pub fn month_short(number: usize) -> &'static str {
    month(number).get(..3).unwrap_or("–")
}

/// A weekday, Monday being 0.
#[must_use]
pub fn weekday(day: usize) -> &'static str {
    WEEKDAYS.get(day).copied().unwrap_or("–")
}

/// A weekday in three letters.
#[must_use]
pub fn weekday_short(day: usize) -> &'static str {
    weekday(day).get(..3).unwrap_or("–")
}
