//! The worker beside the page, as the page sees it: what is asked of it, and what it answered.
//!
//! The starter script starts it, starts it anew when it dies, and does its work in the page where there are no workers
//! (`app/web/start.js`); this only speaks with it. What the two say is in `sunlarder_worker::message`.

use core::time::Duration;

use crate::signal::*;
use js_sys::{Array, Float64Array};
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
use crate::store::{Face, Opened, Store, WORDS, words};
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
    /// Whether the month of the start stays over the reserve in less than half of the years.
    pub(crate) seldom: bool,
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
    argument: RwSignal<String>,
    /// Wants it once, as a text.
    once: Option<Callback<String>>,
    /// Only after a rest: nobody looks at it yet.
    at_rest: bool,
    /// What was written.
    pub(crate) said: RwSignal<Said>,
    /// The numbers that go with it.
    pub(crate) numbers: RwSignal<Vec<f64>>,
    /// When something was last put there \[ms\].
    put_at: StoredValue<f64>,
    /// What is to be put there after a pause.
    held: StoredValue<Option<Held>>,
}

/// A text that is to be put into its place after a pause, and the serial of the plan that it tells of.
struct Held {
    serial: u32,
    text: String,
    numbers: Vec<f64>,
}

/// What is written again and again changes no more often than this \[ms\], but for a map that shows more: nobody reads faster, and the page
/// is free for edits between.
const BETWEEN: f64 = 250.0;

impl Wish {
    /// As a message about the plan of a serial.
    fn message(&self, serial: u32) -> Array {
        let leaf = self.leaf as u32;
        let message = Array::of4(&LEAF.into(), &serial.into(), &self.number.into(), &leaf.into());
        // Whoever asked once may be gone.
        let argument = self.argument.try_with_untracked(|own| JsValue::from(own.as_str()));
        message.push(&argument.unwrap_or(JsValue::NULL));
        message
    }

    /// For how long a text is held back \[ms\]. A map that shows more than before is not.
    fn pause(&self, text: &str) -> f64 {
        let same =
            || self.said.with_untracked(|said| matches!(said, Said::Written(own) if own == text));
        if !self.leaf.lives() || self.leaf == Leaf::Sizes && !same() {
            return 0.0;
        }
        // A clock that was set back must not hold it for longer.
        (BETWEEN - (js_sys::Date::now() - self.put_at.get_value())).min(BETWEEN)
    }

    /// Puts what was written into its place.
    fn put(&self, text: String, numbers: Vec<f64>) {
        self.put_at.set_value(js_sys::Date::now());
        self.held.set_value(None);
        self.numbers.set(numbers);
        let written = Said::Written(text);
        // What is the same again stays as it is: made anew it would be read out anew, and what is folded open would close.
        if self.said.with_untracked(|said| *said != written) {
            self.said.set(written);
        }
    }
}

