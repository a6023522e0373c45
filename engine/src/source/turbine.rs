//! A small wind or water turbine, as its owner knows it: twelve means of what reaches the bank.
//!
//! **Method.** The mean of the month, in watts or in amp-hours a day, spread over the hours of the day evenly or by a person's own
//! ratios. Gusts, calms and dry spells within a month are left out: such a source is as steady here as no wind is, so chances
//! of running out are too good where most comes from the wind.

use crate::document::{Turbine as Section, TurbineOutput};
use crate::quantity::{AmpHours, Amps, Hours, Watts};

/// Hours of a day.
const HOURS: usize = 24;

/// What a turbine gives at a time: a power whatever the voltage, or a current.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Flow {
    /// Stated as power.
    pub power: Watts,
    /// Stated as charge.
    pub current: Amps,
}

/// A turbine.
#[derive(Clone, Debug, PartialEq)]
pub struct Turbine {
    /// Means of the months, January first.
    months: [Flow; 12],
    /// What each hour has over the mean of the day (ratio).
    hours: [f64; HOURS],
}

impl Turbine {
    /// Reads its section; none if it is switched off.
    #[must_use]
    pub fn parse(section: &Section) -> Option<Self> {
        let months = match section.output {
            TurbineOutput::MeanW(months) => {
                months.map(|mean| Flow { power: Watts(mean), current: Amps::ZERO })
            }
            TurbineOutput::AhPerDay(months) => months.map(|charge| Flow {
                power: Watts::ZERO,
                current: AmpHours(charge) / Hours(HOURS as f64),
            }),
        };
        let whole: f64 = section.hours.iter().flatten().sum();
        // Hours that are all nothing tell nothing.
        let hours = section
            .hours
            .filter(|_| whole > 0.0)
            .map_or([1.0; HOURS], |hours| hours.map(|share| share * HOURS as f64 / whole));
        section.on.then_some(Self { months, hours })
    }

    /// What it gives in an hour of the clock, 0 to 23, in a month, January being 0.
    #[must_use]
    pub fn at(&self, month: usize, hour: usize) -> Flow {
        let mean = self.months.get(month).copied().unwrap_or_default();
        let share = self.hours.get(hour).copied().unwrap_or(1.0);
        Flow { power: mean.power * share, current: mean.current * share }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(turbine: &Turbine, month: usize) -> (f64, f64) {
        (0..HOURS).fold((0.0, 0.0), |(energy, charge), hour| {
            let flow = turbine.at(month, hour);
            (energy + flow.power.0, charge + flow.current.0)
        })
    }

    #[test]
    fn a_day_has_what_its_month_states_however_it_is_spread() {
        let mut months = [0.0; 12];
        months[1] = 48.0;
        let mut peak = [0.0; HOURS];
        (peak[6], peak[18]) = (1.0, 3.0);
        for hours in [None, Some([0.0; HOURS]), Some([7.0; HOURS]), Some(peak)] {
            let output = TurbineOutput::AhPerDay(months);
            let turbine = Turbine::parse(&Section { on: true, output, hours }).unwrap();
            assert!((day(&turbine, 1).1 - 48.0).abs() < 1e-12, "{hours:?}");
            assert_eq!(day(&turbine, 2), (0.0, 0.0));
            let output = TurbineOutput::MeanW(months);
            let turbine = Turbine::parse(&Section { on: true, output, hours }).unwrap();
            assert!((day(&turbine, 1).0 - 24.0 * 48.0).abs() < 1e-9, "{hours:?}");
        }
        let output = TurbineOutput::AhPerDay(months);
        let turbine = Turbine::parse(&Section { on: true, output, hours: Some(peak) }).unwrap();
        assert_eq!((turbine.at(1, 5).current, turbine.at(1, 18).current), (Amps::ZERO, Amps(36.0)));
    }

    #[test]
    fn one_that_is_off_is_none() {
        assert_eq!(Turbine::parse(&Section { on: false, ..Section::default() }), None);
    }
}
