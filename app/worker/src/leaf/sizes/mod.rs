//! How big it should be, and what would help.

mod map;
mod numbers;
mod told;

pub use numbers::SizesNumbers;
pub use told::{write_helping, write_sizing};

use sunlarder_engine::bank::Bank;
use sunlarder_engine::quantity::{AmpHours, Watts};
use sunlarder_engine::sizing::map::SIDE;
use sunlarder_engine::sizing::{Size, Study};
use sunlarder_engine::words::Words;
use sunlarder_engine::words::sizes::Mark;
use sunlarder_engine::words::sizing::Sized;

use crate::paper::Paper;
use map::{Scale, Shown};

/// A size of a study as amounts.
fn sized(study: &Study, size: Size) -> Sized {
    let system = study.sizing().system();
    Sized { charge: size.charge(system), power: size.power(system) }
}

/// The picture of the map as far as it is known; blank before.
#[must_use]
pub fn draw_sizes(study: &Study, words: Words) -> String {
    if !study.map().is_coarse() {
        return String::new();
    }
    let place = |place: usize| sized(study, study.map().size(place, place));
    let mut paper = Paper::default();
    let said = words.map_of_sizes(place(0), place(SIDE - 1));
    map::write(&mut paper, words, &view(study, words), &said);
    paper.finish()
}

/// Steps of the share that is done: less progress is not told.
const STEPS: f64 = 40.0;

/// What the page reads out of the map, as [`SizesNumbers`].
#[must_use]
pub fn sizes_numbers(study: &Study) -> Vec<f64> {
    let (map, promise) = (study.map(), &study.question().promise);
    let standing = study.standing().map(|own| own.chance);
    let place = |place: usize| sized(study, map.size(place, place));
    let known = map.is_coarse().then(|| {
        let banks = core::array::from_fn(|at| place(at).charge.0);
        let arrays = core::array::from_fn(|at| place(at).power.0);
        let all = (0..SIDE * SIDE).map(|at| map.chance(promise, at / SIDE, at % SIDE));
        (banks, arrays, all.collect())
    });
    SizesNumbers::list((study.done() * STEPS).floor() / STEPS, standing, known)
}

/// The chances that are shown: of a cell that is not known yet that of the nearest one that is.
fn chances(study: &Study) -> Vec<f64> {
    let (map, promise) = (study.map(), &study.question().promise);
    let known = |bank: usize, array: usize| map.chance(promise, bank, array);
    // The coarse map has every third bank.
    let middle = |at: usize| at / 3 * 3 + 1;
    let shown = (0..SIDE * SIDE).map(|at| {
        let (bank, array) = (at / SIDE, at % SIDE);
        known(bank, array).or_else(|| known(middle(bank), array)).unwrap_or(0.0)
    });
    shown.collect()
}

/// What the picture shows.
fn view(study: &Study, words: Words) -> Shown {
    let system = study.sizing().system();
    let (map, units, fine) = (study.map(), study.units(), study.map().is_whole());
    let ends = |of: &dyn Fn(Size) -> f64| [of(map.size(0, 0)), of(map.size(SIDE - 1, SIDE - 1))];
    let charge = |size: Size| size.charge(system).0;
    let power = |size: Size| size.power(system).0;
    let bank = |own: &Bank, factor: f64| own.rated * factor;
    let banks = units.banks(&map.banks).into_iter().map(|own| {
        let charge = bank(&system.bank, own.factor);
        (charge.0, words.charge(AmpHours(charge.0), system.bank.nominal))
    });
    let arrays = units.arrays(&map.arrays).into_iter().map(|own| {
        let power = Size { bank: 1.0, array: own.factor }.power(system);
        (power.0, words.amount(Watts(power.0)))
    });
    let point = |mark: Mark, size: Size| (mark, charge(size), power(size));
    let suggested = study.suggested().found().filter(|own| *own != study.own());
    let mut marks = vec![point(Mark::Own, study.own())];
    marks.extend(suggested.map(|size| point(Mark::Suggested, size)));
    if fine {
        marks.extend(study.cheapest().map(|(size, _)| point(Mark::Cheapest, size)));
        marks.extend(study.lightest().map(|(size, _)| point(Mark::Lightest, size)));
    }
    Shown {
        chances: chances(study),
        fine,
        promised: study.question().promise.chance.ratio(),
        banks: Scale { ends: ends(&charge), whole: banks.collect() },
        arrays: Scale { ends: ends(&power), whole: arrays.collect() },
        marks,
    }
}
