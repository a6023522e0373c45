//! Lo que dice la lista de consumos, y los botones junto a lo que se puede remediar o adoptar.

use crate::document::Field;
use crate::words::Words;

use super::problems::field;

/// The switch of a load that is taken along or left at home.
#[must_use]
pub fn take_along(name: &str) -> String {
    format!("Llevar: {name}")
}

/// The grip by which a load is moved in the list.
#[must_use]
pub fn move_load(name: &str) -> String {
    format!("Mover: {name}. Las flechas lo suben y lo bajan.")
}

/// How many loads a group has, and how many of them stay at home.
#[must_use]
pub fn in_group(loads: usize, at_home: usize) -> String {
    let loads = if loads == 1 { "1 consumo".to_owned() } else { format!("{loads} consumos") };
    if at_home == 0 { loads } else { format!("{loads}, {at_home} en casa") }
}

/// A load's part of what goes out in a day.
#[must_use]
pub fn share_of_day(percent: &str) -> String {
    format!("{percent} % del día")
}

/// That a group was left at home, or taken along again.
#[must_use]
pub fn group_switched(group: &str, on: bool) -> String {
    if on { format!("Se lleva: {group}.") } else { format!("Se queda en casa: {group}.") }
}

/// A stretch of the day under the brush, and whether the load is on in it.
#[must_use]
pub fn on_at(from: &str, to: &str, on: bool) -> String {
    format!("{from} – {to}: {}", if on { "encendido" } else { "apagado" })
}

/// When the sun rises and sets on the drawn day.
#[must_use]
pub fn sun_from_to(rise: &str, set: &str, month: &str) -> String {
    format!("Sol en {month}: {rise} – {set}")
}

/// The button that gives the array a tilt.
#[must_use]
pub fn use_tilt(tilt: &str) -> String {
    format!("Usar {tilt}")
}

/// The button that puts a fitting inverter into the plan.
#[must_use]
pub fn use_inverter(power: &str) -> String {
    format!("Usar un inversor de {power}")
}

/// That an inverter of a size is in the plan now.
#[must_use]
pub fn added_inverter(power: &str) -> String {
    format!("El plan tiene ahora un inversor de {power}.")
}

/// That a field counts in whole numbers, and that what was typed is none.
#[must_use]
pub fn whole_number(words: Words, own: Field, typed: &str) -> String {
    let range = own.range();
    let given = |value: f64| words.as_given(words.shown(own, value));
    let (least, most) = (given(range.min), given(range.max));
    format!("{} es un número entero de {least} a {most}; «{typed}» no lo es.", field(own))
}

/// That the answers are those of before a wrong entry.
#[must_use]
pub fn before_wrong_entry() -> &'static str {
    "Esta respuesta es la del plan de antes de una entrada incorrecta:"
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
        "SSO, 210°",
        "OSO, 240°",
        "O, 270°",
        "ONO, 300°",
        "NNO, 330°",
    ];
    NAMES.get(place).copied().unwrap_or_default()
}
