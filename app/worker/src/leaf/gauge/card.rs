//! What the gauge is told, by four questions, and where chargers are set beside it.

use sunlarder_engine::gauge::{Ask, Card, ChargerPoints, Kind, Note, Setting, Span, setting};
use sunlarder_engine::quantity::{Unit, Volts};
use sunlarder_engine::words::gauge::OnGauge as G;
use sunlarder_engine::words::{Label as L, Words, decimal, lines};
use sunlarder_engine::working::{Tag, Working};

use super::super::{About, fitting, working};
use super::to_know;
use crate::paper::Paper;

/// The card, below its question.
pub(in super::super) fn write(about: About<'_>) -> String {
    let About { words, system, outlook, .. } = about;
    let card = Card::of(system, outlook);
    let mut paper = Paper::default();
    paper.said("p", "caution", &words.gauge_note(&Note::SheetFirst));
    for ask in Ask::ALL {
        paper.said("h3", "", words.gauge_question(ask)).class("ul", "runs");
        for own in card.settings.iter().filter(|own| own.kind.ask() == ask) {
            told(&mut paper, &card, own, words);
        }
        paper.close();
    }
    chargers(&mut paper, about);
    to_know(&mut paper, "h3", &card, about);
    paper.finish()
}

/// How a setting was worked out; the argument is its place in [`Kind::ALL`].
pub(in super::super) fn write_working(argument: &str, about: About<'_>) -> Option<String> {
    let About { words, document, system, outlook } = about;
    let kind = Kind::ALL.get(argument.parse::<usize>().ok()?)?;
    let mut trace = Working::new();
    setting(*kind, system, outlook, &mut trace)?;
    let name_of = |tag: Tag| words.name_in(document, tag);
    Some(working::sheet(&lines(&trace, words, &name_of)))
}

/// The figure of a setting; a share of the capacity also as a current, for gauges that ask for it so.
pub(super) fn figure(words: Words, card: &Card, own: &Setting) -> [String; 2] {
    let [mut value, range] = words.to_enter(own);
    if own.kind == Kind::Tail {
        let amps = words.metered(card.gauge().tail_current().0, Unit::Amp);
        value = format!("{value} = {amps}");
    }
    [value, range]
}

/// A setting with its figure, why, where it comes from, and what a wrong one would do.
fn told(paper: &mut Paper, card: &Card, own: &Setting, words: Words) {
    let said = words.setting(own.kind);
    let [value, range] = figure(words, card, own);
    paper.class("li", "run").said("b", "", said.name).class("p", "run-wire").text(&value);
    paper.said("span", "note", &format!(" ({range})")).close().said("p", "", said.why);
    for (side, does) in [(G::TooHigh, said.high), (G::TooLow, said.low)] {
        paper.class("p", "note").said("i", "", words.on_gauge(side));
        paper.text(&format!(": {does}")).close();
    }
    if own.kind.symbol().is_some() {
        let place = Kind::ALL.iter().position(|kind| *kind == own.kind).unwrap_or_default();
        paper.class("button", "button quiet").attr("type", "button");
        paper.attr("data-fold", &decimal(place as f64, 0)).attr("aria-expanded", "false");
        paper.text(words.label(L::HowWorkedOut)).close();
    } else {
        paper.said("p", "source", &words.source(own.source));
    }
    paper.close();
}

fn chargers(paper: &mut Paper, about: About<'_>) {
    let words = about.words;
    let points = ChargerPoints::of(&about.system.bank);
    let on = |what| words.on_gauge(what);
    let volts = |own: Volts| words.metered(own.0, Unit::Volt);
    let span = |own: Span| words.metered_between(own.0.0, own.1.0, Unit::Volt);
    let with_usual = |own, usual| format!("{} ({} {})", volts(own), on(G::Usual), span(usual));
    let optional = if points.float_optional { on(G::OrNone) } else { "" };
    let float = points.float.map_or(on(G::None).to_owned(), |own| span(own) + " " + optional);
    let mut facts = vec![
        (on(G::Absorption), with_usual(points.absorption, points.absorption_usual)),
        (on(G::Float), float.trim_end().to_owned()),
        (on(G::CutOff), with_usual(points.cut_off, points.cut_off_usual)),
        (on(G::Reconnect), volts(points.reconnect)),
        (on(G::Equalise), words.equalising(points.equalise)),
    ];
    if points.by_kelvin.0 > 0.0 {
        facts.push((on(G::ByKelvin), volts(points.by_kelvin)));
    }
    paper.said("h3", "", on(G::Chargers));
    fitting::pairs(paper, &facts);
}
