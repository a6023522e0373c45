//! Synthetic weather: days whose clearness has the mean, the spread and the persistence of a place.
//!
//! **Question answered.** What may the weather be like at a place, day by day, in years that never were?
//!
//! **Method.** Two chains of normal numbers, one that forgets within days and one within weeks, make up one normal number a
//! day, which the month's marginal distribution turns into clearness. Each [`Replica`] first draws how far the
//! climate is from what is known of it: that uncertainty belongs to every answer. Air temperature goes with the clearness.
//!
//! **Evidence.** Held against measured decades of 19 stations in [`calibration`](super::calibration), where its limits are
//! stated: persistence is least certain between 28 and 40° of latitude, and the climate grid of a place is off by far more
//! than the model.
//!
//! **Range.** Every latitude; means and spreads beyond those that can be fitted are held (a mean darker than 0.08 is reached by
//! scaling). A year has 365 days.
//!
//! **Left out.** Trends of the climate, weather that several places share, leap days, warm and cold years.

use super::marginal::{Marginal, Nodes, held};
use super::random::Stream;
use super::temperature::TemperatureModel;
use crate::place::{MonthlyClimate, Origin};
use crate::quantity::{Celsius, Degrees};

/// Days of a synthetic year.
pub const DAYS_PER_YEAR: usize = 365;
/// Days of its months.
pub const MONTH_DAYS: [usize; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/// Root of the share of the variance that lasts for weeks: 0.05, from the correlation of measured days 5 to 10 days apart.
const SLOW_PART: f64 = 0.223_606_797_749_978_97;
/// Root of the rest, 0.95.
const FAST_PART: f64 = 0.974_679_434_480_896_3;
/// What the slow chain keeps from day to day.
const SLOW_KEEPS: f64 = 0.95;
/// Spread of single days over that of the smoothed grid, from the stations of the calibration.
const GRID_SPREAD: f64 = 1.05;

/// How far the climate is known, which is how much it may be off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Trust {
    /// From the climate grid: the error of a place, and that of each month.
    Grid,
    /// A person's own long-term figures: what decades leave open.
    Own,
    /// As if it were known for certain: for comparisons with a known climate.
    Certain,
}

impl Trust {
    /// Standard deviation of the logarithm of the climate's error: of all months together, and of each month on its own.
    #[must_use]
    pub const fn doubt(self) -> (f64, f64) {
        match self {
            Self::Grid => (0.15, 0.08),
            Self::Own => (0.05, 0.0),
            Self::Certain => (0.0, 0.0),
        }
    }
}

/// What a synthetic weather is made from.
#[derive(Clone, Debug, PartialEq)]
pub struct WeatherSpec {
    /// North positive, −90 to 90.
    pub latitude: Degrees,
    /// Mean clearness of each month, January first.
    pub means: [f64; 12],
    /// Standard deviation of the daily clearness within each month.
    pub spreads: [f64; 12],
    /// Mean air temperature of each month \[°C\].
    pub temperatures: [Celsius; 12],
    /// How far the means are known.
    pub trust: Trust,
}

impl WeatherSpec {
    /// That of a place, with the spread of the climate grid there ([`SpreadGrid::at`](crate::place::SpreadGrid::at)).
    #[must_use]
    pub fn of_place(climate: &MonthlyClimate, grid_spread: &[f64; 12]) -> Self {
        Self {
            latitude: climate.site.latitude,
            means: climate.clearness,
            spreads: grid_spread.map(|spread| spread * GRID_SPREAD),
            temperatures: climate.temperature,
            trust: if climate.origin == Origin::Own { Trust::Own } else { Trust::Grid },
        }
    }
}

/// The weather of a place: any number of replicas of its years, the same for the same seed.
#[derive(Clone, Debug)]
pub struct Weather {
    spec: WeatherSpec,
    seed: u64,
    nodes: Nodes,
    /// Means as far as they can be fitted, and what is left to scale.
    held: [(f64, f64); 12],
    /// Means per fitted mean: 1 but for months darker or brighter than can be fitted.
    scales: [f64; 12],
    certain: [Marginal; 12],
    keeps: f64,
    temperature: TemperatureModel,
}

/// What the fast chain of the clearness keeps from day to day, by latitude: most in the dry and wet seasons of the outer
/// tropics, least at the equator and in the westerlies. Our own fit to measured decades; least certain from 28 to 40°.
#[must_use]
pub fn persistence(latitude: Degrees) -> f64 {
    let from_equator = latitude.abs().0;
    let part = ((from_equator - 8.0) / 6.0).min((40.0 - from_equator) / 10.0);
    0.25 + 0.23 * if part > 0.0 { part.min(1.0) } else { 0.0 }
}

