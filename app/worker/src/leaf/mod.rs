//! The leaves: pieces of the page, or texts to keep, that the worker writes about a plan.
//!
//! **To add one:** a variant at the end of [`Leaf`] and of [`Leaf::ALL`], a file here that writes it, its arm in [`write()`]; the page
//! shows it by `view::leaf` or takes its text by `Worked::once`.

mod assumed;
mod beside;
mod catalogue;
mod climate;
mod code;
mod drawing;
mod explained;
mod fitting;
mod flow;
mod gauge;
mod guess;
mod inverter;
mod logbook;
mod other;
mod parts;
mod sheet;
mod sizes;
mod working;
mod year;

pub use code::code_of;
pub use explained::Topic;
pub(crate) use gauge::{write_year, write_year_table};
pub use guess::argument as guesses;
pub use other::argument as other;
pub use sizes::{SizesNumbers, draw_sizes, sizes_numbers, write_helping, write_sizing};

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{DayFlow, Outlook, Question, csv};
use sunlarder_engine::share;
use sunlarder_engine::simulate::Sunlight;
use sunlarder_engine::system::System;
use sunlarder_engine::words::{Language, Words};

use crate::logbook::Weighed;
use crate::paper::Paper;
use crate::{INSTALLED, PLANNER};

/// What can be written. Each has an argument, a text whose meaning is said here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leaf {
    /// How a figure was worked out; the argument is the place of the question in [`Question::ALL`].
    Working,
    /// The twelve months of sun and temperature that are used; no argument.
    Climate,
    /// What a field or a trade word means; the argument is the number of the [`Topic`]. It needs no plan.
    Explained,
    /// The printed sheet; the argument is the day, a space and the page's address.
    Sheet,
    /// The code of the plan's link; the argument is the page's address.
    Code,
    /// The run as a table for spreadsheets; the argument is `dark` for the one without sun.
    Csv,
    /// Another plan beside this one; the argument is made by [`other`].
    Beside,
    /// A question about the plan without its answer; the argument is the number of a
    /// [`Guessed`](sunlarder_engine::outlook::Guessed).
    Question,
    /// The answer with everybody's guesses; the argument is made by [`guesses`].
    Guesses,
    /// The catalogue of appliances; the argument is what somebody looks for, blank for all of it.
    Catalogue,
    /// The usual range of an appliance's power; the argument is its number.
    UsualRange,
    /// A button for the inverter that the loads need, where one is missing or too small; the argument means nothing.
    Inverter,
    /// The carpet of a year; the argument is `mean` for mean weather, or the number of a weather and the twelve spreads of the daily
    /// clearness. Its numbers are state of charge \[%\], voltage, current in and out \[A\] of every hour.
    Year,
    /// The table behind it; the same argument.
    YearTable,
    /// Where the energy of a day comes from and goes to; the argument means nothing.
    Flow,
    /// The table behind it.
    FlowTable,
    /// The map of sizes; the argument is the twelve spreads of the daily clearness. Its numbers are [`SizesNumbers`]. It is written again
    /// and again while it is worked out.
    Sizes,
    /// How the plan does as it stands and the least to add, in sentences; the same argument.
    Sizing,
    /// The direct answers and what would help; the same argument.
    Helping,
    /// The link code of the plan with a size of the map; the argument is the places of its bank and its array.
    SizedPlan,
    /// How the plan is wired; the argument means nothing.
    Fitting,
    /// How a run of it was worked out; the argument is its place among the runs.
    RunWorking,
    /// The wiring as a sheet for print; the argument is the day, a space and the page's address.
    FittingSheet,
    /// What the gauge is told; the argument means nothing.
    Gauge,
    /// How a setting of it was worked out; the argument is its place in [`Kind::ALL`](sunlarder_engine::gauge::Kind::ALL).
    SettingWorking,
    /// The commissioning sheet for print; the argument is the day, a space and the page's address.
    CommissioningSheet,
    /// What is to be measured, as [sentences](crate::sentences), five of each check; the argument means nothing.
    Checks,
    /// What of the simulated gauge can be turned; the argument means nothing.
    Knobs,
    /// What it shows beside the truth; the argument is the twelve spreads of the daily clearness, then parted as
    /// [sentences](crate::sentences) the place of a mistake, or nothing, and what stands in the boxes.
    GaugeYear,
    /// The table behind it; the same argument.
    GaugeYearTable,
    /// What the readings of the gauge say; the argument is the twelve spreads of the daily clearness.
    Logbook,
    /// What may be behind a symptom; the argument is its place in
    /// [`Symptom::ALL`](sunlarder_engine::logbook::Symptom::ALL), a blank and the twelve spreads.
    Suspects,
    /// The readings of the gauge as a table; the argument means nothing.
    Readings,
    /// What became of a table of readings: the link code of the plan with them, a mark if lines are left, and what is to be said, with
    /// [`PART`](crate::sentences::PART) between; the argument is the order in its dates (0, 1 or 2) and its text.
    TakenReadings,
    /// Upkeep and winter lay-up of the bank; the argument means nothing.
    Care,
    /// How something that was learned was worked out; the argument is its place in the study, a blank and the twelve spreads.
    LearnedWorking,
}

