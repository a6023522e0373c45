//! What an array must not do to its controller and to itself.
//!
//! **Method.** The open-circuit voltage of a string at the lowest temperature on record stands against the controller's limit; it is also
//! what switches and fuses of the array must be made for. Where no record is known, that of switches is reckoned with −40 °C, and the
//! controller is not called safe. From three strings side by side on each needs a fuse.

use super::current::{Wiring, needs_string_fuses, source_of};
use crate::quantity::{Celsius, Volts};
use crate::source::{Array, VOLTAGE_PER_K};
use crate::working::{Formula, Source, Tag, Trace, term};

/// The cold that switches and fuses are chosen for where no record is known: few inhabited places are colder.
const UNKNOWN_COLD: Celsius = Celsius(-40.0);

/// How an array's voltage in the cold stands to its controller.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Cold {
    /// Under the limit.
    Fits,
    /// Over it: the controller would be destroyed.
    TooHigh,
    /// The lowest temperature on record is not known.
    RecordUnknown,
    /// The controller's limit is not known.
    LimitUnknown,
}

/// What was checked of an array.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArrayCheck {
    /// Its place in the plan, from 0.
    pub array: u16,
    /// How it stands to its controller.
    pub cold: Cold,
    /// The open-circuit voltage of a string...
    pub voltage: Volts,
    /// ...at this temperature.
    pub at: Celsius,
    /// What the controller takes.
    pub limit: Option<Volts>,
    /// Whether each string needs a fuse against current from the others.
    pub string_fuses: bool,
}

/// Checks an array, with the working of its voltage.
pub(super) fn check(wiring: &Wiring<'_>, array: &Array, trace: &mut impl Trace) -> ArrayCheck {
    let record = wiring.system.record_low;
    let at = record.unwrap_or(UNKNOWN_COLD);
    let voltage = array.cold_voltage(at);
    let plan = wiring.plan.arrays.get(usize::from(array.place));
    let stated = plan.and_then(|own| own.open_circuit_v);
    let inputs = [
        term(array.series),
        term(array.module.open).from(source_of(stated)),
        term(VOLTAGE_PER_K).from(Source::Typical),
        term(at).from(record.map_or(Source::Choice, |_| Source::Plan)),
    ];
    let tag = Tag::Array(array.place);
    let voltage = trace.step_of(tag, Formula::ColdVoltage, voltage, &inputs);
    let cold = match (record, array.max_voltage) {
        (_, None) => Cold::LimitUnknown,
        (None, Some(_)) => Cold::RecordUnknown,
        (Some(_), Some(limit)) if voltage > limit => Cold::TooHigh,
        (Some(_), Some(_)) => Cold::Fits,
    };
    let string_fuses = needs_string_fuses(array);
    ArrayCheck { array: array.place, cold, voltage, at, limit: array.max_voltage, string_fuses }
}
