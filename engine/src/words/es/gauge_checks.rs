//! Palabras de la hoja de puesta en marcha y de los errores de un medidor.

use crate::gauge::{
    Check, Judged, METERS_LEAST, METERS_SHARE, Mistake, Point, Telltale, Todo, Unread,
};
use crate::quantity::Unit;
use crate::words::{NameOf, Words};
use crate::working::Tag;

/// Qué se comprueba.
#[must_use]
pub fn point(words: Words, point: &Point, name_of: NameOf<'_>) -> String {
    let owner = |tag| words.owner(tag, name_of).unwrap_or_default();
    match point {
        Point::Polarity => "Polaridad y tensión del banco".into(),
        Point::Tightness => "Bornes, espárragos y terminales apretados".into(),
        Point::Insulation(place) => format!("Aislamiento: {}", owner(Tag::Array(*place))),
        Point::ZeroCurrent => "Corriente con todo apagado".into(),
        Point::LoadCurrent(place) => format!("Corriente de «{}» solo", owner(Tag::Load(*place))),
        Point::Drop { run, current } => {
            let name = words.run_name(*run, name_of);
            if current.0 > 0.0 {
                format!("Caída: {name}, con {}", words.amount(*current))
            } else {
                format!("Caída: {name}")
            }
        }
        Point::Absorption => "Tensión de absorción, leída después".into(),
        Point::Float => "Tensión de flotación, leída después".into(),
        Point::CutOff => "Corte por baja tensión, leído después".into(),
        Point::FirstFull => "Medidor al final de la primera carga completa".into(),
    }
}

/// Cómo se comprueba.
#[must_use]
pub fn how(point: &Point) -> &'static str {
    match point {
        Point::Polarity => {
            "Con el fusible principal fuera: voltímetro del lado del banco del portafusibles al cable negativo del banco, punta roja en el más."
        }
        Point::Tightness => {
            "Llave dinamométrica y las cifras de los fabricantes; marca cada uno al hacerlo."
        }
        Point::Insulation(_) => {
            "Lo mide un profesional autorizado contra marco y tierra, según la norma y la hoja de los módulos, desconectado del regulador."
        }
        Point::ZeroCurrent => {
            "Todos los consumos y cargadores apagados, módulos cubiertos, seccionador cerrado: ¿qué lee el medidor?"
        }
        Point::LoadCurrent(_) => {
            "Este consumo solo: pinza amperimétrica en el cable del banco, y el medidor al lado. La descarga cuenta por debajo de cero."
        }
        Point::Drop { .. } => {
            "Voltímetro de punta a punta del más y del menos, sumados, mientras pasa esa corriente. Con otra corriente la caída crece con ella."
        }
        Point::Absorption | Point::Float | Point::CutOff => {
            "Léelo en el aparato después de ajustarlo, no en su hoja."
        }
        Point::FirstFull => {
            "Carga hasta que termine la absorción y caiga la corriente; no lo pongas a mano antes de leer."
        }
    }
}

/// Qué hacer con una lectura.
fn todo(todo: Todo) -> &'static str {
    match todo {
        Todo::DoIt => "Hazlo antes de encender nada: lo que está flojo arde.",
        Todo::Reversed => "Más y menos están cambiados. No conectes nada; busca dónde.",
        Todo::NotThisBank => {
            "El banco está vacío, demasiado alto o no es el del plan. Averígualo antes de conectarlo."
        }
        Todo::Insulation => {
            "No uses el campo hasta que un profesional autorizado lo haya dado por bueno."
        }
        Todo::Zero => {
            "Pon al lado una pinza amperimétrica: si lee lo mismo, algo sigue consumiendo o cargando; si no lee nada, ajusta el cero del medidor según su fabricante."
        }
        Todo::LeadsExchanged => {
            "El medidor toma la descarga por carga: cambia los dos cables finos del derivador, con su fusible fuera."
        }
        Todo::Ahead => {
            "El medidor ve poco de ello: su negativo está en el lado del banco del derivador. Pásalo al lado de los consumos."
        }
        Todo::OtherShunt => {
            "Se indicó al medidor otro derivador: introduce los amperios y milivoltios grabados en el tuyo."
        }
        Todo::CorrectPlan => {
            "Si los dos instrumentos coinciden, el consumo no es el del plan: pon en el plan lo que has leído."
        }
        Todo::Contacts => {
            "Se pierde más de lo que toma el cable. Apaga y busca un terminal flojo, un portafusibles caliente, un cable más fino o más largo."
        }
        Todo::SetPoint => {
            "Ajústalo según la hoja del fabricante; si la hoja dice lo que has leído, ponlo en el plan."
        }
        Todo::NotSetToFull => {
            "¿Se alcanzaron a la vez tensión de lleno, corriente final y tiempo? Si el banco está lleno de verdad, ponlo a mano una vez; si se repite, revisa esas tres."
        }
    }
}

