//! Lines as the path language of SVG.

use sunlarder_engine::quantity::Within;
use sunlarder_engine::words::decimal;

/// Points nearer than this to the last one drawn, in pixels, cannot be told from it.
const NEAR: f64 = 0.5;

/// A line through `points`, in pixels to a tenth, without those nobody could see. Empty for no point; one point is a dot
/// for a pen with round ends.
pub(crate) fn polyline(points: impl IntoIterator<Item = (f64, f64)>) -> String {
    let mut path = String::new();
    let mut drawn: Option<(f64, f64)> = None;
    let mut skipped = None;
    for point in points.into_iter().filter(|(x, y)| x.is_finite() && y.is_finite()) {
        if drawn.is_some_and(|last| near(last, point)) {
            skipped = Some(point);
            continue;
        }
        // A corner that follows skipped points starts at the last of them, or a steep step would lean.
        if let Some(corner) = skipped.take() {
            line_to(&mut path, corner);
        }
        line_to(&mut path, point);
        drawn = Some(point);
    }
    if let Some(end) = skipped {
        line_to(&mut path, end);
    } else if let (Some(only), false) = (drawn, path.contains('L')) {
        line_to(&mut path, only);
    }
    path
}

/// A rectangle: left edge, top, width and height.
pub(crate) type Bar = (f64, f64, f64, f64);

/// Rectangles as one path, in units of a picture that is stretched: to a thousandth.
///
/// One element for a hundred bars: as a hundred elements, which are all made anew at every edit, they took half its time.
pub(crate) fn bars(bars: impl IntoIterator<Item = Bar>) -> String {
    let mut path = String::new();
    for (x, y, width, height) in bars {
        let [x, y, width, height, back] = [x, y, width, height, -width].map(|own| decimal(own, 3));
        path.push_str(&format!("M{x} {y}h{width}v{height}h{back}z"));
    }
    path
}

/// Upright strokes at each `x` as one path, in pixels to a tenth.
pub(crate) fn strokes(at: &[f64], top: f64, bottom: f64) -> String {
    let mut path = String::new();
    for x in at {
        let [x, top, bottom] = [*x, top, bottom].map(|own| decimal(own, 1));
        path.push_str(&format!("M{x} {top}L{x} {bottom}"));
    }
    path
}

fn near((x, y): (f64, f64), (other_x, other_y): (f64, f64)) -> bool {
    (x - other_x).abs() < NEAR && (y - other_y).abs() < NEAR
}

fn line_to(path: &mut String, (x, y): (f64, f64)) {
    path.push(if path.is_empty() { 'M' } else { 'L' });
    path.push_str(&decimal(x, 1));
    path.push(' ');
    path.push_str(&decimal(y, 1));
}

/// The value of a series of equal steps at `hour`, straight between its samples; the ends hold beyond it.
pub(crate) fn sample(series: &[f64], step: f64, hour: f64) -> Option<f64> {
    let last = series.len().checked_sub(1)?;
    let place = (hour / step).within(0.0, last as f64);
    if place.is_nan() {
        return None;
    }
    let (before, after) = (series.get(place.floor() as usize)?, series.get(place.ceil() as usize)?);
    Some(before + (after - before) * place.fract())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_goes_through_its_points() {
        assert_eq!(polyline([(0.0, 10.0), (5.25, 3.0), (10.0, -2.5)]), "M0 10L5.3 3L10 -2.5");
    }

    #[test]
    fn bars_and_strokes_are_one_path_each() {
        let path = bars([(0.0, 10.0, 0.22, 5.0), (1.0, 8.5, 0.22, 6.5)]);
        assert_eq!(path, "M0 10h0.22v5h-0.22zM1 8.5h0.22v6.5h-0.22z");
        assert_eq!(strokes(&[4.0, 8.25], 196.0, 200.0), "M4 196L4 200M8.3 196L8.3 200");
        assert_eq!((bars([]), strokes(&[], 0.0, 1.0)), (String::new(), String::new()));
    }

    #[test]
    fn points_that_cannot_be_seen_are_left_out() {
        let dense = (0..=4000).map(|i| (f64::from(i) * 0.1, 50.0));
        let path = polyline(dense);
        assert!(path.matches('L').count() <= 1600, "{}", path.matches('L').count());
        assert!(path.starts_with("M0 50"));
        assert!(path.ends_with("L400 50"), "the end is kept");
    }

    #[test]
    fn a_steep_step_stays_steep() {
        let step = polyline([(0.0, 0.0), (10.0, 0.0), (10.3, 0.0), (10.4, 80.0)]);
        assert_eq!(step, "M0 0L10 0L10.3 0L10.4 80");
    }

    #[test]
    fn one_point_is_a_dot_and_none_is_nothing() {
        assert_eq!(polyline([(3.0, 4.0)]), "M3 4L3 4");
        assert_eq!(polyline([]), "");
    }

    #[test]
    fn what_is_no_number_is_left_out() {
        assert_eq!(polyline([(0.0, 0.0), (1.0, f64::NAN), (2.0, 2.0)]), "M0 0L2 2");
    }

    #[test]
    fn samples_lie_between_their_neighbours() {
        let series = [90.0, 80.0, 60.0];
        assert_eq!(sample(&series, 0.25, 0.25), Some(80.0));
        assert_eq!(sample(&series, 0.25, 0.375), Some(70.0));
        assert_eq!(sample(&series, 0.25, -1.0), Some(90.0));
        assert_eq!(sample(&series, 0.25, 99.0), Some(60.0));
        assert_eq!(sample(&[], 0.25, 0.0), None);
        assert_eq!(sample(&[5.0], 0.0, 0.0), None);
    }
}