impl Leaf {
    /// All in the order of their numbers.
    pub const ALL: [Self; 36] = [
        Self::Working,
        Self::Climate,
        Self::Explained,
        Self::Sheet,
        Self::Code,
        Self::Csv,
        Self::Beside,
        Self::Question,
        Self::Guesses,
        Self::Catalogue,
        Self::UsualRange,
        Self::Inverter,
        Self::Year,
        Self::YearTable,
        Self::Flow,
        Self::FlowTable,
        Self::Sizes,
        Self::Sizing,
        Self::Helping,
        Self::SizedPlan,
        Self::Fitting,
        Self::RunWorking,
        Self::FittingSheet,
        Self::Gauge,
        Self::SettingWorking,
        Self::CommissioningSheet,
        Self::Checks,
        Self::Knobs,
        Self::GaugeYear,
        Self::GaugeYearTable,
        Self::Logbook,
        Self::Suspects,
        Self::Readings,
        Self::TakenReadings,
        Self::Care,
        Self::LearnedWorking,
    ];

    /// Whether it takes so long that it is written only once somebody rests.
    #[must_use]
    pub const fn waits_for_rest(self) -> bool {
        self.is_gauge_year()
            || self.weighs()
            || self.lives()
            || matches!(self, Self::Year | Self::YearTable)
    }

    /// Whether it is written again and again while it is worked out.
    #[must_use]
    pub const fn lives(self) -> bool {
        matches!(self, Self::Sizes | Self::Sizing | Self::Helping)
    }

    /// Whether the desk writes it of a gauge that it keeps.
    #[must_use]
    pub const fn is_gauge_year(self) -> bool {
        matches!(self, Self::GaugeYear | Self::GaugeYearTable)
    }

    /// Whether it tells of readings that were weighed.
    #[must_use]
    pub const fn weighs(self) -> bool {
        matches!(self, Self::Logbook | Self::Suspects | Self::LearnedWorking)
    }

    /// The one of a number.
    #[must_use]
    pub fn from_number(number: usize) -> Option<Self> {
        Self::ALL.get(number).copied()
    }

    /// Whether it belongs to the page about the installed system alone.
    const fn is_installed(self) -> bool {
        matches!(
            self,
            Self::Fitting
                | Self::RunWorking
                | Self::FittingSheet
                | Self::Gauge
                | Self::SettingWorking
                | Self::CommissioningSheet
                | Self::Checks
                | Self::Knobs
                | Self::Readings
                | Self::TakenReadings
                | Self::Care
        )
    }

    /// Whether it is written about a plan. Others are also there while something is wrong with it.
    #[must_use]
    pub const fn needs_plan(self) -> bool {
        !matches!(self, Self::Explained)
    }
}

/// A plan with its answers, about which a leaf is written.
#[derive(Clone, Copy, Debug)]
pub struct About<'a> {
    /// The language to write in, and the habits of whoever reads it.
    pub words: Words,
    /// The plan.
    pub document: &'a Document,
    /// The plan, resolved.
    pub system: &'a System,
    /// Its answers.
    pub outlook: &'a Outlook,
}

/// What was written: a text, mostly of a [`Paper`], and numbers to go with it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Written {
    /// The text.
    pub text: String,
    /// The numbers, where the page reads some of them out.
    pub numbers: Vec<f64>,
}

impl Written {
    /// Without numbers.
    fn of(text: String) -> Self {
        Self { text, numbers: Vec::new() }
    }
}

/// Writes a leaf; nothing for an argument that means nothing, or of another page than that of this build.
#[must_use]
pub fn write(leaf: Leaf, argument: &str, about: About<'_>) -> Written {
    match leaf {
        Leaf::Working => {
            let question = argument.parse().ok().and_then(|place: usize| Question::ALL.get(place));
            question.map(|own| Written::of(working::write(*own, about))).unwrap_or_default()
        }
        Leaf::Explained => {
            write_without_plan(leaf, argument, about.words.language).unwrap_or_default()
        }
        Leaf::Sheet => Written::of(sheet::write(argument, about).unwrap_or_default()),
        Leaf::Code => {
            let mut paper = Paper::default();
            let link = share::encode(about.document).map(|code| code::link(argument, &code));
            code::draw(&mut paper, &link.unwrap_or_default(), about.words);
            Written::of(paper.finish())
        }
        Leaf::Csv => {
            let own = &about.outlook;
            Written::of(csv(about.system, if argument == "dark" { &own.dark } else { &own.run }))
        }
        _ if INSTALLED && leaf.is_installed() => write_installed(leaf, argument, about),
        _ if PLANNER => write_planned(leaf, argument, about),
        _ => Written::default(),
    }
}

