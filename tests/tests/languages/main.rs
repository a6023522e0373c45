//! Every language says every message, in its own words: none is left over from another.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it cannot read")]

mod gauge;
mod logbook;

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use sunlarder_engine::bank::Quality;
use sunlarder_engine::document::{Chemistry, Document, Field, Months, Problem};
use sunlarder_engine::fitting::{
    ArrayCheck, Basis, Bundle, Cold, Fitting, FuseClass, FusePlace, Gauge, Insulation, Item,
    Lengths, Note, Refusal, RunKind, Tables, Unfit,
};
use sunlarder_engine::load::catalogue::{Appliance, Group};
use sunlarder_engine::outlook::{End, Figure, Guessed, Obstacle, Outlook, Question};
use sunlarder_engine::place::{Climate, SpreadGrid, SummerTime, WeatherFileFault};
use sunlarder_engine::quantity::{
    AmpHours, Amps, Celsius, Degrees, Hours, Metres, Percent, VoltAmps, Volts, Watts,
};
use sunlarder_engine::simulate::{Extent, Sunlight};
use sunlarder_engine::sizing::{Change, Kind, Promise};
use sunlarder_engine::system::System;
use sunlarder_engine::words::fitting::OnFitting;
use sunlarder_engine::words::sizing::Sized;
use sunlarder_engine::words::{
    Habits, Label, Language, LeadingUnit, SITE, Temperature, Term, Words, lines,
};
use sunlarder_engine::working::{Tag, Working};

const ENGLISH: Words = Words::of(Language::English);
const SPANISH: Words = Words::of(Language::Spanish);

/// English words that no Spanish text has. Those of commands, file forms and titles of works are no text of ours.
const LEFTOVERS: [&str; 24] = [
    "the", "of", "and", "is", "your", "you", "it", "with", "for", "from", "to", "at", "in", "than",
    "this", "that", "day", "days", "hours", "charge", "bank", "load", "array", "weather",
];

fn leftovers(text: &str) -> Vec<&str> {
    let words = text.split(|letter: char| !letter.is_alphanumeric());
    words.filter(|word| LEFTOVERS.contains(word)).collect()
}

/// A plan of the examples with its answers.
fn answered(name: &str) -> (Document, System, Outlook) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../examples").join(name);
    let plan = Document::from_json(&fs::read_to_string(path).unwrap()).unwrap();
    let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
    let outlook = Outlook::of(&system);
    (plan, system, outlook)
}

const EXAMPLES: [&str; 8] = [
    "camper.json",
    "boat.json",
    "cabin.json",
    "classroom.json",
    "clinic.json",
    "sailor.json",
    "stall.json",
    "hut.json",
];

