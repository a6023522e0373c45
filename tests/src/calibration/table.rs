//! Predicted against measured, case by case and in sum.

use super::prediction::{Knowledge, Prediction, predict};
use super::record::{Design, Station};
use sunlarder_engine::sky::Trust;

/// Cases count where the measured or the predicted loss of load is at least this: the product states no smaller chance.
pub const LEAST: f64 = 0.001;
/// Ratios take smaller losses as this one: less is less than a day in three years in the shortest records.
const FLOOR: f64 = 0.0001;
/// Part of the replicas below the stated range, and above it.
const TAIL: f64 = 0.1;
/// Halvings of the search for an array of equal effect: from a factor of 4 to 0.01 %.
const HALVINGS: usize = 13;

/// A design at a station.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// The station's name.
    pub station: String,
    /// Its latitude \[°\].
    pub latitude: f64,
    /// The design.
    pub design: Design,
    /// Median of the replicas' losses of load: what is predicted.
    pub median: f64,
    /// 10 % of the replicas lose no more than this.
    pub low: f64,
    /// 90 % of the replicas lose no more than this.
    pub high: f64,
    /// How much larger an array the prediction asks for than the measured days do, for the same loss of load (ratio − 1);
    /// only where asked for.
    pub array_error: Option<f64>,
}

impl Case {
    fn of(station: &Station, design: Design, prediction: &Prediction, search: bool) -> Self {
        let losses = prediction.losses(design.array_gain, design.store);
        let median = quantile(&losses, 0.5);
        let mut case = Self {
            station: station.name.clone(),
            latitude: station.latitude,
            design,
            median,
            low: quantile(&losses, TAIL),
            high: quantile(&losses, 1.0 - TAIL),
            array_error: None,
        };
        if search && case.counts() {
            case.array_error = Some(array_error(design, prediction));
        }
        case
    }

    /// Whether it is large enough to count.
    #[must_use]
    pub fn counts(&self) -> bool {
        self.design.measured.max(self.median) >= LEAST
    }

    /// Whether the measured loss lies in the stated range.
    #[must_use]
    pub fn covered(&self) -> bool {
        (self.low..=self.high).contains(&self.design.measured)
    }

    /// Logarithm of predicted over measured.
    #[must_use]
    pub fn log_ratio(&self) -> f64 {
        (self.median.max(FLOOR) / self.design.measured.max(FLOOR)).ln()
    }
}

/// A quantile of sorted values, between the two nearest.
fn quantile(sorted: &[f64], part: f64) -> f64 {
    let Some(last) = sorted.len().checked_sub(1) else { return f64::NAN };
    let place = part * last as f64;
    let below = place as usize;
    let above = (below + 1).min(last);
    sorted[below] + (sorted[above] - sorted[below]) * (place - below as f64)
}

/// The array that brings the median to the measured loss (or to [`LEAST`] where less was measured), over the design's, less
/// one.
fn array_error(design: Design, prediction: &Prediction) -> f64 {
    let target = design.measured.max(LEAST);
    let (mut small, mut large) = (0.5_f64, 2.0_f64);
    for _ in 0..HALVINGS {
        let middle = (small * large).sqrt();
        let losses = prediction.losses(design.array_gain * middle, design.store);
        if quantile(&losses, 0.5) > target {
            small = middle;
        } else {
            large = middle;
        }
    }
    (small * large).sqrt() - 1.0
}

/// All cases of stations, with the array errors if `search`.
#[must_use]
pub fn cases(
    stations: &[Station],
    knowledge: Knowledge,
    trust: Trust,
    replicas: u32,
    search: bool,
) -> Vec<Case> {
    let seeds = 1..;
    let of_station = |(station, seed): (&Station, u64)| {
        let prediction = predict(station, knowledge, trust, replicas, seed);
        let case = |design: &Design| Case::of(station, *design, &prediction, search);
        station.designs.iter().map(case).collect::<Vec<_>>()
    };
    stations.iter().zip(seeds).flat_map(of_station).collect()
}

/// Cases in sum: those that count.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Summary {
    /// How many count.
    pub counted: usize,
    /// Geometric mean of predicted over measured.
    pub geometric_mean: f64,
    /// Standard deviation of its logarithm.
    pub spread: f64,
    /// Share within a factor 2.
    pub within_2: f64,
    /// Share within a factor 3.
    pub within_3: f64,
    /// Share whose measured loss lies in the stated range.
    pub covered: f64,
}

impl Summary {
    /// Names of the columns that are printed.
    pub const HEAD: &'static str =
        "| cases | geometric mean | spread (sd of ln) | within factor 2 / 3 | in the 10-90 % range";

    /// Sums cases up.
    #[must_use]
    pub fn of(cases: &[Case]) -> Self {
        let counted: Vec<&Case> = cases.iter().filter(|case| case.counts()).collect();
        let logs: Vec<f64> = counted.iter().map(|case| case.log_ratio()).collect();
        let (mean, spread) = mean_and_spread(&logs);
        let share = |holds: &dyn Fn(&&&Case) -> bool| {
            counted.iter().filter(holds).count() as f64 / counted.len() as f64
        };
        let within = |factor: f64| share(&|case| case.log_ratio().abs() <= factor.ln());
        Self {
            counted: counted.len(),
            geometric_mean: mean.exp(),
            spread,
            within_2: within(2.0),
            within_3: within(3.0),
            covered: share(&|case| case.covered()),
        }
    }
}

impl std::fmt::Display for Summary {
    fn fmt(&self, to: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(
            to,
            "| {} | {:.2} | {:.2} | {:.0} / {:.0} % | {:.0} %",
            self.counted,
            self.geometric_mean,
            self.spread,
            100.0 * self.within_2,
            100.0 * self.within_3,
            100.0 * self.covered,
        )
    }
}

/// Mean and standard deviation of the array errors of cases.
#[must_use]
pub fn array_errors(cases: &[Case]) -> (f64, f64) {
    mean_and_spread(&cases.iter().filter_map(|case| case.array_error).collect::<Vec<_>>())
}

fn mean_and_spread(values: &[f64]) -> (f64, f64) {
    let count = values.len() as f64;
    let mean = values.iter().sum::<f64>() / count;
    let squares = values.iter().map(|value| (value - mean) * (value - mean)).sum::<f64>();
    (mean, (squares / count).sqrt())
}
