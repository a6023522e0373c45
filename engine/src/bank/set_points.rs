//! Voltages and current at which charging and discharging end.
//!
//! **Question answered:** where do chargers hold, when have they done, and when do loads go off?
//!
//! A sheet's own figures, of one battery at 25 °C, go before those typical of the chemistry. They must suit the chemistry: an absorption
//! voltage at which not even half the charge goes in, or a cut-off over what a half full bank has at rest, is a slip of the pen or
//! belongs to another battery.

use crate::document::{Bank as Section, Field, Problem};
use crate::quantity::{Percent, Volts};

use super::chemistry::Typical;
use super::voltage::open_circuit_of_cell;

/// State of charge between the ranges of the two voltages (ratio).
const HALF: f64 = 0.5;
/// The highest absorption voltage over the typical one: supervised equalising of flooded lead-acid is under it.
const HIGHEST: f64 = 1.1;
/// The lowest cut-off over the typical one.
const LOWEST: f64 = 0.5;

/// Set-points of a cell at 25 °C.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetPoints {
    /// Voltage that chargers hold until the current has faded.
    pub absorption: Volts,
    /// Current at which charging ends, of the rated capacity in an hour.
    pub tail: Percent,
    /// Voltage at which loads go off.
    pub cut_off: Volts,
}

impl SetPoints {
    /// Reads them of a section whose batteries have so many cells each.
    ///
    /// # Errors
    /// If a voltage does not suit the chemistry and the number of cells.
    pub(super) fn parse(section: &Section, typical: &Typical, cells: f64) -> Result<Self, Problem> {
        let half = open_circuit_of_cell(typical.curve, HALF);
        let most = typical.cell_absorption * HIGHEST;
        let least = typical.cell_low * LOWEST;
        let (upper, lower) = (section.absorption_v, section.low_cut_off_v);
        let upper = own(Field::AbsorptionVoltage, upper, cells, (half, most))?;
        let lower = own(Field::LowCutOff, lower, cells, (least, half))?;
        Ok(Self {
            absorption: upper.unwrap_or(typical.cell_absorption),
            tail: section.tail_pct.map_or(typical.tail, Percent),
            cut_off: lower.unwrap_or(typical.cell_low),
        })
    }
}

/// A cell's part of a voltage that is stated of a battery, if it lies in the range of a cell.
fn own(
    field: Field,
    stated: Option<f64>,
    cells: f64,
    (least, most): (Volts, Volts),
) -> Result<Option<Volts>, Problem> {
    let Some(value) = stated.map(Volts) else { return Ok(None) };
    let (least, most) = (least * cells, most * cells);
    if value < least || value > most {
        return Err(Problem::SetPoint { field, value, least, most });
    }
    Ok(Some(Volts(value.0 / cells)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bank::Bank;
    use crate::document::Chemistry;
    use crate::quantity::{Amps, Celsius};

    fn parse(section: &Section) -> Result<Bank, Problem> {
        Bank::parse(&Section { in_series: 2.0, in_parallel: 3.0, ..section.clone() })
    }

    #[test]
    fn the_sheet_goes_before_what_is_typical() {
        let section = Section {
            absorption_v: Some(13.8),
            tail_pct: Some(5.0),
            low_cut_off_v: Some(12.0),
            ..Section::default()
        };
        let bank = parse(&section).unwrap();
        assert!((bank.absorption_voltage(Celsius(0.0)).0 - 27.6).abs() < 1e-9);
        assert!((bank.low_voltage().0 - 24.0).abs() < 1e-9);
        assert_eq!(bank.tail_current(), Amps(15.0));
        let typical = parse(&Section::default()).unwrap();
        assert!(typical.low_voltage() < bank.low_voltage());
    }

    #[test]
    fn voltages_of_another_battery_are_refused_with_their_range() {
        for chemistry in Chemistry::ALL {
            let section = Section { chemistry: *chemistry, battery_v: 12.0, ..Section::default() };
            for field in [Field::AbsorptionVoltage, Field::LowCutOff] {
                let put = |volts: f64| match field {
                    Field::AbsorptionVoltage => {
                        Section { absorption_v: Some(volts), ..section.clone() }
                    }
                    _ => Section { low_cut_off_v: Some(volts), ..section.clone() },
                };
                for wrong in [3.0, 28.8] {
                    let Err(Problem::SetPoint { field: told, least, most, .. }) =
                        parse(&put(wrong))
                    else {
                        panic!("{chemistry:?} takes {wrong} V");
                    };
                    assert!(told == field && least.0 < most.0);
                    let middle = f64::midpoint(least.0, most.0);
                    assert!(parse(&put(middle)).is_ok(), "{chemistry:?} {middle}");
                }
            }
        }
    }

    #[test]
    fn the_usual_set_points_of_the_trade_are_taken() {
        let usual = [
            (Chemistry::FloodedLeadAcid, [(12.0, 14.4, 11.0), (12.0, 15.8, 11.8)]),
            (Chemistry::Agm, [(12.0, 14.3, 11.0), (12.0, 14.7, 11.8)]),
            (Chemistry::Gel, [(12.0, 14.0, 11.0), (12.0, 14.2, 11.8)]),
            (Chemistry::Lifepo4, [(12.8, 14.0, 11.2), (3.2, 3.65, 3.0)]),
            (Chemistry::Nmc, [(3.7, 4.1, 3.0), (3.7, 4.2, 3.3)]),
            (Chemistry::SodiumIon, [(3.1, 3.8, 1.5), (3.1, 3.95, 2.2)]),
        ];
        for (chemistry, pairs) in usual {
            for (battery_v, absorption, cut_off) in pairs {
                let section = Section {
                    chemistry,
                    battery_v,
                    absorption_v: Some(absorption),
                    low_cut_off_v: Some(cut_off),
                    ..Section::default()
                };
                assert!(parse(&section).is_ok(), "{section:?}");
            }
        }
    }
}
