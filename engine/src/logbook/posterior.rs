//! All capacities weighed together, and whether one of the fulls was false.

use crate::quantity::Within;

use super::estimate::{Estimate, NINE_TENTHS, points};
use super::fit::{BYPASS, DRAIN, FALSE_FULL, Prior, Puzzle, SETTINGS, SLOPE, Solved};

/// Capacities that are tried over the plan's: logarithms from here to there.
const LEAST: f64 = -0.9;
const MOST: f64 = 0.4;
const ROW: usize = 27;
/// Standard deviation of the logarithm of the capacity before any reading.
pub(super) const CAPACITY_SPREAD: f64 = 0.2;
/// Logarithm of the odds that a full was false before anything speaks for it: one in 150.
const FALSE_ODDS: f64 = -5.0;
/// The same of a current past the shunt: one in fifty.
const HIDDEN_ODDS: f64 = -3.9;
/// How far a count that misses what goes out may stand over the truth at full (ratio).
const COUNTED_UP: f64 = 0.1;
/// The same of a failing cell.
const CELL_ODDS: f64 = -3.9;
/// Fulls in a row that may be false: while it says full, a gauge cannot count.
const LONGEST_FALSE: usize = 6;

/// The row of capacities with their solutions.
#[derive(Clone, Debug)]
pub(super) struct Posterior {
    logs: Vec<f64>,
    solved: Vec<Solved>,
    weights: Vec<f64>,
    /// Logarithm of how well all of it explains the readings.
    pub(super) evidence: f64,
}

/// Places of the currents past the shunt among the unknowns.
pub(super) const HIDDEN: [usize; 2] = [BYPASS, DRAIN];

/// What is supposed to be wrong.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Supposed {
    /// Whether current passes the shunt: while something charges, and always.
    pub(super) hidden: [bool; 2],
    /// Whether a cell is failing, so that all voltages lie off.
    pub(super) cell: bool,
    /// Times at which the gauge was falsely set to full: the first, and how many in a row.
    pub(super) false_full: Option<(usize, usize)>,
}

impl Supposed {
    /// What is known before, if this is so.
    fn priors(self, puzzle: &Puzzle<'_>) -> Vec<Prior> {
        let mut priors = puzzle.priors();
        if let Some((first, count)) = self.false_full {
            // Of those that follow only what claims to be full: the others go on counting from where it was.
            let claims =
                puzzle.evidence.marks.iter().filter(|own| own.set).map(|own| own.claim.is_some());
            let places =
                claims.enumerate().filter(|(at, claims)| *at == first || *at > first && *claims);
            for (at, _) in places.take(count) {
                if let Some(prior) = priors.get_mut(SETTINGS + at) {
                    *prior = Prior { mean: FALSE_FULL, spread: FALSE_FULL };
                }
            }
        }
        if self.hidden[1] {
            // A gauge that does not see what goes out counts up to full before the bank is.
            for prior in priors.iter_mut().skip(SETTINGS) {
                prior.spread = f64::max(prior.spread, COUNTED_UP);
            }
        }
        for prior in priors.iter_mut().take(if self.cell { SLOPE } else { 0 }) {
            prior.spread = puzzle.cell_spread();
        }
        for (place, _) in HIDDEN.iter().zip(self.hidden).filter(|(_, passes)| *passes) {
            if let Some(prior) = priors.get_mut(*place) {
                prior.spread = puzzle.hidden_spread(*place);
            }
        }
        priors
    }
}

impl Posterior {
    /// Weighs all capacities, supposing something. None if nothing can be solved.
    pub(super) fn of(puzzle: &Puzzle<'_>, supposed: Supposed, stride: usize) -> Option<Self> {
        let priors = supposed.priors(puzzle);
        let mut logs = Vec::new();
        let mut solved = Vec::new();
        for at in (0..ROW).step_by(stride) {
            let log = LEAST + (MOST - LEAST) * at as f64 / (ROW - 1) as f64;
            if let Some(own) = puzzle.solve(libm::exp(log), &priors) {
                logs.push(log);
                solved.push(own);
            }
        }
        let total = |log: &f64, own: &Solved| {
            let prior = log / CAPACITY_SPREAD;
            own.weight - prior * prior / 2.0
        };
        let all: Vec<f64> = logs.iter().zip(&solved).map(|(log, own)| total(log, own)).collect();
        let most = all.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        if !most.is_finite() {
            return None;
        }
        let weights: Vec<f64> = all.iter().map(|own| libm::exp(own - most)).collect();
        let evidence = most + libm::log(weights.iter().sum::<f64>() * stride as f64);
        Some(Self { logs, solved, weights, evidence })
    }

    /// The capacity over the plan's.
    pub(super) fn capacity(&self) -> (Estimate, f64) {
        let (mean, low, high, spread) = points(&self.logs, &self.weights);
        let estimate = Estimate {
            best: libm::exp(mean.within(low, high)),
            low: libm::exp(low),
            high: libm::exp(high),
            told: spread < 0.7 * CAPACITY_SPREAD,
        };
        (estimate, if spread > 0.0 { mean / spread } else { 0.0 })
    }

    /// Mean and standard deviation of the charge at the last mark (ratio).
    pub(super) fn charge_now(&self, puzzle: &Puzzle<'_>) -> (f64, f64) {
        let all: f64 = self.weights.iter().sum();
        let each: Vec<(f64, f64)> = self
            .logs
            .iter()
            .zip(&self.solved)
            .map(|(log, own)| puzzle.charge_at_end(libm::exp(*log), own))
            .collect();
        let sum = |of: &dyn Fn(&(f64, f64)) -> f64| {
            each.iter().zip(&self.weights).map(|(own, weight)| of(own) * weight).sum::<f64>() / all
        };
        let mean = sum(&|own| own.0);
        let square = sum(&|own| own.1 + (own.0 - mean) * (own.0 - mean));
        (mean, square.sqrt())
    }

