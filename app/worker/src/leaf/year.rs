//! The year carpet: every hour of a year as a cell of the state of charge, days across and hours down.
//!
//! The picture has units of its own, a day wide and an hour high, and is stretched to the room there is; what is written around it
//! are texts of the page. Cells of one class of charge are one path. Hours under the reserve are hatched, so that no colour has
//! to be told apart for them.

use chrono::{Datelike, NaiveDate};
use sunlarder_engine::digits;
use sunlarder_engine::simulate::YearRun;
use sunlarder_engine::sun::{Daylight, daylight};
use sunlarder_engine::system::System;
use sunlarder_engine::words::{Words, decimal};

use super::{About, Written, table};
use crate::message::MONTHS;
use crate::paper::Paper;

/// Hours of a day.
const HOURS: usize = 24;
/// Classes of charge over the reserve; class 0 is under it.
const CLASSES: usize = 4;
/// Clock hours that are written beside the picture.
const MARKS: [u8; 5] = [0, 6, 12, 18, 24];
/// The sun goes up or down by no more than this from one day to the next, or its line breaks \[h\].
const LEAP: f64 = 3.0;

/// The year that an argument means: `mean`, or the number of a weather and the twelve spreads of the daily clearness.
fn year(argument: &str, about: About<'_>) -> Option<YearRun> {
    let About { system, outlook, .. } = about;
    if argument == "mean" {
        return Some(outlook.mean_year(system));
    }
    let mut numbers = argument.split(' ');
    let number = numbers.next()?.parse().ok()?;
    let spread: Vec<f64> = numbers.map(digits::number).collect::<Option<_>>()?;
    let spread: [f64; MONTHS] = spread.try_into().ok()?;
    Some(outlook.weather_year(system, &spread, number))
}

/// The picture; its numbers are state of charge \[%\], voltage, current in and out \[A\] of every hour.
pub(super) fn write(argument: &str, about: About<'_>) -> Written {
    let Some(year) = year(argument, about) else { return Written::default() };
    let numbers = year.hours.iter();
    let numbers =
        numbers.flat_map(|hour| [hour.charge * 100.0, hour.volts.0, hour.came.0, hour.load.0]);
    Written { text: picture(&year, about), numbers: numbers.collect() }
}

/// The table behind it, month by month.
pub(super) fn write_table(argument: &str, about: About<'_>) -> Written {
    let Some(year) = year(argument, about) else { return Written::default() };
    let words = about.words;
    let figure = |value: f64| decimal(value, 0);
    let row = |(at, month): (usize, &sunlarder_engine::simulate::YearMonth)| {
        let days = [month.fuller_days, month.full_days].map(f64::from);
        let figures =
            [month.lowest * 100.0, month.below_reserve.0, month.short.0, days[0], days[1]];
        let name = words.month(at).to_owned();
        core::iter::once(name).chain(figures.map(figure)).collect()
    };
    let rows: Vec<Vec<String>> = year.months.iter().enumerate().map(row).collect();
    let title = words.year(&year, about.system.bank.reserve);
    Written::of(table(&title, &words.year_heads(), &rows))
}

/// The class of a state of charge: 0 under the reserve, then by equal parts of what is over it.
fn class(charge: f64, low: bool, reserve: f64) -> usize {
    if low || charge < reserve {
        return 0;
    }
    let part = (charge - reserve) / f64::max(1.0 - reserve, f64::MIN_POSITIVE);
    1 + ((part * CLASSES as f64) as usize).min(CLASSES - 1)
}

/// A rectangle of cells: first day, first hour, days, hours.
type Block = (usize, usize, usize, usize);

