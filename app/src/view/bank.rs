//! What do you store?

use leptos::prelude::*;
use sunlarder_engine::bank::typical;
use sunlarder_engine::document::{Bank, Chemistry, Field, Kept};
use sunlarder_engine::outlook::Question;
use sunlarder_engine::words::{Label as L, amount, rounded};

use super::field::{Figure, choice, fields, more, select};
use super::question::question;
use super::working::worked;
use crate::bind::{edit, part, said};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::when;
use crate::store::{Solved, Store, WORDS};
use sunlarder_engine::words::decimal;

/// What everyone knows of a bank.
const FIGURES: [Figure; 5] = [
    Figure::new(
        Field::BatteryCapacity,
        |plan, _| Some(plan.bank.capacity_ah),
        |plan, _, value| plan.bank.capacity_ah = value,
    )
    .hint(L::CapacityHint),
    Figure::new(
        Field::BatteryVoltage,
        |plan, _| Some(plan.bank.battery_v),
        |plan, _, value| plan.bank.battery_v = value,
    ),
    Figure::new(
        Field::InSeries,
        |plan, _| Some(plan.bank.in_series),
        |plan, _, value| plan.bank.in_series = value,
    ),
    Figure::new(
        Field::InParallel,
        |plan, _| Some(plan.bank.in_parallel),
        |plan, _, value| plan.bank.in_parallel = value,
    ),
    Figure::new(
        Field::Reserve,
        |plan, _| Some(plan.bank.reserve_pct),
        |plan, _, value| plan.bank.reserve_pct = value,
    )
    .hint(L::ReserveHint)
    .slider(0.0, 95.0, 5.0),
];

/// A figure that is typical of the chemistry unless the sheet says otherwise.
macro_rules! typical {
    ($field:ident, $part:ident, $typical:expr) => {
        Figure::new(
            Field::$field,
            |plan, _| plan.bank.$part,
            |plan, _, value| plan.bank.$part = Some(value),
        )
        .or_typical(|plan, _| plan.bank.$part = None, $typical)
    };
}

/// What the sheet says.
const SHEET: [Figure; 9] = [
    Figure::new(
        Field::Health,
        |plan, _| Some(plan.bank.health_pct),
        |plan, _, value| plan.bank.health_pct = value,
    )
    .hint(L::HealthHint),
    typical!(HourRate, hour_rate_h, |solved, _| Some(solved.system.bank.hour_rate.0))
        .hint(L::HourRateHint),
    typical!(RateExponent, rate_exponent, |solved, _| Some(solved.system.bank.exponent)),
    typical!(BatteryCurrent, charge_limit_a, |_, _| None).label(L::ChargeLimit),
    typical!(BatteryCurrent, discharge_limit_a, |_, _| None).label(L::DischargeLimit),
    typical!(BatteryCurrent, peak_limit_a, |_, _| None).label(L::PeakLimit),
    typical!(ProtectionDraw, protection_ma, |solved, _| Some(
        solved.system.bank.typical.protection.0 * 1000.0
    )),
    typical!(ChargeEfficiency, charge_efficiency_pct, |solved, _| Some(
        solved.system.bank.mean_efficiency * 100.0
    )),
    typical!(SelfDischarge, self_discharge_pct, |solved, _| Some(
        solved.system.bank.typical.self_discharge.0
    )),
];

const TEMPERATURE: [Figure; 1] = [Figure::new(
    Field::BatteryTemperature,
    |plan, _| Some(if let Kept::AtC(own) = plan.bank.kept { own } else { USUAL }),
    |plan, _, value| plan.bank.kept = Kept::AtC(value),
)];

/// A temperature to start from for a bank with a place of its own \[°C\].
const USUAL: f64 = 15.0;

/// Changes the chemistry, and with it what belongs to it: the nominal voltage of a ready battery and the usual reserve.
pub(crate) fn change_chemistry(bank: &mut Bank, chemistry: Chemistry) {
    let (old, new) = (typical(bank.chemistry), typical(chemistry));
    let cells = (bank.battery_v / old.cell.0).round().max(1.0);
    // A ready battery stays a battery of its class: 6 cells of lead, 4 of iron phosphate...
    let volts = cells * old.cell.0;
    let cells = if cells > 1.0 { (volts / new.cell.0).round().max(1.0) } else { 1.0 };
    bank.battery_v = Field::BatteryVoltage.range().rounded(cells * new.cell.0);
    if bank.reserve_pct == old.reserve.0 {
        bank.reserve_pct = new.reserve.0;
    }
    bank.chemistry = chemistry;
}

