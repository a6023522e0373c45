//! From the capacity on the label to the capacity one may really use, step by step.
//!
//! **Method.** Lithium and sodium: usable = rated × age × rate × cold × (1 − reserve). Lead-acid keeps what a fast discharge
//! leaves and gives it later, so there the rate only sets how deep one can go at once: usable = rated × age × cold × min(1 −
//! reserve, rate). Rated is the slowest capacity that the sheet states, mostly that of the label. The rate follows Peukert's
//! law with the rated hours as its reference; cold follows the standard's table and, for slow discharges of lead-acid, half a
//! per cent a degree. Each factor is at most one: warmth and slow discharge never promise more than the label, because a bank
//! is not to be planned on a good day. Where loads are cut off at a voltage that the bank has at rest above its reserve, no
//! more than what is above it is usable.
//!
//! **Range.** Temperatures of −4 to 52 °C (lead-acid, fast) and −20 to 25 °C (lithium; sodium for want of a curve of its
//! own), level beyond. **Left out:** the capacity at the very current of a step; the mean discharge current of the month
//! stands for it.

use crate::quantity::{AmpHours, Amps, Celsius, Hours, Percent, Within};
use crate::working::{Formula, Source, Symbol, Term, Trace, term};

use super::Bank;
use super::chemistry::ColdLaw;

/// Correction factors K_T of lead-acid by temperature \[°F, 1\]: capacity at 25 °C is divided by them. IEEE 450/485.
const STANDARD_COLD: [(f64, f64); 22] = [
    (25.0, 1.52),
    (30.0, 1.43),
    (35.0, 1.35),
    (40.0, 1.30),
    (45.0, 1.25),
    (50.0, 1.19),
    (55.0, 1.15),
    (60.0, 1.11),
    (65.0, 1.08),
    (70.0, 1.04),
    (75.0, 1.011),
    (77.0, 1.00),
    (80.0, 0.98),
    (85.0, 0.96),
    (90.0, 0.94),
    (95.0, 0.93),
    (100.0, 0.91),
    (105.0, 0.89),
    (110.0, 0.88),
    (115.0, 0.87),
    (120.0, 0.86),
    (125.0, 0.85),
];
/// Capacity that a slow discharge of lead-acid loses per degree under 25 °C (Copetti and others: 0.5 to 0.6 %).
const SLOW_COLD_PER_K: f64 = 0.0055;
/// Discharges of at most so many hours follow the standard's table...
const FAST_HOURS: f64 = 10.0;
/// ...and of at least so many the slow law; between them a straight blend.
const SLOW_HOURS: f64 = 20.0;
/// Lithium: share of the capacity by temperature \[°C, 1\], typical middle of the trade's band.
const LITHIUM_COLD: [(f64, f64); 3] = [(-20.0, 0.68), (0.0, 0.85), (25.0, 1.0)];
/// Temperature at which capacity is rated.
const RATED_AT: Celsius = Celsius(25.0);

/// Straight lines between points, level beyond the ends.
fn between(points: &[(f64, f64)], x: f64) -> f64 {
    let (Some(first), Some(last)) = (points.first(), points.last()) else { return x };
    if x <= first.0 {
        return first.1;
    }
    for pair in points.windows(2) {
        let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
        if x <= x1 {
            return y0 + (y1 - y0) * (x - x0) / (x1 - x0);
        }
    }
    last.1
}

/// The standard's correction factor K_T of lead-acid: capacity at 25 °C is divided by it.
///
/// Range: -4 to 52 °C; level beyond. Source: IEEE 450/485; the three coldest rows and the warmest are less certain.
#[must_use]
pub fn standard_cold_factor(temperature: Celsius) -> f64 {
    between(&STANDARD_COLD, temperature.0 * 1.8 + 32.0)
}

