//! Where the energy of a day comes from and where it goes, with every loss on the way.
//!
//! **Question answered:** of what the sun and the chargers brought, how much did the loads get, and where did the rest stay?
//!
//! **Method.** Two weeks of a month's typical days from full, as for the month's verdict, of which the second is counted, in energy
//! at the voltage of each step. What a load got is its share of the budget of all that the loads got. A source that the bank stops
//! (sun, wind, water) is counted with what it could have brought; one that is only asked for less (engine, generator, shore power) is not.
//! Both sides have the same sum.
//!
//! **Assumptions.** Leaking charge is counted at the open-circuit voltage; resistance and charge efficiency share what else the bank
//! loses. A controller for the best point loses what its efficiency says, a series regulator the drop over it.
//!
//! **Left out:** what an array gives less in heat, dirt and cable, which never reaches its controller; what a controller's current limit
//! holds back.

use super::budget::Budget;
use crate::quantity::{AmpHours, WattHours};
use crate::simulate::{After, Almanac, Forcing, Prepared, STEP};
use crate::source::{MPPT_EFFICIENCY, SERIES_DROP};
use crate::system::System;

/// Weeks of typical days: the last is counted.
const WEEKS: usize = 2;
/// What is less is a rounding \[Wh\].
const DUST: f64 = 1e-12;
/// Days of a week.
const WEEK: usize = 7;

/// Where energy comes from or goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// The sun, before the charge controllers.
    Sun,
    /// A turbine.
    Turbine,
    /// The engine.
    Engine,
    /// The generator.
    Generator,
    /// Shore power or mains.
    Shore,
    /// Out of the bank, which ends lower than it began.
    FromBank,
    /// A load, by its place in the plan.
    Load(u16),
    /// What the inverter loses by converting.
    Conversion,
    /// The inverter's idle draw and its search for loads.
    InverterIdle,
    /// The standing draw.
    Standing,
    /// What charge controllers lose.
    Controller,
    /// What charging loses in the bank, with its resistance.
    Charging,
    /// What leaks away by standing.
    SelfDischarge,
    /// Protection circuits of the bank.
    Protection,
    /// What sun, wind or water offered and the bank did not take.
    NotTaken,
    /// Into the bank, which ends higher than it began.
    IntoBank,
}

/// An amount that came from an end or went to it, a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flow {
    /// The end.
    pub end: End,
    /// So much.
    pub energy: WattHours,
}

/// The flows of a mean day of a month; ends of nothing are left out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DayFlow {
    /// The month, January being 0.
    pub month: usize,
    /// Where it comes from.
    pub from: Vec<Flow>,
    /// Where it goes: the loads in the order of the plan, then what they carry along, then losses.
    pub to: Vec<Flow>,
    /// What the loads wanted and did not get.
    pub unmet: WattHours,
}

impl DayFlow {
    /// All that came.
    #[must_use]
    pub fn came(&self) -> WattHours {
        self.from.iter().map(|flow| flow.energy).sum()
    }

    /// All that went.
    #[must_use]
    pub fn went(&self) -> WattHours {
        self.to.iter().map(|flow| flow.energy).sum()
    }
}

/// Sums over the counted days.
#[derive(Clone, Copy, Debug, Default)]
struct Sums {
    sun: WattHours,
    turbine: WattHours,
    engine: WattHours,
    generator: WattHours,
    shore: WattHours,
    controller: WattHours,
    not_taken: WattHours,
    load: WattHours,
    standing: WattHours,
    protection: WattHours,
    leaked: WattHours,
    lost: WattHours,
    stored: WattHours,
    unmet: WattHours,
}

