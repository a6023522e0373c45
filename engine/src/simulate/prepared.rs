//! A bank at hand for many steps: its state, and what it can take and give in the next one.
//!
//! **Method.** All that does not change from step to step is worked out once. A charge current is limited by the charge limit, by
//! the absorption voltage (that is the taper), by the cold, and what is kept of it by the room that is left; a discharge current by
//! the charge that is left or at hand, by the low cut-off voltage, and by the discharge limit.

use crate::bank::{Bank, Held, LeadAcid, Pace};
use crate::quantity::{AmpHours, Amps, Celsius, Hours, Ohms, Volts};
use crate::source::Generator;

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
    pub(super) bank: &'a Bank,
    pub(super) full: AmpHours,
    pub(super) time: Hours,
    /// One over the length of a step \[1/h\].
    per_time: f64,
    /// Resistance when full and warm.
    resistance: Ohms,
    /// One over the ten-hour current \[1/A\].
    per_ten_hour: f64,
    /// State of charge at which charging ends by itself.
    pub(super) top: f64,
    /// State of charge at which the voltage at rest is the low cut-off.
    bottom: f64,
    pub(super) tail: Amps,
    low: Volts,
    plates: Option<Plates<'a>>,
    generator: Option<&'a Generator>,
}

/// What the bank can do in a step.
#[derive(Clone, Copy, Debug)]
pub(super) struct Able {
    /// Open-circuit voltage.
    pub(super) open: Volts,
    /// Resistance to charge.
    pub(super) rise: Ohms,
    /// Resistance to discharge.
    pub(super) resistance: Ohms,
    /// The charge current at the absorption voltage.
    pub(super) fades: Amps,
    /// The largest charge current, whatever is kept of it.
    pub(super) accept: Amps,
    /// The largest current that is kept.
    pub(super) keep: Amps,
    /// The largest discharge current, but for its limit.
    pub(super) give: Amps,
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
            bottom: bank.charge_at_cut_off(),
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
    pub(super) fn current(&self, charge: AmpHours) -> Amps {
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
    pub(super) fn able(&self, state: State, temperature: Celsius) -> Able {
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
    pub(super) fn limit(&self, able: &Able) -> Amps {
        self.bank.discharge_limit.map_or(able.give, |own| able.give.at_most(own))
    }

    /// How full the available well is after a step that added so much to the whole.
    #[inline]
    pub(super) fn available_after(&self, state: State, added: AmpHours, charge: f64) -> f64 {
        self.plates.as_ref().map_or(charge, |own| {
            let out = -self.current(added);
            let after = own.pace.after(self.wells(own, state), out).available.0 * own.per_room;
            let after = if after > 0.0 { after } else { 0.0 };
            if after < 1.0 { after } else { 1.0 }
        })
    }

    /// What the generator offers in a step, and for what share of it; nothing while it stands still.
    #[inline]
    pub(super) fn generated(&self, state: State, allowed: f64) -> (Amps, f64) {
        match self.generator {
            Some(own) if own.runs(state.ran, state.charge, allowed) => {
                (own.limit * allowed, allowed)
            }
            _ => (Amps::ZERO, 0.0),
        }
    }

    /// How long the generator has run without a stop after a step of which it ran a share.
    #[inline]
    pub(super) fn ran_after(&self, before: State, charge: f64, filled: bool, share: f64) -> Hours {
        match self.generator {
            Some(own) if share > 0.0 => own.ran_after(before.ran, self.time, charge, filled),
            _ => Hours::ZERO,
        }
    }

    /// The current that the bank takes of a surplus, and what it keeps of it.
    #[inline]
    pub(super) fn charged(&self, able: &Able, charge: f64, net: Amps) -> (Amps, Amps) {
        let taken = net.at_most(able.accept).at_least(Amps::ZERO);
        if taken.0 <= 0.0 {
            return (Amps::ZERO, Amps::ZERO);
        }
        let efficiency = self.bank.efficiency.at(charge, taken.0 * self.per_ten_hour);
        let kept = taken * efficiency;
        if kept > able.keep { (able.keep / efficiency, able.keep) } else { (taken, kept) }
    }
}