/// What is said of a plan's answers.
fn sentences(words: Words, name: &str) -> Vec<String> {
    let (plan, system, outlook) = answered(name);
    let nominal = system.bank.nominal;
    // Without the names that people gave, which are in their own language.
    let nameless = |_: Tag| None;
    let mut told = vec![
        words.headline(&outlook).text(),
        words.short(&outlook),
        words.explanation(&outlook, &system, &nameless),
        words.tightest(&outlook, nominal),
        words.autonomy(outlook.autonomy_days),
        words.months_kept(outlook.months_kept()),
        words.voltages(&outlook.voltages(&system)),
        words.per_day(outlook.budget.total, nominal),
        words.day_balance(outlook.months[0].balance, nominal),
        words.of_rated(system.bank.slowest, nominal),
        words.a_day_in(outlook.month),
        words.climate_in_words(&system.climate),
        words.scenario_figures(&plan),
    ];
    told.extend(words.climate_sources(&system.climate).map(str::to_owned));
    told.extend(outlook.obstacles.iter().map(|own| words.obstacle(own, &nameless)));
    told.extend(outlook.months.iter().map(|month| words.generator_in(month)));
    told.extend(system.bank.fit_quality().map(|own: Quality| words.fit(&own)));
    let spread = SpreadGrid::embedded().at(system.site);
    let extent = Extent { runs: 20, blocks: 2 };
    let mut ensemble = outlook.ensemble(&system, &spread, extent);
    while ensemble.advance() {}
    let chances = ensemble.chances();
    told.push(words.when_reserve_comes(&chances, &system));
    let mut opening = outlook.opening.as_ref().clone();
    for month in 0..12 {
        opening.month = month;
        told.push(words.month_kept(&chances, &opening));
    }
    told.extend(words.over_years(&chances));
    told.push(words.doubt(ensemble.trust(), &chances));
    let [mean, weather] = [outlook.mean_year(&system), outlook.weather_year(&system, &spread, 0)];
    let flow = outlook.day_flow(&system, &mut Sunlight::default());
    told.extend([&mean, &weather].map(|year| words.year(year, system.bank.reserve)));
    told.extend([words.flow(&flow), words.other_loads(1), words.other_loads(4)]);
    told.extend(
        [words.under_reserve(), words.sunrise_and_sunset(), words.small_losses()]
            .map(str::to_owned),
    );
    told.extend(words.year_heads().map(str::to_owned));
    told.extend(words.flow_heads().map(str::to_owned));
    told.extend(words.flow_sums().map(str::to_owned));
    let plan = Document::default();
    told.extend(flow.from.iter().chain(&flow.to).map(|own| words.end_in(&plan, own.end)));
    let sources = [End::Sun, End::Turbine, End::Engine, End::Shore];
    let into = sources.map(|own| words.power_from(own, "12"));
    told.push(words.day_reading("12:00", "13:00", &into, "40"));
    told.push(words.day_reading("12:00", "13:00", &[], "40"));
    for question in Question::ALL {
        let mut working = Working::new();
        outlook.work(question, &system, &mut working);
        for line in lines(&working, words, &|tag| words.unnamed(tag)) {
            told.extend([line.title.to_owned(), line.meaning.to_owned()]);
        }
    }
    told.into_iter().filter(|own| !own.is_empty()).collect()
}

#[test]
fn spanish_says_all_of_a_plan_without_a_word_of_english() {
    for name in EXAMPLES {
        let (english, spanish) = (sentences(ENGLISH, name), sentences(SPANISH, name));
        assert_eq!(english.len(), spanish.len());
        for (one, other) in english.iter().zip(&spanish) {
            assert_eq!(leftovers(other), [""; 0], "{other}");
            assert!(one != other || one.chars().count() < 12, "{one}");
            assert!(!other.contains(['“', '”', '{']), "{other}");
        }
    }
}

/// Every text that never changes, with what it is.
fn fixed(language: Language) -> Vec<(String, String)> {
    let mut told = Vec::new();
    let mut say = |what: String, text: &str| told.push((what, text.to_owned()));
    for label in Label::ALL {
        say(format!("{label:?}"), language.label(*label));
    }
    for field in Field::ALL {
        say(format!("{field:?}"), language.field(*field));
        say(format!("{field:?}, explained"), language.explain_field(*field));
    }
    for term in Term::ALL {
        say(format!("{term:?}"), language.explain_term(*term));
    }
    say("a place near another".to_owned(), &language.near("Uku"));
    say("the question for a word".to_owned(), &language.what_is("Ah"));
    for appliance in Appliance::ALL {
        say(format!("{appliance:?}"), language.appliance(*appliance));
    }
    for group in Group::ALL {
        say(format!("{group:?}"), language.appliance_group(group));
    }
    for chemistry in Chemistry::ALL {
        say(format!("{chemistry:?}"), language.chemistry(*chemistry));
    }
    for rule in SummerTime::ALL {
        say(format!("{rule:?}"), language.summer_time(rule));
    }
    told
}

/// Texts of more than this many letters are not alike by chance.
const LONG: usize = 16;

#[test]
fn every_fixed_text_is_translated() {
    let (english, spanish) = (fixed(Language::English), fixed(Language::Spanish));
    for ((what, one), (_, other)) in english.iter().zip(&spanish) {
        assert!(!other.trim().is_empty() && other == other.trim(), "{what}");
        assert!(one != other || one.chars().count() <= LONG, "{what}: {other}");
        assert_eq!(leftovers(other), [""; 0], "{what}: {other}");
        // Each ends a sentence, or none.
        assert_eq!(one.ends_with('.'), other.ends_with('.'), "{what}: {other}");
        assert_eq!(one.ends_with('?'), other.ends_with('?'), "{what}: {other}");
        assert!(!other.ends_with('?') || other.contains('¿'), "{what}: {other}");
    }
}

