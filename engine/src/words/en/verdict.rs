//! The verdict, what explains it, and what stands in the way.

use chrono::{Datelike, NaiveDateTime, Timelike};

use super::calendar::{month, month_short, weekday};
use crate::outlook::{Generated, HORIZON_DAYS, Month, Obstacle, Opening, Outlook, Tight, Verdict};
use crate::quantity::{AmpHours, Hours, Volts};
use crate::system::System;
use crate::words::{NameOf, Sentence, Tone, Words};
use crate::working::Tag;

/// The verdict as a headline, its deciding moment apart.
#[must_use]
pub fn headline(words: Words, opening: &Opening) -> Sentence {
    let now = month(opening.month);
    // An average is no good news where a life may depend on it.
    let good = if opening.is_vital() { Tone::Plain } else { Tone::Good };
    match &opening.verdict {
        Verdict::NothingRuns => {
            Sentence::new("Nothing runs yet: ", "add what you use", ".", Tone::Plain)
        }
        Verdict::CannotWork { .. } => {
            Sentence::new("As it stands, this ", "cannot work", ".", Tone::Bad)
        }
        Verdict::StartsBelowReserve { charge, .. } => Sentence::new(
            "You start at ",
            &words.amount(*charge),
            ", with nothing above your reserve.",
            Tone::Bad,
        ),
        Verdict::KeepsUp { all_year: true } => {
            Sentence::new("In average weather you keep up ", "all year round", ".", good)
        }
        Verdict::KeepsUp { .. } => {
            Sentence::new("In an average ", &format!("{now} you keep up"), ".", good)
        }
        Verdict::HoldsLong { days, .. } => Sentence::new(
            "You last more than ",
            &format!("{days} days"),
            ", but lose a little each day.",
            Tone::Plain,
        ),
        Verdict::ReachesReserve { at, after } => Sentence::new(
            "In average weather you reach your reserve on ",
            &moment(*at, *after),
            ".",
            Tone::Warn,
        ),
    }
}

/// The verdict in a few words, for the bar.
#[must_use]
pub fn short(opening: &Opening) -> String {
    match &opening.verdict {
        Verdict::NothingRuns => "Nothing runs yet".into(),
        Verdict::CannotWork { .. } => "Cannot work as it stands".into(),
        Verdict::StartsBelowReserve { .. } => "Starts with nothing above the reserve".into(),
        Verdict::KeepsUp { all_year: true } => "Keeps up all year".into(),
        Verdict::KeepsUp { .. } => format!("Keeps up in {}", month(opening.month)),
        Verdict::HoldsLong { days, .. } => format!("Lasts over {days} days"),
        Verdict::ReachesReserve { at, after } => format!("Reserve reached {}", moment(*at, *after)),
    }
}

/// What explains the verdict, in one or two sentences.
#[must_use]
pub fn explanation(
    words: Words,
    opening: &Opening,
    system: &System,
    name_of: NameOf<'_>,
) -> String {
    if let Verdict::CannotWork { why } = &opening.verdict {
        return obstacle(words, why, name_of);
    }
    if matches!(opening.verdict, Verdict::NothingRuns) {
        return "Pick things from the list, or type your own, and the answer appears here.".into();
    }
    let times = opening.times();
    let mut parts = Vec::new();
    // Then what belongs to the run of the headline, then the run without sun, so that no one mixes the two.
    if let Verdict::StartsBelowReserve { reserve, .. } = &opening.verdict {
        parts.push(format!(
            "The reserve is {}. Start fuller, or allow a deeper discharge.",
            words.amount(*reserve)
        ));
    }
    parts.extend(in_that_weather(opening, system));
    parts.extend(without_sun(opening));
    if opening.run.totals.generator.0 > 0.0 {
        parts.push("All of this counts on the generator, and on its fuel.".into());
    }
    // Nothing is duller than no sun at all.
    if times.dark_to_reserve.is_some() {
        parts.push("Real weeks can be duller than the average.".into());
    }
    parts.join(" ")
}

