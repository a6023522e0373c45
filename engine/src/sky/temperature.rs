//! Air temperature that goes with the clearness of a day.
//!
//! **Method.** Within a month a bright day has the wider range between its warmest and coldest hour; far from the equator it is
//! colder than the mean in the dark half of the year and warmer in the bright one. The rest of the day-to-day change is a
//! chain of its own, wider where the year itself swings more.
//!
//! **Source.** Our own analysis of 30 stations with 3 to 65 years of measured daily irradiation and temperature, each against a
//! seasonal curve of three harmonics. Rounded medians; single stations are off by a third.
//!
//! **Range.** Every latitude. It is meant for banks and modules, whose output changes by a per cent or so with 3 K.

use super::day::daily_temperature_range;
use crate::quantity::{Celsius, Degrees, Within};

/// Change of the daily range with clearness within a month \[K\]: 10 to 17 at most stations. Between stations, whose means
/// differ for other reasons too, it is 23.
const RANGE_BY_CLEARNESS: f64 = 13.5;
/// A day is never flatter than this \[K\].
const FLATTEST: Celsius = Celsius(2.0);
/// How much warmer a day is that is brighter by one standard deviation \[K\]: in the dark and the bright half of the year
/// beyond 40° of latitude...
const FAR: [f64; 2] = [-0.9, 0.8];
/// ...and within 28°, where stations have 0.2 to 0.5.
const NEAR: f64 = 0.35;
/// Where the one ends and the other begins \[°\].
const NEAR_END: f64 = 28.0;
const FAR_START: f64 = 40.0;
/// Standard deviation of the rest \[K\] at no seasons, and what half the range of the monthly means adds in the dark and the
/// bright half of the year.
const REST: f64 = 1.2;
const REST_BY_SEASONS: [f64; 2] = [0.33, 0.18];
/// Seasons beyond any on earth.
const MOST_SEASONS: f64 = 40.0;

/// Difference between the warmest and the coldest hour of a day \[K\] of this clearness in a month of that mean clearness.
#[must_use]
pub fn day_temperature_range(clearness: f64, month_clearness: f64) -> Celsius {
    let mean = daily_temperature_range(month_clearness);
    (mean + Celsius(RANGE_BY_CLEARNESS * (clearness - month_clearness))).at_least(FLATTEST)
}

/// How the air temperature of days varies at a place.
#[derive(Clone, Debug)]
pub(crate) struct TemperatureModel([MonthAir; 12]);

/// The same in one month.
#[derive(Clone, Copy, Debug)]
pub(crate) struct MonthAir {
    /// Per standard deviation of the clearness \[K\].
    by_clearness: f64,
    /// Standard deviation of the rest \[K\].
    rest: f64,
}

impl TemperatureModel {
    /// What the rest keeps from day to day: median of the stations.
    pub(crate) const KEEPS: f64 = 0.70;

    pub(crate) fn new(latitude: Degrees, temperatures: &[Celsius; 12]) -> Self {
        let warmest = temperatures.iter().copied().fold(Celsius(-90.0), Celsius::at_least);
        let coldest = temperatures.iter().copied().fold(Celsius(60.0), Celsius::at_most);
        let swing = (warmest - coldest).0 / 2.0;
        let seasons = if swing.is_finite() { swing.within(0.0, MOST_SEASONS) } else { 0.0 };
        let far = (latitude.abs().0 - NEAR_END) / (FAR_START - NEAR_END);
        let far = if far > 0.0 { far.min(1.0) } else { 0.0 };
        Self(core::array::from_fn(|month| {
            // October to March in the north, April to September in the south.
            let bright = usize::from((3..9).contains(&month) == (latitude.0 >= 0.0));
            MonthAir {
                by_clearness: NEAR + (FAR[bright] - NEAR) * far,
                rest: REST + REST_BY_SEASONS[bright] * seasons,
            }
        }))
    }

    pub(crate) fn month(&self, month: usize) -> MonthAir {
        self.0[month]
    }
}

impl MonthAir {
    /// How much warmer than the month a day is, from the normal numbers of its clearness and of its temperature.
    #[inline]
    pub(crate) fn warmer(self, clearness: f64, rest: f64) -> Celsius {
        Celsius(self.by_clearness * clearness + self.rest * rest)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Monthly means of De Bilt, 52.1° N, whose measured days vary by 3.6 K (dark half) and 3.0 K.
    const DE_BILT: [f64; 12] = [3.1, 3.3, 6.2, 9.2, 13.1, 15.6, 17.9, 17.5, 14.5, 10.7, 6.7, 3.7];

    #[test]
    fn days_vary_as_measured_in_a_mild_climate() {
        let model = TemperatureModel::new(Degrees(52.1), &DE_BILT.map(Celsius));
        for (month, measured) in [(0, 3.6), (6, 3.0)] {
            let month = model.month(month);
            let all = (month.by_clearness * month.by_clearness + month.rest * month.rest).sqrt();
            assert!((all - measured).abs() < 0.35, "{all} against {measured}");
        }
    }

    #[test]
    fn bright_days_are_cold_in_winter_and_wide_in_range() {
        let north = TemperatureModel::new(Degrees(52.0), &[Celsius(9.0); 12]);
        let south = TemperatureModel::new(Degrees(-52.0), &[Celsius(9.0); 12]);
        let bright = |model: &TemperatureModel, month| model.month(month).warmer(1.0, 0.0).0;
        assert!(bright(&north, 0) < 0.0 && bright(&north, 6) > 0.0);
        assert!(bright(&south, 0) > 0.0 && bright(&south, 6) < 0.0);
        assert_eq!(day_temperature_range(0.05, 0.3), Celsius(2.0));
        let wider = day_temperature_range(0.6, 0.4) - day_temperature_range(0.4, 0.4);
        assert!((wider.0 - 2.7).abs() < 1e-12);
    }
}
