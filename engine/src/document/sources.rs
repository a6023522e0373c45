//! The sections of a generator and of a turbine, as people save and share them.

use super::schedule::{Schedule, When};

/// A generator that starts and stops by the state of charge.
#[derive(Clone, Debug, PartialEq)]
pub struct Generator {
    /// Whether it is counted.
    pub on: bool,
    /// Output of its charger at the bank \[A\].
    pub limit_a: f64,
    /// It starts when the state of charge is down to this \[%\].
    pub start_pct: f64,
    /// It stops when the state of charge is up to this, or charging has ended \[%\].
    pub stop_pct: f64,
    /// Once started it runs at least so long \[min\].
    pub minimum_run_min: f64,
    /// When it may run at all.
    pub schedule: Schedule,
    /// Fuel that it takes in an hour, whatever it gives \[l/h\].
    pub fuel_l_per_h: Option<f64>,
    /// Fuel that it takes for the energy it brings to the bank \[l/kWh\].
    pub fuel_l_per_kwh: Option<f64>,
}

/// How the output of a turbine is stated: twelve means, January first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TurbineOutput {
    /// Power that reaches the bank \[W\].
    MeanW([f64; 12]),
    /// Charge that reaches the bank in a day \[Ah\].
    AhPerDay([f64; 12]),
}

/// A small wind or water turbine.
#[derive(Clone, Debug, PartialEq)]
pub struct Turbine {
    /// Whether it is counted.
    pub on: bool,
    /// What it gives in each month.
    pub output: TurbineOutput,
    /// What each hour of the day has of that, in any measure: only their ratios count. Even if not stated.
    pub hours: Option<[f64; 24]>,
}

impl Default for Generator {
    fn default() -> Self {
        Self {
            on: true,
            limit_a: 40.0,
            start_pct: 30.0,
            stop_pct: 80.0,
            minimum_run_min: 60.0,
            schedule: Schedule::daily(When::Always),
            fuel_l_per_h: None,
            fuel_l_per_kwh: None,
        }
    }
}

impl Default for Turbine {
    fn default() -> Self {
        Self { on: true, output: TurbineOutput::MeanW([10.0; 12]), hours: None }
    }
}
