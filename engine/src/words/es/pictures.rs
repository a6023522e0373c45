//! What stands in and behind the year carpet and the picture of a day's flow.

use super::calendar::month;
use crate::outlook::{DayFlow, End};
use crate::quantity::{Percent, WattHours};
use crate::simulate::YearRun;
use crate::words::{Words, decimal};

/// Hours of a year under the reserve from which they are told as days.
const MANY_HOURS: f64 = 72.0;

/// A year in a sentence or two: its lowest charge and how long it is under the reserve.
#[must_use]
pub fn year(words: Words, run: &YearRun, reserve: Percent) -> String {
    let months = run.months.iter().enumerate();
    let lowest = months.reduce(|low, own| if own.1.lowest < low.1.lowest { own } else { low });
    let lowest = lowest.map_or_else(String::new, |(at, own)| {
        let charge = decimal(own.lowest * 100.0, 0);
        format!("La carga más baja es del {charge} %, en {}.", month(at))
    });
    let below = run.below_reserve().0;
    if below <= 0.0 {
        return format!("Nunca por debajo de la reserva del {}. {lowest}", words.amount(reserve));
    }
    let long = if below < 1.0 {
        "Menos de una hora".to_owned()
    } else if below < 1.5 {
        "Una hora".to_owned()
    } else if below < MANY_HOURS {
        format!("{} horas", decimal(below, 0))
    } else {
        format!("El equivalente a {} días", decimal(below / 24.0, 0))
    };
    format!("{long} por debajo de la reserva del {}. {lowest}", words.amount(reserve))
}

/// States of charge from one to another, both \[%\].
#[must_use]
pub fn charge_between(from: f64, to: f64) -> String {
    format!("{}–{} %", decimal(from, 0), decimal(to, 0))
}

/// What the hatched hours are.
pub const UNDER_RESERVE: &str = "por debajo de la reserva";

/// What the lines across the carpet are.
pub const SUNRISE_AND_SUNSET: &str = "salida y puesta del sol";

/// The heads of the table behind the carpet.
pub const YEAR_HEADS: [&str; 6] = [
    "Mes",
    "Mínimo, %",
    "Bajo la reserva, h",
    "Sin servicio, h",
    "Días en que gana",
    "Días en que se llena",
];

/// Where energy comes from or goes; a load goes by its name.
#[must_use]
pub fn end(end: End) -> &'static str {
    match end {
        End::Sun => "Sol",
        End::Turbine => "Viento o agua",
        End::Engine => "Motor",
        End::Generator => "Generador",
        End::Shore => "Toma de puerto o red",
        End::FromBank => "Sale del banco",
        End::Load(_) => "Un consumo",
        End::Conversion => "Se pierde en el inversor",
        End::InverterIdle => "Inversor en vacío",
        End::Standing => "Consumo permanente",
        End::Controller => "Se pierde en el regulador",
        End::Charging => "Se pierde al cargar",
        End::SelfDischarge => "Autodescarga",
        End::Protection => "Circuitos de protección",
        End::NotTaken => "Sin aprovechar: banco lleno",
        End::IntoBank => "Entra en el banco",
    }
}

/// What a source gives \[W\].
#[must_use]
pub fn power_from(source: End, watts: &str) -> String {
    let name = match source {
        End::Sun => "sol",
        End::Turbine => "viento o agua",
        End::Engine => "motor",
        _ => "toma de puerto o red",
    };
    format!("{name} {watts} W")
}

/// What is read at an hour of a typical day: in by source, and out \[W\].
#[must_use]
pub fn day_reading(from: &str, to: &str, into: &[String], out: &str) -> String {
    let into = if into.is_empty() { "nada".to_owned() } else { into.join(", ") };
    format!("De {from} a {to}: entra {into}; sale {out} W.")
}

/// So many loads that are too small to be drawn one by one.
#[must_use]
pub fn other_loads(count: usize) -> String {
    if count == 1 { "1 consumo menor".into() } else { format!("{count} consumos menores") }
}

/// Losses that are too small to be drawn one by one.
pub const SMALL_LOSSES: &str = "Pérdidas pequeñas";

/// A part of a whole (ratio).
#[must_use]
pub fn share(part: f64) -> String {
    if part > 0.0 && part < 0.005 {
        "< 1 %".into()
    } else {
        format!("{} %", decimal(part * 100.0, 0))
    }
}

/// The flow of a day in a sentence or two.
#[must_use]
pub fn flow(words: Words, flow: &DayFlow) -> String {
    let came = flow.came();
    if came.0 <= 0.0 {
        return format!("En un día medio de {} no entra ni sale nada.", month(flow.month));
    }
    let given = flow.to.iter().filter(|own| matches!(own.end, End::Load(_)));
    let given: WattHours = given.map(|own| own.energy).sum();
    let mut said = format!(
        "En un día medio de {}, cuando tales días se repiten, circulan {}; tus consumos reciben el {}.",
        month(flow.month),
        words.energy(came),
        share(given / came)
    );
    if flow.unmet.0 > 0.0 {
        said.push_str(&format!(" Les faltan otros {}.", words.energy(flow.unmet)));
    }
    said
}

/// The heads of the table behind the flow.
pub const FLOW_HEADS: [&str; 3] = ["De un día medio", "Wh", "Parte"];

/// What comes in and what goes out, as rows beside their parts, and what the loads went without.
pub const FLOW_SUMS: [&str; 3] = ["Todo lo que entra", "Todo lo que sale", "Pedido y no recibido"];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Language;

    #[test]
    fn shares_stay_short() {
        assert_eq!(share(0.0), "0 %");
        assert_eq!(share(0.001), "< 1 %");
        assert_eq!(share(0.316), "32 %");
    }

    #[test]
    fn a_day_of_nothing_is_said() {
        let nothing = DayFlow { month: 3, ..DayFlow::default() };
        assert_eq!(
            flow(Words::of(Language::Spanish), &nothing),
            "En un día medio de abril no entra ni sale nada."
        );
    }
}
