//! Golden files and links, damaged at random: nothing panics, and whatever still opens is a sound plan.
//!
//! The same damage each time; more and other damage with
//! `SUNLARDER_FUZZ_ROUNDS=10000000 SUNLARDER_FUZZ_SEED=7 cargo test --release -p sunlarder-tests --test mutations -- --nocapture`.
//! A fault is printed with the input that shows it.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::Climate;
use sunlarder_engine::share;
use sunlarder_engine::system::System;
use sunlarder_tests::golden::golden;
use sunlarder_tests::seal::{sealed, unsealed};
use sunlarder_tests::soundness::sound;

/// Inputs tried of each kind unless the environment asks for more.
const ROUNDS: usize = 6_000;
/// Every so many plans that open are followed through to their answers.
const FOLLOWED: usize = 20;
/// The seed unless the environment names another.
const SEED: u64 = 20_261_124;
/// Most changes to one input.
const CHANGES: usize = 6;
/// Longest stretch that is cut, doubled or taken over from elsewhere.
const STRETCH: usize = 24;
/// Pieces of text that readers of numbers and lists stumble over.
const STUMBLES: [&str; 17] = [
    "1e300",
    "-1e300",
    "1e-300",
    "-0",
    "-1",
    "0",
    "null",
    "NaN",
    "99999999999999999999",
    "[]",
    "{}",
    "\"\"",
    "true",
    "24:00",
    "60000:00",
    "\\u0000",
    "\u{1F50B}",
];
/// Bytes at which variable-length numbers and masks change their meaning.
const EDGES: [u8; 8] = [0x00, 0x01, 0x7f, 0x80, 0x81, 0xfe, 0xff, 0x40];

fn asked(name: &str) -> Option<u64> {
    std::env::var(name).ok()?.parse().ok()
}

/// SplitMix64 (Steele, Lea & Flood 2014): small, and good enough to choose damage.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number below `end`; 0 if there is none.
    fn below(&mut self, end: usize) -> usize {
        (self.roll() % (end.max(1) as u64)) as usize
    }

    fn of<'a, T>(&mut self, all: &'a [T]) -> &'a T {
        &all[self.below(all.len())]
    }

    /// A stretch of something this long.
    fn stretch(&mut self, length: usize) -> core::ops::Range<usize> {
        let from = self.below(length + 1);
        from..(from + self.below(STRETCH)).min(length)
    }
}

/// One change: a bit, a byte, a stretch cut, doubled or taken from another input, a stumbling block put in.
fn damage(bytes: &mut Vec<u8>, other: &[u8], dice: &mut Dice) {
    let at = dice.below(bytes.len());
    let stretch = dice.stretch(bytes.len());
    match dice.below(7) {
        0 if !bytes.is_empty() => bytes[at] ^= 1 << dice.below(8),
        1 if !bytes.is_empty() => bytes[at] = *dice.of(&EDGES),
        2 => drop(bytes.drain(stretch)),
        3 => {
            let doubled = bytes[stretch].to_vec();
            bytes.splice(at..at, doubled);
        }
        4 => {
            let taken = other[dice.stretch(other.len())].to_vec();
            bytes.splice(stretch, taken);
        }
        5 => bytes.truncate(at),
        _ => drop(bytes.splice(stretch, dice.of(&STUMBLES).bytes())),
    }
}

/// Another value in the place of one of a file's, so that more than the reader of JSON is tried.
fn exchange(text: &str, dice: &mut Dice) -> String {
    let values: Vec<usize> = text.match_indices(": ").map(|(at, _)| at + 2).collect();
    let from = *dice.of(&values);
    let rest = &text[from..];
    let to = from + rest.find([',', '\n', '}']).unwrap_or(rest.len());
    let number = (dice.roll() % 2_000_000) as f64 / 1_000.0 - 500.0;
    let with =
        if dice.below(2) == 0 { number.to_string() } else { (*dice.of(&STUMBLES)).to_owned() };
    format!("{}{with}{}", &text[..from], &text[to..])
}

/// What was tried and what of it opened.
#[derive(Debug, Default)]
struct Tally {
    tried: usize,
    opened: usize,
    followed: usize,
}

