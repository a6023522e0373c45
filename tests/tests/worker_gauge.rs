//! What the worker writes of a gauge is what the engine has: card, checks with their readings, and the gauge that somebody turns.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use std::time::Instant;

use sunlarder_engine::document::{self, Checked, Document};
use sunlarder_engine::gauge::{Card, Course, Gauge, Judged, Knob, Mistake, Sheet, Trial, Truth};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::share;
use sunlarder_engine::sky::DAYS_PER_YEAR;
use sunlarder_engine::system::System;
use sunlarder_engine::words::{Habits, Language, Words, decimal};
use sunlarder_tests::plans::EXAMPLES;
use sunlarder_worker::desk::Desk;
use sunlarder_worker::leaf::Leaf;
use sunlarder_worker::message::{Answer, Request, climate_numbers};
use sunlarder_worker::paper::{ATTR, TEXT, marks};
use sunlarder_worker::sentences::PART;

const WORDS: Words = Words::of(Language::English);

struct At {
    desk: Desk,
    plan: Document,
    system: System,
    outlook: Outlook,
    card: Card,
}

impl At {
    fn of(plan: Document) -> Self {
        let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
        let outlook = Outlook::of(&system);
        let card = Card::of(&system, &outlook);
        let mut own = Self { desk: Desk::new(WORDS), plan, system, outlook, card };
        own.send();
        own
    }

    fn example(name: &str) -> Self {
        let text = EXAMPLES.into_iter().find(|own| own.0 == name).unwrap().1;
        Self::of(Document::from_json(text).unwrap())
    }

    fn send(&mut self) {
        let code = share::encode(&self.plan).unwrap();
        let climate = climate_numbers(&self.system.climate);
        self.desk.take(Request::Plan { serial: 1, code, habits: Habits::USUAL, climate });
    }

    fn written(&mut self, leaf: Leaf, argument: &str) -> String {
        let argument = argument.to_owned();
        self.desk.take(Request::Leaf { serial: 1, wish: 7, leaf, argument });
        match self.desk.work() {
            Some(Some(Answer::Written { written, .. })) => written.text,
            other => panic!("{leaf:?}: {other:?}"),
        }
    }

    fn spreads(&self) -> [f64; 12] {
        SpreadGrid::embedded().at(self.system.site)
    }

    /// The argument of a gauge that is turned: a mistake, and what stands in the boxes.
    fn argument(&self, mistake: &str, boxes: &[String]) -> String {
        let spreads = self.spreads().map(|own| decimal(own, 9)).join(" ");
        let mut argument = format!("{spreads}{PART}{mistake}");
        for own in boxes {
            argument.push(PART);
            argument.push_str(own);
        }
        argument
    }

    fn course(&self) -> Course {
        // As the page sends them.
        let spreads = self.spreads().map(|own| decimal(own, 9).parse().unwrap());
        let weather = (&spreads, 0);
        Course::of((&self.system, &self.outlook), Truth::ByMonth, weather, DAYS_PER_YEAR)
    }
}

fn texts(paper: &str) -> String {
    let texts = marks(paper).filter(|(mark, _)| *mark == TEXT).map(|(_, text)| text);
    texts.collect::<Vec<_>>().join("|")
}

#[test]
fn the_card_says_every_setting_and_works_out_those_that_have_steps() {
    for (name, _) in EXAMPLES {
        let mut at = At::example(name);
        let paper = at.written(Leaf::Gauge, "");
        let said = texts(&paper);
        for own in at.card.settings.clone() {
            let [value, range] = WORDS.to_enter(&own);
            assert!(said.contains(&value) && said.contains(&range), "{name} {own:?}: {said}");
        }
        let folds: Vec<String> = marks(&paper)
            .filter_map(|(mark, own)| own.strip_prefix("data-fold=").filter(|_| mark == ATTR))
            .map(str::to_owned)
            .collect();
        assert!(folds.len() >= 4, "{name}: {folds:?}");
        for place in folds {
            assert!(!at.written(Leaf::SettingWorking, &place).is_empty(), "{name} {place}");
        }
        assert_eq!(at.written(Leaf::SettingWorking, "99"), "");
    }
}

