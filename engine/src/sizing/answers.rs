//! Direct answers that need no search: the charger that would help, the best tilt, and what voltages mean.
//!
//! **Method.** A charger's hours are spread over the week, as hours without a time are everywhere in this engine. Currents of a
//! system voltage are those of the plan's powers at the voltage where loads are cut off, which is the lowest, and at that of charging in
//! bulk.

use super::Sizing;
use super::promise::Promise;
use crate::outlook::largest_power as at_one_time;
use crate::quantity::{Amps, Degrees, Hours, Volts, Watts};
use crate::simulate::typical_sky;
use crate::sky::{best_tilt, equatorward};
use crate::source::Array;
use crate::system::System;

/// A charger takes so many hours for the rated charge where the plan has none: the fifth of it that is common for lead-acid.
const CHARGER_HOURS: Hours = Hours(5.0);
impl Sizing {
    /// Output of the charger that would help: that of the plan's shore power or generator, else a common one.
    #[must_use]
    pub fn charger(&self) -> Amps {
        let system = self.system();
        let shore = system.shore.as_ref().map(|own| own.limit);
        let generator = system.generator.as_ref().map(|own| own.limit);
        let common = (system.bank.rated / CHARGER_HOURS).at_most(system.bank.charge_limit);
        shore.or(generator).unwrap_or(common)
    }

    /// The tilt, facing the equator, that brings most in the tightest month that counts, and that month.
    #[must_use]
    pub fn best_tilt(&self, promise: &Promise) -> (Degrees, usize) {
        let (system, month) = (self.system(), self.tightest(promise));
        let days = [typical_sky(system, month, &mut ())];
        let azimuth = equatorward(system.site.latitude);
        (best_tilt(&days, &[1.0], azimuth, system.albedo).0, month)
    }
}

/// What a system voltage means for the same powers and the same energy.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Voltage {
    /// Nominal voltage of the bank.
    pub nominal: Volts,
    /// Largest current of what runs at one time, the inverter at its full output among it.
    pub loads: Amps,
    /// Current of all arrays in full sun, before heat and losses.
    pub arrays: Amps,
    /// Whether the plan has it.
    pub own: bool,
}

/// The most that is drawn at one time at the bank: by what runs together, or by the inverter at its full output.
#[must_use]
pub fn largest_power(system: &System) -> Watts {
    let full = system.inverter.as_ref().map_or(Watts::ZERO, |own| own.input(own.rated));
    at_one_time(system).at_least(full)
}

/// Nominal system voltages that are common \[V\].
const COMMON: [f64; 3] = [12.0, 24.0, 48.0];

/// The common system voltages and what each means for a system.
#[must_use]
pub fn voltages(system: &System) -> [Voltage; 3] {
    let bank = &system.bank;
    let (power, sun) =
        (largest_power(system), system.arrays.iter().map(Array::rated).sum::<Watts>());
    COMMON.map(|class| {
        // As many cells as the plan's own nominal voltage has, for this class.
        let classes = f64::max((bank.nominal.0 / COMMON[0]).round(), 1.0);
        let times = class / COMMON[0] / classes;
        Voltage {
            nominal: bank.nominal * times,
            loads: power / (bank.low_voltage() * times) + system.standing / times,
            arrays: sun / (bank.charging_voltage() * times),
            own: (times - 1.0).abs() < 1e-9,
        }
    })
}
