//! A bank of one size in one month: everything over what it holds, in 32 bits.

use crate::flat::flat;

/// Bends of the curve between its first part and its last.
pub const KNEES: usize = 3;
/// The same of lead-acid.
pub const PLATE_KNEES: usize = 2;

/// A bank of one size in one month. Currents are over what it holds between full and empty \[1/h\].
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Store {
    /// Whether it has the plates and wells of lead-acid.
    pub plates: bool,
    /// One over what it holds \[1/Ah\].
    pub per_full: f32,
    /// One over its nominal voltage \[1/V\].
    pub per_nominal: f32,
    /// Open-circuit voltage when empty, its rise over the first part, and how much more it rises from each bend on \[V\]; of lead-acid by
    /// the current that takes all of the available well in an hour.
    pub curve_from: f32,
    /// See there.
    pub curve_rise: f32,
    /// Charge at each bend.
    pub knees: [f32; KNEES],
    /// See there.
    pub bends: [f32; KNEES],
    /// Resistance when full and warm, times what it holds \[V·h\].
    pub resistance: f32,
    /// One over that.
    pub per_resistance: f32,
    /// Absorption voltage at 25 °C, and what a kelvin over it changes \[V\].
    pub absorption: f32,
    /// See there.
    pub warmth: f32,
    /// Voltage at which loads are cut off.
    pub low: f32,
    /// State of charge at which charging ends, and at which the voltage at rest is the low cut-off.
    pub top: f32,
    /// See there.
    pub bottom: f32,
    /// State of charge not to be undercut.
    pub reserve: f32,
    /// Limits of its currents.
    pub charge_limit: f32,
    /// See there.
    pub discharge_limit: f32,
    /// Draw of its protection.
    pub protection: f32,
    /// What an hour of standing leaves of what is in it.
    pub stands: f32,
    /// Share of a charge current that it keeps, at most.
    pub efficiency: f32,
    /// What it holds over the charge of its ten-hour current in an hour, as the law of what plates keep has it.
    pub per_ten_hour: f32,
    /// What the available well gives when full, as the current that takes it all in an hour.
    pub room: f32,
    /// What an hour leaves in the available well, what of all charge flows into it, and what flows from that which is never given: all
    /// as such a current.
    pub stays: f32,
    /// See there.
    pub comes: f32,
    /// See there.
    pub spare_comes: f32,
    /// Conductance of plates over that of one cell.
    pub plate_size: f32,
    /// Output of the generator \[A\]; nothing without one. It starts and stops at these states of charge.
    pub generator: f32,
    /// See there.
    pub starts: f32,
    /// See there.
    pub stops: f32,
}

flat!(Store {
    plates: bool,
    per_full: f32,
    per_nominal: f32,
    curve_from: f32,
    curve_rise: f32,
    knees: [f32; KNEES],
    bends: [f32; KNEES],
    resistance: f32,
    per_resistance: f32,
    absorption: f32,
    warmth: f32,
    low: f32,
    top: f32,
    bottom: f32,
    reserve: f32,
    charge_limit: f32,
    discharge_limit: f32,
    protection: f32,
    stands: f32,
    efficiency: f32,
    per_ten_hour: f32,
    room: f32,
    stays: f32,
    comes: f32,
    spare_comes: f32,
    plate_size: f32,
    generator: f32,
    starts: f32,
    stops: f32,
});
