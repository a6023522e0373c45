//! What the list of loads says, and the buttons beside what can be mended or taken over.

use crate::document::Field;
use crate::words::Words;

use super::problems::field;

/// The switch of a load that is taken along or left at home.
#[must_use]
pub fn take_along(name: &str) -> String {
    format!("Take along: {name}")
}

/// The grip by which a load is moved in the list.
#[must_use]
pub fn move_load(name: &str) -> String {
    format!("Move: {name}. Arrow keys move it up and down.")
}

/// How many loads a group has, and how many of them stay at home.
#[must_use]
pub fn in_group(loads: usize, at_home: usize) -> String {
    let loads = if loads == 1 { "1 load".to_owned() } else { format!("{loads} loads") };
    if at_home == 0 { loads } else { format!("{loads}, {at_home} left at home") }
}

/// A load's part of what goes out in a day.
#[must_use]
pub fn share_of_day(percent: &str) -> String {
    format!("{percent} % of the day")
}

/// That a group was left at home, or taken along again.
#[must_use]
pub fn group_switched(group: &str, on: bool) -> String {
    if on { format!("Taken along: {group}.") } else { format!("Left at home: {group}.") }
}

/// A stretch of the day under the brush, and whether the load is on in it.
#[must_use]
pub fn on_at(from: &str, to: &str, on: bool) -> String {
    format!("{from} – {to}: {}", if on { "on" } else { "off" })
}

/// When the sun rises and sets on the drawn day.
#[must_use]
pub fn sun_from_to(rise: &str, set: &str, month: &str) -> String {
    format!("Sun in {month}: {rise} – {set}")
}

/// The button that gives the array a tilt.
#[must_use]
pub fn use_tilt(tilt: &str) -> String {
    format!("Use {tilt}")
}

/// The button that puts a fitting inverter into the plan.
#[must_use]
pub fn use_inverter(power: &str) -> String {
    format!("Use an inverter of {power}")
}

/// That an inverter of a size is in the plan now.
#[must_use]
pub fn added_inverter(power: &str) -> String {
    format!("The plan has an inverter of {power} now.")
}

/// That a field counts in whole numbers, and that what was typed is none.
#[must_use]
pub fn whole_number(words: Words, own: Field, typed: &str) -> String {
    let range = own.range();
    let given = |value: f64| words.as_given(words.shown(own, value));
    let (least, most) = (given(range.min), given(range.max));
    format!("{} is a whole number from {least} to {most}; “{typed}” is none.", field(own))
}

/// That the answers are those of before a wrong entry.
#[must_use]
pub fn before_wrong_entry() -> &'static str {
    "This answer is of the plan before a wrong entry:"
}

/// The name of a direction, by its place in steps of 30° clockwise from north.
#[must_use]
pub fn direction(place: usize) -> &'static str {
    const NAMES: [&str; 12] = [
        "N, 0°",
        "NNE, 30°",
        "ENE, 60°",
        "E, 90°",
        "ESE, 120°",
        "SSE, 150°",
        "S, 180°",
        "SSW, 210°",
        "WSW, 240°",
        "W, 270°",
        "WNW, 300°",
        "NNW, 330°",
    ];
    NAMES.get(place).copied().unwrap_or_default()
}
