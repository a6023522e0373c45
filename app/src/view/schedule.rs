//! When something runs: round the clock, so many hours, or stretches of the day; on which days and in which months.

use crate::signal::*;
use sunlarder_engine::document::{
    ClockTime, DAY_MIN, Days, Field, List, Months, Schedule, Span, When,
};
use sunlarder_engine::words::{Label as L, clock};

use super::field::{NumberBox, button_unless, choice, month_toggles, more, toggles};
use super::strip::strip;
use crate::dom::node::{Child as _, View, group, node, nothing};
use crate::dom::part::{act, dynamic, typed};
use crate::store::{Store, WORDS, words};

/// The kinds of hours, in the order in which they are offered.
const KINDS: [L; 3] = [L::HoursPerDay, L::AtTheseHours, L::Always];

fn kind_of(schedule: &Schedule) -> usize {
    match schedule.when {
        When::HoursPerDay(_) => 0,
        When::Spans(_) => 1,
        When::Always => 2,
    }
}

/// Hours of a day by the schedule, ignoring days and months.
fn hours_of(schedule: &Schedule) -> f64 {
    match &schedule.when {
        When::Always => 24.0,
        When::HoursPerDay(hours) => *hours,
        When::Spans(spans) => {
            let minutes =
                spans.iter().flat_map(|span| span.unwrapped()).map(|(from, to)| to - from);
            f64::from(minutes.sum::<u16>()) / 60.0
        }
    }
}

/// The same hours said in another way, as nearly as it can be.
fn converted(schedule: &Schedule, kind: usize) -> When {
    let hours = Field::HoursPerDay.range().rounded(hours_of(schedule).min(24.0));
    match kind {
        0 => When::HoursPerDay(hours),
        1 => {
            // An evening of that length, so that the person has something to move.
            let minutes = ((hours * 60.0) as u16).clamp(15, DAY_MIN - 1);
            let from_min = (18 * 60).min(DAY_MIN - minutes);
            When::Spans(vec![Span { from_min, to_min: from_min + minutes }])
        }
        _ => When::Always,
    }
}

/// A schedule that is edited: what it is and what takes a new one.
#[derive(Clone, Copy)]
pub(super) struct Edited {
    value: Signal<Schedule>,
    set: Callback<Schedule>,
}

impl Edited {
    fn change(self, edit: impl FnOnce(&mut Schedule)) {
        let mut schedule = self.value.get_untracked();
        edit(&mut schedule);
        self.set.run(schedule);
    }

    /// Its stretches; none if it has no such.
    pub(super) fn spans(self) -> Vec<Span> {
        self.value.with_untracked(spans_of)
    }

    /// Looks at its stretches now and whenever they change.
    pub(super) fn with_spans<T>(self, look: impl FnOnce(&[Span]) -> T) -> T {
        self.value.with(|schedule| look(&spans_of(schedule)))
    }

    /// Gives it other stretches.
    pub(super) fn set_spans(self, spans: Vec<Span>) {
        self.change(|schedule| schedule.when = When::Spans(spans));
    }

    fn change_spans(self, edit: impl FnOnce(&mut Vec<Span>)) {
        self.change(|schedule| {
            let mut spans = spans_of(schedule);
            edit(&mut spans);
            schedule.when = When::Spans(spans);
        });
    }
}

/// Stretches that are often meant: sitting together after dark, the working day, in bed.
const OFTEN: [(L, Span); 3] = [
    (L::Daytime, Span { from_min: 8 * 60, to_min: 18 * 60 }),
    (L::Evening, Span { from_min: 18 * 60, to_min: 22 * 60 }),
    (L::Night, Span { from_min: 22 * 60, to_min: 6 * 60 }),
];

/// One press for what is often meant.
fn often(edited: Edited) -> View {
    let chip = |(label, span): (L, Span)| {
        let chosen = Signal::derive(move || {
            let is = edited.with_spans(|spans| *spans == [span]);
            Some(if is { "true" } else { "false" })
        });
        node("button")
            .attr("type", "button")
            .attr("aria-pressed", chosen)
            .on("click", act(move || edited.set_spans(vec![span])))
            .child(WORDS.label(label))
            .view()
    };
    let chips: Vec<View> = OFTEN.into_iter().map(chip).collect();
    node("div").attr("class", "chips").child(chips).view()
}

/// Editor of a schedule.
pub(crate) fn schedule_editor(
    store: Store,
    value: Signal<Schedule>,
    set: Callback<Schedule>,
) -> View {
    let edited = Edited { value, set };
    let kind = memo(Box::new(move || value.with(kind_of)));
    let set_kind = Callback::new(move |kind| {
        edited.change(|schedule| schedule.when = converted(schedule, kind));
    });
    let body = dynamic(move || match kind.get() {
        0 => hours_box(edited),
        1 => spans_editor(store, edited),
        _ => nothing(),
    });
    let days =
        more(L::DaysAndMonths, move || group(vec![weekdays(edited).view(), months(edited).view()]));
    group(vec![
        choice(L::When, &KINDS, kind, set_kind).view(),
        often(edited),
        body.view(),
        days.view(),
    ])
}

