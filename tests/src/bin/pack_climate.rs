//! Packs the climate of the earth for the engine: `pack_climate grid.csv engine/data`, which gets `climate.bin` and
//! `spread.bin`.
//!
//! The table has a header and one line a cell, from south to north and from west to east: `lat`, `lon`, `origin`, and
//! twelve columns each of clearness `kt01`.., temperature `t01`.. and spread `sd01`... It checks the order of the cells,
//! that every wave fits its byte, and prints how far the packed grids are off.

use std::process::ExitCode;

use sunlarder_engine::place::{self, CELLS_EAST, CELLS_NORTH, Climate, Field, SpreadGrid};
use sunlarder_engine::quantity::Degrees;
use sunlarder_engine::sun::{Site, daily_extraterrestrial};

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [table, folder] = arguments.as_slice() else {
        eprintln!("usage: pack_climate TABLE.csv FOLDER");
        return ExitCode::FAILURE;
    };
    match pack(table, folder) {
        Ok(()) => ExitCode::SUCCESS,
        Err(reason) => {
            eprintln!("pack_climate: {reason}");
            ExitCode::FAILURE
        }
    }
}

/// A cell's line: where, its origin, and the months by field.
struct Cell {
    site: Site,
    origin: u8,
    months: [[f64; 12]; 3],
}

fn pack(table: &str, folder: &str) -> Result<(), String> {
    let text = std::fs::read_to_string(table).map_err(|error| format!("{table}: {error}"))?;
    let cells = read(&text)?;
    let mut climate = layers(Field::Clearness, &cells)?;
    climate.extend(layers(Field::Temperature, &cells)?);
    climate.extend(cells.iter().map(|cell| cell.origin));
    let (climate, spread) = (place::pack(&climate), place::pack(&layers(Field::Spread, &cells)?));
    let wrong = |fault: place::NoGrid| format!("{fault:?}");
    tell_gaps(
        &Climate::from_bytes(climate.clone()).map_err(wrong)?,
        &SpreadGrid::from_bytes(spread.clone()).map_err(wrong)?,
        &cells,
    )?;
    for (name, packed) in [("climate.bin", climate), ("spread.bin", spread)] {
        let target = std::path::Path::new(folder).join(name);
        std::fs::write(&target, packed)
            .map_err(|error| format!("{}: {error}", target.display()))?;
    }
    Ok(())
}

/// The waves of a field, one byte a cell.
fn layers(field: Field, cells: &[Cell]) -> Result<Vec<u8>, String> {
    let waves = |cell: &Cell| {
        let waves = field.waves(cell.months[field as usize]);
        waves.ok_or_else(|| format!("{field:?} of {:?} does not fit its bytes", cell.site))
    };
    let cells: Vec<[u8; 12]> = cells.iter().map(waves).collect::<Result<_, _>>()?;
    Ok((0..12).flat_map(|wave| cells.iter().map(move |cell| cell[wave])).collect())
}

fn read(text: &str) -> Result<Vec<Cell>, String> {
    let mut lines = text.lines();
    let header: Vec<&str> = lines.next().unwrap_or_default().split(',').collect();
    let cells: Vec<Cell> = lines.map(|line| read_cell(&header, line)).collect::<Result<_, _>>()?;
    if cells.len() != CELLS_NORTH * CELLS_EAST {
        return Err(format!("{} cells instead of {}", cells.len(), CELLS_NORTH * CELLS_EAST));
    }
    for (place, cell) in cells.iter().enumerate() {
        let latitude = -87.5 + 5.0 * (place / CELLS_EAST) as f64;
        let longitude = -177.5 + 5.0 * (place % CELLS_EAST) as f64;
        if cell.site.latitude.0 != latitude || cell.site.longitude.0 != longitude {
            return Err(format!("cell {place} is at {:?}", cell.site));
        }
    }
    Ok(cells)
}

fn read_cell(header: &[&str], line: &str) -> Result<Cell, String> {
    let values: Vec<&str> = line.split(',').collect();
    let number = |name: &str| -> Result<f64, String> {
        let place = header.iter().position(|column| *column == name);
        let value = place.and_then(|place| values.get(place)).and_then(|text| text.parse().ok());
        value.ok_or_else(|| format!("no number in column {name} of: {line}"))
    };
    let mut months = [[0.0; 12]; 3];
    for field in Field::ALL {
        let name = match field {
            Field::Clearness => "kt",
            Field::Temperature => "t",
            Field::Spread => "sd",
        };
        for (month, value) in months[field as usize].iter_mut().enumerate() {
            *value = number(&format!("{name}{:02}", month + 1))?;
        }
    }
    let site = Site { latitude: Degrees(number("lat")?), longitude: Degrees(number("lon")?) };
    Ok(Cell { site, origin: number("origin")? as u8, months })
}

/// Reads every cell back at its centre and prints how far it is off; months without sun have no clearness or spread to be
/// off from.
fn tell_gaps(climate: &Climate, spread: &SpreadGrid, cells: &[Cell]) -> Result<(), String> {
    for field in Field::ALL {
        let mut gaps = Vec::new();
        for cell in cells {
            let (back, spread) = (climate.at(cell.site), spread.at(cell.site));
            for (month, spread) in spread.into_iter().enumerate() {
                if field != Field::Temperature && outside_air(cell.site, month) < DARK {
                    continue;
                }
                let read = [back.clearness[month], back.temperature[month].0, spread];
                gaps.push((read[field as usize] - cell.months[field as usize][month]).abs());
            }
        }
        let mean = (gaps.iter().map(|gap| gap * gap).sum::<f64>() / gaps.len() as f64).sqrt();
        let most = gaps.into_iter().fold(0.0, f64::max);
        eprintln!("{field:?}: off by {mean:.4} (root mean square), by {most:.4} at most");
        if mean > field.step() {
            return Err(format!("{field:?} is off by more than its step"));
        }
    }
    Ok(())
}

/// Irradiation outside the air below which a month counts as dark \[kWh/m²·day\].
const DARK: f64 = 0.5;

/// In the middle of a month.
fn outside_air(site: Site, month: usize) -> f64 {
    const MIDDLES: [f64; 12] =
        [17.0, 47.0, 75.0, 105.0, 135.0, 162.0, 198.0, 228.0, 258.0, 288.0, 318.0, 344.0];
    daily_extraterrestrial(site.latitude, MIDDLES[month], &mut ()).0
}
