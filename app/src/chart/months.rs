//! The month-by-month balance: what comes in against what goes out, twelve times.

use crate::signal::*;

use super::bars::{largest, scale, share};
use super::path::{self, Bar};
use super::shape::{self, line};
use crate::dom::node::{View, group, node};
use crate::dom::part::{act, dynamic};
use sunlarder_engine::words::decimal;

/// One month. Gain and need are in the same unit, whichever the labels say.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct MonthBar {
    /// A letter or two under the bars.
    pub(crate) label: String,
    /// The month's name, for a screen reader.
    pub(crate) name: String,
    /// What comes in on a mean day.
    pub(crate) gain: f64,
    /// What goes out on a mean day.
    pub(crate) need: f64,
    /// Both of the baseline; nothing without one.
    pub(crate) baseline: Option<(f64, f64)>,
    /// The difference, ready to show.
    pub(crate) balance_label: String,
    /// Whether the month falls short.
    pub(crate) bad: bool,
    /// Whether this is the plan's month.
    pub(crate) current: bool,
}

/// What the balance shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct MonthData {
    /// The months in order, twelve of them or any other number.
    pub(crate) months: Vec<MonthBar>,
    /// The picture in words.
    pub(crate) aria: String,
}

/// Height of the picture and width of a month, in units that are stretched to the room there is.
const HEIGHT: f64 = 100.0;
const MONTH: f64 = 10.0;
/// Each bar's width, so that a pair with its gaps fills a month.
const BAR: f64 = 3.6;

impl MonthBar {
    /// The rectangles of its gain and need.
    fn bars(&self, index: usize, top: f64) -> [Bar; 2] {
        Self::pair(index, top, (self.gain, self.need))
    }

    /// The rectangles of a gain and a need.
    fn pair(index: usize, top: f64, (gain, need): (f64, f64)) -> [Bar; 2] {
        let start = index as f64 * MONTH + (MONTH - 2.0 * BAR) / 2.0;
        let bar = |x, value| {
            let height = HEIGHT * share(value, top);
            (x, HEIGHT - height, BAR, height)
        };
        [bar(start, gain), bar(start + BAR, need)]
    }
}

/// The figure that fills the picture's height.
fn top_of(data: &MonthData) -> f64 {
    let both = |m: &MonthBar| {
        let (gain, need) = m.baseline.unwrap_or_default();
        [m.gain, m.need, gain, need]
    };
    largest(data.months.iter().flat_map(both))
}

/// Two bars a month with the balance under them. Each month is a button that picks it: `on_pick` is told its index.
pub(crate) fn month_balance(data: Signal<MonthData>, on_pick: Callback<usize>) -> View {
    let ticks = dynamic(move || {
        let scale = data.with(|data| scale(top_of(data), 3));
        group(scale.into_iter().map(tick).collect())
    });
    let count = memo(Box::new(move || data.with(|data| data.months.len())));
    // Only another number of months makes new buttons, or a picked one would lose the keyboard's focus.
    let picks =
        dynamic(move || group((0..count.get()).map(|at| pick(data, at, on_pick)).collect()));
    node("div")
        .attr("class", "months")
        .class_while("long", memo(Box::new(move || data.with(is_long))))
        .child(
            node("div")
                .attr("class", "months-scale")
                .attr("aria-hidden", "true")
                .child(ticks)
                .view(),
        )
        .child(dynamic(move || data.with(picture)))
        .child(node("ul").attr("class", "months-picks").child(picks).view())
        .view()
}

/// Whether any balance is too long for a twelfth of a phone, which holds three figures.
fn is_long(data: &MonthData) -> bool {
    data.months.iter().any(|m| m.balance_label.chars().count() > 3)
}

fn tick((share, figure): (f64, String)) -> View {
    let bottom = format!("{}%", decimal(100.0 * share, 1));
    node("span").style("bottom", &bottom).child(figure).view()
}

fn picture(data: &MonthData) -> View {
    let top = top_of(data);
    let width = MONTH * data.months.len().max(1) as f64;
    let mut all = Vec::new();
    for (share, _) in scale(top, 3) {
        let y = HEIGHT * (1.0 - share);
        all.push(line("grid", (0.0, y), (width, y)));
    }
    let months = || data.months.iter().enumerate();
    let bars = months().map(|(at, month)| month.bars(at, top));
    let (gains, needs): (Vec<Bar>, Vec<Bar>) = bars.map(|[gain, need]| (gain, need)).unzip();
    all.push(shape::path("gain", &path::bars(gains)));
    all.push(shape::path("need", &path::bars(needs)));
    let baseline =
        months().filter_map(|(at, month)| Some(MonthBar::pair(at, top, month.baseline?)));
    all.push(shape::path("baseline-outline", &path::bars(baseline.flatten())));
    shape::picture(&data.aria, (width, HEIGHT), true).child(all).view()
}

fn pick(data: Signal<MonthData>, at: usize, on_pick: Callback<usize>) -> View {
    let month =
        memo(Box::new(move || data.with(|data| data.months.get(at).cloned().unwrap_or_default())));
    let said = |what: fn(&MonthBar) -> String| memo(Box::new(move || month.with(what)));
    let current = memo(Box::new(move || month.with(|month| month.current.then_some("true"))));
    let button = node("button")
        .attr("type", "button")
        .attr("class", "month")
        .class_while("bad", memo(Box::new(move || month.with(|month| month.bad))))
        .attr("aria-current", current)
        .on("click", act(move || on_pick.run(at)))
        .child(
            node("span").attr("class", "unseen").child(said(|m| m.name.clone())).child(" ").view(),
        )
        .child(
            node("span")
                .attr("class", "month-label")
                .attr("aria-hidden", "true")
                .child(said(|m| m.label.clone()))
                .view(),
        )
        .child(
            node("span")
                .attr("class", "month-balance")
                .child(said(|m| m.balance_label.clone()))
                .view(),
        );
    node("li").child(button.view()).view()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn month(gain: f64, need: f64) -> MonthBar {
        MonthBar { gain, need, ..MonthBar::default() }
    }

    #[test]
    fn the_tallest_bar_fills_the_height() {
        let data = MonthData {
            months: vec![month(15.0, 60.0), month(30.0, 50.0)],
            ..MonthData::default()
        };
        let top = top_of(&data);
        let [gain, need] = data.months[0].bars(0, top);
        assert_eq!((need.1, need.3), (0.0, HEIGHT));
        assert_eq!((gain.1, gain.3), (75.0, 25.0));
    }

    #[test]
    fn a_pair_stays_within_its_month() {
        for index in [0, 5, 11] {
            let [gain, need] = month(1.0, 1.0).bars(index, 1.0);
            assert!(gain.0 > index as f64 * MONTH);
            assert!((gain.0 + BAR - need.0).abs() < 1e-9, "bars of a pair touch");
            assert!(need.0 + BAR < (index + 1) as f64 * MONTH);
        }
    }

    #[test]
    fn nothing_has_bars_of_no_height() {
        let [gain, need] = month(0.0, -4.0).bars(0, top_of(&MonthData::default()));
        assert_eq!((gain.3, need.3), (0.0, 0.0));
    }
}
