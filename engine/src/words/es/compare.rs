//! Two plans beside each other, and guesses beside the answer.

use super::calendar::{month, month_first, month_short, weekday};
use super::verdict::duration;
use crate::document::Part;
use crate::outlook::{Figure, Guessed, HORIZON_DAYS};
use crate::quantity::{AmpHours, Hours, Watts};
use crate::words::Words;

/// A part of a plan that is none of several.
#[must_use]
pub fn part(part: Part) -> &'static str {
    match part {
        Part::Plan | Part::Load(_) | Part::Array(_) | Part::Check(_) => "Plan",
        Part::Place => "Lugar",
        Part::Start => "Inicio",
        Part::Bank => "Banco",
        Part::Inverter => "Inversor",
        Part::Shore => "Toma de puerto o red",
        Part::Alternator => "Motor",
        Part::Generator => "Generador",
        Part::Turbine => "Viento o agua",
        Part::Promise => "Lo que ha de cumplir",
        Part::Wiring => "Cómo se cablea",
        Part::Logbook => "Cuaderno del medidor",
    }
}

/// What a figure is.
#[must_use]
pub fn figure(figure: Figure) -> &'static str {
    match figure {
        Figure::Out => "Sale al día",
        Figure::In => "Entra al día",
        Figure::Balance => "Balance de un día",
        Figure::Usable => "Utilizable",
        Figure::Rated => "Capacidad nominal",
        Figure::Sun => "Potencia de los campos",
        Figure::MonthsKept => "Meses en que alcanza de media",
        Figure::Tightest => "Balance del mes más justo",
        Figure::ToReserve => "Tiempo medio, hasta la reserva",
        Figure::ToEmpty => "Tiempo medio, hasta vaciarse",
        Figure::DarkToReserve => "Sin nada de sol, hasta la reserva",
        Figure::DarkToEmpty => "Sin nada de sol, hasta vaciarse",
        Figure::Autonomy => "Días de autonomía",
    }
}

/// A figure as a size; charges have their unit elsewhere.
#[must_use]
pub fn size(words: Words, of: Figure, value: f64) -> String {
    match of {
        Figure::Sun => words.amount(Watts(value)),
        Figure::MonthsKept if value == 1.0 => "1 mes".into(),
        Figure::MonthsKept => format!("{} meses", words.rounded(value)),
        Figure::Autonomy if value == 1.0 => "1 día".into(),
        Figure::Autonomy => format!("{} días", words.rounded(value)),
        _ => duration(Hours(value)),
    }
}

/// That two figures are alike.
pub const SAME: &str = "lo mismo";

/// That a figure is more or less by a size.
#[must_use]
pub fn more(size: &str, is: bool) -> String {
    format!("{size} {}", if is { "más" } else { "menos" })
}

/// That a figure is more or less than that of another plan, or the same, by its name.
#[must_use]
pub fn than(more: Option<&str>, name: &str) -> String {
    format!("{} que {}", more.unwrap_or(SAME), called(name))
}

/// The figure of another plan, where there is nothing to take off.
#[must_use]
pub fn beside(value: &str, name: &str) -> String {
    let name = if name.is_empty() { "La referencia".into() } else { called(name) };
    format!("{name}: {value}")
}

/// Another plan by its name, which is empty where that would not tell it from this one.
fn called(name: &str) -> String {
    if name.is_empty() { "la referencia".into() } else { quoted(name) }
}

/// A name in the quotes of the language.
#[must_use]
pub fn quoted(name: &str) -> String {
    format!("«{name}»")
}

/// A part that only one plan has.
#[must_use]
pub fn there(is: bool) -> &'static str {
    if is { "presente" } else { "–" }
}

/// Yes or no.
#[must_use]
pub fn yes_or_no(is: bool) -> &'static str {
    if is { "sí" } else { "no" }
}

/// Days of the week from bits.
#[must_use]
pub fn days(bits: u32) -> String {
    if bits & 0x7f == 0x7f {
        return "todos los días".into();
    }
    listed((0..7).filter(|day| bits >> day & 1 == 1).map(weekday), "ningún día")
}

/// Months from bits.
#[must_use]
pub fn months(bits: u32) -> String {
    if bits & 0xfff == 0xfff {
        return "todo el año".into();
    }
    listed((0..12).filter(|month| bits >> month & 1 == 1).map(month_short), "ningún mes")
}

fn listed<'a>(names: impl Iterator<Item = &'a str>, none: &str) -> String {
    let names: Vec<&str> = names.collect();
    if names.is_empty() { none.into() } else { names.join(", ") }
}

/// That every month keeps up, as a guess.
pub const NO_MONTH: &str = "ninguno, alcanza todo el año";

/// Names for variants of a plan, the first not yet taken to be proposed.
pub const VARIANTS: &[&str] = &["básico", "cómodo", "invierno", "verano", "banco mayor", "más sol"];

