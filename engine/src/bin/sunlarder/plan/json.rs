//! A plan's answers for programs. The unit stands at the end of each name.
//!
//! | end of name | unit |
//! |---|---|
//! | `_ah`, `_wh` | amp-hours, watt-hours; of budgets and months on a mean day |
//! | `_a`, `_v`, `_w` | amps, volts, watts |
//! | `_h`, `_days` | hours, days |
//! | `_km` | kilometres |
//! | `_l` | litres of fuel, of months on a mean day |
//! | `_pct`, `_ratio` | percent, share of one |
//! | `_c`, `_deg` | degrees Celsius, degrees of arc |
//! | `_kwh_per_m2` | kilowatt-hours per square metre and day, which are peak sun hours |
//! | `_local` | clock time of the place, ISO 8601 |
//!
//! `month` counts from 1, `load` and `array` from 1 as they stand in the plan. `null` stands for what does not come: a time to
//! the reserve that is not reached within the run. Kinds (of verdicts, obstacles, sun) are words in lower case that stay the
//! same; the `text` beside them may be reworded. Fields may be added; none is renamed within `format` 1.
//!
//! | part | holds |
//! |---|---|
//! | `plan`, `place`, `start` | what was asked |
//! | `verdict` | the answer: `kind`, `text`, and what it rests on |
//! | `budget` | each load, the inverter's idle draw, standing draw, protection, and the sum, on a mean day of the starting month |
//! | `capacity` | from rated to usable; `rated_ah` is the slowest of several ratings, `ratings` how many, and the rest how they fit |
//! | `voltage` | of the bank: at rest at the start, the lowest in the mean weather, and the set-points |
//! | `times` | to the reserve, to empty, to full; with the mean sun and without |
//! | `months` | twelve mean days: what comes in, what is used, what is left |
//! | `tightest` | the worst month and why |
//! | `obstacles` | what stops the plan, and cautions |
//! | `run` | sums of the run asked for: they balance |
//! | `replay` | with `--weather`: the year of that file. `place`, `latitude_deg`, `longitude_deg` are the file's own, `distance_km` is that to the plan, `contradiction_ratio` what light of sun and sky lack of all light. `months`, `below_reserve_h`, `short_h`, `filled`, `longest_without_full_h`, `lowest_charge_pct` and `lowest_at_local` are of the year; `to_reserve_h` and `charge_pct` (at the start and after each hour) of 31 days from the start |

use chrono::NaiveDateTime;
use serde::Serialize;
use sunlarder_engine::outlook::{Month, Obstacle, Tight, Verdict, clock_time, lowest_of};
use sunlarder_engine::quantity::{
    AmpHours, Amps, Celsius, Hours, Irradiation, Litres, Percent, Volts, WattHours,
};
use sunlarder_engine::simulate::{Replayed, Sun};
use sunlarder_engine::system::System;

use super::Answered;
use crate::words;

/// Version of these fields.
const FORMAT: u32 = 1;

/// The answers as text of JSON.
pub(crate) fn json(answered: &Answered) -> String {
    // Numbers, texts and lists only: nothing in it can fail to serialise.
    serde_json::to_string_pretty(&answers(answered)).unwrap_or_default() + "\n"
}

#[derive(Serialize)]
struct Answers<'a> {
    format: u32,
    plan: &'a str,
    place: Place<'a>,
    start: Start,
    verdict: Told,
    budget: Budget,
    capacity: Capacity,
    voltage: Voltage,
    times: Times,
    months: Vec<MonthLine>,
    tightest: Tightest,
    obstacles: Vec<ObstacleLine>,
    run: RunSums,
    replay: Option<Replay<'a>>,
}

#[derive(Serialize)]
struct Place<'a> {
    name: &'a str,
    latitude_deg: f64,
    longitude_deg: f64,
}

#[derive(Serialize)]
struct Start {
    at_local: NaiveDateTime,
    charge_pct: f64,
}

#[derive(Serialize)]
struct Told {
    kind: &'static str,
    text: String,
    explanation: String,
    /// Months that keep up.
    months: Vec<usize>,
    reserve_at_local: Option<NaiveDateTime>,
    short_ah: Option<AmpHours>,
}

#[derive(Serialize)]
struct Budget {
    month: usize,
    loads: Vec<LoadLine>,
    inverter_on_h: Hours,
    inverter_idle_wh: WattHours,
    inverter_idle_ah: AmpHours,
    standing_ah: AmpHours,
    protection_ah: AmpHours,
    total_ah: AmpHours,
    total_wh: WattHours,
}

