//! Values that the page follows. They are leptos' signals in all but one thing: leptos compiles its machinery once for each type of
//! value, and we have some sixty. Here the graph knows only *that* something has changed; the value lies beside it behind `Any`, so
//! that all the machinery there is for a type is a look and a comparison.

use core::any::Any;
use core::cell::{OnceCell, RefCell};
use core::marker::PhantomData;
use std::rc::Rc;

use reactive_graph::computed::ArcMemo;
use reactive_graph::owner::LocalStorage;
use reactive_graph::signal::ArcTrigger;
use reactive_graph::traits::{Get as _, GetUntracked as _, GetValue as _, Notify as _, Track as _};

pub(crate) use leptos_dom::helpers::{document, request_animation_frame, set_timeout, window};
pub(crate) use reactive_graph::graph::untrack;
pub(crate) use reactive_graph::owner::on_cleanup;

/// Where a value lies, for as long as what made it lives.
type Place = reactive_graph::owner::StoredValue<Rc<Held>, LocalStorage>;

/// What tells that a value has changed.
enum Source {
    /// It was given another.
    Given(ArcTrigger),
    /// What it is worked out from has changed; the number counts how often that made it another.
    Computed(ArcMemo<u32>),
}

/// A value, a `RefCell<Option<T>>`, and what tells of it; nothing does if it never changes.
struct Held {
    source: OnceCell<Source>,
    value: Box<dyn Any>,
}

impl Held {
    /// Brings the value up to date; whoever is being made now is made anew when it changes, if `followed`.
    fn heed(&self, followed: bool) {
        match self.source.get() {
            None => {}
            Some(Source::Given(trigger)) if followed => trigger.track(),
            Some(Source::Given(_)) => {}
            Some(Source::Computed(turn)) if followed => {
                turn.get();
            }
            Some(Source::Computed(turn)) => {
                turn.get_untracked();
            }
        }
    }

    /// Tells of a change.
    fn tell(&self) {
        if let Some(Source::Given(trigger)) = self.source.get() {
            trigger.notify();
        }
    }

    /// The value; none if it is of another type, which no handle is.
    fn cell<T: 'static>(&self) -> Option<&RefCell<Option<T>>> {
        self.value.downcast_ref()
    }
}

fn place(value: Box<dyn Any>, source: Option<Source>) -> Place {
    Place::new_local(Rc::new(Held {
        source: source.map(OnceCell::from).unwrap_or_default(),
        value,
    }))
}

/// What lies there, brought up to date; none if what made it is gone.
fn found(place: Place, followed: bool) -> Option<Rc<Held>> {
    let held = place.try_get_value()?;
    held.heed(followed);
    Some(held)
}

/// A handle outlives what it leads to: a defect of ours, which no input leads to.
#[expect(clippy::panic, reason = "there is no value to go on with")]
fn gone() -> ! {
    panic!("a signal was read after its end")
}

fn look<T: 'static, R>(place: Place, followed: bool, read: impl FnOnce(&T) -> R) -> R {
    let held = found(place, followed);
    let value = held.as_ref().and_then(|held| held.cell()).map(RefCell::borrow);
    match value.as_ref().and_then(|value| value.as_ref()) {
        Some(value) => read(value),
        None => gone(),
    }
}

fn copied<T: Clone + 'static>(place: Place, followed: bool) -> T {
    look(place, followed, T::clone)
}

/// A handle to a value that is read only.
pub(crate) struct Signal<T>(Place, PhantomData<fn() -> T>);

/// A handle to a value that is read and given.
pub(crate) struct RwSignal<T>(Place, PhantomData<fn() -> T>);

/// A handle to a value that nobody follows.
pub(crate) struct StoredValue<T>(Place, PhantomData<fn() -> T>);

/// A handle to something that can be done with a value.
pub(crate) struct Callback<T, R = ()>(Place, PhantomData<fn(T) -> R>);

macro_rules! copied_freely {
    ($($handle:ident)*) => {$(
        impl<T> Clone for $handle<T> {
            fn clone(&self) -> Self {
                *self
            }
        }

        impl<T> Copy for $handle<T> {}
    )*};
}

copied_freely!(Signal RwSignal StoredValue);

impl<T, R> Clone for Callback<T, R> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T, R> Copy for Callback<T, R> {}

macro_rules! read {
    ($($handle:ident)*) => {$(
        impl<T: 'static> $handle<T> {
            /// A copy of it; whoever is being made now is made anew when it changes.
            pub(crate) fn get(self) -> T
            where
                T: Clone,
            {
                copied(self.0, true)
            }

            /// A copy of it as it is now.
            pub(crate) fn get_untracked(self) -> T
            where
                T: Clone,
            {
                copied(self.0, false)
            }

            /// A look at it; whoever is being made now is made anew when it changes.
            pub(crate) fn with<R>(self, read: impl FnOnce(&T) -> R) -> R {
                look(self.0, true, read)
            }

            /// A look at it as it is now.
            pub(crate) fn with_untracked<R>(self, read: impl FnOnce(&T) -> R) -> R {
                look(self.0, false, read)
            }

            /// Whoever is being made now is made anew when it changes.
            pub(crate) fn track(self) {
                found(self.0, true);
            }
        }
    )*};
}

read!(Signal RwSignal);

