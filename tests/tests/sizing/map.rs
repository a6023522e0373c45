//! The map against the full simulation and against its reference, and its shape.

use sunlarder_engine::document::Months;
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::SpreadGrid;
use sunlarder_engine::quantity::Amps;
use sunlarder_engine::simulate::Extent;
use sunlarder_engine::sizing::lanes::Lanes;
use sunlarder_engine::sizing::map::SIDE;
use sunlarder_engine::sizing::promise::error;
use sunlarder_engine::sizing::{Counts, Course, Kind, Map, Promise, Rows, Size, Sizing, Track};
use sunlarder_tests::lanes::{by_numpy, hours_of, sizing_of};
use sunlarder_tests::plans::{EXAMPLES, openable};

use crate::{MAP_YEARS, YEARS, example};

/// Weather years through which growing sizes go.
const GROWN_YEARS: usize = 4;
/// Cells of a row.
const CELLS: usize = 8;

fn promises() -> [Promise; 4] {
    let of = |kind| Promise { kind, ..Promise::default() };
    [
        of(Kind::Through),
        of(Kind::ShortDays { most: 20 }),
        of(Kind::WithoutSun { days: 3 }),
        of(Kind::Trip { days: 7 }),
    ]
}

/// One bank beside arrays through the whole of a course: what happened in each of its years.
fn row_of(
    sizing: &Sizing,
    track: &mut Track,
    years: usize,
    bank: f64,
    arrays: &[f32],
) -> Vec<Vec<Counts>> {
    let mut counts = vec![Counts::default(); arrays.len() * years];
    track.row(&sizing.stores(bank), arrays, 0..years, &mut counts);
    counts.chunks(years).map(<[Counts]>::to_vec).collect()
}

/// How far the map is from the one step at some cells: chances at the worst, and the mean of what is short.
fn apart(sizing: &Sizing, promise: &Promise) -> (f64, f64) {
    let course = Course::of(sizing, promise);
    let mut track = sizing.track(&course);
    let [banks, arrays] = sizing.axes(promise);
    let arrays: [f64; CELLS] = core::array::from_fn(|place| arrays.sizes()[1 + 3 * place]);
    let (mut worst, mut sum, mut count) = (0.0_f64, 0.0, 0.0);
    for bank in [banks.sizes()[4], banks.sizes()[12], banks.sizes()[20]] {
        let sizes = arrays.map(|array| array as f32);
        let row = row_of(sizing, &mut track, course.years(), bank, &sizes);
        for (counts, array) in row.iter().zip(arrays) {
            let full = sizing.proved(&course, Size { bank, array }, Amps(0.0));
            let chance = |counts: &[_]| promise.chance_of(counts, &course.trials);
            let short = |counts: &[_]| promise.shortage_of(counts, &course.trials);
            worst = worst.max((chance(counts) - chance(&full)).abs());
            sum += short(counts) - short(&full);
            count += 1.0;
        }
    }
    (worst, sum / count)
}

/// The stated difference of the model: in the chance of no cell more than one year of those that are counted, or 3 % of the trials; in the
/// mean over the cells one short day a year, or 1 % of the trials. It is checked for every plan without a generator.
#[test]
fn the_map_says_what_the_full_simulation_says() {
    for (name, plan) in EXAMPLES.map(|(name, _)| (name, example(name))) {
        let sizing = sizing_of(&plan, YEARS).unwrap();
        for promise in promises() {
            let (worst, mean) = apart(&sizing, &promise);
            println!("{name} {:?}: {worst:.3} {mean:+.3}", promise.kind);
            let (chance, short) = match promise.kind {
                Kind::Through => (1.0 / YEARS as f64 + 1e-9, 1.0),
                // Ten years drawn from eight multiply what differs in one.
                Kind::ShortDays { .. } => (0.25, 1.0),
                Kind::WithoutSun { .. } | Kind::Trip { .. } => (0.03, 0.01),
            };
            assert!(worst <= chance && mean.abs() <= short, "{name} {promise:?}: {worst} {mean}");
        }
    }
}

/// A year in which a promise is broken beside every array is left early: every chance is the one that counting it all gives.
#[test]
fn years_that_are_lost_early_change_no_chance() {
    let winter = Months(1 << 11 | 1);
    let [through, few, ..] = promises();
    let promises = [through, Promise { season: winter, ..through }, few];
    let mut spared = 0;
    for (name, promise) in
        ["camper", "cabin"].iter().flat_map(|name| promises.map(|own| (name, own)))
    {
        let sizing = sizing_of(&example(name), GROWN_YEARS).unwrap();
        let (mut map, mut rows) = (Map::new(&sizing, &promise), Track::default());
        while map.advance(&sizing, &mut rows) {}
        let course = map.course();
        let mut track = sizing.track(course);
        let arrays = map.arrays.sizes().map(|size| size as f32);
        for (bank, size) in map.banks.sizes().iter().enumerate() {
            let all = row_of(&sizing, &mut track, GROWN_YEARS, *size, &arrays);
            for (array, all) in all.iter().enumerate() {
                let chance = promise.chance_of(all, &course.trials);
                assert_eq!(map.chance(&promise, bank, array), Some(chance), "{name} {promise:?}");
                spared += usize::from(map.counts(bank, array).is_some_and(|own| own != all));
            }
        }
    }
    assert!(spared > 1000, "{spared} cells were left early");
}

