//! The worker's program: binds the desk to the browser. `app/web/worker.js` calls what is exported here.

use std::cell::RefCell;

use js_sys::{Array, Float64Array};
use sunlarder_engine::words::Language;
use sunlarder_worker::desk::Desk;
use sunlarder_worker::leaf::Leaf;
use sunlarder_worker::message::{
    Answer, FORETOLD, LEAF, PLAN, REPLAY, REPLAYED, Request, WEATHER, WRITTEN, YEAR, spread_of,
};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

thread_local! {
    static DESK: RefCell<Desk> = RefCell::new(Desk::new(Language::English));
}

fn main() {}

/// Takes a message of the page; one that is no request is not heeded.
#[wasm_bindgen]
pub fn take(message: &Array) {
    if let Some(request) = request(message) {
        DESK.with_borrow_mut(|desk| desk.take(request));
    }
}

/// Works off one piece of what waits and gives the message for the page: `null` if there is nothing to say yet, `undefined` if
/// nothing waits.
#[wasm_bindgen]
#[must_use]
pub fn work() -> JsValue {
    match DESK.with_borrow_mut(Desk::work) {
        None => JsValue::UNDEFINED,
        Some(None) => JsValue::NULL,
        Some(Some(answer)) => message(answer).into(),
    }
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
        Answer::Foretold { serial, done, sentences, band } => {
            let message = Array::of3(&FORETOLD.into(), &serial.into(), &done.into());
            message.push(&sentences.into());
            message.push(&Float64Array::from(band.as_slice()).into());
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
        let climate = (3..message.length()).map(number).collect::<Option<_>>()?;
        return Some(Request::Plan { serial, code, climate });
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
