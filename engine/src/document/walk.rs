//! One walk over a whole scenario, in a fixed order, for everything that must touch every field: the checks, the rounding
//! to the resolution, the link codec in both directions, and the reading and writing of files.
//!
//! A visitor is handed each value by mutable reference together with its field, its default and its name in a file. The
//! order of calls within a section is part of the link format. **Only ever append at the end of a section**: a link of
//! an older release then simply lacks the new fields and gets their defaults.

use chrono::NaiveDate;

use super::keys;
use super::schedule::{DAY_MIN, Days, Months, Schedule, Span, When};
use super::sections::{
    Array, Awake, Bank, Charger, Chemistry, Controller, ControllerKind, Cooling, Document,
    Inverter, Kept, Load, Losses, Mounting, Place, Rating, Shading, Start, Supply,
};
use super::sources::{Generator, Turbine, TurbineOutput};
use super::visitor::{Bare, List, Name, NamedVisitor, TextField, Visitor};
use super::{Field, Problem, first_date};
use crate::place::SummerTime;
use crate::working::Tag;

/// Walks a whole scenario.
///
/// # Errors
/// The first problem that the visitor raises.
pub fn walk(document: &mut Document, v: &mut dyn Visitor) -> Result<(), Box<Problem>> {
    walk_named(document, &mut Bare(v))
}

/// Walks a whole scenario with the names of a file.
pub(super) fn walk_named(
    document: &mut Document,
    v: &mut dyn NamedVisitor,
) -> Result<(), Box<Problem>> {
    v.open("", Tag::None, keys::DOCUMENT)?;
    v.text("name", TextField::PlanName, &mut document.name)?;
    v.number("standing_a", Field::StandingCurrent, &mut document.standing_a, 0.0)?;
    present(v, "inverter", &mut document.inverter)?;
    present(v, "shore", &mut document.shore)?;
    present(v, "alternator", &mut document.alternator)?;
    list(v, "loads", List::Loads, &mut document.loads)?;
    list(v, "arrays", List::Arrays, &mut document.arrays)?;
    present(v, "generator", &mut document.generator)?;
    present(v, "turbine", &mut document.turbine)?;
    present(v, "promise", &mut document.promise)?;
    present(v, "wiring", &mut document.wiring)?;
    list(v, "checks", List::Checks, &mut document.checks)?;
    present(v, "logbook", &mut document.logbook)?;
    v.close()?;
    place(&mut document.place, v)?;
    start(&mut document.start, v)?;
    bank(&mut document.bank, v)?;
    if let Some(section) = &mut document.inverter {
        inverter(section, v)?;
    }
    if let Some(section) = &mut document.shore {
        charger(section, "shore", v)?;
    }
    if let Some(section) = &mut document.alternator {
        charger(section, "alternator", v)?;
    }
    for (at, section) in document.loads.iter_mut().enumerate() {
        load(section, Tag::Load(at as u16), v)?;
    }
    for (at, section) in document.arrays.iter_mut().enumerate() {
        array(section, Tag::Array(at as u16), v)?;
    }
    if let Some(section) = &mut document.generator {
        generator(section, v)?;
    }
    if let Some(section) = &mut document.turbine {
        turbine(section, v)?;
    }
    if let Some(section) = &mut document.promise {
        super::walk_wishes::promise(section, v)?;
    }
    if let Some(section) = &mut document.wiring {
        super::walk_wishes::wiring(section, v)?;
    }
    for (at, section) in document.checks.iter_mut().enumerate() {
        super::walk_checks::check(section, Tag::Check(at as u16), v)?;
    }
    if let Some(section) = &mut document.logbook {
        super::walk_logbook::logbook(section, v)?;
    }
    Ok(())
}

/// Settles how long a list is; new items start from their defaults.
fn list<T: Default>(
    v: &mut dyn NamedVisitor,
    key: Name,
    kind: List,
    items: &mut Vec<T>,
) -> Result<(), Box<Problem>> {
    let length = v.length(key, kind, items.len())?;
    items.resize_with(length, T::default);
    Ok(())
}

/// Settles whether an optional section is there.
fn present<T: Default>(
    v: &mut dyn NamedVisitor,
    key: Name,
    section: &mut Option<T>,
) -> Result<(), Box<Problem>> {
    let mut there = section.is_some();
    v.there(key, &mut there)?;
    match (there, section.is_some()) {
        (true, false) => *section = Some(T::default()),
        (false, true) => *section = None,
        _ => {}
    }
    Ok(())
}

