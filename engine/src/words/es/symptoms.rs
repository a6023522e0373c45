//! Palabras de síntomas, causas y pruebas, y del cuidado de un banco.

use crate::logbook::{Care, Cause, MeterTest, Standing, Symptom};
use crate::words::Words;

/// What must be minded when measuring.
pub const CAUTION: &str = "Mide solo donde puedas hacerlo sin peligro: una batería empuja miles de amperios por una herramienta que resbala, y por encima de 60 V o en la red mide una persona autorizada. Un banco caliente, hinchado o que huele se deja en paz, sin consumos ni cargadores, y se ventila. Las fichas del fabricante y las normas locales van primero; nunca puentees un fusible o una protección para probar.";

/// A symptom.
#[must_use]
pub fn symptom(symptom: Symptom) -> &'static str {
    match symptom {
        Symptom::NeverFull => "Nunca llega al 100 %",
        Symptom::CutsOutEarly => "Se corta cuando el medidor muestra de sobra",
        Symptom::EmptyByMorning => "Vacío por la mañana",
        Symptom::FullButDim => "Marca lleno y las luces están flojas",
        Symptom::Jumps => "El porcentaje da saltos",
        Symptom::FallsAtRest => "Baja con todo apagado",
    }
}

/// A cause.
#[must_use]
pub fn cause(cause: Cause) -> &'static str {
    match cause {
        Cause::PlanShort => "Según el propio plan entra menos de lo que sale",
        Cause::UsesMore => "Se consume más de lo previsto",
        Cause::ArrayWeak => "Los paneles dan poco: sombra, suciedad, una avería o tiempo nublado",
        Cause::CapacityLost => "El banco guarda menos de lo que dice su etiqueta",
        Cause::CapacitySet => "Al medidor se le dio otra capacidad",
        Cause::EfficiencySet => "Al medidor se le dio otra eficiencia de carga",
        Cause::FalseFull => "El medidor se puso en lleno cuando el banco no lo estaba",
        Cause::FullNotSeen => "Las condiciones de lleno del medidor no se cumplen nunca",
        Cause::Bypass => "El negativo de un cargador está en el lado de la batería del shunt",
        Cause::HiddenDrain => "El negativo de un consumo está en el lado de la batería del shunt",
        Cause::StandingDrain => "Algo consume cuando todo parece apagado",
        Cause::ZeroOff => "El medidor marca corriente donde no la hay",
        Cause::DyingCell => "Una celda o una batería se está muriendo",
        Cause::CableDrop => "Cables, terminales o fusibles pierden demasiada tensión",
        Cause::CutOffHigh => "La tensión de corte está demasiado alta",
        Cause::DrawTooLarge => "Los consumos hunden la tensión",
        Cause::ChargeEndsEarly => "La carga acaba pronto o con una tensión demasiado baja",
        Cause::TooCold => "Hace demasiado frío",
        Cause::SelfDischarge => "Se descarga solo, como todo banco hace un poco",
    }
}

/// How a cause stands.
#[must_use]
pub fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Seen => "lo dicen las lecturas",
        Standing::Likely => "probable",
        Standing::Possible => "posible",
        Standing::Unlikely => "improbable",
    }
}

