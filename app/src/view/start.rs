//! The first visit: what are you planning?

use chrono::Datelike;
use leptos::prelude::*;
use sunlarder_engine::document::Document;
use sunlarder_engine::words::Label as L;

use super::dialogs::opener;
use super::field::button_unless;
use super::part::act;
use super::place::place_name;
use crate::address::{EXAMPLES, example};
use crate::keep::{self, PlanId};
use crate::store::{Answers, Store, WORDS};

/// The choice of what to start from.
pub(crate) fn start(store: Store) -> AnyView {
    let scenarios: Vec<AnyView> = EXAMPLES
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
    view! {
        <main class="start">
            <p class="brand">"Sunlarder"</p>
            <h1>{WORDS.label(L::WhatArePlanning)}</h1>
            <p>{WORDS.label(L::StartWords)}</p>
            <ul class="scenarios">{scenarios}</ul>
            <div class="row">
                <button type="button" class="button" id="start-blank"
                    on:click=act(move || store.open(PlanId::fresh(), Document::default()))>
                    {WORDS.label(L::BlankPlan)}
                </button>
                {button_unless(L::LastPlan, "button", none, open_last)}
            </div>
            <h2>{WORDS.label(L::HaveLinkOrFile)}</h2>
            {opener(store)}
        </main>
    }
    .into_any()
}

fn scenario(store: Store, name: &str, plan: Document) -> AnyView {
    let words = WORDS.scenario(&place_name(&plan), plan.start.date.month0() as usize);
    let verdict =
        Answers::to(&plan, store.earth).solved().map(|solved| WORDS.short(&solved.outlook));
    let title = plan.name.clone();
    view! {
        <li>
            <button type="button" class="scenario" id=format!("start-{name}")
                on:click=act(move || store.open(PlanId::fresh(), plan.clone()))>
                <span class="scenario-name">{title}</span>
                <span class="scenario-words">{words}</span>
                <span class="scenario-figures">{verdict.unwrap_or_default()}</span>
            </button>
        </li>
    }
    .into_any()
}
