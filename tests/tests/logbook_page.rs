//! The leaves of the logbook: a pasted table becomes the plan's readings, what they say is what the engine says, and what is adopted is
//! the plan that was told.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it cannot read")]

use chrono::NaiveDate;
use sunlarder_engine::digits;
use sunlarder_engine::document::{Document, Logbook, Logged, LoggedCharge, date_text};
use sunlarder_engine::logbook::{
    Adoption, GaugeSetUp, Reading, Readings, Study, Symptom, What, adoptable, lay_up, suspects,
    upkeep,
};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::share;
use sunlarder_engine::system::System;
use sunlarder_engine::words::logbook::OnLogbook;
use sunlarder_engine::words::{Habits, Label, Language, Words, decimal};
use sunlarder_tests::logkeeper::{Fault, Stage};
use sunlarder_tests::plans::EXAMPLES;
use sunlarder_worker::desk::Desk;
use sunlarder_worker::leaf::Leaf;
use sunlarder_worker::message::{Answer, Request, climate_numbers};
use sunlarder_worker::paper::{ATTR, TEXT, marks};
use sunlarder_worker::sentences::PART;

const WORDS: Words = Words::of(Language::English);

fn plan(name: &str) -> Document {
    let text = EXAMPLES.iter().find(|own| own.0 == name).unwrap().1;
    Document::from_json(text).unwrap()
}

fn system(plan: &Document) -> System {
    System::assemble(plan, Climate::embedded(), &mut ()).unwrap()
}

/// A plan with readings of a system that has a fault.
fn read(name: &str, fault: Fault, seed: u64, count: usize) -> Document {
    let text = EXAMPLES.iter().find(|own| own.0 == name).unwrap().1;
    let stage = Stage::new(text, NaiveDate::from_ymd_opt(2026, 9, 7).unwrap());
    let mut plan = plan(name);
    let mut own = Logbook { capacity_ah: Some(stage.full), ..Logbook::default() };
    for reading in stage.keep(fault, seed).readings.iter().take(count) {
        own.add(reading.logged().unwrap());
    }
    plan.logbook = Some(own);
    plan.checked().unwrap()
}

/// The twelve spreads as the page sends them, and as they are read.
fn spreads(system: &System) -> (String, [f64; 12]) {
    let spread = SpreadGrid::embedded().at(system.site);
    let texts = spread.map(|own| decimal(own, 9));
    (texts.join(" "), texts.map(|own| digits::number(&own).unwrap()))
}

fn study(plan: &Document) -> (System, Readings, Study) {
    let system = system(plan);
    let (readings, _) = Readings::stated(plan, &system);
    let gauge = GaugeSetUp::stated(plan, &system);
    let study = Study::of(&system, &spreads(&system).1, &gauge, &readings);
    (system, readings, study)
}

/// What a desk writes of a plan.
fn written(desk: &mut Desk, plan: &Document, leaf: Leaf, argument: &str) -> String {
    let climate = climate_numbers(&system(plan).climate);
    let code = share::encode(plan).unwrap();
    desk.take(Request::Plan { serial: 1, code, habits: Habits::USUAL, climate });
    desk.take(Request::Leaf { serial: 1, wish: 1, leaf, argument: argument.to_owned() });
    let mut answers = core::iter::from_fn(|| desk.work()).flatten();
    match answers.next() {
        Some(Answer::Written { written, .. }) => written.text,
        other => panic!("{leaf:?}: {other:?}"),
    }
}

fn texts(paper: &str) -> Vec<&str> {
    marks(paper).filter(|(mark, _)| *mark == TEXT).map(|(_, text)| text).collect()
}

fn attribute<'a>(paper: &'a str, name: &str) -> Option<&'a str> {
    let mut all = marks(paper).filter(|(mark, _)| *mark == ATTR);
    all.find_map(|(_, own)| own.strip_prefix(name)?.strip_prefix('='))
}

/// The plan with a table, whether lines are left, and what is said.
fn taken(
    desk: &mut Desk,
    plan: &Document,
    argument: &str,
) -> (Option<Document>, bool, Vec<String>) {
    let text = written(desk, plan, Leaf::TakenReadings, argument);
    let parts: Vec<&str> = text.splitn(3, PART).collect();
    let said = texts(parts[2]).into_iter().map(str::to_owned).collect();
    (share::decode(parts[0]).ok(), !parts[1].is_empty(), said)
}

