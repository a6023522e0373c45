//! One step of the bank: what comes in, what goes out, what is left over, what is missing.
//!
//! **Method.** The terminal voltage is the open-circuit voltage plus resistance times the current estimated at that voltage. At
//! this voltage powers become currents. Sources serve the loads first; the bank takes or gives the difference, as far as its
//! acceptance, its limits and its charge allow. What the bank refuses is curtailed: shore power first, then the engine,
//! the sun last. What it cannot give is unmet.
//!
//! **Accounts.** Charge \[Ah\] and energy \[Wh\] are both kept. The energy stored is the area under the open-circuit curve, a
//! function of the state of charge alone, so that the loss in the bank is what went in and is neither stored nor came out.

use crate::bank::Bank;
use crate::quantity::{AmpHours, Amps, Celsius, Hours, Volts, WattHours, Watts};
use crate::working::{Formula, Trace, term};

/// The voltage under load never falls under this share of the open-circuit voltage: below it no load works and the linear
/// model ends.
const LEAST_SHARE: f64 = 0.5;

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
    /// From the engine, as far as used.
    pub engine: AmpHours,
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
}

impl core::ops::AddAssign for Flows {
    fn add_assign(&mut self, other: Self) {
        self.load += other.load;
        self.unmet += other.unmet;
        self.protection += other.protection;
        self.solar += other.solar;
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

/// State of the bank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// State of charge (ratio).
    pub charge: f64,
    /// Charge between full and empty.
    pub full: AmpHours,
}

/// Currents offered by the sources at a voltage.
struct Offer {
    solar: Amps,
    engine: Amps,
    shore: Amps,
}

impl Offer {
    fn at(forcing: &Forcing, volts: Volts) -> Self {
        Self {
            solar: forcing.solar_power / volts + forcing.solar_current,
            engine: forcing.engine,
            shore: forcing.shore,
        }
    }

    fn sum(&self) -> Amps {
        self.solar + self.engine + self.shore
    }

