//! Palabras del cableado: tramos, fusibles, rechazos, qué comprar. Las precauciones están en `fitting_notes`.

pub use super::fitting_notes::note;
use crate::fitting::{
    FuseClass, FusePlace, Insulation, Item, Part, Refusal, RunKind, Tables, Unfit,
};
use crate::quantity::{Celsius, Volts};
use crate::words::fitting::OnFitting;
use crate::words::{Language, NameOf, Words};
use crate::working::Tag;

/// Una o dos palabras sobre una columna o una lista del cableado.
#[must_use]
pub fn on_fitting(what: OnFitting) -> &'static str {
    use OnFitting as F;
    match what {
        F::Runs => "Tramos, de extremo a extremo",
        F::OneWay => "solo ida",
        F::Continuous => "durante horas",
        F::Moment => "un momento",
        F::Conductor => "conductor",
        F::MayCarry => "puede llevar",
        F::Drop => "caída",
        F::Heat => "calor",
        F::Fuse => "fusible",
        F::FuseAt => "dónde va",
        F::Assumed => "supuesta",
        F::NoFuse => "ninguno: lleva todo lo que da el campo",
        F::Refused => "Lo que no pudo cablearse",
        F::AtTheBank => "En el banco",
        F::ShortCircuit => "Corriente de cortocircuito que hay que cortar",
        F::Shunt => "Derivador del medidor",
        F::BusBars => "Barras colectoras",
        F::LugOrder => "Terminales en una barra, el de más abajo primero",
        F::ToKnow => "Antes y durante el trabajo",
        F::ToBuy => "Qué comprar",
    }
}

fn owner(language: Language, tag: Tag, name_of: NameOf<'_>) -> String {
    language.owner(tag, name_of).unwrap_or_default()
}

/// Qué une un tramo.
#[must_use]
pub fn run_name(language: Language, run: RunKind, name_of: NameOf<'_>) -> String {
    use RunKind as K;
    let array = |place| owner(language, Tag::Array(place), name_of);
    match run {
        K::BatteryString => "Cada rama de baterías hasta su unión".into(),
        K::Battery => "Del banco a las barras".into(),
        K::Inverter => "De las barras al inversor".into(),
        K::Distribution => "De las barras al cuadro".into(),
        K::Branch(place) => format!("A «{}»", owner(language, Tag::Load(place), name_of)),
        K::Controller(place) => format!("Regulador de {} a las barras", array(place)),
        K::Array(place) => format!("{} a su regulador", array(place)),
        K::ModuleString(place) => format!("Cada rama de {}", array(place)),
        K::Alternator => "Cargador del motor a las barras".into(),
        K::Shore => "Cargador de red a las barras".into(),
        K::Generator => "Cargador del generador a las barras".into(),
    }
}

/// Un tipo de fusible.
#[must_use]
pub fn fuse_class(class: FuseClass) -> &'static str {
    match class {
        FuseClass::Blade => "fusible de cuchilla",
        FuseClass::BoltedLink => "fusible atornillado pequeño",
        FuseClass::BoltedStrip => "fusible de lámina atornillada",
        FuseClass::PostBlock => "fusible de borne",
        FuseClass::Breaker => "magnetotérmico de corriente continua",
        FuseClass::ClassT => "fusible de clase T",
        FuseClass::Solar => "fusible para ramas solares",
    }
}

/// Dónde va un fusible.
#[must_use]
pub fn fuse_place(place: FusePlace) -> &'static str {
    match place {
        FusePlace::Post => "en el borne positivo, a menos de 175 mm",
        FusePlace::Bus => "en la barra positiva, a menos de 175 mm",
        FusePlace::Panel => "en el cuadro",
        FusePlace::AheadOfIsolator => "antes del seccionador, a menos de 175 mm",
        FusePlace::Combiner => "donde se unen las ramas",
    }
}

/// Una parte del esquema; nada si es un simple nudo.
#[must_use]
pub fn part(language: Language, part: Part, name_of: NameOf<'_>) -> String {
    let of = |tag| owner(language, tag, name_of);
    match part {
        Part::Bank => "Banco".into(),
        Part::Fuse(_) => "Fusible".into(),
        Part::Isolator => "Seccionador".into(),
        Part::Tap => String::new(),
        Part::PlusBar => "Barra positiva".into(),
        Part::MinusBar => "Barra negativa".into(),
        Part::Shunt => "Derivador".into(),
        Part::Alive => "Sigue activo".into(),
        Part::Inverter => "Inversor".into(),
        Part::Panel => "Cuadro".into(),
        Part::Load(place) => of(Tag::Load(place)),
        Part::Controller(place) => format!("Regulador, {}", of(Tag::Array(place))),
        Part::ArraySwitch(_) => "Interruptor".into(),
        Part::Array(place) => of(Tag::Array(place)),
        Part::Alternator => "Cargador del motor".into(),
        Part::Shore => "Cargador de red".into(),
        Part::Generator => "Cargador del generador".into(),
    }
}

