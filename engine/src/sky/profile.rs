//! How the irradiation of a day spreads over its hours.
//!
//! The global profile is that of Collares-Pereira & Rabl 1979 (doi:10.1016/0038-092X(79)90100-2), the diffuse one that
//! of Liu & Jordan 1960 (doi:10.1016/0038-092X(60)90062-1), which is the profile outside the air.
//!
//! The published global profile does not quite add up to one (0.991 at a sunset angle of 80°, 1.015 at 140°), so the
//! planner uses only its shape and divides by the sum over the day. For polar day, which the correlation does not cover,
//! the shape is continued as `(a + b·q·cos ω)·(A + B·cos ω)`, where `A + B·cos ω` is the sine of the elevation and q the
//! smaller of 1 and B/A: it joins the published form at the polar circle and is flat at the pole.

use core::f64::consts::PI;

use crate::quantity::{Degrees, Within};

/// Shortest day that is not treated as night: half-length as hour angle \[rad\]. About 1 minute of sun, which carries
/// less than 1e-7 kWh/m²; below it the integrals would be rounding noise.
const SHORTEST: f64 = 0.002;

/// The coefficients a and b of Collares-Pereira and Rabl for a sunset hour angle \[rad\].
fn bend(sunset: f64) -> (f64, f64) {
    let sine = libm::sin(sunset - PI / 3.0);
    (0.409 + 0.5016 * sine, 0.6609 - 0.4767 * sine)
}

/// Share of the day's global irradiation in the hour around an hour angle (r_t, as published: not normalised).
///
/// Angles in rad; 0 outside the sunlit day.
#[doc(alias = "r_t")]
#[must_use]
pub fn global_hour_share(hour_angle: f64, sunset: f64) -> f64 {
    let (a, b) = bend(sunset);
    (a + b * libm::cos(hour_angle)) * diffuse_hour_share(hour_angle, sunset)
}

/// Share of the day's diffuse irradiation in the hour around an hour angle (r_d, as published).
///
/// Angles in rad; 0 outside the sunlit day.
#[doc(alias = "r_d")]
#[must_use]
pub fn diffuse_hour_share(hour_angle: f64, sunset: f64) -> f64 {
    let (sin_sunset, cos_sunset) = libm::sincos(sunset);
    let above = libm::cos(hour_angle) - cos_sunset;
    let whole = sin_sunset - sunset * cos_sunset;
    if above <= 0.0 || whole <= 0.0 { 0.0 } else { PI / 24.0 * above / whole }
}

/// The shapes of one day as integrals over hour angle.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Profile {
    /// Sine of the elevation: `level + swing·cos ω`.
    level: f64,
    swing: f64,
    /// Bend of the global profile: `a + b·cos ω`.
    a: f64,
    b: f64,
    /// Hour angle of sunset \[rad\].
    sunset: f64,
    /// The indefinite integrals at sunrise.
    dawn: Share,
}

/// What falls into a stretch of the day, each in its own unit: only ratios of them mean something, but for `sine`.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Share {
    /// Of the global shape.
    pub(crate) global: f64,
    /// Of the diffuse shape: the integral of the sine of the elevation \[rad\].
    pub(crate) sine: f64,
}

impl Profile {
    /// The profile of a latitude and a declination \[rad\]; none in polar night.
    pub(crate) fn new(latitude: Degrees, declination: f64) -> Option<Self> {
        let (sin_lat, cos_lat) = libm::sincos(latitude.radians());
        let (sin_decl, cos_decl) = libm::sincos(declination);
        let (level, swing) = (sin_lat * sin_decl, cos_lat * cos_decl);
        let sunset = crate::sun::sunset_hour_angle(latitude, declination);
        if sunset < SHORTEST {
            return None;
        }
        let (a, b) = bend(sunset);
        let fade = if level > swing { swing / level } else { 1.0 };
        let mut profile = Self { level, swing, a, b: b * fade, sunset, dawn: Share::default() };
        profile.dawn = profile.primitive(-sunset);
        Some(profile)
    }

    /// Integrals from solar midnight (−π) to an hour angle of up to 3π.
    pub(crate) fn until(&self, hour_angle: f64) -> Share {
        if hour_angle > PI {
            let (day, rest) = (self.until(PI), self.until(hour_angle - 2.0 * PI));
            return Share { global: day.global + rest.global, sine: day.sine + rest.sine };
        }
        let end = self.primitive(hour_angle.within(-self.sunset, self.sunset));
        Share { global: end.global - self.dawn.global, sine: end.sine - self.dawn.sine }
    }

    /// The indefinite integrals of `(a + b cos ω)(A + B cos ω)` and of `A + B cos ω`.
    fn primitive(&self, angle: f64) -> Share {
        let (sin, cos) = libm::sincos(angle);
        let square = (angle + sin * cos) / 2.0;
        let Self { level, swing, a, b, .. } = *self;
        Share {
            global: a * level * angle + (a * swing + b * level) * sin + b * swing * square,
            sine: level * angle + swing * sin,
        }
    }

    /// Hour angle in the middle of the sunlit part of a stretch that begins between −π and π and is shorter than a day; of
    /// the whole stretch if none of it is sunlit.
    pub(crate) fn middle(&self, from: f64, to: f64) -> f64 {
        let sunlit = |low: f64, high: f64| if low < high { Some((low + high) / 2.0) } else { None };
        let dawn = 2.0 * PI - self.sunset;
        let whole = (from + to) / 2.0;
        match (sunlit(from.max(-self.sunset), to.min(self.sunset)), sunlit(from.max(dawn), to)) {
            (Some(middle), None) | (None, Some(middle)) => middle,
            // Both ends of a step across midnight are sunlit, or none: the sun is nearest to the horizon in between.
            _ => whole,
        }
    }
}

impl core::ops::Sub for Share {
    type Output = Self;

    /// What falls between two times; never negative, whatever the rounding.
    fn sub(self, earlier: Self) -> Self {
        Self {
            global: (self.global - earlier.global).max(0.0),
            sine: (self.sine - earlier.sine).max(0.0),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Bounds the error of 2000 midpoints over three hours.
    const MIDPOINT_ERROR: f64 = 1e-8;

    #[test]
    fn integrals_follow_the_published_shape() {
        let (latitude, declination) = (Degrees(43.0), 0.2);
        let profile = Profile::new(latitude, declination).unwrap();
        let count = 2000;
        let width = 0.8 / f64::from(count);
        let (mut global, mut diffuse) = (0.0, 0.0);
        for step in 0..count {
            let angle = -0.4 + (f64::from(step) + 0.5) * width;
            global += global_hour_share(angle, profile.sunset);
            diffuse += diffuse_hour_share(angle, profile.sunset);
        }
        let share = profile.until(0.4) - profile.until(-0.4);
        let ratio = global / diffuse;
        assert!((share.global / share.sine - ratio).abs() < MIDPOINT_ERROR);
    }

    #[test]
    fn polar_day_joins_at_the_circle_and_is_flat_at_the_pole() {
        let declination = 0.4;
        let circle = 90.0 - declination * 180.0 / PI;
        let noon_share = |latitude| {
            let profile = Profile::new(Degrees(latitude), declination).unwrap();
            (profile.until(0.2) - profile.until(-0.2)).global / profile.until(PI).global
        };
        // The hour of sunset moves with the root of the distance to the circle.
        assert!((noon_share(circle - 1e-10) - noon_share(circle + 1e-10)).abs() < 1e-5);
        assert!((noon_share(90.0) - 0.2 / PI).abs() < 1e-12);
        assert!(Profile::new(Degrees(-90.0), declination).is_none());
    }
}
