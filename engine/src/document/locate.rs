//! Finds the field at fault in a file that is JSON but no plan.
//!
//! The deserialiser tells what is wrong but seldom where. It stops at the first fault, so the culprit of an object is the
//! field without which the message changes. That costs a few more readings, and only of a file that is refused anyway.

use serde::de::DeserializeOwned;
use serde_json::Value;

use super::sections::{Array, Bank, Charger, Document, Inverter, Load, Place, Start};
use super::{FieldFault, Problem};

/// The fault of `plan`, for which the deserialiser gave `message`.
pub(super) fn problem(plan: Value, message: &str) -> Problem {
    let (fault, named) = kind(message);
    let culprit = culprit::<Document>(&plan, message);
    let path = match culprit.as_deref() {
        None => named.to_owned(),
        Some(key) => within(&plan, key).unwrap_or_else(|| key.to_owned()),
    };
    Problem::WrongField { path, fault }
}

/// Which fault the deserialiser means, and the field it names. Its sentences are stable enough for this and never shown;
/// anything unforeseen counts as the wrong kind, which is still true.
fn kind(message: &str) -> (FieldFault, &str) {
    let named = message.split('`').nth(1).unwrap_or_default();
    if message.starts_with("unknown field") {
        (FieldFault::Unknown, named)
    } else if message.starts_with("missing field") {
        (FieldFault::Missing, named)
    } else {
        (FieldFault::WrongKind, "")
    }
}

/// The field of an object without which it reads, or fails for another reason.
fn culprit<T: DeserializeOwned>(object: &Value, message: &str) -> Option<String> {
    let fields = object.as_object()?;
    let changes = |key: &&String| {
        let mut less = fields.clone();
        less.remove(*key);
        match serde_json::from_value::<T>(Value::Object(less)) {
            Ok(_) => true,
            Err(fault) => fault.to_string() != message,
        }
    };
    fields.keys().find(changes).cloned()
}

/// The path of the fault inside a section of the plan.
fn within(plan: &Value, key: &str) -> Option<String> {
    let section = plan.get(key)?;
    match key {
        "place" => inside::<Place>(section, key),
        "start" => inside::<Start>(section, key),
        "bank" => inside::<Bank>(section, key),
        "inverter" => inside::<Inverter>(section, key),
        "shore" | "alternator" => inside::<Charger>(section, key),
        "loads" => inside_list::<Load>(section, key),
        "arrays" => inside_list::<Array>(section, key),
        _ => None,
    }
}

fn inside<T: DeserializeOwned>(section: &Value, path: &str) -> Option<String> {
    let message = serde_json::from_value::<T>(section.clone()).err()?.to_string();
    let (_, named) = kind(&message);
    // An unknown or missing field is named; one of the wrong kind is found.
    let own = culprit::<T>(section, &message).unwrap_or_else(|| named.to_owned());
    Some(if own.is_empty() { path.to_owned() } else { format!("{path}.{own}") })
}

fn inside_list<T: DeserializeOwned>(list: &Value, path: &str) -> Option<String> {
    let mut items = list.as_array()?.iter().enumerate();
    items.find_map(|(at, item)| inside::<T>(item, &format!("{path}[{at}]")))
}
