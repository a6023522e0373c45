//! Hours along an axis of several days.

/// The midnights within a span that starts at clock hour `start_hour` and lasts `hours`.
///
/// Each is given as hours from the start and the number of days after the first one, so that the weekday's name is
/// (first weekday + number) modulo 7. A start at midnight exactly is itself one, of day 0.
pub(crate) fn midnights(start_hour: f64, hours: f64) -> Vec<(f64, usize)> {
    multiples(start_hour, hours, 24.0).map(|(at, count)| (at, count.max(0.0) as usize)).collect()
}

/// The whole multiples of `every` clock hours within the span, as hours from the start.
pub(crate) fn hour_ticks(start_hour: f64, hours: f64, every: f64) -> Vec<f64> {
    multiples(start_hour, hours, every).map(|(at, _)| at).collect()
}

/// The finest step of clock hours that divides a day and keeps ticks `apart` pixels or more from each other.
pub(crate) fn hour_step(hours: f64, width: f64, apart: f64) -> f64 {
    let pixels_per_hour = width / hours;
    let fits = |every: &f64| every * pixels_per_hour >= apart;
    [1.0, 2.0, 3.0, 6.0, 12.0].into_iter().find(fits).unwrap_or(24.0)
}

/// A picture of more than this many hours gets no ticks at all: they would stand closer than pixels.
const LONGEST: f64 = 24.0 * 400.0;

fn multiples(start_hour: f64, hours: f64, every: f64) -> impl Iterator<Item = (f64, f64)> {
    let drawn = start_hour.is_finite() && (0.0..=LONGEST).contains(&hours) && every > 0.0;
    let first = (start_hour / every).ceil();
    let count = if drawn { ((start_hour + hours) / every).floor() - first + 1.0 } else { 0.0 };
    (0..count.max(0.0) as usize).map(move |i| {
        let number = first + i as f64;
        (number * every - start_hour, number)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn midnights_follow_the_start() {
        assert_eq!(midnights(16.0, 72.0), [(8.0, 1), (32.0, 2), (56.0, 3)]);
    }

    #[test]
    fn a_start_at_midnight_is_one() {
        assert_eq!(midnights(0.0, 48.0), [(0.0, 0), (24.0, 1), (48.0, 2)]);
    }

    #[test]
    fn a_short_span_may_have_none() {
        assert_eq!(midnights(6.25, 12.0), []);
    }

    #[test]
    fn hours_stand_on_the_clock_not_on_the_start() {
        assert_eq!(hour_ticks(16.5, 15.0, 6.0), [1.5, 7.5, 13.5]);
    }

    #[test]
    fn fewer_ticks_where_there_is_less_room() {
        assert_eq!(hour_step(96.0, 900.0, 9.0), 1.0);
        assert_eq!(hour_step(96.0, 300.0, 9.0), 3.0);
        assert_eq!(hour_step(336.0, 300.0, 9.0), 12.0);
        assert_eq!(hour_step(8760.0, 300.0, 9.0), 24.0);
    }

    #[test]
    fn spans_beyond_a_picture_have_no_ticks() {
        for (start, hours) in [(0.0, 1e300), (f64::NAN, 24.0), (0.0, -5.0), (0.0, f64::INFINITY)] {
            assert_eq!(midnights(start, hours), [], "{hours} h from {start}");
        }
    }
}
