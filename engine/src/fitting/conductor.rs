//! Copper conductors by the American wire gauge: section, resistance and the drop over them.
//!
//! **Method.** The diameter of a gauge is 0.127 mm · 92^((36 − n)/39) (ASTM B258); the section is that of a round wire. Copper has
//! 1.7241·10⁻⁸ Ω·m at 20 °C and 0.00393/K more with warmth (IACS 1913). Battery cable is stranded and has less copper than its
//! gauge; [`FILLING`] takes that from the section wherever a drop is worked out.
//!
//! **Range.** 18 to 4/0 AWG, which is 1 to 120 mm². **Left out:** aluminium, the resistance of lugs and contacts.

use crate::quantity::{Celsius, Metres, Ohms, SquareMillimetres};
use crate::working::{Formula, Trace, term};

/// Resistivity of annealed copper at 20 °C \[Ω·mm²/m\].
const RESISTIVITY: f64 = 0.017_241;
/// Its growth with each kelvin from 20 °C.
const PER_KELVIN: f64 = 0.003_93;
/// Temperature at which the resistivity is stated.
const STATED_AT: Celsius = Celsius(20.0);
/// Diameter of gauge 36 \[mm\], exact: 5 thousandths of an inch (ASTM B258).
const GAUGE_36_MM: f64 = 0.127;
/// By how much the diameter grows from gauge 36 to 4/0, which are 39 steps (ASTM B258).
const GAUGE_GROWTH: f64 = 92.0;
/// Steps between them.
const GAUGE_STEPS: f64 = 39.0;
/// A thousandth of an inch \[mm\].
const MIL_MM: f64 = 0.0254;
/// Share of a gauge's section that stranded cable of boats and vehicles has at the least: about a tenth less is allowed in that
/// trade, and the published example of 10 A over 21 feet comes out with this figure and not without it. It also covers the highest
/// resistance of fine-stranded metric cable. A choice on the safe side.
pub const FILLING: f64 = 0.89;
/// Resistivity in the marine form of the drop \[Ω·cmil/ft\].
const MARINE_K: f64 = 10.75;
/// Metres in a foot (international, exact).
const METRES_IN_FOOT: f64 = 0.3048;

/// The section of a gauge \[mm²\] by its number; 1/0 is 0 and 4/0 is −3.
#[must_use]
pub fn gauge_section(number: i32) -> f64 {
    let diameter = gauge_diameter(number);
    core::f64::consts::FRAC_PI_4 * diameter * diameter
}

fn gauge_diameter(number: i32) -> f64 {
    GAUGE_36_MM * libm::pow(GAUGE_GROWTH, (36.0 - f64::from(number)) / GAUGE_STEPS)
}

/// A conductor of the American wire gauge for which there are tables.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Gauge(u8);

/// Numbers of the gauges, from thin to thick.
const NUMBERS: [i32; Gauge::COUNT] = [18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3];
/// The metric size that has at least the copper of each gauge \[mm²\], in the series of IEC 60228: a metric size counts as the next
/// gauge below it, since no table of metric sizes could be verified.
const METRIC: [f64; Gauge::COUNT] =
    [1.0, 1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 35.0, 50.0, 70.0, 70.0, 95.0, 120.0];

impl Gauge {
    /// How many there are.
    pub const COUNT: usize = 15;

    /// Every gauge, from thin to thick.
    pub fn all() -> impl Iterator<Item = Self> {
        (0..Self::COUNT as u8).map(Self)
    }

    /// Its place among them.
    #[must_use]
    pub fn place(self) -> usize {
        usize::from(self.0)
    }

    /// Its number; 1/0 is 0 and 4/0 is −3.
    #[must_use]
    pub fn number(self) -> i32 {
        NUMBERS.get(self.place()).copied().unwrap_or_default()
    }

    /// How it is written: `10`, `1/0`.
    #[must_use]
    pub fn name(self) -> String {
        match self.number() {
            number @ 1.. => number.to_string(),
            number => format!("{}/0", 1 - number),
        }
    }