/// When the bank is full and when empty in the weather of the headline.
fn in_that_weather(opening: &Opening, system: &System) -> Option<String> {
    let times = opening.times();
    let full = times.to_full.filter(|full| {
        system.start.charge < 0.97 && opening.run.reserve_at.is_none_or(|reserve| *full < reserve)
    });
    let empties = matches!(opening.verdict, Verdict::ReachesReserve { .. });
    let happens = match (full.map(duration), times.to_empty.map(duration)) {
        (Some(full), Some(empty)) if empties => {
            format!("the bank is full after {full} and empty after {empty}")
        }
        (None, Some(empty)) if empties => format!("the bank is empty after {empty}"),
        (_, None) if empties => format!("the bank is not quite empty after {HORIZON_DAYS} days"),
        (Some(full), _) => format!("the bank is full after {full}"),
        _ => return None,
    };
    Some(format!("In that weather {happens}."))
}

/// By name what lives depend on, and what each of it needs.
#[must_use]
pub fn vital(opening: &Opening, name_of: NameOf<'_>) -> Option<String> {
    let named = |own: &Obstacle| match own {
        Obstacle::VitalLoad { load } => Some(format!("“{}”", load_name(*load, name_of))),
        _ => None,
    };
    let mut names: Vec<String> = opening.obstacles.iter().filter_map(named).collect();
    let last = names.pop()?;
    if names.is_empty() {
        return Some(format!(
            "A life may depend on {last}: it needs a backup of its own and an alarm, whatever is worked out here."
        ));
    }
    let others = names.join(", ");
    Some(format!(
        "A life may depend on {others} and {last}: each needs a backup of its own and an alarm, whatever is worked out here."
    ))
}

/// The name of a load, or its number.
fn load_name(place: u16, name_of: NameOf<'_>) -> String {
    name_of(Tag::Load(place)).unwrap_or_else(|| format!("Load {}", place + 1))
}

/// How soon the reserve comes with no sun at all; nothing for one who starts inside it.
fn without_sun(opening: &Opening) -> Option<String> {
    match (&opening.verdict, opening.times().dark_to_reserve) {
        (Verdict::StartsBelowReserve { .. }, _) => None,
        (_, Some(dark)) => {
            Some(format!("With no sun at all, the reserve comes after {}.", duration(dark)))
        }
        (_, None) => {
            Some(format!("Even with no sun at all you last more than {HORIZON_DAYS} days."))
        }
    }
}

/// Which months keep up, as short as it can be said.
#[must_use]
pub fn months_kept(bits: u16) -> String {
    match bits & 0xfff {
        0 => "no month".into(),
        0xfff => "all year".into(),
        bits => {
            let runs = month_runs(bits);
            let named = runs.iter().map(|&(from, to)| {
                if from == to {
                    month(from).to_owned()
                } else {
                    format!("{} to {}", month_short(from), month_short(to))
                }
            });
            named.collect::<Vec<_>>().join(", ")
        }
    }
}

/// Stretches of months round the year: first and last of each. Not for none or all.
fn month_runs(bits: u16) -> Vec<(usize, usize)> {
    let has = |month: usize| bits >> (month % 12) & 1 == 1;
    (0..12)
        .filter(|&month| has(month) && !has(month + 11))
        .map(|from| {
            let length = (0..12).take_while(|ahead| has(from + ahead)).count();
            (from, (from + length - 1) % 12)
        })
        .collect()
}

/// The tightest month and why.
#[must_use]
pub fn tightest(words: Words, outlook: &Outlook, nominal: Volts) -> String {
    let tightest = &outlook.tightest;
    let name = month(tightest.month);
    let balance = words.charge(tightest.balance.abs(), nominal);
    let why = match tightest.why {
        Tight::NoSource => "nothing comes in",
        Tight::LittleSun => "the sun brings least against what you use",
        Tight::MuchUse => "you use most against what comes in",
    };
    if tightest.balance.0 < 0.0 {
        format!("{name} is tightest: {balance} short a day, because {why}.")
    } else {
        format!("{name} is tightest, and still leaves {balance} a day over.")
    }
}

