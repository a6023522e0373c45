//! Reading a weather file line by line.

use super::{Column, FILE_HOURS, FileDay, FileHour, MAX_FILE_BYTES, WeatherFile, WeatherFileFault};
use crate::digits::number;
use crate::quantity::{Celsius, Degrees, Hours, Irradiance};
use crate::sun::Site;

/// Lines before the first hour.
const HEAD_LINES: usize = 8;
/// How the first line begins.
const FIRST_WORD: &str = "LOCATION";
/// How the line before the first hour begins.
const LAST_WORD: &str = "DATA PERIODS";
/// Days of the months of a year without a 29 February.
const MONTH_DAYS: [u8; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/// Characters of the name that are kept.
const NAME: usize = 60;
/// Characters of a wrong value that are told.
const TOLD: usize = 20;

/// A line of the file and its columns.
struct Line<'a> {
    number: usize,
    columns: Vec<&'a str>,
}

impl<'a> Line<'a> {
    fn new(number: usize, text: &'a str) -> Self {
        Self { number, columns: text.split(',').map(str::trim).collect() }
    }

    /// The number in a column.
    fn value(&self, column: Column) -> Result<f64, WeatherFileFault> {
        let line = self.number;
        let text = self.columns.get(column.place() - 1).copied().unwrap_or_default();
        if text.is_empty() {
            return Err(WeatherFileFault::NoColumn { line, column });
        }
        let value = number(text).ok_or_else(|| WeatherFileFault::NotANumber {
            line,
            column,
            found: text.chars().take(TOLD).collect(),
        })?;
        let (least, most) = column.range();
        if (least..=most).contains(&value) {
            Ok(value)
        } else if column.missing() == Some(value) {
            Err(WeatherFileFault::NotMeasured { line, column })
        } else {
            Err(WeatherFileFault::OutOfRange { line, column, value })
        }
    }

    /// Month, day and hour; a fraction of a number in range is no date, and fails the comparison with the calendar.
    fn date(&self) -> Result<[u8; 3], WeatherFileFault> {
        let part = |column| {
            let value = self.value(column)?;
            let whole = value as u8;
            if f64::from(whole) == value {
                Ok(whole)
            } else {
                Err(WeatherFileFault::OutOfRange { line: self.number, column, value })
            }
        };
        Ok([part(Column::Month)?, part(Column::Day)?, part(Column::Hour)?])
    }

    fn hour(&self) -> Result<FileHour, WeatherFileFault> {
        Ok(FileHour {
            air: Celsius(self.value(Column::Air)?),
            global: Irradiance(self.value(Column::Global)?),
            direct_normal: Irradiance(self.value(Column::DirectNormal)?),
            diffuse: Irradiance(self.value(Column::Diffuse)?),
        })
    }
}

/// The date after a date; 29 February only where the file has it.
fn next_date([month, day]: [u8; 2], leap: bool) -> Option<[u8; 2]> {
    let place = usize::from(month).checked_sub(1)?;
    let length = MONTH_DAYS.get(place)? + u8::from(leap && month == 2);
    if day < length {
        Some([month, day + 1])
    } else if month < 12 {
        Some([month + 1, 1])
    } else {
        None
    }
}

/// The days of a year, filled hour by hour.
struct Calendar {
    days: Vec<FileDay>,
    /// Date and hour (from 0) of the next line; none after the year.
    next: Option<([u8; 2], usize)>,
}

impl Calendar {
    fn new() -> Self {
        Self { days: Vec::with_capacity(366), next: Some(([1, 1], 0)) }
    }

    fn add(&mut self, line: &Line<'_>) -> Result<(), WeatherFileFault> {
        let Some((date, hour)) = self.next else {
            return Err(WeatherFileFault::TooLong { line: line.number });
        };
        let found = line.date()?;
        let leap = found[..2] == [2, 29];
        // Only the line itself tells whether the file has a 29 February.
        let date = if leap && date == [3, 1] && hour == 0 { [2, 29] } else { date };
        let expected = [date[0], date[1], hour as u8 + 1];
        if found != expected {
            return Err(WeatherFileFault::WrongHour { line: line.number, expected, found });
        }
        if hour == 0 {
            let [month, day] = date;
            self.days.push(FileDay { month, day, hours: [FileHour::default(); FILE_HOURS] });
        }
        if let Some(own) = self.days.last_mut().and_then(|day| day.hours.get_mut(hour)) {
            *own = line.hour()?;
        }
        self.next = if hour + 1 < FILE_HOURS {
            Some((date, hour + 1))
        } else {
            next_date(date, leap).map(|date| (date, 0))
        };
        Ok(())
    }