/// The cells of one class as few rectangles: hours in a row are one, and days in a row that have the same hours are one.
fn blocks(classes: &[usize], own: usize) -> Vec<Block> {
    let mut done: Vec<Block> = Vec::new();
    let mut open: Vec<Block> = Vec::new();
    for (day, hours) in classes.chunks(HOURS).enumerate() {
        let (mut kept, mut at) = (Vec::new(), 0);
        while at < hours.len() {
            let length = hours[at..].iter().take_while(|class| **class == own).count();
            if length > 0 {
                let same = open.iter().position(|block| (block.1, block.3) == (at, length));
                let (first, days) = same.map_or((day, 0), |place| {
                    let block = open.swap_remove(place);
                    (block.0, block.2)
                });
                kept.push((first, at, days + 1, length));
            }
            at += length.max(1);
        }
        done.append(&mut open);
        open = kept;
    }
    done.append(&mut open);
    done
}

/// Rectangles as a path.
fn cells(blocks: &[Block]) -> String {
    let mut path = String::new();
    for (day, hour, days, hours) in blocks {
        path.push_str(&format!("M{day} {hour}h{days}v{hours}h-{days}z"));
    }
    path
}

/// A line through the middle of each hour of rectangles.
fn hatch(blocks: &[Block]) -> String {
    let mut path = String::new();
    for (day, hour, days, hours) in blocks {
        for row in *hour..hour + hours {
            path.push_str(&format!("M{day} {row}.5h{days}"));
        }
    }
    path
}

/// The lines of sunrise and of sunset through the days of a year.
fn sun_lines(system: &System, first: NaiveDate, days: usize) -> [String; 2] {
    let mut lines = [String::new(), String::new()];
    let mut before: [Option<f64>; 2] = [None, None];
    for (day, date) in first.iter_days().take(days).enumerate() {
        let offset = system.clock.offset_on(date);
        let now = match daylight(system.site, date.ordinal() as u16, offset) {
            Daylight::Between { rise, set } => [Some(rise.0), Some(set.0)],
            Daylight::Night | Daylight::Day => [None, None],
        };
        for ((line, before), now) in lines.iter_mut().zip(&mut before).zip(now) {
            if let Some(hour) = now {
                let goes_on = before.is_some_and(|before| (hour - before).abs() < LEAP);
                let pen = if goes_on { 'L' } else { 'M' };
                line.push_str(&format!("{pen}{day}.5 {}", decimal(hour, 2)));
            }
            *before = now;
        }
    }
    lines
}

fn picture(year: &YearRun, about: About<'_>) -> String {
    let About { words, system, .. } = about;
    let reserve = system.bank.reserve;
    let said = words.year(year, reserve);
    let classes: Vec<usize> = year
        .hours
        .iter()
        .map(|hour| class(hour.charge, hour.low.0 > 0.0, reserve.ratio()))
        .collect();
    let mut paper = Paper::default();
    paper.class("div", "carpet-picture");
    paper
        .draw("svg")
        .attr("role", "img")
        .attr("aria-label", &said)
        .attr("viewBox", &format!("0 0 {} {HOURS}", year.days()))
        .attr("preserveAspectRatio", "none");
    for own in (0..=CLASSES).rev() {
        let blocks = blocks(&classes, own);
        path(&mut paper, &format!("charge-{own}"), &cells(&blocks));
        if own == 0 {
            path(&mut paper, "charge-hatch", &hatch(&blocks));
        }
    }
    let lines = sun_lines(system, year.first, year.days());
    for class in ["sun-halo", "sun-line"] {
        for line in &lines {
            path(&mut paper, class, line);
        }
    }
    paper.close();
    scales(&mut paper, words, year);
    paper.close().said("p", "note", &said);
    legend(&mut paper, words, reserve.0);
    paper.finish()
}

pub(super) fn path(paper: &mut Paper, class: &str, along: &str) {
    if !along.is_empty() {
        paper.draw("path").attr("class", class).attr("d", along).close();
    }
}

/// A share of a whole as a length of a style.
fn percent(part: usize, whole: usize) -> String {
    format!("{}%", decimal(part as f64 * 100.0 / whole as f64, 3))
}

