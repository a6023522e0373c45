//! The insides of what is shut when the page stands; see `drawers.rs`.

use super::load_editor::load_editor;
use super::{
    bank, catalogue, compare, dialogs, fitting, guess, habits, logbook, place, share, sizing,
    sources,
};
use crate::drawers::Drawers;

/// All of them.
pub(crate) const DRAWERS: Drawers = Drawers {
    place: place::inside,
    bank: bank::inside,
    sources: sources::inside,
    sizing: sizing::inside,
    fitting: fitting::inside,
    logbook: logbook::inside,
    load: load_editor,
    search: catalogue::search,
    plans: dialogs::plans,
    share: share::share_plan,
    code: share::large_code,
    compare: compare::choose,
    beside: compare::beside,
    guess: guess::guess,
    habits: habits::habits,
};
