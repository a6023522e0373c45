//! Where loads come from: the catalogue, searched or browsed, and a load by hand.
//!
//! The worker searches and writes what it finds; each button of it carries a load as a link code.

use crate::signal::*;
use sunlarder_engine::document::{List, Load};
use sunlarder_engine::share;
use sunlarder_engine::words::Label as L;
use sunlarder_worker::leaf::Leaf;
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent};

use super::field::button;
use super::load_list::{Loads, row_of};
use crate::bind::{part, signal, watch};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::paper::elements;
use crate::dom::part::{Listener, act, dynamic, typed, when};
use crate::dom::sight::{focus_soon, show_soon};
use crate::drawers::drawer;
use crate::load_row;
use crate::store::{Store, WORDS};
use crate::worker::Said;

/// The button that opens the catalogue, the one that puts the largest loads first, and the catalogue.
pub(crate) fn adder(store: Store, loads: Loads) -> View {
    let searching = RwSignal::new(false);
    let count = part(store, 0, |plan, _| plan.loads.len());
    let full = Signal::derive(move || count.get() >= List::Loads.limit());
    let expanded = Signal::derive(move || searching.get().to_string());
    let press = act(move || searching.update(|searching| *searching = !*searching));
    let full_words = Signal::derive(move || {
        if full.get() { WORDS.full_of_loads(List::Loads.limit()) } else { String::new() }
    });
    let several = memo(Box::new(move || count.get() > 1));
    group(vec![
        node("div")
            .attr("class", "row")
            .child(
                node("button")
                    .attr("type", "button")
                    .attr("class", "button")
                    .attr("id", "add-something")
                    .attr("disabled", full)
                    .attr("aria-expanded", expanded)
                    .on("click", press)
                    .child(WORDS.label(L::AddSomething))
                    .view(),
            )
            .child(when(several, move || {
                button(L::LargestFirst, "button quiet", move || loads.largest_first())
            }))
            .child(node("span").attr("class", "soft").child(full_words).view())
            .view(),
        when(searching.into(), move || {
            drawer(store, move |own| (own.search)(store, searching, loads))
        })
        .view(),
    ])
}

/// Adds a load at the end and shows it. Gives its place, unless the plan is full.
fn add(store: Store, loads: Loads, load: Load) -> Option<usize> {
    let place = store.plan.with_untracked(|plan| plan.loads.len());
    if place >= List::Loads.limit() {
        return None;
    }
    let name = load_row::name(&load);
    let mut load = Some(load);
    store.edit("add load", &mut |plan| plan.loads.extend(load.take()));
    store.say_changed(WORDS.added(&name));
    loads.fresh.set(Some(place));
    show_soon(row_of(place));
    Some(place)
}

/// What the worker wrote, and for which query.
type Shown = (String, String);

pub(super) fn search(store: Store, searching: RwSignal<bool>, loads: Loads) -> View {
    let query = RwSignal::new(String::new());
    let shown = RwSignal::new(None::<Shown>);
    let waits = ask(store, query, shown);
    let results = node("div").attr("class", "found").attr("id", "found");
    // Enter takes the first one, also if it is pressed before what was typed last has been found.
    let hurried = RwSignal::new(false);
    let take_first = move || {
        // It may have been closed since the last frame.
        let asked = query.try_with_untracked(|query| {
            shown.with_untracked(|shown| shown.as_ref().is_some_and(|(own, _)| own == query))
        });
        let Some(asked) = asked else { return };
        hurried.set(!asked && !query.with_untracked(|query| query.trim().is_empty()));
        if asked {
            let first = document().query_selector("#found > .results [data-load]");
            if let Ok(Some(first)) = first {
                take(store, loads, &first);
            }
        }
    };
    watch(Box::new(move || {
        if shown.with(Option::is_some) && hurried.get_untracked() {
            request_animation_frame(take_first);
        }
    }));
    let keys: Listener = Box::new(move |event: Event| {
        let event: KeyboardEvent = event.unchecked_into();
        match event.key().as_str() {
            "Enter" => take_first(),
            "Escape" => searching.set(false),
            _ => return,
        }
        event.prevent_default();
        if !searching.get_untracked() {
            focus_soon("#add-something".to_owned());
        }
    });
    let pressed: Listener = Box::new(move |event: Event| {
        let target = event.target().and_then(|own| own.dyn_into::<web_sys::Element>().ok());
        let found = target.and_then(|own| own.closest("[data-load]").ok().flatten());
        if let Some(found) = found {
            take(store, loads, &found);
        }
    });
    let by_hand = move || {
        searching.set(false);
        if let Some(place) = add(store, loads, Load::default()) {
            loads.open.set(Some(place));
            focus_soon(format!("{} .editor input[type=text]", row_of(place)));
        }
    };
    let done = move || {
        searching.set(false);
        focus_soon("#add-something".to_owned());
    };
    let paper = memo(Box::new(move || {
        shown.with(|shown| shown.as_ref().map(|(_, paper)| paper.clone()).unwrap_or_default())
    }));
    let hint = Signal::derive(move || {
        if waits.get() { WORDS.label(L::CatalogueWaits).to_owned() } else { String::new() }
    });
    focus_soon("#search-appliance".to_owned());
    node("div")
        .attr("class", "search")
        .child(
            node("label")
                .attr("for", "search-appliance")
                .child(WORDS.label(L::SearchAppliance))
                .view(),
        )
        .child(
            node("input")
                .attr("id", "search-appliance")
                .attr("type", "search")
                .attr("autocomplete", "off")
                .attr("enterkeyhint", "done")
                .prop("value", signal(query))
                .on("input", typed(move |text| query.set(text)))
                .on("keydown", keys)
                .view(),
        )
        .child(node("p").attr("class", "hint").child(hint).view())
        .child(
            results
                .on("click", pressed)
                .child(dynamic(move || paper.with(|own| elements(own))))
                .view(),
        )
        .child(
            node("div")
                .attr("class", "row")
                .child(button(L::Done, "button", done))
                .child(button(L::AddByHand, "button quiet", by_hand))
                .view(),
        )
        .view()
}

/// Asks the worker for what is looked for, and keeps what it wrote last until it has written anew. Says whether it has to wait for the
/// plan to be put right.
fn ask(store: Store, query: RwSignal<String>, shown: RwSignal<Option<Shown>>) -> Signal<bool> {
    let waits = RwSignal::new(false);
    watch(Box::new(move || {
        let wanted = query.get();
        let said = store.worked.ask(Leaf::Catalogue, wanted.clone()).said;
        watch(Box::new(move || {
            said.with(|said| {
                if let Said::Written(paper) = said {
                    let now = Some((wanted.clone(), paper.clone()));
                    // A list that is written as it was keeps its buttons, and the one that has the focus.
                    if shown.with_untracked(|shown| *shown != now) {
                        shown.set(now);
                    }
                }
                let nothing = *said == Said::Sentence("");
                waits.set(nothing && shown.with_untracked(Option::is_none));
            });
        }));
    }));
    waits.into()
}

/// Takes the load that a button carries.
fn take(store: Store, loads: Loads, button: &web_sys::Element) {
    let code = button.get_attribute("data-load").unwrap_or_default();
    let load = share::decode(&code).ok().and_then(|plan| plan.loads.into_iter().next());
    if let Some(load) = load {
        add(store, loads, load);
    }
}
