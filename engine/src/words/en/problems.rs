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
            format!("{what} has {length} characters; it may have {limit}. Shorten it.")
        }
        Problem::TooMany { list, length } => too_many(*list, *length),
        Problem::BadSpan { span } => format!(
            "“{span}” is no stretch of the day: it must start from 00:00 to 23:59, end from 00:01 to 24:00, and not be empty."
        ),
        Problem::ImplausibleSun { month: number, stated, most } => {
            let name = month(usize::from(*number).saturating_sub(1));
            format!(
                "Peak sun hours of {name} are {} kWh/m² a day; from 0 to {} can be, for that is what arrives above the air there.",
                words.as_given(stated.0),
                words.amount(*most)
            )
        }
        Problem::IdleAboveLoss { idle, loss } => format!(
            "The idle draw of the inverter, {}, is more than all its loss at half load, {}: correct the idle draw or the efficiency.",
            words.amount(*idle),
            words.amount(*loss)
        ),
        Problem::GeneratorStops { start, stop } => format!(
            "The generator starts at {} and would stop at {}: let it stop at a higher state of charge than it starts.",
            words.amount(*start),
            words.amount(*stop)
        ),
        Problem::HalfRating { missing } => format!(
            "{} is missing: a capacity only counts with its hours. Add it, or clear the other.",
            field(*missing)
        ),
        Problem::RatingsClash { faster, slower } => format!(
            "{} in {} and {} in {} do not go together: slower, a battery gives more, but not many times as much. Correct a capacity or its hours.",
            words.amount(faster.0),
            words.amount(faster.1),
            words.amount(slower.0),
            words.amount(slower.1)
        ),
        Problem::SetPoint { field, value, least, most } => format!(
            "{} is {}; for a battery of this kind and voltage it must lie between {} and {}.",
            self::field(*field),
            in_steps(words, *field, *value),
            in_steps(words, *field, *least),
            in_steps(words, *field, *most)
        ),
        Problem::DateOutOfRange { date } => {
            let date = date_text(*date);
            format!("The first day is {date}; it must lie from 2020-01-01 to 2099-12-31.")
        }
        Problem::NotJson { line, column } => not_json(*line, *column),
        Problem::NotAPlan => {
            "This is a file of another program: a plan of this one begins with “sunlarder” and its version.".into()
        }
        Problem::TooLarge { bytes } => format!(
            "This has {} bytes, and no plan has that many: at most {} in a file. It is something else.",
            grouped_count(*bytes),
            grouped_count(MAX_BYTES)
        ),
        Problem::NewerVersion { version } => newer(*version),
        Problem::WrongField { path, fault } => wrong_field(words, path, fault),
        Problem::BadLetters => {
            "This is no link of a plan: it has characters that none has. Copy the whole link once more.".into()
        }
        Problem::Damaged => {
            "This link is cut off or was changed on its way. Copy the whole link once more.".into()
        }
    }
}

/// What stands behind a refusal where a plan is open.
#[must_use]
pub fn unchanged() -> &'static str {
    "Nothing was changed."
}

/// A load or array that has no name, by its place.
#[must_use]
pub fn unnamed(tag: Tag) -> Option<String> {
    match tag {
        Tag::Load(place) => Some(format!("Load {}", u32::from(place) + 1)),
        Tag::Array(place) => Some(format!("Array {}", u32::from(place) + 1)),
        Tag::Check(place) => Some(format!("Reading {}", u32::from(place) + 1)),
        Tag::None | Tag::Month(_) => None,
    }
}

fn out_of_range(words: Words, field: Field, at: Tag, value: f64, name_of: NameOf<'_>) -> String {
    let range = field.range();
    if field == Field::InSeries && range.holds(value) {
        let count = words.as_given(value);
        return format!(
            "{count} batteries of that voltage in series make more cells in a row than any bank has. Lower the number or the voltage."
        );
    }
    let what = format!("{}{}", self::field(field), belonging(at, name_of));
    let least = words.as_given(words.shown(field, range.min));
    let most = with_unit(words, field, range.max);
    let least = if range.unit == Unit::Degree { format!("{least}°") } else { least };
    if value.is_nan() {
        return format!("{what} is not a number; it must lie between {least} and {most}.");
    }
    let found = with_unit(words, field, value);
    format!("{what} is {found}; it must lie between {least} and {most}.")
}

