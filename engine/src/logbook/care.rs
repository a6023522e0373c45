//! Winter lay-up and upkeep, by chemistry, as messages.
//!
//! Times follow from the chemistry's self-discharge: a bank is topped up before it has lost a fifth. Everything else is what makers' sheets
//! of the chemistry have in common; the sheet at hand comes first.

use crate::bank::{Bank, freezing_point};
use crate::document::Chemistry;
use crate::quantity::{Celsius, Percent, Volts};

/// Something to do, or not to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Care {
    /// The maker's sheet comes before all of this.
    SheetFirst,
    /// Gloves, goggles, no spark, no metal on the wrists.
    Protect,
    /// Lay it up full.
    LayUpFull,
    /// Lay it up about half full.
    LayUpHalf {
        /// From here...
        least: Percent,
        /// ...to here.
        most: Percent,
    },
    /// Take loads and chargers off, the gauge last.
    Disconnect,
    /// Charge it up again after so many weeks.
    TopUp {
        /// Weeks.
        weeks: u32,
    },
    /// Keep it from freezing: half empty it freezes at this temperature.
    MayFreeze {
        /// Half full.
        half: Celsius,
    },
    /// Do not charge it under a temperature, not even a little.
    NoChargeBelow {
        /// The temperature.
        least: Celsius,
    },
    /// Read its voltage each month; under this it must be charged.
    ReadVoltage {
        /// At rest.
        least: Volts,
    },
    /// Truly full at least every second week.
    FillOften,
    /// Look after the water, and fill it only when full.
    Water,
    /// Equalise only by the sheet, watched and aired.
    Equalise,
    /// Never equalise.
    NeverEqualise,
    /// Air it: it gives off gas that explodes.
    Ventilate,
    /// Let it stand at absorption now and then, so that the cells come level.
    Balance,
    /// Do not keep it full for weeks.
    NotAlwaysFull,
    /// Never go round the protection circuit.
    KeepProtection,
    /// Look at lugs and cables; tighten by the maker's figures.
    Terminals,
    /// Count a discharge once a year.
    CountOnceAYear,
    /// Set the gauge to full only when the bank is.
    GaugeAtFull,
}

/// Share of the charge that may be lost before it is charged again.
const LOST: f64 = 0.2;
/// Weeks of a month.
const WEEKS: f64 = 4.35;
/// Charge of the lowest voltage at which it may be left to rest (ratio).
const LEAST_AT_REST: f64 = 0.75;
const LEAST_OF_LITHIUM: f64 = 0.2;

fn weeks(bank: &Bank) -> u32 {
    let a_month = f64::max(bank.self_discharge_per_hour * 730.0, 0.005);
    // Never beyond half a year, whatever the sheet says of self-discharge.
    f64::min(LOST / a_month * WEEKS, 26.0) as u32
}

/// What to do when a bank is laid up for the winter.
#[must_use]
pub fn lay_up(bank: &Bank) -> Vec<Care> {
    let lead = bank.lead_acid.is_some();
    let first = if lead {
        Care::LayUpFull
    } else {
        Care::LayUpHalf { least: Percent(40.0), most: Percent(60.0) }
    };
    let mut all =
        vec![Care::SheetFirst, first, Care::Disconnect, Care::TopUp { weeks: weeks(bank) }];
    if lead {
        all.push(Care::MayFreeze { half: freezing_point(Percent(50.0)) });
    }
    all.extend(bank.typical.charge_above.map(|least| Care::NoChargeBelow { least }));
    let rest = if lead { LEAST_AT_REST } else { LEAST_OF_LITHIUM };
    all.extend([Care::ReadVoltage { least: bank.open_circuit(rest) }, Care::GaugeAtFull]);
    all
}

/// What keeps a bank well.
#[must_use]
pub fn upkeep(bank: &Bank) -> Vec<Care> {
    let mut all = vec![Care::SheetFirst, Care::Protect];
    match bank.chemistry {
        Chemistry::FloodedLeadAcid => {
            all.extend([Care::FillOften, Care::Water, Care::Equalise, Care::Ventilate]);
        }
        Chemistry::Agm | Chemistry::Gel => all.extend([Care::FillOften, Care::NeverEqualise]),
        Chemistry::Lifepo4 => {
            all.extend([Care::Balance, Care::NotAlwaysFull, Care::KeepProtection]);
        }
        Chemistry::Nmc | Chemistry::SodiumIon => {
            all.extend([Care::NotAlwaysFull, Care::KeepProtection]);
        }
    }
    all.extend(bank.typical.charge_above.map(|least| Care::NoChargeBelow { least }));
    all.extend([Care::Terminals, Care::CountOnceAYear]);
    all
}