impl Sums {
    fn add(&mut self, system: &System, before: f64, forcing: &Forcing, after: &After) {
        let After { flows, volts, .. } = after;
        let energy = |charge: AmpHours| *volts * charge;
        let by_power = (forcing.solar_power / *volts) * STEP;
        let by_current = forcing.solar_current * STEP;
        let offered = by_power + by_current;
        if offered.0 > 0.0 {
            let used = flows.solar / offered;
            let controller = energy(by_power) * (used * (1.0 / MPPT_EFFICIENCY - 1.0))
                + SERIES_DROP * (by_current * used);
            self.controller += controller;
            self.sun += energy(offered) + controller;
            self.not_taken += energy(offered - flows.solar);
        }
        let wind = (forcing.turbine_power / *volts + forcing.turbine_current) * STEP;
        self.turbine += energy(wind);
        self.not_taken += energy(wind - flows.turbine);
        self.engine += energy(flows.engine);
        self.generator += energy(flows.generator);
        self.shore += energy(flows.shore);
        self.load += flows.load_energy;
        let wanted = flows.load + flows.unmet;
        let given = if wanted.0 > 0.0 { flows.load / wanted } else { 0.0 };
        self.standing += energy(forcing.standing * STEP) * given;
        self.unmet += energy(flows.unmet);
        self.protection += flows.protection_energy;
        self.leaked += system.bank.open_circuit(before) * flows.self_discharge;
        self.lost += flows.bank_loss;
        self.stored += flows.stored_energy;
    }
}

/// The flows of a mean day of a month, whose budget is `budget` and in which the bank holds `full`.
#[must_use]
pub fn day_flow(
    almanac: &mut Almanac<'_>,
    month: usize,
    full: AmpHours,
    budget: &Budget,
) -> DayFlow {
    let system = almanac.system;
    let bank = Prepared::new(&system.bank, full, STEP).with_generator(system.generator.as_ref());
    let mut state = bank.rested(1.0);
    let mut sums = Sums::default();
    for day in 0..WEEKS * WEEK {
        for forcing in almanac.day(month, (day % WEEK) as u8) {
            let before = state.charge;
            let after = bank.step(state, forcing, &mut ());
            state = after.state;
            if day >= (WEEKS - 1) * WEEK {
                sums.add(system, before, forcing, &after);
            }
        }
    }
    // A step holds its voltage, so a bank that runs empty can seem to lose less than nothing: then it gave more than it held.
    let less = sums.lost.at_most(WattHours::ZERO);
    sums.lost -= less;
    sums.stored += less;
    // What leaks is part of what the bank loses.
    let leaked = sums.leaked.at_most(sums.lost);
    let share = 1.0 / WEEK as f64;
    let list = |all: &[(End, WattHours)]| {
        let flows = all.iter().map(|(end, energy)| Flow { end: *end, energy: *energy * share });
        flows.filter(|flow| flow.energy.0 > DUST).collect::<Vec<_>>()
    };
    let from = list(&[
        (End::Sun, sums.sun),
        (End::Turbine, sums.turbine),
        (End::Engine, sums.engine),
        (End::Generator, sums.generator),
        (End::Shore, sums.shore),
        (End::FromBank, -sums.stored),
    ]);
    let mut to = served(budget, sums.load - sums.standing);
    to.extend([
        (End::Standing, sums.standing),
        (End::Controller, sums.controller),
        (End::Charging, sums.lost - leaked),
        (End::SelfDischarge, leaked),
        (End::Protection, sums.protection),
        (End::NotTaken, sums.not_taken),
        (End::IntoBank, sums.stored),
    ]);
    DayFlow { month, from, to: list(&to), unmet: sums.unmet * share }
}

/// What the loads and the inverter got of what they got in all, by the budget.
fn served(budget: &Budget, all: WattHours) -> Vec<(End, WattHours)> {
    let at_bank: WattHours = budget.loads.iter().map(|load| load.energy).sum();
    let wanted = at_bank + budget.inverter.energy;
    let share = if wanted.0 > 0.0 { all / wanted } else { 0.0 };
    // A load on alternating current without an inverter has its own energy but takes none from the bank.
    let taking = || budget.loads.iter().filter(|load| load.energy.0 > 0.0);
    let own: WattHours = taking().map(|load| load.own_energy).sum();
    let mut parts: Vec<_> =
        taking().map(|load| (End::Load(load.place), load.own_energy * share)).collect();
    parts.push((End::Conversion, (at_bank - own) * share));
    parts.push((End::InverterIdle, budget.inverter.energy * share));
    parts
}
