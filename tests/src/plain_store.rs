//! The plainest battery there is: a day's gain comes in, a day's load goes out, what overflows or lacks is gone.
//!
//! Measured and synthetic days are judged by the very same store, so that a difference comes from the days alone.

/// What a store suffered.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Shortfall {
    /// Days that passed.
    pub days: usize,
    /// Days on which something lacked.
    pub short_days: usize,
    /// Sum of what lacked \[days of load\].
    pub lacking: f64,
}

impl Shortfall {
    /// Share of the load that was not served: the loss of load.
    #[must_use]
    pub fn loss_of_load(&self) -> f64 {
        self.lacking / self.days.max(1) as f64
    }

    /// Share of days on which something lacked.
    #[must_use]
    pub fn days_short(&self) -> f64 {
        self.short_days as f64 / self.days.max(1) as f64
    }
}

impl std::ops::AddAssign for Shortfall {
    fn add_assign(&mut self, other: Self) {
        self.days += other.days;
        self.short_days += other.short_days;
        self.lacking += other.lacking;
    }
}

/// A store in units of a day's load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Store {
    /// What it holds when full \[days of load\].
    pub capacity: f64,
    /// What it holds now \[days of load\].
    pub level: f64,
}

impl Store {
    /// A full one.
    #[must_use]
    pub fn full(capacity: f64) -> Self {
        Self { capacity, level: capacity }
    }

    /// Lets a day pass that brings `gain` \[days of load\], and gives what lacked.
    #[inline]
    pub fn pass(&mut self, gain: f64) -> f64 {
        let level = self.level + gain - 1.0;
        let lacking = if level < 0.0 { -level } else { 0.0 };
        let level = if level > 0.0 { level } else { 0.0 };
        self.level = if level < self.capacity { level } else { self.capacity };
        lacking
    }

    /// Lets days pass.
    pub fn suffer(&mut self, gains: impl IntoIterator<Item = f64>) -> Shortfall {
        let mut sum = Shortfall::default();
        for gain in gains {
            let lacking = self.pass(gain);
            sum.days += 1;
            sum.short_days += usize::from(lacking > 0.0);
            sum.lacking += lacking;
        }
        sum
    }
}
