//! Why something was refused, and how the fields are called.

use crate::document::{
    Field, FieldFault, Found, List, MAX_BYTES, Problem, TextField, VERSION, Wanted, date_text,
};
use crate::quantity::{Unit, Volts};
use crate::words::number::grouped_count;
use crate::words::{NameOf, Words};
use crate::working::Tag;

use super::calendar::month;

/// A clear sentence or two: what was found where, what is allowed, what to do.
///
/// `name_of` gives the names of loads and arrays where they are known.
#[must_use]
pub fn problem(words: Words, problem: &Problem, name_of: NameOf<'_>) -> String {
    match problem {
        Problem::OutOfRange { field, at, value } => out_of_range(words, *field, *at, *value, name_of),
        Problem::TooLong { field, at, length } => {
            let what = format!("{}{}", text_field(*field), belonging(*at, name_of));
            let limit = field.limit();
            format!("{what} tiene {length} caracteres; puede tener {limit}. Acórtalo.")
        }
        Problem::TooMany { list, length } => too_many(*list, *length),
        Problem::BadSpan { span } => format!(
            "«{span}» no es un tramo del día: debe empezar entre las 00:00 y las 23:59, acabar entre las 00:01 y las 24:00, y no estar vacío."
        ),
        Problem::ImplausibleSun { month: number, stated, most } => {
            let name = month(usize::from(*number).saturating_sub(1));
            format!(
                "Las horas de sol pico de {name} son {} kWh/m² al día; pueden ir de 0 a {}, que es lo que allí llega por encima del aire.",
                words.as_given(stated.0),
                words.amount(*most)
            )
        }
        Problem::IdleAboveLoss { idle, loss } => format!(
            "El consumo en vacío del inversor, {}, supera toda su pérdida a media carga, {}: corrige el consumo en vacío o el rendimiento.",
            words.amount(*idle),
            words.amount(*loss)
        ),
        Problem::GeneratorStops { start, stop } => format!(
            "El generador arranca al {} y pararía al {}: haz que pare con un estado de carga mayor que el de arranque.",
            words.amount(*start),
            words.amount(*stop)
        ),
        Problem::HalfRating { missing } => format!(
            "Falta un valor en «{}»: una capacidad solo cuenta con sus horas. Añádelo o borra el otro.",
            field(*missing)
        ),
        Problem::RatingsClash { faster, slower } => format!(
            "{} en {} y {} en {} no concuerdan: más despacio una batería da más, pero no muchas veces más. Corrige una capacidad o sus horas.",
            words.amount(faster.0),
            words.amount(faster.1),
            words.amount(slower.0),
            words.amount(slower.1)
        ),
        Problem::SetPoint { field, value, least, most } => format!(
            "{}: {}; en una batería de esta clase y tensión debe estar entre {} y {}.",
            self::field(*field),
            in_steps(words, *field, *value),
            in_steps(words, *field, *least),
            in_steps(words, *field, *most)
        ),
        Problem::DateOutOfRange { date } => {
            let date = date_text(*date);
            format!("El primer día es {date}; debe estar entre 2020-01-01 y 2099-12-31.")
        }
        Problem::NotJson { line, column } => not_json(*line, *column),
        Problem::NotAPlan => {
            "Es un archivo de otro programa: un plan de este empieza con «sunlarder» y su versión.".into()
        }
        Problem::TooLarge { bytes } => format!(
            "Tiene {} bytes, y ningún plan tiene tantos: un archivo, {} como máximo. Es otra cosa.",
            grouped_count(*bytes),
            grouped_count(MAX_BYTES)
        ),
        Problem::NewerVersion { version } => newer(*version),
        Problem::WrongField { path, fault } => wrong_field(words, path, fault),
        Problem::BadLetters => {
            "No es el enlace de un plan: tiene caracteres que ninguno tiene. Copia otra vez el enlace entero.".into()
        }
        Problem::Damaged => {
            "Este enlace está cortado o cambió por el camino. Copia otra vez el enlace entero.".into()
        }
    }
}

