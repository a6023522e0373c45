//! The map against the full simulation, its shape, its reference, and whether what it suggests holds.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test stops at what it cannot read and prints what it measured"
)]

use sunlarder_engine::document::{
    Array, Awake, Bank, Controller, ControllerKind, Document, Inverter, Load, Months, Rating,
    Schedule, Span, Supply, When,
};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::quantity::{Amps, Percent};
use sunlarder_engine::simulate::Extent;
use sunlarder_engine::sizing::lanes::{HoursOfDay, Lanes};
use sunlarder_engine::sizing::map::SIDE;
use sunlarder_engine::sizing::promise::error;
use sunlarder_engine::sizing::{
    Arrival, Change, Counts, Course, Helped, Kind, Promise, Question, Rates, Rows, Size, Sizing,
    Study, Track, help, voltages,
};
use sunlarder_engine::sky::DAYS_PER_YEAR;
use sunlarder_engine::system::System;
use sunlarder_tests::lanes::{by_numpy, hours_of, sizing_of};
use sunlarder_tests::plans::{EXAMPLES, openable};

/// Weather years of these tests.
const YEARS: usize = 8;
/// Weather years where whole maps are worked out: a test without vectors takes its time.
const FEW_YEARS: usize = 3;
/// Weather years of a map.
const MAP_YEARS: usize = sunlarder_engine::sizing::YEARS;
/// Weather years through which growing sizes go.
const GROWN_YEARS: usize = 4;
/// Cells of a row.
const CELLS: usize = 8;

fn example(name: &str) -> Document {
    let text = EXAMPLES.iter().find(|own| own.0 == name).unwrap().1;
    Document::from_json(text).unwrap()
}

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

/// A study of a plan, gone through to its end; what is done never goes back, and the coarse map comes before the fine one.
fn studied(plan: &Document, question: Question, years: usize) -> Study {
    let system = System::assemble(plan, Climate::embedded(), &mut ()).unwrap();
    let spread = SpreadGrid::embedded().at(system.site);
    let outlook = Outlook::of(&system);
    let mut study = Study::over(plan, &system, &outlook, &spread, question, years).unwrap();
    let mut rows = Track::default();
    let (mut done, mut coarse) = (0.0, false);
    while study.advance(&mut rows) {
        assert!(study.done() >= done, "{} after {done}", study.done());
        done = study.done();
        if study.map().is_coarse() && !coarse {
            coarse = true;
            let map = study.map();
            let known = |bank| (0..SIDE).filter(|array| map.counts(bank, *array).is_some()).count();
            assert_eq!((known(0), known(1)), (0, SIDE));
        }
    }
    assert!(coarse && done == 1.0 && !study.advance(&mut rows));
    study
}

#[test]
fn the_frontier_is_a_frontier_and_what_is_suggested_holds() {
    let mut suggested = 0;
    for (name, _) in EXAMPLES {
        let plan = example(name);
        let promise = Promise::default();
        let study = studied(&plan, Question { promise, ..Question::default() }, FEW_YEARS);
        let map = study.map();
        let kept = |bank, array| promise.is_kept_by(map.chance(&promise, bank, array).unwrap());
        let frontier = study.frontier();
        assert!(!frontier.is_empty(), "{name}");
        assert!(frontier.windows(2).all(|pair| pair[0].0 < pair[1].0 && pair[0].1 > pair[1].1));
        for (bank, array) in frontier.iter().copied() {
            assert!(kept(bank, array), "{name}");
            assert!((0..array).all(|smaller| !kept(bank, smaller)), "{name}");
            assert!((0..bank).all(|smaller| !kept(smaller, array)), "{name}");
        }
        let cheap = |bank_ah, array_w| {
            map.least_by(study.sizing(), &promise, Rates { bank_ah, array_w }).unwrap().0
        };
        let (first, last) = (frontier[0], frontier[frontier.len() - 1]);
        assert_eq!(cheap(1.0, 0.0), map.size(first.0, first.1), "{name}");
        assert_eq!(cheap(0.0, 1.0), map.size(last.0, last.1), "{name}");
        let size = study.suggested().found().unwrap();
        assert!(size.bank >= 1.0 && size.array >= 1.0, "{name}: {size:?}");
        let whole = study.units().raised(size);
        assert!((whole.array - size.array).abs() < 1e-9 && whole.bank == size.bank, "{name}");
        let adopted = size.adopted(&plan);
        assert!(adopted.clone().checked().is_ok(), "{name}");
        let again = sizing_of(&adopted, FEW_YEARS).unwrap();
        let course = Course::of(&again, &promise);
        let chance = again.chance(&course, &promise, Size::OWN, Amps(0.0));
        assert!(promise.is_kept_by(chance), "{name}: {size:?} {chance}");
        suggested += usize::from(size != Size::OWN);
    }
    assert!(suggested >= 4, "{suggested}");
}

