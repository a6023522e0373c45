//! What would help: sensible changes, each tried by the full simulation.
//!
//! **Question answered:** of all that could be done, what does most for the promise by the effort?
//!
//! **Method.** Each change makes a plan of its own, which goes through the same weather by the one step; other months are read off the run of the
//! plan as it stands. Changes that keep the promise come first, those of the least effort before others; then those that take most
//! off the short days a year, or the share of trials that fail, by their effort ([`Change::effort`]), or what is bought by its price
//! where that was stated. Where none alone keeps the promise every two of the three best are tried together.
//!
//! **The reserve** is told apart: keeping back less always helps the promise, and is no help.
//!
//! **Left out:** what a change costs in comfort, and prices beside those of bank and array.

use std::collections::VecDeque;

use super::course::Course;
use super::full::Proof;
use super::promise::Promise;
use super::search::Ground;
use super::{Counts, MONTHS, Rates, Size, Sizing};
use crate::document::{
    Array, ControllerKind, DAY_MIN, Document, Field, Kept, Load, Months, Supply, When,
};
use crate::outlook::Outlook;
use crate::quantity::{Amps, Celsius, Degrees, Hours, Percent};
use crate::system::System;

/// A load is used less by so much a day.
const LESS: Hours = Hours(2.0);
/// The engine runs longer by so much a day.
const LONGER: Hours = Hours(1.0);
/// A place for the bank in a room that is lived in.
const WARM: Celsius = Celsius(20.0);
/// A tilt this near to the best is as good: light goes with the cosine of what is off, which is within half a per cent here.
const NEAR_TILT: f64 = 5.0;
/// So much more or less is kept back \[%\].
const RESERVE: f64 = 10.0;
/// So many of the best changes are tried in pairs.
const PAIRED: usize = 3;
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
    /// The trip, or the season, is in other months.
    OtherMonths {
        /// These.
        season: Months,
    },
    /// More or less is kept back for what nobody foresaw.
    Reserve {
        /// So much.
        to: Percent,
    },
}

impl Change {
    /// How much effort it is, on an ordinal scale of our own, no document behind it: 1 a habit, 2 something moved, swapped or run
    /// longer, 3 something bought and fitted.
    #[must_use]
    pub fn effort(&self) -> f64 {
        match self {
            Self::LessUse { .. } | Self::Tilted { .. } | Self::OtherMonths { .. } => 1.0,
            Self::Reserve { .. } => 1.0,
            Self::Direct { .. } | Self::Warmer { .. } | Self::LongerEngine { .. } => 2.0,
            Self::MoreArray { .. } | Self::Tracking | Self::MoreBank => 3.0,
        }
    }

    /// The plan with it.
    #[must_use]
    pub fn made(&self, plan: &Document, latitude: Degrees) -> Document {
        let mut plan = plan.clone();
        match *self {
            Self::LessUse { load, hours } => {
                if let Some(load) = plan.loads.get_mut(usize::from(load)) {
                    shorten(load, hours);
                }
            }
            Self::Direct { load } => {
                if let Some(load) = plan.loads.get_mut(usize::from(load)) {
                    load.supply = Supply::Dc;
                }
            }
            Self::MoreArray { array } => {
                if let Some(array) = plan.arrays.get_mut(usize::from(array)) {
                    array.in_parallel += 1.0;
                }
            }
            Self::Tilted { tilt } => {
                let azimuth = crate::sky::equatorward(latitude);
                for array in &mut plan.arrays {
                    (array.tilt_deg, array.azimuth_deg) = (tilt.0, azimuth.0);
                }
            }
            Self::Tracking => {
                for array in &mut plan.arrays {
                    array.controller.kind = ControllerKind::Mppt;
                }
            }
            Self::MoreBank => plan.bank.in_parallel += 1.0,
            Self::Warmer { at } => plan.bank.kept = Kept::AtC(at.0),
            Self::LongerEngine { hours: more } => {
                let engine = plan.alternator.as_mut().filter(|engine| engine.on);
                if let Some(When::HoursPerDay(hours)) =
                    engine.map(|engine| &mut engine.schedule.when)
                {
                    *hours = (*hours + more.0).min(Field::HoursPerDay.range().max);
                }
            }
            Self::OtherMonths { season } => {
                plan.promise.get_or_insert_default().months = season;
            }
            Self::Reserve { to } => plan.bank.reserve_pct = to.0,
        }
        plan
    }

    /// The promise with it.
    fn promised(&self, promise: &Promise) -> Promise {
        match *self {
            Self::OtherMonths { season } => Promise { season, ..*promise },
            _ => *promise,
        }
    }
}

/// What a change comes to, or two together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Helped {
    /// The change.
    pub change: Change,
    /// Another one at the same time.
    pub with: Option<Change>,
    /// Chance of the promise with it (ratio).
    pub chance: f64,
    /// Short days a year that are left, or share of trials that fail.
    pub shortage: f64,
    /// Whether the promise is kept.
    pub kept: bool,
}

