//! What an ensemble of weathers says, in ranges and never finer than the sample knows.

use super::calendar::month;
use super::verdict::moment;
use crate::bank::{Ageing, Wear};
use crate::outlook::clock_time;
use crate::quantity::{Hours, Within};
use crate::simulate::{BLOCK_YEARS, Chances, GeneratorYears, RUN_DAYS, Range};
use crate::sky::Trust;
use crate::system::System;

/// Most and fewest of ten years, and the middle.
fn of_ten(range: &Range) -> [u32; 3] {
    [range.low, range.middle, range.high].map(|years| years.round().within(0.0, 10.0) as u32)
}

/// In how many of ten years a month stays over the reserve; of what lives depend on, in how many it does not.
#[must_use]
pub fn month_kept(chances: &Chances, of: usize, vital: bool) -> String {
    let name = month(of);
    let Some(range) = chances.months_kept.get(of) else { return String::new() };
    if vital {
        return month_missed(range, name);
    }
    let years = match of_ten(range) {
        [10, ..] => "los diez años de cada diez".to_owned(),
        [_, _, 0] => "cero años de cada diez".to_owned(),
        [1, _, 1] => "1 año de cada diez".to_owned(),
        [low, _, high] if low == high => format!("{low} años de cada diez"),
        [low, middle, high] => {
            format!("de {low} a {high} años de cada diez; lo más probable, {middle}")
        }
    };
    format!("En {name} te mantienes por encima de la reserva {years}.")
}

/// Nine of ten is no comfort where a life may depend on it: what counts are the years in which it fails.
fn month_missed(range: &Range, name: &str) -> String {
    let years = match of_ten(range).map(|kept| 10 - kept) {
        [0, ..] => {
            return format!(
                "En ningún {name} inventado baja el banco de tu reserva; una vida no debe fiarse solo de eso."
            );
        }
        [_, _, 10] => {
            return format!(
                "Todos los años el banco baja de tu reserva en {name}. Donde puede depender una vida, ni un año así es aceptable: agranda el banco o el campo."
            );
        }
        [1, _, 1] => "1 año".to_owned(),
        [most, _, least] if most == least => format!("{most} años"),
        [1, _, 0] => "hasta 1 año".to_owned(),
        [10, _, 0] => "de ninguno a todos los años".to_owned(),
        [10, _, least] => format!("{least} años o más"),
        [most, _, 0] => format!("hasta {most} años"),
        [most, _, least] => format!("de {least} a {most} años"),
    };
    format!(
        "En {name} el banco baja de tu reserva {years} de cada diez. Donde puede depender una vida, ni un año así es aceptable: agranda el banco o el campo."
    )
}

/// The same in a table: `9 (6–10)`.
#[must_use]
pub fn of_ten_years(range: &Range) -> String {
    match of_ten(range) {
        [low, middle, high] if low == high => format!("{middle}"),
        [low, middle, high] => format!("{middle} ({low}–{high})"),
    }
}

/// When the reserve comes, from the start of the plan.
#[must_use]
pub fn when(chances: &Chances, system: &System) -> String {
    if system.start.charge <= system.bank.reserve.ratio() {
        return String::new();
    }
    let span = (RUN_DAYS * 24) as f64;
    let at = |hours: f64| moment(clock_time(system, Hours(hours)), Hours(hours));
    let Range { low, middle, high } = chances.to_reserve;
    let reached = chances.reached.last().copied().unwrap_or_default();
    if high < span {
        let (low, high) = (at(low), at(high));
        return if low == high {
            format!("En ocho de cada diez casos tu reserva llega {low}.")
        } else {
            format!("En ocho de cada diez casos tu reserva llega entre {low} y {high}.")
        };
    }
    if low < span {
        let share = (reached * 10.0).round().within(1.0, 9.0) as u32;
        let usual = if middle < span {
            format!("; lo más probable, antes de acabar {}", at(middle))
        } else {
            String::new()
        };
        return format!(
            "En {share} de cada diez casos tu reserva llega en {RUN_DAYS} días{usual}; en el más gris de cada diez, ya {}.",
            at(low)
        );
    }
    let runs = chances.runs;
    match (reached * f64::from(runs)).round() as u32 {
        0 => format!("En ninguno de los {runs} casos llega tu reserva en {RUN_DAYS} días."),
        few => format!("En {few} de los {runs} casos llega tu reserva en {RUN_DAYS} días."),
    }
}