    fn finish(self) -> Result<Vec<FileDay>, WeatherFileFault> {
        match self.next {
            None => Ok(self.days),
            Some((_, hour)) => {
                let whole = if hour == 0 { self.days.len() } else { self.days.len() - 1 };
                Err(WeatherFileFault::Incomplete { hours: whole * FILE_HOURS + hour })
            }
        }
    }
}

/// Reads a file; see [`WeatherFile::read`].
pub(super) fn read(text: &str) -> Result<WeatherFile, WeatherFileFault> {
    if text.len() > MAX_FILE_BYTES {
        return Err(WeatherFileFault::TooLarge { bytes: text.len() });
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut lines = text.lines().enumerate().map(|(place, line)| (place + 1, line));
    let first = lines.next().map(|(number, line)| Line::new(number, line));
    let first = first.filter(|line| line.columns[0].eq_ignore_ascii_case(FIRST_WORD));
    let first = first.ok_or(WeatherFileFault::NotWeather)?;
    let site = Site {
        latitude: Degrees(first.value(Column::Latitude)?),
        longitude: Degrees(first.value(Column::Longitude)?),
    };
    let utc_offset = Hours(first.value(Column::TimeZone)?);
    let last = lines.by_ref().take(HEAD_LINES - 1).last();
    let last = last.map(|(number, line)| Line::new(number, line));
    let last = last.filter(|line| line.columns[0].eq_ignore_ascii_case(LAST_WORD));
    last.ok_or(WeatherFileFault::NotWeather)?.value(Column::RecordsPerHour)?;
    let mut calendar = Calendar::new();
    for (number, line) in lines.filter(|(_, line)| !line.trim().is_empty()) {
        calendar.add(&Line::new(number, line))?;
    }
    let name = first.columns.get(1).copied().unwrap_or_default();
    let name = name.chars().filter(|own| !own.is_control()).take(NAME).collect();
    Ok(WeatherFile { name, site, utc_offset, days: calendar.finish()? })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A whole year as a file has it, its hours by a rule.
    fn file(leap: bool) -> String {
        let mut text = String::from(
            "LOCATION,Some Town,,XXX,made for a test,000000,47.00,8.50,1.0,400.0\r\nDESIGN CONDITIONS,0\r\nTYPICAL/EXTREME PERIODS,0\r\n\
             GROUND TEMPERATURES,0\r\nHOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\r\nCOMMENTS 1,none\r\nCOMMENTS 2,none\r\n\
             DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\r\n",
        );
        let mut date = Some([1, 1]);
        while let Some([month, day]) = date {
            for hour in 1..=24 {
                let light = if (9..=16).contains(&hour) { 400.0 } else { 0.0 };
                text += &format!(
                    "2001,{month},{day},{hour},0,?9?9,{:.1},5.0,80,96000,0,0,300,{light},{},{},0,0\r\n",
                    f64::from(month) + 0.1 * f64::from(hour),
                    light / 2.0,
                    light / 4.0,
                );
            }
            date = next_date([month, day], leap);
        }
        text
    }

    fn fault(text: &str) -> WeatherFileFault {
        WeatherFile::read(text).unwrap_err()
    }

    /// The file with one line, counted from 1, changed.
    fn changed(line: usize, from: &str, to: &str) -> String {
        let text = file(false);
        let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
        assert!(lines[line - 1].contains(from), "{}", lines[line - 1]);
        lines[line - 1] = lines[line - 1].replacen(from, to, 1);
        lines.join("\n")
    }

    #[test]
    fn a_year_is_read_hour_by_hour() {
        let year = WeatherFile::read(&file(false)).unwrap();
        assert_eq!((year.name.as_str(), year.utc_offset), ("Some Town", Hours(1.0)));
        assert_eq!(year.site, Site { latitude: Degrees(47.0), longitude: Degrees(8.5) });
        assert_eq!(year.days.len(), 365);
        let day = &year.days[59];
        assert_eq!((day.month, day.day), (3, 1));
        assert_eq!(day.hours[8].global, Irradiance(400.0));
        assert_eq!(day.hours[8].direct_normal, Irradiance(200.0));
        assert_eq!(day.hours[8].diffuse, Irradiance(100.0));
        assert_eq!(day.hours[23].air, Celsius(5.4));
        assert_eq!(day.irradiation(), crate::quantity::Irradiation(3.2));
        assert!(year.monthly_irradiation().iter().all(|own| (own.0 - 3.2).abs() < 1e-12));
        assert!((year.monthly_temperature()[11].0 - 13.25).abs() < 1e-9);
    }

    #[test]
    fn a_leap_day_a_byte_order_mark_and_empty_lines_at_the_end_are_ordinary() {
        let text = format!("\u{feff}{}\n\n", file(true));
        let year = WeatherFile::read(&text).unwrap();
        assert_eq!(year.days.len(), 366);
        assert_eq!((year.days[59].month, year.days[59].day), (2, 29));
    }

    #[test]
    fn what_is_no_weather_file_is_told_at_once() {
        assert_eq!(fault(""), WeatherFileFault::NotWeather);
        assert_eq!(fault("{\"sunlarder\":1}"), WeatherFileFault::NotWeather);
        assert_eq!(fault(&changed(8, "DATA PERIODS", "DATA")), WeatherFileFault::NotWeather);
        let large = " ".repeat(MAX_FILE_BYTES + 1);
        assert_eq!(fault(&large), WeatherFileFault::TooLarge { bytes: MAX_FILE_BYTES + 1 });
    }

    #[test]
    fn bad_values_are_told_with_line_and_column() {
        let line = 20;
        let column = Column::Global;
        let gone = WeatherFileFault::NotMeasured { line, column };
        assert_eq!(fault(&changed(line, ",300,400,", ",300,9999,")), gone);
        let bright = WeatherFileFault::OutOfRange { line, column, value: 2400.0 };
        assert_eq!(fault(&changed(line, ",300,400,", ",300,2400,")), bright);
        let found = "x".repeat(20);
        let word = WeatherFileFault::NotANumber { line, column, found };
        assert_eq!(fault(&changed(line, ",400,", &format!(",{},", "x".repeat(99)))), word);
        let short = WeatherFileFault::NoColumn { line, column: Column::Air };
        assert_eq!(fault(&changed(line, ",?9?9,", "\n")), short);
        for endless in ["nan", "inf", "1e999"] {
            let told = fault(&changed(line, ",300,400,", &format!(",300,{endless},")));
            let found = endless.to_owned();
            assert_eq!(told, WeatherFileFault::NotANumber { line, column, found });
        }
        let place = WeatherFileFault::OutOfRange { line: 1, column: Column::Latitude, value: 97.0 };
        assert_eq!(fault(&changed(1, "47.00", "97.00")), place);
        let often =
            WeatherFileFault::OutOfRange { line: 8, column: Column::RecordsPerHour, value: 4.0 };
        assert_eq!(fault(&changed(8, ",1,1,", ",1,4,")), often);
    }

    #[test]
    fn every_hour_must_follow_the_one_before() {
        let wrong = fault(&changed(20, "2001,1,1,12,", "2001,1,1,13,"));
        let (expected, found) = ([1, 1, 12], [1, 1, 13]);
        assert_eq!(wrong, WeatherFileFault::WrongHour { line: 20, expected, found });
        let text = file(false);
        let short: Vec<&str> = text.lines().take(8 + 30).collect();
        assert_eq!(fault(&short.join("\n")), WeatherFileFault::Incomplete { hours: 30 });
        let head: Vec<&str> = text.lines().take(8).collect();
        assert_eq!(fault(&head.join("\n")), WeatherFileFault::Incomplete { hours: 0 });
        let long = format!("{text}2002,1,1,1,0,?,1,1,1,1,1,1,1,1,1,1\n");
        assert_eq!(fault(&long), WeatherFileFault::TooLong { line: 8 + 8760 + 1 });
        let half = fault(&changed(20, "2001,1,1,12,", "2001,1,1,12.5,"));
        assert!(matches!(half, WeatherFileFault::OutOfRange { column: Column::Hour, .. }));
    }
}
