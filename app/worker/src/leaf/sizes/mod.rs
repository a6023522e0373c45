//! How big it should be, and what would help.

pub mod map;
mod numbers;

pub use numbers::SizesNumbers;
