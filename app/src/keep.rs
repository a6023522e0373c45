//! Plans kept on this device: one entry a plan, so that a broken one harms no other.
//!
//! Nothing here can stop the page: a storage that is full, refused or filled with something else is told and otherwise
//! ignored, and what cannot be read is left as it is.

use gloo_storage::{LocalStorage, Storage};
use sunlarder_engine::document::{Document, Problem};

use crate::plan_file::plan_of;

/// Each plan's key starts with this.
const PLAN: &str = "sunlarder.plan.";
/// The key of the plan that another is held against starts with this.
const BASELINE: &str = "sunlarder.baseline.";
/// The key of what family a plan is of starts with this.
const FAMILY: &str = "sunlarder.family.";
/// The key of the plan last open.
const CURRENT: &str = "sunlarder.current";

/// The place of a plan in the storage.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct PlanId(String);

impl PlanId {
    /// A new place, named by the moment and a random part.
    pub(crate) fn fresh() -> Self {
        let moment = js_sys::Date::now() as u64;
        let chance = (js_sys::Math::random() * 1e6) as u32;
        Self(format!("{moment:013}-{chance:06}"))
    }

    fn key(&self) -> String {
        self.under(PLAN)
    }

    fn under(&self, what: &str) -> String {
        format!("{what}{}", self.0)
    }

    #[cfg(test)]
    pub(crate) fn of(id: &str) -> Self {
        Self(id.to_owned())
    }
}

/// A stored plan, or why it cannot be read.
pub(crate) struct Kept {
    /// Its place.
    pub(crate) id: PlanId,
    /// The plan.
    pub(crate) plan: Result<Document, Problem>,
    /// Its bare text.
    pub(crate) text: String,
}

/// The storage; none where the browser refuses it. Only then may `LocalStorage` be asked, which insists on having one.
pub(crate) fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok().flatten()?;
    Some(LocalStorage::raw())
}

/// All plans, the newest first.
pub(crate) fn plans() -> Vec<Kept> {
    let Some(storage) = storage() else { return Vec::new() };
    let keys = (0..storage.length().unwrap_or(0)).filter_map(|at| storage.key(at).ok().flatten());
    let all = keys.filter_map(|key| {
        let id = PlanId(key.strip_prefix(PLAN)?.to_owned());
        let text = storage.get_item(&key).ok().flatten()?;
        Some(Kept { id, plan: plan_of(&text), text })
    });
    let mut kept: Vec<Kept> = Vec::new();
    for own in all {
        kept.insert(kept.partition_point(|other| other.id > own.id), own);
    }
    kept
}

/// The plan last open.
pub(crate) fn current() -> Option<Kept> {
    let storage = storage()?;
    // In quotes, as a text of JSON.
    let id = storage.get_item(CURRENT).ok().flatten()?;
    let id = PlanId(id.trim_matches('"').to_owned());
    let text = storage.get_item(&id.key()).ok().flatten()?;
    Some(Kept { plan: plan_of(&text), id, text })
}

/// Keeps a plan and notes that it is the one open. `Err` if the storage is full or refused.
pub(crate) fn keep(id: &PlanId, plan: &Document) -> Result<(), ()> {
    // As the text of a file, so that the page carries one way of writing plans.
    let storage = storage().ok_or(())?;
    storage.set_item(&id.key(), &plan.to_json()).map_err(drop)?;
    storage.set_item(CURRENT, &format!("\"{}\"", id.0)).map_err(drop)
}

/// The plan that another is held against.
pub(crate) fn baseline(id: &PlanId) -> Option<Document> {
    let text = storage()?.get_item(&id.under(BASELINE)).ok().flatten()?;
    plan_of(&text).ok()
}

/// Keeps the plan that another is held against, or that there is none. `Err` if the storage is full or refused.
pub(crate) fn keep_baseline(id: &PlanId, plan: Option<&Document>) -> Result<(), ()> {
    let (storage, key) = (storage().ok_or(())?, id.under(BASELINE));
    match plan {
        Some(plan) => storage.set_item(&key, &plan.to_json()),
        None => storage.remove_item(&key),
    }
    .map_err(drop)
}

/// The family of a plan: the place of the plan that its variants go back to.
pub(crate) fn family(id: &PlanId) -> PlanId {
    let kept = storage().and_then(|own| own.get_item(&id.under(FAMILY)).ok().flatten());
    kept.map_or_else(|| id.clone(), PlanId)
}

/// Keeps that a plan is a variant of another; tells nobody if that is refused, for the plan itself is then, too.
pub(crate) fn keep_family(id: &PlanId, of: &PlanId) {
    if let Some(storage) = storage() {
        let _ = storage.set_item(&id.under(FAMILY), &family(of).0);
    }
}

/// Forgets a plan and what is kept beside it.
pub(crate) fn forget(id: &PlanId) {
    let Some(storage) = storage() else { return };
    for what in [PLAN, BASELINE, FAMILY] {
        let _ = storage.remove_item(&id.under(what));
    }
}

/// Puts the text of a plan back that was forgotten, readable or not. `Err` if the storage is full or refused.
pub(crate) fn put_back(id: &PlanId, text: &str) -> Result<(), ()> {
    storage().ok_or(())?.set_item(&id.key(), text).map_err(drop)
}
