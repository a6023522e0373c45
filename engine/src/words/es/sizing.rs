//! Palabras de promesas y tamaños.

use super::calendar::month;
use crate::document::Months;
use crate::quantity::{Amps, Degrees, Percent};
use crate::sizing::{Arrival, Change, Kind, Promise};
use crate::words::Words;
use crate::words::sizing::Sized;

/// What a short day is.
pub const SHORT_DAY: &str =
    "Un día corto es aquel en que el banco baja de su reserva o no puede con un consumo.";

/// That a life may depend on the plan.
pub const LIFE_DEPENDS: &str = "Puede que de esto dependa una vida: si no das otra probabilidad, no puede fallar ningún año inventado. Eso no lo demuestra; necesita un respaldo y una alarma propios.";

/// The months that count, behind a comma.
#[must_use]
pub fn season(season: Months) -> String {
    let has = |at: usize| season.has((at % 12) as u8);
    let count = (0..12).filter(|at| has(*at)).count();
    if count == 12 {
        return "en todo el año".to_owned();
    }
    // A season that runs in one piece, perhaps over the new year, is said by its ends.
    let begins: Vec<usize> = (0..12).filter(|at| has(*at) && !has(at + 11)).collect();
    match begins.as_slice() {
        [first] if count == 1 => format!("en {}", month(*first)),
        [first] => format!("de {} a {}", month(*first), month((first + count - 1) % 12)),
        _ => {
            let names: Vec<&str> = (0..12).filter(|at| has(*at)).map(month).collect();
            format!("en {}", names.join(", "))
        }
    }
}

fn days(days: u16) -> String {
    if days == 1 { "1 día".to_owned() } else { format!("{days} días") }
}

/// A promise as a sentence.
#[must_use]
pub fn promise(words: Words, promise: &Promise) -> String {
    let (when, chance) = (season(promise.season), words.chance(promise.chance.ratio()));
    let what = match promise.kind {
        Kind::Through => format!("Ningún día corto {when}"),
        Kind::ShortDays { most: 0 } => format!("Ningún día corto en diez años, {when}"),
        Kind::ShortDays { most: 1 } => format!("Como mucho 1 día corto en diez años, {when}"),
        Kind::ShortDays { most } => {
            format!("Como mucho {most} días cortos en diez años, {when}")
        }
        Kind::WithoutSun { days: count } => {
            format!("{} sin nada de sol con el banco lleno al empezar, {when}", days(count))
        }
        Kind::Trip { days: count } => {
            format!("Un viaje de {} con el banco lleno al salir, {when}", days(count))
        }
    };
    format!("{what}, con una probabilidad de al menos {chance}.")
}

/// How likely a plan keeps it as it stands.
#[must_use]
pub fn standing_chance(words: Words, chance: f64, error: f64, years: usize) -> String {
    let (chance, error) = (words.chance(chance), words.chance(error));
    if years <= 1 {
        return format!("Tal como está, el plan lo cumple con una probabilidad de {chance}.");
    }
    format!(
        "Tal como está, el plan lo cumple con una probabilidad de {chance}, más o menos {error}, según {years} años de tiempo inventado."
    )
}

fn both(words: Words, size: Sized) -> String {
    format!(
        "un banco de {} y un campo solar de {}",
        words.amount(size.charge),
        words.amount(size.power)
    )
}

/// What to make of bank and array.
#[must_use]
pub fn suggested_size(words: Words, size: Option<Sized>) -> String {
    match size {
        Some(size) => format!("Lo mínimo que añadir: {} lo cumplen.", both(words, size)),
        None => {
            "Ninguno de los tamaños probados lo cumple: usa menos o trae otra fuente.".to_owned()
        }
    }
}

/// The smallest bank beside the array as it is.
#[must_use]
pub fn smallest_bank(words: Words, size: Option<Sized>) -> String {
    match size {
        Some(size) => {
            format!(
                "Con este campo solar, el banco más pequeño que lo cumple es de {}.",
                words.amount(size.charge)
            )
        }
        None => "Con este campo solar no basta ningún banco.".to_owned(),
    }
}

