//! The dialogs, and the plans on this device.

use crate::signal::*;
use sunlarder_engine::document::Document;
use sunlarder_engine::words::Label as L;
use sunlarder_worker::PLANNER;
use wasm_bindgen::JsCast;

use super::field::{button, button_unless, text_box};
use super::share::save_text;
use crate::bind::{edit, fixed, part, watch};
use crate::dom::node::{Child as _, View, group, node, nothing};
use crate::dom::part::{Listener, dynamic, when};
use crate::drawers::{Drawers, drawer};
use crate::keep::{self, Kept, PlanId};
use crate::store::{Dialog, Face, Store, WORDS, words};

/// The dialogs; at most one is open.
pub(crate) fn dialogs(store: Store) -> View {
    let mut all = vec![
        frame(store, Dialog::Plans, L::Plans, |own| own.plans).view(),
        frame(store, Dialog::Share, L::Share, |own| own.share).view(),
        frame(store, Dialog::Code, L::ScanCode, |own| own.code).view(),
        frame(store, Dialog::Habits, L::Habits, |own| own.habits).view(),
    ];
    if PLANNER {
        all.push(frame(store, Dialog::Compare, L::Compare, |own| own.compare).view());
    }
    group(all)
}

/// A native dialog, so that focus and Escape behave as everywhere.
fn frame(store: Store, which: Dialog, title: L, inside: fn(Drawers) -> fn(Store) -> View) -> View {
    let open = memo(Box::new(move || store.dialog.get() == Some(which)));
    let closed: Listener = Box::new(move |_| {
        if store.dialog.get_untracked() == Some(which) {
            store.dialog.set(None);
        }
    });
    let head = node("div")
        .attr("class", "dialog-head")
        .child(node("h2").child(WORDS.label(title)).view())
        .child(button(L::Close, "button quiet", move || store.dialog.set(None)));
    let body = node("div")
        .attr("class", "dialog-body")
        .child(when(open, move || drawer(store, move |own| inside(own)(store))));
    let frame = node("dialog")
        .attr("class", if which == Dialog::Code { "whole" } else { "" })
        .attr("aria-label", WORDS.label(title))
        .on("close", closed)
        .child(head.view())
        .child(body.view());
    let dialog = frame.element().unchecked_into::<web_sys::HtmlDialogElement>();
    watch(Box::new(move || {
        if open.get() && !dialog.open() {
            let _ = dialog.show_modal();
        } else if !open.get() && dialog.open() {
            dialog.close();
        }
    }));
    frame.view()
}

pub(super) fn plans(store: Store) -> View {
    let name = part(store, 0, |plan, _| plan.name.clone());
    let set_name = edit(store, "plan name", 0, |plan, _, name| plan.name = name);
    // What is deleted can be taken back for as long as the dialog is open.
    let gone = RwSignal::new(Vec::<Gone>::new());
    // The plans of the present one's family, or all others.
    let rows = move |of_family: bool| {
        dynamic(move || {
            store.stored.track();
            let family = keep::family(&store.id.get_untracked());
            let all = keep::plans().into_iter();
            let wanted = all.filter(|own| (keep::family(&own.id) == family) == of_family);
            wanted.map(|own| plan_row(store, own, gone)).collect::<Vec<_>>().view()
        })
    };
    let copy = move || {
        let mut plan = store.plan.get_untracked();
        plan.name = WORDS.copy_of(&plan.name).chars().take(80).collect();
        store.open(PlanId::fresh(), plan);
    };
    let fresh = move || {
        store.dialog.set(None);
        store.face.set(Face::Start);
    };
    group(vec![
        text_box(WORDS.label(L::NameOfPlan), name, fixed(""), set_name).view(),
        node("div")
            .attr("class", "row")
            .child(button(L::CopyPlan, "button", copy))
            .child(button(L::NewPlan, "button", fresh))
            .view(),
        node("h3").child(WORDS.label(L::Variants)).view(),
        node("ul").attr("class", "list").attr("id", "variants").child(rows(true)).view(),
        variant(store),
        node("h3").child(WORDS.label(L::OnThisDevice)).view(),
        node("ul").attr("class", "list").child(rows(false)).view(),
        node("div").attr("role", "status").child(dynamic(move || undeleted(store, gone))).view(),
    ])
}

/// A plan that was deleted: its place, name and text.
#[derive(Clone)]
struct Gone(PlanId, String, String);

