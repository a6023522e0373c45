//! Precauciones del cableado.

use crate::fitting::{ArrayCheck, Basis, Bundle, Note, Tables};
use crate::words::{NameOf, Words};
use crate::working::Tag;

/// Algo que debe saber quien haga el trabajo.
// Una lista plana, más larga que una función normal: es un diccionario, y el compilador comprueba que está completo.
#[must_use]
pub fn note(words: Words, note: &Note, name_of: NameOf<'_>) -> String {
    let array = |place| words.owner(Tag::Array(place), name_of).unwrap_or_default();
    let plain = match note {
        Note::CodesFirst => {
            "Son cifras de planificación, no el proyecto de una instalación. Primero van las normas locales, las instrucciones de los fabricantes y la práctica autorizada; haz revisar lo que lleve mucha corriente antes de usarlo."
        }
        Note::PlanCannotWork => {
            "Este plan no puede funcionar tal como está. Arréglalo antes de comprar o cortar nada."
        }
        Note::MainsLicensed => {
            "El lado de red puede matar y aquí no se proyecta: la toma de tierra, la protección diferencial, el cambio entre fuentes y todo cable de red son para un profesional autorizado."
        }
        Note::ModulesLive => {
            "Los módulos tienen tensión siempre que hay luz, y ningún interruptor lo evita. Cúbrelos, y no los desenchufes nunca con carga: el arco no se apaga solo."
        }
        Note::Ventilate => {
            "Al cargar se desprende hidrógeno, que explota: una caja ventilada hacia fuera, ninguna chispa ni interruptor cerca, gafas y guantes por el ácido."
        }
        Note::SealedVents => {
            "Las baterías de plomo selladas sueltan gas si se cargan de más: mantenlas ventiladas y sin nada que haga chispas al lado."
        }
        Note::KeepProtection => {
            "Estas baterías pueden arder si se dañan o se cargan fuera de sus límites. Deja su protección en el circuito y no la puentees nunca; una alarma de humo donde se duerme."
        }
        Note::CarbonMonoxide => {
            "Los gases de escape llevan monóxido de carbono, que mata sin oler: motor y generador al aire libre, lejos de las ventanas, y una alarma donde se duerme."
        }
        Note::Restrain => {
            "Sujeta las baterías para que no puedan moverse ni volcar, y cubre cada borne positivo, barra y espárrago contra herramientas que caigan."
        }
        Note::WorkOrder => {
            "Quítate anillos y reloj. Abre el seccionador y saca el fusible principal antes de trabajar; mide que no haya tensión; pon el fusible principal lo último. Primero se quita el campo y al final el banco, y se conecta al revés."
        }
        Note::BalanceFirst => {
            "Antes de unir baterías en paralelo, carga cada una por separado hasta el final y déjalas reposar hasta que sus tensiones coincidan tanto como pida el fabricante: si no, pasa de golpe mucha corriente. Solo baterías iguales y de la misma edad."
        }
        Note::StarterApart => {
            "Mantén aparte la batería de arranque: ningún consumo de la casa en ella, y entre las dos solo el cargador."
        }
        Note::EngineSide => {
            "Un cargador entre dos baterías toma del lado del motor más corriente de la que da en este. Elige ese cable y su fusible junto a la batería de arranque por la hoja del cargador, con la tensión más baja de allí."
        }
        Note::ProtectionMayOpen => {
            "Si la protección de la batería se abre mientras carga el motor, el alternador puede destruirse y su tensión dispararse. Usa un cargador o regulador hecho para esto."
        }
        Note::PreCharge => {
            "Un inversor grande da un chispazo al conectarse: carga antes sus condensadores con una resistencia, según la hoja de su fabricante, y cierra el seccionador solo después."
        }
        Note::Torque => {
            "Aprieta cada borne, espárrago y terminal según la hoja del fabricante con llave dinamométrica, y repásalo tras las primeras semanas: un terminal flojo arde."
        }
        Note::BehindShunt => {
            "En el borne negativo del banco va solo el derivador. El negativo de cada consumo y de cada cargador va al lado de los consumos del derivador, o el medidor no lo cuenta."
        }
        Note::LugOrder => {
            "En un espárrago el terminal con más corriente va abajo, plano sobre la barra, luego los menores, y encima arandela y tuerca; no más de cuatro, y nada entre los terminales."
        }
        Note::BothEnds => {
            "Un cable entre dos cosas que pueden alimentarlo, como hasta un cargador con una batería detrás, necesita un fusible en cada extremo."
        }
        Note::TurbineBySheet => {
            "Aquí no se cablea la turbina: su corriente más alta no está en el plan. Su cable, fusible y freno van según la hoja de su fabricante."
        }
        Note::VehicleTables => {
            "No pudo comprobarse ninguna tabla de vehículos, así que la de barcos ocupa su lugar."
        }
        other => return figured(words, other, name_of, &array),
    };
    plain.to_owned()
}

