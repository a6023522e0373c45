//! The first visit: what are you planning?

use leptos::prelude::*;
use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::Climate;
use sunlarder_engine::system::System;
use sunlarder_engine::words::Label as L;

use super::dialogs::Opener;
use super::place::place_name;
use crate::address::{EXAMPLES, example};
use crate::keep::{self, PlanId};
use crate::store::{Store, WORDS};

/// What an example comes to, in a few words.
fn verdict(plan: &Document, earth: &Climate) -> String {
    System::assemble(plan, earth, &mut ())
        .map(|system| WORDS.short(&Outlook::of(&system)))
        .unwrap_or_default()
}

/// The choice of what to start from.
#[component]
pub(crate) fn Start() -> impl IntoView {
    let store = Store::get();
    let scenario = move |(name, _): (&'static str, &'static str)| {
        let plan = example(name)?;
        let words =
            WORDS.scenario(&place_name(&plan), chrono::Datelike::month0(&plan.start.date) as usize);
        let (title, figures) = (plan.name.clone(), verdict(&plan, store.earth));
        Some(view! {
            <li>
                <button type="button" class="scenario" id=format!("start-{name}")
                    on:click=move |_| store.open(PlanId::fresh(), plan.clone())>
                    <span class="scenario-name">{title}</span>
                    <span class="scenario-words">{words}</span>
                    <span class="scenario-figures">{figures}</span>
                </button>
            </li>
        })
    };
    let last = keep::current().and_then(|kept| Some((kept.id, kept.plan.ok()?)));
    view! {
        <main class="start">
            <p class="brand">"Sunlarder"</p>
            <h1>{WORDS.label(L::WhatArePlanning)}</h1>
            <p>{WORDS.label(L::StartWords)}</p>
            <ul class="scenarios">{EXAMPLES.into_iter().map(scenario).collect_view()}</ul>
            <div class="row">
                <button type="button" class="button" id="start-blank" on:click=move |_| store.open(PlanId::fresh(), Document::default())>
                    {WORDS.label(L::BlankPlan)}
                </button>
                {last.map(|(id, plan)| view! {
                    <button type="button" class="button" on:click=move |_| store.open(id.clone(), plan.clone())>{WORDS.label(L::LastPlan)}</button>
                })}
            </div>
            <h2>{WORDS.label(L::HaveLinkOrFile)}</h2>
            <Opener />
        </main>
    }
}
