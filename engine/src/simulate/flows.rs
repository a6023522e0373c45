//! What acts on the bank in a step, and what flows.
//!
//! **Accounts.** Charge: what came is what the loads and the protection took, what was lost, and what is stored; likewise
//! energy. The shares of the sources are those of what was used: what nobody took is curtailed, in the order that `step`
//! says.

use crate::quantity::{AmpHours, Amps, Celsius, Hours, Volts, WattHours, Watts};

/// What acts on the bank in a step, whatever its state.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Forcing {
    /// Power of all loads at the bank.
    pub demand: Watts,
    /// Standing current.
    pub standing: Amps,
    /// From arrays with a maximum-power-point controller.
    pub solar_power: Watts,
    /// From arrays with a series regulator.
    pub solar_current: Amps,
    /// From shore power or a grid.
    pub shore: Amps,
    /// From the engine.
    pub engine: Amps,
    /// From a turbine whose output is stated as power.
    pub turbine_power: Watts,
    /// From a turbine whose output is stated as charge.
    pub turbine_current: Amps,
    /// Share of the step in which the generator may run (ratio).
    pub generator_allowed: f64,
    /// Temperature of the bank.
    pub temperature: Celsius,
}

/// Amounts that flowed in a step or a run.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Flows {
    /// Given to the loads.
    pub load: AmpHours,
    /// Wanted by the loads and not given.
    pub unmet: AmpHours,
    /// Taken by protection circuits.
    pub protection: AmpHours,
    /// From the sun, as far as used.
    pub solar: AmpHours,
    /// From the turbine, as far as used.
    pub turbine: AmpHours,
    /// From the engine, as far as used.
    pub engine: AmpHours,
    /// From the generator, as far as used.
    pub generator: AmpHours,
    /// From shore power, as far as used.
    pub shore: AmpHours,
    /// From any source, offered and not taken.
    pub curtailed: AmpHours,
    /// Put into the bank and lost by its charge efficiency.
    pub charge_loss: AmpHours,
    /// Lost by standing.
    pub self_discharge: AmpHours,
    /// Change of the charge stored.
    pub stored: AmpHours,
    /// Given to the loads.
    pub load_energy: WattHours,
    /// Taken by protection circuits.
    pub protection_energy: WattHours,
    /// From all sources, as far as used.
    pub source_energy: WattHours,
    /// Lost in the bank: resistance, charge efficiency, standing.
    pub bank_loss: WattHours,
    /// Change of the energy stored.
    pub stored_energy: WattHours,
    /// Time for which the generator ran.
    pub generator_time: Hours,
}

impl Flows {
    /// From all sources, as far as used.
    #[must_use]
    pub fn came(&self) -> AmpHours {
        self.solar + self.turbine + self.engine + self.generator + self.shore
    }
}

impl core::ops::AddAssign for Flows {
    fn add_assign(&mut self, other: Self) {
        self.load += other.load;
        self.unmet += other.unmet;
        self.protection += other.protection;
        self.solar += other.solar;
        self.turbine += other.turbine;
        self.generator += other.generator;
        self.generator_time += other.generator_time;
        self.engine += other.engine;
        self.shore += other.shore;
        self.curtailed += other.curtailed;
        self.charge_loss += other.charge_loss;
        self.self_discharge += other.self_discharge;
        self.stored += other.stored;
        self.load_energy += other.load_energy;
        self.protection_energy += other.protection_energy;
        self.source_energy += other.source_energy;
        self.bank_loss += other.bank_loss;
        self.stored_energy += other.stored_energy;
    }
}

/// Currents offered by the sources at a voltage.
pub(super) struct Offer {
    pub(super) solar: Amps,
    pub(super) turbine: Amps,
    pub(super) engine: Amps,
    pub(super) generator: Amps,
    pub(super) shore: Amps,
}

impl Offer {
    #[inline]
    pub(super) fn at(forcing: &Forcing, generator: Amps, per_volt: f64) -> Self {
        Self {
            solar: Amps(forcing.solar_power.0 * per_volt) + forcing.solar_current,
            turbine: Amps(forcing.turbine_power.0 * per_volt) + forcing.turbine_current,
            engine: forcing.engine,
            generator,
            shore: forcing.shore,
        }
    }

    #[inline]
    pub(super) fn sum(&self) -> Amps {
        self.solar + self.turbine + self.engine + self.generator + self.shore
    }

    /// What is used of the offer if so much is used in all: the sun first, shore power last.
    #[inline]
    pub(super) fn used(&self, all: Amps) -> Self {
        let solar = self.solar.at_most(all);
        let rest = all - solar;
        let turbine = self.turbine.at_most(rest);
        let rest = rest - turbine;
        let engine = self.engine.at_most(rest);
        let rest = rest - engine;
        let generator = self.generator.at_most(rest);
        let shore = (rest - generator).at_least(Amps::ZERO);
        Self { solar, turbine, engine, generator, shore }
    }
}

/// Currents of a step.
pub(super) struct Flowing {
    pub(super) volts: Volts,
    pub(super) supply: Amps,
    pub(super) wanted: Amps,
    pub(super) spare: Amps,
    pub(super) given: Amps,
    pub(super) taken: Amps,
    pub(super) kept: Amps,
    pub(super) short: Amps,
    /// Time for which the generator runs.
    pub(super) running: Hours,
}

impl Flowing {
    /// The amounts over a length of time, with what leaked and what was stored.
    #[inline]
    pub(super) fn over(
        &self,
        time: Hours,
        offer: &Offer,
        leak: Amps,
        stored: AmpHours,
        stored_energy: WattHours,
    ) -> Flows {
        let came = self.supply - self.spare;
        let used = offer.used(came);
        let served = (self.wanted - self.short).at_least(Amps::ZERO);
        // What the loads could not cover of the shortage, the protection circuit goes without.
        let protection = came + self.given - self.taken - served;
        let energy = |amps: Amps| self.volts * amps * time;
        Flows {
            load: served * time,
            unmet: self.short * time,
            protection: protection * time,
            solar: used.solar * time,
            turbine: used.turbine * time,
            engine: used.engine * time,
            generator: used.generator * time,
            shore: used.shore * time,
            curtailed: self.spare * time,
            charge_loss: (self.taken - self.kept) * time,
            self_discharge: leak * time,
            stored,
            load_energy: energy(served),
            protection_energy: energy(protection),
            source_energy: energy(came),
            bank_loss: energy(self.taken - self.given) - stored_energy,
            stored_energy,
            generator_time: self.running,
        }
    }
}
