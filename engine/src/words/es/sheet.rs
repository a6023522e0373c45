//! The printed sheet.

use chrono::{Datelike, NaiveDate};

use super::calendar::month;
use crate::document::{ControllerKind, Kept};
use crate::place::TemperatureOrigin;
use crate::quantity::{AmpHours, Amps, Celsius, Degrees, Percent, Volts};
use crate::words::Words;
use crate::words::sheet::{ArrayInShort, OnSheet, Rule};

/// A word or two on the sheet.
// One flat list, longer than a function should be: it is a dictionary, and the compiler checks that it is complete.
#[must_use]
pub fn on_sheet(what: OnSheet) -> &'static str {
    use OnSheet as S;
    match what {
        S::PlanningFigures => "Cifras para planificar",
        S::Load => "Consumo",
        S::Power => "Potencia",
        S::Hours => "Horas al día",
        S::ADay => "Al día",
        S::Share => "Parte",
        S::InverterIdle => "Inversor, encendido",
        S::All => "Todo",
        S::Assumed => "Lo que se ha supuesto",
        S::Whose => "Origen",
        S::Yours => "elegido por ti",
        S::Typical => "habitual",
        S::FromMap => "mapa climático",
        S::WorkedOut => "calculado",
        S::NotStated => "sin indicar",
        S::Air => "Aire, media del mes",
        S::BankTemperature => "Banco, media del mes",
        S::Sun => "Horas de sol pico al día",
        S::Horizon => "Horizonte",
        S::Level => "despejado",
        S::Entered => "el que has introducido",
        S::ChargeEfficiency => "Rendimiento de carga",
        S::Health => "Capacidad que deja la edad",
        S::HourRate => "Horas de la capacidad nominal",
        S::InverterEfficiency => "Inversor a media carga",
        S::ArrayLosses => "Pérdidas del campo, sin el calor",
        S::RecordLow => "Mínima histórica",
        S::Batteries => "Baterías",
        S::Bank => "Banco entero",
        S::Full => "Lleno, en ese mes",
        S::ChargeLimit => "Límite de carga",
        S::DischargeLimit => "Límite de descarga",
        S::Stands => "Dónde está",
        S::FromSun => "Del sol",
        S::Engine => "Motor",
        S::Shore => "Toma de puerto o red",
        S::Turbine => "Viento o agua",
        S::Generator => "Generador",
        S::ChargingLoss => "Queda tras la pérdida al cargar",
        S::NothingComesIn => "No entra nada.",
        S::NothingRuns => "Aún no funciona nada.",
        S::Standing => "Antes de comprar o instalar nada",
        S::NoWeatherYet => {
            "Al imprimir esto aún se calculaba el tiempo real: lo que aquí se dice vale para el tiempo medio."
        }
        S::OpenThisPlan => "Abrir este plan",
        S::Code => "Código del enlace a este plan, para la cámara de un teléfono",
        S::CodeTooLong => {
            "Este plan es demasiado largo para un código que lean los teléfonos. Envía el enlace o el archivo."
        }
    }
}

/// What stands on every sheet.
#[must_use]
pub fn rule(rule: Rule) -> &'static str {
    match rule {
        Rule::Estimates => {
            "Son estimaciones para planificar, no el proyecto de una instalación. El tiempo, el uso y la edad serán otros."
        }
        Rule::CodesFirst => {
            "Mandan las normas locales y las instrucciones de los fabricantes. Deja que un profesional autorizado haga o revise los trabajos en la red y con corrientes altas."
        }
        Rule::Fire => {
            "Las baterías y los cables pueden arder, y al cargar puede salir gas explosivo: pon un fusible junto al banco y mantenlo ventilado."
        }
        Rule::Lives => {
            "Aquello de lo que depende una vida necesita un respaldo independiente y una alarma, diga lo que diga esta hoja."
        }
    }
}

fn in_full(date: NaiveDate) -> String {
    format!("{} de {} de {}", date.day(), month(date.month0() as usize), date.year())
}

/// On which day the sheet was worked out.
#[must_use]
pub fn worked_out_on(date: NaiveDate) -> String {
    format!("Calculado el {}", in_full(date))
}

/// On which day the run of a plan begins.
#[must_use]
pub fn begins_on(date: NaiveDate) -> String {
    format!("El recorrido empieza el {}.", in_full(date))
}

/// Heading of the loads on a mean day of a month.
#[must_use]
pub fn runs_in(of_month: usize) -> String {
    format!("Qué funciona en un día medio de {}", month(of_month))
}

