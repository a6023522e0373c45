//! The sun against published tables, textbook examples and a library's values.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use sunlarder_engine::quantity::{Degrees, Hours, Irradiation};
use sunlarder_engine::sun::{
    Daylight, SOLAR_CONSTANT, Site, daily_extraterrestrial_from, daylight, declination,
    declination_cooper, equation_of_time, extraterrestrial_normal, extraterrestrial_normal_cosine,
    hourly_extraterrestrial, position, position_of, solar_hour, toward_sun,
};
use sunlarder_tests::reference::{Case, cases};

const REFERENCE: &str = include_str!("../reference/sun_and_sky.json");

/// Joules of a kilowatt-hour, in millions.
const MEGAJOULES: f64 = 3.6;

/// Worst elevation that the head of the room `sun` promises \[°\]: Spencer's series with the fractional day.
const PROMISED_ELEVATION: f64 = 0.16;

/// The series has no leap years and no perturbations: 0.6 minutes of time, which turns the sun by 0.15°.
const EQUATION_TOLERANCE: f64 = 0.6;

/// The same of the distance \[AU\]: 0.3 % of the irradiance.
const DISTANCE_TOLERANCE: f64 = 1.5e-3;

/// Published almanacs give sunrise for the upper edge with mean refraction; a flat horizon and one declination a day are
/// within two minutes at middle latitudes.
const SUNRISE_TOLERANCE: f64 = 2.0 / 60.0;

type Outcome = Result<(), String>;

fn degrees(radians: f64) -> f64 {
    radians.to_degrees()
}

/// Fractional day and hour in universal time of a text such as `2024-03-20T12:07:00Z`.
fn instant(text: &str) -> (f64, Hours) {
    let part = |from: usize, to: usize| text[from..to].parse::<u32>().unwrap();
    let (year, month, day) = (part(0, 4), part(5, 7), part(8, 10));
    let lengths =
        [31, if year.is_multiple_of(4) { 29 } else { 28 }, 31, 30, 31, 30, 31, 31, 30, 31, 30];
    let days: u32 = lengths[..month as usize - 1].iter().sum::<u32>() + day;
    let hour =
        f64::from(part(11, 13)) + f64::from(part(14, 16)) / 60.0 + f64::from(part(17, 19)) / 3600.0;
    (f64::from(days) + hour / 24.0, Hours(hour))
}

fn site(case: &Case) -> Site {
    Site { latitude: Degrees(case.input("lat")), longitude: Degrees(case.input("lon")) }
}

fn direction(elevation: f64, azimuth: f64) -> [f64; 3] {
    let (elevation, azimuth) = (elevation.to_radians(), azimuth.to_radians());
    let level = libm::cos(elevation);
    [level * libm::sin(azimuth), level * libm::cos(azimuth), libm::sin(elevation)]
}

/// Angle between two unit vectors \[°\], exact for small ones.
fn apart(a: [f64; 3], b: [f64; 3]) -> f64 {
    let square: f64 = a.iter().zip(b).map(|(a, b)| (a - b) * (a - b)).sum();
    degrees(2.0 * libm::asin((square.sqrt() / 2.0).min(1.0)))
}

fn spa(case: &Case) -> Outcome {
    let (day, utc) = instant(case.text("utc"));
    let sun = position(site(case), day, utc);
    let allowed = case.tolerance("simple_fourier_abs_deg");
    case.near("elevation_true_deg", sun.elevation.0, allowed.min(PROMISED_ELEVATION))?;
    let expected =
        direction(case.expected("elevation_true_deg"), case.expected("azimuth_deg_N_clockwise"));
    let gap = apart(direction(sun.elevation.0, sun.azimuth.0), expected);
    if gap.is_nan() || gap > allowed {
        return Err(format!("{}: {gap} degrees away", case.id()));
    }
    case.near("declination_deg", degrees(declination(day)), allowed)?;
    case.near("equation_of_time_min", equation_of_time(day), EQUATION_TOLERANCE)?;
    let distance = (SOLAR_CONSTANT / extraterrestrial_normal(day)).sqrt();
    case.near("sun_earth_distance_au", distance, DISTANCE_TOLERANCE)
}

/// The worked example of the solar position algorithm. Its own tolerance is that of the algorithm, which the engine does
/// not carry; the series must come as near as it promises, refraction (0.02° here) included.
fn spa_example(case: &Case) -> Outcome {
    let (day, utc) = instant("2003-10-17T19:30:30Z");
    let sun = position(site(case), day, utc);
    case.near("topocentric_zenith_deg", 90.0 - sun.elevation.0, PROMISED_ELEVATION)?;
    case.near("azimuth_deg", sun.azimuth.0, 0.35)?;
    case.near("declination_deg", degrees(declination(day)), 0.35)?;
    case.near("equation_of_time_min", equation_of_time(day), EQUATION_TOLERANCE)?;
    let Daylight::Between { rise, .. } = daylight(site(case), 290, Hours(-7.0)) else {
        return Err(format!("{}: no sunrise", case.id()));
    };
    let published = 6.0 + 12.0 / 60.0 + 43.0 / 3600.0;
    if (rise.0 - published).abs() > SUNRISE_TOLERANCE {
        return Err(format!("{}: sunrise at {}", case.id(), rise.0));
    }
    Ok(())
}