/// A moment of the run, named as people would: the weekday and part of day if it is near, else the date.
#[must_use]
pub fn moment(at: NaiveDateTime, after: Hours) -> String {
    let part = match at.hour() {
        0..=4 => "night",
        5..=10 => "morning",
        11..=13 => "midday",
        14..=17 => "afternoon",
        18..=21 => "evening",
        _ => "night",
    };
    // Past midnight people still speak of the night before.
    let day = if at.hour() <= 4 { at.date().pred_opt().unwrap_or(at.date()) } else { at.date() };
    if after.0 < 24.0 * 7.0 {
        let name = weekday(day.weekday().num_days_from_monday() as usize);
        format!("{name} {part}")
    } else {
        format!("{} {} ({part})", day.day(), month(day.month0() as usize))
    }
}

/// A length of time in the two largest units that matter.
#[must_use]
pub fn duration(hours: Hours) -> String {
    let plural = |count: u64, one: &str| {
        if count == 1 { format!("1 {one}") } else { format!("{count} {one}s") }
    };
    let whole = hours.0.max(0.0).round() as u64;
    let (days, rest) = (whole / 24, whole % 24);
    match (days, rest) {
        (0, 0) => plural((hours.0.max(0.0) * 60.0).round() as u64, "minute"),
        (0, rest) => plural(rest, "hour"),
        (days, 0) => plural(days, "day"),
        (days, rest) if days < 7 => format!("{} {}", plural(days, "day"), plural(rest, "hour")),
        (days, _) => plural(days, "day"),
    }
}

/// An obstacle or caution in one or two sentences: what, how much, what to do.
#[must_use]
pub fn obstacle(words: Words, obstacle: &Obstacle, name_of: NameOf<'_>) -> String {
    let load = |place: u16| load_name(place, name_of);
    let array = |place: u16| format!("Array {}", place + 1);
    match *obstacle {
        Obstacle::NoInverter { load: place } => {
            format!(
                "“{}” needs mains voltage, and there is no inverter. Add one, or take this out.",
                load(place)
            )
        }
        Obstacle::InverterOverloaded { peak, rated } => format!(
            "At one time {} would hang on an inverter of {}. Take a larger one, or do not run these together.",
            words.amount(peak),
            words.amount(rated)
        ),
        Obstacle::InverterOverApparent { peak, rated } => format!(
            "With their power factor, {} would hang on an inverter of {} at one time. Take a larger one, or do not run these together.",
            words.amount(peak),
            words.amount(rated)
        ),
        Obstacle::InverterSurge { load: place, peak, surge } => format!(
            "Starting “{}” takes {} for a moment; the inverter gives {}.",
            load(place),
            words.amount(peak),
            words.amount(surge)
        ),
        Obstacle::BankOverloaded { current, limit } => format!(
            "At one time {} would be drawn from a bank that may give {} without pause. Its protection would open.",
            words.amount(current),
            words.amount(limit)
        ),
        Obstacle::BankSurge { load: place, current, limit } => format!(
            "Starting “{}” draws {} for a moment; the bank may give {}.",
            load(place),
            words.amount(current),
            words.amount(limit)
        ),
        Obstacle::InverterBeyondBank { current, limit } => format!(
            "At full output the inverter would draw {}, more than the {} that the bank may give. Today's loads stay below it.",
            words.amount(current),
            words.amount(limit)
        ),
        Obstacle::BankSags { load: place, voltage, cut_off } => {
            let what = place.map_or_else(
                || "what runs together pulls".to_owned(),
                |place| format!("starting “{}” pulls", load(place)),
            );
            format!(
                "Near the reserve, in the cold, {what} the bank down to {} for a moment; below {} inverters and protection usually cut off. A larger bank sags less.",
                words.amount(voltage),
                words.amount(cut_off)
            )
        }
        Obstacle::ArrayVoltageTooHigh { array: place, voltage, at, limit } => format!(
            "{} reaches {} open-circuit at {}; its controller takes {} and would be destroyed. Put fewer modules in series.",
            array(place),
            words.amount(voltage),
            words.amount(at),
            words.amount(limit)
        ),
        Obstacle::ArrayVoltageTooLow { array: place, voltage, needed } => format!(
            "{} works at {}, and it takes more than {} to charge this bank. Put more modules in series.",
            array(place),
            words.amount(voltage),
            words.amount(needed)
        ),
        Obstacle::ColdNotKnown { array: place } => format!(
            "{}: the voltage rises in the cold. Enter the record low of the place to check it against the controller.",
            array(place)
        ),
        Obstacle::TooColdToCharge { months, least } => format!(
            "On average the bank is colder than {} {}, and must not be charged then. Keep it warmer.",
            words.amount(least),
            match months & 0xfff {
                0xfff => "all year round".to_owned(),
                months => format!("in {}", months_kept(months)),
            }
        ),
        Obstacle::MayFreeze { coldest, freezes, charge } => format!(
            "Down to {}, the acid of this bank freezes at {} and bursts the cells; it may get as cold as {}. Keep more charge or more warmth in it.",
            words.amount(charge),
            words.amount(freezes),
            words.amount(coldest)
        ),
        Obstacle::ProtectionMayOpen => {
            "If the battery protection opens while the engine charges, the alternator can be destroyed. Use a charger or regulator made for this.".into()
        }
        Obstacle::VitalLoad { load: place } => format!(
            "A life depends on “{}”. It needs a backup of its own and an alarm; do not rest it on this plan.",
            load(place)
        ),
        Obstacle::DangerousVoltage { voltage } => format!(
            "This bank reaches {} while charging: direct current over 60 V can kill. Leave it to a licensed person.",
            words.amount(voltage)
        ),
    }
}

