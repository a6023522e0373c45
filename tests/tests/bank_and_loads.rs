//! Bank, loads and controllers against published tables, measurements, closed forms and a library's values.
//!
//! Each case of `tests/reference/bank_and_loads.json` names its source.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use sunlarder_engine::bank::{
    Bank, ColdLaw, capacity_at, cold_factor, exponent_from, standard_cold_factor, typical,
};
use sunlarder_engine::document::{self, Chemistry};
use sunlarder_engine::load::{Cooling, LossCurve, evaporator};
use sunlarder_engine::quantity::{
    AmpHours, Amps, Celsius, Hours, Irradiance, Percent, Volts, Watts,
};
use sunlarder_engine::simulate::{Forcing, Prepared};
use sunlarder_engine::sky::array_power_ratio;
use sunlarder_engine::source::Module;
use sunlarder_tests::reference::{Case, Outcome, cases, near};

const REFERENCE: &str = include_str!("../reference/bank_and_loads.json");

/// What the two-point curve promises against a single-diode model, of the short-circuit current.
const CURVE_TOLERANCE: f64 = 0.03;
/// Power that is linear in temperature and logarithmic in light, against a single-diode model of its own coefficient.
const POWER_TOLERANCE: f64 = 0.03;
/// Two cells of one kind from different makers: between two tenths and 95 % their curves differ by this much \[V\], some 2 %.
const KIN_TOLERANCE_V: f64 = 0.08;
/// A slow discharge of lead-acid by another study's linear law: within two per cent from -5 to 25 °C.
const SLOW_COLD_TOLERANCE: f64 = 0.02;

/// Compares with an expected value within a share of it.
fn near_share(case: &Case, name: &str, computed: f64, share: f64) -> Outcome {
    case.near(name, computed, share * case.expected(name).abs())
}

fn peukert(case: &Case) -> Outcome {
    let (rated, hours) = (AmpHours(case.input("C")), Hours(case.input("H")));
    let current = Amps(case.input("I"));
    let capacity = capacity_at(rated, hours, case.input("n"), current);
    let share = case.tolerance("rel");
    near_share(case, "capacity_Ah", capacity.0, share)?;
    near_share(case, "t_h", (capacity / current).0, share)
}

fn peukert_exponent(case: &Case) -> Outcome {
    let point = |current, time| (Amps(case.input(current)), Hours(case.input(time)));
    let (first, second) = (point("I1", "t1"), point("I2", "t2"));
    let exponent = exponent_from(first, second);
    let share = case.tolerance("rel");
    near_share(case, "n", exponent, share)?;
    let current = Amps(18.0);
    let capacity = capacity_at(second.0 * second.1, second.1, exponent, current);
    near_share(case, "t_at_18A_h", (capacity / current).0, share)
}

fn cold_standard(case: &Case) -> Outcome {
    let (temperatures, expected) = (case.inputs("temp_F"), case.expected_list("K_T"));
    assert_eq!((temperatures.len(), expected.len()), (22, 22));
    for (fahrenheit, expected) in temperatures.into_iter().zip(expected) {
        let factor = standard_cold_factor(Celsius((fahrenheit - 32.0) / 1.8));
        near(&format!("K_T at {fahrenheit} °F"), factor, expected, case.tolerance("abs"))?;
    }
    Ok(())
}

/// The engine's law of slow discharges beside the study's, where both are about the ten-hour rate in the cold.
fn cold_slow(case: &Case) -> Outcome {
    let (rates, steps) = (case.inputs("I_over_I10"), case.inputs("dT"));
    let expected = case.expected_list("C_over_C10");
    let mut compared = 0;
    for ((rate, step), expected) in rates.into_iter().zip(steps).zip(expected) {
        if rate == 1.0 && step <= 0.0 {
            let slow = Hours(100.0);
            let factor = cold_factor(ColdLaw::LeadAcid, Celsius(25.0 + step), slow);
            near(&format!("slow at {step} K"), factor, expected, SLOW_COLD_TOLERANCE)?;
            compared += 1;
        }
    }
    assert_eq!(compared, 3);
    Ok(())
}