#[test]
fn a_table_becomes_readings_and_every_line_that_does_not_is_named() {
    let mut desk = Desk::new(WORDS);
    let bare = plan("stall");
    let table = "date,time,percent,volts,amps\n03/04/2026,7:00,80,12.9,-1.5\n04/04/2026,7:00,high,12.9,1\n05/04/2026,7:00,70,130,1\n";
    let (with, left, said) = taken(&mut desk, &bare, &format!("0{table}"));
    let with = with.unwrap();
    let readings = &with.logbook.as_ref().unwrap().readings;
    assert!(left && readings.len() == 1);
    assert_eq!(readings[0].date, NaiveDate::from_ymd_opt(2026, 4, 3).unwrap());
    assert_eq!(Document { logbook: None, ..with.clone() }, bare);
    for part in ["Readings added: 1.", "Line 3: The percentage should be a number", "Line 4:"] {
        assert!(said.iter().any(|own| own.starts_with(part)), "{part}: {said:?}");
    }
    assert!(said.iter().any(|own| own.contains("the day was taken")), "{said:?}");
    let (other, _, said) = taken(&mut desk, &bare, &format!("2{table}"));
    let readings = other.unwrap().logbook.unwrap().readings;
    assert_eq!(readings[0].date, NaiveDate::from_ymd_opt(2026, 3, 4).unwrap());
    assert!(!said.iter().any(|own| own.contains("was taken.")), "{said:?}");

    // The same again adds nothing, and says so.
    let (again, _, said) = taken(&mut desk, &with, &format!("1{table}"));
    assert!(again.is_none() && said[0].contains("Already there: 1."), "{said:?}");
    for nothing in ["0", "0\n\n", "0hello", "0;;;;", "0\u{1f}\u{1}", ""] {
        let text = written(&mut desk, &bare, Leaf::TakenReadings, nothing);
        assert!(text.is_empty() || text.starts_with(PART), "{nothing}: {text}");
    }
}

#[test]
fn what_the_readings_say_is_what_the_engine_says() {
    let plan = read("stall", Fault::Bypass(2.0), 0, 14);
    let (system, _, study) = study(&plan);
    let bypass = study.get(What::Bypass).unwrap();
    assert!(bypass.alarm && bypass.estimate.holds(2.0), "{bypass:?}");
    let mut desk = Desk::new(WORDS);
    let paper = written(&mut desk, &plan, Leaf::Logbook, &spreads(&system).0);
    let said = texts(&paper);
    let at = |own: &str| {
        said.iter().position(|text| *text == own).unwrap_or_else(|| panic!("{own}: {said:?}"))
    };
    assert_eq!(at(WORDS.measuring_caution()), 0, "cautions come first");
    let (found, agrees) =
        (at(WORDS.on_logbook(OnLogbook::Found)), at(WORDS.on_logbook(OnLogbook::Agrees)));
    let told = at(&WORDS.learned(bypass, None));
    assert!(found < told && told < agrees);
    for own in &study.learned {
        let sentence = WORDS.learned(own, study.false_full);
        if own.estimate.low < own.estimate.high || own.alarm {
            at(&sentence);
        } else {
            assert!(!said.contains(&sentence.as_str()), "nothing is known of it: {sentence}");
        }
    }
    for next in study.next() {
        at(WORDS.next_reading(next));
    }
    let start = share::decode(attribute(&paper, "data-start").unwrap()).unwrap();
    let newest = Reading::from(plan.logbook.as_ref().unwrap().readings.last().unwrap());
    assert_eq!(start.start.date, newest.at.date());
    assert_eq!(Document { start: plan.start.clone(), ..start }, plan);
}

/// One reading of a camper's bank.
fn read_once(volts: f64) -> Document {
    let mut plan = plan("camper");
    let mut own = Logbook::default();
    own.add(Logged {
        date: NaiveDate::from_ymd_opt(2026, 11, 3).unwrap(),
        shown: LoggedCharge::Percent(100.0),
        volts: Some(volts),
        amps: Some(0.0),
        ..Logged::default()
    });
    plan.logbook = Some(own);
    plan.checked().unwrap()
}

#[test]
fn one_reading_is_too_few_and_a_voltage_out_of_the_way_is_told() {
    for (volts, is_told) in [(13.2, false), (11.0, true), (14.9, true)] {
        let plan = read_once(volts);
        let (system, ..) = study(&plan);
        let paper = written(&mut Desk::new(WORDS), &plan, Leaf::Logbook, &spreads(&system).0);
        let said = texts(&paper);
        let has = |own: &str| said.iter().any(|text| text.contains(own));
        assert!(has(WORDS.on_logbook(OnLogbook::TooFew)), "{said:?}");
        assert!(!has(WORDS.on_logbook(OnLogbook::NothingFound)), "{said:?}");
        assert_eq!(has("whatever the gauge shows"), is_told, "{said:?}");
    }
}

