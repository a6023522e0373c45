//! Palabras para configurar un medidor. Comprobaciones y errores están en `gauge_checks`.

use crate::gauge::{Ask, Equalise, Figure, Kind, MARGIN, Note, Trial, Years};
use crate::quantity::{Hours, Percent, Unit};
use crate::words::Words;
use crate::words::gauge::{OnGauge, SettingWords};

/// Una o dos palabras sobre una columna o una lista del medidor.
#[must_use]
pub fn on_gauge(what: OnGauge) -> &'static str {
    use OnGauge as G;
    match what {
        G::Settings => "Lo que se indica al medidor",
        G::Enter => "introduce",
        G::Between => "tiene sentido",
        G::TooHigh => "demasiado alto",
        G::TooLow => "demasiado bajo",
        G::Chargers => "Junto a ello, cargadores y reguladores a 25 °C",
        G::Absorption => "Absorción",
        G::Float => "Flotación",
        G::OrNone => "o ninguna",
        G::None => "ninguna",
        G::Equalise => "Ecualización",
        G::ByKelvin => "Menos por cada grado sobre 25 °C",
        G::CutOff => "Corte por baja tensión",
        G::Reconnect => "Reconexión de consumos",
        G::Usual => "habitual",
        G::ToKnow => "Antes de pulsar nada",
        G::InAYear => "Lo que mostraría en un año de tiempo inventado",
        G::Mistake => "Con este error",
        G::ByTheCard => "Configurado según la ficha",
        G::KnownBy => "Se reconoce así",
        G::ShowsHere => "Se ve en este plan y con este tiempo.",
        G::HiddenHere => {
            "No se ve en este plan ni con este tiempo; solo lo encuentra un instrumento."
        }
        G::Checks => "Antes de fiarse de la instalación",
        G::Expected => "se espera",
        G::Passes => "vale",
        G::Reading => "lectura",
        G::OnTheGauge => "en el medidor",
        G::AtCurrent => "con una corriente de",
        G::Signed => "Nombre, fecha, firma",
        G::Done => "hecho",
        G::TryMistake => "Un error que probar",
        G::OwnFigures => "Tus propias cifras",
        G::Shown => "lo que muestra el medidor",
        G::Truth => "lo que hay de verdad",
        G::WrongJump => "salta al 100 % o al 0 % sin que sea así",
        G::FirstDays => "Los primeros catorce días",
        G::EachMorning => "Un año, cada mañana a las seis",
        G::TooMuch => "de más, como mucho",
        G::TooLittle => "de menos, como mucho",
        G::SetToFull => "veces puesto en lleno",
        G::WrongJumps => "saltos falsos",
    }
}

/// Una pregunta bajo la que están los ajustes.
#[must_use]
pub fn question(ask: Ask) -> &'static str {
    match ask {
        Ask::HowBig => "¿Cómo es de grande?",
        Ask::WhenFull => "¿Cuándo puede decir lleno?",
        Ask::WhatIsLost => "¿Qué se pierde por el camino?",
        Ask::WhenToWarn => "¿Cuándo debe avisar?",
    }
}

