//! A sentence whose deciding words stand out.

use core::fmt;

/// How a sentence is to be taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// Neither.
    Plain,
    /// As wished.
    Good,
    /// To be thought of.
    Warn,
    /// Not to be left so.
    Bad,
}

/// A sentence in three parts, the middle one deciding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sentence {
    /// What leads to it.
    pub before: String,
    /// What it comes to.
    pub key: String,
    /// What ends it.
    pub after: String,
    /// How it is to be taken.
    pub tone: Tone,
}

impl Sentence {
    /// A sentence of its three parts.
    #[must_use]
    pub fn new(before: &str, key: &str, after: &str, tone: Tone) -> Self {
        Self { before: before.to_owned(), key: key.to_owned(), after: after.to_owned(), tone }
    }
}

impl fmt::Display for Sentence {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}{}{}", self.before, self.key, self.after)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sentence_reads_through() {
        let sentence = Sentence::new("In June ", "you keep up", ".", Tone::Good);
        assert_eq!(sentence.to_string(), "In June you keep up.");
    }
}
