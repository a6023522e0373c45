//! Days that remember the one before: a normal number through the distribution of Bendt and others.
//!
//! Graham, Hollands & Unny 1988, Solar Energy 40:83-92, doi:10.1016/0038-092X(88)90075-8.

use sunlarder_engine::sky::Stream;

use super::bendt::Bendt;

/// Days without end.
#[derive(Clone, Debug)]
pub struct Autoregressive {
    marginal: Bendt,
    keeps: f64,
    renews: f64,
    state: f64,
    stream: Stream,
}

impl Autoregressive {
    /// Days of a distribution, of which the normal number keeps the part `keeps` of the day before.
    #[must_use]
    pub fn new(marginal: Bendt, keeps: f64, seed: u64) -> Self {
        let mut stream = Stream::new(seed);
        let state = stream.normal();
        Self { marginal, keeps, renews: (1.0 - keeps * keeps).sqrt(), state, stream }
    }
}

impl Iterator for Autoregressive {
    type Item = f64;

    fn next(&mut self) -> Option<f64> {
        self.state = self.keeps * self.state + self.renews * self.stream.normal();
        let share = 0.5 * libm::erfc(-self.state * core::f64::consts::FRAC_1_SQRT_2);
        Some(self.marginal.quantile(share))
    }
}
