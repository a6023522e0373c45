//! Many runs through weather that might be: how full, how likely, how often.
//!
//! **Question answered.** From this start, when is the reserve reached, and in what weather? And over decades: in how many
//! Decembers, for how many hours a year, after how long a dull spell?
//!
//! **Method.** The one step of this engine, hour by hour (beside a generator by quarter-hours), through synthetic weather ([`Weather`]). *Runs* start as the plan does
//! and go on for a month, each in a climate of its own that might be the true one. *Blocks* are ten years in a row, each again in a
//! climate of its own. What is said of the blocks is their middle and the range that holds eight of ten of them: the
//! doubt about the climate is most of it. An ensemble moves on in small tasks, so that whoever runs it can stop at any time and show
//! what there is so far.
//!
//! **Left out.** What [`Acting`] leaves out; a bank that changes its capacity with the month keeps its state of charge; wear.

use chrono::Datelike;

use super::acting::{Acting, HOURS};
use super::chances::{Chances, GeneratorYears, Range};
use super::flows::Forcing;
use super::prepared::{Prepared, State};
use crate::bank::Ageing;
use crate::quantity::{AmpHours, Celsius, Hours, WattHours, Within};
use crate::sky::{DAYS_PER_YEAR, Replica, Trust, Weather, WeatherSpec, Year, month_of_day};
use crate::system::System;

/// Length of a step.
const HOUR: Hours = Hours(1.0);
/// Years of a block.
pub const BLOCK_YEARS: usize = 10;
/// Days at the end of a year before the first counted one, so that no block starts full by decree.
pub const SETTLING_DAYS: usize = 92;
/// Days of a run.
pub const RUN_DAYS: usize = 31;
/// Runs worked out in one task.
const RUNS_PER_TASK: u32 = 20;
/// A day is dull if the sun brings less than this share of what is used in it.
const DULL: f64 = 0.5;

/// How much is to be worked out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Extent {
    /// Runs from the start of the plan.
    pub runs: u32,
    /// Blocks of ten years.
    pub blocks: u32,
}

impl Default for Extent {
    /// 200 runs, and 40 blocks: 400 years, where a chance of a per cent is known to a few tenths of it.
    fn default() -> Self {
        Self { runs: 200, blocks: 40 }
    }
}

/// What a block of ten years came to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Block {
    /// Years in which each month went under the reserve.
    months_low: [u16; 12],
    /// Hours a year under the reserve, and with a load that wanted more than it got.
    low_hours: f64,
    short_hours: f64,
    /// Charge that the loads went without, of what they wanted.
    unserved: f64,
    /// Longest row of dull days.
    dull_days: f64,
    /// Most days between two at full.
    days_without_full: f64,
    /// Of the generator, a year.
    generator_time: Hours,
    generator_energy: WattHours,
    /// How the bank ages if every year is like its last one.
    ageing: Option<Ageing>,
}

/// An ensemble in the making.
#[derive(Debug)]
pub struct Ensemble {
    acting: Acting,
    weather: Weather,
    /// Charge between full and empty in each month.
    full: [AmpHours; 12],
    /// Charge used in a day by month, for what counts as dull.
    need: [f64; 12],
    reserve: f64,
    extent: Extent,
    paths: Vec<Vec<f32>>,
    reached: Vec<f64>,
    blocks: Vec<Block>,
}

/// How the bank is going through hours.
struct Course {
    state: State,
    wanted: f64,
    unserved: f64,
    low_hours: f64,
    short_hours: f64,
    generator_time: Hours,
    generator_energy: WattHours,
}

/// What an hour showed.
#[derive(Clone, Copy, Debug, Default)]
struct Hour {
    /// Whether charging ended in it.
    filled: bool,
    /// Where the bank failed its loads: the share of the hour that it carried them.
    carried: Option<f64>,
}

impl Ensemble {
    /// Makes an ensemble ready: `full` is what the bank holds in each month.
    ///
    /// `spread` is the standard deviation of the daily clearness in each month. The same seed gives the same weather.
    #[must_use]
    pub fn new(
        system: &System,
        full: [AmpHours; 12],
        spread: &[f64; 12],
        extent: Extent,
        seed: u64,
    ) -> Self {
        let acting = Acting::new(system);
        let spec = WeatherSpec::of_place(&system.climate, spread);
        Self {
            need: core::array::from_fn(|month| acting.mean_need(month)),
            acting,
            weather: Weather::new(spec, seed),
            full,
            reserve: system.bank.reserve.ratio(),
            extent,
            paths: Vec::new(),
            reached: Vec::new(),
            blocks: Vec::new(),
        }
    }

