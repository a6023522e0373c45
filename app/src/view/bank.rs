//! What do you store?

use leptos::prelude::*;
use sunlarder_engine::bank::typical;
use sunlarder_engine::document::{Bank, Chemistry, Document, Field, Kept};
use sunlarder_engine::words::{Label as L, amount, rounded};

use super::field::{Choice, NumberField, Select, plain};
use super::question::Question;
use super::working::Worked;
use crate::bind::{edit, figure, part};
use crate::store::{Store, WORDS};

fn own(
    store: Store,
    get: fn(&Bank) -> f64,
    set: fn(&mut Bank, f64),
) -> (Signal<Option<f64>>, Callback<Option<f64>>) {
    figure(
        store,
        "bank",
        move |plan| get(&plan.bank),
        move |plan, value| set(&mut plan.bank, value),
    )
}

fn option(
    store: Store,
    get: fn(&Bank) -> Option<f64>,
    set: fn(&mut Bank, Option<f64>),
) -> (Signal<Option<f64>>, Callback<Option<f64>>) {
    let value = part(store, move |plan| get(&plan.bank));
    let set = edit(store, "bank", move |plan: &mut Document, value| set(&mut plan.bank, value));
    (value, set)
}

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
#[component]
pub(crate) fn BankSection() -> impl IntoView {
    let store = Store::get();
    let answer = move || {
        store.answers.with(|answers| {
            answers.solved().map(|solved| {
                let bank = &solved.system.bank;
                WORDS.bank(&amount(bank.rated), bank.chemistry, &amount(bank.nominal))
            })
        })
    };
    let chemistry = part(store, |plan| plan.bank.chemistry);
    let chemistries =
        Chemistry::ALL.iter().map(|own| (*own, WORDS.chemistry(*own).to_owned())).collect();
    let volts = own(store, |bank| bank.battery_v, |bank, value| bank.battery_v = value);
    let charge = own(store, |bank| bank.capacity_ah, |bank, value| bank.capacity_ah = value);
    let series = own(store, |bank| bank.in_series, |bank, value| bank.in_series = value);
    let parallel = own(store, |bank| bank.in_parallel, |bank, value| bank.in_parallel = value);
    let reserve = own(store, |bank| bank.reserve_pct, |bank, value| bank.reserve_pct = value);
    view! {
        <Question title=L::WhatDoYouStore answer=move || answer().unwrap_or_default()>
            <Select
                label=WORDS.label(L::Chemistry)
                options=chemistries
                value=chemistry
                set=edit(store, "chemistry", |plan, chemistry| change_chemistry(&mut plan.bank, chemistry))
            />
            <div class="fields">
                <NumberField field=Field::BatteryCapacity value=charge.0 set=charge.1 hint=WORDS.label(L::CapacityHint) />
                <NumberField field=Field::BatteryVoltage value=volts.0 set=volts.1 />
                <NumberField field=Field::InSeries value=series.0 set=series.1 />
                <NumberField field=Field::InParallel value=parallel.0 set=parallel.1 />
                <NumberField field=Field::Reserve value=reserve.0 set=reserve.1 slider=(0.0, 95.0, 5.0) hint=WORDS.label(L::ReserveHint) />
            </div>
            <KeptChoice />
            <details class="more">
                <summary>{WORDS.label(L::MoreOfTheBank)}</summary>
                <More />
            </details>
            <p class="note">{usable}</p>
            <Worked title=L::HowUsable work=|solved, working| {
                solved.outlook.capacity_worked(&solved.system, working);
            } />
        </Question>
    }
}

/// What may be used, in a sentence.
fn usable() -> impl IntoView {
    let store = Store::get();
    move || {
        store.answers.with(|answers| {
            answers.solved().map(|solved| {
                let outlook = &solved.outlook;
                WORDS.usable(
                    &amount(outlook.capacity.usable),
                    &amount(solved.system.bank.rated),
                    &format!("{:.0} °C", outlook.bank_temperature.0),
                    outlook.month,
                )
            })
        })
    }
}

/// The kinds of place for a bank.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Where {
    Inside,
    Outside,
    Own,
}

