//! Readings, symptoms and what a plan takes over: what must hold whoever wrote the readings.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it cannot read")]

use chrono::{NaiveDate, TimeDelta};
use sunlarder_engine::document::Document;
use sunlarder_engine::logbook::{
    Adoption, Bounds, Care, Cause, GaugeSetUp, Hints, MeterTest, Next, Reading, Readings, Shown,
    Slip, Standing, Study, Symptom, What, adoptable, from_newest, lay_up, paste, suspects, upkeep,
};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::quantity::{AmpHours, Amps, Percent, Volts};
use sunlarder_engine::system::System;
use sunlarder_engine::working::Working;
use sunlarder_tests::expression;
use sunlarder_tests::logkeeper::{Fault, Stage};
use sunlarder_tests::plans::EXAMPLES;
use sunlarder_tests::provenance::walk;

fn text(name: &str) -> &'static str {
    EXAMPLES.iter().find(|own| own.0 == name).unwrap().1
}

fn system(name: &str) -> System {
    let plan = Document::from_json(text(name)).unwrap();
    System::assemble(&plan, Climate::embedded(), &mut ()).unwrap()
}

fn bounds(system: &System) -> Bounds {
    Bounds::of(system.bank.nominal, system.bank.rated)
}

fn stage(name: &str, month: u32) -> Stage {
    Stage::new(text(name), NaiveDate::from_ymd_opt(2026, month, 7).unwrap())
}

/// What one case of a stage says.
fn studied(stage: &Stage, fault: Fault, seed: u64) -> (Readings, Study) {
    let kept = stage.keep(fault, seed);
    let (readings, _) = Readings::of(&kept.readings, &bounds(&stage.system));
    let study = Study::of(&stage.system, &stage.spread, &stage.gauge, &readings);
    (readings, study)
}

fn of(system: &System, readings: &[Reading]) -> Study {
    let (readings, _) = Readings::of(readings, &bounds(system));
    let gauge = GaugeSetUp { capacity: system.bank.rated, efficiency: 0.95 };
    Study::of(system, &SpreadGrid::embedded().at(system.site), &gauge, &readings)
}

fn at(day: u32, hour: u32) -> chrono::NaiveDateTime {
    NaiveDate::from_ymd_opt(2026, 6, day).unwrap().and_hms_opt(hour, 0, 0).unwrap()
}

fn reading(day: u32, hour: u32, percent: f64) -> Reading {
    let shown = Some(Shown::Percent(Percent(percent)));
    Reading { at: at(day, hour), shown, volts: None, amps: None }
}

#[test]
fn readings_are_put_in_order_and_nothing_is_lost_silently() {
    let system = system("sailor");
    let beyond = Reading { volts: Some(Volts(48.0)), ..reading(3, 7, 70.0) };
    let empty = Reading { shown: None, ..reading(4, 7, 0.0) };
    let old = Reading { at: at(1, 7) - TimeDelta::days(500), ..reading(1, 7, 50.0) };
    let given = [reading(2, 7, 60.0), beyond, reading(1, 7, 80.0), empty, reading(2, 7, 61.0), old];
    let (readings, slips) = Readings::of(&given, &bounds(&system));
    let times: Vec<_> = readings.all().iter().map(|own| own.at).collect();
    assert_eq!(times, [at(1, 7), at(2, 7)]);
    assert_eq!(readings.newest().unwrap().shown, reading(2, 7, 60.0).shown, "the first counts");
    let reasons: Vec<usize> = slips.iter().map(|(place, _)| *place).collect();
    assert_eq!(reasons, [1, 3, 4, 5]);
    assert!(matches!(slips[0].1, Slip::OutOfRange { value: 48.0, .. }));
    assert_eq!(
        (&slips[1].1, &slips[2].1, &slips[3].1),
        (&Slip::Empty, &Slip::Twice, &Slip::TooOld)
    );
}