#[test]
fn months_days_and_countries_have_names_of_their_own() {
    for language in Language::ALL {
        let months: BTreeSet<_> = (0..12).map(|month| language.month(month)).collect();
        let days: BTreeSet<_> = (0..7).map(|day| language.weekday(day)).collect();
        assert_eq!((months.len(), days.len()), (12, 7));
        let countries = language.countries();
        assert!(["ES", "US", "JP", "KE"].iter().all(|code| countries.name(code).is_some()));
    }
    assert_eq!(Language::Spanish.countries().name("DE"), Some("Alemania"));
}

#[test]
fn refusals_and_obstacles_are_in_spanish_with_a_comma() {
    let kettle = |_: Tag| Some("Hervidor".to_owned());
    let problem = Problem::OutOfRange { field: Field::Latitude, at: Tag::None, value: -90.5 };
    assert_eq!(SPANISH.problem(&problem, &kettle), "Latitud: −90,5°; debe estar entre −90° y 90°.");
    let fault = SPANISH.weather_file_fault(&WeatherFileFault::NotWeather);
    assert!(fault.contains("LOCATION") && leftovers(&fault).is_empty(), "{fault}");
    let (current, limit, place) = (Amps(12.5), Amps(100.0), 0);
    for obstacle in [
        Obstacle::NoInverter { load: place },
        Obstacle::InverterOverloaded { peak: Watts(1500.0), rated: Watts(1000.0) },
        Obstacle::InverterSurge { load: place, peak: VoltAmps(1500.0), surge: VoltAmps(1000.0) },
        Obstacle::BankOverloaded { current, limit },
        Obstacle::BankSurge { load: place, current, limit },
        Obstacle::InverterBeyondBank { current, limit },
        Obstacle::BankSags { load: None, voltage: Volts(11.2), cut_off: Volts(11.0) },
        Obstacle::BankSags { load: Some(place), voltage: Volts(11.2), cut_off: Volts(11.0) },
        Obstacle::ColdNotKnown { array: place },
        Obstacle::TooColdToCharge { months: 0b11, least: Celsius(0.0) },
        Obstacle::MayFreeze {
            coldest: Celsius(-30.5),
            freezes: Celsius(-15.5),
            charge: Percent(20.0),
        },
        Obstacle::ProtectionMayOpen,
        Obstacle::VitalLoad { load: place },
        Obstacle::DangerousVoltage { voltage: Volts(64.5) },
    ] {
        let (one, other) =
            (ENGLISH.obstacle(&obstacle, &kettle), SPANISH.obstacle(&obstacle, &kettle));
        assert!(one != other && leftovers(&other).is_empty(), "{other}");
        assert!(
            other.ends_with('.') && !other.contains("12.5") && !other.contains("64.5"),
            "{other}"
        );
    }
}

#[test]
fn habits_change_what_is_told_in_every_language() {
    let habits = Habits {
        temperature: Temperature::Fahrenheit,
        leading: LeadingUnit::WattHours,
        ..Habits::USUAL
    };
    for language in Language::ALL {
        let (usual, own) = (Words::of(*language), Words { language: *language, habits });
        assert_eq!(own.amount(Celsius(20.0)), "68\u{a0}°F");
        assert_eq!(usual.amount(Celsius(20.0)), "20\u{a0}°C");
        let balance = own.day_balance(AmpHours(10.0), Volts(12.0));
        assert!(balance.contains("+120\u{a0}Wh"), "{balance}");
        let problem =
            Problem::OutOfRange { field: Field::AirTemperature, at: Tag::None, value: 100.0 };
        let told = own.problem(&problem, &|_| None);
        assert!(told.contains("212\u{a0}°F") && told.contains("140\u{a0}°F"), "{told}");
        assert_eq!(own.amount(Hours(2.0)), usual.amount(Hours(2.0)));
        assert_eq!(own.amount(Percent(50.0)), usual.amount(Percent(50.0)));
    }
}

