//! The working that people are shown gives the very number beside it.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it cannot read")]

use sunlarder_engine::place::Climate;
use sunlarder_engine::quantity::{Celsius, Degrees, Hours, Irradiation};
use sunlarder_engine::sky::{DaySpec, mean_day};
use sunlarder_engine::sun::{MONTH_DAY, Site};
use sunlarder_engine::working::{Formula, Working};
use sunlarder_tests::expression;

/// Rounding of the few operations of a formula in another order than the engine's, relative to one unit or the value.
const ROUNDING: f64 = 1e-9;

/// Holds every step against its formula with the numbers put in. Read from a table instead: the climate's clearness.
fn assert_formulas_give_their_values(working: &Working) -> usize {
    let steps = working.steps().iter().filter(|step| step.formula != Formula::GridClearness);
    let mut count = 0;
    for step in steps {
        let shown = expression::value(step).unwrap_or_else(|reason| panic!("{step:?}: {reason}"));
        let gap = (shown - step.value).abs();
        assert!(gap <= ROUNDING * step.value.abs().max(1.0), "{step:?} is shown as {shown}");
        count += 1;
    }
    count
}

#[test]
fn every_step_of_a_day_is_what_its_formula_says() {
    let mut count = 0;
    for latitude in [-90.0, -78.0, -33.9, 0.0, 35.2, 52.1, 66.5, 71.0] {
        let site = Site { latitude: Degrees(latitude), longitude: Degrees(18.4) };
        let grid = Climate::embedded().at(site);
        let own = grid.clone().with_own_sun(grid.irradiation().map(|sun| sun * 0.9)).unwrap();
        for climate in [grid, own] {
            for (month, day_of_year) in MONTH_DAY.into_iter().enumerate() {
                let mut working = Working::new();
                let clearness = climate.clearness_of(month, &mut working);
                let utc_offset = Hours(2.0);
                let mean_temperature = Celsius(10.0);
                let spec = DaySpec { site, day_of_year, utc_offset, clearness, mean_temperature };
                let day = mean_day(&spec, &mut working);
                assert_eq!(day, mean_day(&spec, &mut ()), "tracing changes nothing");
                count += assert_formulas_give_their_values(&working);
            }
        }
    }
    assert!(count >= 8 * 2 * 12 * 7, "{count}");
}

/// A day brighter than any relation covers still shows the numbers that were used.
#[test]
fn the_diffuse_share_of_a_very_bright_or_dark_day_is_shown_as_used() {
    let site = Site { latitude: Degrees(20.0), longitude: Degrees(0.0) };
    for clearness in [0.0, 0.05, 0.9, 1.0] {
        let (utc_offset, mean_temperature) = (Hours(0.0), Celsius(20.0));
        let spec = DaySpec { site, day_of_year: 100, utc_offset, clearness, mean_temperature };
        let mut working = Working::new();
        let day = mean_day(&spec, &mut working);
        assert!(day.irradiation >= Irradiation::ZERO);
        assert_formulas_give_their_values(&working);
    }
}
