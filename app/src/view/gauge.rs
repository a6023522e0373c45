//! How do you set up the gauge? What it is told, the sheet to check it by, what was measured, and how it is fooled.

use crate::signal::*;
use sunlarder_engine::words::Label as L;
use sunlarder_worker::leaf::Leaf;

use super::checks::checks;
use super::field::{button, more, more_while};
use super::fitting::folds;
use super::fooled::fooled;
use super::leaf::leaf;
use super::question::question;
use super::sheet::print;
use crate::dom::node::{View, group, node};
use crate::drawers::drawer;
use crate::store::Store;

/// The question. Nothing is asked of the worker before somebody looks.
pub(crate) fn gauge_section(store: Store) -> View {
    let blank = Signal::stored(String::new());
    let question = question(L::HowDoYouSetUpTheGauge, blank, false, move || {
        drawer(store, move |drawers| (drawers.gauge)(store))
    });
    node("div").attr("id", "gauge").child(question).view()
}

/// What stands in the fold.
pub(crate) fn inside(store: Store) -> View {
    group(vec![
        button(L::PrintCommissioning, "button", move || print(store, Leaf::CommissioningSheet)),
        node("div")
            .attr("id", "gauge-card")
            .attr("class", "fitted")
            .on("click", folds(store, "gauge-card", Leaf::SettingWorking))
            .child(leaf(store, Leaf::Gauge, String::new()))
            .view(),
        more(L::WhatWasMeasured, move || checks(store)),
        more_while("more", L::SeeItFooled, move || fooled(store)),
    ])
}
