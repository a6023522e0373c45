//! Named places: which coordinates and clock belong to a name?
//!
//! A list of towns, harbours, islands, stations and sea areas all over the world, so that a plan can start from a name without asking
//! any server. Coordinates are good to about 0.1°, which the climate (5° cells) and the sun do not notice. It is no
//! directory of all towns: whoever lives elsewhere gives coordinates. Names that two countries share stand once for each.
//!
//! **Origin.** Coordinates of 747 were written from general knowledge, 716 of them seen to lie within 0.1° of a public
//! gazetteer, islands and polar stations apart; those of 760 more are from a free list of 7,300 populated places (npm
//! city-timezones 1.3.4): the largest first, then whichever lies farthest from all before. Sea areas by their middle, with
//! nautical time. Offsets follow the IANA time zone database 2026f as it stands for 2027: China by its official single
//! time, Cuba as from 2028.
//!
//! **Form.** `data/towns.txt` goes by groups of one country and clock: `=NO 60 E` is country (ISO 3166-1 alpha-2; `XZ` is
//! open sea), standard offset from UTC \[min\] and summer time (a letter of [`summer_time`], `-` for none). The rows of a
//! group are latitude and longitude in tenths of a degree, each as the difference to the row before (the first to 0), and
//! the name, a second name in brackets: `599 107Oslo`. Nothing costs as little room after compression. A new town goes
//! to the end under a head of its own.

use crate::digits::places_of;
use crate::place::clock::{Clock, SummerTime};
use crate::quantity::Degrees;
use crate::sun::Site;

/// So many characters of a query are looked at: more than the longest name has.
const LONGEST_QUERY: usize = 64;

/// A named place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Town<'a> {
    /// Its usual English or local name; a second name or the region in brackets.
    pub name: &'a str,
    /// Country or territory, ISO 3166-1 alpha-2 (`XK` for Kosovo, which has none yet; [`SEA`] for a sea area).
    pub country: &'a str,
    /// Latitude \[°\], north positive, -90 to 90.
    pub latitude: Degrees,
    /// Longitude \[°\], east positive, -180 to 180.
    pub longitude: Degrees,
    /// Its clock.
    pub clock: Clock,
}

/// The code that stands for a country where there is none: the open sea.
pub const SEA: &str = "XZ";

/// The list of towns.
#[derive(Clone, Copy, Debug)]
pub struct Gazetteer<'a>(&'a str);

impl<'a> Gazetteer<'a> {
    /// Takes the text of `data/towns.txt`; anything else holds no towns.
    #[must_use]
    pub const fn from_text(text: &'a str) -> Self {
        Self(text)
    }

    /// Every town.
    pub fn towns(self) -> impl Iterator<Item = Town<'a>> {
        let mut group = None;
        self.0.lines().filter_map(move |line| match line.strip_prefix('=') {
            Some(head) => {
                group = Group::read(head);
                None
            }
            None => group.as_mut()?.town(line),
        })
    }

    /// The place nearest to a site, and how far it is \[km\].
    #[must_use]
    pub fn nearest(self, site: Site) -> Option<(Town<'a>, f64)> {
        let here = direction(site.latitude, site.longitude);
        // The square of the chord grows with the distance and needs no root.
        let chord = |town: &Town<'_>| {
            let there = direction(town.latitude, town.longitude);
            here.iter().zip(there).map(|(a, b)| (a - b) * (a - b)).sum::<f64>()
        };
        let mut best: Option<(Town<'a>, f64)> = None;
        for town in self.towns() {
            let far = chord(&town);
            if best.is_none_or(|(_, least)| far < least) {
                best = Some((town, far));
            }
        }
        best.map(|(town, far)| (town, far.sqrt() * EARTH_KM))
    }

    /// The towns whose name fits a query, best first, at most `limit`.
    ///
    /// Case, accents and punctuation do not count. Names that start with the query come first, then those with a word that
    /// does, then those that hold it anywhere; equals in alphabetical order. An empty query finds nothing.
    #[must_use]
    pub fn find(self, query: &str, limit: usize) -> Vec<Town<'a>> {
        let query: String = query.chars().take(LONGEST_QUERY).collect();
        let query = folded(&query);
        if query.is_empty() {
            return Vec::new();
        }
        let fits = self.towns().filter_map(|town| {
            let name = folded(town.name);
            Some((fit(&name, &query)?, name, town.country, town))
        });
        // Put in order as they come, which takes less of the page than a sort.
        let mut found: Vec<(Fit, String, &str, Town<'a>)> = Vec::new();
        for own in fits {
            let key = |of: &(Fit, String, &'a str, Town<'a>)| (of.0, of.1.clone(), of.2);
            found.insert(found.partition_point(|other| key(other) < key(&own)), own);
        }
        found.into_iter().map(|(_, _, _, town)| town).take(limit).collect()
    }
}

