//! What the page speaks with: its language, which is that of the build, and the habits of the person, which it keeps.

use std::cell::Cell;

use sunlarder_engine::words::{Habits, Words};
pub(crate) use sunlarder_worker::PAGE as WORDS;
use sunlarder_worker::{INSTALLED, PLANNER};

use crate::keep::storage;

/// Where the habits are kept, as the number of [`Habits::bits`].
const HABITS: &str = "sunlarder.habits";
/// Where the language is kept that somebody chose, as its tag. The starter script reads it, too.
const LANGUAGE: &str = "sunlarder.language";

thread_local! {
    static CHOSEN: Cell<Habits> = const { Cell::new(Habits::USUAL) };
}

/// What speaks of figures. What never carries one is said by [`WORDS`] alone.
pub(crate) fn words() -> Words {
    Words { language: WORDS, habits: CHOSEN.get() }
}

/// Takes up the habits that are kept on the device.
pub(crate) fn recall() {
    let kept = storage().and_then(|own| own.get_item(HABITS).ok().flatten());
    // Read as digits, because a reader of numbers that may be anything brings more than this one needs.
    let digits =
        kept.filter(|own| own.len() < 9 && own.bytes().all(|digit| digit.is_ascii_digit()));
    let bits =
        digits.map_or(0, |own| own.bytes().fold(0, |sum, own| sum * 10 + u32::from(own - b'0')));
    CHOSEN.set(Habits::of_bits(bits));
}

/// Speaks by these habits from now on, and keeps them if the device lets it.
pub(crate) fn choose(habits: Habits) {
    CHOSEN.set(habits);
    if let Some(storage) = storage() {
        let _ = storage.set_item(HABITS, &habits.bits().to_string());
    }
}

/// Remembers in which language the page is to open from now on.
pub(crate) fn remember_language(tag: &str) {
    if let Some(storage) = storage() {
        let _ = storage.set_item(LANGUAGE, tag);
    }
}

/// Whether this page is about the installed system, and the plan has a page of its own.
pub(crate) const IS_INSTALLED: bool = INSTALLED && !PLANNER;

/// The folder of pages about the plan, and of those about the installed system, inside that of their language.
const FOLDERS: [&str; 2] = ["", "installed/"];

/// The way from this page to one of a language, about the plan or about the installed system. The site keeps its first language at its
/// root and each other in a folder of its tag.
fn way(tag: &str, installed: bool) -> String {
    let first = |tag: &str| sunlarder_engine::words::SITE[0].0 == tag;
    let mut way = if first(WORDS.tag()) { "./" } else { "../" }.to_owned();
    if IS_INSTALLED {
        way.push_str("../");
    }
    if !first(tag) {
        way.push_str(tag);
        way.push('/');
    }
    way + FOLDERS[usize::from(installed)]
}

/// The way to this page in another language.
pub(crate) fn way_to(tag: &str) -> String {
    way(tag, IS_INSTALLED)
}

/// The way to the installed system from the page of the plan, and back.
pub(crate) fn way_across() -> String {
    way(WORDS.tag(), !IS_INSTALLED)
}
