//! Sources, loads, losses and the change of what is stored add up to nothing, in Ah and in Wh, in every step of every example.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use sunlarder_engine::bank::Bank;
use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::Climate;
use sunlarder_engine::simulate::{Almanac, Run, Sun, Sunlight, run};
use sunlarder_engine::system::System;
use sunlarder_tests::plans::EXAMPLES;

/// The plan that has every kind of source at once.
const ALL_SOURCES: (&str, &str) =
    ("hut by a stream", include_str!("../golden/v1/hut_by_a_stream.json"));
/// What may be left of a step \[Ah\], \[Wh\]: rounding of doubles that hold some thousands.
const NOTHING: f64 = 1e-9;
/// Days of a run: over every month and both changes of the clock.
const YEAR: usize = 366;

/// What is left over in the worst step of a run \[Ah\], \[Wh\].
///
/// Energies are worked out anew from charges, the voltage of the step and the energy under the open-circuit curve, so that an
/// account that only closes with itself would show.
fn left_over(run: &Run, bank: &Bank) -> (f64, f64) {
    let (mut charge, mut energy) = (0.0_f64, 0.0_f64);
    for (place, sample) in run.samples.iter().enumerate() {
        let flows = &sample.flows;
        let before = run.charge_before(place);
        let came = flows.solar + flows.turbine + flows.engine + flows.generator + flows.shore;
        let went = flows.load + flows.protection + flows.charge_loss + flows.self_discharge;
        let moved = run.full * (sample.charge - before);
        charge = charge.max((came - went - moved).0.abs());
        charge = charge.max((flows.stored - moved).0.abs());
        let stored = bank.stored(sample.charge, run.full) - bank.stored(before, run.full);
        let out = sample.volts * (flows.load + flows.protection);
        let rest = sample.volts * came - out - flows.bank_loss - stored;
        energy = energy.max(rest.0.abs());
        let told = flows.source_energy - flows.load_energy - flows.protection_energy;
        energy = energy.max((told - flows.bank_loss - flows.stored_energy).0.abs());
    }
    (charge, energy)
}

#[test]
fn every_step_of_every_example_adds_up_to_nothing() {
    let mut steps = 0;
    for (name, text) in EXAMPLES.into_iter().chain([ALL_SOURCES]) {
        let plan = Document::from_json(text).unwrap();
        let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
        let outlook = Outlook::of(&system);
        let sunlight = &mut Sunlight::default();
        let almanac = &mut Almanac::new(&system, sunlight);
        let year =
            |almanac: &mut Almanac<'_>, sun| run(almanac, outlook.capacity.full, sun, YEAR, false);
        let (lit, dark) = (year(almanac, Sun::Mean), year(almanac, Sun::None));
        for run in [&outlook.run, &outlook.dark, &lit, &dark] {
            let (charge, energy) = left_over(run, &system.bank);
            assert!(charge <= NOTHING && energy <= NOTHING, "{name}: {charge} Ah, {energy} Wh");
            steps += run.samples.len();
        }
        let lost = lit.totals.bank_loss;
        assert!(lost.0 > 0.0 && lost < lit.totals.source_energy, "{name}: {lost:?}");
    }
    println!("{steps} steps add up to nothing within {NOTHING} Ah and Wh");
    assert!(steps > 6 * 2 * 365 * 96);
}

/// The plan of all sources is worth its name.
#[test]
fn every_kind_of_source_is_among_them() {
    let plan = Document::from_json(ALL_SOURCES.1).unwrap();
    let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
    let sunlight = &mut Sunlight::default();
    let almanac = &mut Almanac::new(&system, sunlight);
    let full = Outlook::of(&system).capacity.full;
    let totals = run(almanac, full, Sun::Mean, YEAR, false).totals;
    let used = [totals.solar, totals.turbine, totals.engine, totals.generator];
    assert!(used.iter().all(|charge| charge.0 > 10.0), "{totals:?}");
    println!("{used:?} in {:?}", totals.generator_time);
}
