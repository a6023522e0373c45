//! The worker beside the page, as the page sees it: what is asked of it, and what it answered.
//!
//! The starter script starts it, starts it anew when it dies, and does its work in the page where there are no workers
//! (`app/web/start.js`); this only speaks with it. What the two say is in `sunlarder_worker::message`.

use core::time::Duration;

use js_sys::{Array, Float64Array};
use leptos::prelude::*;
use sunlarder_engine::outlook::Verdict;
use sunlarder_engine::place::SpreadGrid;
use sunlarder_engine::share;
use sunlarder_engine::words::Label as L;
use sunlarder_worker::leaf::Leaf;
use sunlarder_worker::message::{
    FORETOLD, LEAF, PLAN, REPLAY, REPLAYED, WEATHER, WRITTEN, YEAR, climate_numbers,
};
use sunlarder_worker::sentences::PART;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::spawn_local;

use crate::assets;
use crate::chart::BandHour;
use crate::edge::{after_rest, after_words, on_document, send};
use crate::store::{Face, Solved, Store, WORDS, words};
use crate::view::has_place;

/// What weather does with the plan, in sentences.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Foretold {
    /// What belongs to the verdict.
    pub(crate) verdict: String,
    /// Of ten years those in which each month stays over the reserve.
    pub(crate) months: Vec<String>,
    /// What the years come to.
    pub(crate) years: Vec<String>,
    /// Whether it is of the plan as it was before the last edit, or not yet complete.
    pub(crate) coming: bool,
}

/// What stands in the place of a leaf.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Said {
    /// A sentence while there is none.
    Sentence(&'static str),
    /// What was written.
    Written(String),
}

/// Something that the worker is to write, for as long as somebody wants it.
#[derive(Clone)]
pub(crate) struct Wish {
    number: u32,
    leaf: Leaf,
    argument: String,
    /// What was written.
    pub(crate) said: RwSignal<Said>,
    /// The numbers that go with it.
    pub(crate) numbers: RwSignal<Vec<f64>>,
}

/// What the worker has said.
#[derive(Clone, Copy)]
pub(crate) struct Worked {
    /// How much the sun varies, once it is here.
    spread: RwSignal<Option<&'static SpreadGrid>>,
    /// What weather does with the plan.
    pub(crate) foretold: RwSignal<Foretold>,
    /// The state of charge in eight of ten weathers, hour by hour.
    pub(crate) band: RwSignal<Vec<BandHour>>,
    /// What the year that somebody brought does with the plan, as sentences one after the other; empty without one.
    pub(crate) replayed: RwSignal<String>,
    /// Hour and state of charge in that year \[h, %\].
    pub(crate) path: RwSignal<Vec<(f64, f64)>>,
    /// What is to be written.
    wishes: RwSignal<Vec<Wish>>,
    /// The number of the next wish.
    next: StoredValue<u32>,
    /// The serial of the plan last sent: while somebody edits, answers about older ones are still on their way.
    serial: StoredValue<u32>,
}

impl Worked {
    /// Nothing is asked.
    pub(crate) fn new() -> Self {
        Self {
            spread: RwSignal::new(None),
            foretold: RwSignal::new(Foretold::default()),
            band: RwSignal::new(Vec::new()),
            replayed: RwSignal::new(String::new()),
            path: RwSignal::new(Vec::new()),
            wishes: RwSignal::new(Vec::new()),
            next: StoredValue::new(0),
            serial: StoredValue::new(0),
        }
    }

    /// Asks for a leaf for as long as what is being made lives.
    pub(crate) fn ask(self, leaf: Leaf, argument: String) -> Wish {
        let number = self.next.get_value();
        self.next.set_value(number.wrapping_add(1));
        let said = RwSignal::new(Said::Sentence(WORDS.label(L::BeingWorkedOut)));
        let wish = Wish { number, leaf, argument, said, numbers: RwSignal::new(Vec::new()) };
        self.wishes.update(|wishes| wishes.push(wish.clone()));
        on_cleanup(move || self.end(number));
        wish
    }

    fn end(self, number: u32) {
        // When the whole page goes the list may be gone first.
        self.wishes.try_update(|wishes| wishes.retain(|own| own.number != number));
    }

    /// Puts a sentence into the place of all leaves.
    fn put(self, sentence: &'static str) {
        self.wishes.with_untracked(|wishes| {
            for own in wishes {
                own.said.set(Said::Sentence(sentence));
            }
        });
    }

    /// Puts what was written into its place.
    fn fill(self, number: u32, text: String, numbers: Vec<f64>) {
        let found = |wishes: &Vec<Wish>| wishes.iter().find(|own| own.number == number).cloned();
        let Some(wish) = self.wishes.with_untracked(found) else { return };
        wish.numbers.set(numbers);
        wish.said.set(Said::Written(text));
    }
}

/// Weather is asked for once nothing has changed for so long.
const REST: Duration = Duration::from_millis(250);