/// Writes a leaf of the page about the installed system.
fn write_installed(leaf: Leaf, argument: &str, about: About<'_>) -> Written {
    match leaf {
        Leaf::Fitting => Written::of(fitting::write(about)),
        Leaf::RunWorking => {
            Written::of(fitting::write_working(argument, about).unwrap_or_default())
        }
        Leaf::FittingSheet => {
            Written::of(fitting::write_sheet(argument, about).unwrap_or_default())
        }
        Leaf::Gauge => Written::of(gauge::write(about)),
        Leaf::SettingWorking => {
            Written::of(gauge::write_working(argument, about).unwrap_or_default())
        }
        Leaf::CommissioningSheet => {
            Written::of(gauge::write_sheet(argument, about).unwrap_or_default())
        }
        Leaf::Checks => Written::of(gauge::write_checks(about)),
        Leaf::Knobs => Written::of(gauge::write_knobs(about)),
        Leaf::Readings => Written::of(logbook::table(about)),
        Leaf::TakenReadings => Written::of(logbook::take(argument, about).unwrap_or_default()),
        Leaf::Care => Written::of(logbook::care(about)),
        // The desk writes those of a simulated gauge, whose course it keeps, and of readings that it has weighed.
        _ => Written::default(),
    }
}

/// Writes a leaf of the page about the plan.
fn write_planned(leaf: Leaf, argument: &str, about: About<'_>) -> Written {
    match leaf {
        Leaf::Climate => Written::of(climate::write(about.words, &about.system.climate)),
        Leaf::Beside => Written::of(beside::write(argument, about)),
        Leaf::Question => {
            let what = guess::guessed(argument);
            what.map(|own| Written::of(guess::question(own, about))).unwrap_or_default()
        }
        Leaf::Guesses => guess::answer(argument, about).map(Written::of).unwrap_or_default(),
        Leaf::Catalogue => Written::of(catalogue::write(argument, about)),
        Leaf::UsualRange => Written::of(catalogue::range(argument, about.words)),
        Leaf::Inverter => Written::of(inverter::write(about)),
        Leaf::Year => year::write(argument, about),
        Leaf::YearTable => year::write_table(argument, about),
        Leaf::Flow => flow::write(&day_flow(about), about),
        Leaf::FlowTable => flow::write_table(&day_flow(about), about),
        // The desk writes those of sizes while it works them out.
        _ => Written::default(),
    }
}

/// Writes a leaf that tells of weighed readings; nothing for any other.
#[must_use]
pub fn write_weighed(
    leaf: Leaf,
    argument: &str,
    weighed: Option<&Weighed>,
    about: About<'_>,
) -> Written {
    match (leaf, weighed) {
        (Leaf::Logbook, Some(weighed)) => Written::of(logbook::write(weighed, about)),
        (Leaf::LearnedWorking, Some(weighed)) => {
            Written::of(logbook::write_working(argument, weighed, about).unwrap_or_default())
        }
        (Leaf::Suspects, _) => {
            Written::of(logbook::causes(argument, weighed, about).unwrap_or_default())
        }
        _ => Written::default(),
    }
}

/// Writes a leaf that needs no plan; nothing for any other, or for an argument that means nothing.
#[must_use]
pub fn write_without_plan(leaf: Leaf, argument: &str, language: Language) -> Option<Written> {
    match leaf {
        Leaf::Explained => {
            let topic = Topic::from_number(argument.parse().ok()?)?;
            Some(Written::of(explained::write(topic, language)))
        }
        _ => None,
    }
}

fn day_flow(about: About<'_>) -> DayFlow {
    about.outlook.day_flow(about.system, &mut Sunlight::default())
}

/// A table of the page: the first column names its rows.
fn table(title: &str, heads: &[&str], rows: &[Vec<String>]) -> String {
    let mut paper = Paper::default();
    paper.class("div", "table").attr("tabindex", "0").attr("role", "region");
    paper.attr("aria-label", title).open("table").open("thead").open("tr");
    for head in heads {
        paper.open("th").attr("scope", "col").text(head).close();
    }
    paper.close().close().open("tbody");
    for row in rows {
        paper.open("tr");
        for (at, text) in row.iter().enumerate() {
            if at == 0 {
                paper.open("th").attr("scope", "row").text(text).close();
            } else {
                paper.said("td", "", text);
            }
        }
        paper.close();
    }
    paper.close().close().close();
    paper.finish()
}