    /// How far the climate is known.
    #[must_use]
    pub fn trust(&self) -> Trust {
        self.weather.spec().trust
    }

    /// Runs and blocks that are worked out.
    #[must_use]
    pub fn made(&self) -> [u32; 2] {
        [self.paths.len() as u32, self.blocks.len() as u32]
    }

    /// What is done of all there is to do (ratio).
    #[must_use]
    pub fn done(&self) -> f64 {
        let tasks = self.extent.runs.div_ceil(RUNS_PER_TASK) + self.extent.blocks;
        let made = (self.paths.len() as u32).div_ceil(RUNS_PER_TASK) + self.blocks.len() as u32;
        if tasks == 0 { 1.0 } else { f64::from(made) / f64::from(tasks) }
    }

    /// Works out the next task; whether there was one.
    pub fn advance(&mut self) -> bool {
        let made = self.paths.len() as u32;
        if made < self.extent.runs {
            for number in made..(made + RUNS_PER_TASK).min(self.extent.runs) {
                let (path, reached) = self.run(number);
                self.paths.push(path);
                self.reached.push(reached);
            }
            return true;
        }
        let number = self.blocks.len() as u32;
        if number < self.extent.blocks {
            // Other weather than that of the runs.
            let block = self.block(self.extent.runs + number);
            self.blocks.push(block);
            return true;
        }
        false
    }

    /// Steps of an hour: one, but four beside a generator, which in a whole hour would run far past where it stops.
    fn parts(&self) -> u32 {
        if self.acting.system.generator.is_some() { 4 } else { 1 }
    }

