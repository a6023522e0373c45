//! Walks a working from a figure down to what was given, and finds what lacks a number, a unit or a source.

use std::collections::BTreeSet;

use sunlarder_engine::quantity::Unit;
use sunlarder_engine::words::{Language, Line, Words, lines};
use sunlarder_engine::working::{Input, Source, Step, Symbol, Working};

/// Symbols of counts and shares, which have no unit; every other one must have one.
const UNITLESS: [Symbol; 29] = [
    Symbol::AmbientFactor,
    Symbol::AutonomyDays,
    Symbol::BatteryStrings,
    Symbol::BundleFactor,
    Symbol::CalendarWear,
    Symbol::CapacityShare,
    Symbol::ChargeBefore,
    Symbol::ChargeState,
    Symbol::Clearness,
    Symbol::ColdFactor,
    Symbol::CountWeight,
    Symbol::CycleWear,
    Symbol::DayOfYear,
    Symbol::DiffuseShare,
    Symbol::LossIdle,
    Symbol::LossLinear,
    Symbol::LossSquare,
    Symbol::ModuleStrings,
    Symbol::ModulesInRow,
    Symbol::OpenPerKelvin,
    Symbol::PowerFactor,
    Symbol::Quantity,
    Symbol::RateExponent,
    Symbol::RateFactor,
    Symbol::ShareOfWells,
    Symbol::ShownCharge,
    Symbol::SpaceFactor,
    Symbol::UseShare,
    Symbol::YearsLeft,
];

/// What a person states, or what follows from it without a formula (a bank's voltage from its batteries in a row, hours on from a
/// schedule). Anything else that calls the plan its source was worked out by somebody who did not say how.
const STATED: [Symbol; 62] = [
    Symbol::Absorption,
    Symbol::AgeingLoss,
    Symbol::AmbientTemperature,
    Symbol::ArrayPower,
    Symbol::Azimuth,
    Symbol::BatteryStrings,
    Symbol::BestVoltage,
    Symbol::CableLoss,
    Symbol::ChargeBefore,
    Symbol::ChargeEfficiency,
    Symbol::ChargerLimit,
    Symbol::ControllerDraw,
    Symbol::CutOffVoltage,
    Symbol::DailyIrradiation,
    Symbol::DirtLoss,
    Symbol::Duty,
    Symbol::FastCapacity,
    Symbol::FastHours,
    Symbol::FuelPerEnergy,
    Symbol::FuelPerHour,
    Symbol::FullEfficiency,
    Symbol::GaugeCapacity,
    Symbol::GaugeFloor,
    Symbol::GeneratorCurrent,
    Symbol::Health,
    Symbol::HourRate,
    Symbol::HoursOn,
    Symbol::IdlePower,
    Symbol::InsulationTemperature,
    Symbol::InverterRated,
    Symbol::LabelEnergy,
    Symbol::Latitude,
    Symbol::LoadPower,
    Symbol::Longitude,
    Symbol::ModuleOpen,
    Symbol::ModulePower,
    Symbol::ModuleShort,
    Symbol::ModuleStrings,
    Symbol::ModulesInRow,
    Symbol::MonthlyLoss,
    Symbol::NominalVoltage,
    Symbol::OneWayLength,
    Symbol::OtherLoss,
    Symbol::OutputEfficiency,
    Symbol::OutputPower,
    Symbol::OwnStanding,
    Symbol::PlateCurrent,
    Symbol::PlateVoltage,
    Symbol::PowerFactor,
    Symbol::ProtectionCurrent,
    Symbol::Quantity,
    Symbol::RateExponent,
    Symbol::RatedCapacity,
    Symbol::RatingHours,
    Symbol::RecordLow,
    Symbol::Reserve,
    Symbol::SearchPower,
    Symbol::ShortCircuit,
    Symbol::StandingCurrent,
    Symbol::StatedCapacity,
    Symbol::TailShare,
    Symbol::Tilt,
];

