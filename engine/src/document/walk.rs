//! One walk over a whole scenario, in a fixed order, for everything that must touch every field: the checks, the rounding
//! to the resolution, and the link codec in both directions.
//!
//! A [`Visitor`] is handed each value by mutable reference together with its field and its default. The order of calls
//! within a section is part of the link format. **Only ever append at the end of a section**: a link of an older
//! release then simply lacks the new fields and gets their defaults.

use chrono::NaiveDate;

use super::schedule::{ClockTime, DAY_MIN, Days, Months, Schedule, Span, When};
use super::sections::{
    Array, Awake, Bank, Charger, Chemistry, Controller, ControllerKind, Cooling, Document,
    Inverter, Kept, Load, Losses, Mounting, Place, Rating, Shading, Start, Supply,
};
use super::{Field, Problem, first_date};
use crate::place::SummerTime;
use crate::working::Tag;

/// The kinds of list in a scenario.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum List {
    /// Loads.
    Loads,
    /// Arrays.
    Arrays,
    /// Stretches of the day in one schedule.
    Spans,
}

impl List {
    /// How many are allowed.
    #[must_use]
    pub const fn limit(self) -> usize {
        match self {
            Self::Loads => 200,
            Self::Arrays => 8,
            Self::Spans => 12,
        }
    }
}

/// The texts in a scenario.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TextField {
    /// Name of the plan.
    PlanName,
    /// Name of the place.
    PlaceName,
    /// Name of a load.
    LoadName,
}

impl TextField {
    /// How many characters are allowed.
    #[must_use]
    pub const fn limit(self) -> usize {
        80
    }
}

/// Does something to every value of a scenario.
pub trait Visitor {
    /// A section starts: in a link, its presence mask stands here.
    fn open(&mut self, at: Tag) -> Result<(), Problem>;
    /// The section ends.
    fn close(&mut self) -> Result<(), Problem>;
    /// A number with its default.
    fn number(&mut self, field: Field, value: &mut f64, default: f64) -> Result<(), Problem>;
    /// A number that may be left to what is typical.
    fn option(&mut self, field: Field, value: &mut Option<f64>) -> Result<(), Problem>;
    /// A small whole number that is no quantity (a choice, a mask, a minute), at most `max`.
    fn whole(&mut self, value: &mut u32, default: u32, max: u32) -> Result<(), Problem>;
    /// A text.
    fn text(&mut self, field: TextField, value: &mut String) -> Result<(), Problem>;
    /// The length of a list.
    fn length(&mut self, list: List, length: usize) -> Result<usize, Problem>;
}

/// Walks a whole scenario.
///
/// # Errors
/// The first problem that the visitor raises.
pub fn walk(document: &mut Document, v: &mut dyn Visitor) -> Result<(), Problem> {
    v.open(Tag::None)?;
    v.text(TextField::PlanName, &mut document.name)?;
    v.number(Field::StandingCurrent, &mut document.standing_a, 0.0)?;
    present(v, &mut document.inverter)?;
    present(v, &mut document.shore)?;
    present(v, &mut document.alternator)?;
    list(v, List::Loads, &mut document.loads)?;
    list(v, List::Arrays, &mut document.arrays)?;
    v.close()?;
    place(&mut document.place, v)?;
    start(&mut document.start, v)?;
    bank(&mut document.bank, v)?;
    if let Some(section) = &mut document.inverter {
        inverter(section, v)?;
    }
    if let Some(section) = &mut document.shore {
        charger(section, v)?;
    }
    if let Some(section) = &mut document.alternator {
        charger(section, v)?;
    }
    for (at, section) in document.loads.iter_mut().enumerate() {
        load(section, Tag::Load(at as u16), v)?;
    }
    for (at, section) in document.arrays.iter_mut().enumerate() {
        array(section, Tag::Array(at as u16), v)?;
    }
    Ok(())
}

/// Settles how long a list is; new items start from their defaults.
fn list<T: Default>(v: &mut dyn Visitor, kind: List, items: &mut Vec<T>) -> Result<(), Problem> {
    let length = v.length(kind, items.len())?;
    items.resize_with(length, T::default);
    Ok(())
}

/// Settles whether an optional section is there.
fn present<T: Default>(v: &mut dyn Visitor, section: &mut Option<T>) -> Result<(), Problem> {
    let mut there = section.is_some();
    flag(v, &mut there, false)?;
    match (there, section.is_some()) {
        (true, false) => *section = Some(T::default()),
        (false, true) => *section = None,
        _ => {}
    }
    Ok(())
}

