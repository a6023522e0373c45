//! Predicted chances of running out against measured decades.
//!
//! The records are those of `tests/reference/shortfall.csv`: what a plain store would have suffered on the measured days of
//! stations, for five designs each. Synthetic weather is judged by the same store. See `engine/CALIBRATION.md`.

mod prediction;
mod record;
mod table;

pub use prediction::{Knowledge, Prediction, predict};
pub use record::{Design, Station, stations};
pub use table::{Case, LEAST, Summary, array_errors, cases};

/// Replicas of each record that the table and the test are made from.
pub const REPLICAS: u32 = 200;