/// What the worker has said.
#[derive(Clone, Copy)]
pub(crate) struct Worked {
    /// How much the sun varies, once it is here.
    pub(crate) spread: RwSignal<Option<&'static SpreadGrid>>,
    /// What weather does with the plan.
    pub(crate) foretold: RwSignal<Foretold>,
    /// The state of charge in eight of ten weathers, hour by hour.
    pub(crate) band: RwSignal<Vec<BandHour>>,
    /// What the year that somebody brought does with the plan, as sentences one after the other; empty without one.
    pub(crate) replayed: RwSignal<String>,
    /// Hour and state of charge in that year \[h, %\].
    pub(crate) path: RwSignal<Vec<(f64, f64)>>,
    /// The chance of keeping the promise (ratio), once it is worked out.
    pub(crate) standing: RwSignal<Option<f64>>,
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
            standing: RwSignal::new(None),
            wishes: RwSignal::new(Vec::new()),
            next: StoredValue::new(0),
            serial: StoredValue::new(0),
        }
    }

    /// Asks for a leaf for as long as what is being made lives.
    pub(crate) fn ask(self, leaf: Leaf, argument: String) -> Wish {
        self.held(self.wish(leaf, argument, None, false))
    }

    /// The same for something that nobody looks at yet: written once nothing has changed for a while.
    pub(crate) fn ask_at_rest(self, leaf: Leaf, argument: String) -> Wish {
        self.held(self.wish(leaf, argument, None, true))
    }

    fn held(self, wish: Wish) -> Wish {
        let number = wish.number;
        on_cleanup(move || self.end(number));
        wish
    }

    /// Has a text written once, of the plan as it then is; nothing comes where nothing can be worked out.
    pub(crate) fn once(self, leaf: Leaf, argument: String, then: Callback<String>) {
        self.wish(leaf, argument, Some(then), false);
    }

    fn wish(
        self,
        leaf: Leaf,
        argument: String,
        once: Option<Callback<String>>,
        at_rest: bool,
    ) -> Wish {
        let number = self.next.get_value();
        self.next.set_value(number.wrapping_add(1));
        let said = RwSignal::new(Said::Sentence(WORDS.label(L::BeingWorkedOut)));
        let numbers = RwSignal::new(Vec::new());
        let argument = RwSignal::new(argument);
        let (put_at, held) = (StoredValue::new(0.0), StoredValue::new(None));
        let wish = Wish { number, leaf, argument, once, at_rest, said, numbers, put_at, held };
        self.wishes.update(|wishes| wishes.push(wish.clone()));
        wish
    }

    fn end(self, number: u32) {
        // When the whole page goes the list may be gone first.
        self.wishes.try_update(|wishes| wishes.retain(|own| own.number != number));
    }

    /// Has a leaf written of something else; what stands there stays until it comes. Nothing else is asked anew.
    pub(crate) fn turn(self, wish: &Wish, argument: String) {
        wish.argument.set(argument);
        send("sunlarder:tell", &wish.message(self.serial.get_value()));
    }

    /// Puts a sentence into the place of all leaves, or only of those about a plan.
    fn put(self, sentence: &'static str, all: bool) {
        self.wishes.with_untracked(|wishes| {
            for own in wishes.iter().filter(|own| all || own.leaf.needs_plan()) {
                own.held.set_value(None);
                own.said.set(Said::Sentence(sentence));
            }
        });
    }

    /// Lets go what is held back: the plan is another.
    fn let_go(self) {
        self.wishes.with_untracked(|wishes| {
            for own in wishes {
                own.held.set_value(None);
            }
        });
    }

    /// Puts what was written into its place.
    fn fill(self, number: u32, text: String, numbers: Vec<f64>) {
        let Some(wish) = self.find(number) else { return };
        if let Some(then) = wish.once {
            self.end(number);
            // Whoever asked may be gone.
            let _ = then.try_run(text);
            return;
        }
        let pause = wish.pause(&text);
        if pause <= 0.0 {
            wish.put(text, numbers);
            return;
        }
        let waits = wish.held.with_value(Option::is_some);
        wish.held.set_value(Some(Held { serial: self.serial.get_value(), text, numbers }));
        if !waits {
            set_timeout(move || self.put_held(number), Duration::from_millis(pause as u64));
        }
    }

    /// Puts what was held back into its place, if it is of the newest plan.
    fn put_held(self, number: u32) {
        // The wish may be gone.
        let Some(wish) = self.find(number) else { return };
        let held = wish.held.try_update_value(Option::take).flatten();
        if let Some(held) = held.filter(|own| own.serial == self.serial.get_value()) {
            wish.put(held.text, held.numbers);
        }
    }

    fn find(self, number: u32) -> Option<Wish> {
        self.wishes.with_untracked(|wishes| wishes.iter().find(|own| own.number == number).cloned())
    }
}

/// Lets the worker rest until it is asked for something: what it is working out is of no use any more, and what comes now needs the
/// processor.
pub(crate) fn rest() {
    send("sunlarder:tell", &JsValue::NULL);
}

/// Weather is asked for once nothing has changed for so long.
const REST: Duration = Duration::from_millis(250);

