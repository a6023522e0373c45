//! The verdict, what explains it, and what stands in the way.

use chrono::{Datelike, NaiveDateTime, Timelike};

use super::calendar::{month, month_first, month_short, weekday};
use crate::outlook::{Generated, HORIZON_DAYS, Month, Obstacle, Opening, Outlook, Tight, Verdict};
use crate::quantity::{AmpHours, Hours, Volts};
use crate::system::System;
use crate::words::{NameOf, Sentence, Tone, Words};
use crate::working::Tag;

/// The verdict as a headline, its deciding moment apart.
#[must_use]
pub fn headline(words: Words, opening: &Opening) -> Sentence {
    let now = month(opening.month);
    // An average is no good news where a life may depend on it.
    let good = if opening.is_vital() { Tone::Plain } else { Tone::Good };
    match &opening.verdict {
        Verdict::NothingRuns => {
            Sentence::new("Aún no hay consumos: ", "añade lo que usas", ".", Tone::Plain)
        }
        Verdict::CannotWork { .. } => {
            Sentence::new("Tal como está, esto ", "no puede funcionar", ".", Tone::Bad)
        }
        Verdict::StartsBelowReserve { charge, .. } => Sentence::new(
            "Empiezas con un ",
            &words.amount(*charge),
            ", sin nada por encima de tu reserva.",
            Tone::Bad,
        ),
        Verdict::KeepsUp { all_year: true } => {
            Sentence::new("Con meteorología media te alcanza ", "todo el año", ".", good)
        }
        Verdict::KeepsUp { .. } => {
            Sentence::new("En un ", &format!("{now} medio te alcanza"), ".", good)
        }
        Verdict::HoldsLong { days, .. } => Sentence::new(
            "Aguantas más de ",
            &format!("{days} días"),
            ", pero cada día pierdes un poco.",
            Tone::Plain,
        ),
        Verdict::ReachesReserve { at, after } => Sentence::new(
            "Con meteorología media llegas a tu reserva ",
            &moment(*at, *after),
            ".",
            Tone::Warn,
        ),
    }
}

/// The verdict in a few words, for the bar.
#[must_use]
pub fn short(opening: &Opening) -> String {
    match &opening.verdict {
        Verdict::NothingRuns => "Aún no hay consumos".into(),
        Verdict::CannotWork { .. } => "Tal como está no puede funcionar".into(),
        Verdict::StartsBelowReserve { .. } => "Empieza sin nada por encima de la reserva".into(),
        Verdict::KeepsUp { all_year: true } => "Alcanza todo el año".into(),
        Verdict::KeepsUp { .. } => format!("Alcanza en {}", month(opening.month)),
        Verdict::HoldsLong { days, .. } => format!("Aguanta más de {days} días"),
        Verdict::ReachesReserve { at, after } => format!("En la reserva {}", moment(*at, *after)),
    }
}

/// What explains the verdict, in one or two sentences.
#[must_use]
pub fn explanation(
    words: Words,
    opening: &Opening,
    system: &System,
    name_of: NameOf<'_>,
) -> String {
    if let Verdict::CannotWork { why } = &opening.verdict {
        return obstacle(words, why, name_of);
    }
    if matches!(opening.verdict, Verdict::NothingRuns) {
        return "Elige cosas de la lista o escribe las tuyas, y aquí aparecerá la respuesta."
            .into();
    }
    let times = opening.times();
    let mut parts = Vec::new();
    // Then what belongs to the run of the headline, then the run without sun, so that no one mixes the two.
    if let Verdict::StartsBelowReserve { reserve, .. } = &opening.verdict {
        parts.push(format!(
            "La reserva es del {}. Empieza con más carga o permite una descarga más profunda.",
            words.amount(*reserve)
        ));
    }
    parts.extend(in_that_weather(opening, system));
    parts.extend(without_sun(opening));
    if opening.run.totals.generator.0 > 0.0 {
        parts.push("Todo esto cuenta con el generador y con su combustible.".into());
    }
    // Nothing is duller than no sun at all.
    if times.dark_to_reserve.is_some() {
        parts.push("Las semanas reales pueden ser más grises que la media.".into());
    }
    parts.join(" ")
}

