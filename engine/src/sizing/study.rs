//! The whole question of one plan: how big must it be, and what would help?
//!
//! **Method.** A study is worked off in small pieces, from coarse to fine: the coarse map of the first weather years, how the plan does as it
//! stands, the whole map, a suggestion, the smallest bank and array, hours of a charger, and what would help. Every result can be read
//! as soon as it is there; between two pieces the study can be thrown away. Rows of the map are asked of [`Rows`], which is this
//! program or another one beside it.
//!
//! **Plans without an array** are studied beside one module at the best tilt ([`beside_an_array`]); what they are themselves is then a size
//! without an array.

use super::answers::{Voltage, voltages};
use super::arrival::Arrival;
use super::full::Proof;
use super::help::{Helped, Trying};
use super::map::{Map, Rates};
use super::promise::{Promise, error};
use super::search::{Along, Answer, Ground, Search};
use super::suggest::Suggestion;
use super::units::Units;
use super::{Counts, MONTHS, Rows, Size, Sizing, YEARS, beside_an_array, has_array};
use crate::document::{Document, Problem};
use crate::outlook::Outlook;
use crate::quantity::{Amps, Degrees};
use crate::system::System;

/// What is asked about a plan.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Question {
    /// What it promises.
    pub promise: Promise,
    /// What bank and array cost, if somebody said so.
    pub price: Option<Rates>,
    /// What they weigh.
    pub weight: Option<Rates>,
}

/// How a plan does as it stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standing {
    /// Chance that it keeps its promise (ratio).
    pub chance: f64,
    /// How far luck alone may move that (ratio).
    pub error: f64,
    /// Weather years behind it.
    pub years: usize,
    /// Short days a year, or share of trials that fail.
    pub shortage: f64,
    /// Whether it keeps its promise.
    pub kept: bool,
}

/// The best tilt of a plan's arrays, facing the equator.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tilted {
    /// The tilt.
    pub tilt: Degrees,
    /// The month in which it brings most, January being 0: the tightest that counts.
    pub month: usize,
    /// Chance of the promise with it (ratio), once it is known; none either if it changes nothing.
    pub chance: Option<f64>,
}

/// What is worked on.
#[derive(Debug)]
enum Stage {
    Map,
    Suggestion(Suggestion),
    Bank(Search),
    Array(Search),
    Charger(Search),
    Changes,
    End,
}

/// Share of the work before each stage, measured in browsers.
const BEFORE: [f64; 7] = [0.0, 0.22, 0.27, 0.37, 0.46, 0.55, 1.0];

/// A question on its way to its answers.
#[derive(Debug)]
pub struct Study {
    plan: Document,
    question: Question,
    sizing: Sizing,
    own: Size,
    units: Units,
    map: Map,
    standing: Proof,
    suggested: Answer<Size>,
    bank: Answer<Size>,
    array: Answer<Size>,
    charger: Answer<u32>,
    trying: Trying,
    arrival: Option<Arrival>,
    stage: Stage,
}

impl Study {
    /// A study of a plan over the usual number of weather years. System and outlook are those of the plan, the spread that of the daily
    /// clearness in each month.
    ///
    /// # Errors
    /// A plan without arrays may have no room for one.
    pub fn new(
        plan: &Document,
        system: &System,
        outlook: &Outlook,
        spread: &[f64; MONTHS],
        question: Question,
    ) -> Result<Self, Problem> {
        Self::over(plan, system, outlook, spread, question, YEARS)
    }

    /// The same over so many weather years.
    ///
    /// # Errors
    /// See [`new`](Self::new).
    pub fn over(
        plan: &Document,
        system: &System,
        outlook: &Outlook,
        spread: &[f64; MONTHS],
        question: Question,
        years: usize,
    ) -> Result<Self, Problem> {
        let promise = &question.promise;
        let sizing = Sizing::new(system, outlook, spread, years);
        let (plan, sizing, own) = if has_array(system) {
            (plan.clone(), sizing, Size::OWN)
        } else {
            let plan = beside_an_array(plan, system, sizing.tightest(promise));
            let system = System::resolve(&plan, system.climate.clone(), &mut ())?;
            let sizing = Sizing::new(&system, &Outlook::of(&system), spread, years);
            (plan, sizing, Size { array: 0.0, ..Size::OWN })
        };
        let map = Map::new(&sizing, promise);
        let standing = Proof::new(map.course(), own, Amps::ZERO);
        // What would help an array that is not there yet is not asked.
        let trying = if own.array > 0.0 {
            Trying::new(&plan, &sizing, spread, promise)
        } else {
            Trying::default()
        };
        Ok(Self {
            units: Units::of(&plan),
            plan,
            question,
            sizing,
            own,
            map,
            standing,
            suggested: Answer::Open,
            bank: Answer::Open,
            array: Answer::Open,
            charger: Answer::Open,
            trying,
            arrival: None,
            stage: Stage::Map,
        })
    }

