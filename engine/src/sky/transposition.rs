//! From the horizontal to a tilted plane.
//!
//! The planner uses Hay and Davies (1980): part of the diffuse light comes from around the sun and is treated like
//! beam. The isotropic sky is the pessimistic textbook form (6 % less in the textbook's winter hour at 60°), Reindl's
//! (1990) adds a bright horizon and gives most. Finer models need better hourly data than a mean day has.
//!
//! Source of all: Duffie & Beckman, 4th ed. 2013, sections 2.15, 2.16 and 2.19.

use core::f64::consts::PI;

use crate::quantity::{Degrees, Irradiance, Within};

/// Least sine of the elevation that beam is divided by: the sun 1° high. Below it the plane would get absurd amounts.
pub(crate) const LOWEST_SUN: f64 = 0.017_45;

/// What the horizontal receives at an instant, with what a plane sees of the sun.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hemisphere {
    /// Beam on the horizontal \[W/m²\].
    pub beam: Irradiance,
    /// Diffuse on the horizontal \[W/m²\].
    pub diffuse: Irradiance,
    /// Outside the air, on the horizontal \[W/m²\].
    pub extraterrestrial: Irradiance,
    /// Cosine of the angle of incidence on the plane over the sine of the sun's elevation, 0 or more.
    pub beam_ratio: f64,
}

impl Hemisphere {
    /// Share of the beam that the air lets through, 0 to 1.
    #[must_use]
    pub fn anisotropy(&self) -> f64 {
        if self.extraterrestrial.0 <= 0.0 {
            return 0.0;
        }
        (self.beam / self.extraterrestrial).within(0.0, 1.0)
    }
}

/// Share of the sky dome that a tilted plane sees.
pub(crate) fn sky_view(tilt: Degrees) -> f64 {
    (1.0 + libm::cos(tilt.radians())) / 2.0
}

/// Diffuse light of a sky that is equally bright everywhere, on a tilted plane \[W/m²\].
#[must_use]
pub fn sky_isotropic(sky: &Hemisphere, tilt: Degrees) -> Irradiance {
    sky.diffuse * sky_view(tilt)
}

/// Diffuse light with a bright ring around the sun (Hay & Davies 1980), on a tilted plane \[W/m²\].
#[must_use]
pub fn sky_hay_davies(sky: &Hemisphere, tilt: Degrees) -> Irradiance {
    let ring = sky.anisotropy();
    sky.diffuse * (ring * sky.beam_ratio + (1.0 - ring) * sky_view(tilt))
}

/// Diffuse light with a bright ring and a bright horizon (Reindl, Beckman & Duffie 1990), on a tilted plane \[W/m²\].
#[must_use]
pub fn sky_reindl(sky: &Hemisphere, tilt: Degrees) -> Irradiance {
    let ring = sky.anisotropy();
    let global = sky.beam + sky.diffuse;
    let clear = if global.0 > 0.0 { libm::sqrt((sky.beam / global).max(0.0)) } else { 0.0 };
    let half = libm::sin(tilt.radians() / 2.0);
    let dome = sky_view(tilt) * (1.0 + clear * half * half * half);
    sky.diffuse * (ring * sky.beam_ratio + (1.0 - ring) * dome)
}

/// Light that the ground throws onto a tilted plane \[W/m²\]; `albedo` is its reflectance, 0 to 1.
#[must_use]
pub fn ground_reflected(global: Irradiance, tilt: Degrees, albedo: f64) -> Irradiance {
    global * (albedo * (1.0 - sky_view(tilt)))
}

/// Ratio of a day's beam on a plane tilted towards the equator to that on the horizontal, without air (Liu & Jordan
/// 1962, as extended by Klein 1977; Duffie & Beckman equation 2.19.3). Declination in rad; 0 in polar night.
#[doc(alias = "R_b")]
#[must_use]
pub fn monthly_beam_ratio(latitude: Degrees, declination: f64, tilt: Degrees) -> f64 {
    let lean = if latitude.0 < 0.0 { -tilt.0 } else { tilt.0 };
    let sunset = crate::sun::sunset_hour_angle(latitude, declination);
    let tilted_latitude = Degrees(latitude.0 - lean);
    let tilted_sunset = sunset.min(crate::sun::sunset_hour_angle(tilted_latitude, declination));
    let integral = |latitude: Degrees, end: f64| {
        let (sin_lat, cos_lat) = libm::sincos(latitude.radians());
        let (sin_decl, cos_decl) = libm::sincos(declination);
        cos_lat * cos_decl * libm::sin(end) + end * sin_lat * sin_decl
    };
    let horizontal = integral(latitude, sunset);
    if horizontal <= f64::EPSILON * PI {
        return 0.0;
    }
    integral(tilted_latitude, tilted_sunset) / horizontal
}
