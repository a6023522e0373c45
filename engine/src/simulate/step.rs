//! One step of the bank: what comes in, what goes out, what is left over, what is missing.
//!
//! **Method.** The terminal voltage is the open-circuit voltage plus resistance times the current estimated at that voltage. At
//! this voltage powers become currents. Sources serve the loads first; the bank takes or gives the difference. It takes as
//! much as its charge limit, its absorption voltage and its room allow, and gives as much as its current limit, its low cut-off
//! voltage and its charge at hand allow: loads are shed as far as that takes, with no wait for a reconnect voltage. What the bank
//! refuses is curtailed: shore power first, then the generator, the engine, the turbine, the sun last. What it cannot give is
//! unmet. A generator runs or not for a whole step, by the state of charge before it.
//!
//! **Accounts.** Charge \[Ah\] and energy \[Wh\] are both kept. The energy stored is the area under the open-circuit curve, a
//! function of the state of charge alone, so that the loss in the bank is what went in and is neither stored nor came out.

use crate::bank::{Bank, Held, LeadAcid, Pace};
use crate::quantity::{AmpHours, Amps, Celsius, Hours, Ohms, Volts, WattHours, Watts};
use crate::source::Generator;
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
    /// From the generator, as far as used; part of that from all sources.
    pub generator_energy: WattHours,
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
        self.generator_energy += other.generator_energy;
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

/// State of the bank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// State of charge (ratio).
    pub charge: f64,
    /// How full the available well of lead-acid is (ratio); the state of charge of every other chemistry.
    pub available: f64,
    /// How long the generator has been running without a stop; nothing while it stands still.
    pub ran: Hours,
}

/// What a step leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct After {
    /// State of the bank.
    pub state: State,
    /// What flowed.
    pub flows: Flows,
    /// Voltage between the posts.
    pub volts: Volts,
    /// Where the bank could not carry its loads, other than by the limit of its current: the share of the step that it would have.
    pub carried: Option<f64>,
    /// Whether charging has ended: the bank itself takes less than its tail current, or it is full.
    pub filled: bool,
}

/// Currents offered by the sources at a voltage.
struct Offer {
    solar: Amps,
    turbine: Amps,
    engine: Amps,
    generator: Amps,
    shore: Amps,
}

impl Offer {
    #[inline]
    fn at(forcing: &Forcing, generator: Amps, per_volt: f64) -> Self {
        Self {
            solar: Amps(forcing.solar_power.0 * per_volt) + forcing.solar_current,
            turbine: Amps(forcing.turbine_power.0 * per_volt) + forcing.turbine_current,
            engine: forcing.engine,
            generator,
            shore: forcing.shore,
        }
    }

    #[inline]
    fn sum(&self) -> Amps {
        self.solar + self.turbine + self.engine + self.generator + self.shore
    }

    /// What is used of the offer if so much is used in all: the sun first, shore power last.
    #[inline]
    fn used(&self, all: Amps) -> Self {
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

/// From here on the last of the way to the end of charge counts as done (ratio): it takes for ever.
const AS_GOOD_AS_FULL: f64 = 0.005;

/// Hours of the current by which charging is told fast or slow.
const TEN: Hours = Hours(10.0);

/// The wells of a bank of one capacity, in steps of one length.
#[derive(Clone, Copy, Debug)]
struct Plates<'a> {
    lead_acid: &'a LeadAcid,
    pace: Pace,
    /// All charge that the wells hold.
    whole: AmpHours,
    /// What of it is never counted: the rated capacity is less than the whole.
    spare: AmpHours,
    /// What the available well holds when full.
    room: AmpHours,
    /// Conductance to charge over that of one cell by Ah of the ten-hour capacity.
    size: f64,
    /// One over the room, and over the charge between full and empty \[1/Ah\].
    per_room: f64,
    per_full: f64,
}

/// A bank at hand for steps of one length: all that does not change from one to the next.
#[derive(Clone, Copy, Debug)]
pub struct Prepared<'a> {
    bank: &'a Bank,
    full: AmpHours,
    time: Hours,
    /// One over the length of a step \[1/h\].
    per_time: f64,
    /// Resistance when full and warm.
    resistance: Ohms,
    /// One over the ten-hour current \[1/A\].
    per_ten_hour: f64,
    /// State of charge at which charging ends by itself.
    top: f64,
    /// State of charge at which the voltage at rest is the low cut-off.
    bottom: f64,
    tail: Amps,
    low: Volts,
    plates: Option<Plates<'a>>,
    generator: Option<&'a Generator>,
}