/// The sensible changes of a plan. Those of its reserve come last.
#[must_use]
pub fn changes(plan: &Document, sizing: &Sizing, promise: &Promise) -> Vec<Change> {
    let mut all = Vec::new();
    for (place, load) in plan.loads.iter().enumerate().filter(|(_, load)| load.on) {
        let load_at = place as u16;
        // What a life may depend on is not to be used less.
        if !load.vital {
            all.push(Change::LessUse { load: load_at, hours: used_less(load) });
        }
        all.push(Change::Direct { load: load_at });
    }
    let arrays = plan.arrays.iter().enumerate().filter(|(_, array)| array.on);
    all.extend(arrays.map(|(place, _)| Change::MoreArray { array: place as u16 }));
    let (tilt, _) = sizing.best_tilt(promise);
    if plan.arrays.iter().any(|array| array.on && (array.tilt_deg - tilt.0).abs() > NEAR_TILT) {
        all.push(Change::Tilted { tilt });
    }
    all.extend([Change::Tracking, Change::MoreBank]);
    if sizing.months.iter().any(|(_, at)| *at < WARM) {
        all.push(Change::Warmer { at: WARM });
    }
    all.push(Change::LongerEngine { hours: LONGER });
    let range = Field::Reserve.range();
    let reserves = [plan.bank.reserve_pct - RESERVE, plan.bank.reserve_pct + RESERVE];
    let reserves = reserves.into_iter().filter(|to| range.holds(*to));
    all.extend(reserves.map(|to| Change::Reserve { to: Percent(to) }));
    let latitude = sizing.system().site.latitude;
    all.retain(|change| change.made(plan, latitude) != *plan);
    all
}

/// The same number of months at another time of the year in which the least is short, if that is less than now; `counts` are those of the
/// plan as it stands, which hold all months.
fn other_months(promise: &Promise, counts: &[Counts], trials: &[Counts]) -> Option<Helped> {
    if promise.season == Months::ALL {
        return None;
    }
    let turned = |by: u16| {
        let season = promise.season.0 & Months::ALL.0;
        Months((season << by | season >> (12 - by)) & Months::ALL.0)
    };
    let told = |by: u16| {
        let change = Change::OtherMonths { season: turned(by) };
        helped(change, None, &change.promised(promise), counts, trials)
    };
    // Of equals that which is nearest in the year.
    let nearest = (1..=6).flat_map(|by| [by, 12 - by]);
    nearest.map(told).min_by(|a, b| a.shortage.total_cmp(&b.shortage))
}

fn helped(
    change: Change,
    with: Option<Change>,
    promise: &Promise,
    counts: &[Counts],
    trials: &[Counts],
) -> Helped {
    let chance = promise.chance_of(counts, trials);
    let shortage = promise.shortage_of(counts, trials);
    Helped { change, with, chance, shortage, kept: promise.is_kept_by(chance) }
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
    with: Option<Change>,
    sizing: Sizing,
    course: Course,
    proof: Proof,
}

