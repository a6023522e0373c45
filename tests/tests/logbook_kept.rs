//! Readings as a plan keeps them: how long they make its link, what is refused, and how a plan takes over what was learned.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use std::time::Instant;

use chrono::NaiveDate;
use sunlarder_engine::document::{Document, Field, List, Logbook, LoggedCharge, Problem};
use sunlarder_engine::logbook::{
    Adoption, Bounds, GaugeSetUp, Hints, Reading, Readings, Slip, Study, Taken, paste,
    start_at_newest,
};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::Climate;
use sunlarder_engine::quantity::{Amps, Percent};
use sunlarder_engine::share;
use sunlarder_engine::system::System;
use sunlarder_tests::logkeeper::{Fault, Stage};
use sunlarder_tests::plans::EXAMPLES;

fn text(name: &str) -> &'static str {
    EXAMPLES.iter().find(|own| own.0 == name).unwrap().1
}

fn stage(name: &str, start: NaiveDate) -> Stage {
    Stage::new(text(name), start)
}

/// So many readings, two a day.
fn readings(name: &str, count: usize) -> Vec<Reading> {
    let mut all = Vec::new();
    for part in 0.. {
        let start = NaiveDate::from_ymd_opt(2026, 1, 7).unwrap() + chrono::Days::new(14 * part);
        all.extend(stage(name, start).keep(Fault::None, part).readings);
        if all.len() >= count {
            break;
        }
    }
    all.truncate(count);
    all
}

fn with(name: &str, readings: &[Reading]) -> Document {
    let mut plan = Document::from_json(text(name)).unwrap();
    let mut own = Logbook::default();
    readings.iter().for_each(|reading| own.add(reading.logged().unwrap()));
    plan.logbook = Some(own);
    plan
}

fn system(plan: &Document) -> System {
    System::assemble(plan, Climate::embedded(), &mut ()).unwrap()
}

/// Measured: a week adds 130 letters or less, half a year 3600 or less, which a link bears and a code for a camera does not.
#[test]
fn a_week_fits_a_message_and_half_a_year_fits_a_link() {
    for name in ["sailor", "camper"] {
        let bare = share::encode(&Document::from_json(text(name)).unwrap()).unwrap().len();
        for (count, most) in [(14, 130), (400, 3600)] {
            let plan = with(name, &readings(name, count));
            let code = share::encode(&plan).unwrap();
            println!("{name}: {count} readings make {bare} letters {}", code.len());
            assert!(code.len() - bare <= most, "{name} {count}: {bare} {}", code.len());
            assert_eq!(share::decode(&code).unwrap(), plan);
            assert_eq!(Document::from_json(&plan.to_json()).unwrap(), plan);
        }
    }
}

#[test]
fn what_no_plan_keeps_is_refused_by_name() {
    let plan = with("sailor", &readings("sailor", 14));
    let change = |set: fn(&mut Logbook)| {
        let mut plan = plan.clone();
        set(plan.logbook.as_mut().unwrap());
        plan.checked().unwrap_err()
    };
    let shown = change(|own| own.readings[3].shown = LoggedCharge::Percent(100.5));
    assert!(matches!(shown, Problem::OutOfRange { field: Field::ReadPercent, value: 100.5, .. }));
    let volts = change(|own| own.readings[3].volts = Some(f64::NAN));
    assert!(matches!(volts, Problem::OutOfRange { field: Field::ReadVolts, .. }));
    let capacity = change(|own| own.capacity_ah = Some(0.0));
    assert!(matches!(capacity, Problem::OutOfRange { field: Field::ToldCapacity, .. }));
    let early = change(|own| own.readings[0].date = NaiveDate::from_ymd_opt(1999, 1, 1).unwrap());
    assert!(matches!(early, Problem::DateOutOfRange { .. }), "{early:?}");
    let many = change(|own| own.readings = vec![own.readings[0]; 401]);
    assert_eq!(many, Problem::TooMany { list: List::Readings, length: 401 });
}

#[test]
fn readings_are_kept_in_order_whatever_the_file_says() {
    let plan = with("sailor", &readings("sailor", 14));
    let mut mixed = plan.clone();
    mixed.logbook.as_mut().unwrap().readings.reverse();
    assert_eq!(mixed.checked().unwrap(), plan);
}

