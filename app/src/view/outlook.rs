//! How long will it last? The verdict, the curve, the facts, the months.

use chrono::Datelike;
use leptos::prelude::*;
use sunlarder_engine::quantity::Hours;
use sunlarder_engine::words::{Label as L, rounded};

use super::field::more_while;
use super::part::dynamic;
use super::place::place_name;
use super::table::table;
use super::working::worked;
use crate::bind::{fixed, memo, part, said, signal, watch};
use crate::chart::{DayStrip, MonthBalance, RemainingCurve};
use crate::outlook_data as data;
use crate::store::{Solved, Store, WORDS};

/// The verdict with what explains it, or what is wrong with the plan.
pub(crate) fn verdict(store: Store) -> AnyView {
    let place = part(store, 0, |plan, _| {
        let start = &plan.start;
        WORDS.where_and_when(
            &place_name(plan),
            start.date.month0() as usize,
            start.date.weekday().num_days_from_monday() as usize,
            &start.time.to_string(),
            &format!("{} %", rounded(start.charge_pct)),
        )
    });
    let sentence = said(store, |solved| Some(WORDS.headline(&solved.outlook)));
    let headline = dynamic(move || {
        match sentence.get() {
        None => ().into_any(),
        Some(said) => {
            view! { <h1>{said.before} <em class=said.tone.class()>{said.key}</em> {said.after}</h1> }.into_any()
        }
    }
    });
    let lede = memo(Box::new(move || {
        store.answers.with(|answers| match &answers.0 {
            Ok(solved) => {
                WORDS.explanation(&solved.outlook, &solved.system, &|tag| store.name_of(tag))
            }
            Err(_) => String::new(),
        })
    }));
    let problem = memo(Box::new(move || {
        store.answers.with(|answers| match &answers.0 {
            Ok(_) => String::new(),
            Err(problem) => WORDS.problem(problem, &|tag| store.name_of(tag)),
        })
    }));
    view! {
        <section class="verdict" aria-label=WORDS.label(L::Verdict)>
            <p class="where">{place}</p>
            {headline}
            <p class="lede" id="lede">{signal(lede)}</p>
            <p class="problem" role="alert">{signal(problem)}</p>
        </section>
    }
    .into_any()
}

/// What cannot work and what must be known.
pub(crate) fn cautions(store: Store) -> AnyView {
    let items = memo(Box::new(move || {
        store.answers.with(|answers| {
            let obstacles = answers.solved().map(|solved| solved.outlook.obstacles.clone());
            let said = |own: &sunlarder_engine::outlook::Obstacle| {
                (own.stops(), WORDS.obstacle(own, &|tag| store.name_of(tag)))
            };
            obstacles.unwrap_or_default().iter().map(said).collect::<Vec<_>>()
        })
    }));
    let one = |(grave, text): (bool, String)| {
        view! { <li class=if grave { "grave" } else { "caution" }>{text}</li> }.into_any()
    };
    let list = dynamic(move || {
        let items = items.get();
        if items.is_empty() {
            return ().into_any();
        }
        let items: Vec<AnyView> = items.into_iter().map(one).collect();
        view! { <ul class="cautions" aria-label=WORDS.label(L::Cautions)>{items}</ul> }.into_any()
    });
    list.into_any()
}

/// The remaining-time curve with its legend, its reading and its table.
pub(crate) fn now(store: Store) -> AnyView {
    let cursor = RwSignal::new(None::<f64>);
    let reading = Callback::new(move |hour: f64| {
        store.answers.with(|answers| {
            answers.solved().map(|solved| data::reading(solved, hour)).unwrap_or_default()
        })
    });
    let readout = memo(Box::new(move || match cursor.get() {
        Some(hour) => reading.run(hour),
        None => WORDS.label(L::ScrubHint).to_owned(),
    }));
    let key = |class: &'static str, label: L| {
        view! { <li class=class>{WORDS.label(label)}</li> }.into_any()
    };
    let keys = vec![
        key("key key-typical", L::MeanWeather),
        key("key key-dark", L::WithoutSun),
        key("key key-reserve", L::ReserveWord),
    ];
    view! {
        <figure class="now" aria-label=WORDS.label(L::RemainingTime)>
            <h2 class="unseen">{WORDS.label(L::RemainingTime)}</h2>
            <RemainingCurve data=said(store, data::curve) cursor=cursor value_text=reading
                cursor_label=fixed(WORDS.label(L::ReadTheCurve)) />
            <p class="readout">{signal(readout)}</p>
            <ul class="legend">{keys}</ul>
            {more_while("more", L::AsATable, move || {
                let heads = vec![L::Time, L::MeanWeatherPercent, L::WithoutSunPercent];
                table(L::RemainingTime, heads, said(store, data::curve_rows))
            })}
            {worked(store, L::HowWorkedOut, |solved, working| {
                solved.outlook.capacity_worked(&solved.system, working);
                solved.outlook.run.account(working);
            })}
        </figure>
    }
    .into_any()
}

/// One of the four figures under the curve.
fn fact(id: &'static str, label: L, value: Signal<String>, unit: Signal<String>) -> AnyView {
    view! {
        <div class="fact">
            <dt class="fact-label">{WORDS.label(label)}</dt>
            <dd class="fact-value" id=id>{value} " " <span class="unit">{unit}</span></dd>
        </div>
    }
    .into_any()
}

