//! Palabras del cuaderno de lecturas.

use chrono::{Datelike, NaiveDateTime, Timelike};

use super::calendar::month;
use crate::logbook::{Adoption, Estimate, Guess, Learned, Next, Order, Part, Slip, Study, What};
use crate::quantity::{Amps, Volts};
use crate::words::Words;
use crate::words::logbook::OnLogbook;

/// A word or two over a part of the logbook.
#[must_use]
pub fn heading(part: OnLogbook) -> &'static str {
    use OnLogbook as O;
    match part {
        O::Found => "Lo que no concuerda",
        O::Agrees => "Lo que dicen las lecturas, sin alarma",
        O::Untold => "Lo que estas lecturas no pueden decir",
        O::Next => "Qué leer ahora",
        O::Adopt => "Lo que el plan puede tomar de aquí",
        O::FromHere => "Desde la última lectura, con lo que se puede adoptar y tiempo medio",
        O::NotRead => "Líneas que no se usan",
        O::Guessed => "Lo que hubo que suponer",
        O::Causes => "Qué puede haber detrás, lo más probable primero",
        O::LayUp => "Cuando pasa el invierno sin uso",
        O::Upkeep => "Mantenimiento",
        O::Test => "Prueba",
        O::NothingFound => "Nada se sale de lo que el azar hace con una instalación sana.",
        O::TooFew => "Estas lecturas son muy pocas para decir si algo va mal.",
        O::Interval => "Entre paréntesis está lo que contiene la verdad nueve veces de diez.",
        O::NotUsed => "Lecturas que no se usan",
        O::NothingToAdopt => "Nada de lo aprendido es motivo para cambiar el plan.",
        O::HowAdopted => {
            "Más gasto se escribe como más potencia de cada consumo, y el gasto propio del inversor queda igual. Lo que entra sin pasar por el derivador o pone el medidor falsamente en lleno se arregla, no se planea; lo que sale sin pasar por él se planea hasta que se arregle; los campos quedan como están, pues unas semanas no distinguen campos débiles de tiempo gris. La variante empieza en la última lectura."
        }
    }
}

/// The reading to take next.
#[must_use]
pub fn next(next: Next) -> &'static str {
    match next {
        Next::DuskAndDawn => "Lee el medidor al anochecer y al amanecer, varios días.",
        Next::ArraysOff => {
            "Un día desconecta los paneles durante una hora y lee el medidor al principio y al final."
        }
        Next::AllOff => "Apágalo todo y lee la corriente.",
        Next::NotFullDays => "Lee por la mañana y por la noche en días que no acaben llenos.",
        Next::DeepAndRested => {
            "Lee porcentaje y tensión una mañana en que el banco esté más cerca de su reserva, tras unas horas con poca corriente."
        }
        Next::FullToFull => {
            "Anota los amperios hora que salen y entran entre dos cargas completas de verdad, antes de que el medidor se ponga en lleno."
        }
        Next::ClampCharging => {
            "Mientras carga, pon una pinza amperimétrica en el propio cable de la batería y anótalo junto a la corriente del medidor."
        }
        Next::ClampAllOff => {
            "Con todo apagado, pon una pinza amperimétrica en el propio cable de la batería y anótalo junto a la corriente del medidor."
        }
        Next::AtFull => {
            "Cuando el medidor diga lleno, anota tensión y corriente, y la tensión de la mañana siguiente."
        }
        Next::EachBattery => {
            "Anota la tensión de cada batería por separado tras unas horas de reposo."
        }
    }
}

/// What was weighed.
#[must_use]
pub fn weighed(study: &Study) -> String {
    let count = |many: usize, one: &str, more: &str| match many {
        1 => format!("1 {one}"),
        many => format!("{many} {more}"),
    };
    format!(
        "De {}, {} sin acabar llenos, {} y {}.",
        count(study.nights, "noche", "noches"),
        count(study.open_days, "día", "días"),
        count(study.fulls, "momento que cuenta como lleno", "momentos que cuentan como lleno"),
        count(study.voltages, "tensión", "tensiones")
    )
}