fn flag(v: &mut dyn Visitor, value: &mut bool, default: bool) -> Result<(), Problem> {
    let mut number = u32::from(*value);
    v.whole(&mut number, u32::from(default), 1)?;
    *value = number == 1;
    Ok(())
}

/// One of a list of choices, by its place in the list.
fn choice<T: Copy + PartialEq>(
    v: &mut dyn Visitor,
    value: &mut T,
    all: &[T],
) -> Result<(), Problem> {
    let mut number = all.iter().position(|one| one == value).unwrap_or(0) as u32;
    v.whole(&mut number, 0, all.len() as u32 - 1)?;
    if let Some(one) = all.get(number as usize) {
        *value = *one;
    }
    Ok(())
}

fn twelve(
    v: &mut dyn Visitor,
    field: Field,
    values: &mut Option<[f64; 12]>,
) -> Result<(), Problem> {
    let mut there = values.is_some();
    flag(v, &mut there, false)?;
    let mut own = values.unwrap_or_default();
    if there {
        for value in &mut own {
            // Never equal to a default, so that all twelve are written.
            v.number(field, value, f64::NAN)?;
        }
    }
    *values = there.then_some(own);
    Ok(())
}

fn place(place: &mut Place, v: &mut dyn Visitor) -> Result<(), Problem> {
    let blank = Place::default();
    v.open(Tag::None)?;
    v.text(TextField::PlaceName, &mut place.name)?;
    v.number(Field::Latitude, &mut place.latitude_deg, 0.0)?;
    v.number(Field::Longitude, &mut place.longitude_deg, 0.0)?;
    v.number(Field::UtcOffset, &mut place.utc_offset_min, 0.0)?;
    choice(v, &mut place.summer_time, &SummerTime::ALL)?;
    twelve(v, Field::PeakSun, &mut place.peak_sun_h)?;
    twelve(v, Field::AirTemperature, &mut place.temperature_c)?;
    v.number(Field::Albedo, &mut place.albedo_pct, blank.albedo_pct)?;
    v.number(Field::InsideTemperature, &mut place.inside_c, blank.inside_c)?;
    v.option(Field::RecordLow, &mut place.record_low_c)?;
    v.close()
}

fn start(start: &mut Start, v: &mut dyn Visitor) -> Result<(), Problem> {
    v.open(Tag::None)?;
    let mut days = start.date.signed_duration_since(first_date()).num_days().max(0) as u32;
    v.whole(&mut days, 0, super::LAST_DAY)?;
    start.date = first_date() + chrono::Days::new(days.into());
    let mut time = u32::from(start.time.0);
    v.whole(&mut time, 16 * 60, u32::from(DAY_MIN) - 1)?;
    start.time = ClockTime(time as u16);
    v.number(Field::StartCharge, &mut start.charge_pct, 100.0)?;
    v.close()
}

fn bank(bank: &mut Bank, v: &mut dyn Visitor) -> Result<(), Problem> {
    let blank = Bank::default();
    v.open(Tag::None)?;
    choice(v, &mut bank.chemistry, Chemistry::ALL)?;
    v.number(Field::BatteryVoltage, &mut bank.battery_v, blank.battery_v)?;
    v.number(Field::BatteryCapacity, &mut bank.capacity_ah, blank.capacity_ah)?;
    v.option(Field::HourRate, &mut bank.hour_rate_h)?;
    v.number(Field::InSeries, &mut bank.in_series, 1.0)?;
    v.number(Field::InParallel, &mut bank.in_parallel, 1.0)?;
    v.number(Field::Health, &mut bank.health_pct, 100.0)?;
    v.number(Field::Reserve, &mut bank.reserve_pct, blank.reserve_pct)?;
    kept(&mut bank.kept, v)?;
    v.option(Field::BatteryCurrent, &mut bank.charge_limit_a)?;
    v.option(Field::BatteryCurrent, &mut bank.discharge_limit_a)?;
    v.option(Field::BatteryCurrent, &mut bank.peak_limit_a)?;
    v.option(Field::ProtectionDraw, &mut bank.protection_ma)?;
    v.option(Field::ChargeEfficiency, &mut bank.charge_efficiency_pct)?;
    v.option(Field::RateExponent, &mut bank.rate_exponent)?;
    v.option(Field::SelfDischarge, &mut bank.self_discharge_pct)?;
    v.close()
}

