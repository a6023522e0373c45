//! Voltage between the posts: at rest, under load, and where charging and discharging end.
//!
//! **Question answered:** which voltage do loads and chargers see, how far does a surge pull it down, and what current is left at
//! the set-points?
//!
//! **Method.** Open-circuit voltage at the state of charge (lead-acid: at the level of the available well, so that what
//! went before counts) and a resistance. Charge ends at the absorption voltage, discharge at the low cut-off. Set-points are in
//! the middle of what is usual (cut-off: the lowest usual) for a plan without a maker's sheet, see `set_points`.
//!
//! **Left out:** hysteresis, cables (their loss is in the sources), the resistance of lithium and sodium rising in the cold,
//! for which no figure was found that could be cited.

use crate::quantity::{AmpHours, Amps, Celsius, Ohms, Volts, WattHours, Within};

use super::Bank;
use super::chemistry::CurvePoint;
use super::lead_acid::LeadAcid;

/// Charge that resistances of cells are stated for.
const RESISTANCE_AT: AmpHours = AmpHours(100.0);
/// Chargers of lead-acid follow the temperature by so much a cell and kelvin, from 25 °C.
const ABSORPTION_PER_K: Volts = Volts(-0.004);
/// Temperature of the set-points.
const STATED_AT: Celsius = Celsius(25.0);

/// Open-circuit voltage of a cell at a state of charge (ratio).
#[inline]
pub(super) fn open_circuit_of_cell(curve: &[CurvePoint], charge: f64) -> Volts {
    let mut volts = curve.last().map_or(0.0, |point| point.1);
    for pair in curve.windows(2) {
        let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
        if charge <= x1 {
            volts = y0 + (y1 - y0) * (charge - x0) / (x1 - x0);
            break;
        }
    }
    Volts(volts)
}

impl Bank {
    /// Open-circuit voltage at a state of charge (ratio).
    #[inline]
    #[must_use]
    pub fn open_circuit(&self, charge: f64) -> Volts {
        open_circuit_of_cell(self.typical.curve, charge) * self.cells
    }

    /// State of charge (ratio) at which the open-circuit voltage reaches this.
    #[must_use]
    pub fn charge_at(&self, open: Volts) -> f64 {
        let cell = open.0 / self.cells;
        let mut below = 0.0;
        for pair in self.typical.curve.windows(2) {
            let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
            if cell < y1 {
                return (x0 + (x1 - x0) * (cell - y0) / (y1 - y0)).within(below, x1);
            }
            below = x1;
        }
        1.0
    }

    /// Energy stored below a state of charge (ratio): the open-circuit voltage summed over the charge.
    #[inline]
    #[must_use]
    pub fn stored(&self, charge: f64, full: AmpHours) -> WattHours {
        let mut area = 0.0;
        for pair in self.typical.curve.windows(2) {
            let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
            if charge <= x0 {
                break;
            }
            let to = if charge < x1 { charge } else { x1 };
            let y_to = y0 + (y1 - y0) * (to - x0) / (x1 - x0);
            area += (to - x0) * (y0 + y_to) / 2.0;
        }
        Volts(area * self.cells) * full
    }

    /// Energy stored between two states of charge (ratio); negative downwards.
    ///
    /// Mostly both lie on one straight part of the curve, where the mean of their voltages is exact.
    #[inline]
    #[must_use]
    pub fn stored_between(&self, from: f64, to: f64, full: AmpHours) -> WattHours {
        for pair in self.typical.curve.windows(2) {
            let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
            if from <= x1 {
                if to >= x0 && to <= x1 {
                    let middle = (from + to) / 2.0;
                    let mean = y0 + (y1 - y0) * (middle - x0) / (x1 - x0);
                    return Volts(mean * self.cells) * (full * (to - from));
                }
                break;
            }
        }
        self.stored(to, full) - self.stored(from, full)
    }

    /// Resistance between the posts of a full bank at 25 °C.
    #[must_use]
    pub fn resistance(&self) -> Ohms {
        Ohms(self.typical.cell_milliohm / 1000.0 * self.cells * (RESISTANCE_AT / self.rated))
    }

    /// Resistance to discharge at a state of charge (ratio) and a temperature.
    #[must_use]
    pub fn resistance_at(&self, charge: f64, temperature: Celsius) -> Ohms {
        match self.lead_acid {
            None => self.resistance(),
            Some(_) => self.resistance() * LeadAcid::resistance_factor(charge, temperature),
        }
    }

    /// Voltage under a load after a rest, at a state of charge (ratio): how far a surge pulls it down. Not under zero.
    #[must_use]
    pub fn under_load(&self, charge: f64, current: Amps, temperature: Celsius) -> Volts {
        let sag = current * self.resistance_at(charge, temperature);
        (self.open_circuit(charge) - sag).at_least(Volts::ZERO)
    }

