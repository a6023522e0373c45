//! How do you fit it? By which rules and how long the runs are; what comes of it is a leaf, and a sheet to print.

use crate::signal::*;
use sunlarder_engine::document::{Bundled, CableInsulation, Document, Field, WiredBy, Wiring};
use sunlarder_engine::words::Label as L;
use sunlarder_worker::leaf::Leaf;
use wasm_bindgen::JsCast;
use web_sys::Event;

use super::field::{Figure, button, fields, more, select, toggle};
use super::leaf::leaf;
use super::question::question;
use super::sheet::print;
use crate::bind::{edit, part};
use crate::dom::node::{View, group, node, put_behind};
use crate::dom::paper::elements;
use crate::dom::part::Listener;
use crate::drawers::drawer;
use crate::store::{Store, WORDS};

fn own(plan: &Document) -> Wiring {
    plan.wiring.clone().unwrap_or_default()
}

/// Changes what is stated of the wiring; where all is as usual nothing is.
fn change(plan: &mut Document, set: impl FnOnce(&mut Wiring)) {
    let mut wiring = own(plan);
    set(&mut wiring);
    plan.wiring = Some(wiring).filter(|own| *own != Wiring::default());
}

/// A figure that may be left to what is usual.
macro_rules! stated {
    ($field:ident, $part:ident) => {
        Figure::new(
            Field::$field,
            |plan, _| own(plan).$part,
            |plan, _, value| change(plan, |wiring| wiring.$part = Some(value)),
        )
        .or_typical(|plan, _| change(plan, |wiring| wiring.$part = None), |_, _| None)
    };
}

const SURROUNDINGS: [Figure; 3] = [
    stated!(RunAmbient, ambient_c),
    stated!(ShortCircuitCurrent, short_circuit_a),
    stated!(CrankingCurrent, cranking_a),
];

const LENGTHS: [Figure; 7] = [
    stated!(BatteryRun, battery_m),
    stated!(InverterRun, inverter_m),
    stated!(PanelRun, panel_m),
    stated!(LoadRun, load_m),
    stated!(ControllerRun, controller_m),
    stated!(ArrayRun, array_m),
    stated!(ChargerRun, charger_m),
];

const TABLES: [L; 4] = [L::AsIsTypical, L::WiredMarine, L::WiredVehicle, L::WiredLand];
const INSULATIONS: [L; 5] =
    [L::AsIsTypical, L::Insulation60, L::Insulation75, L::Insulation90, L::Insulation105];
const BUNDLES: [L; 5] = [L::AsIsTypical, L::LieAlone, L::LieUpTo6, L::LieUpTo24, L::LieMore];

/// The place of one of several.
fn place<T: PartialEq>(all: &[T], own: &T) -> usize {
    all.iter().position(|other| other == own).unwrap_or(0)
}

/// The question. Nothing is asked of the worker before somebody looks.
pub(crate) fn fit_section(store: Store) -> View {
    let blank = Signal::stored(String::new());
    let question = question(L::HowDoYouFitIt, blank, false, move || {
        drawer(store, move |drawers| (drawers.fitting)(store))
    });
    node("div").attr("id", "fit").child(question).view()
}

/// What stands in the fold.
pub(crate) fn inside(store: Store) -> View {
    node("div")
        .attr("id", "fitting")
        .on("click", folds(store, "fitting", Leaf::RunWorking))
        .child(group(vec![
            rules(store),
            button(L::PrintFitting, "button", move || print(store, Leaf::FittingSheet)),
            node("div")
                .attr("class", "fitted")
                .child(leaf(store, Leaf::Fitting, String::new()))
                .view(),
        ]))
        .view()
}

/// Presses of buttons that have how something was worked out put under themselves, a leaf whose argument they bear; `root` is the id of
/// what listens.
pub(super) fn folds(store: Store, root: &'static str, leaf: Leaf) -> Listener {
    Box::new(move |event: Event| {
        let target = event.target().and_then(|own| own.dyn_into::<web_sys::Element>().ok());
        if let Some(button) = target.filter(|own| own.has_attribute("data-fold")) {
            fold_working(store, (root, leaf), &button, "");
        }
    })
}

/// Puts how something was worked out under its button, or takes it away. After an edit all is written anew, without it. What the leaf
/// is told besides the button's own place stands in `more`.
pub(super) fn fold_working(
    store: Store,
    (root, leaf): (&'static str, Leaf),
    button: &web_sys::Element,
    more: &str,
) {
    let is_open = button.get_attribute("aria-expanded").as_deref() == Some("true");
    let _ = button.set_attribute("aria-expanded", if is_open { "false" } else { "true" });
    if is_open {
        if let Some(working) = button.next_element_sibling() {
            working.remove();
        }
        return;
    }
    let place = button.get_attribute("data-fold").unwrap_or_default();
    let own = format!("#{root} [data-fold='{place}'][aria-expanded='true']:last-child");
    let then = Callback::new(move |paper: String| {
        // It may have been closed again, or the plan may have changed.
        if let Ok(Some(button)) = document().query_selector(&own) {
            let working = node("div").attr("class", "run-working").child(elements(&paper));
            put_behind(&button, working.view());
        }
    });
    store.worked.once(leaf, place + more, then);
}

/// By which rules, in which surroundings, and how long the runs are.
fn rules(store: Store) -> View {
    let names = |labels: &[L]| labels.iter().map(|own| WORDS.label(*own)).collect();
    let tables = part(store, 0, |plan, _| place(&WiredBy::ALL, &own(plan).tables));
    let set_tables = edit(store, "tables", 0, |plan, _, at: usize| {
        change(plan, |own| own.tables = WiredBy::ALL[at % WiredBy::ALL.len()]);
    });
    let insulation = part(store, 0, |plan, _| place(&CableInsulation::ALL, &own(plan).insulation));
    let set_insulation = edit(store, "insulation", 0, |plan, _, at: usize| {
        change(plan, |own| own.insulation = CableInsulation::ALL[at % CableInsulation::ALL.len()]);
    });
    let bundle = part(store, 0, |plan, _| place(&Bundled::ALL, &own(plan).bundle));
    let set_bundle = edit(store, "bundle", 0, |plan, _, at: usize| {
        change(plan, |own| own.bundle = Bundled::ALL[at % Bundled::ALL.len()]);
    });
    let engine = part(store, 0, |plan, _| own(plan).engine_space);
    let set_engine = edit(store, "engine space", 0, |plan, _, is: bool| {
        change(plan, |own| own.engine_space = is);
    });
    group(vec![
        select(L::WiredBy, names(&TABLES), tables, set_tables),
        more(L::RunLengths, move || fields(store, 0, &LENGTHS)),
        more(L::RulesOfWiring, move || {
            group(vec![
                select(L::InsulationFor, names(&INSULATIONS), insulation, set_insulation),
                select(L::LieTogether, names(&BUNDLES), bundle, set_bundle),
                toggle(L::InEngineSpace, engine, set_engine),
                fields(store, 0, &SURROUNDINGS),
            ])
        }),
    ])
}
