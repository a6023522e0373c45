//! The walk through what the gauge of a plan was told and showed.

use super::field::Field;
use super::keys;
use super::logged::{Logbook, Logged};
use super::problem::Problem;
use super::visitor::{List, NamedVisitor, Visited};
use crate::working::Tag;

pub(super) fn logbook(logbook: &mut Logbook, v: &mut dyn NamedVisitor) -> Result<(), Box<Problem>> {
    v.open("logbook", Tag::None, keys::LOGBOOK)?;
    v.option("gauge_capacity_ah", Field::ToldCapacity, &mut logbook.capacity_ah)?;
    v.option("gauge_efficiency_pct", Field::ToldEfficiency, &mut logbook.efficiency_pct)?;
    let length = v.length("readings", List::Readings, logbook.readings.len())?;
    logbook.readings.resize_with(length, Logged::default);
    for (at, reading) in logbook.readings.iter_mut().enumerate() {
        v.reading("readings", at, reading)?;
    }
    v.close()
}

/// The parts of a reading as a file has them.
pub(super) fn each_part(reading: &mut Logged, v: &mut dyn NamedVisitor) -> Visited {
    v.date("date", &mut reading.date)?;
    v.time("time", &mut reading.time)?;
    let mut kind = reading.shown.kind();
    v.variant("shown", &mut kind, keys::SHOWN)?;
    reading.shown.turn_into(kind);
    if let Some((field, own)) = reading.shown.number() {
        v.number(keys::SHOWN.form(kind).0, field, own, f64::NAN)?;
    }
    v.end();
    v.option("bank_v", Field::ReadVolts, &mut reading.volts)?;
    v.option("into_a", Field::ReadAmps, &mut reading.amps)
}
