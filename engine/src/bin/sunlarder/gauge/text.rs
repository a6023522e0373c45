//! The gauge of a plan as a page of text.

use sunlarder_engine::gauge::{Ask, ChargerPoints, Kind, Note, Span, Trial};
use sunlarder_engine::quantity::{Unit, Volts};
use sunlarder_engine::words::command_line::Caption;
use sunlarder_engine::words::gauge::OnGauge;

use super::Gauged;
use crate::table::Table;
use crate::words;

fn on(what: OnGauge) -> &'static str {
    words().on_gauge(what)
}

fn title(gauged: &Gauged) -> String {
    let plan = &gauged.plan;
    let name = if plan.name.is_empty() { words().caption(Caption::Unnamed) } else { &plan.name };
    format!("{name}\n")
}

fn joined(parts: impl IntoIterator<Item = String>) -> String {
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("\n")
}

/// Settings, set-points, what to know, and a year of it.
pub(crate) fn text(gauged: &Gauged) -> String {
    let year = match &gauged.tried {
        None => {
            let years = gauged.years.map(|own| format!("  {}\n", words().gauge_years(&own)));
            let years = years.unwrap_or_default();
            format!("{}\n{}{years}", on(OnGauge::InAYear), shown(&gauged.right))
        }
        Some(tried) => mistaken(tried),
    };
    joined([
        title(gauged),
        on(OnGauge::Settings).to_owned() + "\n",
        joined(Ask::ALL.map(|ask| settings(gauged, ask))),
        chargers(gauged),
        to_know(gauged),
        year,
    ])
}

fn settings(gauged: &Gauged, ask: Ask) -> String {
    let say = words();
    let own = gauged.card.settings.iter().filter(|own| own.kind.ask() == ask);
    let lines = own.map(|setting| {
        let [value, range] = say.to_enter(setting);
        let told = say.setting(setting.kind);
        let which = if setting.kind == Kind::Tail { tail(gauged) } else { String::new() };
        format!(
            "  {}: {value}{which} ({range})\n    {}\n    {}: {} {}: {}\n",
            told.name,
            told.why,
            capital(on(OnGauge::TooHigh)),
            told.high,
            capital(on(OnGauge::TooLow)),
            told.low
        )
    });
    format!("{}\n{}", say.gauge_question(ask), lines.collect::<String>())
}

/// The tail current in amps, for gauges that ask for it so.
fn tail(gauged: &Gauged) -> String {
    format!(" = {}", words().metered(gauged.card.gauge().tail_current().0, Unit::Amp))
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}

fn chargers(gauged: &Gauged) -> String {
    let points = ChargerPoints::of(&gauged.system.bank);
    let say = words();
    let volts = |own: Volts| say.metered(own.0, Unit::Volt);
    let span = |own: Span| say.metered_between(own.0.0, own.1.0, Unit::Volt);
    let usual = |own: Span| format!("{} {}", on(OnGauge::Usual), span(own));
    let mut table = Table::default();
    let absorption = [volts(points.absorption), usual(points.absorption_usual)];
    table.row([on(OnGauge::Absorption).to_owned()].into_iter().chain(absorption));
    let float = points.float.map_or(on(OnGauge::None).to_owned(), span);
    let optional = if points.float_optional { on(OnGauge::OrNone) } else { "" };
    table.row([on(OnGauge::Float), &float, optional]);
    if points.by_kelvin.0 > 0.0 {
        table.row([on(OnGauge::ByKelvin).to_owned(), volts(points.by_kelvin)]);
    }
    let cut_off = [volts(points.cut_off), usual(points.cut_off_usual)];
    table.row([on(OnGauge::CutOff).to_owned()].into_iter().chain(cut_off));
    table.row([on(OnGauge::Reconnect).to_owned(), volts(points.reconnect)]);
    let equalise = say.equalising(points.equalise);
    let head = on(OnGauge::Chargers);
    format!("{head}\n{}  {}: {equalise}\n", table.text(), on(OnGauge::Equalise))
}

fn to_know(gauged: &Gauged) -> String {
    let notes = Note::of(&gauged.system, &gauged.card);
    let lines: String =
        notes.iter().map(|own| format!("  {}\n", words().gauge_note(own))).collect();
    format!("{}\n{lines}", on(OnGauge::ToKnow))
}

/// A year, and the two times that are left when it first shows one.
fn shown(trial: &Trial) -> String {
    let first = trial.hours.iter().find(|own| own.gauge_left.is_some());
    let times = first.map(|own| words().times_left(own.gauge_left, own.plan_left));
    let times = times.map(|text| format!("  {text}\n")).unwrap_or_default();
    format!("  {}\n{times}", words().trial(trial))
}

fn mistaken(tried: &sunlarder_engine::gauge::Tried) -> String {
    let say = words();
    let shows = if tried.shows() { OnGauge::ShowsHere } else { OnGauge::HiddenHere };
    format!(
        "{}: {}\n  {}: {}\n  {}\n{}\n{}\n{}",
        on(OnGauge::Mistake),
        say.mistake(tried.mistake),
        on(OnGauge::KnownBy),
        say.mistake_shows(tried.mistake.telltale()),
        on(shows),
        shown(&tried.wrong),
        on(OnGauge::ByTheCard),
        shown(&tried.right),
    )
}

/// The commissioning sheet, with room for readings.
pub(crate) fn sheet(gauged: &Gauged) -> String {
    let say = words();
    let name_of = |tag| gauged.name_of(tag);
    let blank = "________";
    let lines = (1..).zip(&gauged.sheet.checks).map(|(number, check)| {
        let what = say.checked(&check.point, &name_of);
        let two = matches!(check.point, sunlarder_engine::gauge::Point::LoadCurrent(_));
        let asked = match (check.point.unit(), check.expected) {
            (Some(unit), Some(expected)) => format!(
                "{} {}, {} {}; {} {blank}",
                on(OnGauge::Expected),
                say.metered(expected, unit),
                on(OnGauge::Passes),
                say.metered_between(check.least, check.most, unit),
                on(OnGauge::Reading),
            ),
            _ => format!("{} {blank}", on(OnGauge::Done)),
        };
        let beside =
            if two { format!(", {} {blank}", on(OnGauge::OnTheGauge)) } else { String::new() };
        let how = say.how_to_check(&check.point);
        let read =
            gauged.read(check).map(|(figure, meaning)| format!("     {figure}: {meaning}\n"));
        let read = read.unwrap_or_default();
        format!("  {number}. {what}\n     {how}\n     {asked}{beside}\n{read}")
    });
    let notes = to_know(gauged);
    joined([
        title(gauged),
        format!("{}\n{}", on(OnGauge::Checks), lines.collect::<String>()),
        notes,
        format!("{} {blank}{blank}{blank}\n", on(OnGauge::Signed)),
    ])
}
