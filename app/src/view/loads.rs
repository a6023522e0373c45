//! What do you run? The list of loads, where more come from, and what the system itself takes.

use sunlarder_engine::document::Field;
use sunlarder_engine::words::Label as L;

use super::catalogue::adder;
use super::field::{Figure, fields};
use super::inverter::inverter_editor;
use super::load_list::{Loads, list};
use super::question::question;
use crate::bind::{drawn, said};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::dynamic;
use crate::load_row::{self, Taken};
use crate::store::{Store, WORDS, words};

const STANDING: [Figure; 1] = [Figure::new(
    Field::StandingCurrent,
    |plan, _| Some(plan.standing_a),
    |plan, _, value| plan.standing_a = value,
)
.hint(L::StandingHint)];

/// The question with its answer and all that is run.
pub(crate) fn loads(store: Store) -> View {
    let total =
        said(store, |own| words().per_day(own.opening.budget.total, own.system.bank.nominal));
    question(L::WhatDoYouRun, total, true, move || inside(store))
}

fn inside(store: Store) -> View {
    let loads = Loads::new(store);
    let own = drawn(store.drawn, |solved| load_row::taken(solved).1);
    let own = dynamic(move || own.get().into_iter().map(own_row).collect::<Vec<_>>().view());
    group(vec![
        group(vec![list(loads), node("ul").attr("class", "loads own-loads").child(own).view()]),
        adder(store, loads).view(),
        inverter_editor(store).view(),
        fields(store, 0, &STANDING).view(),
    ])
}

/// What the system itself takes: the idle inverter, the standing draw, the protection circuits.
fn own_row((label, when, taken): (L, String, Taken)) -> View {
    node("li")
        .attr("class", "load own")
        .child(
            node("div")
                .attr("class", "load-open")
                .child(node("span").attr("class", "load-name").child(WORDS.label(label)).view())
                .child(node("span").attr("class", "load-when").child(when).view())
                .child(
                    node("span")
                        .attr("class", "load-charge")
                        .child(taken.charge)
                        .child(" ")
                        .child(node("span").attr("class", "unit").child(taken.unit).view())
                        .view(),
                )
                .child(node("span").attr("class", "load-share").child(taken.share).view())
                .view(),
        )
        .child(
            node("div")
                .attr("class", "share")
                .child(node("i").style("transform", &taken.scale).view())
                .view(),
        )
        .view()
}