#[cfg(feature = "towns")]
impl Gazetteer<'static> {
    /// The list that is built in.
    #[must_use]
    pub const fn embedded() -> Self {
        Self::from_text(include_str!("../../data/towns.txt"))
    }
}

/// Radius of the earth \[km\]. The chord stands for the arc: 0.1 % less at 1000 km.
const EARTH_KM: f64 = 6371.0;

/// The unit vector from the middle of the earth.
fn direction(latitude: Degrees, longitude: Degrees) -> [f64; 3] {
    let (sin_lat, cos_lat) = libm::sincos(latitude.radians());
    let (sin_lon, cos_lon) = libm::sincos(longitude.radians());
    [cos_lat * cos_lon, cos_lat * sin_lon, sin_lat]
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
    let mut places = places_of(name, query).peekable();
    places.peek()?;
    let at_word = places.any(|at| name[..at].ends_with(' '));
    Some(if at_word { Fit::Word } else { Fit::Inside })
}

/// Lower case without accents; words parted by single spaces. So people find what they type as they please.
#[must_use]
pub fn folded(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for letter in text.chars().map(lowered) {
        match without_accent(letter) {
            Some(" ") if plain.is_empty() || plain.ends_with(' ') => {}
            Some(other) => plain.push_str(other),
            None => plain.push(letter),
        }
    }
    plain.truncate(plain.trim_end().len());
    plain
}

/// Whether it is a letter or a figure. Of other scripts all counts as one but signs and punctuation: the tables for all scripts would weigh
/// more than this list.
#[must_use]
pub fn is_letter(own: char) -> bool {
    own.is_ascii_alphanumeric()
        || !matches!(own, '\0'..='\u{bf}' | '×' | '÷' | '\u{2000}'..='\u{2bff}' | '\u{3000}'..='\u{3003}')
}

/// The small letter of a Latin one. The tables for all scripts of the world would weigh more than this list.
#[must_use]
pub fn lowered(letter: char) -> char {
    let code = u32::from(letter);
    let small = match code {
        0xc0..=0xde if code != 0xd7 => code + 0x20,
        // Pairs of a capital and its small letter; two stretches of them begin at an odd number.
        0x100..=0x137 | 0x14a..=0x177 | 0x218..=0x21b => code | 1,
        0x139..=0x148 | 0x179..=0x17e => code + (code & 1),
        0x178 => 0xff,
        _ => return letter.to_ascii_lowercase(),
    };
    char::from_u32(small).unwrap_or(letter)
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
        // Spaces, punctuation and symbols, as far as they turn up between Latin letters.
        '\u{80}'..='\u{bf}' | '\u{2000}'..='\u{206f}' => " ",
        _ if letter.is_ascii() && !letter.is_ascii_alphanumeric() => " ",
        _ => return None,
    })
}

/// Where the reading of a group stands.
struct Group<'a> {
    country: &'a str,
    clock: Clock,
    latitude: i32,
    longitude: i32,
}

impl<'a> Group<'a> {
    fn read(head: &'a str) -> Option<Self> {
        let mut fields = head.split(' ');
        let country = fields.next()?;
        let utc_offset_min = fields.next()?.parse().ok()?;
        let clock = Clock { utc_offset_min, summer_time: summer_time(fields.next()?)? };
        Some(Self { country, clock, latitude: 0, longitude: 0 })
    }

    /// The next row as a town; nothing for one that cannot be read, of which a test shows that there is none.
    fn town(&mut self, row: &'a str) -> Option<Town<'a>> {
        let (north, rest) = row.split_once(' ')?;
        let end = rest.find(|letter: char| !letter.is_ascii_digit() && letter != '-')?;
        let (east, name) = rest.split_at(end);
        self.latitude += north.parse::<i32>().ok()?;
        self.longitude += east.parse::<i32>().ok()?;
        Some(Town {
            name,
            country: self.country,
            latitude: Degrees(f64::from(self.latitude) / 10.0),
            longitude: Degrees(f64::from(self.longitude) / 10.0),
            clock: self.clock,
        })
    }
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

#[cfg(all(test, feature = "towns"))]
mod tests {
    use super::*;
    use crate::words::Language;
    use chrono::NaiveDate;
    use std::collections::BTreeSet;

    const LIST: Gazetteer<'static> = Gazetteer::embedded();

    fn names(query: &str) -> Vec<&'static str> {
        LIST.find(query, 50).into_iter().map(|town| town.name).collect()
    }

    fn only(query: &str) -> Town<'static> {
        LIST.find(query, 1)[0]
    }