impl Weather {
    /// Makes the weather of a place ready.
    #[must_use]
    pub fn new(spec: WeatherSpec, seed: u64) -> Self {
        let nodes = Nodes::new();
        let held: [(f64, f64); 12] =
            core::array::from_fn(|month| held(spec.means[month], spec.spreads[month]));
        Self {
            certain: held.map(|(mean, spread)| Marginal::fit(mean, spread, &nodes)),
            scales: core::array::from_fn(|month| {
                let mean = spec.means[month];
                if mean > 0.0 { mean.min(1.0) / held[month].0 } else { 0.0 }
            }),
            keeps: persistence(spec.latitude),
            temperature: TemperatureModel::new(spec.latitude, &spec.temperatures),
            held,
            nodes,
            seed,
            spec,
        }
    }

    /// What it is made from.
    #[must_use]
    pub fn spec(&self) -> &WeatherSpec {
        &self.spec
    }

    /// One of its replicas: years in one climate that might be the true one. Each can be made without the others.
    #[must_use]
    pub fn replica(&self, number: u32) -> Replica<'_> {
        let stream = |purpose: u64| Stream::branch(self.seed, 3 * u64::from(number) + purpose);
        Replica::new(self, &mut stream(0), stream(1), stream(2))
    }

    /// A month's distribution in a climate that is off by so much.
    fn marginal(&self, month: usize, off: f64) -> Marginal {
        let (mean, spread) = self.held[month];
        Marginal::fit(mean * off, spread, &self.nodes)
    }
}

/// Years that follow each other in one climate.
#[derive(Clone, Debug)]
pub struct Replica<'a> {
    weather: &'a Weather,
    months: [Marginal; 12],
    days: Stream,
    airs: Stream,
    /// The chains that forget within days and within weeks, and that of the air temperature.
    fast: Chain,
    slow: Chain,
    air: Chain,
}

/// A year of days.
#[derive(Clone, Debug, PartialEq)]
pub struct Year {
    /// Irradiation on the horizontal over that outside the air.
    pub clearness: [f64; DAYS_PER_YEAR],
    /// Mean air temperature less that of the month \[K\].
    pub warmer: [Celsius; DAYS_PER_YEAR],
}

impl<'a> Replica<'a> {
    fn new(weather: &'a Weather, climate: &mut Stream, days: Stream, airs: Stream) -> Self {
        let (all, each) = weather.spec.trust.doubt();
        let months = if all > 0.0 || each > 0.0 {
            let whole = all * climate.normal();
            core::array::from_fn(|month| {
                weather.marginal(month, libm::exp(whole + each * climate.normal()))
            })
        } else {
            weather.certain
        };
        Self {
            months,
            fast: Chain::new(weather.keeps),
            slow: Chain::new(SLOW_KEEPS),
            air: Chain::new(TemperatureModel::KEEPS),
            weather,
            days,
            airs,
        }
    }

    /// The next day's normal number of the clearness.
    #[inline]
    fn normal(&mut self) -> f64 {
        let fast = self.fast.next(&mut self.days);
        let slow = self.slow.next(&mut self.days);
        FAST_PART * fast + SLOW_PART * slow
    }

    /// The next year; the first begins with a day that remembers nothing.
    pub fn next_year(&mut self) -> Year {
        let mut year =
            Year { clearness: [0.0; DAYS_PER_YEAR], warmer: [Celsius::ZERO; DAYS_PER_YEAR] };
        let mut day = 0;
        for (month, length) in MONTH_DAYS.into_iter().enumerate() {
            let marginal = self.months[month];
            let scale = self.weather.scales[month];
            let air = self.weather.temperature.month(month);
            for _ in 0..length {
                let normal = self.normal();
                year.clearness[day] = (marginal.clearness(normal) * scale).min(1.0);
                year.warmer[day] = air.warmer(normal, self.air.next(&mut self.airs));
                day += 1;
            }
        }
        year
    }
}

/// Normal numbers that each remember a part of the one before (autoregressive of the first order).
#[derive(Clone, Debug)]
struct Chain {
    keeps: f64,
    renews: f64,
    /// The last number; none before the first.
    last: Option<f64>,
}

impl Chain {
    fn new(keeps: f64) -> Self {
        Self { keeps, renews: libm::sqrt(1.0 - keeps * keeps), last: None }
    }

    #[inline]
    fn next(&mut self, stream: &mut Stream) -> f64 {
        let fresh = stream.normal();
        let next = self.last.map_or(fresh, |last| self.keeps * last + self.renews * fresh);
        self.last = Some(next);
        next
    }
}

