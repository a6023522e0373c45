//! The built-in climate against stations.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use sunlarder_engine::place::{Climate, MonthlyClimate, Origin, SpreadGrid};
use sunlarder_engine::quantity::Degrees;
use sunlarder_engine::sun::Site;

fn climate_at(site: Site) -> MonthlyClimate {
    Climate::embedded().at(site)
}

const STATIONS: &str = include_str!("../reference/stations.csv");

/// Months darker than this have no relative error of their own \[kWh/m² a day\]: at the edge of polar night it means
/// nothing.
const DARKEST: f64 = 0.5;

/// Monthly irradiation of the climate and of stations \[kWh/m² a day\].
#[derive(Default)]
struct Comparison(Vec<(f64, f64)>);

impl Comparison {
    /// Of the stations whose class begins with `class`.
    fn with(class: &str) -> Self {
        let mut comparison = Self::default();
        for line in STATIONS.lines().filter(|line| !line.starts_with('#')).skip(1) {
            let values: Vec<&str> = line.split(',').collect();
            assert_eq!(values.len(), 17, "{line}");
            if !values[4].starts_with(class) {
                continue;
            }
            let number = |place: usize| values[place].parse::<f64>().unwrap();
            let site = Site { latitude: Degrees(number(2)), longitude: Degrees(number(3)) };
            for (month, climate) in climate_at(site).irradiation().into_iter().enumerate() {
                comparison.0.push((climate.0, number(5 + month)));
            }
        }
        comparison
    }

    fn mean(&self) -> f64 {
        self.0.iter().map(|(_, station)| station).sum::<f64>() / self.0.len() as f64
    }

    /// Root of the mean square of the differences over the stations' mean.
    fn relative_rmse(&self) -> f64 {
        root_mean_square(self.0.iter().map(|(climate, station)| climate - station)) / self.mean()
    }

    fn bias(&self) -> f64 {
        let sum: f64 = self.0.iter().map(|(climate, station)| climate - station).sum();
        sum / self.0.len() as f64 / self.mean()
    }

    /// Each month's difference over that month's own figure.
    fn own_errors(&self) -> Vec<f64> {
        let bright = self.0.iter().filter(|(_, station)| *station >= DARKEST);
        bright.map(|(climate, station)| climate / station - 1.0).collect()
    }

    fn print(&self, name: &str) {
        let own = self.own_errors();
        let within = |limit: f64| {
            100.0 * own.iter().filter(|error| error.abs() <= limit).count() as f64
                / own.len() as f64
        };
        println!(
            "{name}: {} station-months, relative RMSE {:.2} %, bias {:+.2} %; by each month's own figure RMSE {:.2} %, \
             {:.0} % within 10 %, {:.0} % within 20 %",
            self.0.len(),
            100.0 * self.relative_rmse(),
            100.0 * self.bias(),
            100.0 * root_mean_square(own.iter().copied()),
            within(0.1),
            within(0.2),
        );
    }
}

fn root_mean_square(values: impl ExactSizeIterator<Item = f64>) -> f64 {
    let count = values.len() as f64;
    (values.map(|value| value * value).sum::<f64>() / count).sqrt()
}

/// The relative RMSE of solar resource studies: over the mean of all months, so that a dark month counts by the energy
/// it is off by. The mean of each month's own relative error weighs dark months more and is larger; it is held too, so
/// that neither gets worse unseen.
#[test]
fn monthly_irradiation_meets_the_stations() {
    let (typical, measured) = (Comparison::with("EPW"), Comparison::with("DSSAT-measured"));
    typical.print("typical-year stations");
    measured.print("measured stations");
    assert_eq!((typical.0.len(), measured.0.len()), (801 * 12, 31 * 12));
    assert!(typical.relative_rmse() <= 0.092);
    assert!(measured.relative_rmse() <= 0.15);
    assert!(root_mean_square(typical.own_errors().into_iter()) <= 0.11);
    assert!(root_mean_square(measured.own_errors().into_iter()) <= 0.17);
}

#[test]
fn the_climate_is_plausible_everywhere_and_says_where_it_comes_from() {
    for latitude in (-90..=90).step_by(2) {
        for longitude in (-180..=180).step_by(3) {
            let site = Site {
                latitude: Degrees(f64::from(latitude)),
                longitude: Degrees(f64::from(longitude)),
            };
            let (climate, spread) = (climate_at(site), SpreadGrid::embedded().at(site));
            for month in 0..12 {
                assert!((0.2..=0.82).contains(&climate.clearness[month]), "{climate:?}");
                assert!((0.01..=0.5).contains(&spread[month]), "{spread:?}");
                assert!((-65.0..=45.0).contains(&climate.temperature[month].0), "{climate:?}");
            }
        }
    }
    let origin = |latitude, longitude| {
        climate_at(Site { latitude: Degrees(latitude), longitude: Degrees(longitude) }).origin
    };
    assert_eq!(origin(48.0, 10.0), Origin::Land);
    assert_eq!(origin(30.0, -40.0), Origin::Ocean);
    assert_eq!(origin(88.0, 0.0), Origin::Guess);
}
