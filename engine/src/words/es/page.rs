//! Sentences of the page that carry figures.

use super::calendar::{month, weekday};
use crate::bank::Quality;
use crate::document::{Chemistry, Document, Field};
use crate::outlook::{BestTilt, Voltages};
use crate::place::{MonthlyClimate, Origin, SummerTime, TemperatureOrigin};
use crate::quantity::{AmpHours, Percent, Unit, Volts, Watts};
use crate::words::page::ends;
use crate::words::{Words, decimal};

/// No deviation is told finer than this (ratio): rated capacities are not stated finer.
const LEAST_DEVIATION: f64 = 0.001;

/// A chemistry.
#[must_use]
pub fn chemistry(chemistry: Chemistry) -> &'static str {
    match chemistry {
        Chemistry::FloodedLeadAcid => "Plomo-ácido, abierta",
        Chemistry::Agm => "Plomo-ácido, AGM",
        Chemistry::Gel => "Plomo-ácido, gel",
        Chemistry::Lifepo4 => "Litio ferrofosfato (LiFePO4)",
        Chemistry::Nmc => "Litio NMC",
        Chemistry::SodiumIon => "Iones de sodio",
    }
}

/// A chemistry in one or two words.
fn chemistry_short(chemistry: Chemistry) -> &'static str {
    match chemistry {
        Chemistry::FloodedLeadAcid => "de plomo-ácido",
        Chemistry::Agm => "AGM",
        Chemistry::Gel => "de gel",
        Chemistry::Lifepo4 => "LiFePO4",
        Chemistry::Nmc => "NMC",
        Chemistry::SodiumIon => "de iones de sodio",
    }
}

/// The bank in a few words.
#[must_use]
pub fn bank(charge: &str, chemistry: Chemistry, volts: &str) -> String {
    format!("{charge} {}, {volts}", chemistry_short(chemistry))
}

/// What may be used of the bank.
#[must_use]
pub fn usable(usable: &str, rated: &str, temperature: &str, of_month: usize) -> String {
    format!("De {rated} puedes usar {usable}, a {temperature} en un {} medio.", month(of_month))
}

/// How well the bank fits its rated capacities.
#[must_use]
pub fn fit(words: Words, quality: &Quality) -> String {
    let deviation = words.amount(Percent::of_ratio(quality.deviation.max(LEAST_DEVIATION)));
    if quality.poor() {
        format!(
            "Ninguna batería de esta clase tiene estas capacidades nominales; la más cercana se aparta de una en un {deviation}. Compruébalas."
        )
    } else if quality.unique {
        format!(
            "Ajustado a {} capacidades nominales con una desviación de {deviation} como máximo.",
            quality.ratings
        )
    } else {
        "Dos capacidades nominales valen para más de una batería; una tercera lo decidiría.".into()
    }
}

/// Voltages between the posts.
#[must_use]
pub fn voltages(words: Words, voltages: &Voltages) -> String {
    format!(
        "En reposo tiene ahora {}; con tus consumos y meteorología media, {} como mínimo. A {} se cortan.",
        words.amount(voltages.rest),
        words.amount(voltages.lowest),
        words.amount(voltages.cut_off)
    )
}

/// The limits of the whole bank.
#[must_use]
pub fn bank_limits(charge: &str, discharge: &str, peak: &str, milliohm: &str) -> String {
    format!(
        "El banco entero: carga hasta {charge}, descarga hasta {discharge}, por un momento {peak}; resistencia {milliohm} mΩ."
    )
}

/// A load that has no name.
#[must_use]
pub fn unnamed_load() -> &'static str {
    "Un consumo"
}

/// Round the clock.
#[must_use]
pub fn always() -> &'static str {
    "siempre"
}

/// Round the clock, more in the heat.
#[must_use]
pub fn always_by_heat() -> &'static str {
    "siempre, según el calor"
}

/// A daily amount.
#[must_use]
pub fn per_day(words: Words, charge: AmpHours, nominal: Volts) -> String {
    format!("{} al día", words.charge(charge, nominal))
}

/// Hours of a day.
#[must_use]
pub fn hours_a_day(words: Words, hours: f64) -> String {
    if hours > 0.0 && hours < 0.995 {
        format!("{} min al día", decimal(hours * 60.0, 0))
    } else {
        format!("{} h al día", words.decimal(hours, 1))
    }
}

/// How to call a summer-time rule.
#[must_use]
pub fn summer_time(rule: SummerTime) -> &'static str {
    match rule {
        SummerTime::None => "Ninguno",
        SummerTime::Europe => "Europa",
        SummerTime::NorthAmerica => "Norteamérica",
        SummerTime::Australia => "Sur de Australia",
        SummerTime::LordHowe => "Isla Lord Howe",
        SummerTime::NewZealand => "Nueva Zelanda",
        SummerTime::Chile => "Chile",
        SummerTime::Egypt => "Egipto",
        SummerTime::Israel => "Israel",
        SummerTime::Palestine => "Palestina",
    }
}