    /// What is used of the offer if so much is used in all: the sun first, shore power last.
    fn used(&self, all: Amps) -> Self {
        let solar = self.solar.at_most(all);
        let engine = self.engine.at_most(all - solar);
        Self { solar, engine, shore: (all - solar - engine).at_least(Amps::ZERO) }
    }
}

/// Voltage between the posts while this acts on the bank.
#[inline]
fn terminal(bank: &Bank, state: &State, forcing: &Forcing, accept: Amps) -> Volts {
    let open = bank.open_circuit(state.charge);
    let offer = Offer::at(forcing, open).sum();
    let net = offer - forcing.demand / open - forcing.standing;
    let net = net.at_most(accept);
    // An empty bank carries nothing; its sources hold the voltage.
    let net = if state.charge <= 0.0 { net.at_least(Amps::ZERO) } else { net };
    (open + net * bank.resistance()).at_least(open * LEAST_SHARE)
}

/// Moves the bank through one step and gives its new state of charge with all that flowed.
#[inline]
pub fn step(
    bank: &Bank,
    state: State,
    forcing: &Forcing,
    time: Hours,
    trace: &mut impl Trace,
) -> (f64, Flows, Volts) {
    let State { charge, full } = state;
    let accept = bank.acceptance(charge, full, forcing.temperature);
    let volts = terminal(bank, &state, forcing, accept);
    let offer = Offer::at(forcing, volts);
    let wanted = trace.step(
        Formula::LoadsCurrent,
        forcing.demand / volts + forcing.standing,
        &[term(forcing.demand), term(volts), term(forcing.standing)],
    );
    let supply = trace.step(
        Formula::SourcesCurrent,
        offer.sum(),
        &[term(offer.solar), term(offer.engine), term(offer.shore)],
    );
    let held = full * charge;
    // An empty bank has shut its protection circuit off.
    let protection = if held.0 > 0.0 || supply.0 > 0.0 { bank.protection } else { Amps::ZERO };
    let net = trace.step(
        Formula::NetCurrent,
        supply - wanted - protection,
        &[term(supply), term(wanted), term(protection)],
    );
    let into = net.at_most(accept).at_least(Amps::ZERO);
    let efficiency = bank.efficiency.at(charge, into / (full / Hours(10.0))).max(1e-9);
    let taken = {
        let room = (full - held) / time / efficiency;
        into.at_most(room)
    };
    let given = {
        let limit = held / time;
        let limit = bank.discharge_limit.map_or(limit, |own| own.at_most(limit));
        (-net).at_least(Amps::ZERO).at_most(limit)
    };
    let short = (-net).at_least(Amps::ZERO) - given;
    let spare = net.at_least(Amps::ZERO) - taken;
    let used = offer.used(supply - spare);
    let served = (wanted - short).at_least(Amps::ZERO);
    // What the loads could not cover of the shortage, the protection circuit goes without.
    let protection = supply - spare + given - taken - served;
    let kept = taken * efficiency;
    // Only what is left can leak.
    let left = held / time + kept - given;
    let leak = (held * bank.self_discharge_per_hour / Hours(1.0)).at_most(left);
    let stored = (kept - given - leak) * time;
    let after = ((held + stored) / full).clamp(0.0, 1.0);
    let energy = |amps: Amps| volts * amps * time;
    let stored_energy = bank.stored(after, full) - bank.stored(charge, full);
    let flows = Flows {
        load: served * time,
        unmet: short * time,
        protection: protection * time,
        solar: used.solar * time,
        engine: used.engine * time,
        shore: used.shore * time,
        curtailed: spare * time,
        charge_loss: (taken - kept) * time,
        self_discharge: leak * time,
        stored,
        load_energy: energy(served),
        protection_energy: energy(protection),
        source_energy: energy(supply - spare),
        bank_loss: energy(taken - given) - stored_energy,
        stored_energy,
    };
    let after = trace.step(Formula::ChargeAfter, after, &[term(charge), term(stored), term(full)]);
    (after, flows, volts)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document;
    use crate::working::Working;

    fn bank() -> Bank {
        Bank::parse(&document::Bank::default()).unwrap()
    }

    fn state(charge: f64) -> State {
        State { charge, full: AmpHours(100.0) }
    }

    const WARM: Celsius = Celsius(20.0);
    const QUARTER: Hours = Hours(0.25);

    #[test]
    fn charge_and_energy_balance_whatever_happens() {
        for charge in [0.0, 0.001, 0.2, 0.9, 0.999, 1.0] {
            for demand in [0.0, 30.0, 3000.0, 1e6] {
                for sun in [0.0, 100.0, 5000.0] {
                    let forcing = Forcing {
                        demand: Watts(demand),
                        standing: Amps(0.1),
                        solar_power: Watts(sun),
                        engine: Amps(sun / 50.0),
                        shore: Amps(sun / 70.0),
                        temperature: WARM,
                        ..Forcing::default()
                    };
                    let (after, f, volts) =
                        step(&bank(), state(charge), &forcing, QUARTER, &mut ());
                    assert!((0.0..=1.0).contains(&after) && volts.0 > 0.0);
                    let came = f.solar + f.engine + f.shore;
                    let went = f.load + f.protection + f.charge_loss + f.self_discharge + f.stored;
                    let scale = came.0.abs() + f.load.0 + 1.0;
                    assert!((came - went).0.abs() < 1e-9 * scale, "{charge} {demand} {sun}: {f:?}");
                    let moved = AmpHours(100.0) * (after - charge);
                    assert!((f.stored - moved).0.abs() < 1e-9 * scale, "{moved:?} {f:?}");
                    let out = f.load_energy + f.protection_energy + f.bank_loss + f.stored_energy;
                    assert!((f.source_energy - out).0.abs() < 1e-9 * scale * 100.0);
                    assert!(f.unmet.0 >= 0.0 && f.curtailed.0 >= 0.0 && f.load.0 >= 0.0);
                }
            }
        }
    }

    #[test]
    fn an_empty_bank_leaves_loads_to_the_sources() {
        let forcing = Forcing {
            demand: Watts(100.0),
            solar_power: Watts(25.0),
            temperature: WARM,
            ..Forcing::default()
        };
        let (_, flows, _) = step(&bank(), state(0.0), &forcing, QUARTER, &mut ());
        assert!(flows.unmet.0 > 2.0 * flows.load.0 && flows.load.0 > 0.0, "{flows:?}");
    }

    #[test]
    fn a_full_bank_refuses_shore_power_before_the_sun() {
        let forcing = Forcing {
            demand: Watts(50.0),
            solar_power: Watts(50.0),
            shore: Amps(10.0),
            temperature: WARM,
            ..Forcing::default()
        };
        let (_, flows, _) = step(&bank(), state(1.0), &forcing, QUARTER, &mut ());
        assert!(flows.shore.0 < 0.1 && flows.solar.0 > 0.8, "{flows:?}");
    }

    #[test]
    fn tracing_changes_no_bit() {
        let forcing = Forcing { demand: Watts(77.0), temperature: WARM, ..Forcing::default() };
        let mut working = Working::new();
        let traced = step(&bank(), state(0.6), &forcing, QUARTER, &mut working);
        assert_eq!(traced, step(&bank(), state(0.6), &forcing, QUARTER, &mut ()));
        assert_eq!(working.result().unwrap().formula, Formula::ChargeAfter);
    }
}
