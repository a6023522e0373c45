//! What would help? What the plan shall keep, how big it should be for that, and what would help most.

use crate::signal::*;
use sunlarder_engine::document::{Document, Field, Months, Promise, Promised};
use sunlarder_engine::quantity::{AmpHours, Watts};
use sunlarder_engine::share;
use sunlarder_engine::words::sizing::Sized;
use sunlarder_engine::words::{Label as L, decimal};
use sunlarder_worker::leaf::{Leaf, SizesNumbers};
use wasm_bindgen::JsCast;
use web_sys::Event;

use super::field::{Figure, button, fields, month_toggles, more, select};
use super::leaf::{leaf, leaf_of};
use super::place::{has_place, hint};
use super::question::question;
use super::reader::{Cells, reader};
use crate::bind::{edit, part, signal, watch};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::{Listener, dynamic, when};
use crate::dom::sight::show;
use crate::drawers::drawer;
use crate::store::{Store, WORDS, words};
use crate::worker::speaks;

fn own(plan: &Document) -> Promise {
    plan.promise.clone().unwrap_or_default()
}

/// Changes the promise; one that is as usual is none.
fn change(plan: &mut Document, set: impl FnOnce(&mut Promise)) {
    let mut promise = own(plan);
    set(&mut promise);
    plan.promise = Some(promise).filter(|own| *own != Promise::default());
}

/// What can be promised, in the order in which it is offered, as it begins.
const KINDS: [(L, Promised); 4] = [
    (L::PromisedThrough, Promised::Through),
    (L::PromisedShortDays, Promised::ShortDays(10.0)),
    (L::PromisedWithoutSun, Promised::WithoutSun(3.0)),
    (L::PromisedTrip, Promised::Trip(7.0)),
];

fn kind(plan: &Document, _: usize) -> usize {
    let what = core::mem::discriminant(&own(plan).what);
    KINDS.iter().position(|own| core::mem::discriminant(&own.1) == what).unwrap_or(0)
}

/// How many days or short days.
fn count(plan: &Document, _: usize) -> Option<f64> {
    match own(plan).what {
        Promised::Through => None,
        Promised::ShortDays(count) | Promised::WithoutSun(count) | Promised::Trip(count) => {
            Some(count)
        }
    }
}

fn set_count(plan: &mut Document, _: usize, value: f64) {
    change(plan, |promise| {
        if let Promised::ShortDays(count) | Promised::WithoutSun(count) | Promised::Trip(count) =
            &mut promise.what
        {
            *count = value;
        }
    });
}

/// The box for the count of each kind.
const COUNTS: [[Figure; 1]; 3] = [
    [Figure::new(Field::ShortDays, count, set_count)],
    [Figure::new(Field::DaysWithoutSun, count, set_count)],
    [Figure::new(Field::DaysOfTrip, count, set_count)],
];

const CHANCE: [Figure; 1] = [Figure::new(
    Field::Chance,
    |plan, _| own(plan).chance_pct,
    |plan, _, value| change(plan, |promise| promise.chance_pct = Some(value)),
)
.or_typical(
    |plan, _| change(plan, |promise| promise.chance_pct = None),
    |solved, _| {
        let usual = sunlarder_engine::sizing::Promise::default();
        Some(usual.with_usual_chance(solved.opening.is_vital()).chance.0)
    },
)];

/// A price or weight that may be missing.
macro_rules! rate {
    ($field:ident, $part:ident) => {
        Figure::new(
            Field::$field,
            |plan, _| own(plan).$part,
            |plan, _, value| change(plan, |promise| promise.$part = Some(value)),
        )
        .or_typical(|plan, _| change(plan, |promise| promise.$part = None), |_, _| None)
    };
}

const RATES: [Figure; 4] = [
    rate!(BankPrice, bank_price),
    rate!(ArrayPrice, array_price),
    rate!(BankWeight, bank_kg),
    rate!(ArrayWeight, array_kg),
];

