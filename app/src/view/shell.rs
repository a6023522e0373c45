//! The page: masthead, ledger of questions, outlook, notices.

use crate::signal::*;
use sunlarder_engine::words::Label as L;
use sunlarder_worker::{INSTALLED, PLANNER};

use super::across::across;
use super::bank::bank_section;
use super::curve::{day_picture, now};
use super::dialogs::{dialogs, plan_name};
use super::drop::drop_target;
use super::field::button;
use super::fitting::fit_section;
use super::gauge::gauge_section;
use super::loads::loads;
use super::logbook::agree_section;
use super::mend::inverter_button;
use super::outlook::{bar, cautions, facts, months, times, verdict, weather};
use super::pictures::{carpet, flow};
use super::place::place_section;
use super::sheet::sheet;
use super::sizing::{help_section, to_help};
use super::sources::sources;
use super::start::start;
use super::toast::toast;
use super::wrong_entry::{watch_entries, wrong_entry};
use crate::bind::part;
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::{act, dynamic, when};
use crate::drawers::drawer;
use crate::edge;
use crate::speech::IS_INSTALLED;
use crate::store::{Dialog, Face, Store, WORDS};

/// Everything that is seen.
pub(crate) fn shell(store: Store) -> View {
    let face = dynamic(move || {
        store.habits.track();
        match store.face.get() {
            Face::Start => start(store),
            Face::Planner => planner(store),
            // A question to guess first is about the plan, and so is another one beside it.
            _ if IS_INSTALLED => planner(store),
            Face::Beside => drawer(store, move |own| (own.beside)(store)),
            Face::Guess => drawer(store, move |own| (own.guess)(store)),
        }
    });
    watch_entries(store);
    group(vec![
        face.view(),
        dialogs(store).view(),
        toast(store).view(),
        update_notice().view(),
        drop_target(store),
        sheet(store),
    ])
}

/// What the plan comes to: all of it where it is made, and in short where it is about the system that was installed by it.
fn outlook(store: Store) -> View {
    let main =
        node("main").attr("class", "outlook").child(verdict(store)).child(wrong_entry(store));
    if !PLANNER {
        return main.child(now(store)).child(facts(store)).child(cautions(store)).view();
    }
    let pictures = node("div")
        .attr("class", "pictures")
        .child(day_picture(store))
        .child(flow(store))
        .child(months(store))
        .child(carpet(store))
        .child(times(store))
        .child(weather(store));
    main.child(inverter_button(store))
        .child(to_help(store))
        .child(now(store))
        .child(facts(store))
        .child(cautions(store))
        .child(pictures.view())
        .view()
}

/// The questions of this page, and the way to those of the other.
fn ledger(store: Store) -> View {
    let mut own =
        node("section").attr("class", "ledger").attr("aria-label", WORDS.label(L::Questions));
    if PLANNER {
        own = own
            .child(loads(store))
            .child(bank_section(store))
            .child(sources(store))
            .child(place_section(store))
            .child(help_section(store));
    }
    if INSTALLED {
        own = own.child(fit_section(store)).child(gauge_section(store)).child(agree_section(store));
    }
    own.child(across(store)).view()
}

fn planner(store: Store) -> View {
    node("div")
        .attr("class", if IS_INSTALLED { "page installed" } else { "page" })
        .child(masthead(store))
        .child(outlook(store))
        .child(ledger(store))
        .child(
            node("footer")
                .attr("class", "small-print")
                .child(node("p").child(WORDS.label(L::SmallPrint)).view())
                .child(node("p").child(WORDS.version(env!("CARGO_PKG_VERSION"))).view())
                .view(),
        )
        .child(bar(store))
        .view()
}

/// A button of the menu.
fn item(id: &'static str, label: L, off: Signal<bool>, press: impl FnMut() + 'static) -> View {
    node("button")
        .attr("type", "button")
        .attr("id", id)
        .attr("disabled", off)
        .on("click", act(press))
        .child(WORDS.label(label))
        .view()
}

fn masthead(store: Store) -> View {
    let on = Signal::stored(false);
    let no_undo = Signal::derive(move || !store.can_undo());
    let no_redo = Signal::derive(move || !store.can_redo());
    node("header")
        .attr("class", "masthead")
        .child(node("p").attr("class", "brand").child("Sunlarder").view())
        .child(
            node("p")
                .attr("class", "plan-name")
                .child(part(store, 0, |plan, _| plan_name(plan)))
                .view(),
        )
        .child(
            node("nav")
                .attr("class", "menu")
                .attr("aria-label", WORDS.label(L::Menu))
                .child(item("menu-plans", L::Plans, on, move || {
                    store.dialog.set(Some(Dialog::Plans));
                }))
                .child(item("menu-share", L::Share, on, move || {
                    store.dialog.set(Some(Dialog::Share));
                }))
                .child(item("menu-habits", L::Units, on, move || {
                    store.dialog.set(Some(Dialog::Habits));
                }))
                .child(item("menu-undo", L::Undo, no_undo, move || store.undo()))
                .child(item("menu-redo", L::Redo, no_redo, move || store.redo()))
                .view(),
        )
        .view()
}

/// Tells that a new version waits, and takes it when asked.
fn update_notice() -> View {
    let waits = RwSignal::new(edge::update_waits());
    edge::on_document("sunlarder:update", move |_| waits.set(true));
    let notice = when(waits.into(), move || {
        let take = button(L::TakeNewVersion, "button", edge::take_over);
        node("div")
            .attr("class", "toast update")
            .child(node("p").child(WORDS.label(L::NewVersion)).view())
            .child(take)
            .view()
    });
    node("div").attr("role", "status").child(notice).view()
}
