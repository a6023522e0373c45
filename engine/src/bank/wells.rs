//! Lead-acid as two wells: charge at the plates that is at hand, and charge that first has to creep there.
//!
//! **Question answered:** how much can a battery give, or take, within a time, after what happened before?
//!
//! **Method.** The kinetic battery model of Manwell & McGowan 1993 (Solar Energy 50:399-405, doi:10.1016/0038-092X(93)90060-2):
//! an available well with the share c of the whole and a bound one with the rest, between which charge flows at the rate k
//! towards equal levels. Under a constant current the solution is exact for a step of any length. Loss of capacity with
//! current, recovery at rest and the limits of charge and discharge all follow from c and k.
//!
//! **Fitting.** Of capacities at several hour rates: 1/q(T) = a + b·f(kT) with f(x) = (1 − e^−x)/x, a = 1/q_max and
//! b = (1/c − 1)·a, so that for each k the best a and b come from two linear equations; k itself is searched.
//! Three ratings determine the three parameters. Two do not: the whole is then taken as a tenth over the slower rating, and the
//! [`Fit`] says so. One rating needs the exponent of the loss of capacity with current and gives a battery typical of it.
//!
//! **Left out:** temperature (it scales the whole, see `capacity`), differing rates for charge and discharge, ageing of c and k.

use crate::quantity::{AmpHours, Amps, Hours, Within};

/// Under this k·dt the closed forms cancel and a series takes over: there both are right to some 1e-14.
const SMALL: f64 = 0.01;
/// Bounds of the share of the available well.
const SHARE: (f64, f64) = (0.01, 0.99);
/// Bounds of the rate \[1/h\].
const RATE: (f64, f64) = (1e-3, 20.0);
/// Bounds of the whole over the largest rating.
const WHOLE: (f64, f64) = (0.9, 2.0);
/// The whole over the slower of two ratings, which alone do not determine it.
const WHOLE_OVER_SLOWER: f64 = 1.1;
/// Points of the first, coarse search for the rate, in equal ratios.
const SEARCH_POINTS: i32 = 48;
/// Halvings of the ratio around the best of them.
const SEARCH_ROUNDS: usize = 44;

/// The shape of a battery as two wells, whatever its size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wells {
    /// Share of the whole that the available well holds when full (ratio, 0 to 1).
    #[doc(alias = "c")]
    pub share: f64,
    /// Rate at which the levels of the wells become equal \[1/h\].
    #[doc(alias = "k")]
    pub rate: f64,
}

/// Charge in the two wells.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Held {
    /// Charge at hand.
    #[doc(alias = "q1")]
    pub available: AmpHours,
    /// Charge that first has to flow to the other well.
    #[doc(alias = "q2")]
    pub bound: AmpHours,
}

impl Held {
    /// All charge.
    #[inline]
    #[must_use]
    pub fn all(&self) -> AmpHours {
        self.available + self.bound
    }
}

/// What a step of one length does to the wells: made once, used for every step of that length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pace {
    /// Length of the step.
    time: Hours,
    /// What stays of the available charge: e^(−k·dt).
    stays: f64,
    /// What flows in, of the whole charge: c·(1 − e^(−k·dt)).
    comes: f64,
    /// Share of the available well.
    share: f64,
    /// What a current takes from the available well, as a length of time: (1 − e^(−k·dt) + c·(k·dt − 1 + e^(−k·dt)))/k.
    taken: Hours,
}

/// 1 − e^−x over x; 1 at nothing.
fn mean_decay(x: f64) -> f64 {
    if x.abs() < 1e-300 { 1.0 } else { -libm::expm1(-x) / x }
}

/// x − 1 + e^−x over x, exact also where x is small: x/2 − x²/6 + x³/24 − ...
fn delay(x: f64) -> f64 {
    if x < SMALL {
        x / 2.0 * (1.0 - x / 3.0 * (1.0 - x / 4.0 * (1.0 - x / 5.0 * (1.0 - x / 6.0))))
    } else {
        1.0 + libm::expm1(-x) / x
    }
}

impl Wells {
    /// What a step of this length does.
    #[must_use]
    pub fn pace(&self, time: Hours) -> Pace {
        let x = self.rate * time.0;
        let gone = -libm::expm1(-x);
        Pace {
            time,
            stays: 1.0 - gone,
            comes: self.share * gone,
            share: self.share,
            taken: time * (mean_decay(x) + self.share * delay(x)),
        }
    }

    /// Capacity of a battery with so much in all, at the constant current that empties it in this time.
    #[must_use]
    pub fn capacity(&self, whole: AmpHours, time: Hours) -> AmpHours {
        let x = self.rate * time.0;
        whole * self.share / (mean_decay(x) + self.share * delay(x))
    }

    /// A full battery with so much in all.
    #[must_use]
    pub fn full(&self, whole: AmpHours) -> Held {
        Held { available: whole * self.share, bound: whole * (1.0 - self.share) }
    }
}

impl Pace {
    /// What the available well holds after the step if no current flows.
    #[inline]
    fn rested(&self, held: Held) -> AmpHours {
        held.available * self.stays + held.all() * self.comes
    }

