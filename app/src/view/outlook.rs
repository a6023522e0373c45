//! How long will it last? The verdict, the curve, the facts, the months.

use crate::signal::*;
use chrono::Datelike;
use sunlarder_engine::outlook::{Figure, Obstacle, Question};
use sunlarder_engine::quantity::{AmpHours, Hours};
use sunlarder_engine::words::{Label as L, Sentence, Term, Tone};
use sunlarder_worker::PLANNER;
use sunlarder_worker::leaf::Topic;

use super::compare;
use super::field::more_while;
use super::help::asked;
use super::leaf::worked;
use super::pictures::save;
use super::place::{has_place, in_month, place_name, today};
use super::table::table;
use crate::bind::{drawn, fixed, part, said, signal, watch};
use crate::chart::month_balance;
use crate::dom::node::{Child as _, View, group, node, nothing};
use crate::dom::part::{dynamic, when};
use crate::outlook_data as data;
use crate::store::{Answers, Opened, Solved, Store, WORDS, words};
use crate::worker::speaks;

/// The verdict with what explains it, or what is wrong with the plan.
pub(crate) fn verdict(store: Store) -> View {
    let place = part(store, 0, |plan, _| {
        let start = &plan.start;
        WORDS.where_and_when(
            &place_name(plan),
            start.date.month0() as usize,
            start.date.weekday().num_days_from_monday() as usize,
            &words().clock(start.time.0),
            &format!("{} %", words().decimal(start.charge_pct, 3)),
        )
    });
    let sentence = said(store, |own| Some(words().headline(&own.opening)));
    let there = memo(Box::new(move || sentence.with(Option::is_some)));
    let part_of = move |get: fn(&Sentence) -> &String| {
        memo(Box::new(move || {
            sentence.with(|own| own.as_ref().map(|own| get(own).clone()).unwrap_or_default())
        }))
    };
    let headline = when(there, move || {
        node("h1")
            .child(part_of(|said| &said.before))
            .child(
                node("em")
                    .attr("class", tone(store, sentence))
                    .child(part_of(|said| &said.key))
                    .view(),
            )
            .child(part_of(|said| &said.after))
            .view()
    });
    let lede = memo(Box::new(move || {
        store.answers.with(|answers| match &answers.0 {
            Ok(solved) => {
                words().explanation(&solved.opening, &solved.system, &|tag| store.name_of(tag))
            }
            Err(_) => String::new(),
        })
    }));
    let vital = memo(Box::new(move || {
        let of = |own: &Opened| words().vital(&own.opening, &|tag| store.name_of(tag));
        store.answers.with(|answers| answers.solved().and_then(|own| of(own)))
    }));
    let vital = dynamic(move || match vital.get() {
        None => nothing(),
        Some(vital) => node("p").attr("class", "vital").child(vital).view(),
    });
    let problem = memo(Box::new(move || {
        store.answers.with(|answers| match &answers.0 {
            Ok(_) => String::new(),
            Err(problem) => words().problem(problem, &|tag| store.name_of(tag)),
        })
    }));
    node("section")
        .attr("class", "verdict")
        .attr("aria-label", WORDS.label(L::Verdict))
        .child(node("p").attr("class", "where").child(place).view())
        .child(headline)
        .child(vital)
        .child(node("p").attr("class", "lede").attr("id", "lede").child(signal(lede)).view())
        .child(chance(store))
        .child(compare::verdict(store))
        .child(
            node("p").attr("class", "problem").attr("role", "alert").child(signal(problem)).view(),
        )
        .view()
}

/// The tone of the headline: that an average keeps up is no good news where most years do not.
fn tone(store: Store, sentence: Signal<Option<Sentence>>) -> Signal<String> {
    memo(Box::new(move || {
        let average = sentence.with(|own| own.as_ref().map_or(Tone::Plain, |own| own.tone));
        let seldom = store.worked.foretold.with(|foretold| foretold.seldom);
        let tone = if average == Tone::Good && seldom { Tone::Plain } else { average };
        tone.class().to_owned()
    }))
}

/// What weather does to the verdict. While a plan changes the sentences of before stay, faded, so that nothing jumps.
fn chance(store: Store) -> View {
    let foretold = store.worked.foretold;
    let said = memo(Box::new(move || {
        let bears = store.answers.with(|answers| answers.solved().is_some_and(|own| speaks(own)));
        if !bears {
            return String::new();
        }
        if !store.plan.with(has_place) {
            return WORDS.label(L::WeatherNeedsPlace).to_owned();
        }
        foretold.with(|foretold| match (foretold.verdict.as_str(), foretold.coming) {
            ("", true) => WORDS.label(L::WeatherComing).to_owned(),
            (verdict, _) => verdict.to_owned(),
        })
    }));
    node("p")
        .attr("class", "chance")
        .attr("id", "chance")
        .attr("aria-busy", coming(store))
        .child(signal(said))
        .view()
}

