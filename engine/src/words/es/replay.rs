//! What a year of weather that somebody brought does with a plan.

use chrono::{Datelike, NaiveDateTime};

use super::calendar::month;
use super::verdict::{duration, moment};
use crate::outlook::clock_time;
use crate::quantity::Hours;
use crate::simulate::{REPLAY_DAYS, Replayed, ReplayedMonth};
use crate::system::System;
use crate::words::number::grouped_count;
use crate::words::{Words, decimal};

/// Months that are named one by one; of more only the worst is.
const NAMED: usize = 4;

/// Sentences, the most important first.
#[must_use]
pub fn replayed(words: Words, replayed: &Replayed, system: &System) -> Vec<String> {
    let mut lines = vec![reserve(replayed), short(replayed), lowest(replayed)];
    lines.push(if replayed.filled {
        let longest = duration(replayed.longest_without_full);
        format!("El tiempo más largo entre dos cargas completas es de {longest}.")
    } else {
        "En ese año el banco no llega nunca a llenarse.".to_owned()
    });
    lines.extend(from_the_start(replayed, system));
    lines.push(
        "El banco entra en enero como lo dejan los tres últimos meses del archivo.".to_owned(),
    );
    lines.extend(replayed.is_far().then(|| far(words, replayed.distance_km)));
    lines.extend(replayed.contradicts().then(|| contradicts(replayed.contradiction)));
    lines
}

/// A count of hours: `210 horas`.
fn hours(time: Hours) -> String {
    match time.0.round() as usize {
        0 => "menos de una hora".to_owned(),
        1 => "1 hora".to_owned(),
        many => format!("{} horas", grouped_count(many)),
    }
}

/// The month in which something lasts longest.
fn worst(replayed: &Replayed, of: fn(&ReplayedMonth) -> Hours) -> &'static str {
    let months = replayed.months.iter().enumerate();
    let longest = months.max_by(|(_, one), (_, other)| of(one).0.total_cmp(&of(other).0));
    longest.map_or("–", |(at, _)| month(at))
}

/// In which months the bank stays over its reserve, and for how long it does not.
fn reserve(replayed: &Replayed) -> String {
    let name = match replayed.name.as_str() {
        "" => "el archivo",
        name => name,
    };
    let months = replayed.months.iter().enumerate();
    let low: Vec<(usize, Hours)> = months
        .map(|(at, month)| (at, month.below_reserve))
        .filter(|(_, time)| time.0 > 0.0)
        .collect();
    let kept = match low.len() {
        0 => {
            return format!(
                "Con el tiempo de {name} el banco se mantiene todo el año por encima de su reserva."
            );
        }
        12 => "no se mantiene por encima de su reserva ningún mes".to_owned(),
        11 => "se mantiene por encima de su reserva 1 mes de los doce".to_owned(),
        low => format!("se mantiene por encima de su reserva {} meses de los doce", 12 - low),
    };
    let not = if low.len() <= NAMED {
        let each = low.iter().map(|(at, time)| format!("{} en {}", hours(*time), month(*at)));
        each.collect::<Vec<_>>().join(", ")
    } else {
        let worst = worst(replayed, |month| month.below_reserve);
        format!("{}, sobre todo en {worst}", hours(replayed.below_reserve()))
    };
    format!("Con el tiempo de {name} el banco {kept}; está por debajo {not}.")
}

fn short(replayed: &Replayed) -> String {
    let short = replayed.short();
    if short.0 <= 0.0 {
        return "Ningún consumo queda sin servicio.".to_owned();
    }
    let worst = worst(replayed, |month| month.short);
    format!("Hay consumos sin servicio durante {}, sobre todo en {worst}.", hours(short))
}

fn lowest(replayed: &Replayed) -> String {
    let at = date(replayed.lowest_at);
    format!("Su mínimo llega el {at}, con un {}\u{a0}%.", decimal(replayed.lowest * 100.0, 0))
}

/// Day and month. The midnight at which a day ends belongs to it.
fn date(at: NaiveDateTime) -> String {
    let within = at.checked_sub_signed(chrono::Duration::minutes(1)).unwrap_or(at);
    format!("{} de {}", within.day(), month(within.month0() as usize))
}

/// When the reserve comes from the start of the plan on; nothing for one who starts inside it.
fn from_the_start(replayed: &Replayed, system: &System) -> Option<String> {
    if system.start.charge <= system.bank.reserve.ratio() {
        return None;
    }
    Some(match replayed.run.reserve_at {
        Some(after) => {
            let at = moment(clock_time(system, after), after);
            format!("Desde tu comienzo, la reserva llega {at}.")
        }
        None => {
            format!("Desde tu comienzo te mantienes por encima de la reserva {REPLAY_DAYS} días.")
        }
    })
}

fn far(words: Words, distance_km: f64) -> String {
    format!(
        "El archivo es de un lugar a {} de distancia: dice cómo te iría allí, con la hora de allí.",
        words.distance(distance_km)
    )
}

fn contradicts(share: f64) -> String {
    format!(
        "En el archivo, la luz del sol y la del cielo no suman toda la luz, por un {} % en el año: su reloj puede ir mal, o una columna ser otra cosa.",
        decimal(share * 100.0, 0)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hours_and_dates_read_well() {
        assert_eq!(hours(Hours(0.25)), "menos de una hora");
        assert_eq!(hours(Hours(1.25)), "1 hora");
        assert_eq!(hours(Hours(8760.0)), "8760 horas");
        let midnight = |day| chrono::NaiveDate::from_yo_opt(2026, day).unwrap().into();
        assert_eq!(date(midnight(13)), "12 de enero", "the end of that day");
        assert_eq!(date(midnight(13) + chrono::Duration::hours(7)), "13 de enero");
    }
}
