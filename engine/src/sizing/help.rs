//! What would help: sensible single changes, each tried by the full simulation.
//!
//! **Question answered:** of all that could be done, what does most for the promise?
//!
//! **Method.** Each change makes a plan of its own, which goes through the same weather by the one step. They are ranked by the short days a
//! year that are left, or the share of trials that fail. **Left out:** what a change costs, in money or in comfort.

use std::collections::VecDeque;

use super::course::Course;
use super::full::Proof;
use super::promise::Promise;
use super::search::Ground;
use super::{MONTHS, Size, Sizing};
use crate::document::{ControllerKind, DAY_MIN, Document, Field, Kept, Load, Supply, When};
use crate::outlook::Outlook;
use crate::quantity::{Amps, Celsius, Degrees, Hours};
use crate::system::System;

/// A load is used less by so much a day.
const LESS: Hours = Hours(2.0);
/// The engine runs longer by so much a day.
const LONGER: Hours = Hours(1.0);
/// A place for the bank in a room that is lived in.
const WARM: Celsius = Celsius(20.0);
/// A tilt this near to the best is as good: light goes with the cosine of what is off, which is within half a per cent here.
const NEAR_TILT: f64 = 5.0;
/// Fewer short days than this are no help.
const NO_HELP: f64 = 1e-9;

/// Something that could be changed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Change {
    /// A load is used less.
    LessUse {
        /// Its place in the plan.
        load: u16,
        /// By so much a day.
        hours: Hours,
    },
    /// A load on alternating current becomes one on direct current of the same power.
    Direct {
        /// Its place in the plan.
        load: u16,
    },
    /// An array gets another string behind the same controller.
    MoreArray {
        /// Its place in the plan.
        array: u16,
    },
    /// All arrays face the equator at a tilt.
    Tilted {
        /// The tilt.
        tilt: Degrees,
    },
    /// Series regulators become maximum-power-point controllers.
    Tracking,
    /// The bank gets another string.
    MoreBank,
    /// The bank stands warmer.
    Warmer {
        /// At this temperature.
        at: Celsius,
    },
    /// The engine runs longer.
    LongerEngine {
        /// By so much a day.
        hours: Hours,
    },
}

/// What a change comes to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Helped {
    /// The change.
    pub change: Change,
    /// Chance of the promise with it (ratio).
    pub chance: f64,
    /// Short days a year that are left, or share of trials that fail.
    pub shortage: f64,
}

/// The sensible changes of a plan, each with the plan that it makes.
#[must_use]
pub fn changes(plan: &Document, sizing: &Sizing, promise: &Promise) -> Vec<(Change, Document)> {
    let mut found = Vec::new();
    let mut with = |change: Change, edit: &dyn Fn(&mut Document)| {
        let mut changed = plan.clone();
        edit(&mut changed);
        if changed != *plan {
            found.push((change, changed));
        }
    };
    for (place, load) in plan.loads.iter().enumerate().filter(|(_, load)| load.on) {
        let (at, cut) = (place as u16, used_less(load));
        // What a life may depend on is not to be used less.
        if !load.vital {
            let change = Change::LessUse { load: at, hours: cut };
            with(change, &|plan| shorten(&mut plan.loads[place], cut));
        }
        with(Change::Direct { load: at }, &|plan| plan.loads[place].supply = Supply::Dc);
    }
    for (place, _) in plan.arrays.iter().enumerate().filter(|(_, array)| array.on) {
        let change = Change::MoreArray { array: place as u16 };
        with(change, &|plan| plan.arrays[place].in_parallel += 1.0);
    }
    let (tilt, _) = sizing.best_tilt(promise);
    let azimuth = crate::sky::equatorward(sizing.system().site.latitude);
    if plan.arrays.iter().any(|array| array.on && (array.tilt_deg - tilt.0).abs() > NEAR_TILT) {
        with(Change::Tilted { tilt }, &|plan| {
            for array in &mut plan.arrays {
                (array.tilt_deg, array.azimuth_deg) = (tilt.0, azimuth.0);
            }
        });
    }
    with(Change::Tracking, &|plan| {
        for array in &mut plan.arrays {
            array.controller.kind = ControllerKind::Mppt;
        }
    });
    with(Change::MoreBank, &|plan| plan.bank.in_parallel += 1.0);
    if sizing.months.iter().any(|(_, at)| *at < WARM) {
        with(Change::Warmer { at: WARM }, &|plan| plan.bank.kept = Kept::AtC(WARM.0));
    }
    with(Change::LongerEngine { hours: LONGER }, &|plan| {
        let engine = plan.alternator.as_mut().filter(|engine| engine.on);
        if let Some(When::HoursPerDay(hours)) = engine.map(|engine| &mut engine.schedule.when) {
            *hours = (*hours + LONGER.0).min(Field::HoursPerDay.range().max);
        }
    });
    found
}

/// By how much a load can be used less.
fn used_less(load: &Load) -> Hours {
    let used = match &load.schedule.when {
        When::Always => f64::from(DAY_MIN),
        When::HoursPerDay(hours) => hours * 60.0,
        When::Spans(spans) => {
            let parts = spans.iter().flat_map(|span| span.unwrapped());
            parts.map(|(from, to)| f64::from(to.saturating_sub(from))).sum()
        }
    };
    Hours(f64::min(used / 60.0, LESS.0))
}

