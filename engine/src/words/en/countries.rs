//! Names of the countries and territories of the towns list, in everyday short form.

/// Code, space, name; in the order of the codes (ISO 3166-1 alpha-2).
pub const COUNTRIES: &str = include_str!("countries.txt");

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::Gazetteer;
    use crate::words::{Countries, Language};
    use std::collections::BTreeSet;

    fn entries() -> impl Iterator<Item = (&'static str, &'static str)> {
        COUNTRIES.lines().filter_map(|entry| entry.split_once(' '))
    }

    #[test]
    fn codes_are_sorted_and_names_unique() {
        let codes: Vec<_> = entries().map(|(code, _)| code).collect();
        assert!(codes.is_sorted_by(|a, b| a < b));
        assert!(codes.iter().all(|c| c.len() == 2 && c.chars().all(|c| c.is_ascii_uppercase())));
        let names: BTreeSet<_> = entries().map(|(_, name)| name).collect();
        assert_eq!(names.len(), codes.len());
        assert!(names.iter().all(|name| name.len() > 2 && *name == name.trim()));
        assert_eq!(COUNTRIES.lines().count(), codes.len());
    }

    #[test]
    fn exactly_the_codes_of_the_towns_are_named() {
        let named: BTreeSet<_> = entries().map(|(code, _)| code).collect();
        let used: BTreeSet<_> = Gazetteer::embedded().towns().map(|town| town.country).collect();
        assert_eq!(named, used);
    }

    #[test]
    fn names_are_found_by_code_alone() {
        let countries = Language::English.countries();
        assert_eq!(countries.name("CI"), Some("Ivory Coast"));
        assert_eq!(countries.name("AX"), Some("Åland"));
        assert_eq!(countries.name("ZW"), Some("Zimbabwe"));
        for unknown in ["", "Z", "zw", "ZZ", "Zimbabwe", "AD Andorra"] {
            assert_eq!(countries.name(unknown), None);
        }
        assert_eq!(Countries::from_text("<!DOCTYPE html>\n").name("CI"), None);
    }
}
