//! A whole day: when the sun is up, and what would reach the ground without air.
//!
//! A day is treated with one declination, that of noon in universal time. Within a day it moves by at most 0.4°, and
//! the noon value makes the irradiation of a day the same whatever the longitude.
//!
//! Source: Duffie & Beckman, 4th ed. 2013, sections 1.6, 1.10 and table 1.6.1 (Klein 1977, Solar Energy 19:325).

use core::f64::consts::PI;

use super::orbit::day_angle;
use super::{DAY, Site, declination, degrees, equation_of_time, extraterrestrial_normal};
use crate::quantity::{Degrees, Hours, Irradiance, Irradiation, Within};
use crate::working::{Formula, Source, Trace, term};

/// The day of the year in each month whose irradiation outside the air is nearest to the month's mean (Klein 1977).
pub const MONTH_DAY: [u16; 12] = [17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344];

/// Elevation of the sun's centre at which its upper edge is seen on the horizon: half the disc (16′) and the mean
/// refraction of the almanacs (34′) below it \[°\].
const HORIZON: Degrees = Degrees(-50.0 / 60.0);

/// Noon in universal time of a day of the year, as the fractional day that the series take.
#[must_use]
pub fn noon(day_of_year: u16) -> f64 {
    f64::from(day_of_year) + 0.5
}

/// Hour angle of sunset \[rad\] for the sun's centre and no refraction: 0 in polar night, π in polar day.
#[doc(alias = "omega_s")]
#[must_use]
pub fn sunset_hour_angle(latitude: Degrees, declination: f64) -> f64 {
    hour_angle_at(latitude, declination, 0.0)
}

/// Hour angle \[rad\] at which the sine of the sun's elevation falls through `sine`, clamped to 0..π.
fn hour_angle_at(latitude: Degrees, declination: f64, sine: f64) -> f64 {
    let (sin_lat, cos_lat) = libm::sincos(latitude.radians());
    let (sin_decl, cos_decl) = libm::sincos(declination);
    libm::acos(((sine - sin_lat * sin_decl) / (cos_lat * cos_decl)).within(-1.0, 1.0))
}

/// Irradiation of a day on the horizontal outside the air \[kWh/m²\], from the declination \[rad\] and the irradiance at
/// normal incidence \[W/m²\].
#[must_use]
pub fn daily_extraterrestrial_from(
    latitude: Degrees,
    declination: f64,
    normal: Irradiance,
) -> Irradiation {
    let sunset = sunset_hour_angle(latitude, declination);
    let (sin_lat, cos_lat) = libm::sincos(latitude.radians());
    let (sin_decl, cos_decl) = libm::sincos(declination);
    let mean = cos_lat * cos_decl * libm::sin(sunset) + sunset * sin_lat * sin_decl;
    // A day that just touches the horizon leaves a rounding error of either sign.
    Irradiation(DAY / PI * normal.0 * mean / 1000.0).at_least(Irradiation::ZERO)
}

/// Irradiation of a day on the horizontal outside the air \[kWh/m²\] on the fractional day of the year `day`; use
/// [`noon`] for a whole day.
#[doc(alias = "H_0")]
#[must_use]
pub fn daily_extraterrestrial(latitude: Degrees, day: f64, trace: &mut impl Trace) -> Irradiation {
    let angle = trace.step(
        Formula::DayAngle,
        degrees(day_angle(day)),
        &[term(day).from(Source::DuffieBeckman)],
    );
    let radians = declination(day);
    let decl = trace.step(Formula::Declination, degrees(radians), &[term(angle)]);
    let normal =
        trace.step(Formula::ExtraterrestrialNormal, extraterrestrial_normal(day), &[term(angle)]);
    let sunset = trace.step(
        Formula::SunsetHourAngle,
        degrees(sunset_hour_angle(latitude, radians)),
        &[term(latitude), term(decl)],
    );
    trace.step(
        Formula::DailyExtraterrestrial,
        daily_extraterrestrial_from(latitude, radians, normal),
        &[term(normal), term(latitude), term(decl), term(sunset)],
    )
}

/// Irradiation on the horizontal outside the air between two solar hours \[kWh/m²\], both within the sunlit day.
#[must_use]
pub fn hourly_extraterrestrial(
    latitude: Degrees,
    declination: f64,
    normal: Irradiance,
    from: Hours,
    to: Hours,
) -> Irradiation {
    let (sin_lat, cos_lat) = libm::sincos(latitude.radians());
    let (sin_decl, cos_decl) = libm::sincos(declination);
    let angle = |solar: Hours| (solar.0 - 12.0) * super::HOUR_ANGLE_PER_HOUR;
    let (start, end) = (angle(from), angle(to));
    let rise = cos_lat * cos_decl * (libm::sin(end) - libm::sin(start));
    Irradiation(DAY / (2.0 * PI) * normal.0 * (rise + (end - start) * sin_lat * sin_decl) / 1000.0)
}

/// When the sun is seen on a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Daylight {
    /// It does not rise.
    Night,
    /// It does not set.
    Day,
    /// It rises and sets.
    Between {
        /// Clock time of sunrise, 0 to 24 \[h\].
        rise: Hours,
        /// Clock time of sunset, 0 to 24 \[h\]; before the rise where the clock is far from solar time.
        set: Hours,
    },
}

/// Sunrise and sunset in the clock time of an offset from universal time: upper edge of the sun, mean refraction, flat
/// horizon. Within two minutes of an almanac between 60° south and north.
#[must_use]
pub fn daylight(site: Site, day_of_year: u16, utc_offset: Hours) -> Daylight {
    let day = noon(day_of_year);
    let half = hour_angle_at(site.latitude, declination(day), libm::sin(HORIZON.radians()));
    if half <= 0.0 {
        return Daylight::Night;
    }
    if half >= PI {
        return Daylight::Day;
    }
    let solar_noon = 12.0 - site.longitude.0 / 15.0 - equation_of_time(day) / 60.0 + utc_offset.0;
    let half = half / super::HOUR_ANGLE_PER_HOUR;
    Daylight::Between {
        rise: Hours((solar_noon - half).turned(DAY)),
        set: Hours((solar_noon + half).turned(DAY)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::working::Working;

    #[test]
    fn tracing_changes_no_bit() {
        let mut working = Working::new();
        let traced = daily_extraterrestrial(Degrees(52.0), noon(17), &mut working);
        let plain = daily_extraterrestrial(Degrees(52.0), noon(17), &mut ());
        assert_eq!(traced.0.to_bits(), plain.0.to_bits());
        let result = working.result().unwrap();
        assert_eq!(
            result.inputs.iter().map(|input| input.made_by).collect::<Vec<_>>(),
            [Some(2), None, Some(1), Some(3)]
        );
    }

    #[test]
    fn polar_night_polar_day_and_poles_are_ordinary() {
        let at = |latitude, day| {
            daylight(
                Site { latitude: Degrees(latitude), longitude: Degrees(19.0) },
                day,
                Hours(1.0),
            )
        };
        assert_eq!(at(69.65, 355), Daylight::Night);
        assert_eq!(at(69.65, 172), Daylight::Day);
        assert_eq!(at(90.0, 172), Daylight::Day);
        assert_eq!(at(-90.0, 172), Daylight::Night);
        assert!(matches!(at(69.65, 80), Daylight::Between { .. }));
        assert_eq!(daily_extraterrestrial(Degrees(90.0), noon(355), &mut ()).0, 0.0);
        assert!(daily_extraterrestrial(Degrees(90.0), noon(172), &mut ()).0 > 12.0);
    }
}
