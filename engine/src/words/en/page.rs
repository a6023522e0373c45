//! Sentences of the page that carry figures.

use super::calendar::{month, weekday};
use crate::bank::Quality;
use crate::document::{Chemistry, Document, Field};
use crate::outlook::{BestTilt, Voltages};
use crate::place::{MonthlyClimate, Origin, SummerTime, TemperatureOrigin};
use crate::quantity::{AmpHours, Percent, Unit, Volts, Watts};
use crate::words::page::ends;
use crate::words::{Words, decimal};

/// No deviation is told finer than this (ratio): rated capacities are not stated finer.
const LEAST_DEVIATION: f64 = 0.001;

/// A chemistry.
#[must_use]
pub fn chemistry(chemistry: Chemistry) -> &'static str {
    match chemistry {
        Chemistry::FloodedLeadAcid => "Lead-acid, flooded",
        Chemistry::Agm => "Lead-acid, AGM",
        Chemistry::Gel => "Lead-acid, gel",
        Chemistry::Lifepo4 => "Lithium iron phosphate (LiFePO4)",
        Chemistry::Nmc => "Lithium NMC",
        Chemistry::SodiumIon => "Sodium-ion",
    }
}

/// A chemistry in one or two words.
fn chemistry_short(chemistry: Chemistry) -> &'static str {
    match chemistry {
        Chemistry::FloodedLeadAcid => "lead-acid",
        Chemistry::Agm => "AGM",
        Chemistry::Gel => "gel",
        Chemistry::Lifepo4 => "LiFePO4",
        Chemistry::Nmc => "NMC",
        Chemistry::SodiumIon => "sodium-ion",
    }
}

/// The bank in a few words.
#[must_use]
pub fn bank(charge: &str, chemistry: Chemistry, volts: &str) -> String {
    format!("{charge} {}, {volts}", chemistry_short(chemistry))
}

/// What may be used of the bank.
#[must_use]
pub fn usable(usable: &str, rated: &str, temperature: &str, of_month: usize) -> String {
    format!("Of {rated} you may use {usable}, at {temperature} in an average {}.", month(of_month))
}

/// How well the bank fits its rated capacities.
#[must_use]
pub fn fit(words: Words, quality: &Quality) -> String {
    let deviation = words.amount(Percent::of_ratio(quality.deviation.max(LEAST_DEVIATION)));
    if quality.poor() {
        format!(
            "No battery of this kind has these rated capacities; the nearest misses one by {deviation}. Check them."
        )
    } else if quality.unique {
        format!("Fitted to {} rated capacities within {deviation}.", quality.ratings)
    } else {
        "Two rated capacities fit more than one battery; a third would settle it.".into()
    }
}

/// Voltages between the posts.
#[must_use]
pub fn voltages(words: Words, voltages: &Voltages) -> String {
    format!(
        "At rest it now has {}; under your loads in average weather, {} at lowest. At {} they are cut off.",
        words.amount(voltages.rest),
        words.amount(voltages.lowest),
        words.amount(voltages.cut_off)
    )
}

/// The limits of the whole bank.
#[must_use]
pub fn bank_limits(charge: &str, discharge: &str, peak: &str, milliohm: &str) -> String {
    format!(
        "The whole bank: charge up to {charge}, discharge up to {discharge}, for a moment {peak}; resistance {milliohm} mΩ."
    )
}

/// A load that has no name.
#[must_use]
pub fn unnamed_load() -> &'static str {
    "A load"
}

/// Round the clock.
#[must_use]
pub fn always() -> &'static str {
    "always"
}

/// Round the clock, more in the heat.
#[must_use]
pub fn always_by_heat() -> &'static str {
    "always, follows the heat"
}

/// A daily amount.
#[must_use]
pub fn per_day(words: Words, charge: AmpHours, nominal: Volts) -> String {
    format!("{} a day", words.charge(charge, nominal))
}

/// Hours of a day.
#[must_use]
pub fn hours_a_day(words: Words, hours: f64) -> String {
    if hours > 0.0 && hours < 0.995 {
        format!("{} min a day", decimal(hours * 60.0, 0))
    } else {
        format!("{} h a day", words.decimal(hours, 1))
    }
}