    /// Works off the next piece; whether there was one.
    pub fn advance(&mut self, rows: &mut dyn Rows) -> bool {
        let on = Ground {
            sizing: &self.sizing,
            course: self.map.course(),
            promise: &self.question.promise,
        };
        let goes_on = match &mut self.stage {
            Stage::Map if self.map.is_whole() && !self.standing.is_whole(on.course) => {
                let goes_on = self.standing.advance(&self.sizing, self.map.course());
                if self.standing.is_whole(on.course) && self.own.array > 0.0 {
                    self.trying.begin(on, &self.standing.counts);
                    self.arrival = Some(self.sizing.arrival());
                }
                goes_on
            }
            Stage::Map => self.map.advance(&self.sizing, rows),
            Stage::Suggestion(own) => own.advance(on),
            Stage::Bank(own) | Stage::Array(own) | Stage::Charger(own) => own.advance(on),
            Stage::Changes => {
                let now = promise_short(on, &self.standing);
                self.trying.advance(on, &self.plan, self.question.price, now)
            }
            Stage::End => return false,
        };
        if !goes_on {
            self.next_stage();
        }
        true
    }

    /// Takes the answer of the stage that is over, and begins the next.
    fn next_stage(&mut self) {
        let (map, promise, own) = (&self.map, &self.question.promise, self.own);
        let kept = self.standing().is_some_and(|standing| standing.kept);
        self.stage = match &self.stage {
            Stage::Map if kept => {
                self.suggested = Answer::Is(own);
                self.search(Along::Bank)
            }
            Stage::Map => Stage::Suggestion(Suggestion::new(map, promise, own, self.units)),
            Stage::Suggestion(found) => {
                self.suggested = found.end();
                self.search(Along::Bank)
            }
            Stage::Bank(found) => {
                self.bank = found.end().map(|bank| Size { bank, ..own });
                self.search(Along::Array)
            }
            Stage::Array(found) => {
                self.array = found.end().map(|array| Size { array, ..own });
                if kept { Stage::Changes } else { self.search(Along::Charger) }
            }
            Stage::Charger(found) => {
                self.charger = found.end().map(|hours| hours as u32);
                Stage::Changes
            }
            Stage::Changes | Stage::End => Stage::End,
        };
    }

    /// A search along an axis that begins where the map says.
    fn search(&self, along: Along) -> Stage {
        let guess = match along {
            Along::Bank => self.map.least_bank(&self.question.promise, self.own.array),
            Along::Array => self.map.least_array(&self.question.promise, self.own.bank),
            Along::Charger => None,
        };
        let search = Search::new(along, self.own, guess);
        match along {
            Along::Bank => Stage::Bank(search),
            Along::Array => Stage::Array(search),
            Along::Charger => Stage::Charger(search),
        }
    }

    /// Share of the work that is done; it never goes back.
    #[must_use]
    pub fn done(&self) -> f64 {
        let course = self.map.course();
        let (at, share) = match &self.stage {
            Stage::Map => (0, 0.95 * self.map.done() + 0.05 * self.standing.done(course)),
            Stage::Suggestion(own) => (1, own.done()),
            Stage::Bank(own) => (2, own.done(course)),
            Stage::Array(own) => (3, own.done(course)),
            Stage::Charger(own) => (4, own.done(course)),
            Stage::Changes => (5, self.trying.done()),
            Stage::End => return 1.0,
        };
        BEFORE[at] + (BEFORE[at + 1] - BEFORE[at]) * share
    }
}

