//! The same computation gives the same bits on every platform.
//!
//! Runs natively as an ordinary test and in wasm under node (`./dev test` does both); both compare with the same file,
//! `tests/reference/digest.txt`. A digest is the 64-bit FNV-1a hash of the bit patterns of all results, in order (Fowler,
//! Noll, Vo, Eastlake: "The FNV Non-Cryptographic Hash Algorithm", IETF draft-eastlake-fnv). One line per subject tells
//! where a difference comes from. After a wanted change of results,
//! `SUNLARDER_WRITE_DIGEST=1 cargo test -p sunlarder-engine --test digest` writes the file anew, natively; wasm must then agree.

#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{Budget, Month, Outlook, lowest_of};
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::quantity::{AmpHours, Amps, Celsius, Degrees, Hours, Percent, Volts, Watts};
use sunlarder_engine::share;
use sunlarder_engine::simulate::{Almanac, Extent, Flows, Range, Run, Sun, Sunlight, run};
use sunlarder_engine::sizing::lanes::{Hour, Lanes};
use sunlarder_engine::sizing::{Course, Promise, Sizing};
use sunlarder_engine::sky::{
    DAYS_PER_YEAR, DaySpec, DayTable, Plane, Season, Trust, Weather, WeatherSpec,
};
use sunlarder_engine::sun::Site;
use sunlarder_engine::system::System;

const GOLDEN: &str = include_str!("../../tests/reference/digest.txt");

/// The plans that are followed through the engine.
const EXAMPLES: [(&str, &str); 6] = [
    ("camper", include_str!("../../examples/camper.json")),
    ("boat", include_str!("../../examples/boat.json")),
    ("cabin", include_str!("../../examples/cabin.json")),
    ("classroom", include_str!("../../examples/classroom.json")),
    ("clinic", include_str!("../../examples/clinic.json")),
    // Generator, turbine, horizon, an inverter that searches, a power factor.
    ("hut", include_str!("../../tests/golden/v1/hut_by_a_stream.json")),
];

/// Days of the longest run: over every month and both changes of the clock.
const YEAR: usize = 366;

/// FNV-1a over the bits of numbers and the bytes of texts.
struct Digest(u64);

impl Digest {
    const OFFSET_BASIS: u64 = 0xcbf2_9ce4_8422_2325;
    const PRIME: u64 = 0x0000_0100_0000_01b3;

    fn new() -> Self {
        Self(Self::OFFSET_BASIS)
    }

    fn bytes(&mut self, bytes: &[u8]) {
        for byte in bytes {
            self.0 = (self.0 ^ u64::from(*byte)).wrapping_mul(Self::PRIME);
        }
    }

    fn add(&mut self, value: f64) {
        self.bytes(&value.to_bits().to_le_bytes());
    }

    fn all(&mut self, values: impl IntoIterator<Item = f64>) {
        for value in values {
            self.add(value);
        }
    }

    /// A time that may never come.
    fn time(&mut self, at: Option<Hours>) {
        self.add(at.map_or(f64::INFINITY, |at| at.0));
    }
}

/// The transcendental functions that the engine uses, over the ranges in which it uses them and beyond.
fn functions(digest: &mut Digest) {
    for i in 0..20_000 {
        let x = f64::from(i) * 0.001;
        let signed = x - 10.0;
        digest.all([libm::sin(signed), libm::cos(signed), libm::tan(signed), libm::atan(signed)]);
        digest.all([libm::exp(signed), libm::log1p(x), libm::pow(x, 1.3), libm::cbrt(signed)]);
        let cosine = signed / 10.0;
        digest.all([libm::acos(cosine), libm::asin(cosine)]);
    }
}

