//! Words of wiring: runs, fuses, refusals, what to buy. Cautions are in `fitting_notes`.

pub use super::fitting_notes::note;
use crate::fitting::{
    FuseClass, FusePlace, Insulation, Item, Part, Refusal, RunKind, Tables, Unfit,
};
use crate::quantity::{Celsius, Volts};
use crate::words::fitting::OnFitting;
use crate::words::{Language, NameOf, Words};
use crate::working::Tag;

/// A word or two over a column or a list of the wiring.
#[must_use]
pub fn on_fitting(what: OnFitting) -> &'static str {
    use OnFitting as F;
    match what {
        F::Runs => "Runs, from end to end",
        F::OneWay => "one way",
        F::Continuous => "for hours",
        F::Moment => "for a moment",
        F::Conductor => "conductor",
        F::MayCarry => "may carry",
        F::Drop => "drop",
        F::Heat => "heat",
        F::Fuse => "fuse",
        F::FuseAt => "where it sits",
        F::Assumed => "assumed",
        F::NoFuse => "none: it carries all that the array gives",
        F::Refused => "What could not be wired",
        F::AtTheBank => "At the bank",
        F::ShortCircuit => "Short-circuit current to break",
        F::Shunt => "Shunt of the gauge",
        F::BusBars => "Bus bars",
        F::LugOrder => "Lugs on a bar, the lowest first",
        F::ToKnow => "Before and while you work",
        F::ToBuy => "What to buy",
    }
}

fn owner(language: Language, tag: Tag, name_of: NameOf<'_>) -> String {
    language.owner(tag, name_of).unwrap_or_default()
}

/// What a run joins.
#[must_use]
pub fn run_name(language: Language, run: RunKind, name_of: NameOf<'_>) -> String {
    use RunKind as K;
    let array = |place| owner(language, Tag::Array(place), name_of);
    match run {
        K::BatteryString => "Each string of batteries to where they join".into(),
        K::Battery => "Bank to bus bars".into(),
        K::Inverter => "Bus bars to inverter".into(),
        K::Distribution => "Bus bars to panel".into(),
        K::Branch(place) => format!("To “{}”", owner(language, Tag::Load(place), name_of)),
        K::Controller(place) => format!("Controller of {} to bus bars", array(place)),
        K::Array(place) => format!("{} to its controller", array(place)),
        K::ModuleString(place) => format!("Each string of {}", array(place)),
        K::Alternator => "Engine charger to bus bars".into(),
        K::Shore => "Mains charger to bus bars".into(),
        K::Generator => "Generator's charger to bus bars".into(),
    }
}

/// A kind of fuse.
#[must_use]
pub fn fuse_class(class: FuseClass) -> &'static str {
    match class {
        FuseClass::Blade => "blade fuse",
        FuseClass::BoltedLink => "bolt-down link",
        FuseClass::BoltedStrip => "bolted strip fuse",
        FuseClass::PostBlock => "terminal-post fuse",
        FuseClass::Breaker => "DC miniature breaker",
        FuseClass::ClassT => "class T fuse",
        FuseClass::Solar => "fuse for solar strings",
    }
}

/// Where a fuse sits.
#[must_use]
pub fn fuse_place(place: FusePlace) -> &'static str {
    match place {
        FusePlace::Post => "at the plus post, within 175 mm",
        FusePlace::Bus => "at the plus bar, within 175 mm",
        FusePlace::Panel => "in the panel",
        FusePlace::AheadOfIsolator => "ahead of the isolator, within 175 mm",
        FusePlace::Combiner => "where the strings join",
    }
}

/// A part of the diagram; empty for a mere junction.
#[must_use]
pub fn part(language: Language, part: Part, name_of: NameOf<'_>) -> String {
    let of = |tag| owner(language, tag, name_of);
    match part {
        Part::Bank => "Bank".into(),
        Part::Fuse(_) => "Fuse".into(),
        Part::Isolator => "Isolator".into(),
        Part::Tap => String::new(),
        Part::PlusBar => "Plus bar".into(),
        Part::MinusBar => "Minus bar".into(),
        Part::Shunt => "Shunt".into(),
        Part::Alive => "Stays alive".into(),
        Part::Inverter => "Inverter".into(),
        Part::Panel => "Panel".into(),
        Part::Load(place) => of(Tag::Load(place)),
        Part::Controller(place) => format!("Controller, {}", of(Tag::Array(place))),
        Part::ArraySwitch(_) => "Switch".into(),
        Part::Array(place) => of(Tag::Array(place)),
        Part::Alternator => "Engine charger".into(),
        Part::Shore => "Mains charger".into(),
        Part::Generator => "Generator's charger".into(),
    }
}

