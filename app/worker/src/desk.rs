//! The desk: takes requests at any time and works them off one by one, so that a newer plan can stop what is no longer
//! wanted.

use std::collections::VecDeque;

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{WeatherFile, WeatherFileFault};
use sunlarder_engine::quantity::Degrees;
use sunlarder_engine::share;
use sunlarder_engine::simulate::{Chances, Ensemble, Extent, Sunlight};
use sunlarder_engine::sizing::Rows;
use sunlarder_engine::sun::Site;
use sunlarder_engine::system::System;
use sunlarder_engine::words::Words;

use crate::gauging::Gauging;
use crate::leaf::{self, About, Leaf, Written};
use crate::logbook::Weighed;
use crate::message::{Answer, MONTHS, Request, climate_of};
use crate::sentences::{PART, list};
use crate::sizing::{Hand, Sizing};
use crate::{INSTALLED, PLANNER};

/// The plan on the desk and what is known of it.
#[derive(Debug)]
struct Plan {
    /// What it came as, to know it again.
    code: String,
    climate: Vec<f64>,
    document: Document,
    system: System,
    /// Computed when somebody first asks.
    outlook: Option<Outlook>,
    /// What weather does with it, as far as it is worked out.
    weather: Option<Weather>,
    /// How big it should be, as far as it is worked out.
    sizing: Option<Sizing>,
    /// Its gauge, once somebody has turned it.
    gauging: Option<Gauging>,
    /// What its readings say, once somebody asked.
    weighed: Option<Weighed>,
    /// The carpet of its year as it was written last: that takes as long as all else that is written after an edit.
    carpet: Option<Carpet>,
}

/// An ensemble in the making.
#[derive(Debug)]
struct Weather {
    spread: [f64; MONTHS],
    ensemble: Ensemble,
    /// Blocks that were in what was said last; none before anything was.
    said: Option<u32>,
}

/// A year of weather that somebody brought.
#[derive(Debug)]
struct Year {
    /// Where the plan was for which it came.
    site: Site,
    /// What it holds, or why it was refused.
    file: Result<WeatherFile, WeatherFileFault>,
}

/// A carpet that was written: by which words, with which argument, and what came of it.
type Carpet = (Words, String, Written);

/// Something that is to be written about the plan.
#[derive(Debug)]
struct Wish {
    number: u32,
    leaf: Leaf,
    argument: String,
}

/// Something that is told again whenever more of it is known.
#[derive(Debug)]
struct Living {
    wish: Wish,
    /// What was known when it was looked at last.
    seen: Option<u64>,
    /// What was told last.
    told: Option<Written>,
}

/// Something is said of the weather whenever so many more blocks are known.
const BLOCKS_BETWEEN: u32 = 8;

/// Takes requests and answers them.
#[derive(Debug)]
pub struct Desk {
    words: Words,
    serial: u32,
    plan: Option<Plan>,
    waiting: VecDeque<Wish>,
    living: Vec<Living>,
    /// Whether weather is wanted.
    foretelling: bool,
    /// Kept until the plan is at another place or somebody takes it away.
    year: Option<Year>,
    /// Whether it is to be replayed.
    replaying: bool,
    /// What the sun gives, kept from plan to plan.
    sunlight: Sunlight,
    /// Whoever takes rows of sizes through hours.
    rows: Hand,
    /// Whoever does it from the next study on.
    next_rows: Option<Hand>,
}

impl Desk {
    /// An empty desk that answers in a language, by the usual habits until a plan comes with others.
    #[must_use]
    pub fn new(words: Words) -> Self {
        Self {
            words,
            serial: 0,
            plan: None,
            waiting: VecDeque::new(),
            living: Vec::new(),
            foretelling: false,
            year: None,
            replaying: false,
            sunlight: Sunlight::default(),
            rows: Hand::default(),
            next_rows: None,
        }
    }

    /// Has rows of sizes taken through hours by somebody else, from the next study on: the hours of one stay where they are.
    pub fn bring_rows(&mut self, rows: Box<dyn Rows>) {
        self.next_rows = Some(Hand(rows));
    }

