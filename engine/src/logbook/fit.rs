//! The bank behind the readings: which charge, voltage and hidden currents explain them, and how exactly.
//!
//! **Method.** The state of charge at each mark follows from the one before: what the gauge counted over the real capacity, and what it
//! could not see, which is a current past the shunt (while something charges, or always) and a charge efficiency other than it was
//! told. Where the gauge said full the bank was, but for a small error, or a large one if that was false. The open-circuit voltage at
//! that charge, less resistance times current, is held against what was read, on the curve as it is about the voltage that was read. For
//! each of a row of capacities the rest is nearly straight lines and solved by Gauss and Newton; the row is weighed by Laplace's
//! approximation. Everything has a prior that says what is known without the readings, so whatever they do not tell keeps its wide prior.
//! A voltage far off pulls no harder than at [`FAR`] standard deviations: it is rather a slip of the pen.
//!
//! **Noise, stated.** Voltage: 4 mV a cell of lead-acid, 3.5 mV of others, 2.2 times that soon after charging; three tenths of the drop
//! over the resistance; what 1.5 % of charge come to. Priors (standard deviations): voltages of the curve 10 mV a cell of lead-acid, 6
//! of others, soon after charging 30 and 12; slope of the curve 7 %; capacity 20 %; efficiency near full 6 points (lithium,
//! sodium: 0.7) about the middle of published laws of lead-acid; currents past the shunt a fortieth of the capacity in an hour while
//! something charges, a two-hundredth always. All are choices of this engine, held by `tests/tests/logbook_recovery.rs`.

use crate::bank::Bank;
use crate::quantity::{Hours, Volts, Within};

use super::evidence::{Evidence, Mark};
use super::matrix::Root;

/// Places of what is solved for.
pub(super) const RESTED: usize = 0;
pub(super) const FRESH: usize = 1;
pub(super) const SLOPE: usize = 2;
pub(super) const RESISTANCE: usize = 3;
pub(super) const EFFICIENCY: usize = 4;
pub(super) const BYPASS: usize = 5;
pub(super) const DRAIN: usize = 6;
pub(super) const BEGIN: usize = 7;
/// From here on one place for each time that the gauge may have been set to full.
pub(super) const SETTINGS: usize = 8;

/// Standard deviation of the error of a full that was false (ratio).
pub(super) const FALSE_FULL: f64 = 0.3;
/// Hidden currents where none is looked for, over the capacity in an hour: less than any gauge tells.
const HIDDEN: f64 = 1.0 / 5000.0;
/// The same where one is: while something charges, and always.
const HIDDEN_WIDE: [f64; 2] = [1.0 / 40.0, 1.0 / 200.0];
/// How exactly the charge is known at the first reading (ratio).
const BEGIN_SPREAD: f64 = 0.08;
/// How exactly the charge is counted between readings (ratio).
const COUNT_NOISE: f64 = 0.015;
/// How exactly it is counted through a day (ratio).
const COUNTED: f64 = 0.004;
/// The same where the gauge stood at nothing.
const UNCOUNTED: f64 = 0.2;
/// Exactness of a full bank told by voltage and current (ratio).
const FULL_NOISE: f64 = 0.03;
/// Noise of a voltage soon after charging over that of one at rest.
const FRESH_NOISE: f64 = 2.2;
/// State of charge about which the slope of the curve turns (ratio).
const PIVOT: f64 = 0.9;
const ROUNDS: usize = 2;
/// They stop where nothing moves by more than this part of its prior.
const SETTLED: f64 = 0.1;
/// So many standard deviations off, a voltage is believed no more.
const FAR: f64 = 2.5;
/// Voltages that may be meant by one that was read, to either side, over its noise.
const WIDE: f64 = 3.0;
/// Least of charge that they may lie apart (ratio).
const LEAST_APART: f64 = 0.002;

/// What is known of one unknown before.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Prior {
    pub(super) mean: f64,
    pub(super) spread: f64,
}

