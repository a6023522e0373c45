//! Days of a weather file, ready for what a synthetic or mean day is used for.
//!
//! **Method.** The light of each hour goes to its quarter-hours in proportion to the sine of the sun's elevation, so that every
//! hour keeps its energy; what is global and not diffuse is beam. No quarter-hour has more beam than arrives outside the air:
//! the rest is taken for diffuse, as is all light of an hour without sun. Temperature runs straight from hour to hour.
//!
//! **Left out.** The year of the date: the sun is that of the day of the year.

use super::day::{Date, DaySpec, STEPS_PER_DAY, SkyDay, SkyStep};
use crate::place::{FILE_HOURS, FileDay, FileHour, WeatherFile};
use crate::quantity::{Celsius, Irradiance};
use crate::sun::{extraterrestrial_normal, noon};

/// Quarter-hours of an hour.
const PARTS: usize = STEPS_PER_DAY / FILE_HOURS;

/// A day of a weather file, from 0, in its own standard time; none beyond its end.
#[must_use]
pub fn replayed_day(file: &WeatherFile, place: usize) -> Option<SkyDay> {
    let day = file.days.get(place)?;
    let mut sky = dark_day(file, place, day.mean_temperature());
    let before = place.checked_sub(1).or(file.days.len().checked_sub(1))?;
    let mut start = file.days.get(before)?.hours[FILE_HOURS - 1].air;
    for (steps, hour) in sky.steps.chunks_exact_mut(PARTS).zip(&day.hours) {
        share_light(steps, hour);
        warm(steps, start, hour.air);
        start = hour.air;
    }
    sky.irradiation = day.irradiation();
    Some(sky)
}

/// The day with the sun in its place and no light.
fn dark_day(file: &WeatherFile, place: usize, mean_temperature: Celsius) -> SkyDay {
    let spec = DaySpec {
        site: file.site,
        day_of_year: place as u16 + 1,
        utc_offset: file.utc_offset,
        clearness: 0.0,
        mean_temperature,
    };
    Date::new(&spec).day(0.0, 0.0)
}

/// Gives the light of an hour to its quarter-hours.
fn share_light(steps: &mut [SkyStep], hour: &FileHour) {
    let outside: f64 = steps.iter().map(|step| step.extraterrestrial.0).sum();
    let parts = steps.len() as f64;
    let diffuse = hour.diffuse.at_most(hour.global);
    let beam = hour.global - diffuse;
    for step in steps {
        // An hour without sun may still have some twilight.
        let share = if outside > 0.0 { step.extraterrestrial.0 * parts / outside } else { 1.0 };
        let whole = beam * share;
        step.beam = whole.at_most(step.extraterrestrial);
        step.diffuse = diffuse * share + (whole - step.beam);
    }
}

/// Lets the air go straight from one temperature to another.
fn warm(steps: &mut [SkyStep], from: Celsius, to: Celsius) {
    let parts = steps.len() as f64;
    for (part, step) in steps.iter_mut().enumerate() {
        step.air = from + (to - from) * ((part as f64 + 0.5) / parts);
    }
}

/// How far a weather file contradicts itself: what global irradiance and diffuse plus beam on the horizontal differ by, over the
/// global irradiance of the year (ratio).
///
/// A clock that is half an hour off makes 0.035 and one that is an hour off 0.07 between the equator and 60°, on days of this
/// engine; a column of something else makes far more.
#[must_use]
pub fn contradiction(file: &WeatherFile) -> f64 {
    let (mut apart, mut sum) = (0.0, 0.0);
    for (place, day) in file.days.iter().enumerate() {
        let normal = extraterrestrial_normal(noon(place as u16 + 1));
        let sky = dark_day(file, place, Celsius::ZERO);
        for (steps, hour) in sky.steps.chunks_exact(PARTS).zip(&day.hours) {
            apart += difference(steps, hour, normal);
            sum += hour.global.0;
        }
    }
    if sum > 0.0 { apart / sum } else { 0.0 }
}

/// What an hour's irradiances differ by \[W/m²\].
fn difference(steps: &[SkyStep], hour: &FileHour, normal: Irradiance) -> f64 {
    let outside = steps.iter().map(|step| step.extraterrestrial.0).sum::<f64>();
    let sine = outside / steps.len() as f64 / normal.0;
    (hour.global - hour.diffuse - hour.direct_normal * sine).abs().0
}