/// The four figures under the curve.
pub(crate) fn facts(store: Store) -> AnyView {
    let out = said(store, |solved| rounded(solved.outlook.budget.total.0));
    let into = said(store, |solved| {
        let month = solved.outlook.months.get(solved.outlook.month);
        month.map_or_else(String::new, |month| rounded(month.gain.kept.0))
    });
    let used = said(store, |solved| rounded(solved.outlook.capacity.usable.0));
    let of = said(store, |solved| WORDS.of_rated(&rounded(solved.system.bank.rated.0)));
    let kept = said(store, |solved| WORDS.months_kept(solved.outlook.months_kept()));
    view! {
        <dl class="facts">
            {fact("fact-out", L::OutADay, out, fixed("Ah"))}
            {fact("fact-in", L::InADay, into, fixed("Ah"))}
            {fact("fact-usable", L::MayBeUsed, used, of)}
            {fact("fact-kept", L::KeepsUp, kept, fixed(""))}
        </dl>
    }
    .into_any()
}

/// A length of time, or that it is longer than the longest run.
fn time(at: Option<Hours>) -> String {
    at.map_or_else(|| WORDS.beyond(), |at| WORDS.duration(at))
}

fn times_rows(solved: &Solved) -> Vec<Vec<String>> {
    let times = solved.outlook.times();
    let row = |label: L, lit: Option<Hours>, dark: String| {
        vec![WORDS.label(label).to_owned(), time(lit), dark]
    };
    vec![
        row(L::UntilReserve, times.to_reserve, time(times.dark_to_reserve)),
        row(L::UntilEmpty, times.to_empty, time(times.dark_to_empty)),
        row(L::UntilFull, times.to_full, "–".to_owned()),
    ]
}

/// All times of both runs, and the days of autonomy anyone can redo by hand.
pub(crate) fn times(store: Store) -> AnyView {
    let autonomy = said(store, |solved| WORDS.autonomy(solved.outlook.autonomy_days));
    view! {
        <section class="picture times">
            <div class="picture-head"><h2>{WORDS.label(L::HowLong)}</h2></div>
            {table(L::HowLong, vec![L::Time, L::MeanWeather, L::WithoutSun], said(store, times_rows))}
            <p class="note">{WORDS.label(L::Autonomy)} ": " <strong id="autonomy">{autonomy}</strong> ". " {WORDS.label(L::AutonomyHint)}</p>
            {worked(store, L::HowAutonomy, |solved, working| {
                solved.outlook.autonomy_worked(&solved.system, working);
            })}
        </section>
    }
    .into_any()
}

/// The typical day of the month.
pub(crate) fn day_picture(store: Store) -> AnyView {
    let title = said(store, |solved| WORDS.a_day_in(solved.outlook.month));
    view! {
        <figure class="picture">
            <figcaption class="picture-head"><h2>{title}</h2> <span class="soft">{WORDS.label(L::DayLegend)}</span></figcaption>
            <DayStrip data=said(store, data::day) />
            {more_while("more", L::AsATable, move || {
                table(L::DayInWords, vec![L::Hour, L::InWatts24, L::OutWatts24], said(store, data::day_rows))
            })}
            {worked(store, L::HowBudget, |solved, working| {
                solved.outlook.budget_worked(&solved.system, working);
            })}
        </figure>
    }
    .into_any()
}

/// The twelve months, in against out.
pub(crate) fn months(store: Store) -> AnyView {
    let pick = move |month: usize| {
        store.edit("month", &mut |plan| {
            plan.start.date = super::place::in_month(plan.start.date, month)
        });
    };
    let tightest = said(store, |solved| WORDS.tightest(&solved.outlook));
    view! {
        <figure class="picture">
            <figcaption class="picture-head">
                <h2>{WORDS.label(L::MonthByMonth)}</h2> <span class="soft">{WORDS.label(L::MonthLegend)}</span>
            </figcaption>
            <MonthBalance data=said(store, data::months) on_pick=pick />
            <p class="note" id="tightest">{tightest}</p>
            {more_while("more", L::AsATable, move || {
                let heads = vec![L::Month, L::PeakSunHours, L::InAh, L::OutAh, L::BalanceAh, L::UsableAh];
                table(L::MonthByMonth, heads, said(store, data::month_rows))
            })}
            {worked(store, L::HowMonth, |solved, working| {
                let month = solved.outlook.month;
                solved.outlook.month_worked(&solved.system, month, working);
            })}
        </figure>
    }
    .into_any()
}

/// The dark bar of a phone that always holds the verdict, and what a screen reader hears of a changed one.
pub(crate) fn bar(store: Store) -> AnyView {
    let short = said(store, |solved| WORDS.short(&solved.outlook));
    let balance = said(store, |solved| {
        let month = solved.outlook.months.get(solved.outlook.month);
        month.map_or_else(String::new, |month| WORDS.day_balance(month.balance))
    });
    view! {
        <aside class="bar" aria-label=WORDS.label(L::InShort)>
            <span class="bar-verdict"><strong>{short}</strong></span>
            <span class="bar-figure">{balance}</span>
            <p class="unseen" role="status" aria-live="polite">{signal(settled(short))}</p>
        </aside>
    }
    .into_any()
}

/// A text that changes only once it has been the same for a while, so that a screen reader hears one verdict, not every pixel of
/// a slider.
fn settled(text: Signal<String>) -> RwSignal<String> {
    let quiet = RwSignal::new(String::new());
    let turn = StoredValue::new(0u32);
    watch(Box::new(move || {
        let now = text.get();
        turn.update_value(|turn| *turn = turn.wrapping_add(1));
        let mine = turn.get_value();
        set_timeout(
            move || {
                if turn.try_get_value() == Some(mine) {
                    quiet.set(now);
                }
            },
            core::time::Duration::from_millis(900),
        );
    }));
    quiet
}
