//! What the page speaks with: its language, which is that of the build, and the habits of the person, which it keeps.

use std::cell::Cell;

use sunlarder_engine::words::{Habits, Words};
pub(crate) use sunlarder_worker::PAGE as WORDS;

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

/// The way from this page to that of another language, which the site keeps at its root or in a folder of its tag.
pub(crate) fn way_to(tag: &str) -> String {
    let first = |tag: &str| sunlarder_engine::words::SITE[0].0 == tag;
    match (first(WORDS.tag()), first(tag)) {
        (true, true) => "./".to_owned(),
        (true, false) => format!("{tag}/"),
        (false, true) => "../".to_owned(),
        (false, false) => format!("../{tag}/"),
    }
}
