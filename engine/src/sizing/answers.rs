//! Direct answers: the smallest bank and array, a point to adopt, the tilt, hours of a charger, and what voltages mean.
//!
//! **Method.** Sizes are searched by halving ratios, and every one that is tried goes through the course by the one step of the
//! simulation, so that whatever is answered is proved. A charger's hours are spread over the week, as hours without a time are
//! everywhere in this engine. Currents of a system voltage are those of the plan's powers at the voltage where loads are cut off, which is
//! the lowest, and at that of charging in bulk.

use super::course::Course;
use super::map::Map;
use super::promise::Promise;
use super::{Size, Sizing};
use crate::outlook::largest_power as at_one_time;
use crate::quantity::{Amps, Degrees, Hours, Volts, Watts};
use crate::simulate::typical_sky;
use crate::sky::{best_tilt, equatorward};
use crate::source::Array;
use crate::system::System;

/// Nothing larger than so many times the plan's own is looked for.
const LARGEST: f64 = 64.0;
/// Nothing smaller than this share of it is told.
const SMALLEST: f64 = 1.0 / 64.0;
/// Halvings of the ratio between a size that fails and one that keeps: from a factor of 4096 to 1 %.
const HALVINGS: usize = 10;
/// Hours of a week.
const WEEK_HOURS: u32 = 168;
/// A charger takes so many hours for the rated charge where the plan has none: the fifth of it that is common for lead-acid.
const CHARGER_HOURS: Hours = Hours(5.0);
/// A suggestion that fails by the one step is made larger by this.
const LARGER: f64 = 1.05;
/// So often at most: then it has grown by half.
const TRIES: usize = 9;

impl Sizing {
    /// The least factor at which a size keeps the promise; none if not even the largest does.
    fn least(&self, course: &Course, promise: &Promise, size: impl Fn(f64) -> Size) -> Option<f64> {
        let kept = |factor: f64| {
            promise.is_kept_by(self.chance(course, promise, size(factor), Amps::ZERO))
        };
        if !kept(LARGEST) {
            return None;
        }
        let (mut fails, mut keeps) = (SMALLEST, LARGEST);
        for _ in 0..HALVINGS {
            let middle = libm::sqrt(fails * keeps);
            if kept(middle) { keeps = middle } else { fails = middle }
        }
        Some(keeps)
    }

    /// The smallest bank that keeps a promise beside an array of this size.
    #[must_use]
    pub fn smallest_bank(&self, course: &Course, promise: &Promise, array: f64) -> Option<Size> {
        let bank = self.least(course, promise, |bank| Size { bank, array })?;
        Some(Size { bank, array })
    }

    /// The smallest array that keeps a promise beside a bank of this size.
    #[must_use]
    pub fn smallest_array(&self, course: &Course, promise: &Promise, bank: f64) -> Option<Size> {
        let array = self.least(course, promise, |array| Size { bank, array })?;
        Some(Size { bank, array })
    }

    /// What to make of a plan whose own size is this, so that it keeps its promise: the point of the map's frontier that adds the least, in
    /// ratios, without taking anything away; proved, and made larger until it holds. None if no point of the map does.
    #[must_use]
    pub fn suggested(&self, map: &Map, promise: &Promise, own: Size) -> Option<Size> {
        let grown = |size: Size| Size {
            bank: f64::max(size.bank, own.bank),
            array: f64::max(size.array, own.array),
        };
        // An array that is not there yet grows from the smallest of the map.
        let from = f64::max(own.array, map.arrays.sizes()[0]);
        let growth = |size: &Size| size.bank / own.bank * f64::max(size.array / from, 1.0);
        let points = map.frontier(promise).into_iter().map(|(bank, array)| map.size(bank, array));
        let mut size = points.map(grown).min_by(|a, b| growth(a).total_cmp(&growth(b)))?;
        for _ in 0..TRIES {
            let chance = self.chance(map.course(), promise, size, Amps::ZERO);
            if promise.is_kept_by(chance) {
                return Some(self.trimmed(map.course(), promise, size, own));
            }
            if size.bank > own.bank {
                size.bank *= LARGER;
            }
            if size.array > own.array || size.bank <= own.bank {
                size.array *= LARGER;
            }
        }
        None
    }

