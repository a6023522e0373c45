//! The promise as a plan states it.

use super::map::Rates;
use super::promise::{Kind, Promise};
use super::study::Question;
use crate::document::{self, Months, Promised};
use crate::quantity::Percent;

impl Promise {
    /// What a plan promises; without a chance that is stated, the usual one: certainty where a life may depend on it.
    #[must_use]
    pub fn stated(document: &document::Document) -> Self {
        let own = document.promise.clone().unwrap_or_default();
        let kind = match own.what {
            Promised::Through => Kind::Through,
            Promised::ShortDays(most) => Kind::ShortDays { most: most as u16 },
            Promised::WithoutSun(days) => Kind::WithoutSun { days: days as u16 },
            Promised::Trip(days) => Kind::Trip { days: days as u16 },
        };
        // A season without a month would keep anything.
        let season = if own.months == Months(0) { Months::ALL } else { own.months };
        let promise = Self { kind, season, ..Self::default() };
        let vital = document.loads.iter().any(|load| load.on && load.vital);
        match own.chance_pct {
            Some(chance) => Self { chance: Percent(chance), ..promise },
            None => promise.with_usual_chance(vital),
        }
    }
}

impl Rates {
    /// The prices of a plan, and its weights; none where one of the two is not stated.
    #[must_use]
    pub fn stated(document: &document::Document) -> [Option<Self>; 2] {
        let own = document.promise.as_ref();
        let rates = |bank: Option<f64>, array: Option<f64>| {
            Some(Self { bank_ah: bank? / 100.0, array_w: array? / 100.0 })
        };
        [
            own.and_then(|own| rates(own.bank_price, own.array_price)),
            own.and_then(|own| rates(own.bank_kg, own.array_kg)),
        ]
    }
}

impl Question {
    /// What a plan asks by itself: to keep what it promises, with the prices and weights that are stated in it.
    #[must_use]
    pub fn stated(document: &document::Document) -> Self {
        let [price, weight] = Rates::stated(document);
        Self { promise: Promise::stated(document), price, weight }
    }
}