/// A bank of one cell or battery of a chemistry.
fn bank(chemistry: Chemistry, battery_v: f64) -> Bank {
    let section = document::Bank { chemistry, battery_v, ..document::Bank::default() };
    Bank::parse(&section).unwrap()
}

/// Holds the open-circuit curve against a list of voltages, in a range of the state of charge.
fn curve(bank: &Bank, case: &Case, name: &str, from: f64, to: f64, allowed: f64) -> Outcome {
    let (charges, expected) = (case.inputs("soc"), case.expected_list(name));
    assert!(charges.len() == expected.len() && charges.len() >= 5);
    let mut compared = 0;
    for (charge, expected) in charges.into_iter().zip(expected) {
        if (from..=to).contains(&charge) {
            let what = format!("{}: {name} at {charge}", case.id());
            near(&what, bank.open_circuit(charge).0, expected, allowed)?;
            compared += 1;
        }
    }
    assert!(compared >= 5, "{} compares {compared} points", case.id());
    Ok(())
}

fn rest_voltages(case: &Case) -> Outcome {
    let allowed = case.tolerance("abs");
    let (wet, gel) = (bank(Chemistry::FloodedLeadAcid, 12.0), bank(Chemistry::Gel, 12.0));
    curve(&wet, case, "wet_V", 0.0, 1.0, allowed)?;
    curve(&gel, case, "gel_V", 0.0, 1.0, allowed)
}

fn measured(case: &Case, chemistry: Chemistry, name: &str) -> Outcome {
    curve(&cell(chemistry), case, name, 0.0, 1.0, case.tolerance("abs"))
}

/// Another cell of the same kind: not the curve that is used, so only near it.
fn kin(case: &Case, chemistry: Chemistry) -> Outcome {
    curve(&cell(chemistry), case, "ocv_V", 0.2, 0.95, KIN_TOLERANCE_V)
}

/// A bank of one cell.
fn cell(chemistry: Chemistry) -> Bank {
    bank(chemistry, typical(chemistry).cell.0)
}

/// Charge counted in and out of the bank, through the very step of the simulation.
fn charge_counted(case: &Case) -> Outcome {
    let section = document::Bank {
        capacity_ah: case.input("capacity_Ah"),
        charge_efficiency_pct: Some(100.0 * case.input("charge_efficiency")),
        self_discharge_pct: Some(0.0),
        protection_ma: Some(0.0),
        ..document::Bank::default()
    };
    let bank = Bank::parse(&section).unwrap();
    let (hour, temperature) = (Hours(1.0), Celsius(20.0));
    let prepared = Prepared::new(&bank, bank.rated, hour);
    let mut state = prepared.rested(case.input("soc0"));
    let flows = [("charge_Ah", true), ("discharge_Ah", false)];
    for (name, comes) in flows {
        let current = Amps(case.input(name));
        let forcing = if comes {
            Forcing { shore: current, temperature, ..Forcing::default() }
        } else {
            Forcing { standing: current, temperature, ..Forcing::default() }
        };
        state = prepared.step(state, &forcing, &mut ()).state;
    }
    case.near("soc", state.charge, case.tolerance("abs"))
}

fn inverter(case: &Case) -> Outcome {
    let stated = case.inputs("eta_at_10_50_100");
    let curve = LossCurve::through([(0.1, stated[0]), (0.5, stated[1]), (1.0, stated[2])]);
    let share = case.tolerance("rel");
    near_share(case, "p0", curve.p0, share)?;
    near_share(case, "k1", curve.k1, share)?;
    near_share(case, "k2", curve.k2, share)?;
    near_share(case, "eta_at_5pct", curve.efficiency(0.05), share)?;
    near_share(case, "eta_at_20pct", curve.efficiency(0.2), share)?;
    near_share(case, "eta_at_75pct", curve.efficiency(0.75), share)?;
    let peak = case.expected("p_of_peak");
    near_share(case, "eta_peak", curve.efficiency(peak), share)?;
    let beside = curve.efficiency(peak - 0.01).max(curve.efficiency(peak + 0.01));
    if beside < curve.efficiency(peak) { Ok(()) } else { Err("no peak where it should be".into()) }
}

