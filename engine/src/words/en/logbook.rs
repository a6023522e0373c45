//! Words of the logbook.

use chrono::{Datelike, NaiveDateTime, Timelike};

use super::calendar::month;
use crate::logbook::{Adoption, Estimate, Guess, Learned, Next, Order, Part, Slip, Study, What};
use crate::quantity::{Amps, Volts};
use crate::words::Words;
use crate::words::logbook::OnLogbook;

/// A word or two over a part of the logbook.
#[must_use]
pub fn heading(part: OnLogbook) -> &'static str {
    use OnLogbook as O;
    match part {
        O::Found => "What does not agree",
        O::Agrees => "What the readings tell, without an alarm",
        O::Untold => "What these readings cannot tell",
        O::Next => "What to read next",
        O::Adopt => "What the plan can take over",
        O::FromHere => {
            "From the newest reading on, with what can be taken over, in average weather"
        }
        O::NotRead => "Lines that are not used",
        O::Guessed => "What had to be guessed",
        O::Causes => "What may be behind it, the likeliest first",
        O::LayUp => "When it is laid up for the winter",
        O::Upkeep => "Upkeep",
        O::Test => "Test",
        O::NothingFound => "Nothing is beyond what chance makes of a healthy system.",
        O::TooFew => "These readings are too few to tell whether anything is wrong.",
        O::Interval => "In brackets stands what holds the truth nine times in ten.",
        O::NotUsed => "Readings that are not used",
        O::NothingToAdopt => "Nothing that was learned is a reason to change the plan.",
        O::HowAdopted => {
            "More use is written as more power of every load, and the inverter’s own draw stays. What goes in past the shunt or sets the gauge falsely to full is mended, not planned; what goes out past it is planned for until it is mended; the arrays stay as they are, for weeks do not tell weak ones from dull weather. The variant starts at the newest reading."
        }
    }
}

/// The reading to take next.
#[must_use]
pub fn next(next: Next) -> &'static str {
    match next {
        Next::DuskAndDawn => "Read the gauge at dusk and again at dawn, on several days.",
        Next::ArraysOff => {
            "On a day switch the arrays off for an hour, and read the gauge at its start and its end."
        }
        Next::AllOff => "Switch everything off and read the current.",
        Next::NotFullDays => "Read mornings and evenings of days that do not end full.",
        Next::DeepAndRested => {
            "Read percentage and voltage in a morning on which the bank is nearer its reserve, after some hours with little current."
        }
        Next::FullToFull => {
            "Note amp-hours out and in from one truly full charge to the next, before the gauge is set to full."
        }
        Next::ClampCharging => {
            "While it charges, hold a clamp meter around the battery's own cable and note it beside the gauge's current."
        }
        Next::ClampAllOff => {
            "With everything off, hold a clamp meter around the battery's own cable and note it beside the gauge's current."
        }
        Next::AtFull => {
            "When the gauge says full note voltage and current, and the voltage of the next morning."
        }
        Next::EachBattery => "Note the voltage of each battery apart after some hours of rest.",
    }
}

/// What was weighed.
#[must_use]
pub fn weighed(study: &Study) -> String {
    let count = |many: usize, one: &str, more: &str| match many {
        1 => format!("1 {one}"),
        many => format!("{many} {more}"),
    };
    format!(
        "From {}, {} that ended less than full, {} and {}.",
        count(study.nights, "night", "nights"),
        count(study.open_days, "day", "days"),
        count(study.fulls, "moment that counts as full", "moments that count as full"),
        count(study.voltages, "voltage", "voltages")
    )
}

/// Date and clock time of a reading.
#[must_use]
pub fn moment(words: Words, at: NaiveDateTime) -> String {
    let minutes = (at.hour() * 60 + at.minute()) as u16;
    format!("{} {} {}, {}", at.day(), month(at.month0() as usize), at.year(), words.clock(minutes))
}

/// Something that was learned.
#[must_use]
pub fn learned(words: Words, learned: &Learned, at: Option<NaiveDateTime>) -> String {
    let own = &learned.estimate;
    let share = |of: f64| words.chance(of);
    let amps = |of: f64| words.amount(Amps(of));
    let (size, other_way) = own.size();
    let range_of = |own: &Estimate, say: &dyn Fn(f64) -> String| {
        format!("{} ({} to {})", say(own.best), say(own.low), say(own.high))
    };
    let range = |say: &dyn Fn(f64) -> String| range_of(own, say);
    let way = |goes_in: bool| if goes_in == other_way { "out" } else { "in" };
    match learned.what {
        What::NightUse => format!("Use by night is {} of the plan's.", range(&share)),
        What::DayUse => format!("Use by day may be {} of the plan's.", range(&share)),
        What::NightDrain => format!(
            "If that is one steady draw and not more use, it is {} beyond the plan.",
            range(&amps)
        ),
        What::Yield => format!(
            "The arrays brought {} of the plan's mean weather; dull or bright days are part of that.",
            range(&share)
        ),
        What::Capacity => format!("The bank holds {} of what the plan says.", range(&share)),
        What::Efficiency => {
            format!("Of the charge put in, {} comes out again.", range(&share))
        }
        What::Bypass => format!(
            "While something charges, {} goes {} past the shunt.",
            range_of(&size, &amps),
            way(true)
        ),
        What::HiddenDrain => {
            format!("At all times {} goes {} past the shunt.", range_of(&size, &amps), way(false))
        }
        What::FalseFull => match at {
            Some(at) => format!(
                "By {} the gauge had been set to full while {} were missing.",
                moment(words, at),
                range(&share)
            ),
            None => format!(
                "No false full was seen; one of up to {} could pass unseen.",
                share(own.high)
            ),
        },
        What::RestVoltage => format!(
            "The rested voltage lies {} off that of the chemistry.",
            range(&|of| words.amount(Volts(of)))
        ),
    }
}

