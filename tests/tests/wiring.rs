//! Conductors, drops, ampacities and fuses against their reference values, and the working of runs against its own text.
//!
//! Each case of `tests/reference/wiring.json` names its source.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use std::collections::BTreeSet;

use serde_json::Value;
use sunlarder_engine::document::{Array, Document};
use sunlarder_engine::fitting::{
    Basis, Bundle, Cold, ENGINE_SPACE, Fitting, FuseClass, Gauge, Insulation, Lengths, Note,
    Refusal, RunKind, ShortCircuit, Stretch, Tables, Unfit, ambient_factor, bundle_factor,
    by_cranking, largest_fuse, loop_resistance, next_rating, table_ampacity,
};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::Climate;
use sunlarder_engine::quantity::{Amps, Celsius, Metres, SquareMillimetres, Volts};
use sunlarder_engine::system::System;
use sunlarder_engine::working::{Formula, Working};
use sunlarder_tests::expression::{plain, value};
use sunlarder_tests::plans::openable;
use sunlarder_tests::provenance::walk;
use sunlarder_tests::reference::{Case, Outcome, cases, near};

const REFERENCE: &str = include_str!("../reference/wiring.json");

/// Metres in a foot, exact.
const FOOT: f64 = 0.3048;

fn gauge(name: &str) -> Result<Gauge, String> {
    Gauge::all().find(|own| own.name() == name).ok_or_else(|| format!("no gauge {name}"))
}

fn near_share(case: &Case, name: &str, computed: f64) -> Outcome {
    case.near(name, computed, case.tolerance("rel") * case.expected(name).abs())
}

/// A list of texts of a case, which it holds no other way.
fn texts(id: &str, group: &str, name: &str) -> Vec<String> {
    let file: Value = serde_json::from_str(REFERENCE).unwrap();
    let case = file["cases"].as_array().unwrap().iter().find(|case| case["id"] == id).unwrap();
    let list = case[group][name].as_array().unwrap();
    list.iter().map(|text| text.as_str().unwrap().to_owned()).collect()
}

fn text(id: &str, group: &str, name: &str) -> String {
    let file: Value = serde_json::from_str(REFERENCE).unwrap();
    let case = file["cases"].as_array().unwrap().iter().find(|case| case["id"] == id).unwrap();
    case[group][name].as_str().unwrap().to_owned()
}

fn awg(case: &Case) -> Outcome {
    let gauge = gauge(case.text("awg"))?;
    near_share(case, "d_mm", gauge.diameter())?;
    near_share(case, "area_mm2", gauge.section().0)?;
    near_share(case, "cmil", gauge.circular_mils())?;
    // A kilometre one way; out and back is twice that.
    let ohm = |at| loop_resistance(Metres(1000.0), gauge.section(), Celsius(at)).0 / 2.0;
    near_share(case, "ohm_km_20C", ohm(20.0))?;
    near_share(case, "ohm_km_75C", ohm(75.0))
}

fn drop(case: &Case) -> Outcome {
    let section = SquareMillimetres(case.input("area_mm2"));
    let length = Metres(case.input("length_oneway_m"));
    let resistance = loop_resistance(length, section, Celsius(case.input("T_C")));
    near_share(case, "dV", (Amps(case.input("I")) * resistance).0)
}

/// The published example: 10 A over 21 feet out and back at 12 V.
fn published_drop(case: &Case) -> Outcome {
    for (name, share) in [("gauge_at_3pct", 0.03), ("gauge_at_10pct", 0.10)] {
        let run = Stretch {
            current: Amps(case.input("I")),
            length: Metres(case.input("round_trip_ft") / 2.0 * FOOT),
            allowed: Volts(case.input("V") * share),
        };
        let thinnest = Gauge::all().find(|own| own.holds_marine_form(&run));
        let found = thinnest.map(|own| format!("{} AWG", own.name())).unwrap_or_default();
        let expected = text(case.id(), "expected", name);
        if found != expected {
            return Err(format!("{name}: {found} instead of {expected}"));
        }
    }
    Ok(())
}

const LAND: [(Insulation, &str); 3] =
    [(Insulation::C60, "c60"), (Insulation::C75, "c75"), (Insulation::C90, "c90")];