    /// The largest current after a rest that leaves the low cut-off voltage at a state of charge (ratio).
    #[must_use]
    pub fn most_before_cut_off(&self, charge: f64, temperature: Celsius) -> Amps {
        let room = self.open_circuit(charge) - self.low_voltage();
        (room / self.resistance_at(charge, temperature)).at_least(Amps::ZERO)
    }

    /// Voltage while it is charged in bulk, at which a controller gives its current.
    #[must_use]
    pub fn charging_voltage(&self) -> Volts {
        self.typical.cell_charging * self.cells
    }

    /// Voltage that chargers hold until the current has faded to its tail, at a temperature of the bank.
    #[inline]
    #[must_use]
    pub fn absorption_voltage(&self, temperature: Celsius) -> Volts {
        let cell = match self.lead_acid {
            None => self.set_points.absorption,
            Some(_) => self.set_points.absorption + ABSORPTION_PER_K * (temperature - STATED_AT).0,
        };
        cell * self.cells
    }

    /// Lowest voltage at which loads are still fed; currents are largest there.
    #[must_use]
    pub fn low_voltage(&self) -> Volts {
        self.set_points.cut_off * self.cells
    }

    /// State of charge (ratio) at which the bank at rest is down to its low cut-off: under it loads get nothing.
    #[must_use]
    pub fn charge_at_cut_off(&self) -> f64 {
        self.charge_at(self.low_voltage())
    }

    /// Charge current over which charging counts as not yet ended.
    #[must_use]
    pub fn tail_current(&self) -> Amps {
        Amps(self.rated.0 * self.set_points.tail.ratio())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{self, Chemistry};

    fn bank(chemistry: Chemistry, battery_v: f64) -> Bank {
        let section = document::Bank { chemistry, battery_v, ..document::Bank::default() };
        Bank::parse(&section).unwrap()
    }

    #[test]
    fn the_curve_reads_both_ways() {
        for chemistry in Chemistry::ALL {
            let bank = bank(*chemistry, 12.0);
            for charge in [0.01, 0.2, 0.5, 0.83, 0.99] {
                let back = bank.charge_at(bank.open_circuit(charge));
                assert!((back - charge).abs() < 1e-9, "{chemistry:?} {charge} {back}");
            }
            assert_eq!(bank.charge_at(Volts(1000.0)), 1.0);
            assert_eq!(bank.charge_at(Volts(0.0)), 0.0);
        }
    }

    #[test]
    fn stored_energy_is_the_area_under_the_curve() {
        for chemistry in Chemistry::ALL {
            let bank = bank(*chemistry, 12.8);
            let full = AmpHours(100.0);
            let (from, to) = (0.35, 0.85);
            let steps = 10_000;
            let width = (to - from) / f64::from(steps);
            let sum: f64 = (0..steps)
                .map(|i| bank.open_circuit(from + (f64::from(i) + 0.5) * width).0 * width * full.0)
                .sum();
            let closed = bank.stored(to, full).0 - bank.stored(from, full).0;
            assert!((sum - closed).abs() < 1e-4 * closed, "{chemistry:?}: {sum} {closed}");
        }
    }

    #[test]
    fn the_energy_between_is_the_difference_of_what_is_stored() {
        for chemistry in Chemistry::ALL {
            let bank = bank(*chemistry, 12.8);
            let full = AmpHours(100.0);
            for (from, to) in [(0.4, 0.41), (0.41, 0.4), (0.0, 1.0), (0.9, 0.05), (0.5, 0.5)] {
                let apart = bank.stored(to, full) - bank.stored(from, full);
                let between = bank.stored_between(from, to, full);
                assert!((apart - between).0.abs() < 1e-9, "{chemistry:?} {from} {to}");
            }
        }
    }

    #[test]
    fn a_surge_sags_a_cold_and_empty_lead_acid_bank_most() {
        let bank = bank(Chemistry::FloodedLeadAcid, 12.0);
        let surge = Amps(100.0);
        let warm = bank.under_load(1.0, surge, Celsius(25.0));
        assert!((warm.0 - (12.65 - 0.6)).abs() < 1e-9, "{warm:?}");
        assert!(bank.under_load(0.5, surge, Celsius(-10.0)) < warm);
        let most = bank.most_before_cut_off(0.5, Celsius(-10.0));
        let left = bank.under_load(0.5, most, Celsius(-10.0));
        assert!((left - bank.low_voltage()).0.abs() < 1e-9);
    }

    #[test]
    fn only_lead_acid_is_charged_by_temperature() {
        let lead = bank(Chemistry::Agm, 12.0);
        assert!((lead.absorption_voltage(Celsius(15.0)) - Volts(14.5 + 0.24)).0.abs() < 1e-9);
        let lithium = bank(Chemistry::Lifepo4, 12.8);
        assert!((lithium.absorption_voltage(Celsius(5.0)) - Volts(14.2)).0.abs() < 1e-9);
    }
}
