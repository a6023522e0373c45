//! The simulated gauge against the truth that it is held beside, and each mistake against its symptom.
//!
//! Truth is the state of charge by amp-hours, of a bank that keeps the capacity of the month of the start, over a whole year from the start of
//! each example on, in one of its invented weathers.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use sunlarder_engine::document::Document;
use sunlarder_engine::gauge::{
    Card, Counter, Course, Gauge, Kind, MARGIN, Misset, Mistake, Telltale, Trial, Tried, Truth,
    Unseen, Years,
};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::quantity::{AmpHours, Amps, Hours, Percent, Volts};
use sunlarder_engine::simulate::STEP;
use sunlarder_engine::sky::DAYS_PER_YEAR;
use sunlarder_engine::system::System;
use sunlarder_engine::working::Working;
use sunlarder_tests::expression::value;
use sunlarder_tests::plans::EXAMPLES;
use sunlarder_tests::provenance::walk;

/// An example with its answers.
struct Answered {
    name: &'static str,
    system: System,
    outlook: Outlook,
    card: Card,
}

impl Answered {
    fn of(name: &'static str) -> Self {
        let text = EXAMPLES.into_iter().find(|own| own.0 == name).unwrap().1;
        let plan = Document::from_json(text).unwrap();
        let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
        let outlook = Outlook::of(&system);
        let card = Card::of(&system, &outlook);
        Self { name, system, outlook, card }
    }

    fn all() -> impl Iterator<Item = Self> {
        EXAMPLES.into_iter().map(|(name, _)| Self::of(name))
    }

    fn course(&self, truth: Truth, number: u32) -> Course {
        let spread = SpreadGrid::embedded().at(self.system.site);
        Course::of((&self.system, &self.outlook), truth, (&spread, number), DAYS_PER_YEAR)
    }

    /// A gauge that knows what a card can only mean: the very law of the efficiency, no exponent as amp-hours are the truth, no
    /// threshold, and so small a tail that full is full.
    fn perfect(&self) -> Gauge {
        Gauge {
            exponent: 1.0,
            efficiency: self.system.bank.efficiency,
            threshold: Amps::ZERO,
            tail: Percent(0.1),
            hold: Hours(1.0),
            ..self.card.gauge()
        }
    }

    fn is_lead_acid(&self) -> bool {
        self.system.bank.lead_acid.is_some()
    }

    fn tried(&self, mistake: Mistake) -> Tried {
        mistake.tried(&self.card, &self.system, &self.course(Truth::OneCapacity, 0))
    }
}

#[test]
fn with_perfect_settings_it_follows_the_truth_within_one_per_cent_for_a_year() {
    let mut worst: f64 = 0.0;
    for own in Answered::all() {
        for number in [0, 1] {
            let trial = Trial::of(&own.course(Truth::OneCapacity, number), &own.perfect(), 0);
            assert_eq!(trial.hours.len(), DAYS_PER_YEAR * 24);
            let off = trial.over.max(trial.under);
            println!("{}: {off:.4}, set to full {} times", own.name, trial.fulls.len());
            assert!(off < 0.01, "{}: {off}", own.name);
            worst = worst.max(off);
        }
    }
    println!("worst {worst:.4}");
}

/// Not within one per cent: an efficiency is one figure, and the tail of lead-acid is not quite full. So much is said in the limits.
#[test]
fn with_the_card_it_strays_by_what_a_card_cannot_know() {
    for own in Answered::all() {
        for truth in [Truth::OneCapacity, Truth::ByMonth] {
            let trial = Trial::of(&own.course(truth, 0), &own.card.gauge(), 0);
            let (mean, most) = if own.is_lead_acid() { (0.035, 0.2) } else { (0.015, 0.02) };
            let off = trial.over.max(trial.under);
            println!("{} {truth:?}: mean {:.4}, at most {off:.4}", own.name, trial.mean_off);
            // Never on a dull morning: whenever it says full, the bank nearly is.
            let emptiest = trial.emptiest_full().unwrap_or(1.0);
            assert!(emptiest > if own.is_lead_acid() { 0.86 } else { 0.998 }, "{emptiest}");
            assert!(trial.mean_off < mean && off < most, "{}: {} {off}", own.name, trial.mean_off);
        }
    }
}