/// A solution for one capacity.
#[derive(Clone, Debug)]
pub(super) struct Solved {
    pub(super) mean: Vec<f64>,
    pub(super) root: Root,
    /// Logarithm of how well it explains the readings.
    pub(super) weight: f64,
}

/// A bank, its readings and what consumption was found: all that the fit needs.
pub(super) struct Puzzle<'a> {
    pub(super) bank: &'a Bank,
    pub(super) evidence: &'a Evidence,
    /// Charge put in before each mark \[Ah\].
    pub(super) put_in: Vec<f64>,
    /// The current that fills the bank in ten hours \[A\].
    ten_hour: f64,
    /// Noise of a voltage \[V\].
    noise: f64,
    resistance: f64,
}

impl<'a> Puzzle<'a> {
    pub(super) fn new(bank: &'a Bank, evidence: &'a Evidence, consumption: f64) -> Self {
        let cell = if bank.lead_acid.is_some() { 0.004 } else { 0.0035 };
        let put_in: Vec<f64> =
            evidence.marks.iter().map(|own| evidence.put_in(own, consumption)).collect();
        let full = evidence.expected.full;
        let ten_hour =
            bank.lead_acid.as_ref().map_or(full / Hours(10.0), |own| own.ten_hour_current(full));
        Self {
            bank,
            evidence,
            ten_hour: ten_hour.0,
            put_in,
            noise: cell * bank.cells,
            resistance: bank.resistance_at(0.6, evidence.expected.temperature).0,
        }
    }

    /// What is known before any reading.
    pub(super) fn priors(&self) -> Vec<Prior> {
        let lead = self.bank.lead_acid.is_some();
        let full = self.evidence.expected.full.0;
        let of_cell =
            |lead_acid: f64, other: f64| (if lead { lead_acid } else { other }) * self.bank.cells;
        let prior = |mean, spread| Prior { mean, spread };
        let mut all = vec![
            prior(0.0, of_cell(0.01, 0.006)),
            prior(of_cell(0.015, 0.004), of_cell(0.03, 0.012)),
            prior(0.0, 0.07),
            if lead { prior(1.0, 0.7) } else { prior(0.3, 0.5) },
            if lead { prior(-0.05, 0.06) } else { prior(0.0, 0.007) },
            prior(0.0, full * HIDDEN),
            prior(0.0, full * HIDDEN),
            prior(0.0, BEGIN_SPREAD),
        ];
        let set = self.evidence.marks.iter().filter(|own| own.set);
        all.extend(set.map(|own| {
            let counted = if own.bottom { UNCOUNTED } else { COUNTED };
            prior(0.0, own.claim.unwrap_or(counted))
        }));
        all
    }

    /// How large a hidden current may be \[A\].
    pub(super) fn hidden_spread(&self, place: usize) -> f64 {
        let share = if place == BYPASS { HIDDEN_WIDE[0] } else { HIDDEN_WIDE[1] };
        share * self.evidence.expected.full.0
    }

    /// How far a failing cell may take the voltage down or up \[V\].
    pub(super) fn cell_spread(&self) -> f64 {
        0.25 * self.bank.typical.cell.0
    }

    /// The charge that a voltage at rest tells (ratio), and the slope of the curve there \[V\].
    ///
    /// Both are means over the voltages that may be meant, so that no bend of the curve tells more than it can.
    fn told(&self, volts: f64) -> (f64, f64) {
        let wide = self.noise * WIDE;
        let at = |volts: f64| self.bank.charge_at(Volts(volts));
        let (below, here, above) = (at(volts - wide), at(volts), at(volts + wide));
        let apart = f64::max(above - below, LEAST_APART);
        ((below + here + above) / 3.0, 2.0 * wide / apart)
    }

