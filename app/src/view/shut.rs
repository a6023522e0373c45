//! The insides of what is shut when the page stands; see `drawers.rs`.

use super::load_editor::load_editor;
use super::{
    bank, catalogue, compare, dialogs, fitting, gauge, guess, habits, logbook, place, share,
    sizing, sources,
};
use crate::dom::node::{View, nothing};
use crate::drawers::Drawers;
use crate::store::Store;
use sunlarder_worker::{INSTALLED, PLANNER};

/// What stands where this build's page has nothing.
fn none(_: Store) -> View {
    nothing()
}

/// A drawer of the page about the plan.
const fn planned(inside: fn(Store) -> View) -> fn(Store) -> View {
    if PLANNER { inside } else { none }
}

/// A drawer of the page about the installed system.
const fn installed(inside: fn(Store) -> View) -> fn(Store) -> View {
    if INSTALLED { inside } else { none }
}

/// All of them.
pub(crate) const DRAWERS: Drawers = Drawers {
    place: planned(place::inside),
    bank: planned(bank::inside),
    sources: planned(sources::inside),
    sizing: planned(sizing::inside),
    fitting: installed(fitting::inside),
    gauge: installed(gauge::inside),
    logbook: installed(logbook::inside),
    load: if PLANNER { load_editor } else { |_, _, _| nothing() },
    search: if PLANNER { catalogue::search } else { |_, _, _| nothing() },
    plans: dialogs::plans,
    share: share::share_plan,
    code: share::large_code,
    compare: planned(compare::choose),
    beside: planned(compare::beside),
    guess: planned(guess::guess),
    habits: habits::habits,
};
