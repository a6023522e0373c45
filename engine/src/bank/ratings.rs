//! What the rated capacities of a sheet say of a battery.
//!
//! **Question answered:** a sheet states one, two or three capacities, each with its hours: what lies between them, and how well does
//! one battery fit them all?
//!
//! **Method.** Lead-acid is fitted as two wells ([`Fit::to`](super::Fit::to)): three ratings determine it, two do not. Lithium and
//! sodium follow Peukert's law, whose exponent comes from the fastest and the slowest rating; a third one between them checks it.
//! The slowest rated capacity is what planning counts from: no law is followed to a slower discharge than anybody measured.
//!
//! **Range.** Capacities must not fall with the hours, and not rise faster than an exponent of 1.6 says.

use crate::document::{Bank as Section, Field, Problem};
use crate::quantity::{AmpHours, Hours, PerHour, Percent};
use crate::working::{Formula, Source, Trace, term};

use super::capacity::exponent_from;
use super::wells::{Fit, Rating};
use super::{Bank, LeadAcid};

/// Fits worse than this are told as such (ratio): rated capacities of one series of batteries scatter by less.
const FAIR: f64 = 0.05;

/// The rated capacities of one battery.
#[derive(Clone, Debug, PartialEq)]
pub struct Ratings {
    /// All of them, one to three, the fastest first.
    pub all: Vec<Rating>,
    /// The one in the fewest hours.
    fastest: Rating,
    /// The one in the most hours.
    pub slowest: Rating,
}

/// How well a battery fits its two or three rated capacities.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quality {
    /// How many there are.
    pub ratings: usize,
    /// Largest deviation from one of them (ratio).
    pub deviation: f64,
    /// Whether they determine the battery; if not, others would fit as well.
    pub unique: bool,
}

impl Quality {
    /// Whether no battery of its kind fits within 5 %.
    #[must_use]
    pub fn poor(&self) -> bool {
        self.deviation > FAIR
    }
}

impl Ratings {
    /// Reads the ratings of a section; `usual` are the hours of the first if it states none.
    ///
    /// # Errors
    /// If a capacity has no hours or hours have no capacity, or if no battery could have two of them.
    pub(super) fn parse(section: &Section, usual: Hours) -> Result<Self, Problem> {
        let hours = section.hour_rate_h.map_or(usual, Hours);
        let first = (AmpHours(section.capacity_ah), hours);
        let second = pair(
            (section.second_capacity_ah, Field::SecondCapacity),
            (section.second_hours_h, Field::SecondHours),
        )?;
        let third = pair(
            (section.third_capacity_ah, Field::ThirdCapacity),
            (section.third_hours_h, Field::ThirdHours),
        )?;
        let mut all = vec![first];
        // Three at most are put in their places one by one: a sort would cost the page kilobytes.
        for one in second.into_iter().chain(third) {
            let place = all.iter().take_while(|other| other.1 < one.1).count();
            all.insert(place, one);
        }
        for two in all.windows(2) {
            agree(two[0], two[1])?;
        }
        let end = |end: Option<&Rating>| end.copied().unwrap_or(first);
        let (fastest, slowest) = (end(all.first()), end(all.last()));
        Ok(Self { all, fastest, slowest })
    }

    /// The exponent of Peukert's law through the fastest and the slowest; none if there is only one.
    pub(super) fn exponent(&self) -> Option<f64> {
        (self.all.len() > 1).then(|| exponent_between(self.fastest, self.slowest).max(1.0))
    }

    /// The two wells that fit them, over a slowest rated capacity of 1; none if there is only one.
    pub(super) fn wells(&self) -> Option<Fit> {
        let over_slowest = |(charge, hours): &Rating| (AmpHours(*charge / self.slowest.0), *hours);
        Fit::to(&self.all.iter().map(over_slowest).collect::<Vec<_>>())
    }
}

fn exponent_between(faster: Rating, slower: Rating) -> f64 {
    exponent_from((faster.0 / faster.1, faster.1), (slower.0 / slower.1, slower.1))
}

/// A rating of which both halves are stated, or neither.
fn pair(
    (charge, charge_field): (Option<f64>, Field),
    (hours, hours_field): (Option<f64>, Field),
) -> Result<Option<Rating>, Problem> {
    match (charge, hours) {
        (Some(charge), Some(hours)) => Ok(Some((AmpHours(charge), Hours(hours)))),
        (None, None) => Ok(None),
        (Some(_), None) => Err(Problem::HalfRating { missing: hours_field }),
        (None, Some(_)) => Err(Problem::HalfRating { missing: charge_field }),
    }
}