#[test]
fn answers_keep_and_a_little_less_does_not() {
    let promise = Promise { chance: Percent(75.0), ..Promise::default() };
    let question = Question { promise, ..Question::default() };
    let check = |plan: &Document| {
        let study = studied(plan, question, FEW_YEARS);
        let (sizing, course) = (study.sizing(), study.map().course());
        let kept = |size, more| promise.is_kept_by(sizing.chance(course, &promise, size, more));
        let (bank, array) = (study.smallest_bank().found(), study.smallest_array().found());
        for (size, less) in [
            bank.map(|own| (own, Size { bank: own.bank * 0.98, ..own })),
            array.map(|own| (own, Size { array: own.array * 0.98, ..own })),
        ]
        .into_iter()
        .flatten()
        {
            assert!(kept(size, Amps(0.0)) && !kept(less, Amps(0.0)), "{size:?}");
        }
        assert!(bank.is_some() && array.is_some());
        let more = |hours: u32| sizing.charger() * (f64::from(hours) / 168.0);
        let hours = study.charger_hours().found();
        if let Some(hours) = hours {
            assert!(kept(Size::OWN, more(hours)) && !kept(Size::OWN, more(hours - 1)), "{hours}");
        }
        (study.standing().unwrap().kept, hours)
    };
    assert_eq!(check(&Size { bank: 4.0, array: 4.0 }.adopted(&example("hut"))), (true, None));
    let (kept, hours) = check(&Size { bank: 0.5, array: 0.5 }.adopted(&example("hut")));
    assert!(!kept && hours.is_some_and(|hours| hours > 1), "{hours:?}");
}

#[test]
fn a_season_that_counts_less_asks_less() {
    let sizing = sizing_of(&example("boat"), YEARS).unwrap();
    let all = Promise::default();
    let summer = Promise { season: Months(0b0000_1111_0000), ..all };
    let course = Course::of(&sizing, &all);
    let counts = sizing.proved(&course, Size::OWN, Amps(0.0));
    let chance = |promise: &Promise| promise.chance_of(&counts, &course.trials);
    assert!(chance(&summer) > chance(&all), "{} {}", chance(&summer), chance(&all));
    assert_eq!(sizing.tightest(&all), 11);
    assert!(sizing.tightest(&summer) < 8);
}

#[test]
fn a_higher_system_voltage_halves_the_currents() {
    for name in ["camper", "cabin", "classroom"] {
        let sizing = sizing_of(&example(name), 1).unwrap();
        let all = voltages(sizing.system());
        assert_eq!(all.iter().filter(|own| own.own).count(), 1, "{name}");
        for pair in all.windows(2) {
            assert!((pair[0].loads / pair[1].loads - 2.0).abs() < 1e-9, "{name}");
            assert!((pair[0].arrays / pair[1].arrays - 2.0).abs() < 1e-9, "{name}");
        }
        let own = all.iter().find(|own| own.own).unwrap();
        assert!((own.nominal - sizing.system().bank.nominal).0.abs() < 1e-9);
    }
}

/// On the equator, with figures of one's own: five peak sun hours on every day of the year.
fn plan(loads: Vec<Load>, bank_ah: f64, module_w: f64) -> Document {
    let mut plan = Document {
        loads,
        bank: Bank { capacity_ah: bank_ah, protection_ma: Some(0.0), ..Bank::default() },
        arrays: vec![Array { module_w, ..Array::default() }],
        ..Document::default()
    };
    plan.place.peak_sun_h = Some([5.0; 12]);
    plan.place.temperature_c = Some([25.0; 12]);
    plan
}

fn load(power: f64, when: When) -> Load {
    Load { rating: Rating::PowerW(power), schedule: Schedule::daily(when), ..Load::default() }
}

/// What helps a plan, the most helpful first.
fn helped(plan: &Document) -> Vec<Helped> {
    studied(plan, Question::default(), 2).helped()
}

/// 15 W round the clock are 360 Wh a day. 100 W of modules bring some 100 · 5 · 0.8 = 400 Wh before dull weeks and the doubt about the
/// climate, twice as many 800 Wh. A second battery of 100 Ah changes nothing in the long run; two of 24 hours less are 330 Wh.
#[test]
fn where_little_comes_in_another_module_helps_most() {
    let ranked = helped(&plan(vec![load(15.0, When::Always)], 100.0, 100.0));
    assert_eq!(ranked[0].change, Change::MoreArray { array: 0 }, "{ranked:?}");
}

/// Five loads of 20 W from six to eleven in the evening are 500 Wh, from 40 Ah · 12.8 V = 512 Wh of which a fifth is kept back:
/// every night is short by some 90 Wh. Two hours less of one load are 40 Wh; another battery is 410 Wh; more sun by day is of no use.
#[test]
fn where_nights_are_long_another_battery_helps_most() {
    let evening = || When::Spans(vec![Span { from_min: 18 * 60, to_min: 23 * 60 }]);
    let loads = (0..5).map(|_| load(20.0, evening())).collect();
    let ranked = helped(&plan(loads, 40.0, 400.0));
    assert_eq!(ranked[0].change, Change::MoreBank, "{ranked:?}");
    assert!(ranked.iter().all(|own| own.change != Change::MoreArray { array: 0 }), "{ranked:?}");
}