/// One of a list of choices, by its place in the list.
pub(super) fn choice<T: Copy + PartialEq, const N: usize>(
    v: &mut dyn NamedVisitor,
    key: Name,
    value: &mut T,
    all: &[T; N],
    names: &'static [&'static str; N],
) -> Result<(), Box<Problem>> {
    let mut number = all.iter().position(|one| one == value).unwrap_or(0) as u32;
    v.choice(key, &mut number, names)?;
    if let Some(one) = all.get(number as usize) {
        *value = *one;
    }
    Ok(())
}

/// A number for each of so many months, hours or directions, if they are there.
fn each<const N: usize>(
    v: &mut dyn NamedVisitor,
    key: Name,
    field: Field,
    values: &mut Option<[f64; N]>,
) -> Result<(), Box<Problem>> {
    let mut there = values.is_some();
    v.there(key, &mut there)?;
    let mut own = values.unwrap_or([0.0; N]);
    if there {
        v.each(key, field, &mut own)?;
    }
    *values = there.then_some(own);
    Ok(())
}

fn place(place: &mut Place, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    let blank = Place::default();
    v.open("place", Tag::None, keys::PLACE)?;
    v.text("name", TextField::PlaceName, &mut place.name)?;
    v.number("latitude_deg", Field::Latitude, &mut place.latitude_deg, 0.0)?;
    v.number("longitude_deg", Field::Longitude, &mut place.longitude_deg, 0.0)?;
    v.number("utc_offset_min", Field::UtcOffset, &mut place.utc_offset_min, 0.0)?;
    choice(v, "summer_time", &mut place.summer_time, &SummerTime::ALL, &keys::SUMMER_TIME)?;
    each(v, "peak_sun_h", Field::PeakSun, &mut place.peak_sun_h)?;
    each(v, "temperature_c", Field::AirTemperature, &mut place.temperature_c)?;
    v.number("albedo_pct", Field::Albedo, &mut place.albedo_pct, blank.albedo_pct)?;
    v.number("inside_c", Field::InsideTemperature, &mut place.inside_c, blank.inside_c)?;
    v.option("record_low_c", Field::RecordLow, &mut place.record_low_c)?;
    each(v, "horizon_deg", Field::Horizon, &mut place.horizon_deg)?;
    v.close()
}

fn start(start: &mut Start, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    v.open("start", Tag::None, keys::START)?;
    v.date("date", &mut start.date)?;
    v.time("time", &mut start.time)?;
    v.number("charge_pct", Field::StartCharge, &mut start.charge_pct, 100.0)?;
    v.close()
}

fn bank(bank: &mut Bank, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    let blank = Bank::default();
    v.open("bank", Tag::None, keys::BANK)?;
    choice(v, "chemistry", &mut bank.chemistry, Chemistry::ALL, &keys::CHEMISTRY)?;
    v.number("battery_v", Field::BatteryVoltage, &mut bank.battery_v, blank.battery_v)?;
    v.number("capacity_ah", Field::BatteryCapacity, &mut bank.capacity_ah, blank.capacity_ah)?;
    v.option("hour_rate_h", Field::HourRate, &mut bank.hour_rate_h)?;
    v.number("in_series", Field::InSeries, &mut bank.in_series, 1.0)?;
    v.number("in_parallel", Field::InParallel, &mut bank.in_parallel, 1.0)?;
    v.number("health_pct", Field::Health, &mut bank.health_pct, 100.0)?;
    v.number("reserve_pct", Field::Reserve, &mut bank.reserve_pct, blank.reserve_pct)?;
    kept(&mut bank.kept, v)?;
    v.option("charge_limit_a", Field::BatteryCurrent, &mut bank.charge_limit_a)?;
    v.option("discharge_limit_a", Field::BatteryCurrent, &mut bank.discharge_limit_a)?;
    v.option("peak_limit_a", Field::BatteryCurrent, &mut bank.peak_limit_a)?;
    v.option("protection_ma", Field::ProtectionDraw, &mut bank.protection_ma)?;
    v.option("charge_efficiency_pct", Field::ChargeEfficiency, &mut bank.charge_efficiency_pct)?;
    v.option("rate_exponent", Field::RateExponent, &mut bank.rate_exponent)?;
    v.option("self_discharge_pct", Field::SelfDischarge, &mut bank.self_discharge_pct)?;
    v.option("second_capacity_ah", Field::SecondCapacity, &mut bank.second_capacity_ah)?;
    v.option("second_hours_h", Field::SecondHours, &mut bank.second_hours_h)?;
    v.option("third_capacity_ah", Field::ThirdCapacity, &mut bank.third_capacity_ah)?;
    v.option("third_hours_h", Field::ThirdHours, &mut bank.third_hours_h)?;
    v.option("absorption_v", Field::AbsorptionVoltage, &mut bank.absorption_v)?;
    v.option("tail_pct", Field::TailCurrent, &mut bank.tail_pct)?;
    v.option("low_cut_off_v", Field::LowCutOff, &mut bank.low_cut_off_v)?;
    v.close()
}

