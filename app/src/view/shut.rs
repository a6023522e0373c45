//! The insides of what is shut when the page stands; see `drawers.rs`.

use super::load_editor::load_editor;
use super::{bank, dialogs, habits, loads, place, sources};
use crate::drawers::Drawers;

/// All of them.
pub(crate) const DRAWERS: Drawers = Drawers {
    place: place::inside,
    bank: bank::inside,
    sources: sources::inside,
    load: load_editor,
    search: loads::search,
    plans: dialogs::plans,
    share: dialogs::share_plan,
    habits: habits::habits,
};
