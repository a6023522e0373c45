//! Schedules as shares of quarter-hours.
//!
//! **Method.** Stretches of minutes are cut into steps; hours without a time are spread evenly over the day.

use crate::document::{Schedule, When};
use crate::quantity::Hours;
use crate::sky::STEPS_PER_DAY;

/// Minutes in a step.
const STEP_MIN: u16 = 15;

/// The kind of day that schedules tell apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct DayKind {
    /// Month, January being 0.
    pub month: u8,
    /// Day of the week, Monday being 0.
    pub weekday: u8,
    /// Month of the day before, which decides what runs over midnight.
    pub month_before: u8,
}

impl DayKind {
    /// A weekday inside a month.
    #[must_use]
    pub fn inside(month: u8, weekday: u8) -> Self {
        Self { month, weekday, month_before: month }
    }

    /// The kind of a date.
    #[must_use]
    pub fn of(date: chrono::NaiveDate) -> Self {
        use chrono::Datelike;
        Self {
            month: date.month0() as u8,
            weekday: date.weekday().num_days_from_monday() as u8,
            month_before: date.pred_opt().unwrap_or(date).month0() as u8,
        }
    }

    /// Whether a schedule holds on the day, and on the day before: all that tells kinds of days apart for it.
    pub(crate) fn holds(self, schedule: &Schedule) -> (bool, bool) {
        (self.today(schedule), self.yesterday(schedule))
    }

    /// Whether the schedule's days and months hold today.
    fn today(self, schedule: &Schedule) -> bool {
        schedule.days.has(self.weekday) && schedule.months.has(self.month)
    }

    /// Whether they held yesterday.
    fn yesterday(self, schedule: &Schedule) -> bool {
        schedule.days.has((self.weekday + 6) % 7) && schedule.months.has(self.month_before)
    }
}

/// The share of each quarter-hour of a day in which something is on.
///
/// A stretch over midnight belongs to the day on which it starts: "Friday 22:00 to 6:00" covers Saturday's small hours.
/// Hours without a time are spread evenly over the day.
#[must_use]
pub fn presence(schedule: &Schedule, kind: DayKind) -> [f64; STEPS_PER_DAY] {
    let mut share = [0.0; STEPS_PER_DAY];
    let (today, yesterday) = (kind.today(schedule), kind.yesterday(schedule));
    match &schedule.when {
        When::Always if today => share = [1.0; STEPS_PER_DAY],
        When::HoursPerDay(hours) if today => share = [hours / 24.0; STEPS_PER_DAY],
        When::Spans(spans) => {
            for span in spans {
                let [evening, morning] = span.unwrapped();
                if today {
                    cover(&mut share, evening);
                }
                if yesterday {
                    cover(&mut share, morning);
                }
            }
        }
        When::Always | When::HoursPerDay(_) => {}
    }
    share
}

/// Adds a stretch of minutes; what two stretches both cover counts once at most.
fn cover(share: &mut [f64; STEPS_PER_DAY], (from, to): (u16, u16)) {
    let touched = usize::from(from / STEP_MIN)..usize::from(to.div_ceil(STEP_MIN));
    for (step, share) in share.iter_mut().enumerate().take(touched.end).skip(touched.start) {
        let start = step as u16 * STEP_MIN;
        let minutes = to.min(start + STEP_MIN).saturating_sub(from.max(start));
        *share = (*share + f64::from(minutes) / f64::from(STEP_MIN)).min(1.0);
    }
}

/// Hours of a day in which it is on, by its schedule alone.
#[must_use]
pub fn hours_of(share: &[f64; STEPS_PER_DAY]) -> Hours {
    Hours(share.iter().sum::<f64>() * 24.0 / STEPS_PER_DAY as f64)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Days, Months, Span};

    const MON: DayKind = DayKind { month: 0, weekday: 0, month_before: 0 };

    fn spans(spans: &[(u16, u16)]) -> Schedule {
        let spans =
            spans.iter().map(|(from_min, to_min)| Span { from_min: *from_min, to_min: *to_min });
        Schedule::daily(When::Spans(spans.collect()))
    }

    #[test]
    fn spans_cover_their_hours_wherever_they_lie() {
        assert_eq!(hours_of(&presence(&spans(&[(600, 660)]), MON)), Hours(1.0));
        assert_eq!(hours_of(&presence(&spans(&[(1320, 360)]), MON)), Hours(8.0));
        let odd = presence(&spans(&[(605, 612)]), MON);
        assert!((hours_of(&odd).0 * 60.0 - 7.0).abs() < 1e-9);
    }

    #[test]
    fn overlapping_spans_count_once() {
        assert_eq!(hours_of(&presence(&spans(&[(600, 660), (600, 660)]), MON)), Hours(1.0));
    }

    #[test]
    fn a_friday_night_reaches_into_saturday() {
        let mut night = spans(&[(1320, 360)]);
        night.days = Days(1 << 4);
        let on = |weekday| hours_of(&presence(&night, DayKind::inside(0, weekday)));
        assert_eq!((on(3), on(4), on(5), on(6)), (Hours(0.0), Hours(2.0), Hours(6.0), Hours(0.0)));
    }

    #[test]
    fn months_switch_it_off() {
        let mut summer = Schedule::daily(When::HoursPerDay(6.0));
        summer.months = Months(0b1110_0000);
        assert_eq!(hours_of(&presence(&summer, MON)), Hours(0.0));
        assert!((hours_of(&presence(&summer, DayKind::inside(6, 0))).0 - 6.0).abs() < 1e-12);
    }
}