fn land_ampacity(case: &Case) -> Outcome {
    for (insulation, name) in LAND {
        for (own, expected) in
            texts(case.id(), "inputs", "awg").iter().zip(case.expected_list(name))
        {
            let found = table_ampacity(Tables::Land, insulation, gauge(own)?);
            near(own, found.map_or(f64::NAN, |own| own.0), expected, 0.0)?;
        }
    }
    // The rule for thin conductors is in the notes of the case: 15, 20 and 30 A for 14, 12 and 10 AWG.
    for (own, most) in [("14", 15.0), ("12", 20.0), ("10", 30.0)] {
        if largest_fuse(Tables::Land, gauge(own)?) != Some(Amps(most)) {
            return Err(format!("{own} AWG has no limit of {most} A"));
        }
    }
    Ok(())
}

fn land_correction(case: &Case) -> Outcome {
    for (insulation, name) in LAND {
        for (ambient, expected) in case.inputs("Ta").iter().zip(case.expected_list(name)) {
            let found = ambient_factor(insulation, Celsius(*ambient));
            near(&format!("{name} at {ambient}"), found, expected, case.tolerance("abs"))?;
        }
    }
    Ok(())
}

fn marine_ampacity(case: &Case) -> Outcome {
    let outside = case.expected_list("outside");
    for (own, expected) in texts(case.id(), "inputs", "awg").iter().zip(&outside) {
        let found = table_ampacity(Tables::Marine, Insulation::C105, gauge(own)?);
        near(own, found.map_or(f64::NAN, |own| own.0), *expected, 0.0)?;
    }
    if outside.len() != Gauge::COUNT {
        return Err(format!("{} gauges", outside.len()));
    }
    case.near("engine_space_factor", ENGINE_SPACE, 0.0)?;
    let bundles = [
        (Bundle::UpTo3, "2-3"),
        (Bundle::UpTo6, "4-6"),
        (Bundle::UpTo24, "7-24"),
        (Bundle::More, "25+"),
    ];
    for (bundle, name) in bundles {
        let found = bundle_factor(Tables::Marine, bundle);
        near(name, found, case.expected_in("bundle_factor", name), 0.0)?;
    }
    Ok(())
}

fn interrupting(case: &Case) -> Outcome {
    let [main, branch] = ["main_A", "branch_A"].map(|name| case.expected_list(name));
    // Both ends of each step of "<=650", "651-1100" and ">1100".
    for (place, amps) in [(0, 1.0), (0, 650.0), (1, 651.0), (1, 1100.0), (2, 1101.0), (2, 2200.0)] {
        let (of_main, of_branch) = by_cranking(Amps(amps));
        near("main", of_main.0, main[place], 0.0)?;
        near("branch", of_branch.0, branch[place], 0.0)?;
    }
    Ok(())
}

/// An array of one string of a module of that short-circuit current, fitted.
fn solar_circuits(case: &Case) -> Outcome {
    let array = Array { short_circuit_a: Some(case.input("module_Isc")), ..Array::default() };
    let plan = Document { arrays: vec![array], ..Document::default() };
    let fitting = fitted(&plan, &Basis::of(Tables::Land)).ok_or("not fitted")?;
    let run = fitting.run(RunKind::Array(0)).ok_or("no run")?;
    let current = run.asked.current.continuous.0;
    case.near("max_circuit_current", current, case.tolerance("abs"))?;
    let required = current * sunlarder_engine::fitting::ROOM;
    case.near("required_rating", required, case.tolerance("abs"))?;
    let next = next_rating(Amps(required)).map_or(f64::NAN, |own| own.0);
    case.near("next_standard_fuse", next, 0.0)?;
    let wire = run.wire.as_ref().map_err(|refusal| format!("{refusal:?}"))?;
    if wire.ampacity.0 < required { Err(format!("{wire:?}")) } else { Ok(()) }
}

fn check(case: &Case) -> Outcome {
    let outcome = match case.id() {
        "vdrop.published.10A21ft" => published_drop(case),
        "nec.310.16.cu" => land_ampacity(case),
        "nec.temp_correction" => land_correction(case),
        "abyc.e11.105C" => marine_ampacity(case),
        "abyc.aic" => interrupting(case),
        "nec.690.8" => solar_circuits(case),
        id if id.starts_with("awg.") => awg(case),
        id if id.starts_with("vdrop.") => drop(case),
        id => Err(format!("{id} has no check")),
    };
    outcome.map_err(|why| format!("{}: {why}", case.id()))
}

