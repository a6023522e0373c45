//! How a refrigerator follows the air around it.
//!
//! **Model.** Heat leaks in with the difference between air and inside; the compressor lifts it from the evaporator to the
//! condenser, which stands 12 K over the air, at a fixed share of the ideal efficiency. Power therefore goes as
//! `(Ta − Ti) · (Tc − Te) / Te`. A person states one rated point; this gives the factor to any other air temperature.
//! It ends where the machine runs without pause, and at nothing where the air is colder than the inside.
//!
//! **Not modelled.** Doors, warm food and sun on the box: add ten to thirty per cent to the stated duty for a busy door.
//! Refrigerators in homes and in the laboratory vary more between each other than this model errs
//! (Harrington, Aye & Fuller 2018).

use crate::quantity::{Celsius, Percent};
use crate::sky::STEPS_PER_DAY;
use crate::working::{Formula, Source, Trace, term};

/// Kelvin of the ice point.
const KELVIN: f64 = 273.15;
/// The condenser stands this much over the air \[K\].
const CONDENSER_OVER_AIR: f64 = 12.0;
/// Inside temperatures and the evaporator temperatures that belong to them \[°C\]: a cool box, a mixed one, a freezer.
const EVAPORATOR: [(f64, f64); 3] = [(-18.0, -28.0), (-5.0, -22.0), (4.0, -10.0)];

/// A refrigerator's rated point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cooling {
    /// Temperature inside.
    pub inside: Celsius,
    /// Air temperature for which the duty or label was stated.
    pub reference: Celsius,
}

/// Evaporator temperature that goes with a temperature inside, between the three known pairs and beyond them at their
/// last distance.
#[must_use]
pub fn evaporator(inside: Celsius) -> Celsius {
    let inside = inside.0;
    for pair in EVAPORATOR.windows(2) {
        let ((low, low_te), (high, high_te)) = (pair[0], pair[1]);
        if inside >= low && inside <= high {
            return Celsius(low_te + (high_te - low_te) * (inside - low) / (high - low));
        }
    }
    let (edge, te) = if inside < EVAPORATOR[0].0 { EVAPORATOR[0] } else { EVAPORATOR[2] };
    Celsius(inside + te - edge)
}

/// Relative power at an air temperature, in units that cancel between two of them.
fn effort(inside: f64, evaporator: f64, air: f64) -> f64 {
    let lift = air + CONDENSER_OVER_AIR - evaporator;
    let leak = air - inside;
    if leak <= 0.0 { 0.0 } else { leak * lift / (evaporator + KELVIN) }
}

impl Cooling {
    /// Power at this air over power at the reference air.
    #[must_use]
    pub fn factor(&self, air: Celsius) -> f64 {
        let te = evaporator(self.inside).0;
        let rated = effort(self.inside.0, te, self.reference.0);
        if rated <= 0.0 { 0.0 } else { effort(self.inside.0, te, air.0) / rated }
    }

    /// The duty in each step of a day (ratio): what [`Self::duty`] gives, with what stays the same computed once.
    pub(super) fn duties(
        &self,
        rated: Percent,
        air: &[Celsius; STEPS_PER_DAY],
    ) -> [f64; STEPS_PER_DAY] {
        let te = evaporator(self.inside).0;
        let at_reference = effort(self.inside.0, te, self.reference.0);
        air.map(|air| {
            let effort = effort(self.inside.0, te, air.0);
            let factor = if at_reference <= 0.0 { 0.0 } else { effort / at_reference };
            Percent(rated.0 * factor).at_most(Percent(100.0)).ratio()
        })
    }

    /// Share of the time in which the compressor runs, at most all of it.
    pub fn duty(&self, rated: Percent, air: Celsius, trace: &mut impl Trace) -> Percent {
        let duty = Percent(rated.0 * self.factor(air)).at_most(Percent(100.0));
        trace.step(
            Formula::CoolingDuty,
            duty,
            &[
                term(rated),
                term(air),
                term(self.inside),
                term(Celsius(CONDENSER_OVER_AIR)).from(Source::Typical),
                term(evaporator(self.inside)).from(Source::Typical),
                term(self.reference),
            ],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BOX: Cooling = Cooling { inside: Celsius(4.0), reference: Celsius(25.0) };

    #[test]
    fn it_rests_in_the_cold_and_never_runs_more_than_always() {
        assert_eq!(BOX.duty(Percent(40.0), Celsius(2.0), &mut ()), Percent(0.0));
        assert_eq!(BOX.duty(Percent(60.0), Celsius(50.0), &mut ()), Percent(100.0));
        assert_eq!(BOX.duty(Percent(35.0), Celsius(25.0), &mut ()), Percent(35.0));
    }

    #[test]
    fn a_whole_day_has_the_duties_of_its_steps() {
        let air = core::array::from_fn(|step| Celsius(step as f64 - 30.0));
        let duties = BOX.duties(Percent(40.0), &air);
        for (air, duty) in air.iter().zip(duties) {
            assert_eq!(duty, BOX.duty(Percent(40.0), *air, &mut ()).ratio());
        }
    }

    #[test]
    fn warmer_air_never_means_less_power() {
        let mut before = -1.0;
        for air in -20..50 {
            let factor = BOX.factor(Celsius(air.into()));
            assert!(factor >= before, "{air}");
            before = factor;
        }
    }
}