/// Twenty years against the four hundred of an ensemble, which has forty climates and begins no year anew: month by month within three and
/// a half standard errors of both.
#[test]
fn chances_are_those_of_the_ensemble_within_their_error() {
    let mut compared = 0;
    for (name, _) in EXAMPLES {
        let sizing = sizing_of(&example(name), MAP_YEARS).unwrap();
        let system = sizing.system();
        let spread = SpreadGrid::embedded().at(system.site);
        let extent = Extent { runs: 0, ..Extent::default() };
        let mut ensemble = Outlook::of(system).ensemble(system, &spread, extent);
        while ensemble.advance() {}
        let shares = ensemble.chances().months_share;
        let course = Course::of(&sizing, &Promise::default());
        let counts = sizing.proved(&course, Size::OWN, Amps(0.0));
        for (month, share) in shares.into_iter().enumerate() {
            let promise = Promise { season: Months(1 << month), ..Promise::default() };
            let chance = promise.chance_of(&counts, &course.trials);
            let spread = error(share, MAP_YEARS).hypot(error(share, 40));
            assert!((chance - share).abs() <= 3.5 * spread, "{name} {month}: {chance} {share}");
            compared += usize::from(share > 0.02 && share < 0.98);
        }
    }
    assert!(compared >= 20, "{compared} months that are neither sure nor hopeless");
}

/// A generator is told apart by the hour, not by the quarter-hour, and has no shortest run: the mean over the cells stays within two
/// short days a year.
#[test]
fn beside_a_generator_the_map_is_a_little_less_exact() {
    let (_, plan) =
        openable().unwrap().into_iter().find(|own| own.0 == "v1/hut_by_a_stream").unwrap();
    let sizing = sizing_of(&plan, 4).unwrap();
    assert!(sizing.system().generator.is_some());
    let (worst, mean) = apart(&sizing, &Promise::default());
    println!("{worst:.3} {mean:+.3}");
    assert!(mean.abs() < 2.0, "{mean}");
}

#[test]
fn lanes_are_those_of_the_reference() {
    for name in ["camper", "boat"] {
        let sizing = sizing_of(&example(name), 1).unwrap();
        let store = sizing.stores(0.7)[0];
        let hours = hours_of(&sizing, &Promise::default(), 500);
        let arrays = [0.0, 0.5, 1.0, 2.0, 4.0, 8.0, 16.0, 32.0];
        let mut lanes = Lanes::full(arrays, &store);
        for hour in &hours {
            lanes.pass(&store, hour);
        }
        let Some(reference) = by_numpy(&store, &arrays, &hours) else {
            println!("there is no Python with NumPy here");
            return;
        };
        for at in 0..arrays.len() {
            let apart = (lanes.charge[at] - reference.charge[at]).abs();
            assert!(apart < 1e-4, "{name} {at}: {} {}", lanes.charge[at], reference.charge[at]);
            assert!((lanes.margin[at] - reference.margin[at]).abs() < 1e-4, "{name} {at}");
        }
        assert!(lanes.charge[0] < 0.2 && lanes.charge[7] > 0.5, "{lanes:?}");
    }
}

/// Years that are kept, and short days of all years, beside each array of a row.
fn row(sizing: &Sizing, track: &mut Track, bank: f64, arrays: [f32; SIDE]) -> Vec<(usize, u32)> {
    let short = |year: &[u8; 12]| year.iter().map(|own| u32::from(*own)).sum::<u32>();
    let told = |years: &Vec<[u8; 12]>| {
        let kept = years.iter().filter(|year| short(year) == 0).count();
        (kept, years.iter().map(short).sum())
    };
    row_of(sizing, track, GROWN_YEARS, bank, &arrays).iter().map(told).collect()
}

/// More array never makes a day short. More bank loses more by standing and by its protection, and that alone can cost a year: one at the most
/// in any cell, in at most one cell of a hundred. (Short days are another matter: a larger bank that has been emptied takes longer to
/// rise to its reserve.)
#[test]
fn more_array_never_lowers_the_chance_and_more_bank_by_what_it_loses() {
    let (mut cells, mut lowered) = (0, 0);
    for (name, plan) in EXAMPLES.map(|(name, _)| (name, example(name))) {
        let sizing = sizing_of(&plan, GROWN_YEARS).unwrap();
        let promise = Promise::default();
        let mut track = sizing.track(&Course::of(&sizing, &promise));
        let [banks, arrays] = sizing.axes(&promise);
        let arrays = arrays.sizes().map(|size| size as f32);
        let sizes = banks.sizes().iter().step_by(2);
        let rows: Vec<_> = sizes.map(|bank| row(&sizing, &mut track, *bank, arrays)).collect();
        for row in &rows {
            assert!(row.windows(2).all(|pair| pair[1].0 >= pair[0].0), "{name}: {row:?}");
            assert!(row.windows(2).all(|pair| pair[1].1 <= pair[0].1), "{name}: {row:?}");
        }
        for pair in rows.windows(2) {
            for (small, large) in pair[0].iter().zip(&pair[1]) {
                assert!(large.0 + 1 >= small.0, "{name}: {small:?} {large:?}");
                lowered += usize::from(large.0 < small.0);
                cells += 1;
            }
        }
        let (first, last) = (&rows[0], &rows[rows.len() - 1]);
        assert!(first[0].1 > last[SIDE - 1].1, "{name}: the map shows nothing");
    }
    println!("{lowered} of {cells}");
    assert!(lowered * 100 <= cells, "{lowered} of {cells}");
}