/// A day's clearness: irradiation of the file over that outside the air; 0 in polar night.
#[must_use]
pub fn file_clearness(file: &WeatherFile, place: usize) -> f64 {
    let outside =
        crate::sun::daily_extraterrestrial(file.site.latitude, noon(place as u16 + 1), &mut ());
    let own = file.days.get(place).map_or(0.0, |day: &FileDay| day.irradiation().0);
    if outside.0 > 0.0 { own / outside.0 } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Degrees, Hours, Irradiation};
    use crate::sky::single_day;
    use crate::sun::Site;

    const LENGTHS: [u8; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

    /// A year that the engine's own days make, as a file would have it.
    fn made(latitude: f64, shift: f64) -> WeatherFile {
        let site = Site { latitude: Degrees(latitude), longitude: Degrees(15.0) };
        let mut file = WeatherFile {
            name: String::new(),
            site,
            utc_offset: Hours(1.0 + shift),
            days: Vec::new(),
        };
        for (month, length) in (1..).zip(LENGTHS) {
            for day in 1..=length {
                let place = file.days.len();
                let spec = DaySpec {
                    site,
                    day_of_year: place as u16 + 1,
                    utc_offset: Hours(1.0),
                    clearness: 0.2 + 0.05 * (place % 10) as f64,
                    mean_temperature: Celsius(8.0),
                };
                let sky = single_day(&spec, 0.45);
                let normal = extraterrestrial_normal(noon(spec.day_of_year));
                let hours = core::array::from_fn(|hour| hour_of(&sky, hour, normal));
                file.days.push(FileDay { month, day, hours });
            }
        }
        file
    }

    fn hour_of(sky: &SkyDay, hour: usize, normal: Irradiance) -> FileHour {
        let steps = &sky.steps[hour * PARTS..(hour + 1) * PARTS];
        let mean = |value: fn(&SkyStep) -> f64| steps.iter().map(value).sum::<f64>() / PARTS as f64;
        let sine = mean(|step| step.extraterrestrial.0) / normal.0;
        let beam = mean(|step| step.beam.0);
        FileHour {
            air: steps[PARTS - 1].air,
            global: Irradiance(mean(|step| step.global().0)),
            direct_normal: Irradiance(if sine > 0.0 { beam / sine } else { 0.0 }),
            diffuse: Irradiance(mean(|step| step.diffuse.0)),
        }
    }

    #[test]
    fn every_hour_keeps_its_light() {
        for latitude in [0.0, 47.0, -75.0] {
            let file = made(latitude, 0.0);
            for place in [0, 100, 171, 364] {
                let sky = replayed_day(&file, place).unwrap();
                assert_eq!(sky.steps.len(), STEPS_PER_DAY);
                for (steps, hour) in sky.steps.chunks_exact(PARTS).zip(&file.days[place].hours) {
                    let mean = steps.iter().map(|step| step.global().0).sum::<f64>() / PARTS as f64;
                    assert!((mean - hour.global.0).abs() < 1e-9);
                    let least = |step: &SkyStep| step.beam.0.min(step.diffuse.0);
                    assert!(steps.iter().all(|step| least(step) >= 0.0));
                    assert!(steps.iter().all(|step| step.beam.0 <= step.extraterrestrial.0));
                }
                assert_eq!(sky.irradiation, file.days[place].irradiation());
            }
        }
    }

    #[test]
    fn a_day_of_the_engine_comes_back_nearly_the_same() {
        let file = made(47.0, 0.0);
        let clearness = 0.2 + 0.05 * (171 % 10) as f64;
        assert!((file_clearness(&file, 171) - clearness).abs() < 1e-9);
        let sky = replayed_day(&file, 171).unwrap();
        let spec = DaySpec {
            site: file.site,
            day_of_year: 172,
            utc_offset: file.utc_offset,
            clearness,
            mean_temperature: Celsius(8.0),
        };
        let own = single_day(&spec, 0.45);
        for (replayed, own) in sky.steps.iter().zip(&own.steps) {
            assert!((replayed.global().0 - own.global().0).abs() < 12.0);
            assert!((replayed.air.0 - own.air.0).abs() < 0.6);
        }
    }

    #[test]
    fn twilight_and_more_beam_than_there_can_be_become_diffuse() {
        let mut file = made(47.0, 0.0);
        file.days[0].hours[0].global = Irradiance(5.0);
        file.days[0].hours[8] = FileHour { global: Irradiance(1900.0), ..FileHour::default() };
        let sky = replayed_day(&file, 0).unwrap();
        assert!(sky.steps[..4].iter().all(|step| step.diffuse == Irradiance(5.0)));
        let morning = &sky.steps[32..36];
        assert!(morning.iter().all(|step| step.beam == step.extraterrestrial));
        let mean = morning.iter().map(|step| step.global().0).sum::<f64>() / PARTS as f64;
        assert!((mean - 1900.0).abs() < 1e-9);
    }

    #[test]
    fn a_clock_that_is_wrong_by_an_hour_shows() {
        assert!(contradiction(&made(47.0, 0.0)) < 1e-9);
        assert!(contradiction(&made(47.0, 1.0)) > 0.06);
        let mut dark = made(47.0, 0.0);
        for day in &mut dark.days {
            day.hours = [FileHour::default(); FILE_HOURS];
        }
        assert_eq!(contradiction(&dark), 0.0);
        assert_eq!(replayed_day(&dark, 5).unwrap().irradiation, Irradiation(0.0));
        assert!(replayed_day(&dark, 365).is_none());
    }
}
