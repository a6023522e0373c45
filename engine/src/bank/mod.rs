//! The bank: what it holds, at which voltage, and what goes in and out.
//!
//! **Question answered:** how much of the label may really be used, and what can the bank take and give at once?
//!
//! Method: cells and batteries in series and parallel make one battery of nominal voltage, rated charge and resistance. Voltage is
//! the open-circuit curve of the chemistry less or plus resistance times current. Charging stops short of full along an
//! exponential taper and loses charge by the chemistry's efficiency.
//!
//! Left out: recovery after heavy discharge, hysteresis, ageing by use, unequal batteries in parallel.

mod ageing;
mod capacity;
mod charging;
mod chemistry;
mod wells;

pub use ageing::{Ageing, Cycle, CycleLife, Span, Wear, cycle_life, life_factor, rainflow};
pub use capacity::{Capacity, capacity_at, cold_factor, exponent_from, standard_cold_factor};
pub use charging::ChargeEfficiency;
pub use chemistry::{ColdLaw, CurvePoint, Typical, typical};
pub use wells::{Fit, Held, Pace, Rating, Wells};

use crate::document::{Bank as Section, Chemistry, Field, Kept, Problem};
use crate::quantity::{AmpHours, Amps, Celsius, Hours, Ohms, Percent, Volts, WattHours};
use crate::working::{Source, Tag};

/// Hours of a mean month, for self-discharge.
const MONTH_HOURS: f64 = 730.0;
/// Charge that resistances of cells are stated for.
const RESISTANCE_AT: AmpHours = AmpHours(100.0);
/// Most cells in a row: beyond it no open-circuit curve holds together.
const MAX_CELLS: f64 = 2000.0;

/// A bank.
#[derive(Clone, Debug, PartialEq)]
pub struct Bank {
    /// The chemistry.
    pub chemistry: Chemistry,
    /// Its typical properties.
    pub typical: Typical,
    /// Cells in a row.
    pub cells: f64,
    /// Batteries in the whole bank.
    pub batteries: f64,
    /// Nominal voltage.
    pub nominal: Volts,
    /// Rated capacity of all strings.
    pub rated: AmpHours,
    /// Hours in which that is rated.
    pub hour_rate: Hours,
    /// Where these hours come from.
    pub hour_rate_source: Source,
    /// What age has left.
    pub health: Percent,
    /// State of charge not to be undercut.
    pub reserve: Percent,
    /// Exponent of the loss of capacity with current.
    pub exponent: f64,
    /// Where that exponent comes from.
    pub exponent_source: Source,
    /// How charge comes out again.
    pub efficiency: ChargeEfficiency,
    /// Mean efficiency for budgets by hand (ratio).
    pub mean_efficiency: f64,
    /// Where it comes from.
    pub efficiency_source: Source,
    /// Charge that an hour of standing takes, of the capacity.
    pub self_discharge_per_hour: f64,
    /// Draw of all protection circuits.
    pub protection: Amps,
    /// Where that draw comes from.
    pub protection_source: Source,
    /// Charge limit.
    pub charge_limit: Amps,
    /// Continuous discharge limit, if something sets one.
    pub discharge_limit: Option<Amps>,
    /// Peak discharge limit, if something sets one.
    pub peak_limit: Option<Amps>,
    /// Where it stands.
    pub kept: Kept,
}

impl PartialEq for Typical {
    fn eq(&self, other: &Self) -> bool {
        // One table a chemistry: the same curve means the same table.
        core::ptr::eq(self.curve, other.curve)
    }
}

/// Where the value of an option comes from: the plan if it states it, else what is typical.
fn stated(option: Option<f64>) -> Source {
    option.map_or(Source::Typical, |_| Source::Plan)
}

impl Bank {
    /// Reads its section.
    ///
    /// # Errors
    /// If so many cells would be in a row that no bank is built so.
    pub fn parse(section: &Section) -> Result<Self, Problem> {
        let typical = typical(section.chemistry);
        let cells_each = (section.battery_v / typical.cell.0).round().max(1.0);
        let cells = cells_each * section.in_series;
        if cells > MAX_CELLS {
            let field = Field::InSeries;
            return Err(Problem::OutOfRange { field, at: Tag::None, value: section.in_series });
        }
        let capacity = AmpHours(section.capacity_ah);
        let hour = Hours(1.0);
        let strings = section.in_parallel;
        let batteries = section.in_series * strings;
        let charge = section.charge_limit_a.map_or(capacity * typical.charge_rate / hour, Amps);
        let discharge = section
            .discharge_limit_a
            .map(Amps)
            .or(typical.discharge_rate.map(|rate| capacity * rate / hour));
        let peak = section
            .peak_limit_a
            .map(Amps)
            .or(discharge.map(|continuous| continuous * typical.peak_ratio));
        let own_efficiency = section.charge_efficiency_pct.map(|own| Percent(own).ratio());
        let own_protection = section.protection_ma.map(|draw| Amps(draw / 1000.0));
        let self_discharge = section.self_discharge_pct.map_or(typical.self_discharge, Percent);
        Ok(Self {
            chemistry: section.chemistry,
            typical,
            cells,
            batteries,
            nominal: Volts(section.battery_v * section.in_series),
            rated: capacity * strings,
            hour_rate: section.hour_rate_h.map_or(typical.hour_rate, Hours),
            health: Percent(section.health_pct),
            reserve: Percent(section.reserve_pct),
            hour_rate_source: stated(section.hour_rate_h),
            exponent: section.rate_exponent.unwrap_or(typical.rate_exponent),
            exponent_source: stated(section.rate_exponent),
            efficiency: own_efficiency
                .map_or(typical.efficiency, |own| typical.efficiency.capped(own)),
            mean_efficiency: own_efficiency.unwrap_or(typical.mean_efficiency),
            efficiency_source: stated(section.charge_efficiency_pct),
            self_discharge_per_hour: self_discharge.ratio() / MONTH_HOURS,
            protection: own_protection.unwrap_or(typical.protection) * strings,
            protection_source: stated(section.protection_ma),
            charge_limit: charge * strings,
            discharge_limit: discharge.map(|limit| limit * strings),
            peak_limit: peak.map(|limit| limit * strings),
            kept: section.kept,
        })
    }

