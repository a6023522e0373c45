//! Places: where on Earth, in which climate, by which clock.

pub mod clock;
pub mod towns;
