//! The tilt that brings most.
//!
//! **Method.** A coarse search by five degrees and a fine one by one degree on typical days, facing the equator. **Left
//! out:** shade, horizon on one side, and what the bank can do with the light: in the months that matter a steeper plane than
//! this may serve better.

use super::day::{STEPS_PER_DAY, SkyDay};
use super::plane::Plane;
use crate::quantity::{Degrees, Irradiation};

/// Steps of the first search \[°\]; the yield is so flat about its top that none is missed.
const COARSE: u8 = 5;

/// Where a fixed plane faces at its best: south in the northern half, north in the southern.
#[must_use]
pub fn equatorward(latitude: Degrees) -> Degrees {
    if latitude.0 < 0.0 { Degrees(0.0) } else { Degrees(180.0) }
}

/// The whole degree of tilt, 0 to 90, with the highest weighted mean irradiation on the plane, and that irradiation
/// \[kWh/m² a day\]; the flatter of two equals.
///
/// `weights` go with `days` one by one: the lengths of the months for a year, a single 1 for one month. Days without a
/// weight are left out.
#[must_use]
pub fn best_tilt(
    days: &[SkyDay],
    weights: &[f64],
    azimuth: Degrees,
    albedo: f64,
) -> (Degrees, Irradiation) {
    let on = |tilt: u8| {
        let tilt = Degrees(f64::from(tilt));
        (tilt, weighted_irradiation(days, weights, Plane { tilt, azimuth }, albedo))
    };
    let better = |best: (Degrees, Irradiation), tilt: u8| {
        let next = on(tilt);
        if next.1.0 > best.1.0 { next } else { best }
    };
    let coarse = (1..=90 / COARSE).map(|step| step * COARSE).fold(on(0), better);
    let centre = coarse.0.0 as u8;
    let low = centre.saturating_sub(COARSE - 1);
    let high = (centre + COARSE - 1).min(90);
    (low..=high).fold(on(low), better)
}

/// Weighted mean of what a plane gets a day \[kWh/m²\].
fn weighted_irradiation(
    days: &[SkyDay],
    weights: &[f64],
    plane: Plane,
    albedo: f64,
) -> Irradiation {
    let facing = plane.facing();
    let total: f64 = days.iter().zip(weights).map(|(_, weight)| weight).sum();
    if total <= 0.0 {
        return Irradiation::ZERO;
    }
    let sum: f64 = days
        .iter()
        .zip(weights)
        .map(|(day, weight)| {
            weight * day.steps.iter().map(|step| facing.irradiance(step, albedo).0).sum::<f64>()
        })
        .sum();
    let hours = 24.0 / STEPS_PER_DAY as f64;
    Irradiation(sum / total * hours / 1000.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Celsius, Hours};
    use crate::sky::{DaySpec, mean_day};
    use crate::sun::{MONTH_DAY, Site};

    fn year(latitude: f64) -> Vec<SkyDay> {
        MONTH_DAY
            .iter()
            .map(|&day_of_year| {
                let site = Site { latitude: Degrees(latitude), longitude: Degrees(0.0) };
                let spec = DaySpec {
                    site,
                    day_of_year,
                    utc_offset: Hours(0.0),
                    clearness: 0.5,
                    mean_temperature: Celsius(10.0),
                };
                mean_day(&spec, &mut ())
            })
            .collect()
    }

    #[test]
    fn the_best_tilt_beats_every_other() {
        let days = year(50.0);
        for (days, weights) in [(&days[..], [1.0; 12].as_slice()), (&days[11..], &[1.0])] {
            let (tilt, most) = best_tilt(days, weights, Degrees(180.0), 0.2);
            assert!(tilt.0 > 20.0 && tilt.0 < 80.0, "{tilt:?}");
            for degree in 0..=90 {
                let plane = Plane { tilt: Degrees(f64::from(degree)), azimuth: Degrees(180.0) };
                assert!(weighted_irradiation(days, weights, plane, 0.2).0 <= most.0, "{degree}");
            }
        }
    }

    #[test]
    fn nothing_to_weigh_lies_flat() {
        assert_eq!(best_tilt(&[], &[], Degrees(180.0), 0.2), (Degrees(0.0), Irradiation::ZERO));
    }
}