/// What stands behind a refusal where a plan is open.
#[must_use]
pub fn unchanged() -> &'static str {
    "No se ha cambiado nada."
}

/// A load or array that has no name, by its place.
#[must_use]
pub fn unnamed(tag: Tag) -> Option<String> {
    match tag {
        Tag::Load(place) => Some(format!("Consumo {}", u32::from(place) + 1)),
        Tag::Array(place) => Some(format!("Campo {}", u32::from(place) + 1)),
        Tag::Check(place) => Some(format!("Lectura {}", u32::from(place) + 1)),
        Tag::None | Tag::Month(_) => None,
    }
}

fn out_of_range(words: Words, field: Field, at: Tag, value: f64, name_of: NameOf<'_>) -> String {
    let range = field.range();
    if field == Field::InSeries && range.holds(value) {
        let count = words.as_given(value);
        return format!(
            "{count} baterías de esa tensión en serie suman más celdas seguidas que cualquier banco. Reduce el número o la tensión."
        );
    }
    let what = format!("{}{}", self::field(field), belonging(at, name_of));
    let least = words.as_given(words.shown(field, range.min));
    let most = with_unit(words, field, range.max);
    let least = if range.unit == Unit::Degree { format!("{least}°") } else { least };
    if value.is_nan() {
        return format!("{what}: no es un número; debe estar entre {least} y {most}.");
    }
    let found = with_unit(words, field, value);
    format!("{what}: {found}; debe estar entre {least} y {most}.")
}

/// ` del consumo 3, «Hervidor»` or nothing.
fn belonging(at: Tag, name_of: NameOf<'_>) -> String {
    let (kind, place) = match at {
        Tag::Load(place) => ("consumo", place),
        Tag::Array(place) => ("campo", place),
        Tag::Check(place) => ("lectura", place),
        Tag::None | Tag::Month(_) => return String::new(),
    };
    let number = u32::from(place) + 1;
    match name_of(at).filter(|name| !name.is_empty()) {
        Some(name) => format!(" del {kind} {number}, «{name}»"),
        None => format!(" del {kind} {number}"),
    }
}

/// A voltage in the resolution of its field.
fn in_steps(words: Words, field: Field, volts: Volts) -> String {
    with_unit(words, field, field.range().rounded(volts.0))
}

fn too_many(list: List, length: usize) -> String {
    let (whose, things) = match list {
        List::Loads => ("El plan", "consumos"),
        List::Arrays => ("El plan", "campos"),
        List::Checks => ("El plan", "lecturas"),
        List::Spans => ("Un horario", "tramos del día"),
        List::Readings => ("El plan", "lecturas"),
    };
    let (length, limit) = (grouped_count(length), list.limit());
    format!("{whose} tiene {length} {things}; puede tener {limit}. Junta algunos o quita algunos.")
}

fn not_json(line: usize, column: usize) -> String {
    if line == 0 {
        return "Este archivo no se puede leer: está cortado o no es un plan. Toma una copia nueva.".into();
    }
    if line == 1 && column == 0 {
        return "Este archivo está vacío.".into();
    }
    format!(
        "Este archivo no se puede leer a partir de la línea {line}, columna {column}: está cortado o no es un plan. Toma una copia nueva."
    )
}

fn newer(version: u32) -> String {
    if version <= VERSION {
        return "Este plan tiene partes que esta versión no conoce: lo hizo una más nueva. Actualiza y ábrelo otra vez.".into();
    }
    format!(
        "Este plan tiene la versión de formato {version}, y este programa conoce la {VERSION}. Actualiza y ábrelo otra vez."
    )
}

