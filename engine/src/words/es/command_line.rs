//! Words of the command line.

use chrono::{Datelike, NaiveDateTime, Timelike};

use super::calendar::month;
use super::{problems, weather_file};
use crate::logbook::Symptom;
use crate::place::TemperatureOrigin;
use crate::quantity::{Amps, Celsius, Degrees, Percent};
use crate::words::command_line::{Caption, Fault, Operand};
use crate::words::{NameOf, Words};

/// How the command line is used.
pub const USAGE: &str = "\
sunlarder responde qué funciona, qué se almacena, qué entra y cuánto dura.

  sunlarder plan PLAN [--json | --csv] [--without-sun] [--weather ARCHIVO]
      consumo y perspectivas; --csv da la simulación, una fila por paso
  sunlarder working PLAN DATO [--month 1..12]
      cómo se llega a un dato: capacity, budget, autonomy o month
  sunlarder size PLAN [--promise through | short-days=N | without-sun=N | trip=N]
                 [--chance PORCENTAJE] [--season 5-9] [--price AH,W] [--weight AH,W]
                 [--json]
      cuánto banco y campo solar hace falta para cumplir una promesa, y qué ayudaría
  sunlarder fit PLAN [--json]
      cómo se cablea: conductores, fusibles, derivador, qué comprar y el esquema (en JSON)
  sunlarder gauge PLAN [--json] [--mistake NOMBRE] [--commission]
      cómo se configura un medidor y qué mostraría en un año, también con un error;
      --commission da la hoja de comprobaciones
  sunlarder logbook PLAN LECTURAS [--gauge-ah AH] [--gauge-efficiency PORCENTAJE]
                    [--day-first | --month-first] [--json]
      lo que dicen las lecturas de un medidor: consumo y capacidad reales, corriente sin pasar por el shunt...
  sunlarder symptom PLAN NOMBRE [LECTURAS] [opciones de logbook]
      qué puede haber detrás, y la prueba que decide: never-full, cuts-out-early,
      empty-by-morning, full-but-dim, jumps, falls-at-rest
  sunlarder care PLAN
      mantenimiento e invierno de su banco
  sunlarder link PLAN
      el código de enlace de un plan
  sunlarder file PLAN
      el archivo de un plan
  sunlarder climate LATITUD LONGITUD [--json | --csv]
      doce meses de claridad, irradiación y temperatura
  sunlarder sun LATITUD LONGITUD INSTANTE [--json]
      dónde está el sol, como en: sunlarder sun 52.1 5.2 2026-06-21T12:00
  sunlarder help
  sunlarder version

LECTURAS es una tabla de fecha, hora, porcentaje o amperios hora, voltios y amperios; la corriente que entra al banco es positiva.
PLAN es un archivo, un enlace o su código, o - para lo que llega por la entrada estándar.
El norte y el este son positivos. Los instantes son de hora universal si no indican otra.
Con --without-sun la simulación sigue sin nada de sol; la red y el motor se quedan.
Con --language en cualquiera de ellas habla inglés.
Una promesa es pasar la temporada sin ningún día corto, como mucho N días cortos en diez años, N días sin
nada de sol o un viaje de N días con el banco lleno; con una probabilidad del 90 % si no das otra.
--price y --weight dicen cuánto cuestan o pesan un amperio-hora del banco y un vatio del campo solar.
Con --weather el plan pasa también por el año de datos horarios de un archivo EPW.
";