    /// Diameter of a solid wire \[mm\].
    #[must_use]
    pub fn diameter(self) -> f64 {
        gauge_diameter(self.number())
    }

    /// Section of a solid wire.
    #[must_use]
    pub fn section(self) -> SquareMillimetres {
        SquareMillimetres(gauge_section(self.number()))
    }

    /// The same in circular mils: the square of the diameter in thousandths of an inch.
    #[must_use]
    pub fn circular_mils(self) -> f64 {
        let mils = self.diameter() / MIL_MM;
        mils * mils
    }

    /// The metric size that carries at least as much.
    #[must_use]
    pub fn metric(self) -> SquareMillimetres {
        SquareMillimetres(METRIC.get(self.place()).copied().unwrap_or_default())
    }

    /// Whether the marine form of the drop holds: circular mils over K · I · L / E, with the least copper that the gauge may have.
    #[must_use]
    pub fn holds_marine_form(self, run: &Stretch) -> bool {
        let feet = 2.0 * run.length.0 / METRES_IN_FOOT;
        self.circular_mils() * FILLING * run.allowed.0 >= MARINE_K * run.current.0 * feet
    }
}

/// What a conductor is asked: a current over a length one way, within a drop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// The current.
    pub current: crate::quantity::Amps,
    /// Length one way.
    pub length: Metres,
    /// The drop that is allowed, out and back.
    pub allowed: crate::quantity::Volts,
}

/// Resistance of copper out and back over a length one way.
#[must_use]
pub fn loop_resistance(length: Metres, section: SquareMillimetres, at: Celsius) -> Ohms {
    let warmth = 1.0 + PER_KELVIN * (at - STATED_AT).0;
    Ohms(2.0 * length.0 * RESISTIVITY * warmth / section.0)
}

/// The same of stranded cable of a gauge, with its working.
pub(super) fn cable_resistance(
    length: Metres,
    gauge: Gauge,
    at: Celsius,
    (length_source, trace): (crate::working::Source, &mut impl Trace),
) -> Ohms {
    let section = gauge.section();
    let resistance = loop_resistance(length, section * FILLING, at);
    let section = term(section).from(crate::working::Source::WireGauge);
    let inputs = [term(length).from(length_source), term(at), section];
    trace.step(Formula::WireResistance, resistance, &inputs)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Amps, Volts};

    #[test]
    fn each_gauge_has_more_copper_than_the_one_before_and_its_metric_size_no_less() {
        let all: Vec<Gauge> = Gauge::all().collect();
        assert_eq!(all.len(), Gauge::COUNT);
        for pair in all.windows(2) {
            assert!(pair[0].section() < pair[1].section() && pair[0] < pair[1]);
            assert!(pair[0].metric() <= pair[1].metric());
        }
        assert!(all.iter().all(|gauge| gauge.metric() >= gauge.section()));
        assert_eq!((all[4].name(), all[14].name()), ("10".to_owned(), "4/0".to_owned()));
    }

    /// Highest resistance of fine-stranded copper of IEC 60228 class 5 at 20 °C [Ω/km] would be the proof; here the rule that a metric
    /// size counts as the gauge below it is held to its own words.
    #[test]
    fn a_metric_size_stands_for_the_next_gauge_below() {
        for (metric, number) in
            [(1.0, 18), (1.5, 16), (6.0, 10), (25.0, 4), (35.0, 2), (50.0, 1), (95.0, -2)]
        {
            let thickest = Gauge::all().filter(|own| own.section().0 <= metric).last().unwrap();
            assert_eq!(thickest.number(), number, "{metric}");
            assert!(thickest.metric().0 <= metric);
        }
    }

    #[test]
    fn the_marine_form_asks_for_more_copper_over_a_longer_way() {
        let run =
            |length| Stretch { current: Amps(10.0), length: Metres(length), allowed: Volts(0.36) };
        let thinnest = |run: &Stretch| Gauge::all().find(|own| own.holds_marine_form(run));
        let (short, long) = (thinnest(&run(1.0)), thinnest(&run(6.0)));
        assert!(short < long, "{short:?} {long:?}");
        assert_eq!(thinnest(&run(1e6)), None);
    }
}