/// Sends the plan after the words when something is asked of it, and takes the answers.
pub(crate) fn follow(store: Store) {
    let Worked { wishes, spread, foretold, .. } = store.worked;
    // A new wish is heeded at once, and the rest of what somebody looks at after each edit but for what takes long.
    for asked in [Asked::Quick, Asked::Leaves] {
        let changed = move || match asked {
            Asked::Quick => {
                store.answers.track();
                store.habits.track();
            }
            _ => wishes.track(),
        };
        after_words(changed, move || {
            if wishes.with_untracked(|all| all.iter().any(|own| !own.at_rest)) {
                ask(store, asked);
            }
        });
    }
    let changed = move || {
        store.answers.track();
        store.habits.track();
        store.face.track();
        spread.track();
        store.worked.let_go();
        if !foretold.with_untracked(|foretold| foretold.coming) {
            foretold.update(|foretold| foretold.coming = true);
        }
    };
    after_rest(changed, move || ask(store, Asked::All), REST);
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
    ask(store, Asked::All);
}

/// How much is asked of the worker at once.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Asked {
    /// The leaves that are quickly written.
    Quick,
    /// All leaves.
    Leaves,
    /// All leaves, and what weather does with the plan.
    All,
}

/// Asks for the leaves that are wanted, and for what weather does with the plan. While something is wrong with the plan only what
/// needs none is asked for.
fn ask(store: Store, asked: Asked) {
    let weather = asked == Asked::All;
    let worked = store.worked;
    let serial = worked.serial.get_value().wrapping_add(1);
    worked.serial.set_value(serial);
    let solved = store.answers.with_untracked(|answers| answers.solved().cloned());
    let code = solved.as_ref().and_then(|_| store.plan.with_untracked(share::encode).ok());
    let solved = solved.filter(|_| code.is_some());
    let code = code.unwrap_or_default();
    let habits = words().habits.bits();
    let plan = Array::of4(&PLAN.into(), &serial.into(), &code.into(), &habits.into());
    for number in solved.iter().flat_map(|own| climate_numbers(&own.system.climate)) {
        plan.push(&number.into());
    }
    let wishes = Array::of1(&plan);
    worked.wishes.with_untracked(|all| {
        let now = |own: &&Wish| {
            (weather || !own.at_rest)
                && (asked != Asked::Quick || !own.leaf.waits_for_rest())
                && (solved.is_some() || !own.leaf.needs_plan())
        };
        for own in all.iter().filter(now) {
            wishes.push(&own.message(serial));
        }
    });
    match solved {
        Some(solved) => ask_for_weather(store, &solved, weather, &wishes),
        None => {
            // What is wrong with the plan stands under the verdict.
            worked.put("", false);
            worked.foretold.set(Foretold::default());
        }
    }
    if wishes.length() > 1 {
        send("sunlarder:ask", &wishes);
    }
}

/// Adds what is asked about weather.
fn ask_for_weather(store: Store, opened: &Opened, weather: bool, wishes: &Array) {
    let worked = store.worked;
    let serial = worked.serial.get_value();
    if !weather {
        return;
    }
    if !worked.replayed.with_untracked(String::is_empty) {
        wishes.push(&Array::of2(&REPLAY.into(), &serial.into()));
    }
    let Some(spread) = worked.spread.get_untracked().filter(|_| runs(store, opened)) else {
        worked.foretold.set(Foretold::default());
        return;
    };
    let wish = Array::of2(&WEATHER.into(), &serial.into());
    for number in spread.at(opened.system.site) {
        wish.push(&number.into());
    }
    wishes.push(&wish);
}

/// Whether weather has something to say: there is a plan on the screen and a place for it, and it runs.
fn runs(store: Store, opened: &Opened) -> bool {
    store.face.get_untracked() == Face::Planner
        && store.plan.with_untracked(has_place)
        && speaks(opened)
}

/// Whether the verdict is one that weather bears on.
pub(crate) fn speaks(opened: &Opened) -> bool {
    !matches!(opened.opening.verdict, Verdict::NothingRuns | Verdict::CannotWork { .. })
}

/// Takes an answer; none means that there will be none.
fn take(store: Store, answer: JsValue) {
    if answer.is_null() {
        store.worked.put(WORDS.label(L::NotWorkedOut), true);
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
            seldom: answer.get(5).is_truthy(),
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
