//! The program as it runs in the worker: the same one, but with the desk instead of the page. `app/web/worker.js` calls what is
//! exported here. The desk is a chunk of its own, which the page never loads where there are workers.

use core::ops::Range;
use std::cell::RefCell;

use js_sys::{Array, Float64Array};
use sunlarder_engine::sizing::lanes::{Counting, Counts, Flat, HoursOfDay, MONTHS, Rows, Store};
use sunlarder_engine::words::{Habits, Words};
use sunlarder_worker::PAGE;
use sunlarder_worker::desk::Desk;
use sunlarder_worker::leaf::Leaf;
use sunlarder_worker::message::{
    Answer, FORETOLD, LEAF, PLAN, REPLAY, REPLAYED, Request, WEATHER, WRITTEN, YEAR, spread_of,
};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_split_helpers::{SplitLoaderError, wasm_split};

thread_local! {
    static CLERK: RefCell<Option<Box<dyn Clerk>>> = const { RefCell::new(None) };
}

/// Who sits at the desk: all that is known of the chunk outside of it.
trait Clerk {
    /// Takes a message of the page; one that is no request is not heeded.
    fn take(&mut self, message: &Array);

    /// Works off one piece of what waits and gives the message for the page: `null` if there is nothing to say yet, `undefined`
    /// if nothing waits.
    fn work(&mut self) -> JsValue;

    /// Has sizes worked out by the program that is built for it.
    fn bring_lanes(&mut self, lanes: LanesProgram);
}

#[wasm_bindgen]
extern "C" {
    /// The program of `app/lanes`, where the browser can run it, and a second one that comes to meet it.
    #[derive(Debug)]
    pub type LanesProgram;

    #[wasm_bindgen(method)]
    fn begin(this: &LanesProgram, trial_days: u32, months: u16, enough: u16);

    #[wasm_bindgen(method)]
    fn add(this: &LanesProgram, year: u32, days: &[f32]);

    #[wasm_bindgen(method)]
    fn row(this: &LanesProgram, stores: &[f32], arrays: &[f32], from: u32, to: u32) -> Vec<u8>;

    #[wasm_bindgen(method)]
    fn ahead(
        this: &LanesProgram,
        number: u32,
        stores: &[f32],
        arrays: &[f32],
        from: u32,
        to: u32,
    ) -> bool;

    /// A number, the first year, then counts; nothing if there is nothing.
    #[wasm_bindgen(method)]
    fn taken(this: &LanesProgram) -> Vec<u8>;
}

/// Hands rows of sizes to that program.
#[derive(Debug)]
struct Beside(LanesProgram);

/// Anything as the numbers it consists of.
fn flat<T: Flat>(all: &[T]) -> Vec<f32> {
    let mut numbers = Vec::with_capacity(all.len() * T::NUMBERS);
    for own in all {
        own.write(&mut numbers);
    }
    numbers
}

impl Rows for Beside {
    fn begin(&mut self, Counting { trial_days, months, enough }: Counting) {
        self.0.begin(trial_days as u32, months, enough);
    }

    fn add(&mut self, year: usize, days: Vec<HoursOfDay>) {
        self.0.add(year as u32, &flat(&days));
    }

    fn row(
        &mut self,
        stores: &[Store; MONTHS],
        arrays: &[f32],
        years: Range<usize>,
        counts: &mut [Counts],
    ) {
        let found = self.0.row(&flat(stores), arrays, years.start as u32, years.end as u32);
        for (own, found) in counts.iter_mut().zip(found.as_chunks::<MONTHS>().0) {
            *own = *found;
        }
    }

    fn ahead(
        &mut self,
        number: usize,
        stores: &[Store; MONTHS],
        arrays: &[f32],
        years: Range<usize>,
    ) -> bool {
        let (from, to) = (years.start as u32, years.end as u32);
        self.0.ahead(number as u32, &flat(stores), arrays, from, to)
    }

    fn taken(&mut self) -> Option<(usize, usize, Vec<Counts>)> {
        let found = self.0.taken();
        let ([number, first], counts) = found.split_first_chunk()?;
        Some(((*number).into(), (*first).into(), counts.as_chunks::<MONTHS>().0.to_vec()))
    }
}