/// ` of load 3, “Kettle”,` or nothing.
fn belonging(at: Tag, name_of: NameOf<'_>) -> String {
    let (kind, place) = match at {
        Tag::Load(place) => ("load", place),
        Tag::Array(place) => ("array", place),
        Tag::Check(place) => ("reading", place),
        Tag::None | Tag::Month(_) => return String::new(),
    };
    let number = u32::from(place) + 1;
    match name_of(at).filter(|name| !name.is_empty()) {
        Some(name) => format!(" of {kind} {number}, “{name}”,"),
        None => format!(" of {kind} {number}"),
    }
}

/// A voltage in the resolution of its field.
fn in_steps(words: Words, field: Field, volts: Volts) -> String {
    with_unit(words, field, field.range().rounded(volts.0))
}

fn too_many(list: List, length: usize) -> String {
    let (whose, things) = match list {
        List::Loads => ("The plan", "loads"),
        List::Arrays => ("The plan", "arrays"),
        List::Checks => ("The plan", "readings"),
        List::Spans => ("A schedule", "stretches of the day"),
        List::Readings => ("The plan", "readings"),
    };
    let (length, limit) = (grouped_count(length), list.limit());
    format!(
        "{whose} has {length} {things}; it may have {limit}. Put some together, or leave some out."
    )
}

fn not_json(line: usize, column: usize) -> String {
    if line == 0 {
        return "This file cannot be read: it is cut off, or no plan. Take a fresh copy.".into();
    }
    if line == 1 && column == 0 {
        return "This file is empty.".into();
    }
    format!(
        "This file cannot be read from line {line}, column {column} on: it is cut off, or no plan. Take a fresh copy."
    )
}

fn newer(version: u32) -> String {
    if version <= VERSION {
        return "This plan has parts that this release does not know: a newer one made it. Update, then open it again.".into();
    }
    format!(
        "This plan has format version {version}, and this release knows version {VERSION}. Update, then open it again."
    )
}

fn wrong_field(words: Words, path: &str, fault: &FieldFault) -> String {
    match fault {
        FieldFault::Unknown => format!(
            "The field “{path}” is unknown to this release: correct its name, or take it out of the file."
        ),
        FieldFault::Missing => format!("The field “{path}” is missing from the file: add it."),
        FieldFault::WrongKind { found, wanted } => {
            format!(
                "The field “{path}” is {}; it must be {}.",
                self::found(words, found),
                self::wanted(words, *wanted)
            )
        }
    }
}

/// What stands in a field of a file.
fn found(words: Words, found: &Found) -> String {
    match found {
        Found::Nothing => "null".into(),
        Found::YesNo(own) => format!("{own}"),
        Found::Number(own) => words.as_given(*own),
        Found::Text(own) => format!("“{own}”"),
        Found::List(length) => format!("a list of {}", grouped_count(*length)),
        Found::Group => "a group of fields".into(),
    }
}

/// What a field of a file should be.
fn wanted(words: Words, wanted: Wanted) -> String {
    // A file is in the units of the format, whatever the habits.
    let words = Words::of(words.language);
    let number = |field: Field| {
        let range = field.range();
        format!("from {} to {}", words.as_given(range.min), with_unit(words, field, range.max))
    };
    match wanted {
        Wanted::Number(field) => format!("a number {}", number(field)),
        Wanted::Numbers(count, field) => format!("a list of {count} numbers {}", number(field)),
        Wanted::Text(field) => format!("a text of at most {} characters", field.limit()),
        Wanted::YesNo => "true or false".into(),
        Wanted::OneOf(names) => one_of(names, u32::MAX),
        Wanted::Form(names, bare) => one_of(names, bare),
        Wanted::SomeOf(names) => format!("a list, each item {}", one_of(names, u32::MAX)),
        Wanted::Numbered(most) => format!("a list of whole numbers from 1 to {most}"),
        Wanted::Whole(most) => format!("a whole number from 0 to {most}"),
        Wanted::Date => "a date from 2020-01-01 to 2099-12-31".into(),
        Wanted::Time => "a clock time from 00:00 to 23:59".into(),
        Wanted::Span => {
            "a stretch of the day such as 17:00-23:00, from 00:00 to 24:00 and not empty".into()
        }
        Wanted::Group => "a group of fields in braces".into(),
        Wanted::List(list) => format!("a list of at most {}", list.limit()),
    }
}

