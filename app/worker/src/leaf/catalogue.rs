//! The catalogue of appliances, whole by its groups or what somebody looks for in it, each as a button that carries a load.
//!
//! **Search.** Every word that was typed must be found in the name or the search words of an appliance, in any order: as it is, as the
//! beginning of a longer one, without its ending (plurals, *charger* for *charging*), or with one letter wrong. If nothing has all
//! words, those that have most of them are shown.

use sunlarder_engine::digits::places_of;
use sunlarder_engine::document::Document;
use sunlarder_engine::load::catalogue::{Appliance, Group, entry};
use sunlarder_engine::place;
use sunlarder_engine::share;
use sunlarder_engine::words::{Label, Language, Words};

use super::About;
use crate::paper::Paper;

/// Most appliances that a search shows.
const SHOWN: usize = 12;
/// Words of a search beyond these are not looked at.
const WORDS: usize = 8;
/// What people type between two words that say something, in any language of the page.
const EMPTY: [&str; 18] = [
    "a", "an", "the", "for", "my", "of", "and", "with", "con", "de", "el", "la", "los", "las",
    "mi", "para", "un", "una",
];

/// The catalogue, or what was found for a query that is not blank.
pub(super) fn write(query: &str, about: About<'_>) -> String {
    let mut paper = Paper::default();
    if words_of(query).is_empty() {
        for group in Group::ALL {
            paper.class("details", "more").said("summary", "", about.words.appliance_group(group));
            let own = Appliance::ALL.iter().copied().filter(|own| entry(*own).group == group);
            results(&mut paper, own, about);
            paper.close();
        }
        return paper.finish();
    }
    let found = find(query, about.words.language);
    if found.is_empty() {
        paper.said("p", "hint", about.words.label(Label::NothingFound));
    } else {
        results(&mut paper, found.into_iter().take(SHOWN), about);
    }
    paper.finish()
}

fn results(paper: &mut Paper, all: impl Iterator<Item = Appliance>, about: About<'_>) {
    paper.class("ul", "results");
    for appliance in all {
        let typical = entry(appliance);
        let load = typical.load(about.system.bank.nominal, about.system.inverter.is_some());
        let code = share::encode(&Document { loads: vec![load], ..Document::default() });
        paper
            .open("li")
            .open("button")
            .attr("type", "button")
            .attr("data-load", &code.unwrap_or_default())
            .said("span", "result-name", about.words.appliance(appliance))
            .said("span", "result-figure", &about.words.amount(typical.power))
            .close()
            .close();
    }
    paper.close();
}

/// The usual range of an appliance's power by its number; nothing for one that is not known.
pub(super) fn range(number: &str, words: Words) -> String {
    let known = number.parse().ok().and_then(Appliance::from_number).map(entry);
    let range = known.map(|own| words.usual_range(&words.amount(own.low), &words.amount(own.high)));
    let mut paper = Paper::default();
    paper.said("p", "hint", &range.unwrap_or_default());
    paper.finish()
}

/// Appliances that match what somebody typed, the nearest first.
fn find(query: &str, language: Language) -> Vec<Appliance> {
    let words = words_of(query);
    let joined = words.join(" ");
    let mut found: Vec<(usize, usize, Appliance)> = Vec::new();
    for appliance in Appliance::ALL.iter().copied() {
        let name = folded(language.appliance(appliance));
        let others = folded(language.appliance_words(appliance));
        let distances = words.iter().map(|word| distance(word, &name, &others));
        let (mut missing, mut far) = (0, usize::from(!name.starts_with(&joined)));
        for own in distances {
            match own {
                Some(own) => far += own,
                None => missing += 1,
            }
        }
        if missing < words.len() {
            // Within a rank in the order of the catalogue.
            let at = found.partition_point(|other| (other.0, other.1) <= (missing, far));
            found.insert(at, (missing, far, appliance));
        }
    }
    let least = found.first().map_or(0, |own| own.0);
    let nearest = found.into_iter().filter(|own| own.0 == least);
    nearest.map(|(.., appliance)| appliance).collect()
}

/// The words of a query that say something, in plain small letters.
fn words_of(query: &str) -> Vec<String> {
    let query: String = query.chars().take(200).collect();
    let query = folded(&query);
    let words = query.split_whitespace().filter(|word| !EMPTY.contains(word));
    words.take(WORDS).map(str::to_owned).collect()
}