/// Fecha y hora de una lectura.
#[must_use]
pub fn moment(words: Words, at: NaiveDateTime) -> String {
    let minutes = (at.hour() * 60 + at.minute()) as u16;
    format!(
        "{} de {} de {}, {}",
        at.day(),
        month(at.month0() as usize),
        at.year(),
        words.clock(minutes)
    )
}

/// Something that was learned.
#[must_use]
pub fn learned(words: Words, learned: &Learned, at: Option<NaiveDateTime>) -> String {
    let own = &learned.estimate;
    let share = |of: f64| words.chance(of);
    let amps = |of: f64| words.amount(Amps(of));
    let (size, other_way) = own.size();
    let range_of = |own: &Estimate, say: &dyn Fn(f64) -> String| {
        format!("{} (de {} a {})", say(own.best), say(own.low), say(own.high))
    };
    let range = |say: &dyn Fn(f64) -> String| range_of(own, say);
    let way = |goes_in: bool| if goes_in == other_way { "salen" } else { "entran" };
    match learned.what {
        What::NightUse => {
            format!("De noche se consume el {} de lo que dice el plan.", range(&share))
        }
        What::DayUse => {
            format!("De día puede que se consuma el {} de lo que dice el plan.", range(&share))
        }
        What::NightDrain => format!(
            "Si es una corriente constante y no más consumo, son {} más que en el plan.",
            range(&amps)
        ),
        What::Yield => format!(
            "Los paneles dieron el {} de lo que el plan espera con tiempo medio; los días nublados o claros cuentan en ello.",
            range(&share)
        ),
        What::Capacity => format!("El banco guarda el {} de lo que dice el plan.", range(&share)),
        What::Efficiency => {
            format!("De la carga que entra vuelve a salir el {}.", range(&share))
        }
        What::Bypass => format!(
            "Mientras algo carga, {} {} sin pasar por el shunt.",
            way(true),
            range_of(&size, &amps)
        ),
        What::HiddenDrain => format!(
            "A todas horas {} {} sin pasar por el shunt.",
            way(false),
            range_of(&size, &amps)
        ),
        What::FalseFull => match at {
            Some(at) => format!(
                "Antes del {} el medidor se puso en lleno cuando faltaba el {}.",
                moment(words, at),
                range(&share)
            ),
            None => format!(
                "No se vio ningún lleno falso; uno de hasta el {} podría pasar sin verse.",
                share(own.high)
            ),
        },
        What::RestVoltage => format!(
            "La tensión en reposo se aparta {} de la propia de la química.",
            range(&|of| words.amount(Volts(of)))
        ),
    }
}

/// The state of charge at the newest reading.
#[must_use]
pub fn charge_now(words: Words, charge: &Estimate) -> String {
    format!(
        "En la última lectura el banco está al {} (de {} a {}).",
        words.chance(charge.best),
        words.chance(charge.low),
        words.chance(charge.high)
    )
}

/// Que un banco se leyó más bajo o más alto de lo que puede estar.
#[must_use]
pub fn beyond(words: Words, at: NaiveDateTime, volts: Volts, limit: Volts) -> String {
    let (volts_said, limit_said) = (words.amount(volts), words.amount(limit));
    let why = if volts < limit {
        "por debajo de la tensión a la que se cortan los consumos: carga el banco y busca la causa"
    } else {
        "más de lo que deben mantener sus cargadores: averigua cuál lo hace"
    };
    format!(
        "El {} el banco tenía {volts_said}. Frente a {limit_said} eso es {why}, muestre lo que muestre el medidor.",
        moment(words, at)
    )
}

fn part(part: Part) -> &'static str {
    match part {
        Part::Time => "La hora",
        Part::Percent => "El porcentaje",
        Part::AmpHours => "La carga en amperios hora",
        Part::Volts => "La tensión",
        Part::Amps => "La corriente",
    }
}

