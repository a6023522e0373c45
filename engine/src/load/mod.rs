//! Loads: what runs, how much it takes and when.
//!
//! **Question answered:** what is drawn from the bank in each quarter-hour of a day, and by whom?
//!
//! Method: a load's running power times the share of the step in which it is on (its schedule) times its duty. Schedules are in
//! clock time. Refrigerators follow the air ([`Cooling`]). Loads on alternating current share one [`Inverter`].
//!
//! Left out: that devices with a motor draw more at a low voltage, and standby draws that nobody entered.

pub mod catalogue;
mod cooling;
mod demand;
mod inverter;
mod schedule;

pub use cooling::{Cooling, evaporator};
pub use demand::{DayDemand, Demand, LoadDay, day_demand};
pub use inverter::{Inverter, LossCurve};
pub use schedule::{DayKind, hours_of, presence};

use crate::document::{Load as Section, Rating, Schedule, Supply};
use crate::quantity::{Amps, Celsius, Hours, Percent, VoltAmps, Volts, WattHours, Watts};
use crate::sky::STEPS_PER_DAY;
use crate::working::{Formula, Source, Tag, Trace, term};

/// Hours of a mean year, for energy labels.
const YEAR_HOURS: f64 = 8760.0;

/// A load that is counted.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    /// Its place in the plan.
    pub place: u16,
    /// How many of it.
    pub quantity: f64,
    /// Power of one while it runs.
    pub power: Watts,
    /// What it hangs on.
    pub supply: Supply,
    /// Share of the time that it is on in which it runs.
    pub duty: Percent,
    /// When it is on.
    pub schedule: Schedule,
    /// Power at the start over running power.
    pub surge: f64,
    /// How it follows the heat, if it cools.
    pub cooling: Option<Cooling>,
    /// Whether a life depends on it.
    pub vital: bool,
    /// Its power over its volts times amps on alternating current (ratio).
    pub power_factor: f64,
}

impl Load {
    /// Reads its section.
    pub fn parse(section: &Section, place: u16, trace: &mut impl Trace) -> Self {
        let cooling = section.cooling.map(|own| Cooling {
            inside: Celsius(own.inside_c),
            reference: Celsius(own.reference_c),
        });
        Self {
            place,
            quantity: section.quantity,
            power: running_power(section, Tag::Load(place), trace),
            supply: section.supply,
            duty: Percent(section.duty_pct),
            schedule: section.schedule.clone(),
            surge: section.surge,
            cooling,
            vital: section.vital,
            power_factor: section.power_factor,
        }
    }

    /// Duty in each step of a day whose inside air has these temperatures (ratio).
    fn duties(&self, air: &[Celsius; STEPS_PER_DAY]) -> [f64; STEPS_PER_DAY] {
        match &self.cooling {
            Some(cooling) => cooling.duties(self.duty, air),
            None => [self.duty.ratio(); STEPS_PER_DAY],
        }
    }

    /// All of it running at once.
    #[must_use]
    pub fn running(&self) -> Watts {
        self.power * self.quantity
    }

    /// Volts times amps of some of its power on alternating current.
    #[must_use]
    pub fn apparent(&self, power: Watts) -> VoltAmps {
        VoltAmps(power.0 / self.power_factor)
    }

    /// What one of it adds at its start to its running power.
    #[must_use]
    pub fn start_extra(&self) -> Watts {
        self.power * (self.surge - 1.0)
    }
}

/// Power of one while it runs, by what the person knows of it.
fn running_power(section: &Section, tag: Tag, trace: &mut impl Trace) -> Watts {
    match section.rating {
        Rating::PowerW(power) => Watts(power),
        Rating::Plate { current_a, at_v } => {
            let (volts, amps) = (Volts(at_v), Amps(current_a));
            trace.step_of(tag, Formula::PlatePower, volts * amps, &[term(volts), term(amps)])
        }
        Rating::LabelKwhPerYear(energy) => {
            // The label's mean power already contains the pauses; dividing by the duty gives the power while it runs.
            let (energy, duty) = (WattHours(energy * 1000.0), Percent(section.duty_pct.max(0.1)));
            let power = Watts(energy.0 / YEAR_HOURS / duty.ratio());
            let year = term(Hours(YEAR_HOURS)).from(Source::Definition);
            let inputs = [term(energy), year, term(duty)];
            trace.step_of(tag, Formula::LabelPower, power, &inputs)
        }
        Rating::Output { power_w, efficiency_pct } => {
            let (output, efficiency) = (Watts(power_w), Percent(efficiency_pct));
            let power = output / efficiency.ratio();
            trace.step_of(tag, Formula::InputPower, power, &[term(output), term(efficiency)])
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::When;
    use crate::working::Working;

    fn parse(section: Section) -> Load {
        Load::parse(&section, 0, &mut ())
    }

    #[test]
    fn each_way_of_stating_a_power_gives_watts() {
        let of = |rating| parse(Section { rating, ..Section::default() }).power;
        assert_eq!(of(Rating::PowerW(60.0)), Watts(60.0));
        assert_eq!(of(Rating::Plate { current_a: 0.5, at_v: 230.0 }), Watts(115.0));
        assert_eq!(of(Rating::Output { power_w: 800.0, efficiency_pct: 64.0 }), Watts(1250.0));
        assert!((of(Rating::LabelKwhPerYear(87.6)).0 - 10.0).abs() < 1e-12);
    }

    #[test]
    fn a_label_gives_its_mean_whatever_the_duty() {
        let section = Section {
            rating: Rating::LabelKwhPerYear(87.6),
            duty_pct: 25.0,
            schedule: Schedule::daily(When::Always),
            ..Section::default()
        };
        let load = parse(section);
        assert!((load.power.0 - 40.0).abs() < 1e-9);
        let day = day_demand(&[load], None, DayKind::inside(0, 0), &[Celsius(20.0); STEPS_PER_DAY]);
        assert!((day.steps[0].dc.0 - 10.0).abs() < 1e-9);
    }

    #[test]
    fn the_working_of_a_plate_shows_volts_and_amps() {
        let mut working = Working::new();
        let rating = Rating::Plate { current_a: 2.0, at_v: 12.0 };
        Load::parse(&Section { rating, ..Section::default() }, 3, &mut working);
        let step = working.result().unwrap();
        assert_eq!((step.value, step.tag), (24.0, Tag::Load(3)));
    }
}
