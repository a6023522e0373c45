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
        None => format!("{charge} y {power}: aún sin calcular."),
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

/// What a change comes to.
#[must_use]
pub fn helped(words: Words, change: &str, chance: f64, shortage: f64, trials: bool) -> String {
    let chance = words.chance(chance);
    if trials {
        return format!("{change}: se cumple con una probabilidad de {chance}.");
    }
    let days = words.rounded(shortage);
    format!(
        "{change}: se cumple con una probabilidad de {chance}; quedan {days} días cortos al año."
    )
}

/// How sizes and changes are worked out.
#[must_use]
pub fn method(years: usize) -> [String; 3] {
    [
        format!("Cada tamaño pasa hora a hora por {years} años de tiempo inventado, o por tantas pruebas como quepan. Una probabilidad es la parte de ellos en que se cumple lo prometido."),
        "El mapa cuenta con tensiones y cargas algo redondeadas; lo propuesto, el banco y el campo más pequeños, las horas de cargador y cada cambio se calculan de nuevo con el modelo entero.".to_owned(),
        "Un banco del doble son dos como el tuyo en paralelo; un campo del doble tiene el doble de cadenas y el doble de regulador. Son estimaciones, no una promesa del tiempo.".to_owned(),
    ]
}

/// The size that costs or weighs least.
#[must_use]
pub fn least_of_all(words: Words, size: Sized, sum: f64, weight: bool) -> String {
    let (charge, power) = (words.amount(size.charge), words.amount(size.power));
    let sum = words.rounded(sum);
    if weight {
        format!(
            "Lo más ligero que lo cumple: un banco de {charge} y un campo de {power}, {sum}\u{a0}kg en total."
        )
    } else {
        format!(
            "Lo más barato que lo cumple: un banco de {charge} y un campo de {power}, {sum} en total."
        )
    }
}
