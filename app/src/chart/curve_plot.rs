//! The remaining-time curve in units of the picture: everything it shows, as plain data for the width it has.

use super::label::{Placed, row};
use super::path::{polyline, sample};
use super::scale::Linear;
use super::time::{hour_step, hour_ticks, midnights};
use sunlarder_engine::quantity::Within;
use sunlarder_engine::words::decimal;

/// Eight of ten weathers at an hour.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct BandHour {
    /// Lowest state of charge \[%\].
    pub(crate) low: f64,
    /// Highest state of charge \[%\].
    pub(crate) high: f64,
    /// How many weathers have reached the reserve by then \[%\].
    pub(crate) reached: f64,
}

/// What the remaining-time curve shows. Hours count from the first sample.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct CurveData {
    /// Clock hour of the first sample, 0 to 24 \[h\].
    pub(crate) start_hour: f64,
    /// The span shown \[h\].
    pub(crate) hours: f64,
    /// From one sample to the next \[h\].
    pub(crate) step_hours: f64,
    /// State of charge at each step in typical weather \[%\].
    pub(crate) charge: Vec<f64>,
    /// State of charge at each step without any sun \[%\]; may be empty.
    pub(crate) dark: Vec<f64>,
    /// Eight of ten weathers after each whole hour; may be empty.
    pub(crate) band: Vec<BandHour>,
    /// Hour and state of charge in a year of weather that somebody brought \[h, %\]; may be empty.
    pub(crate) replayed: Vec<(f64, f64)>,
    /// State of charge of the baseline at each step \[%\]; may be empty.
    pub(crate) baseline: Vec<f64>,
    /// The reserve \[%\].
    pub(crate) reserve: f64,
    /// From sunset to sunrise \[h\].
    pub(crate) nights: Vec<(f64, f64)>,
    /// When the typical charge reaches the reserve \[h\].
    pub(crate) reached: Option<f64>,
    /// What stands at that point.
    pub(crate) reached_label: String,
    /// What stands on the reserve line.
    pub(crate) reserve_label: String,
    /// What stands under the picture, in order of time; those without room are left out.
    pub(crate) day_labels: Vec<(f64, String)>,
    /// The picture in words.
    pub(crate) aria: String,
}

impl CurveData {
    /// The hour at a share of the span, 0 to 1, at the nearest sample.
    pub(crate) fn hour_at(&self, share: f64) -> f64 {
        let hour = share.within(0.0, 1.0) * self.hours;
        if self.step_hours > 0.0 {
            ((hour / self.step_hours).round() * self.step_hours).min(self.hours)
        } else {
            hour
        }
    }
}

/// Room around the plot for its labels \[px\].
const LEFT: f64 = 34.0;
const RIGHT: f64 = 8.0;
const TOP: f64 = 24.0;
const BOTTOM: f64 = 28.0;
/// From the middle of a line of text down to its base line \[px\].
const HALF_LINE: f64 = 4.5;
/// Between a label and what it must not touch \[px\].
const CLEAR: f64 = 10.0;

/// A point that stands out: where the reserve is reached.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Marker {
    pub(crate) x: f64,
    pub(crate) y: f64,
    pub(crate) label: Placed,
    /// Base line of the label.
    pub(crate) label_y: f64,
    /// The far end of the stem from the point to its label.
    pub(crate) stem_y: f64,
}

/// The picture for one width.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct CurvePlot {
    pub(crate) width: f64,
    pub(crate) height: f64,
    pub(crate) left: f64,
    pub(crate) right: f64,
    pub(crate) top: f64,
    pub(crate) bottom: f64,
    time: Linear,
    charge: Linear,
    /// Left edge and width of each night.
    pub(crate) nights: Vec<(f64, f64)>,
    /// Grid lines, with the base line and text of their figures.
    pub(crate) rows: Vec<(f64, f64, String)>,
    pub(crate) midnights: Vec<f64>,
    pub(crate) hour_marks: Vec<f64>,
    pub(crate) typical: String,
    pub(crate) dark: String,
    pub(crate) replayed: String,
    pub(crate) baseline: String,
    /// The outline of the band.
    pub(crate) band: String,
    pub(crate) reserve_y: f64,
    pub(crate) reserve: Placed,
    /// Base line of the reserve's label.
    pub(crate) reserve_label_y: f64,
    pub(crate) marker: Option<Marker>,
    pub(crate) days: Vec<Placed>,
    pub(crate) days_y: f64,
}

impl CurvePlot {
    /// Lays the picture out for a width in pixels. A narrow one is taller for its width.
    pub(crate) fn new(data: &CurveData, width: f64) -> Self {
        Self::sized(data, width, (160.0 + 0.22 * width).within(224.0, 360.0).round())
    }

