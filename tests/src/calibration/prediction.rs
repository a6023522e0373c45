//! What synthetic days cause.

use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::quantity::Degrees;
use sunlarder_engine::sky::{DAYS_PER_YEAR, Trust, Weather, WeatherSpec};
use sunlarder_engine::sun::{Site, daily_extraterrestrial, noon};

use super::record::Station;
use crate::plain_store::Store;

/// What is known of a station's climate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Knowledge {
    /// Its own monthly means and spreads.
    Own,
    /// Latitude and longitude alone.
    Place,
}

/// Synthetic days of a station: replicas as long as its record.
#[derive(Clone, Debug)]
pub struct Prediction {
    /// Irradiation of the days \[kWh/m²\], replica by replica.
    replicas: Vec<Vec<f64>>,
}

/// Makes days for a station.
#[must_use]
pub fn predict(
    station: &Station,
    knowledge: Knowledge,
    trust: Trust,
    replicas: u32,
    seed: u64,
) -> Prediction {
    let site = Site { latitude: Degrees(station.latitude), longitude: Degrees(station.longitude) };
    let climate = Climate::embedded().at(site);
    let grid = WeatherSpec::of_place(&climate, &SpreadGrid::embedded().at(site));
    let spec = match knowledge {
        Knowledge::Place => WeatherSpec { trust, ..grid },
        Knowledge::Own => {
            WeatherSpec { means: station.means, spreads: station.spreads, trust, ..grid }
        }
    };
    let weather = Weather::new(spec, seed);
    let outside: Vec<f64> = (1..=DAYS_PER_YEAR as u16)
        .map(|day| daily_extraterrestrial(site.latitude, noon(day), &mut ()).0)
        .collect();
    let days = (station.years * DAYS_PER_YEAR as f64).round() as usize;
    let replicas = (0..replicas).map(|number| {
        let mut replica = weather.replica(number);
        let mut irradiation = Vec::with_capacity(days + DAYS_PER_YEAR);
        while irradiation.len() < days {
            let year = replica.next_year();
            irradiation.extend(year.clearness.iter().zip(&outside).map(|(k, h)| k * h));
        }
        irradiation.truncate(days);
        irradiation
    });
    Prediction { replicas: replicas.collect() }
}

impl Prediction {
    /// Loss of load of each replica, in rising order.
    #[must_use]
    pub fn losses(&self, array_gain: f64, store: f64) -> Vec<f64> {
        let loss = |days: &Vec<f64>| {
            let gains = days.iter().map(|day| day * array_gain);
            Store::full(store).suffer(gains).loss_of_load()
        };
        let mut losses: Vec<f64> = self.replicas.iter().map(loss).collect();
        losses.sort_unstable_by(f64::total_cmp);
        losses
    }
}