/// Whether what weather does is still being worked out.
fn coming(store: Store) -> Signal<Option<&'static str>> {
    memo(Box::new(move || store.worked.foretold.with(|foretold| foretold.coming.then_some("true"))))
}

/// What decades of weather come to.
pub(crate) fn weather(store: Store) -> View {
    let foretold = store.worked.foretold;
    let years = memo(Box::new(move || foretold.with(|foretold| foretold.years.clone())));
    let list = dynamic(move || {
        let years = years.get();
        if years.is_empty() {
            return nothing();
        }
        let line = |text: String| node("li").child(text).view();
        node("ul")
            .attr("class", "weather")
            .child(years.into_iter().map(line).collect::<Vec<_>>())
            .view()
    });
    node("section")
        .attr("class", "picture")
        .attr("aria-busy", coming(store))
        .child(
            node("div")
                .attr("class", "picture-head")
                .child(node("h2").child(WORDS.label(L::InRealWeather)).view())
                .view(),
        )
        .child(list)
        .view()
}

/// What cannot work and what must be known.
pub(crate) fn cautions(store: Store) -> View {
    let items = memo(Box::new(move || {
        store.answers.with(|answers| {
            let said =
                |own: &Obstacle| (own.stops(), words().obstacle(own, &|tag| store.name_of(tag)));
            let all = answers.solved().map(|own| own.opening.cautions().map(said).collect());
            all.unwrap_or_else(Vec::new)
        })
    }));
    let one = |(grave, text): (bool, String)| {
        node("li").attr("class", if grave { "grave" } else { "caution" }).child(text).view()
    };
    let list = dynamic(move || {
        let items = items.get();
        if items.is_empty() {
            return nothing();
        }
        let items: Vec<View> = items.into_iter().map(one).collect();
        node("ul")
            .attr("class", "cautions")
            .attr("aria-label", WORDS.label(L::Cautions))
            .child(items)
            .view()
    });
    list.view()
}

/// One of the four figures under the curve.
fn fact(
    store: Store,
    (id, label, figure, term): (&'static str, L, Figure, Term),
    value: Signal<String>,
    unit: Signal<String>,
) -> View {
    let [button, explained] = asked(store, WORDS.label(label), Topic::Term(term), "dd");
    node("div")
        .attr("class", "fact")
        .child(
            node("dt").attr("class", "fact-label").child(WORDS.label(label)).child(button).view(),
        )
        .child(
            node("dd")
                .attr("class", "fact-value")
                .attr("id", id)
                .child(value)
                .child(" ")
                .child(node("span").attr("class", "unit").child(unit).view())
                .view(),
        )
        .child(node("dd").attr("class", "against").child(compare::against(store, figure)).view())
        .child(explained)
        .view()
}

/// A charge in the unit that leads, without its name.
fn charge(own: &Opened, charge: AmpHours) -> String {
    words().charge_number(charge, own.system.bank.nominal)
}

/// The four figures under the curve.
pub(crate) fn facts(store: Store) -> View {
    let out = said(store, |own| charge(own, own.opening.budget.total));
    let into = said(store, |own| charge(own, own.opening.now.gain.kept));
    let used = said(store, |own| charge(own, own.opening.capacity.usable));
    let of = said(store, |own| {
        let bank = &own.system.bank;
        words().of_rated(bank.slowest, bank.nominal)
    });
    let kept = |solved: &Solved| WORDS.months_kept(solved.outlook.months_kept());
    let kept = drawn(store.drawn, kept);
    let fact = |what, value, unit| fact(store, what, value, unit);
    let unit = fixed(words().charge_unit());
    let facts = node("dl")
        .attr("class", "facts")
        .child(fact(("fact-out", L::OutADay, Figure::Out, Term::OutADay), out, unit))
        .child(fact(("fact-in", L::InADay, Figure::In, Term::InADay), into, unit))
        .child(fact(("fact-usable", L::MayBeUsed, Figure::Usable, Term::Usable), used, of))
        .child(fact(("fact-kept", L::KeepsUp, Figure::MonthsKept, Term::KeepsUp), kept, fixed("")))
        .view();
    // A baseline and another plan are for whoever still chooses.
    if PLANNER { group(vec![facts, compare::ways(store)]) } else { facts }
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
        match (times.to_full, times.to_empty) {
            // A run ends when the bank is empty; that it was not full by then says nothing of 31 days.
            (None, Some(_)) => {
                vec![
                    WORDS.label(L::UntilFull).to_owned(),
                    WORDS.label(L::NotBeforeEmpty).to_owned(),
                    "–".to_owned(),
                ]
            }
            (full, _) => row(L::UntilFull, full, "–".to_owned()),
        },
    ]
}

