//! Prints how predicted chances of running out compare with measured decades; see `engine/CALIBRATION.md`.

#![allow(clippy::print_stdout, reason = "it prints what it measured")]

use std::process::ExitCode;

use sunlarder_engine::sky::Trust;
use sunlarder_tests::calibration::{
    Case, Knowledge, REPLICAS, Summary, array_errors, cases, stations,
};

const RECORD: &str = include_str!("../../reference/shortfall.csv");

/// A loss of load in per cent.
fn percent(loss: f64) -> String {
    format!("{:.3}", 100.0 * loss)
}

/// Own climate and place alone, side by side; a case that counts in neither is left out.
fn print_cases(own: &[Case], place: &[Case]) {
    println!("| station | latitude | design | measured | own: 10-50-90 % | place: 10-50-90 % |");
    println!("|---|---|---|---|---|---|");
    let range = |case: &Case| [case.low, case.median, case.high].map(percent).join(" ");
    for (own, place) in own.iter().zip(place).filter(|(own, place)| own.counts() || place.counts())
    {
        println!(
            "| {} | {:.1} | {} × {} d | {} | {} | {} |",
            own.station,
            own.latitude,
            own.design.oversize,
            own.design.store,
            percent(own.design.measured),
            range(own),
            range(place),
        );
    }
}

fn print_summary(name: &str, cases: &[Case]) {
    let (error, spread) = array_errors(cases);
    // Adding nothing turns −0 into 0.
    let error = (100.0 * error).round() + 0.0;
    println!("| {name} {} | {error:+} ± {:.0} % |", Summary::of(cases), 100.0 * spread);
}

fn main() -> ExitCode {
    let stations = match stations(RECORD) {
        Ok(stations) => stations,
        Err(fault) => {
            eprintln!("tests/reference/shortfall.csv: {fault}");
            return ExitCode::FAILURE;
        }
    };
    let of = |knowledge, trust| cases(&stations, knowledge, trust, REPLICAS, true);
    let own = of(Knowledge::Own, Trust::Own);
    let place = of(Knowledge::Place, Trust::Grid);
    print_cases(&own, &place);
    println!("\n| inputs {} | array error |", Summary::HEAD);
    println!("|---|---|---|---|---|---|---|");
    print_summary("own means and spreads", &own);
    print_summary("place alone", &place);
    print_summary("own, as if certain", &of(Knowledge::Own, Trust::Certain));
    print_summary("place, as if certain", &of(Knowledge::Place, Trust::Certain));
    ExitCode::SUCCESS
}