impl Tally {
    /// Holds an input to what is asked of all.
    fn count(&mut self, opened: Result<Document, impl core::fmt::Debug>, input: &str) {
        self.tried += 1;
        let Ok(plan) = opened else { return };
        self.opened += 1;
        if let Err(fault) = sound(&plan) {
            assert!(fault.is_empty(), "{fault}\n{input}");
        }
        if self.opened.is_multiple_of(FOLLOWED)
            && let Ok(system) = System::assemble(&plan, Climate::embedded(), &mut ())
        {
            let outlook = Outlook::of(&system);
            assert_eq!(outlook.months.len(), 12, "{input}");
            self.followed += 1;
        }
    }
}

struct Inputs {
    files: Vec<String>,
    codes: Vec<String>,
    rounds: usize,
    dice: Dice,
}

impl Inputs {
    fn read(salt: u64) -> Self {
        let all = golden("v1").unwrap();
        Self {
            files: all.iter().map(|golden| golden.file.clone()).collect(),
            codes: all
                .iter()
                .filter_map(|golden| Some(golden.code.as_ref()?.trim().to_owned()))
                .collect(),
            rounds: asked("SUNLARDER_FUZZ_ROUNDS").map_or(ROUNDS, |rounds| rounds as usize),
            dice: Dice(asked("SUNLARDER_FUZZ_SEED").unwrap_or(SEED) ^ salt),
        }
    }

    /// Damages one of these inputs.
    fn damaged(&mut self, inputs: &[Vec<u8>]) -> Vec<u8> {
        let mut bytes = self.dice.of(inputs).clone();
        let other = self.dice.of(inputs);
        for _ in 0..=self.dice.below(CHANGES) {
            damage(&mut bytes, other, &mut self.dice);
        }
        bytes
    }
}

#[test]
fn no_damage_to_a_link_harms() {
    let mut inputs = Inputs::read(1);
    let letters: Vec<Vec<u8>> = inputs.codes.iter().map(|code| code.clone().into_bytes()).collect();
    let mut tally = Tally::default();
    for _ in 0..inputs.rounds {
        let code = String::from_utf8_lossy(&inputs.damaged(&letters)).into_owned();
        // One in 16 million would pass the checksum; one that was cut back to what it was does.
        tally.count(share::decode(&code), &code);
    }
    println!("letters of links: {tally:?}");
    assert!(tally.opened < tally.tried / 10, "{tally:?}");
}

#[test]
fn no_damage_behind_the_checksum_harms() {
    let mut inputs = Inputs::read(2);
    let bodies: Vec<Vec<u8>> = inputs.codes.iter().map(|code| unsealed(code)).collect();
    let mut tally = Tally::default();
    for _ in 0..inputs.rounds {
        let code = sealed(inputs.damaged(&bodies));
        tally.count(share::decode(&code), &code);
    }
    println!("bytes of links: {tally:?}");
    assert!(tally.opened > tally.tried / 100 && tally.followed > 0, "{tally:?}");
}

#[test]
fn no_damage_to_a_file_harms() {
    let mut inputs = Inputs::read(3);
    let files: Vec<Vec<u8>> = inputs.files.iter().map(|file| file.clone().into_bytes()).collect();
    let mut tally = Tally::default();
    for _ in 0..inputs.rounds {
        let file = String::from_utf8_lossy(&inputs.damaged(&files)).into_owned();
        tally.count(Document::from_json(&file), &file);
    }
    println!("bytes of files: {tally:?}");
    assert!(tally.opened > 0, "{tally:?}");
}

#[test]
fn no_value_exchanged_in_a_file_harms() {
    let mut inputs = Inputs::read(4);
    let mut tally = Tally::default();
    for _ in 0..inputs.rounds {
        let mut file = inputs.dice.of(&inputs.files).clone();
        for _ in 0..=inputs.dice.below(CHANGES) {
            file = exchange(&file, &mut inputs.dice);
        }
        tally.count(Document::from_json(&file), &file);
    }
    println!("values of files: {tally:?}");
    assert!(tally.opened > tally.tried / 100 && tally.followed > 0, "{tally:?}");
}