fn unit(part: Part) -> &'static str {
    match part {
        Part::Time => "",
        Part::Percent => "\u{a0}%",
        Part::AmpHours => "\u{a0}Ah",
        Part::Volts => "\u{a0}V",
        Part::Amps => "\u{a0}A",
    }
}

/// Why a reading is not used.
#[must_use]
pub fn slip(words: Words, slip: &Slip) -> String {
    match slip {
        Slip::OutOfRange { part: own, value, least, most } => format!(
            "{} es {}{unit}; en este plan va de {} a {}{unit}.",
            part(*own),
            words.as_given(*value),
            words.as_given(*least),
            words.as_given(*most),
            unit = unit(*own)
        ),
        Slip::NoNumber { part: own, text } => {
            format!("{} debería ser un número y es «{text}».", part(*own))
        }
        Slip::NoTime { text } => {
            format!("«{text}» no es una fecha con hora; escríbela como 2026-03-31 18:30.")
        }
        Slip::Empty => "Hay una hora y ninguna lectura en ella.".to_owned(),
        Slip::Short => "Hay menos celdas de las que pide la fecha.".to_owned(),
        Slip::Twice => "Hay otra lectura de la misma hora; cuenta aquella.".to_owned(),
        Slip::TooMany { count } => {
            format!("Hay {count} lecturas; solo se usan las más nuevas.")
        }
        Slip::TooOld => "Es más de un año anterior a la última lectura.".to_owned(),
        Slip::OutsideYears => "Su año debe estar entre 2020 y 2099.".to_owned(),
    }
}

/// The same with the number of the line.
#[must_use]
pub fn in_line(number: &str, slip: &str) -> String {
    format!("Línea {number}: {slip}")
}

/// What amp-hours are that a gauge shows.
pub const LEFT_OR_TAKEN: [&str; 2] = ["quedan", "gastados"];

/// What became of a table: how many were added, were there already, found no room.
#[must_use]
pub fn taken(new: &str, known: &str, dropped: &str, limit: usize) -> (String, [String; 2]) {
    let dropped = format!("Las {dropped} más antiguas no cupieron: un plan guarda {limit}.");
    let known = format!("Ya estaban: {known}.");
    (format!("Lecturas añadidas: {new}."), [known, dropped])
}

/// That there are so many more lines.
#[must_use]
pub fn more_lines(count: &str) -> String {
    format!("Otras líneas que no se usan: {count}.")
}

/// What the reader had to guess.
#[must_use]
pub fn guess(guess: Guess) -> &'static str {
    match guess {
        Guess::NoHeadings => {
            "No hay cabeceras: las columnas se tomaron como fecha, hora, porcentaje, voltios y amperios."
        }
        Guess::DateOrder(Order::DayFirst) => {
            "Las fechas no dicen si va primero el día o el mes: se tomó el día."
        }
        Guess::DateOrder(Order::MonthFirst) => {
            "Las fechas no dicen si va primero el día o el mes: se tomó el mes."
        }
        Guess::MissingFromFull => {
            "Los amperios hora bajo cero se tomaron como lo que falta para estar lleno."
        }
        Guess::TooLong => "El texto es demasiado largo; solo se leyeron sus primeras líneas.",
    }
}

/// What a plan can take over.
#[must_use]
pub fn adoption(words: Words, adoption: &Adoption) -> String {
    match adoption {
        Adoption::Use(share) => format!("Todo el consumo por {}", words.decimal(*share, 2)),
        Adoption::Health(health) => {
            format!("La edad ha dejado el {} de la capacidad", words.chance(health.ratio()))
        }
        Adoption::Standing(amps) => {
            format!("Un consumo permanente de {} más", words.amount(*amps))
        }
        Adoption::Efficiency(own) => {
            format!("Una eficiencia de carga del {}", words.chance(own.ratio()))
        }
    }
}