/// The question; its answer is the chance of keeping the promise, once somebody has looked.
pub(crate) fn help_section(store: Store) -> View {
    let answer = memo(Box::new(move || {
        store.worked.standing.get().map_or_else(String::new, |chance| words().chance(chance))
    }));
    let question = question(L::WhatWouldHelp, answer, false, move || {
        drawer(store, move |drawers| (drawers.sizing)(store))
    });
    node("div").attr("id", "help").child(question).view()
}

/// A button that leads to the question, beside what the plan comes to.
pub(crate) fn to_help(store: Store) -> View {
    let runs = memo(Box::new(move || {
        store.answers.with(|own| own.solved().is_some_and(|own| speaks(own)))
    }));
    let go = || {
        let found = document().query_selector("#help > details").ok().flatten();
        if let Some(details) = found {
            let _ = details.toggle_attribute_with_force("open", true);
            show(&details, "start");
        }
    };
    when(runs, move || button(L::WhatWouldHelp, "button quiet to-help", go)).view()
}

/// What stands in the fold.
pub(crate) fn inside(store: Store) -> View {
    let place =
        memo(Box::new(move || store.plan.with(has_place) && store.worked.spread.get().is_some()));
    let answers =
        dynamic(move || if place.get() { answers(store) } else { hint(L::WeatherNeedsPlace) });
    let taken: Listener = Box::new(move |event: Event| {
        let target = event.target().and_then(|own| own.dyn_into::<web_sys::Element>().ok());
        if let Some(code) = target.and_then(|own| own.get_attribute("data-plan")) {
            take(store, &code);
        }
    });
    node("div")
        .attr("id", "sizing")
        .on("click", taken)
        .child(group(vec![promise(store), answers.view()]))
        .view()
}

/// What the plan shall keep.
fn promise(store: Store) -> View {
    let kind = part(store, 0, kind);
    let set_kind = edit(store, "promise", 0, |plan, _, at: usize| {
        change(plan, |promise| promise.what = KINDS.get(at).map_or(Promised::Through, |own| own.1));
    });
    let names = KINDS.iter().map(|own| WORDS.label(own.0)).collect();
    let count = dynamic(move || match COUNTS.get(kind.get().wrapping_sub(1)) {
        Some(own) => fields(store, 0, own),
        None => group(Vec::new()),
    });
    let months = part(store, 0, |plan, _| own(plan).months.0);
    let set_months = edit(store, "promise months", 0, |plan, _, bits: u16| {
        // No month at all would keep any promise.
        let bits = if bits == 0 { Months::ALL.0 } else { bits };
        change(plan, |promise| promise.months = Months(bits));
    });
    group(vec![
        select(L::WhatIsPromised, names, kind, set_kind),
        count.view(),
        fields(store, 0, &CHANCE),
        more(L::MonthsThatCount, move || month_toggles(L::MonthsThatCount, months, set_months)),
        more(L::PricesAndWeights, move || {
            group(vec![hint(L::PricesHint), fields(store, 0, &RATES)])
        }),
    ])
}

/// The twelve spreads of the daily clearness at the place, as the worker reads them.
pub(super) fn spreads(store: Store) -> Signal<String> {
    let site = memo(Box::new(move || {
        store.answers.with(|own| own.solved().map(|solved| solved.system.site))
    }));
    memo(Box::new(move || {
        let own = store.worked.spread.get().zip(site.get()).map(|(spread, site)| spread.at(site));
        let texts: Vec<String> = own.iter().flatten().map(|own| decimal(*own, 9)).collect();
        texts.join(" ")
    }))
}

