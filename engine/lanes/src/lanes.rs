//! The step of the simulation for many sizes at once.
//!
//! **Method.** The step of the engine, hour by hour, written once for any number of lanes, each of which is a bank of
//! the same size beside an array of its own. Everything is in ratios to what the bank holds, in 32 bits, and without a branch that
//! depends on a lane, so that compilers turn the loop into vectors: natively, and in wasm with its 128 bits. There the methods `min` and
//! `max` do not become vectors; a comparison and a choice do.
//!
//! **Left out against the one step**, beside what [`Store`] rounds: accounts of energy and of what each source gave. The
//! current that moves the voltage is taken at the nominal voltage. A generator stops within the hour, at its stop, and knows no shortest
//! run. A bank that gives nothing still feeds its protection, and one that is asked for more than both its charge and its limit allow
//! counts as failing.

use crate::COMPACT;
use crate::hour::Hour;
use crate::store::{KNEES, PLATE_KNEES, Store};

/// More than any bank has left over its reserve.
pub const AMPLE: f32 = 2.0;
/// Less than any current that is told from none, over what a bank holds \[1/h\].
const SMALL: f32 = 1e-9;
/// As good as nothing beside that. Where a number is held over this, wasm has one instruction; over 0 it takes two.
const NONE: f32 = 1e-12;

/// What moves while hours go by, one lane for each size of array.
#[derive(Clone, Copy, Debug, PartialEq)]
#[repr(align(64))]
pub struct Lanes<const N: usize> {
    /// Size of the array, over that of the plan.
    array: [f32; N],
    /// The largest of them.
    largest: f32,
    /// State of charge (ratio).
    pub charge: [f32; N],
    /// Charge at hand of lead-acid: as the current that would take it all in an hour \[1/h\].
    pub near: [f32; N],
    /// What the generator gives, over what the bank holds \[1/h\].
    generator: [f32; N],
    /// 1 while the generator runs, else 0.
    running: [f32; N],
    /// What was left over the reserve at the worst since this was last set to [`AMPLE`]: under 0 the bank was under its reserve,
    /// or failed its loads.
    pub margin: [f32; N],
}

/// The lesser of two.
#[inline(always)]
fn least(a: f32, b: f32) -> f32 {
    if a < b { a } else { b }
}

/// The greater of two.
#[inline(always)]
fn most(a: f32, b: f32) -> f32 {
    if a > b { a } else { b }
}

impl<const N: usize> Lanes<N> {
    /// Full banks beside these arrays, each over that of the plan.
    #[must_use]
    #[inline(always)]
    pub fn full(array: [f32; N], store: &Store) -> Self {
        let mut lanes = Self {
            array,
            largest: array.iter().fold(0.0, |a, b| most(a, *b)),
            charge: [1.0; N],
            near: [0.0; N],
            generator: [0.0; N],
            running: [0.0; N],
            margin: [AMPLE; N],
        };
        lanes.fill(store);
        lanes
    }

    /// Fills every bank and stops every generator.
    #[inline(always)]
    pub fn fill(&mut self, store: &Store) {
        self.charge = [1.0; N];
        self.near = [store.room; N];
        self.generator = [0.0; N];
        self.running = [0.0; N];
    }

    /// Goes through an hour.
    #[inline(always)]
    pub fn pass(&mut self, store: &Store, hour: &Hour) {
        let generates = hour.allowed > 0.0 && store.generator > 0.0;
        if generates {
            self.start_generator(store, hour);
        }
        // No bank is charged where not even the largest array brings more than is used.
        let charges = generates || hour.brings && may_charge(store, hour, self.largest);
        // Where room counts a step with the sun does for the night, too: it adds nothing then, and the same comes out.
        match (store.plates, COMPACT || hour.brings, charges) {
            (false, false, false) => step::<N, false, false, false>(store, hour, self),
            (false, true, false) => step::<N, false, true, false>(store, hour, self),
            (false, _, true) => step::<N, false, true, true>(store, hour, self),
            (true, false, false) => step::<N, true, false, false>(store, hour, self),
            (true, true, false) => step::<N, true, true, false>(store, hour, self),
            (true, _, true) => step::<N, true, true, true>(store, hour, self),
        }
        if generates {
            self.stop_generator(store);
        }
    }