    /// Mean and standard deviation of one unknown.
    pub(super) fn of_unknown(&self, place: usize) -> (f64, f64) {
        let all: f64 = self.weights.iter().sum();
        let weighed = |of: &dyn Fn(&Solved) -> f64| {
            self.solved.iter().zip(&self.weights).map(|(own, weight)| of(own) * weight).sum::<f64>()
                / all
        };
        let at = |values: &[f64]| values.get(place).copied().unwrap_or(0.0);
        let mean = weighed(&|own| at(&own.mean));
        let square = weighed(&|own| {
            let off = at(&own.mean) - mean;
            own.root.inverse_at(place) + off * off
        });
        (mean, square.sqrt())
    }
}

/// The fit that supposes what the readings make likely, and what each supposition would say.
pub(super) struct Judged {
    /// The likeliest of all.
    pub(super) posterior: Posterior,
    /// What it supposes.
    pub(super) supposed: Supposed,
    /// Mean and standard deviation of each hidden current, supposing it: while something charges, and always.
    pub(super) hidden: [(f64, f64); 2],
    /// A false full that is not noticed is no larger than this, nine times in ten (ratio).
    pub(super) unnoticed: f64,
}

/// Every so many capacities are enough to compare suppositions.
const COARSE: usize = 6;

pub(super) fn judged(puzzle: &Puzzle<'_>) -> Option<Judged> {
    let plain = Posterior::of(puzzle, Supposed::default(), COARSE)?;
    let mut best = (0.0, Supposed::default());
    let mut hidden = [(0.0, 0.0); 2];
    for (way, told) in hidden.iter_mut().enumerate() {
        let supposed = with(Supposed::default(), way);
        let Some(own) = Posterior::of(puzzle, supposed, COARSE) else { continue };
        let odds = own.evidence - plain.evidence + HIDDEN_ODDS;
        *told = own.of_unknown(HIDDEN[way]);
        // A load on the wrong side draws always, and a charger there puts in: nothing else is built.
        if odds > best.0 && told.0 > 0.0 {
            best = (odds, supposed);
        }
    }
    let supposed = Supposed { cell: true, ..Supposed::default() };
    if let Some(own) = Posterior::of(puzzle, supposed, COARSE) {
        let odds = own.evidence - plain.evidence + CELL_ODDS;
        if odds > best.0 {
            best = (odds, supposed);
        }
    }
    let mut unnoticed = 0.0;
    let passing = best.1;
    let ways = [Supposed::default(), passing];
    for way in if passing == ways[0] { &ways[..1] } else { &ways[..] } {
        let (odds, false_full, most) = likeliest(puzzle, *way, &plain);
        unnoticed = f64::max(unnoticed, most);
        if odds > best.0 {
            best = (odds, Supposed { false_full, ..*way });
        }
    }
    let supposed = best.1;
    let posterior = Posterior::of(puzzle, supposed, 1)?;
    if supposed != Supposed::default() {
        for (way, told) in hidden.iter_mut().enumerate() {
            let own = Posterior::of(puzzle, with(supposed, way), COARSE);
            *told = own.map_or(*told, |own| own.of_unknown(HIDDEN[way]));
        }
    }
    Some(Judged { posterior, supposed, hidden, unnoticed })
}

/// The same with one more current past the shunt.
const fn with(mut supposed: Supposed, way: usize) -> Supposed {
    supposed.hidden[way] = true;
    supposed
}

/// The likeliest false full beside another fault or none, with the logarithm of its odds, and the largest that could pass.
///
/// They are looked through at the likeliest capacity alone; all capacities are weighed for the one that is found.
fn likeliest(
    puzzle: &Puzzle<'_>,
    beside: Supposed,
    plain: &Posterior,
) -> (f64, Option<(usize, usize)>, f64) {
    let share = plain.capacity().0.best;
    let settings = puzzle.evidence.settings().count();
    let (mut best, mut found, mut unnoticed) = (f64::NEG_INFINITY, None, 0.0);
    for first in 0..settings {
        let (mut last, mut worse) = (f64::NEG_INFINITY, 0);
        for count in 1..=LONGEST_FALSE.min(settings - first) {
            let supposed = Supposed { false_full: Some((first, count)), ..beside };
            let Some(own) = puzzle.solve(share, &supposed.priors(puzzle)) else { break };
            let place = SETTINGS + first;
            let mean = own.mean.get(place).copied().unwrap_or(0.0);
            if count == 1 && first + 1 < settings {
                let scale = CAPACITY_SPREAD * mean;
                let spread = (own.root.inverse_at(place) + scale * scale).sqrt();
                unnoticed = f64::max(unnoticed, mean + NINE_TENTHS * spread);
            }
            if own.weight > best && mean > 0.0 {
                (best, found) = (own.weight, Some((first, count)));
            }
            worse = if own.weight < last { worse + 1 } else { 0 };
            if worse > 1 {
                break;
            }
            last = own.weight;
        }
    }
    let before = FALSE_ODDS + if beside != Supposed::default() { HIDDEN_ODDS } else { 0.0 };
    let whole = found.and_then(|own| {
        Posterior::of(puzzle, Supposed { false_full: Some(own), ..beside }, COARSE)
    });
    let odds = whole.map_or(f64::NEG_INFINITY, |own| own.evidence - plain.evidence + before);
    (odds, found, unnoticed)
}
