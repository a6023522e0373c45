//! The way from the page of the plan to that of the installed system, and back.

use crate::signal::*;
use sunlarder_engine::words::Label as L;

use super::habits::with_plan;
use crate::dom::node::{View, node};
use crate::speech::{IS_INSTALLED, way_across};
use crate::store::{Store, WORDS};

/// The way to the page of the installed system, or back to that of the plan.
pub(super) fn across(store: Store) -> View {
    let way = memo(Box::new(move || {
        store.plan.track();
        with_plan(store, way_across())
    }));
    let (label, hint) = if IS_INSTALLED {
        (L::BackToPlan, L::BackToPlanHint)
    } else {
        (L::ToInstalled, L::ToInstalledHint)
    };
    node("nav")
        .attr("class", "across")
        .attr("aria-label", WORDS.label(label))
        .child(node("a").attr("class", "button").attr("href", way).child(WORDS.label(label)).view())
        .child(node("p").attr("class", "hint").child(WORDS.label(hint)).view())
        .view()
}
