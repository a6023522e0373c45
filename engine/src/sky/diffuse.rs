//! How much of the light comes from the whole sky instead of from the sun.
//!
//! Source: Erbs, Klein & Duffie 1982, doi:10.1016/0038-092X(82)90302-4. Three relations for three lengths of time; they
//! must not be exchanged. The planner's mean day uses the monthly one. The hourly one on the smooth profile of a mean
//! day would give too much diffuse light (0.65 of the day instead of 0.57 to 0.61 at a clearness of 0.5), the monthly
//! one on a single day far too little.

use crate::quantity::{Degrees, Within};

/// Sunset hour angle that parts winter from the other seasons \[°\].
const WINTER: Degrees = Degrees(81.4);

/// Highest clearness of the monthly relation; the value there is held above it.
pub(crate) const BRIGHTEST_MONTH: f64 = 0.8;

/// Whether the relations for winter apply: sunset hour angle \[rad\] of at most 81.4°.
pub(crate) fn is_winter(sunset: f64) -> bool {
    sunset <= WINTER.radians()
}

/// Diffuse share of an hour's irradiation from that hour's clearness.
#[must_use]
pub fn diffuse_fraction_hourly(k: f64) -> f64 {
    if k <= 0.22 {
        1.0 - 0.09 * k
    } else if k <= 0.80 {
        0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)))
    } else {
        0.165
    }
}

/// Diffuse share of one day's irradiation from that day's clearness and sunset hour angle \[rad\]; for days of a
/// synthetic weather sequence.
#[must_use]
pub fn diffuse_fraction_daily(k: f64, sunset: f64) -> f64 {
    let share = if is_winter(sunset) {
        if k < 0.715 {
            1.0 + k * (-0.2727 + k * (2.4495 + k * (-11.9514 + k * 9.3879)))
        } else {
            0.143
        }
    } else if k < 0.722 {
        1.0 + k * (0.2832 + k * (-2.5557 + k * 0.8448))
    } else {
        0.175
    };
    share.min(1.0)
}

/// Diffuse share of a month's irradiation from its mean clearness and sunset hour angle \[rad\].
///
/// Published for a clearness of 0.3 to 0.8. Above, the value at 0.8 is held; below, the cubic is followed until it
/// reaches 1 near 0.13, where it is cut: no published relation covers that range, and it is continuous.
#[must_use]
pub fn diffuse_fraction_monthly(clearness: f64, sunset: f64) -> f64 {
    let k = clearness.within(0.0, BRIGHTEST_MONTH);
    let share = if is_winter(sunset) {
        1.391 + k * (-3.560 + k * (4.189 - k * 2.137))
    } else {
        1.311 + k * (-3.022 + k * (3.427 - k * 1.821))
    };
    share.min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_relation_for_a_day_lies_between_those_for_an_hour_and_a_month() {
        let (winter, summer) = (1.2, 1.8);
        for (k, darker, lighter) in [(0.35, 0.82, 0.83), (0.5, 0.57, 0.61)] {
            let mut days = [diffuse_fraction_daily(k, winter), diffuse_fraction_daily(k, summer)];
            days.sort_by(f64::total_cmp);
            assert!((days[0] - darker).abs() < 0.006, "{days:?}");
            assert!((days[1] - lighter).abs() < 0.006, "{days:?}");
            assert!(diffuse_fraction_monthly(k, summer) < days[0]);
        }
    }

    #[test]
    fn branches_join() {
        /// The published coefficients leave a step of up to 0.0152, at 0.722.
        const JOINT: f64 = 0.016;
        let joins = |relation: &dyn Fn(f64) -> f64, at: f64| {
            (relation(at - 1e-9) - relation(at + 1e-9)).abs() < JOINT
        };
        assert!(joins(&diffuse_fraction_hourly, 0.22) && joins(&diffuse_fraction_hourly, 0.80));
        assert!(joins(&|k| diffuse_fraction_daily(k, 1.2), 0.715));
        assert!(joins(&|k| diffuse_fraction_daily(k, 1.8), 0.722));
    }

    #[test]
    fn dark_months_are_all_diffuse() {
        for sunset in [1.2, 1.8] {
            assert_eq!(diffuse_fraction_monthly(0.05, sunset), 1.0);
            assert_eq!(
                diffuse_fraction_monthly(0.95, sunset),
                diffuse_fraction_monthly(0.8, sunset)
            );
        }
    }
}
