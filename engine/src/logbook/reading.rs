//! A reading: what a gauge showed at a moment, and what was measured beside it.

use chrono::NaiveDateTime;

use crate::quantity::{AmpHours, Amps, Percent, Volts};

/// Most readings that are kept.
pub const MOST_READINGS: usize = 2000;
/// The longest time between first and last reading \[days\].
pub const MOST_DAYS: i64 = 366;

/// What a gauge says of the charge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shown {
    /// Of full.
    Percent(Percent),
    /// What is left.
    Left(AmpHours),
    /// What was taken since full; counted positive.
    Taken(AmpHours),
}

/// One line of the logbook.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Date and clock time at the place of the plan.
    pub at: NaiveDateTime,
    /// What the gauge showed of the charge.
    pub shown: Option<Shown>,
    /// Voltage between the posts of the bank.
    pub volts: Option<Volts>,
    /// Current through the shunt, into the bank positive.
    pub amps: Option<Amps>,
}

/// A part of a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Date and time.
    Time,
    /// Percentage.
    Percent,
    /// Amp-hours.
    AmpHours,
    /// Volts.
    Volts,
    /// Amps.
    Amps,
}

/// Why a reading, or all of them, is not used.
#[derive(Clone, Debug, PartialEq)]
pub enum Slip {
    /// A number out of the range that can be.
    OutOfRange {
        /// Which part.
        part: Part,
        /// What it was.
        value: f64,
        /// The least.
        least: f64,
        /// The most.
        most: f64,
    },
    /// A text that is no number.
    NoNumber {
        /// Which part.
        part: Part,
        /// What stands there, shortened.
        text: String,
    },
    /// A text that is no date or time.
    NoTime {
        /// What stands there, shortened.
        text: String,
    },
    /// A time without anything beside it.
    Empty,
    /// Fewer cells than the time needs.
    Short,
    /// The same time as an earlier reading, which counts.
    Twice,
    /// More readings than are kept; the newest were.
    TooMany {
        /// How many there were.
        count: usize,
    },
    /// Further back than the newest reading reaches.
    TooOld,
    /// In a year that no plan knows.
    OutsideYears,
}

/// What a gauge was told, which its percentage rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GaugeSetUp {
    /// The capacity that it was told.
    pub capacity: AmpHours,
    /// The share of charge put in that it counts (ratio).
    pub efficiency: f64,
}

/// What the parts of a reading may be in a plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Voltages of the bank.
    pub volts: (f64, f64),
    /// Currents.
    pub amps: (f64, f64),
    /// Amp-hours.
    pub charge: (f64, f64),
}

impl Bounds {
    /// Those of a bank: half to one and a half of its nominal voltage, five times its capacity in an hour, twice its capacity.
    #[must_use]
    pub fn of(nominal: Volts, capacity: AmpHours) -> Self {
        let most = 5.0 * capacity.0;
        Self {
            volts: (0.5 * nominal.0, 1.5 * nominal.0),
            amps: (-most, most),
            charge: (-2.0 * capacity.0, 2.0 * capacity.0),
        }
    }

    fn slip(part: Part, value: f64, (least, most): (f64, f64)) -> Option<Slip> {
        let holds = value >= least && value <= most;
        (!holds).then_some(Slip::OutOfRange { part, value, least, most })
    }

    /// What is wrong with a reading, if anything.
    #[must_use]
    pub fn check(&self, reading: &Reading) -> Option<Slip> {
        let shown = reading.shown.and_then(|shown| match shown {
            Shown::Percent(own) => Self::slip(Part::Percent, own.0, (0.0, 100.0)),
            Shown::Left(own) | Shown::Taken(own) => {
                Self::slip(Part::AmpHours, own.0, (self.charge.0, self.charge.1))
            }
        });
        let volts = reading.volts.and_then(|own| Self::slip(Part::Volts, own.0, self.volts));
        let amps = reading.amps.and_then(|own| Self::slip(Part::Amps, own.0, self.amps));
        let empty = reading.shown.is_none() && reading.volts.is_none() && reading.amps.is_none();
        shown.or(volts).or(amps).or(empty.then_some(Slip::Empty))
    }
}

/// Puts readings in the order of their times, and those of the same time in that of their places. Shell's method with Knuth's gaps: the
/// library's sort would weigh ten kilobytes on the page.
fn put_in_order(all: &mut [(usize, Reading)]) {
    let later = |(place, own): &(usize, Reading), (before, other): &(usize, Reading)| {
        (own.at, place) < (other.at, before)
    };
    let mut gap = 1;
    while gap < all.len() / 3 {
        gap = 3 * gap + 1;
    }
    while gap > 0 {
        for from in gap..all.len() {
            let mut to = from;
            while to >= gap && later(&all[to], &all[to - gap]) {
                all.swap(to, to - gap);
                to -= gap;
            }
        }
        gap /= 3;
    }
}

/// Readings in the order of their times, all of them possible.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Readings {
    all: Vec<Reading>,
}

impl Readings {
    /// Puts readings in order; what cannot be used is given back by its place in `given`, with the reason.
    #[must_use]
    pub fn of(given: &[Reading], bounds: &Bounds) -> (Self, Vec<(usize, Slip)>) {
        let mut slips: Vec<Option<Slip>> = given.iter().map(|own| bounds.check(own)).collect();
        let good = given.iter().enumerate().filter(|(place, _)| slips[*place].is_none());
        let mut kept: Vec<(usize, Reading)> = good.map(|(place, own)| (place, *own)).collect();
        put_in_order(&mut kept);
        let mut all: Vec<Reading> = Vec::new();
        let newest = kept.last().map(|(_, reading)| reading.at);
        let count = kept.len();
        for (order, (place, reading)) in kept.into_iter().enumerate() {
            let old = newest.is_some_and(|newest| (newest - reading.at).num_days() > MOST_DAYS);
            if old {
                slips[place] = Some(Slip::TooOld);
            } else if order + MOST_READINGS < count {
                slips[place] = Some(Slip::TooMany { count });
            } else if all.last().is_some_and(|last| last.at == reading.at) {
                slips[place] = Some(Slip::Twice);
            } else {
                all.push(reading);
            }
        }
        let slips = slips.into_iter().enumerate().filter_map(|(place, own)| Some((place, own?)));
        (Self { all }, slips.collect())
    }

    /// All of them, the oldest first.
    #[must_use]
    pub fn all(&self) -> &[Reading] {
        &self.all
    }

    /// The newest.
    #[must_use]
    pub fn newest(&self) -> Option<&Reading> {
        self.all.last()
    }
}

impl GaugeSetUp {
    /// What the gauge showed, as a share of what it takes for full (ratio).
    #[must_use]
    pub fn level(&self, shown: Shown) -> f64 {
        match shown {
            Shown::Percent(own) => own.ratio(),
            Shown::Left(own) => own / self.capacity,
            Shown::Taken(own) => 1.0 - own / self.capacity,
        }
    }

    /// The charge between two levels.
    #[must_use]
    pub fn between(&self, from: f64, to: f64) -> AmpHours {
        self.capacity * (to - from)
    }
}
