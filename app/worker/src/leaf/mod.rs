//! The leaves: pieces of the page, or texts to keep, that the worker writes about a plan.
//!
//! **To add one:** a variant at the end of [`Leaf`] and of [`Leaf::ALL`], a file here that writes it, its arm in [`write()`]; the page
//! shows it by `view::leaf`.

mod working;

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{Outlook, Question};
use sunlarder_engine::system::System;
use sunlarder_engine::words::Words;

/// What can be written. Each has an argument, a text whose meaning is said here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leaf {
    /// How a figure was worked out; the argument is the place of the question in [`Question::ALL`].
    Working,
}

impl Leaf {
    /// All in the order of their numbers.
    pub const ALL: [Self; 1] = [Self::Working];

    /// The one of a number.
    #[must_use]
    pub fn from_number(number: usize) -> Option<Self> {
        Self::ALL.get(number).copied()
    }
}

/// A plan with its answers, about which a leaf is written.
#[derive(Clone, Copy, Debug)]
pub struct About<'a> {
    /// The language to write in, and the habits of whoever reads it.
    pub words: Words,
    /// The plan.
    pub document: &'a Document,
    /// The plan, resolved.
    pub system: &'a System,
    /// Its answers.
    pub outlook: &'a Outlook,
}

/// What was written: a text, mostly of a [`Paper`](crate::paper::Paper), and numbers to go with it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Written {
    /// The text.
    pub text: String,
    /// The numbers, where the page reads some of them out.
    pub numbers: Vec<f64>,
}

impl Written {
    /// Without numbers.
    fn of(text: String) -> Self {
        Self { text, numbers: Vec::new() }
    }
}

/// Writes a leaf; nothing for an argument that means nothing.
#[must_use]
pub fn write(leaf: Leaf, argument: &str, about: About<'_>) -> Written {
    match leaf {
        Leaf::Working => {
            let question = argument.parse().ok().and_then(|place: usize| Question::ALL.get(place));
            question.map(|own| Written::of(working::write(*own, about))).unwrap_or_default()
        }
    }
}
