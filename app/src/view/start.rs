//! The first visit: what are you planning?

use chrono::Datelike;
use leptos::prelude::*;
use sunlarder_engine::document::Document;
use sunlarder_engine::simulate::Sunlight;
use sunlarder_engine::words::Label as L;

use super::dialogs::opener;
use super::field::button_unless;
use super::habits::languages;
use super::place::place_name;
use crate::address::{EXAMPLES, example};
use crate::dom::node::{View, node};
use crate::dom::part::act;
use crate::edge::to_top;
use crate::keep::{self, PlanId};
use crate::store::{Answers, Store, WORDS};

/// The choice of what to start from.
pub(crate) fn start(store: Store) -> View {
    let scenarios: Vec<View> = EXAMPLES
        .iter()
        .filter_map(|(name, _)| Some(scenario(store, name, example(name)?)))
        .collect();
    let last = keep::current().and_then(|kept| Some((kept.id, kept.plan.ok()?)));
    let none = Signal::stored(last.is_none());
    let open_last = move || {
        if let Some((id, plan)) = &last {
            store.open(id.clone(), plan.clone());
        }
    };
    node("main")
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
        .child(opener(store))
        .child(languages(store))
        .view()
}

/// Opens a plan as a new one.
fn begin(store: Store, plan: Document) {
    store.open(PlanId::fresh(), plan);
    to_top();
}

fn scenario(store: Store, name: &str, plan: Document) -> View {
    let words = WORDS.scenario(&place_name(&plan), plan.start.date.month0() as usize);
    let verdict = Answers::to(&plan, store.earth, &mut Sunlight::default())
        .solved()
        .map(|solved| WORDS.short(&solved.outlook));
    let title = plan.name.clone();
    node("li")
        .child(
            node("button")
                .attr("type", "button")
                .attr("class", "scenario")
                .attr("id", format!("start-{name}"))
                .on("click", act(move || begin(store, plan.clone())))
                .child(node("span").attr("class", "scenario-name").child(title).view())
                .child(node("span").attr("class", "scenario-words").child(words).view())
                .child(
                    node("span")
                        .attr("class", "scenario-figures")
                        .child(verdict.unwrap_or_default())
                        .view(),
                )
                .view(),
        )
        .view()
}