    /// Takes a request. A plan puts away whatever waits for an older one; a request about another plan than the newest is
    /// not heeded. What cannot be read or resolved leaves the desk without a plan, and only what needs none is written then.
    pub fn take(&mut self, request: Request) {
        match request {
            Request::Plan { serial, code, habits, climate } => {
                self.words.habits = habits;
                self.serial = serial;
                self.waiting.clear();
                self.living.clear();
                self.foretelling = false;
                self.replaying = false;
                // The page names the plan again with every wish; what is known of it stays.
                if !self.plan.as_ref().is_some_and(|own| own.code == code && own.climate == climate)
                {
                    let before = self.plan.take();
                    self.plan = Plan::read(code, climate).map(|plan| plan.after(before));
                }
            }
            Request::Leaf { serial, wish: number, leaf, argument } if serial == self.serial => {
                let wish = Wish { number, leaf, argument };
                if leaf.lives() {
                    if self.living.iter().all(|own| own.wish.number != number) {
                        self.living.push(Living { wish, seen: None, told: None });
                    }
                } else if let Some(own) = self.waiting.iter_mut().find(|own| own.number == number) {
                    // Of something that is turned only what is newest is wanted.
                    *own = wish;
                } else {
                    self.waiting.push_back(wish);
                }
            }
            Request::Weather { serial, spread } if serial == self.serial => self.foretell(spread),
            Request::Year { code, text } if PLANNER => {
                self.year = text.and_then(|text| Year::read(&code, &text));
            }
            Request::Replay { serial } if serial == self.serial => self.replaying = true,
            Request::Leaf { .. }
            | Request::Weather { .. }
            | Request::Year { .. }
            | Request::Replay { .. } => {}
        }
    }

    /// Starts to run the plan through weather, or says again what is known of it.
    fn foretell(&mut self, spread: [f64; MONTHS]) {
        let Some(Plan { system, outlook, weather, .. }) = self.plan.as_mut() else { return };
        self.foretelling = true;
        if let Some(weather) = weather.as_mut().filter(|weather| weather.spread == spread) {
            weather.said = None;
            return;
        }
        let sunlight = &mut self.sunlight;
        let outlook = outlook.get_or_insert_with(|| Outlook::in_sunlight(system, sunlight));
        let ensemble = outlook.ensemble(system, &spread, Extent::default());
        *weather = Some(Weather { spread, ensemble, said: None });
    }

    /// Works off one piece of what waits. Nothing if nothing waits; nothing to say yet if there is more to do. What somebody
    /// looks at comes before the weather.
    pub fn work(&mut self) -> Option<Option<Answer>> {
        if let Some(wish) = self.waiting.pop_front() {
            return Some(self.write(&wish));
        }
        if PLANNER && core::mem::take(&mut self.replaying) {
            return Some(self.replay());
        }
        let foretold = self.foretelling.then(|| self.go_on()).flatten();
        self.foretelling = foretold.is_some();
        foretold.or_else(|| if PLANNER { self.size() } else { None })
    }

    /// Tells what is new of the sizes, or works off one piece of them; nothing if all is known and told.
    fn size(&mut self) -> Option<Option<Answer>> {
        let Plan { document, system, outlook, sizing, .. } = self.plan.as_mut()?;
        let argument = &self.living.first()?.wish.argument;
        if !sizing.as_ref().is_some_and(|own| own.is_of(argument)) {
            let sunlight = &mut self.sunlight;
            let outlook = outlook.get_or_insert_with(|| Outlook::in_sunlight(system, sunlight));
            *sizing = Some(Sizing::new(argument, document, system, outlook));
            if let Some(rows) = self.next_rows.take() {
                self.rows = rows;
            }
        }
        let sizing = sizing.as_mut()?;
        let known = Some(sizing.known());
        for own in &mut self.living {
            if own.seen == known || !sizing.tells(own.wish.leaf) {
                continue;
            }
            own.seen = known;
            let written = sizing.write(own.wish.leaf, self.words);
            if own.told.as_ref() != Some(&written) {
                own.told = Some(written.clone());
                let wish = own.wish.number;
                return Some(Some(Answer::Written { serial: self.serial, wish, written }));
            }
        }
        sizing.advance(&mut *self.rows.0).then_some(None)
    }

