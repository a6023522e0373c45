//! Runs and outlooks: accounts close, nothing leaves its range, every question is answered with numbers.

use std::sync::Arc;

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use sunlarder_engine::bank::Bank;
use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{Outlook, budget};
use sunlarder_engine::place::Climate;
use sunlarder_engine::quantity::{AmpHours, WattHours};
use sunlarder_engine::simulate::{Almanac, Flows, Run, STEP, Sunlight};
use sunlarder_engine::system::System;

use crate::plans::{Kind, any_plan, plan};
use crate::{CASES, settings};

/// Rounding of sums over a run, of all that flowed.
const CLOSES: f64 = 1e-9;
/// A week, the longest that schedules repeat in.
const WEEK: u8 = 7;

/// What does not close in Ah and in Wh, each over what flowed.
fn gaps(flows: &Flows, held: AmpHours, volts: f64) -> (f64, f64) {
    let came = flows.came();
    let went = flows.load + flows.protection + flows.charge_loss + flows.self_discharge;
    let charge = (came - went - flows.stored).0.abs() / (came + went + held).0;
    let out = flows.load_energy + flows.protection_energy + flows.bank_loss + flows.stored_energy;
    let moved = (flows.source_energy + flows.load_energy + flows.protection_energy).0;
    let energy = (flows.source_energy - out).0.abs() / (moved + held.0 * volts);
    (charge, energy)
}

/// Holds one run to its accounts and its ranges.
fn assert_closes(bank: &Bank, run: &Run) -> Result<(), TestCaseError> {
    let volts = bank.nominal.0;
    for sample in &run.samples {
        prop_assert!((0.0..=1.0).contains(&sample.charge), "{sample:?}");
        prop_assert!(sample.volts.0 > 0.0 && sample.volts.0.is_finite(), "{sample:?}");
        let (charge, energy) = gaps(&sample.flows, run.full, volts);
        prop_assert!(charge <= CLOSES && energy <= CLOSES, "{charge} {energy} {sample:?}");
        let flows = &sample.flows;
        let given = [flows.load, flows.unmet, flows.curtailed];
        let used = [flows.solar, flows.turbine, flows.engine, flows.generator, flows.shore];
        let all = given.into_iter().chain(used).map(|flow| flow.0);
        let least = all.fold(f64::INFINITY, f64::min);
        prop_assert!(least >= -CLOSES * (flows.load + flows.solar + run.full).0, "{sample:?}");
        let generated = flows.generator * sample.volts;
        prop_assert!(generated.0 <= flows.source_energy.0 * (1.0 + CLOSES), "{sample:?}");
    }
    let (charge, energy) = gaps(&run.totals, run.full, volts);
    prop_assert!(charge <= CLOSES && energy <= CLOSES, "{charge} {energy} {:?}", run.totals);
    assert_store_moved(bank, run)
}

/// What was summed as stored is what the store at the end holds more than at the start.
fn assert_store_moved(bank: &Bank, run: &Run) -> Result<(), TestCaseError> {
    let end = run.samples.last().map_or(run.initial, |last| last.charge);
    let moved = run.full * (end - run.initial);
    let totals = &run.totals;
    let came = totals.came();
    let throughput = came + totals.load + totals.protection + run.full;
    prop_assert!((run.totals.stored - moved).0.abs() <= CLOSES * throughput.0);
    let energy: WattHours = bank.stored(end, run.full) - bank.stored(run.initial, run.full);
    let scale = throughput.0 * bank.nominal.0;
    prop_assert!((run.totals.stored_energy - energy).0.abs() <= CLOSES * scale);
    let account = run.account(&mut ());
    prop_assert!((account - end).abs() <= CLOSES * (throughput / run.full), "{account} {end}");
    Ok(())
}

/// The first number of an outlook's summary that is none, with what stands around it.
fn not_a_number(outlook: &Outlook) -> Option<String> {
    let mut summary = outlook.clone();
    let opening = Arc::make_mut(&mut summary.opening);
    opening.run.samples.clear();
    opening.dark.samples.clear();
    let text = format!("{summary:?}");
    let words = text.split(|letter: char| !letter.is_alphanumeric());
    let bad = words.into_iter().find(|word| matches!(*word, "NaN" | "inf"))?;
    let at = text.find(bad)?;
    Some(text.get(at.saturating_sub(80)..at + 3).unwrap_or(bad).to_owned())
}

