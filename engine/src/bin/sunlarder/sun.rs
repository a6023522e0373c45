//! Where the sun stands at an instant, and how strong it is outside the air.
//!
//! JSON: `instant_utc`, `latitude_deg`, `longitude_deg`, `elevation_deg` (without refraction), `azimuth_deg` (clockwise from north),
//! `declination_deg`, `equation_of_time_min`, `solar_time_h`, `facing_sun_w_per_m2` and `on_the_level_w_per_m2` (outside the air),
//! `of_the_day_kwh_per_m2` (irradiation of the universal day outside the air, on the level), `daylight` (`rises_and_sets`,
//! `polar_night` or `polar_day`), `sunrise_utc_h` and `sunset_utc_h`, which are null if the sun does not rise or set.

use chrono::{Datelike, NaiveDateTime, Timelike};
use serde::Serialize;
use sunlarder_engine::quantity::{Hours, Irradiance, Irradiation};
use sunlarder_engine::sun::{
    Daylight, Site, daily_extraterrestrial, daylight, declination, equation_of_time,
    extraterrestrial_normal, noon, position_of, solar_hour, toward_sun,
};
use sunlarder_engine::words::command_line::Caption;

use crate::table::Table;
use crate::words;

/// Solar time at which the sun is highest \[h\].
const NOON: f64 = 12.0;
/// Angle that the sun moves in an hour \[rad\].
const HOUR_ANGLE_PER_HOUR: f64 = core::f64::consts::PI / 12.0;

#[derive(Serialize)]
struct Sun {
    instant_utc: NaiveDateTime,
    latitude_deg: f64,
    longitude_deg: f64,
    elevation_deg: f64,
    azimuth_deg: f64,
    declination_deg: f64,
    equation_of_time_min: f64,
    solar_time_h: f64,
    facing_sun_w_per_m2: Irradiance,
    on_the_level_w_per_m2: Irradiance,
    of_the_day_kwh_per_m2: Irradiation,
    daylight: &'static str,
    sunrise_utc_h: Option<Hours>,
    sunset_utc_h: Option<Hours>,
}

fn at(site: Site, instant: NaiveDateTime) -> Sun {
    let seconds = f64::from(instant.num_seconds_from_midnight());
    let utc = Hours((seconds + f64::from(instant.nanosecond()) * 1e-9) / 3600.0);
    let ordinal = instant.ordinal() as u16;
    let day = f64::from(ordinal) + utc.0 / 24.0;
    let (declination, equation) = (declination(day), equation_of_time(day));
    let solar = solar_hour(site.longitude, utc, equation);
    let hour_angle = (solar - NOON) * HOUR_ANGLE_PER_HOUR;
    let toward = toward_sun(site.latitude, declination, hour_angle);
    let stands = position_of(toward);
    let normal = extraterrestrial_normal(day);
    let (daylight, sunrise, sunset) = match daylight(site, ordinal, Hours::ZERO) {
        Daylight::Night => ("polar_night", None, None),
        Daylight::Day => ("polar_day", None, None),
        Daylight::Between { rise, set } => ("rises_and_sets", Some(rise), Some(set)),
    };
    Sun {
        instant_utc: instant,
        latitude_deg: site.latitude.0,
        longitude_deg: site.longitude.0,
        elevation_deg: stands.elevation.0,
        azimuth_deg: stands.azimuth.0,
        declination_deg: declination.to_degrees(),
        equation_of_time_min: equation,
        solar_time_h: solar,
        facing_sun_w_per_m2: normal,
        on_the_level_w_per_m2: (normal * toward[2]).at_least(Irradiance::ZERO),
        of_the_day_kwh_per_m2: daily_extraterrestrial(site.latitude, noon(ordinal), &mut ()),
        daylight,
        sunrise_utc_h: sunrise,
        sunset_utc_h: sunset,
    }
}

/// For people.
pub(crate) fn text(site: Site, instant: NaiveDateTime) -> String {
    let sun = at(site, instant);
    let hundredth = |value: f64| (value * 100.0).round() / 100.0;
    let angle = |value: f64| format!("{}°", words().precise(hundredth(value)));
    let time = |hours: Hours| words().clock((hours.0 * 60.0).round() as u16);
    let mut rows = vec![
        (Caption::Elevation, angle(sun.elevation_deg)),
        (Caption::Azimuth, angle(sun.azimuth_deg)),
        (Caption::Declination, angle(sun.declination_deg)),
        (
            Caption::EquationOfTime,
            format!("{}\u{a0}min", words().precise(hundredth(sun.equation_of_time_min))),
        ),
        (Caption::SolarTime, time(Hours(sun.solar_time_h))),
        (Caption::FacingSun, words().amount(sun.facing_sun_w_per_m2)),
        (Caption::OnTheLevel, words().amount(sun.on_the_level_w_per_m2)),
        (Caption::OfTheDay, words().amount(sun.of_the_day_kwh_per_m2)),
    ];
    match (sun.sunrise_utc_h, sun.sunset_utc_h) {
        (Some(rise), Some(set)) => {
            rows.extend([(Caption::Sunrise, time(rise)), (Caption::Sunset, time(set))]);
        }
        _ if sun.daylight == "polar_day" => rows.push((Caption::PolarDay, String::new())),
        _ => rows.push((Caption::PolarNight, String::new())),
    }
    let mut table = Table::default();
    for (caption, value) in rows {
        table.row([words().caption(caption).to_owned(), value]);
    }
    let point = words().point(site.latitude, site.longitude);
    format!("{point}, {}Z\n{}", instant.format("%Y-%m-%dT%H:%M:%S"), table.text())
}

/// For programs.
pub(crate) fn json(site: Site, instant: NaiveDateTime) -> String {
    // Numbers and texts only: nothing in it can fail to serialise.
    serde_json::to_string_pretty(&at(site, instant)).unwrap_or_default() + "\n"
}