/// `“a”, “b” or {“c”: …}`; those that are no bare word are the one field of a group.
fn one_of(names: &[&str], bare: u32) -> String {
    let mut text = String::new();
    for (at, name) in names.iter().enumerate() {
        if at > 0 {
            text.push_str(if at + 1 == names.len() { " or " } else { ", " });
        }
        let name = if bare >> at & 1 == 1 {
            format!("“{name}”")
        } else {
            format!("{{“{name}”: …}}")
        };
        text.push_str(&name);
    }
    text
}

fn text_field(field: TextField) -> &'static str {
    match field {
        TextField::PlanName => "The name of the plan",
        TextField::PlaceName => "The name of the place",
        TextField::LoadName => "The name",
        TextField::GroupName => "The group",
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
        F::Latitude => "Latitude",
        F::Longitude => "Longitude",
        F::UtcOffset => "Time zone",
        F::PeakSun => "Peak sun hours",
        F::AirTemperature => "Air temperature",
        F::Albedo => "Light thrown back by the ground",
        F::InsideTemperature => "Inside never colder than",
        F::RecordLow => "Record low",
        F::StartCharge => "State of charge at the start",
        F::Quantity => "Quantity",
        F::LoadPower => "Power",
        F::LoadCurrent => "Current on the plate",
        F::PlateVoltage => "Voltage on the plate",
        F::LabelEnergy => "Energy a year on the label",
        F::OutputPower => "Output power",
        F::OutputEfficiency => "Efficiency",
        F::Duty => "Duty cycle",
        F::Surge => "Surge at the start",
        F::HoursPerDay => "Hours a day",
        F::FridgeInside => "Temperature kept inside",
        F::FridgeReference => "Air temperature of the figures",
        F::StandingCurrent => "Standing draw",
        F::InverterRated => "Continuous output of the inverter",
        F::InverterSurge => "Surge output of the inverter",
        F::InverterIdle => "Idle draw of the inverter",
        F::InverterEfficiency => "Efficiency of the inverter",
        F::BatteryVoltage => "Nominal voltage of one battery",
        F::BatteryCapacity => "Rated capacity of one battery",
        F::HourRate => "Hours of the rated capacity",
        F::InSeries => "In series",
        F::InParallel => "In parallel",
        F::Health => "Capacity left with age",
        F::Reserve => "Reserve",
        F::BatteryTemperature => "Temperature of the bank",
        F::BatteryCurrent => "Current limit of one battery",
        F::ProtectionDraw => "Draw of the battery protection",
        F::ChargeEfficiency => "Charge efficiency",
        F::RateExponent => "Rate exponent",
        F::SelfDischarge => "Self-discharge in a month",
        F::ModulePower => "Power of one module",
        F::ModuleVoltage => "Voltage of one module",
        F::ModuleCurrent => "Short-circuit current of one module",
        F::PowerCoefficient => "Change of power with temperature",
        F::Tilt => "Tilt",
        F::Azimuth => "Azimuth",
        F::Loss => "Loss",
        F::Shading => "Shade",
        F::ChargerCurrent => "Output limit of the charger",
        F::ControllerVoltage => "Highest array voltage of the controller",
        F::ControllerSelfUse => "Draw of the controller itself",
        F::Derating => "Less in the heat",
        F::Horizon => "Elevation of the horizon",
        F::PowerFactor => "Power factor",
        F::SearchDraw => "Draw while it looks for a load",
        F::GeneratorStart => "Starts when down to",
        F::GeneratorStop => "Stops when up to",
        F::MinimumRun => "Shortest run",
        F::FuelPerHour => "Fuel an hour",
        F::FuelPerEnergy => "Fuel a kilowatt-hour",
        F::TurbinePower => "Mean power",
        F::TurbineCharge => "Charge a day",
        F::HourShare => "Share of an hour of the day",
        F::SecondCapacity => "Second rated capacity",
        F::SecondHours => "Hours of the second capacity",
        F::ThirdCapacity => "Third rated capacity",
        F::ThirdHours => "Hours of the third capacity",
        F::ShortDays => "Short days in ten years, at most",
        F::DaysWithoutSun => "Days without any sun",
        F::DaysOfTrip => "Days of the trip",
        F::Chance => "Chance, at least",
        F::BankPrice => "Price of 100 Ah of battery",
        F::ArrayPrice => "Price of 100 W of modules",
        F::BankWeight => "Weight of 100 Ah of battery",
        F::ArrayWeight => "Weight of 100 W of modules",
        F::RunAmbient => "Hottest air around the cables",
        F::ShortCircuitCurrent => "Short-circuit current of the bank",
        F::CrankingCurrent => "Cold-cranking amps of the bank",
        F::BatteryRun => "Bank to bus bars, one way",
        F::InverterRun => "Bus bars to inverter, one way",
        F::PanelRun => "Bus bars to panel, one way",
        F::LoadRun => "Panel to each load, one way",
        F::ControllerRun => "Controller to bus bars, one way",
        F::ArrayRun => "Array to controller, one way",
        F::ChargerRun => "Charger to bus bars, one way",
        F::CheckVoltage => "Voltage read",
        F::CheckCurrent => "Current read",
        F::CheckCharge => "Percentage read",
        F::ToldCapacity => "Capacity that the gauge was told",
        F::ToldEfficiency => "Efficiency that the gauge was told",
        F::ReadPercent => "Percentage",
        F::ReadLeft => "Amp-hours left",
        F::ReadTaken => "Amp-hours taken",
        F::ReadVolts => "Voltage at the bank",
        F::ReadAmps => "Current into the bank",
        F::AbsorptionVoltage => "Absorption voltage of one battery",
        F::TailCurrent => "Tail current",
        F::LowCutOff => "Low cut-off voltage of one battery",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Document, Span};
    use crate::quantity::{AmpHours, Hours, Irradiation, Percent, Watts};

    const WORDS: Words = Words::of(crate::words::Language::English);

    fn nameless(_: Tag) -> Option<String> {
        None
    }

    fn said(problem: &Problem) -> String {
        super::problem(WORDS, problem, &nameless).replace(['\u{a0}', '\u{202f}'], " ")
    }

    #[test]
    fn a_bad_number_is_told_with_field_owner_value_and_range() {
        let kettle = |tag| (tag == Tag::Load(2)).then(|| "Kettle".to_owned());
        let problem =
            Problem::OutOfRange { field: Field::LoadPower, at: Tag::Load(2), value: 1e300 };
        let text = super::problem(WORDS, &problem, &kettle).replace(['\u{a0}', '\u{202f}'], " ");
        assert_eq!(
            text,
            "Power of load 3, “Kettle”, is 1e300 W; it must lie between 0 and 100 000 W."
        );
        let south = Problem::OutOfRange { field: Field::Latitude, at: Tag::None, value: -90.5 };
        assert_eq!(said(&south), "Latitude is −90.5°; it must lie between −90° and 90°.");
        let none = Problem::OutOfRange { field: Field::Tilt, at: Tag::Array(0), value: f64::NAN };
        assert_eq!(said(&none), "Tilt of array 1 is not a number; it must lie between 0° and 90°.");
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
            assert!(text.ends_with('.') && !text.contains('!') && !text.contains('{'), "{text}");
        }
        assert!(texts[1].contains("10 000 loads") && texts[1].contains("200"), "{}", texts[1]);
        assert!(texts[3].contains("March") && texts[3].contains("14.2"), "{}", texts[3]);
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
            "The field “turbine.hours” is a list of 23; it must be a list of 24 numbers from 0 to 100."
        );
        assert_eq!(
            wrong(
                "loads[1].quantity",
                Found::Text("three".into()),
                Wanted::Number(Field::Quantity)
            ),
            "The field “loads[1].quantity” is “three”; it must be a number from 1 to 1000."
        );
        let when = Wanted::Form(&["hours_per_day", "always", "spans"], 0b010);
        assert_eq!(
            wrong("loads[0].schedule.when", Found::Number(23.0), when),
            "The field “loads[0].schedule.when” is 23; it must be {“hours_per_day”: …}, “always” or {“spans”: …}."
        );
    }

    #[test]
    fn what_the_engine_refuses_reads_well() {
        let mut plan = Document::default();
        plan.bank.battery_v = 48.0;
        plan.bank.in_series = 300.0;
        let earth = crate::place::Climate::embedded();
        let problem = crate::system::System::assemble(&plan, earth, &mut ()).unwrap_err();
        assert!(said(&problem).starts_with("300 batteries"), "{}", said(&problem));
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