/// Capacity at a constant current in the reference-rate form of Peukert's law: C · (C / (I · H))^(n−1).
#[must_use]
#[doc(alias = "peukert")]
pub fn capacity_at(rated: AmpHours, hour_rate: Hours, exponent: f64, current: Amps) -> AmpHours {
    rated * libm::pow(rated / (current * hour_rate), exponent - 1.0)
}

/// Exponent of Peukert's law from two discharges: ln(t2/t1) / ln(I1/I2).
#[must_use]
pub fn exponent_from(first: (Amps, Hours), second: (Amps, Hours)) -> f64 {
    libm::log(second.1 / first.1) / libm::log(first.0 / second.0)
}

/// Share of the capacity that a temperature leaves, at most 1, at a discharge of so many hours.
#[must_use]
pub fn cold_factor(law: ColdLaw, temperature: Celsius, hours: Hours) -> f64 {
    let factor = match law {
        ColdLaw::Lithium => between(&LITHIUM_COLD, temperature.0),
        ColdLaw::LeadAcid => {
            let fast = 1.0 / standard_cold_factor(temperature);
            let slow = 1.0 - SLOW_COLD_PER_K * (RATED_AT - temperature).0;
            let share = ((hours.0 - FAST_HOURS) / (SLOW_HOURS - FAST_HOURS)).within(0.0, 1.0);
            fast + (slow - fast) * share
        }
    };
    factor.within(0.1, 1.0)
}

/// What a bank holds under given circumstances.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Capacity {
    /// Charge between full and empty.
    pub full: AmpHours,
    /// Charge between full and the reserve.
    pub usable: AmpHours,
    /// Share of the label that the discharge current leaves.
    pub rate: f64,
    /// Share that the temperature leaves.
    pub cold: f64,
}

impl Bank {
    /// What the bank holds at a temperature and a mean discharge current.
    pub fn capacity(
        &self,
        current: Amps,
        temperature: Celsius,
        trace: &mut impl Trace,
    ) -> Capacity {
        let aged = trace.step(
            Formula::AgedCapacity,
            self.slowest * self.health.ratio(),
            &[term(self.slowest), term(self.health)],
        );
        let rate = self.rate_factor(aged, current, trace);
        let hours = aged / current.at_least(Amps(1e-6));
        let cold = self.cold_factor(temperature, hours, trace);
        let (full, usable) = match self.lead_acid {
            None => self.counted(aged, rate, cold, trace),
            Some(_) => self.in_wells(aged, rate, cold, trace),
        };
        Capacity { full, usable, rate, cold }
    }

    /// Full and usable charge of a bank from which a fast discharge takes charge for good.
    fn counted(
        &self,
        aged: AmpHours,
        rate: f64,
        cold: f64,
        trace: &mut impl Trace,
    ) -> (AmpHours, AmpHours) {
        let full = trace.step(
            Formula::FullCapacity,
            aged * (rate * cold),
            &[term(aged), term(rate), term(cold)],
        );
        let (kept, source) = self.kept_back();
        let usable =
            trace.step(Formula::UsableCapacity, full * kept.remainder(), &[term(full), source]);
        (full, usable)
    }

    /// Share of the charge that is not to be used: the reserve, or what is left at the low cut-off if that is more.
    fn kept_back(&self) -> (Percent, Term) {
        let left = Percent::of_ratio(self.charge_at_cut_off());
        if left > self.reserve {
            (left, term(left).named(Symbol::ChargeAtCutOff).from(Source::Typical))
        } else {
            (self.reserve, term(self.reserve))
        }
    }

    /// Full and usable charge of a bank whose charge waits in a bound well while a discharge is too fast for it.
    fn in_wells(
        &self,
        aged: AmpHours,
        rate: f64,
        cold: f64,
        trace: &mut impl Trace,
    ) -> (AmpHours, AmpHours) {
        let full = trace.step(Formula::FullCapacityOfWells, aged * cold, &[term(aged), term(cold)]);
        let (kept, source) = self.kept_back();
        let deepest = kept.remainder();
        let deepest = if deepest < rate { deepest } else { rate };
        let usable = trace.step(
            Formula::UsableCapacityOfWells,
            full * deepest,
            &[term(full), source, term(rate)],
        );
        (full, usable)
    }

