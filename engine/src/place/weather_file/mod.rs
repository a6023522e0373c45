//! A year of hourly weather that a person brings: the open weather-file format EPW.
//!
//! **Form.** Eight lines of head, then a line for each hour with commas between its columns. Of the head the first line
//! (`LOCATION`) and the number of records an hour (`DATA PERIODS`) are read; of the hours the date, air temperature, global,
//! direct normal and diffuse irradiance. Source: the open weather-file format EPW, *Auxiliary Programs* reference, U.S. Department
//! of Energy.
//!
//! **Time.** Local standard time. Hour 1 lasts from midnight to 1 h; its irradiances are means over it, its temperature is that
//! at its end.
//!
//! **Strict.** Every hour of the year in order, nothing missing, everything in range: a file that is not so is refused with the
//! line and the column, because a gap filled by guess would be weather that never was. A 29 February may be there.

mod fault;
mod read;

pub use fault::{Column, MAX_FILE_BYTES, WeatherFileFault};

use crate::quantity::{Celsius, Hours, Irradiance, Irradiation};
use crate::sun::Site;

/// Hours of a day.
pub const FILE_HOURS: usize = 24;

/// An hour of a weather file.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FileHour {
    /// Air temperature at the end of the hour.
    pub air: Celsius,
    /// Mean irradiance on the horizontal.
    pub global: Irradiance,
    /// Mean irradiance of the beam at normal incidence.
    pub direct_normal: Irradiance,
    /// Mean diffuse irradiance on the horizontal.
    pub diffuse: Irradiance,
}

/// A day of a weather file.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FileDay {
    /// Month, 1 to 12.
    pub month: u8,
    /// Day of the month, from 1.
    pub day: u8,
    /// Its hours from midnight on, in standard time.
    pub hours: [FileHour; FILE_HOURS],
}

impl FileDay {
    /// Irradiation on the horizontal.
    #[must_use]
    pub fn irradiation(&self) -> Irradiation {
        Irradiation(self.hours.iter().map(|hour| hour.global.0).sum::<f64>() / 1000.0)
    }

    /// Mean air temperature.
    #[must_use]
    pub fn mean_temperature(&self) -> Celsius {
        Celsius(self.hours.iter().map(|hour| hour.air.0).sum::<f64>() / FILE_HOURS as f64)
    }
}

/// A whole year.
#[derive(Clone, Debug, PartialEq)]
pub struct WeatherFile {
    /// Name of the place, as the file has it; text of somebody else, to be shown as text.
    pub name: String,
    /// Where.
    pub site: Site,
    /// What its standard time is ahead of universal time.
    pub utc_offset: Hours,
    /// 365 days from 1 January on, or 366.
    pub days: Vec<FileDay>,
}

impl WeatherFile {
    /// Reads a file.
    ///
    /// # Errors
    /// [`WeatherFileFault`]: the first thing that is not as it should be, with its line.
    pub fn read(text: &str) -> Result<Self, WeatherFileFault> {
        read::read(text)
    }

    /// Mean daily irradiation on the horizontal of each month: the peak sun hours of the file \[kWh/m² a day\].
    #[must_use]
    pub fn monthly_irradiation(&self) -> [Irradiation; 12] {
        self.monthly(|day| day.irradiation().0).map(Irradiation)
    }

    /// Mean air temperature of each month.
    #[must_use]
    pub fn monthly_temperature(&self) -> [Celsius; 12] {
        self.monthly(|day| day.mean_temperature().0).map(Celsius)
    }

    fn monthly(&self, value: impl Fn(&FileDay) -> f64) -> [f64; 12] {
        core::array::from_fn(|month| {
            let own = self.days.iter().filter(|day| usize::from(day.month) == month + 1);
            let (sum, count) =
                own.fold((0.0, 0.0), |(sum, count), day| (sum + value(day), count + 1.0));
            if count > 0.0 { sum / count } else { 0.0 }
        })
    }
}
