//! A tilted plane and what shades it.
//!
//! **Method.** Beam and the bright ring by their angle of incidence, sky and ground by the share of them that the plane sees.
//! Shade is a share of all light by time of day: morning, midday, afternoon.
//!
//! **Left out.** Shade cell by cell, both faces of a module, and planes that turn.

use super::day::SkyStep;
use super::incidence::incidence_schlick;
use super::transposition::{LOWEST_SUN, sky_view};
use crate::quantity::{Degrees, Irradiance, Percent, Within};

/// Share of light from all of the sky or the ground that the glass lets through: a typical value for the mean over all
/// angles; the physical form gives 0.944 for a whole hemisphere.
const DIFFUSE_INCIDENCE: f64 = 0.95;

/// How a plane stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plane {
    /// From the horizontal, 0 to 90 \[°\].
    pub tilt: Degrees,
    /// Where it faces, clockwise from north, 0 to 360 \[°\]; without meaning for a flat plane.
    pub azimuth: Degrees,
}

impl Plane {
    /// The unit vector away from its front: east, north, up.
    #[must_use]
    pub fn normal(&self) -> [f64; 3] {
        let (sin_tilt, cos_tilt) = libm::sincos(self.tilt.radians());
        let (sin_azimuth, cos_azimuth) = libm::sincos(self.azimuth.radians());
        [sin_tilt * sin_azimuth, sin_tilt * cos_azimuth, cos_tilt]
    }

    /// The plane made ready for many steps.
    #[must_use]
    pub fn facing(&self) -> Facing {
        Facing { normal: self.normal(), sky_view: sky_view(self.tilt) }
    }

    /// Irradiance on the plane after reflection off its glass \[W/m²\]; `albedo` is the reflectance of the ground, 0 to
    /// 1. For many steps of the same plane take [`Plane::facing`] once.
    #[must_use]
    pub fn irradiance(&self, step: &SkyStep, albedo: f64) -> Irradiance {
        self.facing().irradiance(step, albedo)
    }
}

/// A plane with its geometry worked out, so that a step costs products and divisions only.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Facing {
    normal: [f64; 3],
    sky_view: f64,
}

impl Facing {
    /// Irradiance on the plane after reflection off its glass \[W/m²\]: beam and the bright ring around the sun by their
    /// angle of incidence, the rest of the sky and the ground by what they are seen of (Hay & Davies 1980).
    #[must_use]
    pub fn irradiance(&self, step: &SkyStep, albedo: f64) -> Irradiance {
        let [east, north, up] = self.normal;
        let [to_east, to_north, to_up] = step.toward_sun;
        let cosine = (east * to_east + north * to_north + up * to_up).max(0.0);
        let ratio = cosine / to_up.max(LOWEST_SUN) * incidence_schlick(cosine);
        let ring = step.anisotropy();
        let direct = (step.beam + step.diffuse * ring) * ratio;
        let dome = step.diffuse * ((1.0 - ring) * self.sky_view);
        let ground = (step.beam + step.diffuse) * (albedo * (1.0 - self.sky_view));
        direct + (dome + ground) * DIFFUSE_INCIDENCE
    }
}

/// What is lost to shade by time of day: a mast, a hill, trees, the neighbours.
///
/// Applies to all of the light, not to the beam alone: a shadow on one cell takes more from the string than its area.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Shade {
    /// Before 10 h solar time, 0 to 100 \[%\].
    pub morning: Percent,
    /// From 10 to 14 h solar time, 0 to 100 \[%\].
    pub midday: Percent,
    /// After 14 h solar time, 0 to 100 \[%\].
    pub afternoon: Percent,
}

impl Shade {
    /// Share of the light that is left in a step, 0 to 1. The limits at 10 and 14 h are hour angles of ∓30°.
    #[must_use]
    pub fn remainder(&self, step: &SkyStep) -> f64 {
        let lost = if step.solar_hour < 10.0 {
            self.morning
        } else if step.solar_hour <= 14.0 {
            self.midday
        } else {
            self.afternoon
        };
        lost.remainder().within(0.0, 1.0)
    }
}