    /// Solves for everything but the capacity, which is this share of the plan's.
    pub(super) fn solve(&self, share: f64, priors: &[Prior]) -> Option<Solved> {
        let size = priors.len();
        let mut x: Vec<f64> = priors.iter().map(|own| own.mean).collect();
        let mut system = Normal::new(size, priors, &x);
        self.gather(share, &x, &mut system);
        let mut root = Root::of(&system.matrix, size)?;
        // Straight lines but for the efficiency, which follows the charge, and for slips: a few steps go all the way.
        for _ in 0..ROUNDS {
            let mut moved = 0.0;
            let steps = root.solve(&system.right);
            for ((value, step), prior) in x.iter_mut().zip(steps).zip(priors) {
                *value += step;
                moved = f64::max(moved, step.abs() / prior.spread);
            }
            if moved < SETTLED {
                break;
            }
            system = Normal::new(size, priors, &x);
            self.gather(share, &x, &mut system);
            root = Root::of(&system.matrix, size)?;
        }
        let scale: f64 = priors.iter().map(|own| libm::log(own.spread)).sum();
        let weight = -0.5 * system.misfit - root.half_log_determinant() - scale;
        Some(Solved { mean: x, root, weight })
    }

    /// Goes through the marks and adds what each says; gives the charge at the last and what it depends on.
    fn gather(&self, share: f64, x: &[f64], system: &mut Normal) -> (f64, Vec<f64>) {
        let real = share * self.evidence.expected.full.0;
        let over = self.evidence.gauge.capacity.0 / real;
        let mut charge = 0.0;
        let mut row = vec![0.0; x.len()];
        let mut setting = SETTINGS;
        for (at, mark) in self.evidence.marks.iter().enumerate() {
            if mark.claim.is_some() {
                row.fill(0.0);
                charge = 1.0 - (1.0 - mark.level) * over;
            } else if at == 0 {
                row[BEGIN] = 1.0;
                charge = mark.level + x[BEGIN];
            } else {
                self.advance(mark, self.put_in[at], real, x, &mut charge, &mut row);
            }
            if mark.set {
                charge -= x[setting];
                row[setting] -= 1.0;
                setting += 1;
            }
            self.witness(mark, charge, &row, x, system);
        }
        (charge, row)
    }

    /// The state of charge at the last mark (ratio) and its variance.
    pub(super) fn charge_at_end(&self, share: f64, solved: &Solved) -> (f64, f64) {
        let mut unused = Normal::new(solved.mean.len(), &[], &[]);
        let (charge, row) = self.gather(share, &solved.mean, &mut unused);
        let spread = solved.root.solve(&row);
        let variance: f64 = row.iter().zip(&spread).map(|(a, b)| a * b).sum();
        (charge, variance + COUNT_NOISE * COUNT_NOISE)
    }

    /// Moves the charge on by what was counted and what was not.
    fn advance(
        &self,
        mark: &Mark,
        put_in: f64,
        real: f64,
        x: &[f64],
        charge: &mut f64,
        row: &mut [f64],
    ) {
        let lit = mark.stretch.lit;
        // In the middle of what is put in.
        let middle = (*charge + (mark.counted + x[BYPASS] * lit) / real / 2.0).within(0.0, 1.0);
        let (law, near_full) = self.law(middle, put_in, lit);
        let efficiency = law + x[EFFICIENCY] * near_full;
        let kept = (efficiency - self.evidence.gauge.efficiency) * put_in;
        let hidden = kept + efficiency * x[BYPASS] * lit - x[DRAIN] * mark.stretch.hours;
        *charge += (mark.counted + hidden) / real;
        row[EFFICIENCY] += near_full * (put_in + x[BYPASS] * lit) / real;
        row[BYPASS] += efficiency * lit / real;
        row[DRAIN] -= mark.stretch.hours / real;
    }

    /// The share that stays of what is put in about a charge (ratio) by the law of the bank, and how much of the doubt about it counts
    /// there: published laws of lead-acid agree far from full.
    fn law(&self, middle: f64, put_in: f64, lit: f64) -> (f64, f64) {
        let current = put_in / f64::max(lit, 1.0) / self.ten_hour;
        let near_full = match self.bank.lead_acid {
            Some(_) => ((middle - 0.7) / 0.15).within(0.0, 1.0),
            None => 1.0,
        };
        (self.bank.efficiency.at(middle, current), near_full)
    }

