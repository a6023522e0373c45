//! The plans of `examples/` and of the golden links, for tests and benchmarks.

use sunlarder_engine::document::Document;

use crate::golden::golden;

/// Name and text of every example.
pub const EXAMPLES: [(&str, &str); 8] = [
    ("camper", include_str!("../../examples/camper.json")),
    ("boat", include_str!("../../examples/boat.json")),
    ("cabin", include_str!("../../examples/cabin.json")),
    ("classroom", include_str!("../../examples/classroom.json")),
    ("clinic", include_str!("../../examples/clinic.json")),
    ("sailor", include_str!("../../examples/sailor.json")),
    ("stall", include_str!("../../examples/stall.json")),
    ("hut", include_str!("../../examples/hut.json")),
];

/// Name and plan of every example and of every golden file.
///
/// # Errors
/// The first that cannot be read or does not open.
pub fn openable() -> Result<Vec<(String, Document)>, String> {
    let examples = EXAMPLES.map(|(name, text)| (name.to_owned(), text.to_owned()));
    let golden = golden("v1").map_err(|fault| fault.to_string())?.into_iter();
    let all = examples.into_iter().chain(golden.map(|golden| (golden.name, golden.file)));
    let open = |(name, text): (String, String)| match Document::from_json(&text) {
        Ok(plan) => Ok((name, plan)),
        Err(problem) => Err(format!("{name}: {problem:?}")),
    };
    all.map(open).collect()
}