    /// The bank beside its generator, holding so much between full and empty.
    fn bank(&self, full: AmpHours) -> Prepared<'_> {
        let system = &self.acting.system;
        Prepared::new(&system.bank, full, HOUR / f64::from(self.parts()))
            .with_generator(system.generator.as_ref())
    }

    /// The bank as it is in each month.
    fn banks(&self) -> [Prepared<'_>; 12] {
        self.full.map(|full| self.bank(full))
    }

    /// One hour. Loads that the bank fails count as under the reserve, wherever its state of charge stands.
    #[inline]
    fn hour(&self, course: &mut Course, bank: &Prepared<'_>, acting: &Forcing) -> Hour {
        let parts = self.parts();
        let share = 1.0 / f64::from(parts);
        let mut hour = Hour::default();
        for part in 0..parts {
            let after = bank.step(course.state, acting, &mut ());
            course.state = after.state;
            course.wanted += (after.flows.load + after.flows.unmet).0;
            course.unserved += after.flows.unmet.0;
            course.short_hours += if after.flows.unmet.0 > 0.0 { share } else { 0.0 };
            course.generator_time += after.flows.generator_time;
            course.generator_energy += after.volts * after.flows.generator;
            let low = after.state.charge < self.reserve || after.carried.is_some();
            course.low_hours += if low { share } else { 0.0 };
            hour.filled |= after.filled;
            let failed = after.carried.map(|carried| (f64::from(part) + carried) * share);
            hour.carried = hour.carried.or(failed);
        }
        hour
    }

    /// One run from the start of the plan: its path hour by hour \[%\], and when it reached the reserve \[h\].
    fn run(&self, number: u32) -> (Vec<f32>, f64) {
        let start = self.acting.system.start;
        let mut weather = self.weather.replica(number);
        let mut year = weather.next_year();
        let first = (start.date.ordinal0() as usize).min(DAYS_PER_YEAR - 1);
        let weekday = start.date.weekday().num_days_from_monday() as usize;
        // Every step is a whole hour from the start on; it takes the clock hour in which its middle lies.
        let first_hour = (usize::from(start.minute) + 30) / 60;
        let bank = self.bank(self.full[start.date.month0() as usize]);
        let mut course = Course::at(bank.rested(start.charge));
        let mut path = Vec::with_capacity(RUN_DAYS * HOURS);
        let mut reached = f64::INFINITY;
        let mut acting = None;
        for step in 0..RUN_DAYS * HOURS {
            let (day, hour) = ((first_hour + step) / HOURS, (first_hour + step) % HOURS);
            if hour == 0 || acting.is_none() {
                let at = first + day;
                if at == DAYS_PER_YEAR {
                    year = weather.next_year();
                }
                acting = Some(self.acting.day(&year, at % DAYS_PER_YEAR, weekday + day));
            }
            let Some(acting) = &acting else { break };
            let before = course.state.charge;
            let after = self.hour(&mut course, &bank, &acting[hour]);
            let charge = course.state.charge;
            if reached.is_infinite() && charge <= self.reserve && charge < before {
                let part = ((before - self.reserve) / (before - charge)).within(0.0, 1.0);
                reached = step as f64 + part;
            }
            if let Some(carried) = after.carried {
                let failed = step as f64 + carried;
                reached = if failed < reached { failed } else { reached };
            }
            path.push((charge * 100.0) as f32);
        }
        (path, reached)
    }

    /// Ten years in one climate.
    fn block(&self, number: u32) -> Block {
        let mut weather = self.weather.replica(number);
        let banks = self.banks();
        let mut course = Course::at(banks[11].rested(1.0));
        let before = weather.next_year();
        for day in DAYS_PER_YEAR - SETTLING_DAYS..DAYS_PER_YEAR {
            let acting = self.acting.day(&before, day, day);
            for forcing in &acting {
                self.hour(&mut course, &banks[month_of_day(day)], forcing);
            }
        }
        let mut course = Course::at(course.state);
        let mut block = Block::default();
        let mut rows = Rows::default();
        for year in 0..BLOCK_YEARS {
            rows.last_year.clear();
            let low = self.year(&banks, &mut weather, year, &mut course, &mut rows);
            for (count, low) in block.months_low.iter_mut().zip(low) {
                *count += u16::from(low);
            }
        }
        let years = BLOCK_YEARS as f64;
        let (charges, warmth) = rows.last_year.into_iter().unzip::<_, _, Vec<_>, Vec<_>>();
        let stretch = HOUR * charges.len() as f64;
        Block {
            ageing: self.acting.system.bank.ageing(charges, warmth, stretch, &mut ()),
            low_hours: course.low_hours / years,
            short_hours: course.short_hours / years,
            unserved: if course.wanted > 0.0 { course.unserved / course.wanted } else { 0.0 },
            generator_time: course.generator_time / years,
            generator_energy: course.generator_energy / years,
            dull_days: rows.dull.longest,
            days_without_full: rows.unfilled.longest,
            ..block
        }
    }

    /// One year of a block; whether each month went under the reserve.
    fn year(
        &self,
        banks: &[Prepared<'_>; 12],
        weather: &mut Replica<'_>,
        number: usize,
        course: &mut Course,
        rows: &mut Rows,
    ) -> [bool; 12] {
        let year: Year = weather.next_year();
        let mut low = [false; 12];
        for day in 0..DAYS_PER_YEAR {
            let month = month_of_day(day);
            let acting = self.acting.day(&year, day, number * DAYS_PER_YEAR + day);
            let before = course.low_hours;
            let mut filled = false;
            for forcing in &acting {
                let after = self.hour(course, &banks[month], forcing);
                filled |= after.filled;
                rows.last_year.push((course.state.charge, forcing.temperature));
            }
            low[month] |= course.low_hours > before;
            rows.unfilled.add(!filled);
            rows.dull.add(self.acting.brought(&acting) < DULL * self.need[month]);
        }
        low
    }

    /// What is known so far.
    #[must_use]
    pub fn chances(&self) -> Chances {
        let blocks = &self.blocks;
        let over =
            |of: &dyn Fn(&Block) -> f64| Range::of(&mut blocks.iter().map(of).collect::<Vec<_>>());
        let years = BLOCK_YEARS as f64;
        let kept = |month: usize| over(&|block: &Block| years - f64::from(block.months_low[month]));
        let share = |month: usize| {
            let low: u32 = blocks.iter().map(|block| u32::from(block.months_low[month])).sum();
            1.0 - f64::from(low) / (years * f64::max(blocks.len() as f64, 1.0))
        };
        let span = (RUN_DAYS * HOURS) as f64;
        let mut times: Vec<f64> = self.reached.iter().map(|at| at.min(span)).collect();
        Chances {
            runs: self.paths.len() as u32,
            blocks: blocks.len() as u32,
            band: self.band(),
            reached: self.reached_by(),
            to_reserve: Range::of(&mut times),
            months_kept: core::array::from_fn(kept),
            months_share: core::array::from_fn(share),
            low_hours: over(&|block| block.low_hours),
            short_hours: over(&|block| block.short_hours),
            unserved: over(&|block| block.unserved),
            dull_days: (!self.acting.system.arrays.is_empty())
                .then(|| over(&|block| block.dull_days)),
            days_without_full: over(&|block| block.days_without_full),
            generator: self.generator_years(),
            ageing: self.middle_ageing(),
        }
    }

    fn generator_years(&self) -> Option<GeneratorYears> {
        let generator = self.acting.system.generator.as_ref()?;
        let burnt = |block: &Block| generator.fuel.of(block.generator_time, block.generator_energy);
        let fuel: Option<Vec<f64>> =
            self.blocks.iter().map(|block| burnt(block).map(|fuel| fuel.0)).collect();
        let mut hours: Vec<f64> = self.blocks.iter().map(|block| block.generator_time.0).collect();
        let fuel = fuel.filter(|fuel| !fuel.is_empty()).map(|mut fuel| Range::of(&mut fuel));
        Some(GeneratorYears { hours: Range::of(&mut hours), fuel })
    }

    fn middle_ageing(&self) -> Option<Ageing> {
        let mut all = self.blocks.iter().filter_map(|block| block.ageing);
        let mut years: Vec<f64> = all.clone().map(|ageing| ageing.years.0).collect();
        // Numbers alone, which are put in order elsewhere, too: each kind of thing to be sorted brings a sort of its own.
        years.sort_unstable_by(f64::total_cmp);
        let middle = *years.get(years.len() / 2)?;
        all.find(|ageing| ageing.years.0 == middle)
    }

    fn band(&self) -> Vec<Range> {
        let hours = self.paths.first().map_or(0, Vec::len);
        let mut column = Vec::with_capacity(self.paths.len());
        let range = |hour: usize| {
            column.clear();
            column.extend(
                self.paths.iter().filter_map(|path| path.get(hour)).map(|at| f64::from(*at)),
            );
            Range::of(&mut column)
        };
        (0..hours).map(range).collect()
    }

    fn reached_by(&self) -> Vec<f64> {
        let hours = self.paths.first().map_or(0, Vec::len);
        let by = |hour: usize| {
            let count = self.reached.iter().filter(|at| **at <= (hour + 1) as f64).count();
            count as f64 / self.reached.len() as f64
        };
        (0..hours).map(by).collect()
    }
}