    /// Lays it out for a width and a height.
    pub(crate) fn sized(data: &CurveData, width: f64, height: f64) -> Self {
        let (left, top, bottom) = (LEFT, TOP, height - BOTTOM);
        let right = (width - RIGHT).max(left);
        let time = Linear::new((0.0, data.hours), (left, right));
        let charge = Linear::new((0.0, 100.0), (bottom, top));
        let frame = (left, right);
        let reserve_y = charge.at(data.reserve);
        let every = hour_step(data.hours, right - left, 9.0);
        let to_picture = |(hour, percent): &(f64, f64)| (time.at(*hour), charge.at(*percent));
        let mut plot = Self {
            width,
            height,
            left,
            right,
            top,
            bottom,
            time,
            charge,
            nights: data
                .nights
                .iter()
                .filter_map(|night| shade(time, data.hours, *night))
                .collect(),
            rows: [100.0, 75.0, 50.0, 25.0, 0.0].map(|percent| grid_row(charge, percent)).into(),
            midnights: midnights(data.start_hour, data.hours)
                .iter()
                .map(|(h, _)| time.at(*h))
                .collect(),
            hour_marks: hour_ticks(data.start_hour, data.hours, every)
                .iter()
                .map(|h| time.at(*h))
                .collect(),
            typical: polyline(points(&data.charge, data, time, charge)),
            dark: polyline(points(&data.dark, data, time, charge)),
            baseline: polyline(points(&data.baseline, data, time, charge)),
            replayed: polyline(
                data.replayed.iter().filter(|(hour, _)| *hour <= data.hours).map(to_picture),
            ),
            band: outline(data, time, charge),
            reserve_y,
            reserve: Placed::within(frame, left + CLEAR, data.reserve_label.clone()),
            reserve_label_y: reserve_y - 6.0,
            marker: None,
            days: row(
                frame,
                CLEAR / 2.0,
                data.day_labels.iter().map(|(h, text)| (time.at(*h), text.clone())),
            ),
            days_y: bottom + 20.0,
        };
        plot.marker = data.reached.map(|hour| plot.mark(data, hour));
        plot.place_reserve_label(data);
        plot
    }

    /// Where the charge stands at `hour`, in pixels.
    pub(crate) fn point(&self, data: &CurveData, hour: f64) -> Option<(f64, f64)> {
        let percent = sample(&data.charge, data.step_hours, hour)?;
        Some((self.time.at(hour), self.charge.at(percent)))
    }

    /// Where a state of charge \[%\] stands, in pixels from the top.
    pub(crate) fn height_of(&self, percent: f64) -> f64 {
        self.charge.at(percent)
    }

    /// The state of charge at a height, in whole percents; within the plot.
    pub(crate) fn charge_at(&self, y: f64) -> f64 {
        let part = (self.bottom - y) / (self.bottom - self.top);
        (part.within(0.0, 1.0) * 100.0).round()
    }

    /// The highest and lowest pixel that the lines reach between two pixels of width.
    fn reach(&self, data: &CurveData, (from, to): (f64, f64)) -> Option<(f64, f64)> {
        [&data.charge, &data.dark]
            .into_iter()
            .flat_map(|series| points(series, data, self.time, self.charge))
            .filter(|(x, _)| (from - CLEAR..=to + CLEAR).contains(x))
            .map(|(_, y)| (y, y))
            .reduce(|(high, low), (y, _)| (high.min(y), low.max(y)))
    }

    /// The point where the reserve is reached; its label stands clear above the lines, or below the point if there is no room.
    fn mark(&self, data: &CurveData, hour: f64) -> Marker {
        let (x, y) = (self.time.at(hour), self.reserve_y);
        let label = Placed::within((self.left, self.right), x, data.reached_label.clone());
        let highest = self.reach(data, label.extent()).map_or(y, |(high, _)| high);
        let above = (highest - CLEAR - 4.0).min(y - 3.0 * CLEAR);
        if above - 2.0 * HALF_LINE >= self.top {
            return Marker { x, y, label, label_y: above, stem_y: above + 5.0 };
        }
        let below = (y + 3.0 * CLEAR).min(self.bottom - 4.0);
        Marker { x, y, label, label_y: below, stem_y: below - 4.0 * HALF_LINE + CLEAR / 2.0 }
    }

