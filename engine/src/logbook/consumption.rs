//! Real consumption against the plan, by night and by day, and what the arrays brought.
//!
//! **Method.** Between two readings with hardly any sun the gauge counts what was used; that over the plan's use is the share of each
//! night, and their mean with Student's interval is the share of the plan's use. By day the gauge knows only what came less what
//! went: with the use by day like that by night, but for a quarter, the rest is what came in. Days that ended full tell only that
//! it was at least so much.

use crate::quantity::Within;

use super::estimate::{Estimate, points, student};
use super::evidence::{Evidence, Mark, SAYS_FULL};

/// A time is a night if the plan expects less than this share of its use from the sun...
const DARK: f64 = 0.15;
/// ...and lasts at least so long \[h\].
const LEAST_HOURS: f64 = 3.0;
/// How nights differ from each other before any was seen (ratio), and for how many nights that counts.
const NIGHT_SPREAD: f64 = 0.12;
const NIGHTS_BEFORE: f64 = 3.0;
/// Gauges count within this share of the truth.
const GAIN: f64 = 0.01;
/// ...and show this current where there is none \[A\].
const OFFSET: f64 = 0.015;
/// Part of what the gauge takes for full that rounding hides, the same way each night that begins full: it shows no more than that.
const ROUNDING: f64 = 0.0025;
/// Nights that follow each other are alike, so that they count for less than so many (ratio).
const OWN: f64 = 0.85;
/// How use by day may differ from use by night (ratio).
const DAY_SPREAD: f64 = 0.25;
/// Standard deviation of the logarithm of what the arrays bring over the plan, before any reading.
const YIELD_SPREAD: f64 = 0.5;
/// Charge put in by sources whose hours the plan knows only roughly (ratio).
const OTHER_SPREAD: f64 = 0.3;
/// The row of yields: logarithms from −2.5 to 1.5.
const ROW: usize = 81;

/// What nights say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Nights {
    /// Share of the plan's use.
    pub(super) share: Estimate,
    /// Its standard error.
    pub(super) error: f64,
    /// How many there were.
    pub(super) count: usize,
    /// Counted out of the bank over all of them \[Ah\].
    pub(super) counted: f64,
    /// What of it the sun gave instead \[Ah\].
    pub(super) solar: f64,
    /// What the plan expects of them \[Ah\].
    pub(super) planned: f64,
    /// How long they were \[h\].
    pub(super) hours: f64,
    /// The smallest current out of the bank that was read \[A\].
    pub(super) least_current: Option<f64>,
}

pub(super) fn nights(evidence: &Evidence, least_current: Option<f64>) -> Nights {
    let dark = |at: &usize| {
        let pair = evidence.marks.get(at - 1).zip(evidence.marks.get(*at));
        pair.is_some_and(|(before, mark)| {
            let own = &mark.stretch;
            let came = own.solar + own.other;
            own.hours >= LEAST_HOURS
                && own.used > 0.0
                && came < DARK * own.used
                && mark.claim.is_none()
                && !mark.spent
                && !before.spent
        })
    };
    let places: Vec<usize> = (1..evidence.marks.len()).filter(dark).collect();
    let nights: Vec<&Mark> = places.iter().filter_map(|at| evidence.marks.get(*at)).collect();
    let sum = |of: fn(&Mark) -> f64| nights.iter().map(|own| of(own)).sum::<f64>();
    let counted = -sum(|own| own.counted);
    let (solar, planned) =
        (sum(|own| own.stretch.solar + own.stretch.other), sum(|own| own.stretch.used));
    let count = nights.len() as f64;
    let from_full = places
        .iter()
        .filter(|at| evidence.marks.get(*at - 1).is_some_and(|own| own.level >= SAYS_FULL))
        .count() as f64;
    let mean = if planned > 0.0 { (counted + solar) / planned } else { 1.0 };
    let squares: f64 = nights
        .iter()
        .map(|own| {
            let came = own.stretch.solar + own.stretch.other;
            let off = (came - own.counted) / own.stretch.used - mean;
            off * off
        })
        .sum();
    let freedom = NIGHTS_BEFORE + f64::max(count - 1.0, 0.0);
    let spread = ((NIGHTS_BEFORE * NIGHT_SPREAD * NIGHT_SPREAD + squares) / freedom).sqrt();
    let shade = if planned > 0.0 { 0.5 * solar / planned } else { 0.0 };
    let error = if count > 0.0 {
        let offset = OFFSET * sum(|own| own.stretch.hours) / planned;
        let rounding = ROUNDING * evidence.gauge.capacity.0 * from_full / planned;
        let systematic = GAIN * GAIN + offset * offset + rounding * rounding + shade * shade;
        (spread * spread / (OWN * count) + systematic).sqrt()
    } else {
        0.4
    };
    let half = student(freedom) * error;
    let share = Estimate { best: mean, low: mean - half, high: mean + half, told: count > 0.0 };
    Nights {
        share: share.within(0.0, f64::MAX),
        error,
        count: nights.len(),
        counted,
        solar,
        planned,
        hours: sum(|own| own.stretch.hours),
        least_current,
    }
}

