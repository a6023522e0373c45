//! More array never shortens, more load never lengthens, a bigger bank never lasts less.

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use sunlarder_engine::document::{
    Chemistry, Document, Field, Load, Rating, Schedule, Supply, When,
};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::Climate;
use sunlarder_engine::system::System;

use crate::plans::{Kind, array, load, of_chemistry, plan};
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

/// A load that runs every day at no stated time.
///
/// One that runs at other times than the run itself would lower the month's mean discharge current, by which the bank's
/// capacity is taken, and so lengthen the run by seconds.
fn steady() -> impl Strategy<Value = Load> {
    let hours = 0.1..=24.0_f64;
    (load(Kind::Everyday), hours).prop_map(|(load, hours)| {
        let hours = Field::HoursPerDay.range().rounded(hours);
        Load { on: true, schedule: Schedule::daily(When::HoursPerDay(hours)), ..load }
    })
}

/// An everyday plan on a chemistry that is not left to chance: iron phosphate and lead-acid of every kind. Without a generator: one
/// that starts sooner for a larger load may well make the run longer.
fn stored() -> impl Strategy<Value = Document> {
    let chemistries =
        [Chemistry::Lifepo4, Chemistry::FloodedLeadAcid, Chemistry::Agm, Chemistry::Gel];
    (plan(Kind::Everyday), proptest::sample::select(chemistries.to_vec())).prop_map(
        |(mut plan, chemistry)| {
            plan.bank = of_chemistry(plan.bank, chemistry);
            plan.generator = None;
            plan
        },
    )
}

/// Where no plan ever reaches its reserve, times that never grow would show nothing.
#[test]
fn many_random_plans_reach_their_reserve() {
    let mut runner = TestRunner::deterministic();
    let strategy = stored();
    let made: Vec<[f64; 2]> = (0..300)
        .filter_map(|_| times(&strategy.new_tree(&mut runner).unwrap().current()))
        .collect();
    let reached = |which: usize| made.iter().filter(|times| times[which].is_finite()).count();
    let (lit, dark) = (reached(0), reached(1));
    assert!(
        lit >= 75 && dark >= 150,
        "{lit} with the mean sun and {dark} without, of {}",
        made.len()
    );
}

proptest! {
    #![proptest_config(settings(CASES))]

    #[test]
    fn more_array_never_shortens(mut plan in stored(), array in array(Kind::Everyday)) {
        plan.arrays.insert(0, array);
        let Some(before) = times(&plan) else { return Ok(()) };
        let first = &mut plan.arrays[0];
        let strings = first.in_parallel;
        first.in_parallel += 1.0;
        let limit = first.controller.limit_a * first.in_parallel / strings;
        first.controller.limit_a = Field::ChargerCurrent.range().rounded(limit + 0.05);
        let after = times(&plan).unwrap();
        prop_assert!(after[0] >= before[0] - ROUNDING_H, "{before:?} {after:?}");
        prop_assert_eq!(after[1], before[1], "without sun an array is of no use");
    }

    #[test]
    fn more_load_never_lengthens(mut plan in stored(), more in steady()) {
        let Some(before) = times(&plan) else { return Ok(()) };
        plan.loads.push(Load { supply: Supply::Dc, ..more });
        let after = times(&plan).unwrap();
        for (before, after) in before.into_iter().zip(after) {
            prop_assert!(after <= before + ROUNDING_H, "{before} {after}");
        }
    }

    #[test]
    fn more_load_on_the_inverter_never_lengthens(mut plan in stored(), more in steady()) {
        let Some(before) = times(&plan) else { return Ok(()) };
        plan.loads.push(Load { supply: Supply::Ac, ..more });
        let after = times(&plan).unwrap();
        for (before, after) in before.into_iter().zip(after) {
            prop_assert!(after <= before + ROUNDING_H, "{before} {after}");
        }
    }

    #[test]
    fn a_small_load_beside_a_large_one_never_lengthens(
        mut plan in stored(), large in 500.0..1500.0_f64, hours in 0.1..12.0_f64, small in 0.0..5.0_f64,
    ) {
        let ac = |power: f64, hours: f64| Load {
            rating: Rating::PowerW(Field::LoadPower.range().rounded(power)),
            supply: Supply::Ac,
            schedule: Schedule::daily(When::HoursPerDay(Field::HoursPerDay.range().rounded(hours))),
            ..Load::default()
        };
        // An inverter that takes more to look for loads than to feed them is better off with a small one.
        if let Some(inverter) = &mut plan.inverter {
            inverter.search_w = None;
        }
        plan.loads.push(ac(large, hours));
        let Some(before) = times(&plan) else { return Ok(()) };
        plan.loads.push(ac(small, 24.0));
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
        plan.generator = None;
        plan.turbine = None;
        // Further ratings of a battery that grows would have to grow with it to a tenth.
        (plan.bank.second_capacity_ah, plan.bank.second_hours_h) = (None, None);
        (plan.bank.third_capacity_ah, plan.bank.third_hours_h) = (None, None);
        let Some([_, before]) = times(&plan) else { return Ok(()) };
        plan.bank.capacity_ah = Field::BatteryCapacity.range().rounded(plan.bank.capacity_ah * more);
        let [_, after] = times(&plan).unwrap();
        prop_assert!(after >= before - ROUNDING_H, "{before} {after}");
    }
}