/// The month, 0 to 11, of a day of the synthetic year, from 0.
#[must_use]
pub fn month_of_day(day: usize) -> usize {
    let mut ends = 0;
    MONTH_DAYS
        .iter()
        .take_while(|length| {
            ends += **length;
            ends <= day
        })
        .count()
        .min(11)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spec(trust: Trust) -> WeatherSpec {
        WeatherSpec {
            latitude: Degrees(52.1),
            means: [0.27, 0.35, 0.36, 0.41, 0.43, 0.43, 0.415, 0.43, 0.41, 0.36, 0.29, 0.27],
            spreads: [0.168; 12],
            temperatures: [3.0, 3.5, 6.0, 9.0, 13.0, 16.0, 18.0, 18.0, 15.0, 11.0, 7.0, 4.0]
                .map(Celsius),
            trust,
        }
    }

    /// Computed apart in another language from the definition, to four digits: latitude 52.1, January with a mean of 0.27 and
    /// a spread of 0.168, from the stream of seed 1.
    const FIRST_DAYS: [f64; 8] = [0.5193, 0.2166, 0.1695, 0.1103, 0.0998, 0.2053, 0.2005, 0.2242];

    #[test]
    fn the_first_days_are_those_of_the_definition() {
        let weather = Weather::new(spec(Trust::Certain), 0);
        let stream = Stream::new(1);
        let mut replica = Replica::new(&weather, &mut stream.clone(), stream.clone(), stream);
        let year = replica.next_year();
        for (day, expected) in year.clearness.into_iter().zip(FIRST_DAYS) {
            assert!((day - expected).abs() < 5.1e-5, "{day} {expected}");
        }
    }

    #[test]
    fn persistence_follows_latitude_alike_in_both_hemispheres() {
        for (latitude, expected) in
            [(0.0, 0.25), (10.0, 0.327), (20.0, 0.48), (35.0, 0.365), (52.0, 0.25)]
        {
            assert!((persistence(Degrees(latitude)) - expected).abs() < 5e-4);
            assert_eq!(persistence(Degrees(latitude)), persistence(Degrees(-latitude)));
        }
    }

    #[test]
    fn a_replica_is_the_same_whenever_it_is_made() {
        let weather = Weather::new(spec(Trust::Grid), 5);
        let (mut one, mut other) = (weather.replica(3), weather.replica(4));
        let first = one.next_year();
        let second = one.next_year();
        assert_ne!(first, other.next_year());
        assert_ne!(first, second);
        let again = Weather::new(spec(Trust::Grid), 5);
        let mut again = again.replica(3);
        assert_eq!([again.next_year(), again.next_year()], [first, second]);
    }

    #[test]
    fn months_have_the_mean_and_the_spread_they_should() {
        let spec = spec(Trust::Certain);
        let weather = Weather::new(spec.clone(), 1);
        let mut replica = weather.replica(0);
        let (mut sums, mut squares) = ([0.0; 12], [0.0; 12]);
        let years = 500;
        for _ in 0..years {
            let year = replica.next_year();
            for (day, clearness) in year.clearness.into_iter().enumerate() {
                sums[month_of_day(day)] += clearness;
                squares[month_of_day(day)] += clearness * clearness;
            }
        }
        for month in 0..12 {
            let count = (years * MONTH_DAYS[month]) as f64;
            let mean = sums[month] / count;
            let spread = (squares[month] / count - mean * mean).sqrt();
            // Four standard errors of some 5000 independent days.
            assert!((mean - spec.means[month]).abs() < 0.0095, "{month}: {mean}");
            assert!((spread - spec.spreads[month]).abs() < 0.006, "{month}: {spread}");
        }
    }

    #[test]
    fn doubt_moves_whole_replicas() {
        let weather = Weather::new(spec(Trust::Grid), 1);
        let means: Vec<f64> = (0..400)
            .map(|number| {
                let year = weather.replica(number).next_year();
                libm::log(year.clearness.iter().sum::<f64>() / DAYS_PER_YEAR as f64)
            })
            .collect();
        let mean = means.iter().sum::<f64>() / 400.0;
        let spread = means.iter().map(|own| (own - mean) * (own - mean)).sum::<f64>() / 400.0;
        // Four standard errors around 0.15 of all months, 0.08/√12 of each, and some 0.03 of the year's own luck.
        assert!((spread.sqrt() - 0.155).abs() < 0.02, "{}", spread.sqrt());
    }

    #[test]
    fn any_figures_give_finite_days() {
        let odd = [0.0, -1.0, 1.0, f64::NAN, f64::INFINITY, 0.02, 0.9, 0.5, 0.0, 0.08, 0.8, 0.3];
        let spec = WeatherSpec {
            latitude: Degrees(f64::NAN),
            means: odd,
            spreads: odd,
            temperatures: odd.map(Celsius),
            trust: Trust::Grid,
        };
        let weather = Weather::new(spec, u64::MAX);
        let year = weather.replica(u32::MAX).next_year();
        assert!(year.clearness.iter().all(|day| (0.0..=1.0).contains(day)));
        assert!(year.warmer.iter().all(|air| air.0.is_finite()));
    }

    #[test]
    fn dark_months_are_reached_by_scaling() {
        let means = [0.02; 12];
        let weather =
            Weather::new(WeatherSpec { means, spreads: [0.04; 12], ..spec(Trust::Certain) }, 1);
        let mut replica = weather.replica(0);
        let sum: f64 = (0..50).map(|_| replica.next_year().clearness.iter().sum::<f64>()).sum();
        assert!((sum / 50.0 / DAYS_PER_YEAR as f64 - 0.02).abs() < 0.001);
    }

    #[test]
    fn days_belong_to_their_months() {
        assert_eq!([0, 30, 31, 58, 59, 364, 999].map(month_of_day), [0, 0, 1, 1, 2, 11, 11]);
        assert_eq!(MONTH_DAYS.iter().sum::<usize>(), DAYS_PER_YEAR);
    }
}
