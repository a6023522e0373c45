//! What is filled in: figures of the plan (`figure`), the box that they are typed into (`number`), the other controls (`control`), and
//! what is folded away (`fold`).
//!
//! They are plain functions over function pointers and give an erased view, so that each is compiled once however often it is
//! used.

mod control;
mod figure;
mod fold;
mod number;

use core::sync::atomic::{AtomicU32, Ordering};

pub(crate) use control::{
    button, button_saying, button_unless, choice, choice_of, month_toggles, select, text_box,
    toggle, toggle_saying, toggles,
};
pub(crate) use figure::{Figure, fields};
pub(crate) use fold::{more, more_while};
pub(crate) use number::NumberBox;

/// A new id for an element that something refers to.
pub(crate) fn fresh_id(what: &str) -> String {
    static NEXT: AtomicU32 = AtomicU32::new(0);
    format!("{what}-{}", NEXT.fetch_add(1, Ordering::Relaxed))
}
