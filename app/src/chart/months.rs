//! The month-by-month balance: what comes in against what goes out, twelve times.

use leptos::prelude::*;

use super::bars::{largest, scale, share};
use super::path::{self, Bar};

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
    /// The rectangles of gain and need.
    fn bars(&self, index: usize, top: f64) -> [Bar; 2] {
        let start = index as f64 * MONTH + (MONTH - 2.0 * BAR) / 2.0;
        let bar = |x, value| {
            let height = HEIGHT * share(value, top);
            (x, HEIGHT - height, BAR, height)
        };
        [bar(start, self.gain), bar(start + BAR, self.need)]
    }
}

/// The figure that fills the picture's height.
fn top_of(data: &MonthData) -> f64 {
    largest(data.months.iter().flat_map(|m| [m.gain, m.need]))
}

/// Two bars a month with the balance under them. Each month is a button that picks it.
#[component]
pub(crate) fn MonthBalance(
    /// What to show.
    #[prop(into)]
    data: Signal<MonthData>,
    /// Told the index of the month that is picked.
    #[prop(into)]
    on_pick: Callback<usize>,
) -> impl IntoView {
    let ticks =
        move || data.with(|data| scale(top_of(data), 3)).into_iter().map(tick).collect_view();
    let picks = move || {
        let months = data.with(|data| data.months.clone());
        months
            .into_iter()
            .enumerate()
            .map(|(i, month)| pick(month, move || on_pick.run(i)))
            .collect_view()
    };
    view! {
        <div class="months" class:long=move || data.with(is_long)>
            <div class="months-scale" aria-hidden="true">{ticks}</div>
            {move || data.with(picture)}
            <ul class="months-picks">{picks}</ul>
        </div>
    }
}

/// Whether any balance is too long for a twelfth of a phone, which holds three figures.
fn is_long(data: &MonthData) -> bool {
    data.months.iter().any(|m| m.balance_label.chars().count() > 3)
}

fn tick((share, figure): (f64, String)) -> impl IntoView {
    view! { <span style:bottom=format!("{:.1}%", 100.0 * share)>{figure}</span> }
}

fn picture(data: &MonthData) -> impl IntoView + use<> {
    let top = top_of(data);
    let width = MONTH * data.months.len().max(1) as f64;
    let grid = scale(top, 3).into_iter().map(|(share, _)| {
        let y = HEIGHT * (1.0 - share);
        view! { <line class="grid" x1="0" x2=width y1=y y2=y /> }
    });
    let bars = data.months.iter().enumerate().map(|(at, month)| month.bars(at, top));
    let (gains, needs): (Vec<Bar>, Vec<Bar>) = bars.map(|[gain, need]| (gain, need)).unzip();
    view! {
        <svg
            role="img"
            aria-label=data.aria.clone()
            viewBox=format!("0 0 {width} {HEIGHT}")
            preserveAspectRatio="none"
        >
            <title>{data.aria.clone()}</title>
            {grid.collect_view()}
            <path class="gain" d=path::bars(gains) />
            <path class="need" d=path::bars(needs) />
        </svg>
    }
}

fn pick(month: MonthBar, pick: impl Fn() + 'static) -> impl IntoView {
    let aria_current = month.current.then_some("true");
    view! {
        <li>
            <button
                type="button"
                class="month"
                class:bad=month.bad
                aria-current=aria_current
                on:click=move |_| pick()
            >
                <span class="unseen">{month.name}" "</span>
                <span class="month-label" aria-hidden="true">{month.label}</span>
                <span class="month-balance">{month.balance_label}</span>
            </button>
        </li>
    }
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