/// Por qué no hay conductor para un tramo, y qué hacer.
#[must_use]
pub fn refusal(words: Words, refusal: &Refusal) -> String {
    match *refusal {
        Refusal::Current { needed, most } => format!(
            "Su fusible tendría que soportar {}; el conductor más grueso de las tablas lleva ahí {}. Con una tensión de sistema mayor la corriente baja; si no, déjalo a un profesional autorizado.",
            words.amount(needed),
            words.amount(most)
        ),
        Refusal::Drop { share, allowed } => format!(
            "Hasta el conductor más grueso de las tablas pierde un {} en esta longitud, y se permite un {}. Acórtalo o elige una tensión de sistema mayor.",
            words.amount(share),
            words.amount(allowed)
        ),
        Refusal::Interrupting { current, volts } => format!(
            "Ningún tipo de fusible conocido aquí corta {} a {}. Pide al fabricante de la batería su corriente de cortocircuito, y deja esto a un profesional autorizado.",
            words.amount(current),
            words.amount(volts)
        ),
        Refusal::ColdVoltage { voltage, limit } => format!(
            "Con frío llega a {}, y su regulador admite {}: se destruiría. Pon menos módulos en serie.",
            words.amount(voltage),
            words.amount(limit)
        ),
    }
}

fn tables(tables: Tables) -> &'static str {
    match tables {
        Tables::Marine => "barcos",
        Tables::Vehicle => "vehículos",
        Tables::Land => "edificios",
    }
}

/// Por qué no puede decirse nada con una base: qué se pidió, qué se permite.
#[must_use]
pub fn unfit(words: Words, unfit: &Unfit, name_of: NameOf<'_>) -> String {
    match *unfit {
        Unfit::Ambient { at, least, most } => format!(
            "El aire en torno a los cables está a {}; las tablas conocen de {} a {}.",
            words.amount(at),
            words.amount(least),
            words.amount(most)
        ),
        Unfit::Insulation { tables: whose, insulation } => {
            let known = match whose {
                Tables::Land => [Insulation::C60, Insulation::C75, Insulation::C90]
                    .map(|own| words.amount(own.temperature()))
                    .join("; "),
                Tables::Marine | Tables::Vehicle => {
                    words.amount::<Celsius>(Insulation::C105.temperature())
                }
            };
            format!(
                "El aislamiento para {} no está en ninguna tabla para {}; se conocen: {known}.",
                words.amount(insulation.temperature()),
                tables(whose)
            )
        }
        Unfit::Bundled => {
            "Más de tres conductores juntos no están en ninguna tabla para edificios que aquí se conozca; sepáralos, o agrúpalos de tres en tres.".into()
        }
        Unfit::Length { run, length, least, most } => format!(
            "{}: una longitud de {}; debe estar entre {} y {}.",
            run_name(words.language, run, name_of),
            words.amount(length),
            words.amount(least),
            words.amount(most)
        ),
        Unfit::ShortCircuit { value, least, most } => format!(
            "La corriente de cortocircuito o de arranque en frío del banco es de {}; debe estar entre {} y {}.",
            words.amount(value),
            words.amount(least),
            words.amount(most)
        ),
        Unfit::Cranking => {
            "La corriente de arranque en frío solo dice algo de bancos de plomo de 12 a 24 V; indica en su lugar la de cortocircuito.".into()
        }
    }
}

/// Algo que comprar.
#[must_use]
pub fn to_buy(words: Words, item: &Item) -> String {
    let made_for = |volts: Volts| words.amount(Volts(volts.0.ceil()));
    match *item {
        Item::Conductor(gauge) => format!(
            "Cable de cobre trenzado de {}, positivo y negativo juntos",
            words.conductor(gauge)
        ),
        Item::Lug(gauge) => format!("Terminales para {}", words.conductor(gauge)),
        Item::Fuse { class, rating } => {
            format!("{}, {}", capital(fuse_class(class)), words.amount(rating))
        }
        Item::Holder(class) => format!("Portafusibles: {}", fuse_class(class)),
        Item::BusBar { rating } => {
            format!("Barra colectora con tapa, al menos {}", words.amount(rating))
        }
        Item::Isolator { rating, volts } => format!(
            "Seccionador de batería, al menos {} y {} de corriente continua",
            words.amount(rating),
            made_for(volts)
        ),
        Item::Shunt { rated, drop } => format!(
            "Derivador de {} a {}\u{a0}mV, clase 0,5, con el medidor",
            words.amount(rated),
            words.rounded((drop.0 * 1000.0).round())
        ),
        Item::ArraySwitch { rating, volts } => format!(
            "Interruptor para el campo, al menos {} y {} de corriente continua",
            words.amount(rating),
            made_for(volts)
        ),
        Item::PreCharge => {
            "Resistencia o aparato que carga primero el inversor, según la hoja de su fabricante"
                .into()
        }
    }
}

/// Lo mismo con mayúscula.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}