    fn write(&mut self, wish: &Wish) -> Option<Answer> {
        if !wish.leaf.needs_plan() {
            let written = leaf::write_without_plan(wish.leaf, &wish.argument, self.words.language)?;
            return Some(Answer::Written { serial: self.serial, wish: wish.number, written });
        }
        let Plan { document, system, outlook, sizing, gauging, weighed, carpet, .. } =
            self.plan.as_mut()?;
        if PLANNER && wish.leaf == Leaf::SizedPlan {
            let text =
                sizing.as_ref().map(|own| own.sized_plan(&wish.argument)).unwrap_or_default();
            let written = Written { text, numbers: Vec::new() };
            return Some(Answer::Written { serial: self.serial, wish: wish.number, written });
        }
        let sunlight = &mut self.sunlight;
        let outlook = outlook.get_or_insert_with(|| Outlook::in_sunlight(system, sunlight));
        let about = About { words: self.words, document, system, outlook };
        let written = if INSTALLED && wish.leaf.is_gauge_year() {
            let text = gauge_year(wish, gauging, about);
            Written { text: text.unwrap_or_default(), numbers: Vec::new() }
        } else if INSTALLED && wish.leaf.weighs() {
            let spreads = spreads_in(wish);
            if !weighed.as_ref().is_some_and(|own| own.is_with(spreads)) {
                *weighed = Weighed::of(spreads, document, system);
            }
            leaf::write_weighed(wish.leaf, &wish.argument, weighed.as_ref(), about)
        } else if PLANNER && wish.leaf == Leaf::Year {
            carpet_of(wish, carpet, about)
        } else {
            leaf::write(wish.leaf, &wish.argument, about)
        };
        Some(Answer::Written { serial: self.serial, wish: wish.number, written })
    }

    /// What the year that was brought does with the plan; nothing to say if there is none.
    fn replay(&mut self) -> Option<Answer> {
        let Plan { system, outlook, .. } = self.plan.as_mut()?;
        let (serial, year) = (self.serial, self.year.take()?);
        // The year of another place is let go.
        self.year = (year.site == system.site).then_some(year);
        let (sentences, path) = match self.year.as_ref().map(|year| &year.file) {
            None => (String::new(), Vec::new()),
            Some(Err(fault)) => (list(&[self.words.weather_file_fault(fault)]), Vec::new()),
            Some(Ok(file)) => {
                let sunlight = &mut self.sunlight;
                let outlook = outlook.get_or_insert_with(|| Outlook::in_sunlight(system, sunlight));
                let replayed = outlook.replay(system, file);
                let path = replayed.path().into_iter().enumerate();
                let path = path.flat_map(|(hour, charge)| [hour as f64, charge]);
                (list(&self.words.replayed(&replayed, system)), path.collect())
            }
        };
        Some(Answer::Replayed { serial, sentences, path })
    }

    /// One task of the ensemble; nothing if it is complete and has been said.
    fn go_on(&mut self) -> Option<Option<Answer>> {
        let Plan { system, outlook, weather, .. } = self.plan.as_mut()?;
        let (outlook, weather) = (outlook.as_ref()?, weather.as_mut()?);
        let more = weather.ensemble.advance();
        let [runs, blocks] = weather.ensemble.made();
        let complete = weather.ensemble.done() >= 1.0;
        // The band as soon as it is there, then what the years say, from coarse to fine.
        let due = match weather.said {
            None => complete || runs > 0 && (blocks > 0 || !more),
            Some(said) => complete && said < blocks || blocks >= said + BLOCKS_BETWEEN,
        };
        if !due {
            return more.then_some(None);
        }
        weather.said = Some(blocks);
        let chances = weather.ensemble.chances();
        let month = (blocks > 0).then(|| self.words.month_kept(&chances, outlook));
        let first = [Some(self.words.when_reserve_comes(&chances, system)), month];
        let first = first.into_iter().flatten().filter(|sentence| !sentence.is_empty());
        let mut sentences = vec![first.collect::<Vec<_>>().join(" ")];
        sentences.extend(chances.months_kept.iter().map(|years| match blocks {
            0 => String::new(),
            _ => self.words.of_ten_years(years),
        }));
        sentences.extend(self.words.over_years(&chances));
        sentences.push(self.words.doubt(weather.ensemble.trust(), &chances));
        let kept = chances.months_kept.get(outlook.month);
        Some(Some(Answer::Foretold {
            seldom: blocks > 0 && kept.is_some_and(|years| years.middle < 5.0),
            serial: self.serial,
            done: weather.ensemble.done(),
            sentences: list(&sentences),
            band: band(&chances),
        }))
    }
}