    /// The wells after a step with this current, positive out of the battery. Charge is conserved to the last bit but rounding.
    #[inline]
    #[must_use]
    pub fn after(&self, held: Held, out: Amps) -> Held {
        let available = self.rested(held) - out * self.taken;
        Held { available, bound: held.all() - out * self.time - available }
    }

    /// The largest current out of the battery that the available well carries to the end of the step.
    #[inline]
    #[must_use]
    pub fn most_out(&self, held: Held) -> Amps {
        self.rested(held) / self.taken
    }

    /// The largest current into a battery with so much in all, that the available well has room for to the end of the step.
    #[inline]
    #[must_use]
    pub fn most_in(&self, held: Held, whole: AmpHours) -> Amps {
        (whole * self.share - self.rested(held)) / self.taken
    }
}

/// A rated capacity: charge and the hours in which it was drawn.
pub type Rating = (AmpHours, Hours);

/// A battery fitted to its ratings, and how well.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// Its shape.
    pub wells: Wells,
    /// All charge that it ever holds.
    pub whole: AmpHours,
    /// Largest deviation from a rating, relative to it (ratio).
    pub deviation: f64,
    /// Whether the ratings determine the battery: three or more do. Others would fit two as well.
    pub unique: bool,
}

impl Fit {
    /// A battery fitted to two or more ratings, in any order.
    ///
    /// None if there are fewer than two, two of the same hours, or any is no positive number.
    #[must_use]
    pub fn to(ratings: &[Rating]) -> Option<Self> {
        let sound =
            |(charge, time): &Rating| charge.0.is_finite() && charge.0 > 0.0 && time.0 > 0.0;
        let apart = |one: &Rating| ratings.iter().filter(|two| two.1 == one.1).count() == 1;
        if ratings.len() < 2 || !ratings.iter().all(|one| sound(one) && apart(one)) {
            return None;
        }
        let largest = ratings.iter().map(|rating| rating.0.0).fold(0.0, f64::max);
        let fixed = (ratings.len() == 2).then_some(1.0 / (WHOLE_OVER_SLOWER * largest));
        let fit = |rate: f64| Line::through(ratings, rate, largest, fixed);
        let best = search(|rate| fit(rate).error);
        let line = fit(best);
        let wells = Wells { share: line.level / (line.level + line.slope), rate: best };
        let whole = AmpHours(1.0 / line.level);
        let off = |(charge, time): &Rating| (wells.capacity(whole, *time) / *charge - 1.0).abs();
        let deviation = ratings.iter().map(off).fold(0.0, f64::max);
        Some(Self { wells, whole, deviation, unique: ratings.len() > 2 })
    }

    /// A battery typical of one rating and an exponent of Peukert's law: the law stands in for the ratings that are not stated,
    /// at a twentieth and a quarter of the hours. Its whole is over a rated capacity of 1. So it only ever speaks of discharges faster
    /// than the rated one.
    #[must_use]
    pub fn typical(exponent: f64, hour_rate: Hours) -> Self {
        Self::nearest(&Self::by_law(exponent, hour_rate), false)
    }

    /// The ratings by which the law stands in for those that are not stated, over the one that is.
    pub(super) fn by_law(exponent: f64, hour_rate: Hours) -> Vec<Rating> {
        let by_law = |part: f64| {
            let charge = libm::pow(part, (exponent - 1.0) / exponent);
            (AmpHours(charge), hour_rate * part)
        };
        vec![by_law(0.05), by_law(0.25), by_law(1.0)]
    }

    /// A battery fitted to ratings over the slowest of them, which are stated or stand in for what is not.
    pub(super) fn nearest(ratings: &[Rating], stated: bool) -> Self {
        let level = Self {
            wells: Wells { share: SHARE.1, rate: 1.0 },
            whole: AmpHours(1.0),
            deviation: 0.0,
            unique: false,
        };
        Self::to(ratings).map_or(level, |fit| Self { unique: fit.unique && stated, ..fit })
    }
}

/// 1/q over f at one rate: a straight line with its level at f = 0 and its slope.
struct Line {
    level: f64,
    slope: f64,
    /// Sum of the squares of the relative deviations.
    error: f64,
}

impl Line {
    /// The best line within the bounds at this rate; its level is given where the ratings cannot tell it.
    fn through(ratings: &[Rating], rate: f64, largest: f64, fixed: Option<f64>) -> Self {
        let (mut n, mut x, mut xx, mut y, mut xy) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (charge, time) in ratings {
            // Relative deviations: each equation is multiplied by its charge, so that 1/q becomes 1.
            let (one, f) = (charge.0, charge.0 * mean_decay(rate * time.0));
            n += one * one;
            x += one * f;
            xx += f * f;
            y += one;
            xy += f;
        }
        let determinant = n * xx - x * x;
        let free = (y * xx - x * xy) / determinant;
        let (least, most) = (1.0 / (WHOLE.1 * largest), 1.0 / (WHOLE.0 * largest));
        let free = if free.is_finite() { free.within(least, most) } else { most };
        let level = fixed.unwrap_or(free);
        let slope = (xy - level * x) / xx;
        let slope = slope.within(level * (1.0 / SHARE.1 - 1.0), level * (1.0 / SHARE.0 - 1.0));
        let off = |(charge, time): &Rating| {
            let off = charge.0 * (level + slope * mean_decay(rate * time.0)) - 1.0;
            off * off
        };
        Self { level, slope, error: ratings.iter().map(off).sum() }
    }
}

