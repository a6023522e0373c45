//! What measured days would have caused.

use std::collections::HashMap;

/// One size of array and store.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Design {
    /// Mean yield of the darkest month over the load, as the record names it.
    pub oversize: f64,
    /// Gain of a day per irradiation \[kWh per kWh/m²\] at a load of 1 kWh a day.
    pub array_gain: f64,
    /// Store \[kWh\], which is days of load.
    pub store: f64,
    /// Share of the load not served on the measured days.
    pub measured: f64,
}

/// A station with its climate and what its days would have caused.
#[derive(Clone, Debug, PartialEq)]
pub struct Station {
    /// Its name in the record.
    pub name: String,
    /// North positive \[°\].
    pub latitude: f64,
    /// East positive \[°\].
    pub longitude: f64,
    /// Length of its record.
    pub years: f64,
    /// Measured mean clearness by month.
    pub means: [f64; 12],
    /// Measured standard deviation of daily clearness by month.
    pub spreads: [f64; 12],
    /// Designs.
    pub designs: Vec<Design>,
}

/// A line of the record by the names of its columns.
struct Line<'a>(HashMap<&'a str, &'a str>);

impl Line<'_> {
    fn text(&self, column: &str) -> Result<&str, String> {
        self.0.get(column).copied().ok_or_else(|| format!("no column {column}"))
    }

    fn number(&self, column: &str) -> Result<f64, String> {
        let text = self.text(column)?;
        text.parse().map_err(|error| format!("{column} is {text}: {error}"))
    }

    fn months(&self, prefix: &str) -> Result<[f64; 12], String> {
        let mut months = [0.0; 12];
        for (place, month) in months.iter_mut().enumerate() {
            *month = self.number(&format!("{prefix}{:02}", place + 1))?;
        }
        Ok(months)
    }

    fn station(&self) -> Result<Station, String> {
        Ok(Station {
            name: self.text("station")?.to_owned(),
            latitude: self.number("lat")?,
            longitude: self.number("lon")?,
            years: self.number("years")?,
            means: self.months("kt")?,
            spreads: self.months("sd")?,
            designs: Vec::new(),
        })
    }

    fn design(&self) -> Result<Design, String> {
        Ok(Design {
            oversize: self.number("c_a")?,
            array_gain: self.number("array_gain")?,
            store: self.number("c_s")?,
            measured: self.number("measured_loss_of_load")?,
        })
    }
}

/// The stations of a record (its text) that are fit for calibration.
///
/// # Errors
/// A text that is no such record.
pub fn stations(text: &str) -> Result<Vec<Station>, String> {
    let mut lines = text.lines().filter(|line| !line.starts_with('#'));
    let columns: Vec<&str> = lines.next().ok_or("an empty record")?.split(',').collect();
    let mut stations: Vec<Station> = Vec::new();
    for line in lines {
        let line = Line(columns.iter().copied().zip(line.split(',')).collect());
        if line.text("use")? != "yes" {
            continue;
        }
        if stations.last().is_none_or(|last| line.text("station") != Ok(last.name.as_str())) {
            stations.push(line.station()?);
        }
        if let Some(station) = stations.last_mut() {
            station.designs.push(line.design()?);
        }
    }
    Ok(stations)
}