    /// Starts the generator where it is wanted: for as much as leads to its stop in this hour.
    #[inline(always)]
    fn start_generator(&mut self, store: &Store, hour: &Hour) {
        let limit = store.generator * hour.allowed * store.per_full;
        for i in 0..N {
            let runs = self.running[i] > 0.0 || self.charge[i] <= store.starts;
            let power = hour.power + self.array[i] * hour.sun_power;
            let net = power * store.per_nominal + hour.current + self.array[i] * hour.sun_current;
            let wanted = (store.stops - self.charge[i]) / store.efficiency;
            let wanted = most(wanted - net * store.per_full, 0.0);
            self.running[i] = if runs { 1.0 } else { 0.0 };
            self.generator[i] = if runs { least(wanted, limit) } else { 0.0 };
        }
    }

    /// Stops it where it has done its work.
    #[inline(always)]
    fn stop_generator(&mut self, store: &Store) {
        for i in 0..N {
            let done = self.charge[i] >= store.stops - AT_STOP;
            self.running[i] = if done { 0.0 } else { self.running[i] };
            self.generator[i] = 0.0;
        }
    }
}

/// Whether more may come in than goes out beside an array of this size, at whatever voltage the bank has.
#[inline(always)]
fn may_charge(store: &Store, hour: &Hour, array: f32) -> bool {
    let power = hour.power + array * hour.sun_power;
    let highest = store.absorption + hour.absorption * store.warmth;
    let volts = if power > 0.0 { least(store.low, store.curve_from) } else { highest };
    power / volts + hour.current + array * hour.sun_current > 0.0
}

/// So near to its stop a generator has done its work: what the voltage moved while it was reckoned.
const AT_STOP: f32 = 0.01;

/// Open-circuit voltage at a state of charge, of plates at the charge at hand.
#[inline(always)]
#[must_use]
pub fn open_circuit<const PLATES: bool>(store: &Store, charge: f32) -> f32 {
    let mut volts = store.curve_from + store.curve_rise * charge;
    for knee in 0..if PLATES { PLATE_KNEES } else { KNEES } {
        volts += store.bends[knee] * most(charge - store.knees[knee], NONE);
    }
    volts
}

/// Conductance of plates to charge, over that of one cell: the law of the table as a quotient of two short sums of what is left to full,
/// l·(a + b·l) / (1 + l·(c + d·l)).
const ACCEPTED: (f32, f32, f32, f32) = (0.826_017, 11.765_892, 5.892_335, 9.107_496);

/// The law of `ACCEPTED`, as the step has it.
#[must_use]
pub fn accepted_by_plates(charge: f32) -> f32 {
    let left = 1.0 - charge;
    left * (ACCEPTED.0 + ACCEPTED.1 * left) / (1.0 + left * (ACCEPTED.2 + ACCEPTED.3 * left))
}

/// One over the resistance of lead-acid to discharge, which is twice that of a full bank when empty: 1/(2 − s) within 3 %, as a + s·(b + c·s).
const FULLER: (f32, f32, f32) = (0.5, 0.2, 0.3);

/// The law of `FULLER`, as the step has it.
#[must_use]
pub fn fuller_conducts(charge: f32) -> f32 {
    FULLER.0 + charge * (FULLER.1 + FULLER.2 * charge)
}

/// Share of a charge current that lead-acid keeps by what is left to full: 1 − e^−x of the law, held under its cap, where the exponential
/// need only be right to 3.6.
#[inline(always)]
#[must_use]
pub fn kept_by_plates(store: &Store, left: f32, taken: f32) -> f32 {
    // A quarter of x.
    let y = least(left / (taken * store.per_ten_hour + 0.55 * 4.0 / 20.73), 0.9);
    let root = 1.0 - y * (0.996_17 - y * (0.473_413 - y * 0.110_624));
    let square = root * root;
    least(1.0 - square * square, store.efficiency)
}

/// An hour as it acts on a bank: everything that is alike in all lanes. Powers and currents are over what the bank holds.
#[derive(Clone, Copy)]
struct Acts {
    power: f32,
    sun_power: f32,
    current: f32,
    sun_current: f32,
    /// Absorption voltage.
    absorption: f32,
    /// The two terms of the conductance of plates to charge.
    conducts: (f32, f32),
    /// The largest charge current.
    charge_limit: f32,
    /// Resistance to discharge of a full bank, and one over it; of plates the terms of what they have at other charges.
    resistance: f32,
    conductance: f32,
    empties: (f32, f32, f32),
}