/// Uses a load less: at the end of its last stretches, or of its hours.
fn shorten(load: &mut Load, cut: Hours) {
    match &mut load.schedule.when {
        When::Always => load.schedule.when = When::HoursPerDay(24.0 - cut.0),
        When::HoursPerDay(hours) => *hours = Field::HoursPerDay.range().rounded(*hours - cut.0),
        When::Spans(spans) => {
            let mut left = (cut.0 * 60.0) as u16;
            while let (Some(span), true) = (spans.last_mut(), left > 0) {
                let ends = (span.to_min + DAY_MIN - 1 - span.from_min) % DAY_MIN + 1;
                if ends <= left {
                    left -= ends;
                    spans.pop();
                } else {
                    let to = span.from_min + ends - left;
                    span.to_min = if to > DAY_MIN { to - DAY_MIN } else { to };
                    left = 0;
                }
            }
            if spans.is_empty() {
                load.on = false;
            }
        }
    }
}

/// A changed plan on its way through its own course.
#[derive(Debug)]
struct Trial {
    change: Change,
    sizing: Sizing,
    course: Course,
    proof: Proof,
}

/// Changes that are tried one by one.
#[derive(Debug, Default)]
pub(super) struct Trying {
    spread: [f64; MONTHS],
    waiting: VecDeque<(Change, Document)>,
    all: usize,
    trial: Option<Box<Trial>>,
    found: Vec<Helped>,
}

impl Trying {
    /// All sensible changes of a plan.
    pub(super) fn new(
        plan: &Document,
        sizing: &Sizing,
        spread: &[f64; MONTHS],
        promise: &Promise,
    ) -> Self {
        let waiting: VecDeque<_> = changes(plan, sizing, promise).into();
        Self { spread: *spread, all: waiting.len(), waiting, ..Self::default() }
    }

    /// Goes on with the next years of a change; whether there was anything to do.
    pub(super) fn advance(&mut self, on: Ground<'_>) -> bool {
        let Some(trial) = self.trial.as_mut() else {
            let Some((change, plan)) = self.waiting.pop_front() else { return false };
            self.trial = self.ready(on, change, &plan).map(Box::new);
            return true;
        };
        let Trial { change, sizing, course, proof } = trial.as_mut();
        if !proof.advance(sizing, course) {
            let chance = on.promise.chance_of(&proof.counts, &course.trials);
            let shortage = on.promise.shortage_of(&proof.counts, &course.trials);
            self.found.push(Helped { change: *change, chance, shortage });
            self.trial = None;
        }
        true
    }

    /// A changed plan made ready; none if it contradicts itself.
    fn ready(&self, on: Ground<'_>, change: Change, plan: &Document) -> Option<Trial> {
        let climate = on.sizing.system().climate.clone();
        let system = System::resolve(plan, climate, &mut ()).ok()?;
        let years = on.sizing.years.len();
        let sizing = Sizing::new(&system, &Outlook::of(&system), &self.spread, years);
        let course = Course::of(&sizing, on.promise);
        let proof = Proof::new(&course, Size::OWN, Amps::ZERO);
        Some(Trial { change, sizing, course, proof })
    }

    /// What the best tilt comes to, once it is known.
    pub(super) fn tilted(&self) -> Option<&Helped> {
        self.found.iter().find(|helped| matches!(helped.change, Change::Tilted { .. }))
    }

    /// Share of it that is done.
    pub(super) fn done(&self) -> f64 {
        let part = self.trial.as_ref().map_or(0.0, |trial| 1.0 - trial.proof.done(&trial.course));
        1.0 - (self.waiting.len() as f64 + part) / (self.all as f64).max(1.0)
    }

    /// The changes that help, the most helpful first: without any this much is short.
    pub(super) fn ranked(&self, now: f64) -> Vec<Helped> {
        let helps = |own: &&Helped| own.shortage < now - NO_HELP;
        let mut all: Vec<Helped> = self.found.iter().filter(helps).copied().collect();
        all.sort_by(|a, b| a.shortage.total_cmp(&b.shortage).then(b.chance.total_cmp(&a.chance)));
        all
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Schedule, Span};

    fn spans(all: &[(u16, u16)]) -> Load {
        let spans =
            all.iter().map(|(from_min, to_min)| Span { from_min: *from_min, to_min: *to_min });
        Load { schedule: Schedule::daily(When::Spans(spans.collect())), ..Load::default() }
    }

    #[test]
    fn two_hours_less_are_taken_off_the_end() {
        for (before, after) in [
            (vec![(600, 900)], vec![(600, 780)]),
            (vec![(480, 600), (1320, 60)], vec![(480, 600), (1320, 1380)]),
            (vec![(480, 600), (1200, 1260)], vec![(480, 540)]),
            (vec![(1380, 120)], vec![(1380, 1440)]),
        ] {
            let mut load = spans(&before);
            let cut = used_less(&load);
            assert_eq!(cut, LESS);
            shorten(&mut load, cut);
            assert_eq!(load, spans(&after));
            assert!(load.schedule.when != When::Spans(Vec::new()));
        }
        let mut short = spans(&[(600, 660)]);
        let cut = used_less(&short);
        assert_eq!(cut, Hours(1.0));
        shorten(&mut short, cut);
        assert!(!short.on);
    }
}