/// Las que llevan una cifra.
fn figured(
    words: Words,
    note: &Note,
    name_of: NameOf<'_>,
    array: &dyn Fn(u16) -> String,
) -> String {
    match note {
        Note::ShockAndArc { voltage } => format!(
            "La corriente continua de hasta {} puede matar, y su arco no se apaga solo. Por encima de 60\u{a0}V deja el trabajo a un profesional autorizado.",
            words.amount(*voltage)
        ),
        Note::EqualLengths { strings } => format!(
            "Las {} ramas necesitan cables de igual longitud y sección hasta su unión; el positivo se toma en un extremo y el negativo en el otro, para que todas trabajen igual.",
            words.rounded(*strings)
        ),
        Note::SeriesLinks { batteries } => format!(
            "Hay {} baterías o celdas en serie: los puentes entre ellas son tan gruesos como el cable que sale, y todas son iguales en marca, edad y carga.",
            words.rounded(*batteries)
        ),
        Note::KeepAlive { loads } => {
            let name = |place: &u16| {
                let tag = Tag::Load(*place);
                format!("«{}»", words.owner(tag, name_of).unwrap_or_default())
            };
            let names: Vec<String> = loads.iter().map(name).collect();
            format!(
                "Sigue activo con el seccionador abierto, con fusibles propios antes de él: {}. Rotúlalo así.",
                names.join(", ")
            )
        }
        Note::MakersShortCircuit { assumed } => format!(
            "No se conoce la corriente de cortocircuito del banco, y se supone de {}. Pregunta a su fabricante; si es mayor, estos fusibles no bastan.",
            words.amount(*assumed)
        ),
        Note::StringFuses { array: place } => format!(
            "{}: cada rama necesita su propio fusible contra la corriente de las otras, y no mayor de lo que permite la hoja de los módulos.",
            array(*place)
        ),
        Note::ArraySwitch { array: place, voltage } => format!(
            "{}: entre el campo y el regulador va un interruptor que corte corriente continua a {}.",
            array(*place),
            words.amount(*voltage)
        ),
        Note::StartOverFuse { run, peak, rating } => format!(
            "{}: un arranque toma {} por un momento, más del doble del fusible de {}. Mira la curva del fusible; puede servir uno lento de ese valor, pero nunca uno mayor sin un conductor más grueso.",
            super::fitting::run_name(words.language, *run, name_of),
            words.amount(*peak),
            words.amount(*rating)
        ),
        Note::LengthsAssumed { runs } => format!(
            "Se supusieron {runs} longitudes. Mide cada una por su recorrido y vuelve a calcular antes de comprar."
        ),
        Note::TablesUsed { basis } => tables_used(words, basis),
        Note::OverTableVoltage { voltage } => format!(
            "La tabla de barcos está hecha para hasta 50\u{a0}V; aquí hay hasta {}. Sus corrientes valen para el cobre, y el aislamiento debe estar hecho para esa tensión.",
            words.amount(*voltage)
        ),
        Note::ColdTooHigh { check }
        | Note::ColdFits { check }
        | Note::RecordUnknown { check }
        | Note::LimitUnknown { check } => cold(words, note, check, &array(check.array)),
        _ => String::new(),
    }
}

fn cold(words: Words, note: &Note, check: &ArrayCheck, array: &str) -> String {
    let (voltage, at) = (words.amount(check.voltage), words.amount(check.at));
    let limit = check.limit.map(|own| words.amount(own)).unwrap_or_default();
    match note {
        Note::ColdTooHigh { .. } => format!(
            "{array} llega a {voltage} a {at}; su regulador admite {limit} y se destruiría. No lo conectes."
        ),
        Note::ColdFits { .. } => format!(
            "{array} llega a {voltage} con la mínima histórica de {at}; su regulador admite {limit}."
        ),
        Note::RecordUnknown { .. } => format!(
            "{array}: falta la mínima histórica del lugar. A {at} llegaría a {voltage}; su regulador admite {limit}. Indica la mínima antes de conectarlo."
        ),
        _ => format!(
            "{array} llega a {voltage} a {at}; indica lo que admite su regulador antes de conectarlo."
        ),
    }
}

fn tables_used(words: Words, basis: &Basis) -> String {
    let whose = match basis.tables {
        Tables::Marine | Tables::Vehicle => "ABYC E-11 como se cita en público",
        Tables::Land => {
            "NFPA 70 con la numeración de 2020, tabla 310.16, con bornes para 60\u{a0}°C hasta AWG\u{a0}1 y para 75\u{a0}°C por encima"
        }
    };
    let together = match basis.bundle {
        Bundle::Alone => "cada conductor solo",
        Bundle::UpTo3 => "dos o tres conductores juntos",
        Bundle::UpTo6 => "de cuatro a seis conductores juntos",
        Bundle::UpTo24 => "de siete a veinticuatro conductores juntos",
        Bundle::More => "más de veinticuatro conductores juntos",
    };
    let space = if basis.engine_space { " en un espacio con motor" } else { "" };
    format!(
        "Corrientes según {whose}: cobre con aislamiento para {}, {together}, aire a {}{space}; sobre tejados y junto a motores 50\u{a0}°C. Una sección métrica cuenta como el calibre inmediato inferior. Otra norma puede pedir más.",
        words.amount(basis.insulation.temperature()),
        words.amount(basis.ambient)
    )
}
