//! Place.
mod clock;
pub use clock::{Clock, SummerTime};
