//! The gauge of a plan for programs. The unit stands at the end of each name.
//!
//! | end of name | unit |
//! |---|---|
//! | `_ah`, `_a`, `_v`, `_h` | amp-hours, amps, volts, hours |
//! | `_pct`, `_ratio` | percent, a plain number |
//!
//! `settings` have `value`, `least` and `most` with the end of their unit; `setting`, `point`, `mistake` and `symptom` are words of the
//! program that stay the same, every other text may be reworded. `year` is what the gauge of the card would show in a year of weather that
//! might be; `years` the least and the most of ten such years; with a mistake `mistake.year` is what it makes of it. `checks` have no bounds where something is done or not,
//! and `read` and `judged` where the plan states a reading. `fulls` counts how often it set itself to
//! full, `fulls_by_month` in which month, January first. Fields may be added; none is renamed within `format` 1.

use serde::Serialize;
use serde_json::{Map, Value, json};
use sunlarder_engine::gauge::{ChargerPoints, Check, Equalise, Note, Setting, Span, Trial, Years};
use sunlarder_engine::quantity::{Hours, Percent, Unit};

use super::{Gauged, MISTAKES};
use crate::words;

/// Version of these fields.
const FORMAT: u32 = 1;

/// The gauge as text of JSON.
pub(crate) fn json(gauged: &Gauged) -> String {
    let notes = Note::of(&gauged.system, &gauged.card);
    let notes: Vec<String> = notes.iter().map(|own| words().gauge_note(own)).collect();
    let tried = gauged.tried.as_ref().map(|own| {
        json!({
            "mistake": MISTAKES.iter().find(|(_, mistake)| *mistake == own.mistake).map(|(name, _)| name),
            "text": words().mistake(own.mistake),
            "symptom": format!("{:?}", own.mistake.telltale()),
            "symptom_text": words().mistake_shows(own.mistake.telltale()),
            "shows": own.shows(),
            "year": year(gauged, &own.wrong),
        })
    });
    let all = json!({
        "format": FORMAT,
        "plan": gauged.plan.name,
        "label_ah": gauged.card.label,
        "health_pct": gauged.card.health,
        "cold_ratio": gauged.card.cold,
        "rate_ratio": gauged.card.rate,
        "settings": gauged.card.settings.iter().map(setting).collect::<Vec<_>>(),
        "tail_a": gauged.card.gauge().tail_current(),
        "chargers": chargers(gauged),
        "notes": notes,
        "year": year(gauged, &gauged.right),
        "years": gauged.years.map(|own| years(&own)),
        "mistake": tried,
        "checks": gauged.sheet.checks.iter().map(|own| check(gauged, own)).collect::<Vec<_>>(),
    });
    // Numbers, texts and lists only: nothing in it can fail to serialise.
    serde_json::to_string_pretty(&all).unwrap_or_default() + "\n"
}

/// The end of a name that tells a unit.
const fn end(unit: Unit) -> &'static str {
    match unit {
        Unit::AmpHour => "ah",
        Unit::Volt => "v",
        Unit::Amp => "a",
        Unit::Hour => "h",
        Unit::Percent => "pct",
        _ => "ratio",
    }
}

/// Figures of one unit by their names.
fn in_unit(fields: &mut Map<String, Value>, unit: Unit, figures: &[(&str, f64)]) {
    for (name, value) in figures {
        fields.insert(format!("{name}_{}", end(unit)), json!(value));
    }
}

fn setting(own: &Setting) -> Value {
    let told = words().setting(own.kind);
    let mut fields = Map::new();
    fields.insert("setting".into(), json!(format!("{:?}", own.kind)));
    fields.insert("question".into(), json!(words().gauge_question(own.kind.ask())));
    let figures = [("value", own.value), ("least", own.least), ("most", own.most)];
    in_unit(&mut fields, own.kind.unit(), &figures);
    let texts =
        [("name", told.name), ("why", told.why), ("too_high", told.high), ("too_low", told.low)];
    for (name, text) in texts {
        fields.insert(name.into(), json!(text));
    }
    Value::Object(fields)
}

