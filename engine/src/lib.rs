//! Energy budgets, solar yield and autonomy of anything that lives from a battery.
//!
//! Pure and deterministic: no clock, no input or output, no randomness but from a seed that is passed in, and the same bits on every
//! platform. What is computed for people can show its [working].
//!
//! - [Primer](#primer) · [The rooms](#the-rooms) · [A worked example](#a-worked-example) · [Nomenclature](#nomenclature)
//! - [Methods](#methods) · [Where it is valid](#where-it-is-valid) · [What this does not model](#what-this-does-not-model)
//! - How good the chances are: [`sky::calibration`]
#![doc = include_str!("../GUIDE.md")]
#![doc = include_str!("../METHODS.md")]
#![doc = include_str!("../LIMITS.md")]

pub mod bank;
pub mod digits;
pub mod document;
pub mod fitting;
pub mod gauge;
pub mod load;
pub mod logbook;
pub mod outlook;
pub mod place;
pub mod quantity;
pub mod share;
pub mod simulate;
pub mod sizing;
pub mod sky;
pub mod source;
pub mod sun;
pub mod system;
pub mod words;
pub mod working;