/// Synthetic weather of three places, in climates known for certain and not, and the hours of its days.
fn weather(digest: &mut Digest) {
    for (latitude, longitude) in [(52.1, 5.2), (-17.5, 31.0), (69.6, 18.9)] {
        let site = Site { latitude: Degrees(latitude), longitude: Degrees(longitude) };
        let climate = Climate::embedded().at(site);
        let spec = WeatherSpec::of_place(&climate, &SpreadGrid::embedded().at(site));
        for trust in [Trust::Grid, Trust::Own, Trust::Certain] {
            let weather = Weather::new(WeatherSpec { trust, ..spec.clone() }, 7);
            for replica in 0..5 {
                let year = weather.replica(replica).next_year();
                digest.all(year.clearness);
                digest.all(year.warmer.map(|warmer| warmer.0));
            }
        }
        let date = DaySpec {
            site,
            day_of_year: 75,
            utc_offset: Hours(1.0),
            clearness: 0.4,
            mean_temperature: Celsius(9.0),
        };
        let plane = Plane { tilt: Degrees(40.0), azimuth: Degrees(170.0) };
        let table = DayTable::<24>::new(&date, 0.4, |step| plane.irradiance(step, 0.2).0);
        let season = Season::new(site.latitude);
        for day in 0..DAYS_PER_YEAR {
            let blend = table.day(day as f64 / 400.0);
            digest.all((0..24).map(|hour| blend.part(hour) * season.scale(day)));
        }
    }
}

/// Products and ratios of quantities, and the parsing and printing of numbers.
fn quantities(digest: &mut Digest) {
    for i in 1..2_000 {
        let tenths = f64::from(i) / 10.0;
        let power: Watts = Volts(12.8) * Amps(tenths);
        let charge: AmpHours = Amps(tenths) * Hours(0.25);
        digest.all([power.0, charge.0, Celsius(tenths).0, Percent(tenths).ratio()]);
        digest.add(format!("{tenths}").parse().unwrap_or(f64::NAN));
    }
}

fn flows(digest: &mut Digest, flows: &Flows) {
    let charge =
        [flows.load, flows.unmet, flows.protection, flows.solar, flows.engine, flows.shore];
    let lost = [flows.curtailed, flows.charge_loss, flows.self_discharge, flows.stored];
    digest.all(charge.into_iter().chain(lost).map(|flow| flow.0));
    // Only of plans that have them, so that the digests of the others stay what they were.
    if flows.turbine.0 + flows.generator_time.0 > 0.0 {
        digest.all([flows.turbine, flows.generator].map(|flow| flow.0));
        digest.add(flows.generator_time.0);
    }
    let energy = [flows.load_energy, flows.protection_energy, flows.source_energy];
    let store = [flows.bank_loss, flows.stored_energy];
    digest.all(energy.into_iter().chain(store).map(|flow| flow.0));
}

fn whole_run(digest: &mut Digest, run: &Run) {
    digest.add(run.full.0);
    for sample in &run.samples {
        digest.all([sample.at.0, sample.charge, sample.volts.0]);
        digest.all([sample.forcing.demand.0, sample.forcing.temperature.0]);
        digest.all([sample.forcing.solar_power.0, sample.forcing.solar_current.0]);
        flows(digest, &sample.flows);
    }
    flows(digest, &run.totals);
    digest.time(run.reserve_at);
    digest.time(run.empty_at);
    digest.time(run.full_at);
}

fn budget(digest: &mut Digest, budget: &Budget) {
    for load in &budget.loads {
        digest.all([load.hours.0, load.duty.0, load.own_energy.0, load.energy.0, load.charge.0]);
    }
    digest.all([budget.inverter.hours.0, budget.inverter.charge.0, budget.standing.0]);
    digest.all([budget.protection.0, budget.total.0, budget.total_energy.0]);
}

fn month(digest: &mut Digest, system: &System, month: &Month) {
    digest.all([month.irradiation.0, month.bank_temperature.0, month.need.0, month.balance.0]);
    digest
        .all([month.gain.solar, month.gain.engine, month.gain.shore, month.gain.kept].map(|g| g.0));
    digest.all([month.full.0, month.usable.0, month.current.0, lowest_of(system, month)]);
    digest.add(f64::from(u8::from(month.keeps_up)));
}

