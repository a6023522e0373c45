//! The gauge against what its shunt is by definition, and against a sum done by hand.
//!
//! Each case of `tests/reference/gauge.json` names its source.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use sunlarder_engine::bank::ChargeEfficiency;
use sunlarder_engine::gauge::{Counter, CurrentError, Gauge, Shunt, Unseen};
use sunlarder_engine::quantity::{AmpHours, Amps, Hours, Percent, Volts};
use sunlarder_tests::reference::{Case, cases};

const REFERENCE: &str = include_str!("../reference/gauge.json");

type Outcome = Result<(), String>;

fn near_share(case: &Case, name: &str, computed: f64) -> Outcome {
    case.near(name, computed, case.tolerance("rel") * case.expected(name).abs())
}

fn shunt(case: &Case) -> Outcome {
    let shunt = Shunt { rated: Amps(200.0), drop: Volts(0.075) };
    let current = shunt.current(Volts(case.input("mV") / 1000.0));
    near_share(case, "A", current.0)?;
    near_share(case, "R_ohm", shunt.resistance().0)?;
    near_share(case, "P_W", shunt.heat(current).0)
}

fn drift(case: &Case) -> Outcome {
    let offset = Amps(case.input("offset_mA") / 1000.0);
    let error = CurrentError { offset, gain: Percent(0.0) };
    let time = Hours(24.0 * case.input("days"));
    near_share(case, "Ah", error.drift(time, AmpHours(1000.0)).0)
}

/// The gauge of the sums by hand: nothing lost but by its efficiency, nothing hidden.
fn plain(capacity: f64, efficiency: f64) -> Gauge {
    Gauge {
        capacity: AmpHours(capacity),
        hour_rate: Hours(20.0),
        exponent: 1.0,
        efficiency: ChargeEfficiency::Flat(efficiency),
        ten_hours: Amps(capacity / 10.0),
        self_discharge: Percent(0.0),
        inside: Amps::ZERO,
        full_voltage: Volts(100.0),
        tail: Percent(1.0),
        hold: Hours(1.0),
        floor: Percent(0.0),
        averaged: Hours(1.0),
        threshold: Amps::ZERO,
        error: CurrentError { offset: Amps::ZERO, gain: Percent(0.0) },
        unseen: Unseen::default(),
        start: None,
    }
}

/// The same offset, counted quarter-hour by quarter-hour at rest.
fn counted_drift(case: &Case) -> Outcome {
    let capacity = 1000.0;
    let offset = Amps(case.input("offset_mA") / 1000.0);
    let error = CurrentError { offset, gain: Percent(0.0) };
    let gauge = Gauge { error, ..plain(capacity, 1.0) };
    let mut counter = Counter::at(0.5);
    for _ in 0..(case.input("days") * 96.0) as usize {
        counter.step(&gauge, Amps::ZERO, Volts(12.0), Hours(0.25));
    }
    near_share(case, "Ah", (counter.shown - 0.5) * capacity)
}

/// Charge in by its efficiency, charge out as it is.
fn counted(case: &Case) -> Outcome {
    let gauge = plain(case.input("capacity_Ah"), case.input("charge_efficiency"));
    let mut counter = Counter::at(case.input("soc0"));
    let hours = Hours(5.0);
    for charge in [case.input("charge_Ah"), -case.input("discharge_Ah")] {
        counter.step(&gauge, AmpHours(charge) / hours, Volts(12.0), hours);
    }
    case.near("soc", counter.shown, case.tolerance("abs"))
}

fn check(case: &Case) -> Outcome {
    match case.id() {
        "shunt.200A75mV" => shunt(case),
        "drift.offset" => drift(case).and_then(|()| counted_drift(case)),
        "charge_efficiency" => counted(case),
        id => Err(format!("{id} has no check")),
    }
}

#[test]
fn every_reference_case_of_the_gauge_holds() {
    let cases = cases(REFERENCE).unwrap();
    let failures: Vec<String> = cases.iter().filter_map(|case| check(case).err()).collect();
    assert!(failures.is_empty(), "{failures:#?}");
    println!("{} reference cases of the gauge", cases.len());
    assert_eq!(cases.len(), 3, "a case was left out or added");
}