/// The smallest array beside the bank as it is.
#[must_use]
pub fn smallest_array(words: Words, size: Option<Sized>) -> String {
    match size {
        Some(size) => {
            format!(
                "Con este banco, el campo solar más pequeño que lo cumple es de {}.",
                words.amount(size.power)
            )
        }
        None => "Con este banco no basta ningún campo solar.".to_owned(),
    }
}

/// Hours a week of a charger that close the gap.
#[must_use]
pub fn charger_hours(words: Words, hours: Option<u32>, charger: Amps) -> String {
    let charger = words.amount(charger);
    match hours {
        Some(1) => format!(
            "También basta una hora por semana de un cargador de {charger}, con la red o un generador."
        ),
        Some(hours) => format!(
            "También bastan {hours} horas por semana de un cargador de {charger}, con la red o un generador."
        ),
        None => format!("Un cargador de {charger} sin parar no basta."),
    }
}

/// The tilt that brings most in a month.
#[must_use]
pub fn tilt_for(words: Words, tilt: Degrees, south: bool, of: usize, chance: f64) -> String {
    let (month, chance) = (month(of), words.chance(chance));
    if tilt.0 <= 0.0 {
        return format!(
            "Tumbado, el campo solar da más en {month}; la probabilidad es entonces de {chance}."
        );
    }
    let side = if south { "sur" } else { "norte" };
    format!(
        "Hacia el {side} y a {} el campo solar da más en {month}; la probabilidad es entonces de {chance}.",
        words.amount(tilt)
    )
}

/// A change that may help.
#[must_use]
pub fn change(words: Words, change: &Change, name: &str) -> String {
    match change {
        Change::LessUse { hours, .. } => {
            format!("Usar «{name}» {} menos al día", words.amount(*hours))
        }
        Change::Direct { .. } => format!("Conectar «{name}» a corriente continua"),
        Change::MoreArray { .. } => "Una rama más de módulos".to_owned(),
        Change::Tilted { tilt } => {
            format!("Inclinar el campo solar {} hacia el ecuador", words.amount(*tilt))
        }
        Change::Tracking => "Un regulador que busca el punto máximo".to_owned(),
        Change::MoreBank => "Una batería más en paralelo".to_owned(),
        Change::Warmer { at } => format!("Tener el banco a {}", words.amount(*at)),
        Change::LongerEngine { hours } => {
            format!("Tener el motor en marcha {} más al día", words.amount(*hours))
        }
        Change::OtherMonths { season: other } => format!("Elegir otra época: {}", season(*other)),
        Change::Reserve { to } => format!("Guardar {} de reserva", words.amount(*to)),
    }
}

/// Two changes at the same time.
#[must_use]
pub fn both_changes(first: &str, second: &str) -> String {
    format!("{first} + {second}")
}

/// What another reserve would come to.
#[must_use]
pub fn reserve_kept(words: Words, to: Percent, less: bool, chance: f64) -> String {
    let (to, chance) = (words.amount(to), words.chance(chance));
    if less {
        format!(
            "Con solo {to} de reserva la probabilidad sería de {chance}; quedaría menos cuando algo falle."
        )
    } else {
        format!(
            "Con {to} de reserva la probabilidad sería de {chance}; quedaría más cuando algo falle."
        )
    }
}

/// The evenings of a stay.
const EVENINGS: [&str; 3] = ["esa misma tarde", "la tarde siguiente", "la tarde después"];

/// How late one can arrive at the reserve and still leave full.
#[must_use]
pub fn arrival(words: Words, arrival: &Arrival) -> String {
    let month = month(arrival.month);
    let mut parts = Vec::new();
    for (latest, evening) in arrival.latest.iter().zip(EVENINGS) {
        match latest {
            Some(Arrival::WHENEVER) => {
                parts.push(format!("{evening} a cualquier hora que se llegue"));
                break;
            }
            Some(hour) => {
                let clock = words.clock(u16::from(*hour) * 60);
                parts.push(format!("{evening} si se llega antes de las {clock}"));
            }
            None => {}
        }
    }
    if parts.is_empty() {
        return format!(
            "Con el cielo típico de {month}, un banco en su reserva no se llena en tres días."
        );
    }
    format!(
        "Con el cielo típico de {month}, un banco en su reserva está lleno {}.",
        parts.join(", ")
    )
}
