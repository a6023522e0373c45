//! Random numbers that are the same on every machine.
//!
//! **Method.** SplitMix64 (Steele, Lea & Flood 2014, doi:10.1145/2714064.2660195): a counter and a mixing function, so that
//! streams that start apart stay apart. Normal numbers are sums of twelve 16-bit pieces: whole numbers until the last
//! division, hence no rounding and no logarithm.
//!
//! **Range.** A normal number is never beyond ±6; its tails are thinner than the true ones from about 3.5 on (the excess
//! kurtosis is −0.1). The weather made of it is bounded anyway.

/// Step of the counter: the golden ratio as a 64-bit fraction.
const GOLDEN: u64 = 0x9E37_79B9_7F4A_7C15;
/// Mean of the sum of twelve 16-bit pieces.
const MIDDLE: i64 = 6 * 65_535;
/// Its standard deviation, to 1e-10 of it.
const DEVIATION: f64 = 65_536.0;

/// A stream of random numbers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stream(u64);

impl Stream {
    /// The stream of a seed.
    #[must_use]
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// A stream of its own for each number under the same seed: it starts at that output of the seed's stream.
    #[must_use]
    pub const fn branch(seed: u64, number: u64) -> Self {
        Self(mix(seed.wrapping_add(GOLDEN.wrapping_mul(number.wrapping_add(1)))))
    }

    /// The next 64 random bits.
    #[inline]
    pub const fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(GOLDEN);
        mix(self.0)
    }

    /// A number of at least 0 and less than 1, all alike.
    #[inline]
    pub fn uniform(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / 9_007_199_254_740_992.0
    }

    /// A normal number of mean 0 and standard deviation 1.
    #[inline]
    pub fn normal(&mut self) -> f64 {
        let sum = pieces(self.bits()) + pieces(self.bits()) + pieces(self.bits());
        (sum - MIDDLE) as f64 / DEVIATION
    }
}

/// Scrambles a counter.
const fn mix(counter: u64) -> u64 {
    let first = (counter ^ (counter >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    let second = (first ^ (first >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    second ^ (second >> 31)
}

/// The sum of the four 16-bit pieces of 64 bits.
#[inline]
const fn pieces(bits: u64) -> i64 {
    ((bits & 0xFFFF) + (bits >> 16 & 0xFFFF) + (bits >> 32 & 0xFFFF) + (bits >> 48)) as i64
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The first outputs of the published generator for seed 1.
    #[test]
    fn the_bits_are_those_of_the_published_generator() {
        let mut stream = Stream::new(1);
        let bits = [stream.bits(), stream.bits(), stream.bits()];
        assert_eq!(bits, [0x910A_2DEC_8902_5CC1, 0xBEEB_8DA1_658E_EC67, 0xF893_A2EE_FB32_555E]);
        assert_eq!(Stream::branch(1, 1), Stream::new(bits[1]));
    }

    /// Computed apart from the definition above with whole numbers in another language.
    #[test]
    fn normal_numbers_are_exact() {
        let mut stream = Stream::new(1);
        for expected in [1.184_830, 0.370_392, -0.443_069, -0.341_690] {
            assert!((stream.normal() - expected).abs() < 5e-7);
        }
    }

    #[test]
    fn moments_are_those_of_the_distributions() {
        let mut stream = Stream::new(7);
        let count = 200_000;
        let (mut sum, mut squares, mut fourth, mut uniform) = (0.0, 0.0, 0.0, 0.0);
        for _ in 0..count {
            let normal = stream.normal();
            sum += normal;
            squares += normal * normal;
            fourth += normal * normal * normal * normal;
            uniform += stream.uniform();
        }
        let count = f64::from(count);
        // Four standard errors each.
        assert!((sum / count).abs() < 0.009);
        assert!((squares / count - 1.0).abs() < 0.013);
        assert!((fourth / count - 2.9).abs() < 0.09);
        assert!((uniform / count - 0.5).abs() < 0.0026);
    }
}