/// Lo que se dice de un ajuste.
// Una lista plana, más larga que una función normal: es un diccionario, y el compilador comprueba que está completo.
#[must_use]
pub fn setting(kind: Kind) -> SettingWords {
    let [name, why, high, low] = match kind {
        Kind::Capacity => [
            "Capacidad",
            "Lo que cabe en el banco con su edad y con el frío del mes en que empiezas, no lo que promete la etiqueta.",
            "Aún muestra carga cuando bajan las luces.",
            "Llega a cero cuando todavía queda mucho.",
        ],
        Kind::HourRate => [
            "Horas de esa capacidad",
            "Las horas en que se saca la capacidad de la etiqueta; por ellas se sabe qué descarga es rápida.",
            "Cuenta consumos moderados como rápidos y baja demasiado pronto.",
            "Cuenta consumos rápidos como moderados y baja demasiado tarde.",
        ],
        Kind::FullVoltage => [
            "Tensión de lleno",
            "Un poco por debajo de la tensión más baja que mantienen tus cargadores; uno con compensación mantiene la menor con calor.",
            "Nunca dice lleno, y sus errores crecen durante meses.",
            "Dice lleno cualquier mañana clara.",
        ],
        Kind::Tail => [
            "Corriente final",
            "La corriente con la que tu cargador termina la absorción, como parte de la capacidad que has introducido. Nunca menor que la del cargador.",
            "Dice lleno mientras el banco todavía toma carga.",
            "El cargador para antes y nunca dice lleno.",
        ],
        Kind::Hold => [
            "Durante cuánto",
            "Unos minutos, para que una nube o una bomba no parezcan el final de la carga.",
            "Puede perderse un momento breve de lleno.",
            "Una nube que pasa puede ponerlo en lleno.",
        ],
        Kind::Efficiency => [
            "Eficiencia de carga",
            "La parte de la carga que entra y vuelve a salir.",
            "Día tras día muestra más de lo que hay.",
            "Día tras día muestra menos de lo que hay.",
        ],
        Kind::Exponent => [
            "Exponente de descarga",
            "Cuánto quita una descarga rápida de lo disponible. Lo que deja vuelve con el reposo, así que la cifra queda baja hasta la próxima carga completa.",
            "Los consumos fuertes bajan la cifra demasiado.",
            "Tras consumos fuertes las luces bajan antes de lo que dice.",
        ],
        Kind::SelfDischarge => [
            "Pérdida en reposo, al mes",
            "Lo que pierde el banco sin nada conectado, si tu medidor lo pide.",
            "Baja demasiado mientras no hay nadie.",
            "Tras semanas parado muestra demasiado.",
        ],
        Kind::Inside => [
            "Consumo dentro de las baterías",
            "Su protección lo toma donde ningún derivador lo ve. Si tu medidor no lo admite, se desvía otro tanto hasta el próximo lleno.",
            "Baja demasiado mientras no hay nadie.",
            "Tras semanas sin llenarse muestra demasiado.",
        ],
        Kind::Threshold => [
            "Menor corriente que cuenta",
            "Por debajo de tu consumo permanente y por encima de lo que lee un medidor cuando no pasa nada.",
            "Los consumos pequeños no se cuentan nunca.",
            "Cuenta lo que es solo su propio error.",
        ],
        Kind::Floor => [
            "El tiempo restante cuenta hasta",
            "Lo que no quieres rebasar: tu reserva, o lo que queda cuando se cortan los consumos.",
            "El tiempo restante es corto aunque haya más.",
            "El tiempo restante cuenta con lo que no debes usar.",
        ],
        Kind::Warn => [
            "Avisa al llegar a",
            "Un cuarto del consumo de un día antes de eso, para que dé tiempo a hacer algo.",
            "Avisa tanto que nadie hace caso.",
            "Avisa cuando ya es tarde.",
        ],
        Kind::Averaged => [
            "Promedia el tiempo restante",
            "Unos ciclos de un compresor: lo bastante para no saltar con cada consumo.",
            "Tarda en ver que se ha encendido algo.",
            "Salta con cada consumo.",
        ],
    };
    SettingWords { name, why, high, low }
}

/// Un dato de un medidor que no es un ajuste suyo.
#[must_use]
pub fn figure(figure: Figure) -> &'static str {
    match figure {
        Figure::Set(kind) => setting(kind).name,
        Figure::Offset => "Corriente leída cuando no pasa nada",
        Figure::Gain => "Parte que lee de más",
        Figure::UnseenLoads => "Parte de los consumos que no pasa por el derivador",
        Figure::UnseenCharger => "Parte del cargador principal que no pasa por el derivador",
        Figure::Start => "Lo que muestra al principio",
    }
}

/// Por qué se rechaza un dato de un medidor.
#[must_use]
pub fn misset(name: &str, value: &str, [least, most]: &[String; 2]) -> String {
    format!("{name}: {value}; debe estar entre {least} y {most}.")
}

/// Si se igualan las celdas, y cómo.
#[must_use]
pub fn equalising(words: Words, equalise: Equalise) -> String {
    match equalise {
        Equalise::Supervised((least, most)) => {
            let range = words.metered_between(least.0, most.0, Unit::Volt);
            format!("{range}, solo mientras alguien vigila, según la hoja del fabricante")
        }
        Equalise::UnlessSheet => "nunca, salvo que lo diga la hoja del fabricante".into(),
        Equalise::Never => "nunca".into(),
    }
}

