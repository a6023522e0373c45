//! What the year carpet and the picture of a day's flow say: dispatch to the languages.

use super::{Language, en};
use crate::document::Document;
use crate::outlook::{DayFlow, End};
use crate::quantity::{Percent, WattHours};
use crate::simulate::YearRun;
use crate::working::Tag;

impl Language {
    /// A year in a sentence or two.
    #[must_use]
    pub fn year(self, run: &YearRun, reserve: Percent) -> String {
        match self {
            Self::English => en::pictures::year(run, reserve),
        }
    }

    /// States of charge from one to another, both \[%\].
    #[must_use]
    pub fn charge_between(self, from: f64, to: f64) -> String {
        match self {
            Self::English => en::pictures::charge_between(from, to),
        }
    }

    /// What the hatched hours of the carpet are.
    #[must_use]
    pub fn under_reserve(self) -> &'static str {
        match self {
            Self::English => en::pictures::under_reserve(),
        }
    }

    /// What the lines across the carpet are.
    #[must_use]
    pub fn sunrise_and_sunset(self) -> &'static str {
        match self {
            Self::English => en::pictures::sunrise_and_sunset(),
        }
    }

    /// The heads of the table behind the carpet.
    #[must_use]
    pub fn year_heads(self) -> [&'static str; 6] {
        match self {
            Self::English => en::pictures::year_heads(),
        }
    }

    /// Where energy comes from or goes in a plan.
    #[must_use]
    pub fn end_in(self, plan: &Document, end: End) -> String {
        let tag = match end {
            End::Load(place) => Tag::Load(place),
            _ => return self.end(end).to_owned(),
        };
        let name = self.name_in(plan, tag).or_else(|| self.unnamed(tag));
        name.unwrap_or_else(|| self.end(end).to_owned())
    }

    /// What a source gives at an hour \[W\].
    #[must_use]
    pub fn power_from(self, source: End, watts: &str) -> String {
        match self {
            Self::English => en::pictures::power_from(source, watts),
        }
    }

    /// What is read at an hour of a typical day.
    #[must_use]
    pub fn day_reading(self, from: &str, to: &str, into: &[String], out: &str) -> String {
        match self {
            Self::English => en::pictures::day_reading(from, to, into, out),
        }
    }

    fn end(self, end: End) -> &'static str {
        match self {
            Self::English => en::pictures::end(end),
        }
    }

    /// So many loads that are too small to be drawn one by one.
    #[must_use]
    pub fn other_loads(self, count: usize) -> String {
        match self {
            Self::English => en::pictures::other_loads(count),
        }
    }

    /// Losses that are too small to be drawn one by one.
    #[must_use]
    pub fn small_losses(self) -> &'static str {
        match self {
            Self::English => en::pictures::small_losses(),
        }
    }

    /// Energy as it stands in a picture.
    #[must_use]
    pub fn energy(self, energy: WattHours) -> String {
        match self {
            Self::English => en::pictures::energy(energy),
        }
    }

    /// A part of a whole (ratio).
    #[must_use]
    pub fn share_of(self, part: f64) -> String {
        match self {
            Self::English => en::pictures::share(part),
        }
    }

    /// The flow of a day in a sentence or two.
    #[must_use]
    pub fn flow(self, flow: &DayFlow) -> String {
        match self {
            Self::English => en::pictures::flow(flow),
        }
    }

    /// The heads of the table behind the flow.
    #[must_use]
    pub fn flow_heads(self) -> [&'static str; 3] {
        match self {
            Self::English => en::pictures::flow_heads(),
        }
    }

    /// The sums of the table behind the flow: what comes, what goes, what was wanted and not given.
    #[must_use]
    pub fn flow_sums(self) -> [&'static str; 3] {
        match self {
            Self::English => {
                [en::pictures::comes_in(), en::pictures::goes_out(), en::pictures::went_without()]
            }
        }
    }
}