/// Refuses two ratings that no battery has: of the same hours, less charge in more hours, or far more.
fn agree(faster: Rating, slower: Rating) -> Result<(), Problem> {
    let rises = slower.1 > faster.1 && slower.0 >= faster.0;
    let current_falls = slower.0 / slower.1 < faster.0 / faster.1;
    let steepest = Field::RateExponent.range().max;
    if rises && current_falls && exponent_between(faster, slower) <= steepest {
        return Ok(());
    }
    Err(Problem::RatingsClash { faster, slower })
}

impl LeadAcid {
    /// By its rated capacities where there are several, else typical of one and an exponent.
    pub(super) fn rated(ratings: &Ratings, exponent: f64) -> Self {
        let typical = || Fit::typical(exponent, ratings.slowest.1);
        Self::of(ratings.wells().unwrap_or_else(typical))
    }
}

impl Bank {
    /// How well the bank fits its rated capacities; none if there is only one.
    #[must_use]
    pub fn fit_quality(&self) -> Option<Quality> {
        self.ratings_worked(&mut ())
    }

    /// The same with its working: what the fitted battery would give in the hours of each rating.
    pub fn ratings_worked(&self, trace: &mut impl Trace) -> Option<Quality> {
        let ratings = self.ratings.all.len();
        if ratings < 2 {
            return None;
        }
        self.exponent_worked(trace);
        let mut deviation = 0.0;
        for (charge, hours) in &self.ratings.all {
            let stated = *charge * self.strings;
            let fitted = self.fitted(*hours, trace);
            let off = trace.step(
                Formula::RatingDeviation,
                Percent::of_ratio(fitted / stated - 1.0),
                &[term(fitted), term(stated)],
            );
            deviation = f64::max(deviation, off.ratio().abs());
        }
        let unique = self.lead_acid.as_ref().is_none_or(|own| own.fit.unique);
        Some(Quality { ratings, deviation, unique })
    }

    /// The exponent between the fastest and the slowest rating, unless the plan states one.
    fn exponent_worked(&self, trace: &mut impl Trace) {
        if self.exponent_source == Source::Typical || self.own_exponent {
            return;
        }
        let (fastest, slowest) = (self.ratings.fastest, self.ratings.slowest);
        trace.step(
            Formula::ExponentOfRatings,
            self.exponent,
            &[
                term(slowest.1),
                term(fastest.1),
                term(fastest.0 * self.strings),
                term(slowest.0 * self.strings),
            ],
        );
    }

