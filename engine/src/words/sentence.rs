//! A headline of which one part decides.

/// How good the news is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// Neither.
    Plain,
    /// Good.
    Good,
    /// To be watched.
    Warn,
    /// Bad.
    Bad,
}

impl Tone {
    /// The style class of the page; none stands for the sun's colour.
    #[must_use]
    pub const fn class(self) -> &'static str {
        match self {
            Self::Good => "good",
            Self::Bad => "bad",
            Self::Plain => "plain",
            Self::Warn => "",
        }
    }
}

/// A sentence with the part that decides apart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sentence {
    /// What comes before.
    pub before: String,
    /// What decides.
    pub key: String,
    /// What comes after.
    pub after: String,
    /// How good the news is.
    pub tone: Tone,
}

impl Sentence {
    /// A sentence of its three parts.
    #[must_use]
    pub fn new(before: &str, key: &str, after: &str, tone: Tone) -> Self {
        Self { before: before.into(), key: key.into(), after: after.into(), tone }
    }

    /// The whole of it as plain text.
    #[must_use]
    pub fn text(&self) -> String {
        format!("{}{}{}", self.before, self.key, self.after)
    }
}
