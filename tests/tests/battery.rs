//! The battery against published lifetimes, closed forms, a standard's example and a library's values.
//!
//! Each case of `tests/reference/battery.json` names its source. Curves and capacities are in `bank_and_loads`.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use sunlarder_engine::bank::{
    Bank, ChargeEfficiency, Cycle, Fit, Held, Rating, Wells, life_factor, rainflow, typical,
};
use sunlarder_engine::document::{
    self, Chemistry, Document, Inverter, Load, Rating as Plate, Schedule, Supply, When,
};
use sunlarder_engine::outlook::{Obstacle, Outlook};
use sunlarder_engine::place::Climate;
use sunlarder_engine::quantity::{AmpHours, Amps, Celsius, Hours};
use sunlarder_engine::simulate::{Forcing, Prepared, STEP};
use sunlarder_engine::system::System;
use sunlarder_tests::reference::{Case, Outcome, cases, near};

const REFERENCE: &str = include_str!("../reference/battery.json");

/// Minutes of an hour.
const MINUTES: f64 = 60.0;
/// A limit of the largest charge current that should be zero, in the rounding of sums of some 100 Ah \[A\].
const ZERO_A: f64 = 1e-12;

/// One step under a constant current, and the limits of the current.
fn step(case: &Case) -> Outcome {
    let wells = Wells { share: case.input("c"), rate: case.input("k") };
    let held = Held { available: AmpHours(case.input("q1")), bound: AmpHours(case.input("q2")) };
    let pace = wells.pace(Hours(case.input("dt_h")));
    let after = pace.after(held, Amps(case.input("I")));
    let within = |name: &str, value: f64| {
        case.near(name, value, case.tolerance("rel") * case.expected(name).abs() + ZERO_A)
    };
    within("q1", after.available.0)?;
    within("q2", after.bound.0)?;
    within("I_discharge_max", pace.most_out(held).0)?;
    within("I_charge_max_signed", -pace.most_in(held, AmpHours(case.input("qmax"))).0)
}

/// Time until the available well is empty under a current that repeats \[min\].
fn lifetime(wells: Wells, whole: AmpHours, repeat: &[Vec<f64>]) -> f64 {
    let mut held = wells.full(whole);
    let mut passed = 0.0;
    loop {
        for part in repeat {
            let (current, minutes) = (Amps(part[0] * MINUTES), part[1]);
            let after = |minutes: f64| wells.pace(Hours(minutes / MINUTES)).after(held, current);
            let end = after(minutes);
            if end.available.0 <= 0.0 {
                let (mut before, mut past) = (0.0, minutes);
                for _ in 0..60 {
                    let middle = f64::midpoint(before, past);
                    let empty = after(middle).available.0 <= 0.0;
                    (before, past) = if empty { (before, middle) } else { (middle, past) };
                }
                return passed + past;
            }
            held = end;
            passed += minutes;
        }
    }
}

fn published_lifetime(case: &Case) -> Outcome {
    let wells = Wells { share: case.input("c"), rate: case.input("k_prime_per_min") * MINUTES };
    // Ampere-minutes are counted as amp-hours with the currents sixty times as large.
    let whole = AmpHours(case.input("capacity_A_min"));
    let found = lifetime(wells, whole, &case.input_rows("repeat_current_A_duration_min"));
    case.near("lifetime_min", found, case.tolerance("abs"))?;
    case.near("lifetime_min_published", found, case.tolerance("published_abs"))
}

/// From capacities back to the battery that they were computed of, and every capacity with it.
fn fit(case: &Case) -> Outcome {
    let table = case.input_table("capacities_Ah");
    assert_eq!(table.len(), 5);
    let hours = case.inputs("fit_hours");
    let of = |(hours, charge): &(f64, f64)| -> Rating { (AmpHours(*charge), Hours(*hours)) };
    let ratings: Vec<Rating> =
        table.iter().filter(|entry| hours.contains(&entry.0)).map(of).collect();
    let fit = Fit::to(&ratings).ok_or("no fit")?;
    if !fit.unique || fit.deviation > 1e-6 {
        return Err(format!("{fit:?}"));
    }
    let share = case.tolerance("rel");
    let within = |name: &str, value: f64| case.near(name, value, share * case.expected(name));
    within("qmax", fit.whole.0)?;
    within("k_per_h", fit.wells.rate)?;
    within("c", fit.wells.share)?;
    for (hours, charge) in table {
        let found = fit.wells.capacity(fit.whole, Hours(hours)).0;
        near(&format!("capacity at {hours} h"), found, charge, share * charge)?;
    }
    Ok(())
}

