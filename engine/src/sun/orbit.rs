//! What follows from the earth's way around the sun: declination, equation of time, distance.
//!
//! The planner uses Spencer's series throughout. Cooper's sine and the single cosine for the distance stand beside them
//! because textbook examples are worked with them; Cooper's declination is off by as much as 1.3° near the equinoxes.
//!
//! Sources: Spencer 1971, Search 2(5):172; Cooper 1969, Solar Energy 12:333; both as printed in Duffie & Beckman, 4th
//! ed. 2013, equations 1.4.1, 1.5.3 and 1.6.1.

use core::f64::consts::PI;

use crate::quantity::Irradiance;

/// Irradiance outside the air at the mean distance \[W/m²\].
///
/// 1367 (World Radiation Center), not the newer 1361: the diffuse and hourly correlations and the climate's clearness
/// were made with it, and it cancels where a measured irradiation is turned into clearness and back.
#[doc(alias = "G_sc")]
pub const SOLAR_CONSTANT: Irradiance = Irradiance(1367.0);

/// The angle of the year \[rad\]: 0 on 1 January 0 h, a full turn after 365 days.
pub(crate) fn day_angle(day: f64) -> f64 {
    2.0 * PI * (day - 1.0) / 365.0
}

/// Declination of the sun \[rad\] on a day of the year with its fraction in universal time (Spencer).
#[doc(alias = "delta")]
#[must_use]
pub fn declination(day: f64) -> f64 {
    let angle = day_angle(day);
    let (sin1, cos1) = libm::sincos(angle);
    let (sin2, cos2) = libm::sincos(2.0 * angle);
    let (sin3, cos3) = libm::sincos(3.0 * angle);
    0.006_918 - 0.399_912 * cos1 + 0.070_257 * sin1 - 0.006_758 * cos2 + 0.000_907 * sin2
        - 0.002_697 * cos3
        + 0.001_48 * sin3
}

/// Declination of the sun \[rad\] by Cooper's sine, for textbook examples only.
#[must_use]
pub fn declination_cooper(day: f64) -> f64 {
    (23.45 * PI / 180.0) * libm::sin(2.0 * PI * (284.0 + day) / 365.0)
}

/// Equation of time \[min\]: what a sundial is ahead of a clock that keeps local mean time (Spencer).
#[doc(alias = "E")]
#[must_use]
pub fn equation_of_time(day: f64) -> f64 {
    let angle = day_angle(day);
    let (sin1, cos1) = libm::sincos(angle);
    let (sin2, cos2) = libm::sincos(2.0 * angle);
    229.2 * (0.000_075 + 0.001_868 * cos1 - 0.032_077 * sin1 - 0.014_615 * cos2 - 0.040_89 * sin2)
}

/// Irradiance outside the air on a plane that faces the sun \[W/m²\] (Spencer).
#[doc(alias = "G_on")]
#[must_use]
pub fn extraterrestrial_normal(day: f64) -> Irradiance {
    let angle = day_angle(day);
    let (sin1, cos1) = libm::sincos(angle);
    let (sin2, cos2) = libm::sincos(2.0 * angle);
    SOLAR_CONSTANT
        * (1.000_11 + 0.034_221 * cos1 + 0.001_28 * sin1 + 0.000_719 * cos2 + 0.000_077 * sin2)
}

/// The same by a single cosine, for textbook examples only.
#[must_use]
pub fn extraterrestrial_normal_cosine(day: f64) -> Irradiance {
    SOLAR_CONSTANT * (1.0 + 0.033 * libm::cos(2.0 * PI * day / 365.0))
}
