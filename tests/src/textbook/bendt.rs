//! The distribution of daily clearness with one parameter.
//!
//! Bendt, Collares-Pereira & Rabl 1981, doi:10.1016/0038-092X(81)90013-X; bounds of Hollands & Huget 1983,
//! doi:10.1016/0038-092X(83)90149-4; closed form of the exponent by Herzog 1985, as in Duffie & Beckman, 4th ed., Wiley 2013,
//! eq. 2.9.6.

/// How the exponent follows from the mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// Closed form: off by up to 0.015 in the mean below 0.25.
    Closed,
    /// The mean comes out right.
    Exact,
}

/// Clearness with a density of `exp(γK)` between two bounds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bendt {
    /// Lower bound.
    pub low: f64,
    /// Upper bound.
    pub high: f64,
    /// Exponent γ.
    pub gamma: f64,
}

impl Bendt {
    /// That of a mean clearness from 0.15 to 0.78.
    #[must_use]
    pub fn new(mean: f64, fit: Fit) -> Self {
        let low = 0.05;
        let below = mean - 0.75;
        let high = 0.6313 + 0.267 * mean - 11.9 * below.powi(8);
        let x = (high - low) / (high - mean);
        let gamma = -1.498 + (1.184 * x - 27.182 * (-1.5 * x).exp()) / (high - low);
        let closed = Self { low, high, gamma };
        match fit {
            Fit::Closed => closed,
            Fit::Exact => closed.with_mean(mean),
        }
    }

    /// The same bounds with the exponent that gives a mean, by halving: the mean rises with the exponent.
    fn with_mean(self, mean: f64) -> Self {
        let (mut small, mut large) = (-200.0, 200.0);
        for _ in 0..60 {
            let gamma = (small + large) / 2.0;
            if (Self { gamma, ..self }).mean() < mean { small = gamma } else { large = gamma }
        }
        Self { gamma: (small + large) / 2.0, ..self }
    }

    /// Mean and mean square of the distance to the lower bound, over the width.
    fn moments(&self) -> (f64, f64) {
        let g = self.gamma * (self.high - self.low);
        if g.abs() < 1e-4 {
            return (0.5 + g / 12.0, 1.0 / 3.0 + g / 12.0);
        }
        // Over an exponential density the parts are 1/(1 − e^(−g)) and its kin, without large exponentials.
        let whole = -(-g).exp_m1();
        let mean = 1.0 / whole - 1.0 / g;
        (mean, 1.0 / whole - 2.0 * mean / g)
    }

    /// Mean clearness.
    #[must_use]
    pub fn mean(&self) -> f64 {
        self.low + (self.high - self.low) * self.moments().0
    }

    /// Standard deviation of the clearness.
    #[must_use]
    pub fn spread(&self) -> f64 {
        let (mean, square) = self.moments();
        (self.high - self.low) * (square - mean * mean).sqrt()
    }

    /// Share of days that are darker.
    #[must_use]
    pub fn share_below(&self, clearness: f64) -> f64 {
        (self.gamma * (clearness - self.low)).exp_m1()
            / (self.gamma * (self.high - self.low)).exp_m1()
    }

    /// Clearness below which a share of days lies.
    #[must_use]
    pub fn quantile(&self, share: f64) -> f64 {
        let darkest = (self.gamma * (self.low - self.high)).exp();
        self.high + (darkest * (1.0 - share) + share).ln() / self.gamma
    }
}