/// Chances over some weather.
fn weathers(digest: &mut Digest, system: &System, outlook: &Outlook) {
    let spread = SpreadGrid::embedded().at(system.site);
    let mut ensemble = outlook.ensemble(system, &spread, Extent { runs: 20, blocks: 2 });
    while ensemble.advance() {}
    let chances = ensemble.chances();
    let range = |digest: &mut Digest, range: &Range| {
        digest.all([range.low, range.middle, range.high]);
    };
    chances.band.iter().chain(&chances.months_kept).for_each(|own| range(digest, own));
    let years = [&chances.low_hours, &chances.short_hours, &chances.unserved];
    years.into_iter().chain(&chances.dull_days).for_each(|own| range(digest, own));
}

/// An example from its file to its answers, with a run of a whole year in both suns.
fn example(text: &str, digest: &mut Digest) {
    let plan = Document::from_json(text).unwrap();
    digest.bytes(plan.to_json().as_bytes());
    digest.bytes(share::encode(&plan).unwrap().as_bytes());
    let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
    let outlook = Outlook::of(&system);
    budget(digest, &outlook.budget);
    outlook.months.iter().for_each(|at| month(digest, &system, at));
    digest.add(outlook.autonomy_days.unwrap_or(f64::INFINITY));
    whole_run(digest, &outlook.run);
    whole_run(digest, &outlook.dark);
    weathers(digest, &system, &outlook);
    let sunlight = &mut Sunlight::default();
    let almanac = &mut Almanac::new(&system, sunlight);
    let full = outlook.capacity.full;
    whole_run(digest, &run(almanac, full, Sun::Mean, YEAR, false));
}

/// Cells of a map after a month and a half from summer on, of every example, in 32 bits.
fn lanes(digest: &mut Digest) {
    for (_, text) in EXAMPLES {
        let plan = Document::from_json(text).unwrap();
        let system = System::assemble(&plan, Climate::embedded(), &mut ()).unwrap();
        let spread = SpreadGrid::embedded().at(system.site);
        let sizing = Sizing::new(&system, &Outlook::of(&system), &spread, 1);
        let store = sizing.stores(0.5)[0];
        let mut lanes = Lanes::full([0.1, 0.5, 1.0, 3.0], &store);
        let track = sizing.track(&Course::of(&sizing, &Promise::default()));
        let hours: Vec<Hour> = track.days().flat_map(|day| day.hours).take(1000).collect();
        for hour in &hours {
            lanes.pass(&store, hour);
        }
        let cells = lanes.charge.into_iter().chain(lanes.near).chain(lanes.margin);
        digest.all(cells.map(f64::from));
    }
}

fn line(name: &str, fill: impl FnOnce(&mut Digest)) -> String {
    let mut digest = Digest::new();
    fill(&mut digest);
    format!("{name} {:016x}\n", digest.0)
}

/// One line for each part of the engine and each example.
fn lines() -> String {
    let mut lines = line("functions", functions) + &line("quantities", quantities);
    lines += &line("weather", weather);
    for (name, text) in EXAMPLES {
        lines += &line(name, |digest| example(text, digest));
    }
    lines += &line("lanes", lanes);
    lines
}

/// Puts the lines into the file if the environment asks for it.
#[cfg(not(target_arch = "wasm32"))]
fn write_if_asked(lines: &str) -> bool {
    let asked = std::env::var_os("SUNLARDER_WRITE_DIGEST").is_some();
    if asked {
        let file = concat!(env!("CARGO_MANIFEST_DIR"), "/../tests/reference/digest.txt");
        std::fs::write(file, lines).unwrap();
    }
    asked
}

/// Wasm never writes: it has to agree with the native figures.
#[cfg(target_arch = "wasm32")]
fn write_if_asked(_: &str) -> bool {
    false
}

#[cfg_attr(target_arch = "wasm32", wasm_bindgen_test::wasm_bindgen_test)]
#[cfg_attr(not(target_arch = "wasm32"), test)]
fn results_have_the_same_bits_on_every_platform() {
    let found = lines();
    if !write_if_asked(&found) {
        assert!(found == GOLDEN, "the digests are now:\n{found}where the file says:\n{GOLDEN}");
    }
}
