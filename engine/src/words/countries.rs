//! Names of countries: a text of one language that the page may load after it stands.

/// The names of countries in a language.
#[derive(Clone, Copy, Debug)]
pub struct Countries<'a>(&'a str);

impl<'a> Countries<'a> {
    /// Takes the text of a language's `countries.txt`; anything else names no country.
    #[must_use]
    pub const fn from_text(text: &'a str) -> Self {
        Self(text)
    }

    /// The name of a country or territory by its code, which is matched exactly.
    #[must_use]
    pub fn name(self, code: &str) -> Option<&'a str> {
        self.0.lines().find_map(|entry| {
            let (known, name) = entry.split_once(' ')?;
            (known == code).then_some(name)
        })
    }
}