/// A word or two beside a figure, or over a column.
// One flat list, longer than a function should be: it is a dictionary, and the compiler checks that it is complete.
#[must_use]
pub fn caption(caption: Caption) -> &'static str {
    use Caption as C;
    match caption {
        C::Unnamed => "Plan sin nombre",
        C::Generator => "generador",
        C::InverterIdle => "Inversor, en vacío",
        C::Standing => "Consumo permanente",
        C::Protection => "Protección de la batería",
        C::All => "Todo",
        C::WhatStored => "Lo que almacenas",
        C::Rated => "Nominal",
        C::Autonomy => "Días de autonomía",
        C::YearOfWeather => "En el año de tiempo que has traído",
        C::BelowReserve => "bajo la reserva",
        C::ShortOf => "sin servicio",
        C::HowLong => "Cuánto dura",
        C::RealWeather => "Con el tiempo que puede hacer",
        C::OfTenYears => "de diez años sobre la reserva",
        C::AverageWeather => "tiempo medio",
        C::WithoutSun => "sin sol",
        C::ToReserve => "Hasta la reserva",
        C::ToEmpty => "Hasta vaciarse",
        C::ToFull => "Hasta llenarse",
        C::MonthByMonth => "Mes a mes, en un día medio",
        C::PeakSun => "horas de sol pico",
        C::ComesIn => "entra",
        C::Used => "usado",
        C::Balance => "balance",
        C::Lowest => "carga mínima",
        C::KeepsUp => "alcanza",
        C::Yes => "sí",
        C::No => "no",
        C::InTheWay => "Lo que lo impide",
        C::Caution => "Atención",
        C::Obstacle => "Lo impide",
        C::Estimates => {
            "Son estimaciones para planificar. Mandan las instrucciones de los fabricantes, las normas locales y los profesionales autorizados."
        }
        C::Month => "mes",
        C::Clearness => "claridad",
        C::Spread => "dispersión",
        C::Irradiation => "en horizontal",
        C::Outside => "fuera del aire",
        C::Temperature => "temperatura",
        C::TemperatureFrom => "Temperatura",
        C::Elevation => "Elevación",
        C::Azimuth => "Acimut, en sentido horario desde el norte",
        C::Declination => "Declinación",
        C::EquationOfTime => "Ecuación del tiempo",
        C::SolarTime => "Hora solar",
        C::FacingSun => "Irradiancia fuera del aire, de cara al sol",
        C::OnTheLevel => "Irradiancia fuera del aire, en horizontal",
        C::OfTheDay => "Irradiación del día fuera del aire, en horizontal",
        C::Sunrise => "Salida del sol, hora universal",
        C::Sunset => "Puesta del sol, hora universal",
        C::PolarNight => "Este día no sale el sol",
        C::PolarDay => "Este día no se pone el sol",
        C::Source => "Fuente",
        C::ThePromise => "Lo que se promete",
        C::WhatKeepsIt => "Lo que lo cumple",
        C::SmallestTogether => "Lo más pequeño que lo cumple junto, según el mapa",
        C::Chance => "probabilidad",
        C::TheBank => "banco",
        C::TheArray => "campo solar",
        C::Price => "precio",
        C::Weight => "peso",
        C::Cheapest => "Lo más barato",
        C::Lightest => "Lo más ligero",
        C::WouldHelp => "Lo que ayudaría",
        C::Unchanged => "Tal como está",
        C::ShortDaysYear => "días cortos al año",
        C::TrialsFailing => "intentos fallidos",
        C::Voltages => "Tensiones del sistema y las mayores corrientes que suponen",
        C::SystemVoltage => "sistema",
        C::LoadsAtOnce => "hacia los consumos",
        C::ArraysAtOnce => "del campo solar",
        C::AsItIs => "según el plan",
    }
}

/// Why the command line stops.
#[must_use]
pub fn fault(words: Words, fault: &Fault, name_of: NameOf<'_>) -> String {
    match fault {
        Fault::NoCommand => "Di qué hay que hacer; «sunlarder help» da la lista de órdenes.".into(),
        Fault::UnknownCommand(given) => {
            format!("No hay ninguna orden «{given}»; «sunlarder help» da las que hay.")
        }
        Fault::UnknownOption(given) => {
            format!("Esta orden no tiene la opción «{given}»; «sunlarder help» da las que tiene.")
        }
        Fault::Missing(operand) => {
            format!("Falta {}; «sunlarder help» muestra el orden.", self::operand(*operand))
        }
        Fault::TooMuch(given) => {
            format!(
                "«{given}» es más de lo que toma esta orden; «sunlarder help» muestra el orden."
            )
        }
        Fault::JsonOrCsv => "Elige entre --json y --csv.".into(),
        Fault::UnknownFigure(given) => {
            format!("No hay cálculo de «{given}»: pide capacity, budget, autonomy o month.")
        }
        Fault::UnknownLanguage(given) => {
            format!("«{given}» no es un idioma que se hable aquí; indica en o es.")
        }
        Fault::NoMonth(given) => format!("«{given}» no es un mes; indica un número de 1 a 12."),
        Fault::NotANumber(operand, given) => {
            format!("No es un número {}: «{given}».", self::operand(*operand))
        }
        Fault::NotAnInstant(given) => {
            format!(
                "«{given}» no es un instante; escríbelo como 2026-06-21T12:00, en hora universal."
            )
        }
        Fault::NoFile(given) => {
            format!("No hay ningún archivo «{given}», y tampoco es el enlace de un plan.")
        }
        Fault::Unreadable(given) => format!("«{given}» no se puede leer."),
        Fault::NotText(given) => format!("«{given}» no es texto, así que no es un plan."),
        Fault::NoWeather(given) => format!("No hay ningún archivo meteorológico «{given}»."),
        Fault::Weather(fault) => weather_file::fault(words, fault),
        Fault::NoReadings(given) => format!("No hay ningún archivo de lecturas «{given}»."),
        Fault::NothingRead(given, first) => {
            let why = first.as_ref().map(|(line, slip)| words.slip_in(*line, slip));
            let text = format!(
                "Ninguna línea de «{given}» es una lectura que sirva. {}",
                why.unwrap_or_default()
            );
            text.trim_end().to_owned()
        }
        Fault::UnknownSymptom(given) => {
            let all = Symptom::ALL.map(Symptom::name).join(", ");
            format!("No hay ningún síntoma «{given}»: pide uno de {all}.")
        }
        Fault::WeatherInCsv => "El año de tiempo no tiene CSV: quita --csv o --weather.".into(),
        Fault::UnknownMistake { given, known } => {
            format!("No hay ningún error «{given}»; hay {known}.")
        }
        Fault::UnknownPromise(given) => format!(
            "No existe la promesa «{given}»: pide through, short-days=N, without-sun=N o trip=N."
        ),
        Fault::NoSeason(given) => {
            format!(
                "«{given}» no es una temporada; da los meses por su número, como en 5-9 o 12,1."
            )
        }
        Fault::NotTwoNumbers(operand, given) => {
            format!(
                "{}: «{given}» no son dos números separados por una coma.",
                self::operand(*operand)
            )
        }
        Fault::Beyond(operand, given, (least, most)) => format!(
            "{}: el número es {} y va de {} a {}.",
            self::operand(*operand),
            words.as_given(*given),
            words.as_given(*least),
            words.as_given(*most)
        ),
        Fault::Refused(problem) => problems::problem(words, problem, name_of),
        Fault::Unfit(unfit) => words.unfit(unfit, name_of),
        Fault::NothingUsed => {
            "Este plan no usa nada, así que no hay días de autonomía que calcular.".into()
        }
    }
}

