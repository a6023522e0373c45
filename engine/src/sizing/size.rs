//! A size of bank and array, over those of the plan.
//!
//! **Method.** A bank of twice the size is two of the same side by side: twice the charge, the limits and the protection's draw, half the
//! resistance. An array of twice the size has twice the strings and twice the controller. Loads, and what controllers take for
//! themselves, stay.

use crate::document::{Array, Chemistry, Document, Field};
use crate::quantity::{AmpHours, Watts};
use crate::source::Array as Resolved;
use crate::system::System;

/// A size of bank and array, over those of a plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Size {
    /// Of the bank (ratio).
    pub bank: f64,
    /// Of all arrays (ratio).
    pub array: f64,
}

impl Size {
    /// As the plan is.
    pub const OWN: Self = Self { bank: 1.0, array: 1.0 };

    /// A system of this size.
    #[must_use]
    pub fn of(&self, system: &System) -> System {
        let mut sized = system.clone();
        let bank = &mut sized.bank;
        bank.strings *= self.bank;
        bank.batteries *= self.bank;
        bank.rated = bank.rated * self.bank;
        bank.slowest = bank.slowest * self.bank;
        bank.protection = bank.protection * self.bank;
        bank.charge_limit = bank.charge_limit * self.bank;
        bank.discharge_limit = bank.discharge_limit.map(|limit| limit * self.bank);
        bank.peak_limit = bank.peak_limit.map(|limit| limit * self.bank);
        for array in &mut sized.arrays {
            array.parallel *= self.array;
            array.limit = array.limit * self.array;
        }
        sized
    }

    /// The bank's rated charge.
    #[must_use]
    pub fn charge(&self, system: &System) -> AmpHours {
        system.bank.rated * self.bank
    }

    /// The power of all arrays.
    #[must_use]
    pub fn power(&self, system: &System) -> Watts {
        system.arrays.iter().map(Resolved::rated).sum::<Watts>() * self.array
    }

    /// The plan with a bank and arrays of this size: more or fewer of its batteries where that makes whole ones, else batteries of another
    /// charge; and as many strings of modules of another power as come nearest from above, or of the same where that makes whole
    /// ones. What its sheet states of one battery or module goes along.
    #[must_use]
    pub fn adopted(&self, plan: &Document) -> Document {
        let mut plan = plan.clone();
        for array in &mut plan.arrays {
            self.adopt(array);
        }
        let bank = &mut plan.bank;
        let strings = bank.in_parallel * self.bank;
        if is_whole(strings) && Field::InParallel.range().holds(strings.round()) {
            bank.in_parallel = strings.round();
            return plan;
        }
        let scaled = |own: &mut Option<f64>, field: Field| {
            if let Some(own) = own.as_mut() {
                *own = field.range().rounded(*own * self.bank);
            }
        };
        scaled(&mut bank.charge_limit_a, Field::BatteryCurrent);
        scaled(&mut bank.discharge_limit_a, Field::BatteryCurrent);
        scaled(&mut bank.peak_limit_a, Field::BatteryCurrent);
        scaled(&mut bank.second_capacity_ah, Field::SecondCapacity);
        scaled(&mut bank.third_capacity_ah, Field::ThirdCapacity);
        let protected =
            !matches!(bank.chemistry, Chemistry::FloodedLeadAcid | Chemistry::Agm | Chemistry::Gel);
        if bank.protection_ma.is_some() || protected {
            let typical = crate::bank::typical(bank.chemistry).protection.0 * 1000.0;
            let own = bank.protection_ma.unwrap_or(typical);
            bank.protection_ma = Some(Field::ProtectionDraw.range().rounded(own * self.bank));
        }
        bank.capacity_ah = raised(Field::BatteryCapacity, bank.capacity_ah * self.bank);
        plan
    }

    fn adopt(&self, array: &mut Array) {
        let before = Resolved::parse(array, 0).module;
        let strings = array.in_parallel * self.array;
        array.in_parallel =
            libm::ceil(strings - SLIVER).max(1.0).min(Field::InParallel.range().max);
        let part = strings / array.in_parallel;
        array.module_w = raised(Field::ModulePower, array.module_w * part);
        if let Some(short) = array.short_circuit_a.as_mut() {
            *short = Field::ModuleCurrent.range().rounded(*short * part);
        }
        let limit = array.controller.limit_a * self.array;
        array.controller.limit_a = raised(Field::ChargerCurrent, limit);
        // A module of another class would have another typical voltage.
        if Resolved::parse(array, 0).module.best != before.best {
            array.best_point_v = Some(Field::ModuleVoltage.range().rounded(before.best.0));
        }
    }
}

/// So little of a string, or of a step of a field, is none.
const SLIVER: f64 = 1e-6;

/// Whether so many strings are whole ones.
fn is_whole(strings: f64) -> bool {
    (strings - strings.round()).abs() < SLIVER
}

/// A value at the next step of its field, so that what keeps a promise does so as it is written.
fn raised(field: Field, value: f64) -> f64 {
    let range = field.range();
    range.value(libm::ceil(value * range.per_unit - SLIVER) as i64).min(range.max)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Bank;
    use crate::place::Climate;

    #[test]
    fn the_adopted_plan_is_the_sized_system() {
        let plan = Document {
            bank: Bank { capacity_ah: 200.0, in_parallel: 2.0, ..Bank::default() },
            arrays: vec![Array { module_w: 200.0, in_parallel: 2.0, ..Array::default() }],
            ..Document::default()
        };
        let assemble =
            |plan: &Document| System::assemble(plan, Climate::embedded(), &mut ()).unwrap();
        let size = Size { bank: 1.5, array: 1.75 };
        let sized = size.of(&assemble(&plan));
        let adopted = assemble(&size.adopted(&plan));
        assert_eq!(adopted.arrays[0].parallel, 4.0);
        assert_eq!(size.adopted(&plan).arrays[0].best_point_v, None);
        assert!((adopted.arrays[0].rated() - sized.arrays[0].rated()).0.abs() < 1e-9);
        assert!((adopted.arrays[0].limit - sized.arrays[0].limit).0.abs() < 0.06);
        assert_eq!(adopted.arrays[0].module.best, sized.arrays[0].module.best);
        assert_eq!(adopted.bank.rated, sized.bank.rated);
        assert_eq!(adopted.bank.charge_limit, sized.bank.charge_limit);
        assert_eq!(adopted.bank.discharge_limit, sized.bank.discharge_limit);
        assert!((adopted.bank.protection - sized.bank.protection).0.abs() < 1e-9);
        let apart = adopted.bank.resistance().0 / sized.bank.resistance().0;
        assert!((apart - 1.0).abs() < 1e-12);
        assert_eq!(size.charge(&assemble(&plan)), sized.bank.rated);
    }
}