/// How a day of a month comes out.
#[must_use]
pub fn day_balance(words: Words, balance: AmpHours, nominal: Volts) -> String {
    format!("{}{} a day", if balance.0 > 0.0 { "+" } else { "" }, words.charge(balance, nominal))
}

/// What a generator does on a mean day: its hours, and its fuel where that is known.
#[must_use]
pub fn generated(words: Words, generated: &Generated) -> String {
    // What it would have to do: by its limit, whatever the hours allow.
    if generated.hours.0 > 24.0 {
        return "needs more hours than a day has".into();
    }
    let hours = format!("needs {} a day", words.amount(generated.hours));
    match generated.fuel {
        Some(fuel) => format!("{hours}, {}", words.amount(fuel)),
        None => hours,
    }
}

/// The same as a sentence about a month; empty without one.
#[must_use]
pub fn generator_in(words: Words, of: &Month) -> String {
    let generated = of.generator.map(|own| generated(words, &own));
    generated.map_or(String::new(), |own| format!("In an average {} it {own}.", month(of.month)))
}

/// Days of autonomy.
#[must_use]
pub fn autonomy(words: Words, days: Option<f64>) -> String {
    days.map_or_else(
        || "no end".into(),
        |days| match days {
            days if days > 999.0 => "over 999 days".into(),
            days => format!("{} days", words.rounded(days)),
        },
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use chrono::NaiveDate;

    fn at(day: u32, hour: u32) -> NaiveDateTime {
        NaiveDate::from_ymd_opt(2026, 11, day).unwrap().and_hms_opt(hour, 0, 0).unwrap()
    }

    #[test]
    fn moments_are_named_as_people_would() {
        assert_eq!(moment(at(28, 7), Hours(39.0)), "Saturday morning");
        assert_eq!(moment(at(28, 2), Hours(34.0)), "Friday night");
        assert_eq!(moment(at(28, 13), Hours(400.0)), "28 November (midday)");
    }

    #[test]
    fn durations_say_what_matters() {
        let cases = [
            (0.4, "24 minutes"),
            (1.2, "1 hour"),
            (28.0, "1 day 4 hours"),
            (48.0, "2 days"),
            (500.0, "20 days"),
        ];
        for (hours, text) in cases {
            assert_eq!(duration(Hours(hours)), text);
        }
    }

    #[test]
    fn months_run_over_the_new_year() {
        assert_eq!(months_kept(0b0000_0111_0000), "May to Jul");
        assert_eq!(months_kept(0b1000_0000_0011), "Dec to Feb");
        assert_eq!(months_kept(0b0000_0100_0001), "January, July");
        assert_eq!(months_kept(0), "no month");
    }
}
