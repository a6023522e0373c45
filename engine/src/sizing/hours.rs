//! What acts in every hour of the weather years: worked out once, for all sizes.

use sunlarder_lanes::{HOURS, Hour};

use crate::bank::LeadAcid;
use crate::quantity::Celsius;
use crate::simulate::{Acting, Forcing, HourlyDay};

/// Temperature of the figures of a bank.
const STATED_AT: Celsius = Celsius(25.0);

/// The hours of a day, from what acts in them.
#[must_use]
pub(super) fn hours_of(acting: &Acting, day: &HourlyDay) -> [Hour; HOURS] {
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
