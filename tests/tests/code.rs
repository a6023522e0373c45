//! A code that is drawn is read back by a decoder that knows nothing of what drew it.

#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]

use rqrr::PreparedImage;
use sunlarder_engine::document::{Document, Load};
use sunlarder_engine::share;
use sunlarder_tests::plans::EXAMPLES;
use sunlarder_worker::leaf::code_of;

/// The link to a plan as a page on the net would give it.
fn link(plan: &Document) -> String {
    format!("https://plans.example.org/sunlarder/#p={}", share::encode(plan).unwrap())
}

/// Forty loads with names of their own, each unlike the others.
fn forty() -> Document {
    let mut plan = Document::from_json(EXAMPLES[0].1).unwrap();
    let kinds = plan.loads.clone();
    let load = |at: usize| Load {
        name: format!("Workshop machine {at}"),
        quantity: (at % 7 + 1) as f64,
        ..kinds[at % kinds.len()].clone()
    };
    plan.loads = (0..40).map(load).collect();
    plan
}

/// What a camera would read: each module as a square of some pixels, with the empty margin.
fn read_back(text: &str) -> Option<String> {
    let code = code_of(text)?;
    let (pixels, quiet) = (4, 4);
    let side = (code.size() as usize + 2 * quiet) * pixels;
    let dark = |x: usize, y: usize| {
        let at = |pixel: usize| (pixel / pixels) as i32 - quiet as i32;
        code.get_module(at(x), at(y))
    };
    let mut image =
        PreparedImage::prepare_from_greyscale(side, side, |x, y| if dark(x, y) { 0 } else { 255 });
    let grids = image.detect_grids();
    Some(grids.first()?.decode().ok()?.1)
}

#[test]
fn every_example_and_forty_loads_are_read_back() {
    let examples = EXAMPLES.map(|(_, text)| Document::from_json(text).unwrap());
    for plan in examples.into_iter().chain([forty()]) {
        let link = link(&plan);
        let read = read_back(&link);
        assert_eq!(read.as_deref(), Some(link.as_str()), "{}: {}", plan.name, link.len());
    }
}

#[test]
fn the_longest_link_that_has_a_code_is_read_back() {
    let longest = (1000..3000).rev().map(|length| "Az9-_".repeat(length)[..length].to_owned());
    let longest = longest.into_iter().find(|text| code_of(text).is_some()).unwrap();
    assert_eq!(longest.len(), 1952);
    assert_eq!(read_back(&longest), Some(longest));
}
