//! The walk through what somebody wishes of a plan: what it shall keep, and how it is wired.

use super::field::Field;
use super::keys;
use super::problem::Problem;
use super::promise::{Promise, Promised};
use super::schedule::Months;
use super::visitor::NamedVisitor;
use super::walk::choice;
use super::wiring::{Bundled, CableInsulation, WiredBy, Wiring};
use crate::working::Tag;

pub(super) fn promise(promise: &mut Promise, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    v.open("promise", Tag::None, keys::PROMISE)?;
    let (mut kind, mut count) = match promise.what {
        Promised::Through => (0, 0.0),
        Promised::ShortDays(most) => (1, most),
        Promised::WithoutSun(days) => (2, days),
        Promised::Trip(days) => (3, days),
    };
    v.variant("what", &mut kind, keys::PROMISED)?;
    match kind {
        0 => {}
        1 => v.number("short_days", Field::ShortDays, &mut count, 0.0)?,
        2 => v.number("without_sun", Field::DaysWithoutSun, &mut count, 1.0)?,
        _ => v.number("trip", Field::DaysOfTrip, &mut count, 1.0)?,
    }
    v.end();
    promise.what = match kind {
        0 => Promised::Through,
        1 => Promised::ShortDays(count),
        2 => Promised::WithoutSun(count),
        _ => Promised::Trip(count),
    };
    v.option("chance_pct", Field::Chance, &mut promise.chance_pct)?;
    let mut months = u32::from(promise.months.0);
    v.some("months", &mut months, Months::ALL.0.into(), &[])?;
    promise.months = Months(months as u16);
    v.option("bank_price", Field::BankPrice, &mut promise.bank_price)?;
    v.option("array_price", Field::ArrayPrice, &mut promise.array_price)?;
    v.option("bank_kg", Field::BankWeight, &mut promise.bank_kg)?;
    v.option("array_kg", Field::ArrayWeight, &mut promise.array_kg)?;
    v.close()
}

pub(super) fn wiring(wiring: &mut Wiring, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    v.open("wiring", Tag::None, keys::WIRING)?;
    choice(v, "tables", &mut wiring.tables, &WiredBy::ALL, &keys::WIRED_BY)?;
    choice(v, "insulation", &mut wiring.insulation, &CableInsulation::ALL, &keys::INSULATION)?;
    choice(v, "bundle", &mut wiring.bundle, &Bundled::ALL, &keys::BUNDLED)?;
    v.flag("engine_space", &mut wiring.engine_space, false)?;
    v.option("ambient_c", Field::RunAmbient, &mut wiring.ambient_c)?;
    v.option("bank_short_circuit_a", Field::ShortCircuitCurrent, &mut wiring.short_circuit_a)?;
    v.option("cranking_a", Field::CrankingCurrent, &mut wiring.cranking_a)?;
    v.option("battery_m", Field::BatteryRun, &mut wiring.battery_m)?;
    v.option("inverter_m", Field::InverterRun, &mut wiring.inverter_m)?;
    v.option("panel_m", Field::PanelRun, &mut wiring.panel_m)?;
    v.option("load_m", Field::LoadRun, &mut wiring.load_m)?;
    v.option("controller_m", Field::ControllerRun, &mut wiring.controller_m)?;
    v.option("array_m", Field::ArrayRun, &mut wiring.array_m)?;
    v.option("charger_m", Field::ChargerRun, &mut wiring.charger_m)?;
    v.close()
}