/// A range of counts with a word for their unit.
fn counts(range: &Range, one: &str, many: &str) -> String {
    let [low, high] = [range.low, range.high].map(|at| two_digits(at.max(0.0)));
    match (low == high, low.as_str()) {
        (true, "1") => format!("1 {one}"),
        (true, _) => format!("{low} {many}"),
        _ => format!("de {low} a {high} {many}"),
    }
}

/// Two digits and no fraction: ranges of weather know no more.
fn two_digits(value: f64) -> String {
    let mut unit = 1.0;
    // Beyond a year's hours there is nothing to count.
    while value >= 100.0 * unit && unit < 1e6 {
        unit *= 10.0;
    }
    format!("{}", ((value / unit).round() * unit) as u64)
}

/// Hours short, dull spells, days without a full charge.
#[must_use]
pub fn over_years(chances: &Chances) -> Vec<String> {
    let mut lines = Vec::new();
    if chances.blocks == 0 {
        return lines;
    }
    lines.push(if chances.short_hours.high < 1.0 {
        "Ningún consumo queda sin servicio ni una hora al año.".to_owned()
    } else {
        let hours = counts(&chances.short_hours, "hora", "horas");
        format!("Tiempo al año con consumos sin servicio: {hours}.")
    });
    if chances.low_hours.high >= 1.0 {
        let hours = counts(&chances.low_hours, "hora", "horas");
        lines.push(format!("Tiempo al año con el banco por debajo de su reserva: {hours}."));
    }
    if let Some(dull) = &chances.dull_days {
        lines.push(if dull.high < 1.0 {
            "Ningún día da menos de la mitad de lo que usas.".to_owned()
        } else {
            format!(
                "La racha más larga de días que dan menos de la mitad de lo que usas, en {BLOCK_YEARS} años: {}.",
                counts(dull, "día", "días")
            )
        });
    }
    lines.extend(chances.generator.as_ref().map(generator));
    lines.extend(chances.ageing.as_ref().map(life));
    lines.push(between_full(&chances.days_without_full));
    lines
}

/// How long the generator runs, and what it burns where that is known.
fn generator(years: &GeneratorYears) -> String {
    let hours = counts(&years.hours, "hora", "horas");
    match &years.fuel {
        Some(fuel) => {
            let fuel = counts(fuel, "litro", "litros");
            format!("Al año, el generador funciona {hours} y quema {fuel}.")
        }
        None => format!("Al año, el generador funciona {hours}."),
    }
}

/// The longest time between two full charges; a whole block of years is never.
fn between_full(days: &Range) -> String {
    let never = (BLOCK_YEARS * 365) as f64;
    if days.low >= never {
        return format!("En {BLOCK_YEARS} años el banco nunca llega a cargarse del todo.");
    }
    let time = if days.high >= never {
        format!("de {} días a todos ellos", two_digits(days.low))
    } else {
        counts(days, "día", "días")
    };
    format!("El tiempo más largo entre dos cargas completas, en {BLOCK_YEARS} años: {time}.")
}

