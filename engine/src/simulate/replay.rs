//! A plan through a year of hourly weather that a person brought.
//!
//! **Question answered.** If the weather of this file came again, in which months would the bank stay over its reserve, for how
//! many hours would it not, and how would it go from the start of the plan on?
//!
//! **Method.** The one step of this engine, in quarter-hours, through every date of the year in which the plan starts; each date has
//! the file's weather of the same month and day. Loads follow the air of that day, as in a run. The *year* begins full, goes
//! through its own last 92 days to settle, and is counted from 1 January on, its state of charge carried from month to month. The *run*
//! starts as the plan does and goes on for 31 days.
//!
//! **Clocks.** The file is in standard time and the plan in clock time: both are tied by universal time. A file from [far](FAR_KM)
//! away is taken as if the plan lived there: its standard time counts as the plan's own, or noon might fall into the night.
//!
//! **Left out.** A 29 February that the file has and the plan's year has not; one that the plan has and the file has not gets the
//! weather of the 28th. The horizon is that of the plan's place. A bank that changes its capacity with the month keeps its state
//! of charge; wear.

use core::cell::RefCell;

use chrono::{Datelike, Days, Duration, NaiveDate, NaiveDateTime, NaiveTime};

use super::almanac::LitDay;
use super::days::Day;
use super::ensemble::SETTLING_DAYS;
use super::prepared::{Prepared, State};
use super::run::{Run, STEP, run_through};
use super::wants::Wants;
use crate::load::DayKind;
use crate::place::WeatherFile;
use crate::quantity::{AmpHours, Celsius, Degrees, Hours, Irradiation, Within};
use crate::sky::{STEPS_PER_DAY, contradiction, replayed_day};
use crate::sun::Site;
use crate::system::System;

/// Days of the run from the start of the plan.
pub const REPLAY_DAYS: usize = 31;
/// A file from farther away is another climate \[km\].
///
/// The weather of two places is alike over some tens of kilometres; this is our own mark, not a published one.
pub const FAR_KM: f64 = 100.0;
/// A file that [contradicts](contradiction) itself by more (ratio) is told: half an hour between clock and sun makes 0.035, an hour
/// 0.07.
pub const CONTRADICTS: f64 = 0.05;
/// Mean radius of the earth \[km\]. Source: International Union of Geodesy and Geophysics, Geodetic Reference System 1980.
const EARTH_RADIUS_KM: f64 = 6371.0;

/// What a month of the year came to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ReplayedMonth {
    /// Time under the reserve, or with loads that the bank failed.
    pub below_reserve: Hours,
    /// Time in which a load got less than it wanted.
    pub short: Hours,
    /// Mean daily irradiation on the horizontal, by the file.
    pub irradiation: Irradiation,
    /// Mean air temperature, by the file.
    pub temperature: Celsius,
}

/// What a year of weather does with a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Replayed {
    /// Name of the place as the file has it: text of somebody else.
    pub name: String,
    /// Where the file says it is.
    pub site: Site,
    /// How far the file's place is from the plan's \[km\].
    pub distance_km: f64,
    /// How far the file contradicts itself (ratio).
    pub contradiction: f64,
    /// January first.
    pub months: [ReplayedMonth; 12],
    /// Whether the bank was full at any time of the year.
    pub filled: bool,
    /// The longest time between two ends of charging; that which goes on at the turn of the year is counted in part.
    pub longest_without_full: Hours,
    /// The lowest state of charge of the year (ratio).
    pub lowest: f64,
    /// When it was first that low, in clock time of the year in which the plan starts.
    pub lowest_at: NaiveDateTime,
    /// The run from the start of the plan.
    pub run: Run,
}

impl Replayed {
    /// Time of the year under the reserve, or with loads that the bank failed.
    #[must_use]
    pub fn below_reserve(&self) -> Hours {
        self.months.iter().map(|month| month.below_reserve).sum()
    }

    /// Time of the year in which a load got less than it wanted.
    #[must_use]
    pub fn short(&self) -> Hours {
        self.months.iter().map(|month| month.short).sum()
    }

    /// Whether the file is from far away.
    #[must_use]
    pub fn is_far(&self) -> bool {
        self.distance_km > FAR_KM
    }

    /// Whether the file contradicts itself.
    #[must_use]
    pub fn contradicts(&self) -> bool {
        self.contradiction > CONTRADICTS
    }

