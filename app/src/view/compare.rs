//! The plan against a baseline, and beside another plan. Without a baseline nothing here follows an edit.

use crate::signal::*;
use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::Figure;
use sunlarder_engine::share;
use sunlarder_engine::words::{Label as L, decimal};
use sunlarder_worker::leaf::{self, Leaf};
use sunlarder_worker::message::climate_numbers;

use super::dialogs::plan_name;
use super::field::button;
use super::leaf::leaf;
use super::place::hint;
use super::share::opener;
use crate::chart::{CurveData, DayData, MonthData};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::{act, dynamic, when};
use crate::keep;
use crate::outlook_data as data;
use crate::store::{Answers, Baseline, Dialog, Face, Solved, Store, WORDS, words};

/// Something of the baseline, with its name; the type's blank without one. The name is empty if it is that of the plan itself.
fn of<T: Default>(store: Store, get: impl FnOnce(&str, &Solved) -> T) -> T {
    let get = |own: &Baseline| {
        let same = store.plan.with_untracked(|plan| plan.name == own.plan.name);
        let name = if same { String::new() } else { plan_name(&own.plan) };
        own.solved().map(|solved| get(&name, solved))
    };
    store.baseline.with(|own| own.as_ref().and_then(get)).unwrap_or_default()
}

/// What is done with the baseline's answers, if there are any.
pub(super) fn with_baseline<T>(store: Store, make: impl FnOnce(Option<&Solved>) -> T) -> T {
    store.baseline.with(|own| make(own.as_ref().and_then(Baseline::solved)))
}

/// Whether there is a baseline.
fn there(store: Store) -> Signal<bool> {
    memo(Box::new(move || store.baseline.with(Option::is_some)))
}

/// By how much a figure is more than the baseline's, in words.
pub(super) fn against(store: Store, figure: Figure) -> Signal<String> {
    memo(Box::new(move || {
        of(store, |name, base| {
            let base = words().figure_value(&base.outlook, &base.system, figure);
            store.drawn.with(|answers| {
                let own = answers.solved()?;
                let own = words().figure_value(&own.outlook, &own.system, figure)?;
                Some(words().than(figure, own - base?, name))
            })
        })
        .unwrap_or_default()
    }))
}

/// The verdict on the baseline, and how much longer or shorter this plan lasts.
pub(super) fn verdict(store: Store) -> View {
    let said = memo(Box::new(move || {
        of(store, |name, base| format!("{}.", WORDS.beside(&WORDS.short(&base.outlook), name)))
    }));
    let longer = against(store, Figure::ToReserve);
    let longer = memo(Box::new(move || {
        let longer = longer.get();
        if longer.is_empty() {
            longer
        } else {
            format!(" {}: {longer}.", WORDS.label(L::UntilReserve))
        }
    }));
    node("p").attr("class", "against").attr("id", "against").child(said).child(longer).view()
}

/// The baseline in the legend of the curve.
pub(super) fn key(store: Store) -> View {
    let name = memo(Box::new(move || {
        store.baseline.with(|own| own.as_ref().map(|own| plan_name(&own.plan)).unwrap_or_default())
    }));
    let key = move || node("li").attr("class", "key key-baseline").child(name).view();
    when(there(store), key).view()
}

/// The curve with the baseline's line.
pub(super) fn with_curve(store: Store, curve: Signal<CurveData>) -> Signal<CurveData> {
    memo(Box::new(move || {
        let mut curve = curve.get();
        curve.baseline = of(store, |_, base| data::baseline_curve(base, curve.hours));
        curve
    }))
}

/// What the baseline has at an hour, behind what is read of the plan.
pub(super) fn reading(store: Store, hour: f64) -> String {
    of(store, |name, base| {
        let sample = data::sample_at(base, hour.max(0.01))?;
        let percent = format!("{} %", decimal(sample.charge * 100.0, 0));
        Some(format!(" {}.", WORDS.beside(&percent, name)))
    })
    .unwrap_or_default()
}

/// The day with the baseline's.
pub(super) fn with_day(store: Store, day: Signal<DayData>) -> Signal<DayData> {
    let base = memo(Box::new(move || of(store, |_, base| data::day(base))));
    memo(Box::new(move || {
        let mut day = day.get();
        day.baseline_w = base.with(|base| (base.in_w.clone(), base.out_w.clone()));
        day
    }))
}

/// The months with the baseline's.
pub(super) fn with_months(store: Store, months: Signal<MonthData>) -> Signal<MonthData> {
    memo(Box::new(move || {
        let mut months = months.get();
        of(store, |_, base| {
            let told = |charge| words().charge_value(charge, base.system.bank.nominal);
            for (own, base) in months.months.iter_mut().zip(&base.outlook.months) {
                own.baseline = Some((told(base.gain.kept), told(base.need)));
            }
        });
        months
    }))
}