fn sampled(kind: Kind, count: usize) -> Vec<Result<System, String>> {
    let mut runner = TestRunner::deterministic();
    let strategy = plan(kind);
    let made = (0..count).map(|_| {
        let plan = strategy.new_tree(&mut runner).unwrap().current();
        System::assemble(&plan, Climate::embedded(), &mut ())
            .map_err(|problem| format!("{problem:?}"))
    });
    made.collect()
}

/// Properties over plans that are refused would show nothing.
#[test]
fn most_random_plans_can_be_assembled() {
    for (kind, least) in [(Kind::Everyday, 85), (Kind::Wild, 60)] {
        let made = sampled(kind, 100);
        let refused: Vec<_> = made.iter().filter_map(|one| one.as_ref().err()).collect();
        assert!(100 - refused.len() >= least, "{} refused: {refused:#?}", refused.len());
    }
}

proptest! {
    #![proptest_config(settings(CASES))]

    #[test]
    fn the_outlook_answers_every_plan_with_numbers(plan in any_plan()) {
        let Ok(system) = System::assemble(&plan, Climate::embedded(), &mut ()) else { return Ok(()) };
        let outlook = Outlook::of(&system);
        prop_assert_eq!(not_a_number(&outlook), None);
        prop_assert_eq!(outlook.months.len(), 12);
        for run in [&outlook.run, &outlook.dark] {
            assert_closes(&system.bank, run)?;
        }
        prop_assert!(outlook.capacity.usable <= outlook.capacity.full);
        prop_assert!(outlook.capacity.full <= system.bank.slowest);
    }

    #[test]
    fn the_budget_is_the_sum_of_what_acts(plan in any_plan(), month in 0..12_usize) {
        let Ok(system) = System::assemble(&plan, Climate::embedded(), &mut ()) else { return Ok(()) };
        let sunlight = &mut Sunlight::default();
        let almanac = &mut Almanac::new(&system, sunlight);
        let budget = budget(almanac, month, &mut ());
        let mut sum = AmpHours::ZERO;
        for weekday in 0..WEEK {
            for forcing in almanac.day(month, weekday) {
                let current = forcing.demand / system.bank.nominal + forcing.standing;
                sum += (current + system.bank.protection) * STEP;
            }
        }
        let mean = sum.0 / f64::from(WEEK);
        prop_assert!(
            (budget.total.0 - mean).abs() <= CLOSES * mean.max(1e-6),
            "{:?} against {}", budget, mean
        );
        let parts: AmpHours = budget.loads.iter().map(|load| load.charge).sum();
        let rest = budget.inverter.charge + budget.standing + budget.protection;
        prop_assert!((parts + rest - budget.total).0.abs() <= CLOSES * budget.total.0.max(1e-6));
    }

    #[test]
    fn what_is_kept_of_the_sun_changes_no_answer(plans in [plan(Kind::Everyday), plan(Kind::Everyday)]) {
        let mut sunlight = Sunlight::default();
        for plan in [&plans[0], &plans[1], &plans[0]] {
            for loads in [plan.loads.clone(), plans[1].loads.clone()] {
                let plan = Document { loads, ..plan.clone() };
                let Ok(system) = System::assemble(&plan, Climate::embedded(), &mut ()) else { continue };
                prop_assert_eq!(Outlook::in_sunlight(&system, &mut sunlight), Outlook::of(&system));
            }
        }
    }

    #[test]
    fn tracing_an_outlook_changes_no_bit(plan in plan(Kind::Everyday)) {
        let Ok(system) = System::assemble(&plan, Climate::embedded(), &mut ()) else { return Ok(()) };
        let mut working = sunlarder_engine::working::Working::new();
        prop_assert_eq!(&System::assemble(&plan, Climate::embedded(), &mut working), &Ok(system.clone()));
        let outlook = Outlook::of(&system);
        prop_assert_eq!(outlook.budget_worked(&system, &mut working), outlook.budget.clone());
        prop_assert_eq!(outlook.capacity_worked(&system, &mut working), outlook.capacity);
        prop_assert_eq!(outlook.autonomy_worked(&system, &mut working), outlook.autonomy_days);
        for month in &outlook.months {
            prop_assert_eq!(outlook.month_worked(&system, month.month, &mut working), *month);
        }
        for place in [0, outlook.run.samples.len() / 2] {
            let replayed = outlook.run.replay(&system, place, &mut working);
            prop_assert_eq!(replayed, outlook.run.samples.get(place).map(|sample| sample.charge));
        }
    }
}