/// Readings that pass say so on page and paper, and do not let the outlook be worked out anew.
#[test]
fn readings_are_judged_and_printed() {
    for (name, _) in EXAMPLES {
        let mut at = At::example(name);
        let before = at.written(Leaf::Checks, "");
        let sheet = Sheet::of_plan((&at.plan, &at.system, &at.outlook), &at.card);
        let texts = |text: &str| text.split(PART).map(str::to_owned).collect::<Vec<_>>();
        assert_eq!(texts(&before).len(), sheet.checks.len() * 5, "{name}");
        assert!(texts(&before).chunks(5).all(|own| own[4].is_empty()), "{name}: {before}");
        for own in &sheet.checks {
            let (what, of) = own.point.kept_as();
            let read = what.field().and(own.expected).unwrap_or_default();
            at.plan.checks.push(document::Check { what, of, read, beside_a: None });
        }
        at.plan.checks[0].read = -12.0;
        // As the link rounds them.
        at.plan = share::decode(&share::encode(&at.plan).unwrap()).unwrap();
        at.send();
        let after = texts(&at.written(Leaf::Checks, ""));
        let printed = at.written(Leaf::CommissioningSheet, "2026-11-29 https://example.org/");
        for (own, said) in sheet.checks.iter().zip(after.chunks(5)) {
            let judged = own.judge(&own.read_in(&at.plan).unwrap()).unwrap();
            let off = if judged == Judged::Pass { "" } else { "!" };
            assert_eq!(off == "!", own.point.kept_as().0 == Checked::Polarity, "{name}: {own:?}");
            assert_eq!(said[4], format!("{off}{}", WORDS.judged(own, &judged)), "{name}");
            assert!(printed.contains(&WORDS.judged(own, &judged)), "{name}: {own:?}");
        }
    }
}

#[test]
fn a_gauge_that_is_turned_shows_what_the_engine_says() {
    for name in ["boat", "camper", "classroom"] {
        let mut at = At::example(name);
        let course = at.course();
        let began = Instant::now();
        let by_card = at.written(Leaf::GaugeYear, &at.argument("", &[]));
        println!("{name}: the first picture after {:?}", began.elapsed());
        let right = Trial::of(&course, &at.card.gauge(), 0);
        assert!(by_card.contains(&WORDS.trial(&right)), "{name}: {}", texts(&by_card));
        let boxes = |gauge: &Gauge| Knob::ALL.map(|knob| WORDS.precise(knob.of(gauge))).to_vec();
        let card = boxes(&at.card.gauge());
        assert_eq!(at.written(Leaf::GaugeYear, &at.argument("", &card)), by_card, "{name}");
        for (place, mistake) in Mistake::ALL.into_iter().enumerate() {
            let wrong = mistake.made(&at.card, &at.system);
            let argument = at.argument(&place.to_string(), &boxes(&wrong));
            let began = Instant::now();
            let paper = at.written(Leaf::GaugeYear, &argument);
            if place == 0 {
                println!("{name}: one move after {:?}", began.elapsed());
            }
            let tried = mistake.tried(&at.card, &at.system, &course);
            assert!(paper.contains(&WORDS.trial(&tried.wrong)), "{name} {mistake:?}");
            assert!(paper.contains(WORDS.mistake_shows(mistake.telltale())), "{name} {mistake:?}");
            let table = at.written(Leaf::GaugeYearTable, &argument);
            assert_eq!(table.matches("\u{1}tr").count(), 13, "{name} {mistake:?}");
        }
        // A figure of somebody's own.
        let mut own = card.clone();
        own[0] = WORDS.precise(at.card.gauge().capacity.0 * 0.8);
        let mut gauge = at.card.gauge();
        Knob::Capacity.turn(&mut gauge, own[0].replace(',', "").parse().unwrap(), &at.system);
        let paper = at.written(Leaf::GaugeYear, &at.argument("", &own));
        assert!(paper.contains(&WORDS.trial(&Trial::of(&course, &gauge, 0))), "{name}");
        for wrong in ["", "much", "0", "-3", "1e300"] {
            own[0] = wrong.to_owned();
            let said = texts(&at.written(Leaf::GaugeYear, &at.argument("", &own)));
            let figure = WORDS.gauge_figure(Knob::Capacity.figure());
            assert!(said.starts_with(figure) && said.contains("0.001"), "{name} {wrong}: {said}");
        }
        assert_eq!(at.written(Leaf::GaugeYear, "nonsense"), "");
    }
}

/// Of what is turned quickly only the newest is written.
#[test]
fn a_newer_wish_takes_the_place_of_an_older_one() {
    let mut at = At::example("boat");
    for mistake in ["3", "4", "0"] {
        let argument = at.argument(mistake, &[]);
        at.desk.take(Request::Leaf { serial: 1, wish: 7, leaf: Leaf::GaugeYear, argument });
    }
    let Some(Some(Answer::Written { written, .. })) = at.desk.work() else { panic!("nothing") };
    assert!(written.text.contains(WORDS.mistake_shows(Mistake::ALL[0].telltale())));
    assert_eq!(at.desk.work(), None);
}