/// What only the steps of a simulation can give.
const SIMULATED: [Symbol; 37] = [
    Symbol::BankTemperature,
    Symbol::BankVoltage,
    Symbol::CalendarWear,
    Symbol::ChargeBefore,
    Symbol::ChargeStored,
    Symbol::ChargingLoss,
    Symbol::CountWeight,
    Symbol::CycleWear,
    Symbol::Demand,
    Symbol::DischargeCurrent,
    Symbol::DischargeHours,
    Symbol::Duty,
    Symbol::EngineCharge,
    Symbol::EngineCurrent,
    Symbol::GeneratorCharge,
    Symbol::GeneratorCurrent,
    Symbol::GrowingLoss,
    Symbol::HiddenHours,
    Symbol::HottestBank,
    Symbol::HoursOn,
    Symbol::LoadCharge,
    Symbol::MeanCurrent,
    Symbol::PlannedUse,
    Symbol::ProtectionCharge,
    Symbol::ReadCurrent,
    Symbol::RunningShare,
    Symbol::SelfDischarge,
    Symbol::SeriesCharge,
    Symbol::ShoreCharge,
    Symbol::ShoreCurrent,
    Symbol::ShownCharge,
    Symbol::SolarCharge,
    Symbol::SolarCurrent,
    Symbol::SolarEnergy,
    Symbol::SunByNight,
    Symbol::TurbineCharge,
    Symbol::TurbineCurrent,
];

/// What a walk has met.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Walk {
    /// Places of the steps that the figure rests on, itself among them.
    pub steps: BTreeSet<usize>,
    /// Inputs that no step made.
    pub leaves: usize,
    /// What is wrong.
    pub faults: BTreeSet<String>,
}

/// Walks from the step at `figure` through all steps that it rests on.
#[must_use]
pub fn walk(working: &Working, figure: usize) -> Walk {
    let shown = lines(working, Words::of(Language::English), &|_| None);
    let mut walk = Walk::default();
    let mut todo = vec![figure];
    while let Some(place) = todo.pop() {
        let (Some(step), Some(line)) = (working.steps().get(place), shown.get(place)) else {
            walk.faults.insert(format!("there is no step {place}"));
            continue;
        };
        if !walk.steps.insert(place) {
            continue;
        }
        walk.faults.extend(step_faults(step, line));
        for (input, shown) in step.inputs.iter().zip(&line.inputs) {
            let found = |fault| format!("{:?}, {:?}: {fault}", step.formula, input.symbol);
            walk.faults.extend(
                value_faults(input.symbol, input.term.value, input.term.unit, &shown.value)
                    .map(&found),
            );
            match input.made_by {
                Some(maker) => {
                    walk.faults.extend(link_fault(working, input, maker, place).map(found));
                    if maker < place {
                        todo.push(maker);
                    }
                }
                None => {
                    walk.leaves += 1;
                    walk.faults.extend(leaf_fault(input, &shown.source).map(found));
                }
            }
        }
    }
    walk
}

/// What is wrong with a step for itself.
fn step_faults(step: &Step, line: &Line) -> Vec<String> {
    let found = |fault: String| format!("{:?}: {fault}", step.formula);
    let symbol = step.formula.symbol();
    let mut faults: Vec<String> =
        value_faults(symbol, step.value, step.unit, &line.result).map(found).collect();
    let wanted = step.formula.inputs().len();
    let many = step.formula.template().starts_with("each:");
    if step.inputs.is_empty() || !many && step.inputs.len() != wanted {
        faults.push(found(format!("{} inputs instead of {wanted}", step.inputs.len())));
    }
    if matches!(step.formula.source(), Source::Plan | Source::Steps | Source::Readings) {
        faults.push(found("a formula comes from no plan and no sum".to_owned()));
    }
    faults.extend(source_fault(step.formula.source(), &line.source).map(found));
    faults
}

/// What is wrong with a number and its unit, as they are and as they are shown.
fn value_faults(
    symbol: Symbol,
    value: f64,
    unit: Unit,
    shown: &str,
) -> impl Iterator<Item = String> + use<> {
    let number = (!value.is_finite()).then(|| format!("{value} is no number"));
    let bare = UNITLESS.contains(&symbol);
    let unit_fault = ((unit == Unit::One) != bare).then(|| format!("{symbol:?} in {unit:?}"));
    let complete = shown.contains(|sign: char| sign.is_ascii_digit())
        && shown.ends_with(unit.symbol())
        && !Language::English.symbol(symbol).is_empty();
    let said = (!complete).then(|| format!("shown as {shown}"));
    [number, unit_fault, said].into_iter().flatten()
}

/// A link must lead back, to the very value.
fn link_fault(working: &Working, input: &Input, maker: usize, place: usize) -> Option<String> {
    let made = working.steps().get(maker)?;
    let same = maker < place
        && made.formula.symbol() == input.symbol
        && made.unit == input.term.unit
        && made.value.to_bits() == input.term.value.to_bits();
    (!same).then(|| format!("step {maker} did not make it"))
}

