//! A figure of the plan as a row of a table: where it stands, what changes it, and how it is called.
//!
//! Its parts are function pointers, so that a form is a table, not code.

use crate::signal::*;
use sunlarder_engine::document::{Document, Field};
use sunlarder_engine::words::Label;
use sunlarder_worker::leaf::Topic;

use super::super::help::asked;
use super::number::NumberBox;
use crate::dom::node::{View, node};
use crate::store::{Opened, Store, WORDS};

/// A figure of the plan. Functions take the place of the load or array that it belongs to; others ignore it.
#[derive(Clone, Copy)]
pub(crate) struct Figure {
    field: Field,
    get: fn(&Document, usize) -> Option<f64>,
    set: fn(&mut Document, usize, f64),
    /// What an empty box does; without it the box must not be empty.
    clear: Option<fn(&mut Document, usize)>,
    typical: Option<fn(&Opened, usize) -> Option<f64>>,
    /// What it is until somebody says otherwise, shown as typical.
    usual: Option<f64>,
    label: Option<Label>,
    hint: Option<Label>,
    slider: Option<(f64, f64, f64)>,
}

impl Figure {
    /// A figure that must be there.
    pub(crate) const fn new(
        field: Field,
        get: fn(&Document, usize) -> Option<f64>,
        set: fn(&mut Document, usize, f64),
    ) -> Self {
        Self {
            field,
            get,
            set,
            clear: None,
            typical: None,
            usual: None,
            label: None,
            hint: None,
            slider: None,
        }
    }

    /// It may be empty for what is typical.
    pub(crate) const fn or_typical(
        self,
        clear: fn(&mut Document, usize),
        typical: fn(&Opened, usize) -> Option<f64>,
    ) -> Self {
        Self { clear: Some(clear), typical: Some(typical), ..self }
    }

    /// It begins as a typical value, which an empty box stands for.
    pub(crate) const fn usual(self, usual: f64) -> Self {
        Self { usual: Some(usual), ..self }
    }

    /// It may be empty, which changes nothing.
    pub(crate) const fn blank(self) -> Self {
        self.or_typical(|_, _| {}, |_, _| None)
    }

    /// Called otherwise than its field.
    pub(crate) const fn label(self, label: Label) -> Self {
        Self { label: Some(label), ..self }
    }

    /// Explained by a sentence.
    pub(crate) const fn hint(self, hint: Label) -> Self {
        Self { hint: Some(hint), ..self }
    }

    /// With a slider from, to and by.
    pub(crate) const fn slider(self, from: f64, to: f64, by: f64) -> Self {
        Self { slider: Some((from, to, by)), ..self }
    }

    /// Its control.
    pub(crate) fn view(&'static self, store: Store, place: usize) -> View {
        let label = self.label.map_or_else(|| WORDS.field(self.field), |own| WORDS.label(own));
        let help = asked(store, label, Topic::Field(self.field), "div");
        self.boxed(store, place, label, Some(help))
    }

    /// Its control under another name.
    pub(crate) fn named(&'static self, store: Store, place: usize, label: &'static str) -> View {
        self.boxed(store, place, label, None)
    }

    fn boxed(
        &'static self,
        store: Store,
        place: usize,
        label: &'static str,
        help: Option<[View; 2]>,
    ) -> View {
        let get = self.get;
        let value = memo(Box::new(move || {
            let stated = store.plan.with(|plan| get(plan, place));
            stated.filter(|value| Some(*value) != self.usual)
        }));
        let set = move |new: Option<f64>| {
            store.edit(label, &mut |plan| match (new, self.clear) {
                (Some(new), _) => (self.set)(plan, place, new),
                (None, Some(clear)) => clear(plan, place),
                (None, None) => {
                    if let Some(usual) = self.usual {
                        (self.set)(plan, place, usual);
                    }
                }
            });
        };
        let typical = Signal::derive(move || {
            if self.usual.is_some() {
                return self.usual;
            }
            let typical = self.typical?;
            store.answers.with(|answers| typical(answers.solved()?, place))
        });
        let hint = self.hint.map_or("", |hint| WORDS.label(hint));
        NumberBox {
            label: label.to_owned(),
            hint: hint.to_owned(),
            field: self.field,
            slider: self.slider,
            optional: self.clear.is_some() || self.usual.is_some(),
        }
        .view(help, value, Callback::new(set), typical)
    }
}

/// Figures side by side.
pub(crate) fn fields(store: Store, place: usize, figures: &'static [Figure]) -> View {
    let boxes: Vec<View> = figures.iter().map(|figure| figure.view(store, place)).collect();
    node("div").attr("class", "fields").child(boxes).view()
}