/// Where each mistake can be seen: plans that fill often for what shows at full, lead-acid for efficiency and tail.
const SEEN: [(Mistake, &[&str]); 17] = [
    (Mistake::CapacityHigh, &["camper", "boat", "cabin", "classroom", "clinic", "hut"]),
    (Mistake::CapacityLow, &["camper", "boat", "cabin", "classroom", "clinic", "hut"]),
    (Mistake::EfficiencyHigh, &["boat", "cabin", "clinic", "hut"]),
    (Mistake::EfficiencyLow, &["boat", "cabin", "clinic", "hut"]),
    (Mistake::FullVoltageLow, &["camper", "sailor", "boat", "cabin", "classroom", "hut"]),
    (Mistake::FullVoltageHigh, &["camper", "boat", "cabin", "classroom", "clinic", "hut"]),
    (Mistake::TailLarge, &["boat", "cabin", "hut"]),
    (Mistake::TailSmall, &["boat", "cabin", "clinic", "hut"]),
    (Mistake::OffsetUp, &["camper", "boat", "cabin", "clinic", "hut"]),
    (Mistake::OffsetDown, &["boat", "cabin", "classroom", "clinic", "hut"]),
    (Mistake::ShuntLarge, &["camper", "boat", "cabin", "classroom", "clinic", "hut"]),
    (Mistake::ShuntSmall, &["camper", "boat", "cabin", "classroom", "clinic", "hut"]),
    (Mistake::ShuntReversed, &["camper", "boat", "cabin", "classroom", "clinic", "hut"]),
    (Mistake::LoadAhead, &["camper", "sailor", "boat", "cabin", "clinic", "hut"]),
    (Mistake::ChargerAhead, &["camper", "boat", "cabin", "classroom", "clinic", "hut"]),
    (Mistake::ThresholdHigh, &["camper", "boat", "cabin", "classroom", "clinic", "hut"]),
    (Mistake::FullOnEmpty, &["camper", "sailor", "boat", "cabin", "classroom", "hut"]),
];

#[test]
fn each_mistake_shows_its_known_telltale() {
    assert_eq!(SEEN.map(|own| own.0), Mistake::ALL);
    for (mistake, plans) in SEEN {
        for name in plans {
            let own = Answered::of(name);
            let tried = own.tried(mistake);
            let (wrong, right) = (&tried.wrong, &tried.right);
            assert!(
                tried.shows(),
                "{mistake:?} in {name}: pace {} and {}, drift {} and {}, full {} and {}",
                wrong.pace,
                right.pace,
                wrong.drift.0,
                right.drift.0,
                wrong.fulls.len(),
                right.fulls.len()
            );
        }
    }
}

#[test]
fn a_gauge_without_a_mistake_shows_no_telltale() {
    for own in Answered::all() {
        let course = own.course(Truth::OneCapacity, 0);
        let right = Trial::of(&course, &own.card.gauge(), 0);
        let none = Tried { mistake: Mistake::CapacityHigh, wrong: right.clone(), right };
        for telltale in Telltale::ALL {
            assert!(!none.has(telltale), "{}: {telltale:?}", own.name);
        }
    }
}

/// What each telltale says in so many words, on one plan where it is strong.
#[test]
fn telltales_are_what_they_are_called() {
    let at_lowest = |trial: &Trial| *trial.at_lowest().unwrap();
    let high = Answered::of("hut").tried(Mistake::CapacityHigh).wrong;
    // At four thirds of the capacity the count of a whole discharge falls by three quarters.
    assert!(at_lowest(&high).shown > at_lowest(&high).truth + 0.05, "{:?}", at_lowest(&high));
    let low = Answered::of("hut").tried(Mistake::CapacityLow).wrong;
    assert!(
        low.wrong_empties.iter().all(|own| own.truth > MARGIN) && !low.wrong_empties.is_empty()
    );
    let early = Answered::of("camper").tried(Mistake::FullVoltageLow);
    assert!(early.wrong.emptiest_full().unwrap() < 0.5, "{:?}", early.wrong.emptiest_full());
    let never = Answered::of("cabin").tried(Mistake::TailSmall);
    assert!(never.wrong.longest_since_full > never.right.longest_since_full);
    assert_eq!(never.wrong.longest_since_full, Hours(DAYS_PER_YEAR as f64 * 24.0));
    let ahead = Answered::of("clinic").tried(Mistake::ChargerAhead).wrong;
    assert!(ahead.hours.iter().any(|own| own.shown <= 0.0 && own.truth > 0.9));
    let fooled = Answered::of("sailor").tried(Mistake::FullOnEmpty).wrong;
    assert!(fooled.hours[0].shown > 0.95 && fooled.hours[0].truth < 0.1, "{:?}", fooled.hours[0]);
}

