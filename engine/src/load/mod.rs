//! Loads: what is run from the battery.

pub mod catalogue;