/// What was deleted last, with the way back.
fn undeleted(store: Store, gone: RwSignal<Vec<Gone>>) -> View {
    let Some(Gone(id, name, text)) = gone.with(|gone| gone.last().cloned()) else {
        return nothing();
    };
    let back = move || {
        if keep::put_back(&id, &text).is_err() {
            store.complain(WORDS.label(L::StorageRefused));
            return;
        }
        gone.update(|gone| {
            gone.pop();
        });
        store.stored.update(|count| *count += 1);
    };
    node("div")
        .attr("class", "row")
        .child(node("p").child(WORDS.deleted(&name)).view())
        .child(button(L::Undo, "button", back))
        .view()
}

/// A box for the name of a variant, which one is proposed for, and the button that makes it of the present plan.
fn variant(store: Store) -> View {
    let name = RwSignal::new(next_variant(store));
    let make = move || {
        let typed = name.get_untracked();
        let named = if typed.trim().is_empty() { next_variant(store) } else { typed };
        // It is held against what the plan was held against.
        let held = store.baseline.with_untracked(|held| held.as_ref().map(|own| own.plan.clone()));
        open_variant(store, Document { name: named, ..store.plan.get_untracked() }, held.as_ref());
    };
    let set = Callback::new(move |typed| name.set(typed));
    group(vec![
        text_box(WORDS.label(L::NameOfVariant), name.into(), fixed(""), set),
        node("div").attr("class", "row").child(button(L::MakeVariant, "button", make)).view(),
    ])
}

/// Opens a plan as a variant of the present one, held against another.
pub(super) fn open_variant(store: Store, plan: Document, held: Option<&Document>) {
    let id = PlanId::fresh();
    keep::keep_family(&id, &store.id.get_untracked());
    // That it cannot be kept is told when the plan is.
    let _ = keep::keep_baseline(&id, held);
    store.open(id, plan);
}

/// The name of a variant of the present plan.
pub(super) fn variant_name(store: Store, own: &str) -> String {
    let name = store.plan.with_untracked(plan_name);
    let common = name.split(VARIANT).next().unwrap_or_default();
    format!("{common}{VARIANT}{own}").chars().take(80).collect()
}

/// Stands between the name that all variants have and what is each one's own.
const VARIANT: &str = " · ";

/// A name for the next variant that none of the family has yet.
fn next_variant(store: Store) -> String {
    let name = store.plan.with_untracked(plan_name);
    let common = name.split(VARIANT).next().unwrap_or_default();
    let family = keep::family(&store.id.get_untracked());
    let taken: Vec<String> = keep::plans()
        .into_iter()
        .filter(|own| keep::family(&own.id) == family)
        .filter_map(|own| Some(own.plan.ok()?.name))
        .collect();
    let named = |own: &&str| format!("{common}{VARIANT}{own}");
    let free = WORDS.variants().iter().find(|own| !taken.contains(&named(own)));
    let next = free.map_or_else(|| WORDS.copy_of(&name), named);
    next.chars().take(80).collect()
}

/// What a plan is called in a list.
pub(crate) fn plan_name(plan: &Document) -> String {
    if plan.name.is_empty() { WORDS.label(L::UnnamedPlan).to_owned() } else { plan.name.clone() }
}

fn plan_row(store: Store, kept: Kept, gone: RwSignal<Vec<Gone>>) -> View {
    let Kept { id, plan, text } = kept;
    let is_open = id == store.id.get_untracked();
    let (name, fault) = match &plan {
        Ok(plan) => (plan_name(plan), String::new()),
        Err(problem) => {
            (WORDS.label(L::UnreadablePlan).to_owned(), words().problem(problem, &|_| None))
        }
    };
    let open_id = id.clone();
    let unreadable = plan.is_err();
    let open = move || {
        if let Ok(plan) = &plan {
            store.open(open_id.clone(), plan.clone());
        }
    };
    let forgotten = Gone(id.clone(), name.clone(), text.clone());
    let file = move || save_text(store, "sunlarder-plan.json", "application/json", &text);
    let forget = move || {
        gone.update(|gone| gone.push(forgotten.clone()));
        store.forget(&id);
    };
    let mark = if is_open { WORDS.label(L::OpenNow) } else { "" };
    node("li")
        .child(node("span").attr("class", "list-name").child(name).child(" ").child(mark).view())
        .child(node("span").attr("class", "soft").child(fault).view())
        .child(
            node("div")
                .attr("class", "row")
                .child(button_unless(
                    L::OpenPlan,
                    "button quiet",
                    Signal::stored(is_open || unreadable),
                    open,
                ))
                .child(button(L::Download, "button quiet", file))
                .child(button_unless(
                    L::Delete,
                    "button quiet danger",
                    Signal::stored(is_open),
                    forget,
                ))
                .view(),
        )
        .view()
}
