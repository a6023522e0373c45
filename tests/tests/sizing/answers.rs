//! What a study answers: it holds, and a little less does not.

use sunlarder_engine::document::When;
use sunlarder_engine::document::{Document, Months};
use sunlarder_engine::quantity::{Amps, Percent};
use sunlarder_engine::sizing::{
    Arrival, Change, Course, Kind, Promise, Question, Rates, Size, voltages,
};
use sunlarder_tests::lanes::sizing_of;
use sunlarder_tests::plans::EXAMPLES;

use crate::help::{load, plan};
use crate::{FEW_YEARS, YEARS, example, studied};

#[test]
fn the_frontier_is_a_frontier_and_what_is_suggested_holds() {
    let mut suggested = 0;
    for (name, _) in EXAMPLES {
        let plan = example(name);
        let promise = Promise::default();
        let study = studied(&plan, Question { promise, ..Question::default() }, FEW_YEARS);
        let map = study.map();
        let kept = |bank, array| promise.is_kept_by(map.chance(&promise, bank, array).unwrap());
        let frontier = study.frontier();
        assert!(!frontier.is_empty(), "{name}");
        assert!(frontier.windows(2).all(|pair| pair[0].0 < pair[1].0 && pair[0].1 > pair[1].1));
        for (bank, array) in frontier.iter().copied() {
            assert!(kept(bank, array), "{name}");
            assert!((0..array).all(|smaller| !kept(bank, smaller)), "{name}");
            assert!((0..bank).all(|smaller| !kept(smaller, array)), "{name}");
        }
        let cheap = |bank_ah, array_w| {
            map.least_by(study.sizing(), &promise, Rates { bank_ah, array_w }).unwrap().0
        };
        let (first, last) = (frontier[0], frontier[frontier.len() - 1]);
        assert_eq!(cheap(1.0, 0.0), map.size(first.0, first.1), "{name}");
        assert_eq!(cheap(0.0, 1.0), map.size(last.0, last.1), "{name}");
        let size = study.suggested().found().unwrap();
        assert!(size.bank >= 1.0 && size.array >= 1.0, "{name}: {size:?}");
        let whole = study.units().raised(size);
        assert!((whole.array - size.array).abs() < 1e-9 && whole.bank == size.bank, "{name}");
        let adopted = size.adopted(&plan);
        assert!(adopted.clone().checked().is_ok(), "{name}");
        let again = sizing_of(&adopted, FEW_YEARS).unwrap();
        let course = Course::of(&again, &promise);
        let chance = again.chance(&course, &promise, Size::OWN, Amps(0.0));
        assert!(promise.is_kept_by(chance), "{name}: {size:?} {chance}");
        suggested += usize::from(size != Size::OWN);
    }
    assert!(suggested >= 4, "{suggested}");
}

#[test]
fn answers_keep_and_a_little_less_does_not() {
    let promise = Promise { chance: Percent(75.0), ..Promise::default() };
    let question = Question { promise, ..Question::default() };
    let check = |plan: &Document| {
        let study = studied(plan, question, FEW_YEARS);
        let (sizing, course) = (study.sizing(), study.map().course());
        let kept = |size, more| promise.is_kept_by(sizing.chance(course, &promise, size, more));
        let (bank, array) = (study.smallest_bank().found(), study.smallest_array().found());
        for (size, less) in [
            bank.map(|own| (own, Size { bank: own.bank * 0.98, ..own })),
            array.map(|own| (own, Size { array: own.array * 0.98, ..own })),
        ]
        .into_iter()
        .flatten()
        {
            assert!(kept(size, Amps(0.0)) && !kept(less, Amps(0.0)), "{size:?}");
        }
        assert!(bank.is_some() && array.is_some());
        let more = |hours: u32| sizing.charger() * (f64::from(hours) / 168.0);
        let hours = study.charger_hours().found();
        if let Some(hours) = hours {
            assert!(kept(Size::OWN, more(hours)) && !kept(Size::OWN, more(hours - 1)), "{hours}");
        }
        (study.standing().unwrap().kept, hours)
    };
    assert_eq!(check(&Size { bank: 4.0, array: 4.0 }.adopted(&example("hut"))), (true, None));
    let (kept, hours) = check(&Size { bank: 0.5, array: 0.5 }.adopted(&example("hut")));
    assert!(!kept && hours.is_some_and(|hours| hours > 1), "{hours:?}");
}