fn kept(kept: &mut Kept, v: &mut dyn Visitor) -> Result<(), Problem> {
    let (mut kind, mut own) = match *kept {
        Kept::Inside => (0, 0.0),
        Kept::Outside => (1, 0.0),
        Kept::AtC(own) => (2, own),
    };
    v.whole(&mut kind, 0, 2)?;
    v.number(Field::BatteryTemperature, &mut own, 0.0)?;
    *kept = match kind {
        0 => Kept::Inside,
        1 => Kept::Outside,
        _ => Kept::AtC(own),
    };
    Ok(())
}

fn inverter(inverter: &mut Inverter, v: &mut dyn Visitor) -> Result<(), Problem> {
    v.open(Tag::None)?;
    v.number(Field::InverterRated, &mut inverter.rated_w, 1000.0)?;
    v.option(Field::InverterSurge, &mut inverter.surge_w)?;
    v.option(Field::InverterIdle, &mut inverter.idle_w)?;
    v.option(Field::InverterEfficiency, &mut inverter.efficiency_half_pct)?;
    v.option(Field::InverterEfficiency, &mut inverter.efficiency_full_pct)?;
    choice(v, &mut inverter.awake, &[Awake::WithLoads, Awake::Always])?;
    v.close()
}

fn charger(charger: &mut Charger, v: &mut dyn Visitor) -> Result<(), Problem> {
    v.open(Tag::None)?;
    flag(v, &mut charger.on, true)?;
    v.number(Field::ChargerCurrent, &mut charger.limit_a, 20.0)?;
    schedule(&mut charger.schedule, v)?;
    v.close()
}

fn load(load: &mut Load, at: Tag, v: &mut dyn Visitor) -> Result<(), Problem> {
    v.open(at)?;
    let mut appliance = load.appliance.map_or(0, |number| u32::from(number) + 1);
    v.whole(&mut appliance, 0, 1 + u32::from(u16::MAX))?;
    load.appliance = appliance.checked_sub(1).map(|number| number as u16);
    rating(&mut load.rating, v)?;
    v.number(Field::Quantity, &mut load.quantity, 1.0)?;
    schedule(&mut load.schedule, v)?;
    v.number(Field::Duty, &mut load.duty_pct, 100.0)?;
    choice(v, &mut load.supply, &[Supply::Dc, Supply::Ac])?;
    cooling(&mut load.cooling, v)?;
    v.number(Field::Surge, &mut load.surge, 1.0)?;
    v.text(TextField::LoadName, &mut load.name)?;
    flag(v, &mut load.on, true)?;
    flag(v, &mut load.vital, false)?;
    v.close()
}

fn rating(rating: &mut Rating, v: &mut dyn Visitor) -> Result<(), Problem> {
    let mut kind = match rating {
        Rating::PowerW(_) => 0,
        Rating::Plate { .. } => 1,
        Rating::LabelKwhPerYear(_) => 2,
        Rating::Output { .. } => 3,
    };
    let before = kind;
    v.whole(&mut kind, 0, 3)?;
    if kind != before {
        *rating = match kind {
            0 => Rating::PowerW(10.0),
            1 => Rating::Plate { current_a: 1.0, at_v: 12.0 },
            2 => Rating::LabelKwhPerYear(100.0),
            _ => Rating::Output { power_w: 800.0, efficiency_pct: 64.0 },
        };
    }
    match rating {
        Rating::PowerW(power_w) => v.number(Field::LoadPower, power_w, 10.0),
        Rating::Plate { current_a, at_v } => {
            v.number(Field::LoadCurrent, current_a, 1.0)?;
            v.number(Field::PlateVoltage, at_v, 12.0)
        }
        Rating::LabelKwhPerYear(energy) => v.number(Field::LabelEnergy, energy, 100.0),
        Rating::Output { power_w, efficiency_pct } => {
            v.number(Field::OutputPower, power_w, 800.0)?;
            v.number(Field::OutputEfficiency, efficiency_pct, 64.0)
        }
    }
}

fn cooling(cooling: &mut Option<Cooling>, v: &mut dyn Visitor) -> Result<(), Problem> {
    let mut there = cooling.is_some();
    flag(v, &mut there, false)?;
    if there {
        let own = cooling.get_or_insert(Cooling { inside_c: 4.0, reference_c: 25.0 });
        v.number(Field::FridgeInside, &mut own.inside_c, 4.0)?;
        v.number(Field::FridgeReference, &mut own.reference_c, 25.0)?;
    } else {
        *cooling = None;
    }
    Ok(())
}

