//! What to make of a plan that does not keep its promise.
//!
//! **Method.** Of the map's frontier the point that adds the least to what the plan has, in ratios, without taking anything away, rounded up
//! to whole batteries and modules ([`Units`]). It is proved by the one step; where it fails it grows by whole units until it holds, and
//! where it holds units are taken away again as long as it does, because the map goes by coarser steps.

use super::full::Proof;
use super::map::Map;
use super::search::{Answer, Ground};
use super::units::Units;
use super::{Promise, Size};
use crate::quantity::Amps;

/// At least this much is added to what fails, in ratios.
const LARGER: f64 = 1.05;
/// So often at most: then it has grown by half.
const TRIES: usize = 9;
/// So often units are taken away at most.
const TRIMS: usize = 6;
/// Less than any unit.
const SLIVER: f64 = 1e-9;

/// A suggestion on its way.
#[derive(Clone, Debug)]
pub(super) struct Suggestion {
    own: Size,
    units: Units,
    proof: Option<Proof>,
    /// What is tried; none if no point of the map keeps.
    at: Option<Size>,
    holds: Option<Size>,
    /// What is still to be tried with a unit less: arrays, bank.
    trims: (bool, bool),
    tried: usize,
    end: Answer<Size>,
}

impl Suggestion {
    /// The first guess for a plan whose own size is this.
    pub(super) fn new(map: &Map, promise: &Promise, own: Size, units: Units) -> Self {
        let grown = |size: Size| {
            units.raised(Size {
                bank: f64::max(size.bank, own.bank),
                array: f64::max(size.array, own.array),
            })
        };
        // An array that is not there yet grows from the smallest of the map.
        let from = f64::max(own.array, map.arrays.sizes()[0]);
        let growth = |size: &Size| size.bank / own.bank * f64::max(size.array / from, 1.0);
        let points = map.frontier(promise).into_iter().map(|(bank, array)| map.size(bank, array));
        let at = points.map(grown).min_by(|a, b| growth(a).total_cmp(&growth(b)));
        Self {
            own,
            units,
            proof: None,
            at,
            holds: None,
            trims: (true, true),
            tried: 0,
            end: if at.is_some() { Answer::Open } else { Answer::Never },
        }
    }

    /// The suggestion, once it is proved and trimmed.
    pub(super) fn end(&self) -> Answer<Size> {
        self.end
    }

    /// Goes on; whether there was anything to do.
    pub(super) fn advance(&mut self, on: Ground<'_>) -> bool {
        let (Answer::Open, Some(size)) = (self.end, self.at) else { return false };
        let proof = self.proof.get_or_insert_with(|| Proof::new(on.course, size, Amps::ZERO));
        let _ = proof.advance(on.sizing, on.course);
        if proof.is_whole(on.course) {
            let kept = on.kept(proof);
            self.proof = None;
            self.tried += 1;
            self.learn(size, kept);
        }
        true
    }

    fn learn(&mut self, size: Size, kept: bool) {
        match self.holds {
            None if !kept => {
                self.at = Some(self.larger(size));
                if self.tried >= TRIES {
                    self.end = Answer::Never;
                }
                return;
            }
            // The unit that was taken away last was needed.
            Some(held) if !kept => {
                if size.array < held.array {
                    self.trims.0 = false;
                } else {
                    self.trims.1 = false;
                }
            }
            _ => self.holds = Some(size),
        }
        self.at = self.trimmed().filter(|_| self.tried < TRIES + TRIMS);
        if self.at.is_none() {
            self.end = self.holds.map_or(Answer::Never, Answer::Is);
        }
    }

    /// What fails, made larger: that which is already larger than the plan's own.
    fn larger(&self, size: Size) -> Size {
        let grow = |factor: f64, unit: f64| f64::max(factor * LARGER, factor + unit);
        let mut next = size;
        if size.bank > self.own.bank {
            next.bank = grow(size.bank, self.units.bank);
        }
        if size.array > self.own.array || size.bank <= self.own.bank {
            next.array = grow(size.array, self.units.array);
        }
        self.units.raised(next)
    }

    /// What holds with a unit less, the array's first; none if both are needed.
    fn trimmed(&mut self) -> Option<Size> {
        let held = self.holds?;
        if self.trims.0 && held.array - self.units.array > self.own.array - SLIVER {
            return Some(Size { array: held.array - self.units.array, ..held });
        }
        self.trims.0 = false;
        let less = held.bank - self.units.bank > self.own.bank - SLIVER;
        (self.trims.1 && less).then_some(Size { bank: held.bank - self.units.bank, ..held })
    }

    /// Share of it that is done, as far as can be told.
    pub(super) fn done(&self) -> f64 {
        if self.end == Answer::Open { f64::min(self.tried as f64 / 4.0, 0.9) } else { 1.0 }
    }
}
