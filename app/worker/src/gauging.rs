//! A gauge at the desk: the course of its plan is worked out once, so that whoever turns a figure is answered at once.

use sunlarder_engine::digits;
use sunlarder_engine::gauge::{Card, Course, Trial, Truth};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::sky::DAYS_PER_YEAR;
use sunlarder_engine::system::System;

use crate::message::MONTHS;

/// The gauge of a plan in one weather that might be.
#[derive(Debug)]
pub(crate) struct Gauging {
    /// The twelve spreads of the daily clearness that it was made by, to know it again.
    spreads: String,
    /// What it is told.
    pub(crate) card: Card,
    /// The plan as it truly goes.
    pub(crate) course: Course,
    /// What comes of the gauge that is set up by the card.
    pub(crate) right: Trial,
}

impl Gauging {
    /// That of a plan; none without twelve spreads.
    #[must_use]
    pub(crate) fn new(spreads: &str, system: &System, outlook: &Outlook) -> Option<Self> {
        let spread: Option<Vec<f64>> = spreads.split(' ').map(digits::number).collect();
        let spread: [f64; MONTHS] = spread?.try_into().ok()?;
        let card = Card::of(system, outlook);
        let weather = (&spread, 0);
        let course = Course::of((system, outlook), Truth::ByMonth, weather, DAYS_PER_YEAR);
        let right = Trial::of(&course, &card.gauge(), 0);
        Some(Self { spreads: spreads.to_owned(), card, course, right })
    }

    /// Whether it is that of these spreads.
    #[must_use]
    pub(crate) fn is_of(&self, spreads: &str) -> bool {
        self.spreads == spreads
    }
}