#[test]
fn what_is_adopted_is_what_is_told() {
    let (plan, study, system) = (0..20)
        .find_map(|seed| {
            let plan = read("sailor", Fault::Consumption(1.3), seed, 28);
            let (system, _, study) = study(&plan);
            study.get(What::NightUse).unwrap().alarm.then_some((plan, study, system))
        })
        .unwrap();
    let adoptions = adoptable(&study, &system);
    let [Adoption::Use(share), ..] = adoptions[..] else { panic!("{adoptions:?}") };
    let mut desk = Desk::new(WORDS);
    let paper = written(&mut desk, &plan, Leaf::Logbook, &spreads(&system).0);
    for own in &adoptions {
        assert!(texts(&paper).contains(&WORDS.adoption(own).as_str()));
    }
    let adopted = share::decode(attribute(&paper, "data-adopt").unwrap()).unwrap();
    let used = |plan: &Document| Outlook::of(&self::system(plan)).budget.total.0;
    let mut moved = plan.clone();
    moved.start = adopted.start.clone();
    // The inverter's own draw and what heat does stay.
    let ratio = used(&adopted) / used(&moved);
    assert!((ratio / share - 1.0).abs() < 0.02, "{ratio} {share}");
    assert_eq!(adopted.logbook, plan.logbook);
}

#[test]
fn causes_are_ranked_with_and_without_readings() {
    let mut desk = Desk::new(WORDS);
    let bare = plan("stall");
    let with = read("stall", Fault::Bypass(2.0), 0, 14);
    for (plan, has) in [(&bare, false), (&with, true)] {
        let (system, _, study) = study(plan);
        let outlook = Outlook::of(&system);
        for (at, symptom) in Symptom::ALL.into_iter().enumerate() {
            let argument = format!("{at} {}", spreads(&system).0);
            let paper = written(&mut desk, plan, Leaf::Suspects, &argument);
            let said = texts(&paper);
            assert_eq!(said[0], WORDS.measuring_caution());
            let ranked = suspects(symptom, &system, &outlook, has.then_some(&study));
            let causes: Vec<&str> = ranked.iter().map(|own| WORDS.cause(own.cause)).collect();
            let told: Vec<&str> = said.into_iter().filter(|own| causes.contains(own)).collect();
            assert_eq!(told, causes, "{symptom:?}");
        }
    }
    for wrong in ["", "6 1", "-1", "a", "0.5e9 3"] {
        assert_eq!(written(&mut desk, &bare, Leaf::Suspects, wrong), "", "{wrong}");
    }
    // Before the spreads of the place are here it is told of the plan alone.
    assert!(!written(&mut desk, &with, Leaf::Suspects, "0 ").is_empty());
    assert_eq!(written(&mut desk, &with, Leaf::Logbook, ""), "");
}

#[test]
fn readings_are_listed_the_newest_first_and_those_not_used_with_the_reason() {
    let mut plan = read("stall", Fault::None, 1, 14);
    let mut beyond = plan.logbook.as_ref().unwrap().readings[3];
    beyond.volts = Some(55.0);
    plan.logbook.as_mut().unwrap().readings[3] = beyond;
    let mut desk = Desk::new(WORDS);
    let table = written(&mut desk, &plan, Leaf::Readings, "");
    let readings = &plan.logbook.as_ref().unwrap().readings;
    let moment = |own: &Logged| format!("{} {}", date_text(own.date), WORDS.clock(own.time.0));
    let moments: Vec<String> = readings.iter().rev().map(moment).collect();
    let rows: Vec<&str> = texts(&table).into_iter().filter(|own| own.contains("2026")).collect();
    assert_eq!(rows, moments);
    assert_eq!(attribute(&table, "data-remove"), Some("13"));
    let (system, _, _) = study(&plan);
    let paper = written(&mut desk, &plan, Leaf::Logbook, &spreads(&system).0);
    let at = WORDS.moment_read(Reading::from(&beyond).at);
    let told = texts(&paper).into_iter().any(|own| own.starts_with(&at) && own.contains("55"));
    assert!(told, "{:?}", texts(&paper));
    let care = written(&mut desk, &plan, Leaf::Care, "");
    for own in upkeep(&system.bank).iter().chain(&lay_up(&system.bank)) {
        assert!(texts(&care).contains(&WORDS.care(own).as_str()));
    }
    let bare = Document { logbook: None, ..plan };
    let none = written(&mut desk, &bare, Leaf::Logbook, &spreads(&system).0);
    assert_eq!(texts(&none), [WORDS.label(Label::NoReadings)]);
}
