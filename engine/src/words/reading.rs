//! Numbers as people type them: a comma or a point parts the decimals, whichever their hands are used to.

use super::Words;

/// What was typed into a box for a number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Typed {
    /// Nothing.
    Nothing,
    /// A number, written with a point and without groups.
    Number(String),
    /// It could be thousands or thousandths: both, written as in [`Typed::Number`].
    Ambiguous {
        /// With the mark between thousands.
        thousands: String,
        /// With the mark before decimals.
        decimals: String,
    },
    /// No number.
    Other,
}

/// Whether a mark stands where it parts thousands: one to three digits that begin with no zero, then groups of three.
fn parts_thousands(whole: &str, mark: char) -> bool {
    let mut groups = whole.split(mark);
    let first = groups.next().unwrap_or_default();
    (1..=3).contains(&first.len())
        && !first.starts_with('0')
        && groups.all(|group| group.len() == 3)
}

/// Whether this is a power of ten as programs write it, `e-3`, or nothing.
fn is_power(text: &str) -> bool {
    let digits = text.get(1..).unwrap_or_default();
    let digits = digits.strip_prefix(['+', '-']).unwrap_or(digits);
    text.is_empty() || !digits.is_empty() && digits.bytes().all(|own| own.is_ascii_digit())
}

impl Words {
    /// Reads what was typed. The mark of the language always parts decimals. The other mark does so too, but where it might just as
    /// well part thousands the person has to say which.
    #[must_use]
    pub fn typed(self, text: &str) -> Typed {
        let text = text.trim();
        if text.is_empty() {
            return Typed::Nothing;
        }
        let spaces = ['\u{a0}', '\u{202f}', '\u{2009}', ' '];
        let text = text.replace('\u{2212}', "-").replace(spaces, "");
        let (text, power) = match text.find(['e', 'E']) {
            Some(at) => text.split_at(at),
            None => (text.as_str(), ""),
        };
        let unsigned = text.trim_start_matches(['+', '-']);
        let sign = if text.starts_with('-') { "-" } else { "" };
        let known = |own: char| own.is_ascii_digit() || ".,".contains(own);
        let has_digit = unsigned.bytes().any(|own| own.is_ascii_digit());
        let signs = text.len() - unsigned.len();
        if signs > 1 || !has_digit || !unsigned.chars().all(known) || !is_power(power) {
            return Typed::Other;
        }
        let marks: Vec<char> = unsigned.chars().filter(|own| ".,".contains(*own)).collect();
        let own = if self.writes_comma() { ',' } else { '.' };
        let without = |mark: char| format!("{sign}{}{power}", unsigned.replace(mark, ""));
        let pointed = |mark: char| format!("{sign}{}{power}", unsigned.replace(mark, "."));
        match marks.as_slice() {
            [] => Typed::Number(format!("{sign}{unsigned}{power}")),
            [mark] if *mark != own && parts_thousands(unsigned, *mark) => {
                Typed::Ambiguous { thousands: without(*mark), decimals: pointed(*mark) }
            }
            [mark] => Typed::Number(pointed(*mark)),
            [first, .., last] if first == last => {
                let all = marks.iter().all(|mark| mark == first);
                if all && parts_thousands(unsigned, *first) {
                    Typed::Number(without(*first))
                } else {
                    Typed::Other
                }
            }
            [first, rest @ .., last] => {
                let whole = unsigned.split(*last).next().unwrap_or_default();
                if rest.iter().all(|mark| mark == first) && parts_thousands(whole, *first) {
                    Typed::Number(without(*first).replace(*last, "."))
                } else {
                    Typed::Other
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Language;

    fn number(text: &str) -> Typed {
        Typed::Number(text.into())
    }

    #[test]
    fn either_mark_parts_decimals() {
        for language in Language::ALL {
            let own = Words::of(*language);
            for (typed, read) in [
                (" 12,5 ", "12.5"),
                ("12.5", "12.5"),
                ("−3,25", "-3.25"),
                ("+7", "7"),
                (",5", ".5"),
                ("0,125", "0.125"),
                ("0.125", "0.125"),
                ("12,3456", "12.3456"),
                ("1 000", "1000"),
                ("1e300", "1e300"),
                ("2,5E-3", "2.5E-3"),
                ("12\u{202f}346,5", "12346.5"),
                ("1,234.5", "1234.5"),
                ("1.234,5", "1234.5"),
                ("1,234,567", "1234567"),
                ("1.234.567", "1234567"),
            ] {
                assert_eq!(own.typed(typed), number(read), "{typed} in {language:?}");
            }
            assert_eq!(own.typed("  "), Typed::Nothing);
            for typed in [
                "abc",
                "1..2",
                "1,2,3",
                "1.2,3.4",
                "--1",
                "1e",
                "e5",
                "1e5.5",
                "NaN",
                ".",
                "-",
                "12,34,567.8",
                "1-2",
            ] {
                assert_eq!(own.typed(typed), Typed::Other, "{typed} in {language:?}");
            }
        }
    }

    #[test]
    fn the_mark_of_the_language_parts_decimals_and_the_other_must_be_clear() {
        let ambiguous = |thousands: &str, decimals: &str| Typed::Ambiguous {
            thousands: thousands.into(),
            decimals: decimals.into(),
        };
        for language in Language::ALL {
            let own = Words::of(*language);
            let (mark, other) = if own.writes_comma() { (',', '.') } else { ('.', ',') };
            assert_eq!(own.typed(&format!("1{mark}000")), number("1.000"));
            assert_eq!(own.typed(&format!("1{other}000")), ambiguous("1000", "1.000"));
            assert_eq!(own.typed(&format!("-12{other}500")), ambiguous("-12500", "-12.500"));
            assert_eq!(own.typed(&format!("1234{other}500")), number("1234.500"));
        }
    }
}