/// What the bank can do in a step.
#[derive(Clone, Copy, Debug)]
struct Able {
    /// Open-circuit voltage.
    open: Volts,
    /// Resistance to charge.
    rise: Ohms,
    /// Resistance to discharge.
    resistance: Ohms,
    /// The charge current at the absorption voltage.
    fades: Amps,
    /// The largest charge current, whatever is kept of it.
    accept: Amps,
    /// The largest current that is kept.
    keep: Amps,
    /// The largest discharge current, but for its limit.
    give: Amps,
}

impl<'a> Prepared<'a> {
    /// A bank that holds so much between full and empty, for steps of this length.
    #[must_use]
    pub fn new(bank: &'a Bank, full: AmpHours, time: Hours) -> Self {
        let plates = bank.lead_acid.as_ref().map(|lead_acid| {
            let whole = full * lead_acid.whole;
            let ten_hours = lead_acid.ten_hour_current(full) * TEN;
            Plates {
                lead_acid,
                pace: lead_acid.fit.wells.pace(time),
                whole,
                spare: whole - full,
                room: whole * lead_acid.fit.wells.share,
                per_room: 1.0 / (whole * lead_acid.fit.wells.share).0,
                per_full: 1.0 / full.0,
                size: ten_hours.0 / bank.cells,
            }
        });
        Self {
            bank,
            full,
            time,
            resistance: bank.resistance(),
            per_time: 1.0 / time.0,
            per_ten_hour: 1.0
                / plates.map_or(full / TEN, |own| own.lead_acid.ten_hour_current(full)).0,
            top: plates
                .map_or_else(|| bank.charge_at(bank.absorption_voltage(Celsius::ZERO)), |_| 1.0),
            bottom: bank.charge_at(bank.low_voltage()),
            tail: bank.tail_current(),
            low: bank.low_voltage(),
            plates,
            generator: None,
        }
    }

    /// The same bank beside a generator.
    #[must_use]
    pub fn with_generator(self, generator: Option<&'a Generator>) -> Self {
        Self { generator, ..self }
    }

    /// The bank after a long rest at a state of charge (ratio).
    #[must_use]
    pub fn rested(&self, charge: f64) -> State {
        let level = |own: Plates<'_>| (self.full * charge + own.spare) / own.whole;
        let available = self.plates.map_or(charge, level);
        State { charge, available, ran: Hours::ZERO }
    }

    /// The current that moves so much in one step.
    #[inline]
    fn current(&self, charge: AmpHours) -> Amps {
        Amps(charge.0 * self.per_time)
    }

    /// What the wells hold.
    #[inline]
    fn wells(&self, plates: &Plates<'_>, state: State) -> Held {
        let available = plates.room * state.available;
        Held { available, bound: self.full * state.charge + plates.spare - available }
    }

    /// The state of charge that the plates see: that of a rest with the available well as full as it is now.
    #[inline]
    fn seen(&self, state: State) -> f64 {
        self.plates.as_ref().map_or(state.charge, |own| {
            let seen = (own.whole * state.available - own.spare).0 * own.per_full;
            if seen > 0.0 { seen } else { 0.0 }
        })
    }

