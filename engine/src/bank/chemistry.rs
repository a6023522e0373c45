//! What the chemistries differ in: voltages, losses, limits. Typical values where the maker's sheet is silent.
//!
//! **How sure.** Confidence differs and is said per constant: open-circuit curves are published tables or measured cells
//! (glass mat: the middle of what is usual), the rest is the rounded middle of what the trade states. The maker's sheet
//! always comes first; capacities, limits, set-points, efficiency, self-discharge, exponent and protection draw can be
//! stated in a plan, resistance and curve cannot.

use crate::document::Chemistry;
use crate::quantity::{Amps, Celsius, Hours, Percent, Volts};
use crate::working::Source;

use super::charging::ChargeEfficiency;

/// A point of the open-circuit curve: state of charge (ratio) and volts of a cell.
pub type CurvePoint = (f64, f64);

/// Lead-acid, liquid electrolyte, rested at 26.7 °C, a sixth of 12.65/12.45/12.24/12.06/11.89 V (published table).
const FLOODED: &[CurvePoint] = &[
    (0.0, 11.89 / 6.0),
    (0.25, 12.06 / 6.0),
    (0.5, 12.24 / 6.0),
    (0.75, 12.45 / 6.0),
    (1.0, 12.65 / 6.0),
];
/// Gel, a sixth of 12.80/12.60/12.40/12.00/11.80 V (published table).
const GEL: &[CurvePoint] = &[
    (0.0, 11.8 / 6.0),
    (0.25, 12.0 / 6.0),
    (0.5, 12.4 / 6.0),
    (0.75, 12.6 / 6.0),
    (1.0, 12.8 / 6.0),
];
/// Glass mat, middle of the ranges usual in the trade.
const AGM: &[CurvePoint] = &[
    (0.0, 11.8 / 6.0),
    (0.25, 12.0 / 6.0),
    (0.5, 12.25 / 6.0),
    (0.75, 12.55 / 6.0),
    (1.0, 12.82 / 6.0),
];
/// Iron phosphate cell, measured at a thirty-second of its capacity.
const LIFEPO4: &[CurvePoint] = &[
    (0.0, 2.0102),
    (0.0033, 2.4177),
    (0.0117, 2.7405),
    (0.0267, 2.9299),
    (0.0534, 3.0872),
    (0.0885, 3.1942),
    (0.2972, 3.2772),
    (0.9833, 3.3511),
    (0.995, 3.418),
    (1.0, 3.5981),
];
/// Nickel-rich cell, measured.
const NMC: &[CurvePoint] = &[
    (0.0, 2.5061),
    (0.0151, 2.8981),
    (0.0452, 3.1461),
    (0.0955, 3.3231),
    (0.1508, 3.4218),
    (0.2915, 3.5737),
    (0.4573, 3.7017),
    (0.8342, 4.0637),
    (0.9497, 4.1009),
    (1.0, 4.1932),
];
/// Layered oxide on hard carbon, measured terminal voltage at half its capacity per hour; it stands a little under the
/// open-circuit voltage, which is the cautious side. The ends are continued to the next measured slope.
const SODIUM: &[CurvePoint] = &[
    (0.0, 1.667),
    (0.02, 1.831),
    (0.05, 2.077),
    (0.1, 2.332),
    (0.2, 2.591),
    (0.3, 2.67),
    (0.4, 2.826),
    (0.5, 3.021),
    (0.6, 3.221),
    (0.7, 3.4),
    (0.8, 3.573),
    (0.9, 3.769),
    (0.95, 3.875),
    (0.99, 4.004),
    (1.0, 4.036),
];

/// How cold takes capacity away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ColdLaw {
    /// Lead-acid: the standard's table for discharges of hours, half a per cent a degree for slow ones.
    LeadAcid,
    /// Lithium and, for want of a measured curve, sodium: 100 % at 25 °C, 85 % at 0 °C, 68 % at -20 °C.
    Lithium,
}

