//! When something runs: round the clock, so many hours, or stretches of the day; on which days and in which months.

use leptos::prelude::*;
use sunlarder_engine::document::{DAY_MIN, Days, Field, List, Months, Schedule, Span, When};
use sunlarder_engine::words::Label as L;

use super::field::{Choice, NumberField};
use crate::load_row::clock_end;
use crate::store::WORDS;

/// The kinds of hours.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Always,
    Hours,
    Spans,
}

fn kind_of(schedule: &Schedule) -> Kind {
    match schedule.when {
        When::Always => Kind::Always,
        When::HoursPerDay(_) => Kind::Hours,
        When::Spans(_) => Kind::Spans,
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
fn converted(schedule: &Schedule, kind: Kind) -> When {
    let hours = Field::HoursPerDay.range().rounded(hours_of(schedule).min(24.0));
    match kind {
        Kind::Always => When::Always,
        Kind::Hours => When::HoursPerDay(hours),
        Kind::Spans => {
            // An evening of that length, so that the person has something to move.
            let minutes = ((hours * 60.0) as u16).clamp(15, DAY_MIN - 1);
            let from_min = (18 * 60).min(DAY_MIN - minutes);
            When::Spans(vec![Span { from_min, to_min: from_min + minutes }])
        }
    }
}

/// Editor of a schedule.
#[component]
pub(crate) fn ScheduleEditor(
    /// The schedule.
    #[prop(into)]
    value: Signal<Schedule>,
    /// Told the new one.
    #[prop(into)]
    set: Callback<Schedule>,
) -> impl IntoView {
    let kind = Memo::new(move |_| value.with(kind_of));
    let change = move |edit: &dyn Fn(&mut Schedule)| {
        let mut schedule = value.get_untracked();
        edit(&mut schedule);
        set.run(schedule);
    };
    let set_kind = move |kind| change(&|schedule| schedule.when = converted(schedule, kind));
    let hours = Signal::derive(move || match value.with(|schedule| schedule.when.clone()) {
        When::HoursPerDay(hours) => Some(hours),
        _ => None,
    });
    let set_hours = move |hours: Option<f64>| {
        if let Some(hours) = hours {
            change(&|schedule| schedule.when = When::HoursPerDay(hours));
        }
    };
    let options = vec![
        (Kind::Hours, WORDS.label(L::HoursPerDay).to_owned()),
        (Kind::Spans, WORDS.label(L::AtTheseHours).to_owned()),
        (Kind::Always, WORDS.label(L::Always).to_owned()),
    ];
    view! {
        <Choice legend=WORDS.label(L::When) options=options value=kind set=set_kind />
        {move || match kind.get() {
            Kind::Hours => view! {
                <NumberField field=Field::HoursPerDay value=hours set=set_hours slider=(0.0, 24.0, 0.25) />
            }
            .into_any(),
            Kind::Spans => view! { <Spans value=value set=set /> }.into_any(),
            Kind::Always => ().into_any(),
        }}
        <details class="more">
            <summary>{WORDS.label(L::DaysAndMonths)}</summary>
            <Weekdays value=value set=set />
            <MonthToggles value=value set=set />
        </details>
    }
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
    text.parse::<sunlarder_engine::document::ClockTime>().ok().map(|time| time.0)
}

#[component]
fn Spans(value: Signal<Schedule>, set: Callback<Schedule>) -> impl IntoView {
    let count = Memo::new(move |_| value.with(|schedule| spans_of(schedule).len()));
    let change = move |edit: &dyn Fn(&mut Vec<Span>)| {
        let mut schedule = value.get_untracked();
        let mut spans = spans_of(&schedule);
        edit(&mut spans);
        schedule.when = When::Spans(spans);
        set.run(schedule);
    };
    let full = move || count.get() >= List::Spans.limit();
    let add = move |_| {
        change(&|spans| {
            let from_min = spans.last().map_or(7 * 60, |last| last.to_min % DAY_MIN);
            spans.push(Span { from_min, to_min: (from_min + 60) % DAY_MIN.max(1) });
            spans.retain(|span| span.is_valid());
        });
    };
    let row = move |place: usize| {
        let span = move || value.with(|schedule| spans_of(schedule).get(place).copied());
        let from = move || span().map(|span| sunlarder_engine::words::clock(span.from_min));
        let to = move || span().map(|span| sunlarder_engine::words::clock(span.to_min));
        let set_from = move |text: String| {
            if let Some(minute) = minutes(&text) {
                change(&|spans| {
                    if let Some(span) = spans.get_mut(place).filter(|span| span.to_min != minute) {
                        span.from_min = minute;
                    }
                });
            }
        };
        let set_to = move |text: String| {
            if let Some(minute) = minutes(&text) {
                // Midnight as an end is the end of the day.
                let minute = if minute == 0 { DAY_MIN } else { minute };
                change(&|spans| {
                    if let Some(span) = spans.get_mut(place).filter(|span| span.from_min != minute)
                    {
                        span.to_min = minute;
                    }
                });
            }
        };
        view! {
            <li class="span">
                <input
                    type="time"
                    aria-label=WORDS.label(L::From)
                    prop:value=from
                    on:change:target=move |event| set_from(event.target().value())
                />
                <span class="to">"–"</span>
                <input
                    type="time"
                    aria-label=WORDS.label(L::Until)
                    prop:value=to
                    on:change:target=move |event| set_to(event.target().value())
                />
                <button
                    type="button"
                    class="button quiet"
                    aria-label=WORDS.label(L::RemoveHours)
                    on:click=move |_| change(&|spans| { if place < spans.len() { spans.remove(place); } })
                >
                    "×"
                </button>
            </li>
        }
    };
    view! {
        <div class="span-editor">
            <Strip value=value />
            <ul class="spans">
                <For each=move || 0..count.get() key=|place| *place children=row />
            </ul>
            <button
                type="button"
                class="button quiet"
                disabled=full
                on:click=add
            >
                {WORDS.label(L::AddHours)}
            </button>
        </div>
    }
}

/// The day as a strip with its stretches.
#[component]
fn Strip(value: Signal<Schedule>) -> impl IntoView {
    let percent = |minute: u16| format!("{:.2}%", f64::from(minute) / f64::from(DAY_MIN) * 100.0);
    let blocks = move || {
        let spans = value.with(spans_of);
        let parts = spans.into_iter().flat_map(|span| span.unwrapped());
        parts
            .filter(|(from, to)| from < to)
            .map(|(from, to)| view! { <i style:left=percent(from) style:width=percent(to - from)></i> })
            .collect_view()
    };
    let words = move || {
        let spans = value.with(spans_of);
        let words = spans.iter().map(|span| {
            format!(
                "{} – {}",
                sunlarder_engine::words::clock(span.from_min),
                clock_end(span.to_min)
            )
        });
        words.collect::<Vec<_>>().join(", ")
    };
    view! {
        <div class="strip" role="img" aria-label=words>{blocks}</div>
        <div class="strip-hours" aria-hidden="true">
            {["0", "6", "12", "18", "24"].map(|hour| view! { <span>{hour}</span> })}
        </div>
    }
}

#[component]
fn Weekdays(value: Signal<Schedule>, set: Callback<Schedule>) -> impl IntoView {
    let day = move |day: u8| {
        let has = move || value.with(|schedule| schedule.days.has(day));
        let flip = move |_| {
            let mut schedule = value.get_untracked();
            schedule.days = Days(schedule.days.0 ^ 1 << day);
            set.run(schedule);
        };
        view! {
            <label>
                <input type="checkbox" prop:checked=has on:change=flip />
                <span>{WORDS.weekday_short(usize::from(day))}</span>
            </label>
        }
    };
    view! {
        <fieldset class="days">
            <legend>{WORDS.label(L::DaysOfTheWeek)}</legend>
            {(0..7).map(day).collect_view()}
        </fieldset>
    }
}

#[component]
fn MonthToggles(value: Signal<Schedule>, set: Callback<Schedule>) -> impl IntoView {
    let month = move |month: u8| {
        let has = move || value.with(|schedule| schedule.months.has(month));
        let flip = move |_| {
            let mut schedule = value.get_untracked();
            schedule.months = Months(schedule.months.0 ^ 1 << month);
            set.run(schedule);
        };
        view! {
            <label>
                <input type="checkbox" prop:checked=has on:change=flip />
                <span>{WORDS.month_short(usize::from(month))}</span>
            </label>
        }
    };
    view! {
        <fieldset class="days">
            <legend>{WORDS.label(L::MonthsOfTheYear)}</legend>
            {(0..12).map(month).collect_view()}
        </fieldset>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn changing_how_hours_are_said_keeps_how_many_there_are() {
        let six = Schedule::daily(When::HoursPerDay(6.0));
        let spans = Schedule::daily(converted(&six, Kind::Spans));
        assert!((hours_of(&spans) - 6.0).abs() < 1e-9);
        assert_eq!(converted(&spans, Kind::Hours), When::HoursPerDay(6.0));
        let always = Schedule::daily(When::Always);
        let When::Spans(spans) = converted(&always, Kind::Spans) else { panic!("spans") };
        assert!(spans.iter().all(|span| span.is_valid()));
    }
}
