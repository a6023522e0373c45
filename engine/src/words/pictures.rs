//! What the year carpet and the picture of a day's flow say: dispatch to the languages.

use super::{Language, Words};
use crate::document::Document;
use crate::outlook::{DayFlow, End};
use crate::quantity::{Percent, WattHours};
use crate::simulate::YearRun;
use crate::working::Tag;

impl Language {
    /// States of charge from one to another, both \[%\].
    #[must_use]
    pub fn charge_between(self, from: f64, to: f64) -> String {
        speak!(self, pictures::charge_between(from, to))
    }

    /// What the hatched hours of the carpet are.
    #[must_use]
    pub fn under_reserve(self) -> &'static str {
        speak!(self, pictures::UNDER_RESERVE)
    }

    /// What the lines across the carpet are.
    #[must_use]
    pub fn sunrise_and_sunset(self) -> &'static str {
        speak!(self, pictures::SUNRISE_AND_SUNSET)
    }

    /// The heads of the table behind the carpet.
    #[must_use]
    pub fn year_heads(self) -> [&'static str; 6] {
        speak!(self, pictures::YEAR_HEADS)
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
        speak!(self, pictures::power_from(source, watts))
    }

    /// What is read at an hour of a typical day.
    #[must_use]
    pub fn day_reading(self, from: &str, to: &str, into: &[String], out: &str) -> String {
        speak!(self, pictures::day_reading(from, to, into, out))
    }

    fn end(self, end: End) -> &'static str {
        speak!(self, pictures::end(end))
    }

    /// So many loads that are too small to be drawn one by one.
    #[must_use]
    pub fn other_loads(self, count: usize) -> String {
        speak!(self, pictures::other_loads(count))
    }

    /// Losses that are too small to be drawn one by one.
    #[must_use]
    pub fn small_losses(self) -> &'static str {
        speak!(self, pictures::SMALL_LOSSES)
    }

    /// A part of a whole (ratio).
    #[must_use]
    pub fn share_of(self, part: f64) -> String {
        speak!(self, pictures::share(part))
    }

    /// The heads of the table behind the flow.
    #[must_use]
    pub fn flow_heads(self) -> [&'static str; 3] {
        speak!(self, pictures::FLOW_HEADS)
    }

    /// The sums of the table behind the flow: what comes, what goes, what was wanted and not given.
    #[must_use]
    pub fn flow_sums(self) -> [&'static str; 3] {
        speak!(self, pictures::FLOW_SUMS)
    }
}

impl Words {
    /// A year in a sentence or two.
    #[must_use]
    pub fn year(self, run: &YearRun, reserve: Percent) -> String {
        speak!(self.language, pictures::year(self, run, reserve))
    }

    /// The flow of a day in a sentence or two.
    #[must_use]
    pub fn flow(self, flow: &DayFlow) -> String {
        speak!(self.language, pictures::flow(self, flow))
    }

    /// Energy as it stands in a picture: in thousands of watt-hours where it is much.
    #[must_use]
    pub fn energy(self, energy: WattHours) -> String {
        /// From here on.
        const MUCH: f64 = 9_999.5;
        if energy.0 >= MUCH {
            format!("{}\u{a0}kWh", self.rounded(energy.0 / 1000.0))
        } else {
            self.amount(energy)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn energy_stays_short() {
        for language in Language::ALL {
            let own = Words::of(*language);
            assert_eq!(own.energy(WattHours(512.4)), "512\u{a0}Wh");
            assert_eq!(own.energy(WattHours(123_456.0)), "123\u{a0}kWh");
        }
    }
}
