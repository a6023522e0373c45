//! Gauges: every plan has a card that can be entered, and a count that knows all follows the truth.

use proptest::prelude::*;
use sunlarder_engine::document::Document;
use sunlarder_engine::gauge::{Card, Course, Gauge, Judged, Mistake, Reading, Sheet, Trial, Truth};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::quantity::{Amps, Volts};
use sunlarder_engine::system::System;

use crate::plans::{Kind, any_plan, plan};
use crate::{CASES, settings};

/// Days of a course.
const DAYS: usize = 40;
/// One per cent.
const NEAR: f64 = 0.01;
/// Random plans have loads that no meter reads.
const READABLE: f64 = 2000.0;

/// A plan with its card and its course; none if it is refused.
fn gauged(plan: &Document) -> Option<(System, Card, Course)> {
    let system = System::assemble(plan, Climate::embedded(), &mut ()).ok()?;
    let outlook = Outlook::of(&system);
    let card = Card::of(&system, &outlook);
    let spread = SpreadGrid::embedded().at(system.site);
    let course = Course::of((&system, &outlook), Truth::OneCapacity, (&spread, 0), DAYS);
    Some((system, card, course))
}

proptest! {
    #![proptest_config(settings(CASES))]

    #[test]
    fn a_count_that_knows_all_follows_the_truth(plan in plan(Kind::Everyday)) {
        let Some((system, card, course)) = gauged(&plan) else { return Ok(()) };
        let gauge = card.gauge();
        prop_assert_eq!(gauge.checked(), Ok(gauge));
        // Without setting itself to full, so that nothing hides what is counted wrongly.
        let perfect = Gauge {
            exponent: 1.0,
            efficiency: system.bank.efficiency,
            threshold: Amps::ZERO,
            full_voltage: Volts(9999.0),
            ..gauge
        };
        let trial = Trial::of(&course, &perfect, 0);
        // Lead-acid without room at its plates loses by the current that was offered, and a gauge sees the one that was taken: no law of its
        // own follows that for weeks without full.
        let plates = system.bank.lead_acid.is_some();
        prop_assert!(plates || trial.over.max(trial.under) < NEAR, "{} {}", trial.over, trial.under);
    }

    #[test]
    fn figures_of_any_card_lie_in_their_range_and_no_count_leaves_its_own(plan in any_plan()) {
        let Some((system, card, course)) = gauged(&plan) else { return Ok(()) };
        for own in &card.settings {
            let ordered = own.least <= own.value && own.value <= own.most;
            prop_assert!(ordered && own.most.is_finite() && own.least.is_finite(), "{own:?}");
        }
        for check in &Sheet::of(&system, &card, &[]).checks {
            let reading = Reading { value: check.expected.unwrap_or(1.0), beside: None };
            let judged = check.judge(&reading);
            let read = judged == Ok(Judged::Pass) || judged.is_err() && reading.value > READABLE;
            prop_assert!(read, "{check:?}: {judged:?}");
        }
        for mistake in Mistake::ALL {
            let trial = mistake.tried(&card, &system, &course).wrong;
            prop_assert!(trial.hours.iter().all(|own| (0.0..=1.0).contains(&own.shown)));
        }
    }
}
