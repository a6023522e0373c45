//! The inverter, within "What do you run?".

use sunlarder_engine::document::{Awake, Document, Field, Inverter};
use sunlarder_engine::words::Label as L;

use super::field::{Figure, choice, fields, more, toggle};
use crate::bind::{edit, part};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::when;
use crate::store::Store;

fn own(plan: &Document) -> Option<&Inverter> {
    plan.inverter.as_ref()
}

fn change(plan: &mut Document, set: impl FnOnce(&mut Inverter)) {
    if let Some(inverter) = &mut plan.inverter {
        set(inverter);
    }
}

const FIGURES: [Figure; 3] = [
    Figure::new(
        Field::InverterRated,
        |plan, _| own(plan).map(|own| own.rated_w),
        |plan, _, value| change(plan, |own| own.rated_w = value),
    )
    .usual(1000.0),
    Figure::new(
        Field::InverterIdle,
        |plan, _| own(plan)?.idle_w,
        |plan, _, value| change(plan, |own| own.idle_w = Some(value)),
    )
    .or_typical(
        |plan, _| change(plan, |own| own.idle_w = None),
        |solved, _| solved.system.inverter.as_ref().map(|own| own.idle().0),
    )
    .hint(L::IdleHint),
    Figure::new(
        Field::InverterSurge,
        |plan, _| own(plan)?.surge_w,
        |plan, _, value| change(plan, |own| own.surge_w = Some(value)),
    )
    .or_typical(
        |plan, _| change(plan, |own| own.surge_w = None),
        |solved, _| solved.system.inverter.as_ref().map(|own| own.surge.0),
    ),
];

const SEARCH: [Figure; 1] = [Figure::new(
    Field::SearchDraw,
    |plan, _| own(plan)?.search_w,
    |plan, _, value| change(plan, |own| own.search_w = Some(value)),
)
.or_typical(
    |plan, _| change(plan, |own| own.search_w = None),
    |solved, _| solved.system.inverter.as_ref().map(|own| own.search.0),
)];

/// When it is on, in the order in which it is offered.
const AWAKE: [Awake; 3] = [Awake::WithLoads, Awake::Search, Awake::Always];

const SHEET: [Figure; 2] = [
    Figure::new(
        Field::InverterEfficiency,
        |plan, _| own(plan)?.efficiency_half_pct,
        |plan, _, value| change(plan, |own| own.efficiency_half_pct = Some(value)),
    )
    .or_typical(
        |plan, _| change(plan, |own| own.efficiency_half_pct = None),
        |solved, _| solved.system.inverter.as_ref().map(|own| own.curve.efficiency(0.5) * 100.0),
    )
    .label(L::EfficiencyHalf),
    Figure::new(
        Field::InverterEfficiency,
        |plan, _| own(plan)?.efficiency_full_pct,
        |plan, _, value| change(plan, |own| own.efficiency_full_pct = Some(value)),
    )
    .or_typical(
        |plan, _| change(plan, |own| own.efficiency_full_pct = None),
        |solved, _| solved.system.inverter.as_ref().map(|own| own.curve.efficiency(1.0) * 100.0),
    )
    .label(L::EfficiencyFull),
];

/// Whether there is one, and its figures.
pub(crate) fn inverter_editor(store: Store) -> View {
    let there = part(store, 0, |plan, _| plan.inverter.is_some());
    let set_there = edit(store, "inverter on", 0, |plan, _, there: bool| {
        plan.inverter = there.then(Inverter::default);
    });
    let figures = when(there, move || {
        let awake = part(store, 0, |plan, _| {
            own(plan).and_then(|own| AWAKE.iter().position(|one| *one == own.awake)).unwrap_or(0)
        });
        let set_awake = edit(store, "inverter awake", 0, |plan, _, at: usize| {
            change(plan, |own| own.awake = AWAKE.get(at).copied().unwrap_or_default());
        });
        let searches =
            part(store, 0, |plan, _| own(plan).is_some_and(|own| own.awake == Awake::Search));
        let ways = [L::OnlyWithLoads, L::LooksForLoads, L::Always];
        group(vec![
            fields(store, 0, &FIGURES).view(),
            choice(L::InverterIsOn, &ways, awake, set_awake).view(),
            when(searches, move || fields(store, 0, &SEARCH)).view(),
            more(L::Efficiency, move || fields(store, 0, &SHEET)).view(),
        ])
    });
    node("div")
        .attr("class", "part")
        .child(toggle(L::ThereIsAnInverter, there, set_there))
        .child(figures)
        .view()
}