fn schedule(schedule: &mut Schedule, v: &mut dyn Visitor) -> Result<(), Problem> {
    let mut kind = match schedule.when {
        When::HoursPerDay(_) => 0,
        When::Always => 1,
        When::Spans(_) => 2,
    };
    let before = kind;
    v.whole(&mut kind, 0, 2)?;
    if kind != before {
        schedule.when = match kind {
            0 => When::HoursPerDay(1.0),
            1 => When::Always,
            _ => When::Spans(Vec::new()),
        };
    }
    match &mut schedule.when {
        When::Always => {}
        When::HoursPerDay(hours) => v.number(Field::HoursPerDay, hours, 1.0)?,
        When::Spans(spans) => {
            let length = v.length(List::Spans, spans.len())?;
            spans.resize(length, Span { from_min: 0, to_min: DAY_MIN });
            for span in spans {
                minute(v, &mut span.from_min, DAY_MIN - 1)?;
                minute(v, &mut span.to_min, DAY_MIN)?;
                if !span.is_valid() {
                    return Err(Problem::BadSpan { span: *span });
                }
            }
        }
    }
    let mut days = u32::from(schedule.days.0);
    v.whole(&mut days, Days::ALL.0.into(), Days::ALL.0.into())?;
    schedule.days = Days(days as u8);
    let mut months = u32::from(schedule.months.0);
    v.whole(&mut months, Months::ALL.0.into(), Months::ALL.0.into())?;
    schedule.months = Months(months as u16);
    Ok(())
}

/// A minute of the day; always written, because none is more likely than another.
fn minute(v: &mut dyn Visitor, value: &mut u16, max: u16) -> Result<(), Problem> {
    let mut number = u32::from(*value);
    v.whole(&mut number, u32::MAX, max.into())?;
    *value = number as u16;
    Ok(())
}

fn array(array: &mut Array, at: Tag, v: &mut dyn Visitor) -> Result<(), Problem> {
    let blank = Array::default();
    v.open(at)?;
    v.number(Field::ModulePower, &mut array.module_w, blank.module_w)?;
    v.number(Field::InSeries, &mut array.in_series, 1.0)?;
    v.number(Field::InParallel, &mut array.in_parallel, 1.0)?;
    v.number(Field::Tilt, &mut array.tilt_deg, 0.0)?;
    v.number(Field::Azimuth, &mut array.azimuth_deg, 180.0)?;
    choice(v, &mut array.mounting, &[Mounting::Open, Mounting::Flush])?;
    v.option(Field::ModuleVoltage, &mut array.best_point_v)?;
    v.option(Field::ModuleVoltage, &mut array.open_circuit_v)?;
    v.option(Field::ModuleCurrent, &mut array.short_circuit_a)?;
    v.option(Field::PowerCoefficient, &mut array.power_pct_per_k)?;
    losses(&mut array.losses, v)?;
    shading(&mut array.shading, v)?;
    controller(&mut array.controller, &blank.controller, v)?;
    flag(v, &mut array.on, true)?;
    v.close()
}

fn losses(losses: &mut Losses, v: &mut dyn Visitor) -> Result<(), Problem> {
    let usual = Losses::default();
    v.number(Field::Loss, &mut losses.dirt_pct, usual.dirt_pct)?;
    v.number(Field::Loss, &mut losses.cable_pct, usual.cable_pct)?;
    v.number(Field::Loss, &mut losses.ageing_pct, usual.ageing_pct)?;
    v.number(Field::Loss, &mut losses.other_pct, usual.other_pct)
}

fn shading(shading: &mut Shading, v: &mut dyn Visitor) -> Result<(), Problem> {
    v.number(Field::Shading, &mut shading.morning_pct, 0.0)?;
    v.number(Field::Shading, &mut shading.midday_pct, 0.0)?;
    v.number(Field::Shading, &mut shading.afternoon_pct, 0.0)
}

fn controller(
    controller: &mut Controller,
    blank: &Controller,
    v: &mut dyn Visitor,
) -> Result<(), Problem> {
    choice(v, &mut controller.kind, &[ControllerKind::Mppt, ControllerKind::Pwm])?;
    v.number(Field::ChargerCurrent, &mut controller.limit_a, blank.limit_a)?;
    v.option(Field::ControllerVoltage, &mut controller.max_v)
}

/// Whether a date can stand in a scenario.
pub(super) fn date_in_range(date: NaiveDate) -> bool {
    let days = date.signed_duration_since(first_date()).num_days();
    (0..=i64::from(super::LAST_DAY)).contains(&days)
}