    /// Puts the reserve's label at the end of its line where the lines and the marker leave it most room.
    fn place_reserve_label(&mut self, data: &CurveData) {
        let middle = self.reserve_label_y - HALF_LINE;
        let room = |label: &Placed| {
            let (from, to) = label.extent();
            let taken =
                self.marker.as_ref().is_some_and(|m| from - CLEAR < m.x && m.x < to + CLEAR);
            let lines = self.reach(data, (from, to)).map_or(f64::MAX, |(high, low)| {
                if high < middle && middle < low {
                    0.0
                } else {
                    (high - middle).abs().min((low - middle).abs())
                }
            });
            if taken { 0.0 } else { lines }
        };
        let frame = (self.left + 4.0, self.right - 4.0);
        let ends =
            [self.left, self.right].map(|x| Placed::within(frame, x, data.reserve_label.clone()));
        let [first, last] = ends;
        self.reserve = if room(&last) > room(&first) { last } else { first };
    }
}

/// The band's lower edge onwards and its upper edge back.
fn outline(data: &CurveData, time: Linear, charge: Linear) -> String {
    let start = data.charge.first().filter(|_| !data.band.is_empty());
    let start = start.map(|charge| (*charge, *charge));
    let edges = data.band.iter().map(|hour| (hour.low, hour.high));
    let seen = start.into_iter().chain(edges).enumerate().map(|(hour, edges)| (hour as f64, edges));
    let seen = seen.take_while(|(hour, _)| *hour <= data.hours);
    let lower = seen.clone().map(|(hour, (low, _))| (time.at(hour), charge.at(low)));
    let upper = seen.map(|(hour, (_, high))| (time.at(hour), charge.at(high)));
    polyline(lower.chain(upper.collect::<Vec<_>>().into_iter().rev()))
}

fn points(
    series: &[f64],
    data: &CurveData,
    time: Linear,
    charge: Linear,
) -> impl Iterator<Item = (f64, f64)> {
    let (step, hours) = (data.step_hours, data.hours);
    series
        .iter()
        .enumerate()
        .map(move |(i, percent)| (i as f64 * step, *percent))
        .take_while(move |(hour, _)| step > 0.0 && *hour <= hours + step * 1e-6)
        .map(move |(hour, percent)| (time.at(hour), charge.at(percent)))
}

fn grid_row(charge: Linear, percent: f64) -> (f64, f64, String) {
    let y = charge.at(percent);
    (y, y + HALF_LINE, decimal(percent, 0))
}

