//! What of the simulated gauge can be turned: a mistake to try, and a box and a slider for each figure.

use sunlarder_engine::gauge::{Card, Gauge, Knob, Mistake};
use sunlarder_engine::words::gauge::OnGauge as G;
use sunlarder_engine::words::{Words, decimal};

use super::super::About;
use crate::paper::Paper;
use crate::sentences::list;

/// A figure as it stands in its box.
pub(super) fn boxed(words: Words, knob: Knob, gauge: &Gauge) -> String {
    words.precise(knob.of(gauge))
}

/// The figures of a gauge, for the boxes.
fn figures(words: Words, gauge: &Gauge) -> String {
    list(&Knob::ALL.map(|knob| boxed(words, knob, gauge)))
}

fn option(paper: &mut Paper, value: &str, figures: &str, said: &str) {
    paper.open("option").attr("value", value).attr("data-figures", figures).text(said).close();
}

/// The controls. Each box has the id `knob-` and the place of its figure in [`Knob::ALL`], its slider `slide-` and the same; the choice
/// has the id `mistake`, and its values are places in [`Mistake::ALL`], nothing for the card, `own` for any other figures.
pub(in super::super) fn write_knobs(about: About<'_>) -> String {
    let About { words, system, outlook, .. } = about;
    let card = Card::of(system, outlook);
    let gauge = card.gauge();
    let mut paper = Paper::default();
    paper.class("div", "field").open("label").attr("for", "mistake");
    paper.text(words.on_gauge(G::TryMistake)).close();
    paper.class("div", "entry").open("select").attr("id", "mistake");
    option(&mut paper, "", &figures(words, &gauge), words.on_gauge(G::ByTheCard));
    for (place, mistake) in Mistake::ALL.into_iter().enumerate() {
        let wrong = figures(words, &mistake.made(&card, system));
        option(&mut paper, &decimal(place as f64, 0), &wrong, words.mistake(mistake));
    }
    option(&mut paper, "own", "", words.on_gauge(G::OwnFigures));
    paper.close().close().close().class("div", "fields");
    for (place, knob) in Knob::ALL.into_iter().enumerate() {
        let place = decimal(place as f64, 0);
        let (name, figure) = (words.gauge_figure(knob.figure()), knob.figure());
        let id = format!("knob-{place}");
        // A time is turned in minutes.
        let unit = if knob == Knob::Hold { "min" } else { words.unit(figure.unit()) };
        let (least, most) = knob.span(&gauge);
        paper.class("div", "field").open("label").attr("for", &id).text(name).close();
        paper.class("div", "entry").open("input").attr("id", &id).attr("type", "text");
        paper.attr("inputmode", "decimal").attr("autocomplete", "off");
        paper.attr("value", &boxed(words, knob, &gauge)).close();
        paper.said("span", "unit", unit).close();
        paper.class("input", "slider").attr("id", &format!("slide-{place}"));
        paper.attr("type", "range").attr("aria-label", name);
        paper.attr("min", &decimal(least, 6)).attr("max", &decimal(most, 6));
        paper.attr("step", "any").attr("value", &decimal(knob.of(&gauge), 6)).close().close();
    }
    paper.close();
    paper.finish()
}