/// Sends the plan after the words when something is asked of it, and takes the answers.
pub(crate) fn follow(store: Store) {
    let Worked { wishes, spread, foretold, .. } = store.worked;
    let changed = move || {
        store.answers.track();
        store.habits.track();
        wishes.track();
    };
    after_words(changed, move || {
        if !wishes.with_untracked(Vec::is_empty) {
            ask(store, false);
        }
    });
    let changed = move || {
        store.answers.track();
        store.habits.track();
        store.face.track();
        spread.track();
        if !foretold.with_untracked(|foretold| foretold.coming) {
            foretold.update(|foretold| foretold.coming = true);
        }
    };
    after_rest(changed, move || ask(store, true), REST);
    on_document("sunlarder:answer", move |event| {
        take(store, event.detail());
    });
    spawn_local(async move {
        spread.set(assets::spread().await.ok());
    });
}

/// Brings the text of a weather file for the place of the plan; what is no text takes that of before away.
pub(crate) fn bring(store: Store, text: &JsValue) {
    let Worked { replayed, path, .. } = store.worked;
    let code = store.plan.with_untracked(share::encode).unwrap_or_default();
    send("sunlarder:year", &Array::of4(&YEAR.into(), &0.into(), &code.into(), text));
    let said = if text.is_string() { WORDS.label(L::BeingWorkedOut) } else { "" };
    replayed.set(said.to_owned());
    path.set(Vec::new());
    ask(store, true);
}

/// Asks for the leaves that are wanted, and for what weather does with the plan.
fn ask(store: Store, weather: bool) {
    let sent = store.answers.with_untracked(|answers| {
        let solved = answers.solved()?;
        let code = store.plan.with_untracked(share::encode).ok()?;
        let serial = store.worked.serial.get_value().wrapping_add(1);
        store.worked.serial.set_value(serial);
        let habits = words().habits.bits();
        let plan = Array::of4(&PLAN.into(), &serial.into(), &code.into(), &habits.into());
        for number in climate_numbers(&solved.system.climate) {
            plan.push(&number.into());
        }
        let wishes = Array::of1(&plan);
        store.worked.wishes.with_untracked(|all| {
            for own in all {
                let leaf = own.leaf as u32;
                let wish =
                    Array::of4(&LEAF.into(), &serial.into(), &own.number.into(), &leaf.into());
                wish.push(&own.argument.as_str().into());
                wishes.push(&wish);
            }
        });
        if weather && !store.worked.replayed.with_untracked(String::is_empty) {
            wishes.push(&Array::of2(&REPLAY.into(), &serial.into()));
        }
        let spread = store.worked.spread.get_untracked().filter(|_| weather && runs(store, solved));
        match spread {
            Some(spread) => {
                let wish = Array::of2(&WEATHER.into(), &serial.into());
                for number in spread.at(solved.system.site) {
                    wish.push(&number.into());
                }
                wishes.push(&wish);
            }
            None if weather => store.worked.foretold.set(Foretold::default()),
            None => {}
        }
        if wishes.length() > 1 {
            send("sunlarder:ask", &wishes);
        }
        Some(())
    });
    if sent.is_none() {
        // What is wrong with the plan stands under the verdict.
        store.worked.put("");
        store.worked.foretold.set(Foretold::default());
    }
}

/// Whether weather has something to say: there is a plan on the screen and a place for it, and it runs.
fn runs(store: Store, solved: &Solved) -> bool {
    store.face.get_untracked() == Face::Planner
        && store.plan.with_untracked(has_place)
        && speaks(solved)
}

/// Whether the verdict is one that weather bears on.
pub(crate) fn speaks(solved: &Solved) -> bool {
    !matches!(solved.outlook.verdict, Verdict::NothingRuns | Verdict::CannotWork { .. })
}

/// Takes an answer; none means that there will be none.
fn take(store: Store, answer: JsValue) {
    if answer.is_null() {
        store.worked.put(WORDS.label(L::NotWorkedOut));
        store.worked.foretold.set(Foretold::default());
        if !store.worked.replayed.with_untracked(String::is_empty) {
            store.worked.replayed.set(WORDS.label(L::NotWorkedOut).to_owned());
        }
        return;
    }
    let answer = Array::from(&answer);
    let number = |place| answer.get(place).as_f64().map_or(0, |number| number as u32);
    if number(1) != store.worked.serial.get_value() {
        return;
    }
    let text = |place| answer.get(place).as_string().unwrap_or_default();
    if number(0) == u32::from(WRITTEN) {
        let numbers = Float64Array::from(answer.get(4)).to_vec();
        store.worked.fill(number(2), text(3), numbers);
    } else if number(0) == u32::from(FORETOLD) {
        let text = text(3);
        let mut sentences = text.split(PART).map(str::to_owned);
        store.worked.foretold.set(Foretold {
            verdict: sentences.next().unwrap_or_default(),
            months: sentences.by_ref().take(12).collect(),
            years: sentences.collect(),
            coming: answer.get(2).as_f64() != Some(1.0),
        });
        let numbers = Float64Array::from(answer.get(4)).to_vec();
        let hours = numbers.chunks_exact(3).map(|hour| BandHour {
            low: hour[0],
            high: hour[1],
            reached: hour[2],
        });
        store.worked.band.set(hours.collect());
    } else if number(0) == u32::from(REPLAYED) {
        store.worked.replayed.set(text(2));
        store.worked.path.set(pairs(answer.get(3)));
    }
}

/// Numbers two by two.
fn pairs(numbers: JsValue) -> Vec<(f64, f64)> {
    let numbers = Float64Array::from(numbers).to_vec();
    numbers.chunks_exact(2).map(|pair| (pair[0], pair[1])).collect()
}