/// All times of both runs, and the days of autonomy anyone can redo by hand.
pub(crate) fn times(store: Store) -> View {
    let autonomy = |solved: &Solved| words().autonomy(solved.outlook.autonomy_days);
    node("section")
        .attr("class", "picture times")
        .child(
            node("div")
                .attr("class", "picture-head")
                .child(node("h2").child(WORDS.label(L::HowLong)).view())
                .view(),
        )
        .child(table(
            L::HowLong,
            vec![L::Time, L::MeanWeather, L::WithoutSun],
            drawn(store.drawn, times_rows),
        ))
        .child(
            node("p")
                .attr("class", "note")
                .child(WORDS.label(L::Autonomy))
                .child(": ")
                .child(
                    node("strong")
                        .attr("id", "autonomy")
                        .child(drawn(store.drawn, autonomy))
                        .view(),
                )
                .child(". ")
                .child(WORDS.label(L::AutonomyHint))
                .view(),
        )
        .child(worked(store, L::HowAutonomy, Question::Autonomy))
        .view()
}

/// The twelve months, in against out.
pub(crate) fn months(store: Store) -> View {
    let pick = Callback::new(move |month: usize| {
        store.edit("month", &mut |plan| {
            plan.start.date = in_month(plan.start.date, month, today());
        });
    });
    let tightest = drawn(store.drawn_below, |solved| {
        words().tightest(&solved.outlook, solved.system.bank.nominal)
    });
    node("figure")
        .attr("class", "picture")
        .child(
            node("figcaption")
                .attr("class", "picture-head")
                .child(node("h2").child(WORDS.label(L::MonthByMonth)).view())
                .child(
                    node("span")
                        .attr("class", "soft")
                        .child(WORDS.label(words().fitting(L::MonthLegend)))
                        .view(),
                )
                .view(),
        )
        .child(month_balance(
            compare::with_months(store, drawn(store.drawn_below, data::months)),
            pick,
        ))
        .child(node("p").attr("class", "note").attr("id", "tightest").child(tightest).view())
        .child(more_while("more", L::AsATable, move || {
            compare::anew(move || {
                let fitting = |label| words().fitting(label);
                let heads = [
                    L::Month,
                    L::PeakSunHours,
                    fitting(L::InAh),
                    fitting(L::OutAh),
                    fitting(L::BalanceAh),
                    fitting(L::UsableAh),
                    L::OfTenYears,
                ];
                let heads = compare::heads(store, &heads, L::BaselineBalance);
                let rows = memo(Box::new(move || {
                    let years = store.worked.foretold.with(|foretold| foretold.months.clone());
                    let rows = |answers: &Answers| {
                        let solved = answers.solved()?;
                        let rows =
                            |baseline: Option<&Solved>| data::month_rows(solved, &years, baseline);
                        Some(compare::with_baseline(store, rows))
                    };
                    store.drawn_below.with(rows).unwrap_or_default()
                }));
                table(L::MonthByMonth, heads, rows)
            })
        }))
        .child(save(store, L::MonthByMonth))
        .child(worked(store, L::HowMonth, Question::Month))
        .view()
}

/// The dark bar of a phone that always holds the verdict, and what a screen reader hears of a changed one.
pub(crate) fn bar(store: Store) -> View {
    let short = said(store, |own| WORDS.short(&own.opening));
    let balance =
        said(store, |own| words().day_balance(own.opening.now.balance, own.system.bank.nominal));
    node("aside")
        .attr("class", "bar")
        .attr("aria-label", WORDS.label(L::InShort))
        .child(
            node("span")
                .attr("class", "bar-verdict")
                .child(node("strong").child(short).view())
                .view(),
        )
        .child(node("span").attr("class", "bar-figure").child(balance).view())
        .child(
            node("p")
                .attr("class", "unseen")
                .attr("role", "status")
                .attr("aria-live", "polite")
                .child(signal(settled(short)))
                .view(),
        )
        .view()
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