/// An inverter that idles at 15 W for one lamp of 5 W on alternating current takes 20 W of 24 hours, 480 Wh, where the lamp alone takes 120 Wh.
/// 100 W of modules bring 400 Wh at the best; with another string 800 Wh would do, and so would the lamp on direct current, which leaves
/// 280 Wh to spare where the string leaves 320. So the modules are 70 W: 280 Wh, or 560 Wh with another string, which dull weeks undo.
#[test]
fn where_an_inverter_idles_for_one_lamp_direct_current_helps_most() {
    let lamp = Load { supply: Supply::Ac, ..load(5.0, When::Always) };
    let inverter = Inverter { idle_w: Some(15.0), awake: Awake::WithLoads, ..Inverter::default() };
    let own = Document { inverter: Some(inverter), ..plan(vec![lamp], 60.0, 70.0) };
    let ranked = helped(&own);
    assert_eq!(ranked[0].change, Change::Direct { load: 0 }, "{ranked:?}");
}

/// What a life may depend on is not to be used less, and a change that changes nothing is none.
#[test]
fn only_what_is_sensible_is_tried() {
    let vital = Load { vital: true, ..load(5.0, When::Always) };
    let controller = Controller { kind: ControllerKind::Pwm, ..Array::default().controller };
    let mut own = plan(vec![vital, load(5.0, When::HoursPerDay(1.0))], 60.0, 70.0);
    own.arrays[0].controller = controller;
    let sizing = sizing_of(&own, 1).unwrap();
    let changes = help::changes(&own, &sizing, &Promise::default());
    let has = |wanted: &dyn Fn(&Change) -> bool| changes.iter().any(wanted);
    assert!(!has(&|change| matches!(change, Change::LessUse { load: 0, .. })));
    assert!(has(&|change| matches!(change, Change::LessUse { load: 1, .. })));
    assert!(!has(&|change| matches!(change, Change::Direct { .. } | Change::LongerEngine { .. })));
    assert!(
        has(&|change| *change == Change::Tracking) && !has(&|c| matches!(c, Change::Warmer { .. }))
    );
}

/// 80 Ah of 100 Ah at 12.8 V are some 1 kWh to be filled; 400 W of modules bring 5 h · 400 W · 0.8 = 1.6 kWh on a whole day and half of it from
/// noon on. So whoever arrives in the morning is full the same evening, whoever arrives later the next. 20 W of modules never do it.
#[test]
fn who_arrives_early_leaves_full() {
    let arrival = |module_w| {
        let sizing = sizing_of(&plan(vec![load(5.0, When::Always)], 100.0, module_w), 1).unwrap();
        sizing.arrival()
    };
    let bright = arrival(400.0);
    assert!(bright.latest[0].is_some_and(|hour| (8..=12).contains(&hour)), "{bright:?}");
    assert_eq!(bright.latest[1], Some(Arrival::WHENEVER), "{bright:?}");
    assert_eq!(bright.shortest(), Some(1));
    assert_eq!(arrival(20.0).latest, [None; 3]);
}

/// A trip in the cabin's darkest month has a better time, a smaller reserve helps its chance and a greater one does not, and two changes
/// are tried together only where none alone is enough.
#[test]
fn other_months_and_pairs_are_tried_where_they_matter() {
    let december = Months(1 << 11);
    let promise = Promise { kind: Kind::Trip { days: 7 }, season: december, ..Promise::default() };
    let mut paired = 0;
    for name in ["boat", "cabin", "hut"] {
        let study = studied(&example(name), Question { promise, ..Question::default() }, FEW_YEARS);
        let helped = study.helped();
        let short = study.standing().unwrap().shortage;
        let alone = helped.iter().any(|own| own.kept && own.with.is_none());
        let pairs = helped.iter().filter(|own| own.with.is_some()).count();
        assert!(pairs == 0 || !alone, "{name}: {helped:?}");
        paired += pairs;
        assert!(helped.iter().all(|own| own.shortage < short), "{name}");
        let kept = helped.iter().map(|own| own.kept);
        assert!(kept.is_sorted_by(|one, next| one >= next), "{name}: {helped:?}");
        if short > 0.0 {
            let season = helped.iter().find_map(|own| match own.change {
                Change::OtherMonths { season } => Some(season),
                _ => None,
            });
            assert!(season.is_some_and(|season| season != december), "{name}: {helped:?}");
        }
        let chance = |to: &dyn Fn(f64) -> bool| {
            study.reserves().find_map(|own| match own.change {
                Change::Reserve { to: at } if to(at.0) => Some(own.chance),
                _ => None,
            })
        };
        let own = example(name).bank.reserve_pct;
        let (less, more) = (chance(&|to| to < own), chance(&|to| to > own));
        let now = study.standing().unwrap().chance;
        assert!(less.is_none_or(|less| less >= now) && more.is_some_and(|more| more <= now));
    }
    println!("{paired} pairs");
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