    /// What the bank can do in this step.
    #[inline]
    fn able(&self, state: State, temperature: Celsius) -> Able {
        let open = self.bank.open_circuit(self.seen(state));
        let held = self.full * state.charge;
        let leak = held * self.bank.self_discharge_per_hour / Hours(1.0);
        let mut able = Able {
            open,
            rise: self.resistance,
            resistance: self.resistance,
            fades: Amps::ZERO,
            accept: Amps::ZERO,
            keep: self.current(self.full * self.top - held),
            give: self.current(held - self.full * self.bottom),
        };
        let room = self.bank.absorption_voltage(temperature) - open;
        if let Some(own) = &self.plates {
            let wells = self.wells(own, state);
            let conductance = own.lead_acid.conductance(state.charge, temperature) * own.size;
            able.keep = able.keep.at_most(own.pace.most_in(wells, own.whole));
            able.fades = Amps(room.0 * conductance);
            // Plates without room resist until the charger holds its voltage, as they do when they take no more.
            let limit = able.fades.at_most(able.keep);
            able.rise = if limit.0 > 0.0 { room / limit } else { Ohms::ZERO };
            able.give = able.give.at_most(own.pace.most_out(wells) - leak);
            able.resistance =
                self.resistance * LeadAcid::resistance_factor(state.charge, temperature);
        } else {
            able.fades = room / self.resistance;
        }
        able.give = able.give.at_most((open - self.low) / able.resistance).at_least(Amps::ZERO);
        able.keep = able.keep.at_least(Amps::ZERO);
        let cold = self.bank.typical.charge_above.is_some_and(|least| temperature < least);
        able.accept = if cold {
            Amps::ZERO
        } else {
            able.fades.at_most(self.bank.charge_limit).at_least(Amps::ZERO)
        };
        able
    }

    /// The most that it gives: what it can, within the limit of its current.
    #[inline]
    fn limit(&self, able: &Able) -> Amps {
        self.bank.discharge_limit.map_or(able.give, |own| able.give.at_most(own))
    }

    /// Voltage between the posts while this acts on the bank.
    #[inline]
    fn terminal(&self, able: &Able, forcing: &Forcing, generator: Amps) -> Volts {
        let currents = forcing.solar_current + forcing.engine + forcing.shore - forcing.standing;
        let currents = currents + forcing.turbine_current + generator;
        let power = forcing.solar_power + forcing.turbine_power - forcing.demand;
        let net = power / able.open + currents;
        let moved = if net.0 > 0.0 {
            let taken = net.at_most(able.accept).at_most(able.keep);
            taken * able.rise
        } else {
            // A bank that gives nothing carries nothing; its sources hold the voltage.
            net.at_least(-self.limit(able)) * able.resistance
        };
        (able.open + moved).at_least(able.open * LEAST_SHARE)
    }

    /// How full the available well is after a step that added so much to the whole.
    #[inline]
    fn available_after(&self, state: State, added: AmpHours, charge: f64) -> f64 {
        self.plates.as_ref().map_or(charge, |own| {
            let out = -self.current(added);
            let after = own.pace.after(self.wells(own, state), out).available.0 * own.per_room;
            let after = if after > 0.0 { after } else { 0.0 };
            if after < 1.0 { after } else { 1.0 }
        })
    }

    /// What the generator offers in a step, and for what share of it; nothing while it stands still.
    #[inline]
    fn generated(&self, state: State, allowed: f64) -> (Amps, f64) {
        match self.generator {
            Some(own) if own.runs(state.ran, state.charge, allowed) => {
                (own.limit * allowed, allowed)
            }
            _ => (Amps::ZERO, 0.0),
        }
    }

    /// How long the generator has run without a stop after a step.
    #[inline]
    fn ran_after(&self, before: State, charge: f64, filled: bool, running: f64) -> Hours {
        match self.generator {
            Some(own) if running > 0.0 => own.ran_after(before.ran, self.time, charge, filled),
            _ => Hours::ZERO,
        }
    }