/// What is asked.
#[must_use]
pub fn asked(what: Guessed, of_month: usize) -> String {
    let now = month(of_month);
    match what {
        Guessed::Hours => {
            format!("¿Cuántas horas pasan hasta la reserva con el tiempo medio de {now}?")
        }
        Guessed::Charge => format!("¿Cuántos amperios hora se usan en un día medio de {now}?"),
        Guessed::Month => {
            format!("A partir de {now}, ¿cuál es el primer mes en que no alcanza?")
        }
    }
}

/// What the plan comes to.
#[must_use]
pub fn answer(words: Words, what: Guessed, value: Option<f64>) -> String {
    match (what, value) {
        (_, None) => format!("En {HORIZON_DAYS} días no se llega a la reserva."),
        (Guessed::Hours, Some(hours)) => {
            format!(
                "Se llega a la reserva al cabo de {}: {}.",
                words.amount(Hours(hours)),
                duration(Hours(hours))
            )
        }
        (Guessed::Charge, Some(charge)) => {
            format!("Se usan {} al día.", words.amount(AmpHours(charge)))
        }
        (Guessed::Month, Some(value)) if value < 12.0 => {
            format!("{} es el primer mes en que no alcanza.", month_first(value as usize))
        }
        (Guessed::Month, Some(_)) => "Alcanza todos los meses.".into(),
    }
}

/// The one in the middle of the guesses.
#[must_use]
pub fn median(middle: &str) -> String {
    format!("La mitad de las estimaciones queda por encima de {middle} y la otra mitad por debajo.")
}

/// How many guesses were near.
#[must_use]
pub fn near(what: Guessed, near: usize, of: usize) -> String {
    let of = if of == 1 { "una sola estimación".into() } else { format!("{of} estimaciones") };
    let verb = |one: &str, many: &str| if near == 1 { one.to_owned() } else { many.to_owned() };
    match what {
        Guessed::Month => {
            format!("De {of}, {near} {} el mes.", verb("acertó", "acertaron"))
        }
        _ => format!(
            "De {of}, {near} {} a menos de un 20 % de la respuesta.",
            verb("quedó", "quedaron")
        ),
    }
}

/// Why a guess was refused.
#[must_use]
pub fn guess_refused(typed: &str, most: &str) -> String {
    if typed.is_empty() {
        format!("Falta la estimación; escribe un número de 0 a {most}.")
    } else {
        format!("Estimación: «{typed}» no vale. Escribe un número de 0 a {most}.")
    }
}

/// That no more guesses are taken.
#[must_use]
pub fn full_of_guesses(limit: usize) -> String {
    format!("No caben más de {limit} estimaciones. Descubre la respuesta o quita alguna.")
}

/// How many guesses there are.
#[must_use]
pub fn guesses(count: usize) -> String {
    match count {
        0 => "Aún no hay estimaciones.".into(),
        1 => "1 estimación.".into(),
        count => format!("{count} estimaciones."),
    }
}

/// Somebody who gave no name.
#[must_use]
pub fn guesser(place: usize) -> String {
    format!("Estimación {}", place + 1)
}

/// The picture of the guesses in words.
#[must_use]
pub fn spread(low: &str, high: &str, answer: &str) -> String {
    format!("Un punto por cada estimación, de {low} a {high}. {answer}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Language;

    const WORDS: Words = Words::of(Language::Spanish);

    #[test]
    fn differences_are_said_as_people_would() {
        let cases = [
            (Figure::Out, 12.0, "12\u{a0}Ah más que «Invierno»"),
            (Figure::In, -3.2, "3,2\u{a0}Ah menos que «Invierno»"),
            (Figure::MonthsKept, 1.0, "1 mes más que «Invierno»"),
            (Figure::ToReserve, 28.0, "1 día y 4 horas más que «Invierno»"),
            (Figure::Out, -0.001, "lo mismo que «Invierno»"),
        ];
        for (figure, more, text) in cases {
            assert_eq!(WORDS.than(figure, more, "Invierno"), text);
        }
        assert_eq!(WORDS.than(Figure::Out, 0.0, ""), "lo mismo que la referencia");
        assert_eq!(beside("54 %", ""), "La referencia: 54 %");
    }

    #[test]
    fn guesses_agree_with_their_number() {
        assert_eq!(near(Guessed::Month, 1, 5), "De 5 estimaciones, 1 acertó el mes.");
        let near = near(Guessed::Hours, 2, 5);
        assert_eq!(near, "De 5 estimaciones, 2 quedaron a menos de un 20 % de la respuesta.");
        assert!(WORDS.guess_refused(Guessed::Hours, " x ").starts_with("Estimación: «x» no vale."));
    }

    #[test]
    fn bits_are_listed() {
        assert_eq!(days(0b110_0000), "sábado, domingo");
        assert_eq!(months(0b11), "ene, feb");
        assert_eq!(months(0), "ningún mes");
    }
}