fn wrong_field(words: Words, path: &str, fault: &FieldFault) -> String {
    match fault {
        FieldFault::Unknown => format!(
            "Esta versión no conoce el campo «{path}»: corrige su nombre o quítalo del archivo."
        ),
        FieldFault::Missing => format!("En el archivo falta el campo «{path}»: añádelo."),
        FieldFault::WrongKind { found, wanted } => format!(
            "El campo «{path}» tiene {}; debe tener {}.",
            self::found(words, found),
            self::wanted(words, *wanted)
        ),
    }
}

/// What stands in a field of a file.
fn found(words: Words, found: &Found) -> String {
    match found {
        Found::Nothing => "null".into(),
        Found::YesNo(own) => format!("{own}"),
        Found::Number(own) => words.as_given(*own),
        Found::Text(own) => format!("«{own}»"),
        Found::List(length) => format!("una lista de {}", grouped_count(*length)),
        Found::Group => "un grupo de campos".into(),
    }
}

/// What a field of a file should be.
fn wanted(words: Words, wanted: Wanted) -> String {
    // A file is in the units of the format, whatever the habits.
    let words = Words::of(words.language);
    let number = |field: Field| {
        let range = field.range();
        format!("de {} a {}", words.as_given(range.min), with_unit(words, field, range.max))
    };
    match wanted {
        Wanted::Number(field) => format!("un número {}", number(field)),
        Wanted::Numbers(count, field) => format!("una lista de {count} números {}", number(field)),
        Wanted::Text(field) => format!("un texto de {} caracteres como máximo", field.limit()),
        Wanted::YesNo => "true o false".into(),
        Wanted::OneOf(names) => one_of(names, u32::MAX),
        Wanted::Form(names, bare) => one_of(names, bare),
        Wanted::SomeOf(names) => format!("una lista, y en cada puesto {}", one_of(names, u32::MAX)),
        Wanted::Numbered(most) => format!("una lista de números enteros de 1 a {most}"),
        Wanted::Whole(most) => format!("un número entero de 0 a {most}"),
        Wanted::Date => "una fecha de 2020-01-01 a 2099-12-31".into(),
        Wanted::Time => "una hora del reloj de 00:00 a 23:59".into(),
        Wanted::Span => {
            "un tramo del día como 17:00-23:00, de 00:00 a 24:00 y que no esté vacío".into()
        }
        Wanted::Group => "un grupo de campos entre llaves".into(),
        Wanted::List(list) => format!("una lista de {} como máximo", list.limit()),
    }
}

/// `«a», «b» o {«c»: …}`; those that are no bare word are the one field of a group.
fn one_of(names: &[&str], bare: u32) -> String {
    let mut text = String::new();
    for (at, name) in names.iter().enumerate() {
        if at > 0 {
            text.push_str(if at + 1 == names.len() { " o " } else { ", " });
        }
        let name = if bare >> at & 1 == 1 {
            format!("«{name}»")
        } else {
            format!("{{«{name}»: …}}")
        };
        text.push_str(&name);
    }
    text
}

fn text_field(field: TextField) -> &'static str {
    match field {
        TextField::PlanName => "El nombre del plan",
        TextField::PlaceName => "El nombre del lugar",
        TextField::LoadName => "El nombre",
        TextField::GroupName => "El grupo",
    }
}

/// A value as it was given, with the unit of its field.
fn with_unit(words: Words, field: Field, value: f64) -> String {
    let number = words.as_given(words.shown(field, value));
    match unit(words, field) {
        "" => number,
        "°" => format!("{number}°"),
        unit => format!("{number}\u{a0}{unit}"),
    }
}

/// The unit of a field as an input box shows it, also of those whose unit is no quantity of the engine; empty for counts.
#[must_use]
pub fn unit(words: Words, field: Field) -> &'static str {
    match field {
        Field::UtcOffset | Field::MinimumRun => "min",
        Field::FuelPerHour => "l/h",
        Field::FuelPerEnergy => "l/kWh",
        Field::LabelEnergy => "kWh",
        Field::ProtectionDraw => "mA",
        Field::PowerCoefficient => "%/K",
        Field::BankWeight | Field::ArrayWeight => "kg",
        field => words.unit(field.range().unit),
    }
}

