//! What the desk tells of sizes while it works them out.

#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]

use sunlarder_engine::document::Document;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::share;
use sunlarder_engine::system::System;
use sunlarder_engine::words::{Habits, Language, Words};
use sunlarder_tests::plans::EXAMPLES;
use sunlarder_worker::desk::Desk;
use sunlarder_worker::leaf::{Leaf, Written};
use sunlarder_worker::message::{Answer, Request, climate_numbers};

/// Results of changes that are waited for.
const CHANGES: usize = 3;

#[test]
fn of_sizes_only_what_is_new_is_told() {
    let (_, text) = EXAMPLES.into_iter().find(|own| own.0 == "camper").unwrap();
    let plan = Document::from_json(text).unwrap();
    let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
    let mut desk = Desk::new(Words::of(Language::English));
    desk.take(Request::Plan {
        serial: 1,
        code: share::encode(&plan).unwrap(),
        habits: Habits::USUAL,
        climate: climate_numbers(&system.climate),
    });
    let spread = SpreadGrid::embedded().at(system.site);
    let argument = spread.map(|own| own.to_string()).join(" ");
    for (wish, leaf) in (0..).zip([Leaf::Sizes, Leaf::Sizing, Leaf::Helping]) {
        desk.take(Request::Leaf { serial: 1, wish, leaf, argument: argument.clone() });
    }
    let mut told: [Vec<Written>; 3] = Default::default();
    while let Some(answer) = desk.work() {
        if let Some(Answer::Written { wish, written, .. }) = answer {
            told[wish as usize].push(written);
        }
        if told[2].len() == CHANGES {
            break;
        }
    }
    for own in &told {
        assert!(own.windows(2).all(|pair| pair[0] != pair[1]), "told twice");
    }
    // The coarse map, the whole one, and how far the work is between and after.
    let pictures = told[0].iter().map(|own| &own.text);
    let mut pictures: Vec<_> = pictures.collect();
    pictures.dedup();
    assert!(pictures.len() >= 2 && told[0].len() > pictures.len(), "{}", told[0].len());
    assert_eq!(told[2].len(), CHANGES);
}