#[test]
fn a_season_that_counts_less_asks_less() {
    let sizing = sizing_of(&example("boat"), YEARS).unwrap();
    let all = Promise::default();
    let summer = Promise { season: Months(0b0000_1111_0000), ..all };
    let course = Course::of(&sizing, &all);
    let counts = sizing.proved(&course, Size::OWN, Amps(0.0));
    let chance = |promise: &Promise| promise.chance_of(&counts, &course.trials);
    assert!(chance(&summer) > chance(&all), "{} {}", chance(&summer), chance(&all));
    assert_eq!(sizing.tightest(&all), 11);
    assert!(sizing.tightest(&summer) < 8);
}

#[test]
fn a_higher_system_voltage_halves_the_currents() {
    for name in ["camper", "cabin", "classroom"] {
        let sizing = sizing_of(&example(name), 1).unwrap();
        let all = voltages(sizing.system());
        assert_eq!(all.iter().filter(|own| own.own).count(), 1, "{name}");
        for pair in all.windows(2) {
            assert!((pair[0].loads / pair[1].loads - 2.0).abs() < 1e-9, "{name}");
            assert!((pair[0].arrays / pair[1].arrays - 2.0).abs() < 1e-9, "{name}");
        }
        let own = all.iter().find(|own| own.own).unwrap();
        assert!((own.nominal - sizing.system().bank.nominal).0.abs() < 1e-9);
    }
}

/// 80 Ah of 100 Ah at 12.8 V are some 1 kWh to be filled; 400 W of modules bring 5 h · 400 W · 0.8 = 1.6 kWh on a whole day and half of it from
/// noon on. So whoever arrives in the morning is full the same evening, whoever arrives later the next. 20 W of modules never do it.
#[test]
fn who_arrives_early_leaves_full() {
    let arrival = |module_w| {
        let sizing = sizing_of(&plan(vec![load(5.0, When::Always)], 100.0, module_w), 1).unwrap();
        sizing.arrival()
    };
    let bright = arrival(400.0);
    assert!(bright.latest[0].is_some_and(|hour| (8..=12).contains(&hour)), "{bright:?}");
    assert_eq!(bright.latest[1], Some(Arrival::WHENEVER), "{bright:?}");
    assert_eq!(bright.shortest(), Some(1));
    assert_eq!(arrival(20.0).latest, [None; 3]);
}

/// A trip in the cabin's darkest month has a better time, a smaller reserve helps its chance and a greater one does not, and two changes
/// are tried together only where none alone is enough.
#[test]
fn other_months_and_pairs_are_tried_where_they_matter() {
    let december = Months(1 << 11);
    let promise = Promise { kind: Kind::Trip { days: 7 }, season: december, ..Promise::default() };
    let mut paired = 0;
    for name in ["boat", "cabin", "hut"] {
        let study = studied(&example(name), Question { promise, ..Question::default() }, FEW_YEARS);
        let helped = study.helped();
        let short = study.standing().unwrap().shortage;
        let alone = helped.iter().any(|own| own.kept && own.with.is_none());
        let pairs = helped.iter().filter(|own| own.with.is_some()).count();
        assert!(pairs == 0 || !alone, "{name}: {helped:?}");
        paired += pairs;
        assert!(helped.iter().all(|own| own.shortage < short), "{name}");
        let kept = helped.iter().map(|own| own.kept);
        assert!(kept.is_sorted_by(|one, next| one >= next), "{name}: {helped:?}");
        if short > 0.0 {
            let season = helped.iter().find_map(|own| match own.change {
                Change::OtherMonths { season } => Some(season),
                _ => None,
            });
            assert!(season.is_some_and(|season| season != december), "{name}: {helped:?}");
        }
        let chance = |to: &dyn Fn(f64) -> bool| {
            study.reserves().find_map(|own| match own.change {
                Change::Reserve { to: at } if to(at.0) => Some(own.chance),
                _ => None,
            })
        };
        let own = example(name).bank.reserve_pct;
        let (less, more) = (chance(&|to| to < own), chance(&|to| to > own));
        let now = study.standing().unwrap().chance;
        assert!(less.is_none_or(|less| less >= now) && more.is_some_and(|more| more <= now));
    }
    println!("{paired} pairs");
}