#[test]
fn a_table_is_taken_once_and_nothing_is_left_out_in_silence() {
    let kept = readings("sailor", 14);
    let mut plan = with("sailor", &kept[..6]);
    let bounds = {
        let system = system(&plan);
        Bounds::of(system.bank.nominal, system.bank.rated)
    };
    let line = |own: &Reading| {
        let Some(sunlarder_engine::logbook::Shown::Percent(shown)) = own.shown else { panic!() };
        format!("{},{},{},{}\n", own.at, shown.0, own.volts.unwrap().0, own.amps.unwrap().0)
    };
    let mut table: String = kept.iter().map(line).collect();
    table.push_str("1999-01-01 07:00,50,12.5,1\n");
    table.push_str(&format!("{},12,12.5,1\n", kept[0].at));
    let taken = Taken::of(&plan, &paste(&table, &Hints::default(), &bounds));
    assert_eq!((taken.new, taken.known, taken.dropped), (8, 6, 0));
    assert_eq!(taken.slips, [(15, Slip::OutsideYears), (16, Slip::Twice)]);
    plan.logbook = Some(taken.logbook);
    assert_eq!(plan, with("sailor", &kept));
    let again = Taken::of(&plan, &paste(&table, &Hints::default(), &bounds));
    assert_eq!((again.new, again.known), (0, 14));

    // Two thousand lines: the newest that a plan has room for, and the rest is told.
    let start = NaiveDate::from_ymd_opt(2027, 1, 1).unwrap().and_hms_opt(0, 0, 0).unwrap();
    let huge: String = (0..2000)
        .map(|at| format!("{},{},12.5,1\n", start + chrono::TimeDelta::hours(at), at % 90))
        .collect();
    let taken = Taken::of(&plan, &paste(&huge, &Hints::default(), &bounds));
    assert_eq!((taken.new, taken.dropped), (2000, 1614));
    assert_eq!(taken.logbook.readings.len(), List::Readings.limit());
    plan.logbook = Some(taken.logbook);
    assert_eq!(share::decode(&share::encode(&plan).unwrap()).unwrap(), plan);
}

#[test]
fn a_plan_that_took_something_over_is_the_system_that_did() {
    for (name, _) in EXAMPLES {
        for adoption in [
            Adoption::Use(1.2),
            Adoption::Health(Percent(70.0)),
            Adoption::Standing(Amps(0.5)),
            Adoption::Efficiency(Percent(88.0)),
        ] {
            let mut plan = Document::from_json(text(name)).unwrap();
            let mut turned = system(&plan);
            adoption.put_on(&mut turned);
            assert_eq!(adoption.write(&mut plan), [], "{name} {adoption:?}");
            let own = system(&plan.checked().unwrap());
            let used = |system: &System| Outlook::of(system).budget.total;
            let (one, other) = (used(&own), used(&turned));
            // Power is kept in tenths of a watt.
            assert!(
                (one - other).0.abs() <= 0.005 * other.0,
                "{name} {adoption:?}: {one:?} {other:?}"
            );
            assert_eq!(own.bank.health, turned.bank.health);
            assert!((own.bank.mean_efficiency - turned.bank.mean_efficiency).abs() < 1e-9);
            assert!((own.standing - turned.standing).0.abs() < 1e-3, "{name} {adoption:?}");
        }
    }
    // What a field cannot say is told.
    let mut plan = Document::from_json(text("boat")).unwrap();
    assert_eq!(Adoption::Health(Percent(12.0)).write(&mut plan), [(Field::Health, 12.0)]);
    assert_eq!(plan.bank.health_pct, 20.0);
}

#[test]
fn the_plan_goes_on_from_the_newest_reading() {
    let kept = readings("sailor", 28);
    let mut plan = with("sailor", &kept);
    let own = system(&plan);
    let (all, left) = Readings::stated(&plan, &own);
    assert!(left.is_empty() && all.all() == kept, "{left:?}");
    let spread = sunlarder_engine::place::SpreadGrid::embedded().at(own.site);
    let study = Study::of(&own, &spread, &GaugeSetUp::stated(&plan, &own), &all);
    start_at_newest(&mut plan, &study, &all).unwrap();
    let newest = kept.last().unwrap().at;
    assert_eq!(plan.start.date, newest.date());
    let charge = study.charge_now.unwrap().best * 100.0;
    assert!((plan.start.charge_pct - charge).abs() < 0.06);
}

#[test]
fn how_long_a_study_takes() {
    for (name, count) in [("sailor", 14), ("sailor", 28), ("sailor", 400), ("camper", 400)] {
        let plan = with(name, &readings(name, count));
        let own = system(&plan);
        let (all, _) = Readings::stated(&plan, &own);
        let spread = sunlarder_engine::place::SpreadGrid::embedded().at(own.site);
        let began = Instant::now();
        let study = Study::of(&own, &spread, &GaugeSetUp::stated(&plan, &own), &all);
        println!("{name}: {count} readings in {:?}, {}", began.elapsed(), study.learned.len());
    }
}