/// Why there is no conductor for a run, and what to do.
#[must_use]
pub fn refusal(words: Words, refusal: &Refusal) -> String {
    match *refusal {
        Refusal::Current { needed, most } => format!(
            "Its fuse would have to carry {}; the thickest conductor of the tables carries {} there. A higher system voltage draws less current; otherwise leave it to a licensed person.",
            words.amount(needed),
            words.amount(most)
        ),
        Refusal::Drop { share, allowed } => format!(
            "Even the thickest conductor of the tables loses {} over this length, and {} is allowed. Shorten it or choose a higher system voltage.",
            words.amount(share),
            words.amount(allowed)
        ),
        Refusal::Interrupting { current, volts } => format!(
            "No kind of fuse known here breaks {} at {}. Ask the battery's maker for its short-circuit current, and leave this to a licensed person.",
            words.amount(current),
            words.amount(volts)
        ),
        Refusal::ColdVoltage { voltage, limit } => format!(
            "In the cold it reaches {}, and its controller takes {}: it would be destroyed. Put fewer modules in a row.",
            words.amount(voltage),
            words.amount(limit)
        ),
    }
}

fn tables(tables: Tables) -> &'static str {
    match tables {
        Tables::Marine => "boats",
        Tables::Vehicle => "vehicles",
        Tables::Land => "buildings",
    }
}

/// Why nothing can be said by a basis: what was asked, what is allowed.
#[must_use]
pub fn unfit(words: Words, unfit: &Unfit, name_of: NameOf<'_>) -> String {
    match *unfit {
        Unfit::Ambient { at, least, most } => format!(
            "The air around the cables is {}; the tables know {} to {}.",
            words.amount(at),
            words.amount(least),
            words.amount(most)
        ),
        Unfit::Insulation { tables: whose, insulation } => {
            let known = match whose {
                Tables::Land => [Insulation::C60, Insulation::C75, Insulation::C90]
                    .map(|own| words.amount(own.temperature()))
                    .join(", "),
                Tables::Marine | Tables::Vehicle => {
                    words.amount::<Celsius>(Insulation::C105.temperature())
                }
            };
            format!(
                "Insulation for {} is in no table for {}; known there: {known}.",
                words.amount(insulation.temperature()),
                tables(whose)
            )
        }
        Unfit::Bundled => {
            "More than three conductors together are in no table for buildings that is known here; lay them apart, or in bundles of up to three.".into()
        }
        Unfit::Length { run, length, least, most } => format!(
            "{}: a length of {}; it must lie between {} and {}.",
            run_name(words.language, run, name_of),
            words.amount(length),
            words.amount(least),
            words.amount(most)
        ),
        Unfit::ShortCircuit { value, least, most } => format!(
            "Short-circuit current or cold-cranking amps of the bank are {}; they must lie between {} and {}.",
            words.amount(value),
            words.amount(least),
            words.amount(most)
        ),
        Unfit::Cranking => {
            "Cold-cranking amps say something of lead-acid banks of 12 to 24 V only; state the short-circuit current instead.".into()
        }
    }
}

/// Something to buy.
#[must_use]
pub fn to_buy(words: Words, item: &Item) -> String {
    let made_for = |volts: Volts| words.amount(Volts(volts.0.ceil()));
    match *item {
        Item::Conductor(gauge) => {
            format!("Stranded copper cable of {}, plus and minus together", words.conductor(gauge))
        }
        Item::Lug(gauge) => format!("Lugs for {}", words.conductor(gauge)),
        Item::Fuse { class, rating } => {
            format!("{}, {}", capital(fuse_class(class)), words.amount(rating))
        }
        Item::Holder(class) => format!("Holder: {}", fuse_class(class)),
        Item::BusBar { rating } => format!("Bus bar with cover, at least {}", words.amount(rating)),
        Item::Isolator { rating, volts } => format!(
            "Battery isolator, at least {} and {} of direct current",
            words.amount(rating),
            made_for(volts)
        ),
        Item::Shunt { rated, drop } => format!(
            "Shunt of {} at {}\u{a0}mV, class 0.5, with the gauge",
            words.amount(rated),
            words.rounded((drop.0 * 1000.0).round())
        ),
        Item::ArraySwitch { rating, volts } => format!(
            "Switch for the array, at least {} and {} of direct current",
            words.amount(rating),
            made_for(volts)
        ),
        Item::PreCharge => {
            "Resistor or device that charges the inverter first, by its maker's sheet".into()
        }
    }
}

/// The same with a capital letter.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}