impl Clerk for Desk {
    fn take(&mut self, message: &Array) {
        if let Some(request) = request(message) {
            Desk::take(self, request);
        }
    }

    fn work(&mut self) -> JsValue {
        match Desk::work(self) {
            None => JsValue::UNDEFINED,
            Some(None) => JsValue::NULL,
            Some(Some(answer)) => message(answer).into(),
        }
    }

    fn bring_lanes(&mut self, lanes: LanesProgram) {
        self.bring_rows(Box::new(Beside(lanes)));
    }
}

/// The chunk did not come.
struct Missed;

impl From<SplitLoaderError> for Missed {
    fn from(_: SplitLoaderError) -> Self {
        Self
    }
}

/// A clerk at an empty desk.
#[wasm_split(desk, fallible)]
fn clerk() -> Result<Box<dyn Clerk>, Missed> {
    Ok(Box::new(Desk::new(Words::of(PAGE))))
}

/// Fetches the desk; refused if it does not come.
///
/// # Errors
/// Nothing more is known of it than that.
#[wasm_bindgen]
pub async fn open_desk() -> Result<(), JsValue> {
    let clerk = clerk().await.map_err(|Missed| JsValue::NULL)?;
    CLERK.set(Some(clerk));
    Ok(())
}

/// Has sizes worked out by the program that is built for it, from the next plan on.
#[wasm_bindgen]
pub fn bring_lanes(lanes: LanesProgram) {
    CLERK.with_borrow_mut(|clerk| {
        if let Some(clerk) = clerk {
            clerk.bring_lanes(lanes);
        }
    });
}

/// Takes a message of the page.
#[wasm_bindgen]
pub fn take(message: &Array) {
    CLERK.with_borrow_mut(|clerk| {
        if let Some(clerk) = clerk {
            clerk.take(message);
        }
    });
}

/// Works off one piece of what waits and gives the message for the page: `null` if there is nothing to say yet, `undefined` if
/// nothing waits.
#[wasm_bindgen]
#[must_use]
pub fn work() -> JsValue {
    CLERK.with_borrow_mut(|clerk| clerk.as_mut().map_or(JsValue::UNDEFINED, |clerk| clerk.work()))
}

/// An answer as a message.
fn message(answer: Answer) -> Array {
    match answer {
        Answer::Written { serial, wish, written } => {
            let message = Array::of3(&WRITTEN.into(), &serial.into(), &wish.into());
            message.push(&written.text.into());
            message.push(&Float64Array::from(written.numbers.as_slice()).into());
            message
        }
        Answer::Foretold { serial, done, sentences, band, seldom } => {
            let message = Array::of3(&FORETOLD.into(), &serial.into(), &done.into());
            message.push(&sentences.into());
            message.push(&Float64Array::from(band.as_slice()).into());
            message.push(&seldom.into());
            message
        }
        Answer::Replayed { serial, sentences, path } => {
            let message = Array::of3(&REPLAYED.into(), &serial.into(), &sentences.into());
            message.push(&Float64Array::from(path.as_slice()).into());
            message
        }
    }
}

/// A message as a request.
fn request(message: &Array) -> Option<Request> {
    let number = |place: u32| message.get(place).as_f64();
    let serial = number(1)? as u32;
    let kind = number(0)?;
    if kind == f64::from(PLAN) {
        let code = message.get(2).as_string()?;
        let habits = Habits::of_bits(number(3)? as u32);
        let climate = (4..message.length()).map(number).collect::<Option<_>>()?;
        return Some(Request::Plan { serial, code, habits, climate });
    }
    if kind == f64::from(WEATHER) {
        let spread: Vec<f64> = (2..message.length()).map(number).collect::<Option<_>>()?;
        return Some(Request::Weather { serial, spread: spread_of(&spread)? });
    }
    if kind == f64::from(YEAR) {
        let code = message.get(2).as_string()?;
        return Some(Request::Year { code, text: message.get(3).as_string() });
    }
    if kind == f64::from(REPLAY) {
        return Some(Request::Replay { serial });
    }
    if kind != f64::from(LEAF) {
        return None;
    }
    let leaf = Leaf::from_number(number(3)? as usize)?;
    let argument = message.get(4).as_string()?;
    Some(Request::Leaf { serial, wish: number(2)? as u32, leaf, argument })
}