/// The hours beside the picture and the months under it.
fn scales(paper: &mut Paper, words: Words, year: &YearRun) {
    paper.class("div", "carpet-hours").attr("aria-hidden", "true");
    for hour in MARKS {
        let top = percent(hour.into(), HOURS);
        // The margin is narrow: the half of the day goes below its hour.
        let mark = words.hour_mark(hour.into()).replacen('\u{a0}', " ", 1);
        paper.open("span").attr(":top", &top).text(&mark).close();
    }
    paper.close().class("div", "carpet-months").attr("aria-hidden", "true");
    let mut day = 0;
    for (at, month) in year.months.iter().enumerate() {
        let middle = day + month.days as usize / 2;
        let left = percent(middle, year.days());
        paper.open("span").attr(":left", &left).text(words.month_short(at)).close();
        day += month.days as usize;
    }
    paper.close();
}

/// What the classes and lines mean.
fn legend(paper: &mut Paper, words: Words, reserve: f64) {
    paper.class("ul", "legend");
    let part = (100.0 - reserve) / CLASSES as f64;
    for own in (1..=CLASSES).rev() {
        let from = reserve + part * (own - 1) as f64;
        let class = format!("charge-{own}");
        key(paper, &[(&class, CELL)], &words.charge_between(from, from + part));
    }
    key(paper, &[("charge-0", CELL), ("charge-hatch", "M0 3h20M0 9h20")], words.under_reserve());
    let line = "M0 6h20";
    key(paper, &[("sun-halo", line), ("sun-line", line)], words.sunrise_and_sunset());
    paper.close();
}

/// The ground of a sample in the legend.
const CELL: &str = "M0 0h20v12h-20z";

pub(super) fn key(paper: &mut Paper, paths: &[(&str, &str)], said: &str) {
    paper
        .class("li", "sample")
        .draw("svg")
        .attr("viewBox", "0 0 20 12")
        .attr("aria-hidden", "true");
    for (class, along) in paths {
        path(paper, class, along);
    }
    paper.close().text(said).close();
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Cells that rectangles cover, with how often.
    fn covered(blocks: &[Block], days: usize) -> Vec<u8> {
        let mut cells = vec![0; days * HOURS];
        for (day, hour, days, hours) in blocks {
            for at in *day..day + days {
                for row in *hour..hour + hours {
                    cells[at * HOURS + row] += 1;
                }
            }
        }
        cells
    }

    #[test]
    fn every_cell_is_in_one_rectangle_of_its_class() {
        // A pattern that wanders, so that runs begin and end everywhere.
        let classes: Vec<usize> =
            (0..40 * HOURS).map(|at| (at * at / 97 + at / 50 + at / 7) % (CLASSES + 1)).collect();
        for own in 0..=CLASSES {
            let cells = covered(&blocks(&classes, own), 40);
            for (class, count) in classes.iter().zip(cells) {
                assert_eq!(usize::from(count), usize::from(*class == own));
            }
        }
    }

    #[test]
    fn days_alike_are_one_rectangle() {
        let day: Vec<usize> = (0..HOURS).map(|hour| usize::from((8..17).contains(&hour))).collect();
        let year: Vec<usize> = day.iter().copied().cycle().take(365 * HOURS).collect();
        assert_eq!(blocks(&year, 1), [(0, 8, 365, 9)]);
        assert_eq!(blocks(&year, 0), [(0, 0, 365, 8), (0, 17, 365, 7)]);
        assert_eq!(cells(&[(3, 8, 365, 9)]), "M3 8h365v9h-365z");
        assert_eq!(hatch(&[(3, 8, 5, 2)]), "M3 8.5h5M3 9.5h5");
    }

    #[test]
    fn classes_part_what_is_over_the_reserve() {
        let of = |charge| class(charge, false, 0.2);
        assert_eq!([0.0, 0.19, 0.2, 0.39, 0.41, 0.61, 0.81, 1.0].map(of), [0, 0, 1, 1, 2, 3, 4, 4]);
        assert_eq!(class(0.9, true, 0.2), 0, "a bank that fails its loads counts as under it");
        assert_eq!(class(1.0, false, 1.0), 1, "nothing is over a reserve of everything");
    }
}