/// What days say: use by day, and what the sun brought over what the plan expects.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Days {
    /// Share of the plan's use.
    pub(super) share: Estimate,
    /// Share of the plan's yield.
    pub(super) yielded: Estimate,
    /// How far the weather of so few days may move that by itself (ratio, one standard deviation of its logarithm).
    pub(super) by_weather: f64,
    /// Days that ended less than full, of which the yield is known.
    pub(super) open: usize,
    /// What came on them by the count and the use \[Ah\].
    pub(super) came: f64,
    /// What the plan expects of them \[Ah\].
    pub(super) planned: f64,
}

/// One day's yield over the plan's, or the least that it was.
struct Day {
    share: f64,
    at_least: bool,
    noise: f64,
    came: f64,
    planned: f64,
}

pub(super) fn days(evidence: &Evidence, nights: &Nights) -> Days {
    let all = each_day(evidence, nights);
    let expected = &evidence.expected;
    // Days that follow each other are alike, so that they say less than so many of their own.
    let weight = (1.0 - expected.keeps) / (1.0 + expected.keeps);
    let values: Vec<f64> = (0..ROW).map(|at| -2.5 + 4.0 * at as f64 / (ROW - 1) as f64).collect();
    let spread = expected.day_spread;
    let logs: Vec<f64> = values
        .iter()
        .map(|value| {
            let prior = value / YIELD_SPREAD;
            let of_day = |day: &Day| {
                let wide = (spread * spread + day.noise * day.noise).sqrt();
                let off = libm::log(day.share) - (value - spread * spread / 2.0);
                log_likelihood(off / wide, day.at_least)
            };
            all.iter().map(of_day).sum::<f64>() * weight - prior * prior / 2.0
        })
        .collect();
    let most = logs.iter().copied().fold(f64::MIN, f64::max);
    let weights: Vec<f64> = logs.iter().map(|own| libm::exp(own - most)).collect();
    let (mean, low, high, wide) = points(&values, &weights);
    let told = wide < 0.6 * YIELD_SPREAD;
    let yielded = Estimate {
        best: libm::exp(mean.within(low, high)),
        low: libm::exp(low),
        high: libm::exp(high),
        told,
    };
    let open = all.iter().filter(|own| !own.at_least);
    let (came, planned) =
        (open.clone().map(|own| own.came).sum(), open.clone().map(|own| own.planned).sum());
    let count = f64::max(all.len() as f64, 1.0) * weight;
    let day_error = (nights.error * nights.error + DAY_SPREAD * DAY_SPREAD).sqrt();
    Days {
        share: Estimate::normal(nights.share.best, day_error, false).within(0.0, f64::MAX),
        yielded,
        by_weather: (spread * spread / count + expected.doubt * expected.doubt).sqrt(),
        open: open.count(),
        came,
        planned,
    }
}

fn each_day(evidence: &Evidence, nights: &Nights) -> Vec<Day> {
    let day = |mark: &Mark| {
        let own = &mark.stretch;
        if own.solar <= own.used * DARK || mark.spent || own.hours > 48.0 {
            return None;
        }
        let net = mark.counted + nights.share.best * own.used - own.other;
        let came = f64::max(net, 0.02 * own.solar);
        let unsure = DAY_SPREAD * own.used + OTHER_SPREAD * own.other;
        Some(Day {
            share: came / own.solar,
            at_least: mark.claim.is_some() || mark.full,
            noise: (unsure / came).within(0.0, 1.5),
            came,
            planned: own.solar,
        })
    };
    evidence.marks.iter().skip(1).filter_map(day).collect()
}

/// Logarithm of the normal density, or of the share above, at so many standard deviations.
fn log_likelihood(off: f64, at_least: bool) -> f64 {
    if at_least {
        let above = 0.5 * libm::erfc(off / core::f64::consts::SQRT_2);
        libm::log(f64::max(above, 1e-12))
    } else {
        -0.5 * off * off
    }
}