/// The test that decides a cause.
#[must_use]
pub fn test(words: Words, test: &MeterTest) -> String {
    use MeterTest as T;
    match test {
        T::Balance { short } if short.0 > 0.0 => {
            format!("A un día medio del mes le faltan {} según el plan; mira lo que entra.", words.amount(*short))
        }
        T::Balance { short } => {
            format!("A un día medio del mes le sobran {} según el plan.", words.amount(-*short))
        }
        T::NightCurrent { planned } => format!(
            "Lee la corriente una noche con lo de siempre encendido: la media del plan es {}. Apaga una cosa tras otra.",
            words.amount(*planned)
        ),
        T::NoonCurrent { planned } => format!(
            "A mediodía, con cielo claro y un banco sin llenar, pon la pinza en el cable de los paneles: con el cielo medio del plan son {}.",
            words.amount(*planned)
        ),
        T::CountedDischarge { current, usable } => format!(
            "Desde lleno de verdad saca unos {} y cuenta hasta la reserva: debería dar {}.",
            words.amount(*current),
            words.amount(*usable)
        ),
        T::CapacityBack { capacity } => format!(
            "Mira qué capacidad se le dio al medidor; con su edad y su temperatura el banco guarda {}.",
            words.amount(*capacity)
        ),
        T::FullToFull { usual } => format!(
            "Entre dos cargas completas de verdad divide los amperios hora que salen por los que entran: lo normal es cerca del {}.",
            words.chance(usual.ratio())
        ),
        T::AtFull { volts, tail } => format!(
            "Cuando diga lleno, lee ambas cosas: lleno de verdad son unos {} en los bornes con menos de {} entrando. Si no, las condiciones del medidor piden otras cifras.",
            words.amount(*volts),
            words.amount(*tail)
        ),
        T::ClampCharging => "Mientras carga, pon la pinza en el propio cable de la batería: medidor y pinza deben marcar lo mismo.".to_owned(),
        T::ClampAllOff { planned } => format!(
            "Con todo apagado, pon la pinza en el propio cable de la batería: el plan deja {}; medidor y pinza deben marcar lo mismo.",
            words.amount(*planned)
        ),
        T::ZeroCurrent => "Con el banco aislado el medidor debe marcar cero; si no, ajusta su cero.".to_owned(),
        T::EachBattery { half } => format!(
            "Tras unas horas de reposo lee cada batería por separado: a media carga son unos {}, y la que se aparte una décima de voltio o más de las otras es sospechosa.",
            words.amount(*half)
        ),
        T::DropUnderLoad { current, most } => format!(
            "Con {} mide de los bornes al consumo, positivo con positivo y negativo con negativo: entre ambos no más de {}.",
            words.amount(*current),
            words.amount(*most)
        ),
        T::PostsAtCutOff { cut_off } => format!(
            "Lee la tensión en los bornes en el momento del corte: muy por encima de {} no es el banco.",
            words.amount(*cut_off)
        ),
        T::PostsAbsorbing { volts } => format!(
            "Lee la tensión en los bornes durante la absorción: debería ser {} hasta que la corriente se haya apagado.",
            words.amount(*volts)
        ),
        T::Temperature { least: Some(least) } => format!(
            "Lee la temperatura del banco: por debajo de {} no se debe cargar.",
            words.amount(*least)
        ),
        T::Temperature { least: None } => {
            "Lee la temperatura del banco: el frío quita capacidad y frena la carga.".to_owned()
        }
        T::RestedTwice { a_month } => format!(
            "Desconectado, lee la tensión en reposo dos veces con semanas por medio: un mes debería llevarse el {} de su carga.",
            words.chance(a_month.ratio())
        ),
    }
}

/// Something to do for a bank.
#[must_use]
pub fn care(words: Words, care: &Care) -> String {
    let fixed = match care {
        Care::LayUpHalf { least, most } => {
            return format!(
                "Guárdalo entre el {} y el {} de carga.",
                words.chance(least.ratio()),
                words.chance(most.ratio())
            );
        }
        Care::TopUp { weeks } => {
            return format!("Vuelve a cargarlo cada {weeks} semanas a más tardar.");
        }
        Care::MayFreeze { half } => {
            return format!(
                "Tenlo cargado cuando hiele: a media carga se hiela a {}, y una batería helada no se debe cargar.",
                words.amount(*half)
            );
        }
        Care::NoChargeBelow { least } => {
            return format!(
                "No lo cargues nunca por debajo de {}, ni un poco.",
                words.amount(*least)
            );
        }
        Care::ReadVoltage { least } => {
            return format!(
                "Lee cada mes su tensión en reposo; por debajo de {} cárgalo.",
                words.amount(*least)
            );
        }
        Care::SheetFirst => "La ficha del fabricante va antes que todo esto.",
        Care::Protect => {
            "Ponte guantes y gafas, nada de metal en las muñecas; ni llama ni chispa cerca."
        }
        Care::LayUpFull => "Guárdalo lleno de verdad.",
        Care::Disconnect => {
            "Quita cargadores y consumos, el medidor al final; lo que deba seguir vivo conserva su propio fusible."
        }
        Care::FillOften => {
            "Llénalo de verdad al menos cada dos semanas: las placas que esperan se endurecen."
        }
        Care::Water => "Mira el agua cada mes; añade agua destilada solo cuando esté lleno.",
        Care::Equalise => {
            "Ecualiza solo según la ficha, con vigilancia, ventilación y los consumos sensibles apagados."
        }
        Care::NeverEqualise => {
            "No lo ecualices si su ficha no lo dice: las baterías selladas pierden gas para siempre."
        }
        Care::Ventilate => "Ventílalo bien: al cargar suelta un gas que explota.",
        Care::Balance => "Déjalo un rato en absorción cada mes, para que sus celdas se igualen.",
        Care::NotAlwaysFull => "No lo tengas lleno durante semanas; a media carga envejece menos.",
        Care::KeepProtection => "No rodees nunca su circuito de protección.",
        Care::Terminals => {
            "Cada temporada mira terminales y cables, en frío; aprieta según las cifras del fabricante."
        }
        Care::CountOnceAYear => "Una vez al año cuenta una descarga desde lleno hasta la reserva.",
        Care::GaugeAtFull => {
            "En primavera pon el medidor en lleno solo cuando el banco lo esté de verdad."
        }
    };
    fixed.to_owned()
}
