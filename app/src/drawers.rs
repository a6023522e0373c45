//! What is shut when the page stands: a chunk of its own, fetched once the page answers. Nothing outside of this file may name what
//! is listed here, or it belongs to the page again; `view/` opens it by [`drawer`].

use crate::signal::*;
use sunlarder_engine::words::Label as L;
use wasm_bindgen_futures::spawn_local;
use wasm_split_helpers::{SplitLoaderError, wasm_split};

use crate::dom::node::{Child as _, View, group, node, nothing};
use crate::dom::part::dynamic;
use crate::store::{Store, WORDS};
use crate::view::{Loads, button, shut};

/// A load's editor, or the search for one.
type Of<T> = fn(Store, T, Loads) -> View;

/// The insides of what is shut.
#[derive(Clone, Copy)]
pub(crate) struct Drawers {
    /// Where and when.
    pub(crate) place: fn(Store) -> View,
    /// The bank.
    pub(crate) bank: fn(Store) -> View,
    /// What comes in.
    pub(crate) sources: fn(Store) -> View,
    /// What would help.
    pub(crate) sizing: fn(Store) -> View,
    /// How it is wired.
    pub(crate) fitting: fn(Store) -> View,
    /// How the gauge is set up.
    pub(crate) gauge: fn(Store) -> View,
    /// The logbook of the gauge.
    pub(crate) logbook: fn(Store) -> View,
    /// An open load.
    pub(crate) load: Of<usize>,
    /// The search for a load.
    pub(crate) search: Of<RwSignal<bool>>,
    /// The plans on the device.
    pub(crate) plans: fn(Store) -> View,
    /// Link and file.
    pub(crate) share: fn(Store) -> View,
    /// The code of the link, large.
    pub(crate) code: fn(Store) -> View,
    /// What to compare with.
    pub(crate) compare: fn(Store) -> View,
    /// Two plans beside each other.
    pub(crate) beside: fn(Store) -> View,
    /// A question to guess first.
    pub(crate) guess: fn(Store) -> View,
    /// Units, clock and language.
    pub(crate) habits: fn(Store) -> View,
}

/// How far they are.
#[derive(Clone, Copy)]
pub(crate) enum Chest {
    /// On their way.
    Coming,
    /// Here.
    Here(Drawers),
    /// They could not be fetched.
    Missed,
}

/// The chunk did not come.
struct Missed;

impl From<SplitLoaderError> for Missed {
    fn from(_: SplitLoaderError) -> Self {
        Self
    }
}

#[wasm_split(drawers, fallible)]
fn all() -> Result<Drawers, Missed> {
    Ok(shut::DRAWERS)
}

/// Fetches them.
pub(crate) fn fetch(store: Store) {
    store.chest.set(Chest::Coming);
    spawn_local(async move {
        store.chest.set(all().await.map_or(Chest::Missed, Chest::Here));
    });
}

/// The inside of a drawer, as soon as it is here.
pub(crate) fn drawer(store: Store, open: impl Fn(Drawers) -> View + 'static) -> View {
    let inside = dynamic(move || match store.chest.get() {
        Chest::Coming => nothing(),
        Chest::Here(drawers) => untrack(|| open(drawers)),
        Chest::Missed => node("div")
            .child(
                node("p")
                    .attr("class", "hint")
                    .attr("role", "alert")
                    .child(WORDS.label(L::PartMissed))
                    .view(),
            )
            .child(button(L::TryAgain, "button", move || fetch(store)))
            .view(),
    });
    group(vec![inside.view()])
}
