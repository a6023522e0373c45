//! What do you store?

use core::ops::Range;

use crate::signal::*;
use sunlarder_engine::bank::{Bank as Resolved, typical};
use sunlarder_engine::document::{Bank, Chemistry, Document, Field, Kept};
use sunlarder_engine::outlook::Question;
use sunlarder_engine::words::{Label as L, Term};

use super::field::{Figure, choice, fields, more, select};
use super::help::with_help;
use super::leaf::worked;
use super::question::question;
use crate::bind::{edit, part, said};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::when;
use crate::drawers::drawer;
use crate::store::{Opened, Store, WORDS, words};
use sunlarder_worker::leaf::Topic;

/// What explains the kinds of battery.
const CHEMISTRY: Topic = Topic::Term(Term::Chemistry);

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

/// Figures that a sheet may state; left empty, what is typical counts. They are told apart by their place in the list, so that
/// each part of a figure is one function for all of them.
macro_rules! options {
    ($($field:ident $part:ident $typical:expr $(, $more:ident $label:ident)?;)+) => {
        fn own(plan: &Document, at: usize) -> Option<f64> {
            [$(&plan.bank.$part),+].get(at).and_then(|own| **own)
        }

        fn put(plan: &mut Document, at: usize, value: Option<f64>) {
            if let Some(own) = [$(&mut plan.bank.$part),+].into_iter().nth(at) {
                *own = value;
            }
        }

        fn typically(solved: &Opened, at: usize) -> Option<f64> {
            let bank = &solved.system.bank;
            let typical: [fn(&Resolved) -> f64; _] = [$($typical),+];
            typical.get(at).map(|typical| typical(bank)).filter(|value| value.is_finite())
        }

        /// What the sheet says.
        const OPTIONS: [Figure; [$(Field::$field),+].len()] = [$(
            Figure::new(Field::$field, own, |plan, at, value| put(plan, at, Some(value)))
                .or_typical(|plan, at| put(plan, at, None), typically)
                $(.$more(L::$label))?,
        )+];
    };
}

/// Nothing is typical.
fn none(_: &Resolved) -> f64 {
    f64::NAN
}

options! {
    HourRate hour_rate_h |bank| bank.typical.hour_rate.0, hint HourRateHint;
    SecondCapacity second_capacity_ah none, hint SecondCapacityHint;
    SecondHours second_hours_h none;
    ThirdCapacity third_capacity_ah none;
    ThirdHours third_hours_h none;
    RateExponent rate_exponent |bank| bank.exponent;
    AbsorptionVoltage absorption_v |bank| bank.of_one_battery(bank.set_points.absorption).0, hint AbsorptionHint;
    TailCurrent tail_pct |bank| bank.set_points.tail.0, hint TailHint;
    LowCutOff low_cut_off_v |bank| bank.of_one_battery(bank.set_points.cut_off).0, hint CutOffHint;
    BatteryCurrent charge_limit_a none, label ChargeLimit;
    BatteryCurrent discharge_limit_a none, label DischargeLimit;
    BatteryCurrent peak_limit_a none, label PeakLimit;
    ProtectionDraw protection_ma |bank| bank.typical.protection.0 * 1000.0;
    ChargeEfficiency charge_efficiency_pct |bank| bank.mean_efficiency * 100.0;
    SelfDischarge self_discharge_pct |bank| bank.typical.self_discharge.0;
}

/// How many of them are ratings and set-points; the rest are limits and losses.
const SET_POINTS: usize = 9;

const HEALTH: [Figure; 1] = [Figure::new(
    Field::Health,
    |plan, _| Some(plan.bank.health_pct),
    |plan, _, value| plan.bank.health_pct = value,
)
.hint(L::HealthHint)];

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
    // Voltages to end at belong to the chemistry.
    (bank.absorption_v, bank.low_cut_off_v) = (None, None);
    bank.chemistry = chemistry;
}

/// The question with its answer and the bank's figures.
pub(crate) fn bank_section(store: Store) -> View {
    let answer = said(store, |solved| {
        let bank = &solved.system.bank;
        WORDS.bank(
            &words().charge(bank.rated, bank.nominal),
            bank.chemistry,
            &words().amount(bank.nominal),
        )
    });
    question(L::WhatDoYouStore, answer, false, move || {
        drawer(store, move |drawers| (drawers.bank)(store))
    })
}

pub(super) fn inside(store: Store) -> View {
    let chemistry = part(store, 0, |plan, _| {
        Chemistry::ALL.iter().position(|own| *own == plan.bank.chemistry).unwrap_or(0)
    });
    let set = edit(store, "chemistry", 0, |plan, _, at: usize| {
        if let Some(chemistry) = Chemistry::ALL.get(at) {
            change_chemistry(&mut plan.bank, *chemistry);
        }
    });
    let names = Chemistry::ALL.iter().map(|own| WORDS.chemistry(*own)).collect();
    let ratings = more(L::RatingsAndSetPoints, move || options(store, 0..SET_POINTS));
    let sheet = more(L::MoreOfTheBank, move || {
        group(vec![
            fields(store, 0, &HEALTH).view(),
            options(store, SET_POINTS..OPTIONS.len()),
            node("p").attr("class", "hint").child(said(store, limits)).view(),
        ])
    });
    group(vec![
        with_help(store, L::Chemistry, CHEMISTRY, select(L::Chemistry, names, chemistry, set)),
        fields(store, 0, &FIGURES).view(),
        kept_choice(store).view(),
        ratings.view(),
        sheet.view(),
        node("p").attr("class", "note").child(said(store, usable)).view(),
        worked(store, L::HowUsable, Question::Capacity),
    ])
}

/// Some of the figures that a sheet may state.
fn options(store: Store, places: Range<usize>) -> View {
    let boxes: Vec<View> = places.map(|at| OPTIONS[at].view(store, at)).collect();
    group(vec![
        node("p").attr("class", "hint").child(WORDS.label(L::SheetFirst)).view(),
        node("div").attr("class", "fields").child(boxes).view(),
    ])
}

/// What may be used, how sure its rated capacities are, and which voltages it comes to.
fn usable(solved: &Opened) -> String {
    let (bank, outlook) = (&solved.system.bank, &solved.opening);
    let usable = WORDS.usable(
        &words().charge(outlook.capacity.usable, bank.nominal),
        &words().charge(bank.slowest, bank.nominal),
        &words().whole_degrees(outlook.bank_temperature),
        outlook.month,
    );
    let fit = bank.fit_quality().map(|quality| words().fit(&quality)).unwrap_or_default();
    let voltages = words().voltages(&outlook.voltages(&solved.system));
    format!("{usable} {fit} {voltages}")
}

/// The limits of the whole bank, in a sentence.
fn limits(solved: &Opened) -> String {
    let bank = &solved.system.bank;
    let none = || "–".to_owned();
    WORDS.bank_limits(
        &words().amount(bank.charge_limit),
        &bank.discharge_limit.map_or_else(none, |own| words().amount(own)),
        &bank.peak_limit.map_or_else(none, |own| words().amount(own)),
        &words().rounded(bank.resistance().0 * 1000.0),
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