#[test]
fn little_is_told_by_little_and_it_is_said_which_reading_would() {
    let system = system("sailor");
    for readings in
        [vec![], vec![reading(1, 20, 80.0)], vec![reading(1, 20, 80.0), reading(2, 6, 60.0)]]
    {
        let study = of(&system, &readings);
        assert!(study.learned.iter().all(|own| !own.alarm), "{study:?}");
        for own in &study.learned {
            let wide = own.estimate;
            assert!(wide.low <= wide.best && wide.best <= wide.high, "{own:?}");
            let voltage = matches!(own.what, What::Capacity | What::Bypass | What::RestVoltage);
            assert!(!voltage || !wide.told, "without a voltage nothing tells {own:?}");
        }
        let next = study.next();
        assert!(next.contains(&Next::DeepAndRested) && next.contains(&Next::ClampCharging));
        assert_eq!(next.contains(&Next::DuskAndDawn), readings.len() < 2, "{next:?}");
    }
}

#[test]
fn amp_hours_say_the_same_as_their_percentage() {
    let stage = stage("sailor", 3);
    let kept = stage.keep(Fault::Consumption(1.2), 3);
    let gauge = stage.gauge;
    let other = |shown: fn(AmpHours, f64) -> Shown| -> Vec<f64> {
        let turned = kept.readings.iter().map(|own| {
            let level = gauge.level(own.shown.unwrap());
            Reading { shown: Some(shown(gauge.capacity, level)), ..*own }
        });
        let (readings, _) = Readings::of(&turned.collect::<Vec<_>>(), &bounds(&stage.system));
        let study = Study::of(&stage.system, &stage.spread, &gauge, &readings);
        study.learned.iter().map(|own| own.estimate.best).collect()
    };
    let by_percent = other(|_, level| Shown::Percent(Percent::of_ratio(level)));
    let left = other(|full, level| Shown::Left(full * level));
    let taken = other(|full, level| Shown::Taken(full * (1.0 - level)));
    for (one, others) in by_percent.iter().zip(left.iter().zip(&taken)) {
        assert!((one - others.0).abs() < 1e-6 && (one - others.1).abs() < 1e-6, "{one} {others:?}");
    }
}

/// A bypass is the readings' own explanation of a gauge that never reaches full; without readings it is one among many.
#[test]
fn readings_turn_the_order_of_causes() {
    let stage = stage("boat", 9);
    let outlook = Outlook::of(&stage.system);
    let found = (0..20).map(|seed| studied(&stage, Fault::Bypass(2.0), seed).1);
    let study = found.into_iter().find(|own| own.get(What::Bypass).unwrap().alarm).unwrap();
    let before = suspects(Symptom::NeverFull, &stage.system, &outlook, None);
    let after = suspects(Symptom::NeverFull, &stage.system, &outlook, Some(&study));
    assert_ne!(before[0].cause, Cause::Bypass);
    assert_eq!((after[0].cause, after[0].standing), (Cause::Bypass, Standing::Seen));
    assert_eq!(study.next()[0], Next::ClampCharging, "an alarm is confirmed first");
}

#[test]
fn every_symptom_has_causes_with_a_test_in_every_plan() {
    for (name, _) in EXAMPLES {
        let system = system(name);
        let outlook = Outlook::of(&system);
        for symptom in Symptom::ALL {
            let all = suspects(symptom, &system, &outlook, None);
            let sum: f64 = all.iter().map(|own| own.weight).sum();
            assert!(all.len() >= 4 && (sum - 1.0).abs() < 1e-9, "{name} {symptom:?}");
            assert!(all.windows(2).all(|pair| pair[0].weight >= pair[1].weight));
            assert_eq!(all[0].standing, Standing::Likely);
        }
    }
}

/// The camper's November brings a fifth of what it uses: that comes first. In the boat's June it is no cause.
#[test]
fn the_plan_itself_is_the_first_suspect_where_it_falls_short() {
    let place = |name: &str| {
        let system = system(name);
        let outlook = Outlook::of(&system);
        let all = suspects(Symptom::NeverFull, &system, &outlook, None);
        let at = all.iter().position(|own| own.cause == Cause::PlanShort).unwrap();
        (at, all[at].test)
    };
    let (first, test) = place("camper");
    assert!(
        first == 0 && matches!(test, MeterTest::Balance { short } if short.0 > 0.0),
        "{test:?}"
    );
    let (last, test) = place("boat");
    assert!(last > 4 && matches!(test, MeterTest::Balance { short } if short.0 < 0.0), "{test:?}");
}

