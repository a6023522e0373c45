//! Why a weather file was refused.

use crate::place::{Column, MAX_FILE_BYTES, WeatherFileFault};
use crate::words::Words;
use crate::words::number::grouped_count;

use super::calendar::month;

/// A sentence or two: what was found in which line, what should be there.
#[must_use]
pub fn fault(words: Words, fault: &WeatherFileFault) -> String {
    match fault {
        WeatherFileFault::TooLarge { bytes } => format!(
            "This has {} bytes, and no year of hourly weather has that many: at most {} are read. It is something else.",
            grouped_count(*bytes),
            grouped_count(MAX_FILE_BYTES)
        ),
        WeatherFileFault::NotWeather => {
            "This is no weather file of the EPW form: that begins with a line LOCATION, and its eighth line with DATA PERIODS.".into()
        }
        WeatherFileFault::NoColumn { line, column } => {
            format!("{} is missing.", place(*line, *column))
        }
        WeatherFileFault::NotANumber { line, column, found } => {
            format!("{} should be a number and is “{found}”.", place(*line, *column))
        }
        WeatherFileFault::OutOfRange { line, column, value } => {
            out_of_range(words, *line, *column, *value)
        }
        WeatherFileFault::NotMeasured { line, column } => format!(
            "{} was not measured, as the file says. Only a year without gaps can be replayed.",
            place(*line, *column)
        ),
        WeatherFileFault::WrongHour { line, expected, found } => format!(
            "Line {} is for {}, where {} should follow. Every hour of the year is needed, in order.",
            grouped_count(*line),
            hour(*found),
            hour(*expected)
        ),
        WeatherFileFault::Incomplete { hours } => format!(
            "The file ends after {} hours; a year has 8760.",
            grouped_count(*hours)
        ),
        WeatherFileFault::TooLong { line } => format!(
            "The year is over before line {}. Only one year can be replayed.",
            grouped_count(*line)
        ),
    }
}

fn out_of_range(words: Words, line: usize, column: Column, value: f64) -> String {
    let place = place(line, column);
    if column == Column::RecordsPerHour {
        return format!(
            "{place} is {}; only files with one record an hour can be read.",
            words.as_given(value)
        );
    }
    let found = if value.is_finite() { words.as_given(value) } else { "not a number".into() };
    let (least, most) = column.range();
    let unit = unit(column);
    format!(
        "{place} is {found}{unit}; it must lie between {} and {}{unit}.",
        words.as_given(least),
        words.as_given(most)
    )
}

/// What is meant and where it stands.
fn place(line: usize, column: Column) -> String {
    format!("{} (line {}, column {})", name(column), grouped_count(line), column.place())
}

/// How a column is called.
#[must_use]
pub fn name(column: Column) -> &'static str {
    match column {
        Column::Latitude => "Latitude",
        Column::Longitude => "Longitude",
        Column::TimeZone => "Time zone",
        Column::RecordsPerHour => "Number of records an hour",
        Column::Month => "Month",
        Column::Day => "Day",
        Column::Hour => "Hour",
        Column::Air => "Air temperature",
        Column::Global => "Global irradiance",
        Column::DirectNormal => "Direct normal irradiance",
        Column::Diffuse => "Diffuse irradiance",
    }
}

const fn unit(column: Column) -> &'static str {
    match column {
        Column::Latitude | Column::Longitude => "°",
        Column::TimeZone => " h",
        Column::Air => " °C",
        Column::Global | Column::DirectNormal | Column::Diffuse => " W/m²",
        Column::RecordsPerHour | Column::Month | Column::Day | Column::Hour => "",
    }
}

fn hour([number, day, hour]: [u8; 3]) -> String {
    format!("hour {hour} of {day} {}", month(usize::from(number).saturating_sub(1)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(own: &WeatherFileFault) -> String {
        fault(Words::of(crate::words::Language::English), own).replace(['\u{a0}', '\u{202f}'], " ")
    }

    #[test]
    fn a_fault_tells_what_where_and_what_should_be() {
        let column = Column::Air;
        assert_eq!(
            said(&WeatherFileFault::OutOfRange { line: 2025, column, value: -120.0 }),
            "Air temperature (line 2025, column 7) is −120 °C; it must lie between −70 and 70 °C."
        );
        let (expected, found) = ([2, 28, 24], [3, 1, 1]);
        assert_eq!(
            said(&WeatherFileFault::WrongHour { line: 1424, expected, found }),
            "Line 1424 is for hour 1 of 1 March, where hour 24 of 28 February should follow. Every hour of the year is needed, in order."
        );
    }

    #[test]
    fn every_fault_and_every_column_has_words_of_its_own() {
        let (line, column, value) = (9, Column::Global, 2400.0);
        let mut texts: Vec<String> = [
            WeatherFileFault::TooLarge { bytes: 9_000_000 },
            WeatherFileFault::NotWeather,
            WeatherFileFault::NoColumn { line, column },
            WeatherFileFault::NotANumber { line, column, found: "dark".into() },
            WeatherFileFault::OutOfRange { line, column, value },
            WeatherFileFault::OutOfRange { line, column, value: f64::NAN },
            WeatherFileFault::OutOfRange { line: 8, column: Column::RecordsPerHour, value: 4.0 },
            WeatherFileFault::NotMeasured { line, column },
            WeatherFileFault::WrongHour { line, expected: [1, 1, 1], found: [1, 1, 2] },
            WeatherFileFault::Incomplete { hours: 30 },
            WeatherFileFault::TooLong { line: 8769 },
        ]
        .iter()
        .map(said)
        .collect();
        assert!(texts.iter().all(|text| text.ends_with('.') && !text.contains('{')), "{texts:#?}");
        let count = texts.len();
        texts.sort();
        texts.dedup();
        assert_eq!(texts.len(), count);
        let mut names = Column::ALL.map(name).to_vec();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), Column::ALL.len());
    }
}
