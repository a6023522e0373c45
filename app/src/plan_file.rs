//! Plans from the text of a file. The browser parses it, so that the page carries no parser.

#[cfg(not(target_arch = "wasm32"))]
use sunlarder_engine::document::{Document, Problem};

/// The plan of a text.
///
/// # Errors
/// What is wrong with it.
#[cfg(not(target_arch = "wasm32"))]
pub(crate) fn plan_of(text: &str) -> Result<Document, Problem> {
    Document::from_json(text)
}

#[cfg(target_arch = "wasm32")]
pub(crate) use parsed::plan_of;

#[cfg(target_arch = "wasm32")]
mod parsed {
    use js_sys::{Array, JSON, Object};
    use sunlarder_engine::digits::places_of;
    use sunlarder_engine::document::{Document, Group, Problem, Value};
    use wasm_bindgen::{JsCast, JsValue};

    /// No plan is nested deeper.
    const DEEPEST: usize = 32;

    /// The plan of a text.
    pub(crate) fn plan_of(text: &str) -> Result<Document, Problem> {
        Document::from_text(text, |text| {
            let parsed = JSON::parse(text).map_err(|error| fault(&error))?;
            value(&parsed, DEEPEST).ok_or(Problem::NotAPlan)
        })
    }

    /// Where the browser says that the fault is, as far as it does.
    fn fault(error: &JsValue) -> Problem {
        let message = error.dyn_ref::<js_sys::Error>().map(|own| String::from(own.message()));
        let message = message.unwrap_or_default();
        let behind = |word: &str| {
            let rest = message.get(places_of(&message, word).next()? + word.len()..)?;
            let end = rest.find(|own: char| !own.is_ascii_digit()).unwrap_or(rest.len());
            rest[..end].parse().ok()
        };
        let place = behind("line ").zip(behind("column "));
        let (line, column) = place.unwrap_or_default();
        Problem::NotJson { line, column }
    }

    /// What the browser parsed; nothing of what is nested too deep.
    fn value(own: &JsValue, deeper: usize) -> Option<Value> {
        let deeper = deeper.checked_sub(1)?;
        if let Some(text) = own.as_string() {
            return Some(Value::Text(text));
        }
        if let Some(number) = own.as_f64() {
            return Some(Value::Number(number));
        }
        if let Some(is) = own.as_bool() {
            return Some(Value::Bool(is));
        }
        if let Some(list) = own.dyn_ref::<Array>() {
            return list
                .iter()
                .map(|own| value(&own, deeper))
                .collect::<Option<_>>()
                .map(Value::List);
        }
        let Some(group) = own.dyn_ref::<Object>() else { return Some(Value::Null) };
        let entry = |entry: JsValue| {
            let entry: Array = entry.unchecked_into();
            Some((entry.get(0).as_string()?, value(&entry.get(1), deeper)?))
        };
        let entries = Object::entries(group).into_iter().map(entry);
        entries.collect::<Option<_>>().map(|all| Value::Group(Group(all)))
    }
}