/// Where the sun's figures come from and how sure they are.
#[must_use]
pub fn climate_origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Own => "Son tus propios datos.",
        Origin::Land => {
            "De un reanálisis meteorológico corregido con estaciones, sobre unos 500 km: error de un 10 % como máximo en cuatro de cada cinco meses."
        }
        Origin::Model => {
            "De un reanálisis meteorológico, lejos de toda estación: a menudo con un error de hasta un 15 %."
        }
        Origin::Regression => {
            "De una regresión sobre tierras polares e islas: tómalo como orientación."
        }
        Origin::Ocean => {
            "De un atlas de observaciones de barcos: con un error de un 15 % más o menos."
        }
        Origin::Guess => {
            "Una suposición a partir de los vecinos: del mar y el hielo polares no hay datos."
        }
    }
}

/// Where the temperatures come from and how sure they are.
#[must_use]
pub fn temperature_origin(origin: TemperatureOrigin) -> &'static str {
    match origin {
        TemperatureOrigin::Own => "Las temperaturas son las tuyas.",
        TemperatureOrigin::Reanalysis => {
            "Las temperaturas son medias de 2000 a 2025 de un reanálisis meteorológico, sobre unos 500 km: casi siempre con un error de 2 °C como máximo; en montaña, de 5."
        }
    }
}

/// The picture of the twelve months in words.
#[must_use]
pub fn climate_in_words(words: Words, climate: &MonthlyClimate) -> String {
    let sun = climate.irradiation().map(|own| own.0);
    let air = climate.temperature.map(|own| words.in_habit(own.0, Unit::Celsius));
    let degrees = words.unit(Unit::Celsius);
    let [dull, bright] = ends(&sun);
    let [cold, warm] = ends(&air);
    format!(
        "De {} horas de sol pico al día en {} a {} en {}; de {} {degrees} en {} a {} {degrees} en {}.",
        words.rounded(sun[dull]),
        month(dull),
        words.rounded(sun[bright]),
        month(bright),
        words.rounded(air[cold]),
        month(cold),
        words.rounded(air[warm]),
        month(warm)
    )
}

/// A place that is called by the town near it.
#[must_use]
pub fn near(town: &str) -> String {
    format!("cerca de {town}")
}

/// Place, month and start in a line.
#[must_use]
pub fn where_and_when(
    place: &str,
    of_month: usize,
    day: usize,
    time: &str,
    charge: &str,
) -> String {
    format!(
        "{place} · {} · desde el {}, {time}, con {charge} de carga",
        month(of_month),
        weekday(day)
    )
}

/// Label of the reserve line.
#[must_use]
pub fn reserve_line(percent: &str) -> String {
    format!("reserva {percent}")
}

/// The curve in words.
#[must_use]
pub fn curve_in_words(verdict: &str, of_month: usize) -> String {
    format!(
        "Estado de carga de los próximos días con la meteorología media de {}. {verdict}.",
        month(of_month)
    )
}

/// What is read at an hour.
#[must_use]
pub fn reading(when: &str, charge: &str, volts: &str, comes: &str, goes: &str) -> String {
    format!("{when}: {charge}, {volts}. Entran {comes}, salen {goes}.")
}

/// How many weathers have reached the reserve by an hour, from a share \[%\]; of a sample of 200, no finer than tenths.
#[must_use]
pub fn reached_by(percent: f64) -> String {
    if percent <= 0.0 {
        "Ninguno de los casos ha llegado entonces a la reserva.".into()
    } else if percent < 10.0 {
        "Menos de uno de cada diez casos ha llegado entonces a la reserva.".into()
    } else if percent > 90.0 {
        "Más de nueve de cada diez casos han llegado entonces a la reserva.".into()
    } else {
        match decimal(percent / 10.0, 0).as_str() {
            "1" => "1 de cada diez casos ha llegado entonces a la reserva.".into(),
            tenths => format!("{tenths} de cada diez casos han llegado entonces a la reserva."),
        }
    }
}

/// What is read after the bank is empty.
#[must_use]
pub fn reading_empty(when: &str) -> String {
    format!("{when}: vacío.")
}

/// What the rated capacity is, behind the usable one.
#[must_use]
pub fn of_rated(words: Words, rated: AmpHours, nominal: Volts) -> String {
    format!("de {}", words.charge(rated, nominal).replace('\u{a0}', " "))
}

