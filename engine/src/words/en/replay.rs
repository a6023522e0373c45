//! What a year of weather that somebody brought does with a plan.

use chrono::{Datelike, NaiveDateTime};

use super::calendar::month;
use super::verdict::{duration, moment};
use crate::outlook::clock_time;
use crate::quantity::Hours;
use crate::simulate::{REPLAY_DAYS, Replayed, ReplayedMonth};
use crate::system::System;
use crate::words::number::grouped_count;
use crate::words::{Words, decimal};

/// Months that are named one by one; of more only the worst is.
const NAMED: usize = 4;

/// Sentences, the most important first.
#[must_use]
pub fn replayed(words: Words, replayed: &Replayed, system: &System) -> Vec<String> {
    let mut lines = vec![reserve(replayed), short(replayed), lowest(replayed)];
    lines.push(if replayed.filled {
        let longest = duration(replayed.longest_without_full);
        format!("The longest time between two full charges is {longest}.")
    } else {
        "The bank is never full in that year.".to_owned()
    });
    lines.extend(from_the_start(replayed, system));
    lines.push("The bank enters January as the file's last three months leave it.".to_owned());
    lines.extend(replayed.is_far().then(|| far(words, replayed.distance_km)));
    lines.extend(replayed.contradicts().then(|| contradicts(replayed.contradiction)));
    lines
}

/// A count of hours: `210 hours`.
fn hours(time: Hours) -> String {
    match time.0.round() as usize {
        0 => "less than an hour".to_owned(),
        1 => "1 hour".to_owned(),
        many => format!("{} hours", grouped_count(many)),
    }
}

/// The month in which something lasts longest.
fn worst(replayed: &Replayed, of: fn(&ReplayedMonth) -> Hours) -> &'static str {
    let months = replayed.months.iter().enumerate();
    let longest = months.max_by(|(_, one), (_, other)| of(one).0.total_cmp(&of(other).0));
    longest.map_or("–", |(at, _)| month(at))
}

/// In which months the bank stays over its reserve, and for how long it does not.
fn reserve(replayed: &Replayed) -> String {
    let name = match replayed.name.as_str() {
        "" => "the file",
        name => name,
    };
    let months = replayed.months.iter().enumerate();
    let low: Vec<(usize, Hours)> = months
        .map(|(at, month)| (at, month.below_reserve))
        .filter(|(_, time)| time.0 > 0.0)
        .collect();
    let kept = match low.len() {
        0 => {
            return format!(
                "In the weather of {name} the bank stays above its reserve all year round."
            );
        }
        12 => "no month".to_owned(),
        11 => "1 of twelve months".to_owned(),
        low => format!("{} of twelve months", 12 - low),
    };
    let not = if low.len() <= NAMED {
        let each = low.iter().map(|(at, time)| format!("{} in {}", hours(*time), month(*at)));
        each.collect::<Vec<_>>().join(", ")
    } else {
        let worst = worst(replayed, |month| month.below_reserve);
        format!("{}, most of all in {worst}", hours(replayed.below_reserve()))
    };
    format!(
        "In the weather of {name} the bank stays above its reserve in {kept}; it is below for {not}."
    )
}

fn short(replayed: &Replayed) -> String {
    let short = replayed.short();
    if short.0 <= 0.0 {
        return "No load goes short.".to_owned();
    }
    let worst = worst(replayed, |month| month.short);
    format!("Loads go short for {}, most of all in {worst}.", hours(short))
}

fn lowest(replayed: &Replayed) -> String {
    let at = date(replayed.lowest_at);
    format!("It is lowest on {at}, at {}\u{a0}%.", decimal(replayed.lowest * 100.0, 0))
}

/// Day and month. The midnight at which a day ends belongs to it.
fn date(at: NaiveDateTime) -> String {
    let within = at.checked_sub_signed(chrono::Duration::minutes(1)).unwrap_or(at);
    format!("{} {}", within.day(), month(within.month0() as usize))
}

/// When the reserve comes from the start of the plan on; nothing for one who starts inside it.
fn from_the_start(replayed: &Replayed, system: &System) -> Option<String> {
    if system.start.charge <= system.bank.reserve.ratio() {
        return None;
    }
    Some(match replayed.run.reserve_at {
        Some(after) => {
            let at = moment(clock_time(system, after), after);
            format!("From your start your reserve comes on {at}.")
        }
        None => format!("From your start you stay above the reserve for {REPLAY_DAYS} days."),
    })
}

fn far(words: Words, distance_km: f64) -> String {
    format!(
        "The file is from {} away: it says how you would fare there, by the clock there.",
        words.distance(distance_km)
    )
}

fn contradicts(share: f64) -> String {
    format!(
        "In the file the light of the sun and that of the sky do not add up to all light, by {} % over the year: its clock may be off, or a column be something else.",
        decimal(share * 100.0, 0)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hours_and_dates_read_well() {
        assert_eq!(hours(Hours(0.25)), "less than an hour");
        assert_eq!(hours(Hours(1.25)), "1 hour");
        assert_eq!(hours(Hours(8760.0)), "8760 hours");
        let midnight = |day| chrono::NaiveDate::from_yo_opt(2026, day).unwrap().into();
        assert_eq!(date(midnight(13)), "12 January", "the end of that day");
        assert_eq!(date(midnight(13) + chrono::Duration::hours(7)), "13 January");
    }
}
