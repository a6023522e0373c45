//! A day in quarter-hours of clock time: the mean day of a month, or a single day of a given clearness.
//!
//! **Method.** The day's light, global and diffuse, is spread by its two profiles, integrated exactly over each step, with
//! the sun placed in the middle of the lit part. Air temperature is a cosine about the day's mean, warmest in mid-afternoon,
//! with a range that grows with the clearness.
//!
//! **Left out.** Which hours are cloudy: both kinds of day are symmetric about solar noon.

use core::f64::consts::PI;

use super::diffuse::{
    BRIGHTEST_MONTH, diffuse_fraction_daily, diffuse_fraction_monthly, is_winter,
};
use super::profile::{Profile, Share};
use super::temperature::day_temperature_range;
use crate::quantity::{Celsius, Hours, Irradiance, Irradiation};
use crate::sun::{
    self, Site, daily_extraterrestrial, declination, equation_of_time, extraterrestrial_normal,
    solar_hour, sunset_hour_angle, toward_sun,
};
use crate::working::{Formula, Trace, term};

/// Quarter-hours of a day.
pub const STEPS_PER_DAY: usize = 96;

/// Length of a step \[h\].
const STEP: Hours = Hours(0.25);

/// Solar time of the warmest hour \[h\]: mid-afternoon, a typical value.
const WARMEST_HOUR: f64 = 15.0;

/// What a day is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DaySpec {
    /// Where.
    pub site: Site,
    /// The date as day of the year, from 1.
    pub day_of_year: u16,
    /// What clocks are ahead of universal time \[h\].
    pub utc_offset: Hours,
    /// Irradiation on the horizontal over that outside the air, 0 to 1.
    pub clearness: f64,
    /// Mean air temperature of the day \[°C\].
    pub mean_temperature: Celsius,
}

/// A quarter-hour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SkyStep {
    /// Unit vector to the sun in the middle of the sunlit part: east, north, up. Below the horizon at night.
    pub toward_sun: [f64; 3],
    /// Mean beam on the horizontal \[W/m²\].
    pub beam: Irradiance,
    /// Mean diffuse on the horizontal \[W/m²\].
    pub diffuse: Irradiance,
    /// Mean outside the air, on the horizontal \[W/m²\].
    pub extraterrestrial: Irradiance,
    /// Air temperature \[°C\].
    pub air: Celsius,
    /// Solar time of [`SkyStep::toward_sun`], 0 to 24 \[h\].
    pub solar_hour: f64,
}

impl SkyStep {
    /// Beam and diffuse on the horizontal \[W/m²\].
    #[must_use]
    pub fn global(&self) -> Irradiance {
        self.beam + self.diffuse
    }

    /// Share of the beam that the air lets through, 0 to 1.
    #[inline]
    #[must_use]
    pub fn anisotropy(&self) -> f64 {
        if self.beam.0 <= 0.0 || self.extraterrestrial.0 <= 0.0 {
            return 0.0;
        }
        let ratio = self.beam / self.extraterrestrial;
        if ratio < 1.0 { ratio } else { 1.0 }
    }
}

/// A day.
#[derive(Clone, Debug, PartialEq)]
pub struct SkyDay {
    /// [`STEPS_PER_DAY`] quarter-hours from 0 h clock time.
    pub steps: Vec<SkyStep>,
    /// On the horizontal over the day \[kWh/m²\].
    pub irradiation: Irradiation,
}

/// Difference between the warmest and the coldest hour of a day \[K\], from the clearness.
///
/// About 23 K·K_T − 2.3 K, our own fit to measured stations (root of the mean square error 2.8 K), at least 2 K.
#[must_use]
pub fn daily_temperature_range(clearness: f64) -> Celsius {
    Celsius(23.0 * clearness - 2.3).at_least(Celsius(2.0))
}

/// The mean day of a month, or a day as bright as that mean: symmetric about solar noon, with the diffuse share of the
/// monthly relation.
///
/// The steps add up to [`SkyDay::irradiation`], which is clearness times the irradiation outside the air, to rounding.
#[must_use]
pub fn mean_day(spec: &DaySpec, trace: &mut impl Trace) -> SkyDay {
    let noon = sun::noon(spec.day_of_year);
    let outside = daily_extraterrestrial(spec.site.latitude, noon, trace);
    let irradiation = trace.step(
        Formula::DailyIrradiation,
        outside * spec.clearness,
        &[term(spec.clearness), term(outside)],
    );
    let winter = is_winter(sunset_of(spec));
    let relation = if winter { Formula::DiffuseShareWinter } else { Formula::DiffuseShare };
    let share = mean_diffuse_share(spec);
    let share = trace.step(relation, share, &[term(spec.clearness.min(BRIGHTEST_MONTH))]);
    let range = daily_temperature_range(spec.clearness);
    Geometry::new(spec).spread(irradiation, irradiation * share, spec.mean_temperature, range)
}