    /// The share that stays of all that was put in (ratio), with its doubt, for a doubt about the law.
    pub(super) fn efficiency(&self, (mean, spread): (f64, f64)) -> (f64, f64) {
        let (mut all, mut stays, mut doubted) = (1e-9, 0.0, 0.0);
        let mut before = 1.0;
        for (mark, put_in) in self.evidence.marks.iter().zip(&self.put_in) {
            let middle = f64::midpoint(before, mark.level).within(0.0, 1.0);
            let (law, near_full) = self.law(middle, *put_in, mark.stretch.lit);
            all += put_in;
            stays += law * put_in;
            doubted += near_full * put_in;
            before = mark.level;
        }
        ((stays + mean * doubted) / all, spread * doubted / all)
    }

    /// Adds what the voltage of a mark says.
    fn witness(&self, mark: &Mark, charge: f64, row: &[f64], x: &[f64], system: &mut Normal) {
        if mark.full {
            system.add(row, 1.0 - charge, FULL_NOISE);
        }
        let Some(own) = mark.witness else { return };
        let sag = own.out * self.resistance;
        let place = if own.fresh { FRESH } else { RESTED };
        // What a failing cell takes is too much for a straight line: the curve is met where it would be without.
        let bent = self.bank.lead_acid.is_some() && x[place].abs() > self.noise * WIDE;
        let shift = if bent { x[place] } else { 0.0 };
        let (told, slope) = self.told(own.volts + sag - shift);
        let turned = slope * (told - PIVOT);
        let mut cells: Vec<f64> = row.iter().map(|cell| cell * slope).collect();
        cells[place] += 1.0;
        cells[SLOPE] += turned;
        cells[RESISTANCE] -= sag;
        let off =
            slope * (told - charge) + shift - x[place] - x[SLOPE] * turned + x[RESISTANCE] * sag;
        let blur = slope * COUNT_NOISE;
        let sag_noise = if own.read { 0.3 } else { 0.7 } * sag;
        let own_noise = if own.fresh { FRESH_NOISE } else { 1.0 } * self.noise;
        let noise = (own_noise * own_noise + blur * blur + sag_noise * sag_noise).sqrt();
        // What lies far off is rather a slip of the pen: it pulls no harder than at that distance.
        system.add(&cells, off, f64::max(noise, off.abs() / FAR));
    }
}

/// The normal equations of one round.
struct Normal {
    matrix: Vec<f64>,
    right: Vec<f64>,
    misfit: f64,
}

impl Normal {
    /// Those of the priors alone, about what there is so far.
    fn new(size: usize, priors: &[Prior], x: &[f64]) -> Self {
        let mut own = Self { matrix: vec![0.0; size * size], right: vec![0.0; size], misfit: 0.0 };
        for (at, (prior, x)) in priors.iter().zip(x).enumerate() {
            let (precision, off) = (1.0 / (prior.spread * prior.spread), prior.mean - x);
            own.matrix[at * size + at] = precision;
            own.right[at] = off * precision;
            own.misfit += off * off * precision;
        }
        own
    }

    /// Adds an observation that is off by so much.
    fn add(&mut self, row: &[f64], off: f64, noise: f64) {
        let size = self.right.len();
        let precision = 1.0 / (noise * noise);
        // Only the lower triangle: it is symmetric.
        for (at, cell) in row.iter().enumerate().filter(|(_, cell)| **cell != 0.0) {
            self.right[at] += cell * off * precision;
            let cells = self.matrix.iter_mut().skip(at * size);
            for (sum, value) in cells.zip(row.iter().take(at + 1)) {
                *sum += cell * value * precision;
            }
        }
        self.misfit += off * off * precision + 2.0 * libm::log(noise);
    }
}