impl Course {
    fn at(state: State) -> Self {
        Self {
            state,
            wanted: 0.0,
            unserved: 0.0,
            low_hours: 0.0,
            short_hours: 0.0,
            generator_time: Hours::ZERO,
            generator_energy: WattHours::ZERO,
        }
    }
}

/// Days in a row of which something holds.
#[derive(Clone, Copy, Debug, Default)]
struct Row {
    now: f64,
    longest: f64,
}

impl Row {
    fn add(&mut self, holds: bool) {
        self.now = if holds { self.now + 1.0 } else { 0.0 };
        self.longest = if self.now > self.longest { self.now } else { self.longest };
    }
}

/// The rows that are counted.
#[derive(Clone, Debug, Default)]
struct Rows {
    dull: Row,
    unfilled: Row,
    /// State of charge (ratio) and temperature of the bank, hour by hour.
    last_year: Vec<(f64, Celsius)>,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{self, Array, Bank, Document, Load, Rating, Schedule, When};
    use crate::outlook::Outlook;
    use crate::place::{Climate, SpreadGrid};

    const EXTENT: Extent = Extent { runs: 60, blocks: 6 };

    /// Amsterdam in November: so many watts round the clock, from so much battery and array.
    fn system(load_w: f64, capacity_ah: f64, module_w: f64) -> System {
        let load = Load {
            rating: Rating::PowerW(load_w),
            schedule: Schedule::daily(When::Always),
            ..Load::default()
        };
        let array = Array { module_w, ..Array::default() };
        let mut plan = Document {
            loads: vec![load],
            bank: Bank { capacity_ah, ..Bank::default() },
            arrays: if module_w > 0.0 { vec![array] } else { Vec::new() },
            ..Document::default()
        };
        plan.place.latitude_deg = 52.4;
        plan.place.longitude_deg = 4.9;
        plan.start.date = "2026-11-10".parse().unwrap();
        System::assemble(&plan, Climate::embedded(), &mut ()).unwrap()
    }

    fn chances(system: &System, extent: Extent, seed: u64) -> Chances {
        let outlook = Outlook::of(system);
        let full = core::array::from_fn(|month| outlook.months[month].full);
        let spread = SpreadGrid::embedded().at(system.site);
        let mut ensemble = Ensemble::new(system, full, &spread, extent, seed);
        let mut done = 0.0;
        while ensemble.advance() {
            assert!(ensemble.done() > done);
            done = ensemble.done();
        }
        assert_eq!(done, 1.0);
        ensemble.chances()
    }

