//! The plans that ship with the program: each opens, stands as a file ought to, and tells its own story.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it cannot read")]

use chrono::Datelike as _;
use sunlarder_engine::document::Document;
use sunlarder_engine::load::catalogue::Appliance;
use sunlarder_engine::load::{DayKind, day_demand};
use sunlarder_engine::outlook::{Obstacle, Outlook, Tight, Verdict};
use sunlarder_engine::place::Climate;
use sunlarder_engine::share;
use sunlarder_engine::simulate::{Almanac, Sunlight, inside_air};
use sunlarder_engine::system::System;
use sunlarder_engine::words::{Language, Tone, Words};
use sunlarder_tests::plans::EXAMPLES;

/// A code that fits a text message with some words around it.
const SHORT_CODE: usize = 400;

fn plan(name: &str) -> Document {
    let (_, text) = EXAMPLES.iter().find(|(own, _)| *own == name).unwrap();
    Document::from_json(text).unwrap_or_else(|problem| panic!("{name}: {problem:?}"))
}

fn outlook(name: &str) -> (System, Outlook) {
    let system = System::assemble(&plan(name), Climate::embedded(), &mut ()).unwrap();
    let outlook = Outlook::of(&system);
    (system, outlook)
}

/// Bits of months from numbers as people write them.
fn bits(months: impl IntoIterator<Item = u16>) -> u16 {
    months.into_iter().map(|month| 1 << (month - 1)).sum()
}

#[test]
fn every_example_is_a_well_kept_file() {
    for (name, text) in EXAMPLES {
        let plan = plan(name);
        assert_eq!(format!("{}\n", plan.to_json()), text, "{name} is not as the program writes it");
        assert_eq!(share::decode(&share::encode(&plan).unwrap()), Ok(plan), "{name}");
    }
}

#[test]
fn every_example_is_a_whole_plan_of_known_appliances() {
    for (name, _) in EXAMPLES {
        let plan = plan(name);
        assert!(!plan.name.is_empty() && !plan.place.name.is_empty(), "{name}");
        assert!((8..=12).contains(&plan.loads.len()) && !plan.arrays.is_empty(), "{name}");
        for load in &plan.loads {
            let number = load.appliance.unwrap();
            assert!(Appliance::from_number(number).is_some(), "{name}: no appliance {number}");
        }
        let code = share::encode(&plan).unwrap();
        assert!(code.len() <= SHORT_CODE, "{name} takes {} letters", code.len());
    }
}

#[test]
fn nothing_stops_an_example_and_every_cold_voltage_is_checked() {
    for (name, _) in EXAMPLES {
        let (_, outlook) = outlook(name);
        for obstacle in &outlook.obstacles {
            assert!(!obstacle.stops(), "{name}: {obstacle:?}");
            assert!(!matches!(obstacle, Obstacle::ColdNotKnown { .. }), "{name}");
        }
    }
}

#[test]
fn the_camper_reaches_its_reserve_after_two_november_days() {
    let (_, outlook) = outlook("camper");
    let Verdict::ReachesReserve { at, after } = outlook.verdict else {
        panic!("{:?}", outlook.verdict);
    };
    assert_eq!(at.date().to_string(), "2026-11-28");
    assert!((44.0..60.0).contains(&after.0), "{after:?}");
    let dark = outlook.times().dark_to_reserve.unwrap();
    assert!(dark < after && dark.0 > 24.0, "{dark:?} without sun");
    let summer_only = bits(5..=9);
    assert_eq!(outlook.months_kept() & !summer_only, 0);
    assert_eq!(outlook.tightest.why, Tight::LittleSun);
}

#[test]
fn the_boat_keeps_up_all_summer_and_not_in_winter() {
    let (_, outlook) = outlook("boat");
    assert!(matches!(outlook.verdict, Verdict::KeepsUp { .. }), "{:?}", outlook.verdict);
    let kept = outlook.months_kept();
    assert_eq!(kept & bits(5..=9), bits(5..=9), "{kept:b}");
    assert_eq!(kept & bits([1, 11, 12]), 0, "{kept:b}");
    let days = outlook.autonomy_days.unwrap();
    assert!((0.8..1.5).contains(&days), "{days} days of autonomy");
}

#[test]
fn the_cabin_falls_short_in_the_dark_months() {
    let (_, outlook) = outlook("cabin");
    let Verdict::ReachesReserve { at, .. } = outlook.verdict else {
        panic!("{:?}", outlook.verdict);
    };
    assert_eq!(at.date().to_string(), "2026-12-20", "the first weekend");
    assert_eq!(outlook.months_kept(), bits(2..=10));
    assert_eq!((outlook.tightest.month, outlook.tightest.why), (11, Tight::LittleSun));
}

#[test]
fn the_classroom_and_the_clinic_keep_up_all_year() {
    for (name, least_days) in [("classroom", 2.0), ("clinic", 5.0)] {
        let (_, outlook) = outlook(name);
        assert_eq!(outlook.verdict, Verdict::KeepsUp { all_year: true }, "{name}");
        assert!(outlook.autonomy_days.unwrap() > least_days, "{name}");
    }
}

