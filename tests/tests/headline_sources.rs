//! From each headline figure one can go back, step by step, to what was given and by whom.

#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]

use std::collections::{BTreeMap, BTreeSet};

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{Outlook, Question};
use sunlarder_engine::place::Climate;
use sunlarder_engine::quantity::{AmpHours, Hours};
use sunlarder_engine::system::System;
use sunlarder_engine::working::{Formula, Symbol, Trace, Working};
use sunlarder_tests::plans::openable;
use sunlarder_tests::provenance::walk;

/// A plan with everything that its figures come from.
struct Answered {
    name: String,
    system: System,
    outlook: Outlook,
}

fn answered() -> Vec<Answered> {
    let answer = |(name, plan): (String, Document)| {
        let system = System::assemble(&plan, Climate::embedded(), &mut ()).ok()?;
        let outlook = Outlook::of(&system);
        Some(Answered { name, system, outlook })
    };
    openable().unwrap().into_iter().filter_map(answer).collect()
}

/// The symbol under which a question's figure stands.
fn figure(question: Question) -> Symbol {
    match question {
        Question::Capacity => Symbol::UsableCapacity,
        Question::Run => Symbol::ChargeState,
        Question::Autonomy => Symbol::AutonomyDays,
        Question::Budget => Symbol::DayTotal,
        Question::Month => Symbol::Balance,
    }
}

/// The last step that made this symbol.
fn last_of(working: &Working, symbol: Symbol) -> Option<usize> {
    working.steps().iter().rposition(|step| step.formula.symbol() == symbol)
}

/// Walks from the last step of a symbol; the formulas that it rests on.
fn walked(name: &str, working: &Working, symbol: Symbol) -> BTreeSet<String> {
    let found = walk(working, last_of(working, symbol).unwrap());
    assert!(found.faults.is_empty(), "{name}, {symbol:?}: {:#?}", found.faults);
    assert!(found.leaves > 0, "{name}, {symbol:?} rests on nothing");
    let formula = |place: &usize| format!("{:?}", working.steps()[*place].formula);
    found.steps.iter().map(formula).collect()
}

#[test]
fn every_question_leads_back_to_what_was_given() {
    let mut walked_by_question: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for Answered { name, system, outlook } in answered() {
        for question in Question::ALL {
            let mut working = Working::new();
            outlook.work(question, &system, &mut working);
            if question == Question::Autonomy && outlook.autonomy_days.is_none() {
                assert_eq!(last_of(&working, figure(question)), None, "{name}");
                continue;
            }
            let formulas = walked(&name, &working, figure(question));
            for place in (0..working.steps().len())
                .filter(|place| working.steps()[*place].formula.symbol() == Symbol::RatingDeviation)
            {
                let found = walk(&working, place);
                assert!(found.faults.is_empty(), "{name}: {:#?}", found.faults);
            }
            walked_by_question.entry(format!("{question:?}")).or_default().extend(formulas);
        }
    }
    // What a figure must rest on, somewhere among the plans: else a link of the chain is gone.
    let rests_on = |question: Question, formulas: &[Formula]| {
        let walked = &walked_by_question[&format!("{question:?}")];
        for formula in formulas {
            assert!(walked.contains(&format!("{formula:?}")), "{question:?} not on {formula:?}");
        }
    };
    use Formula as F;
    let capacity = [F::AgedCapacity, F::RateFactor, F::ColdFactor, F::ColdFactorTypical];
    rests_on(Question::Capacity, &capacity);
    rests_on(Question::Run, &[F::ChargeCame, F::ChargeLost, F::FullCapacity]);
    rests_on(Question::Autonomy, &capacity);
    rests_on(Question::Autonomy, &[F::DayTotal, F::LoadEnergy]);
    let loads = [F::EnergyDirect, F::EnergyByInverter, F::InverterIdle, F::InverterSearch];
    rests_on(Question::Budget, &loads);
    rests_on(Question::Budget, &[F::StandingCharge, F::StandingWithControllers, F::ProtectionDay]);
    rests_on(Question::Month, &loads);
    let light = [F::Declination, F::GridClearness, F::OwnClearness, F::DailyIrradiation];
    rests_on(Question::Month, &light);
    let arrays = [F::DiffuseShare, F::DiffuseShareWinter, F::PlaneIrradiation, F::ArrayYield];
    rests_on(Question::Month, &arrays);
    rests_on(Question::Month, &[F::ArraysEnergy, F::ArrayCharge, F::ArraysCharge, F::SolarDay]);
}

