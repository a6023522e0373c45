//! Guess first: a question whose answer is nowhere on the page until it is revealed, and everybody's guesses.

use crate::signal::*;
use sunlarder_engine::digits;
use sunlarder_engine::outlook::Guessed;
use sunlarder_engine::words::{Label as L, Typed, decimal};
use sunlarder_worker::leaf::{self, Leaf};
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent};

use super::field::{button, choice, fresh_id, select, text_box};
use super::leaf::leaf;
use super::place::hint;
use super::share::{copy_text, link_box, show_code};
use crate::address::{before_question, question};
use crate::bind::{fixed, signal};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::{act, dynamic, typed};
use crate::edge::{bare_address, put_into_address, this_page, to_top};
use crate::store::{Face, Store, WORDS, words};

/// The most guesses that are taken.
const MOST: usize = 500;
/// What can be guessed, in the order of its numbers.
const WHAT: [L; 3] = [L::GuessHours, L::GuessCharge, L::GuessMonth];

/// What is to be guessed, as one of a few.
fn what(store: Store, changed: fn(Store)) -> View {
    let value = memo(Box::new(move || store.guessed.get() as usize));
    let set = Callback::new(move |at: usize| {
        if let Some(what) = Guessed::ALL.get(at) {
            store.guesses.set(Vec::new());
            store.guessed.set(*what);
            changed(store);
        }
    });
    choice(L::GuessWhat, &WHAT, value, set)
}

/// The link that opens the plan as a question.
fn link(store: Store) -> String {
    let link = |plan: &_| question(&this_page(), store.guessed.get(), plan);
    store.plan.with(link).unwrap_or_default()
}

/// Keeps the question in the address, so that the answer does not come up when the page is loaded anew.
fn keep_in_address(store: Store) {
    put_into_address(&untrack(|| link(store)));
}

/// In the dialog for sharing: the link to the question, and the way to ask it here.
pub(super) fn share_question(store: Store) -> View {
    let link = memo(Box::new(move || link(store)));
    let start = move || {
        store.dialog.set(None);
        keep_in_address(store);
        store.face.set(Face::Guess);
        to_top();
    };
    // What nobody can guess is not proposed.
    let has = move |what: Guessed| {
        store
            .drawn
            .with(|answers| answers.solved().is_some_and(|own| what.answer(&own.outlook).is_some()))
    };
    untrack(|| {
        if !has(store.guessed.get())
            && let Some(what) = Guessed::ALL.into_iter().find(|own| has(*own))
        {
            store.guessed.set(what);
        }
    });
    let no_answer = memo(Box::new(move || {
        if has(store.guessed.get()) {
            String::new()
        } else {
            WORDS.label(L::AnswerIsNever).to_owned()
        }
    }));
    let large =
        move || show_code(store, before_question(&this_page(), store.guessed.get_untracked()));
    group(vec![
        node("h3").child(WORDS.label(L::GuessFirst)).view(),
        hint(L::GuessHint),
        what(store, |_| ()),
        node("p").attr("class", "hint").child(no_answer).view(),
        link_box("question-box", L::LinkToQuestion, link).view(),
        node("div")
            .attr("class", "row")
            .child(button(L::GuessFirst, "button", start))
            .child(button(L::CopyLink, "button", move || copy_text(store, link.get_untracked())))
            .child(button(L::BigCode, "button", large))
            .view(),
    ])
}

/// The face of a question: what is known, the guesses, and on demand the answer.
pub(super) fn guess(store: Store) -> View {
    let revealed = RwSignal::new(false);
    let asked = dynamic(move || {
        let what = store.guessed.get();
        untrack(|| leaf(store, Leaf::Question, decimal(what as usize as f64, 0)))
    });
    let below = dynamic(move || if revealed.get() { answer(store) } else { form(store) });
    let label = memo(Box::new(move || {
        WORDS.label(if revealed.get() { L::HideAgain } else { L::Reveal }).to_owned()
    }));
    // One button with two labels, so that it keeps the focus.
    let reveal = node("button")
        .attr("type", "button")
        .attr("class", "button main")
        .attr("id", "reveal")
        .on("click", act(move || revealed.update(|own| *own = !*own)))
        .child(label)
        .view();
    let back = move || {
        bare_address();
        store.face.set(Face::Planner);
        to_top();
    };
    node("main")
        .attr("class", "guess")
        .child(node("p").attr("class", "brand").child("Sunlarder").view())
        .child(node("div").attr("class", "question-leaf").child(asked).view())
        .child(below)
        .child(
            node("div")
                .attr("class", "row")
                .child(reveal)
                .child(button(L::BackToPlan, "button quiet", back))
                .view(),
        )
        .view()
}

