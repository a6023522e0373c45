//! The inverter: what it takes from the bank for what it gives.
//!
//! **Model.** Loss = p0 + k1·p + k2·p², with p the output over the rated output (the form of Schmidt & Sauer 1996). p0 is
//! the idle draw. k1 and k2 follow from the efficiencies at half and at full load, which makers state. The loss is never
//! below the idle draw. All loads share one inverter, so its idle draw counts once, and only while it is on; one that searches takes
//! its standby draw the rest of the time, and is taken to find every load at once.
//!
//! Losses follow the current, so p is the apparent output: loads of a power factor under 1 cost losses and room, and no power.
//! The rated output counts as volts times amps for that.

use crate::document::{Awake, Inverter as Section, Problem};
use crate::quantity::{Percent, VoltAmps, Watts};
use crate::working::{Formula, Source, Trace, term};

/// Typical efficiency at half load \[%\].
const HALF: Percent = Percent(92.0);
/// Typical efficiency at full load \[%\].
const FULL: Percent = Percent(89.0);
/// Typical idle draw as a share of the rated output: 12 W of 1 kW.
const IDLE_SHARE: f64 = 0.012;
/// Typical draw while it looks for a load: of 1 to 5 W that are common.
const SEARCH: Watts = Watts(3.0);
/// Typical short output over the continuous one.
const SURGE: f64 = 2.0;

/// Coefficients of the loss, as shares of the rated output.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LossCurve {
    /// Loss with nothing connected.
    pub p0: f64,
    /// Loss that grows with the output.
    pub k1: f64,
    /// Loss that grows with its square.
    pub k2: f64,
}

impl LossCurve {
    /// The curve through three points of relative output and efficiency (ratio).
    #[must_use]
    pub fn through(points: [(f64, f64); 3]) -> Self {
        let loss = points.map(|(p, efficiency)| p * (1.0 / efficiency - 1.0));
        let [(a, _), (b, _), (c, _)] = points;
        let ab = (loss[1] - loss[0]) / (b - a);
        let bc = (loss[2] - loss[1]) / (c - b);
        let k2 = (bc - ab) / (c - a);
        let k1 = ab - k2 * (a + b);
        Self { p0: loss[0] - k1 * a - k2 * a * a, k1, k2 }
    }

    /// The curve with a given idle draw through the half-load and full-load efficiencies.
    fn with_idle(p0: f64, half: Percent, full: Percent) -> Self {
        let half_loss = 0.5 * (1.0 / half.ratio() - 1.0);
        let full_loss = 1.0 / full.ratio() - 1.0;
        // p0 + k1/2 + k2/4 = half_loss and p0 + k1 + k2 = full_loss.
        let k2 = 2.0 * (full_loss - p0) - 4.0 * (half_loss - p0);
        Self { p0, k1: full_loss - p0 - k2, k2 }
    }

    /// Loss at a relative output, never below the idle draw.
    #[inline]
    #[must_use]
    pub fn loss(&self, p: f64) -> f64 {
        let loss = self.p0 + (self.k1 + self.k2 * p) * p;
        if loss < self.p0 { self.p0 } else { loss }
    }

    /// Efficiency at a relative output (ratio).
    #[must_use]
    pub fn efficiency(&self, p: f64) -> f64 {
        p / (p + self.loss(p))
    }
}

/// An inverter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Inverter {
    /// Continuous output.
    pub rated: Watts,
    /// Short output.
    pub surge: Watts,
    /// Its losses.
    pub curve: LossCurve,
    /// Where its idle draw comes from.
    pub idle_source: Source,
    /// Whether it is on even without a load.
    pub always: bool,
    /// Draw while it looks for a load; nothing if it is off then.
    pub search: Watts,
    /// Where that comes from.
    pub search_source: Source,
}

impl Inverter {
    /// Reads its section.
    ///
    /// # Errors
    /// If idle draw and efficiencies contradict each other: the half-load loss would be smaller than the idle draw.
    pub fn parse(section: &Section) -> Result<Self, Problem> {
        let rated = Watts(section.rated_w);
        let idle = section.idle_w.map_or(rated * IDLE_SHARE, Watts);
        let half = section.efficiency_half_pct.map_or(HALF, Percent);
        let full = section.efficiency_full_pct.map_or(FULL, Percent);
        let curve = LossCurve::with_idle(idle / rated, half, full);
        let loss = rated * (0.5 * (1.0 / half.ratio() - 1.0));
        if loss < idle {
            return Err(Problem::IdleAboveLoss { idle, loss });
        }
        let surge = section.surge_w.map_or(rated * SURGE, Watts);
        Ok(Self {
            rated,
            surge,
            curve,
            idle_source: section.idle_w.map_or(Source::Typical, |_| Source::Plan),
            always: section.awake == Awake::Always,
            search: match section.awake {
                Awake::Search => section.search_w.map_or(SEARCH.at_most(idle), Watts),
                Awake::Always | Awake::WithLoads => Watts::ZERO,
            },
            search_source: section.search_w.map_or(Source::Typical, |_| Source::Plan),
        })
    }

    /// Draw while on and idle.
    #[must_use]
    pub fn idle(&self) -> Watts {
        self.rated * self.curve.p0
    }

    /// Power taken from the bank for an output that does not change.
    #[must_use]
    pub fn input(&self, output: Watts) -> Watts {
        output + self.rated * self.curve.loss(output / self.rated)
    }

    /// The same for an output that is more in volts times amps.
    #[must_use]
    pub fn input_of(&self, output: Watts, apparent: VoltAmps) -> Watts {
        output + self.rated * self.curve.loss(apparent.0 / self.rated.0)
    }

    /// Mean loss beyond the idle draw in a step, from the mean apparent output and the mean square of it over the rated one.
    ///
    /// A kettle for a quarter of the step loses more than its mean power all the time, which only the square knows.
    #[inline]
    #[must_use]
    pub fn growing_loss(&self, apparent: VoltAmps, square: f64) -> Watts {
        let loss = self.curve.k1 * (apparent.0 / self.rated.0) + self.curve.k2 * square;
        self.rated * if loss > 0.0 { loss } else { 0.0 }
    }

    /// The same with its working, for one output.
    pub fn input_traced(&self, output: Watts, trace: &mut impl Trace) -> Watts {
        trace.step(
            Formula::InverterInput,
            self.input(output),
            &[
                term(output),
                term(self.rated),
                term(self.curve.p0).from(Source::Typical),
                term(self.curve.k1).from(Source::Typical),
                term(self.curve.k2).from(Source::Typical),
            ],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inverter() -> Inverter {
        Inverter::parse(&Section::default()).unwrap()
    }

    #[test]
    fn it_meets_the_stated_efficiencies() {
        let curve = inverter().curve;
        assert!((curve.efficiency(0.5) - HALF.ratio()).abs() < 1e-12);
        assert!((curve.efficiency(1.0) - FULL.ratio()).abs() < 1e-12);
        assert!((inverter().idle().0 - 12.0).abs() < 1e-12);
    }

    #[test]
    fn a_steady_output_loses_the_same_by_its_mean_square() {
        let inverter = inverter();
        for p in [0.0, 0.1, 0.5, 1.0] {
            let output = inverter.rated * p;
            let taken = output + inverter.idle() + inverter.growing_loss(VoltAmps(output.0), p * p);
            assert!((taken - inverter.input(output)).0.abs() < 1e-9, "{p}");
        }
    }

    #[test]
    fn contradicting_figures_are_refused() {
        let section = Section { idle_w: Some(200.0), ..Section::default() };
        assert!(Inverter::parse(&section).is_err());
    }
}