fn kept(kept: &mut Kept, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    let (mut kind, mut own) = match *kept {
        Kept::Inside => (0, 0.0),
        Kept::Outside => (1, 0.0),
        Kept::AtC(own) => (2, own),
    };
    v.variant("kept", &mut kind, keys::KEPT)?;
    v.number("at_c", Field::BatteryTemperature, &mut own, 0.0)?;
    v.end();
    *kept = match kind {
        0 => Kept::Inside,
        1 => Kept::Outside,
        _ => Kept::AtC(own),
    };
    Ok(())
}

fn inverter(inverter: &mut Inverter, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    v.open("inverter", Tag::None, keys::INVERTER)?;
    v.number("rated_w", Field::InverterRated, &mut inverter.rated_w, 1000.0)?;
    v.option("surge_w", Field::InverterSurge, &mut inverter.surge_w)?;
    v.option("idle_w", Field::InverterIdle, &mut inverter.idle_w)?;
    v.option("efficiency_half_pct", Field::InverterEfficiency, &mut inverter.efficiency_half_pct)?;
    v.option("efficiency_full_pct", Field::InverterEfficiency, &mut inverter.efficiency_full_pct)?;
    let all = [Awake::WithLoads, Awake::Always, Awake::Search];
    choice(v, "awake", &mut inverter.awake, &all, &keys::AWAKE)?;
    v.option("search_w", Field::SearchDraw, &mut inverter.search_w)?;
    v.close()
}

fn charger(charger: &mut Charger, key: Name, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    v.open(key, Tag::None, keys::CHARGER)?;
    v.flag("on", &mut charger.on, true)?;
    v.number("limit_a", Field::ChargerCurrent, &mut charger.limit_a, 20.0)?;
    schedule(&mut charger.schedule, v)?;
    v.number("derating_pct", Field::Derating, &mut charger.derating_pct, 0.0)?;
    v.close()
}

fn generator(generator: &mut Generator, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    let usual = Generator::default();
    v.open("generator", Tag::None, keys::GENERATOR)?;
    v.flag("on", &mut generator.on, true)?;
    v.number("limit_a", Field::ChargerCurrent, &mut generator.limit_a, usual.limit_a)?;
    v.number("start_pct", Field::GeneratorStart, &mut generator.start_pct, usual.start_pct)?;
    v.number("stop_pct", Field::GeneratorStop, &mut generator.stop_pct, usual.stop_pct)?;
    let (shortest, usual_run) = (&mut generator.minimum_run_min, usual.minimum_run_min);
    v.number("minimum_run_min", Field::MinimumRun, shortest, usual_run)?;
    schedule(&mut generator.schedule, v)?;
    v.option("fuel_l_per_h", Field::FuelPerHour, &mut generator.fuel_l_per_h)?;
    v.option("fuel_l_per_kwh", Field::FuelPerEnergy, &mut generator.fuel_l_per_kwh)?;
    v.close()
}