/// The rate with the smallest error: a coarse search over all, then ever smaller ratios around the best.
fn search(error: impl Fn(f64) -> f64) -> f64 {
    let span = libm::log(RATE.1 / RATE.0);
    let width = span / f64::from(SEARCH_POINTS);
    let at = |place: f64| RATE.0 * libm::exp(place.within(0.0, span));
    let (mut best, mut least) = (0.0, f64::INFINITY);
    for point in 0..=SEARCH_POINTS {
        let place = f64::from(point) * width;
        let found = error(at(place));
        if found < least {
            (best, least) = (place, found);
        }
    }
    let mut step = width / 2.0;
    for _ in 0..SEARCH_ROUNDS {
        for place in [best - step, best + step] {
            let found = error(at(place));
            if found < least {
                (best, least) = (place, found);
            }
        }
        step *= 0.6;
    }
    at(best)
}

#[cfg(test)]
mod tests {
    use super::*;

    const WELLS: Wells = Wells { share: 0.4, rate: 0.5 };
    const WHOLE: AmpHours = AmpHours(110.0);

    #[test]
    fn many_small_steps_are_one_large_step() {
        let start = Held { available: AmpHours(20.0), bound: AmpHours(50.0) };
        let large = WELLS.pace(Hours(2.0)).after(start, Amps(7.0));
        let small = WELLS.pace(Hours(2.0 / 4096.0));
        let many = (0..4096).fold(start, |held, _| small.after(held, Amps(7.0)));
        assert!((large.available - many.available).0.abs() < 1e-9, "{large:?} {many:?}");
        assert!((large.all() - AmpHours(56.0)).0.abs() < 1e-12);
    }

    #[test]
    fn the_series_meets_the_closed_form() {
        let (below, above) = (delay(SMALL * (1.0 - 1e-9)), delay(SMALL * (1.0 + 1e-9)));
        assert!((above / below - 1.0 - 2e-9).abs() < 1e-11, "{below} {above}");
        assert_eq!((mean_decay(0.0), delay(0.0)), (1.0, 0.0));
    }

    #[test]
    fn the_limits_empty_and_fill_the_available_well() {
        let pace = WELLS.pace(Hours(0.25));
        let held = Held { available: AmpHours(11.0), bound: AmpHours(40.0) };
        let emptied = pace.after(held, pace.most_out(held));
        assert!(emptied.available.0.abs() < 1e-12, "{emptied:?}");
        let filled = pace.after(held, -pace.most_in(held, WHOLE));
        assert!((filled.available - WHOLE * WELLS.share).0.abs() < 1e-12, "{filled:?}");
    }

    #[test]
    fn a_capacity_is_what_its_current_draws() {
        let time = Hours(7.0);
        let capacity = WELLS.capacity(WHOLE, time);
        let current = WELLS.pace(time).most_out(WELLS.full(WHOLE));
        assert!((current * time - capacity).0.abs() < 1e-9, "{current:?} {capacity:?}");
    }

    #[test]
    fn an_exponent_makes_a_battery_that_follows_it_within_a_few_per_cent() {
        for exponent in [1.05, 1.1, 1.15, 1.2, 1.3] {
            let fit = Fit::typical(exponent, Hours(20.0));
            assert!(fit.deviation < 1e-6 && !fit.unique, "{exponent}: {fit:?}");
            let whole = fit.whole.0;
            assert!((1.0..1.2).contains(&whole), "{exponent}: {fit:?}");
        }
        let level = Fit::typical(1.0, Hours(20.0));
        assert!(level.deviation < 0.02, "{level:?}");
    }

    #[test]
    fn two_ratings_fit_but_are_not_unique() {
        let ratings = [(AmpHours(195.0), Hours(20.0)), (AmpHours(160.0), Hours(5.0))];
        let fit = Fit::to(&ratings).unwrap();
        assert!(fit.deviation < 1e-6 && !fit.unique, "{fit:?}");
        assert!((fit.whole.0 - 214.5).abs() < 1e-9);
    }

    #[test]
    fn what_is_no_rating_is_not_fitted() {
        let one = (AmpHours(100.0), Hours(20.0));
        assert_eq!(Fit::to(&[one]), None);
        assert_eq!(Fit::to(&[one, (AmpHours(90.0), Hours(20.0))]), None);
        assert_eq!(Fit::to(&[one, (AmpHours(f64::NAN), Hours(5.0))]), None);
    }

    #[test]
    fn ratings_that_contradict_each_other_show_a_deviation() {
        let ratings = [
            (AmpHours(100.0), Hours(5.0)),
            (AmpHours(60.0), Hours(20.0)),
            (AmpHours(100.0), Hours(100.0)),
        ];
        assert!(Fit::to(&ratings).unwrap().deviation > 0.1);
    }
}
