//! Whole-program tests of Sunlarder; see the files in `tests/`.

#[cfg(feature = "browser")]
pub mod browser;
pub mod expression;
pub mod plans;
pub mod reference;