#[derive(Serialize)]
struct LoadLine {
    load: u32,
    name: String,
    on_h: Hours,
    duty_pct: Percent,
    at_load_wh: WattHours,
    at_bank_wh: WattHours,
    at_bank_ah: AmpHours,
}

#[derive(Serialize)]
struct Capacity {
    rated_ah: AmpHours,
    full_ah: AmpHours,
    usable_ah: AmpHours,
    rate_ratio: f64,
    cold_ratio: f64,
    reserve_pct: Percent,
    bank_c: Celsius,
    mean_discharge_a: Amps,
    autonomy_days: Option<f64>,
    ratings: usize,
    largest_deviation_ratio: Option<f64>,
    ratings_determine_it: Option<bool>,
}

#[derive(Serialize)]
struct Voltage {
    rest_v: Volts,
    lowest_v: Volts,
    low_cut_off_v: Volts,
    absorption_v: Volts,
    tail_a: Amps,
}

#[derive(Serialize)]
struct Times {
    to_reserve_h: Option<Hours>,
    to_empty_h: Option<Hours>,
    to_full_h: Option<Hours>,
    without_sun_to_reserve_h: Option<Hours>,
    without_sun_to_empty_h: Option<Hours>,
}

#[derive(Serialize)]
struct MonthLine {
    month: usize,
    irradiation_kwh_per_m2: Irradiation,
    bank_c: Celsius,
    solar_ah: AmpHours,
    turbine_ah: AmpHours,
    engine_ah: AmpHours,
    shore_ah: AmpHours,
    kept_ah: AmpHours,
    used_ah: AmpHours,
    balance_ah: AmpHours,
    usable_ah: AmpHours,
    lowest_charge_pct: Percent,
    keeps_up: bool,
    too_cold_to_charge: bool,
    generator_h: Option<Hours>,
    fuel_l: Option<Litres>,
}

#[derive(Serialize)]
struct Tightest {
    month: usize,
    balance_ah: AmpHours,
    why: &'static str,
}

#[derive(Serialize)]
struct ObstacleLine {
    kind: &'static str,
    stops: bool,
    text: String,
    load: Option<u32>,
    array: Option<u32>,
}

#[derive(Serialize)]
struct Replay<'a> {
    place: &'a str,
    latitude_deg: f64,
    longitude_deg: f64,
    distance_km: f64,
    contradiction_ratio: f64,
    text: Vec<String>,
    months: Vec<ReplayMonth>,
    below_reserve_h: Hours,
    short_h: Hours,
    filled: bool,
    longest_without_full_h: Hours,
    lowest_charge_pct: Percent,
    lowest_at_local: NaiveDateTime,
    to_reserve_h: Option<Hours>,
    charge_pct: Vec<f64>,
}

#[derive(Serialize)]
struct ReplayMonth {
    month: usize,
    irradiation_kwh_per_m2: Irradiation,
    air_c: Celsius,
    below_reserve_h: Hours,
    short_h: Hours,
}

#[derive(Serialize)]
struct RunSums {
    sun: &'static str,
    lasts_h: Hours,
    first_charge_pct: Percent,
    last_charge_pct: Percent,
    load_ah: AmpHours,
    unmet_ah: AmpHours,
    protection_ah: AmpHours,
    solar_ah: AmpHours,
    turbine_ah: AmpHours,
    engine_ah: AmpHours,
    generator_ah: AmpHours,
    shore_ah: AmpHours,
    curtailed_ah: AmpHours,
    charge_loss_ah: AmpHours,
    self_discharge_ah: AmpHours,
    stored_ah: AmpHours,
    load_wh: WattHours,
    protection_wh: WattHours,
    source_wh: WattHours,
    bank_loss_wh: WattHours,
    stored_wh: WattHours,
    generator_wh: WattHours,
    generator_h: Hours,
    fuel_l: Option<Litres>,
}

fn answers(answered: &Answered) -> Answers<'_> {
    let (plan, system, outlook) = (&answered.plan, &answered.system, &answered.outlook);
    Answers {
        format: FORMAT,
        plan: &plan.name,
        place: Place {
            name: &plan.place.name,
            latitude_deg: system.site.latitude.0,
            longitude_deg: system.site.longitude.0,
        },
        start: Start {
            at_local: clock_time(system, Hours::ZERO),
            charge_pct: Percent::of_ratio(system.start.charge).0,
        },
        verdict: told(answered),
        budget: budget(answered),
        capacity: capacity(answered),
        voltage: voltage(answered),
        times: times(answered),
        months: outlook.months.iter().map(|own| month_line(system, own)).collect(),
        tightest: Tightest {
            month: outlook.tightest.month + 1,
            balance_ah: outlook.tightest.balance,
            why: match outlook.tightest.why {
                Tight::NoSource => "no_source",
                Tight::LittleSun => "little_sun",
                Tight::MuchUse => "much_use",
            },
        },
        obstacles: outlook.obstacles.iter().map(|found| obstacle(answered, found)).collect(),
        run: run_sums(answered),
        replay: answered.replayed.as_ref().map(|own| replay(answered, own)),
    }
}

