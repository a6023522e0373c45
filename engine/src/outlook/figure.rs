//! The figures of an outlook as one list, so that two plans can be laid side by side.

use super::Outlook;
use crate::quantity::{Hours, Unit};
use crate::system::System;

/// A figure that two plans are compared by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Figure {
    /// Use of an average day in the month of the start.
    Out,
    /// What comes in on such a day.
    In,
    /// The balance of such a day.
    Balance,
    /// What may be used of the bank in that month.
    Usable,
    /// What the whole bank is rated at.
    Rated,
    /// Rated power of all arrays.
    Sun,
    /// Months that keep up on average.
    MonthsKept,
    /// The balance of a day in the tightest month.
    Tightest,
    /// Time to the reserve in the mean weather.
    ToReserve,
    /// Time to empty in the mean weather.
    ToEmpty,
    /// Time to the reserve without any sun.
    DarkToReserve,
    /// Time to empty without any sun.
    DarkToEmpty,
    /// Days of autonomy.
    Autonomy,
}

impl Figure {
    /// All in the order in which they are shown.
    pub const ALL: [Self; 13] = [
        Self::Out,
        Self::In,
        Self::Balance,
        Self::Usable,
        Self::Rated,
        Self::Sun,
        Self::MonthsKept,
        Self::Tightest,
        Self::ToReserve,
        Self::ToEmpty,
        Self::DarkToReserve,
        Self::DarkToEmpty,
        Self::Autonomy,
    ];

    /// Its unit; days and months are plain numbers.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self {
            Self::Out | Self::In | Self::Balance | Self::Usable | Self::Rated | Self::Tightest => {
                Unit::AmpHour
            }
            Self::Sun => Unit::Watt,
            Self::ToReserve | Self::ToEmpty | Self::DarkToReserve | Self::DarkToEmpty => Unit::Hour,
            Self::MonthsKept | Self::Autonomy => Unit::One,
        }
    }
}

impl Outlook {
    /// A figure; none where the longest run does not come to it, or nothing is used. `system` must be the one that the outlook
    /// is of.
    #[must_use]
    pub fn figure(&self, system: &System, figure: Figure) -> Option<f64> {
        let month = self.months.get(self.month);
        let times = self.times();
        let hours = |at: Option<Hours>| at.map(|at| at.0);
        match figure {
            Figure::Out => Some(self.budget.total.0),
            Figure::In => month.map(|month| month.gain.kept.0),
            Figure::Balance => month.map(|month| month.balance.0),
            Figure::Usable => Some(self.capacity.usable.0),
            Figure::Rated => Some(system.bank.slowest.0),
            Figure::Sun => Some(system.arrays.iter().map(|array| array.rated().0).sum()),
            Figure::MonthsKept => Some(self.months_kept().count_ones().into()),
            Figure::Tightest => Some(self.tightest.balance.0),
            Figure::ToReserve => hours(times.to_reserve),
            Figure::ToEmpty => hours(times.to_empty),
            Figure::DarkToReserve => hours(times.dark_to_reserve),
            Figure::DarkToEmpty => hours(times.dark_to_empty),
            Figure::Autonomy => self.autonomy_days,
        }
    }
}