#[test]
fn every_reference_case_of_wiring_holds() {
    let cases = cases(REFERENCE).unwrap();
    let failures: Vec<String> = cases.iter().filter_map(|case| check(case).err()).collect();
    assert!(failures.is_empty(), "{failures:#?}");
    println!("{} reference cases of wiring", cases.len());
    assert_eq!(cases.len(), 28, "a case was left out or added");
}

fn resolved(plan: &Document) -> Option<(System, Outlook)> {
    let system = System::assemble(plan, Climate::embedded(), &mut ()).ok()?;
    let outlook = Outlook::of(&system);
    Some((system, outlook))
}

fn fitted(plan: &Document, basis: &Basis) -> Option<Fitting> {
    let (system, outlook) = resolved(plan)?;
    Fitting::of(plan, &system, &outlook, basis, &Lengths::default()).ok()
}

/// Rounding of the few operations of a formula in another order than the engine's, relative to one unit or the value.
const ROUNDING: f64 = 1e-9;

#[test]
fn the_working_of_every_run_is_what_its_formulas_say_and_leads_back() {
    let mut seen = BTreeSet::new();
    let mut failures = BTreeSet::new();
    for (name, plan) in openable().unwrap() {
        let Some((system, outlook)) = resolved(&plan) else { continue };
        for tables in Tables::ALL {
            let (basis, lengths) = (Basis::of(tables), Lengths::default());
            let fitting = Fitting::of(&plan, &system, &outlook, &basis, &lengths).unwrap();
            for run in &fitting.runs {
                let kind = run.asked.kind;
                let mut working = Working::new();
                let again = fitting.work(kind, (&plan, &system), &lengths, &mut working);
                assert_eq!(again.as_ref(), Some(run), "{name}: tracing changes nothing");
                for (place, step) in working.steps().iter().enumerate() {
                    let shown = value(step).unwrap_or_else(|why| panic!("{name}: {step:?}: {why}"));
                    let stated = plain(step.value, step.unit);
                    if (shown - stated).abs() > ROUNDING * stated.abs().max(1.0) {
                        failures.insert(format!("{name}: {step:?} is shown as {shown}"));
                    }
                    failures.extend(walk(&working, place).faults);
                    seen.insert(format!("{:?}", step.formula));
                }
            }
        }
    }
    assert!(failures.is_empty(), "{failures:#?}");
    let first = Formula::ALL.iter().position(|own| *own == Formula::InverterCurrent).unwrap();
    for formula in &Formula::ALL[first..] {
        assert!(seen.contains(&format!("{formula:?}")), "no run shows {formula:?}");
    }
}

/// An example with something changed, wired by a basis that may be changed too.
fn edited(
    name: &str,
    edit: impl Fn(&mut Document),
    with: impl Fn(Basis) -> Basis,
    lengths: &Lengths,
) -> Result<Fitting, Unfit> {
    let plans = openable().unwrap();
    let mut plan = plans.into_iter().find(|(own, _)| own == name).unwrap().1;
    edit(&mut plan);
    let (system, outlook) = resolved(&plan).unwrap();
    Fitting::of(&plan, &system, &outlook, &with(Basis::usual(&plan)), lengths)
}

#[test]
fn an_array_that_would_destroy_its_controller_is_not_wired() {
    let cold = |max_v| {
        let edit = |plan: &mut Document| plan.arrays[0].controller.max_v = Some(max_v);
        edited("cabin", edit, |basis| basis, &Lengths::default()).unwrap()
    };
    // Two modules of 40 V side by side at −40 °C: 40 V · (1 + 0.003 · 65) = 47.8 V.
    let refused = cold(47.0).run(RunKind::Array(0)).unwrap().wire;
    let Err(Refusal::ColdVoltage { voltage, limit }) = refused else { panic!("{refused:?}") };
    assert!((voltage.0 - 47.8).abs() < 1e-9 && limit == Volts(47.0));
    assert!(cold(47.0).notes.iter().any(|note| matches!(note, Note::ColdTooHigh { .. })));
    assert!(cold(48.0).run(RunKind::Array(0)).unwrap().wire.is_ok());
    let unknown = |plan: &mut Document| plan.place.record_low_c = None;
    let unknown = edited("cabin", unknown, |basis| basis, &Lengths::default()).unwrap();
    assert!(unknown.notes.iter().any(|note| matches!(note, Note::RecordUnknown { .. })));
    assert_eq!(unknown.arrays[0].cold, Cold::RecordUnknown);
}

