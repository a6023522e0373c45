//! Whole-program tests of Sunlarder; see the files in `tests/`.

#[cfg(feature = "browser")]
pub mod browser;
pub mod calibration;
pub mod expression;
pub mod golden;
pub mod lanes;
pub mod logkeeper;
pub mod plain_store;
pub mod plans;
pub mod provenance;
pub mod reference;
pub mod seal;
pub mod soundness;
pub mod textbook;
pub mod weather_year;
