//! A bank of one size in one month, as the lanes need it: everything over what it holds, in 32 bits.
//!
//! **Rounded.** The open-circuit curve keeps at most four straight parts, the others are left out where that moves the least area: above a
//! tenth the voltage is right within 4 %, that of lead-acid within 0.2 %. The conductance of plates to charge, and that to discharge, are short
//! formulas within 3 % of table and law; what plates keep near full is within a thousandth. Tests hold all of them.

use sunlarder_lanes::{KNEES, PLATE_KNEES, Store};

use crate::bank::{Bank, ChargeEfficiency, Held};
use crate::quantity::{AmpHours, Amps, Celsius, Hours};
use crate::source::Generator;

/// Length of a step.
const HOUR: Hours = Hours(1.0);
/// Temperature up from which lead-acid is charged to a lower voltage.
const STATED_AT: Celsius = Celsius(25.0);

/// A curve with at most so many bends: of the points between its ends those go first that move the least area.
fn simplified(curve: &[(f64, f64)], knees: usize) -> Vec<(f64, f64)> {
    let mut points = curve.to_vec();
    let area = |at: &[(f64, f64)]| {
        let ((x0, y0), (x1, y1), (x2, y2)) = (at[0], at[1], at[2]);
        ((x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)).abs()
    };
    while points.len() > knees + 2 {
        let areas = points.windows(3).map(area).enumerate();
        let least = areas.min_by(|a, b| a.1.total_cmp(&b.1)).map_or(0, |least| least.0);
        points.remove(least + 1);
    }
    points
}

/// The bank of a system that holds so much in a month, beside its generator.
#[must_use]
pub(super) fn store(bank: &Bank, full: AmpHours, generator: Option<&Generator>) -> Store {
    let rate = |current: Amps| (current.0 / full.0) as f32;
    let resistance = bank.resistance().0 * full.0;
    let absorption = bank.absorption_voltage(STATED_AT).0;
    let colder = bank.absorption_voltage(STATED_AT + Celsius(-1.0)).0;
    let efficiency = match bank.efficiency {
        ChargeEfficiency::Flat(ratio) | ChargeEfficiency::FallingNearFull(ratio) => ratio,
    };
    let made = Store {
        plates: false,
        per_full: (1.0 / full.0) as f32,
        per_nominal: (1.0 / bank.nominal.0) as f32,
        curve_from: 0.0,
        curve_rise: 0.0,
        knees: [0.0; KNEES],
        bends: [0.0; KNEES],
        resistance: resistance as f32,
        per_resistance: (1.0 / resistance) as f32,
        absorption: absorption as f32,
        warmth: (absorption - colder) as f32,
        low: bank.low_voltage().0 as f32,
        top: bank.charge_at(bank.absorption_voltage(Celsius::ZERO)) as f32,
        bottom: bank.charge_at_cut_off() as f32,
        reserve: bank.reserve.ratio() as f32,
        charge_limit: rate(bank.charge_limit),
        discharge_limit: bank.discharge_limit.map_or(f32::MAX, rate),
        protection: rate(bank.protection),
        stands: (1.0 - bank.self_discharge_per_hour) as f32,
        efficiency: efficiency as f32,
        per_ten_hour: 0.0,
        room: 1.0,
        stays: 1.0,
        comes: 0.0,
        spare_comes: 0.0,
        plate_size: 0.0,
        generator: generator.map_or(0.0, |own| own.limit.0 as f32),
        starts: generator.map_or(0.0, |own| own.start as f32),
        stops: generator.map_or(0.0, |own| own.stop as f32),
    };
    with_plates(with_curve(made, bank), bank, full)
}

fn with_curve(mut store: Store, bank: &Bank) -> Store {
    let knees = if bank.lead_acid.is_some() { PLATE_KNEES } else { KNEES };
    let points = simplified(bank.typical.curve, knees);
    let slope = |at: &[(f64, f64)]| (at[1].1 - at[0].1) / (at[1].0 - at[0].0) * bank.cells;
    let slopes: Vec<f64> = points.windows(2).map(slope).collect();
    store.curve_from = (points.first().map_or(0.0, |first| first.1) * bank.cells) as f32;
    store.curve_rise = slopes.first().copied().unwrap_or_default() as f32;
    let bends = slopes.windows(2).map(|pair| pair[1] - pair[0]);
    for (place, (bend, point)) in bends.zip(points.iter().skip(1)).enumerate().take(KNEES) {
        store.bends[place] = bend as f32;
        store.knees[place] = point.0 as f32;
    }
    store
}