#[component]
fn KeptChoice() -> impl IntoView {
    let store = Store::get();
    let kind = part(store, |plan| match plan.bank.kept {
        Kept::Inside => Where::Inside,
        Kept::Outside => Where::Outside,
        Kept::AtC(_) => Where::Own,
    });
    let set = edit(store, "bank kept", |plan: &mut Document, kind| {
        plan.bank.kept = match kind {
            Where::Inside => Kept::Inside,
            Where::Outside => Kept::Outside,
            Where::Own => Kept::AtC(15.0),
        };
    });
    let temperature = figure(
        store,
        "bank kept",
        |plan| if let Kept::AtC(own) = plan.bank.kept { own } else { 15.0 },
        |plan, value| plan.bank.kept = Kept::AtC(value),
    );
    let options = vec![
        (Where::Inside, WORDS.label(L::KeptInside).to_owned()),
        (Where::Outside, WORDS.label(L::KeptOutside).to_owned()),
        (Where::Own, WORDS.label(L::KeptAt).to_owned()),
    ];
    view! {
        <Choice legend=WORDS.label(L::BankStands) options=options value=kind set=set />
        {move || (kind.get() == Where::Own).then(|| view! {
            <NumberField field=Field::BatteryTemperature value=temperature.0 set=temperature.1 />
        })}
    }
}

/// A typical figure as the placeholder of an empty box.
fn placeholder(
    store: Store,
    of: fn(&sunlarder_engine::bank::Bank) -> Option<f64>,
) -> Signal<String> {
    Signal::derive(move || {
        store.answers.with(|answers| {
            let known = answers.solved().and_then(|solved| of(&solved.system.bank));
            known.map(|value| plain((value * 1000.0).round() / 1000.0)).unwrap_or_default()
        })
    })
}

#[component]
fn More() -> impl IntoView {
    let store = Store::get();
    let health = own(store, |bank| bank.health_pct, |bank, value| bank.health_pct = value);
    let rate = option(store, |bank| bank.hour_rate_h, |bank, value| bank.hour_rate_h = value);
    let exponent =
        option(store, |bank| bank.rate_exponent, |bank, value| bank.rate_exponent = value);
    let charge =
        option(store, |bank| bank.charge_limit_a, |bank, value| bank.charge_limit_a = value);
    let discharge =
        option(store, |bank| bank.discharge_limit_a, |bank, value| bank.discharge_limit_a = value);
    let peak = option(store, |bank| bank.peak_limit_a, |bank, value| bank.peak_limit_a = value);
    let protection =
        option(store, |bank| bank.protection_ma, |bank, value| bank.protection_ma = value);
    let efficiency = option(
        store,
        |bank| bank.charge_efficiency_pct,
        |bank, value| bank.charge_efficiency_pct = value,
    );
    let standing = option(
        store,
        |bank| bank.self_discharge_pct,
        |bank, value| bank.self_discharge_pct = value,
    );
    view! {
        <p class="hint">{WORDS.label(L::SheetFirst)}</p>
        <div class="fields">
            <NumberField field=Field::Health value=health.0 set=health.1 hint=WORDS.label(L::HealthHint) />
            <NumberField field=Field::HourRate value=rate.0 set=rate.1 optional=true typical=placeholder(store, |bank| Some(bank.hour_rate.0)) hint=WORDS.label(L::HourRateHint) />
            <NumberField field=Field::RateExponent value=exponent.0 set=exponent.1 optional=true typical=placeholder(store, |bank| Some(bank.exponent)) />
            <NumberField label=WORDS.label(L::ChargeLimit) field=Field::BatteryCurrent value=charge.0 set=charge.1 optional=true />
            <NumberField label=WORDS.label(L::DischargeLimit) field=Field::BatteryCurrent value=discharge.0 set=discharge.1 optional=true />
            <NumberField label=WORDS.label(L::PeakLimit) field=Field::BatteryCurrent value=peak.0 set=peak.1 optional=true />
            <NumberField field=Field::ProtectionDraw unit="mA" value=protection.0 set=protection.1 optional=true />
            <NumberField field=Field::ChargeEfficiency value=efficiency.0 set=efficiency.1 optional=true
                typical=placeholder(store, |bank| Some(bank.mean_efficiency * 100.0)) />
            <NumberField field=Field::SelfDischarge value=standing.0 set=standing.1 optional=true
                typical=placeholder(store, |bank| Some(bank.typical.self_discharge.0)) />
        </div>
        <p class="hint">{move || store.answers.with(|answers| answers.solved().map(|solved| {
            let bank = &solved.system.bank;
            let none = || "–".to_owned();
            WORDS.bank_limits(
                &amount(bank.charge_limit),
                &bank.discharge_limit.map_or_else(none, amount),
                &bank.peak_limit.map_or_else(none, amount),
                &rounded(bank.resistance().0 * 1000.0),
            )
        }))}</p>
    }
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