/// The heads of a table, with one for the baseline if there is one.
pub(super) fn heads(store: Store, heads: &[L], baseline: L) -> Vec<L> {
    let there = store.baseline.with(Option::is_some);
    heads.iter().copied().chain(there.then_some(words().fitting(baseline))).collect()
}

/// Something that is made anew when the baseline comes or goes.
pub(super) fn anew(make: impl FnMut() -> View + 'static) -> View {
    dynamic(make).view()
}

/// The ways to compare, under the figures.
pub(super) fn ways(store: Store) -> View {
    let label = memo(Box::new(move || {
        let there = store.baseline.with(Option::is_some);
        let label = if there { L::ClearBaseline } else { L::KeepAsBaseline };
        WORDS.label(label).to_owned()
    }));
    let press = move || {
        let there = store.baseline.with_untracked(Option::is_some);
        store.set_baseline((!there).then(|| store.plan.get_untracked()));
    };
    // One button with two labels, so that it keeps the focus.
    let make = node("button").attr("type", "button").attr("class", "link").on("click", act(press));
    let make = make.child(label).view();
    node("p")
        .attr("class", "ways no-print")
        .attr("id", "compare-ways")
        .child(make)
        .child(button(L::Compare, "link", move || store.dialog.set(Some(Dialog::Compare))))
        .view()
}

/// The plans of the device, each to be the baseline or to be laid beside this one; and a link or file for another.
pub(super) fn choose(store: Store) -> View {
    let own = store.id.get_untracked();
    let others = keep::plans().into_iter().filter(|kept| kept.id != own);
    let mut plans: Vec<Document> = others.filter_map(|kept| kept.plan.ok()).collect();
    // A baseline may be a plan that the device does not keep, or no longer as it was.
    let baseline = store.baseline.with_untracked(|own| own.as_ref().map(|own| own.plan.clone()));
    if let Some(baseline) = baseline.filter(|own| !plans.contains(own)) {
        plans.insert(0, baseline);
    }
    let none = plans.is_empty().then(|| hint(L::NoOtherPlan));
    let rows: Vec<View> = plans.into_iter().map(|plan| row(store, plan)).collect();
    let keep = move || store.set_baseline(Some(store.plan.get_untracked()));
    let clear = move || button(L::ClearBaseline, "button quiet", move || store.set_baseline(None));
    group(vec![
        hint(L::CompareHint),
        node("div")
            .attr("class", "row")
            .child(button(L::KeepAsBaseline, "button", keep))
            .child(when(there(store), clear))
            .view(),
        node("h3").child(WORDS.label(L::OnThisDevice)).view(),
        none.view(),
        node("ul").attr("class", "list").child(rows).view(),
        node("h3").child(WORDS.label(L::HaveLinkOrFile)).view(),
        opener(Callback::new(move |plan| store.lay_beside(plan))),
    ])
}

fn row(store: Store, plan: Document) -> View {
    let beside = plan.clone();
    node("li")
        .child(node("span").attr("class", "list-name").child(plan_name(&plan)).view())
        .child(
            node("div")
                .attr("class", "row")
                .child(button(L::AsBaseline, "button quiet", move || {
                    store.set_baseline(Some(plan.clone()));
                }))
                .child(button(L::SideBySide, "button quiet", move || {
                    store.lay_beside(beside.clone());
                }))
                .view(),
        )
        .view()
}

/// The face of two plans beside each other; the worker writes it.
pub(super) fn beside(store: Store) -> View {
    let written = dynamic(move || {
        let argument = store.other.with(|plan| {
            let climate = match Answers::to(plan, store.earth).solved() {
                Some(solved) => climate_numbers(&solved.system.climate),
                None => Vec::new(),
            };
            leaf::other(&share::encode(plan).unwrap_or_default(), &climate)
        });
        untrack(|| leaf(store, Leaf::Beside, argument))
    });
    let as_baseline = move || {
        store.set_baseline(Some(store.other.get_untracked()));
        store.face.set(Face::Planner);
    };
    let print = move || {
        let _ = window().print();
    };
    node("main")
        .attr("class", "beside")
        .child(
            node("div")
                .attr("class", "row")
                .child(button(L::BackToPlan, "button", move || store.face.set(Face::Planner)))
                .child(button(L::AnotherPlan, "button quiet", move || {
                    store.dialog.set(Some(Dialog::Compare));
                }))
                .child(button(L::AsBaseline, "button quiet", as_baseline))
                .child(button(L::PrintThis, "button quiet", print))
                .view(),
        )
        .child(node("h1").child(WORDS.label(L::SideBySide)).view())
        .child(written)
        .view()
}