/// Cycles added up by their range, the smallest first.
fn by_range(cycles: &[Cycle]) -> Vec<(f64, f64)> {
    let mut sums: Vec<(f64, f64)> = Vec::new();
    for cycle in cycles {
        match sums.iter_mut().find(|sum| (sum.0 - cycle.range).abs() < 1e-9) {
            Some(sum) => sum.1 += cycle.count,
            None => sums.push((cycle.range, cycle.count)),
        }
    }
    sums.sort_by(|a, b| a.0.total_cmp(&b.0));
    sums
}

fn same_cycles(case: &Case, mut expected: Vec<(f64, f64)>, allowed: f64) -> Outcome {
    expected.sort_by(|a, b| a.0.total_cmp(&b.0));
    let found = by_range(&rainflow(case.inputs("series")));
    let fits = |(a, b): (&(f64, f64), &(f64, f64))| (a.0 - b.0).abs() <= allowed && a.1 == b.1;
    if found.len() == expected.len() && expected.len() >= 5 && found.iter().zip(&expected).all(fits)
    {
        return Ok(());
    }
    Err(format!("{}: {found:?}, expected {expected:?}", case.id()))
}

fn standard_cycles(case: &Case) -> Outcome {
    same_cycles(case, case.expected_table("counts_range_cycles"), 0.0)
}

fn library_cycles(case: &Case) -> Outcome {
    let rows = case.expected_rows("counts");
    let expected = rows.iter().map(|row| (row[0], row[1])).collect();
    same_cycles(case, expected, case.tolerance("abs"))
}

fn life_by_temperature(case: &Case) -> Outcome {
    let (temperatures, expected) = (case.inputs("T"), case.expected_list("factor"));
    assert_eq!((temperatures.len(), expected.len()), (4, 4));
    for (temperature, expected) in temperatures.into_iter().zip(expected) {
        let factor = life_factor(Celsius(temperature));
        near(&format!("life at {temperature} °C"), factor, expected, case.tolerance("abs"))?;
    }
    Ok(())
}

fn charge_efficiency(case: &Case) -> Outcome {
    let (points, expected) = (case.input_rows("cases"), case.expected_list("eta"));
    assert_eq!((points.len(), expected.len()), (24, 24));
    let law = ChargeEfficiency::FallingNearFull(1.0);
    for (point, expected) in points.iter().zip(expected) {
        let found = law.at(point[1], point[0]);
        near(&format!("efficiency at {point:?}"), found, expected, case.tolerance("abs"))?;
    }
    Ok(())
}

fn check(case: &Case) -> Outcome {
    match case.id() {
        "kibam.fit.roundtrip" => fit(case),
        "rainflow.astm" => standard_cycles(case),
        "rainflow.soc" => library_cycles(case),
        "life.temp" => life_by_temperature(case),
        "copetti.charge_eff" => charge_efficiency(case),
        id if id.starts_with("kibam.step.") => step(case),
        id if id.starts_with("kibam.life.") => published_lifetime(case),
        id => Err(format!("{id} has no check")),
    }
}

#[test]
fn every_reference_case_of_the_battery_holds() {
    let cases = cases(REFERENCE).unwrap();
    let failures: Vec<String> = cases.iter().filter_map(|case| check(case).err()).collect();
    assert!(failures.is_empty(), "{failures:#?}");
    println!("{} reference cases of the battery", cases.len());
    assert_eq!(cases.len(), 17, "a case was left out or added");
}

/// Energy that comes out of a bank over what goes in, in daily cycles of half its charge at C/10 that begin again each day.
fn round_trip(chemistry: Chemistry) -> f64 {
    let battery_v = typical(chemistry).cell.0;
    let section = document::Bank { chemistry, battery_v, ..document::Bank::default() };
    let bank = Bank::parse(&section).unwrap();
    let prepared = Prepared::new(&bank, AmpHours(100.0), STEP);
    let mut state = prepared.rested(0.9);
    let (mut in_wh, mut out_wh) = (0.0, 0.0);
    for day in 0..30 {
        for quarter in 0..96 {
            let forcing = Forcing {
                standing: Amps(if quarter < 20 { 10.0 } else { 0.0 }),
                shore: Amps(if (48..80).contains(&quarter) { 15.0 } else { 0.0 }),
                temperature: Celsius(25.0),
                ..Forcing::default()
            };
            let after = prepared.step(state, &forcing, &mut ());
            state = after.state;
            if day >= 10 {
                in_wh += after.flows.source_energy.0;
                out_wh += after.flows.load_energy.0;
            }
        }
    }
    out_wh / in_wh
}

