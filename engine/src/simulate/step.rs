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

use super::flows::{Flowing, Flows, Forcing, Offer};
use super::prepared::{Able, Prepared, State};
use crate::quantity::{AmpHours, Amps, Hours, Volts, Within};
use crate::working::{Formula, Source, Trace, term};

/// The voltage under load never falls under this share of the open-circuit voltage: below it no load works and the linear
/// model ends.
const LEAST_SHARE: f64 = 0.5;

/// From here on the last of the way to the end of charge counts as done (ratio): it takes for ever.
const AS_GOOD_AS_FULL: f64 = 0.005;

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

/// What a step does to the bank, before it is put into accounts.
pub(super) struct Moved {
    /// State of the bank.
    pub(super) state: State,
    /// What the loads want and do not get.
    pub(super) unmet: AmpHours,
    flowing: Flowing,
    offer: Offer,
    leak: Amps,
    stored: AmpHours,
    carried: Option<f64>,
    filled: bool,
}

impl Prepared<'_> {
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

    /// Moves the bank through one step.
    #[inline]
    pub fn step(&self, state: State, forcing: &Forcing, trace: &mut impl Trace) -> After {
        let moved = self.moved(state, forcing, trace);
        let Moved { flowing, offer, leak, stored, carried, filled, .. } = &moved;
        let stored_energy = self.bank.stored_between(state.charge, moved.state.charge, self.full);
        After {
            state: moved.state,
            flows: flowing.over(self.time, offer, *leak, *stored, stored_energy),
            volts: flowing.volts,
            carried: *carried,
            filled: *filled,
        }
    }

    /// The same without accounts, for whoever asks only what becomes of the bank.
    #[inline]
    pub(super) fn moved(&self, state: State, forcing: &Forcing, trace: &mut impl Trace) -> Moved {
        let Self { bank, full, time, .. } = *self;
        let charge = state.charge;
        let able = self.able(state, forcing.temperature);
        let (generator, share) = self.generated(state, forcing.generator_allowed);
        let volts = self.terminal(&able, forcing, generator);
        let per_volt = 1.0 / volts.0;
        let offer = Offer::at(forcing, generator, per_volt);
        let wanted = trace.step(
            Formula::LoadsCurrent,
            Amps(forcing.demand.0 * per_volt) + forcing.standing,
            &[
                term(forcing.demand).from(Source::Steps),
                term(volts).from(Source::Steps),
                term(forcing.standing),
            ],
        );
        let supply = trace.step(
            Formula::SourcesCurrent,
            offer.sum(),
            &[offer.solar, offer.turbine, offer.engine, offer.generator, offer.shore]
                .map(|current| term(current).from(Source::Steps)),
        );
        let limit = self.limit(&able);
        // A bank that gives nothing has shut its protection circuit off.
        let protection = if limit.0 > 0.0 || supply.0 > 0.0 { bank.protection } else { Amps::ZERO };
        let net = trace.step(
            Formula::NetCurrent,
            supply - wanted - protection,
            &[term(supply), term(wanted), term(protection).from(bank.protection_source)],
        );
        let (taken, kept) = self.charged(&able, charge, net);
        let need = (-net).at_least(Amps::ZERO);
        let given = need.at_most(limit);
        let spare = net.at_least(Amps::ZERO) - taken;
        let (short, running) = (need - given, time * share);
        let flowing = Flowing { volts, supply, wanted, spare, given, taken, kept, short, running };
        let held = full * charge;
        // Only what is left can leak.
        let leak =
            (held * bank.self_discharge_per_hour / Hours(1.0)).at_most(held / time + kept - given);
        let stored = (kept - given - leak) * time;
        let after = ((held + stored) / full).within(0.0, 1.0);
        let after = trace.step(
            Formula::ChargeAfter,
            after,
            &[term(charge).from(Source::Steps), term(stored).from(Source::Steps), term(full)],
        );
        let ended = net.0 > 0.0 && net >= able.fades && able.fades <= self.tail;
        let filled = after >= self.top - AS_GOOD_AS_FULL || ended;
        Moved {
            state: State {
                charge: after,
                available: self.available_after(state, stored, after),
                ran: self.ran_after(state, after, filled, share),
            },
            unmet: flowing.short * time,
            flowing,
            offer,
            leak,
            stored,
            carried: (need > given && given.0 >= able.give.0).then(|| given / need),
            filled,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bank::Bank;
    use crate::document;
    use crate::quantity::{AmpHours, Celsius, Watts};
    use crate::source::Generator;
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

    #[test]
    fn charge_and_energy_balance_whatever_happens() {
        let generator = Generator::parse(&document::Generator::default()).unwrap();
        for bank in [bank(), lead()] {
            let prepared = Prepared::new(&bank, FULL, QUARTER).with_generator(generator.as_ref());
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
