//! The year and the day's flow close: hours with months, months with the bank, sources with uses.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read, and the time is printed"
)]

use std::time::Instant;

use chrono::Datelike as _;
use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{DayFlow, End, Outlook};
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::quantity::{AmpHours, Hours, WattHours};
use sunlarder_engine::simulate::{Almanac, Sunlight, YearRun, run_month};
use sunlarder_engine::system::System;
use sunlarder_tests::golden::golden;
use sunlarder_tests::plans::EXAMPLES;

/// Rounding of sums, of all that flowed.
const CLOSES: f64 = 1e-9;

fn plans() -> Vec<(String, System)> {
    let examples = EXAMPLES.map(|(name, text)| (name.to_owned(), text.to_owned()));
    let golden = golden("v1").unwrap().into_iter().map(|golden| (golden.name, golden.file));
    let read = |(name, text): (String, String)| {
        let plan = Document::from_json(&text).unwrap();
        Some((name, System::assemble(&plan, Climate::embedded(), &mut ()).ok()?))
    };
    let plans: Vec<_> = examples.into_iter().chain(golden).filter_map(read).collect();
    assert!(plans.len() > 15);
    plans
}

fn assert_year_closes(name: &str, system: &System, outlook: &Outlook, year: &YearRun) {
    assert!(matches!(year.days(), 365 | 366), "{name}");
    assert_eq!(year.date(year.days() - 1).month(), 12, "{name}");
    let mut before = year.initial;
    for (at, month) in year.months.iter().enumerate() {
        let hours = year.hours.iter().enumerate();
        let own: Vec<_> =
            hours.filter(|(hour, _)| year.date(hour / 24).month0() as usize == at).collect();
        assert_eq!(own.len(), month.days as usize * 24, "{name}");
        let sum = |of: fn(&sunlarder_engine::simulate::YearHour) -> f64| {
            own.iter().map(|(_, hour)| of(hour)).sum::<f64>()
        };
        let scale = 1.0 + month.flows.came().0 + month.flows.load.0;
        assert!((sum(|hour| hour.came.0) - month.flows.came().0).abs() < CLOSES * scale, "{name}");
        assert!((sum(|hour| hour.load.0) - month.flows.load.0).abs() < CLOSES * scale, "{name}");
        assert_eq!(Hours(sum(|hour| hour.low.0)), month.below_reserve, "{name}");
        let after = own.last().unwrap().1.charge;
        let moved = outlook.months[at].full * (after - before);
        let scale = scale + outlook.months[at].full.0;
        assert!((month.flows.stored - moved).0.abs() < CLOSES * scale, "{name} {at}");
        let flows = &month.flows;
        let went =
            flows.load + flows.protection + flows.charge_loss + flows.self_discharge + flows.stored;
        assert!((flows.came() - went).0.abs() < CLOSES * scale, "{name} {at}");
        // An hour holds its end; the lowest may lie within.
        let least = own.iter().map(|(_, hour)| hour.charge).fold(f64::INFINITY, f64::min);
        assert!(month.lowest <= least && (0.0..=1.0).contains(&month.lowest), "{name} {at}");
        if least < system.bank.reserve.ratio() {
            assert!(month.below_reserve.0 > 0.0, "{name} {at}");
        }
        assert!(month.fuller_days <= month.days && month.full_days <= month.days, "{name}");
        before = after;
    }
}

#[test]
fn hours_of_a_year_close_with_its_months_and_with_the_bank() {
    let spread = SpreadGrid::embedded();
    for (name, system) in plans() {
        let outlook = Outlook::of(&system);
        let began = Instant::now();
        let mean = outlook.mean_year(&system);
        let mean_took = began.elapsed();
        assert_year_closes(&name, &system, &outlook, &mean);
        let began = Instant::now();
        let weather = outlook.weather_year(&system, &spread.at(system.site), 0);
        println!("{name}: mean year {mean_took:.1?}, weather year {:.1?}", began.elapsed());
        assert_year_closes(&name, &system, &outlook, &weather);
        assert_eq!(weather, outlook.weather_year(&system, &spread.at(system.site), 0), "{name}");
        if !name.starts_with("v1/") {
            assert_ne!(
                weather.hours,
                outlook.weather_year(&system, &spread.at(system.site), 1).hours,
                "{name}"
            );
        }
    }
}