/// What is worked out: the answers, and the map to touch.
fn answers(store: Store) -> View {
    let argument = spreads(store);
    let numbers = RwSignal::new(Vec::new());
    let map = dynamic(move || {
        let (view, own) = leaf_of(store, Leaf::Sizes, argument.get());
        watch(Box::new(move || {
            let own = own.get();
            store.worked.standing.set(SizesNumbers(&own).standing());
            numbers.set(own);
        }));
        view
    });
    let said = |own: Leaf| dynamic(move || leaf(store, own, argument.get()));
    node("div")
        .child(coming(store, numbers))
        .child(said(Leaf::Sizing))
        .child(
            node("figure")
                .attr("class", "picture sizes")
                .child(
                    node("figcaption")
                        .attr("class", "picture-head")
                        .child(node("h3").child(WORDS.label(L::BankAgainstArray)).view())
                        .view(),
                )
                .child(
                    node("div")
                        .attr("class", "sizes-frame")
                        .child(map)
                        .child(point(store, numbers))
                        .view(),
                )
                .view(),
        )
        .child(said(Leaf::Helping))
        .view()
}

/// What is read off the map, and the button that takes a size; nothing until there is a map.
fn point(store: Store, numbers: RwSignal<Vec<f64>>) -> View {
    let cursor = RwSignal::new(None::<usize>);
    let known = memo(Box::new(move || numbers.with(|own| SizesNumbers(own).is_map())));
    let cells =
        Signal::stored(Cells { columns: SizesNumbers::SIDE, rows: SizesNumbers::SIDE, page: 4 });
    let reading =
        memo(Box::new(move || match cursor.get().and_then(|at| read(&numbers.get(), at)) {
            Some(said) => said,
            None => WORDS.label(L::MapHint).to_owned(),
        }));
    let there = memo(Box::new(move || cursor.get().is_some()));
    let press = move || {
        let Some(at) = cursor.get_untracked() else { return };
        let (bank, array) = places(at);
        let argument = format!("{bank} {array}");
        let then = Callback::new(move |code: String| take(store, &code));
        store.worked.once(Leaf::SizedPlan, argument, then);
    };
    when(known, move || {
        group(vec![
            reader(cells, cursor, L::ReadTheMap, reading),
            node("p").attr("class", "readout").child(signal(reading)).view(),
            when(there, move || button(L::TakeThisSize, "button", press)).view(),
        ])
    })
    .view()
}

/// Bank and array of a cell of the picture, whose rows count downwards.
fn places(cell: usize) -> (usize, usize) {
    let side = SizesNumbers::SIDE;
    (cell / side, side - 1 - cell % side)
}

/// What is read at a cell.
fn read(numbers: &[f64], cell: usize) -> Option<String> {
    let (bank, array) = places(cell);
    let (charge, power, chance) = SizesNumbers(numbers).at(bank, array)?;
    let size = Sized { charge: AmpHours(charge), power: Watts(power) };
    Some(words().point_of_map(size, chance))
}

/// How far the work is, while it goes on.
fn coming(store: Store, numbers: RwSignal<Vec<f64>>) -> View {
    let began = StoredValue::new(0.0);
    watch(Box::new(move || {
        store.answers.track();
        store.worked.standing.set(None);
        began.set_value(js_sys::Date::now());
    }));
    let done = memo(Box::new(move || numbers.with(|own| SizesNumbers(own).done())));
    let busy = memo(Box::new(move || done.get() < 1.0));
    let said = memo(Box::new(move || {
        let done = done.get();
        let passed = (js_sys::Date::now() - began.get_value()) / 1000.0;
        let left = (done > 0.05).then(|| (passed * (1.0 - done) / done).ceil() as u32);
        words().sizes_coming(done, left)
    }));
    let share = memo(Box::new(move || decimal(done.get(), 3)));
    when(busy, move || {
        node("p")
            .attr("class", "note coming")
            .child(
                node("progress")
                    .attr("max", "1")
                    .attr("value", share)
                    .attr("aria-label", WORDS.label(L::BeingWorkedOut))
                    .view(),
            )
            .child(" ")
            .child(signal(said))
            .view()
    })
    .view()
}

/// Takes a plan that was worked out into the place of this one; it can be undone.
fn take(store: Store, code: &str) {
    if let Ok(taken) = share::decode(code) {
        store.edit("size", &mut |plan| *plan = taken.clone());
        store.say_changed(WORDS.label(L::SizeTaken));
    }
}