/// Whatever the sun gives in any month comes from the light on each array.
#[test]
fn every_month_of_every_plan_leads_back_and_its_sun_to_the_sky() {
    for Answered { name, system, outlook } in answered() {
        for month in 0..12 {
            let mut working = Working::new();
            let worked = outlook.month_worked(&system, month, &mut working);
            let formulas = walked(&name, &working, Symbol::Balance);
            let sky = formulas.contains("PlaneIrradiation") && formulas.contains("DayAngle");
            assert!(sky || system.arrays.is_empty(), "{name}, {month}: {formulas:?}");
            let kept = outlook.months[month];
            assert_eq!((worked.balance, worked.gain), (kept.balance, kept.gain), "{name}");
            for symbol in [Symbol::GeneratorHours, Symbol::Fuel] {
                if last_of(&working, symbol).is_some() {
                    walked(&name, &working, symbol);
                }
            }
        }
    }
}

/// The hour that a person scrubs to, the run without sun, and the years that a bank lasts.
#[test]
fn steps_of_runs_and_the_life_of_the_bank_lead_back() {
    for Answered { name, system, outlook } in answered() {
        for run in [&outlook.run, &outlook.dark] {
            let mut working = Working::new();
            outlook.capacity_worked(&system, &mut working);
            run.account(&mut working);
            walked(&name, &working, Symbol::ChargeState);
            for place in [0, 30, 60, run.samples.len() - 1] {
                let mut working = Working::new();
                outlook.capacity_worked(&system, &mut working);
                if run.replay(&system, place, &mut working).is_some() {
                    walked(&name, &working, Symbol::ChargeState);
                    walked(&name, &working, Symbol::NetCurrent);
                }
            }
            let mut working = Working::new();
            let charges = run.samples.iter().map(|sample| sample.charge);
            let warmth = run.samples.iter().map(|sample| sample.forcing.temperature);
            let stretch = run.samples.last().map_or(Hours::ZERO, |last| last.at);
            if system.bank.ageing(charges, warmth, stretch, &mut working).is_some() {
                walked(&name, &working, Symbol::YearsLeft);
            }
        }
    }
}

/// A rating that needs a formula shows it where the plan is assembled with a trace.
#[test]
fn powers_from_plates_and_labels_lead_back() {
    let mut seen = BTreeSet::new();
    for (name, plan) in openable().unwrap() {
        let mut working = Working::new();
        let Ok(system) = System::assemble(&plan, Climate::embedded(), &mut working) else {
            continue;
        };
        Outlook::of(&system).work(Question::Budget, &system, &mut working);
        seen.extend(walked(&name, &working, Symbol::DayTotal));
    }
    for formula in [Formula::PlatePower, Formula::LabelPower, Formula::InputPower] {
        assert!(seen.contains(&format!("{formula:?}")), "{formula:?}");
    }
}

/// The other side of the test: a figure whose makers are left out is found, not passed over.
#[test]
fn a_broken_chain_is_noticed() {
    for Answered { name, system, outlook } in answered() {
        let mut working = Working::new();
        outlook.work(Question::Budget, &system, &mut working);
        let total = working.result().unwrap();
        let inputs: Vec<_> =
            total.inputs.iter().map(|input| input.term.named(input.symbol)).collect();
        let mut broken = Working::new();
        broken.step(total.formula, AmpHours(total.value), &inputs);
        let found = walk(&broken, 0);
        assert!(found.faults.len() >= 3, "{name}: {:#?}", found.faults);
        assert!(
            found.faults.iter().all(|fault| fault.contains("no source")),
            "{:#?}",
            found.faults
        );
    }
}