/// Typical properties of a chemistry.
#[derive(Clone, Copy, Debug)]
pub struct Typical {
    /// Nominal voltage of a cell.
    pub cell: Volts,
    /// Open-circuit curve of a cell.
    pub curve: &'static [CurvePoint],
    /// Where the curve comes from.
    pub curve_source: Source,
    /// Resistance of a cell of 100 Ah \[mΩ\].
    pub cell_milliohm: f64,
    /// Hours in which capacity is usually rated.
    pub hour_rate: Hours,
    /// Exponent of the loss of capacity with current.
    pub rate_exponent: f64,
    /// Efficiency of charge.
    pub efficiency: ChargeEfficiency,
    /// Mean of that efficiency over a cycle, for budgets by hand (ratio).
    pub mean_efficiency: f64,
    /// Charge lost by standing in a month.
    pub self_discharge: Percent,
    /// Charge current over capacity in an hour.
    pub charge_rate: f64,
    /// Continuous discharge current over capacity in an hour, where a protection circuit limits it.
    pub discharge_rate: Option<f64>,
    /// Peak discharge current over the continuous one.
    pub peak_ratio: f64,
    /// Draw of the protection circuit of one battery.
    pub protection: Amps,
    /// Not to be charged below this.
    pub charge_above: Option<Celsius>,
    /// How cold acts.
    pub cold: ColdLaw,
    /// Voltage of a cell that chargers hold until the current has faded: the middle of what is usual, at 25 °C.
    pub cell_absorption: Volts,
    /// Current at which charging ends, of the capacity in an hour.
    pub tail: Percent,
    /// Lowest voltage of a cell at which loads are still fed.
    pub cell_low: Volts,
    /// Voltage of a cell while charging in bulk.
    pub cell_charging: Volts,
    /// Reserve that is usual for a long life.
    pub reserve: Percent,
}

const LEAD: Typical = Typical {
    cell: Volts(2.0),
    curve: FLOODED,
    curve_source: Source::RestVoltageTable,
    cell_milliohm: 1.0,
    hour_rate: Hours(20.0),
    rate_exponent: 1.2,
    efficiency: ChargeEfficiency::FallingNearFull(0.97),
    mean_efficiency: 0.85,
    self_discharge: Percent(8.0),
    charge_rate: 0.2,
    discharge_rate: None,
    peak_ratio: 1.0,
    protection: Amps(0.0),
    charge_above: None,
    cold: ColdLaw::LeadAcid,
    cell_absorption: Volts(14.6 / 6.0),
    tail: Percent(2.0),
    cell_low: Volts(11.0 / 6.0),
    cell_charging: Volts(13.5 / 6.0),
    reserve: Percent(50.0),
};

const LITHIUM: Typical = Typical {
    cell: Volts(3.2),
    curve: LIFEPO4,
    curve_source: Source::CellMeasurement,
    cell_milliohm: 0.5,
    hour_rate: Hours(5.0),
    rate_exponent: 1.02,
    efficiency: ChargeEfficiency::Flat(0.99),
    mean_efficiency: 0.99,
    self_discharge: Percent(2.0),
    charge_rate: 0.5,
    discharge_rate: Some(1.0),
    peak_ratio: 2.0,
    protection: Amps(0.02),
    charge_above: Some(Celsius(0.0)),
    cold: ColdLaw::Lithium,
    cell_absorption: Volts(14.2 / 4.0),
    tail: Percent(2.0),
    cell_low: Volts(11.2 / 4.0),
    cell_charging: Volts(13.6 / 4.0),
    reserve: Percent(20.0),
};

/// Typical properties of a chemistry.
#[must_use]
pub const fn typical(chemistry: Chemistry) -> Typical {
    match chemistry {
        Chemistry::FloodedLeadAcid => LEAD,
        Chemistry::Agm => Typical {
            curve: AGM,
            curve_source: Source::Typical,
            cell_milliohm: 0.6,
            rate_exponent: 1.1,
            mean_efficiency: 0.92,
            self_discharge: Percent(2.5),
            charge_rate: 0.3,
            cell_absorption: Volts(14.5 / 6.0),
            tail: Percent(1.0),
            ..LEAD
        },
        Chemistry::Gel => Typical {
            curve: GEL,
            cell_milliohm: 1.1,
            rate_exponent: 1.15,
            mean_efficiency: 0.92,
            self_discharge: Percent(2.5),
            cell_absorption: Volts(14.1 / 6.0),
            ..LEAD
        },
        Chemistry::Lifepo4 => LITHIUM,
        Chemistry::Nmc => Typical {
            cell: Volts(3.7),
            curve: NMC,
            cell_absorption: Volts(4.15),
            cell_low: Volts(3.0),
            cell_charging: Volts(4.0),
            ..LITHIUM
        },
        Chemistry::SodiumIon => Typical {
            cell: Volts(3.1),
            curve: SODIUM,
            cell_milliohm: 1.0,
            efficiency: ChargeEfficiency::Flat(0.97),
            mean_efficiency: 0.97,
            self_discharge: Percent(3.0),
            charge_above: Some(Celsius(-10.0)),
            cell_absorption: Volts(3.875),
            cell_low: Volts(1.8),
            cell_charging: Volts(3.6),
            reserve: Percent(10.0),
            ..LITHIUM
        },
    }
}