fn turbine(turbine: &mut Turbine, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    v.open("turbine", Tag::None, keys::TURBINE)?;
    v.flag("on", &mut turbine.on, true)?;
    let (mut kind, mut months) = match turbine.output {
        TurbineOutput::MeanW(months) => (0, months),
        TurbineOutput::AhPerDay(months) => (1, months),
    };
    v.variant("output", &mut kind, keys::TURBINE_OUTPUT)?;
    let (key, field) = if kind == 0 {
        ("mean_w", Field::TurbinePower)
    } else {
        ("ah_per_day", Field::TurbineCharge)
    };
    v.each(key, field, &mut months)?;
    v.end();
    turbine.output =
        if kind == 0 { TurbineOutput::MeanW(months) } else { TurbineOutput::AhPerDay(months) };
    each(v, "hours", Field::HourShare, &mut turbine.hours)?;
    v.close()
}

fn load(load: &mut Load, at: Tag, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    v.open("loads", at, keys::LOAD)?;
    v.id("appliance", &mut load.appliance)?;
    rating(&mut load.rating, v)?;
    v.number("quantity", Field::Quantity, &mut load.quantity, 1.0)?;
    schedule(&mut load.schedule, v)?;
    v.number("duty_pct", Field::Duty, &mut load.duty_pct, 100.0)?;
    choice(v, "supply", &mut load.supply, &[Supply::Dc, Supply::Ac], &keys::SUPPLY)?;
    cooling(&mut load.cooling, v)?;
    v.number("surge", Field::Surge, &mut load.surge, 1.0)?;
    v.text("name", TextField::LoadName, &mut load.name)?;
    v.flag("on", &mut load.on, true)?;
    v.flag("vital", &mut load.vital, false)?;
    v.number("power_factor", Field::PowerFactor, &mut load.power_factor, 1.0)?;
    v.text("group", TextField::GroupName, &mut load.group)?;
    v.close()
}

fn rating(rating: &mut Rating, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    let mut kind = match rating {
        Rating::PowerW(_) => 0,
        Rating::Plate { .. } => 1,
        Rating::LabelKwhPerYear(_) => 2,
        Rating::Output { .. } => 3,
    };
    let before = kind;
    v.variant("rating", &mut kind, keys::RATING)?;
    if kind != before {
        *rating = match kind {
            0 => Rating::PowerW(10.0),
            1 => Rating::Plate { current_a: 1.0, at_v: 12.0 },
            2 => Rating::LabelKwhPerYear(100.0),
            _ => Rating::Output { power_w: 800.0, efficiency_pct: 64.0 },
        };
    }
    match rating {
        Rating::PowerW(power_w) => v.number("power_w", Field::LoadPower, power_w, 10.0)?,
        Rating::Plate { current_a, at_v } => {
            v.group("plate", keys::PLATE)?;
            v.number("current_a", Field::LoadCurrent, current_a, 1.0)?;
            v.number("at_v", Field::PlateVoltage, at_v, 12.0)?;
            v.end();
        }
        Rating::LabelKwhPerYear(energy) => {
            v.number("label_kwh_per_year", Field::LabelEnergy, energy, 100.0)?;
        }
        Rating::Output { power_w, efficiency_pct } => {
            v.group("output", keys::OUTPUT)?;
            v.number("power_w", Field::OutputPower, power_w, 800.0)?;
            v.number("efficiency_pct", Field::OutputEfficiency, efficiency_pct, 64.0)?;
            v.end();
        }
    }
    v.end();
    Ok(())
}

fn cooling(cooling: &mut Option<Cooling>, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    let mut there = cooling.is_some();
    v.there("cooling", &mut there)?;
    if there {
        v.group("cooling", keys::COOLING)?;
        let own = cooling.get_or_insert(Cooling { inside_c: 4.0, reference_c: 25.0 });
        v.number("inside_c", Field::FridgeInside, &mut own.inside_c, 4.0)?;
        v.number("reference_c", Field::FridgeReference, &mut own.reference_c, 25.0)?;
        v.end();
    } else {
        *cooling = None;
    }
    Ok(())
}

fn schedule(schedule: &mut Schedule, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    v.group("schedule", keys::SCHEDULE)?;
    when(&mut schedule.when, v)?;
    let mut days = u32::from(schedule.days.0);
    v.some("days", &mut days, Days::ALL.0.into(), &keys::DAYS)?;
    schedule.days = Days(days as u8);
    let mut months = u32::from(schedule.months.0);
    v.some("months", &mut months, Months::ALL.0.into(), &[])?;
    schedule.months = Months(months as u16);
    v.end();
    Ok(())
}