/// When the bank is full and when empty in the weather of the headline.
fn in_that_weather(opening: &Opening, system: &System) -> Option<String> {
    let times = opening.times();
    let full = times.to_full.filter(|full| {
        system.start.charge < 0.97 && opening.run.reserve_at.is_none_or(|reserve| *full < reserve)
    });
    let empties = matches!(opening.verdict, Verdict::ReachesReserve { .. });
    let happens = match (full.map(duration), times.to_empty.map(duration)) {
        (Some(full), Some(empty)) if empties => {
            format!("se llena al cabo de {full} y se vacía al cabo de {empty}")
        }
        (None, Some(empty)) if empties => format!("se vacía al cabo de {empty}"),
        (_, None) if empties => format!("no se vacía del todo al cabo de {HORIZON_DAYS} días"),
        (Some(full), _) => format!("se llena al cabo de {full}"),
        _ => return None,
    };
    Some(format!("Con ese tiempo el banco {happens}."))
}

/// By name what lives depend on, and what each of it needs.
#[must_use]
pub fn vital(opening: &Opening, name_of: NameOf<'_>) -> Option<String> {
    let named = |own: &Obstacle| match own {
        Obstacle::VitalLoad { load } => Some(format!("«{}»", load_name(*load, name_of))),
        _ => None,
    };
    let mut names: Vec<String> = opening.obstacles.iter().filter_map(named).collect();
    let last = names.pop()?;
    if names.is_empty() {
        return Some(format!(
            "De {last} puede depender una vida: necesita un respaldo propio y una alarma, se calcule aquí lo que se calcule."
        ));
    }
    let others = names.join(", ");
    Some(format!(
        "De {others} y {last} puede depender una vida: cada cosa necesita un respaldo propio y una alarma, se calcule aquí lo que se calcule."
    ))
}

/// The name of a load, or its number.
fn load_name(place: u16, name_of: NameOf<'_>) -> String {
    name_of(Tag::Load(place)).unwrap_or_else(|| format!("Consumo {}", place + 1))
}

/// How soon the reserve comes with no sun at all; nothing for one who starts inside it.
fn without_sun(opening: &Opening) -> Option<String> {
    match (&opening.verdict, opening.times().dark_to_reserve) {
        (Verdict::StartsBelowReserve { .. }, _) => None,
        (_, Some(dark)) => {
            Some(format!("Sin nada de sol, la reserva llega al cabo de {}.", duration(dark)))
        }
        (_, None) => Some(format!("Incluso sin nada de sol aguantas más de {HORIZON_DAYS} días.")),
    }
}

/// Which months keep up, as short as it can be said.
#[must_use]
pub fn months_kept(bits: u16) -> String {
    match bits & 0xfff {
        0 => "ningún mes".into(),
        0xfff => "todo el año".into(),
        bits => {
            let runs = month_runs(bits);
            let named = runs.iter().map(|&(from, to)| {
                if from == to {
                    month(from).to_owned()
                } else {
                    format!("{} a {}", month_short(from), month_short(to))
                }
            });
            named.collect::<Vec<_>>().join(", ")
        }
    }
}

/// Stretches of months round the year: first and last of each. Not for none or all.
fn month_runs(bits: u16) -> Vec<(usize, usize)> {
    let has = |month: usize| bits >> (month % 12) & 1 == 1;
    (0..12)
        .filter(|&month| has(month) && !has(month + 11))
        .map(|from| {
            let length = (0..12).take_while(|ahead| has(from + ahead)).count();
            (from, (from + length - 1) % 12)
        })
        .collect()
}

/// The tightest month and why.
#[must_use]
pub fn tightest(words: Words, outlook: &Outlook, nominal: Volts) -> String {
    let tightest = &outlook.tightest;
    let name = month_first(tightest.month);
    let balance = words.charge(tightest.balance.abs(), nominal);
    let why = match tightest.why {
        Tight::NoSource => "no entra nada",
        Tight::LittleSun => "es cuando menos da el sol frente a lo que usas",
        Tight::MuchUse => "es cuando más usas frente a lo que entra",
    };
    if tightest.balance.0 < 0.0 {
        format!("{name} es el mes más justo: faltan {balance} al día, porque {why}.")
    } else {
        format!("{name} es el mes más justo, y aun así sobran {balance} al día.")
    }
}