/// Algo que debe saber quien configure un medidor.
#[must_use]
pub fn note(words: Words, note: &Note) -> String {
    let plain = match note {
        Note::SheetFirst => {
            "Primero van las hojas de los fabricantes, luego las normas locales y la práctica autorizada; estas son las cifras donde la hoja calla."
        }
        Note::NotTheLabel { label, holds } => {
            return format!(
                "No los {} de la etiqueta: con su edad, con el frío de este mes y con las corrientes de este plan caben {}. Introdúcelo de nuevo cuando cambie la estación.",
                words.amount(*label),
                words.amount(*holds)
            );
        }
        Note::LoadSide => {
            "En el borne negativo del banco va solo el derivador; el negativo de cada consumo y de cada cargador va en su lado de consumos, o no se cuenta."
        }
        Note::FirstUse => {
            "Primer uso: carga hasta que la absorción haya terminado de verdad y la corriente haya caído, y solo entonces pon el medidor en lleno. Hasta que no haya visto un lleno, su porcentaje no significa nada."
        }
        Note::NeverOnEmpty => {
            "No lo pongas nunca en lleno con un banco que no lo está: mostraría una carga que no existe hasta la próxima carga completa."
        }
        Note::AfterReplacing => {
            "Tras cambiar baterías: introduce de nuevo capacidad, eficiencia y tensiones, carga hasta el final y ponlo en lleno; la cuenta anterior ya no vale. No mezcles nunca baterías viejas y nuevas."
        }
        Note::NearlyFull => {
            "Cuando la corriente ha caído hasta la final, al plomo todavía le falta algo, hasta más o menos una décima parte; dale de vez en cuando una absorción larga, según permita su hoja."
        }
        Note::NotByVoltage => {
            "La tensión de estas baterías apenas cambia entre casi llenas y casi vacías: no juzgues el medidor por ella."
        }
        Note::FindEfficiency => {
            "La eficiencia se puede hallar: amperios-hora que salen entre los que entran, entre dos momentos de lleno."
        }
        Note::KeepProtection => {
            "Estas baterías pueden arder si se cargan fuera de sus límites: no puentees nunca su protección ni subas un límite para contentar al medidor."
        }
        Note::Hydrogen => {
            "Al cargar mucho el plomo se desprende hidrógeno, que explota: aire, y ninguna chispa."
        }
        Note::Shock => {
            "Por encima de 60\u{a0}V la corriente continua puede matar y su arco no se apaga solo: deja el trabajo en el banco a un profesional autorizado."
        }
        Note::ModulesLive => {
            "Los módulos tienen tensión siempre que hay luz, y ningún interruptor lo evita."
        }
        Note::Vital => {
            "Una vida puede depender de un consumo de este plan. Ningún medidor es una alarma: necesita una alarma de baja tensión y un respaldo propio, también mientras mides."
        }
    };
    plain.to_owned()
}

/// Lo que mostraría un medidor a lo largo de una simulación.
#[must_use]
pub fn trial(words: Words, trial: &Trial) -> String {
    let share = |ratio: f64| words.metered(ratio * 100.0, Unit::Percent);
    let often = match trial.fulls.len() {
        0 => "Nunca se pone en lleno por sí solo".to_owned(),
        _ => format!(
            "Se pone en lleno {} veces al mes",
            words.rounded((trial.fulls_a_month() * 10.0).round() / 10.0)
        ),
    };
    let wrong = match trial.wrong_fulls().count() {
        0 => String::new(),
        count => format!(
            ", {} de {} veces cuando falta más del {}",
            count,
            trial.fulls.len(),
            words.amount(Percent::of_ratio(MARGIN))
        ),
    };
    let empties = match trial.wrong_empties.len() {
        0 => String::new(),
        1 => " Cae a cero una vez aunque hay carga.".to_owned(),
        count => format!(" Cae a cero {count} veces aunque hay carga."),
    };
    let days = match (trial.longest_since_full.0 / 24.0).round() {
        1.0 => "1 día".to_owned(),
        days => format!("{} días", words.rounded(days)),
    };
    format!(
        "{often}{wrong}. Muestra como mucho {} de más y {} de menos, {} de media; lo más que pasa sin lleno: {}.{empties}",
        share(trial.over),
        share(trial.under),
        share(trial.mean_off),
        days
    )
}

/// Lo menos y lo más de los años de un medidor.
#[must_use]
pub fn years(words: Words, years: &Years) -> String {
    let span = |(least, most): (f64, f64)| {
        let (least, most) = (words.rounded(least), words.rounded(most));
        if least == most { least } else { format!("{least} – {most}") }
    };
    let tenths = |(least, most): (f64, f64)| {
        let tenth = |own: f64| (own * 10.0).round() / 10.0;
        span((tenth(least), tenth(most)))
    };
    let days = |own: Hours| (own.0 / 24.0).round();
    let (least, most) = years.longest_since_full;
    let off = |(least, most): (f64, f64)| {
        words.metered_between(least * 100.0, most * 100.0, Unit::Percent)
    };
    format!(
        "En {} años así: se pone en lleno {} veces al mes, {} días sin ello como mucho, como mucho {} de más y {} de menos.",
        years.count,
        tenths(years.fulls_a_month),
        span((days(least), days(most))),
        off(years.over),
        off(years.under)
    )
}

/// Los dos tiempos que quedan en una hora.
#[must_use]
pub fn times_left(words: Words, gauge: Option<Hours>, plan: Option<Hours>) -> String {
    let whole = |hours: Hours| words.duration(hours);
    let gauge = gauge.map_or("ningún tiempo restante, porque carga".to_owned(), |own| {
        format!("un tiempo restante de {}", whole(own))
    });
    let plan = plan.map_or("no llega en esta simulación".to_owned(), |own| {
        format!("llega tras {}", whole(own))
    });
    format!("Al principio el medidor muestra {gauge}; por lo que va a pasar, la reserva {plan}.")
}

/// Cuánto se mueve la cuenta respecto a la verdad en un día.
#[must_use]
pub fn drift(words: Words, drift: Percent) -> String {
    let way = if drift.0 < 0.0 { "baja" } else { "sube" };
    let share = words.metered(drift.0.abs(), Unit::Percent);
    format!("Entre dos veces en lleno su cuenta {way} respecto a la verdad un {share} al día.")
}
