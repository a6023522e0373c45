//! The worker beside the page, as the page sees it: what is asked of it, and what it answered.
//!
//! The starter script starts it, starts it anew when it dies, and does its work in the page where there are no workers
//! (`app/web/start.js`); this only speaks with it. What the two say is in `sunlarder_worker::message`.

use js_sys::Array;
use leptos::prelude::*;
use sunlarder_engine::outlook::Question;
use sunlarder_engine::share;
use sunlarder_engine::words::Label as L;
use sunlarder_worker::message::{PLAN, WORK, WORKED, bit, climate_numbers};
use wasm_bindgen::JsValue;

use crate::edge::{after_words, on_document, send};
use crate::store::{Store, WORDS};

/// The workings that are on the page.
#[derive(Clone, Copy)]
pub(crate) struct Worked {
    /// Bits of the figures whose panels are open.
    asked: RwSignal<u32>,
    /// What stands in each panel: a sheet of steps, or a sentence while there is none.
    sheets: [RwSignal<String>; Question::ALL.len()],
    /// The serial of the plan last sent: while somebody edits, answers about older ones are still on their way.
    serial: StoredValue<u32>,
}

impl Worked {
    /// Nothing is asked.
    pub(crate) fn new() -> Self {
        Self {
            asked: RwSignal::new(0),
            sheets: core::array::from_fn(|_| RwSignal::new(String::new())),
            serial: StoredValue::new(0),
        }
    }

    /// Asks for a figure's working for as long as what is being made lives; gives what stands in its panel.
    pub(crate) fn ask(self, question: Question) -> Signal<String> {
        // What stood there when it was last open may be of an older plan.
        self.put(bit(question), WORDS.label(L::BeingWorkedOut));
        self.asked.update(|asked| *asked |= bit(question));
        on_cleanup(move || {
            self.asked.try_update(|asked| *asked &= !bit(question));
        });
        self.sheets[question as usize].into()
    }

    /// Puts a text into the panels of these figures.
    fn put(self, questions: u32, text: &str) {
        for (place, sheet) in self.sheets.into_iter().enumerate() {
            if questions & (1 << place) != 0 {
                sheet.set(text.to_owned());
            }
        }
    }
}

/// Sends the plan after the words when something is asked of it, and takes the answers.
pub(crate) fn follow(store: Store) {
    let changed = move || {
        store.answers.track();
        store.worked.asked.track();
    };
    after_words(changed, move || ask(store));
    on_document("sunlarder:answer", move |event| {
        take(store, event.detail());
    });
}

fn ask(store: Store) {
    let asked = store.worked.asked.get_untracked();
    if asked == 0 {
        return;
    }
    let sent = store.answers.with_untracked(|answers| {
        let solved = answers.solved()?;
        let code = store.plan.with_untracked(share::encode).ok()?;
        let serial = store.worked.serial.get_value().wrapping_add(1);
        store.worked.serial.set_value(serial);
        let plan = Array::of3(&PLAN.into(), &serial.into(), &code.into());
        for number in climate_numbers(&solved.system.climate) {
            plan.push(&number.into());
        }
        let work = Array::of3(&WORK.into(), &serial.into(), &asked.into());
        send("sunlarder:ask", &Array::of2(&plan, &work));
        Some(())
    });
    if sent.is_none() {
        // What is wrong with the plan stands under the verdict.
        store.worked.put(asked, "");
    }
}

/// Takes an answer; none means that there will be none.
fn take(store: Store, answer: JsValue) {
    if answer.is_null() {
        store.worked.put(store.worked.asked.get_untracked(), WORDS.label(L::NotWorkedOut));
        return;
    }
    let answer = Array::from(&answer);
    let number = |place| answer.get(place).as_f64().map_or(0, |number| number as u32);
    if number(0) == u32::from(WORKED) && number(1) == store.worked.serial.get_value() {
        let sheet = answer.get(3).as_string().unwrap_or_default();
        store.worked.put(1 << number(2), &sheet);
    }
}
