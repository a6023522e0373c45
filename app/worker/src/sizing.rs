//! The study of a plan at the desk: how big it should be, and what would help. It is worked off piece by piece, and what is known of it is
//! told again and again until it is complete.

use core::fmt;

use sunlarder_engine::digits;
use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::share;
use sunlarder_engine::sizing::{Answer, Question, Rows, Size, Study, Track};
use sunlarder_engine::system::System;
use sunlarder_engine::words::Words;

use crate::leaf::{Leaf, Written, draw_sizes, sizes_numbers, write_helping, write_sizing};
use crate::message::MONTHS;

/// A study in the making, of one plan and one place.
#[derive(Debug)]
pub(crate) struct Sizing {
    /// The argument it was made by, to know it again.
    argument: String,
    /// Nothing where a plan cannot be sized.
    study: Option<Study>,
    /// Something is told whenever this has changed.
    known: u64,
    /// Whether nothing is left to be worked out.
    over: bool,
    /// The picture of the map, and of what: drawn anew only for what changes it as a whole.
    picture: Option<(Picture, String)>,
}

/// What a picture of the map shows.
#[derive(Debug, PartialEq)]
struct Picture {
    map: (bool, bool),
    suggested: Answer<Size>,
    words: Words,
}

/// Of the work so much is told each time, at least (ratio).
const TOLD: f64 = 0.2;

impl Sizing {
    /// The study that an argument, the twelve spreads of the daily clearness, means for a plan.
    #[must_use]
    pub(crate) fn new(argument: &str, plan: &Document, system: &System, outlook: &Outlook) -> Self {
        let spread: Option<Vec<f64>> = argument.split(' ').map(digits::number).collect();
        let spread: Option<[f64; MONTHS]> = spread.and_then(|own| own.try_into().ok());
        let made = |spread| Study::new(plan, system, outlook, &spread, Question::stated(plan)).ok();
        Self {
            argument: argument.to_owned(),
            study: spread.and_then(made),
            known: 0,
            over: false,
            picture: None,
        }
    }

    /// Whether it is that of an argument.
    #[must_use]
    pub(crate) fn is_of(&self, argument: &str) -> bool {
        self.argument == argument
    }

    /// A mark of what is known, by which what was told is compared; it changes with every result and with so much of the work.
    #[must_use]
    pub(crate) fn known(&self) -> u64 {
        self.known
    }

    /// Whether there is anything to tell in a leaf: what was told of the plan before stays until then, so that the page is not made anew for
    /// nothing.
    pub(crate) fn tells(&self, leaf: Leaf) -> bool {
        let Some(study) = &self.study else { return true };
        match leaf {
            Leaf::Sizes => study.map().is_coarse(),
            Leaf::Sizing => study.standing().is_some(),
            _ => study.map().is_whole(),
        }
    }

    /// Works off the next piece; whether there was one.
    pub(crate) fn advance(&mut self, rows: &mut dyn Rows) -> bool {
        let Some(study) = self.study.as_mut().filter(|_| !self.over) else { return false };
        let before = Results::of(study);
        self.over = !study.advance(rows);
        if self.over || Results::of(study) != before {
            self.known += 1;
        }
        true
    }

    /// Writes what is known; nothing of a plan that cannot be sized.
    #[must_use]
    pub(crate) fn write(&mut self, leaf: Leaf, words: Words) -> Written {
        match &self.study {
            Some(study) if leaf == Leaf::Sizes => {
                let map = (study.map().is_coarse(), study.map().is_whole());
                let shown = Picture { map, suggested: study.suggested(), words };
                if self.picture.as_ref().is_none_or(|own| own.0 != shown) {
                    self.picture = Some((shown, draw_sizes(study, words)));
                }
                let text = self.picture.as_ref().map(|own| own.1.clone()).unwrap_or_default();
                Written { text, numbers: sizes_numbers(study) }
            }
            Some(study) if leaf == Leaf::Sizing => write_sizing(study, words),
            Some(study) => write_helping(study, words),
            None => Written::default(),
        }
    }

    /// The link code of the plan with the size at the places of its bank and array on the map; blank if there is none.
    #[must_use]
    pub(crate) fn sized_plan(&self, argument: &str) -> String {
        let place = |own: Option<&str>| own.and_then(|own| own.parse::<usize>().ok());
        let mut places = argument.split(' ');
        let (bank, array) = (place(places.next()), place(places.next()));
        let plan = self
            .study
            .as_ref()
            .zip(bank.zip(array))
            .map(|(study, (bank, array))| study.map().size(bank, array).adopted(study.plan()));
        plan.and_then(|plan| share::encode(&plan).ok()).unwrap_or_default()
    }
}

/// What has come out so far, as far as it is told apart.
#[derive(PartialEq)]
struct Results {
    parts_done: u32,
    map: (bool, bool),
    standing: bool,
    sizes: [Answer<Size>; 3],
    charger: Answer<u32>,
    helped: usize,
}

impl Results {
    fn of(study: &Study) -> Self {
        let map = study.map();
        Self {
            parts_done: (study.done() / TOLD) as u32,
            map: (map.is_coarse(), map.is_whole()),
            standing: study.standing().is_some(),
            sizes: [study.suggested(), study.smallest_bank(), study.smallest_array()],
            charger: study.charger_hours(),
            helped: study.helped().len(),
        }
    }
}

/// Whoever takes rows of sizes through hours: this program, until somebody brings a faster one.
pub(crate) struct Hand(pub(crate) Box<dyn Rows>);

impl Default for Hand {
    fn default() -> Self {
        Self(Box::new(Track::default()))
    }
}

impl fmt::Debug for Hand {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Hand")
    }
}
