//! The row for one reading, which is typed in seconds: the moment stands there, and Enter adds.

use crate::signal::*;
use sunlarder_engine::document::{ClockTime, Document, Field, Logged, LoggedCharge, date_text};
use sunlarder_engine::words::Label as L;
use wasm_bindgen::JsCast;
use web_sys::Event;

use super::field::{NumberBox, select};
use super::logbook::{add, moment};
use super::place::{moment_box, today};
use crate::bind::{part, signal, watch};
use crate::dom::node::{View, node};
use crate::dom::part::{Listener, act, dynamic, typed};
use crate::store::{Store, WORDS};

/// What a gauge may show, in the order of the choice.
const SHOWN: [(Field, fn(f64) -> LoggedCharge); 3] = [
    (Field::ReadPercent, LoggedCharge::Percent),
    (Field::ReadLeft, LoggedCharge::Left),
    (Field::ReadTaken, LoggedCharge::Taken),
];

/// What was shown last, which is what will be shown next.
fn shown_last(plan: &Document, _: usize) -> usize {
    let last = plan.logbook.iter().flat_map(|own| &own.readings).rev();
    let kind = |own: &Logged| match own.shown {
        LoggedCharge::Nothing => None,
        LoggedCharge::Percent(_) => Some(0),
        LoggedCharge::Left(_) => Some(1),
        LoggedCharge::Taken(_) => Some(2),
    };
    last.filter_map(kind).next().unwrap_or(0)
}

/// Day and time by the clock of the device.
fn now() -> [String; 2] {
    let clock = js_sys::Date::new_0();
    let minutes = clock.get_hours() * 60 + clock.get_minutes();
    [date_text(today()), ClockTime(minutes as u16).to_string()]
}

/// The first box with something wrong gets the focus.
fn lead_to_wrong_box() -> bool {
    let found = document().query_selector("#reading [aria-invalid=\"true\"]").ok().flatten();
    let found = found.and_then(|own| own.dyn_into::<web_sys::HtmlElement>().ok());
    found.is_some_and(|own| own.focus().is_ok())
}

/// The row.
pub(super) fn reading_row(store: Store) -> View {
    let at = now().map(RwSignal::new);
    let kind = RwSignal::new(0_usize);
    let last = part(store, 0, shown_last);
    watch(Box::new(move || kind.set(last.get())));
    let values: [RwSignal<Option<f64>>; 3] = [None; 3].map(RwSignal::new);
    let fault = RwSignal::new(String::new());
    // Whether somebody has set the moment; until then it goes with the clock.
    let set = StoredValue::new(false);
    let to_now = move || {
        set.set_value(false);
        for (own, now) in at.into_iter().zip(now()) {
            own.set(now);
        }
    };
    let blank = Signal::stored(None);
    let number = move |value: RwSignal<Option<f64>>, field: Field| {
        let label = WORDS.field(field).to_owned();
        let hint = String::new();
        let own = NumberBox { label, hint, field, slider: None, optional: true };
        own.view(None, value.into(), Callback::new(move |new| value.set(new)), blank)
    };
    let submitted: Listener = Box::new(move |event: Event| {
        event.prevent_default();
        if lead_to_wrong_box() {
            return;
        }
        let [date, time] = at.map(|own| own.get_untracked());
        let [shown, volts, amps] = values.map(|own| own.get_untracked());
        let form = SHOWN
            .get(kind.get_untracked())
            .map_or(LoggedCharge::Percent as fn(f64) -> _, |own| own.1);
        let noted = shown.or(volts).or(amps).and_then(|_| moment(&date, &time));
        let added = match noted {
            None => Err(WORDS.label(L::ReadingNeeds).to_owned()),
            Some(moment) => {
                let shown = shown.map_or(LoggedCharge::Nothing, form);
                add(store, Logged { shown, volts, amps, ..moment })
            }
        };
        if added.is_ok() {
            for own in values {
                own.set(None);
            }
            to_now();
        }
        fault.set(added.err().unwrap_or_default());
    });
    let names = SHOWN.map(|own| WORDS.field(own.0)).into();
    let choose = Callback::new(move |at| kind.set(at));
    let [date, time] = at;
    let [shown, volts, amps] = values;
    let take = move |part: RwSignal<String>| {
        typed(move |own| {
            set.set_value(true);
            part.set(own);
        })
    };
    // A page that stood for hours shows the moment in which somebody begins to type.
    let begin = act(move || {
        if !set.get_value() {
            to_now();
        }
    });
    let shown = dynamic(move || {
        number(shown, SHOWN.get(kind.get()).map_or(Field::ReadPercent, |own| own.0))
    });
    node("form")
        .attr("id", "reading")
        .on("submit", submitted)
        .on("focusin", begin)
        .child(
            node("div")
                .attr("class", "fields")
                .child(moment_box("reading-date", "date", L::DayOfReading, date.into(), take(date)))
                .child(moment_box("reading-time", "time", L::StartTime, time.into(), take(time)))
                .child(select(L::GaugeShows, names, kind.into(), choose))
                .child(shown)
                .child(number(volts, Field::ReadVolts))
                .child(number(amps, Field::ReadAmps))
                .view(),
        )
        .child(node("p").attr("class", "error").attr("role", "alert").child(signal(fault)).view())
        .child(
            node("button")
                .attr("type", "submit")
                .attr("class", "button")
                .child(WORDS.label(L::AddReading))
                .view(),
        )
        .view()
}
