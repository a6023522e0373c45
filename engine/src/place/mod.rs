//! Where: the climate of any latitude and longitude, and a person's own figures instead.
//!
//! Depends on `sun` only: clearness times the irradiation outside the air of the very latitude is what reaches the
//! ground. Irradiation itself is never interpolated, because it follows the latitude far faster than clearness does.

mod climate;
mod clock;
mod grid;
mod towns;
mod weather_file;

pub use climate::{ImplausibleSun, MonthlyClimate, Origin, TemperatureOrigin};
pub use clock::{Clock, SummerTime};
pub use grid::{
    CELLS_EAST, CELLS_NORTH, CLIMATE_BYTES, Climate, Field, NoGrid, SPREAD_BYTES, SpreadGrid, pack,
};
pub use towns::{Gazetteer, SEA, Town, folded, is_letter, lowered};
pub use weather_file::{
    Column, FILE_HOURS, FileDay, FileHour, MAX_FILE_BYTES, WeatherFile, WeatherFileFault,
};
