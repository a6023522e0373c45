//! Which column holds what.

use super::when;
use crate::digits::places_of;
use crate::place::{is_letter, lowered};

/// Places of the columns, from 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Columns {
    /// The date, with or without the clock time.
    pub date: usize,
    /// The clock time, where it has a column of its own.
    pub clock: Option<usize>,
    /// The percentage.
    pub percent: Option<usize>,
    /// Amp-hours.
    pub charge: Option<usize>,
    /// Whether they are what was taken since full.
    pub taken: bool,
    /// The voltage.
    pub volts: Option<usize>,
    /// Volts in one of its unit.
    pub volt_unit: f64,
    /// The current.
    pub amps: Option<usize>,
    /// Amps in one of its unit.
    pub amp_unit: f64,
    /// Whether a current out of the bank is positive.
    pub out: bool,
}

impl Default for Columns {
    fn default() -> Self {
        Self {
            date: 0,
            clock: None,
            percent: None,
            charge: None,
            taken: false,
            volts: None,
            volt_unit: 1.0,
            amps: None,
            amp_unit: 1.0,
            out: false,
        }
    }
}

impl Columns {
    /// The cells of date and clock time; the second empty where the first has both. None if the line is too short.
    pub(super) fn when(&self, cells: &[String]) -> Option<(String, String)> {
        let date = cells.get(self.date)?;
        let clock = match self.clock {
            Some(at) => cells.get(at).map_or("", String::as_str),
            None => "",
        };
        Some((date.clone(), clock.to_owned()))
    }
}

/// What a heading names.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Date,
    Clock,
    Percent,
    Charge,
    Volts,
    Amps,
}

/// Words in headings, in English and Spanish, the more special first.
const WORDS: [(Kind, &[&str]); 6] = [
    (Kind::Date, &["timestamp", "datetime", "date", "fecha", "when", "cuándo", "día", "day"]),
    (
        Kind::Charge,
        &["ah", "amp-h", "amp h", "amperios hora", "amperios-hora", "amperihora", "amperio-hora"],
    ),
    (
        Kind::Percent,
        &[
            "%",
            "soc",
            "state of charge",
            "percent",
            "estado de carga",
            "porcent",
            "por ciento",
            "level",
            "nivel",
        ],
    ),
    (Kind::Volts, &["volt", "tensi", "(v)", "[v]", "mv"]),
    (Kind::Amps, &["current", "corriente", "intensidad", "amp", "(a)", "[a]", "(ma)"]),
    (Kind::Clock, &["time", "hora", "clock", "reloj"]),
];
/// Headings of one letter.
const LETTERS: [(Kind, &[&str]); 3] =
    [(Kind::Volts, &["v", "u"]), (Kind::Amps, &["a", "i"]), (Kind::Percent, &["s"])];
const TAKEN: [&str; 6] = ["used", "taken", "consum", "gastad", "usad", "missing"];
const OUT: [&str; 5] = ["discharge", "descarga", "out", "salida", "load"];

/// Whether a text holds a word.
fn holds(text: &str, word: &str) -> bool {
    places_of(text, word).next().is_some()
}

fn kind(heading: &str) -> Option<Kind> {
    let letter = LETTERS.iter().find(|(_, letters)| letters.contains(&heading));
    let named = |word: &&str| {
        // Two letters are a word of their own, or they would be found everywhere.
        if word.len() > 2 || *word == "%" {
            holds(heading, word)
        } else {
            heading.split(|own: char| !is_letter(own)).any(|part| part == *word)
        }
    };
    letter.or_else(|| WORDS.iter().find(|(_, words)| words.iter().any(&named))).map(|own| own.0)
}

/// The columns that headings name; none if the line has no headings.
pub(super) fn of(cells: &[String]) -> Option<Columns> {
    let mut own = Columns::default();
    let (mut date, mut found) = (None, false);
    for (place, cell) in cells.iter().enumerate() {
        let heading: String = cell.chars().map(lowered).collect();
        if heading.chars().next().is_none_or(|first| first.is_ascii_digit()) {
            continue;
        }
        let has = |words: &[&str]| words.iter().any(|word| holds(&heading, word));
        match kind(&heading) {
            Some(Kind::Date) if date.is_none() => date = Some(place),
            Some(Kind::Clock) if own.clock.is_none() => own.clock = Some(place),
            Some(Kind::Percent) if own.percent.is_none() => own.percent = Some(place),
            Some(Kind::Charge) if own.charge.is_none() => {
                own.charge = Some(place);
                own.taken = has(&TAKEN);
            }
            Some(Kind::Volts) if own.volts.is_none() => {
                own.volts = Some(place);
                own.volt_unit = if has(&["mv"]) { 0.001 } else { 1.0 };
            }
            Some(Kind::Amps) if own.amps.is_none() => {
                own.amps = Some(place);
                own.amp_unit = if has(&["(ma)", "[ma]"]) { 0.001 } else { 1.0 };
                own.out = has(&OUT);
            }
            _ => continue,
        }
        found = true;
    }
    // A time without a date is both in one.
    own.date = date.or(own.clock).unwrap_or(0);
    if date.is_none() {
        own.clock = None;
    }
    found.then_some(own)
}

/// Date, clock time if the next cell is one, percentage, volts, amps.
pub(super) fn by_place(cells: &[String]) -> Columns {
    let clock =
        cells.get(1).filter(|cell| when::clock(cell).is_some() && cell.contains([':', 'h', 'm']));
    let from = if clock.is_some() { 2 } else { 1 };
    Columns {
        clock: clock.map(|_| 1),
        percent: Some(from),
        volts: Some(from + 1),
        amps: Some(from + 2),
        ..Columns::default()
    }
}