impl<T: 'static> Signal<T> {
    /// One that never changes.
    pub(crate) fn stored(value: T) -> Self {
        Self(place(Box::new(RefCell::new(Some(value))), None), PhantomData)
    }

    /// One that is worked out anew when what it reads has changed.
    pub(crate) fn derive(get: impl Fn() -> T + Send + Sync + 'static) -> Self
    where
        T: PartialEq,
    {
        memo(Box::new(get))
    }
}

/// The same; compiled once a type.
pub(crate) fn memo<T>(get: Box<dyn Fn() -> T + Send + Sync>) -> Signal<T>
where
    T: PartialEq + 'static,
{
    let place = place(Box::new(RefCell::new(None::<T>)), None);
    compute(place, Box::new(move || renew(place, get())));
    Signal(place, PhantomData)
}

/// Puts a value in the place of another; whether it is another.
fn renew<T: PartialEq + 'static>(place: Place, new: T) -> bool {
    let Some(held) = place.try_get_value() else { return false };
    let Some(cell) = held.cell::<T>() else { return false };
    if cell.borrow().as_ref() == Some(&new) {
        return false;
    }
    // What was there goes when nobody looks at it any more.
    drop(cell.replace(Some(new)));
    true
}

/// Has what lies there worked out anew when what that reads has changed.
fn compute(place: Place, renew: Box<dyn Fn() -> bool + Send + Sync>) {
    let turn = ArcMemo::new(move |old: Option<&u32>| {
        old.copied().unwrap_or_default().wrapping_add(u32::from(renew()))
    });
    if let Some(held) = place.try_get_value() {
        let _ = held.source.set(Source::Computed(turn));
    }
}

impl<T: 'static> RwSignal<T> {
    /// A new one.
    pub(crate) fn new(value: T) -> Self {
        let source = Source::Given(ArcTrigger::new());
        Self(place(Box::new(RefCell::new(Some(value))), Some(source)), PhantomData)
    }

    /// Gives it another value; nothing if it is gone.
    pub(crate) fn set(self, value: T) {
        give(self.0, value);
    }

    /// A look at it as it is now; none if it is gone.
    pub(crate) fn try_with_untracked<R>(self, read: impl FnOnce(&T) -> R) -> Option<R> {
        found(self.0, false)?.cell()?.borrow().as_ref().map(read)
    }

    /// Changes the value; nothing if it is gone.
    pub(crate) fn update(self, change: impl FnOnce(&mut T)) {
        self.try_update(change);
    }

    /// Changes the value and says what came of it; nothing if it is gone.
    pub(crate) fn try_update<R>(self, change: impl FnOnce(&mut T) -> R) -> Option<R> {
        changed(self.0, change)
    }
}

fn give<T: 'static>(place: Place, value: T) {
    if let Some(held) = place.try_get_value()
        && let Some(cell) = held.cell()
    {
        drop(cell.replace(Some(value)));
        held.tell();
    }
}

fn changed<T: 'static, R>(place: Place, change: impl FnOnce(&mut T) -> R) -> Option<R> {
    let held = place.try_get_value()?;
    let made = held.cell::<T>()?.borrow_mut().as_mut().map(change);
    held.tell();
    made
}

impl<T: 'static> StoredValue<T> {
    /// A new one.
    pub(crate) fn new(value: T) -> Self {
        Self(place(Box::new(RefCell::new(Some(value))), None), PhantomData)
    }

    /// A copy of it.
    pub(crate) fn get_value(self) -> T
    where
        T: Clone,
    {
        copied(self.0, false)
    }

    /// A copy of it; none if it is gone.
    pub(crate) fn try_get_value(self) -> Option<T>
    where
        T: Clone,
    {
        found(self.0, false)?.cell::<T>()?.borrow().clone()
    }

    /// Another value; nothing if it is gone.
    pub(crate) fn set_value(self, value: T) {
        give(self.0, value);
    }

    /// A look at it.
    pub(crate) fn with_value<R>(self, read: impl FnOnce(&T) -> R) -> R {
        look(self.0, false, read)
    }

    /// Changes it; nothing if it is gone.
    pub(crate) fn update_value(self, change: impl FnOnce(&mut T)) {
        changed(self.0, change);
    }

    /// Changes it and says what came of it; nothing if it is gone.
    pub(crate) fn try_update_value<R>(self, change: impl FnOnce(&mut T) -> R) -> Option<R> {
        changed(self.0, change)
    }
}

impl<T: 'static, R: 'static> Callback<T, R> {
    /// A new one.
    pub(crate) fn new(act: impl Fn(T) -> R + 'static) -> Self {
        let act: Rc<dyn Fn(T) -> R> = Rc::new(act);
        Self(place(Box::new(RefCell::new(Some(act))), None), PhantomData)
    }

    /// Does it.
    pub(crate) fn run(self, value: T) -> R {
        copied::<Rc<dyn Fn(T) -> R>>(self.0, false)(value)
    }

    /// Does it; nothing if it is gone.
    pub(crate) fn try_run(self, value: T) -> Option<R> {
        let act = found(self.0, false)?.cell::<Rc<dyn Fn(T) -> R>>()?.borrow().clone()?;
        Some(act(value))
    }
}

impl<T> From<RwSignal<T>> for Signal<T> {
    fn from(RwSignal(place, _): RwSignal<T>) -> Self {
        Self(place, PhantomData)
    }
}

impl From<String> for Signal<String> {
    fn from(text: String) -> Self {
        Self::stored(text)
    }
}

impl From<&str> for Signal<String> {
    fn from(text: &str) -> Self {
        Self::stored(text.to_owned())
    }
}