/// Hour angle of sunset \[rad\].
fn sunset_of(spec: &DaySpec) -> f64 {
    sunset_hour_angle(spec.site.latitude, declination(sun::noon(spec.day_of_year)))
}

/// Diffuse share of the light of a mean day (ratio), by the monthly relation.
#[must_use]
pub fn mean_diffuse_share(spec: &DaySpec) -> f64 {
    diffuse_fraction_monthly(spec.clearness, sunset_of(spec))
}

/// One day of weather: [`DaySpec::clearness`] is that of the day itself, in a month of mean clearness `month_clearness`.
///
/// The diffuse share is that of the daily relation. The day is symmetric about solar noon: which hours are cloudy is not
/// known.
#[must_use]
pub fn single_day(spec: &DaySpec, month_clearness: f64) -> SkyDay {
    Date::new(spec).day(spec.clearness, month_clearness)
}

/// A date, ready for days of any clearness.
pub(super) struct Date {
    geometry: Geometry,
    outside: Irradiation,
    sunset: f64,
    mean_temperature: Celsius,
}

impl Date {
    pub(super) fn new(spec: &DaySpec) -> Self {
        let noon = sun::noon(spec.day_of_year);
        Self {
            geometry: Geometry::new(spec),
            outside: daily_extraterrestrial(spec.site.latitude, noon, &mut ()),
            sunset: sunset_hour_angle(spec.site.latitude, declination(noon)),
            mean_temperature: spec.mean_temperature,
        }
    }

    /// A day of this clearness, as [`single_day`].
    pub(super) fn day(&self, clearness: f64, month_clearness: f64) -> SkyDay {
        let irradiation = self.outside * clearness;
        let diffuse = irradiation * diffuse_fraction_daily(clearness, self.sunset);
        let range = day_temperature_range(clearness, month_clearness);
        self.geometry.spread(irradiation, diffuse, self.mean_temperature, range)
    }
}

/// A quotient that is 0 where there is nothing to share.
fn per(amount: f64, whole: f64) -> f64 {
    if whole > 0.0 { amount / whole } else { 0.0 }
}

/// What depends on place and date alone: the costly part, the same for every weather.
struct Geometry {
    stretches: Vec<Stretch>,
    /// Irradiance outside the air per unit of the share of sine \[W/m²\].
    outside: f64,
}

/// A step as the sun sees it.
struct Stretch {
    share: Share,
    toward_sun: [f64; 3],
    /// Solar time of `toward_sun` \[h\].
    solar_hour: f64,
    /// −1 at the coldest hour, 1 at the warmest.
    warmth: f64,
}

impl Geometry {
    fn new(spec: &DaySpec) -> Self {
        let noon = sun::noon(spec.day_of_year);
        let decl = declination(noon);
        let profile = Profile::new(spec.site.latitude, decl);
        let midnight = solar_hour(spec.site.longitude, -spec.utc_offset, equation_of_time(noon));
        let width = STEP.0 * sun::HOUR_ANGLE_PER_HOUR;
        let first = (midnight - 12.0) * sun::HOUR_ANGLE_PER_HOUR;
        let mut before = profile.map_or_else(Share::default, |profile| profile.until(first));
        let stretches = (0..STEPS_PER_DAY).map(|step| {
            let from = first + width * step as f64;
            let to = first + width * (step + 1) as f64;
            let after = profile.map_or_else(Share::default, |profile| profile.until(to));
            let share = after - before;
            before = after;
            Stretch::new(share, spec.site, decl, sunlit_middle(profile.as_ref(), from, to), from)
        });
        Self { stretches: stretches.collect(), outside: extraterrestrial_normal(noon).0 / width }
    }

    /// Spreads the irradiation of a day, of which `diffuse` is diffuse, over its steps, and the range of temperatures around
    /// the mean.
    fn spread(
        &self,
        irradiation: Irradiation,
        diffuse: Irradiation,
        mean: Celsius,
        range: Celsius,
    ) -> SkyDay {
        let whole = self.stretches.iter().fold(Share::default(), |sum, stretch| Share {
            global: sum.global + stretch.share.global,
            sine: sum.sine + stretch.share.sine,
        });
        // Mean irradiance of a step per unit of its share: kWh/m² to W/m² over a quarter-hour.
        let global = per(irradiation.0 * 1000.0 / STEP.0, whole.global);
        let diffuse = per(diffuse.0 * 1000.0 / STEP.0, whole.sine);
        let half_range = range / 2.0;
        let steps = self.stretches.iter().map(|stretch| {
            let global = Irradiance(stretch.share.global * global);
            // Near the edges of the day the diffuse profile can exceed the global one; then all of it is diffuse.
            let diffuse = Irradiance(stretch.share.sine * diffuse).at_most(global);
            SkyStep {
                toward_sun: stretch.toward_sun,
                beam: global - diffuse,
                diffuse,
                extraterrestrial: Irradiance(stretch.share.sine * self.outside),
                air: mean + half_range * stretch.warmth,
                solar_hour: stretch.solar_hour,
            }
        });
        SkyDay {
            steps: steps.collect(),
            irradiation: if whole.global > 0.0 { irradiation } else { Irradiation::ZERO },
        }
    }
}