    /// Moves the bank through one step.
    #[inline]
    pub fn step(&self, state: State, forcing: &Forcing, trace: &mut impl Trace) -> After {
        let Self { bank, full, time, .. } = *self;
        let charge = state.charge;
        let able = self.able(state, forcing.temperature);
        let (generator, running) = self.generated(state, forcing.generator_allowed);
        let volts = self.terminal(&able, forcing, generator);
        let per_volt = 1.0 / volts.0;
        let offer = Offer::at(forcing, generator, per_volt);
        let wanted = trace.step(
            Formula::LoadsCurrent,
            Amps(forcing.demand.0 * per_volt) + forcing.standing,
            &[term(forcing.demand), term(volts), term(forcing.standing)],
        );
        let supply = trace.step(
            Formula::SourcesCurrent,
            offer.sum(),
            &[
                term(offer.solar),
                term(offer.turbine),
                term(offer.engine),
                term(offer.generator),
                term(offer.shore),
            ],
        );
        let limit = self.limit(&able);
        // A bank that gives nothing has shut its protection circuit off.
        let protection = if limit.0 > 0.0 || supply.0 > 0.0 { bank.protection } else { Amps::ZERO };
        let net = trace.step(
            Formula::NetCurrent,
            supply - wanted - protection,
            &[term(supply), term(wanted), term(protection)],
        );
        let (taken, kept) = self.charged(&able, charge, net);
        let need = (-net).at_least(Amps::ZERO);
        let given = need.at_most(limit);
        let spare = net.at_least(Amps::ZERO) - taken;
        let flows =
            Flowing { volts, supply, wanted, spare, given, taken, kept, short: need - given };
        let held = full * charge;
        // Only what is left can leak.
        let leak =
            (held * bank.self_discharge_per_hour / Hours(1.0)).at_most(held / time + kept - given);
        let stored = (kept - given - leak) * time;
        let after = ((held + stored) / full).clamp(0.0, 1.0);
        let stored_energy = bank.stored_between(charge, after, full);
        let mut flows = flows.over(time, &offer, leak, stored, stored_energy);
        flows.generator_time = time * running;
        let after =
            trace.step(Formula::ChargeAfter, after, &[term(charge), term(stored), term(full)]);
        let ended = net.0 > 0.0 && net >= able.fades && able.fades <= self.tail;
        let filled = after >= self.top - AS_GOOD_AS_FULL || ended;
        After {
            state: State {
                charge: after,
                available: self.available_after(state, stored, after),
                ran: self.ran_after(state, after, filled, running),
            },
            flows,
            volts,
            carried: (need > given && given.0 >= able.give.0).then(|| given / need),
            filled,
        }
    }

    /// The current that the bank takes of a surplus, and what it keeps of it.
    #[inline]
    fn charged(&self, able: &Able, charge: f64, net: Amps) -> (Amps, Amps) {
        let taken = net.at_most(able.accept).at_least(Amps::ZERO);
        if taken.0 <= 0.0 {
            return (Amps::ZERO, Amps::ZERO);
        }
        let efficiency = self.bank.efficiency.at(charge, taken.0 * self.per_ten_hour);
        let kept = taken * efficiency;
        if kept > able.keep { (able.keep / efficiency, able.keep) } else { (taken, kept) }
    }
}

/// Currents of a step.
struct Flowing {
    volts: Volts,
    supply: Amps,
    wanted: Amps,
    spare: Amps,
    given: Amps,
    taken: Amps,
    kept: Amps,
    short: Amps,
}

