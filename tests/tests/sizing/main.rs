//! The map against the full simulation, its shape, its reference, and whether what it suggests holds.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

mod answers;
mod help;
mod map;
mod rows;

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::sizing::map::SIDE;
use sunlarder_engine::sizing::{Question, Study, Track};
use sunlarder_engine::system::System;
use sunlarder_tests::plans::EXAMPLES;

/// Weather years of these tests.
const YEARS: usize = 8;
/// Weather years of a map.
const MAP_YEARS: usize = sunlarder_engine::sizing::YEARS;
/// Weather years where whole maps are worked out: a test without vectors takes its time.
const FEW_YEARS: usize = 3;

fn example(name: &str) -> Document {
    let text = EXAMPLES.iter().find(|own| own.0 == name).unwrap().1;
    Document::from_json(text).unwrap()
}

/// A study of a plan, gone through to its end; what is done never goes back, and the coarse map comes before the fine one.
fn studied(plan: &Document, question: Question, years: usize) -> Study {
    let system = System::assemble(plan, Climate::embedded(), &mut ()).unwrap();
    let spread = SpreadGrid::embedded().at(system.site);
    let outlook = Outlook::of(&system);
    let mut study = Study::over(plan, &system, &outlook, &spread, question, years).unwrap();
    let mut rows = Track::default();
    let (mut done, mut coarse) = (0.0, false);
    while study.advance(&mut rows) {
        assert!(study.done() >= done, "{} after {done}", study.done());
        done = study.done();
        if study.map().is_coarse() && !coarse {
            coarse = true;
            let map = study.map();
            let known = |bank| (0..SIDE).filter(|array| map.counts(bank, *array).is_some()).count();
            assert_eq!((known(0), known(1)), (0, SIDE));
        }
    }
    assert!(coarse && done == 1.0 && !study.advance(&mut rows));
    study
}