fn with_plates(mut store: Store, bank: &Bank, full: AmpHours) -> Store {
    let Some(own) = &bank.lead_acid else { return store };
    let pace = own.fit.wells.pace(HOUR);
    let (one, none) = (AmpHours(1.0), AmpHours::ZERO);
    let rested = |available, bound| pace.after(Held { available, bound }, Amps::ZERO).available.0;
    let comes = rested(none, one);
    let taken = -pace.after(Held { available: none, bound: none }, Amps(1.0)).available.0;
    let ten_hour = own.ten_hour_current(full);
    let (spare, whole) = (own.whole - 1.0, own.whole * own.fit.wells.share);
    store.plates = true;
    store.top = 1.0;
    store.per_ten_hour = (full.0 / ten_hour.0 * 4.0 / 20.73) as f32;
    store.room = (whole / taken) as f32;
    // The curve by what is in the available well, which is what the plates see.
    let share = own.fit.wells.share / taken;
    store.curve_from -= store.curve_rise * spare as f32;
    store.curve_rise /= share as f32;
    store.knees = store.knees.map(|knee| share as f32 * (spare as f32 + knee));
    store.bends = store.bends.map(|bend| bend / share as f32);
    store.stays = (rested(one, none) - comes) as f32;
    store.comes = (comes / taken) as f32;
    store.spare_comes = (comes / taken * spare) as f32;
    store.plate_size = (ten_hour.0 * 10.0 / bank.cells / full.0) as f32;
    store
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{self, Chemistry};
    use sunlarder_lanes::{accepted_by_plates, fuller_conducts, kept_by_plates, open_circuit};

    fn bank(chemistry: Chemistry) -> Bank {
        Bank::parse(&document::Bank { chemistry, ..document::Bank::default() }).unwrap()
    }

    const FULL: AmpHours = AmpHours(100.0);

    #[test]
    fn the_curve_keeps_its_voltage_within_four_per_cent_above_a_tenth() {
        for chemistry in Chemistry::ALL {
            let bank = bank(*chemistry);
            let store = store(&bank, FULL, None);
            for percent in 10..=99 {
                let charge = f64::from(percent) / 100.0;
                // Rested, the available well is as full as the bank.
                let near = if let Some(own) = &bank.lead_acid {
                    let spare = own.whole as f32 - 1.0;
                    store.room / own.whole as f32 * (charge as f32 + spare)
                } else {
                    charge as f32
                };
                let exact = bank.open_circuit(charge).0;
                let own = if store.plates {
                    open_circuit::<true>(&store, near)
                } else {
                    open_circuit::<false>(&store, near)
                };
                let apart = f64::from(own) / exact - 1.0;
                assert!(apart.abs() < 0.04, "{chemistry:?} {charge}: {own} {exact}");
                let lead = store.plates;
                assert!(!lead || apart.abs() < 2e-3, "{chemistry:?} {charge}: {own} {exact}");
            }
        }
    }

    #[test]
    fn plates_accept_what_the_table_says_and_keep_what_the_law_says() {
        let bank = bank(Chemistry::FloodedLeadAcid);
        let store = store(&bank, FULL, None);
        let lead_acid = bank.lead_acid.as_ref().unwrap();
        for percent in 0..=100 {
            let charge = f64::from(percent) / 100.0;
            let exact = lead_acid.conductance(charge, STATED_AT);
            let own = f64::from(accepted_by_plates(charge as f32));
            assert!((own - exact).abs() < 0.03 * exact + 2e-4, "{charge}: {own} {exact}");
            let exact = 1.0 / crate::bank::LeadAcid::resistance_factor(charge, STATED_AT);
            let own = f64::from(fuller_conducts(charge as f32));
            assert!((own / exact - 1.0).abs() < 0.03, "{charge}: {own} {exact}");
            for tenths in 1..40 {
                let over = f64::from(tenths) / 10.0;
                let exact = bank.efficiency.at(charge, over);
                let taken = over as f32 / store.per_ten_hour * 4.0 / 20.73;
                let own = f64::from(kept_by_plates(&store, 1.0 - charge as f32, taken));
                assert!((own - exact).abs() < 1e-3, "{charge} {over}: {own} {exact}");
            }
        }
    }
}
