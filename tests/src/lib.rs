//! Whole-program tests of Sunlarder; see the files in `tests/`.

pub mod expression;
pub mod reference;
#[cfg(feature = "browser")]
pub mod browser;
