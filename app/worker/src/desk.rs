//! The desk: takes requests at any time and works them off one by one, so that a newer plan can stop what is no longer
//! wanted.

use std::collections::VecDeque;

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{Outlook, Question};
use sunlarder_engine::quantity::Degrees;
use sunlarder_engine::share;
use sunlarder_engine::simulate::Sunlight;
use sunlarder_engine::sun::Site;
use sunlarder_engine::system::System;
use sunlarder_engine::words::{Language, lines};
use sunlarder_engine::working::Working;

use crate::message::{Request, Worked, bit, climate_of};
use crate::sheet::sheet;

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
}

/// Takes requests and answers them.
#[derive(Debug)]
pub struct Desk {
    language: Language,
    serial: u32,
    plan: Option<Plan>,
    waiting: VecDeque<Question>,
    /// What the sun gives, kept from plan to plan.
    sunlight: Sunlight,
}

impl Desk {
    /// An empty desk that answers in a language.
    #[must_use]
    pub fn new(language: Language) -> Self {
        Self {
            language,
            serial: 0,
            plan: None,
            waiting: VecDeque::new(),
            sunlight: Sunlight::default(),
        }
    }

    /// Takes a request. A plan puts away whatever waits for an older one; a request about another plan than the newest is
    /// not heeded.
    pub fn take(&mut self, request: Request) {
        match request {
            Request::Plan { serial, code, climate } => {
                self.serial = serial;
                self.waiting.clear();
                // The page names the plan again with every wish; what is known of it stays.
                if !self.plan.as_ref().is_some_and(|own| own.code == code && own.climate == climate)
                {
                    self.plan = Plan::read(code, climate);
                }
            }
            Request::Work { serial, questions } if serial == self.serial => {
                let asked = Question::ALL.into_iter().filter(|own| questions & bit(*own) != 0);
                for question in asked {
                    if !self.waiting.contains(&question) {
                        self.waiting.push_back(question);
                    }
                }
            }
            Request::Work { .. } => {}
        }
    }

    /// Works off one piece of what waits; nothing if nothing does, or if the plan cannot be read.
    pub fn work(&mut self) -> Option<Worked> {
        let question = self.waiting.pop_front()?;
        let Plan { document, system, outlook, .. } = self.plan.as_mut()?;
        let sunlight = &mut self.sunlight;
        let outlook = outlook.get_or_insert_with(|| Outlook::in_sunlight(system, sunlight));
        let mut working = Working::new();
        outlook.work(question, system, &mut working);
        let lines = lines(&working, self.language, &|tag| self.language.name_in(document, tag));
        Some(Worked { serial: self.serial, question, sheet: sheet(&lines) })
    }
}

impl Plan {
    /// The plan of a code, if the page sent one that can be resolved.
    fn read(code: String, climate: Vec<f64>) -> Option<Self> {
        let document = share::decode(&code).ok()?;
        let place = &document.place;
        let site =
            Site { latitude: Degrees(place.latitude_deg), longitude: Degrees(place.longitude_deg) };
        let found = climate_of(site, &climate)?;
        let system = System::resolve(&document, found, &mut ()).ok()?;
        Some(Self { code, climate, document, system, outlook: None })
    }
}
