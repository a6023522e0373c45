//! Times what the page waits for, and prints it with the machine it ran on.
//!
//! `./dev bench` builds it for speed. The figures are medians, so that one interruption does not count.

#![allow(clippy::print_stdout, reason = "a bench prints what it measured")]

use std::hint::black_box;
use std::process::ExitCode;
use std::time::{Duration, Instant};

use sunlarder_engine::document::{Document, Problem};
use sunlarder_engine::outlook::{HORIZON_DAYS, Outlook};
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::share;
use sunlarder_engine::simulate::{Almanac, Extent, Sun, Sunlight, run};
use sunlarder_engine::sizing::lanes::HoursOfDay;
use sunlarder_engine::sizing::map::SIDE;
use sunlarder_engine::sizing::{Counts, Course, Kind, Map, Promise, Rows, Sizing, Track, YEARS};
use sunlarder_engine::sky::DAYS_PER_YEAR;
use sunlarder_engine::system::System;
use sunlarder_tests::lanes::{by_numpy, hours_of, in_wasm, sizing_of};
use sunlarder_tests::plans::EXAMPLES;

/// Repetitions of what takes milliseconds.
const ROUNDS: usize = 200;
/// Repetitions of what takes microseconds, timed together because a clock's own reading takes a noticeable part of one.
const BUNCH: u32 = 100;

/// The median of the times that something took.
fn median(rounds: usize, mut work: impl FnMut()) -> Duration {
    let mut times: Vec<Duration> = (0..rounds.max(1))
        .map(|_| {
            let start = Instant::now();
            work();
            start.elapsed()
        })
        .collect();
    times.sort_unstable();
    times[times.len() / 2]
}

/// The median of the times that one of a bunch took.
fn median_of_bunches(mut work: impl FnMut()) -> Duration {
    median(ROUNDS, || (0..BUNCH).for_each(|_| work())) / BUNCH
}

fn micros(time: Duration) -> f64 {
    time.as_secs_f64() * 1e6
}

/// What the machine calls its processor; its name is for whoever reads the figures.
fn processor() -> String {
    let info = std::fs::read_to_string("/proc/cpuinfo").unwrap_or_default();
    let named = info.lines().find_map(|line| line.strip_prefix("model name")?.split_once(':'));
    named.map_or("unknown", |(_, name)| name.trim()).to_owned()
}

/// Times one example: all answers, the run of a month and of a year alone with their days at hand, file and code.
fn example(name: &str, text: &str) -> Result<(), Problem> {
    let plan = Document::from_json(text)?;
    let system = System::assemble(&plan, Climate::embedded(), &mut ())?;
    let outlook = Outlook::of(&system);
    let full = outlook.capacity.full;
    let code = share::encode(&plan)?;
    let all = median(ROUNDS, || drop(black_box(Outlook::of(black_box(&system)))));
    let sunlight = &mut Sunlight::default();
    let again = median(ROUNDS, || {
        drop(black_box(Outlook::in_sunlight(black_box(&system), sunlight)));
    });
    let almanac = &mut Almanac::new(&system, sunlight);
    let month = median(ROUNDS, || {
        let run = run(almanac, full, Sun::Mean, HORIZON_DAYS, false);
        drop(black_box(run));
    });
    let assemble = median_of_bunches(|| {
        drop(black_box(System::assemble(&plan, Climate::embedded(), &mut ())));
    });
    let read = median_of_bunches(|| drop(black_box(Document::from_json(text))));
    let encode = median_of_bunches(|| drop(black_box(share::encode(&plan))));
    let decode = median_of_bunches(|| drop(black_box(share::decode(&code))));
    let times = [all, again, month, assemble, read, encode, decode].map(micros);
    let columns: Vec<String> = times.iter().map(|time| format!("{time:>10.1}")).collect();
    println!("{name:<10} {} {:>8}", columns.join(" "), code.len());
    Ok(())
}

