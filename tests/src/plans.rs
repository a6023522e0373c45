//! The plans of `examples/`, for tests and benchmarks.

/// Name and text of every example.
pub const EXAMPLES: [(&str, &str); 5] = [
    ("camper", include_str!("../../examples/camper.json")),
    ("boat", include_str!("../../examples/boat.json")),
    ("cabin", include_str!("../../examples/cabin.json")),
    ("classroom", include_str!("../../examples/classroom.json")),
    ("clinic", include_str!("../../examples/clinic.json")),
];