/// Hour angle of the sun's place in a stretch \[rad\], −π to π or a little beyond.
fn sunlit_middle(profile: Option<&Profile>, from: f64, to: f64) -> f64 {
    let turn = if from >= PI { 2.0 * PI } else { 0.0 };
    let (from, to) = (from - turn, to - turn);
    profile.map_or((from + to) / 2.0, |profile| profile.middle(from, to))
}

impl Stretch {
    fn new(share: Share, site: Site, decl: f64, middle: f64, from: f64) -> Self {
        let hour = |angle: f64| 12.0 + angle / sun::HOUR_ANGLE_PER_HOUR;
        let solar_hour = hour(middle).rem_euclid(sun::DAY);
        Self {
            share,
            toward_sun: toward_sun(site.latitude, decl, middle),
            solar_hour: if solar_hour < sun::DAY { solar_hour } else { 0.0 },
            warmth: warmth(hour(from) + STEP.0 / 2.0),
        }
    }
}

/// How warm a solar hour \[h\] is within its day: a sine with its top in mid-afternoon.
fn warmth(solar_hour: f64) -> f64 {
    libm::cos((solar_hour - WARMEST_HOUR) * (PI / 12.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Degrees;
    use crate::working::Working;

    fn spec(latitude: f64, day_of_year: u16) -> DaySpec {
        DaySpec {
            site: Site { latitude: Degrees(latitude), longitude: Degrees(13.0) },
            day_of_year,
            utc_offset: Hours(1.0),
            clearness: 0.45,
            mean_temperature: Celsius(9.0),
        }
    }

    fn sum(day: &SkyDay) -> f64 {
        day.steps.iter().map(|step| step.global().0).sum::<f64>() * STEP.0 / 1000.0
    }

    #[test]
    fn the_steps_add_up_to_the_day() {
        for latitude in [-90.0, -66.6, -33.0, 0.0, 47.0, 66.0, 70.0, 90.0] {
            for day_of_year in [17, 80, 172, 266, 355] {
                let day = mean_day(&spec(latitude, day_of_year), &mut ());
                assert_eq!(day.steps.len(), STEPS_PER_DAY);
                assert!((sum(&day) - day.irradiation.0).abs() <= 1e-12 * day.irradiation.0);
            }
        }
    }

    #[test]
    fn what_is_outside_the_air_is_the_integral_of_the_steps() {
        let day = mean_day(&spec(60.0, 80), &mut ());
        let steps: f64 = day.steps.iter().map(|step| step.extraterrestrial.0).sum();
        let whole = daily_extraterrestrial(Degrees(60.0), sun::noon(80), &mut ());
        assert!((steps * STEP.0 / 1000.0 - whole.0).abs() < 1e-12);
    }

    #[test]
    fn the_day_is_mean_in_temperature_and_warmest_after_noon() {
        let day = mean_day(&spec(47.0, 172), &mut ());
        let mean = day.steps.iter().map(|step| step.air.0).sum::<f64>() / STEPS_PER_DAY as f64;
        assert!((mean - 9.0).abs() < 1e-9);
        let warmest = day.steps.iter().max_by(|a, b| a.air.0.total_cmp(&b.air.0)).unwrap();
        assert!((warmest.solar_hour - WARMEST_HOUR).abs() < 0.25);
    }

    #[test]
    fn a_single_day_adds_up_and_has_more_of_both_extremes_than_the_mean_day() {
        for clearness in [0.0, 0.1, 0.45, 0.75, 1.0] {
            let spec = DaySpec { clearness, ..spec(47.0, 105) };
            let (single, mean) = (single_day(&spec, 0.45), mean_day(&spec, &mut ()));
            assert!((sum(&single) - single.irradiation.0).abs() <= 1e-12 * single.irradiation.0);
            assert_eq!(single.irradiation, mean.irradiation);
            let diffuse = |day: &SkyDay| day.steps.iter().map(|step| step.diffuse.0).sum::<f64>();
            // At a clearness of 0.45 the daily relation has 0.66, the monthly one 0.48.
            assert!(clearness != 0.45 || diffuse(&single) > 1.2 * diffuse(&mean));
            let warmest = single.steps.iter().map(|step| step.air.0).fold(-90.0, f64::max);
            let half = day_temperature_range(clearness, 0.45).0 / 2.0;
            assert!((warmest - 9.0 - half).abs() < 0.01 * half);
        }
    }

    #[test]
    fn tracing_changes_no_bit() {
        let spec = spec(47.0, 17);
        let mut working = Working::new();
        assert_eq!(mean_day(&spec, &mut working), mean_day(&spec, &mut ()));
        let share = working.result().unwrap();
        assert_eq!(share.formula, Formula::DiffuseShareWinter);
        let irradiation = &working.steps()[working.steps().len() - 2];
        assert!(irradiation.inputs[1].made_by.is_some(), "H0 has its own step");
    }
}
