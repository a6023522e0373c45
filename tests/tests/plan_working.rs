//! Every step of a whole plan's working is what its formula says with the numbers put in.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it cannot read")]

use std::collections::BTreeSet;

use sunlarder_engine::document::Document;
use sunlarder_engine::gauge::{Kind, load_current, setting};
use sunlarder_engine::outlook::{Outlook, Question};
use sunlarder_engine::place::Climate;
use sunlarder_engine::quantity::Hours;
use sunlarder_engine::system::System;
use sunlarder_engine::working::{Formula, Working};
use sunlarder_tests::expression::{plain, value};
use sunlarder_tests::plans::openable;

/// Rounding of the few operations of a formula in another order than the engine's, relative to one unit or the value.
const ROUNDING: f64 = 1e-9;

/// Formulas that stand for a table or a sum over the steps of a day, which has no closed form to put numbers into.
const LOOKED_UP: [Formula; 4] = [
    Formula::GridClearness,
    Formula::ColdFactor,
    Formula::ColdFactorTypical,
    Formula::PlaneIrradiation,
];

/// All working that a plan's page can show.
fn working_of(plan: &Document) -> Working {
    let mut working = Working::new();
    let system = System::assemble(plan, Climate::embedded(), &mut working).unwrap();
    let outlook = Outlook::of(&system);
    for question in Question::ALL {
        outlook.work(question, &system, &mut working);
    }
    for month in 0..12 {
        outlook.month_worked(&system, month, &mut working);
    }
    for load in &system.loads {
        load_current(&system, load, &mut working);
    }
    for kind in Kind::ALL {
        setting(kind, &system, &outlook, &mut working);
    }
    outlook.dark.account(&mut working);
    for run in [&outlook.run, &outlook.dark] {
        let charges = run.samples.iter().map(|sample| sample.charge);
        let temperatures = run.samples.iter().map(|sample| sample.forcing.temperature);
        let stretch = run.samples.last().map_or(Hours::ZERO, |last| last.at);
        system.bank.ageing(charges, temperatures, stretch, &mut working);
        let places = [0, 30, 50, 70, run.samples.len().saturating_sub(1)];
        for place in places {
            run.replay(&system, place, &mut working);
        }
    }
    working
}

fn plans() -> Vec<(String, Document)> {
    let resolved = |plan: &Document| System::assemble(plan, Climate::embedded(), &mut ()).is_ok();
    openable().unwrap().into_iter().filter(|(_, plan)| resolved(plan)).collect()
}

#[test]
fn every_step_of_a_plan_is_what_its_formula_says() {
    let mut seen = BTreeSet::new();
    let mut failures = BTreeSet::new();
    for (name, plan) in plans() {
        for step in working_of(&plan).steps() {
            if LOOKED_UP.contains(&step.formula) {
                continue;
            }
            let shown = value(step).unwrap_or_else(|reason| panic!("{name}: {step:?}: {reason}"));
            let stated = plain(step.value, step.unit);
            let inputs =
                step.inputs.iter().map(|input| plain(input.term.value, input.term.unit).abs());
            let scale = inputs.fold(stated.abs().max(1.0), f64::max);
            if (shown - stated).abs() > ROUNDING * scale {
                failures
                    .insert(format!("{name}: {:?} is {stated}, shown as {shown}", step.formula));
            }
            seen.insert(format!("{:?}", step.formula));
        }
    }
    assert!(failures.is_empty(), "{failures:#?}");
    assert!(seen.len() >= 35, "{} formulas: {seen:?}", seen.len());
}
