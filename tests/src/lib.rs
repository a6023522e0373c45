//! Whole-program tests of Sunlarder; see the files in `tests/`.

#[cfg(feature = "browser")]
pub mod browser;
pub mod expression;
pub mod golden;
pub mod plans;
pub mod reference;
pub mod seal;
pub mod soundness;
