//! What must hold for whatever was opened from outside.

use sunlarder_engine::document::Document;
use sunlarder_engine::share;

/// Whether an opened plan keeps within its limits and survives file and code.
///
/// # Errors
/// What it fails at.
pub fn sound(plan: &Document) -> Result<(), String> {
    let same = |what: &str, found| {
        if found == Ok(plan.clone()) { Ok(()) } else { Err(format!("{what}: {found:?}")) }
    };
    same("it is not within its limits", plan.clone().checked())?;
    same("its file opens as another", Document::from_json(&plan.to_json()))?;
    let code = share::encode(plan).map_err(|problem| format!("no code: {problem:?}"))?;
    same("its code opens as another", share::decode(&code))
}
