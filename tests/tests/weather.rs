//! Models of daily clearness and of the plain store against closed forms and independent simulations.
//!
//! Each case of `tests/reference/weather.json` names its source. The textbook models are the yardsticks of the engine's own
//! weather; the random walk goes through the very step of the simulation.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use sunlarder_engine::bank::Bank;
use sunlarder_engine::document;
use sunlarder_engine::quantity::{AmpHours, Amps, Celsius, Hours};
use sunlarder_engine::simulate::{Forcing, Prepared};
use sunlarder_tests::plain_store::{Shortfall, Store};
use sunlarder_tests::reference::{Case, cases};
use sunlarder_tests::textbook::{Autoregressive, Bendt, Fit, Transitions};

const REFERENCE: &str = include_str!("../reference/weather.json");
const TRANSITIONS: &str = include_str!("../reference/transitions.csv");

/// Days of the independent simulations of single months.
const DAYS: usize = 400_000;
/// Days of a month and a year there.
const MONTH: usize = 30;
const YEAR: usize = 365;
/// Days on which the store's cases are judged: with twice the two million of the source, both errors together stay below the
/// four standard deviations of the stated tolerance.
const STORE_DAYS: usize = 4_000_000;
/// Four standard errors of the mean length of runs of dark days, of both simulations together.
const RUN_LENGTH_TOLERANCE: f64 = 0.02;
/// The same of the mean over years of the longest run in a year.
const LONGEST_RUN_TOLERANCE: f64 = 0.2;

type Outcome = Result<(), String>;

fn chosen(prefix: &str, expected: usize) -> Vec<Case> {
    let mut chosen = cases(REFERENCE).unwrap();
    chosen.retain(|case| case.id().starts_with(prefix));
    println!("{} reference cases {prefix}*", chosen.len());
    assert_eq!(chosen.len(), expected, "a case was left out or added");
    chosen
}

fn assert_all(outcomes: impl IntoIterator<Item = Outcome>) {
    let failures: Vec<String> = outcomes.into_iter().filter_map(Result::err).collect();
    assert!(failures.is_empty(), "{failures:#?}");
}

fn distribution(case: &Case) -> Outcome {
    let mean = case.input("KT_mean");
    let (exact, closed) = (Bendt::new(mean, Fit::Exact), Bendt::new(mean, Fit::Closed));
    let allowed = case.tolerance("others_abs");
    case.near("gamma_exact", exact.gamma, case.tolerance("gamma_exact_abs"))?;
    case.near("gamma_closed", closed.gamma, allowed)?;
    case.near("mean_with_closed", closed.mean(), allowed)?;
    case.near("Kmin", exact.low, allowed)?;
    case.near("Kmax", exact.high, allowed)?;
    case.near("sd", exact.spread(), allowed)?;
    case.near("F_at_0p2", exact.share_below(0.2), allowed)?;
    case.near("F_at_0p3", exact.share_below(0.3), allowed)?;
    let quantiles = case.expected_list("quantiles_05_10_25_50_75_90_95");
    assert_eq!(quantiles.len(), 7);
    for (share, expected) in [0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95].into_iter().zip(quantiles) {
        let found = exact.quantile(share);
        if (found - expected).abs() > allowed {
            return Err(format!("{}: quantile {share} is {found}, not {expected}", case.id()));
        }
    }
    Ok(())
}