#[test]
fn a_year_of_plenty_stays_full_and_one_without_any_source_is_empty() {
    let text = EXAMPLES.iter().find(|(name, _)| *name == "camper").unwrap().1;
    let mut plan = Document::from_json(text).unwrap();
    for array in &mut plan.arrays {
        array.in_parallel *= 8.0;
        array.controller.limit_a = 500.0;
    }
    let year = |plan: &Document| {
        let system = System::assemble(plan, Climate::embedded(), &mut ()).unwrap();
        Outlook::of(&system).mean_year(&system)
    };
    let plenty = year(&plan);
    let summer = &plenty.months[4..9];
    assert!(summer.iter().all(|month| month.below_reserve == Hours::ZERO), "{summer:?}");
    assert!(summer.iter().all(|month| month.full_days == month.days), "{summer:?}");
    plan.arrays.clear();
    plan.shore = None;
    plan.alternator = None;
    plan.generator = None;
    plan.turbine = None;
    let dark = year(&plan);
    assert_eq!(dark.below_reserve(), Hours(dark.hours.len() as f64));
    assert!(dark.hours.iter().all(|hour| hour.charge < 0.2 && hour.came == AmpHours::ZERO));
}

fn energy(flow: &DayFlow, end: End) -> WattHours {
    flow.from.iter().chain(&flow.to).filter(|own| own.end == end).map(|own| own.energy).sum()
}

#[test]
fn what_comes_on_a_day_is_what_goes() {
    for (name, system) in plans() {
        let outlook = Outlook::of(&system);
        let flow = outlook.day_flow(&system, &mut Sunlight::default());
        let (came, went) = (flow.came(), flow.went());
        assert!(
            (came - went).0.abs() < CLOSES * (1.0 + came.0),
            "{name}: {came:?} {went:?} {flow:?}"
        );
        assert!(
            flow.from
                .iter()
                .chain(&flow.to)
                .all(|flow| flow.energy.0 > 0.0 && flow.energy.0.is_finite())
        );
        let kept = energy(&flow, End::IntoBank).0.min(energy(&flow, End::FromBank).0);
        assert_eq!(kept, 0.0, "{name}: the bank either gives or takes");
        // What the loads got and what they went without is what the budget wants, the standing draw at the voltage of the step.
        let at_bank: WattHours = outlook.budget.loads.iter().map(|load| load.energy).sum();
        let wanted = (at_bank + outlook.budget.inverter.energy).0;
        let got: f64 = flow
            .to
            .iter()
            .filter(|own| matches!(own.end, End::Load(_) | End::Conversion | End::InverterIdle))
            .map(|own| own.energy.0)
            .sum();
        if flow.unmet.0 == 0.0 {
            assert!((got - wanted).abs() < 1e-6 * (1.0 + wanted), "{name}: {got} {wanted}");
        } else {
            assert!(
                got < wanted * (1.0 + CLOSES) && got + flow.unmet.0 > wanted * (1.0 - CLOSES),
                "{name}"
            );
        }
    }
}

#[test]
fn the_flow_of_a_month_is_that_of_its_run() {
    for (name, system) in plans() {
        let outlook = Outlook::of(&system);
        let flow = outlook.day_flow(&system, &mut Sunlight::default());
        let sunlight = &mut Sunlight::default();
        let month = run_month(
            &mut Almanac::new(&system, sunlight),
            outlook.capacity.full,
            outlook.month,
            1.0,
            0.0,
            14,
        );
        if month.unmet.0 > 0.0 || month.midnights.len() < 14 {
            continue;
        }
        let held = |day: usize| system.bank.stored(month.midnights[day], outlook.capacity.full);
        let moved = (held(13) - held(6)) / 7.0;
        let own = energy(&flow, End::IntoBank) - energy(&flow, End::FromBank);
        assert!((own - moved).0.abs() < 1e-6 * (1.0 + held(13).0), "{name}: {own:?} {moved:?}");
    }
}