fn when(when: &mut When, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    let mut kind = match when {
        When::HoursPerDay(_) => 0,
        When::Always => 1,
        When::Spans(_) => 2,
    };
    let before = kind;
    v.variant("when", &mut kind, keys::WHEN)?;
    if kind != before {
        *when = match kind {
            0 => When::HoursPerDay(1.0),
            1 => When::Always,
            _ => When::Spans(Vec::new()),
        };
    }
    match when {
        When::Always => {}
        When::HoursPerDay(hours) => v.number("hours_per_day", Field::HoursPerDay, hours, 1.0)?,
        When::Spans(spans) => {
            let length = v.length("spans", List::Spans, spans.len())?;
            spans.resize(length, Span { from_min: 0, to_min: DAY_MIN });
            for (at, span) in spans.iter_mut().enumerate() {
                v.span("spans", at, span)?;
            }
        }
    }
    v.end();
    Ok(())
}

fn array(array: &mut Array, at: Tag, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    let blank = Array::default();
    v.open("arrays", at, keys::ARRAY)?;
    v.number("module_w", Field::ModulePower, &mut array.module_w, blank.module_w)?;
    v.number("in_series", Field::InSeries, &mut array.in_series, 1.0)?;
    v.number("in_parallel", Field::InParallel, &mut array.in_parallel, 1.0)?;
    v.number("tilt_deg", Field::Tilt, &mut array.tilt_deg, 0.0)?;
    v.number("azimuth_deg", Field::Azimuth, &mut array.azimuth_deg, 180.0)?;
    choice(
        v,
        "mounting",
        &mut array.mounting,
        &[Mounting::Open, Mounting::Flush],
        &keys::MOUNTING,
    )?;
    v.option("best_point_v", Field::ModuleVoltage, &mut array.best_point_v)?;
    v.option("open_circuit_v", Field::ModuleVoltage, &mut array.open_circuit_v)?;
    v.option("short_circuit_a", Field::ModuleCurrent, &mut array.short_circuit_a)?;
    v.option("power_pct_per_k", Field::PowerCoefficient, &mut array.power_pct_per_k)?;
    losses(&mut array.losses, v)?;
    shading(&mut array.shading, v)?;
    controller(&mut array.controller, &blank.controller, v)?;
    v.flag("on", &mut array.on, true)?;
    let own = &mut array.controller_self_use_w;
    v.number("controller_self_use_w", Field::ControllerSelfUse, own, 0.0)?;
    v.close()
}

fn losses(losses: &mut Losses, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    v.group("losses", keys::LOSSES)?;
    let usual = Losses::default();
    v.number("dirt_pct", Field::Loss, &mut losses.dirt_pct, usual.dirt_pct)?;
    v.number("cable_pct", Field::Loss, &mut losses.cable_pct, usual.cable_pct)?;
    v.number("ageing_pct", Field::Loss, &mut losses.ageing_pct, usual.ageing_pct)?;
    v.number("other_pct", Field::Loss, &mut losses.other_pct, usual.other_pct)?;
    v.end();
    Ok(())
}

fn shading(shading: &mut Shading, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    v.group("shading", keys::SHADING)?;
    v.number("morning_pct", Field::Shading, &mut shading.morning_pct, 0.0)?;
    v.number("midday_pct", Field::Shading, &mut shading.midday_pct, 0.0)?;
    v.number("afternoon_pct", Field::Shading, &mut shading.afternoon_pct, 0.0)?;
    v.end();
    Ok(())
}

fn controller(
    controller: &mut Controller,
    blank: &Controller,
    v: &mut dyn NamedVisitor,
) -> Result<(), Box<Problem>> {
    v.group("controller", keys::CONTROLLER)?;
    choice(
        v,
        "kind",
        &mut controller.kind,
        &[ControllerKind::Mppt, ControllerKind::Pwm],
        &keys::CONTROLLER_KIND,
    )?;
    v.number("limit_a", Field::ChargerCurrent, &mut controller.limit_a, blank.limit_a)?;
    v.option("max_v", Field::ControllerVoltage, &mut controller.max_v)?;
    v.end();
    Ok(())
}

/// Whether a date can stand in a scenario.
pub(super) fn date_in_range(date: NaiveDate) -> bool {
    let days = date.signed_duration_since(first_date()).num_days();
    (0..=i64::from(super::LAST_DAY)).contains(&days)
}