/// What is short as the plan stands.
fn promise_short(on: Ground<'_>, standing: &Proof) -> f64 {
    on.promise.shortage_of(&standing.counts, &on.course.trials)
}

/// What is known so far.
impl Study {
    /// The plan, with the array that was put beside it if it has none.
    #[must_use]
    pub fn plan(&self) -> &Document {
        &self.plan
    }

    /// What was asked.
    #[must_use]
    pub fn question(&self) -> &Question {
        &self.question
    }

    /// The plan made ready.
    #[must_use]
    pub fn sizing(&self) -> &Sizing {
        &self.sizing
    }

    /// The plan's own size: without arrays it has none of the one that it is sized by.
    #[must_use]
    pub fn own(&self) -> Size {
        self.own
    }

    /// The steps in which bank and arrays can grow.
    #[must_use]
    pub fn units(&self) -> Units {
        self.units
    }

    /// The map, as far as it is known.
    #[must_use]
    pub fn map(&self) -> &Map {
        &self.map
    }

    /// How the plan does as it stands.
    #[must_use]
    pub fn standing(&self) -> Option<Standing> {
        let course = self.map.course();
        self.standing.is_whole(course).then(|| {
            let promise = &self.question.promise;
            let counts: &[Counts] = &self.standing.counts;
            let chance = promise.chance_of(counts, &course.trials);
            Standing {
                chance,
                error: error(chance, course.years()),
                years: course.years(),
                shortage: promise.shortage_of(counts, &course.trials),
                kept: promise.is_kept_by(chance),
            }
        })
    }

    /// Places on the map of the smallest combinations that keep the promise.
    #[must_use]
    pub fn frontier(&self) -> Vec<(usize, usize)> {
        self.map.frontier(&self.question.promise)
    }

    /// A size in whole batteries and modules that keeps the promise, proved; the plan's own if it does.
    #[must_use]
    pub fn suggested(&self) -> Answer<Size> {
        self.suggested
    }

    /// The smallest bank beside the array as it is.
    #[must_use]
    pub fn smallest_bank(&self) -> Answer<Size> {
        self.bank
    }

    /// The smallest array beside the bank as it is.
    #[must_use]
    pub fn smallest_array(&self) -> Answer<Size> {
        self.array
    }

    /// Whole hours a week of a charger ([`Sizing::charger`]) that close the gap; open for ever where there is none.
    #[must_use]
    pub fn charger_hours(&self) -> Answer<u32> {
        self.charger
    }

    /// The cheapest point of the frontier and its price, where prices were stated.
    #[must_use]
    pub fn cheapest(&self) -> Option<(Size, f64)> {
        self.map.least_by(&self.sizing, &self.question.promise, self.question.price?)
    }

    /// The lightest point of the frontier and its weight, where weights were stated.
    #[must_use]
    pub fn lightest(&self) -> Option<(Size, f64)> {
        self.map.least_by(&self.sizing, &self.question.promise, self.question.weight?)
    }

    /// The best tilt of the plan's arrays; none without any.
    #[must_use]
    pub fn tilt(&self) -> Option<Tilted> {
        let (tilt, month) = self.sizing.best_tilt(&self.question.promise);
        let chance = self.trying.tilted().map(|helped| helped.chance);
        (self.own.array > 0.0).then_some(Tilted { tilt, month, chance })
    }

    /// What the common system voltages mean.
    #[must_use]
    pub fn voltages(&self) -> [Voltage; 3] {
        let mut system = self.sizing.system().clone();
        if self.own.array <= 0.0 {
            system.arrays.clear();
        }
        voltages(&system)
    }

    /// What the promise comes to with less and with more of a reserve, as far as that is known.
    pub fn reserves(&self) -> impl Iterator<Item = &Helped> {
        self.trying.reserves()
    }

    /// How late one can arrive with the bank at its reserve; none without an array.
    #[must_use]
    pub fn arrival(&self) -> Option<Arrival> {
        self.arrival
    }

    /// The changes that help, as far as they are known, the most helpful first.
    #[must_use]
    pub fn helped(&self) -> Vec<Helped> {
        let now = self.standing().map_or(0.0, |standing| standing.shortage);
        self.trying.ranked(&self.plan, self.question.price, now)
    }
}