/// The state of charge at the newest reading.
#[must_use]
pub fn charge_now(words: Words, charge: &Estimate) -> String {
    format!(
        "At the newest reading the bank is {} full ({} to {}).",
        words.chance(charge.best),
        words.chance(charge.low),
        words.chance(charge.high)
    )
}

/// That a bank was read lower or higher than it may be.
#[must_use]
pub fn beyond(words: Words, at: NaiveDateTime, volts: Volts, limit: Volts) -> String {
    let (volts_said, limit_said) = (words.amount(volts), words.amount(limit));
    let why = if volts < limit {
        "under the voltage at which loads are cut off: charge the bank and look for the cause"
    } else {
        "more than its chargers should hold: find out which one does that"
    };
    format!(
        "On {} the bank had {volts_said}. Beside {limit_said} that is {why}, whatever the gauge shows.",
        moment(words, at)
    )
}

fn part(part: Part) -> &'static str {
    match part {
        Part::Time => "The time",
        Part::Percent => "The percentage",
        Part::AmpHours => "The amp-hours",
        Part::Volts => "The voltage",
        Part::Amps => "The current",
    }
}

fn unit(part: Part) -> &'static str {
    match part {
        Part::Time => "",
        Part::Percent => "\u{a0}%",
        Part::AmpHours => "\u{a0}Ah",
        Part::Volts => "\u{a0}V",
        Part::Amps => "\u{a0}A",
    }
}

/// Why a reading is not used.
#[must_use]
pub fn slip(words: Words, slip: &Slip) -> String {
    match slip {
        Slip::OutOfRange { part: own, value, least, most } => format!(
            "{} is {}{unit}; in this plan it goes from {} to {}{unit}.",
            part(*own),
            words.as_given(*value),
            words.as_given(*least),
            words.as_given(*most),
            unit = unit(*own)
        ),
        Slip::NoNumber { part: own, text } => {
            format!("{} should be a number and is “{text}”.", part(*own))
        }
        Slip::NoTime { text } => {
            format!("“{text}” is no date with a time; write it as 2026-03-31 18:30.")
        }
        Slip::Empty => "There is a time and nothing read at it.".to_owned(),
        Slip::Short => "There are fewer cells than the date needs.".to_owned(),
        Slip::Twice => "There is another reading of the same time; that one counts.".to_owned(),
        Slip::TooMany { count } => {
            format!("There are {count} readings; only the newest are used.")
        }
        Slip::TooOld => "It is more than a year older than the newest reading.".to_owned(),
        Slip::OutsideYears => "Its year must lie in 2020 to 2099.".to_owned(),
    }
}

/// The same with the number of the line.
#[must_use]
pub fn in_line(number: &str, slip: &str) -> String {
    format!("Line {number}: {slip}")
}

/// What amp-hours are that a gauge shows.
pub const LEFT_OR_TAKEN: [&str; 2] = ["left", "taken"];

/// What became of a table: how many were added, were there already, found no room.
#[must_use]
pub fn taken(new: &str, known: &str, dropped: &str, limit: usize) -> (String, [String; 2]) {
    let dropped = format!("The oldest {dropped} found no room: a plan keeps {limit}.");
    let known = format!("Already there: {known}.");
    (format!("Readings added: {new}."), [known, dropped])
}

/// That there are so many more lines.
#[must_use]
pub fn more_lines(count: &str) -> String {
    format!("Further lines that are not used: {count}.")
}

/// What the reader had to guess.
#[must_use]
pub fn guess(guess: Guess) -> &'static str {
    match guess {
        Guess::NoHeadings => {
            "There are no headings: the columns were taken as date, time, percentage, volts and amps."
        }
        Guess::DateOrder(Order::DayFirst) => {
            "The dates do not tell whether day or month comes first: the day was taken."
        }
        Guess::DateOrder(Order::MonthFirst) => {
            "The dates do not tell whether day or month comes first: the month was taken."
        }
        Guess::MissingFromFull => "Amp-hours below zero were taken as what is missing from full.",
        Guess::TooLong => "The text is too long; only its first lines were read.",
    }
}

/// What a plan can take over.
#[must_use]
pub fn adoption(words: Words, adoption: &Adoption) -> String {
    match adoption {
        Adoption::Use(share) => format!("All use times {}", words.decimal(*share, 2)),
        Adoption::Health(health) => {
            format!("Age has left {} of the capacity", words.chance(health.ratio()))
        }
        Adoption::Standing(amps) => format!("A standing draw of {} more", words.amount(*amps)),
        Adoption::Efficiency(own) => {
            format!("A charge efficiency of {}", words.chance(own.ratio()))
        }
    }
}