/// Small letters without their accents; what is neither letter nor figure parts words.
fn folded(text: &str) -> String {
    let letter = |own: char| if place::is_letter(own) { own } else { ' ' };
    let text: String = place::folded(text).chars().map(letter).collect();
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Whether a word stands in a text.
fn is_within(text: &str, word: &str) -> bool {
    places_of(text, word).next().is_some()
}

/// How far a word is from an appliance: 0 as it stands in the name, up to 9 with a wrong letter; nothing if it is not found.
fn distance(word: &str, name: &str, others: &str) -> Option<usize> {
    let best = |text: &str| text.split(' ').filter_map(|own| apart(word, own)).min();
    // Also two words written as one.
    let within = |text: &str| {
        let is_in = word.len() > 2 && is_within(text, word)
            || word.len() > LONG && is_within(&text.split(' ').collect::<String>(), word);
        is_in.then_some(3)
    };
    let in_name = best(name).or_else(|| within(name));
    let in_others = best(others).or_else(|| within(others)).map(|own| own + 1);
    in_name.into_iter().chain(in_others).min()
}

/// How far one word is from another: the same, the same but for its ending, the beginning of it, or one letter apart.
fn apart(word: &str, own: &str) -> Option<usize> {
    if word == own {
        return Some(0);
    }
    let (stem, own_stem) = (stem(word), stem(own));
    if stem == own_stem {
        return Some(1);
    }
    if own.starts_with(word) || own.starts_with(stem) && stem.len() >= LONG {
        return Some(2);
    }
    let near = stem.chars().count() >= LONG
        && (one_letter_apart(stem, own_stem) || one_letter_apart(word, own));
    near.then_some(8)
}

/// A word with fewer letters is too short to have a wrong one, or an ending.
const LONG: usize = 4;

/// A word without an ending that says how many, or what does it.
fn stem(word: &str) -> &str {
    let endings = ["ing", "ers", "er", "es", "s"];
    let without = endings.iter().find_map(|ending| word.strip_suffix(ending));
    // Of short words only the plural.
    let plural = word.strip_suffix('s').filter(|own| own.len() >= 2 && !own.ends_with('s'));
    without.filter(|own| own.len() >= LONG).or(plural).unwrap_or(word)
}

/// Whether one letter changed, added, left out, or changed places with its neighbour makes one word of the other.
fn one_letter_apart(one: &str, other: &str) -> bool {
    let (one, other): (Vec<char>, Vec<char>) = (one.chars().collect(), other.chars().collect());
    let same = one.iter().zip(&other).take_while(|(a, b)| a == b).count();
    let (one, other) = (&one[same..], &other[same..]);
    match (one, other) {
        ([_, one @ ..], [_, other @ ..]) if one == other => true,
        ([_, one @ ..], other) if one == other => true,
        (one, [_, other @ ..]) if one == other => true,
        ([a, b, one @ ..], [c, d, other @ ..]) => a == d && b == c && one == other,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn first(query: &str) -> Option<Appliance> {
        find(query, Language::English).first().copied()
    }

    #[test]
    fn everyday_words_find_appliances() {
        use Appliance as A;
        for (query, expected) in [
            ("kettle", A::Kettle),
            ("Kettles", A::Kettle),
            ("ketle", A::Kettle),
            ("kettel", A::Kettle),
            ("phone charger", A::PhoneCharger),
            ("charger phone", A::PhoneCharger),
            ("charging my phones", A::PhoneCharger),
            ("smartphon", A::PhoneCharger),
            ("cool box", A::CoolBox),
            ("coolbox", A::CoolBox),
            ("box cool", A::CoolBox),
            ("fridges", A::Fridge40),
            ("refridgerator", A::Fridge40),
            ("microwave", A::Microwave),
            ("micorwave", A::Microwave),
        ] {
            assert_eq!(
                first(query),
                Some(expected),
                "{query}: {:?}",
                find(query, Language::English)
            );
        }
        let tv = find("tv", Language::English);
        assert_eq!(tv, [A::SmallTelevision, A::Television]);
    }

    #[test]
    fn what_has_most_of_the_words_is_shown_when_nothing_has_all() {
        let found = find("purple kettle", Language::English);
        assert!(found.contains(&Appliance::Kettle) && found.len() < 6, "{found:?}");
        assert!(find("zzzz", Language::English).is_empty());
        assert!(find(&"a ".repeat(10_000), Language::English).len() <= Appliance::ALL.len());
        assert!(find(&"kettle ".repeat(10_000), Language::English).contains(&Appliance::Kettle));
    }

    #[test]
    fn every_appliance_is_found_by_its_own_name_and_by_each_of_its_words() {
        for appliance in Appliance::ALL.iter().copied() {
            let name = Language::English.appliance(appliance);
            assert_eq!(first(name), Some(appliance), "{name}");
            for word in Language::English.appliance_words(appliance).split(' ') {
                let found = find(&format!("{name} {word}"), Language::English);
                let at = found.iter().position(|own| *own == appliance);
                // A kindred appliance may have the word in its very name.
                assert!(at.is_some_and(|at| at < 3), "{name} {word}: {found:?}");
            }
        }
    }

    #[test]
    fn one_letter_is_one_letter() {
        for (one, other) in [("kettle", "ketle"), ("ketle", "kettle"), ("ab", "ba"), ("a", "b")] {
            assert!(one_letter_apart(one, other), "{one} {other}");
        }
        assert!(!one_letter_apart("kettle", "kete") && !one_letter_apart("abcd", "badc"));
    }
}