    /// Charge that the bank gives in a discharge of so many hours, by what was fitted to its ratings.
    fn fitted(&self, hours: Hours, trace: &mut impl Trace) -> AmpHours {
        match &self.lead_acid {
            Some(own) => {
                let whole = self.slowest * own.whole;
                let fitted = Source::ManwellMcGowan;
                let whole_source = if own.fit.unique { fitted } else { Source::Choice };
                trace.step(
                    Formula::CapacityOfWells,
                    own.fit.wells.capacity(whole, hours),
                    &[
                        term(whole).from(whole_source),
                        term(own.fit.wells.share).from(fitted),
                        term(PerHour(own.fit.wells.rate)).from(fitted),
                        term(hours),
                    ],
                )
            }
            None => trace.step(
                Formula::CapacityInHours,
                self.slowest
                    * libm::pow(hours / self.hour_rate, (self.exponent - 1.0) / self.exponent),
                &[
                    term(self.slowest),
                    term(hours),
                    term(self.hour_rate).from(self.hour_rate_source),
                    term(self.exponent).from(self.exponent_source),
                ],
            ),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bank::Wells;
    use crate::document::Chemistry;

    fn section(chemistry: Chemistry, ratings: &[(f64, f64)]) -> Section {
        let at = |place: usize| ratings.get(place).copied();
        Section {
            chemistry,
            battery_v: 12.0,
            capacity_ah: ratings[0].0,
            hour_rate_h: Some(ratings[0].1),
            second_capacity_ah: at(1).map(|one| one.0),
            second_hours_h: at(1).map(|one| one.1),
            third_capacity_ah: at(2).map(|one| one.0),
            third_hours_h: at(2).map(|one| one.1),
            in_parallel: 2.0,
            ..Section::default()
        }
    }

    fn bank(chemistry: Chemistry, ratings: &[(f64, f64)]) -> Bank {
        Bank::parse(&section(chemistry, ratings)).unwrap()
    }

    #[test]
    fn three_ratings_of_a_known_battery_give_it_back() {
        let wells = Wells { share: 0.35, rate: 0.4 };
        let of = |hours: f64| {
            let charge = wells.capacity(AmpHours(120.0), Hours(hours)).0;
            (Field::SecondCapacity.range().rounded(charge), hours)
        };
        let bank = bank(Chemistry::FloodedLeadAcid, &[of(20.0), of(100.0), of(5.0)]);
        let fit = bank.lead_acid.as_ref().unwrap().fit;
        assert!((fit.wells.share - 0.35).abs() < 0.01, "{fit:?}");
        assert!((fit.wells.rate - 0.4).abs() < 0.02, "{fit:?}");
        assert_eq!((bank.rated.0, bank.slowest.0), (2.0 * of(20.0).0, 2.0 * of(100.0).0));
        let quality = bank.fit_quality().unwrap();
        assert!(quality.unique && quality.deviation < 1e-3 && !quality.poor(), "{quality:?}");
    }

    #[test]
    fn two_ratings_of_lead_acid_fit_and_are_not_unique() {
        let quality = bank(Chemistry::Agm, &[(100.0, 20.0), (82.0, 5.0)]).fit_quality().unwrap();
        assert!(quality.deviation < 1e-6 && !quality.unique && quality.ratings == 2);
        assert_eq!(bank(Chemistry::Agm, &[(100.0, 20.0)]).fit_quality(), None);
    }

    #[test]
    fn ratings_that_no_two_wells_have_show_a_poor_fit() {
        let odd = [(100.0, 5.0), (101.0, 20.0), (160.0, 100.0)];
        let quality = bank(Chemistry::Gel, &odd).fit_quality().unwrap();
        assert!(quality.poor(), "{quality:?}");
    }

    #[test]
    fn ratings_of_lithium_give_the_exponent_and_no_more_than_the_slowest() {
        let bank = bank(Chemistry::Lifepo4, &[(97.0, 1.0), (100.0, 5.0), (94.0, 0.5)]);
        let law = libm::log(10.0) / libm::log((94.0 / 0.5) / (100.0 / 5.0));
        assert!((bank.exponent - law).abs() < 1e-12, "{}", bank.exponent);
        let quality = bank.fit_quality().unwrap();
        assert!(quality.unique && quality.deviation > 1e-4 && quality.deviation < 0.02);
        let slow =
            bank.capacity(crate::quantity::Amps(0.5), crate::quantity::Celsius(25.0), &mut ());
        assert_eq!(slow.full, AmpHours(200.0));
    }

    #[test]
    fn an_exponent_of_ones_own_goes_before_that_of_the_ratings() {
        let own = Section {
            rate_exponent: Some(1.2),
            ..section(Chemistry::Lifepo4, &[(97.0, 1.0), (100.0, 5.0)])
        };
        let bank = Bank::parse(&own).unwrap();
        assert_eq!(bank.exponent, 1.2);
        assert!(bank.fit_quality().unwrap().poor());
    }

    #[test]
    fn half_a_rating_is_refused_by_the_name_of_its_other_half() {
        let mut half = section(Chemistry::Agm, &[(100.0, 20.0), (82.0, 5.0)]);
        half.second_hours_h = None;
        let missing = |missing| Err(Problem::HalfRating { missing });
        assert_eq!(Bank::parse(&half).map(|_| ()), missing(Field::SecondHours));
        half.second_capacity_ah = None;
        half.third_hours_h = Some(100.0);
        assert_eq!(Bank::parse(&half).map(|_| ()), missing(Field::ThirdCapacity));
    }

    #[test]
    fn ratings_that_contradict_each_other_are_refused() {
        let refused = |ratings: &[(f64, f64)]| {
            matches!(
                Bank::parse(&section(Chemistry::Agm, ratings)),
                Err(Problem::RatingsClash { .. })
            )
        };
        assert!(refused(&[(100.0, 20.0), (101.0, 5.0)]), "more in fewer hours");
        assert!(refused(&[(100.0, 20.0), (90.0, 20.0)]), "two in the same hours");
        assert!(refused(&[(100.0, 20.0), (20.0, 10.0)]), "a fifth in half the hours");
        assert!(!refused(&[(100.0, 20.0), (100.0, 5.0)]), "as much in fewer hours");
    }

    #[test]
    fn the_working_shows_what_was_fitted_beside_what_is_stated() {
        for chemistry in [Chemistry::Agm, Chemistry::Lifepo4] {
            let bank = bank(chemistry, &[(100.0, 20.0), (85.0, 5.0), (110.0, 100.0)]);
            let mut working = crate::working::Working::new();
            let worked = bank.ratings_worked(&mut working);
            assert_eq!(worked, bank.fit_quality());
            let steps = working.steps();
            let shown = steps.iter().filter(|step| step.formula == Formula::RatingDeviation);
            assert_eq!(shown.count(), 3);
            assert_eq!(steps[0].value, bank.exponent);
        }
    }
}
