//! The least of something that keeps a promise: of a bank, of an array, of a charger's hours.
//!
//! **Method.** From a guess in growing strides until one factor keeps and a smaller one does not, then by halving the ratio between the two.
//! Every factor that is tried goes through the course by the one step, so what is found is proved; guesses come from the map
//! and only make the way shorter. One piece of work is some years of one factor.

use super::course::Course;
use super::full::Proof;
use super::promise::Promise;
use super::{Size, Sizing};
use crate::quantity::Within;

/// Nothing larger than so many times the plan's own is looked for.
pub(super) const LARGEST: f64 = 64.0;
/// Nothing smaller than this share of it is told.
const SMALLEST: f64 = 1.0 / 64.0;
/// So near lie what keeps and what does not in the end.
const NEAR: f64 = 1.01;
/// Half a place of a map's axis: how far a guess is off.
const STRIDE: f64 = 1.09;
/// The longest stride.
const LONGEST: f64 = 8.0;
/// Hours of a week.
pub(super) const WEEK_HOURS: f64 = 168.0;
/// The fewest hours a week of a charger that are tried first; then so many times more.
const FIRST_HOURS: f64 = 8.0;
/// See there.
const MORE_HOURS: f64 = 3.0;
/// Runs of a search with a good guess, for the estimate of what is left.
const USUAL: f64 = 6.0;

/// What has been found out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Answer<T> {
    /// Nothing yet.
    #[default]
    Open,
    /// There is none.
    Never,
    /// It is this.
    Is(T),
}

impl<T> Answer<T> {
    /// What it is, if there is one.
    pub fn found(self) -> Option<T> {
        match self {
            Self::Is(found) => Some(found),
            Self::Open | Self::Never => None,
        }
    }

    /// The same about something that follows from it.
    pub fn map<U>(self, of: impl FnOnce(T) -> U) -> Answer<U> {
        match self {
            Self::Open => Answer::Open,
            Self::Never => Answer::Never,
            Self::Is(found) => Answer::Is(of(found)),
        }
    }
}

/// What all proofs of a promise stand on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ground<'a> {
    pub(super) sizing: &'a Sizing,
    pub(super) course: &'a Course,
    pub(super) promise: &'a Promise,
}

impl Ground<'_> {
    /// Whether what a proof counted keeps the promise.
    pub(super) fn kept(&self, proof: &Proof) -> bool {
        let chance = self.promise.chance_of(&proof.counts, &self.course.trials);
        self.promise.is_kept_by(chance)
    }
}

/// What is made larger or smaller.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Along {
    /// The bank.
    Bank,
    /// All arrays.
    Array,
    /// Hours a week of a charger.
    Charger,
}

/// A search on its way.
#[derive(Clone, Debug)]
pub(super) struct Search {
    along: Along,
    /// Everything else is as here.
    own: Size,
    fails: Option<f64>,
    keeps: Option<f64>,
    at: f64,
    stride: f64,
    tried: usize,
    proof: Option<Proof>,
    end: Answer<f64>,
}

impl Search {
    /// One that has yet to begin; without a guess it begins with the plan's own.
    pub(super) fn new(along: Along, own: Size, guess: Option<f64>) -> Self {
        let charger = along == Along::Charger;
        Self {
            along,
            own,
            // Without a charger nothing would be looked for.
            fails: charger.then_some(0.0),
            keeps: None,
            at: if charger { FIRST_HOURS } else { guess.unwrap_or(1.0).within(SMALLEST, LARGEST) },
            stride: if guess.is_some() { STRIDE } else { STRIDE * STRIDE },
            tried: 0,
            proof: None,
            end: Answer::Open,
        }
    }

    /// The least factor or number of hours that keeps the promise, once it is found.
    pub(super) fn end(&self) -> Answer<f64> {
        self.end
    }

    /// Goes on; whether there was anything to do.
    pub(super) fn advance(&mut self, on: Ground<'_>) -> bool {
        if self.end != Answer::Open {
            return false;
        }
        let (along, own, at) = (self.along, self.own, self.at);
        let proof = self.proof.get_or_insert_with(|| {
            let size = match along {
                Along::Bank => Size { bank: at, ..own },
                Along::Array => Size { array: at, ..own },
                Along::Charger => own,
            };
            let share = if along == Along::Charger { at / WEEK_HOURS } else { 0.0 };
            Proof::new(on.course, size, on.sizing.charger() * share)
        });
        let _ = proof.advance(on.sizing, on.course);
        if proof.is_whole(on.course) {
            let kept = on.kept(proof);
            self.proof = None;
            self.learn(kept);
        }
        true
    }

    /// Takes in whether the factor tried keeps, and chooses the next.
    fn learn(&mut self, kept: bool) {
        self.tried += 1;
        if kept {
            self.keeps = Some(self.at);
        } else {
            self.fails = Some(self.at);
        }
        if self.along == Along::Charger { self.next_hours() } else { self.next_factor() }
    }

    fn next_factor(&mut self) {
        let stride = self.stride;
        self.at = match (self.fails, self.keeps) {
            (Some(fails), Some(keeps)) => {
                if keeps <= fails * NEAR {
                    self.end = Answer::Is(keeps);
                }
                libm::sqrt(fails * keeps)
            }
            (None, Some(keeps)) => {
                if keeps <= SMALLEST {
                    self.end = Answer::Is(keeps);
                }
                f64::max(keeps / stride, SMALLEST)
            }
            (Some(fails), None) => {
                if fails >= LARGEST {
                    self.end = Answer::Never;
                }
                f64::min(fails * stride, LARGEST)
            }
            (None, None) => self.at,
        };
        self.stride = f64::min(stride * stride, LONGEST);
    }

    fn next_hours(&mut self) {
        let fails = self.fails.unwrap_or_default();
        self.at = match self.keeps {
            Some(keeps) => {
                if keeps - fails <= 1.0 {
                    self.end = Answer::Is(keeps);
                }
                libm::floor((fails + keeps) / 2.0)
            }
            None => {
                if fails >= WEEK_HOURS {
                    self.end = Answer::Never;
                }
                f64::min(fails * MORE_HOURS, WEEK_HOURS)
            }
        };
    }

    /// Share of it that is done, as far as can be told.
    pub(super) fn done(&self, course: &Course) -> f64 {
        let tried = self.tried as f64 + self.proof.as_ref().map_or(0.0, |proof| proof.done(course));
        if self.end == Answer::Open { f64::min(tried / USUAL, 0.95) } else { 1.0 }
    }
}