#[test]
fn more_use_is_taken_over_and_shortens_what_lies_ahead() {
    let stage = stage("sailor", 3);
    let (readings, study) = (0..20)
        .map(|seed| studied(&stage, Fault::Consumption(1.2), seed))
        .find(|(_, own)| own.get(What::NightUse).unwrap().alarm)
        .unwrap();
    let adopted = adoptable(&study, &stage.system);
    let [Adoption::Use(share), ..] = adopted[..] else { panic!("{adopted:?}") };
    assert!((1.05..1.35).contains(&share), "{share}");
    let plain = from_newest(&stage.system, &study, &readings, &[]).unwrap();
    let turned = from_newest(&stage.system, &study, &readings, &adopted).unwrap();
    assert_eq!(plain.start.date, readings.newest().unwrap().at.date());
    let dark = |system: &System| Outlook::of(system).times().dark_to_reserve.unwrap().0;
    assert!(dark(&turned) < dark(&plain), "more use, less time");
    let mut drained = stage.system.clone();
    Adoption::Standing(Amps(1.5)).put_on(&mut drained);
    Adoption::Health(Percent(50.0)).put_on(&mut drained);
    Adoption::Efficiency(Percent(90.0)).put_on(&mut drained);
    assert!((drained.standing - stage.system.standing - Amps(1.5)).0.abs() < 1e-12);
    assert_eq!((drained.bank.health, drained.bank.mean_efficiency), (Percent(50.0), 0.9));
}

#[test]
fn workings_are_their_formulas_and_every_figure_has_a_source() {
    let stage = stage("boat", 9);
    let (_, study) = studied(&stage, Fault::Bypass(2.0), 1);
    for what in [What::NightUse, What::Capacity, What::Bypass, What::HiddenDrain] {
        let mut working = Working::new();
        let value = study.work(what, &stage.system, &mut working).unwrap();
        assert_eq!(
            study.work(what, &stage.system, &mut ()),
            Some(value),
            "tracing changes nothing"
        );
        for step in working.steps() {
            if let Ok(shown) = expression::value(step) {
                assert!((shown - step.value).abs() < 1e-9 * step.value.abs().max(1.0), "{step:?}");
            }
        }
        let found = walk(&working, working.steps().len() - 1);
        assert!(found.faults.is_empty(), "{what:?}: {found:?}");
        assert_eq!(working.result().unwrap().value, value);
    }
    assert_eq!(study.work(What::Yield, &stage.system, &mut ()), None);
}

/// By hand: AGM loses 2.5 % a month, so a fifth in 8 months, held to half a year (26 weeks); flooded 8 %: 2.5 months or 10 weeks.
#[test]
fn chemistries_are_looked_after_each_in_its_way() {
    let has = |all: &[Care], one: &Care| all.contains(one);
    let agm = system("boat").bank;
    assert!(has(&lay_up(&agm), &Care::LayUpFull) && has(&lay_up(&agm), &Care::TopUp { weeks: 26 }));
    assert!(has(&upkeep(&agm), &Care::NeverEqualise) && !has(&upkeep(&agm), &Care::Water));
    let flooded = system("cabin").bank;
    assert!(has(&lay_up(&flooded), &Care::TopUp { weeks: 10 }));
    assert!(has(&upkeep(&flooded), &Care::Water) && has(&upkeep(&flooded), &Care::Ventilate));
    let lithium = system("camper").bank;
    let half = Care::LayUpHalf { least: Percent(40.0), most: Percent(60.0) };
    assert!(has(&lay_up(&lithium), &half) && !has(&lay_up(&lithium), &Care::LayUpFull));
    assert!(has(&upkeep(&lithium), &Care::KeepProtection));
    for bank in [agm, flooded, lithium] {
        assert_eq!((lay_up(&bank)[0], upkeep(&bank)[0]), (Care::SheetFirst, Care::SheetFirst));
    }
}

#[test]
fn pasted_readings_are_those_that_were_kept() {
    let stage = stage("sailor", 3);
    let kept = stage.keep(Fault::Bypass(2.0), 8);
    let text = include_str!("../reference/readings_sailor.csv");
    let pasted = paste(text, &Hints::default(), &bounds(&stage.system));
    assert_eq!((pasted.readings, pasted.slips.len(), pasted.guesses.len()), (kept.readings, 0, 0));
}