/// The label of an input box.
// One flat list, longer than a function should be: it is a dictionary, and the compiler checks that it is complete.
#[must_use]
pub fn field(field: Field) -> &'static str {
    use Field as F;
    match field {
        F::Latitude => "Latitud",
        F::Longitude => "Longitud",
        F::UtcOffset => "Huso horario",
        F::PeakSun => "Horas de sol pico",
        F::AirTemperature => "Temperatura del aire",
        F::Albedo => "Luz que devuelve el suelo",
        F::InsideTemperature => "Dentro nunca menos de",
        F::RecordLow => "Mínima histórica",
        F::StartCharge => "Estado de carga al empezar",
        F::Quantity => "Cantidad",
        F::LoadPower => "Potencia",
        F::LoadCurrent => "Corriente de la placa",
        F::PlateVoltage => "Tensión de la placa",
        F::LabelEnergy => "Energía al año de la etiqueta",
        F::OutputPower => "Potencia de salida",
        F::OutputEfficiency => "Rendimiento",
        F::Duty => "Ciclo de trabajo",
        F::Surge => "Pico de arranque",
        F::HoursPerDay => "Horas al día",
        F::FridgeInside => "Temperatura mantenida dentro",
        F::FridgeReference => "Temperatura del aire de los datos",
        F::StandingCurrent => "Consumo permanente",
        F::InverterRated => "Potencia continua del inversor",
        F::InverterSurge => "Potencia de pico del inversor",
        F::InverterIdle => "Consumo en vacío del inversor",
        F::InverterEfficiency => "Rendimiento del inversor",
        F::BatteryVoltage => "Tensión nominal de una batería",
        F::BatteryCapacity => "Capacidad nominal de una batería",
        F::HourRate => "Horas de la capacidad nominal",
        F::InSeries => "En serie",
        F::InParallel => "En paralelo",
        F::Health => "Capacidad que deja la edad",
        F::Reserve => "Reserva",
        F::BatteryTemperature => "Temperatura del banco",
        F::BatteryCurrent => "Límite de corriente de una batería",
        F::ProtectionDraw => "Consumo de la protección de la batería",
        F::ChargeEfficiency => "Rendimiento de carga",
        F::RateExponent => "Exponente de descarga",
        F::SelfDischarge => "Autodescarga en un mes",
        F::ModulePower => "Potencia de un módulo",
        F::ModuleVoltage => "Tensión de un módulo",
        F::ModuleCurrent => "Cortocircuito de un módulo",
        F::PowerCoefficient => "Variación de potencia con el calor",
        F::Tilt => "Inclinación",
        F::Azimuth => "Acimut",
        F::Loss => "Pérdida",
        F::Shading => "Sombra",
        F::ChargerCurrent => "Límite de salida del cargador",
        F::ControllerVoltage => "Tensión máxima de entrada del regulador",
        F::ControllerSelfUse => "Consumo propio del regulador",
        F::Derating => "Menos con el calor",
        F::Horizon => "Altura del horizonte",
        F::PowerFactor => "Factor de potencia",
        F::SearchDraw => "Consumo mientras busca consumos",
        F::GeneratorStart => "Arranca al bajar a",
        F::GeneratorStop => "Para al subir a",
        F::MinimumRun => "Marcha mínima",
        F::FuelPerHour => "Combustible por hora",
        F::FuelPerEnergy => "Combustible por kilovatio hora",
        F::TurbinePower => "Potencia media",
        F::TurbineCharge => "Carga al día",
        F::HourShare => "Parte de una hora del día",
        F::SecondCapacity => "Segunda capacidad nominal",
        F::SecondHours => "Horas de la segunda capacidad",
        F::ThirdCapacity => "Tercera capacidad nominal",
        F::ThirdHours => "Horas de la tercera capacidad",
        F::ShortDays => "Días cortos en diez años, como mucho",
        F::DaysWithoutSun => "Días sin nada de sol",
        F::DaysOfTrip => "Días del viaje",
        F::Chance => "Probabilidad, como mínimo",
        F::BankPrice => "Precio de 100 Ah de batería",
        F::ArrayPrice => "Precio de 100 W de módulos",
        F::BankWeight => "Peso de 100 Ah de batería",
        F::ArrayWeight => "Peso de 100 W de módulos",
        F::RunAmbient => "Aire más caliente junto a los cables",
        F::ShortCircuitCurrent => "Corriente de cortocircuito del banco",
        F::CrankingCurrent => "Amperios de arranque en frío del banco",
        F::BatteryRun => "Del banco a las barras, un sentido",
        F::InverterRun => "De las barras al inversor, un sentido",
        F::PanelRun => "De las barras al cuadro, un sentido",
        F::LoadRun => "Del cuadro a cada consumo, un sentido",
        F::ControllerRun => "Del regulador a las barras, un sentido",
        F::ArrayRun => "De los módulos al regulador, un sentido",
        F::ChargerRun => "Del cargador a las barras, un sentido",
        F::CheckVoltage => "Tensión leída",
        F::CheckCurrent => "Corriente leída",
        F::CheckCharge => "Porcentaje leído",
        F::ToldCapacity => "Capacidad que se le dijo al medidor",
        F::ToldEfficiency => "Eficiencia que se le dijo al medidor",
        F::ReadPercent => "Porcentaje",
        F::ReadLeft => "Amperios hora que quedan",
        F::ReadTaken => "Amperios hora gastados",
        F::ReadVolts => "Tensión en el banco",
        F::ReadAmps => "Corriente que entra en el banco",
        F::AbsorptionVoltage => "Tensión de absorción de una batería",
        F::TailCurrent => "Corriente de cola",
        F::LowCutOff => "Tensión de corte de una batería",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Document, Span};
    use crate::quantity::{AmpHours, Hours, Irradiation, Percent, Watts};

    const WORDS: Words = Words::of(crate::words::Language::Spanish);

    fn nameless(_: Tag) -> Option<String> {
        None
    }

    fn said(problem: &Problem) -> String {
        super::problem(WORDS, problem, &nameless).replace(['\u{a0}', '\u{202f}'], " ")
    }

    #[test]
    fn a_bad_number_is_told_with_field_owner_value_and_range() {
        let kettle = |tag| (tag == Tag::Load(2)).then(|| "Hervidor".to_owned());
        let problem =
            Problem::OutOfRange { field: Field::LoadPower, at: Tag::Load(2), value: 1e300 };
        let text = super::problem(WORDS, &problem, &kettle).replace(['\u{a0}', '\u{202f}'], " ");
        assert_eq!(
            text,
            "Potencia del consumo 3, «Hervidor»: 1e300 W; debe estar entre 0 y 100 000 W."
        );
        let south = Problem::OutOfRange { field: Field::Latitude, at: Tag::None, value: -90.5 };
        assert_eq!(said(&south), "Latitud: −90,5°; debe estar entre −90° y 90°.");
        let none = Problem::OutOfRange { field: Field::Tilt, at: Tag::Array(0), value: f64::NAN };
        assert_eq!(
            said(&none),
            "Inclinación del campo 1: no es un número; debe estar entre 0° y 90°."
        );
        let draw = Problem::OutOfRange { field: Field::ProtectionDraw, at: Tag::None, value: -1.0 };
        assert!(said(&draw).contains("−1 mA"), "{}", said(&draw));
    }

    #[test]
    fn every_problem_is_a_calm_sentence() {
        let span = Span { from_min: 420, to_min: 420 };
        let problems = [
            Problem::TooLong { field: TextField::LoadName, at: Tag::Load(0), length: 120 },
            Problem::TooMany { list: List::Loads, length: 10_000 },
            Problem::BadSpan { span },
            Problem::ImplausibleSun { month: 3, stated: Irradiation(14.2), most: Irradiation(9.3) },
            Problem::IdleAboveLoss { idle: Watts(90.0), loss: Watts(43.5) },
            Problem::GeneratorStops { start: Percent(60.0), stop: Percent(50.0) },
            Problem::HalfRating { missing: Field::SecondHours },
            Problem::RatingsClash {
                faster: (AmpHours(100.0), Hours(5.0)),
                slower: (AmpHours(80.0), Hours(20.0)),
            },
            Problem::SetPoint {
                field: Field::AbsorptionVoltage,
                value: Volts(5.0),
                least: Volts(13.2),
                most: Volts(15.6),
            },
            Problem::DateOutOfRange { date: chrono::NaiveDate::MIN },
            Problem::NotJson { line: 3, column: 16 },
            Problem::NotJson { line: 1, column: 0 },
            Problem::NotAPlan,
            Problem::TooLarge { bytes: 2_000_000 },
            Problem::NewerVersion { version: 0 },
            Problem::NewerVersion { version: 7 },
            Problem::WrongField { path: "loads[3].quantiti".into(), fault: FieldFault::Unknown },
            Problem::WrongField { path: "place".into(), fault: FieldFault::Missing },
            Problem::WrongField {
                path: "bank".into(),
                fault: FieldFault::WrongKind { found: Found::List(3), wanted: Wanted::Group },
            },
            Problem::BadLetters,
            Problem::Damaged,
        ];
        let mut texts: Vec<String> = problems.iter().map(said).collect();
        for text in &texts {
            assert!(text.ends_with('.') && !text.contains('!') && !text.contains("{"), "{text}");
        }
        assert!(texts[1].contains("10 000 consumos") && texts[1].contains("200"), "{}", texts[1]);
        assert!(texts[3].contains("marzo") && texts[3].contains("14,2"), "{}", texts[3]);
        texts.sort();
        texts.dedup();
        assert_eq!(texts.len(), problems.len(), "each is told apart");
    }

    #[test]
    fn a_field_of_another_kind_is_told_with_its_value_and_what_it_may_be() {
        let wrong = |path: &str, found, wanted| {
            let fault = FieldFault::WrongKind { found, wanted };
            said(&Problem::WrongField { path: path.into(), fault })
        };
        let day = Wanted::Numbers(24, Field::HourShare);
        assert_eq!(
            wrong("turbine.hours", Found::List(23), day),
            "El campo «turbine.hours» tiene una lista de 23; debe tener una lista de 24 números de 0 a 100."
        );
        let when = Wanted::Form(&["hours_per_day", "always", "spans"], 0b010);
        assert_eq!(
            wrong("loads[0].schedule.when", Found::Number(2.5), when),
            "El campo «loads[0].schedule.when» tiene 2,5; debe tener {«hours_per_day»: …}, «always» o {«spans»: …}."
        );
    }

    #[test]
    fn what_the_engine_refuses_reads_well() {
        let mut plan = Document::default();
        plan.bank.battery_v = 48.0;
        plan.bank.in_series = 300.0;
        let earth = crate::place::Climate::embedded();
        let problem = crate::system::System::assemble(&plan, earth, &mut ()).unwrap_err();
        assert!(said(&problem).starts_with("300 baterías"), "{}", said(&problem));
    }

    #[test]
    fn every_field_has_a_label_of_its_own() {
        let mut labels: Vec<_> = Field::ALL.iter().map(|field| super::field(*field)).collect();
        labels.sort_unstable();
        labels.dedup();
        assert_eq!(labels.len(), Field::ALL.len());
        assert!(labels.iter().all(|label| label.len() > 3 && label.len() < 45));
    }
}