/// What was given must say by whom, and by one who can.
fn leaf_fault(input: &Input, shown: &str) -> Option<String> {
    let symbol = &input.symbol;
    let known = match input.term.source {
        Source::Plan => STATED.contains(symbol),
        Source::Steps => SIMULATED.contains(symbol),
        Source::Definition => {
            matches!(symbol, Symbol::Time | Symbol::Year | Symbol::WornOut | Symbol::DayOfYear)
        }
        Source::Readings => *symbol == Symbol::CountedOut,
        _ => true,
    };
    let unknown = (!known).then(|| format!("{:?} is no source of it", input.term.source));
    unknown.or_else(|| source_fault(input.term.source, shown))
}

/// Open-circuit curves: a published table and measured cells, of which no name and no year is held; and a standard of which only
/// quotations were seen, which says so.
const UNDATED: [Source; 4] = [
    Source::RestVoltageTable,
    Source::CellMeasurement,
    Source::MarineAmpacity,
    Source::MarineInterrupting,
];

/// A source must be said, and a publication have its year, or it cannot be found.
fn source_fault(source: Source, shown: &str) -> Option<String> {
    if shown.trim().is_empty() {
        return Some(format!("{source:?} has no words"));
    }
    let citation = source.citation().filter(|_| !UNDATED.contains(&source))?;
    (!dated(citation)).then(|| format!("{source:?} has no year"))
}

/// Whether a text holds a year.
fn dated(text: &str) -> bool {
    text.split(|sign: char| !sign.is_ascii_digit())
        .any(|run| run.len() == 4 && (run.starts_with('1') || run.starts_with("20")))
}

#[cfg(test)]
mod tests {
    use super::*;
    use sunlarder_engine::quantity::{AmpHours, Amps, Hours, Volts, Watts};
    use sunlarder_engine::working::{Formula, Trace, term};

    /// The faults of one step that makes an autonomy of these.
    fn faults(step: impl FnOnce(&mut Working)) -> Vec<String> {
        let mut working = Working::new();
        step(&mut working);
        walk(&working, working.steps().len().saturating_sub(1)).faults.into_iter().collect()
    }

    fn assert_one(faults: &[String], part: &str) {
        assert!(faults.len() == 1 && faults[0].contains(part), "{faults:#?}");
    }

    #[test]
    fn a_sound_working_has_no_fault_and_is_walked_to_its_end() {
        let mut working = Working::new();
        let (power, volts) = (Watts(60.0), Volts(12.0));
        let inputs = [term(power), term(volts).from(Source::Steps)];
        let amps = working.step(Formula::LoadCurrent, power / volts, &inputs);
        let time = Hours(2.0);
        let inputs = [term(amps), term(time).from(Source::Definition)];
        working.step(Formula::Charge, amps * time, &inputs);
        let found = walk(&working, 1);
        assert_eq!((found.steps.len(), found.leaves), (2, 3));
        assert!(found.faults.is_empty(), "{found:?}");
    }

    #[test]
    fn each_thing_that_lacks_is_found() {
        let plan = |charge: f64| term(AmpHours(charge)).named(Symbol::RatedCapacity);
        let sum = |working: &mut Working, result: f64, input| {
            working.step(Formula::DayTotal, AmpHours(result), &[input]);
        };
        assert!(faults(|working| sum(working, 5.0, plan(5.0))).is_empty());
        assert!(faults(|working| sum(working, f64::NAN, plan(5.0)))[0].contains("no number"));
        assert!(faults(|working| sum(working, 5.0, plan(f64::INFINITY)))[0].contains("no number"));
        let bare = term(5.0).named(Symbol::RatedCapacity);
        assert_one(&faults(|working| sum(working, 5.0, bare)), "RatedCapacity in One");
        let unsaid = term(AmpHours(5.0)).named(Symbol::DayTotal);
        assert_one(&faults(|working| sum(working, 5.0, unsaid)), "Plan is no source of it");
        let simulated = plan(5.0).from(Source::Steps);
        assert_one(&faults(|working| sum(working, 5.0, simulated)), "Steps is no source of it");
        let nothing = |working: &mut Working| {
            working.step(Formula::DayTotal, AmpHours(5.0), &[]);
        };
        assert_one(&faults(nothing), "0 inputs");
        let short = |working: &mut Working| {
            working.step(Formula::Charge, AmpHours(5.0), &[term(Amps(5.0)).from(Source::Typical)]);
        };
        assert_one(&faults(short), "1 inputs instead of 2");
        assert!(dated("Spencer 1971, Search 2(5):172") && !dated("Search 2(5):172"));
        assert!(source_fault(Source::Typical, " ").is_some());
    }
}
