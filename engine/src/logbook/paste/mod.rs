//! Readings from pasted text: a table of any spreadsheet, or lines that somebody typed.
//!
//! **Reads** commas, semicolons or tabs between cells; headings in English or Spanish, or none; dates as 2026-03-31, 31.3.2026, 31/3/26 or
//! 3/31/26; clocks of 12 or 24 hours; a decimal point or comma; units in headings or behind numbers. What it had to guess it says
//! ([`Guess`]); a line that it cannot read it tells by its number with the reason, and leaves no other out for it.
//!
//! **Limits.** [`MOST_LINES`] lines. A current is into the bank unless its heading says that it is out. An offset behind a clock time is not
//! read: times are those of the clock at the place.

mod heading;
mod when;

use super::reading::{Bounds, Part, Reading, Shown, Slip};
use crate::digits::number;
use crate::quantity::{AmpHours, Amps, Percent, Volts};

pub use heading::Columns;
pub use when::Order;

/// Most lines that are read.
pub const MOST_LINES: usize = 20_000;
/// Characters of a wrong cell that are told.
const TOLD: usize = 20;

/// What the reader had to guess.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Guess {
    /// There are no headings: the columns are date, time, percentage, volts and amps in this order.
    NoHeadings,
    /// No date tells whether day or month stands first; this was taken.
    DateOrder(Order),
    /// Amp-hours are below nothing: they were taken as what is missing from full.
    MissingFromFull,
    /// Only so many lines were read.
    TooLong,
}

/// What was pasted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pasted {
    /// What could be read, in the order of the lines.
    pub readings: Vec<Reading>,
    /// The line of each reading, from 1.
    pub lines: Vec<usize>,
    /// Lines that could not, by their number from 1.
    pub slips: Vec<(usize, Slip)>,
    /// What was guessed.
    pub guesses: Vec<Guess>,
}

/// What somebody says about the text, where the reader would guess.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hints {
    /// Whether day or month stands first.
    pub order: Option<Order>,
    /// Which columns hold what.
    pub columns: Option<Columns>,
}

/// Reads pasted text.
#[must_use]
pub fn paste(text: &str, hints: &Hints, bounds: &Bounds) -> Pasted {
    let mut pasted = Pasted::default();
    let text = text.trim_start_matches('\u{feff}');
    let lines = text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty());
    let mut rows: Vec<(usize, &str)> =
        lines.take(MOST_LINES + 1).map(|(at, line)| (at + 1, line)).collect();
    if rows.len() > MOST_LINES {
        rows.truncate(MOST_LINES);
        pasted.guesses.push(Guess::TooLong);
    }
    let between = separator(rows.first().map_or("", |row| row.1));
    let mut rows: Vec<(usize, Vec<String>)> =
        rows.into_iter().map(|(at, line)| (at, cells(line, between))).collect();
    let Some((_, first)) = rows.first() else { return pasted };
    let columns = match (hints.columns, heading::of(first)) {
        (Some(own), None) => own,
        (own, Some(found)) => {
            rows.remove(0);
            own.unwrap_or(found)
        }
        (None, None) => {
            pasted.guesses.push(Guess::NoHeadings);
            heading::by_place(first)
        }
    };
    let dates = rows.iter().filter_map(|(_, cells)| columns.when(cells)).map(|(date, _)| date);
    let dates: Vec<String> = dates.collect();
    let (order, sure) = hints.order.map_or_else(|| when::order(&dates), |own| (own, true));
    if !sure {
        pasted.guesses.push(Guess::DateOrder(order));
    }
    let taken = columns.taken || {
        let charges =
            rows.iter().filter_map(|(_, cells)| columns.charge.and_then(|at| cells.get(at)));
        let below = charges.filter_map(|cell| value(cell)).any(|value| value < 0.0);
        if below {
            pasted.guesses.push(Guess::MissingFromFull);
        }
        below
    };
    for (line, cells) in &rows {
        match read(cells, &columns, order, taken) {
            Ok(reading) => match bounds.check(&reading) {
                Some(slip) => pasted.slips.push((*line, slip)),
                None => {
                    pasted.readings.push(reading);
                    pasted.lines.push(*line);
                }
            },
            Err(slip) => pasted.slips.push((*line, slip)),
        }
    }
    pasted
}

