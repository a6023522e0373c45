//! Ties controls to places in the plan, and words to its answers.
//!
//! Everything goes through function pointers that take the place of the load or array in question (others ignore it), so that
//! the machinery of signals is compiled once a type and not once a control.

use crate::signal::*;
use reactive_graph::effect::Effect;
use sunlarder_engine::document::{Document, Load};

use crate::store::{Answers, Opened, Solved, Store};

/// A part of the plan as a signal that changes only when that part does.
pub(crate) fn part<T>(store: Store, place: usize, get: fn(&Document, usize) -> T) -> Signal<T>
where
    T: PartialEq + 'static,
{
    memo(Box::new(move || store.plan.with(|plan| get(plan, place))))
}

/// Something that is done when what it reads has changed; compiled once.
pub(crate) fn watch(mut act: Box<dyn FnMut()>) {
    Effect::new(move |_| act());
}

/// What changes a part of the plan; `kind` joins quick edits into one step of undo.
pub(crate) fn edit<T: 'static>(
    store: Store,
    kind: &'static str,
    place: usize,
    set: fn(&mut Document, usize, T),
) -> Callback<T> {
    Callback::new(move |value| {
        let mut value = Some(value);
        store.edit(kind, &mut |plan| {
            if let Some(value) = value.take() {
                set(plan, place, value);
            }
        });
    })
}

/// What is said of a plan from its start on; the type's blank while there is nothing to say.
pub(crate) fn said<T>(store: Store, say: fn(&Opened) -> T) -> Signal<T>
where
    T: PartialEq + Default + 'static,
{
    let of = move |answers: &Answers<_>| answers.solved().map(|own| say(own)).unwrap_or_default();
    memo(Box::new(move || store.answers.with(of)))
}

/// What is drawn of answers that follow the words by a frame or two.
pub(crate) fn drawn<T>(answers: RwSignal<Answers>, draw: fn(&Solved) -> T) -> Signal<T>
where
    T: PartialEq + Default + 'static,
{
    let of =
        move |answers: &Answers| answers.solved().map(|solved| draw(solved)).unwrap_or_default();
    memo(Box::new(move || answers.with(of)))
}

/// A signal of a text that never changes.
pub(crate) fn fixed(text: impl Into<String>) -> Signal<String> {
    Signal::stored(text.into())
}

/// Something of a load; nothing while the load is gone.
pub(crate) fn of_load<T>(plan: &Document, place: usize, get: impl Fn(&Load) -> T) -> Option<T> {
    plan.loads.get(place).map(get)
}

/// Changes a load, if it is there.
pub(crate) fn to_load(plan: &mut Document, place: usize, set: impl FnOnce(&mut Load)) {
    if let Some(load) = plan.loads.get_mut(place) {
        set(load);
    }
}

/// Any signal of a text as the one type that views take.
pub(crate) fn signal(text: impl Into<Signal<String>>) -> Signal<String> {
    text.into()
}
