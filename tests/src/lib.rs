//! Whole-program tests of Sunlarder; see the files in `tests/`.
