//! Rows of a map that somebody else works out meanwhile, and what a study needs of memory.

use core::ops::Range;

use sunlarder_engine::sizing::lanes::{Counting, HoursOfDay, MONTHS};
use sunlarder_engine::sizing::map::SIDE;
use sunlarder_engine::sizing::{Counts, Course, Map, Promise, Rows, Store, Track};
use sunlarder_engine::sky::DAYS_PER_YEAR;
use sunlarder_tests::lanes::sizing_of;

use crate::{FEW_YEARS, MAP_YEARS, example};

/// A hand that brings what it is asked for only after so many rows of this one, and is asked for two at the most.
struct Hand {
    here: Track,
    after: usize,
    rows_here: usize,
    asked: Vec<(usize, usize, usize, Vec<Counts>)>,
    brought: usize,
}

impl Rows for Hand {
    fn begin(&mut self, counting: Counting) {
        self.here.begin(counting);
    }

    fn add(&mut self, year: usize, days: Vec<HoursOfDay>) {
        self.here.add(year, days);
    }

    fn row(
        &mut self,
        stores: &[Store; MONTHS],
        arrays: &[f32],
        years: Range<usize>,
        counts: &mut [Counts],
    ) {
        self.rows_here += 1;
        self.here.row(stores, arrays, years, counts);
    }

    fn ahead(
        &mut self,
        number: usize,
        stores: &[Store; MONTHS],
        arrays: &[f32],
        years: Range<usize>,
    ) -> bool {
        if self.asked.len() > 1 {
            return false;
        }
        let mut counts = vec![Counts::default(); arrays.len() * years.len()];
        let first = years.start;
        self.here.row(stores, arrays, years, &mut counts);
        self.asked.push((self.rows_here, number, first, counts));
        true
    }

    fn taken(&mut self) -> Option<(usize, usize, Vec<Counts>)> {
        let (since, ..) = self.asked.first()?;
        if self.rows_here < since.saturating_add(self.after) {
            return None;
        }
        self.brought += 1;
        let (_, number, first, counts) = self.asked.remove(0);
        Some((number, first, counts))
    }
}

/// The map is the same whether a second hand is quick, slow or never brings anything, and a quick one does a good part of it.
#[test]
fn a_map_is_the_same_with_a_second_hand() {
    let sizing = sizing_of(&example("camper"), FEW_YEARS).unwrap();
    let promise = Promise::default();
    let whole = |rows: &mut dyn Rows| {
        let mut map = Map::new(&sizing, &promise);
        let mut done = 0.0;
        while map.advance(&sizing, rows) {
            assert!(map.done() >= done, "{} after {done}", map.done());
            done = map.done();
        }
        let cells = (0..SIDE).flat_map(|bank| (0..SIDE).map(move |array| (bank, array)));
        let cells: Vec<_> =
            cells.map(|(bank, array)| map.counts(bank, array).unwrap().to_vec()).collect();
        assert!(cells.iter().all(|cell| cell.len() == FEW_YEARS));
        cells
    };
    let alone = whole(&mut Track::default());
    for (after, brings) in [(1, 8..=SIDE), (4, 2..=SIDE), (usize::MAX, 0..=0)] {
        let here = Track::default();
        let mut hand = Hand { here, after, rows_here: 0, asked: Vec::new(), brought: 0 };
        assert!(whole(&mut hand) == alone, "{after}");
        assert!(brings.contains(&hand.brought), "{after}: {}", hand.brought);
    }
}

/// All that a study holds: its cells, and the hours that its rows are taken through.
#[test]
fn a_study_stays_under_64_megabytes() {
    let sizing = sizing_of(&example("boat"), MAP_YEARS).unwrap();
    let track = sizing.track(&Course::of(&sizing, &Promise::default()));
    let hours = track.days().count() * size_of::<HoursOfDay>();
    let cells = SIDE * SIDE * MAP_YEARS * size_of::<Counts>();
    // Weather of the plan and of one changed plan beside it: a clearness and a warmth for every day.
    let weather = 2 * MAP_YEARS * DAYS_PER_YEAR * 2 * size_of::<f64>();
    let all = hours + cells + weather;
    println!("{hours} + {cells} + {weather} bytes");
    assert!(track.days().count() == MAP_YEARS * DAYS_PER_YEAR && all < 64_000_000, "{all}");
}
