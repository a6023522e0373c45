//! Named places: which coordinates and clock belong to a name?
//!
//! A list of towns, harbours, islands and stations all over the world, so that a plan can start from a name without asking
//! any server. Coordinates are good to about 0.1°, which the climate (5° cells) and the sun do not notice. It is no
//! directory of all towns: whoever lives elsewhere gives coordinates. Names that two countries share stand once for each.

use std::sync::OnceLock;

use crate::place::clock::{Clock, SummerTime};
use crate::quantity::Degrees;

/// The list; its header says how it was made.
const LIST: &str = include_str!("../../data/towns.tsv");

/// So many characters of a query are looked at: more than the longest name has.
const LONGEST_QUERY: usize = 64;

/// A named place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Town {
    /// Its usual English or local name; a second name or the region in brackets.
    pub name: &'static str,
    /// Country or territory, ISO 3166-1 alpha-2 (`XK` for Kosovo, which has none yet).
    pub country: &'static str,
    /// Latitude \[°\], north positive, -90 to 90.
    pub latitude: Degrees,
    /// Longitude \[°\], east positive, -180 to 180.
    pub longitude: Degrees,
    /// Its clock.
    pub clock: Clock,
}

/// Every town of the list, grouped by region.
#[must_use]
pub fn towns() -> &'static [Town] {
    static TOWNS: OnceLock<Vec<Town>> = OnceLock::new();
    TOWNS.get_or_init(|| rows().filter_map(town).collect())
}

/// The towns whose name fits a query, best first, at most `limit`.
///
/// Case, accents and punctuation do not count. Names that start with the query come first, then those with a word that
/// does, then those that hold it anywhere; equals in alphabetical order. An empty query finds nothing.
#[must_use]
pub fn find(query: &str, limit: usize) -> Vec<&'static Town> {
    let query: String = query.chars().take(LONGEST_QUERY).collect();
    let query = folded(&query);
    if query.is_empty() {
        return Vec::new();
    }
    let mut found: Vec<(Fit, String, &Town)> = towns()
        .iter()
        .filter_map(|town| {
            let name = folded(town.name);
            Some((fit(&name, &query)?, name, town))
        })
        .collect();
    found.sort_by(|a, b| (a.0, &a.1).cmp(&(b.0, &b.1)));
    found.into_iter().take(limit).map(|(_, _, town)| town).collect()
}

/// How well a name fits, best first.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Fit {
    Start,
    Word,
    Inside,
}

fn fit(name: &str, query: &str) -> Option<Fit> {
    if name.starts_with(query) {
        return Some(Fit::Start);
    }
    let mut places = name.match_indices(query).map(|(at, _)| at).peekable();
    places.peek()?;
    let at_word = places.any(|at| name[..at].ends_with(' '));
    Some(if at_word { Fit::Word } else { Fit::Inside })
}

/// Lower case without accents; words parted by single spaces.
fn folded(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for letter in text.chars().flat_map(char::to_lowercase) {
        match without_accent(letter) {
            Some(" ") if plain.is_empty() || plain.ends_with(' ') => {}
            Some(other) => plain.push_str(other),
            None => plain.push(letter),
        }
    }
    plain.truncate(plain.trim_end().len());
    plain
}

/// What stands for a letter with an accent or a mark; nothing for a letter that stands for itself.
fn without_accent(letter: char) -> Option<&'static str> {
    Some(match letter {
        'à'..='å' | 'ā' | 'ă' | 'ą' => "a",
        'ç' | 'ć' | 'č' => "c",
        'ď' | 'đ' | 'ð' => "d",
        'è'..='ë' | 'ē' | 'ė' | 'ę' | 'ě' => "e",
        'ğ' | 'ġ' | 'ģ' => "g",
        'ì'..='ï' | 'ī' | 'į' | 'ı' => "i",
        'ķ' => "k",
        'ł' | 'ļ' | 'ľ' => "l",
        'ñ' | 'ń' | 'ņ' | 'ň' => "n",
        'ò'..='ö' | 'ø' | 'ō' | 'ő' => "o",
        'ŕ' | 'ř' => "r",
        'ś' | 'ş' | 'š' | 'ș' => "s",
        'ţ' | 'ť' | 'ț' => "t",
        'ù'..='ü' | 'ū' | 'ů' | 'ű' | 'ų' => "u",
        'ý' | 'ÿ' => "y",
        'ź' | 'ż' | 'ž' => "z",
        'æ' => "ae",
        'œ' => "oe",
        'ß' => "ss",
        'þ' => "th",
        // Apostrophes, the Polynesian glottal stop, full stops and combining accents part no words.
        '\'' | '’' | 'ʻ' | '.' | '\u{300}'..='\u{36f}' => "",
        _ if letter.is_alphanumeric() => return None,
        _ => " ",
    })
}