    /// State of charge at the start and after each whole hour of the run \[%\].
    #[must_use]
    pub fn path(&self) -> Vec<f64> {
        let hours = REPLAY_DAYS * 24;
        (0..=hours).map(|hour| self.run.charge_at(Hours(hour as f64)) * 100.0).collect()
    }
}

/// Takes a system through a year of weather; `full` is what the bank holds in each month.
#[must_use]
pub fn replay(system: &System, full: [AmpHours; 12], file: &WeatherFile) -> Replayed {
    let distance_km = distance_km(system.site, file.site);
    let weather = FileYear::new(system, file, distance_km > FAR_KM);
    let first = system.start.date;
    let mut day = |place: usize| weather.acting(first.checked_add_days(Days::new(place as u64))?);
    let full_now = full[first.month0() as usize];
    let run = run_through(system, full_now, &mut day, REPLAY_DAYS, false);
    let year = Year::through(system, full, &weather);
    let (sun, air) = (file.monthly_irradiation(), file.monthly_temperature());
    let mut months = year.months;
    for (month, (sun, air)) in months.iter_mut().zip(sun.into_iter().zip(air)) {
        (month.irradiation, month.temperature) = (sun, air);
    }
    Replayed {
        name: file.name.clone(),
        site: file.site,
        distance_km,
        contradiction: contradiction(file),
        months,
        filled: year.filled,
        longest_without_full: year.longest,
        lowest: year.lowest,
        lowest_at: year.lowest_at,
        run,
    }
}

/// Along the surface of a round earth \[km\].
fn distance_km(one: Site, other: Site) -> f64 {
    let sine = |angle: Degrees| libm::sin(angle.0.to_radians() / 2.0);
    let (across, along) =
        (sine(other.latitude - one.latitude), sine(other.longitude - one.longitude));
    let cosines = libm::cos(one.latitude.0.to_radians()) * libm::cos(other.latitude.0.to_radians());
    let haversine = (across * across + cosines * along * along).within(0.0, 1.0);
    2.0 * EARTH_RADIUS_KM * libm::asin(libm::sqrt(haversine))
}

/// The days of a file as the arrays of a system see them.
struct FileYear<'a> {
    system: &'a System,
    file: &'a WeatherFile,
    /// By day of the file, in its own time.
    lit: Vec<LitDay>,
    wants: RefCell<Wants>,
    far: bool,
}

impl<'a> FileYear<'a> {
    fn new(system: &'a System, file: &'a WeatherFile, far: bool) -> Self {
        let lit = |place: usize| {
            let mut sky = replayed_day(file, place)?;
            if let Some(horizon) = &system.horizon {
                for step in &mut sky.steps {
                    *step = horizon.around(step);
                }
            }
            Some(LitDay::under(sky, system))
        };
        let lit = (0..file.days.len()).filter_map(lit).collect();
        Self { system, file, lit, wants: RefCell::default(), far }
    }

    /// What acts on the bank on a date of the plan's clock.
    fn acting(&self, date: NaiveDate) -> Option<Day> {
        let lit = self.on(date)?;
        Some(self.wants.borrow_mut().acting(self.system, DayKind::of(date), &lit))
    }

    /// The weather of a date of the plan's clock.
    fn on(&self, date: NaiveDate) -> Option<LitDay> {
        let place = self.place(date)?;
        let mut day = self.lit.get(place)?.clone();
        let ahead = self.ahead(date);
        if ahead == 0 {
            return Some(day);
        }
        let all = (self.lit.len() * STEPS_PER_DAY) as i64;
        for (at, (step, solar)) in day.sky.steps.iter_mut().zip(&mut day.solar).enumerate() {
            let at = (place * STEPS_PER_DAY + at) as i64 - ahead;
            let at = at.rem_euclid(all) as usize;
            let from = self.lit.get(at / STEPS_PER_DAY)?;
            *step = *from.sky.steps.get(at % STEPS_PER_DAY)?;
            *solar = from.solar[at % STEPS_PER_DAY];
        }
        Some(day)
    }

    /// The day of the file that a date stands on.
    fn place(&self, date: NaiveDate) -> Option<usize> {
        let of = |day: u32| {
            let found = [date.month(), day];
            self.file.days.iter().position(|own| [own.month, own.day].map(u32::from) == found)
        };
        of(date.day()).or_else(|| of(date.day() - 1))
    }

    /// Quarter-hours by which the plan's clock is ahead of the file's on a date.
    fn ahead(&self, date: NaiveDate) -> i64 {
        let clock = &self.system.clock;
        let standard = Hours(f64::from(clock.utc_offset_min) / 60.0);
        let file = if self.far { standard } else { self.file.utc_offset };
        ((clock.offset_on(date) - file) / STEP).round() as i64
    }
}

