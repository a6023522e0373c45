//! Cautions of wiring.

use crate::fitting::{ArrayCheck, Basis, Bundle, Note, Tables};
use crate::words::{NameOf, Words};
use crate::working::Tag;

/// Something that whoever does the work must know.
// One flat list, longer than a function should be: it is a dictionary, and the compiler checks that it is complete.
#[must_use]
pub fn note(words: Words, note: &Note, name_of: NameOf<'_>) -> String {
    let array = |place| words.owner(Tag::Array(place), name_of).unwrap_or_default();
    let plain = match note {
        Note::CodesFirst => {
            "These are planning figures, not the design of an installation. Local codes, the makers' instructions and licensed practice come first; have high-current work checked before it is used."
        }
        Note::PlanCannotWork => {
            "This plan cannot work as it stands. Mend it before you buy or cut anything."
        }
        Note::MainsLicensed => {
            "The mains side can kill and is not planned here: earth bond, residual-current protection, transfer between sources and every mains cable are for a licensed person."
        }
        Note::ModulesLive => {
            "Modules are live whenever there is light, and no switch ends that. Cover them, and never unplug them under load: the arc does not go out by itself."
        }
        Note::Ventilate => {
            "Charging gives off hydrogen, which explodes: a vented box that leads outside, no spark or switch near it, goggles and gloves for the acid."
        }
        Note::SealedVents => {
            "Sealed lead-acid batteries vent gas when they are charged too high: keep them aired, and nothing that sparks beside them."
        }
        Note::KeepProtection => {
            "These batteries can burn when they are damaged or charged outside their limits. Keep their protection in the circuit and never bridge it; a smoke alarm where people sleep."
        }
        Note::CarbonMonoxide => {
            "Exhaust holds carbon monoxide, which kills without a smell: run engine and generator in the open, away from windows, with an alarm where people sleep."
        }
        Note::Restrain => {
            "Hold the batteries down so that they cannot move or tip, and cover every plus post, bar and stud against dropped tools."
        }
        Note::WorkOrder => {
            "Take off rings and watches. Open the isolator and take out the main fuse before you work; measure that there is no voltage; put the main fuse in last. Array off first, bank last, and on again the other way round."
        }
        Note::BalanceFirst => {
            "Before you join batteries in parallel, charge each full by itself and let them rest until their voltages agree as closely as the maker asks: otherwise a large current flows at once. Only equal batteries of one age."
        }
        Note::StarterApart => {
            "Keep the starter battery apart: no house load on it, and nothing but the charger between the two."
        }
        Note::EngineSide => {
            "A charger between two batteries takes more current on the engine's side than it gives on this one. Size that cable and its fuse at the starter battery by the charger's sheet, at the lowest voltage there."
        }
        Note::ProtectionMayOpen => {
            "If the battery's protection opens while the engine charges, the alternator can be destroyed and its voltage can jump. Use a charger or regulator made for this."
        }
        Note::PreCharge => {
            "A large inverter draws a spark when it is connected: charge its capacitors through a resistor first, by its maker's sheet, and only then close the isolator."
        }
        Note::Torque => {
            "Tighten every post, stud and lug by the maker's sheet with a torque wrench, and again after the first weeks: a loose lug burns."
        }
        Note::BehindShunt => {
            "Only the shunt goes on the minus post of the bank. The minus of every load and every charger goes on the load side of the shunt, or the gauge does not count it."
        }
        Note::LugOrder => {
            "On a stud the lug with the largest current lies lowest, flat on the bar, then the smaller ones, washer and nut on top; no more than four, and nothing between the lugs."
        }
        Note::BothEnds => {
            "A cable between two things that can both feed it, as to a charger with a battery behind it, needs a fuse at both ends."
        }
        Note::TurbineBySheet => {
            "A turbine is not wired here: its highest current is not in the plan. Its cable, fuse and brake are by its maker's sheet."
        }
        Note::VehicleTables => {
            "No table of vehicles could be verified, so that of boats stands in for it."
        }
        other => return figured(words, other, name_of, &array),
    };
    plain.to_owned()
}