fn told(answered: &Answered) -> Told {
    let outlook = &answered.outlook;
    let name_of = |tag| answered.name_of(tag);
    let bits = outlook.months_kept();
    let (kind, reserve_at_local, short_ah) = match &outlook.verdict {
        Verdict::NothingRuns => ("nothing_runs", None, None),
        Verdict::CannotWork { .. } => ("cannot_work", None, None),
        Verdict::StartsBelowReserve { .. } => ("starts_below_reserve", None, None),
        Verdict::KeepsUp { .. } => ("keeps_up", None, None),
        Verdict::HoldsLong { short, .. } => ("holds_long", None, Some(*short)),
        Verdict::ReachesReserve { at, .. } => ("reaches_reserve", Some(*at), None),
    };
    Told {
        kind,
        text: words().headline(outlook).text(),
        explanation: [
            words().vital(outlook, &name_of).unwrap_or_default(),
            words().explanation(outlook, &answered.system, &name_of),
        ]
        .join(" ")
        .trim()
        .to_owned(),
        months: (1..=12).filter(|month| bits >> (month - 1) & 1 == 1).collect(),
        reserve_at_local,
        short_ah,
    }
}

fn budget(answered: &Answered) -> Budget {
    let budget = &answered.outlook.budget;
    let loads = budget.loads.iter().map(|load| LoadLine {
        load: u32::from(load.place) + 1,
        name: answered.name(load.place),
        on_h: load.hours,
        duty_pct: load.duty,
        at_load_wh: load.own_energy,
        at_bank_wh: load.energy,
        at_bank_ah: load.charge,
    });
    Budget {
        month: budget.month + 1,
        loads: loads.collect(),
        inverter_on_h: budget.inverter.hours,
        inverter_idle_wh: budget.inverter.energy,
        inverter_idle_ah: budget.inverter.charge,
        standing_ah: budget.standing,
        protection_ah: budget.protection,
        total_ah: budget.total,
        total_wh: budget.total_energy,
    }
}

fn capacity(answered: &Answered) -> Capacity {
    let (bank, outlook) = (&answered.system.bank, &answered.outlook);
    let fit = bank.fit_quality();
    Capacity {
        rated_ah: bank.slowest,
        full_ah: outlook.capacity.full,
        usable_ah: outlook.capacity.usable,
        rate_ratio: outlook.capacity.rate,
        cold_ratio: outlook.capacity.cold,
        reserve_pct: bank.reserve,
        bank_c: outlook.bank_temperature,
        mean_discharge_a: outlook.current,
        autonomy_days: outlook.autonomy_days,
        ratings: bank.ratings.all.len(),
        largest_deviation_ratio: fit.map(|fit| fit.deviation),
        ratings_determine_it: fit.map(|fit| fit.unique),
    }
}

fn voltage(answered: &Answered) -> Voltage {
    let bank = &answered.system.bank;
    let voltages = answered.outlook.voltages(&answered.system);
    Voltage {
        rest_v: voltages.rest,
        lowest_v: voltages.lowest,
        low_cut_off_v: voltages.cut_off,
        absorption_v: bank.absorption_voltage(answered.outlook.bank_temperature),
        tail_a: bank.tail_current(),
    }
}

fn times(answered: &Answered) -> Times {
    let times = answered.outlook.times();
    Times {
        to_reserve_h: times.to_reserve,
        to_empty_h: times.to_empty,
        to_full_h: times.to_full,
        without_sun_to_reserve_h: times.dark_to_reserve,
        without_sun_to_empty_h: times.dark_to_empty,
    }
}

fn month_line(system: &System, month: &Month) -> MonthLine {
    MonthLine {
        month: month.month + 1,
        irradiation_kwh_per_m2: month.irradiation,
        bank_c: month.bank_temperature,
        solar_ah: month.gain.solar,
        turbine_ah: month.gain.turbine,
        engine_ah: month.gain.engine,
        shore_ah: month.gain.shore,
        kept_ah: month.gain.kept,
        used_ah: month.need,
        balance_ah: month.balance,
        usable_ah: month.usable,
        lowest_charge_pct: Percent::of_ratio(lowest_of(system, month)),
        keeps_up: month.keeps_up,
        too_cold_to_charge: month.too_cold_to_charge,
        generator_h: month.generator.map(|own| own.hours),
        fuel_l: month.generator.and_then(|own| own.fuel),
    }
}