fn operand(operand: Operand) -> &'static str {
    match operand {
        Operand::Plan => "el plan (un archivo, un enlace, o -)",
        Operand::Latitude => "la latitud",
        Operand::Longitude => "la longitud",
        Operand::Instant => "el instante",
        Operand::Figure => "el dato",
        Operand::Month => "el mes",
        Operand::Weather => "el archivo meteorológico",
        Operand::Promise => "La promesa",
        Operand::Chance => "La probabilidad en tanto por ciento",
        Operand::Season => "La temporada",
        Operand::Price => "El precio",
        Operand::Weight => "El peso",
        Operand::Mistake => "El error",
        Operand::Readings => "el archivo de lecturas",
        Operand::Symptom => "el síntoma",
        Operand::GaugeAh => "La capacidad del medidor en amperios hora",
        Operand::GaugeEfficiency => "La eficiencia de carga del medidor en por ciento",
        Operand::Language => "el idioma",
    }
}

/// A point on the globe: `53,28° N, 4,39° O`.
#[must_use]
pub fn point(words: Words, latitude: Degrees, longitude: Degrees) -> String {
    let side = |value: Degrees, ahead, back| {
        let side = if value.0 < 0.0 { back } else { ahead };
        format!("{}° {side}", words.as_given(value.abs().0))
    };
    format!("{}, {}", side(latitude, "N", "S"), side(longitude, "E", "O"))
}

/// When a run starts, and how full.
#[must_use]
pub fn beginning(words: Words, at: NaiveDateTime, charge: Percent) -> String {
    let date = at.date();
    let name = month(date.month0() as usize);
    let (day, year) = (date.day(), date.year());
    let (time, charge) =
        (words.clock((at.hour() * 60 + at.minute()) as u16), words.precise(charge.0));
    format!("desde el {day} de {name} de {year}, {time}, con un {charge}\u{a0}%")
}

/// The heading of the budget of a month.
#[must_use]
pub fn budget_of(at: usize) -> String {
    format!("Lo que funciona, en un día medio de {}", month(at))
}

/// The full capacity under the circumstances of a month.
#[must_use]
pub fn full_at(words: Words, temperature: Celsius, current: Amps) -> String {
    format!("Lleno, a {} y {}", words.amount(temperature), words.amount(current))
}

/// The usable capacity above a reserve.
#[must_use]
pub fn usable_above(words: Words, reserve: Percent) -> String {
    format!("Utilizable, sobre la reserva del {}\u{a0}%", words.precise(reserve.0))
}

/// That something does not come within the longest run.
#[must_use]
pub fn not_within(days: usize) -> String {
    format!("no en {days} días")
}

/// Where the temperature of a place comes from, and how far it may be off.
#[must_use]
pub fn temperature_origin(origin: TemperatureOrigin) -> &'static str {
    match origin {
        TemperatureOrigin::Own => "tus propias temperaturas",
        TemperatureOrigin::Reanalysis => {
            "reanálisis meteorológico de 2000 a 2025 sobre unos 500 km; error de unos 2 °C, de 5 °C en montañas"
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const WORDS: Words = Words::of(crate::words::Language::Spanish);

    #[test]
    fn points_and_beginnings_read_well() {
        assert_eq!(point(WORDS, Degrees(53.28), Degrees(-4.39)), "53,28° N, 4,39° O");
        assert_eq!(point(WORDS, Degrees(-33.9), Degrees(18.4)), "33,9° S, 18,4° E");
        let at = chrono::NaiveDate::from_ymd_opt(2026, 11, 26).unwrap().and_hms_opt(16, 5, 0);
        let text = beginning(WORDS, at.unwrap(), Percent(92.0)).replace('\u{a0}', " ");
        assert_eq!(text, "desde el 26 de noviembre de 2026, 16:05, con un 92 %");
    }
}
