//! The logbook for programs. The unit stands at the end of each name; `null` stands for what the readings do not have. Fields may be added;
//! none is renamed within `format` 1.
//!
//! | part | holds |
//! |---|---|
//! | `readings`, `nights`, `fulls` | what was weighed |
//! | `learned` | each figure: `what`, its best value and the interval that holds it nine times in ten, whether it is told and whether it is beyond chance |
//! | `next` | readings to take next, as sentences |
//! | `adopt` | what the plan can take over, as sentences |
//! | `charge_ratio` | at the newest reading, with its interval |
//! | `reserve_h`, `empty_h` | from there on in average weather; `dark_` without sun |
//! | `not_read`, `guessed` | as sentences |

use serde::Serialize;
use sunlarder_engine::logbook::{Estimate, Learned, Standing, Suspect, Symptom, What};
use sunlarder_engine::quantity::Hours;

use super::Read;
use crate::words;

/// Version of these fields.
const FORMAT: u32 = 1;

#[derive(Serialize)]
struct Answers {
    format: u32,
    readings: usize,
    nights: usize,
    fulls: usize,
    learned: Vec<Figure>,
    next: Vec<&'static str>,
    adopt: Vec<String>,
    charge_ratio: Option<f64>,
    charge_low_ratio: Option<f64>,
    charge_high_ratio: Option<f64>,
    reserve_h: Option<f64>,
    empty_h: Option<f64>,
    dark_reserve_h: Option<f64>,
    dark_empty_h: Option<f64>,
    guessed: Vec<&'static str>,
    not_read: Vec<String>,
    caution: &'static str,
}

/// One of its three units holds the value.
#[derive(Serialize)]
struct Figure {
    what: &'static str,
    text: String,
    best_ratio: Option<f64>,
    low_ratio: Option<f64>,
    high_ratio: Option<f64>,
    best_a: Option<f64>,
    low_a: Option<f64>,
    high_a: Option<f64>,
    best_v: Option<f64>,
    low_v: Option<f64>,
    high_v: Option<f64>,
    told: bool,
    alarm: bool,
}

const fn name(what: What) -> &'static str {
    match what {
        What::NightUse => "night_use",
        What::DayUse => "day_use",
        What::NightDrain => "night_drain",
        What::Yield => "yield",
        What::Capacity => "capacity",
        What::Efficiency => "efficiency",
        What::Bypass => "bypass",
        What::HiddenDrain => "hidden_drain",
        What::FalseFull => "false_full",
        What::RestVoltage => "rest_voltage",
    }
}

fn figure(read: &Read, own: &Learned) -> Figure {
    let Estimate { best, low, high, told } = own.estimate;
    let amps = matches!(own.what, What::NightDrain | What::Bypass | What::HiddenDrain);
    let volts = own.what == What::RestVoltage;
    let [ratio, amps, volts] = [!amps && !volts, amps, volts];
    let only = |is: bool, value: f64| is.then_some(value);
    Figure {
        what: name(own.what),
        text: words().learned(own, read.study.false_full),
        best_ratio: only(ratio, best),
        low_ratio: only(ratio, low),
        high_ratio: only(ratio, high),
        best_a: only(amps, best),
        low_a: only(amps, low),
        high_a: only(amps, high),
        best_v: only(volts, best),
        low_v: only(volts, low),
        high_v: only(volts, high),
        told,
        alarm: own.alarm,
    }
}

/// What readings say, as text of JSON.
pub(crate) fn json(read: &Read) -> String {
    let study = &read.study;
    let times = read.ahead.as_ref().map(|own| own.times());
    let hours = |of: fn(&sunlarder_engine::outlook::Times) -> Option<Hours>| {
        times.as_ref().and_then(of).map(|own| own.0)
    };
    let slips = read.pasted.slips.iter().chain(&read.left_out);
    let answers = Answers {
        format: FORMAT,
        readings: read.readings.all().len(),
        nights: study.nights,
        fulls: study.fulls,
        learned: study.learned.iter().map(|own| figure(read, own)).collect(),
        next: study.next().into_iter().map(|own| words().next_reading(own)).collect(),
        adopt: read.adoptions.iter().map(|own| words().adoption(own)).collect(),
        charge_ratio: study.charge_now.map(|own| own.best),
        charge_low_ratio: study.charge_now.map(|own| own.low),
        charge_high_ratio: study.charge_now.map(|own| own.high),
        reserve_h: hours(|own| own.to_reserve),
        empty_h: hours(|own| own.to_empty),
        dark_reserve_h: hours(|own| own.dark_to_reserve),
        dark_empty_h: hours(|own| own.dark_to_empty),
        guessed: read.pasted.guesses.iter().map(|own| words().pasted_guess(*own)).collect(),
        not_read: slips.map(|(line, slip)| words().slip_in(*line, slip)).collect(),
        caution: words().measuring_caution(),
    };
    // Numbers, texts and lists only: nothing in it can fail to serialise.
    serde_json::to_string_pretty(&answers).unwrap_or_default() + "\n"
}

#[derive(Serialize)]
struct Ranked {
    format: u32,
    symptom: &'static str,
    causes: Vec<Ranking>,
    caution: &'static str,
}

#[derive(Serialize)]
struct Ranking {
    cause: &'static str,
    weight_ratio: f64,
    standing: &'static str,
    seen: bool,
    test: String,
}

/// The causes of a symptom, as text of JSON.
pub(crate) fn symptom_json(symptom: Symptom, suspects: &[Suspect]) -> String {
    let ranking = |own: &Suspect| Ranking {
        cause: words().cause(own.cause),
        weight_ratio: own.weight,
        standing: words().cause_standing(own.standing),
        seen: own.standing == Standing::Seen,
        test: words().meter_test(&own.test),
    };
    let ranked = Ranked {
        format: FORMAT,
        symptom: words().symptom(symptom),
        causes: suspects.iter().map(ranking).collect(),
        caution: words().measuring_caution(),
    };
    serde_json::to_string_pretty(&ranked).unwrap_or_default() + "\n"
}