/// Qué significa una lectura, y qué hacer.
#[must_use]
pub fn judged(words: Words, check: &Check, judged: &Judged) -> String {
    let Judged::Off { by, todo: what } = *judged else { return "Como debe ser.".into() };
    let meters = matches!(what, Todo::LeadsExchanged | Todo::Ahead | Todo::OtherShunt);
    match check.point.unit() {
        None => todo(what).to_owned(),
        Some(unit) if meters => {
            let (off, share) = (words.metered(by.abs(), unit), words.amount(METERS_SHARE));
            let least = words.amount(METERS_LEAST);
            format!(
                "Medidor y pinza difieren en {off}; puede ser {share} o {least}. {}",
                todo(what)
            )
        }
        Some(unit) => {
            let off = words.metered(by.abs(), unit);
            let side = if by < 0.0 { "de menos" } else { "de más" };
            format!("{off} {side}. {}", todo(what))
        }
    }
}

/// Por qué se rechaza una lectura.
#[must_use]
pub fn unread(words: Words, unread: &Unread, name_of: NameOf<'_>) -> String {
    let unit = unread.point.unit().unwrap_or(Unit::One);
    format!(
        "{}: {}; debe estar entre {} y {}.",
        point(words, &unread.point, name_of),
        words.as_given(unread.value),
        words.metered(unread.least, unit),
        words.metered(unread.most, unit)
    )
}

/// Algo que está mal en un medidor.
#[must_use]
pub fn mistake(mistake: Mistake) -> &'static str {
    use Mistake as M;
    match mistake {
        M::CapacityHigh => "La capacidad introducida es un tercio demasiado alta",
        M::CapacityLow => "La capacidad introducida es un tercio demasiado baja",
        M::EfficiencyHigh => "La eficiencia de carga introducida es del 100 %",
        M::EfficiencyLow => "La eficiencia de carga introducida es un 10 % demasiado baja",
        M::FullVoltageLow => "La tensión de lleno es un 7 % demasiado baja",
        M::FullVoltageHigh => "La tensión de lleno supera lo que mantienen los cargadores",
        M::TailLarge => "La corriente final es cinco veces mayor de lo debido",
        M::TailSmall => "La corriente final es una centésima de lo debido",
        M::OffsetUp => "Lee un poco de carga cuando no pasa nada",
        M::OffsetDown => "Lee un poco de descarga cuando no pasa nada",
        M::ShuntLarge => "Se le indicó un derivador la mitad mayor",
        M::ShuntSmall => "Se le indicó un derivador de dos tercios",
        M::ShuntReversed => "Los dos cables del derivador están cambiados",
        M::LoadAhead => "El 30 % de lo que se consume no pasa por el derivador",
        M::ChargerAhead => "El cargador principal no pasa por el derivador",
        M::ThresholdHigh => "Las corrientes pequeñas no se cuentan",
        M::FullOnEmpty => "Se puso en lleno cuando el banco estaba más vacío",
    }
}

/// En qué se nota un error.
#[must_use]
pub fn telltale(telltale: Telltale) -> &'static str {
    match telltale {
        Telltale::TooSlow => {
            "Se mueve menos que el banco: aún muestra carga cuando bajan las luces."
        }
        Telltale::TooFast => "Se mueve más que el banco: llega a cero cuando queda mucho.",
        Telltale::CreepsUp => "De un lleno al siguiente va subiendo por encima de la verdad.",
        Telltale::CreepsDown => "De un lleno al siguiente va bajando por debajo de la verdad.",
        Telltale::FullTooEarly => "Salta al 100 % cuando falta mucho.",
        Telltale::NeverFull => "Nunca o casi nunca llega al 100 %.",
        Telltale::FallsToNothing => "Cae al 0 % aunque hay carga.",
        Telltale::FarTooMuch => "Muestra muchísimo de más hasta la próxima carga completa.",
        Telltale::Backwards => "Sube mientras el banco se vacía y baja mientras se llena.",
    }
}