/// A moment of the run, named as people would: the weekday and part of day if it is near, else the date; with its article.
#[must_use]
pub fn moment(at: NaiveDateTime, after: Hours) -> String {
    // What comes after midnight belongs to the new day and has a name of its own.
    let part = match at.hour() {
        0..=4 => "de madrugada",
        5..=10 => "por la mañana",
        11..=13 => "al mediodía",
        14..=18 => "por la tarde",
        _ => "por la noche",
    };
    let day = at.date();
    if after.0 < 24.0 * 7.0 {
        let name = weekday(day.weekday().num_days_from_monday() as usize);
        format!("el {name} {part}")
    } else {
        format!("el {} de {} {part}", day.day(), month(day.month0() as usize))
    }
}

/// A length of time in the two largest units that matter.
#[must_use]
pub fn duration(hours: Hours) -> String {
    let plural = |count: u64, one: &str| {
        if count == 1 { format!("1 {one}") } else { format!("{count} {one}s") }
    };
    let whole = hours.0.max(0.0).round() as u64;
    let (days, rest) = (whole / 24, whole % 24);
    match (days, rest) {
        (0, 0) => plural((hours.0.max(0.0) * 60.0).round() as u64, "minuto"),
        (0, rest) => plural(rest, "hora"),
        (days, 0) => plural(days, "día"),
        (days, rest) if days < 7 => format!("{} y {}", plural(days, "día"), plural(rest, "hora")),
        (days, _) => plural(days, "día"),
    }
}

/// An obstacle or caution in one or two sentences: what, how much, what to do.
#[must_use]
pub fn obstacle(words: Words, obstacle: &Obstacle, name_of: NameOf<'_>) -> String {
    let load = |place: u16| load_name(place, name_of);
    let array = |place: u16| format!("El campo {}", place + 1);
    match *obstacle {
        Obstacle::NoInverter { load: place } => {
            format!(
                "«{}» necesita tensión de red, y no hay inversor. Añade uno o quita este consumo.",
                load(place)
            )
        }
        Obstacle::InverterOverloaded { peak, rated } => format!(
            "A la vez colgarían {} de un inversor de {}. Elige uno mayor o no uses todo a un tiempo.",
            words.amount(peak),
            words.amount(rated)
        ),
        Obstacle::InverterOverApparent { peak, rated } => format!(
            "Con su factor de potencia, a la vez colgarían {} de un inversor de {}. Elige uno mayor o no uses todo a un tiempo.",
            words.amount(peak),
            words.amount(rated)
        ),
        Obstacle::InverterSurge { load: place, peak, surge } => format!(
            "Al arrancar, «{}» toma {} por un momento; el inversor da {}.",
            load(place),
            words.amount(peak),
            words.amount(surge)
        ),
        Obstacle::BankOverloaded { current, limit } => format!(
            "A la vez se tomarían {} de un banco que puede dar {} de forma continua. Su protección se abriría.",
            words.amount(current),
            words.amount(limit)
        ),
        Obstacle::BankSurge { load: place, current, limit } => format!(
            "Al arrancar, «{}» toma {} por un momento; el banco puede dar {}.",
            load(place),
            words.amount(current),
            words.amount(limit)
        ),
        Obstacle::InverterBeyondBank { current, limit } => format!(
            "A plena potencia el inversor tomaría {}, más de los {} que puede dar el banco. Los consumos de hoy quedan por debajo.",
            words.amount(current),
            words.amount(limit)
        ),
        Obstacle::BankSags { load: place, voltage, cut_off } => {
            let what = place.map_or_else(
                || "lo que funciona a la vez baja".to_owned(),
                |place| format!("el arranque de «{}» baja", load(place)),
            );
            format!(
                "Cerca de la reserva y con frío, {what} el banco a {} por un momento; por debajo de {} suelen cortar los inversores y las protecciones. Un banco mayor cae menos.",
                words.amount(voltage),
                words.amount(cut_off)
            )
        }
        Obstacle::ArrayVoltageTooHigh { array: place, voltage, at, limit } => format!(
            "{} llega a {} en circuito abierto a {}; su regulador admite {} y se destruiría. Pon menos módulos en serie.",
            array(place),
            words.amount(voltage),
            words.amount(at),
            words.amount(limit)
        ),
        Obstacle::ArrayVoltageTooLow { array: place, voltage, needed } => format!(
            "{} trabaja a {}, y cargar este banco exige más de {}. Pon más módulos en serie.",
            array(place),
            words.amount(voltage),
            words.amount(needed)
        ),
        Obstacle::ColdNotKnown { array: place } => format!(
            "{}: la tensión sube con el frío. Introduce la mínima histórica del lugar para comprobarla frente al regulador.",
            array(place)
        ),
        Obstacle::TooColdToCharge { months, least } => format!(
            "De media el banco está por debajo de {} ({}), y entonces no debe cargarse. Mantenlo más caliente.",
            words.amount(least),
            months_kept(months)
        ),
        Obstacle::MayFreeze { coldest, freezes, charge } => format!(
            "Con un {} de carga, el ácido de este banco se hiela a {} y revienta las celdas; puede llegar a estar a {}. Deja más carga en él o mantenlo más caliente.",
            words.amount(charge),
            words.amount(freezes),
            words.amount(coldest)
        ),
        Obstacle::ProtectionMayOpen => {
            "Si la protección de la batería se abre mientras carga el motor, el alternador puede destruirse. Usa un cargador o regulador hecho para esto.".into()
        }
        Obstacle::VitalLoad { load: place } => format!(
            "De «{}» depende una vida. Necesita un respaldo propio y una alarma; no la confíes a este plan.",
            load(place)
        ),
        Obstacle::DangerousVoltage { voltage } => format!(
            "Este banco llega a {} al cargar: la corriente continua de más de 60 V puede matar. Déjalo a un profesional autorizado.",
            words.amount(voltage)
        ),
    }
}