fn read(cells: &[String], columns: &Columns, order: Order, taken: bool) -> Result<Reading, Slip> {
    let (date, clock) = columns.when(cells).ok_or(Slip::Short)?;
    let at = when::read(&date, &clock, order)
        .ok_or_else(|| Slip::NoTime { text: told(&[date.as_str(), clock.as_str()].join(" ")) })?;
    let one = |part: Part, column: Option<usize>| -> Result<Option<f64>, Slip> {
        let cell = column.and_then(|at| cells.get(at)).map_or("", String::as_str);
        if matches!(cell, "" | "-" | "--" | "–" | "—" | "?") || cell.eq_ignore_ascii_case("n/a")
        {
            return Ok(None);
        }
        value(cell).map(Some).ok_or_else(|| Slip::NoNumber { part, text: told(cell) })
    };
    let charge = one(Part::AmpHours, columns.charge)?.map(|own| {
        if taken { Shown::Taken(AmpHours(own.abs())) } else { Shown::Left(AmpHours(own)) }
    });
    let percent = one(Part::Percent, columns.percent)?.map(|own| Shown::Percent(Percent(own)));
    let sign = if columns.out { -1.0 } else { 1.0 };
    Ok(Reading {
        at,
        shown: percent.or(charge),
        volts: one(Part::Volts, columns.volts)?.map(|own| Volts(own * columns.volt_unit)),
        amps: one(Part::Amps, columns.amps)?.map(|own| Amps(own * sign * columns.amp_unit)),
    })
}

fn told(text: &str) -> String {
    text.chars().take(TOLD).collect()
}

/// What stands between the cells of a line: the first of tab, semicolon and comma that it has.
fn separator(line: &str) -> char {
    ['\t', ';', ','].into_iter().find(|own| line.contains(*own)).unwrap_or(',')
}

/// The cells of a line; in quotes the separator is a letter like any other.
fn cells(line: &str, between: char) -> Vec<String> {
    let (mut all, mut cell, mut quoted) = (Vec::new(), String::new(), false);
    for letter in line.chars() {
        if letter == '"' {
            quoted = !quoted;
        } else if letter == between && !quoted {
            all.push(cell.trim().to_owned());
            cell.clear();
        } else {
            cell.push(letter);
        }
    }
    all.push(cell.trim().to_owned());
    all
}

/// The number of a cell: with a point or a comma before its decimals, and perhaps its unit behind.
fn value(cell: &str) -> Option<f64> {
    let units = ["%", "ah", "a", "v"];
    let written = cell.chars().filter(|own| !own.is_whitespace());
    let mut text: String =
        written.map(|own| if own == '\u{2212}' { '-' } else { own.to_ascii_lowercase() }).collect();
    if let Some(unit) = units.iter().find(|unit| text.ends_with(**unit)) {
        text.truncate(text.len() - unit.len());
    }
    // The last mark parts the decimals; of the other kind it parts thousands.
    let is_mark = |own: &char| matches!(own, '.' | ',');
    let last = text.chars().rev().find(is_mark);
    let plain = text.chars().filter(|own| !is_mark(own) || Some(*own) == last);
    let plain: String = plain.map(|own| if own == ',' { '.' } else { own }).collect();
    number(&plain)
}

#[cfg(test)]
mod tests {
    use super::*;

    const BOUNDS: Bounds =
        Bounds { volts: (6.0, 18.0), amps: (-500.0, 500.0), charge: (-400.0, 400.0) };

    fn pasted(text: &str) -> Pasted {
        paste(text, &Hints::default(), &BOUNDS)
    }

    fn first(text: &str) -> (String, Option<Shown>, Option<f64>, Option<f64>) {
        let pasted = pasted(text);
        assert_eq!(pasted.slips, [], "{text}");
        let own = pasted.readings.first().unwrap();
        let volts = own.volts.map(|own| own.0);
        (own.at.to_string(), own.shown, volts, own.amps.map(|own| own.0))
    }