/// Power of the arrays.
#[must_use]
pub fn of_sun(watts: &str) -> String {
    format!("{watts} W de sol")
}

/// An array by its place.
#[must_use]
pub fn array(place: usize) -> String {
    format!("Campo {}", place + 1)
}

/// The range of powers usual for an appliance.
#[must_use]
pub fn usual_range(low: &str, high: &str) -> String {
    if low == high {
        format!("Lo habitual: {low}. Manda la placa de tu aparato.")
    } else {
        format!("Lo habitual: de {low} a {high}. Manda la placa de tu aparato.")
    }
}

/// Best tilts beside what the array gets.
#[must_use]
pub fn best_tilt(best: &BestTilt, of_month: usize) -> String {
    let gain = |best: f64, now: f64| {
        if now > 0.0 {
            let percent = (best / now - 1.0) * 100.0;
            let sign = if percent < -0.5 { "−" } else { "+" };
            format!("{sign}{} %", decimal(percent.abs(), 0))
        } else {
            "–".into()
        }
    };
    let facing = if best.south { "sur" } else { "norte" };
    format!(
        "Hacia el {facing}, lo mejor es {}° para {} ({} de luz) y {}° para el año ({}).",
        decimal(best.month.0.0, 0),
        month(of_month),
        gain(best.month.1.0, best.now.0.0),
        decimal(best.year.0.0, 0),
        gain(best.year.1.0, best.now.1.0),
    )
}

/// An example by place and month.
#[must_use]
pub fn scenario(place: &str, of_month: usize) -> String {
    format!("{place}, {}", month(of_month))
}

/// What an example consists of: how many things, how much battery, how much sun.
#[must_use]
pub fn scenario_figures(words: Words, plan: &Document) -> String {
    let bank = &plan.bank;
    let things = plan.loads.iter().filter(|load| load.on).count();
    let volts = Volts(bank.battery_v * bank.in_series);
    let charge = AmpHours(bank.capacity_ah * bank.in_parallel);
    let watts = plan.arrays.iter().map(|own| own.module_w * own.in_series * own.in_parallel);
    let sun = Watts(watts.sum());
    let things = if things == 1 { "1 aparato".to_owned() } else { format!("{things} aparatos") };
    format!(
        "{things}, {}, {}, {}\u{a0}de\u{a0}sol",
        words.charge(charge, volts),
        words.amount(volts),
        words.amount(sun)
    )
}

/// The typical day of a month.
#[must_use]
pub fn a_day_in(of_month: usize) -> String {
    format!("Un día de {}", month(of_month))
}

/// That something was added.
#[must_use]
pub fn added(name: &str) -> String {
    format!("Añadido: {name}.")
}

/// That something was deleted.
#[must_use]
pub fn deleted(name: &str) -> String {
    format!("Borrado: {name}. Deshacer lo recupera.")
}

/// That no more loads fit.
#[must_use]
pub fn full_of_loads(limit: usize) -> String {
    format!("En un plan caben {limit} consumos.")
}

/// The name of a copy.
#[must_use]
pub fn copy_of(name: &str) -> String {
    if name.is_empty() { "Copia".into() } else { format!("{name}, copia") }
}

/// The version of the program.
#[must_use]
pub fn version(version: &str) -> String {
    format!(
        "Sunlarder {version}. Libre con licencia MIT o Apache-2.0. Clima de datos públicos de la NASA y de Copernicus."
    )
}

/// That a box must be filled in.
#[must_use]
pub fn missing(words: Words, field: Field) -> String {
    let range = field.range();
    let label = super::problems::field(field);
    format!(
        "Falta un valor en «{label}»; escribe un número de {} a {}.",
        words.rounded(words.shown(field, range.min)),
        words.rounded(words.shown(field, range.max))
    )
}

/// That a box holds no number.
#[must_use]
pub fn no_number(words: Words, field: Field, typed: &str) -> String {
    let range = field.range();
    let label = super::problems::field(field);
    let typed: String = typed.chars().take(20).collect();
    format!(
        "{label}: «{typed}» no es un número. Escribe uno de {} a {}.",
        words.rounded(words.shown(field, range.min)),
        words.rounded(words.shown(field, range.max))
    )
}

/// That a box holds what may be thousands or thousandths; both are written as the language does.
#[must_use]
pub fn ambiguous(field: Field, typed: &str, thousands: &str, decimals: &str) -> String {
    let label = super::problems::field(field);
    format!(
        "{label}: «{typed}» puede ser {thousands} o {decimals}. Escríbelo de una de estas dos formas."
    )
}

/// Longer than the longest run.
#[must_use]
pub fn beyond() -> String {
    format!("más de {} días", crate::outlook::HORIZON_DAYS)
}