    /// Temperature of the bank where the air outside and the least temperature inside are these.
    #[must_use]
    pub fn temperature(&self, outside: Celsius, inside_least: Celsius) -> Celsius {
        match self.kept {
            Kept::Outside => outside,
            Kept::Inside => outside.at_least(inside_least),
            Kept::AtC(own) => Celsius(own),
        }
    }

    /// Open-circuit voltage at a state of charge (ratio).
    #[inline]
    #[must_use]
    pub fn open_circuit(&self, charge: f64) -> Volts {
        let curve = self.typical.curve;
        let mut volts = curve.last().map_or(0.0, |point| point.1);
        for pair in curve.windows(2) {
            let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
            if charge <= x1 {
                volts = y0 + (y1 - y0) * (charge - x0) / (x1 - x0);
                break;
            }
        }
        Volts(volts * self.cells)
    }

    /// Energy stored below a state of charge (ratio): the open-circuit voltage summed over the charge.
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

    /// Resistance between the posts.
    #[must_use]
    pub fn resistance(&self) -> Ohms {
        Ohms(self.typical.cell_milliohm / 1000.0 * self.cells * (RESISTANCE_AT / self.rated))
    }

    /// Voltage while it is charged in bulk, at which a controller gives its current.
    #[must_use]
    pub fn charging_voltage(&self) -> Volts {
        self.typical.cell_charging * self.cells
    }

    /// Lowest voltage at which loads are still fed; currents are largest there.
    #[must_use]
    pub fn low_voltage(&self) -> Volts {
        self.typical.cell_low * self.cells
    }

    /// Largest charge current at a state of charge (ratio): the limit, and near full the taper.
    #[inline]
    #[must_use]
    pub fn acceptance(&self, charge: f64, full: AmpHours, temperature: Celsius) -> Amps {
        if self.typical.charge_above.is_some_and(|least| temperature < least) {
            return Amps::ZERO;
        }
        (full * (1.0 - charge) / self.typical.taper).at_most(self.charge_limit)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bank(section: Section) -> Bank {
        Bank::parse(&section).unwrap()
    }

    #[test]
    fn series_adds_volts_and_parallel_adds_charge() {
        let bank = bank(Section { in_series: 2.0, in_parallel: 3.0, ..Section::default() });
        assert_eq!((bank.nominal, bank.rated, bank.cells), (Volts(25.6), AmpHours(300.0), 8.0));
        assert_eq!(bank.discharge_limit, Some(Amps(300.0)));
        assert_eq!(bank.peak_limit, Some(Amps(600.0)));
        assert!((bank.protection.0 - 0.06).abs() < 1e-12);
    }

    #[test]
    fn cells_and_ready_batteries_give_the_same_bank() {
        let battery = bank(Section::default());
        let cells = bank(Section { battery_v: 3.2, in_series: 4.0, ..Section::default() });
        assert_eq!(battery.open_circuit(0.5), cells.open_circuit(0.5));
        assert_eq!(battery.nominal, cells.nominal);
    }

    #[test]
    fn stored_energy_is_the_area_under_the_curve() {
        for chemistry in Chemistry::ALL {
            let bank = bank(Section { chemistry: *chemistry, ..Section::default() });
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
    fn open_circuit_curves_rise() {
        for chemistry in Chemistry::ALL {
            let curve = typical(*chemistry).curve;
            assert!(curve.windows(2).all(|pair| pair[0].0 < pair[1].0 && pair[0].1 < pair[1].1));
            assert_eq!((curve[0].0, curve[curve.len() - 1].0), (0.0, 1.0));
        }
    }

    #[test]
    fn frozen_lithium_takes_no_charge() {
        let bank = bank(Section::default());
        assert_eq!(bank.acceptance(0.5, AmpHours(100.0), Celsius(-0.1)), Amps::ZERO);
        assert_eq!(bank.acceptance(0.5, AmpHours(100.0), Celsius(5.0)), Amps(50.0));
        let near = bank.acceptance(0.99, AmpHours(100.0), Celsius(5.0));
        assert!((near.0 - 5.0).abs() < 1e-9);
    }
}
