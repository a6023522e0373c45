//! What use and time do to a bank: cycles counted out of a run, the life they take, the life that warmth takes.
//!
//! **Question answered:** after how many years is the capacity down to 80 %, and what brings that nearer?
//!
//! **Method.** Swings of the state of charge are counted by the rainflow rule of ASTM E1049-85, section 5.4.4. A swing of
//! depth D takes 1/N(D) of the cycle life, N(D) = N₁·(D/D₁)^−b, and the parts add up (Miner). Time takes its part of the
//! calendar life, which halves for each 10 K over 25 °C (rule for float service of lead-acid; also used for the others, for want
//! of a better one) and gains nothing below 15 °C. Both parts are **added**, which is the cautious choice; the other usual one
//! takes the larger.
//!
//! **How sure.** Cycle lives and exponents are ranges that are typical of the trade, and the answer is a range of years. For
//! the nickel-rich and sodium chemistries no range is held here, so there is no answer: the maker's sheet has it.
//!
//! **Left out:** how current, state of charge at rest, cold charging and stratification act; capacity is taken to fall in a
//! straight line. Lead-acid that is not filled for weeks ages much faster than this says: see the days since full of a run.

use crate::document::Chemistry;
use crate::quantity::{Celsius, Hours, Percent};
use crate::working::{Formula, Source, Trace, term};

use super::Bank;

/// A counted swing of the state of charge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cycle {
    /// From its lowest to its highest point (in the unit of the series).
    pub range: f64,
    /// 1 for a whole cycle, 0.5 for half of one.
    pub count: f64,
}

/// Counts the cycles of a series by the rainflow rule of ASTM E1049-85.
///
/// Both ends of the series count as turning points. A value that is no number is passed over.
#[must_use]
pub fn rainflow(series: impl IntoIterator<Item = f64>) -> Vec<Cycle> {
    let (mut turns, mut cycles) = (Vec::new(), Vec::new());
    let mut last: Option<f64> = None;
    let mut rising = None;
    for value in series.into_iter().filter(|value| value.is_finite()) {
        if let Some(before) = last.filter(|before| *before != value) {
            let rises = value > before;
            if rising != Some(rises) {
                turn(before, &mut turns, &mut cycles);
                rising = Some(rises);
            }
        }
        last = Some(value);
    }
    if let (Some(end), Some(_)) = (last, rising) {
        turn(end, &mut turns, &mut cycles);
    }
    // What never closed counts as half cycles.
    let open = turns.windows(2).map(|pair| Cycle { range: (pair[1] - pair[0]).abs(), count: 0.5 });
    cycles.extend(open);
    cycles
}

/// Adds a turning point and counts what it closes.
fn turn(at: f64, turns: &mut Vec<f64>, cycles: &mut Vec<Cycle>) {
    turns.push(at);
    while let [.., a, b, c] = turns[..] {
        let (newest, older) = ((c - b).abs(), (b - a).abs());
        if newest < older {
            return;
        }
        // A range that begins at the start of the history is half a cycle, any other a whole one.
        let first = turns.len() == 3;
        cycles.push(Cycle { range: older, count: if first { 0.5 } else { 1.0 } });
        if first {
            turns.remove(0);
        } else {
            turns.truncate(turns.len() - 3);
            turns.push(c);
        }
    }
}

/// Least and most of a figure that is typical only as a range.
pub type Span = (f64, f64);

/// How many cycles a chemistry stands before its capacity is down to 80 %.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CycleLife {
    /// Cycles of that depth.
    #[doc(alias = "N1")]
    pub cycles: Span,
    /// That depth (ratio).
    #[doc(alias = "D1")]
    pub depth: f64,
    /// How the number falls with depth: near 1 the charge put through in a life is always the same.
    #[doc(alias = "b")]
    pub exponent: Span,
    /// Years of standing at 25 °C.
    pub years: Span,
}

/// Years that lead-acid and iron phosphate stand at 25 °C: rounded ranges usual in the trade, the least certain figures here.
const LEAD_YEARS: Span = (4.0, 10.0);
const PHOSPHATE_YEARS: Span = (8.0, 15.0);
/// Exponents usual in the trade.
const LEAD_EXPONENT: Span = (0.9, 1.2);
const PHOSPHATE_EXPONENT: Span = (1.1, 1.6);

