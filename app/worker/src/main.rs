//! The worker's program: binds the desk to the browser. `app/web/worker.js` calls what is exported here.

use std::cell::RefCell;

use js_sys::Array;
use sunlarder_engine::words::Language;
use sunlarder_worker::desk::Desk;
use sunlarder_worker::message::{PLAN, Request, WORK, WORKED};
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

/// Works off one piece of what waits and gives the message for the page, or `undefined` if nothing waits.
#[wasm_bindgen]
#[must_use]
pub fn work() -> JsValue {
    let Some(worked) = DESK.with_borrow_mut(Desk::work) else { return JsValue::UNDEFINED };
    let question = worked.question as u32;
    let message = Array::of3(&WORKED.into(), &worked.serial.into(), &question.into());
    message.push(&worked.sheet.into());
    message.into()
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
    (kind == f64::from(WORK)).then_some(Request::Work { serial, questions: number(2)? as u32 })
}
