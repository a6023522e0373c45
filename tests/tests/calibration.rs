//! The promise that chances are worth stating: synthetic weather against measured decades.

#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]

use sunlarder_engine::sky::Trust;
use sunlarder_tests::calibration::{Case, Design, Knowledge, REPLICAS, Summary, cases, stations};

const RECORD: &str = include_str!("../reference/shortfall.csv");
const PAGE: &str = include_str!("../../engine/CALIBRATION.md");

fn all(knowledge: Knowledge, trust: Trust) -> Vec<Case> {
    let stations = stations(RECORD).unwrap();
    assert_eq!(stations.len(), 19);
    assert!(stations.iter().all(|station| station.designs.len() == 5));
    cases(&stations, knowledge, trust, REPLICAS, false)
}

/// The published table must be that of the program as it is.
fn assert_published(summary: &Summary) {
    assert!(PAGE.contains(&summary.to_string()), "the page lacks {summary}");
}

#[test]
fn with_its_own_climate_a_station_suffers_as_predicted() {
    let summary = Summary::of(&all(Knowledge::Own, Trust::Own));
    assert_published(&summary);
    assert!(summary.counted >= 30, "{summary}");
    assert!((0.7..=1.4).contains(&summary.geometric_mean), "{summary}");
    assert!(summary.within_2 >= 2.0 / 3.0, "{summary}");
}

#[test]
fn with_the_place_alone_the_stated_range_holds_as_often_as_it_should() {
    let summary = Summary::of(&all(Knowledge::Place, Trust::Grid));
    assert_published(&summary);
    assert!(summary.counted >= 30, "{summary}");
    assert!((0.65..=0.90).contains(&summary.covered), "{summary}");
}

#[test]
fn a_climate_taken_for_certain_promises_too_much() {
    let certain = Summary::of(&all(Knowledge::Place, Trust::Certain));
    assert_published(&certain);
    assert!(certain.covered < 0.5, "{certain}");
}

#[test]
fn the_summary_tells_good_from_bad() {
    let case = |median: f64, measured: f64| Case {
        station: String::new(),
        latitude: 0.0,
        design: Design { oversize: 1.0, array_gain: 1.0, store: 1.0, measured },
        median,
        low: median / 2.0,
        high: median * 2.0,
        array_error: None,
    };
    let cases = [case(0.01, 0.01), case(0.05, 0.01), case(0.0001, 0.0009), case(0.004, 0.002)];
    let summary = Summary::of(&cases);
    assert_eq!(summary.counted, 3);
    assert!((summary.geometric_mean - 10.0_f64.cbrt()).abs() < 1e-12);
    assert!((summary.within_2 - 2.0 / 3.0).abs() < 1e-12);
    assert!((summary.covered - 2.0 / 3.0).abs() < 1e-12);
}
