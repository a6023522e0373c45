//! Words: turns typed messages, working and ids into sentences. Only the app and the command line use it.
//!
//! One folder per language. [`Language`] dispatches; each method matches every language, so a language that lacks a message does
//! not compile. Within a language every message is an exhaustive match, so a message that lacks words does not compile.
//!
//! **To add a language:** add a variant to [`Language`], copy the folder `en`, translate it, and follow the compiler.

pub mod en;
mod number;

pub use number::{amount, clock, rounded};

/// A language that the program speaks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Language {
    /// English.
    #[default]
    English,
}