/// How a day of a month comes out.
#[must_use]
pub fn day_balance(words: Words, balance: AmpHours, nominal: Volts) -> String {
    let plus = if balance.0 > 0.0 { "+" } else { "" };
    format!("{plus}{} al día", words.charge(balance, nominal))
}

/// What a generator does on a mean day: its hours, and its fuel where that is known.
#[must_use]
pub fn generated(words: Words, generated: &Generated) -> String {
    // What it would have to do: by its limit, whatever the hours allow.
    if generated.hours.0 > 24.0 {
        return "necesita más horas de las que tiene un día".into();
    }
    let hours = format!("necesita {} al día", words.amount(generated.hours));
    match generated.fuel {
        Some(fuel) => format!("{hours}, {}", words.amount(fuel)),
        None => hours,
    }
}

/// The same as a sentence about a month; empty without one.
#[must_use]
pub fn generator_in(words: Words, of: &Month) -> String {
    let generated = of.generator.map(|own| generated(words, &own));
    generated.map_or(String::new(), |own| format!("En un {} medio {own}.", month(of.month)))
}

/// Days of autonomy.
#[must_use]
pub fn autonomy(words: Words, days: Option<f64>) -> String {
    let Some(days) = days else { return "sin fin".into() };
    if days > 999.0 {
        return "más de 999 días".into();
    }
    match words.rounded(days).as_str() {
        "1" => "1 día".into(),
        days => format!("{days} días"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use chrono::NaiveDate;

    fn at(day: u32, hour: u32) -> NaiveDateTime {
        NaiveDate::from_ymd_opt(2026, 11, day).unwrap().and_hms_opt(hour, 0, 0).unwrap()
    }

    #[test]
    fn moments_are_named_as_people_would() {
        assert_eq!(moment(at(28, 7), Hours(39.0)), "el sábado por la mañana");
        assert_eq!(moment(at(28, 2), Hours(34.0)), "el sábado de madrugada");
        assert_eq!(moment(at(28, 13), Hours(400.0)), "el 28 de noviembre al mediodía");
    }

    #[test]
    fn durations_say_what_matters() {
        let cases = [
            (0.4, "24 minutos"),
            (1.2, "1 hora"),
            (28.0, "1 día y 4 horas"),
            (48.0, "2 días"),
            (500.0, "20 días"),
        ];
        for (hours, text) in cases {
            assert_eq!(duration(Hours(hours)), text);
        }
    }

    #[test]
    fn months_run_over_the_new_year() {
        assert_eq!(months_kept(0b0000_0111_0000), "may a jul");
        assert_eq!(months_kept(0b1000_0000_0011), "dic a feb");
        assert_eq!(months_kept(0b0000_0100_0001), "enero, julio");
        assert_eq!(months_kept(0), "ningún mes");
    }

    #[test]
    fn days_of_autonomy_have_their_plural_and_comma() {
        let own = Words::of(crate::words::Language::Spanish);
        let said = [Some(1.0), Some(2.54), Some(1000.0), None].map(|days| autonomy(own, days));
        assert_eq!(said, ["1 día", "2,5 días", "más de 999 días", "sin fin"]);
    }
}
