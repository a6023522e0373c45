//! Which reading to take next, to find out what those at hand do not tell.

use super::learned::{Study, What};

/// A reading, or a pair of them, that would tell something.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Next {
    /// At dusk and at dawn.
    DuskAndDawn,
    /// By day, with the arrays switched off for an hour: at its start and its end.
    ArraysOff,
    /// The current with everything off.
    AllOff,
    /// Mornings and evenings of days that do not end full.
    NotFullDays,
    /// Percentage and rested voltage after a night as near the reserve as is safe.
    DeepAndRested,
    /// The gauge between two times at truly full, without its being set in between.
    FullToFull,
    /// A clamp around the battery's own cable while it charges, beside what the gauge shows.
    ClampCharging,
    /// The same with everything off.
    ClampAllOff,
    /// Voltage and current at the moment that the gauge says full, and the rested voltage the next morning.
    AtFull,
    /// The voltage of each battery at rest.
    EachBattery,
}

impl What {
    /// The reading that tells it.
    #[must_use]
    pub const fn next(self) -> Next {
        match self {
            Self::NightUse => Next::DuskAndDawn,
            Self::DayUse => Next::ArraysOff,
            Self::NightDrain => Next::AllOff,
            Self::Yield => Next::NotFullDays,
            Self::Capacity => Next::DeepAndRested,
            Self::Efficiency => Next::FullToFull,
            Self::Bypass => Next::ClampCharging,
            Self::HiddenDrain => Next::ClampAllOff,
            Self::FalseFull => Next::AtFull,
            Self::RestVoltage => Next::EachBattery,
        }
    }
}

impl Study {
    /// What to read next: first what confirms an alarm, then what tells the rest, each once.
    #[must_use]
    pub fn next(&self) -> Vec<Next> {
        let alarms = self.learned.iter().filter(|own| own.alarm);
        let open = self.learned.iter().filter(|own| !own.alarm && !own.estimate.told);
        let mut all = Vec::new();
        for own in alarms.chain(open) {
            let next = own.what.next();
            if !all.contains(&next) {
                all.push(next);
            }
        }
        all
    }
}