/// 500 mA read at rest are 12 Ah a day, whatever the plan does: the drift is the sum anybody can do.
#[test]
fn an_offset_drifts_by_the_sum_of_its_current() {
    let own = Answered::of("clinic");
    let course = own.course(Truth::OneCapacity, 0);
    let mut gauge = Gauge { full_voltage: own.system.bank.nominal * 9.0, ..own.perfect() };
    gauge.error.offset = Amps(-0.01);
    let days = 60.0;
    let mut short = course;
    short.moments.truncate((days * 24.0 / STEP.0) as usize);
    let last = |gauge: &Gauge| Trial::of(&short, gauge, 0).hours.last().unwrap().shown;
    gauge.efficiency = sunlarder_engine::bank::ChargeEfficiency::Flat(1.0);
    gauge.self_discharge = Percent(0.0);
    let without = Gauge { error: own.perfect().error, ..gauge };
    let from = |gauge: &Gauge| Gauge { start: Some(0.5), capacity: AmpHours(1e5), ..*gauge };
    let drifted = (last(&from(&without)) - last(&from(&gauge))) * 1e5;
    let sum = 0.01 * 24.0 * days;
    assert!((drifted - sum).abs() < 1e-6 * sum, "{drifted} {sum}");
}

#[test]
fn what_bypasses_the_shunt_is_missing_by_its_amount() {
    let own = Answered::of("boat");
    let course = own.course(Truth::OneCapacity, 0);
    let sum = |unseen: &Unseen| {
        let passed = course.moments.iter().map(|moment| (moment.passes(unseen) * STEP).0);
        passed.sum::<f64>()
    };
    let total = |of: fn(&sunlarder_engine::gauge::Moment) -> Amps| {
        course.moments.iter().map(|moment| (of(moment) * STEP).0).sum::<f64>()
    };
    let (all, none) = (Percent(100.0), Unseen::default());
    let load = sum(&Unseen { load: Percent(30.0), ..none }) - sum(&none);
    assert!((load - 0.3 * total(|own| own.load)).abs() < 1e-6 && load > 100.0);
    let engine = sum(&none) - sum(&Unseen { engine: all, ..none });
    assert!((engine - total(|own| own.engine)).abs() < 1e-6 && engine > 1.0, "{engine}");
}

#[test]
fn the_time_left_stands_beside_that_of_the_plan() {
    let own = Answered::of("camper");
    let course = own.course(Truth::OneCapacity, 0);
    let trial = Trial::of(&course, &own.perfect(), 0);
    let reserve = own.system.bank.reserve.ratio();
    let at_reserve = trial.hours.iter().position(|own| own.truth <= reserve).unwrap();
    // From a whole hour on the plan's time is that until the quarter-hour in which the reserve is reached.
    let left = trial.hours[at_reserve - 5].plan_left.unwrap();
    assert!(left > Hours(4.0) && left <= Hours(5.0), "{left:?}");
    for shown in &trial.hours {
        let charges = shown.gauge_left.is_none();
        let bounded = shown.gauge_left.is_none_or(|left| left.0 >= 0.0 && left.0.is_finite());
        assert!(charges || bounded, "{shown:?}");
        assert!(shown.truth > reserve || shown.plan_left == Some(Hours::ZERO), "{shown:?}");
    }
    assert!(trial.hours.iter().any(|own| own.gauge_left.is_none()));
}