#[test]
fn the_site_has_a_page_for_each_language() {
    let tags: Vec<_> = Language::ALL.iter().map(|own| own.tag()).collect();
    assert_eq!(SITE.map(|(tag, _)| tag).to_vec(), tags);
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let index = fs::read_to_string(folder.join("index.html")).unwrap();
    for (tag, _) in SITE {
        assert!(index.contains(&format!("data-language=\"{tag}\"")), "{tag}");
    }
    // The first stands in the page itself; the others say each of its words.
    for (tag, _) in &SITE[1..] {
        let list = folder.join("engine/src/words").join(tag).join("index.tsv");
        let manifest = fs::read_to_string(folder.join("app/web/manifest.webmanifest")).unwrap();
        for row in fs::read_to_string(list).unwrap().lines() {
            let (from, to) = row.split_once('\t').unwrap();
            assert!(index.contains(from) || manifest.contains(from), "{from}");
            assert_eq!(leftovers(to), [""; 0], "{to}");
        }
    }
}

/// A plan of the examples without the names that people gave, which are in their own language.
fn nameless(name: &str) -> Document {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../examples").join(name);
    let mut plan = Document::from_json(&fs::read_to_string(path).unwrap()).unwrap();
    plan.name.clear();
    plan.place.name.clear();
    plan.loads.iter_mut().for_each(|load| load.name.clear());
    plan
}

/// What is said of two plans beside each other, and of guesses.
fn compared(words: Words) -> Vec<String> {
    let mut told = Vec::new();
    let blank = Document::default();
    for name in EXAMPLES {
        let plan = nameless(name);
        for line in words.difference_lines(&plan, &blank) {
            told.extend([line.what, line.first, line.second]);
        }
        told.extend(words.stated_lines(&plan).into_iter().flat_map(|(part, said)| [part, said]));
        told.push(words.place_name(&plan));
        let (_, system, outlook) = answered(name);
        for figure in Figure::ALL {
            told.extend([
                words.figure(figure).to_owned(),
                words.figure_of(&outlook, &system, figure),
                words.difference(figure, Some(8.5), Some(1.0)),
                words.than(figure, -1.5, "N"),
                words.than(figure, 0.0, ""),
            ]);
        }
        for what in Guessed::ALL {
            let answer = what.answer(&outlook);
            told.extend([
                words.asked(what, outlook.month),
                words.answer(what, answer),
                words.answer(what, None),
                words.median(what, 2.5),
                words.guesses_near(what, 1, 1),
                words.guesses_near(what, 7, 30),
                words.guess_refused(what, "x"),
                words.guess_refused(what, " "),
            ]);
        }
    }
    told.extend([0, 1, 2].map(|count| words.guesses(count)));
    told.extend([words.guesser(0), words.full_of_guesses(9), words.beside("1", "")]);
    told.extend(words.variants().iter().map(|own| (*own).to_owned()));
    told
}

#[test]
fn comparisons_and_guesses_are_in_spanish_too() {
    let (english, spanish) = (compared(ENGLISH), compared(SPANISH));
    assert_eq!(english.len(), spanish.len());
    for (one, other) in english.iter().zip(&spanish) {
        assert_eq!(leftovers(other), [""; 0], "{other}");
        let sentence = one.contains(' ') && one.contains(char::is_alphabetic);
        assert!(one != other || !sentence, "{one}");
        assert!(!other.contains(['“', '”', '{']), "{other}");
    }
}

