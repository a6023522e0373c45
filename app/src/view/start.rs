//! The first visit: what are you planning?

use crate::signal::*;
use chrono::Datelike;
use sunlarder_engine::document::Document;
use sunlarder_engine::words::{Label as L, decimal};

use super::across::across;
use super::field::button_unless;
use super::habits::languages;
use super::place::place_name;
use super::share::opener;
use crate::address::{EXAMPLES, example};
use crate::dom::node::{View, node};
use crate::dom::part::act;
use crate::edge::to_top;
use crate::keep::{self, PlanId};
use crate::speech::IS_INSTALLED;
use crate::store::{Store, WORDS, words};

/// The choice of what to start from.
pub(crate) fn start(store: Store) -> View {
    let scenarios: Vec<View> = EXAMPLES
        .iter()
        .enumerate()
        .filter_map(|(at, (name, _))| Some(scenario(store, at, name, example(name)?)))
        .collect();
    let last = keep::current().and_then(|kept| Some((kept.id, kept.plan.ok()?)));
    let none = Signal::stored(last.is_none());
    let open_last = move || {
        if let Some((id, plan)) = &last {
            store.open(id.clone(), plan.clone());
        }
    };
    let main = node("main")
        .attr("class", "start")
        .child(node("p").attr("class", "brand").child("Sunlarder").view())
        .child(node("h1").child(WORDS.label(L::WhatArePlanning)).view())
        .child(node("p").child(WORDS.label(L::StartWords)).view())
        .child(node("ul").attr("class", "scenarios").child(scenarios).view())
        .child(
            node("div")
                .attr("class", "row")
                .child(
                    node("button")
                        .attr("type", "button")
                        .attr("class", "button")
                        .attr("id", "start-blank")
                        .on("click", act(move || begin(store, Document::default())))
                        .child(WORDS.label(L::BlankPlan))
                        .view(),
                )
                .child(button_unless(L::LastPlan, "button", none, open_last))
                .view(),
        )
        .child(node("h2").child(WORDS.label(L::HaveLinkOrFile)).view())
        .child(opener(Callback::new(move |plan| store.open_new(plan))))
        .child(languages(store));
    // Who has no plan yet makes one on the other page.
    if IS_INSTALLED { main.child(across(store)).view() } else { main.view() }
}

/// Opens a plan as a new one.
fn begin(store: Store, plan: Document) {
    store.open(PlanId::fresh(), plan);
    to_top();
}

/// A card. What it comes to is told when it is opened: eight verdicts would keep the first frame waiting.
fn scenario(store: Store, at: usize, name: &str, plan: Document) -> View {
    let place = WORDS.scenario(&place_name(&plan), plan.start.date.month0() as usize);
    let figures = words().scenario_figures(&plan);
    let title = plan.name.clone();
    node("li")
        .child(
            node("button")
                .attr("type", "button")
                .attr("class", "scenario")
                .attr("id", format!("start-{name}"))
                .on("click", act(move || begin(store, plan.clone())))
                .child(
                    node("i")
                        .attr("class", "scene")
                        .style("--scene", &decimal(at as f64, 0))
                        .view(),
                )
                .child(node("span").attr("class", "scenario-name").child(title).view())
                .child(node("span").attr("class", "scenario-words").child(place).view())
                .child(node("span").attr("class", "scenario-figures").child(figures).view())
                .view(),
        )
        .view()
}
