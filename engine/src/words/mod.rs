//! Words: every text shown to people, one folder per language.

pub mod en;
