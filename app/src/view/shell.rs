//! The page: masthead, ledger of questions, outlook, notices.

use leptos::prelude::*;
use sunlarder_engine::words::Label as L;

use super::bank::bank_section;
use super::dialogs::{dialogs, plan_name};
use super::field::button;
use super::loads::loads;
use super::outlook::{bar, cautions, day_picture, facts, months, now, times, verdict};
use super::part::{act, dynamic, when};
use super::place::place_section;
use super::sources::sources;
use super::start::start;
use crate::bind::{part, watch};
use crate::edge;
use crate::store::{Dialog, Face, Store, WORDS};

/// Everything that is seen.
pub(crate) fn shell(store: Store) -> AnyView {
    let face = dynamic(move || match store.face.get() {
        Face::Start => start(store),
        Face::Planner => planner(store),
    });
    view! { {face} {dialogs(store)} {toast(store)} {update_notice()} }.into_any()
}

fn planner(store: Store) -> AnyView {
    view! {
        <div class="page">
            {masthead(store)}
            <main class="outlook">
                {verdict(store)}
                {now(store)}
                {facts(store)}
                {cautions(store)}
                <div class="pictures">{day_picture(store)} {months(store)} {times(store)}</div>
            </main>
            <section class="ledger" aria-label=WORDS.label(L::Questions)>
                {loads(store)} {bank_section(store)} {sources(store)} {place_section(store)}
            </section>
            <footer class="small-print">
                <p>{WORDS.label(L::SmallPrint)}</p>
                <p>{WORDS.version(env!("CARGO_PKG_VERSION"))}</p>
            </footer>
            {bar(store)}
        </div>
    }
    .into_any()
}

/// A button of the menu.
fn item(id: &'static str, label: L, off: Signal<bool>, press: impl FnMut() + 'static) -> AnyView {
    view! { <button type="button" id=id disabled=off on:click=act(press)>{WORDS.label(label)}</button> }
        .into_any()
}

fn masthead(store: Store) -> AnyView {
    let on = Signal::stored(false);
    let no_undo = Signal::derive(move || !store.can_undo());
    let no_redo = Signal::derive(move || !store.can_redo());
    view! {
        <header class="masthead">
            <p class="brand">"Sunlarder"</p>
            <p class="plan-name">{part(store, 0, |plan, _| plan_name(plan))}</p>
            <nav class="menu" aria-label=WORDS.label(L::Menu)>
                {item("menu-plans", L::Plans, on, move || store.dialog.set(Some(Dialog::Plans)))}
                {item("menu-share", L::Share, on, move || store.dialog.set(Some(Dialog::Share)))}
                {item("menu-undo", L::Undo, no_undo, move || store.undo())}
                {item("menu-redo", L::Redo, no_redo, move || store.redo())}
            </nav>
        </header>
    }
    .into_any()
}

/// What is said in passing; good news goes by itself.
fn toast(store: Store) -> AnyView {
    let turn = StoredValue::new(0u32);
    watch(Box::new(move || {
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
    }));
    let notice = dynamic(move || match store.notice.get() {
        None => ().into_any(),
        Some(notice) => {
            let class = if notice.grave { "toast grave" } else { "toast" };
            let close = button(L::Close, "button quiet", move || store.notice.set(None));
            view! { <div class=class><p>{notice.text}</p>{close}</div> }.into_any()
        }
    });
    view! { <div class="toasts" role="status" aria-live="polite">{notice}</div> }.into_any()
}

/// Tells that a new version waits, and takes it when asked.
fn update_notice() -> AnyView {
    let waits = RwSignal::new(edge::update_waits());
    edge::on_document("sunlarder:update", move || waits.set(true));
    let notice = when(waits.into(), move || {
        let take = button(L::TakeNewVersion, "button", edge::take_over);
        view! { <div class="toast update"><p>{WORDS.label(L::NewVersion)}</p>{take}</div> }
            .into_any()
    });
    view! { <div role="status">{notice}</div> }.into_any()
}
