//! More array never shortens, more load never lengthens, a bigger bank never lasts less.

use proptest::prelude::*;
use sunlarder_engine::document::{Chemistry, Document, Field, Load, Supply};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::Climate;
use sunlarder_engine::system::System;

use crate::plans::{Kind, array, load, plan};
use crate::{CASES, settings};

/// Rounding of a time \[h\].
const ROUNDING_H: f64 = 1e-6;

/// Hours to the reserve in the mean sun and without sun; endless where it is never reached.
fn times(plan: &Document) -> Option<[f64; 2]> {
    let system = System::assemble(plan, Climate::embedded(), &mut ()).ok()?;
    let times = Outlook::of(&system).times();
    Some(
        [times.to_reserve, times.dark_to_reserve].map(|time| time.map_or(f64::INFINITY, |at| at.0)),
    )
}

/// An everyday plan on iron phosphate, whose charge efficiency is the same at every state of charge.
fn lithium() -> impl Strategy<Value = Document> {
    plan(Kind::Everyday).prop_map(|mut plan| {
        plan.bank.chemistry = Chemistry::Lifepo4;
        plan
    })
}

proptest! {
    #![proptest_config(settings(CASES))]

    #[test]
    fn more_array_never_shortens(mut plan in lithium(), array in array(Kind::Everyday)) {
        plan.arrays.insert(0, array);
        let Some(before) = times(&plan) else { return Ok(()) };
        let first = &mut plan.arrays[0];
        let strings = first.in_parallel;
        first.in_parallel += 1.0;
        let limit = first.controller.limit_a * first.in_parallel / strings;
        first.controller.limit_a = Field::ChargerCurrent.range().rounded(limit + 0.05);
        let after = times(&plan).unwrap();
        prop_assert!(after[0] >= before[0] - ROUNDING_H, "{before:?} {after:?}");
        prop_assert!((after[1] - before[1]).abs() <= ROUNDING_H || after == before);
    }

    #[test]
    fn more_load_never_lengthens(mut plan in lithium(), more in load(Kind::Everyday)) {
        let Some(before) = times(&plan) else { return Ok(()) };
        plan.loads.push(Load { on: true, supply: Supply::Dc, ..more });
        let after = times(&plan).unwrap();
        for (before, after) in before.into_iter().zip(after) {
            prop_assert!(after <= before + ROUNDING_H, "{before} {after}");
        }
    }

    #[test]
    fn more_load_on_the_inverter_never_lengthens(mut plan in lithium(), more in load(Kind::Everyday)) {
        let Some(before) = times(&plan) else { return Ok(()) };
        plan.loads.push(Load { on: true, supply: Supply::Ac, ..more });
        let after = times(&plan).unwrap();
        for (before, after) in before.into_iter().zip(after) {
            prop_assert!(after <= before + ROUNDING_H, "{before} {after}");
        }
    }

    #[test]
    fn a_bigger_bank_never_lasts_less_without_sun(mut plan in plan(Kind::Everyday), more in 1.0..3.0_f64) {
        plan.arrays.clear();
        plan.shore = None;
        plan.alternator = None;
        let Some([_, before]) = times(&plan) else { return Ok(()) };
        plan.bank.capacity_ah = Field::BatteryCapacity.range().rounded(plan.bank.capacity_ah * more);
        let [_, after] = times(&plan).unwrap();
        prop_assert!(after >= before - ROUNDING_H, "{before} {after}");
    }
}