fn series(case: &Case) -> Outcome {
    let (day, allowed) = (case.input("day_of_year"), case.tolerance("abs"));
    case.near("decl_cooper_deg", degrees(declination_cooper(day)), allowed)?;
    case.near("decl_spencer_deg", degrees(declination(day)), allowed)?;
    case.near("eot_spencer_min", equation_of_time(day), allowed)
}

fn normal(case: &Case) -> Outcome {
    let (day, allowed) = (case.input("day_of_year"), case.tolerance("abs"));
    case.near("G_on_simple", extraterrestrial_normal_cosine(day).0, allowed)?;
    case.near("G_on_spencer", extraterrestrial_normal(day).0, allowed)
}

/// By the textbook's own declination and distance.
fn textbook_day(case: &Case) -> Irradiation {
    let day = case.input("day_of_year");
    let (declination, normal) = (declination_cooper(day), extraterrestrial_normal_cosine(day));
    daily_extraterrestrial_from(Degrees(case.input("lat")), declination, normal)
}

fn daily(case: &Case) -> Outcome {
    case.near("H0_MJ_m2", textbook_day(case).0 * MEGAJOULES, case.tolerance("abs"))
}

fn solar_time(case: &Case) -> Outcome {
    let equation = equation_of_time(case.input("day_of_year"));
    // Standard time of a meridian is universal time plus its longitude's share.
    let utc = Hours(10.5 + case.input("std_meridian_W") / 15.0);
    let solar = solar_hour(Degrees(-case.input("lon_W")), utc, equation);
    case.near("eot_min", equation, case.tolerance("abs"))?;
    case.near("solar_time_h", solar, case.tolerance("abs"))
}

fn zenith_and_azimuth(case: &Case) -> Outcome {
    let declination = declination_cooper(case.input("day_of_year"));
    let hour_angle = case.input("hour_angle").to_radians();
    let sun = position_of(toward_sun(Degrees(case.input("lat")), declination, hour_angle));
    case.near("zenith_deg", 90.0 - sun.elevation.0, case.tolerance("abs"))?;
    case.near("azimuth_S_deg", sun.azimuth.0 - 180.0, case.tolerance("abs"))
}

fn hour_outside(case: &Case) -> Outcome {
    let day = case.input("day_of_year");
    let hour = hourly_extraterrestrial(
        Degrees(case.input("lat")),
        declination_cooper(day),
        extraterrestrial_normal_cosine(day),
        Hours(10.0),
        Hours(11.0),
    );
    case.near("I0_MJ_m2", hour.0 * MEGAJOULES, case.tolerance("abs"))
}

/// The check that a case of this file is for; none for those of the sky.
fn check(case: &Case) -> Option<Outcome> {
    let id = case.id();
    Some(match id {
        "sun.spa.published_example" => spa_example(case),
        "db.1.5.1" => solar_time(case),
        "db.1.6.2a" | "db.1.6.2b" => zenith_and_azimuth(case),
        "db.1.10.1" => daily(case),
        "db.1.10.2" => hour_outside(case),
        _ if id.starts_with("sun.spa.") => spa(case),
        _ if id.starts_with("sun.simple.") => series(case),
        _ if id.starts_with("sun.ext.") => normal(case),
        _ if id.starts_with("sun.H0.") => daily(case),
        _ => return None,
    })
}

#[test]
fn every_reference_case_of_the_sun_holds() {
    let outcomes: Vec<Outcome> = cases(REFERENCE).unwrap().iter().filter_map(check).collect();
    let failures: Vec<&String> =
        outcomes.iter().filter_map(|outcome| outcome.as_ref().err()).collect();
    assert!(failures.is_empty(), "{failures:#?}");
    println!("{} reference cases of the sun", outcomes.len());
    assert_eq!(outcomes.len(), 73, "a case was left out or added");
}

/// Duffie & Beckman table 1.6.1 lists the declination of the months' typical days to a tenth of a degree, by Cooper.
#[test]
fn typical_days_have_the_textbook_declination() {
    let listed = [-20.9, -13.0, -2.4, 9.4, 18.8, 23.1, 21.2, 13.5, 2.2, -9.6, -18.9, -23.0];
    for (day, listed) in sunlarder_engine::sun::MONTH_DAY.into_iter().zip(listed) {
        let cooper = degrees(declination_cooper(f64::from(day)));
        assert!((cooper - listed).abs() <= 0.06, "day {day}: {cooper} against {listed}");
    }
}
