//! Files and links of every version ever released open, and mean what they meant.
//!
//! To add one: put a new `NAME.json` into the folder of the current version and run
//! `SUNLARDER_WRITE_GOLDEN=1 cargo test -p sunlarder-tests --test golden`, which writes its link and its expectation, and nothing
//! over what exists. Read the expectation before you commit it. Nothing in the folder is ever changed or deleted.
//!
//! An expectation lists every value of the plan, defaults included, section by section in the order of
//! [`walk`]. Sections grow at their ends only, so later releases may find more than was expected, and never anything else.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use serde_json::{Value, json};
use sunlarder_engine::document::{Document, Field, List, Problem, TextField, Visitor, walk};
use sunlarder_engine::share;
use sunlarder_engine::working::Tag;
use sunlarder_tests::golden::{Golden, golden};
use sunlarder_tests::seal::unsealed;

/// Letters of a code with twelve loads that still fits a text message and a QR code read from across a table.
const LONGEST_CODE: usize = 400;

/// Lists every value of a plan, section by section.
#[derive(Default)]
struct Listing {
    sections: Vec<Vec<Value>>,
}

impl Listing {
    fn of(plan: &Document) -> Vec<Vec<Value>> {
        let mut listing = Self::default();
        walk(&mut plan.clone(), &mut listing).unwrap();
        listing.sections
    }

    fn put(&mut self, value: Value) {
        self.sections.last_mut().unwrap().push(value);
    }
}

impl Visitor for Listing {
    fn open(&mut self, at: Tag) -> Result<(), Box<Problem>> {
        self.sections.push(vec![json!(format!("{at:?}"))]);
        Ok(())
    }

    fn close(&mut self) -> Result<(), Box<Problem>> {
        Ok(())
    }

    fn number(&mut self, field: Field, value: &mut f64, _: f64) -> Result<(), Box<Problem>> {
        self.put(json!([format!("{field:?}"), *value]));
        Ok(())
    }

    fn option(&mut self, field: Field, value: &mut Option<f64>) -> Result<(), Box<Problem>> {
        self.put(json!([format!("{field:?}"), *value]));
        Ok(())
    }

    fn whole(&mut self, value: &mut u32, _: u32, _: u32) -> Result<(), Box<Problem>> {
        self.put(json!(*value));
        Ok(())
    }

    fn text(&mut self, field: TextField, value: &mut String) -> Result<(), Box<Problem>> {
        self.put(json!([format!("{field:?}"), value]));
        Ok(())
    }

    fn length(&mut self, list: List, length: usize) -> Result<usize, Box<Problem>> {
        self.put(json!([format!("{list:?}"), length]));
        Ok(length)
    }
}

/// A listing with a value a line, for people to read.
fn printed(listing: &[Vec<Value>]) -> String {
    let section = |values: &Vec<Value>| {
        let lines: Vec<String> = values.iter().map(|value| format!("  {value}")).collect();
        format!(" [\n{}\n ]", lines.join(",\n"))
    };
    let sections: Vec<String> = listing.iter().map(section).collect();
    format!("[\n{}\n]\n", sections.join(",\n"))
}

/// Holds a plan to what was expected of it; sections may have grown at their ends.
fn assert_means(golden: &Golden, way: &str, plan: &Document) {
    let text = golden.expected.as_deref().unwrap_or_else(|| panic!("{}: write it", golden.name));
    let expected: Vec<Vec<Value>> = serde_json::from_str(text).unwrap();
    let found = Listing::of(plan);
    assert!(found.len() >= expected.len() && expected.len() >= 4, "{}", golden.name);
    for (at, (found, expected)) in found.iter().zip(&expected).enumerate() {
        let known = found.get(..expected.len()).unwrap_or(found);
        assert_eq!(known, expected, "{}: section {at} of its {way}", golden.name);
    }
}

fn all() -> Vec<Golden> {
    let all = golden("v1").unwrap();
    if std::env::var_os("SUNLARDER_WRITE_GOLDEN").is_some() {
        for golden in &all {
            let plan = Document::from_json(&golden.file).unwrap();
            golden.complete(&share::encode(&plan).unwrap(), &printed(&Listing::of(&plan))).unwrap();
        }
    }
    golden("v1").unwrap()
}

fn code(golden: &Golden) -> &str {
    golden.code.as_deref().unwrap_or_else(|| panic!("{}: write it", golden.name)).trim()
}

fn named(name: &str) -> Golden {
    all().into_iter().find(|golden| golden.name == name).unwrap()
}

#[test]
fn every_file_and_link_ever_released_means_what_it_meant() {
    let all = all();
    for golden in &all {
        let file = Document::from_json(&golden.file);
        let file = file.unwrap_or_else(|problem| panic!("{}: {problem:?}", golden.name));
        assert_means(golden, "file", &file);
        let link = share::decode(code(golden));
        let link = link.unwrap_or_else(|problem| panic!("{}: {problem:?}", golden.name));
        assert_means(golden, "link", &link);
        assert_eq!(file, link, "{}", golden.name);
    }
    println!("{} golden files and links", all.len());
    assert!(all.len() >= 12, "the folder only grows");
}

/// Only of the version that is written today.
#[test]
fn plans_of_today_still_give_the_same_code() {
    for golden in all() {
        let plan = Document::from_json(&golden.file).unwrap();
        assert_eq!(share::encode(&plan).as_deref(), Ok(code(&golden)), "{}", golden.name);
    }
}

#[test]
fn the_golden_plans_use_every_field() {
    let used: String = all().iter().filter_map(|golden| golden.expected.clone()).collect();
    for field in Field::ALL {
        let value = format!("[\"{field:?}\",");
        let set = used.lines().any(|line| {
            line.trim_start().strip_prefix(&value).is_some_and(|rest| !rest.starts_with("null"))
        });
        assert!(set, "no golden plan sets {field:?}");
    }
}

/// Mean length of the loads' own names \[letters\].
fn mean_name(plan: &Document) -> f64 {
    let letters: usize = plan.loads.iter().map(|load| load.name.chars().count()).sum();
    letters as f64 / plan.loads.len() as f64
}

#[test]
fn twelve_loads_fit_a_message_with_every_name_free() {
    let names = ["v1/twelve_free_names", "v1/twelve_catalogue_names", "v1/twelve_long_names"];
    let lengths = names.map(|name| {
        let golden = named(name);
        let plan = Document::from_json(&golden.file).unwrap();
        assert_eq!(plan.loads.len(), 12, "{name}");
        let (length, mean) = (code(&golden).len(), mean_name(&plan));
        println!("{name}: {length} letters, own names of {mean:.1} letters in the mean");
        (length, mean)
    });
    let [(free, everyday), (catalogue, none), (long, lengthy)] = lengths;
    assert!(everyday > 11.0 && none == 0.0 && lengthy > 14.0, "{lengths:?}");
    assert!(catalogue < free && free < long && long <= LONGEST_CODE, "{lengths:?}");
}

#[test]
fn no_two_golden_plans_are_alike() {
    let all = all();
    for (at, golden) in all.iter().enumerate() {
        let twin = all.iter().skip(at + 1).find(|other| code(other) == code(golden));
        assert!(twin.is_none(), "{} and {}", golden.name, twin.unwrap().name);
        assert!(unsealed(code(golden)).len() > 1);
    }
}
