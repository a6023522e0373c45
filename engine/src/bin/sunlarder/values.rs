//! Figures, months and instants as they are typed.

use chrono::{DateTime, NaiveDate, NaiveDateTime, NaiveTime};
use sunlarder_engine::logbook::Symptom;
use sunlarder_engine::outlook::Question;
use sunlarder_engine::words::command_line::Fault;

/// Reads the name of a figure that has a working.
pub(crate) fn figure(given: String) -> Result<Question, Fault> {
    match given.as_str() {
        "capacity" => Ok(Question::Capacity),
        "budget" => Ok(Question::Budget),
        "autonomy" => Ok(Question::Autonomy),
        "month" => Ok(Question::Month),
        _ => Err(Fault::UnknownFigure(given)),
    }
}

/// Reads the name of a symptom.
pub(crate) fn symptom(given: String) -> Result<Symptom, Fault> {
    let found = Symptom::ALL.into_iter().find(|own| own.name() == given);
    found.ok_or(Fault::UnknownSymptom(given))
}

/// Reads a month from 1 to 12; January is 0.
pub(crate) fn month(given: &str) -> Result<usize, Fault> {
    let number = given.parse().ok().filter(|number| (1..=12).contains(number));
    number.map(|number: usize| number - 1).ok_or_else(|| Fault::NoMonth(given.to_owned()))
}

/// Reads a date and time by ISO 8601: with an offset, or in universal time; a date alone is its midnight.
pub(crate) fn instant(given: String) -> Result<NaiveDateTime, Fault> {
    let text = given.replacen(' ', "T", 1);
    if let Ok(zoned) = DateTime::parse_from_rfc3339(&text) {
        return Ok(zoned.naive_utc());
    }
    let bare = text.strip_suffix(['Z', 'z']).unwrap_or(&text);
    ["%Y-%m-%dT%H:%M:%S%.f", "%Y-%m-%dT%H:%M"]
        .into_iter()
        .find_map(|format| NaiveDateTime::parse_from_str(bare, format).ok())
        .or_else(|| Some(bare.parse::<NaiveDate>().ok()?.and_time(NaiveTime::MIN)))
        .ok_or(Fault::NotAnInstant(given))
}
