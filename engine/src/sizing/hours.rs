//! What acts in every hour of the weather years: worked out once, for all sizes.

use crate::bank::LeadAcid;
use crate::quantity::Celsius;
use crate::simulate::{Acting, Forcing, HourlyDay};
use crate::sky::{DAYS_PER_YEAR, Year, month_of_day};

/// Hours of a day.
pub const HOURS: usize = 24;

/// Temperature of the figures of a bank.
const STATED_AT: Celsius = Celsius(25.0);

/// What acts in an hour on a bank of any size, beside an array of any size.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hour {
    /// Power of everything but the array: the turbine's less the loads' \[W\].
    pub power: f32,
    /// Power of the plan's array \[W\].
    pub sun_power: f32,
    /// Current of everything but the array \[A\].
    pub current: f32,
    /// Current of the plan's array \[A\].
    pub sun_current: f32,
    /// Share of the hour in which the generator may run.
    pub allowed: f32,
    /// 1 where the bank is warm enough to be charged, else 0.
    pub warm: f32,
    /// Kelvin over 25 °C, by which the absorption voltage goes.
    pub absorption: f32,
    /// Conductance of plates to charge over that at 25 °C.
    pub conducts: f32,
    /// Resistance to discharge over that at 25 °C.
    pub resists: f32,
    /// Whether anything at all comes in.
    pub brings: bool,
}

/// A day of hours, and what month it is in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoursOfDay {
    /// January being 0.
    pub month: u8,
    /// Its hours.
    pub hours: [Hour; HOURS],
}

/// The hours of a day, from what acts in them.
#[must_use]
pub fn hours_of(acting: &Acting, day: &HourlyDay) -> [Hour; HOURS] {
    day.map(|forcing| hour(acting, &forcing))
}

fn hour(acting: &Acting, forcing: &Forcing) -> Hour {
    let bank = &acting.system.bank;
    let temperature = forcing.temperature;
    let cold = bank.typical.charge_above.is_some_and(|least| temperature < least);
    let lead_acid = bank.lead_acid.as_ref();
    let half = |at| lead_acid.map_or(1.0, |own| own.conductance(0.5, at));
    let sources = forcing.engine + forcing.shore + forcing.turbine_current;
    let sun = forcing.solar_power.0 + forcing.solar_current.0;
    Hour {
        power: (forcing.turbine_power - forcing.demand).0 as f32,
        sun_power: forcing.solar_power.0 as f32,
        current: (sources - forcing.standing).0 as f32,
        sun_current: forcing.solar_current.0 as f32,
        allowed: forcing.generator_allowed as f32,
        warm: if cold { 0.0 } else { 1.0 },
        absorption: (temperature - STATED_AT).0 as f32,
        conducts: (half(temperature) / half(STATED_AT)) as f32,
        resists: lead_acid.map_or(1.0, |_| LeadAcid::resistance_factor(1.0, temperature)) as f32,
        brings: sun + sources.0 + forcing.turbine_power.0 > 0.0,
    }
}

/// The days of a weather year in the order in which they are gone through: from the first of a month on, round to its eve.
#[must_use]
pub fn days_of(acting: &Acting, year: &Year, first: usize) -> Vec<HoursOfDay> {
    (0..DAYS_PER_YEAR)
        .map(|place| {
            let day = (first + place) % DAYS_PER_YEAR;
            let acting_day = acting.day(year, day, place);
            HoursOfDay { month: month_of_day(day) as u8, hours: hours_of(acting, &acting_day) }
        })
        .collect()
}
