//! Ties controls to places in the plan.
//!
//! Closures are boxed here, so that the machinery of signals is compiled once a type and not once a control: on this page that
//! is a third of the program's size.

use leptos::prelude::*;
use sunlarder_engine::document::{Document, Load};

use crate::store::{Answers, Solved, Store};

/// A figure for a number box: its value and what changes it.
pub(crate) type Figure = (Signal<Option<f64>>, Callback<Option<f64>>);

/// A part of the plan as a signal that changes only when that part does.
pub(crate) fn part<T>(
    store: Store,
    get: impl Fn(&Document) -> T + Send + Sync + 'static,
) -> Signal<T>
where
    T: PartialEq + Clone + Send + Sync + 'static,
{
    boxed_part(store, Box::new(get))
}

fn boxed_part<T>(store: Store, get: Box<dyn Fn(&Document) -> T + Send + Sync>) -> Signal<T>
where
    T: PartialEq + Clone + Send + Sync + 'static,
{
    memo(Box::new(move || store.plan.with(&get)))
}

/// A signal that is computed anew when what it reads has changed.
pub(crate) fn memo<T>(get: Box<dyn Fn() -> T + Send + Sync>) -> Signal<T>
where
    T: PartialEq + Clone + Send + Sync + 'static,
{
    Memo::new(move |_| get()).into()
}

/// What is said of the answers; the type's blank while there are none.
pub(crate) fn said<T>(store: Store, say: impl Fn(&Solved) -> T + Send + Sync + 'static) -> Signal<T>
where
    T: PartialEq + Clone + Default + Send + Sync + 'static,
{
    let say: Box<dyn Fn(&Solved) -> T + Send + Sync> = Box::new(say);
    let of =
        move |answers: &Answers| answers.solved().map(|solved| say(solved)).unwrap_or_default();
    memo(Box::new(move || store.answers.with(&of)))
}

/// What changes a part of the plan; `kind` joins quick edits into one step of undo.
pub(crate) fn edit<T: 'static>(
    store: Store,
    kind: &'static str,
    set: impl Fn(&mut Document, T) + Send + Sync + 'static,
) -> Callback<T> {
    boxed_edit(store, kind, Box::new(set))
}

fn boxed_edit<T: 'static>(
    store: Store,
    kind: &'static str,
    set: Box<dyn Fn(&mut Document, T) + Send + Sync>,
) -> Callback<T> {
    Callback::new(move |value| {
        let mut value = Some(value);
        store.edit_boxed(kind, &mut |plan| {
            if let Some(value) = value.take() {
                set(plan, value);
            }
        });
    })
}

/// A figure that must be there, as the optional one that its box deals in.
pub(crate) fn figure(
    store: Store,
    kind: &'static str,
    get: impl Fn(&Document) -> f64 + Send + Sync + 'static,
    set: impl Fn(&mut Document, f64) + Send + Sync + 'static,
) -> Figure {
    let value = part(store, move |plan| Some(get(plan)));
    let set = edit(store, kind, move |plan, value: Option<f64>| {
        if let Some(value) = value {
            set(plan, value);
        }
    });
    (value, set)
}

/// A load's part as a signal; the default's part while the load is gone.
pub(crate) fn load_part<T>(store: Store, place: usize, get: fn(&Load) -> T) -> Signal<T>
where
    T: PartialEq + Clone + Send + Sync + 'static,
{
    part(store, move |plan| plan.loads.get(place).map_or_else(|| get(&Load::default()), get))
}

/// What changes a load.
pub(crate) fn load_edit<T: 'static>(
    store: Store,
    place: usize,
    kind: &'static str,
    set: fn(&mut Load, T),
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
    get: fn(&Load) -> f64,
    set: fn(&mut Load, f64),
) -> Figure {
    figure(
        store,
        kind,
        move |plan| plan.loads.get(place).map_or_else(|| get(&Load::default()), get),
        move |plan, value| {
            if let Some(load) = plan.loads.get_mut(place) {
                set(load, value);
            }
        },
    )
}
