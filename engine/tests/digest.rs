//! The same computation gives the same bits on every platform.
//!
//! Runs natively as an ordinary test and in wasm under node (`./dev test` does both); both compare with the same file,
//! `tests/reference/digest.txt`. A digest is the 64-bit FNV-1a hash of the bit patterns of all results, in order (Fowler,
//! Noll, Vo, Eastlake: "The FNV Non-Cryptographic Hash Algorithm", IETF draft-eastlake-fnv). One line per subject tells
//! where a difference comes from. After a wanted change of results, put the printed lines into that file.

use sunlarder_engine::quantity::{AmpHours, Amps, Celsius, Hours, Percent, Volts, Watts};

const GOLDEN: &str = include_str!("../../tests/reference/digest.txt");

/// FNV-1a over the bits of numbers.
struct Digest(u64);

impl Digest {
    const OFFSET_BASIS: u64 = 0xcbf2_9ce4_8422_2325;
    const PRIME: u64 = 0x0000_0100_0000_01b3;

    fn new() -> Self {
        Self(Self::OFFSET_BASIS)
    }

    fn add(&mut self, value: f64) {
        for byte in value.to_bits().to_le_bytes() {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(Self::PRIME);
        }
    }
}

/// The transcendental functions that the engine uses, over the ranges in which it uses them and beyond.
fn functions(digest: &mut Digest) {
    for i in 0..20_000 {
        let x = f64::from(i) * 0.001;
        let signed = x - 10.0;
        for value in [libm::sin(signed), libm::cos(signed), libm::tan(signed), libm::atan(signed)] {
            digest.add(value);
        }
        for value in [libm::exp(signed), libm::log1p(x), libm::pow(x, 1.3), libm::cbrt(signed)] {
            digest.add(value);
        }
        let cosine = signed / 10.0;
        digest.add(libm::acos(cosine));
        digest.add(libm::asin(cosine));
    }
}

/// Products and ratios of quantities, and the parsing and printing of numbers.
fn quantities(digest: &mut Digest) {
    for i in 1..2_000 {
        let tenths = f64::from(i) / 10.0;
        let power: Watts = Volts(12.8) * Amps(tenths);
        let charge: AmpHours = Amps(tenths) * Hours(0.25);
        digest.add(power.0);
        digest.add(charge.0);
        digest.add(Celsius(tenths).0);
        digest.add(Percent(tenths).ratio());
        digest.add(format!("{tenths}").parse().unwrap_or(f64::NAN));
    }
}

/// A name and what fills its digest; add a line here for each part of the engine.
type Subject = (&'static str, fn(&mut Digest));
const SUBJECTS: [Subject; 2] = [("functions", functions), ("quantities", quantities)];

fn lines() -> String {
    let line = |(name, fill): Subject| {
        let mut digest = Digest::new();
        fill(&mut digest);
        format!("{name} {:016x}\n", digest.0)
    };
    SUBJECTS.into_iter().map(line).collect()
}

#[cfg_attr(target_arch = "wasm32", wasm_bindgen_test::wasm_bindgen_test)]
#[cfg_attr(not(target_arch = "wasm32"), test)]
fn results_have_the_same_bits_on_every_platform() {
    let found = lines();
    assert!(found == GOLDEN, "the digests are now:\n{found}where the file says:\n{GOLDEN}");
}
