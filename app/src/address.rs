//! What the page's address says: a plan in a link, or an example by name.

use sunlarder_engine::document::{Document, Problem};
use sunlarder_engine::share;

/// The start scenarios: name in the address, and file.
pub(crate) const EXAMPLES: [(&str, &str); 4] = [
    ("camper", include_str!("../../examples/camper.json")),
    ("boat", include_str!("../../examples/boat.json")),
    ("cabin", include_str!("../../examples/cabin.json")),
    ("classroom", include_str!("../../examples/classroom.json")),
];

/// What the part behind the `#` of an address asks for.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Asked {
    /// Nothing that concerns us.
    Nothing,
    /// A plan.
    Plan(Box<Document>),
    /// A plan that cannot be read.
    Unreadable(Problem),
}

/// Reads the part behind the `#`.
pub(crate) fn asked(hash: &str) -> Asked {
    let hash = hash.trim_start_matches('#');
    if let Some(code) = hash.strip_prefix("p=") {
        return match share::decode(code) {
            Ok(plan) => Asked::Plan(Box::new(plan)),
            Err(problem) => Asked::Unreadable(problem),
        };
    }
    let example = hash.strip_prefix("example=").and_then(example);
    example.map_or(Asked::Nothing, |plan| Asked::Plan(Box::new(plan)))
}

/// A start scenario by its name.
pub(crate) fn example(name: &str) -> Option<Document> {
    let (_, text) = EXAMPLES.iter().find(|(known, _)| *known == name)?;
    Document::from_json(text).ok()
}

/// The link to a plan on a page at this address.
pub(crate) fn link(page: &str, plan: &Document) -> Result<String, Problem> {
    let page = page.split('#').next().unwrap_or_default();
    share::encode(plan).map(|code| format!("{page}#p={code}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_start_scenario_opens() {
        for (name, _) in EXAMPLES {
            assert!(matches!(asked(&format!("#example={name}")), Asked::Plan(_)), "{name}");
        }
        assert_eq!(asked("#example=nothing"), Asked::Nothing);
        assert_eq!(asked(""), Asked::Nothing);
    }

    #[test]
    fn a_link_opens_the_plan_it_was_made_of() {
        let plan = example("camper").unwrap();
        let link = link("https://example.org/a/b/?x=1#old", &plan).unwrap();
        assert!(link.starts_with("https://example.org/a/b/?x=1#p="));
        let hash = link.split_once('#').unwrap().1;
        assert_eq!(asked(hash), Asked::Plan(Box::new(plan)));
    }

    #[test]
    fn a_broken_link_says_so() {
        assert_eq!(asked("#p=%%%"), Asked::Unreadable(Problem::BadLetters));
    }
}