#[test]
fn the_classroom_rests_on_sundays() {
    let (system, outlook) = outlook("classroom");
    // From Monday, 2026-02-09; steps of Sunday and of Friday by their hours from the start at 7:30.
    let load = |day: f64| -> f64 {
        let from = day * 24.0 - 7.5;
        let samples = outlook.run.samples.iter();
        let of = samples.filter(|sample| sample.at.0 > from && sample.at.0 <= from + 24.0);
        of.map(|sample| sample.flows.load.0).sum()
    };
    assert_eq!(system.start.date.to_string(), "2026-02-09");
    let (friday, sunday) = (load(4.0), load(6.0));
    assert!(sunday < 0.1 * friday, "{sunday} Ah on Sunday, {friday} Ah on Friday");
    assert!(sunday > 0.0, "the cameras watch on Sundays too");
}

#[test]
fn the_clinic_says_that_lives_depend_on_it() {
    let (system, outlook) = outlook("clinic");
    let vital: Vec<u16> = system.loads.iter().filter(|load| load.vital).map(|l| l.place).collect();
    assert_eq!(vital, [0, 8]);
    for load in vital {
        assert!(outlook.obstacles.contains(&Obstacle::VitalLoad { load }));
    }
    let plan = plan("clinic");
    let words = Words::of(Language::English);
    let said = words.vital(&outlook, &|tag| words.name_in(&plan, tag)).unwrap_or_default();
    let named = "A life may depend on “Vaccine fridge” and “Nebuliser”: each needs a backup of its own and an alarm";
    assert!(said.starts_with(named), "{said}");
    // It keeps up all year, and yet that is not said as good news.
    assert_eq!(words.headline(&outlook).tone, Tone::Plain);
    assert_eq!(outlook.cautions().count(), outlook.obstacles.len() - 2);
}

#[test]
fn the_sailor_has_eight_days_of_fifteen() {
    let (_, outlook) = outlook("sailor");
    let Verdict::ReachesReserve { after, .. } = outlook.verdict else {
        panic!("{:?}", outlook.verdict);
    };
    assert!((6.0..11.0).contains(&(after.0 / 24.0)), "{after:?}");
}

#[test]
fn the_stall_lights_some_nights_and_the_radio_hut_all_winter() {
    let (_, outlook_of_stall) = outlook("stall");
    let Verdict::ReachesReserve { after, .. } = outlook_of_stall.verdict else {
        panic!("{:?}", outlook_of_stall.verdict);
    };
    assert!((48.0..120.0).contains(&after.0), "{after:?}");
    let (system, hut) = outlook("hut");
    assert_eq!(hut.verdict, Verdict::KeepsUp { all_year: true });
    assert_eq!((hut.tightest.month, system.loads.iter().filter(|load| load.vital).count()), (5, 2));
}

/// Every example, begun full in each month of the year.
fn in_each_month() -> impl Iterator<Item = (String, System, Outlook)> {
    EXAMPLES.iter().flat_map(|(name, _)| (1..=12).map(move |month| (*name, month))).map(
        |(name, month)| {
            let mut plan = plan(name);
            plan.start.date = plan.start.date.with_day(10).unwrap().with_month(month).unwrap();
            plan.start.charge_pct = 100.0;
            let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
            let outlook = Outlook::of(&system);
            (format!("{name} in month {month}"), system, outlook)
        },
    )
}

#[test]
fn what_is_said_of_the_start_agrees_with_the_year() {
    let mut kept = [0, 0];
    for (name, _, outlook) in in_each_month() {
        let cold = outlook.months.iter().filter(|month| month.too_cold_to_charge);
        let cold: u16 = cold.map(|month| 1 << month.month).sum();
        let told = outlook.obstacles.iter().find_map(|own| match own {
            Obstacle::TooColdToCharge { months, .. } => Some(*months),
            _ => None,
        });
        assert_eq!(told.unwrap_or(0), cold, "{name}");
        assert_eq!(outlook.now, outlook.months[outlook.month], "{name}");
        assert_eq!(outlook.budget.total, outlook.now.need, "{name}");
        if let Verdict::KeepsUp { all_year } = outlook.verdict {
            assert_eq!(all_year, outlook.months_kept() == 0xfff, "{name}");
            kept[usize::from(all_year)] += 1;
        }
    }
    assert!(kept[0] > 10 && kept[1] > 10, "{kept:?}");
}

#[test]
fn days_that_share_what_is_wanted_want_the_same_as_each_by_itself() {
    for (name, text) in EXAMPLES {
        let plan = Document::from_json(text).unwrap();
        let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
        let mut sunlight = Sunlight::default();
        let mut almanac = Almanac::new(&system, &mut sunlight);
        for (month, weekday) in (0..12).flat_map(|month| (0..7).map(move |day| (month, day))) {
            let air = inside_air(&system, almanac.sky(month.into()));
            let kind = DayKind::inside(month, weekday);
            let alone = day_demand(&system.loads, system.inverter.as_ref(), kind, &air);
            let shared = almanac.demand(month.into(), weekday);
            assert_eq!(shared.steps, alone.steps, "{name}, month {month}, weekday {weekday}");
            assert_eq!(shared.loads, alone.loads, "{name}, month {month}, weekday {weekday}");
        }
    }
}