/// A night's left edge and width, if any of it lies within the span.
fn shade(time: Linear, hours: f64, (from, to): (f64, f64)) -> Option<(f64, f64)> {
    let seen = from < hours && to > 0.0 && from < to;
    seen.then(|| (time.at(from), time.at(to) - time.at(from)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A bank that falls by `rate` percent an hour from 92 % for three days.
    fn falling(rate: f64) -> CurveData {
        let charge: Vec<f64> =
            (0..=288).map(|i| (92.0 - rate * f64::from(i) / 4.0).max(0.0)).collect();
        CurveData {
            start_hour: 16.0,
            hours: 72.0,
            step_hours: 0.25,
            dark: charge.iter().map(|c| c * 0.8).collect(),
            band: charge
                .iter()
                .step_by(4)
                .skip(1)
                .map(|c| BandHour { low: c * 0.9, high: (c * 1.1).min(100.0), reached: 0.0 })
                .collect(),
            replayed: Vec::new(),
            baseline: Vec::new(),
            charge,
            reserve: 20.0,
            nights: vec![(-2.0, 14.0), (24.0, 38.0), (70.0, 86.0), (90.0, 100.0)],
            reached: Some(72.0 / rate).filter(|hour| *hour <= 72.0),
            reached_label: "Sat 07:00".into(),
            reserve_label: "reserve 20 %".into(),
            day_labels: vec![(0.0, "Thu 16:00".into()), (8.0, "Fri".into()), (32.0, "Sat".into())],
            aria: "A falling charge".into(),
        }
    }

    #[test]
    fn nights_outside_the_span_are_cut() {
        let plot = CurvePlot::new(&falling(1.5), 360.0);
        assert_eq!(plot.nights.len(), 3);
        assert_eq!(plot.nights[0].0, plot.left);
        let (start, width) = plot.nights[2];
        assert!((start + width - plot.right).abs() < 1e-9);
    }

    #[test]
    fn everything_stays_within_the_picture_at_any_width() {
        for rate in [0.1, 0.5, 1.5, 4.0, 40.0] {
            for width in [0.0, 40.0, 288.0, 360.0, 790.0, 2400.0] {
                let plot = CurvePlot::new(&falling(rate), width);
                let Some(marker) = plot.marker else { continue };
                assert!((plot.left..=plot.right).contains(&marker.x), "{rate} {width}");
                assert!(
                    (12.0..=plot.height).contains(&marker.label_y),
                    "{rate} {width} {marker:?}"
                );
                if width >= 288.0 {
                    let (from, to) = marker.label.extent();
                    assert!(from >= plot.left && to <= plot.right, "{rate} {width} {marker:?}");
                }
            }
        }
    }

    #[test]
    fn the_label_of_the_marker_stands_clear_of_the_lines() {
        let data = falling(1.5);
        let plot = CurvePlot::new(&data, 360.0);
        let marker = plot.marker.as_ref().expect("the reserve is reached");
        let (high, _) = plot.reach(&data, marker.label.extent()).expect("the lines pass there");
        assert!(marker.label_y < high - 5.0, "{} is not above {high}", marker.label_y);
    }

    #[test]
    fn the_label_of_the_reserve_flees_the_lines() {
        let mut low = falling(0.0);
        low.reached = None;
        low.charge = (0..=288).map(|i| if i < 96 { 22.0 } else { 90.0 }).collect();
        low.dark = low.charge.clone();
        let plot = CurvePlot::new(&low, 360.0);
        assert!(plot.reserve.extent().0 > 180.0, "{:?}", plot.reserve);
        assert!(CurvePlot::new(&falling(0.2), 360.0).reserve.extent().0 < 60.0);
    }

    #[test]
    fn a_place_on_the_picture_is_the_hour_drawn_there() {
        let data = falling(1.5);
        let plot = CurvePlot::new(&data, 360.0);
        let (x, _) = plot.point(&data, 30.25).expect("there is a sample");
        let share = (x - plot.left) / (plot.right - plot.left);
        assert_eq!(data.hour_at(share), 30.25);
        assert_eq!(data.hour_at(share + 0.001), 30.25, "at the nearest sample");
        assert_eq!(data.hour_at(-5.0), 0.0);
        assert_eq!(data.hour_at(5.0), 72.0);
    }

    #[test]
    fn a_height_is_the_charge_drawn_there() {
        let plot = CurvePlot::new(&falling(1.5), 360.0);
        for percent in [0.0, 1.0, 37.0, 99.0, 100.0] {
            assert_eq!(plot.charge_at(plot.height_of(percent)), percent);
        }
        assert_eq!([plot.charge_at(-50.0), plot.charge_at(1e9)], [100.0, 0.0]);
    }

    #[test]
    fn the_band_goes_there_and_back_within_the_span() {
        let mut data = falling(1.0);
        data.hours = 24.0;
        let plot = CurvePlot::new(&data, 360.0);
        assert!(plot.band.starts_with(&format!("M{} ", decimal(plot.left, 1))), "{}", plot.band);
        assert!(plot.band.matches('L').count() > 40, "{}", plot.band);
        let ends = plot.band.rsplit('L').next().expect("it has corners");
        assert!(ends.starts_with(&decimal(plot.left, 1)), "{ends}");
        assert!(plot.band.contains(&format!("L{} ", decimal(plot.right, 1))), "{}", plot.band);
    }

    #[test]
    fn a_year_of_weather_is_drawn_as_far_as_the_span_goes() {
        let mut data = falling(1.0);
        data.replayed = (0..=744).map(|hour| (f64::from(hour), 50.0)).collect();
        let plot = CurvePlot::new(&data, 360.0);
        assert!(plot.replayed.starts_with(&format!("M{} ", decimal(plot.left, 1))));
        let last = plot.replayed.rsplit('L').next().expect("it has corners");
        assert!(last.starts_with(&format!("{} ", decimal(plot.right, 1))), "{last}");
        assert_eq!(CurvePlot::new(&falling(1.0), 360.0).replayed, "");
    }

    #[test]
    fn the_baseline_is_a_line_of_its_own() {
        let mut data = falling(1.0);
        assert_eq!(CurvePlot::new(&data, 360.0).baseline, "");
        data.baseline = falling(2.0).charge;
        let plot = CurvePlot::new(&data, 360.0);
        assert_eq!(plot.baseline, CurvePlot::new(&falling(2.0), 360.0).typical);
        assert_ne!(plot.baseline, plot.typical);
    }

    #[test]
    fn an_empty_plan_is_an_empty_grid() {
        let plot = CurvePlot::new(&CurveData::default(), 360.0);
        assert_eq!((plot.typical.as_str(), plot.dark.as_str()), ("", ""));
        assert_eq!(plot.rows.len(), 5);
        assert_eq!(plot.point(&CurveData::default(), 0.0), None);
    }

    #[test]
    fn charges_out_of_range_stay_within_the_frame() {
        let mut wild = falling(1.0);
        wild.charge = vec![-1e300, 1e300, 50.0, f64::INFINITY];
        let plot = CurvePlot::new(&wild, 360.0);
        assert!(!plot.typical.contains("inf") && !plot.typical.contains("NaN"), "{}", plot.typical);
        assert!(plot.typical.len() < 60, "{}", plot.typical);
    }
}
