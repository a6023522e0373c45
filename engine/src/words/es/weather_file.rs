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
            "Tiene {} bytes, y ningún año de datos horarios tiene tantos: se leen {} como máximo. Es otra cosa.",
            grouped_count(*bytes),
            grouped_count(MAX_FILE_BYTES)
        ),
        WeatherFileFault::NotWeather => {
            "No es un archivo meteorológico del formato EPW: este empieza con una línea LOCATION, y su octava línea con DATA PERIODS.".into()
        }
        WeatherFileFault::NoColumn { line, column } => {
            format!("Falta un valor: {}.", place(*line, *column))
        }
        WeatherFileFault::NotANumber { line, column, found } => {
            format!("{}: debería ser un número y es «{found}».", place(*line, *column))
        }
        WeatherFileFault::OutOfRange { line, column, value } => {
            out_of_range(words, *line, *column, *value)
        }
        WeatherFileFault::NotMeasured { line, column } => format!(
            "{}: según el archivo, no se midió. Solo se puede repetir un año sin huecos.",
            place(*line, *column)
        ),
        WeatherFileFault::WrongHour { line, expected, found } => format!(
            "La línea {} es de {}, donde debería seguir {}. Hacen falta todas las horas del año, por orden.",
            grouped_count(*line),
            hour(*found),
            hour(*expected)
        ),
        WeatherFileFault::Incomplete { hours } => format!(
            "El archivo acaba tras {} horas; un año tiene 8760.",
            grouped_count(*hours)
        ),
        WeatherFileFault::TooLong { line } => format!(
            "El año acaba antes de la línea {}. Solo se puede repetir un año.",
            grouped_count(*line)
        ),
    }
}

fn out_of_range(words: Words, line: usize, column: Column, value: f64) -> String {
    let place = place(line, column);
    if column == Column::RecordsPerHour {
        return format!(
            "{place}: es {}; solo se pueden leer archivos con un registro por hora.",
            words.as_given(value)
        );
    }
    let found = if value.is_finite() { words.as_given(value) } else { "ningún número".into() };
    let (least, most) = column.range();
    let unit = unit(column);
    format!(
        "{place}: es {found}{unit}; debe estar entre {} y {}{unit}.",
        words.as_given(least),
        words.as_given(most)
    )
}

/// What is meant and where it stands.
fn place(line: usize, column: Column) -> String {
    format!("{} (línea {}, columna {})", name(column), grouped_count(line), column.place())
}

/// How a column is called.
#[must_use]
pub fn name(column: Column) -> &'static str {
    match column {
        Column::Latitude => "Latitud",
        Column::Longitude => "Longitud",
        Column::TimeZone => "Huso horario",
        Column::RecordsPerHour => "Número de registros por hora",
        Column::Month => "Mes",
        Column::Day => "Día",
        Column::Hour => "Hora",
        Column::Air => "Temperatura del aire",
        Column::Global => "Irradiancia global",
        Column::DirectNormal => "Irradiancia directa normal",
        Column::Diffuse => "Irradiancia difusa",
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
    format!("la hora {hour} del {day} de {}", month(usize::from(number).saturating_sub(1)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(own: &WeatherFileFault) -> String {
        fault(Words::of(crate::words::Language::Spanish), own).replace(['\u{a0}', '\u{202f}'], " ")
    }

    #[test]
    fn a_fault_tells_what_where_and_what_should_be() {
        let column = Column::Air;
        assert_eq!(
            said(&WeatherFileFault::OutOfRange { line: 2025, column, value: -120.0 }),
            "Temperatura del aire (línea 2025, columna 7): es −120 °C; debe estar entre −70 y 70 °C."
        );
        let (expected, found) = ([2, 28, 24], [3, 1, 1]);
        assert_eq!(
            said(&WeatherFileFault::WrongHour { line: 1424, expected, found }),
            "La línea 1424 es de la hora 1 del 1 de marzo, donde debería seguir la hora 24 del 28 de febrero. Hacen falta todas las horas del año, por orden."
        );
    }

    #[test]
    fn every_fault_and_every_column_has_words_of_its_own() {
        let (line, column, value) = (9, Column::Global, 2400.0);
        let mut texts: Vec<String> = [
            WeatherFileFault::TooLarge { bytes: 9_000_000 },
            WeatherFileFault::NotWeather,
            WeatherFileFault::NoColumn { line, column },
            WeatherFileFault::NotANumber { line, column, found: "oscuro".into() },
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