/// The spreads in the argument of a wish that tells of weighed readings: behind the place of what is asked for, or alone.
fn spreads_in(wish: &Wish) -> &str {
    match wish.leaf {
        Leaf::Logbook => &wish.argument,
        _ => wish.argument.split_once(' ').map_or("", |own| own.1),
    }
}

/// Low and high edge and the share that has reached the reserve, hour by hour \[%\].
fn band(chances: &Chances) -> Vec<f64> {
    let hours = chances.band.iter().zip(&chances.reached);
    hours.flat_map(|(range, reached)| [range.low, range.high, reached * 100.0]).collect()
}

impl Year {
    /// A year of weather for the place of a plan.
    fn read(code: &str, text: &str) -> Option<Self> {
        let site = site(&share::decode(code).ok()?);
        Some(Self { site, file: WeatherFile::read(text) })
    }
}

impl Plan {
    /// The plan of a code, if the page sent one that can be resolved.
    fn read(code: String, climate: Vec<f64>) -> Option<Self> {
        let document = share::decode(&code).ok()?;
        let found = climate_of(site(&document), &climate)?;
        let system = System::resolve(&document, found, &mut ()).ok()?;
        let (outlook, weather, sizing, gauging, weighed, carpet) = Default::default();
        Some(Self {
            code,
            climate,
            document,
            system,
            outlook,
            weather,
            sizing,
            gauging,
            weighed,
            carpet,
        })
    }
}

impl Plan {
    /// The same with what is known of the plan before it, if it only promises something else, was measured or was read again.
    fn after(mut self, before: Option<Self>) -> Self {
        let Some(mut before) = before else { return self };
        let promise = self.document.promise.take();
        let checks = core::mem::take(&mut self.document.checks);
        let logbook = self.document.logbook.take();
        before.document.promise = None;
        before.document.checks.clear();
        let read = before.document.logbook.take();
        if before.climate == self.climate && before.document == self.document {
            (self.outlook, self.weather, self.carpet) =
                (before.outlook, before.weather, before.carpet);
            self.gauging = before.gauging;
            self.weighed = before.weighed.filter(|_| read == logbook);
        }
        (self.document.promise, self.document.checks, self.document.logbook) =
            (promise, checks, logbook);
        self
    }
}

/// The carpet of the year: the one that is known, if it is the same.
fn carpet_of(wish: &Wish, known: &mut Option<Carpet>, about: About<'_>) -> Written {
    if let Some((words, argument, written)) = known
        && (*words, &*argument) == (about.words, &wish.argument)
    {
        return written.clone();
    }
    let written = leaf::write(wish.leaf, &wish.argument, about);
    *known = Some((about.words, wish.argument.clone(), written.clone()));
    written
}

/// What a gauge shows through the year; the course of the plan is worked out once.
fn gauge_year(wish: &Wish, gauging: &mut Option<Gauging>, about: About<'_>) -> Option<String> {
    let (spreads, given) = wish.argument.split_once(PART)?;
    if !gauging.as_ref().is_some_and(|own| own.is_of(spreads)) {
        *gauging = Gauging::new(spreads, about.system, about.outlook);
    }
    let own = gauging.as_ref()?;
    Some(match wish.leaf {
        Leaf::GaugeYear => leaf::write_year(about, own, given),
        _ => leaf::write_year_table(about, own, given),
    })
}

/// Where a plan is.
fn site(document: &Document) -> Site {
    let place = &document.place;
    Site { latitude: Degrees(place.latitude_deg), longitude: Degrees(place.longitude_deg) }
}