#[test]
fn any_figures_that_are_taken_give_a_count_between_nothing_and_full() {
    let own = Answered::of("cabin");
    let mut course = own.course(Truth::ByMonth, 3);
    course.moments.truncate(2000);
    let mut seed: u64 = 7;
    let mut random = |least: f64, most: f64| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        least + (most - least) * ((seed >> 11) as f64 / (1_u64 << 53) as f64)
    };
    for _ in 0..200 {
        let mut gauge = own.card.gauge();
        gauge.capacity = AmpHours(random(1.0, 1000.0));
        gauge.exponent = random(1.0, 2.0);
        gauge.tail = Percent(random(0.001, 100.0));
        gauge.threshold = Amps(random(0.0, 10.0));
        gauge.error.offset = Amps(random(-10.0, 10.0));
        gauge.error.gain = Percent(random(-300.0, 300.0));
        gauge.averaged = Hours(random(0.01, 24.0));
        gauge.start = Some(random(0.0, 1.0));
        let trial = Trial::of(&course, &gauge.checked().unwrap(), 5);
        assert!(trial.hours.iter().all(|own| (0.0..=1.0).contains(&own.shown)), "{gauge:?}");
        assert!(trial.drift.0.is_finite() && trial.pace.is_finite());
    }
    let nothing = Trial::of(&course, &own.card.gauge(), 1_000_000);
    assert_eq!((nothing.hours.len(), nothing.fulls_a_month()), (0, 0.0));
}

#[test]
fn figures_that_cannot_be_are_refused() {
    let gauge = Answered::of("boat").card.gauge();
    assert_eq!(gauge.checked(), Ok(gauge));
    for wrong in [0.0, -5.0, f64::NAN, f64::INFINITY] {
        let told = Gauge { capacity: AmpHours(wrong), ..gauge }.checked().unwrap_err();
        assert_eq!(told.figure, sunlarder_engine::gauge::Figure::Set(Kind::Capacity));
    }
    let start = Gauge { start: Some(1.5), ..gauge }.checked().unwrap_err();
    assert_eq!(start, Misset { figure: sunlarder_engine::gauge::Figure::Start, value: 150.0 });
    for own in Answered::all() {
        assert!(own.card.gauge().checked().is_ok());
        for mistake in Mistake::ALL {
            let made = mistake.made(&own.card, &own.system);
            assert!(made.checked().is_ok(), "{mistake:?}");
        }
    }
}

#[test]
fn several_years_are_told_by_their_least_and_their_most() {
    let own = Answered::of("camper");
    let trials = [0, 1, 2]
        .map(|number| Trial::of(&own.course(Truth::ByMonth, number), &own.card.gauge(), 0));
    let years = Years::of(&mut trials.iter().cloned()).unwrap();
    assert_eq!(years.count, 3);
    let fulls = trials.each_ref().map(Trial::fulls_a_month);
    assert_eq!(years.fulls_a_month.0, fulls.into_iter().fold(f64::INFINITY, f64::min));
    assert_eq!(years.fulls_a_month.1, fulls.into_iter().fold(0.0, f64::max));
    assert!(years.fulls_a_month.0 < years.fulls_a_month.1, "weather differs");
    assert!(trials.iter().all(|own| own.over <= years.over.1 && own.under >= years.under.0));
    assert_eq!(Years::of(&mut core::iter::empty()), None);
}

#[test]
fn a_count_without_supply_stands_still() {
    let mut counter = Counter::at(0.4);
    counter.pause(Hours(100.0));
    assert_eq!((counter.shown, counter.since_full), (0.4, Hours(100.0)));
}

/// Two quarter-hours of a count, in and out, and the time that is left after them.
#[test]
fn a_step_of_the_count_shows_its_working() {
    let gauge = Answered::of("cabin").card.gauge();
    let mut working = Working::new();
    let (mut traced, mut plain) = (Counter::at(0.7), Counter::at(0.7));
    for passes in [Amps(6.0), Amps(-25.0)] {
        traced.worked(&gauge, (passes, Volts(25.0)), STEP, &mut working);
        plain.step(&gauge, passes, Volts(25.0), STEP);
    }
    assert_eq!(traced, plain, "tracing changes nothing");
    let left = traced.time_left(&gauge, &mut working).unwrap();
    assert_eq!(working.result().unwrap().value, left.0);
    for step in working.steps() {
        let shown = value(step).unwrap();
        assert!((shown - step.value).abs() < 1e-12 * step.value.max(1.0), "{step:?}: {shown}");
    }
    let found = walk(&working, 2);
    assert!(found.faults.is_empty() && found.steps.len() == 3, "{found:#?}");
}
