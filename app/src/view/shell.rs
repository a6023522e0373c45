//! The page: masthead, ledger of questions, outlook, notices.

use leptos::prelude::*;
use sunlarder_engine::words::Label as L;

use super::bank::BankSection;
use super::dialogs::{Dialogs, plan_name};
use super::loads::Loads;
use super::outlook::{Bar, Cautions, DayPicture, Facts, Months, Now, Times, Verdict};
use super::place::PlaceSection;
use super::sources::Sources;
use super::start::Start;
use crate::bind::part;
use crate::store::{Dialog, Face, Store, WORDS};

/// Everything that is seen.
#[component]
pub(crate) fn Shell() -> impl IntoView {
    let store = Store::get();
    view! {
        {move || match store.face.get() {
            Face::Start => view! { <Start /> }.into_any(),
            Face::Planner => view! { <Planner /> }.into_any(),
        }}
        <Dialogs />
        <Toast />
        <UpdateNotice />
    }
}

#[component]
fn Planner() -> impl IntoView {
    view! {
        <div class="page">
            <Masthead />
            <main class="outlook">
                <Verdict />
                <Now />
                <Facts />
                <Cautions />
                <div class="pictures">
                    <DayPicture />
                    <Months />
                    <Times />
                </div>
            </main>
            <section class="ledger" aria-label=WORDS.label(L::Questions)>
                <Loads />
                <BankSection />
                <Sources />
                <PlaceSection />
            </section>
            <footer class="small-print">
                <p>{WORDS.label(L::SmallPrint)}</p>
                <p>{WORDS.version(env!("CARGO_PKG_VERSION"))}</p>
            </footer>
            <Bar />
        </div>
    }
}

#[component]
fn Masthead() -> impl IntoView {
    let store = Store::get();
    let name = part(store, plan_name);
    view! {
        <header class="masthead">
            <p class="brand">"Sunlarder"</p>
            <p class="plan-name">{name}</p>
            <nav class="menu" aria-label=WORDS.label(L::Menu)>
                <button type="button" id="menu-plans" on:click=move |_| store.dialog.set(Some(Dialog::Plans))>{WORDS.label(L::Plans)}</button>
                <button type="button" id="menu-share" on:click=move |_| store.dialog.set(Some(Dialog::Share))>{WORDS.label(L::Share)}</button>
                <button type="button" id="menu-undo" disabled=move || !store.can_undo() on:click=move |_| store.undo()>{WORDS.label(L::Undo)}</button>
                <button type="button" id="menu-redo" disabled=move || !store.can_redo() on:click=move |_| store.redo()>{WORDS.label(L::Redo)}</button>
            </nav>
        </header>
    }
}

/// What is said in passing; good news goes by itself.
#[component]
fn Toast() -> impl IntoView {
    let store = Store::get();
    let turn = StoredValue::new(0u32);
    Effect::new(move |_| {
        let Some(notice) = store.notice.get() else { return };
        turn.update_value(|turn| *turn = turn.wrapping_add(1));
        let mine = turn.get_value();
        if !notice.grave {
            let fade = move || {
                if turn.try_get_value() == Some(mine) {
                    store.notice.set(None);
                }
            };
            set_timeout(fade, core::time::Duration::from_secs(5));
        }
    });
    view! {
        <div class="toasts" role="status" aria-live="polite">
            {move || store.notice.get().map(|notice| view! {
                <div class="toast" class:grave=notice.grave>
                    <p>{notice.text}</p>
                    <button type="button" class="button quiet" on:click=move |_| store.notice.set(None)>{WORDS.label(L::Close)}</button>
                </div>
            })}
        </div>
    }
}

/// Tells that a new version waits, and takes it when asked.
#[component]
fn UpdateNotice() -> impl IntoView {
    let waits = RwSignal::new(crate::edge::update_waits());
    crate::edge::on_document("sunlarder:update", move || waits.set(true));
    view! {
        {move || waits.get().then(|| view! {
            <div class="toast update" role="status">
                <p>{WORDS.label(L::NewVersion)}</p>
                <button type="button" class="button" on:click=move |_| crate::edge::take_over()>{WORDS.label(L::TakeNewVersion)}</button>
            </div>
        })}
    }
}