/// The question with its answer and the bank's figures.
pub(crate) fn bank_section(store: Store) -> View {
    let answer = said(store, |solved| {
        let bank = &solved.system.bank;
        WORDS.bank(&amount(bank.rated), bank.chemistry, &amount(bank.nominal))
    });
    question(L::WhatDoYouStore, answer, false, move || inside(store))
}

fn inside(store: Store) -> View {
    let chemistry = part(store, 0, |plan, _| {
        Chemistry::ALL.iter().position(|own| *own == plan.bank.chemistry).unwrap_or(0)
    });
    let set = edit(store, "chemistry", 0, |plan, _, at: usize| {
        if let Some(chemistry) = Chemistry::ALL.get(at) {
            change_chemistry(&mut plan.bank, *chemistry);
        }
    });
    let names = Chemistry::ALL.iter().map(|own| WORDS.chemistry(*own)).collect();
    let sheet = more(L::MoreOfTheBank, move || {
        group(vec![
            node("p").attr("class", "hint").child(WORDS.label(L::SheetFirst)).view(),
            fields(store, 0, &SHEET).view(),
            node("p").attr("class", "hint").child(said(store, limits)).view(),
        ])
    });
    group(vec![
        select(L::Chemistry, names, chemistry, set).view(),
        fields(store, 0, &FIGURES).view(),
        kept_choice(store).view(),
        sheet.view(),
        node("p").attr("class", "note").child(said(store, usable)).view(),
        worked(store, L::HowUsable, Question::Capacity),
    ])
}

/// What may be used, in a sentence.
fn usable(solved: &Solved) -> String {
    let outlook = &solved.outlook;
    WORDS.usable(
        &amount(outlook.capacity.usable),
        &amount(solved.system.bank.rated),
        &format!("{} °C", decimal(outlook.bank_temperature.0, 0)),
        outlook.month,
    )
}

/// The limits of the whole bank, in a sentence.
fn limits(solved: &Solved) -> String {
    let bank = &solved.system.bank;
    let none = || "–".to_owned();
    WORDS.bank_limits(
        &amount(bank.charge_limit),
        &bank.discharge_limit.map_or_else(none, amount),
        &bank.peak_limit.map_or_else(none, amount),
        &rounded(bank.resistance().0 * 1000.0),
    )
}

fn kept_choice(store: Store) -> View {
    let kind = part(store, 0, |plan, _| match plan.bank.kept {
        Kept::Inside => 0,
        Kept::Outside => 1,
        Kept::AtC(_) => 2,
    });
    let set = edit(store, "bank kept", 0, |plan, _, at: usize| {
        plan.bank.kept = match at {
            0 => Kept::Inside,
            1 => Kept::Outside,
            _ => Kept::AtC(USUAL),
        };
    });
    let own = Signal::derive(move || kind.get() == 2);
    group(vec![
        choice(L::BankStands, &[L::KeptInside, L::KeptOutside, L::KeptAt], kind, set).view(),
        when(own, move || fields(store, 0, &TEMPERATURE)).view(),
    ])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_change_of_chemistry_keeps_the_class_of_battery() {
        let mut bank = Bank { reserve_pct: 20.0, ..Bank::default() };
        change_chemistry(&mut bank, Chemistry::Agm);
        assert_eq!((bank.battery_v, bank.reserve_pct), (12.0, 50.0));
        change_chemistry(&mut bank, Chemistry::Lifepo4);
        assert_eq!((bank.battery_v, bank.reserve_pct), (12.8, 20.0));
        let mut own = Bank { reserve_pct: 33.0, ..Bank::default() };
        change_chemistry(&mut own, Chemistry::Gel);
        assert_eq!(own.reserve_pct, 33.0, "a reserve of one's own stays");
    }
}