/// `4 modules of 100 W, tilt 15°, facing 180° · MPPT up to 20 A`.
#[must_use]
pub fn array_in_short(words: Words, array: &ArrayInShort) -> String {
    let ArrayInShort { modules, each, tilt, azimuth, controller, limit } = *array;
    let modules = match words.rounded(modules).as_str() {
        "1" => "1 módulo".to_owned(),
        count => format!("{count} módulos"),
    };
    let lies = if tilt.0 <= 0.0 {
        "en plano".to_owned()
    } else {
        format!("inclinación de {}, orientación de {}", words.amount(tilt), compass(words, azimuth))
    };
    let controller = match controller {
        ControllerKind::Mppt => "MPPT",
        ControllerKind::Pwm => "PWM",
    };
    format!("{modules} de {}, {lies} · {controller} {}", words.amount(each), up_to(words, limit))
}

/// A direction as degrees with its point of the compass.
fn compass(words: Words, azimuth: Degrees) -> String {
    const POINTS: [&str; 8] = ["N", "NE", "E", "SE", "S", "SO", "O", "NO"];
    let eighth = (azimuth.0 / 45.0).round().rem_euclid(8.0) as usize;
    format!("{} ({})", words.amount(azimuth), POINTS.get(eighth).copied().unwrap_or_default())
}

/// `2 in series × 3 side by side, each 12.8 V 100 Ah`.
#[must_use]
pub fn batteries(
    words: Words,
    series: f64,
    strings: f64,
    volts: Volts,
    charge: AmpHours,
) -> String {
    let each = format!("{} {}", words.amount(volts), words.amount(charge));
    match (series > 1.0, strings > 1.0) {
        (false, false) => format!("1 de {each}"),
        (true, false) => format!("{} en serie, cada una de {each}", words.rounded(series)),
        (false, true) => format!("{} en paralelo, cada una de {each}", words.rounded(strings)),
        (true, true) => format!(
            "{} en serie × {} en paralelo, cada una de {each}",
            words.rounded(series),
            words.rounded(strings)
        ),
    }
}

/// Where a bank stands.
#[must_use]
pub fn kept(words: Words, kept: Kept) -> String {
    match kept {
        Kept::Inside => "dentro".into(),
        Kept::Outside => "fuera".into(),
        Kept::AtC(own) => format!("a {} constantes", words.amount(Celsius(own))),
    }
}

/// A charger by what it gives at most.
#[must_use]
pub fn up_to(words: Words, limit: Amps) -> String {
    format!("hasta {}", words.amount(limit))
}

/// A generator by its charger and when it starts and stops.
#[must_use]
pub fn generator_in_short(words: Words, limit: Amps, start: Percent, stop: Percent) -> String {
    format!(
        "{}, arranca al {}, para al {}",
        up_to(words, limit),
        words.amount(start),
        words.amount(stop)
    )
}

/// The usable charge above a reserve.
#[must_use]
pub fn above_reserve(words: Words, reserve: Percent) -> String {
    format!("Utilizable, por encima del {}", words.amount(reserve))
}

/// Where the temperatures of a place come from.
#[must_use]
pub fn temperatures_from(origin: TemperatureOrigin) -> &'static str {
    match origin {
        TemperatureOrigin::Own => "Las temperaturas son tuyas.",
        TemperatureOrigin::Reanalysis => {
            "Las temperaturas son de un reanálisis meteorológico de 2000 a 2025, sobre unos 500 km: con un error de unos 2 °C, y de 5 °C en la montaña."
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Watts;
    use crate::words::Language;

    const WORDS: Words = Words::of(Language::Spanish);

    #[test]
    fn parts_of_a_plan_fit_into_a_line() {
        let array = ArrayInShort {
            modules: 4.0,
            each: Watts(100.0),
            tilt: Degrees(15.0),
            azimuth: Degrees(260.0),
            controller: ControllerKind::Mppt,
            limit: Amps(7.5),
        };
        let plain = |text: String| text.replace('\u{a0}', " ");
        assert_eq!(
            plain(array_in_short(WORDS, &array)),
            "4 módulos de 100 W, inclinación de 15°, orientación de 260° (O) · MPPT hasta 7,5 A"
        );
        let flat = ArrayInShort { modules: 1.0, tilt: Degrees(0.0), ..array };
        assert_eq!(
            plain(array_in_short(WORDS, &flat)),
            "1 módulo de 100 W, en plano · MPPT hasta 7,5 A"
        );
        let batteries = |series, strings| {
            plain(batteries(WORDS, series, strings, Volts(12.8), AmpHours(100.0)))
        };
        assert_eq!(batteries(1.0, 1.0), "1 de 12,8 V 100 Ah");
        assert_eq!(batteries(2.0, 3.0), "2 en serie × 3 en paralelo, cada una de 12,8 V 100 Ah");
    }
}
