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

/// A field, and what a gauge showed by its value.
type Shows = (Field, fn(f64) -> LoggedCharge);

/// What a gauge may show, in the order of the choice.
const SHOWN: [Shows; 3] = [
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

/// What stands in the row.
#[derive(Clone, Copy)]
struct Row {
    /// Day and time.
    at: [RwSignal<String>; 2],
    /// Whether somebody has set them; until then they go with the clock.
    set: StoredValue<bool>,
    /// Which of [`SHOWN`].
    kind: RwSignal<usize>,
    /// What the gauge shows, volts and amps.
    values: [RwSignal<Option<f64>>; 3],
}

impl Row {
    fn new() -> Self {
        Self {
            at: now().map(RwSignal::new),
            set: StoredValue::new(false),
            kind: RwSignal::new(0),
            values: [None; 3].map(RwSignal::new),
        }
    }

    /// What the gauge shows now.
    fn shows(self) -> Shows {
        SHOWN.get(self.kind.get()).copied().unwrap_or(SHOWN[0])
    }

    fn to_now(self) {
        self.set.set_value(false);
        for (own, now) in self.at.into_iter().zip(now()) {
            own.set(now);
        }
    }

    /// The reading that was typed; nothing if it lacks its moment or all that could be noted.
    fn reading(self) -> Option<Logged> {
        let [date, time] = self.at.map(|own| own.get_untracked());
        let [shown, volts, amps] = self.values.map(|own| own.get_untracked());
        shown.or(volts).or(amps)?;
        let form = untrack(|| self.shows()).1;
        let shown = shown.map_or(LoggedCharge::Nothing, form);
        Some(Logged { shown, volts, amps, ..moment(&date, &time)? })
    }

    /// Adds it and clears the row for the next; else why not.
    fn submit(self, store: Store) -> String {
        let reading = self.reading().ok_or_else(|| WORDS.label(L::ReadingNeeds).to_owned());
        match reading.and_then(|own| add(store, own)) {
            Ok(()) => {
                for own in self.values {
                    own.set(None);
                }
                self.to_now();
                String::new()
            }
            Err(fault) => fault,
        }
    }

    /// The box for a number.
    fn number(self, place: usize, field: Field) -> View {
        let value = self.values[place];
        let label = WORDS.field(field).to_owned();
        let hint = String::new();
        let own = NumberBox { label, hint, field, slider: None, optional: true };
        own.view(None, value.into(), Callback::new(move |new| value.set(new)), Signal::stored(None))
    }

    /// The box for day or time.
    fn moment(self, place: usize, id: &'static str, kind: &'static str, label: L) -> View {
        let part = self.at[place];
        let take = typed(move |own| {
            self.set.set_value(true);
            part.set(own);
        });
        moment_box(id, kind, label, part.into(), take)
    }
}

/// The row.
pub(super) fn reading_row(store: Store) -> View {
    let row = Row::new();
    let last = part(store, 0, shown_last);
    watch(Box::new(move || row.kind.set(last.get())));
    let fault = RwSignal::new(String::new());
    let submitted: Listener = Box::new(move |event: Event| {
        event.prevent_default();
        if !lead_to_wrong_box() {
            fault.set(row.submit(store));
        }
    });
    // A page that stood for hours shows the moment in which somebody begins to type.
    let begin = act(move || {
        if !row.set.get_value() {
            row.to_now();
        }
    });
    let names = SHOWN.map(|own| WORDS.field(own.0)).into();
    let choose = Callback::new(move |at| row.kind.set(at));
    let boxes = node("div")
        .attr("class", "fields")
        .child(row.moment(0, "reading-date", "date", L::DayOfReading))
        .child(row.moment(1, "reading-time", "time", L::StartTime))
        .child(select(L::GaugeShows, names, row.kind.into(), choose))
        .child(dynamic(move || row.number(0, row.shows().0)))
        .child(row.number(1, Field::ReadVolts))
        .child(row.number(2, Field::ReadAmps));
    let button = node("button").attr("type", "submit").attr("class", "button");
    node("form")
        .attr("id", "reading")
        .on("submit", submitted)
        .on("focusin", begin)
        .child(boxes.view())
        .child(node("p").attr("class", "error").attr("role", "alert").child(signal(fault)).view())
        .child(button.child(WORDS.label(L::AddReading)).view())
        .view()
}