#[test]
fn the_distribution_with_one_parameter_is_the_published_one() {
    assert_all(chosen("kt.dist.", 8).iter().map(distribution));
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

fn spread(values: &[f64]) -> f64 {
    let mean = mean(values);
    let squares = values.iter().map(|value| (value - mean) * (value - mean)).sum::<f64>();
    (squares / values.len() as f64).sqrt()
}

/// Correlation of days so many days apart.
fn correlation(days: &[f64], apart: usize) -> f64 {
    let (mean, spread) = (mean(days), spread(days));
    let pairs = days.iter().zip(&days[apart..]).map(|(one, other)| (one - mean) * (other - mean));
    pairs.sum::<f64>() / (days.len() - apart) as f64 / (spread * spread)
}

/// Coefficient of variation of the means of stretches of days.
fn variation(days: &[f64], stretch: usize) -> f64 {
    let means: Vec<f64> = days.chunks_exact(stretch).map(mean).collect();
    spread(&means) / mean(&means)
}

/// Lengths of the runs of days darker than a limit.
fn runs(days: &[f64], limit: f64) -> Vec<usize> {
    let runs = days.split(|day| *day >= limit).map(<[f64]>::len);
    runs.filter(|length| *length > 0).collect()
}

fn near(case: &Case, what: &str, found: f64, expected: f64, allowed: f64) -> Outcome {
    let apart = (found - expected).abs();
    if apart <= allowed {
        Ok(())
    } else {
        Err(format!("{}: {what} {found}, not {expected}", case.id()))
    }
}

fn dark_runs(case: &Case, days: &[f64], name: &str, part: f64) -> Outcome {
    let limit = part * case.input("KT_mean");
    let expected = |figure: &str| case.expected_in(name, figure);
    let allowed = case.tolerance("run_probs_abs");
    let runs_of_all = runs(days, limit);
    let lengths: Vec<f64> = runs_of_all.iter().map(|length| *length as f64).collect();
    let dark = days.iter().filter(|day| **day < limit).count() as f64 / days.len() as f64;
    near(case, "share of dark days", dark, expected("p"), allowed)?;
    near(case, "mean run", mean(&lengths), expected("mean_run"), RUN_LENGTH_TOLERANCE)?;
    for (figure, least) in [("p_ge2", 2), ("p_ge3", 3), ("p_ge5", 5)] {
        let long = runs_of_all.iter().filter(|length| **length >= least).count();
        near(case, figure, long as f64 / lengths.len() as f64, expected(figure), allowed)?;
    }
    let longest = |year: &[f64]| runs(year, limit).into_iter().max().unwrap_or(0) as f64;
    let by_year: Vec<f64> = days.chunks_exact(YEAR).map(longest).collect();
    let figure = expected("mean_max_per_year");
    near(case, "longest run of a year", mean(&by_year), figure, LONGEST_RUN_TOLERANCE)
}

fn sequence(case: &Case) -> Outcome {
    let marginal = Bendt::new(case.input("KT_mean"), Fit::Exact);
    let generator = Autoregressive::new(marginal, case.input("phi"), 1);
    let days: Vec<f64> = generator.take(DAYS).collect();
    case.near("mean", mean(&days), case.tolerance("mean_abs"))?;
    case.near("sd", spread(&days), case.tolerance("sd_abs"))?;
    case.near("lag1", correlation(&days, 1), case.tolerance("lag1_abs"))?;
    case.near("lag2", correlation(&days, 2), case.tolerance("lag2_abs"))?;
    case.near("monthly_cv", variation(&days, MONTH), case.tolerance("monthly_cv_abs"))?;
    let annual = case.tolerance("annual_cv_rel") * case.expected("annual_cv");
    case.near("annual_cv", variation(&days, YEAR), annual)?;
    dark_runs(case, &days, "runs_half", 0.5)?;
    dark_runs(case, &days, "runs_0p6", 0.6)
}

#[test]
fn sequences_with_one_memory_have_the_statistics_of_an_independent_simulation() {
    assert_all(chosen("kt.ghh.", 5).iter().map(sequence));
}

fn transitions(case: &Case) -> Outcome {
    let table = Transitions::of_class(TRANSITIONS, case.input("matrix_class") as u8)?;
    let bounds = case.inputs("state_range");
    let (mean, spread, next) = table.statistics(bounds[0], bounds[1]);
    let allowed = case.tolerance("abs");
    case.near("mean_K", mean, allowed)?;
    case.near("sd", spread, allowed)?;
    case.near("lag1", next, allowed)?;
    let expected = case.expected_list("stationary");
    assert_eq!(expected.len(), 10);
    for (state, (share, expected)) in table.stationary().into_iter().zip(expected).enumerate() {
        near(case, &format!("share of state {}", state + 1), share, expected, allowed)?;
    }
    Ok(())
}

#[test]
fn published_tables_of_transitions_have_their_stationary_state() {
    assert_all(chosen("kt.aguiar.", 6).iter().map(transitions));
}

/// A design that is judged by the days of one mean clearness.
struct Judged {
    case: Case,
    store: Store,
    oversize: f64,
    sum: Shortfall,
}

impl Judged {
    fn new(case: &Case) -> Self {
        let store = Store::full(case.input("CS"));
        Self { case: case.clone(), store, oversize: case.input("CA"), sum: Shortfall::default() }
    }

    fn outcome(&self) -> Outcome {
        let allowed = self.case.tolerance("abs");
        self.case.near("llp_energy", self.sum.loss_of_load(), allowed)?;
        // Short days come in the same spells as what lacks on them, so the error grows in proportion.
        let per_loss = self.case.expected("fraction_days") / self.case.expected("llp_energy");
        let allowed = if per_loss > 1.0 { per_loss * allowed } else { allowed };
        self.case.near("fraction_days", self.sum.days_short(), allowed)
    }
}

fn judge(all: &[Case], clearness: f64) -> Vec<Judged> {
    let own = all.iter().filter(|case| case.input("KT_mean") == clearness);
    let mut judged: Vec<Judged> = own.map(Judged::new).collect();
    let marginal = Bendt::new(clearness, Fit::Exact);
    let mut days = Autoregressive::new(marginal, judged[0].case.input("phi"), 1);
    let mut stretch = vec![0.0; STORE_DAYS / 1000];
    for _ in 0..1000 {
        stretch.fill_with(|| days.next().unwrap() / clearness);
        for design in &mut judged {
            let gains = stretch.iter().map(|gain| gain * design.oversize);
            design.sum += design.store.suffer(gains);
        }
    }
    judged
}

fn assert_judged(clearness: f64, expected: usize) {
    let judged = judge(&chosen("llp.ghh.", 74), clearness);
    assert_eq!(judged.len(), expected);
    assert_all(judged.iter().map(Judged::outcome));
}

#[test]
fn a_plain_store_under_a_dark_sky_loses_as_in_an_independent_simulation() {
    assert_judged(0.35, 28);
}

#[test]
fn a_plain_store_under_a_mixed_sky_loses_as_in_an_independent_simulation() {
    assert_judged(0.5, 23);
}

#[test]
fn a_plain_store_under_a_bright_sky_loses_as_in_an_independent_simulation() {
    assert_judged(0.6, 23);
}

/// A day of the random walk: a store of whole days of load, of which it holds some; on a good day two come in.
type Walk<'a> = &'a dyn Fn(usize, bool) -> (usize, bool);

/// Share of short days and mean level in the long run, from the shares of the levels.
fn stationary(capacity: usize, good: f64, walk: Walk) -> (f64, f64) {
    let outcomes: Vec<[(usize, bool); 2]> =
        (0..=capacity).map(|level| [walk(level, true), walk(level, false)]).collect();
    let mut shares = vec![1.0 / (capacity + 1) as f64; capacity + 1];
    let mut short = 0.0;
    // The slowest walk here, over twenty levels, forgets its start by 1 % a day.
    for _ in 0..20_000 {
        let mut next = vec![0.0; capacity + 1];
        short = 0.0;
        for (share, outcomes) in shares.iter().zip(&outcomes) {
            for ((level, lacks), chance) in outcomes.iter().zip([good, 1.0 - good]) {
                next[*level] += share * chance;
                short += share * chance * f64::from(u8::from(*lacks));
            }
        }
        shares = next;
    }
    let level = shares.iter().enumerate().map(|(level, share)| level as f64 * share).sum::<f64>();
    (short, level / capacity as f64)
}

/// The day through the plain store.
fn by_store(capacity: usize, level: usize, good: bool) -> (usize, bool) {
    let mut store = Store { capacity: capacity as f64, level: level as f64 };
    let lacking = store.pass(if good { 2.0 } else { 0.0 });
    (store.level.round() as usize, lacking > 0.0)
}

/// The day through the engine's step: an ideal bank and currents so small that no limit of it matters.
fn by_step(bank: &Bank, capacity: usize, level: usize, good: bool) -> (usize, bool) {
    let (load, day) = (Amps(1e-6), Hours(1e6));
    let forcing = Forcing {
        standing: load,
        shore: if good { load * 2.0 } else { Amps::ZERO },
        temperature: Celsius(20.0),
        ..Forcing::default()
    };
    // Between the voltages at which discharge and charge end lies the store of the walk.
    let bottom = bank.charge_at(bank.low_voltage());
    let top = bank.charge_at(bank.absorption_voltage(Celsius::ZERO));
    let full = AmpHours(capacity as f64 / (top - bottom));
    let bank = Prepared::new(bank, full, day);
    let state = bank.rested(bottom + level as f64 / full.0);
    let done = bank.step(state, &forcing, &mut ());
    let after = (done.state.charge - bottom) * full.0;
    assert!((after - after.round()).abs() < 1e-9, "whole days only: {after}");
    (after.round() as usize, done.flows.unmet.0 > 1e-9)
}

fn random_walk(case: &Case) -> Outcome {
    let capacity = case.input("capacity_steps") as usize;
    let section = document::Bank {
        capacity_ah: capacity as f64,
        charge_efficiency_pct: Some(100.0),
        self_discharge_pct: Some(0.0),
        protection_ma: Some(0.0),
        ..document::Bank::default()
    };
    let bank = Bank::parse(&section).unwrap();
    let walks: [Walk; 2] = [&|level, good| by_store(capacity, level, good), &|level, good| {
        by_step(&bank, capacity, level, good)
    }];
    for walk in walks {
        let (short, level) = stationary(capacity, case.input("p_gain"), walk);
        case.near("fraction_of_days_short", short, case.tolerance("abs"))?;
        case.near("mean_soc", level, case.tolerance("abs"))?;
    }
    Ok(())
}

#[test]
fn a_random_walk_through_store_and_step_has_its_exact_solution() {
    assert_all(chosen("llp.randomwalk.", 14).iter().map(random_walk));
}

#[test]
fn no_case_is_left_out() {
    assert_eq!(cases(REFERENCE).unwrap().len(), 8 + 5 + 6 + 74 + 14);
}
