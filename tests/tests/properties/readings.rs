//! Readings from any text and in any order: nothing panics, and every line is either read or told.

use std::sync::LazyLock;

use chrono::{NaiveDate, TimeDelta};
use proptest::collection::vec;
use proptest::prelude::*;
use sunlarder_engine::document::Document;
use sunlarder_engine::logbook::{
    Bounds, GaugeSetUp, Hints, Reading, Readings, Shown, Study, adoptable, from_newest, paste,
};
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::quantity::{AmpHours, Amps, Percent, Volts};
use sunlarder_engine::system::System;
use sunlarder_tests::plans::EXAMPLES;

use crate::settings;

static SYSTEMS: LazyLock<Vec<System>> = LazyLock::new(|| {
    let names = ["boat", "sailor", "cabin"];
    let texts = EXAMPLES.iter().filter(|own| names.contains(&own.0));
    let plans = texts.map(|own| Document::from_json(own.1).unwrap());
    plans.map(|plan| System::assemble(&plan, Climate::embedded(), &mut ()).unwrap()).collect()
});

const BOUNDS: Bounds =
    Bounds { volts: (6.0, 18.0), amps: (-500.0, 500.0), charge: (-400.0, 400.0) };

/// A cell as it may stand in such a table, or any other text.
fn cell() -> impl Strategy<Value = String> {
    prop_oneof![
        "[0-9]{1,4}[-/.][0-9]{1,2}[-/.][0-9]{1,4}",
        "[0-9]{1,2}[:h][0-9]{0,2} ?(am|pm|a\\. m\\.)?",
        "[-−+]?[0-9]{0,5}[.,]?[0-9]{0,3} ?(%|V|A|Ah)?",
        "(date|fecha|time|hora|%|SoC|Ah|volts|tensión|amps|corriente|mA)",
        "\\PC{0,8}",
    ]
}

fn reading() -> impl Strategy<Value = Reading> {
    let shown = prop_oneof![
        (0.0..=100.0).prop_map(|own| Shown::Percent(Percent(own))),
        (-400.0..400.0).prop_map(|own| Shown::Left(AmpHours(own))),
        (-400.0..400.0).prop_map(|own| Shown::Taken(AmpHours(own))),
    ];
    let rest = (prop::option::of(0.0..60.0), prop::option::of(-2000.0..2000.0));
    (0..200_000_i64, prop::option::of(shown), rest).prop_map(|(minutes, shown, (volts, amps))| {
        let start = NaiveDate::from_ymd_opt(2026, 2, 20).unwrap().and_hms_opt(0, 0, 0).unwrap();
        let at = start + TimeDelta::minutes(minutes);
        Reading { at, shown, volts: volts.map(Volts), amps: amps.map(Amps) }
    })
}

proptest! {
    #![proptest_config(settings(384))]

    #[test]
    fn any_text_is_read_or_told_line_by_line(text in "(\\PC|[\n\t;,\"]){0,200}") {
        let pasted = paste(&text, &Hints::default(), &BOUNDS);
        prop_assert_eq!(pasted.readings.len(), pasted.lines.len());
    }

    #[test]
    fn any_table_is_read_or_told_line_by_line(rows in vec(vec(cell(), 1..7), 1..12)) {
        let lines: Vec<String> = rows.iter().map(|row| row.join(";")).collect();
        let text = lines.join("\n");
        let pasted = paste(&text, &Hints::default(), &BOUNDS);
        let filled = text.lines().filter(|line| !line.trim().is_empty()).count();
        let told = pasted.readings.len() + pasted.slips.len();
        // One of them may be the headings.
        prop_assert!(told == filled || told + 1 == filled, "{told} of {filled}: {text:?}");
        for reading in &pasted.readings {
            prop_assert_eq!(BOUNDS.check(reading), None);
        }
    }
}

proptest! {
    #![proptest_config(settings(48))]

    #[test]
    fn any_readings_are_weighed_to_finite_figures(
        given in vec(reading(), 0..50),
        which in 0..3_usize,
        told in 1.0..2000.0,
    ) {
        let system = &SYSTEMS[which];
        let bounds = Bounds::of(system.bank.nominal, system.bank.rated);
        let (readings, slips) = Readings::of(&given, &bounds);
        prop_assert_eq!(readings.all().len() + slips.len(), given.len());
        let gauge = GaugeSetUp { capacity: AmpHours(told), efficiency: 0.9 };
        let spread = SpreadGrid::embedded().at(system.site);
        let study = Study::of(system, &spread, &gauge, &readings);
        for own in &study.learned {
            let one = own.estimate;
            prop_assert!(one.low.is_finite() && one.high.is_finite(), "{own:?}");
            prop_assert!(one.low <= one.high && one.holds(one.best), "{own:?}");
        }
        let adopted = adoptable(&study, system);
        if let Some(own) = from_newest(system, &study, &readings, &adopted) {
            prop_assert!((0.0..=1.0).contains(&own.start.charge));
        }
    }
}
