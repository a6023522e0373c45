//! The inverter, within "What do you run?".

use leptos::prelude::*;
use sunlarder_engine::document::{Awake, Document, Field, Inverter};
use sunlarder_engine::words::Label as L;

use super::field::{Choice, NumberField, Toggle};
use crate::bind::{edit, part};
use crate::store::{Store, WORDS};

/// An optional figure of the inverter.
fn option(
    store: Store,
    get: fn(&Inverter) -> Option<f64>,
    set: fn(&mut Inverter, Option<f64>),
) -> (Signal<Option<f64>>, Callback<Option<f64>>) {
    let value = part(store, move |plan: &Document| plan.inverter.as_ref().and_then(get));
    let set = edit(store, "inverter", move |plan: &mut Document, value| {
        if let Some(inverter) = &mut plan.inverter {
            set(inverter, value);
        }
    });
    (value, set)
}

/// Whether there is one, and its figures.
#[component]
pub(crate) fn InverterEditor() -> impl IntoView {
    let store = Store::get();
    let there = part(store, |plan| plan.inverter.is_some());
    let set_there = edit(store, "inverter on", |plan: &mut Document, there: bool| {
        plan.inverter = there.then(Inverter::default);
    });
    view! {
        <div class="part">
            <Toggle label=WORDS.label(L::ThereIsAnInverter) value=there set=set_there />
            {move || there.get().then(|| view! { <Figures /> })}
        </div>
    }
}

#[component]
fn Figures() -> impl IntoView {
    let store = Store::get();
    let rated = option(
        store,
        |own| Some(own.rated_w),
        |own, value| {
            if let Some(value) = value {
                own.rated_w = value;
            }
        },
    );
    let surge = option(store, |own| own.surge_w, |own, value| own.surge_w = value);
    let idle = option(store, |own| own.idle_w, |own, value| own.idle_w = value);
    let half =
        option(store, |own| own.efficiency_half_pct, |own, value| own.efficiency_half_pct = value);
    let full =
        option(store, |own| own.efficiency_full_pct, |own, value| own.efficiency_full_pct = value);
    let awake =
        part(store, |plan| plan.inverter.as_ref().map_or(Awake::WithLoads, |own| own.awake));
    let set_awake = edit(store, "inverter awake", |plan: &mut Document, awake| {
        if let Some(inverter) = &mut plan.inverter {
            inverter.awake = awake;
        }
    });
    let typical = |of: fn(&sunlarder_engine::load::Inverter) -> String| {
        Signal::derive(move || {
            store.answers.with(|answers| {
                let known =
                    answers.solved().and_then(|solved| solved.system.inverter.as_ref().map(of));
                known.unwrap_or_default()
            })
        })
    };
    let times = vec![
        (Awake::WithLoads, WORDS.label(L::OnlyWithLoads).to_owned()),
        (Awake::Always, WORDS.label(L::Always).to_owned()),
    ];
    view! {
        <div class="fields">
            <NumberField field=Field::InverterRated value=rated.0 set=rated.1 />
            <NumberField field=Field::InverterIdle value=idle.0 set=idle.1 optional=true
                typical=typical(|own| super::field::plain(Field::InverterIdle.range().rounded(own.idle().0)))
                hint=WORDS.label(L::IdleHint) />
            <NumberField field=Field::InverterSurge value=surge.0 set=surge.1 optional=true
                typical=typical(|own| super::field::plain(own.surge.0)) />
        </div>
        <Choice legend=WORDS.label(L::InverterIsOn) options=times value=awake set=set_awake />
        <details class="more">
            <summary>{WORDS.label(L::Efficiency)}</summary>
            <div class="fields">
                <NumberField label=WORDS.label(L::EfficiencyHalf) field=Field::InverterEfficiency value=half.0 set=half.1 optional=true
                    typical=typical(|own| format!("{:.0}", own.curve.efficiency(0.5) * 100.0)) />
                <NumberField label=WORDS.label(L::EfficiencyFull) field=Field::InverterEfficiency value=full.0 set=full.1 optional=true
                    typical=typical(|own| format!("{:.0}", own.curve.efficiency(1.0) * 100.0)) />
            </div>
        </details>
    }
}
