//! What the sky gives: a day in quarter-hours, what reaches a tilted plane, and how warm the cells get.
//!
//! **Method.** The day's irradiation on the horizontal (clearness times what arrives outside the air) is spread over
//! the day with the profile of Collares-Pereira and Rabl, its diffuse part (monthly relation of Erbs, Klein and Duffie)
//! with that of Liu and Jordan; the tilted plane sees both by the model of Hay and Davies; reflection off the glass
//! follows the angle of incidence.
//!
//! **Steps.** [`STEPS_PER_DAY`] quarter-hours of *clock* time from midnight, because loads and chargers live by the
//! clock; the sun in each is placed by solar time. Energies are exact integrals over each step, so the day closes to
//! rounding whatever the longitude, and a sunrise inside a step makes no jump.
//!
//! **Weather.** The mean day carries the budget. For chances there is [`Weather`]: synthetic years of daily clearness and air
//! temperature, seeded and the same everywhere. A [`DayTable`] turns a day's clearness into hours of light, or of anything
//! that follows from it, at the price of a few additions. Its light on a tilted plane is that of the mean days within 4 % over a
//! year and within 12 % in a month, because the published diffuse shares of days and of months are different relations.
//!
//! **Range.** Every latitude, day and longitude. In polar day the profile is continued with the true elevation instead
//! of the sunset angle, and its bend fades towards the pole, where all hours are alike; that part is our own extension.
//!
//! **Left out.** Clouds at certain hours (a mean day is symmetric about solar noon), haze colour, snow on the modules,
//! the horizon but for [`Horizon`] and [`Shade`].

pub mod calibration;
mod day;
mod day_table;
mod diffuse;
mod horizon;
mod incidence;
mod marginal;
mod module;
mod plane;
mod profile;
mod random;
mod replay;
mod temperature;
mod tilt;
mod transposition;
mod weather;

pub use day::{
    DaySpec, STEPS_PER_DAY, SkyDay, SkyStep, daily_temperature_range, mean_day, mean_diffuse_share,
    single_day,
};
pub use day_table::{Blend, DayTable, Season};
pub use diffuse::{diffuse_fraction_daily, diffuse_fraction_hourly, diffuse_fraction_monthly};
pub use horizon::Horizon;
pub use incidence::{
    incidence_ashrae, incidence_martin_ruiz, incidence_physical, incidence_schlick,
};
pub use module::{
    Mounting, array_power_ratio, cell_temperature, cell_temperature_faiman, cell_temperature_ross,
    power_ratio_huld,
};
pub use plane::{Facing, Plane, Shade};
pub use profile::{diffuse_hour_share, global_hour_share};
pub use random::Stream;
pub use replay::{contradiction, file_clearness, replayed_day};
pub use temperature::day_temperature_range;
pub use tilt::{best_tilt, equatorward};
pub use transposition::{
    Hemisphere, ground_reflected, monthly_beam_ratio, sky_hay_davies, sky_isotropic, sky_reindl,
};
pub use weather::{
    DAYS_PER_YEAR, MONTH_DAYS, Replica, Trust, Weather, WeatherSpec, Year, month_of_day,
    persistence,
};