fn obstacle(answered: &Answered, found: &Obstacle) -> ObstacleLine {
    use Obstacle as O;
    let (kind, load, array) = match *found {
        O::NoInverter { load } => ("no_inverter", Some(load), None),
        O::InverterOverloaded { .. } => ("inverter_overloaded", None, None),
        O::InverterOverApparent { .. } => ("inverter_over_apparent", None, None),
        O::InverterSurge { load, .. } => ("inverter_surge", Some(load), None),
        O::BankOverloaded { .. } => ("bank_overloaded", None, None),
        O::BankSurge { load, .. } => ("bank_surge", Some(load), None),
        O::InverterBeyondBank { .. } => ("inverter_beyond_bank", None, None),
        O::BankSags { load, .. } => ("bank_sags", load, None),
        O::ArrayVoltageTooHigh { array, .. } => ("array_voltage_too_high", None, Some(array)),
        O::ArrayVoltageTooLow { array, .. } => ("array_voltage_too_low", None, Some(array)),
        O::ColdNotKnown { array } => ("cold_not_known", None, Some(array)),
        O::TooColdToCharge { .. } => ("too_cold_to_charge", None, None),
        O::MayFreeze { .. } => ("may_freeze", None, None),
        O::ProtectionMayOpen => ("protection_may_open", None, None),
        O::VitalLoad { load } => ("vital_load", Some(load), None),
        O::DangerousVoltage { .. } => ("dangerous_voltage", None, None),
    };
    let from_one = |place: u16| u32::from(place) + 1;
    ObstacleLine {
        kind,
        stops: found.stops(),
        text: words().obstacle(found, &|tag| answered.name_of(tag)),
        load: load.map(from_one),
        array: array.map(from_one),
    }
}

fn replay<'a>(answered: &Answered, replayed: &'a Replayed) -> Replay<'a> {
    let months = (1..).zip(&replayed.months).map(|(month, own)| ReplayMonth {
        month,
        irradiation_kwh_per_m2: own.irradiation,
        air_c: own.temperature,
        below_reserve_h: own.below_reserve,
        short_h: own.short,
    });
    Replay {
        place: &replayed.name,
        latitude_deg: replayed.site.latitude.0,
        longitude_deg: replayed.site.longitude.0,
        distance_km: replayed.distance_km,
        contradiction_ratio: replayed.contradiction,
        text: words().replayed(replayed, &answered.system),
        months: months.collect(),
        below_reserve_h: replayed.below_reserve(),
        short_h: replayed.short(),
        filled: replayed.filled,
        longest_without_full_h: replayed.longest_without_full,
        lowest_charge_pct: Percent::of_ratio(replayed.lowest),
        lowest_at_local: replayed.lowest_at,
        to_reserve_h: replayed.run.reserve_at,
        charge_pct: replayed.path(),
    }
}

fn run_sums(answered: &Answered) -> RunSums {
    let run = answered.run();
    let (last, sums) = (run.samples.last(), &run.totals);
    RunSums {
        sun: match answered.sun {
            Sun::Mean => "mean",
            Sun::None => "none",
        },
        lasts_h: last.map_or(Hours::ZERO, |last| last.at),
        first_charge_pct: Percent::of_ratio(run.initial),
        last_charge_pct: Percent::of_ratio(last.map_or(run.initial, |last| last.charge)),
        load_ah: sums.load,
        unmet_ah: sums.unmet,
        protection_ah: sums.protection,
        solar_ah: sums.solar,
        turbine_ah: sums.turbine,
        engine_ah: sums.engine,
        generator_ah: sums.generator,
        shore_ah: sums.shore,
        curtailed_ah: sums.curtailed,
        charge_loss_ah: sums.charge_loss,
        self_discharge_ah: sums.self_discharge,
        stored_ah: sums.stored,
        load_wh: sums.load_energy,
        protection_wh: sums.protection_energy,
        source_wh: sums.source_energy,
        bank_loss_wh: sums.bank_loss,
        stored_wh: sums.stored_energy,
        generator_wh: run.generator_energy(),
        generator_h: sums.generator_time,
        fuel_l: run.fuel(&answered.system),
    }
}