impl Flowing {
    /// The amounts over a length of time, with what leaked and what was stored.
    #[inline]
    fn over(
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
            generator_energy: energy(used.generator),
            generator_time: Hours::ZERO,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document;
    use crate::working::Working;

    fn bank() -> Bank {
        Bank::parse(&document::Bank::default()).unwrap()
    }

    const FULL: AmpHours = AmpHours(100.0);

    fn lead() -> Bank {
        let section = document::Bank {
            chemistry: document::Chemistry::Agm,
            battery_v: 12.0,
            ..document::Bank::default()
        };
        Bank::parse(&section).unwrap()
    }

    fn step(bank: &Bank, charge: f64, forcing: &Forcing, trace: &mut impl Trace) -> After {
        let prepared = Prepared::new(bank, FULL, QUARTER);
        prepared.step(prepared.rested(charge), forcing, trace)
    }

    const WARM: Celsius = Celsius(20.0);
    const QUARTER: Hours = Hours(0.25);

    /// Currents that charge, discharge, and overwhelm.
    fn forcings() -> impl Iterator<Item = Forcing> {
        let demands = [0.0, 30.0, 3000.0, 1e6].into_iter();
        demands.flat_map(|demand| [0.0, 100.0, 5000.0].map(|sun| (demand, sun))).map(
            |(demand, sun)| Forcing {
                demand: Watts(demand),
                standing: Amps(0.1),
                solar_power: Watts(sun),
                turbine_power: Watts(sun / 9.0),
                turbine_current: Amps(sun / 80.0),
                engine: Amps(sun / 50.0),
                generator_allowed: if sun > 1000.0 { 0.6 } else { 1.0 },
                shore: Amps(sun / 70.0),
                temperature: WARM,
                ..Forcing::default()
            },
        )
    }

    fn generator() -> Generator {
        Generator::parse(&document::Generator::default()).unwrap().unwrap()
    }

    #[test]
    fn charge_and_energy_balance_whatever_happens() {
        let generator = generator();
        for bank in [bank(), lead()] {
            let prepared = Prepared::new(&bank, FULL, QUARTER).with_generator(Some(&generator));
            for charge in [0.0, 0.001, 0.2, 0.9, 0.999, 1.0] {
                for forcing in forcings() {
                    let After { state, flows: f, volts, .. } =
                        prepared.step(prepared.rested(charge), &forcing, &mut ());
                    assert!((0.0..=1.0).contains(&state.charge) && volts.0 > 0.0);
                    let came = f.came();
                    let went = f.load + f.protection + f.charge_loss + f.self_discharge + f.stored;
                    let scale = came.0.abs() + f.load.0 + 1.0;
                    assert!((came - went).0.abs() < 1e-9 * scale, "{charge} {forcing:?}: {f:?}");
                    let moved = FULL * (state.charge - charge);
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
        for bank in [bank(), lead()] {
            let After { flows, carried, .. } = step(&bank, 0.0, &forcing, &mut ());
            assert!(flows.unmet.0 > 2.0 * flows.load.0 && flows.load.0 > 0.0, "{flows:?}");
            assert_eq!(carried, Some(0.0));
        }
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
        for bank in [bank(), lead()] {
            let After { flows, filled, .. } = step(&bank, 1.0, &forcing, &mut ());
            assert!(flows.shore.0 < 0.1 && flows.solar.0 > 0.8, "{flows:?}");
            assert!(filled);
        }
    }

    #[test]
    fn sources_are_used_in_their_order() {
        let forcing = Forcing {
            demand: Watts(0.0),
            standing: Amps(32.0),
            solar_current: Amps(10.0),
            turbine_power: Watts(60.0),
            turbine_current: Amps(4.0),
            engine: Amps(8.0),
            generator_allowed: 1.0,
            shore: Amps(50.0),
            temperature: WARM,
            ..Forcing::default()
        };
        let (bank, generator) = (bank(), generator());
        let prepared = Prepared::new(&bank, FULL, QUARTER).with_generator(Some(&generator));
        let running = State { ran: Hours(0.25), ..prepared.rested(1.0) };
        let After { flows, volts, .. } = prepared.step(running, &forcing, &mut ());
        let turbine = Amps(4.0) + Watts(60.0) / volts;
        let rest = Amps(32.0) + bank.protection - Amps(18.0) - turbine;
        let expected = [Amps(10.0), turbine, Amps(8.0), rest, Amps(0.0)];
        let used = [flows.solar, flows.turbine, flows.engine, flows.generator, flows.shore];
        for (used, expected) in used.into_iter().zip(expected) {
            assert!((used / QUARTER - expected).0.abs() < 0.01, "{flows:?}");
        }
        assert_eq!(flows.generator_time, QUARTER, "it runs however little is taken");
    }

    /// Hours of the day in which a generator ran, from a state of charge, beside a steady current.
    fn ran(
        bank: &Bank,
        charge: f64,
        drawn: f64,
        allowed: impl Fn(usize) -> f64,
    ) -> Vec<(usize, f64)> {
        let generator = generator();
        let prepared = Prepared::new(bank, FULL, QUARTER).with_generator(Some(&generator));
        let mut state = prepared.rested(charge);
        let mut steps = Vec::new();
        for at in 0..96 {
            let forcing = Forcing {
                standing: Amps(drawn),
                generator_allowed: allowed(at),
                temperature: WARM,
                ..Forcing::default()
            };
            let after = prepared.step(state, &forcing, &mut ());
            if after.flows.generator_time.0 > 0.0 {
                steps.push((at, state.charge));
            }
            state = after.state;
        }
        steps
    }

    #[test]
    fn a_generator_starts_low_runs_to_its_stop_and_rests() {
        for bank in [bank(), lead()] {
            let steps = ran(&bank, 0.4, 1.5, |_| 1.0);
            let (first, charge) = steps[0];
            assert!(charge <= 0.3 && charge > 0.28 && first > 5, "{steps:?}");
            assert!(steps.windows(2).all(|pair| pair[1].0 == pair[0].0 + 1), "one run: {steps:?}");
            let last = steps.last().unwrap();
            assert!(last.1 > 0.65 && last.1 < 0.8 && last.0 < 90, "{steps:?}");
        }
        assert!(ran(&bank(), 0.9, 1.0, |_| 1.0).is_empty(), "never low, never on");
    }

    #[test]
    fn a_generator_keeps_its_hours() {
        let night = |at: usize| if (32..80).contains(&at) { 1.0 } else { 0.0 };
        let steps = ran(&bank(), 0.2, 1.0, night);
        assert_eq!(steps[0].0, 32, "low since midnight, on at eight: {steps:?}");
        let late = |at: usize| if at >= 92 { 1.0 } else { 0.0 };
        assert_eq!(ran(&bank(), 0.2, 1.0, late).len(), 4);
    }

    #[test]
    fn frozen_lithium_takes_no_charge() {
        let taken = |temperature: f64| {
            let forcing = Forcing {
                shore: Amps(20.0),
                temperature: Celsius(temperature),
                ..Forcing::default()
            };
            let after = step(&bank(), 0.5, &forcing, &mut ());
            assert!(!after.filled, "half is not full, however cold");
            after.flows.shore.0 / QUARTER.0
        };
        assert!((taken(5.0) - 20.0).abs() < 1e-9);
        assert!((taken(-0.1) - 0.02).abs() < 1e-9, "only its protection");
    }

    /// Currents of a long charge from a strong source, hour by hour.
    fn absorbed(bank: &Bank) -> Vec<(f64, f64, f64)> {
        let prepared = Prepared::new(bank, FULL, QUARTER);
        let forcing = Forcing { shore: Amps(20.0), temperature: WARM, ..Forcing::default() };
        let mut state = prepared.rested(0.3);
        let mut hours = Vec::new();
        for _ in 0..96 {
            let after = prepared.step(state, &forcing, &mut ());
            state = after.state;
            hours.push((state.charge, after.flows.shore.0 / QUARTER.0, after.volts.0));
        }
        hours
    }

    #[test]
    fn lead_acid_tapers_at_its_absorption_voltage_and_lithium_hardly() {
        let lead = lead();
        let limit = lead.absorption_voltage(WARM).0;
        let steps = absorbed(&lead);
        assert!(steps.iter().all(|step| step.2 <= limit + 1e-9), "{steps:?}");
        let held = steps.iter().filter(|step| step.2 > limit - 1e-6).count();
        assert!(held > 40, "absorption lasts hours: {steps:?}");
        assert!(steps.windows(2).all(|pair| pair[1].1 <= pair[0].1 + 1e-9), "{steps:?}");
        let lithium = absorbed(&bank());
        let filled = lithium.iter().position(|step| step.0 > 0.99);
        assert!(filled.is_some_and(|place| place <= 15), "{lithium:?}");
    }

    #[test]
    fn a_rest_brings_back_charge_and_voltage_to_lead_acid_alone() {
        let heavy = Forcing { standing: Amps(35.0), temperature: WARM, ..Forcing::default() };
        let none = Forcing { temperature: WARM, ..Forcing::default() };
        for (bank, recovers) in [(lead(), true), (bank(), false)] {
            let prepared = Prepared::new(&bank, FULL, QUARTER);
            let mut state = prepared.rested(1.0);
            for _ in 0..6 {
                state = prepared.step(state, &heavy, &mut ()).state;
            }
            let tired = prepared.step(state, &none, &mut ());
            let rested =
                (0..8).fold(tired.state, |state, _| prepared.step(state, &none, &mut ()).state);
            let later = prepared.step(rested, &none, &mut ());
            assert_eq!(later.volts > tired.volts + Volts(0.05), recovers, "{tired:?} {later:?}");
        }
    }

    #[test]
    fn the_rated_current_draws_the_rated_capacity_and_a_fast_one_less() {
        let bank = lead();
        let drawn = |amps: f64| {
            let forcing = Forcing { standing: Amps(amps), temperature: WARM, ..Forcing::default() };
            let prepared = Prepared::new(&bank, FULL, QUARTER);
            let mut state = prepared.rested(1.0);
            let mut sum = AmpHours::ZERO;
            while state.charge > 0.0 {
                let after = prepared.step(state, &forcing, &mut ());
                sum += after.flows.load;
                state = after.state;
                if after.carried.is_some() {
                    break;
                }
            }
            sum.0
        };
        let by_law = |hours: f64| 100.0 * libm::pow(hours / 20.0, 0.1 / 1.1);
        assert!((drawn(5.0) - 100.0).abs() < 1.0, "{}", drawn(5.0));
        assert!((drawn(1.0) - 100.0).abs() < 1.0, "never more than the label: {}", drawn(1.0));
        let fast = by_law(5.0);
        assert!((drawn(fast / 5.0) - fast).abs() < 1.5, "{} {fast}", drawn(fast / 5.0));
    }

    #[test]
    fn a_load_that_sags_the_bank_under_its_cut_off_goes_short() {
        let forcing = Forcing { standing: Amps(300.0), temperature: WARM, ..Forcing::default() };
        let bank = lead();
        let after = step(&bank, 0.6, &forcing, &mut ());
        assert!(after.flows.unmet.0 > 0.0 && after.carried.is_some());
        assert!(after.volts >= bank.low_voltage() - Volts(1e-9), "{after:?}");
    }

    #[test]
    fn tracing_changes_no_bit() {
        let forcing = Forcing { demand: Watts(77.0), temperature: WARM, ..Forcing::default() };
        let mut working = Working::new();
        let traced = step(&lead(), 0.6, &forcing, &mut working);
        assert_eq!(traced, step(&lead(), 0.6, &forcing, &mut ()));
        assert_eq!(working.result().unwrap().formula, Formula::ChargeAfter);
    }
}