fn rows() -> impl Iterator<Item = &'static str> {
    LIST.lines().filter(|line| !line.starts_with('#'))
}

/// A row as a town; nothing for a row that cannot be read, of which a test shows that there is none.
fn town(row: &'static str) -> Option<Town> {
    let mut fields = row.split('\t');
    Some(Town {
        name: fields.next()?,
        country: fields.next()?,
        latitude: Degrees(fields.next()?.parse().ok()?),
        longitude: Degrees(fields.next()?.parse().ok()?),
        clock: Clock {
            utc_offset_min: fields.next()?.parse().ok()?,
            summer_time: summer_time(fields.next()?)?,
        },
    })
}

fn summer_time(letter: &str) -> Option<SummerTime> {
    Some(match letter {
        "-" => SummerTime::None,
        "E" => SummerTime::Europe,
        "N" => SummerTime::NorthAmerica,
        "A" => SummerTime::Australia,
        "L" => SummerTime::LordHowe,
        "Z" => SummerTime::NewZealand,
        "C" => SummerTime::Chile,
        "G" => SummerTime::Egypt,
        "I" => SummerTime::Israel,
        "P" => SummerTime::Palestine,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::en::countries::country;
    use chrono::NaiveDate;
    use std::collections::BTreeSet;

    fn names(query: &str) -> Vec<&'static str> {
        find(query, 50).into_iter().map(|town| town.name).collect()
    }

    fn only(query: &str) -> &'static Town {
        find(query, 1)[0]
    }

    #[test]
    fn every_row_is_a_town() {
        assert_eq!(towns().len(), rows().count());
        assert!(towns().len() >= 420);
        assert!(rows().all(|row| row.split('\t').count() == 6));
    }

    #[test]
    fn places_are_on_earth_and_clocks_near_the_sun() {
        // China keeps one clock over 60° of longitude, the widest gap between clock and sun.
        const WIDEST_GAP_H: f64 = 4.0;
        for town in towns() {
            let (lat, lon) = (town.latitude.0, town.longitude.0);
            assert!((-90.0..=90.0).contains(&lat), "{town:?}");
            assert!((-180.0..=180.0).contains(&lon), "{town:?}");
            assert!((-720..=840).contains(&town.clock.utc_offset_min), "{town:?}");
            let gap = f64::from(town.clock.utc_offset_min) / 60.0 - lon / 15.0;
            let gap = (gap + 12.0).rem_euclid(24.0) - 12.0;
            // At a pole every longitude is as good as any other.
            assert!(gap.abs() <= WIDEST_GAP_H || lat.abs() > 89.0, "{town:?}: {gap} h");
        }
    }

    #[test]
    fn a_name_stands_once_in_a_country() {
        let pairs: BTreeSet<_> = towns().iter().map(|t| (folded(t.name), t.country)).collect();
        assert_eq!(pairs.len(), towns().len());
        for town in towns() {
            assert_eq!(town.name, town.name.trim());
            assert!(!town.name.is_empty() && town.name.chars().count() < LONGEST_QUERY);
            assert!(country(town.country).is_some(), "{} has no name", town.country);
        }
    }

    #[test]
    fn the_world_is_covered() {
        let countries: BTreeSet<_> = towns().iter().map(|t| t.country).collect();
        assert!(countries.len() >= 200);
        // The emptier parts of the map, where a list of large towns would have nothing within a climate cell or two.
        let near = |lat: f64, lon: f64| {
            towns()
                .iter()
                .any(|t| (t.latitude.0 - lat).abs() < 8.0 && (t.longitude.0 - lon).abs() < 10.0)
        };
        for (lat, lon) in [
            (65.0, -150.0),
            (62.0, -115.0),
            (48.0, -100.0),
            (-10.0, -70.0),
            (-45.0, -70.0),
            (20.0, 5.0),
            (0.0, 25.0),
            (-25.0, 20.0),
            (62.0, 90.0),
            (62.0, 130.0),
            (45.0, 100.0),
            (25.0, 45.0),
            (-25.0, 135.0),
            (-5.0, 140.0),
            (-75.0, 165.0),
        ] {
            assert!(near(lat, lon), "nothing near {lat}, {lon}");
        }
    }

    #[test]
    fn known_places_have_their_coordinates_and_clocks() {
        for (query, lat, lon, january, july) in [
            ("Tromsø", 69.65, 18.96, 1.0, 2.0),
            ("Horta", 38.53, -28.63, -1.0, 0.0),
            ("Kathmandu", 27.7, 85.32, 5.75, 5.75),
            ("St. John's", 47.56, -52.71, -3.5, -2.5),
            ("Kiritimati", 1.99, -157.48, 14.0, 14.0),
            ("Waitangi", -43.95, -176.56, 13.75, 12.75),
            ("Lord Howe", -31.53, 159.07, 11.0, 10.5),
            ("Phoenix", 33.45, -112.07, -7.0, -7.0),
            ("Punta Arenas", -53.16, -70.91, -3.0, -3.0),
            ("Santiago", -33.46, -70.65, -3.0, -4.0),
        ] {
            let town = only(query);
            assert!((town.latitude.0 - lat).abs() < 0.1 && (town.longitude.0 - lon).abs() < 0.1);
            let on =
                |month| town.clock.offset_on(NaiveDate::from_ymd_opt(2027, month, 15).unwrap());
            assert_eq!((on(1).0, on(7).0), (january, july), "{query}");
        }
    }

    #[test]
    fn accents_case_and_punctuation_do_not_count() {
        assert!(names("sao").contains(&"São Paulo"));
        assert_eq!(names("REYKJAVIK"), ["Reykjavík"]);
        assert_eq!(names("nukualofa"), ["Nukuʻalofa"]);
        assert_eq!(names("st johns"), ["St. John's"]);
        assert_eq!(names("garmisch partenk"), ["Garmisch-Partenkirchen"]);
        assert_eq!(names("sa\u{303}o paulo"), ["São Paulo"]);
        assert_eq!(folded("  ŁÓDŹ--İzmir, Þingvellir "), "lodz izmir thingvellir");
    }

    #[test]
    fn starts_come_first_then_words_then_the_rest() {
        let found = names("ho");
        let at = |name: &str| found.iter().position(|&n| n == name).unwrap();
        assert_eq!(found[0], "Ho Chi Minh City (Saigon)");
        assert!(at("Horta (Faial)") < at("Lord Howe Island"));
        assert!(at("Lord Howe Island") < at("Anchorage"));
        assert!(at("Anchorage") < at("Rhodes"));
        let found = names("mah");
        assert_eq!(found.first(), Some(&"Mahón (Menorca)"));
        assert!(found.contains(&"Victoria (Mahé)"));
    }

    #[test]
    fn every_town_is_found_by_its_own_name() {
        for town in towns() {
            let same = find(town.name, 10);
            assert!(same.contains(&town), "{}", town.name);
        }
    }

    #[test]
    fn odd_queries_are_harmless() {
        assert!(find("", 10).is_empty());
        assert!(find(" \t-\u{0}", 10).is_empty());
        assert!(find("a", 0).is_empty());
        assert_eq!(find("a", 7).len(), 7);
        assert!(find(&"x".repeat(1_000_000), 10).is_empty());
        assert!(find("🚐", 10).is_empty());
        assert!(find("a", usize::MAX).len() > 100);
    }
}