fn hours_box(edited: Edited) -> View {
    let hours = memo(Box::new(move || {
        edited.value.with(|schedule| match schedule.when {
            When::HoursPerDay(hours) => Some(hours),
            _ => None,
        })
    }));
    let set = Callback::new(move |hours: Option<f64>| {
        if let Some(hours) = hours {
            edited.change(|schedule| schedule.when = When::HoursPerDay(hours));
        }
    });
    let field = Field::HoursPerDay;
    let (label, slider) = (WORDS.field(field), Some((0.0, 24.0, 0.25)));
    NumberBox { label: label.to_owned(), hint: String::new(), field, slider, optional: false }.view(
        None,
        hours,
        set,
        Signal::stored(None),
    )
}

/// The stretches of a schedule; none if it has no such.
fn spans_of(schedule: &Schedule) -> Vec<Span> {
    match &schedule.when {
        When::Spans(spans) => spans.clone(),
        _ => Vec::new(),
    }
}

/// Minutes of what a time box holds.
fn minutes(text: &str) -> Option<u16> {
    text.parse::<ClockTime>().ok().map(|time| time.0)
}

/// One more hour after the last stretch.
fn one_more(spans: &mut Vec<Span>) {
    let from_min = spans.last().map_or(7 * 60, |last| last.to_min % DAY_MIN);
    let to_min = from_min + 60;
    spans.push(Span { from_min, to_min: if to_min > DAY_MIN { to_min - DAY_MIN } else { to_min } });
}

fn spans_editor(store: Store, edited: Edited) -> View {
    let count = memo(Box::new(move || edited.value.with(|schedule| spans_of(schedule).len())));
    let full = Signal::derive(move || count.get() >= List::Spans.limit());
    let rows = dynamic(move || {
        (0..count.get()).map(|place| span_row(edited, place)).collect::<Vec<_>>().view()
    });
    let add =
        button_unless(L::AddHours, "button quiet", full, move || edited.change_spans(one_more));
    node("div")
        .attr("class", "span-editor")
        .child(strip(store, edited))
        .child(node("ul").attr("class", "spans").child(rows).view())
        .child(add)
        .view()
}

fn span_row(edited: Edited, place: usize) -> View {
    let time = move |of: fn(&Span) -> u16| {
        Signal::derive(move || {
            let span = edited.value.with(|schedule| spans_of(schedule).get(place).copied());
            span.map(|span| clock(of(&span))).unwrap_or_default()
        })
    };
    let change = move |set: fn(&mut Span, u16)| {
        typed(move |text| {
            if let Some(minute) = minutes(&text) {
                edited.change_spans(|spans| {
                    if let Some(span) = spans.get_mut(place) {
                        let mut moved = *span;
                        set(&mut moved, minute);
                        if moved.is_valid() {
                            *span = moved;
                        }
                    }
                });
            }
        })
    };
    let from = change(|span, minute| span.from_min = minute);
    // Midnight as an end is the end of the day.
    let to = change(|span, minute| span.to_min = if minute == 0 { DAY_MIN } else { minute });
    let remove = act(move || {
        edited.change_spans(|spans| {
            if place < spans.len() {
                spans.remove(place);
            }
        });
    });
    node("li")
        .attr("class", "span")
        .child(
            node("input")
                .attr("type", "time")
                .attr("aria-label", WORDS.label(L::From))
                .prop("value", time(|span| span.from_min))
                .on("change", from)
                .view(),
        )
        .child(node("span").attr("class", "to").child("–").view())
        .child(
            node("input")
                .attr("type", "time")
                .attr("aria-label", WORDS.label(L::Until))
                .prop("value", time(|span| span.to_min))
                .on("change", to)
                .view(),
        )
        .child(
            node("button")
                .attr("type", "button")
                .attr("class", "button quiet")
                .attr("aria-label", WORDS.label(L::RemoveHours))
                .on("click", remove)
                .child("×")
                .view(),
        )
        .view()
}

fn weekdays(edited: Edited) -> View {
    let names = words().week().map(|day| (day, WORDS.weekday_short(day))).into();
    let now = Signal::derive(move || edited.value.with(|schedule| schedule.days.0.into()));
    let set = move |bits| edited.change(|schedule| schedule.days = Days(bits as u8));
    toggles(L::DaysOfTheWeek, names, now, Callback::new(set))
}

fn months(edited: Edited) -> View {
    let now = Signal::derive(move || edited.value.with(|schedule| schedule.months.0));
    let set = move |bits| edited.change(|schedule| schedule.months = Months(bits));
    month_toggles(L::MonthsOfTheYear, now, Callback::new(set))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn changing_how_hours_are_said_keeps_how_many_there_are() {
        let six = Schedule::daily(When::HoursPerDay(6.0));
        let spans = Schedule::daily(converted(&six, 1));
        assert!((hours_of(&spans) - 6.0).abs() < 1e-9);
        assert_eq!(converted(&spans, 0), When::HoursPerDay(6.0));
        let always = Schedule::daily(When::Always);
        let When::Spans(spans) = converted(&always, 1) else { panic!("spans") };
        assert!(spans.iter().all(|span| span.is_valid()));
    }

    #[test]
    fn one_more_stretch_is_a_valid_one() {
        for to_min in [1, 720, 1400, 1440] {
            let mut spans = vec![Span { from_min: 0, to_min }];
            one_more(&mut spans);
            assert!(spans[1].is_valid(), "{to_min}: {:?}", spans[1]);
        }
    }
}
