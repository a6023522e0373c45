//! Names of the countries and territories of the towns list, in everyday short form.

/// Code, space, name; in the order of the codes (ISO 3166-1 alpha-2).
pub const COUNTRIES: &str = include_str!("countries.txt");

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::Gazetteer;
    use std::collections::BTreeSet;

    #[test]
    fn exactly_the_codes_of_the_towns_are_named_once_each() {
        let entries: Vec<_> = COUNTRIES.lines().filter_map(|own| own.split_once(' ')).collect();
        let codes: BTreeSet<_> = entries.iter().map(|(code, _)| *code).collect();
        let names: BTreeSet<_> = entries.iter().map(|(_, name)| *name).collect();
        let used: BTreeSet<_> = Gazetteer::embedded().towns().map(|town| town.country).collect();
        assert_eq!(codes, used);
        assert!(entries.iter().map(|(code, _)| code).is_sorted());
        assert_eq!(names.len(), entries.len());
        assert!(names.iter().all(|name| name.len() > 2 && *name == name.trim()));
        assert!(entries.contains(&("CI", "Costa de Marfil")));
    }
}