/// Ranges usual in the trade, and what they are missed by at most.
///
/// Sodium comes out four points too good: its hysteresis of 20 to 80 mV is not in the model.
#[test]
fn a_daily_cycle_gives_back_what_the_chemistry_is_known_for() {
    let known = [
        (Chemistry::FloodedLeadAcid, 0.70, 0.80),
        (Chemistry::Agm, 0.78, 0.88),
        (Chemistry::Gel, 0.78, 0.88),
        (Chemistry::Lifepo4, 0.92, 0.98),
        (Chemistry::Nmc, 0.92, 0.97),
        (Chemistry::SodiumIon, 0.88, 0.93),
    ];
    for (chemistry, low, high) in known {
        let found = round_trip(chemistry);
        let missed = if chemistry == Chemistry::SodiumIon { 0.05 } else { 0.02 };
        println!("{chemistry:?}: {:.1} % of the energy comes back", 100.0 * found);
        assert!(found > low && found < high + missed, "{chemistry:?}: {found}");
    }
}

/// A kettle on glass-mat batteries of 100 Ah, so many side by side.
fn kettle(batteries: f64) -> Vec<Obstacle> {
    let kettle = Load {
        rating: Plate::PowerW(1500.0),
        supply: Supply::Ac,
        schedule: Schedule::daily(When::HoursPerDay(0.2)),
        surge: 2.0,
        ..Load::default()
    };
    let plan = Document {
        loads: vec![kettle],
        inverter: Some(Inverter { rated_w: 2000.0, surge_w: Some(4000.0), ..Inverter::default() }),
        bank: document::Bank {
            chemistry: Chemistry::Agm,
            battery_v: 12.0,
            in_parallel: batteries,
            reserve_pct: 50.0,
            ..document::Bank::default()
        },
        ..Document::default()
    };
    let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
    Outlook::of(&system).obstacles.clone()
}

#[test]
fn a_start_that_pulls_the_bank_under_its_cut_off_is_said() {
    let sags = |batteries: f64| {
        let found = kettle(batteries);
        let of = |one: &Obstacle| match *one {
            Obstacle::BankSags { load, voltage, cut_off } => Some((load, voltage, cut_off)),
            _ => None,
        };
        found.iter().find_map(of)
    };
    let (load, voltage, cut_off) = sags(1.0).unwrap();
    assert!(voltage < cut_off && load == Some(0), "{load:?} {voltage:?}");
    assert_eq!(sags(6.0), None);
}

#[test]
fn a_bank_that_may_freeze_is_told_so() {
    let frost = |chemistry, reserve_pct, record_low_c, kept| {
        let mut plan = Document {
            bank: document::Bank {
                chemistry,
                battery_v: 12.0,
                reserve_pct,
                kept,
                ..document::Bank::default()
            },
            ..Document::default()
        };
        plan.place.record_low_c = record_low_c;
        let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
        let found = Outlook::of(&system).obstacles.clone();
        found.into_iter().find(|own| matches!(own, Obstacle::MayFreeze { .. }))
    };
    let flooded = Chemistry::FloodedLeadAcid;
    let Some(Obstacle::MayFreeze { coldest, freezes, .. }) =
        frost(flooded, 20.0, Some(-30.0), document::Kept::Outside)
    else {
        panic!("it stands in -30 °C with a fifth of its charge");
    };
    assert!(coldest.0 == -30.0 && (-17.0..-15.0).contains(&freezes.0), "{freezes:?}");
    // Fuller, warmer, of another kind, or where nobody knows of any cold.
    assert_eq!(frost(flooded, 60.0, Some(-30.0), document::Kept::Outside), None);
    assert_eq!(frost(flooded, 20.0, Some(-30.0), document::Kept::Inside), None);
    assert_eq!(frost(Chemistry::Lifepo4, 20.0, Some(-30.0), document::Kept::Outside), None);
    assert_eq!(frost(flooded, 20.0, None, document::Kept::Outside), None);
}

#[test]
fn the_fitting_inverter_takes_every_obstacle_of_inverters_away() {
    use sunlarder_engine::outlook::fitting_inverter;
    let assembled = |plan: &Document| System::assemble(plan, Climate::embedded(), &mut ()).unwrap();
    for (power, surge, expected) in [
        (40.0, 1.0, Some(150.0)),
        (1500.0, 1.0, Some(2000.0)),
        (900.0, 5.0, Some(2500.0)),
        (90_000.0, 1.0, None),
    ] {
        let load =
            Load { rating: Plate::PowerW(power), supply: Supply::Ac, surge, ..Load::default() };
        let mut plan = Document { loads: vec![load], ..Document::default() };
        let fitting = fitting_inverter(&assembled(&plan)).map(|own| own.0);
        assert_eq!(fitting, expected, "{power} W");
        let Some(rated_w) = fitting else { continue };
        plan.inverter = Some(Inverter { rated_w, ..Inverter::default() });
        let obstacles = Outlook::of(&assembled(&plan)).obstacles.clone();
        assert!(!obstacles.iter().any(Obstacle::is_of_inverter), "{power} W: {obstacles:?}");
    }
    assert_eq!(fitting_inverter(&assembled(&Document::default())), None);
}
