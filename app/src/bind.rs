//! Ties controls to places in the plan.

use leptos::prelude::*;
use sunlarder_engine::document::{Document, Load};

use crate::store::Store;

/// A part of the plan as a signal that changes only when that part does.
pub(crate) fn part<T>(
    store: Store,
    get: impl Fn(&Document) -> T + Send + Sync + 'static,
) -> Signal<T>
where
    T: PartialEq + Clone + Send + Sync + 'static,
{
    Memo::new(move |_| store.plan.with(&get)).into()
}

/// What changes a part of the plan; `kind` joins quick edits into one step of undo.
pub(crate) fn edit<T: 'static>(
    store: Store,
    kind: &'static str,
    set: impl Fn(&mut Document, T) + Send + Sync + 'static,
) -> Callback<T> {
    Callback::new(move |value| store.edit(kind, |plan| set(plan, value)))
}

/// A figure that must be there, as the optional one that its box deals in.
pub(crate) fn figure(
    store: Store,
    kind: &'static str,
    get: impl Fn(&Document) -> f64 + Send + Sync + 'static,
    set: impl Fn(&mut Document, f64) + Send + Sync + 'static,
) -> (Signal<Option<f64>>, Callback<Option<f64>>) {
    let value = part(store, move |plan| Some(get(plan)));
    let set = edit(store, kind, move |plan, value: Option<f64>| {
        if let Some(value) = value {
            set(plan, value);
        }
    });
    (value, set)
}

/// A load's part as a signal; the default's part while the load is gone.
pub(crate) fn load_part<T>(
    store: Store,
    place: usize,
    get: impl Fn(&Load) -> T + Send + Sync + 'static,
) -> Signal<T>
where
    T: PartialEq + Clone + Send + Sync + 'static,
{
    part(store, move |plan| plan.loads.get(place).map_or_else(|| get(&Load::default()), &get))
}

/// What changes a load.
pub(crate) fn load_edit<T: 'static>(
    store: Store,
    place: usize,
    kind: &'static str,
    set: impl Fn(&mut Load, T) + Send + Sync + 'static,
) -> Callback<T> {
    edit(store, kind, move |plan, value| {
        if let Some(load) = plan.loads.get_mut(place) {
            set(load, value);
        }
    })
}

/// A load's figure.
pub(crate) fn load_figure(
    store: Store,
    place: usize,
    kind: &'static str,
    get: impl Fn(&Load) -> f64 + Send + Sync + 'static,
    set: impl Fn(&mut Load, f64) + Send + Sync + 'static,
) -> (Signal<Option<f64>>, Callback<Option<f64>>) {
    let value = load_part(store, place, move |load| Some(get(load)));
    let set = load_edit(store, place, kind, move |load, value: Option<f64>| {
        if let Some(value) = value {
            set(load, value);
        }
    });
    (value, set)
}
