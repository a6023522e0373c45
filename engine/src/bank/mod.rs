//! The bank: what it holds, at which voltage, and what goes in and out.
//!
//! **Question answered:** how much of the label may really be used, and what can the bank take and give at once?
//!
//! Method: cells and batteries in series and parallel make one battery of nominal voltage, rated charge and resistance. Its charge
//! is counted; lead-acid holds it in two wells (`wells`). Voltage is the open-circuit curve of the chemistry less or plus
//! resistance times current (`voltage`, `lead_acid`). Charging ends at the absorption voltage and loses charge by the chemistry's
//! efficiency (`charging`). What use and time take away is in `ageing`.
//!
//! Left out: hysteresis, unequal batteries in parallel, capacity falling within a run.

mod ageing;
mod capacity;
mod charging;
mod chemistry;
mod freezing;
mod lead_acid;
mod ratings;
mod set_points;
mod voltage;
mod wells;

pub use ageing::{Ageing, Cycle, CycleLife, Span, Wear, cycle_life, life_factor, rainflow};
pub use capacity::{Capacity, capacity_at, cold_factor, exponent_from, standard_cold_factor};
pub use charging::ChargeEfficiency;
pub use chemistry::{ColdLaw, CurvePoint, Typical, typical};
pub use freezing::freezing_point;
pub use lead_acid::LeadAcid;
pub use ratings::{Quality, Ratings};
pub use set_points::SetPoints;
pub use wells::{Fit, Held, Pace, Rating, Wells};

use crate::document::{Bank as Section, Chemistry, Field, Kept, Problem};
use crate::quantity::{AmpHours, Amps, Celsius, Hours, Percent, Volts};
use crate::working::{Source, Tag};

/// Hours of a mean month, for self-discharge.
pub(crate) const MONTH_HOURS: f64 = 730.0;
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
    /// Strings side by side.
    pub strings: f64,
    /// Rated capacity of all strings, as the label says.
    pub rated: AmpHours,
    /// All rated capacities of one battery.
    pub ratings: Ratings,
    /// The slowest rated capacity, of all strings; mostly that of the label. No more is counted on.
    pub slowest: AmpHours,
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
    /// Whether the plan states it itself.
    own_exponent: bool,
    /// Its wells and its resistance to charge, if it is lead-acid.
    pub lead_acid: Option<LeadAcid>,
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
    /// Where charging and discharging end.
    pub set_points: SetPoints,
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
    /// If so many cells would be in a row that no bank is built so, or if what the sheet states cannot be of one battery.
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
        let ratings = Ratings::parse(section, typical.hour_rate)?;
        let set_points = SetPoints::parse(section, &typical, cells_each)?;
        let own_exponent = section.rate_exponent.or_else(|| ratings.exponent());
        let exponent = own_exponent.unwrap_or(typical.rate_exponent);
        let own_efficiency = section.charge_efficiency_pct.map(|own| Percent(own).ratio());
        let own_protection = section.protection_ma.map(|draw| Amps(draw / 1000.0));
        let self_discharge = section.self_discharge_pct.map_or(typical.self_discharge, Percent);
        Ok(Self {
            chemistry: section.chemistry,
            typical,
            cells,
            batteries,
            nominal: Volts(section.battery_v * section.in_series),
            strings,
            rated: capacity * strings,
            slowest: ratings.slowest.0 * strings,
            hour_rate: ratings.slowest.1,
            health: Percent(section.health_pct),
            reserve: Percent(section.reserve_pct),
            hour_rate_source: if ratings.all.len() > 1 {
                Source::Plan
            } else {
                stated(section.hour_rate_h)
            },
            exponent,
            exponent_source: stated(own_exponent),
            own_exponent: section.rate_exponent.is_some(),
            lead_acid: (typical.cold == ColdLaw::LeadAcid)
                .then(|| LeadAcid::rated(&ratings, exponent)),
            ratings,
            set_points,
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

    /// A voltage of one battery from that of a cell.
    #[must_use]
    pub fn of_one_battery(&self, cell: Volts) -> Volts {
        cell * (self.cells * self.strings / self.batteries)
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
    fn open_circuit_curves_rise() {
        for chemistry in Chemistry::ALL {
            let curve = typical(*chemistry).curve;
            assert!(curve.windows(2).all(|pair| pair[0].0 < pair[1].0 && pair[0].1 < pair[1].1));
            assert_eq!((curve[0].0, curve[curve.len() - 1].0), (0.0, 1.0));
        }
    }
}