    #[test]
    fn without_any_source_all_weather_is_alike() {
        let system = system(10.0, 100.0, 0.0);
        let chances = chances(&system, EXTENT, 1);
        let mean = Outlook::of(&system).run.reserve_at.unwrap();
        assert_eq!(chances.to_reserve.low, chances.to_reserve.high);
        // Hours against quarter-hours of the same discharge.
        assert!((chances.to_reserve.middle - mean.0).abs() < 0.5, "{chances:?} {mean:?}");
        assert_eq!(chances.dull_days, None);
        assert_eq!(chances.months_share, [0.0; 12]);
        assert!(chances.short_hours.low > 8000.0, "{:?}", chances.short_hours);
    }

    #[test]
    fn a_generator_stops_where_it_is_told_to_even_if_it_is_strong() {
        let without_full = |stop_pct: f64| {
            let mut system = system(10.0, 60.0, 0.0);
            let section = document::Generator {
                on: true,
                limit_a: 30.0,
                start_pct: 30.0,
                stop_pct,
                minimum_run_min: 0.0,
                ..document::Generator::default()
            };
            system.generator = crate::source::Generator::parse(&section).unwrap();
            chances(&system, Extent { runs: 0, blocks: 2 }, 1).days_without_full.middle
        };
        // Half the bank comes in an hour: stepped by hours, a stop at 60 % would reach the full.
        assert!(without_full(60.0) > 3000.0 && without_full(100.0) < 60.0);
    }

    #[test]
    fn a_generator_keeps_the_winter_up_and_burns_what_it_runs() {
        let mut without = system(10.0, 50.0, 60.0);
        assert!(chances(&without, EXTENT, 1).months_share[11] < 0.1);
        let section = document::Generator { fuel_l_per_h: Some(0.5), ..Default::default() };
        without.generator = crate::source::Generator::parse(&section).unwrap();
        let chances = chances(&without, EXTENT, 1);
        assert_eq!(chances.months_share, [1.0; 12]);
        let GeneratorYears { hours, fuel } = chances.generator.unwrap();
        assert!(hours.low > 50.0 && hours.high < 500.0 && hours.low < hours.high, "{hours:?}");
        assert!((fuel.unwrap().middle - 0.5 * hours.middle).abs() < 1e-9);
    }

    #[test]
    fn a_great_array_keeps_up_and_a_small_one_fails_in_winter() {
        let great = chances(&system(5.0, 200.0, 2000.0), EXTENT, 1);
        assert_eq!(great.months_share, [1.0; 12]);
        assert_eq!((great.unserved.high, great.low_hours.high), (0.0, 0.0));
        let small = chances(&system(5.0, 50.0, 60.0), EXTENT, 1);
        assert!(small.months_share[11] < 0.5 && small.months_share[6] > 0.8, "{small:?}");
        assert!(small.low_hours.low > 100.0 && small.dull_days.unwrap().middle > 5.0);
    }

    #[test]
    fn the_band_is_a_band_and_more_and_more_reach_the_reserve() {
        let chances = chances(&system(8.0, 60.0, 100.0), EXTENT, 3);
        assert_eq!((chances.runs, chances.blocks), (60, 6));
        assert_eq!(chances.band.len(), RUN_DAYS * HOURS);
        for at in &chances.band {
            assert!(0.0 <= at.low && at.low <= at.middle && at.middle <= at.high);
            assert!(at.high <= 100.0);
        }
        assert!(chances.reached.windows(2).all(|pair| pair[0] <= pair[1]));
        let widest = chances.band.iter().map(|at| at.high - at.low).fold(0.0, f64::max);
        assert!(widest > 5.0, "{widest}");
    }

    #[test]
    fn one_seed_gives_the_same_chances_and_another_nearly_the_same() {
        let system = system(8.0, 60.0, 100.0);
        let one = chances(&system, EXTENT, 7);
        assert_eq!(one, chances(&system, EXTENT, 7));
        let other = chances(&system, EXTENT, 8);
        assert_ne!(one, other);
        assert!((one.months_share[11] - other.months_share[11]).abs() < 0.3);
    }

    #[test]
    fn nothing_done_is_no_chance_of_anything() {
        let system = system(8.0, 60.0, 100.0);
        let none = chances(&system, Extent { runs: 1, blocks: 0 }, 1);
        assert_eq!((none.blocks, none.months_kept[0]), (0, Range::default()));
    }
}