/// Typical life of a chemistry; none where no range is held. All of it is typical: the maker's sheet comes first.
#[must_use]
pub const fn cycle_life(chemistry: Chemistry) -> Option<CycleLife> {
    match chemistry {
        Chemistry::FloodedLeadAcid => Some(CycleLife {
            cycles: (300.0, 800.0),
            depth: 0.5,
            exponent: LEAD_EXPONENT,
            years: LEAD_YEARS,
        }),
        Chemistry::Agm | Chemistry::Gel => Some(CycleLife {
            cycles: (300.0, 700.0),
            depth: 0.5,
            exponent: LEAD_EXPONENT,
            years: LEAD_YEARS,
        }),
        Chemistry::Lifepo4 => Some(CycleLife {
            cycles: (2000.0, 6000.0),
            depth: 0.8,
            exponent: PHOSPHATE_EXPONENT,
            years: PHOSPHATE_YEARS,
        }),
        Chemistry::Nmc | Chemistry::SodiumIon => None,
    }
}

impl CycleLife {
    /// Number of cycles of a depth (ratio) that the life consists of, at least and at most.
    #[must_use]
    pub fn at(&self, depth: f64) -> Span {
        let part = depth / self.depth;
        let powers = (libm::pow(part, -self.exponent.0), libm::pow(part, -self.exponent.1));
        let (low, high) = if powers.0 < powers.1 { powers } else { (powers.1, powers.0) };
        (self.cycles.0 * low, self.cycles.1 * high)
    }

    /// Share of the life that cycles take: at least and at most.
    #[must_use]
    pub fn spent(&self, cycles: &[Cycle]) -> Span {
        let turned = cycles.iter().filter(|cycle| cycle.range > 0.0);
        turned.fold((0.0, 0.0), |(low, high), cycle| {
            let life = self.at(cycle.range);
            (low + cycle.count / life.1, high + cycle.count / life.0)
        })
    }
}

/// Temperature of the stated calendar life.
const LIFE_AT: Celsius = Celsius(25.0);
/// Warmth that halves it.
const HALVED_BY: Celsius = Celsius(10.0);
/// Below it nothing more is gained.
const NO_GAIN_BELOW: Celsius = Celsius(15.0);

/// Calendar life at a temperature over that at 25 °C: half for each 10 K more, and at most double.
#[must_use]
pub fn life_factor(temperature: Celsius) -> f64 {
    libm::exp2(-((temperature.at_least(NO_GAIN_BELOW) - LIFE_AT) / HALVED_BY))
}

/// What brings the end nearest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wear {
    /// Cycles, their number and depth.
    Cycles,
    /// Time itself.
    Years,
    /// Warmth over 25 °C.
    Warmth,
}

/// How a bank ages under what a run did to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ageing {
    /// Cycles to full depth with the same charge put through, a year.
    pub full_cycles: f64,
    /// Deepest swing (ratio).
    pub deepest: f64,
    /// Share of the life that a year of cycles takes, at least and at most.
    pub by_cycles: Span,
    /// Share of the life that a year of standing takes, at least and at most.
    pub by_time: Span,
    /// Years from now until 80 % of the rated capacity, at least and at most; nothing is left under 80 %.
    pub years: Span,
    /// What shortens it most.
    pub shortened_by: Wear,
}

/// Hours of a mean year.
const YEAR: Hours = Hours(8766.0);
/// Health at which a bank counts as worn out.
const WORN_OUT: Percent = Percent(80.0);

impl Bank {
    /// How the bank ages if a stretch of time goes on for ever.
    ///
    /// `charges` are states of charge (ratio) and `temperatures` those of the bank, both in equal steps over `stretch`. A
    /// stretch of less than a year should be typical of it. None where no life is held for the chemistry or the stretch is empty.
    pub fn ageing(
        &self,
        charges: impl IntoIterator<Item = f64>,
        temperatures: impl IntoIterator<Item = Celsius>,
        stretch: Hours,
        trace: &mut impl Trace,
    ) -> Option<Ageing> {
        let life = cycle_life(self.chemistry)?;
        let cycles = rainflow(charges);
        let a_year = YEAR / stretch;
        let heat = mean(temperatures.into_iter().map(|at| 1.0 / life_factor(at)))?;
        if !a_year.is_finite() || a_year <= 0.0 {
            return None;
        }
        let spent = life.spent(&cycles);
        let by_cycles = (spent.0 * a_year, spent.1 * a_year);
        let by_time = (heat / life.years.1, heat / life.years.0);
        let years = (
            self.years_left(by_cycles.1, by_time.1, trace),
            self.years_left(by_cycles.0, by_time.0, trace),
        );
        Some(Ageing {
            full_cycles: cycles.iter().map(|cycle| cycle.range * cycle.count).sum::<f64>() * a_year,
            deepest: cycles.iter().map(|cycle| cycle.range).fold(0.0, f64::max),
            by_cycles,
            by_time,
            years,
            shortened_by: shortened_by(by_cycles, by_time, heat),
        })
    }