/// How to call a summer-time rule.
#[must_use]
pub fn summer_time(rule: SummerTime) -> &'static str {
    match rule {
        SummerTime::None => "None",
        SummerTime::Europe => "Europe",
        SummerTime::NorthAmerica => "North America",
        SummerTime::Australia => "Southern Australia",
        SummerTime::LordHowe => "Lord Howe Island",
        SummerTime::NewZealand => "New Zealand",
        SummerTime::Chile => "Chile",
        SummerTime::Egypt => "Egypt",
        SummerTime::Israel => "Israel",
        SummerTime::Palestine => "Palestine",
    }
}

/// Where the sun's figures come from and how sure they are.
#[must_use]
pub fn climate_origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Own => "These are your own figures.",
        Origin::Land => {
            "From weather reanalysis corrected on stations, over about 500 km: within 10 % in four months of five."
        }
        Origin::Model => "From weather reanalysis, far from any station: often within 15 %.",
        Origin::Regression => {
            "From a regression over polar and island land: take it as a rough guide."
        }
        Origin::Ocean => "From an atlas of ships' observations: within about 15 %.",
        Origin::Guess => "A guess from the neighbours: polar sea and ice have no figures.",
    }
}

/// Where the temperatures come from and how sure they are.
#[must_use]
pub fn temperature_origin(origin: TemperatureOrigin) -> &'static str {
    match origin {
        TemperatureOrigin::Own => "The temperatures are your own.",
        TemperatureOrigin::Reanalysis => {
            "Temperatures are means of 2000 to 2025 from weather reanalysis, over about 500 km: mostly within 2 °C, in mountains within 5."
        }
    }
}

/// The picture of the twelve months in words.
#[must_use]
pub fn climate_in_words(words: Words, climate: &MonthlyClimate) -> String {
    let sun = climate.irradiation().map(|own| own.0);
    let air = climate.temperature.map(|own| words.in_habit(own.0, Unit::Celsius));
    let degrees = words.unit(Unit::Celsius);
    let [dull, bright] = ends(&sun);
    let [cold, warm] = ends(&air);
    format!(
        "From {} peak sun hours a day in {} to {} in {}; from {} {degrees} in {} to {} {degrees} in {}.",
        words.rounded(sun[dull]),
        month(dull),
        words.rounded(sun[bright]),
        month(bright),
        words.rounded(air[cold]),
        month(cold),
        words.rounded(air[warm]),
        month(warm)
    )
}

/// A place that is called by the town near it.
#[must_use]
pub fn near(town: &str) -> String {
    format!("near {town}")
}

/// Place, month and start in a line.
#[must_use]
pub fn where_and_when(
    place: &str,
    of_month: usize,
    day: usize,
    time: &str,
    charge: &str,
) -> String {
    format!("{place} · {} · from {} {time}, {charge} full", month(of_month), weekday(day))
}

/// Label of the reserve line.
#[must_use]
pub fn reserve_line(percent: &str) -> String {
    format!("reserve {percent}")
}

/// The curve in words.
#[must_use]
pub fn curve_in_words(verdict: &str, of_month: usize) -> String {
    format!(
        "State of charge over the coming days in the mean weather of {}: {verdict}.",
        month(of_month)
    )
}

/// What is read at an hour.
#[must_use]
pub fn reading(when: &str, charge: &str, volts: &str, comes: &str, goes: &str) -> String {
    format!("{when}: {charge}, {volts}. In {comes}, out {goes}.")
}

/// How many weathers have reached the reserve by an hour, from a share \[%\]; of a sample of 200, no finer than tenths.
#[must_use]
pub fn reached_by(percent: f64) -> String {
    if percent <= 0.0 {
        "No weather has reached the reserve by then.".into()
    } else if percent < 10.0 {
        "Fewer than one of ten weathers have reached the reserve by then.".into()
    } else if percent > 90.0 {
        "More than nine of ten weathers have reached the reserve by then.".into()
    } else {
        let tenths = decimal(percent / 10.0, 0);
        format!("{tenths} of ten weathers have reached the reserve by then.")
    }
}

/// What is read after the bank is empty.
#[must_use]
pub fn reading_empty(when: &str) -> String {
    format!("{when}: empty.")
}

/// What the rated capacity is, behind the usable one.
#[must_use]
pub fn of_rated(words: Words, rated: AmpHours, nominal: Volts) -> String {
    format!("of {}", words.charge(rated, nominal).replace('\u{a0}', " "))
}

/// Power of the arrays.
#[must_use]
pub fn of_sun(watts: &str) -> String {
    format!("{watts} W of sun")
}

