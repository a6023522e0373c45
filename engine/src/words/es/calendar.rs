//! Names of months and weekdays.

const MONTHS: [&str; 12] = [
    "enero",
    "febrero",
    "marzo",
    "abril",
    "mayo",
    "junio",
    "julio",
    "agosto",
    "septiembre",
    "octubre",
    "noviembre",
    "diciembre",
];

const WEEKDAYS: [&str; 7] =
    ["lunes", "martes", "miércoles", "jueves", "viernes", "sábado", "domingo"];

/// Short names of the days.
const WEEKDAYS_SHORT: [&str; 7] = ["lun", "mar", "mié", "jue", "vie", "sáb", "dom"];

/// First letters of the months, as capitals.
const INITIALS: [&str; 12] = ["E", "F", "M", "A", "M", "J", "J", "A", "S", "O", "N", "D"];

/// Letters of the short name of a month; Spanish months stay apart with three.
const SHORT: usize = 3;

/// Name of a month, January being 0; “–” for any number above 11.
#[must_use]
pub fn month(month: usize) -> &'static str {
    MONTHS.get(month).copied().unwrap_or("–")
}

/// Its name at the beginning of a sentence.
#[must_use]
pub fn month_first(at: usize) -> String {
    // Names of months are plain letters.
    let name = month(at);
    match (name.get(..1), name.get(1..)) {
        (Some(first), Some(rest)) => first.to_ascii_uppercase() + rest,
        _ => name.to_owned(),
    }
}

/// Its name in three letters.
#[must_use]
pub fn month_short(at: usize) -> &'static str {
    month(at).get(..SHORT).unwrap_or("–")
}

/// Its first letter, for narrow charts; not unique.
#[must_use]
pub fn month_initial(at: usize) -> &'static str {
    INITIALS.get(at).copied().unwrap_or("–")
}

/// Name of a day of the week, Monday being 0; “–” for any number above 6.
#[must_use]
pub fn weekday(day: usize) -> &'static str {
    WEEKDAYS.get(day).copied().unwrap_or("–")
}

/// Its name in three letters.
#[must_use]
pub fn weekday_short(day: usize) -> &'static str {
    WEEKDAYS_SHORT.get(day).copied().unwrap_or("–")
}

/// The half of the day, before noon or after it.
#[must_use]
pub fn half_of_day(after_noon: bool) -> &'static str {
    if after_noon { "p.\u{a0}m." } else { "a.\u{a0}m." }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_whole_and_short_names_stay_apart() {
        assert_eq!((month(0), month_short(11), month_initial(4)), ("enero", "dic", "M"));
        assert_eq!((weekday(2), weekday_short(5)), ("miércoles", "sáb"));
        assert_eq!((month_first(0), month_first(12)), ("Enero".into(), "–".into()));
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