    /// Share of the capacity that the temperature leaves, under the law of the chemistry.
    fn cold_factor(&self, temperature: Celsius, hours: Hours, trace: &mut impl Trace) -> f64 {
        let cold = cold_factor(self.typical.cold, temperature, hours);
        let inputs = [term(temperature).from(Source::Steps), term(hours).from(Source::Steps)];
        match self.typical.cold {
            ColdLaw::LeadAcid => trace.step(Formula::ColdFactor, cold, &inputs),
            ColdLaw::Lithium => trace.step(Formula::ColdFactorTypical, cold, &inputs[..1]),
        }
    }

    /// Share of the capacity that the current leaves; never more than the label, however slow the discharge.
    fn rate_factor(&self, aged: AmpHours, current: Amps, trace: &mut impl Trace) -> f64 {
        let rate = if current <= aged / self.hour_rate {
            1.0
        } else {
            capacity_at(aged, self.hour_rate, self.exponent, current) / aged
        };
        trace.step(
            Formula::RateFactor,
            rate,
            &[
                term(aged),
                term(current).from(Source::Steps),
                term(self.hour_rate).from(self.hour_rate_source),
                term(self.exponent).from(self.exponent_source),
            ],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slow_and_warm_never_promise_more_than_the_label() {
        let bank = Bank::parse(&crate::document::Bank::default()).unwrap();
        let capacity = bank.capacity(Amps(0.1), Celsius(45.0), &mut ());
        assert_eq!(capacity.full, AmpHours(100.0));
        assert_eq!(capacity.usable, AmpHours(80.0));
    }

    #[test]
    fn a_fast_discharge_of_lead_acid_only_limits_how_deep_it_goes() {
        let section = crate::document::Bank {
            chemistry: crate::document::Chemistry::FloodedLeadAcid,
            battery_v: 12.0,
            reserve_pct: 50.0,
            ..crate::document::Bank::default()
        };
        let bank = Bank::parse(&section).unwrap();
        let at = |current| bank.capacity(Amps(current), Celsius(25.0), &mut ());
        assert_eq!(at(20.0).full, AmpHours(100.0));
        assert_eq!(at(20.0).usable, AmpHours(50.0), "half is at hand at any usual current");
        let fast = at(200.0);
        assert!((fast.usable.0 - 100.0 * fast.rate).abs() < 1e-9 && fast.rate < 0.5);
    }

    #[test]
    fn cold_blends_from_the_standard_to_the_slow_law() {
        let at = |hours| cold_factor(ColdLaw::LeadAcid, Celsius(10.0), Hours(hours));
        assert!((at(5.0) - 1.0 / 1.19).abs() < 1e-9);
        assert!((at(100.0) - (1.0 - 15.0 * SLOW_COLD_PER_K)).abs() < 1e-12);
        assert!(at(5.0) < at(15.0) && at(15.0) < at(100.0));
    }

    #[test]
    fn working_shows_every_step_from_rated_to_usable() {
        let mut working = crate::working::Working::new();
        let bank = Bank::parse(&crate::document::Bank::default()).unwrap();
        bank.capacity(Amps(40.0), Celsius(0.0), &mut working);
        let formulas: Vec<_> = working.steps().iter().map(|step| step.formula).collect();
        assert_eq!(
            formulas,
            [
                Formula::AgedCapacity,
                Formula::RateFactor,
                Formula::ColdFactorTypical,
                Formula::FullCapacity,
                Formula::UsableCapacity
            ]
        );
        assert_eq!(working.result().unwrap().inputs[0].made_by, Some(3));
    }
}