/// What is said of promises and sizes.
fn sizes(words: Words) -> Vec<String> {
    let amounts = Sized { charge: AmpHours(220.0), power: Watts(850.0) };
    let kinds = [
        Kind::Through,
        Kind::ShortDays { most: 0 },
        Kind::ShortDays { most: 1 },
        Kind::ShortDays { most: 9 },
        Kind::WithoutSun { days: 1 },
        Kind::Trip { days: 7 },
    ];
    let seasons = [0xfff, 1 << 4, 0b0001_1111_0000, 0b0100_0001].map(Months);
    let usual = Promise::default();
    let mut told: Vec<String> =
        kinds.map(|kind| words.promise(&Promise { kind, ..usual })).into_iter().collect();
    told.extend(seasons.map(|season| words.promise(&Promise { season, ..usual })));
    told.extend([20, 1].map(|years| words.standing_chance(0.85, 0.08, years)));
    told.extend([Some(amounts), None].map(|size| words.suggested_size(size)));
    told.extend([Some(amounts), None].map(|size| words.smallest_bank(size)));
    told.extend([Some(amounts), None].map(|size| words.smallest_array(size)));
    told.extend([Some(1), Some(5), None].map(|hours| words.charger_hours(hours, Amps(20.0))));
    told.extend([true, false].map(|south| words.tilt_for(Degrees(60.0), south, 11, 0.5)));
    told.push(words.tilt_for(Degrees(0.0), true, 11, 0.5));
    let changes = [
        Change::LessUse { load: 0, hours: Hours(2.0) },
        Change::Direct { load: 0 },
        Change::MoreArray { array: 0 },
        Change::Tilted { tilt: Degrees(60.0) },
        Change::Tracking,
        Change::MoreBank,
        Change::Warmer { at: Celsius(20.0) },
        Change::LongerEngine { hours: Hours(1.0) },
    ];
    told.extend(changes.map(|change| words.change(&change, "X")));
    told.extend([words.short_day(), words.life_depends()].map(str::to_owned));
    told
}

#[test]
fn promises_and_sizes_are_said_in_every_language() {
    let (english, spanish) = (sizes(ENGLISH), sizes(SPANISH));
    for (one, other) in english.iter().zip(&spanish) {
        assert!(!one.is_empty() && one != other, "{one}");
        assert_eq!(leftovers(other), Vec::<&str>::new(), "{other}");
    }
    let apart: BTreeSet<&String> = spanish.iter().collect();
    // The usual promise is among the kinds and among the seasons.
    assert_eq!(apart.len() + 1, spanish.len(), "{spanish:?}");
}

/// Every note there is; the cautions of wiring must never be silent.
fn notes() -> Vec<Note> {
    let check = ArrayCheck {
        array: 0,
        cold: Cold::TooHigh,
        voltage: Volts(64.5),
        at: Celsius(-12.5),
        limit: Some(Volts(60.5)),
        string_fuses: true,
    };
    let bases = Bundle::ALL.map(|bundle| Basis { bundle, ..Basis::of(Tables::Marine) });
    let bases = bases.into_iter().chain([Tables::Land, Tables::Vehicle].map(Basis::of));
    let hot = Basis { engine_space: true, ..Basis::of(Tables::Marine) };
    let mut all = vec![
        Note::CodesFirst,
        Note::PlanCannotWork,
        Note::MainsLicensed,
        Note::ShockAndArc { voltage: Volts(64.5) },
        Note::ModulesLive,
        Note::Ventilate,
        Note::SealedVents,
        Note::KeepProtection,
        Note::CarbonMonoxide,
        Note::Restrain,
        Note::WorkOrder,
        Note::EqualLengths { strings: 2.0 },
        Note::BalanceFirst,
        Note::SeriesLinks { batteries: 4.0 },
        Note::StarterApart,
        Note::EngineSide,
        Note::ProtectionMayOpen,
        Note::KeepAlive { loads: vec![0, 1] },
        Note::PreCharge,
        Note::StartOverFuse { run: RunKind::Branch(0), peak: Amps(12.5), rating: Amps(5.0) },
        Note::Torque,
        Note::BehindShunt,
        Note::LugOrder,
        Note::BothEnds,
        Note::MakersShortCircuit { assumed: Amps(20_000.0) },
        Note::ColdTooHigh { check },
        Note::ColdFits { check },
        Note::RecordUnknown { check },
        Note::LimitUnknown { check },
        Note::StringFuses { array: 0 },
        Note::ArraySwitch { array: 0, voltage: Volts(64.5) },
        Note::TurbineBySheet,
        Note::LengthsAssumed { runs: 3 },
        Note::VehicleTables,
        Note::OverTableVoltage { voltage: Volts(64.5) },
    ];
    all.extend(bases.chain([hot]).map(|basis| Note::TablesUsed { basis }));
    all
}

