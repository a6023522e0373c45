//! The gauge against what its shunt is by definition, and against a sum done by hand.
//!
//! Each case of `tests/reference/gauge.json` names its source.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use sunlarder_engine::gauge::{CurrentError, Shunt};
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

fn check(case: &Case) -> Outcome {
    match case.id() {
        "shunt.200A75mV" => shunt(case),
        "drift.offset" => drift(case),
        id => Err(format!("{id} has no check")),
    }
}

#[test]
fn every_reference_case_of_the_gauge_holds() {
    let cases = cases(REFERENCE).unwrap();
    let failures: Vec<String> = cases.iter().filter_map(|case| check(case).err()).collect();
    assert!(failures.is_empty(), "{failures:#?}");
    println!("{} reference cases of the gauge", cases.len());
    assert_eq!(cases.len(), 2, "a case was left out or added");
}