/// How long the bank lives, and what shortens that.
fn life(ageing: &Ageing) -> String {
    let (low, high) = ageing.years;
    let years = counts(&Range { low, middle: low, high }, "año", "años");
    let why = match ageing.shortened_by {
        Wear::Cycles => "los ciclos",
        Wear::Years => "el propio paso del tiempo",
        Wear::Warmth => "el calor en que está",
    };
    if high <= 0.0 {
        return "El banco ya ha bajado al 80 % de su capacidad nominal, donde se da por acabada su vida.".into();
    }
    let cycles = match two_digits(ageing.full_cycles).as_str() {
        "0" => "casi nunca lo vacías".to_owned(),
        "1" => "lo gastas entero cerca de una vez al año".to_owned(),
        cycles => format!("lo gastas entero {cycles} veces al año"),
    };
    format!(
        "Según lo típico de su clase, tiempo hasta que el banco baja al 80 %: {years}. Lo que más lo gasta: {why}; tú {cycles}."
    )
}

/// How far the climate itself is known, said in sizes of the array, and what the ranges are.
#[must_use]
pub fn doubt(trust: Trust, chances: &Chances) -> String {
    let years = chances.blocks as usize * BLOCK_YEARS;
    let known = match trust {
        Trust::Grid => {
            "El mapa del clima da el sol de un lugar con un error equivalente a un 15 o 20 % del tamaño del campo; unas horas de sol pico propias lo reducen a la mitad."
        }
        Trust::Own => {
            "Tus propias horas de sol pico dejan una duda equivalente a un 10 % del tamaño del campo."
        }
        Trust::Certain => "El clima se da por seguro.",
    };
    format!(
        "Los intervalos abarcan ocho de cada diez resultados, de {years} años de meteorología inventada y {} comienzos. {known}",
        chances.runs
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn range(low: f64, middle: f64, high: f64) -> Range {
        Range { low, middle, high }
    }

    #[test]
    fn months_are_counted_in_ten_years() {
        let mut chances = Chances { blocks: 40, ..Chances::default() };
        let said = |chances: &Chances| month_kept(chances, 11, false);
        let begin = "En diciembre te mantienes por encima de la reserva ";
        for (years, end) in [
            (range(5.8, 9.2, 10.0), "de 6 a 10 años de cada diez; lo más probable, 9."),
            (range(10.0, 10.0, 10.0), "los diez años de cada diez."),
            (range(0.0, 0.0, 0.0), "cero años de cada diez."),
            (range(0.9, 1.0, 1.2), "1 año de cada diez."),
            (range(3.0, 3.0, 3.0), "3 años de cada diez."),
        ] {
            chances.months_kept[11] = years;
            assert_eq!(said(&chances), format!("{begin}{end}"));
        }
        assert_eq!(of_ten_years(&range(5.8, 9.2, 10.0)), "9 (6–10)");
    }

    #[test]
    fn where_a_life_may_depend_on_it_the_years_that_fail_are_told() {
        let mut chances = Chances { blocks: 40, ..Chances::default() };
        for (kept, said) in [
            (
                range(5.8, 9.2, 10.0),
                "En diciembre el banco baja de tu reserva hasta 4 años de cada diez.",
            ),
            (
                range(2.0, 5.0, 8.0),
                "En diciembre el banco baja de tu reserva de 2 a 8 años de cada diez.",
            ),
            (range(9.0, 9.0, 9.0), "En diciembre el banco baja de tu reserva 1 año de cada diez."),
            (range(9.9, 10.0, 10.0), "En ningún diciembre inventado baja el banco"),
        ] {
            chances.months_kept[11] = kept;
            let text = month_kept(&chances, 11, true);
            assert!(text.starts_with(said), "{text}");
            assert!(!text.contains("te mantienes"), "{text}");
        }
    }

    #[test]
    fn counts_have_two_digits_and_their_plural() {
        assert_eq!(counts(&range(0.0, 20.0, 1234.0), "hora", "horas"), "de 0 a 1200 horas");
        assert_eq!(counts(&range(1.0, 1.0, 1.2), "día", "días"), "1 día");
        assert_eq!(counts(&range(6.6, 8.0, 13.4), "día", "días"), "de 7 a 13 días");
    }
}