/// Times weather: a year in quarter-hours of mean weather, and a hundred years of synthetic weather in hours.
fn years(name: &str, text: &str) -> Result<(), Problem> {
    let plan = Document::from_json(text)?;
    let system = System::assemble(&plan, Climate::embedded(), &mut ())?;
    let outlook = Outlook::of(&system);
    let spread = SpreadGrid::embedded().at(system.site);
    let sunlight = &mut Sunlight::default();
    let almanac = &mut Almanac::new(&system, sunlight);
    let year = median(ROUNDS / 10, || {
        drop(black_box(run(almanac, outlook.capacity.full, Sun::Mean, 365, false)));
    });
    let extent = Extent { runs: 0, blocks: 10 };
    let century = median(ROUNDS / 20, || {
        let mut ensemble = outlook.ensemble(&system, &spread, extent);
        while ensemble.advance() {}
        drop(black_box(ensemble.chances()));
    });
    let extent = Extent { runs: 200, blocks: 0 };
    let month = median(ROUNDS / 20, || {
        let mut ensemble = outlook.ensemble(&system, &spread, extent);
        while ensemble.advance() {}
        drop(black_box(ensemble.chances()));
    });
    let times = [year, century, month].map(|time| time.as_secs_f64() * 1e3);
    println!("{name:<10} {:>10.2} {:>10.1} {:>10.1}", times[0], times[1], times[2]);
    Ok(())
}

/// Repetitions of a map.
const MAPS: usize = 5;
/// Hours that the reference goes through.
const REFERENCE_HOURS: usize = 720;

/// Time for a cell and a step of a map of so many banks over so many years \[ns\], and for the whole of it.
fn per_step(plan: &Document, banks: usize, years: usize) -> Result<(f64, Duration), Problem> {
    let (_, nanoseconds, whole) = per_step_of(plan, &Promise::default(), banks, years)?;
    Ok((nanoseconds, whole))
}

/// The same of another promise, after the hours that each cell goes through.
fn per_step_of(
    plan: &Document,
    promise: &Promise,
    banks: usize,
    years: usize,
) -> Result<(usize, f64, Duration), Problem> {
    let sizing = sizing_of(plan, years)?;
    let course = Course::of(&sizing, promise);
    let mut track = sizing.track(&course);
    let mut counts = vec![Counts::default(); SIDE * years];
    let [bank_sizes, array_sizes] = sizing.axes(promise);
    let arrays = array_sizes.sizes().map(|size| size as f32);
    let whole = median(MAPS, || {
        for bank in &bank_sizes.sizes()[..banks] {
            let stores = sizing.stores(*bank);
            track.row(&stores, black_box(&arrays), 0..years, black_box(&mut counts));
        }
    });
    let steps = (banks * arrays.len() * course.hours()) as f64;
    Ok((course.hours(), whole.as_secs_f64() * 1e9 / steps, whole))
}

/// Times the reliability map: 24 banks, 24 arrays, 20 weather years, and the reference where there is one.
fn map(name: &str, text: &str) -> Result<(), Problem> {
    let plan = Document::from_json(text)?;
    let (nanoseconds, whole) = per_step(&plan, SIDE, YEARS)?;
    let promise = Promise::default();
    let sizing = sizing_of(&plan, YEARS)?;
    let all = median(MAPS, || {
        let (mut map, mut track) = (Map::new(&sizing, &promise), Track::default());
        while map.advance(&sizing, &mut track) {}
        drop(black_box(map));
    });
    let coarse = median(MAPS, || {
        let (mut map, mut track) = (Map::new(&sizing, &promise), Track::default());
        while !map.is_coarse() && map.advance(&sizing, &mut track) {}
        drop(black_box(map));
    });
    let [_, array_sizes] = sizing.axes(&promise);
    let row = array_sizes.sizes().map(|size| size as f32);
    let cells: Vec<f32> = (0..SIDE).flat_map(|_| row).collect();
    let hours = hours_of(&sizing, &promise, REFERENCE_HOURS);
    let stores = sizing.stores(1.0);
    let reference = by_numpy(&stores[0], &cells, &hours).map(|own| own.nanoseconds);
    let in_wasm = wasm(&sizing, &promise, &row);
    let seconds = [coarse, all, whole].map(|time| format!("{:>10.3}", time.as_secs_f64()));
    let per_step = |time: Option<f64>| time.map_or("none".to_owned(), |own| format!("{own:.2}"));
    let ratio = |time: Option<f64>| {
        let ratio = reference.zip(time).map(|(reference, time)| reference / time);
        ratio.map_or("none".to_owned(), |own| format!("{own:.1}x"))
    };
    let columns = [
        per_step(Some(nanoseconds)),
        per_step(in_wasm),
        per_step(reference),
        ratio(Some(nanoseconds)),
        ratio(in_wasm),
    ];
    let columns = columns.map(|column| format!("{column:>10}"));
    println!("{name:<10} {} {}", seconds.join(" "), columns.join(" "));
    Ok(())
}

