//! Dates and clock times as people write them.

use chrono::{NaiveDate, NaiveDateTime, NaiveTime};

/// What stands first in a date that does not begin with its year.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Order {
    /// The day.
    DayFirst,
    /// The month.
    MonthFirst,
}

/// The three numbers of a date and whether points part them.
fn parts(date: &str) -> Option<([u32; 3], bool)> {
    let mut all = [0; 3];
    let mut count = 0;
    for part in date.split(['-', '/', '.', ' ']).filter(|part| !part.is_empty()) {
        if part.len() > 4 || !part.bytes().all(|own| own.is_ascii_digit()) {
            return None;
        }
        *all.get_mut(count)? = part.parse().ok()?;
        count += 1;
    }
    (count == 3).then_some((all, date.contains('.')))
}

/// The date of a cell and what stands behind it.
fn split(cell: &str) -> (&str, &str) {
    let cell = cell.trim();
    let at = cell.find(['T', ' ']).unwrap_or(cell.len());
    let (date, rest) = cell.split_at(at);
    (date, rest.trim_start_matches(['T', ' ']))
}

fn date([a, b, c]: [u32; 3], order: Order) -> Option<NaiveDate> {
    let century = |year: u32| if year < 100 { year + 2000 } else { year } as i32;
    if a > 999 {
        return NaiveDate::from_ymd_opt(a as i32, b, c);
    }
    match order {
        Order::DayFirst => NaiveDate::from_ymd_opt(century(c), b, a),
        Order::MonthFirst => NaiveDate::from_ymd_opt(century(c), a, b),
    }
}

/// The order of all dates, and whether they tell it: by a number over 12, by points, or because nothing depends on it.
pub(super) fn order(cells: &[String]) -> (Order, bool) {
    let dates: Vec<([u32; 3], bool)> = cells
        .iter()
        .filter_map(|cell| parts(split(cell).0))
        .filter(|(own, _)| own[0] <= 999)
        .collect();
    let over = |place: usize| dates.iter().any(|(own, _)| own[place] > 12);
    if dates.is_empty() || over(0) || dates.iter().any(|(_, points)| *points) {
        return (Order::DayFirst, true);
    }
    if over(1) {
        return (Order::MonthFirst, true);
    }
    // A logbook is kept without long breaks: the order that spans less time is likelier.
    let span = |order: Order| {
        let all = dates.iter().filter_map(|(own, _)| date(*own, order));
        let (least, most) = all.fold((NaiveDate::MAX, NaiveDate::MIN), |(least, most), own| {
            (least.min(own), most.max(own))
        });
        (most - least).num_days()
    };
    if span(Order::MonthFirst) < span(Order::DayFirst) {
        (Order::MonthFirst, false)
    } else {
        (Order::DayFirst, false)
    }
}

/// A clock time: 18:30, 18:30:15, 18h30, 6:30 pm, 6 p. m.
pub(super) fn clock(text: &str) -> Option<NaiveTime> {
    let mut text: String = text.chars().filter(|own| !own.is_whitespace() && *own != '.').collect();
    text.make_ascii_lowercase();
    let (text, noon) = match (text.strip_suffix("am"), text.strip_suffix("pm")) {
        (Some(rest), _) => (rest, Some(0)),
        (_, Some(rest)) => (rest, Some(12)),
        _ => (text.strip_suffix('h').unwrap_or(&text), None),
    };
    let text = text.split(['z', '+']).next().unwrap_or(text);
    let mut numbers = text.split([':', 'h', '-']).take(3);
    let mut next = || -> Option<Option<u32>> {
        match numbers.next() {
            None | Some("") => Some(None),
            Some(own) if own.len() <= 2 => own.parse().ok().map(Some),
            Some(_) => None,
        }
    };
    let (hour, minute, second) = (next()??, next()?, next()?);
    let hour = match noon {
        Some(add) if (1..=12).contains(&hour) => hour % 12 + add,
        Some(_) => return None,
        None if minute.is_none() && !text.is_empty() && text.len() > 2 => return None,
        None => hour,
    };
    NaiveTime::from_hms_opt(hour, minute.unwrap_or(0), second.unwrap_or(0))
}

/// A date and a clock time, which stands behind the date where it has no cell of its own.
pub(super) fn read(cell: &str, own_clock: &str, order: Order) -> Option<NaiveDateTime> {
    let (day, rest) = split(cell);
    let (numbers, _) = parts(day)?;
    let at = if own_clock.is_empty() { rest } else { own_clock };
    // Tenths of a second are none of ours.
    let at = at.split_once('.').filter(|own| own.1.starts_with('0')).map_or(at, |own| own.0);
    Some(date(numbers, order)?.and_time(clock(at)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn clocks_of_both_kinds() {
        for (text, wanted) in [
            ("18:30", "18:30:00"),
            ("6:30 pm", "18:30:00"),
            ("06:30 P. M.", "18:30:00"),
            ("12:05 am", "00:05:00"),
            ("12 pm", "12:00:00"),
            ("18h30", "18:30:00"),
            ("7h", "07:00:00"),
            ("07:15:30", "07:15:30"),
            ("18:30:00+02:00", "18:30:00"),
            ("18:30Z", "18:30:00"),
        ] {
            assert_eq!(clock(text).map(|own| own.to_string()).as_deref(), Some(wanted), "{text}");
        }
        for wrong in ["", "25:00", "13 pm", "0 am", "7:61", "noon", "-7:00", "18:300", "::"] {
            assert_eq!(clock(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn dates_tell_their_order_or_do_not() {
        let told =
            |dates: &[&str]| order(&dates.iter().map(|own| (*own).to_owned()).collect::<Vec<_>>());
        assert_eq!(told(&["31/03/2026"]), (Order::DayFirst, true));
        assert_eq!(told(&["03/31/2026"]), (Order::MonthFirst, true));
        assert_eq!(told(&["1.2.2026"]), (Order::DayFirst, true));
        assert_eq!(told(&["2026-01-02"]), (Order::DayFirst, true));
        assert_eq!(told(&["3/4/2026", "4/4/2026"]), (Order::DayFirst, false));
        assert_eq!(told(&["4/3/2026", "4/4/2026"]), (Order::MonthFirst, false));
    }
}
