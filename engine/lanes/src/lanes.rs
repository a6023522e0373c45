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
use crate::store::{KNEES, Store};

/// More than any bank has left over its reserve.
pub const AMPLE: f32 = 2.0;
/// Less than any current that is told from none, over what a bank holds \[1/h\].
const SMALL: f32 = 1e-9;

/// What moves while hours go by, one lane for each size of array.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lanes<const N: usize> {
    /// Size of the array, over that of the plan.
    pub array: [f32; N],
    /// State of charge (ratio).
    pub charge: [f32; N],
    /// Charge at hand of lead-acid, over what the bank holds.
    pub near: [f32; N],
    /// What the generator gives \[A\].
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
    pub fn full(array: [f32; N], store: &Store) -> Self {
        let mut lanes = Self {
            array,
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
    pub fn fill(&mut self, store: &Store) {
        self.charge = [1.0; N];
        self.near = [store.room; N];
        self.generator = [0.0; N];
        self.running = [0.0; N];
    }

    /// Goes through hours with a bank that stays the same.
    pub fn pass(&mut self, store: &Store, hours: &[Hour]) {
        let largest = self.array.iter().fold(0.0, |a, b| most(a, *b));
        for hour in hours {
            let generates = hour.allowed > 0.0 && store.generator > 0.0;
            if generates {
                self.start_generator(store, hour);
            }
            // No bank is charged where not even the largest array brings more than is used.
            let charges = generates || hour.brings && may_charge(store, hour, largest);
            // Where room counts the whole step does for every hour: what an hour lacks is nothing then, and the same comes out.
            match (store.plates, COMPACT || hour.brings, COMPACT || charges) {
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
    }

    /// Starts the generator where it is wanted: for as much as leads to its stop in this hour.
    fn start_generator(&mut self, store: &Store, hour: &Hour) {
        let limit = store.generator * hour.allowed;
        for i in 0..N {
            let runs = self.running[i] > 0.0 || self.charge[i] <= store.starts;
            let power = hour.power + self.array[i] * hour.sun_power;
            let net = power * store.per_nominal + hour.current + self.array[i] * hour.sun_current;
            let wanted = (store.stops - self.charge[i]) / store.efficiency;
            let wanted = most(wanted / store.per_full - net, 0.0);
            self.running[i] = if runs { 1.0 } else { 0.0 };
            self.generator[i] = if runs { least(wanted, limit) } else { 0.0 };
        }
    }

    /// Stops it where it has done its work.
    fn stop_generator(&mut self, store: &Store) {
        for i in 0..N {
            let done = self.charge[i] >= store.stops - AT_STOP;
            self.running[i] = if done { 0.0 } else { self.running[i] };
            self.generator[i] = 0.0;
        }
    }
}

/// Whether more may come in than goes out beside an array of this size, at whatever voltage the bank has.
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
pub fn open_circuit(store: &Store, charge: f32) -> f32 {
    let mut volts = store.curve_from + store.curve_rise * charge;
    for knee in 0..KNEES {
        volts += store.bends[knee] * most(charge - store.knees[knee], 0.0);
    }
    volts
}

/// Conductance of plates to charge, over that of one cell: the law of the table as a quotient of two short sums.
#[inline(always)]
pub fn accepted_by_plates(charge: f32) -> f32 {
    let left = 1.0 - charge;
    left * (0.826_017 + 11.765_892 * left) / (1.0 + left * (5.892_335 + 9.107_496 * left))
}

/// One over the resistance of lead-acid to discharge, which is twice that of a full bank when empty: 1/(2 − s) within 3 %.
#[inline(always)]
pub fn fuller_conducts(charge: f32) -> f32 {
    0.5 + charge * (0.2 + 0.3 * charge)
}

/// Share of a charge current that lead-acid keeps: 1 − e^−x of the law, held under its cap, where the exponential need only be right
/// to 3.6.
#[inline(always)]
pub fn kept_by_plates(store: &Store, charge: f32, taken: f32) -> f32 {
    let quarter = 20.73 / 4.0 * (1.0 - charge) / (taken * store.per_ten_hour + 0.55);
    let y = least(quarter, 0.9);
    let root = 1.0 - y * (0.996_17 - y * (0.473_413 - y * 0.110_624));
    let square = root * root;
    least(1.0 - square * square, store.efficiency)
}

/// What an hour makes of the limits of charging.
#[derive(Clone, Copy)]
struct Tapers {
    /// Absorption voltage.
    absorption: f32,
    /// Conductance of plates over that of one cell.
    conducts: f32,
    /// The largest charge current.
    charge_limit: f32,
}

/// The charge current that a bank accepts, what it can keep in the hour, and its resistance to charge.
#[inline(always)]
fn taper<const PLATES: bool>(
    store: &Store,
    tapers: &Tapers,
    open: f32,
    charge: f32,
    reach: f32,
) -> (f32, f32, f32) {
    let room = tapers.absorption - open;
    let keep = store.top - charge;
    if PLATES {
        let keep = most(least(keep, store.full_reach - reach), 0.0);
        let fades = room * (accepted_by_plates(charge) * tapers.conducts);
        let rise = room / most(least(fades, keep), SMALL);
        (least(fades, tapers.charge_limit), keep, rise)
    } else {
        (least(room * store.per_resistance, tapers.charge_limit), keep, store.resistance)
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
    let (store, hour) = (*store, *hour);
    let (resistance, conductance) =
        (store.resistance * hour.resists, store.per_resistance / hour.resists);
    let tapers = Tapers {
        absorption: store.absorption + hour.absorption * store.warmth,
        conducts: hour.conducts * store.plate_size,
        charge_limit: store.charge_limit * hour.warm,
    };
    for i in 0..N {
        let (charge, near, array) = (lanes.charge[i], lanes.near[i], lanes.array[i]);
        let margin = lanes.margin[i];
        let (power, current) = if SUN {
            let current = hour.current + array * hour.sun_current + lanes.generator[i];
            (hour.power + array * hour.sun_power, current)
        } else {
            (hour.power, hour.current)
        };
        let open = open_circuit(&store, if PLATES { near } else { charge });
        let rested = near * store.stays + (charge + store.spare) * store.comes;
        let reach = rested * store.per_taken;
        // What the bank can give.
        let (resistance, conductance) = if PLATES {
            (resistance * (2.0 - charge), conductance * fuller_conducts(charge))
        } else {
            (resistance, conductance)
        };
        let mut give = least(charge - store.bottom, (open - store.low) * conductance);
        if PLATES {
            give = least(give, reach);
        }
        let give = most(give, 0.0);
        let floor = -least(give, store.discharge_limit);
        // The current at the nominal voltage moves the voltage, at which powers are currents.
        let net = (power * store.per_nominal + current) * store.per_full;
        let mut moved = most(net, floor) * resistance;
        let (mut accept, mut keep) = (0.0, 0.0);
        if CHARGES {
            let rise;
            (accept, keep, rise) = taper::<PLATES>(&store, &tapers, open, charge, reach);
            let taken = least(least(net, accept), keep) * rise;
            moved = if net > 0.0 { taken } else { moved };
        }
        let net = (power / (open + moved) + current) * store.per_full - store.protection;
        let mut flow = most(net, floor);
        if CHARGES {
            let taken = most(least(net, accept), 0.0);
            let efficiency =
                if PLATES { kept_by_plates(&store, charge, taken) } else { store.efficiency };
            flow = most(least(net, 0.0), floor) + least(taken * efficiency, keep);
        }
        let after = (charge + flow) * store.stands;
        lanes.charge[i] = after;
        if PLATES {
            lanes.near[i] = rested + (after - charge) * store.taken;
        }
        lanes.margin[i] = least(margin, least(after - store.reserve, give + net));
    }
}