impl Acts {
    #[inline(always)]
    fn new(store: &Store, hour: &Hour) -> Self {
        let conducts = hour.conducts * store.plate_size;
        let conductance = store.per_resistance / hour.resists;
        Self {
            power: hour.power * store.per_full,
            sun_power: hour.sun_power * store.per_full,
            current: hour.current * store.per_full,
            sun_current: hour.sun_current * store.per_full,
            absorption: store.absorption + hour.absorption * store.warmth,
            conducts: (ACCEPTED.0 * conducts, ACCEPTED.1 * conducts),
            charge_limit: store.charge_limit * hour.warm,
            resistance: store.resistance * hour.resists,
            conductance,
            empties: (FULLER.0 * conductance, FULLER.1 * conductance, FULLER.2 * conductance),
        }
    }
}

/// One hour of all lanes: of lead-acid or not, with the sun or without, and where no bank is charged without all that belongs to it.
#[inline(always)]
fn step<const N: usize, const PLATES: bool, const SUN: bool, const CHARGES: bool>(
    store: &Store,
    hour: &Hour,
    lanes: &mut Lanes<N>,
) {
    // Copies, so that compilers know that no lane changes them.
    let (store, acts) = (*store, Acts::new(store, hour));
    for i in 0..N {
        let (charge, near, array) = (lanes.charge[i], lanes.near[i], lanes.array[i]);
        let margin = lanes.margin[i];
        let (power, current) = if SUN {
            let current = acts.current + array * acts.sun_current;
            // Where a generator may run, a bank may be charged.
            let current = if CHARGES { current + lanes.generator[i] } else { current };
            (acts.power + array * acts.sun_power, current)
        } else {
            (acts.power, acts.current)
        };
        let open = open_circuit::<PLATES>(&store, if PLATES { near } else { charge });
        let rested = near * store.stays + (charge * store.comes + store.spare_comes);
        // What the bank can give.
        let (resistance, conductance) = if PLATES {
            let (none, one, two) = acts.empties;
            (acts.resistance * (2.0 - charge), none + charge * (one + two * charge))
        } else {
            (acts.resistance, acts.conductance)
        };
        let mut give = least(charge - store.bottom, (open - store.low) * conductance);
        if PLATES {
            give = least(give, rested);
        }
        let give = most(give, NONE);
        let floor = -least(give, store.discharge_limit);
        // The current at the nominal voltage moves the voltage, at which powers are currents.
        let net = power * store.per_nominal + current;
        let left = 1.0 - charge;
        let (mut accept, mut keep) = (0.0, 0.0);
        let drawn = if CHARGES {
            // What is drawn and what is taken: one of the two is nothing.
            let drawn = most(least(net, NONE), floor);
            let room = most(acts.absorption - open, NONE);
            if PLATES {
                keep = most(least(left, store.room - rested), NONE);
                let fades = room * left * (acts.conducts.0 + acts.conducts.1 * left)
                    / (1.0 + left * (ACCEPTED.2 + ACCEPTED.3 * left));
                accept = least(fades, acts.charge_limit);
                // The voltage rises by as much of its room as is taken of what fades or is kept; not divided, as the power is.
                let whole = most(least(fades, keep), SMALL);
                let taken = most(least(least(net, accept), keep), NONE);
                power * whole / (whole * (open + drawn * resistance) + taken * room)
            } else {
                keep = most(store.top - charge, NONE);
                accept = least(room * store.per_resistance, acts.charge_limit);
                let taken = most(least(least(net, accept), keep), NONE);
                power / (open + drawn * resistance + taken * store.resistance)
            }
        } else {
            power / (open + most(net, floor) * resistance)
        };
        let net = drawn + (current - store.protection);
        let mut flow = most(net, floor);
        if CHARGES {
            let taken = most(least(net, accept), NONE);
            let efficiency =
                if PLATES { kept_by_plates(&store, left, taken) } else { store.efficiency };
            flow = most(least(net, NONE), floor) + least(taken * efficiency, keep);
        }
        let after = (charge + flow) * store.stands;
        lanes.charge[i] = after;
        if PLATES {
            lanes.near[i] = rested + (after - charge);
        }
        lanes.margin[i] = least(margin, least(after - store.reserve, give + net));
    }
}