/// Time for a cell and a step of a row through a year in the program for browsers \[ns\], if there is one: it must count what the engine counts.
fn wasm(sizing: &Sizing, promise: &Promise, arrays: &[f32]) -> Option<f64> {
    let mut track = sizing.track(&Course::of(sizing, promise));
    let days: Vec<HoursOfDay> = track.days().take(DAYS_PER_YEAR).copied().collect();
    let stores = sizing.stores(1.0);
    let own = in_wasm(&stores, arrays, &days)?;
    let mut counts = vec![Counts::default(); arrays.len()];
    track.row(&stores, arrays, 0..1, &mut counts);
    let same = counts.iter().flatten().eq(&own.counts);
    assert!(same, "the program for browsers counts otherwise than the engine");
    Some(own.nanoseconds)
}

/// Times maps of every example, then how the cost grows.
fn maps() -> Result<(), Problem> {
    println!(
        "\nreliability map, {SIDE} x {SIDE} x {YEARS} years, in seconds: coarse with its weather, complete (years that are lost beside every array are left), every cell stepped to the end; ns per cell-step: natively, in wasm, by NumPy; ratio to NumPy: natively, in wasm"
    );
    for (name, text) in EXAMPLES {
        map(name, text)?;
    }
    println!("\nhow it grows: banks of {SIDE} arrays, years, ns per cell-step, milliseconds");
    let plan = Document::from_json(EXAMPLES[0].1)?;
    for (banks, years) in [(6, 5), (12, 5), (24, 5), (6, 10), (6, 20), (24, 20)] {
        let (nanoseconds, whole) = per_step(&plan, banks, years)?;
        println!("{banks:>6} {years:>6} {nanoseconds:>10.2} {:>10.1}", whole.as_secs_f64() * 1e3);
    }
    println!(
        "\nand by hours: days without sun from each month on, hours, ns per cell-step, milliseconds"
    );
    for days in [3, 6, 12, 24] {
        let promise = Promise { kind: Kind::WithoutSun { days }, ..Promise::default() };
        let (hours, nanoseconds, whole) = per_step_of(&plan, &promise, SIDE, 1)?;
        println!("{days:>6} {hours:>6} {nanoseconds:>10.2} {:>10.1}", whole.as_secs_f64() * 1e3);
    }
    Ok(())
}

fn main() -> ExitCode {
    // `bench map` times maps alone.
    if std::env::args().nth(1).as_deref() == Some("map") {
        return ended(maps());
    }
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    println!("{}, {cores} cores; medians of {ROUNDS} in microseconds", processor());
    println!(
        "{:<10} {:>10} {:>10} {:>10} {:>10} {:>10} {:>10} {:>10} {:>8}",
        "plan",
        "outlook",
        "once more",
        "31 days",
        "assemble",
        "file",
        "encode",
        "decode",
        "letters"
    );
    for (name, text) in EXAMPLES {
        if let Err(problem) = example(name, text) {
            eprintln!("{name}: {problem:?}");
            return ExitCode::FAILURE;
        }
    }
    println!(
        "\nin milliseconds: a year in quarter-hours, 100 weather years in hours, 200 months from the start in hours"
    );
    println!("{:<10} {:>10} {:>10} {:>10}", "plan", "year", "100 years", "200 months");
    for (name, text) in EXAMPLES {
        if let Err(problem) = years(name, text) {
            eprintln!("{name}: {problem:?}");
            return ExitCode::FAILURE;
        }
    }
    ended(maps())
}

fn ended(result: Result<(), Problem>) -> ExitCode {
    match result {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            eprintln!("{problem:?}");
            ExitCode::FAILURE
        }
    }
}
