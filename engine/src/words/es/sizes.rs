//! Words of the map of sizes.

use crate::words::Words;
use crate::words::sizes::Mark;
use crate::words::sizing::Sized;

/// What a mark is.
#[must_use]
pub fn mark(mark: Mark) -> &'static str {
    match mark {
        Mark::Own => "tu plan",
        Mark::Suggested => "lo menos que añadir",
        Mark::Cheapest => "lo más barato",
        Mark::Lightest => "lo más ligero",
    }
}

/// What the thick line is.
#[must_use]
pub fn promised_line(words: Words, chance: f64) -> String {
    format!("se cumple con {}: lo prometido", words.chance(chance))
}

/// From which to which size the map reaches.
#[must_use]
pub fn map_of_sizes(words: Words, least: Sized, most: Sized) -> String {
    format!(
        "La probabilidad de cumplir lo prometido, con bancos de {} a {} hacia la derecha y campos de {} a {} hacia arriba.",
        words.amount(least.charge),
        words.amount(most.charge),
        words.amount(least.power),
        words.amount(most.power),
    )
}

/// A point of the map.
#[must_use]
pub fn point_of_map(words: Words, size: Sized, chance: Option<f64>) -> String {
    let (charge, power) = (words.amount(size.charge), words.amount(size.power));
    match chance {
        Some(chance) => format!(
            "{} y {}: se cumple con una probabilidad de {}.",
            charge,
            power,
            words.chance(chance)
        ),
        None => format!("{} y {}: aún sin calcular.", charge, power),
    }
}

/// How far the work is.
#[must_use]
pub fn sizes_coming(words: Words, done: f64, seconds: Option<u32>) -> String {
    match seconds {
        None => format!("Calculando: {}.", words.chance(done)),
        Some(seconds) => format!("Calculando: {}; faltan unos {seconds} s.", words.chance(done)),
    }
}