/// An array by its place.
#[must_use]
pub fn array(place: usize) -> String {
    format!("Array {}", place + 1)
}

/// The range of powers usual for an appliance.
#[must_use]
pub fn usual_range(low: &str, high: &str) -> String {
    if low == high {
        format!("Usually {low}. Your rating plate comes first.")
    } else {
        format!("Usually {low} to {high}. Your rating plate comes first.")
    }
}

/// Best tilts beside what the array gets.
#[must_use]
pub fn best_tilt(best: &BestTilt, of_month: usize) -> String {
    let gain = |best: f64, now: f64| {
        if now > 0.0 {
            let percent = (best / now - 1.0) * 100.0;
            let sign = if percent < -0.5 { "−" } else { "+" };
            format!("{sign}{} %", decimal(percent.abs(), 0))
        } else {
            "–".into()
        }
    };
    let facing = if best.south { "south" } else { "north" };
    format!(
        "Facing {facing}, {}° is best for {} ({} of light) and {}° for the year ({}).",
        decimal(best.month.0.0, 0),
        month(of_month),
        gain(best.month.1.0, best.now.0.0),
        decimal(best.year.0.0, 0),
        gain(best.year.1.0, best.now.1.0),
    )
}

/// An example by place and month.
#[must_use]
pub fn scenario(place: &str, of_month: usize) -> String {
    format!("{place}, {}", month(of_month))
}

/// What an example consists of: how many things, how much battery, how much sun.
#[must_use]
pub fn scenario_figures(words: Words, plan: &Document) -> String {
    let bank = &plan.bank;
    let things = plan.loads.iter().filter(|load| load.on).count();
    let volts = Volts(bank.battery_v * bank.in_series);
    let charge = AmpHours(bank.capacity_ah * bank.in_parallel);
    let watts = plan.arrays.iter().map(|own| own.module_w * own.in_series * own.in_parallel);
    let sun = Watts(watts.sum());
    format!(
        "{things} things, {}, {}, {}\u{a0}sun",
        words.charge(charge, volts),
        words.amount(volts),
        words.amount(sun)
    )
}

/// The typical day of a month.
#[must_use]
pub fn a_day_in(of_month: usize) -> String {
    let month = month(of_month);
    let article = if month.starts_with(['A', 'O']) { "An" } else { "A" };
    format!("{article} {month} day")
}

/// That something was added.
#[must_use]
pub fn added(name: &str) -> String {
    format!("Added: {name}.")
}

/// That something was deleted.
#[must_use]
pub fn deleted(name: &str) -> String {
    format!("Deleted: {name}. Undo brings it back.")
}

/// That no more loads fit.
#[must_use]
pub fn full_of_loads(limit: usize) -> String {
    format!("A plan holds {limit} loads.")
}

/// The name of a copy.
#[must_use]
pub fn copy_of(name: &str) -> String {
    if name.is_empty() { "Copy".into() } else { format!("{name}, copy") }
}

/// The version of the program.
#[must_use]
pub fn version(version: &str) -> String {
    format!(
        "Sunlarder {version}. Free under MIT or Apache-2.0. Climate from public data of NASA and Copernicus."
    )
}

/// That a box must be filled in.
#[must_use]
pub fn missing(words: Words, field: Field) -> String {
    let range = field.range();
    let label = super::problems::field(field);
    format!(
        "{label} is missing; type a number from {} to {}.",
        words.rounded(words.shown(field, range.min)),
        words.rounded(words.shown(field, range.max))
    )
}

/// That a box holds no number.
#[must_use]
pub fn no_number(words: Words, field: Field, typed: &str) -> String {
    let range = field.range();
    let label = super::problems::field(field);
    let typed: String = typed.chars().take(20).collect();
    format!(
        "{label}: “{typed}” is not a number. Type one from {} to {}.",
        words.rounded(words.shown(field, range.min)),
        words.rounded(words.shown(field, range.max))
    )
}

/// That a box holds what may be thousands or thousandths; both are written as the language does.
#[must_use]
pub fn ambiguous(field: Field, typed: &str, thousands: &str, decimals: &str) -> String {
    let label = super::problems::field(field);
    format!(
        "{label}: “{typed}” could mean {thousands} or {decimals}. Type it one of these two ways."
    )
}

/// Longer than the longest run.
#[must_use]
pub fn beyond() -> String {
    format!("over {} days", crate::outlook::HORIZON_DAYS)
}
