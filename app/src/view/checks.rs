//! What was measured: a box for each check that the worker names, and what its reading means.

use crate::signal::*;
use sunlarder_engine::digits;
use sunlarder_engine::document::{Check, Checked, Document, Field};
use sunlarder_worker::leaf::Leaf;
use sunlarder_worker::sentences::PART;

use super::field::{NumberBox, toggle_saying};
use crate::bind::signal;
use crate::dom::node::{View, node};
use crate::dom::part::{dynamic, when};
use crate::store::Store;
use crate::worker::Said;

/// Texts of a check.
const TEXTS: usize = 5;

/// By what a plan knows a reading: which check, and of which load or array.
#[derive(Clone, Copy)]
struct Key(Checked, Option<u16>);

impl Key {
    fn of(text: &str) -> Option<Self> {
        let (what, of) = text.split_once(' ')?;
        let of = digits::number(of).map(|own| own as u16);
        Some(Self(*Checked::ALL.get(digits::number(what)? as usize)?, of))
    }

    fn is(self, own: &Check) -> bool {
        own.what == self.0 && own.of == self.1
    }

    fn found(self, plan: &Document) -> Option<&Check> {
        plan.checks.iter().find(|own| self.is(own))
    }

    /// Gives the check a reading, or takes it away.
    fn put(self, store: Store, read: Option<f64>) {
        store.edit("reading", &mut |plan| {
            let own = plan.checks.iter_mut().find(|own| self.is(own));
            match (own, read) {
                (Some(own), Some(read)) => own.read = read,
                (None, Some(read)) => {
                    plan.checks.push(Check { what: self.0, of: self.1, read, beside_a: None });
                }
                (_, None) => plan.checks.retain(|own| !self.is(own)),
            }
        });
    }
}

/// The boxes. They are made anew only when other checks come, not when a verdict changes.
pub(super) fn checks(store: Store) -> View {
    let wish = store.worked.ask(Leaf::Checks, String::new());
    let all = memo(Box::new(move || {
        wish.said.with(|said| match said {
            Said::Written(text) => text.split(PART).map(str::to_owned).collect::<Vec<_>>(),
            Said::Sentence(_) => Vec::new(),
        })
    }));
    let asked = memo(Box::new(move || {
        let all = all.get();
        let own = all.chunks_exact(TEXTS).flat_map(|own| own[..TEXTS - 1].to_vec());
        own.collect::<Vec<_>>()
    }));
    let rows = dynamic(move || {
        let asked = asked.get();
        let one = |(at, own): (usize, &[String])| {
            let verdict = memo(Box::new(move || {
                all.with(|all| all.get(at * TEXTS + TEXTS - 1).cloned().unwrap_or_default())
            }));
            Key::of(&own[0]).map(|key| untrack(|| row(store, key, own, verdict)))
        };
        let rows: Vec<View> = asked.chunks_exact(TEXTS - 1).enumerate().filter_map(one).collect();
        node("div").attr("class", "checks").child(rows).view()
    });
    node("div").child(rows).view()
}

/// The boxes of a check and what they mean.
fn row(store: Store, key: Key, texts: &[String], verdict: Signal<String>) -> View {
    let (name, how, second) = (&texts[1], &texts[2], texts[3].clone());
    let there = memo(Box::new(move || store.plan.with(|plan| key.found(plan).is_some())));
    let read = match key.0.field() {
        Some(field) => {
            let value = memo(Box::new(move || store.plan.with(|plan| Some(key.found(plan)?.read))));
            let set = Callback::new(move |new| key.put(store, new));
            boxed(name.clone(), how.clone(), field, value, set)
        }
        None => {
            let set = Callback::new(move |done: bool| key.put(store, done.then_some(0.0)));
            let how = node("p").attr("class", "hint").child(how.clone()).view();
            node("div").child(toggle_saying(name.clone(), there, set)).child(how).view()
        }
    };
    let label = format!("{name}: {second}");
    let two = memo(Box::new(move || there.get() && !second.is_empty()));
    let beside = when(two, move || {
        let value = memo(Box::new(move || store.plan.with(|plan| key.found(plan)?.beside_a)));
        let set = Callback::new(move |new| {
            store.edit("reading beside", &mut |plan| {
                if let Some(own) = plan.checks.iter_mut().find(|own| key.is(own)) {
                    own.beside_a = new;
                }
            });
        });
        boxed(label.clone(), String::new(), Field::CheckCurrent, value, set)
    });
    let off = memo(Box::new(move || verdict.with(|own| own.starts_with('!'))));
    let said = memo(Box::new(move || verdict.with(|own| own.trim_start_matches('!').to_owned())));
    node("div")
        .attr("class", "checked")
        .child(read)
        .child(beside)
        .child(
            node("p")
                .attr("class", "note")
                .attr("role", "status")
                .class_while("caution", off)
                .child(signal(said))
                .view(),
        )
        .view()
}

fn boxed(
    label: String,
    hint: String,
    field: Field,
    value: Signal<Option<f64>>,
    set: Callback<Option<f64>>,
) -> View {
    NumberBox { label, hint, field, slider: None, optional: true }.view(
        None,
        value,
        set,
        Signal::stored(None),
    )
}