/// The answer with everybody's guesses.
fn answer(store: Store) -> View {
    let argument =
        untrack(|| store.guesses.with(|guesses| leaf::guesses(store.guessed.get(), guesses)));
    let written = untrack(|| leaf(store, Leaf::Guesses, argument));
    node("div").attr("class", "revealed").child(written).view()
}

/// Name and guess, and what was guessed so far.
fn form(store: Store) -> View {
    let (name, text, fault) =
        (RwSignal::new(String::new()), RwSignal::new(String::new()), RwSignal::new(String::new()));
    let month = RwSignal::new(0usize);
    let add = Callback::new(move |()| {
        let what = store.guessed.get_untracked();
        let typed = text.get_untracked();
        let value = match what {
            Guessed::Month => Some(month.get_untracked() as f64),
            _ if typed.trim().is_empty() => None,
            _ => match words().typed(&typed) {
                Typed::Number(digits) => digits::number(&digits),
                _ => None,
            },
        };
        let Some(value) = value.filter(|own| what.holds(*own)) else {
            fault.set(words().guess_refused(what, &typed));
            return;
        };
        if store.guesses.with_untracked(Vec::len) >= MOST {
            fault.set(WORDS.full_of_guesses(MOST));
            return;
        }
        store.guesses.update(|all| all.push((name.get_untracked(), value)));
        fault.set(String::new());
        name.set(String::new());
        text.set(String::new());
    });
    let own = dynamic(move || match store.guessed.get() {
        Guessed::Month => {
            let months = (0..=12).map(|month| match month {
                12 => WORDS.no_month(),
                month => WORDS.month(month),
            });
            let set = Callback::new(move |at| month.set(at));
            select(L::YourGuess, months.collect(), month.into(), set)
        }
        what => guess_box(what, text, fault, add),
    });
    let count = memo(Box::new(move || WORDS.guesses(store.guesses.with(Vec::len))));
    let set_name = Callback::new(move |typed| name.set(typed));
    group(vec![
        what(store, keep_in_address),
        text_box(WORDS.label(L::YourName), name.into(), fixed(""), set_name),
        own.view(),
        node("p").attr("class", "error").attr("role", "alert").child(signal(fault)).view(),
        node("div")
            .attr("class", "row")
            .child(button(L::AddGuess, "button", move || add.run(())))
            .view(),
        node("p").attr("id", "guess-count").attr("role", "status").child(count).view(),
        node("ul").attr("class", "list guesses").child(list(store)).view(),
    ])
}

/// A box for a number; Enter adds it.
fn guess_box(
    what: Guessed,
    text: RwSignal<String>,
    fault: RwSignal<String>,
    add: Callback<()>,
) -> View {
    let id = fresh_id("guess");
    let unit = if what == Guessed::Hours { "h" } else { "Ah" };
    let wrong = memo(Box::new(move || {
        if fault.with(String::is_empty) { "false" } else { "true" }.to_owned()
    }));
    let enter = move |event: Event| {
        if event.unchecked_into::<KeyboardEvent>().key() == "Enter" {
            add.run(());
        }
    };
    node("div")
        .attr("class", "field")
        .child(node("label").attr("for", id.clone()).child(WORDS.label(L::YourGuess)).view())
        .child(
            node("div")
                .attr("class", "entry")
                .child(
                    node("input")
                        .attr("id", id)
                        .attr("class", "guess-box")
                        .attr("type", "text")
                        .attr("inputmode", "decimal")
                        .attr("autocomplete", "off")
                        .attr("aria-invalid", wrong)
                        .prop("value", signal(text))
                        .on("input", typed(move |typed| text.set(typed)))
                        .on("keydown", Box::new(enter))
                        .view(),
                )
                .child(node("span").attr("class", "unit").child(unit).view())
                .view(),
        )
        .view()
}

/// What was guessed so far, each to be taken out.
fn list(store: Store) -> View {
    let row = move |(at, (name, value)): (usize, &(String, f64))| {
        let name = if name.is_empty() { WORDS.guesser(at) } else { name.clone() };
        let said = WORDS.beside_name(&name, &words().guess(store.guessed.get_untracked(), *value));
        let out = move || {
            store.guesses.update(|all| {
                if at < all.len() {
                    all.remove(at);
                }
            });
        };
        node("li")
            .child(node("span").attr("class", "list-name").child(said.clone()).view())
            .child(
                node("button")
                    .attr("type", "button")
                    .attr("class", "button quiet")
                    .attr("aria-label", format!("{}: {said}", WORDS.label(L::TakeOut)))
                    .on("click", act(out))
                    .child(WORDS.label(L::TakeOut))
                    .view(),
            )
            .view()
    };
    dynamic(move || {
        store.guesses.with(|all| all.iter().enumerate().map(row).collect::<Vec<_>>()).view()
    })
    .view()
}