/// What is said of wiring.
fn wiring(words: Words) -> Vec<String> {
    let named = |tag: Tag| (tag == Tag::Load(0)).then(|| "X".to_owned());
    let mut told: Vec<String> =
        notes().iter().map(|note| words.fitting_note(note, &named)).collect();
    let (volts, share) = (Volts(64.5), Percent(12.5));
    let refusals = [
        Refusal::Current { needed: Amps(700.5), most: Amps(311.5) },
        Refusal::Drop { share, allowed: Percent(1.0) },
        Refusal::Interrupting { current: Amps(20_500.0), volts },
        Refusal::ColdVoltage { voltage: volts, limit: Volts(50.5) },
    ];
    told.extend(refusals.iter().map(|own| words.refusal(own)));
    let (tables, insulation) = (Tables::Marine, Insulation::C60);
    let unfits = [
        Unfit::Ambient { at: Celsius(55.5), least: Celsius(10.0), most: Celsius(50.0) },
        Unfit::Insulation { tables, insulation },
        Unfit::Insulation { tables: Tables::Land, insulation: Insulation::C105 },
        Unfit::Bundled,
        Unfit::Length {
            run: RunKind::Battery,
            length: Metres(0.05),
            least: Metres(0.1),
            most: Metres(200.0),
        },
        Unfit::ShortCircuit { value: Amps(1.5), least: Amps(50.0), most: Amps(200_000.0) },
        Unfit::Cranking,
    ];
    told.extend(unfits.iter().map(|own| words.unfit(own, &named)));
    let gauge = Gauge::all().next().unwrap();
    let rating = Amps(125.5);
    let items = [
        Item::Conductor(gauge),
        Item::Lug(gauge),
        Item::Fuse { class: FuseClass::PostBlock, rating },
        Item::Holder(FuseClass::BoltedStrip),
        Item::BusBar { rating },
        Item::Isolator { rating, volts },
        Item::Shunt { rated: rating, drop: Volts(0.05) },
        Item::ArraySwitch { rating, volts },
        Item::PreCharge,
    ];
    told.extend(items.iter().map(|own| words.to_buy(own)));
    told.extend(OnFitting::ALL.map(|own| words.on_fitting(own).to_owned()));
    told.extend(FuseClass::ALL.map(|own| words.fuse_class(own).to_owned()));
    let places = [
        FusePlace::Post,
        FusePlace::Bus,
        FusePlace::Panel,
        FusePlace::AheadOfIsolator,
        FusePlace::Combiner,
    ];
    told.extend(places.map(|own| words.fuse_place(own).to_owned()));
    for name in EXAMPLES {
        let (plan, system, outlook) = answered(name);
        let (basis, lengths) = (Basis::usual(&plan), Lengths::default());
        let fitting = Fitting::of(&plan, &system, &outlook, &basis, &lengths).unwrap();
        told.extend(fitting.runs.iter().map(|run| words.run_name(run.asked.kind, &|_| None)));
        let parts = fitting.diagram.nodes.iter().map(|node| node.part);
        let labels = parts.map(|part| words.fitting_part(part, &|_| None));
        told.extend(labels.filter(|label| !label.is_empty()));
    }
    told
}

#[test]
fn wiring_and_its_cautions_are_said_in_every_language() {
    let (english, spanish) = (wiring(ENGLISH), wiring(SPANISH));
    assert_eq!(english.len(), spanish.len());
    for (one, other) in english.iter().zip(&spanish) {
        assert!(!one.trim().is_empty() && (one != other || one.chars().count() <= LONG), "{one}");
        assert_eq!(leftovers(other), [""; 0], "{other}");
        assert_eq!(one.ends_with('.'), other.ends_with('.'), "{one}: {other}");
        assert!(!other.contains(['“', '”', '{']) && !other.contains("64.5"), "{other}");
    }
    // Notes of different kinds say different things.
    let apart = |told: &[String]| told[..notes().len()].iter().collect::<BTreeSet<_>>().len();
    assert_eq!((apart(&english), apart(&spanish)), (notes().len(), notes().len()));
}
