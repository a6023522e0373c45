//! Fuses: their size, their kind, and where they sit.
//!
//! **Method.** A fuse protects the conductor: 125 % of the continuous current ≤ rating ≤ what the conductor may carry. Its kind follows
//! from the current that it must break at the highest voltage; the first that can, in the order of what is usual at that place. It sits
//! within 175 mm of what feeds the conductor.
//!
//! **Range.** Ratings to 600 A, up to 125 V; strings of modules up to 1000 V. What kinds can break and their ratings are rounded typical
//! values of the trade: the mark on the device decides, and it must be made for direct current.

use crate::quantity::{Amps, Volts};

/// Ratings in which fuses are sold \[A\]: from 15 A on those of NFPA 70 240.6 up to 600 A, under it the usual ones of blade fuses.
pub const RATINGS: [f64; 32] = [
    1.0, 2.0, 3.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0, 70.0,
    80.0, 90.0, 100.0, 110.0, 125.0, 150.0, 175.0, 200.0, 225.0, 250.0, 300.0, 350.0, 400.0, 450.0,
    500.0, 600.0,
];
/// Room over the continuous current.
pub const ROOM: f64 = 1.25;
/// How far from its source a fuse may sit at most \[mm\]: 7 inches (ABYC E-11). What codes allow beyond it under conditions is not offered.
pub const NEAR_MM: f64 = 175.0;
/// The largest fuse of a branch in a panel of blade fuses: what such panels usually take.
pub(super) const LARGEST_BRANCH: Amps = Amps(30.0);

/// The smallest rating that is not under a current; nothing beyond the series.
#[must_use]
pub fn next_rating(least: Amps) -> Option<Amps> {
    RATINGS.into_iter().find(|rating| *rating >= least.0).map(Amps)
}

/// A kind of fuse.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FuseClass {
    /// Plug-in blade.
    Blade,
    /// Small link between two bolts.
    BoltedLink,
    /// Strip between two bolts.
    BoltedStrip,
    /// Block on the battery's post.
    PostBlock,
    /// Miniature breaker for direct current, by its own mark.
    Breaker,
    /// Current-limiting cartridge of class T.
    ClassT,
    /// Cartridge for strings of modules.
    Solar,
}

/// What a kind of fuse can: its ratings from and to \[A\], and steps of voltage \[V\] with what it breaks there \[A\].
struct Reach {
    ratings: (f64, f64),
    breaks: &'static [(f64, f64)],
}

impl FuseClass {
    /// Every kind.
    pub const ALL: [Self; 7] = [
        Self::Blade,
        Self::BoltedLink,
        Self::BoltedStrip,
        Self::PostBlock,
        Self::Breaker,
        Self::ClassT,
        Self::Solar,
    ];

    const fn reach(self) -> Reach {
        let (ratings, breaks): (_, &[(f64, f64)]) = match self {
            Self::Blade => ((1.0, 30.0), &[(32.0, 1000.0)]),
            Self::BoltedLink => ((30.0, 200.0), &[(32.0, 2000.0)]),
            Self::BoltedStrip => ((35.0, 500.0), &[(32.0, 6000.0)]),
            Self::PostBlock => ((30.0, 300.0), &[(14.0, 10_000.0), (32.0, 5000.0), (58.0, 2000.0)]),
            Self::Breaker => ((1.0, 60.0), &[(60.0, 10_000.0)]),
            Self::ClassT => ((1.0, 600.0), &[(125.0, 20_000.0)]),
            Self::Solar => ((1.0, 30.0), &[(1000.0, 10_000.0)]),
        };
        Reach { ratings, breaks }
    }

    /// What it breaks at a voltage; nothing if it is not made for that.
    #[must_use]
    pub fn breaks(self, at: Volts) -> Option<Amps> {
        let steps = self.reach().breaks.iter();
        steps.clone().find(|(volts, _)| at.0 <= *volts).map(|(_, current)| Amps(*current))
    }

    /// Whether it is made with this rating.
    #[must_use]
    pub fn has(self, rating: Amps) -> bool {
        let (least, most) = self.reach().ratings;
        rating.0 >= least && rating.0 <= most
    }
}

/// Where a fuse sits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FusePlace {
    /// At the plus post of the battery.
    Post,
    /// At the plus bus bar.
    Bus,
    /// In the panel that distributes.
    Panel,
    /// Between the main fuse and the isolator, so that the isolator does not switch it.
    AheadOfIsolator,
    /// In the box that joins strings of modules.
    Combiner,
}

impl FusePlace {
    /// The kinds of fuse that are usual there, the first choice first.
    const fn usual(self) -> &'static [FuseClass] {
        use FuseClass as C;
        match self {
            Self::Post => &[C::PostBlock, C::BoltedStrip, C::ClassT],
            Self::Bus => &[C::BoltedLink, C::BoltedStrip, C::Breaker, C::ClassT],
            Self::Panel | Self::AheadOfIsolator => &[C::Blade, C::Breaker, C::ClassT],
            Self::Combiner => &[C::Solar],
        }
    }

    /// The first kind usual there that is made with this rating and breaks so much at that voltage, with what it breaks.
    #[must_use]
    pub fn class(self, rating: Amps, breaks: Amps, at: Volts) -> Option<(FuseClass, Amps)> {
        let mut able = self.usual().iter().filter(|own| own.has(rating));
        able.find_map(|own| {
            let can = own.breaks(at)?;
            (can >= breaks).then_some((*own, can))
        })
    }
}

/// A fuse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fuse {
    /// Its rating.
    pub rating: Amps,
    /// Its kind.
    pub class: FuseClass,
    /// Where it sits.
    pub place: FusePlace,
    /// The current that it must be able to break.
    pub must_break: Amps,
    /// What its kind breaks at that voltage.
    pub breaks: Amps,
    /// The voltage that it must be made for.
    pub volts: Volts,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ratings_are_never_under_what_is_asked() {
        let mut asked = 0.1;
        while asked < 600.0 {
            let rating = next_rating(Amps(asked)).unwrap();
            assert!(rating.0 >= asked, "{asked}");
            asked += 0.37;
        }
        assert_eq!(next_rating(Amps(600.1)), None);
        assert_eq!(next_rating(Amps(1.25 * 80.0)), Some(Amps(100.0)));
        assert_eq!(next_rating(Amps(f64::NAN)), None);
    }

    #[test]
    fn what_a_kind_breaks_falls_with_the_voltage() {
        let at = |volts| FuseClass::PostBlock.breaks(Volts(volts));
        assert_eq!(
            [13.8, 14.4, 33.0, 58.1].map(at),
            [Some(Amps(10_000.0)), Some(Amps(5000.0)), Some(Amps(2000.0)), None]
        );
        let post = |rating, breaks, volts| {
            FusePlace::Post.class(Amps(rating), Amps(breaks), Volts(volts)).map(|own| own.0)
        };
        assert_eq!(post(100.0, 4000.0, 14.4), Some(FuseClass::PostBlock));
        assert_eq!(post(100.0, 5500.0, 14.4), Some(FuseClass::BoltedStrip));
        assert_eq!(post(400.0, 20_000.0, 57.6), Some(FuseClass::ClassT));
        assert_eq!((post(100.0, 20_001.0, 14.4), post(100.0, 100.0, 126.0)), (None, None));
    }
}
