//! The section of what a plan shall keep, and of what it costs to make it larger.

use super::schedule::Months;

/// What is promised.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Promised {
    /// Through every month that counts without a short day.
    Through,
    /// At most so many short days in ten years.
    ShortDays(f64),
    /// So many days without any sun, from full.
    WithoutSun(f64),
    /// A trip of so many days in weather as it comes, from full.
    Trip(f64),
}

/// What a plan shall keep, and what a larger one costs and weighs.
#[derive(Clone, Debug, PartialEq)]
pub struct Promise {
    /// What.
    pub what: Promised,
    /// With what chance at least \[%\]; usual if not stated.
    pub chance_pct: Option<f64>,
    /// The months that count.
    pub months: Months,
    /// Price of 100 Ah of the bank, in whatever money.
    pub bank_price: Option<f64>,
    /// Price of 100 W of modules.
    pub array_price: Option<f64>,
    /// Weight of 100 Ah of the bank \[kg\].
    pub bank_kg: Option<f64>,
    /// Weight of 100 W of modules \[kg\].
    pub array_kg: Option<f64>,
}

impl Default for Promise {
    fn default() -> Self {
        Self {
            what: Promised::Through,
            chance_pct: None,
            months: Months::ALL,
            bank_price: None,
            array_price: None,
            bank_kg: None,
            array_kg: None,
        }
    }
}
