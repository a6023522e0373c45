//! Files and links: what goes in comes out, and nothing that comes in can do harm.

use proptest::collection::vec;
use proptest::prelude::*;
use sunlarder_engine::document::{Document, Problem};
use sunlarder_engine::share;
use sunlarder_tests::seal::{sealed, unsealed};
use sunlarder_tests::soundness::sound;

use crate::plans::{Kind, any_plan, plan};
use crate::settings;

/// A change of one byte, or a stretch cut out, doubled or filled with something else.
#[derive(Clone, Debug)]
struct Change {
    at: prop::sample::Index,
    length: usize,
    with: Vec<u8>,
}

impl Change {
    fn apply(&self, bytes: &mut Vec<u8>) {
        let from = self.at.index(bytes.len() + 1);
        let to = (from + self.length).min(bytes.len());
        bytes.splice(from..to, self.with.iter().copied());
    }
}

fn change() -> impl Strategy<Value = Change> {
    (any::<prop::sample::Index>(), 0..4_usize, vec(any::<u8>(), 0..4))
        .prop_map(|(at, length, with)| Change { at, length, with })
}

/// Whatever opens is a sound plan: it survives file and code.
fn assert_sound(plan: &Document) -> Result<(), TestCaseError> {
    sound(plan).map_err(TestCaseError::fail)
}

proptest! {
    #![proptest_config(settings(384))]

    #[test]
    fn every_plan_survives_file_and_code(plan in any_plan()) {
        let plan = plan.checked().unwrap();
        assert_sound(&plan)?;
        let code = share::encode(&plan).unwrap();
        prop_assert_eq!(share::encode(&share::decode(&code).unwrap()), Ok(code));
    }

    #[test]
    fn no_letters_harm(text in "\\PC{0,200}", letters in "[A-Za-z0-9_-]{0,300}") {
        // Three in 16 million of these would pass the checksum.
        prop_assert!(share::decode(&text).is_err());
        let _ = share::decode(&letters);
    }

    #[test]
    fn no_sealed_bytes_harm(body in vec(any::<u8>(), 0..200), known in any::<bool>()) {
        let mut bytes = body;
        if known {
            bytes.insert(0, 1);
        }
        if let Ok(plan) = share::decode(&sealed(bytes)) {
            assert_sound(&plan)?;
        }
    }

    #[test]
    fn no_change_of_a_sealed_code_harms(plan in any_plan(), changes in vec(change(), 1..4)) {
        let mut bytes = unsealed(&share::encode(&plan.checked().unwrap()).unwrap());
        for change in &changes {
            change.apply(&mut bytes);
        }
        if let Ok(plan) = share::decode(&sealed(bytes)) {
            assert_sound(&plan)?;
        }
    }

    #[test]
    fn no_text_harms(text in "\\PC{0,200}") {
        prop_assert!(Document::from_json(&text).is_err());
    }

    #[test]
    fn no_change_of_a_file_harms(plan in plan(Kind::Everyday), changes in vec(change(), 1..4)) {
        let mut bytes = plan.checked().unwrap().to_json().into_bytes();
        for change in &changes {
            change.apply(&mut bytes);
        }
        if let Ok(plan) = Document::from_json(&String::from_utf8_lossy(&bytes)) {
            assert_sound(&plan)?;
        }
    }

    #[test]
    fn a_newer_version_is_named(plan in plan(Kind::Everyday), version in 2..=u32::MAX) {
        let file = plan.checked().unwrap().to_json();
        let newer = file.replacen("\"sunlarder\": 1", &format!("\"sunlarder\": {version}"), 1);
        prop_assert_eq!(Document::from_json(&newer), Err(Problem::NewerVersion { version }));
    }
}
