//! Hours of a day painted and erased on a strip: stretches joined, cut and put in order.
//!
//! Minutes are kept: what was not painted over stays as it was, to the minute.

use super::schedule::{DAY_MIN, Span};

/// The stretches with the minutes from one to another, of one day, painted or erased; joined where they touch, also over midnight, and
/// in the order of the day. Nothing changes if that would be more stretches than a plan holds, or if there is nothing between.
#[must_use]
pub fn painted(spans: &[Span], from_min: u16, to_min: u16, on: bool) -> Vec<Span> {
    let to_min = to_min.min(DAY_MIN);
    if from_min >= to_min {
        return spans.to_vec();
    }
    let mut parts: Vec<(u16, u16)> = Vec::new();
    let known = spans.iter().flat_map(|span| span.unwrapped());
    for part in known.filter(|(from, to)| from < to) {
        if on {
            add(&mut parts, part);
        } else {
            for left in [(part.0, part.1.min(from_min)), (part.0.max(to_min), part.1)] {
                if left.0 < left.1 {
                    add(&mut parts, left);
                }
            }
        }
    }
    if on {
        add(&mut parts, (from_min, to_min));
    }
    let wrapped = wrap(&parts);
    if wrapped.len() > super::List::Spans.limit() { spans.to_vec() } else { wrapped }
}

/// Adds a part where it belongs and joins what it touches.
fn add(parts: &mut Vec<(u16, u16)>, (mut from, mut to): (u16, u16)) {
    parts.retain(|own| {
        let touches = own.0 <= to && from <= own.1;
        if touches {
            (from, to) = (from.min(own.0), to.max(own.1));
        }
        !touches
    });
    let at = parts.partition_point(|own| own.0 < from);
    parts.insert(at, (from, to));
}

/// Parts of one day as stretches: what ends at midnight goes on in what begins there.
fn wrap(parts: &[(u16, u16)]) -> Vec<Span> {
    let span = |(from_min, to_min): (u16, u16)| Span { from_min, to_min };
    match parts {
        [(0, first_end), inner @ .., (last_from, DAY_MIN)] => {
            let mut all: Vec<Span> = inner.iter().copied().map(span).collect();
            all.push(Span { from_min: *last_from, to_min: *first_end });
            all
        }
        _ => parts.iter().copied().map(span).collect(),
    }
}

/// Whether a minute of the day lies in one of the stretches.
#[must_use]
pub fn is_painted(spans: &[Span], minute: u16) -> bool {
    let mut parts = spans.iter().flat_map(|span| span.unwrapped());
    parts.any(|(from, to)| from <= minute && minute < to)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spans(texts: &[&str]) -> Vec<Span> {
        texts.iter().filter_map(|text| text.parse().ok()).collect()
    }

    #[test]
    fn painting_joins_and_erasing_cuts() {
        let start = spans(&["18:05-22:30"]);
        assert_eq!(painted(&start, 1320, 1410, true), spans(&["18:05-23:30"]));
        assert_eq!(painted(&start, 420, 480, true), spans(&["07:00-08:00", "18:05-22:30"]));
        assert_eq!(painted(&start, 1140, 1200, false), spans(&["18:05-19:00", "20:00-22:30"]));
        assert_eq!(painted(&start, 0, 1440, false), []);
        assert_eq!(painted(&start, 0, 1440, true), spans(&["00:00-24:00"]));
        assert_eq!(painted(&start, 600, 600, true), start, "nothing between");
    }

    #[test]
    fn a_night_stays_one_stretch() {
        let night = spans(&["22:00-06:00"]);
        assert_eq!(painted(&night, 360, 420, true), spans(&["22:00-07:00"]));
        assert_eq!(painted(&night, 1380, 1440, false), spans(&["00:00-06:00", "22:00-23:00"]));
        assert_eq!(painted(&spans(&["00:00-06:00"]), 1320, 1440, true), night);
        assert!(is_painted(&night, 0) && is_painted(&night, 1439) && !is_painted(&night, 360));
    }

    #[test]
    fn no_more_stretches_come_than_a_plan_holds() {
        let mut own = Vec::new();
        for hour in 0..24 {
            own = painted(&own, hour * 60, hour * 60 + 30, true);
        }
        assert_eq!(own.len(), crate::document::List::Spans.limit());
        assert!(own.iter().all(|span| span.is_valid()));
        assert_eq!(painted(&own, 0, DAY_MIN, true), spans(&["00:00-24:00"]));
    }

    #[test]
    fn every_minute_is_as_it_was_painted() {
        let mut own = spans(&["05:07-09:59", "23:10-01:30"]);
        let mut minutes: Vec<bool> = (0..DAY_MIN).map(|at| is_painted(&own, at)).collect();
        let strokes = [
            (0, 15, false),
            (300, 315, true),
            (590, 700, true),
            (1410, 1440, false),
            (45, 90, true),
        ];
        for (from, to, on) in strokes {
            own = painted(&own, from, to, on);
            for minute in &mut minutes[usize::from(from)..usize::from(to)] {
                *minute = on;
            }
            for (at, on) in minutes.iter().enumerate() {
                assert_eq!(is_painted(&own, at as u16), *on, "{at} in {own:?}");
            }
        }
    }
}