    /// Years until the health is down to 80 %, at so much of the life a year.
    fn years_left(&self, by_cycles: f64, by_time: f64, trace: &mut impl Trace) -> f64 {
        let spare = self.health.at_least(WORN_OUT) - WORN_OUT;
        let years = spare / (Percent(100.0) - WORN_OUT) / (by_cycles + by_time);
        trace.step(
            Formula::YearsLeft,
            years,
            &[
                term(self.health.at_least(WORN_OUT)),
                term(WORN_OUT).from(Source::Definition),
                term(by_cycles).from(Source::Steps),
                term(by_time).from(Source::Steps),
            ],
        )
    }
}

fn mean(values: impl Iterator<Item = f64>) -> Option<f64> {
    let (sum, count) = values.fold((0.0, 0.0), |(sum, count), value| (sum + value, count + 1.0));
    (count > 0.0).then(|| sum / count)
}

/// The largest part of what a year takes, in the middle of the ranges.
fn shortened_by(by_cycles: Span, by_time: Span, heat: f64) -> Wear {
    let middle = |span: Span| (span.0 + span.1) / 2.0;
    let (cycles, time) = (middle(by_cycles), middle(by_time));
    let warmth = time * (1.0 - 1.0 / heat);
    if cycles >= time {
        Wear::Cycles
    } else if warmth > cycles && warmth > time / 2.0 {
        Wear::Warmth
    } else {
        Wear::Years
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document;

    fn bank(health_pct: f64) -> Bank {
        let section = document::Bank { health_pct, ..document::Bank::default() };
        Bank::parse(&section).unwrap()
    }

    /// A year of days that swing by so much.
    fn days(depth: f64) -> impl Iterator<Item = f64> {
        (0..365).flat_map(move |_| [1.0, 1.0 - depth])
    }

    fn ageing(bank: &Bank, depth: f64, temperature: f64) -> Ageing {
        let air = core::iter::once(Celsius(temperature));
        bank.ageing(days(depth), air, Hours(8760.0), &mut ()).unwrap()
    }

    #[test]
    fn nothing_that_stands_still_is_a_cycle() {
        assert_eq!(rainflow([]), []);
        assert_eq!(rainflow([0.5, 0.5, 0.5]), []);
        assert_eq!(rainflow([0.5, f64::NAN, 0.7]).len(), 1);
    }

    #[test]
    fn the_stated_depth_gives_the_stated_cycles() {
        let life = cycle_life(Chemistry::Lifepo4).unwrap();
        assert_eq!(life.at(0.8), (2000.0, 6000.0));
        let (least, most) = life.at(0.4);
        assert!(least > 4000.0 && most > 12_000.0, "shallow cycles are many");
        let (least, most) = life.at(1.0);
        assert!(least < 1600.0 && most < 4800.0 && least < most);
    }

    #[test]
    fn deep_cycles_and_warmth_shorten_life_and_cold_does_not_lengthen_it_for_ever() {
        let bank = bank(100.0);
        let mild = ageing(&bank, 0.2, 25.0);
        assert!(ageing(&bank, 0.9, 25.0).years.1 < mild.years.1);
        assert!(ageing(&bank, 0.2, 35.0).years.1 < mild.years.1);
        assert_eq!(ageing(&bank, 0.2, 5.0), ageing(&bank, 0.2, 15.0));
        assert!((mild.full_cycles - 73.0).abs() < 0.5 && (mild.deepest - 0.2).abs() < 1e-12);
    }

    #[test]
    fn what_shortens_most_is_named() {
        let bank = bank(100.0);
        assert_eq!(ageing(&bank, 0.05, 25.0).shortened_by, Wear::Years);
        assert_eq!(ageing(&bank, 0.05, 40.0).shortened_by, Wear::Warmth);
        assert_eq!(ageing(&bank, 1.0, 20.0).shortened_by, Wear::Cycles);
    }

    #[test]
    fn an_aged_bank_has_less_left_and_a_worn_one_nothing() {
        let (new, used) = (ageing(&bank(100.0), 0.5, 25.0), ageing(&bank(90.0), 0.5, 25.0));
        assert!((used.years.0 - new.years.0 / 2.0).abs() < 1e-12);
        assert_eq!(ageing(&bank(70.0), 0.5, 25.0).years, (0.0, 0.0));
    }

    #[test]
    fn where_no_life_is_held_none_is_promised() {
        let section = document::Bank { chemistry: Chemistry::Nmc, ..document::Bank::default() };
        let bank = Bank::parse(&section).unwrap();
        assert_eq!(bank.ageing(days(0.5), [Celsius(25.0)], Hours(8760.0), &mut ()), None);
    }
}
