//! The day strip: 24 hours of what comes in, drawn up, and what goes out, drawn down.

use crate::signal::*;
use sunlarder_engine::quantity::Within;

use super::bars::{largest, share};
use super::path::{self, Bar};
use super::shape::{self, line, rect};
use crate::dom::node::{View, group, node};
use crate::dom::part::dynamic;
use sunlarder_engine::words::decimal;

/// What the strip shows. Hours are clock hours of the day.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct DayData {
    /// Power that comes in, in equal steps over the day \[W\].
    pub(crate) in_w: Vec<f64>,
    /// Power that goes out, in equal steps over the day \[W\].
    pub(crate) out_w: Vec<f64>,
    /// The same of the baseline; may be empty.
    pub(crate) baseline_w: (Vec<f64>, Vec<f64>),
    /// From sunset to sunrise, both within the day \[h\].
    pub(crate) night: Vec<(f64, f64)>,
    /// What stands under the strip.
    pub(crate) hour_labels: Vec<(f64, String)>,
    /// The picture in words.
    pub(crate) aria: String,
}

/// The picture in units of its own, stretched to the room there is: an hour is one wide.
const HOURS: f64 = 24.0;
const HEIGHT: f64 = 100.0;
/// The least part of the height that either side keeps, so that a small one can still be seen to be there.
const LEAST: f64 = 0.2;

/// The bars of both sides on one scale, and the line between them.
#[derive(Debug, PartialEq)]
struct Strip {
    zero: f64,
    up: Vec<Bar>,
    down: Vec<Bar>,
    /// The ends of those of the baseline, both ways.
    baseline: Vec<Bar>,
}

impl Strip {
    fn new(data: &DayData) -> Self {
        let (base_in, base_out) = &data.baseline_w;
        let most = |own: &[f64], other: &[f64]| largest(own.iter().chain(other).copied());
        let (high, low) = (most(&data.in_w, base_in), most(&data.out_w, base_out));
        let zero = match high / (high + low) {
            part if part.is_finite() => HEIGHT * part.within(LEAST, 1.0 - LEAST),
            _ => HEIGHT / 2.0,
        };
        // One scale for both sides, the one that fits them both.
        let per_watt = fit(zero, high).min(fit(HEIGHT - zero, low));
        let up = bars(&data.in_w, per_watt).map(|(x, wide, tall)| (x, zero - tall, wide, tall));
        let down = bars(&data.out_w, per_watt).map(|(x, wide, tall)| (x, zero, wide, tall));
        let ends = |watts, way: f64| {
            bars(watts, per_watt).map(move |(x, wide, tall)| (x, zero + way * tall, wide, 0.0))
        };
        let baseline = ends(base_in, -1.0).chain(ends(base_out, 1.0)).collect();
        Self { zero, up: up.collect(), down: down.collect(), baseline }
    }
}

/// Height of a watt where `most` watts have `room`; without any watts there is no limit.
fn fit(room: f64, most: f64) -> f64 {
    if most > 0.0 { room / most } else { f64::INFINITY }
}

/// Left edge, width and height of each step that has any.
fn bars(watts: &[f64], per_watt: f64) -> impl Iterator<Item = (f64, f64, f64)> {
    let step = HOURS / watts.len().max(1) as f64;
    let drawn = watts.iter().enumerate().filter(|(_, w)| w.is_finite() && **w > 0.0);
    drawn.map(move |(i, w)| ((i as f64 + 0.06) * step, 0.88 * step, w * per_watt))
}

/// 24 hours of what comes in and what goes out, with the night behind.
pub(crate) fn day_strip(data: Signal<DayData>) -> View {
    let hours =
        dynamic(move || group(data.with(|data| data.hour_labels.iter().map(hour).collect())));
    node("div")
        .attr("class", "day")
        .child(dynamic(move || data.with(picture)))
        .child(
            node("div").attr("class", "day-hours").attr("aria-hidden", "true").child(hours).view(),
        )
        .view()
}

fn hour((at, label): &(f64, String)) -> View {
    let left = format!("{}%", decimal(100.0 * share(*at, HOURS), 2));
    node("span").style("left", &left).child(label.clone()).view()
}

fn picture(data: &DayData) -> View {
    let Strip { zero, up, down, baseline } = Strip::new(data);
    let nights =
        data.night.iter().map(|(from, to)| (from.within(0.0, HOURS), to.within(0.0, HOURS)));
    let night = |(from, to)| rect("night", (from, 0.0), (to - from, HEIGHT));
    let nights: Vec<View> = nights.filter(|(from, to)| from < to).map(night).collect();
    shape::picture(&data.aria, (HOURS, HEIGHT), true)
        .child(nights)
        .child(shape::path("gain", &path::bars(up)))
        .child(shape::path("need", &path::bars(down)))
        .child(shape::path("baseline-outline", &path::bars(baseline)))
        .child(line("axis", (0.0, zero), (HOURS, zero)))
        .view()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn strip(in_w: Vec<f64>, out_w: Vec<f64>) -> Strip {
        Strip::new(&DayData { in_w, out_w, ..DayData::default() })
    }

    #[test]
    fn both_sides_share_one_scale() {
        let day = strip(vec![0.0, 120.0, 60.0, 0.0], vec![30.0, 60.0, 30.0, 30.0]);
        let tall = |bar: &Bar| bar.3;
        assert!((tall(&day.up[0]) - 2.0 * tall(&day.up[1])).abs() < 1e-9);
        assert!((tall(&day.up[1]) - tall(&day.down[1])).abs() < 1e-9, "60 W is as tall up as down");
        assert!((day.zero - HEIGHT * 2.0 / 3.0).abs() < 1e-9);
    }

    #[test]
    fn a_small_side_keeps_its_room_and_nothing_leaves_the_picture() {
        for (high, low) in [(1.0, 5000.0), (5000.0, 1.0), (1e300, 1e-300), (1e308, 1e308)] {
            let day = strip(vec![high; 96], vec![low; 96]);
            assert!((20.0..=80.0).contains(&day.zero), "{high} {low}");
            let inside = |b: &Bar| b.1 >= -1e-9 && b.1 + b.3 <= HEIGHT + 1e-9;
            assert!(day.up.iter().chain(&day.down).all(inside), "{high} {low}");
        }
    }

    #[test]
    fn an_idle_day_is_a_line_in_the_middle() {
        let idle = Strip { zero: 50.0, up: vec![], down: vec![], baseline: vec![] };
        assert_eq!(strip(vec![0.0; 96], vec![]), idle);
    }

    #[test]
    fn the_baseline_shares_the_scale() {
        let baseline_w = (vec![200.0], vec![50.0]);
        let day =
            DayData { in_w: vec![100.0], out_w: vec![100.0], baseline_w, ..DayData::default() };
        let day = Strip::new(&day);
        assert!((day.up[0].3 * 2.0 - (day.zero - day.baseline[0].1)).abs() < 1e-9);
        assert!((day.down[0].3 - 2.0 * (day.baseline[1].1 - day.zero)).abs() < 1e-9);
    }

    #[test]
    fn what_is_no_power_has_no_bar() {
        let day = strip(vec![f64::NAN, -5.0, 10.0, f64::INFINITY], vec![10.0]);
        assert_eq!(day.up.len(), 1);
        assert_eq!(day.down.len(), 1);
    }
}