/// How the bank goes through the year.
struct Year {
    state: State,
    months: [ReplayedMonth; 12],
    since_full: Hours,
    longest: Hours,
    filled: bool,
    lowest: f64,
    lowest_at: NaiveDateTime,
}

impl Year {
    /// Through every date of the year in which the plan starts, after a stretch in which the bank settles.
    fn through(system: &System, full: [AmpHours; 12], weather: &FileYear<'_>) -> Self {
        let banks = full.map(|full| {
            Prepared::new(&system.bank, full, STEP).with_generator(system.generator.as_ref())
        });
        let number = system.start.date.year();
        let dates = (1..=366).filter_map(|day| NaiveDate::from_yo_opt(number, day));
        let dates: Vec<NaiveDate> = dates.collect();
        let midnight = system.start.date.and_time(NaiveTime::MIN);
        let mut year = Self::at(banks[11].rested(1.0), midnight);
        for date in &dates[dates.len().saturating_sub(SETTLING_DAYS)..] {
            year.day(&banks, weather, system, *date);
        }
        year = Self { since_full: year.since_full, ..Self::at(year.state, midnight) };
        for date in dates {
            year.day(&banks, weather, system, date);
        }
        year
    }

    fn at(state: State, midnight: NaiveDateTime) -> Self {
        Self {
            state,
            months: [ReplayedMonth::default(); 12],
            since_full: Hours::ZERO,
            longest: Hours::ZERO,
            filled: false,
            lowest: f64::INFINITY,
            lowest_at: midnight,
        }
    }