fn check(gauged: &Gauged, own: &Check) -> Value {
    let mut fields = Map::new();
    let name_of = |tag| gauged.name_of(tag);
    let point = format!("{:?}", own.point);
    let kind = point.split(['(', ' ']).next().unwrap_or_default();
    fields.insert("point".into(), json!(kind));
    fields.insert("name".into(), json!(words().checked(&own.point, &name_of)));
    fields.insert("how".into(), json!(words().how_to_check(&own.point)));
    if let (Some(unit), Some(expected)) = (own.point.unit(), own.expected) {
        let figures = [("expected", expected), ("least", own.least), ("most", own.most)];
        in_unit(&mut fields, unit, &figures);
    }
    if let Some(read) = own.read_in(&gauged.plan) {
        if let Some(unit) = own.point.unit() {
            in_unit(&mut fields, unit, &[("read", read.value)]);
        }
        fields.insert("judged".into(), json!(gauged.read(own).map(|(_, meaning)| meaning)));
    }
    Value::Object(fields)
}

fn span(own: Span) -> Value {
    json!({ "least_v": own.0, "most_v": own.1 })
}

fn chargers(gauged: &Gauged) -> Value {
    let points = ChargerPoints::of(&gauged.system.bank);
    json!({
        "absorption_v": points.absorption,
        "absorption_usual": span(points.absorption_usual),
        "float": points.float.map(span),
        "float_optional": points.float_optional,
        "equalise": match points.equalise {
            Equalise::Supervised(own) => span(own),
            Equalise::UnlessSheet | Equalise::Never => Value::Null,
        },
        "tail_pct": points.tail,
        "lower_for_each_degree_v": points.by_kelvin,
        "cut_off_v": points.cut_off,
        "cut_off_usual": span(points.cut_off_usual),
        "reconnect_v": points.reconnect,
    })
}

fn years(own: &Years) -> Value {
    let ends =
        |(least, most): (f64, f64)| json!({ "least_pct": least * 100.0, "most_pct": most * 100.0 });
    let (fulls, longest) = (own.fulls_a_month, own.longest_since_full);
    json!({
        "text": words().gauge_years(own),
        "years": own.count,
        "fulls_a_month": { "least_ratio": fulls.0, "most_ratio": fulls.1 },
        "longest_since_full": { "least_h": longest.0, "most_h": longest.1 },
        "over": ends(own.over),
        "under": ends(own.under),
    })
}

#[derive(Serialize)]
struct Year {
    text: String,
    fulls: usize,
    fulls_by_month: [u16; 12],
    wrong_fulls: usize,
    wrong_empties: usize,
    emptiest_full_pct: Option<Percent>,
    over_pct: Percent,
    under_pct: Percent,
    mean_off_pct: Percent,
    drift_a_day_pct: Percent,
    pace_ratio: f64,
    out_over_in_pct: Option<Percent>,
    longest_since_full_h: Hours,
    at_lowest: Option<Shown>,
}

#[derive(Serialize)]
struct Shown {
    shown_pct: Percent,
    truth_pct: Percent,
}

fn year(gauged: &Gauged, trial: &Trial) -> Year {
    let share = Percent::of_ratio;
    Year {
        text: words().trial(trial),
        fulls: trial.fulls.len(),
        fulls_by_month: trial.fulls_by_month(&gauged.system),
        wrong_fulls: trial.wrong_fulls().count(),
        wrong_empties: trial.wrong_empties.len(),
        emptiest_full_pct: trial.emptiest_full().map(share),
        over_pct: share(trial.over),
        under_pct: share(trial.under),
        mean_off_pct: share(trial.mean_off),
        drift_a_day_pct: trial.drift,
        pace_ratio: trial.pace,
        out_over_in_pct: trial.efficiency,
        longest_since_full_h: trial.longest_since_full,
        at_lowest: trial
            .at_lowest()
            .map(|own| Shown { shown_pct: share(own.shown), truth_pct: share(own.truth) }),
    }
}