/// Changes that are tried one by one, then pairs of the best.
#[derive(Debug, Default)]
pub(super) struct Trying {
    spread: [f64; MONTHS],
    waiting: VecDeque<(Change, Option<Change>)>,
    /// How many there are in all.
    all: usize,
    paired: bool,
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
        let changes = changes(plan, sizing, promise);
        let waiting: VecDeque<_> = changes.into_iter().map(|change| (change, None)).collect();
        Self { spread: *spread, all: waiting.len(), waiting, ..Self::default() }
    }

    /// Takes in how the plan does as it stands, from which other months are read off.
    pub(super) fn begin(&mut self, on: Ground<'_>, counts: &[Counts]) {
        self.found.extend(other_months(on.promise, counts, &on.course.trials));
    }

    /// Goes on with the next years of a change; whether there was anything to do. Without any this much is short.
    pub(super) fn advance(
        &mut self,
        on: Ground<'_>,
        plan: &Document,
        rates: Option<Rates>,
        now: f64,
    ) -> bool {
        let Some(trial) = self.trial.as_mut() else {
            let Some((change, with)) = self.waiting.pop_front() else {
                return self.pair(plan, rates, now);
            };
            self.trial = self.ready(on, plan, change, with).map(Box::new);
            return true;
        };
        let Trial { change, with, sizing, course, proof } = trial.as_mut();
        if !proof.advance(sizing, course) {
            let promise = change.promised(on.promise);
            self.found.push(helped(*change, *with, &promise, &proof.counts, &course.trials));
            self.trial = None;
        }
        true
    }

    /// Once, if no change alone keeps the promise: every two of the few best are tried together. Whether there are any.
    fn pair(&mut self, plan: &Document, rates: Option<Rates>, now: f64) -> bool {
        let best = self.ranked(plan, rates, now);
        if self.paired || now <= 0.0 || best.iter().any(|own| own.kept) {
            return false;
        }
        self.paired = true;
        let best: Vec<Change> = best.iter().take(PAIRED).map(|own| own.change).collect();
        for (place, change) in best.iter().enumerate() {
            // Two changes of one load are not two changes.
            let others = best[place + 1..].iter().filter(|other| !alike(change, other));
            self.waiting.extend(others.map(|other| match other {
                // The months are the promise's, which goes by the first.
                Change::OtherMonths { .. } => (*other, Some(*change)),
                _ => (*change, Some(*other)),
            }));
        }
        self.all += self.waiting.len();
        !self.waiting.is_empty()
    }

    /// A changed plan made ready; none if it contradicts itself.
    fn ready(
        &self,
        on: Ground<'_>,
        plan: &Document,
        change: Change,
        with: Option<Change>,
    ) -> Option<Trial> {
        let own = on.sizing.system();
        let mut plan = change.made(plan, own.site.latitude);
        if let Some(with) = with {
            plan = with.made(&plan, own.site.latitude);
        }
        let system = System::resolve(&plan, own.climate.clone(), &mut ()).ok()?;
        let years = on.sizing.years.len();
        let sizing = Sizing::new(&system, &Outlook::of(&system), &self.spread, years);
        let course = Course::of(&sizing, on.promise);
        let proof = Proof::new(&course, Size::OWN, Amps::ZERO);
        Some(Trial { change, with, sizing, course, proof })
    }

    /// What the best tilt comes to, once it is known.
    pub(super) fn tilted(&self) -> Option<&Helped> {
        let tilted = |own: &&Helped| matches!(own.change, Change::Tilted { .. });
        self.found.iter().filter(|own| own.with.is_none()).find(tilted)
    }

    /// What less and more of a reserve come to, as far as they are known.
    pub(super) fn reserves(&self) -> impl Iterator<Item = &Helped> {
        self.found.iter().filter(|own| matches!(own.change, Change::Reserve { .. }))
    }

    /// Share of it that is done.
    pub(super) fn done(&self) -> f64 {
        let part = self.trial.as_ref().map_or(0.0, |trial| 1.0 - trial.proof.done(&trial.course));
        let left = (self.waiting.len() as f64 + part) / (self.all as f64).max(1.0);
        // Pairs may come behind the single changes.
        if self.paired { 0.8 + 0.2 * (1.0 - left) } else { 0.8 * (1.0 - left) }
    }

    /// The changes that help, the best first: those that keep the promise before others, of those the least effort, of others that which takes
    /// most off what is short by the effort. Where prices were stated what is bought counts by them.
    pub(super) fn ranked(&self, plan: &Document, rates: Option<Rates>, now: f64) -> Vec<Helped> {
        let helps = |own: &&Helped| {
            own.shortage < now - NO_HELP && !matches!(own.change, Change::Reserve { .. })
        };
        let effort = |own: &Helped| {
            let of = |change: &Change| effort(change, plan, rates);
            of(&own.change) + own.with.as_ref().map_or(0.0, of)
        };
        let rank = |own: &Helped| match own.kept {
            true => effort(own),
            false => effort(own) / (now - own.shortage),
        };
        let order = |a: &Helped, b: &Helped| {
            let rank = rank(a).total_cmp(&rank(b));
            b.kept.cmp(&a.kept).then(rank).then(a.shortage.total_cmp(&b.shortage))
        };
        // Put where it belongs, one by one: there are few, and a sort of their own would cost the page a kilobyte.
        let mut all: Vec<Helped> = Vec::new();
        for own in self.found.iter().filter(helps) {
            all.insert(all.partition_point(|other| order(other, own).is_le()), *own);
        }
        all
    }
}

/// Whether two changes are of the same thing.
fn alike(one: &Change, other: &Change) -> bool {
    use Change::{Direct, LessUse, OtherMonths};
    match (one, other) {
        (
            LessUse { load, .. } | Direct { load },
            LessUse { load: own, .. } | Direct { load: own },
        ) => load == own,
        (OtherMonths { .. }, OtherMonths { .. }) => true,
        _ => false,
    }
}

/// The effort of a change; of bank and array by what they cost, the cheaper of the two as much as without prices.
fn effort(change: &Change, plan: &Document, rates: Option<Rates>) -> f64 {
    let Some(rates) = rates else { return change.effort() };
    let bank = plan.bank.capacity_ah * plan.bank.in_series * rates.bank_ah;
    let string = |array: &Array| array.module_w * array.in_series * rates.array_w;
    let array = plan.arrays.iter().filter(|array| array.on).map(string).reduce(f64::min);
    let cheaper = array.map_or(bank, |array| f64::min(array, bank));
    let price = match change {
        Change::MoreBank => bank,
        Change::MoreArray { array } => plan.arrays.get(usize::from(*array)).map_or(0.0, string),
        _ => cheaper,
    };
    if cheaper > 0.0 { change.effort() * price / cheaper } else { change.effort() }
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