#[test]
fn what_is_known_of_the_short_circuit_decides_the_kind_of_fuse() {
    let class = |short, kind| {
        let with = |basis| Basis { short_circuit: Some(short), ..basis };
        let fitting = edited("boat", |_| {}, with, &Lengths::default()).unwrap();
        fitting.run(kind).unwrap().fuse().unwrap().class
    };
    // 600 A of cranking: 1500 A at the post and 750 A in the branches.
    let cranking = ShortCircuit::Cranking(Amps(600.0));
    assert_eq!(class(cranking, RunKind::BatteryString), FuseClass::PostBlock);
    assert_eq!(class(cranking, RunKind::Branch(0)), FuseClass::Blade);
    assert_eq!(class(cranking, RunKind::Inverter), FuseClass::BoltedLink);
    let stated = ShortCircuit::Stated(Amps(11_000.0));
    assert_eq!(class(stated, RunKind::BatteryString), FuseClass::BoltedStrip);
    assert_eq!(class(stated, RunKind::Branch(8)), FuseClass::ClassT);
    let beyond = ShortCircuit::Stated(Amps(50_000.0));
    let with = |basis| Basis { short_circuit: Some(beyond), ..basis };
    let fitting = edited("boat", |_| {}, with, &Lengths::default()).unwrap();
    let wire = fitting.run(RunKind::BatteryString).unwrap().wire;
    assert!(matches!(wire, Err(Refusal::Interrupting { .. })), "{wire:?}");
    let high = |plan: &mut Document| plan.bank.in_series = 12.0;
    let fitting = edited("cabin", high, |basis| basis, &Lengths::default()).unwrap();
    let fused = fitting.runs.iter().filter(|run| run.asked.fused.is_some());
    let refused = |wire| matches!(wire, Err(Refusal::Interrupting { .. }));
    assert!(fused.clone().count() > 5 && fused.clone().all(|run| refused(run.wire)));
}

#[test]
fn what_is_outside_the_tables_is_refused_with_its_range() {
    let refused = |name: &str, with: &dyn Fn(Basis) -> Basis| {
        edited(name, |_| {}, with, &Lengths::default()).unwrap_err()
    };
    let at = |ambient| move |basis| Basis { ambient: Celsius(ambient), ..basis };
    for ambient in [9.9, 50.1, f64::NAN] {
        let unfit = refused("boat", &at(ambient));
        let (least, most) = (Celsius(10.0), Celsius(50.0));
        assert!(
            matches!(unfit, Unfit::Ambient { least: own, most: top, .. } if own == least && top == most)
        );
    }
    assert!(edited("boat", |_| {}, at(50.0), &Lengths::default()).is_ok());
    let insulation = |own| move |basis| Basis { insulation: own, ..basis };
    let unfit = refused("boat", &insulation(Insulation::C90));
    assert_eq!(unfit, Unfit::Insulation { tables: Tables::Marine, insulation: Insulation::C90 });
    assert!(matches!(refused("cabin", &insulation(Insulation::C105)), Unfit::Insulation { .. }));
    let bundle = |basis| Basis { bundle: Bundle::UpTo6, ..basis };
    assert_eq!(refused("cabin", &bundle), Unfit::Bundled);
    assert!(edited("boat", |_| {}, bundle, &Lengths::default()).is_ok());
    let short = |own| move |basis| Basis { short_circuit: Some(own), ..basis };
    assert_eq!(refused("camper", &short(ShortCircuit::Cranking(Amps(600.0)))), Unfit::Cranking);
    let unfit = refused("boat", &short(ShortCircuit::Stated(Amps(0.0))));
    assert!(matches!(unfit, Unfit::ShortCircuit { .. }));
    let long = Lengths { own: vec![(RunKind::Battery, Metres(0.0))] };
    let unfit = edited("boat", |_| {}, |basis| basis, &long).unwrap_err();
    assert!(matches!(unfit, Unfit::Length { run: RunKind::Battery, .. }));
    // A length in range whose drop no conductor holds is refused for its run alone.
    let long = Lengths { own: vec![(RunKind::Battery, Metres(20.0))] };
    let fitting = edited("boat", |_| {}, |basis| basis, &long).unwrap();
    let wire = fitting.run(RunKind::Battery).unwrap().wire;
    assert!(matches!(wire, Err(Refusal::Drop { .. })), "{wire:?}");
    assert!(fitting.run(RunKind::BatteryString).unwrap().wire.is_ok());
}
