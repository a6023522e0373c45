//! Whole-program tests of Sunlarder; see the files in `tests/`.

#[cfg(feature = "browser")]
pub mod browser;