fn refrigerator(case: &Case) -> Outcome {
    let inside = Celsius(case.input("T_inside"));
    near("the evaporator", evaporator(inside).0, case.input("T_evap"), 1e-9)?;
    let ratio =
        |air, reference| Cooling { inside, reference: Celsius(reference) }.factor(Celsius(air));
    let share = case.tolerance("rel");
    near_share(case, "ratio_32_over_16", ratio(32.0, 16.0), share)?;
    near_share(case, "ratio_32_over_25", ratio(32.0, 25.0), share)?;
    near_share(case, "ratio_43_over_25", ratio(43.0, 25.0), share)
}

/// A module as the standard-test case of its family states it, with that family's power coefficient from its case at 60 °C.
fn family(all: &[Case], id: &str) -> Module {
    let of = |place: u8| {
        let name = format!("{}{place}", &id[..id.len() - 1]);
        all.iter().find(|case| case.id() == name).unwrap()
    };
    let (standard, hot) = (of(1), of(2));
    assert_eq!((standard.input("G"), standard.input("Tc")), (1000.0, 25.0));
    let lost = hot.expected("Pmp") / standard.expected("Pmp") - 1.0;
    let warmth = hot.input("Tc") - standard.input("Tc");
    Module {
        power: Watts(standard.expected("Pmp")),
        best: Volts(standard.expected("Vmp")),
        open: Volts(standard.expected("Voc")),
        short: Amps(standard.expected("Isc")),
        power_per_k: Percent(100.0 * lost / warmth),
    }
}

/// Currents under the best point, and the power at it, beside a single-diode model.
fn module(case: &Case, all: &[Case]) -> Outcome {
    let module = family(all, case.id());
    let (light, cell) = (Irradiance(case.input("G")), Celsius(case.input("Tc")));
    assert!(light.0 >= 200.0, "the promise is for a fifth of full sun and more");
    let (short, best) = (case.expected("Isc"), case.expected("Vmp"));
    let mut compared = 0;
    for volts in [12.5, 13.5, 14.4, 25.0, 27.0, 28.8] {
        let name = if volts == 25.0 || volts == 27.0 {
            format!("I@{volts:.1}")
        } else {
            format!("I@{volts}")
        };
        if volts <= best {
            let current = module.current_at(Volts(volts), light, cell).0;
            case.near(&name, current, CURVE_TOLERANCE * short)?;
            compared += 1;
        }
    }
    assert!(compared >= 3, "{} compares {compared} currents", case.id());
    let power = module.power * array_power_ratio(light, cell, module.power_per_k.0);
    near_share(case, "Pmp", power.0, POWER_TOLERANCE)
}

fn check(case: &Case, all: &[Case]) -> Outcome {
    match case.id() {
        "peukert.exponent" => peukert_exponent(case),
        "ieee.kt" => cold_standard(case),
        "copetti.capacity" => cold_slow(case),
        "ocv.lead_acid.12V" => rest_voltages(case),
        "ocv.lfp.measured" => measured(case, Chemistry::Lifepo4, "ocv_V"),
        "ocv.nmc.measured" => measured(case, Chemistry::Nmc, "ocv_V"),
        "ocv.naion.0p5C" => measured(case, Chemistry::SodiumIon, "terminal_V"),
        "ocv.lfp.pybamm" => kin(case, Chemistry::Lifepo4),
        "ocv.nmc.pybamm" => kin(case, Chemistry::Nmc),
        "charge_efficiency" => charge_counted(case),
        "inverter.3p.2" => inverter(case),
        id if id.starts_with("fridge.model.") => refrigerator(case),
        id if id.starts_with("pv.sdm.") => module(case, all),
        id if id.starts_with("peukert.") => peukert(case),
        id => Err(format!("{id} has no check")),
    }
}

#[test]
fn every_reference_case_of_bank_loads_and_controllers_holds() {
    let cases = cases(REFERENCE).unwrap();
    let failures: Vec<String> = cases.iter().filter_map(|case| check(case, &cases).err()).collect();
    assert!(failures.is_empty(), "{failures:#?}");
    println!("{} reference cases of bank, loads and controllers", cases.len());
    assert_eq!(cases.len(), 27, "a case was left out or added");
}