    #[test]
    fn every_row_is_a_town() {
        let rows = LIST.0.lines().filter(|line| !line.starts_with('='));
        assert_eq!(LIST.towns().count(), rows.count());
        assert!(LIST.towns().count() >= 1500);
    }

    #[test]
    fn places_are_on_earth_and_clocks_near_the_sun() {
        // China keeps one clock over 60° of longitude, the widest gap between clock and sun.
        const WIDEST_GAP_H: f64 = 4.0;
        for town in LIST.towns() {
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
        let countries = Language::English.countries();
        let pairs: BTreeSet<_> = LIST.towns().map(|t| (folded(t.name), t.country)).collect();
        assert_eq!(pairs.len(), LIST.towns().count());
        for town in LIST.towns() {
            assert_eq!(town.name, town.name.trim());
            assert!(!town.name.is_empty() && town.name.chars().count() < LONGEST_QUERY);
            assert!(countries.name(town.country).is_some(), "{} has no name", town.country);
        }
    }

    #[test]
    fn the_world_is_covered() {
        let countries: BTreeSet<_> = LIST.towns().map(|t| t.country).collect();
        assert!(countries.len() >= 200);
        // The emptier parts of the map, where a list of large towns would have nothing within a climate cell or two.
        let near = |lat: f64, lon: f64| {
            LIST.towns()
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
    fn seas_are_found_and_keep_the_time_of_the_sun() {
        let seas: Vec<Town<'_>> = LIST.towns().filter(|town| town.country == SEA).collect();
        assert!(seas.len() >= 100, "{}", seas.len());
        for sea in seas {
            let gap = f64::from(sea.clock.utc_offset_min) / 60.0 - sea.longitude.0 / 15.0;
            assert!(gap.abs() <= 0.5 && sea.clock.summer_time == SummerTime::None, "{sea:?}");
        }
        assert_eq!(only("bay of biscay").country, SEA);
        assert_eq!(only("drake").name, "Drake Passage");
    }

    #[test]
    fn the_nearest_place_is_found_from_anywhere() {
        let near = |latitude, longitude| {
            let site = Site { latitude: Degrees(latitude), longitude: Degrees(longitude) };
            LIST.nearest(site).map(|(town, far)| (town.name, far)).unwrap()
        };
        let (name, far) = near(-33.9, 18.4);
        assert!(name.starts_with("Cape Town") && far < 10.0, "{name}, {far} km");
        assert_eq!(near(-10.58, 142.22).0, "Thursday Island");
        // Over the date line and over the pole.
        assert!(near(-16.8, -179.9).1 < 200.0);
        assert_eq!(near(90.0, 0.0).0, near(90.0, 180.0).0);
        let (_, far) = near(0.0, 0.0);
        assert!((300.0..800.0).contains(&far), "{far} km");
        assert!(
            Gazetteer::from_text("")
                .nearest(Site { latitude: Degrees(0.0), longitude: Degrees(0.0) })
                .is_none()
        );
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
    fn small_letters_are_those_of_unicode() {
        // Without the Turkish i, whose small letters Unicode tells apart and a search does not, and ŉ and ĸ, which stand alone.
        for code in (0..=0x17e).chain(0x218..=0x21b).filter(|code| !matches!(code, 0x130 | 0x149)) {
            let letter = char::from_u32(code).unwrap();
            if letter.is_uppercase() {
                assert!(letter.to_lowercase().eq([lowered(letter)]), "{letter}");
            }
        }
        for small in LIST.0.chars().filter(|letter| !letter.is_uppercase() && *letter != 'ı') {
            assert_eq!(lowered(small), small);
        }
    }

    #[test]
    fn starts_come_first_then_words_then_the_rest() {
        let found: Vec<&str> = LIST.find("ho", 500).into_iter().map(|town| town.name).collect();
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
        for town in LIST.towns() {
            let same = LIST.find(town.name, 10);
            assert!(same.contains(&town), "{}", town.name);
        }
    }

    #[test]
    fn odd_queries_are_harmless() {
        assert!(LIST.find("", 10).is_empty());
        assert!(LIST.find(" \t-\u{0}", 10).is_empty());
        assert!(LIST.find("a", 0).is_empty());
        assert_eq!(LIST.find("a", 7).len(), 7);
        assert!(LIST.find(&"x".repeat(1_000_000), 10).is_empty());
        assert!(LIST.find("🚐", 10).is_empty());
        assert!(LIST.find("a", usize::MAX).len() > 100);
    }
}