    fn day(
        &mut self,
        banks: &[Prepared<'_>; 12],
        weather: &FileYear<'_>,
        system: &System,
        date: NaiveDate,
    ) {
        let Some(acting) = weather.acting(date) else { return };
        let at = date.month0() as usize;
        let reserve = system.bank.reserve.ratio();
        for (step, forcing) in acting.iter().enumerate() {
            let after = banks[at].step(self.state, forcing, &mut ());
            self.state = after.state;
            let month = &mut self.months[at];
            if after.state.charge < reserve || after.carried.is_some() {
                month.below_reserve += STEP;
            }
            if after.flows.unmet.0 > 0.0 {
                month.short += STEP;
            }
            if after.state.charge < self.lowest {
                self.lowest = after.state.charge;
                let minutes = (step as i64 + 1) * 15;
                self.lowest_at = date.and_time(NaiveTime::MIN) + Duration::minutes(minutes);
            }
            self.since_full += STEP;
            self.longest = self.longest.at_least(self.since_full);
            if after.filled {
                self.filled = true;
                self.since_full = Hours::ZERO;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Array, Bank, Document, Load, Rating, Schedule, When};
    use crate::outlook::Outlook;
    use crate::place::{Climate, FILE_HOURS, FileDay, FileHour, SummerTime};
    use crate::quantity::Irradiance;
    use crate::simulate::sky_of;
    use crate::sky::SkyDay;

    const PARTS: usize = STEPS_PER_DAY / FILE_HOURS;
    const LENGTHS: [u8; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

    /// A lamp in the evening and something round the clock at 52.4° N, in clock time one hour ahead of universal time.
    fn system(date: &str, module_w: f64) -> System {
        let load = |watts, when| Load {
            rating: Rating::PowerW(watts),
            schedule: Schedule::daily(when),
            ..Load::default()
        };
        let array = Array { module_w, ..Array::default() };
        let mut plan = Document {
            loads: vec![load(10.0, When::Always), load(12.0, When::HoursPerDay(4.0))],
            bank: Bank { capacity_ah: 100.0, ..Bank::default() },
            arrays: if module_w > 0.0 { vec![array] } else { Vec::new() },
            ..Document::default()
        };
        plan.place.latitude_deg = 52.4;
        plan.place.longitude_deg = 4.9;
        plan.place.utc_offset_min = 60.0;
        plan.place.summer_time = SummerTime::Europe;
        plan.start.date = date.parse().unwrap();
        System::assemble(&plan, Climate::embedded(), &mut ()).unwrap()
    }

    /// A file of a system's place in which every hour is as it is told: month and day of the year from 0, hour from 0.
    fn file(system: &System, offset: f64, hour: impl Fn(usize, usize) -> FileHour) -> WeatherFile {
        let mut days = Vec::new();
        for (month, length) in (1..).zip(LENGTHS) {
            for day in 1..=length {
                let place = days.len();
                days.push(FileDay {
                    month,
                    day,
                    hours: core::array::from_fn(|at| hour(place, at)),
                });
            }
        }
        WeatherFile { name: "Some Town".into(), site: system.site, utc_offset: Hours(offset), days }
    }

    fn dark(air: f64) -> impl Fn(usize, usize) -> FileHour {
        move |_, _| FileHour { air: Celsius(air), ..FileHour::default() }
    }

    /// The hours of skies in universal time plus `offset`, as a file has them.
    fn hour_of(skies: &[SkyDay], offset: i64, place: usize, hour: usize) -> FileHour {
        let all = (skies.len() * STEPS_PER_DAY) as i64;
        let step = |part: usize| {
            let at = (place * STEPS_PER_DAY + hour * PARTS + part) as i64 - offset * PARTS as i64;
            let at = at.rem_euclid(all) as usize;
            skies[at / STEPS_PER_DAY].steps[at % STEPS_PER_DAY]
        };
        let mean = |value: &dyn Fn(usize) -> f64| (0..PARTS).map(value).sum::<f64>() / 4.0;
        FileHour {
            air: step(PARTS - 1).air,
            global: Irradiance(mean(&|part| step(part).global().0)),
            direct_normal: Irradiance::ZERO,
            diffuse: Irradiance(mean(&|part| step(part).diffuse.0)),
        }
    }

    #[test]
    fn a_dark_file_of_one_temperature_is_the_run_without_sun_in_it() {
        let mut system = system("2026-11-10", 0.0);
        // Warm inside, so that the air outside makes no difference.
        system.inside_least = Celsius(25.0);
        let outlook = Outlook::of(&system);
        let replayed = outlook.replay(&system, &file(&system, 1.0, dark(5.0)));
        let own = &outlook.run.samples;
        assert!(own.len() > 100, "{}", own.len());
        assert_eq!(replayed.run.samples[..own.len()], own[..]);
        assert_eq!(replayed.run.reserve_at, outlook.run.reserve_at);
        let path = replayed.path();
        assert_eq!(path.len(), REPLAY_DAYS * 24 + 1);
        assert_eq!(path[0], system.start.charge * 100.0);
        assert!((path[10] - own[39].charge * 100.0).abs() < 1e-9);
    }

    #[test]
    fn a_file_of_the_mean_days_is_the_mean_run_whatever_its_clock() {
        for date in ["2026-02-03", "2026-07-10"] {
            let system = system(date, 100.0);
            let universal = System { clock: Default::default(), ..system.clone() };
            let start: NaiveDate = "2026-01-01".parse().unwrap();
            let skies: Vec<SkyDay> =
                start.iter_days().take(365).map(|date| sky_of(&universal, date)).collect();
            let outlook = Outlook::of(&system);
            for offset in [0, 1, 3] {
                let hour = |place, at| hour_of(&skies, offset, place, at);
                let replayed = outlook.replay(&system, &file(&system, offset as f64, hour));
                let pairs = replayed.run.samples.iter().zip(&outlook.run.samples);
                let apart = pairs.map(|(one, other)| (one.charge - other.charge).abs());
                let apart = apart.fold(0.0, f64::max);
                // Hours of a file know less of the sun's rise than quarter-hours do.
                assert!(apart < 0.01, "{date}, {offset} h: {apart}");
                assert!(replayed.run.totals.solar.0 > 100.0);
            }
            // A clock told wrong moves the light.
            let hour = |place, at| hour_of(&skies, 1, place, at);
            let run = |offset| outlook.replay(&system, &file(&system, offset, hour)).run;
            let (wrong, right) = (run(9.0), run(1.0));
            let pairs = wrong.samples.iter().zip(&right.samples);
            let apart = pairs.map(|(one, other)| (one.charge - other.charge).abs());
            assert!(apart.fold(0.0, f64::max) > 0.03, "{date}");
        }
    }

    #[test]
    fn a_dark_year_is_short_in_every_hour_and_never_full() {
        let system = system("2026-11-10", 100.0);
        let replayed = Outlook::of(&system).replay(&system, &file(&system, 1.0, dark(5.0)));
        for (month, length) in replayed.months.iter().zip(LENGTHS) {
            let all = Hours(24.0 * f64::from(length));
            assert_eq!((month.below_reserve, month.short), (all, all));
            assert_eq!((month.irradiation.0, month.temperature.0.round()), (0.0, 5.0));
        }
        assert_eq!((replayed.below_reserve(), replayed.short()), (Hours(8760.0), Hours(8760.0)));
        assert!(!replayed.filled && !replayed.is_far() && !replayed.contradicts());
        let days = (365 + SETTLING_DAYS) as f64;
        // It was full at most for its very first steps.
        assert!((replayed.longest_without_full.0 - days * 24.0).abs() < 24.0);
        assert!(replayed.lowest < 0.02, "{}", replayed.lowest);
    }

    #[test]
    fn a_bright_year_keeps_up_and_a_dull_week_shows_in_its_month() {
        let system = system("2026-11-10", 400.0);
        let lit = |dull: core::ops::Range<usize>| {
            move |place: usize, hour: usize| {
                let light = if (9..16).contains(&hour) { 300.0 } else { 0.0 };
                let light = Irradiance(if dull.contains(&place) { 0.0 } else { light });
                FileHour { air: Celsius(10.0), global: light, diffuse: light, ..Default::default() }
            }
        };
        let outlook = Outlook::of(&system);
        let bright = outlook.replay(&system, &file(&system, 1.0, lit(0..0)));
        assert!(bright.filled && bright.below_reserve() == Hours::ZERO, "{:?}", bright.months);
        assert!(bright.longest_without_full < Hours(48.0) && bright.short() == Hours::ZERO);
        let dull = outlook.replay(&system, &file(&system, 1.0, lit(190..200)));
        let low = |month: usize| dull.months[month].below_reserve.0;
        assert!(low(6) > 48.0 && low(4) == 0.0 && low(9) == 0.0, "{:?}", dull.months);
        assert!(dull.longest_without_full > Hours(240.0) && dull.lowest < bright.lowest);
        assert_eq!(dull.lowest_at.month(), 7, "{:?}", dull.lowest_at);
    }

    #[test]
    fn a_leap_day_goes_by_the_calendar_of_the_plan() {
        let years = [("2028-02-10", 29.0), ("2026-02-10", 28.0)];
        for ((date, length), leap_file) in
            years.into_iter().flat_map(|own| [(own, false), (own, true)])
        {
            let system = system(date, 100.0);
            let mut file = file(&system, 1.0, dark(5.0));
            if leap_file {
                let day = FileDay { month: 2, day: 29, ..file.days[58] };
                file.days.insert(59, day);
            }
            let replayed = Outlook::of(&system).replay(&system, &file);
            assert_eq!(replayed.months[1].below_reserve, Hours(24.0 * length), "{date}");
            assert_eq!(replayed.run.samples.len(), REPLAY_DAYS * STEPS_PER_DAY);
        }
    }

    #[test]
    fn distances_are_those_of_a_round_earth() {
        let site = |latitude: f64, longitude: f64| Site {
            latitude: Degrees(latitude),
            longitude: Degrees(longitude),
        };
        // A quarter of the circumference, half of it, and a degree of longitude at 60°.
        let quarter = core::f64::consts::FRAC_PI_2 * EARTH_RADIUS_KM;
        assert!((distance_km(site(0.0, 0.0), site(90.0, 7.0)) - quarter).abs() < 1e-6);
        assert!((distance_km(site(0.0, -90.0), site(0.0, 90.0)) - 2.0 * quarter).abs() < 1e-6);
        assert!(
            (distance_km(site(60.0, 179.5), site(60.0, -179.5)) - quarter / 180.0).abs() < 0.01
        );
        assert_eq!(distance_km(site(52.0, 5.0), site(52.0, 5.0)), 0.0);
    }

    #[test]
    fn a_file_from_far_goes_by_its_own_clock() {
        let system = system("2026-07-10", 100.0);
        let light = |_, hour: usize| {
            let light = Irradiance(if (6..18).contains(&hour) { 300.0 } else { 0.0 });
            FileHour { air: Celsius(10.0), global: light, diffuse: light, ..Default::default() }
        };
        let mut there = file(&system, 1.0, light);
        let outlook = Outlook::of(&system);
        let near = outlook.replay(&system, &there);
        // Half around the earth, where the hands of the clock stand alike.
        there.site.longitude = Degrees(-175.1);
        there.utc_offset = Hours(-11.0);
        let far = outlook.replay(&system, &there);
        assert!(far.is_far() && (far.distance_km - 8363.0).abs() < 20.0, "{}", far.distance_km);
        for (one, other) in near.run.samples.iter().zip(&far.run.samples) {
            assert!((one.charge - other.charge).abs() < 0.01, "{one:?} {other:?}");
        }
    }
}