    #[test]
    fn tables_of_many_hands_say_the_same() {
        let eighty = Some(Shown::Percent(Percent(80.0)));
        let wanted = ("2026-03-31 18:30:00".to_owned(), eighty, Some(12.5), Some(-4.2));
        for text in [
            "date,time,percent,volts,amps\n2026-03-31,18:30,80,12.5,-4.2",
            "Date;Time;State of charge (%);Voltage (V);Current (A)\n31.3.2026;18:30;80;12,5;-4,2",
            "Fecha\tHora\tEstado de carga\tTensión\tCorriente\n31/03/2026\t6:30 p. m.\t80 %\t12,50 V\t−4,2 A",
            "Timestamp,SoC,U,I\n2026-03-31T18:30:00+02:00,80,12.5,-4.2",
            "2026-03-31 18:30, 80, 12.5, -4.2",
            "3/31/26\t6:30 PM\t80\t12.5\t-4.2",
            "time;date;amps out (mA);volts (mV);level\n18:30;2026-03-31;4200;12500;80",
            "\u{feff}\n\ndate,time,percent,volts,amps\n\n2026-03-31,18h30,\"80,0\",\"12,5\",\"-4,2\"\n",
        ] {
            assert_eq!(first(text), wanted, "{text}");
        }
    }

    #[test]
    fn amp_hours_are_left_or_missing() {
        let shown = |text: &str| first(text).1;
        let left = Some(Shown::Left(AmpHours(150.0)));
        let missing = Some(Shown::Taken(AmpHours(50.0)));
        assert_eq!(shown("date,time,Ah\n2026-03-31,18:30,150"), left);
        assert_eq!(shown("date,time,Ah used\n2026-03-31,18:30,50"), missing);
        assert_eq!(shown("fecha;hora;Ah\n31.3.2026;18:30;-50,0"), missing);
        assert_eq!(pasted("date,time,Ah\n2026-03-31,18:30,-50").guesses, [Guess::MissingFromFull]);
    }

    #[test]
    fn what_cannot_be_read_is_told_by_its_line() {
        let text = "date,time,percent,volts\n2026-03-31,18:30,80,12.5\n2026-02-30,7:00,80,12.5\n2026-04-01,25:00,80,12.5\n2026-04-01,7:00,high,12.5\n2026-04-01,7:00,120,12.5\n2026-04-01,7:00,,\n2026-04-02\n2026-04-02,7:00,70,125";
        let own = pasted(text);
        assert_eq!((own.readings.len(), own.lines.as_slice()), (1, &[2][..]));
        let lines: Vec<usize> = own.slips.iter().map(|(line, _)| *line).collect();
        assert_eq!(lines, [3, 4, 5, 6, 7, 8, 9]);
        let slips: Vec<Slip> = own.slips.into_iter().map(|(_, slip)| slip).collect();
        assert_eq!(slips[0], Slip::NoTime { text: "2026-02-30 7:00".to_owned() });
        assert_eq!(slips[2], Slip::NoNumber { part: Part::Percent, text: "high".to_owned() });
        let beyond =
            Slip::OutOfRange { part: Part::Percent, value: 120.0, least: 0.0, most: 100.0 };
        assert_eq!((&slips[3], &slips[4]), (&beyond, &Slip::Empty));
        assert_eq!(slips[5], Slip::NoTime { text: "2026-04-02 ".to_owned() });
        assert!(matches!(slips[6], Slip::OutOfRange { part: Part::Volts, .. }));
    }

    #[test]
    fn day_or_month_first_is_told_where_nothing_says_it() {
        let text = "date,time,percent\n03/04/2026,7:00,80\n04/04/2026,7:00,75";
        let own = pasted(text);
        assert_eq!(own.guesses, [Guess::DateOrder(Order::DayFirst)]);
        assert_eq!(own.readings[1].at.to_string(), "2026-04-04 07:00:00");
        let hints = Hints { order: Some(Order::MonthFirst), ..Hints::default() };
        let other = paste(text, &hints, &BOUNDS);
        assert_eq!(
            (other.guesses.len(), other.readings[0].at.to_string().as_str()),
            (0, "2026-03-04 07:00:00")
        );
    }

    #[test]
    fn columns_can_be_told_by_place() {
        let columns = Columns { date: 2, clock: Some(1), percent: Some(0), ..Columns::default() };
        let hints = Hints { columns: Some(columns), ..Hints::default() };
        let own = paste("80;7:00;2026-03-31\n70;19:00;2026-03-31", &hints, &BOUNDS);
        assert_eq!((own.readings.len(), own.slips.len(), own.guesses.len()), (2, 0, 0));
    }

    #[test]
    fn nothing_is_nothing() {
        for text in ["", "\n\n", "date,time", "hello", ";;;;", "\"", "%"] {
            assert_eq!(pasted(text).readings, [], "{text}");
        }
    }
}
