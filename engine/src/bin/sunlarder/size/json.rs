//! How big it must be, for programs. The unit stands at the end of each name, as of a plan's answers: `_ah`, `_w`, `_v`, `_a`, `_h`, `_deg`, `_ratio`.
//!
//! `month` counts from 1. `null` stands for what does not come: a size that was not found, or what was not asked. Fields may be added; none is
//! renamed within `format` 1.
//!
//! | part | holds |
//! |---|---|
//! | `promise` | what was asked, as a sentence, and the chance that is asked for |
//! | `standing` | how the plan does as it is; `short` are short days a year, or the share of trials that fail |
//! | `suggested` | a size in whole batteries and modules, proved; the plan's own if that keeps the promise |
//! | `smallest_bank`, `smallest_array` | beside the array, and the bank, as they are |
//! | `charger_h_per_week` | with `charger_a`: hours a week that close the gap |
//! | `tilt` | the best for the tightest month |
//! | `arrival_h` | latest hour of arrival at the reserve for a full bank on the evening of the first, second, third day; 23 is whenever |
//! | `frontier` | the smallest combinations, as the map has them |
//! | `cheapest`, `lightest` | by the prices and weights that were given |
//! | `changes` | what would help, the best first, and what other reserves would come to |
//! | `voltages` | the common system voltages and their largest currents |

use serde::Serialize;
use sunlarder_engine::sizing::{Answer, Helped, Size, Study};

use super::{said, sized};
use crate::words;

/// Version of these fields.
const FORMAT: u32 = 1;

/// The answers as text of JSON.
pub(crate) fn json(study: &Study) -> String {
    // Numbers, texts and lists only: nothing in it can fail to serialise.
    serde_json::to_string_pretty(&answers(study)).unwrap_or_default() + "\n"
}

#[derive(Serialize)]
struct Answers {
    format: u32,
    promise: Promised,
    standing: Option<Standing>,
    suggested: Option<Sizes>,
    smallest_bank: Option<Sizes>,
    smallest_array: Option<Sizes>,
    charger_h_per_week: Option<u32>,
    charger_a: f64,
    tilt: Option<Tilt>,
    arrival_h: Option<[Option<u8>; 3]>,
    frontier: Vec<Sizes>,
    cheapest: Option<Sum>,
    lightest: Option<Sum>,
    changes: Vec<Line>,
    reserves: Vec<Line>,
    voltages: Vec<Voltage>,
}

#[derive(Serialize)]
struct Promised {
    text: String,
    chance_ratio: f64,
}

#[derive(Serialize)]
struct Standing {
    chance_ratio: f64,
    error_ratio: f64,
    years: usize,
    short: f64,
    kept: bool,
}

#[derive(Serialize)]
struct Sizes {
    bank_ah: f64,
    array_w: f64,
}

#[derive(Serialize)]
struct Sum {
    bank_ah: f64,
    array_w: f64,
    sum: f64,
}

#[derive(Serialize)]
struct Tilt {
    tilt_deg: f64,
    month: usize,
    chance_ratio: Option<f64>,
}

#[derive(Serialize)]
struct Line {
    text: String,
    chance_ratio: f64,
    short: f64,
    kept: bool,
}

#[derive(Serialize)]
struct Voltage {
    nominal_v: f64,
    loads_a: f64,
    arrays_a: f64,
    own: bool,
}

fn answers(study: &Study) -> Answers {
    let sizes = |size: Size| {
        let size = sized(study, size);
        Sizes { bank_ah: size.charge.0, array_w: size.power.0 }
    };
    let found = |answer: Answer<Size>| answer.found().map(sizes);
    let least = |least: Option<(Size, f64)>| {
        least.map(|(size, sum)| {
            let Sizes { bank_ah, array_w } = sizes(size);
            Sum { bank_ah, array_w, sum }
        })
    };
    let promise = &study.question().promise;
    let frontier = study.frontier();
    Answers {
        format: FORMAT,
        promise: Promised { text: words().promise(promise), chance_ratio: promise.chance.ratio() },
        standing: study.standing().map(|own| Standing {
            chance_ratio: own.chance,
            error_ratio: own.error,
            years: own.years,
            short: own.shortage,
            kept: own.kept,
        }),
        suggested: found(study.suggested()),
        smallest_bank: found(study.smallest_bank()),
        smallest_array: found(study.smallest_array()),
        charger_h_per_week: study.charger_hours().found(),
        charger_a: study.sizing().charger().0,
        tilt: study.tilt().map(|own| Tilt {
            tilt_deg: own.tilt.0,
            month: own.month + 1,
            chance_ratio: own.chance,
        }),
        arrival_h: study.arrival().map(|own| own.latest),
        frontier: frontier
            .into_iter()
            .map(|(bank, array)| sizes(study.map().size(bank, array)))
            .collect(),
        cheapest: least(study.cheapest()),
        lightest: least(study.lightest()),
        changes: study.helped().iter().map(|own| line(study, own)).collect(),
        reserves: study.reserves().map(|own| line(study, own)).collect(),
        voltages: study
            .voltages()
            .iter()
            .map(|own| Voltage {
                nominal_v: own.nominal.0,
                loads_a: own.loads.0,
                arrays_a: own.arrays.0,
                own: own.own,
            })
            .collect(),
    }
}

fn line(study: &Study, helped: &Helped) -> Line {
    Line {
        text: said(study, helped),
        chance_ratio: helped.chance,
        short: helped.shortage,
        kept: helped.kept,
    }
}