    /// The same size without what it has too much because the map goes by steps, where only the bank or only the array grows.
    fn trimmed(&self, course: &Course, promise: &Promise, size: Size, own: Size) -> Size {
        let found = match (size.bank > own.bank, size.array > own.array) {
            (true, false) => self.smallest_bank(course, promise, own.array),
            (false, true) => self.smallest_array(course, promise, own.bank),
            _ => None,
        };
        let less = |found: &Size| found.bank <= size.bank && found.array <= size.array;
        let enough = |found: &Size| found.bank >= own.bank && found.array >= own.array;
        found.filter(|found| less(found) && enough(found)).unwrap_or(size)
    }

    /// Output of the charger that would help: that of the plan's shore power or generator, else a common one.
    #[must_use]
    pub fn charger(&self) -> Amps {
        let system = self.system();
        let shore = system.shore.as_ref().map(|own| own.limit);
        let generator = system.generator.as_ref().map(|own| own.limit);
        let common = (system.bank.rated / CHARGER_HOURS).at_most(system.bank.charge_limit);
        shore.or(generator).unwrap_or(common)
    }

    /// Whole hours a week of a charger that close what a plan of this size lacks; none if a whole week does not.
    #[must_use]
    pub fn charger_hours(&self, course: &Course, promise: &Promise, size: Size) -> Option<u32> {
        let kept = |hours: u32| {
            let more = self.charger() * (f64::from(hours) / f64::from(WEEK_HOURS));
            promise.is_kept_by(self.chance(course, promise, size, more))
        };
        if !kept(WEEK_HOURS) {
            return None;
        }
        let (mut fails, mut keeps) = (0, WEEK_HOURS);
        while keeps - fails > 1 {
            let middle = (fails + keeps) / 2;
            if kept(middle) { keeps = middle } else { fails = middle }
        }
        Some(keeps)
    }

    /// The tilt, facing the equator, that brings most in the tightest month that counts, and that month.
    #[must_use]
    pub fn best_tilt(&self, promise: &Promise) -> (Degrees, usize) {
        let (system, month) = (self.system(), self.tightest(promise));
        let days = [typical_sky(system, month, &mut ())];
        let azimuth = equatorward(system.site.latitude);
        (best_tilt(&days, &[1.0], azimuth, system.albedo).0, month)
    }
}

/// What a system voltage means for the same powers and the same energy.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Voltage {
    /// Nominal voltage of the bank.
    pub nominal: Volts,
    /// Largest current of what runs at one time, the inverter at its full output among it.
    pub loads: Amps,
    /// Current of all arrays in full sun, before heat and losses.
    pub arrays: Amps,
    /// Whether the plan has it.
    pub own: bool,
}

/// The most that is drawn at one time at the bank: by what runs together, or by the inverter at its full output.
#[must_use]
pub fn largest_power(system: &System) -> Watts {
    let full = system.inverter.as_ref().map_or(Watts::ZERO, |own| own.input(own.rated));
    at_one_time(system).at_least(full)
}

/// Nominal system voltages that are common \[V\].
const COMMON: [f64; 3] = [12.0, 24.0, 48.0];

/// The common system voltages and what each means for a system.
#[must_use]
pub fn voltages(system: &System) -> [Voltage; 3] {
    let bank = &system.bank;
    let (power, sun) =
        (largest_power(system), system.arrays.iter().map(Array::rated).sum::<Watts>());
    COMMON.map(|class| {
        // As many cells as the plan's own nominal voltage has, for this class.
        let classes = f64::max((bank.nominal.0 / COMMON[0]).round(), 1.0);
        let times = class / COMMON[0] / classes;
        Voltage {
            nominal: bank.nominal * times,
            loads: power / (bank.low_voltage() * times) + system.standing / times,
            arrays: sun / (bank.charging_voltage() * times),
            own: (times - 1.0).abs() < 1e-9,
        }
    })
}
