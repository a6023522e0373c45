//! How long will it last? The verdict, the curve, the facts, the months.

use chrono::Datelike;
use leptos::prelude::*;
use leptos::web_sys;
use sunlarder_engine::quantity::Hours;
use sunlarder_engine::words::{Label as L, NameOf, rounded};
use sunlarder_engine::working::Tag;
use wasm_bindgen::JsCast;

use super::place::place_name;
use super::working::Worked;
use crate::bind::{part, said};
use crate::chart::{DayStrip, MonthBalance, RemainingCurve};
use crate::outlook_data as data;
use crate::store::{Solved, Store, WORDS};

/// The verdict with what explains it, or what is wrong with the plan.
#[component]
pub(crate) fn Verdict() -> impl IntoView {
    let store = Store::get();
    let place = part(store, |plan| {
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
    let lede = said(store, move |solved| {
        let name: NameOf<'_> = &|tag: Tag| store.name_of(tag);
        WORDS.explanation(&solved.outlook, &solved.system, name)
    });
    let problem = move || {
        store.answers.with(|answers| {
            let problem = answers.0.as_ref().err()?;
            Some(WORDS.problem(problem, &|tag| store.name_of(tag)))
        })
    };
    view! {
        <section class="verdict" aria-label=WORDS.label(L::Verdict)>
            <p class="where">{place}</p>
            {move || sentence.get().map(|sentence| view! {
                <h1>{sentence.before} <em class=sentence.tone.class()>{sentence.key}</em> {sentence.after}</h1>
            })}
            <p class="lede">{lede}</p>
            {move || problem().map(|problem| view! { <p class="problem" role="alert">{problem}</p> })}
        </section>
    }
}

/// What cannot work and what must be known.
#[component]
pub(crate) fn Cautions() -> impl IntoView {
    let store = Store::get();
    let items = move || {
        store.answers.with(|answers| {
            let obstacles = answers.solved().map(|solved| solved.outlook.obstacles.clone());
            obstacles
                .unwrap_or_default()
                .iter()
                .map(|own| (own.stops(), WORDS.obstacle(own, &|tag| store.name_of(tag))))
                .collect::<Vec<_>>()
        })
    };
    move || {
        let items = items();
        (!items.is_empty()).then(|| view! {
            <ul class="cautions" aria-label=WORDS.label(L::Cautions)>
                {items.into_iter().map(|(grave, text)| view! { <li class:grave=grave>{text}</li> }).collect_view()}
            </ul>
        })
    }
}

/// The remaining-time curve with its legend, its reading and its table.
#[component]
pub(crate) fn Now() -> impl IntoView {
    let store = Store::get();
    let curve = said(store, data::curve);
    let cursor = RwSignal::new(None::<f64>);
    let reading = move |hour: f64| {
        store.answers.with(|answers| {
            answers.solved().map(|solved| data::reading(solved, hour)).unwrap_or_default()
        })
    };
    let rows = RwSignal::new(false);
    view! {
        <figure class="now" aria-label=WORDS.label(L::RemainingTime)>
            <RemainingCurve data=curve cursor=cursor value_text=reading cursor_label=Signal::derive(|| WORDS.label(L::ReadTheCurve).to_owned()) />
            <p class="readout">{move || cursor.get().map_or_else(|| WORDS.label(L::ScrubHint).to_owned(), reading)}</p>
            <ul class="legend">
                <li class="key key-typical">{WORDS.label(L::MeanWeather)}</li>
                <li class="key key-dark">{WORDS.label(L::WithoutSun)}</li>
                <li class="key key-reserve">{WORDS.label(L::ReserveWord)}</li>
            </ul>
            <Table title=L::AsATable open=rows>{move || rows.get().then(|| view! { <CurveTable /> })}</Table>
            <Worked title=L::HowWorkedOut work=|solved, working| {
                solved.outlook.capacity_worked(&solved.system, working);
                solved.outlook.run.account(working);
            } />
        </figure>
    }
}

/// A table behind a picture, made when it is opened.
#[component]
fn Table(title: L, open: RwSignal<bool>, children: Children) -> impl IntoView {
    view! {
        <details class="more" on:toggle=move |event| {
            let details = event.target().and_then(|own| own.dyn_into::<web_sys::Element>().ok());
            open.set(details.is_some_and(|own| own.has_attribute("open")));
        }>
            <summary>{WORDS.label(title)}</summary>
            {children()}
        </details>
    }
}

#[component]
fn CurveTable() -> impl IntoView {
    let store = Store::get();
    let rows = move || {
        store.answers.with(|answers| {
            answers.solved().map(|solved| data::curve_rows(solved)).unwrap_or_default()
        })
    };
    view! {
        <div class="table" tabindex="0" role="region" aria-label=WORDS.label(L::RemainingTime)>
            <table>
                <thead><tr>
                    <th scope="col">{WORDS.label(L::Time)}</th>
                    <th scope="col">{WORDS.label(L::MeanWeather)} ", %"</th>
                    <th scope="col">{WORDS.label(L::WithoutSun)} ", %"</th>
                </tr></thead>
                <tbody>{move || rows().into_iter().map(|row| view! {
                    <tr><th scope="row">{row.when}</th><td>{row.charge}</td><td>{row.dark}</td></tr>
                }).collect_view()}</tbody>
            </table>
        </div>
    }
}

/// The four figures under the curve.
#[component]
pub(crate) fn Facts() -> impl IntoView {
    let store = Store::get();
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
            <div class="fact">
                <dt class="fact-label">{WORDS.label(L::OutADay)}</dt>
                <dd class="fact-value" id="fact-out">{out} " " <span class="unit">"Ah"</span></dd>
            </div>
            <div class="fact">
                <dt class="fact-label">{WORDS.label(L::InADay)}</dt>
                <dd class="fact-value" id="fact-in">{into} " " <span class="unit">"Ah"</span></dd>
            </div>
            <div class="fact">
                <dt class="fact-label">{WORDS.label(L::MayBeUsed)}</dt>
                <dd class="fact-value" id="fact-usable">{used} " " <span class="unit">{of}</span></dd>
            </div>
            <div class="fact">
                <dt class="fact-label">{WORDS.label(L::KeepsUp)}</dt>
                <dd class="fact-value" id="fact-kept">{kept}</dd>
            </div>
        </dl>
    }
}

/// All times of both runs, and the days of autonomy anyone can redo by hand.
#[component]
pub(crate) fn Times() -> impl IntoView {
    let store = Store::get();
    let time = |at: Option<Hours>| at.map_or_else(|| WORDS.beyond(), |at| WORDS.duration(at));
    let row = move |label: L,
                    lit: fn(&Solved) -> Option<Hours>,
                    dark: Option<fn(&Solved) -> Option<Hours>>| {
        let lit = said(store, move |solved| time(lit(solved)));
        let dark = dark.map(|dark| said(store, move |solved| time(dark(solved))));
        view! {
            <tr>
                <th scope="row">{WORDS.label(label)}</th>
                <td class="text">{lit}</td>
                <td class="text">{dark}</td>
            </tr>
        }
    };
    let autonomy = said(store, |solved| WORDS.autonomy(solved.outlook.autonomy_days));
    view! {
        <section class="picture">
            <div class="picture-head"><h2>{WORDS.label(L::HowLong)}</h2></div>
            <div class="table" tabindex="0" role="region" aria-label=WORDS.label(L::HowLong)>
                <table>
                    <thead><tr>
                        <td></td>
                        <th scope="col" class="text">{WORDS.label(L::MeanWeather)}</th>
                        <th scope="col" class="text">{WORDS.label(L::WithoutSun)}</th>
                    </tr></thead>
                    <tbody>
                        {row(L::UntilReserve, |own| own.outlook.run.reserve_at, Some(|own| own.outlook.dark.reserve_at))}
                        {row(L::UntilEmpty, |own| own.outlook.run.empty_at, Some(|own| own.outlook.dark.empty_at))}
                        {row(L::UntilFull, |own| own.outlook.run.full_at, None)}
                    </tbody>
                </table>
            </div>
            <p class="note">{WORDS.label(L::Autonomy)} ": " <strong id="autonomy">{autonomy}</strong> ". " {WORDS.label(L::AutonomyHint)}</p>
            <Worked title=L::HowAutonomy work=|solved, working| {
                solved.outlook.autonomy_worked(&solved.system, working);
            } />
        </section>
    }
}

/// The typical day of the month.
#[component]
pub(crate) fn DayPicture() -> impl IntoView {
    let store = Store::get();
    let strip = said(store, data::day);
    let title = said(store, |solved| WORDS.a_day_in(solved.outlook.month));
    view! {
        <figure class="picture">
            <figcaption class="picture-head"><h2>{title}</h2> <span class="soft">{WORDS.label(L::DayLegend)}</span></figcaption>
            <DayStrip data=strip />
            <Worked title=L::HowBudget work=|solved, working| {
                solved.outlook.budget_worked(&solved.system, working);
            } />
        </figure>
    }
}

/// The twelve months, in against out.
#[component]
pub(crate) fn Months() -> impl IntoView {
    let store = Store::get();
    let bars = said(store, data::months);
    let pick = move |month: usize| {
        store
            .edit("month", |plan| plan.start.date = super::place::in_month(plan.start.date, month));
    };
    let tightest = said(store, |solved| WORDS.tightest(&solved.outlook));
    let rows = RwSignal::new(false);
    view! {
        <figure class="picture">
            <div class="picture-head"><h2>{WORDS.label(L::MonthByMonth)}</h2> <span class="soft">{WORDS.label(L::MonthLegend)}</span></div>
            <MonthBalance data=bars on_pick=pick />
            <p class="note" id="tightest">{tightest}</p>
            <Table title=L::AsATable open=rows>{move || rows.get().then(|| view! { <MonthTable /> })}</Table>
            <Worked title=L::HowMonth work=|solved, working| {
                let month = solved.outlook.month;
                solved.outlook.month_worked(&solved.system, month, working);
            } />
        </figure>
    }
}

#[component]
fn MonthTable() -> impl IntoView {
    let store = Store::get();
    let rows = move || {
        store.answers.with(|answers| {
            let Some(solved) = answers.solved() else { return Vec::new() };
            let row = |month: &sunlarder_engine::outlook::Month| {
                (
                    WORDS.month(month.month),
                    [
                        month.irradiation.0,
                        month.gain.kept.0,
                        month.need.0,
                        month.balance.0,
                        month.usable.0,
                    ]
                    .map(rounded),
                )
            };
            solved.outlook.months.iter().map(row).collect()
        })
    };
    view! {
        <div class="table" tabindex="0" role="region" aria-label=WORDS.label(L::MonthByMonth)>
            <table>
                <thead><tr>
                    <th scope="col">{WORDS.label(L::Month)}</th>
                    <th scope="col">{WORDS.label(L::PeakSunHours)}</th>
                    <th scope="col">{WORDS.label(L::InWord)} ", Ah"</th>
                    <th scope="col">{WORDS.label(L::OutWord)} ", Ah"</th>
                    <th scope="col">{WORDS.label(L::BalanceWord)} ", Ah"</th>
                    <th scope="col">{WORDS.label(L::MayBeUsed)} ", Ah"</th>
                </tr></thead>
                <tbody>{move || rows().into_iter().map(|(name, figures)| view! {
                    <tr><th scope="row">{name}</th>{figures.map(|figure| view! { <td>{figure}</td> }).collect_view()}</tr>
                }).collect_view()}</tbody>
            </table>
        </div>
    }
}

/// The dark bar of a phone that always holds the verdict.
#[component]
pub(crate) fn Bar() -> impl IntoView {
    let store = Store::get();
    let short = said(store, |solved| WORDS.short(&solved.outlook));
    let balance = said(store, |solved| {
        let month = solved.outlook.months.get(solved.outlook.month);
        month.map_or_else(String::new, |month| WORDS.day_balance(month.balance))
    });
    view! {
        <div class="bar">
            <span class="bar-verdict"><strong>{short}</strong></span>
            <span class="bar-figure">{balance}</span>
        </div>
        <p class="unseen" role="status" aria-live="polite">{settled(short)}</p>
    }
}

/// A text that changes only once it has been the same for a while, so that a screen reader hears one verdict, not every pixel of
/// a slider.
fn settled(text: Signal<String>) -> RwSignal<String> {
    let quiet = RwSignal::new(String::new());
    let turn = StoredValue::new(0u32);
    Effect::new(move |_| {
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
    });
    quiet
}
