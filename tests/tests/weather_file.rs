//! Whatever is brought as a weather file is read or refused with a sentence, and what is read can be replayed.

#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]

use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use sunlarder_engine::place::WeatherFile;
use sunlarder_engine::sky::{STEPS_PER_DAY, contradiction, file_clearness, replayed_day};
use sunlarder_engine::words::{Language, Words};

const HEAD: &str = "LOCATION,Some Town,,XXX,made for a test,000000,47.00,8.50,1.0,400.0\n1\n2\n3\n4\n5\n6\n\
                    DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n";
const MONTHS: [u8; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/// A year of a file in which every hour is alike but for its light by day.
fn year(air: f64, global: f64, direct: f64, diffuse: f64) -> String {
    let mut text = String::from(HEAD);
    for (month, length) in (1..).zip(MONTHS) {
        for day in 1..=length {
            for hour in 1..=24 {
                let lit = if (7..=18).contains(&hour) { 1.0 } else { 0.0 };
                let light = [global, direct, diffuse].map(|own| (own * lit).to_string()).join(",");
                text += &format!("2001,{month},{day},{hour},0,?,{air},1,1,1,1,1,1,{light},0\n");
            }
        }
    }
    text
}

fn read_or_told(text: &str) {
    if let Err(fault) = WeatherFile::read(text) {
        let said = Words::of(Language::English).weather_file_fault(&fault);
        assert!(said.ends_with('.') && said.len() < 400, "{said}");
    }
}

/// The same files each time, and nothing written beside the sources.
fn settings() -> ProptestConfig {
    let rng_seed = RngSeed::Fixed(20_261_125);
    ProptestConfig { failure_persistence: None, rng_seed, ..ProptestConfig::with_cases(24) }
}

proptest! {
    #![proptest_config(settings())]

    #[test]
    fn any_figures_in_range_are_replayed(
        air in -70.0..70.0_f64,
        global in 0.0..2000.0_f64,
        direct in 0.0..2000.0_f64,
        diffuse in 0.0..2000.0_f64,
        place in 0..365_usize,
    ) {
        let file = WeatherFile::read(&year(air, global, direct, diffuse)).unwrap();
        let sky = replayed_day(&file, place).unwrap();
        prop_assert_eq!(sky.steps.len(), STEPS_PER_DAY);
        let sum = sky.steps.iter().map(|step| step.global().0).sum::<f64>() / 4000.0;
        prop_assert!((sum - 12.0 * global / 1000.0).abs() < 1e-9);
        for step in &sky.steps {
            prop_assert!(step.beam.0 >= 0.0 && step.diffuse.0 >= 0.0);
            prop_assert!((step.air.0 - air).abs() < 1e-9);
        }
        prop_assert!(contradiction(&file).is_finite());
        prop_assert!(file_clearness(&file, place) >= 0.0);
    }

    #[test]
    fn a_damaged_file_is_read_or_told(
        at in 0..20_000_usize,
        by in prop::sample::select(vec!["", ",", "\n", "-", "9999", "99.9", "e9", "x", "é", "\0", "2,29,"]),
        length in 0..40_usize,
    ) {
        let mut text = year(10.0, 300.0, 200.0, 100.0);
        text.replace_range(at..at + length, by);
        read_or_told(&text);
    }

    #[test]
    fn any_text_is_told(text in "\\PC{0,300}") {
        read_or_told(&text);
        read_or_told(&format!("LOCATION,{text}"));
        read_or_told(&format!("{HEAD}{text}"));
    }
}