/// Those that carry a figure.
fn figured(
    words: Words,
    note: &Note,
    name_of: NameOf<'_>,
    array: &dyn Fn(u16) -> String,
) -> String {
    match note {
        Note::ShockAndArc { voltage } => format!(
            "Direct current of up to {} can kill, and its arc does not go out by itself. Above 60\u{a0}V leave the work to a licensed person.",
            words.amount(*voltage)
        ),
        Note::EqualLengths { strings } => format!(
            "All {} strings need cables of equal length and size to where they join; plus is taken at one end and minus at the other, so that all work alike.",
            words.rounded(*strings)
        ),
        Note::SeriesLinks { batteries } => format!(
            "{} batteries or cells stand in a row: the links between them are as thick as the cable that leaves them, and all are alike in make, age and charge.",
            words.rounded(*batteries)
        ),
        Note::KeepAlive { loads } => {
            let name = |place: &u16| {
                let tag = Tag::Load(*place);
                format!("“{}”", words.owner(tag, name_of).unwrap_or_default())
            };
            let names: Vec<String> = loads.iter().map(name).collect();
            format!(
                "Stays alive when the isolator is open, by fuses of its own ahead of it: {}. Label it so.",
                names.join(", ")
            )
        }
        Note::MakersShortCircuit { assumed } => format!(
            "The bank's short-circuit current is not known, and {} is assumed. Ask its maker; if it is more, these fuses do not suffice.",
            words.amount(*assumed)
        ),
        Note::StringFuses { array: place } => format!(
            "{}: each string needs its own fuse against current from the others, and no larger one than the modules' sheet allows.",
            array(*place)
        ),
        Note::ArraySwitch { array: place, voltage } => format!(
            "{}: a switch that breaks direct current at {} belongs between array and controller.",
            array(*place),
            words.amount(*voltage)
        ),
        Note::StartOverFuse { run, peak, rating } => format!(
            "{}: a start takes {} for a moment, over twice the fuse of {}. Look at the fuse's curve; a slow one of that rating may be right, a larger one never without a thicker conductor.",
            super::fitting::run_name(words.language, *run, name_of),
            words.amount(*peak),
            words.amount(*rating)
        ),
        Note::LengthsAssumed { runs } => format!(
            "{runs} lengths were assumed. Measure each along its way and work it out again before you buy."
        ),
        Note::TablesUsed { basis } => tables_used(words, basis),
        Note::OverTableVoltage { voltage } => format!(
            "The marine table is made for up to 50\u{a0}V; here there are up to {}. Its currents hold for the copper, and the insulation must be made for that voltage.",
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
            "{array} reaches {voltage} at {at}; its controller takes {limit} and would be destroyed. Do not connect it."
        ),
        Note::ColdFits { .. } => format!(
            "{array} reaches {voltage} at the record low of {at}; its controller takes {limit}."
        ),
        Note::RecordUnknown { .. } => format!(
            "{array}: the record low of the place is not stated. At {at} it would reach {voltage}; its controller takes {limit}. State the record low before you connect it."
        ),
        _ => format!(
            "{array} reaches {voltage} at {at}; state what its controller takes before you connect it."
        ),
    }
}

fn tables_used(words: Words, basis: &Basis) -> String {
    let whose = match basis.tables {
        Tables::Marine | Tables::Vehicle => "ABYC E-11 as quoted in public",
        Tables::Land => {
            "NFPA 70 in the numbering of 2020, Table 310.16, with terminals for 60\u{a0}°C up to AWG\u{a0}1 and for 75\u{a0}°C above"
        }
    };
    let together = match basis.bundle {
        Bundle::Alone => "each conductor alone",
        Bundle::UpTo3 => "two or three conductors together",
        Bundle::UpTo6 => "four to six conductors together",
        Bundle::UpTo24 => "seven to twenty-four conductors together",
        Bundle::More => "more than twenty-four conductors together",
    };
    let space = if basis.engine_space { " in a space with an engine" } else { "" };
    format!(
        "Currents by {whose}: copper with insulation for {}, {together}, air of {}{space}; over roofs and beside engines 50\u{a0}°C. A metric size counts as the next gauge below it. Another code may ask for more.",
        words.amount(basis.insulation.temperature()),
        words.amount(basis.ambient)
    )
}
