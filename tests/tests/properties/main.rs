//! What must hold for every plan, tried on random ones.
//!
//! The same ones each time, so that a failure is nobody's luck;
//! `PROPTEST_CASES=5000 PROPTEST_RNG_SEED=7 cargo test -p sunlarder-tests --test properties` tries more and others.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

mod codes;
mod gauge;
mod monotone;
mod plans;
mod readings;
mod runs;
mod wiring;

use proptest::test_runner::{Config, RngSeed};

/// The number of plans tried where one costs milliseconds.
const CASES: u32 = 96;

/// The seed unless the environment names another.
const SEED: u64 = 20_261_124;

/// Settings of all properties: nothing is written beside the sources, and the environment may ask for more cases.
fn settings(cases: u32) -> Config {
    let default = Config::default();
    let asked = |name| std::env::var_os(name).is_some();
    let cases = if asked("PROPTEST_CASES") { default.cases } else { cases };
    let seed = if asked("PROPTEST_RNG_SEED") { default.rng_seed } else { RngSeed::Fixed(SEED) };
    Config { failure_persistence: None, cases, rng_seed: seed, ..default }
}
