//! Figures of two plans beside each other, and guesses at them: dispatch to the languages.

use super::{Language, Words};
use crate::outlook::{Figure, Guessed, Outlook};
use crate::quantity::{AmpHours, Hours, Unit};
use crate::system::System;

/// Differences smaller than this are none: figures are not shown finer.
const LEAST: f64 = 0.005;

impl Language {
    /// What a figure is.
    #[must_use]
    pub fn figure(self, figure: Figure) -> &'static str {
        speak!(self, compare::figure(figure))
    }

    /// A figure of another plan, by its name.
    #[must_use]
    pub fn beside(self, value: &str, name: &str) -> String {
        speak!(self, compare::beside(value, name))
    }

    /// A guess behind the name of whoever made it.
    #[must_use]
    pub fn beside_name(self, name: &str, value: &str) -> String {
        format!("{name}: {value}")
    }

    /// That every month keeps up, as a guess.
    #[must_use]
    pub const fn no_month(self) -> &'static str {
        speak!(self, compare::NO_MONTH)
    }

    /// Names that variants of a plan may have.
    #[must_use]
    pub const fn variants(self) -> &'static [&'static str] {
        speak!(self, compare::VARIANTS)
    }

    /// What is asked before the answer is shown.
    #[must_use]
    pub fn asked(self, what: Guessed, month: usize) -> String {
        speak!(self, compare::asked(what, month))
    }

    /// How many guesses were near.
    #[must_use]
    pub fn guesses_near(self, what: Guessed, near: usize, of: usize) -> String {
        speak!(self, compare::near(what, near, of))
    }

    /// That no more guesses are taken.
    #[must_use]
    pub fn full_of_guesses(self, limit: usize) -> String {
        speak!(self, compare::full_of_guesses(limit))
    }

    /// How many guesses there are.
    #[must_use]
    pub fn guesses(self, count: usize) -> String {
        speak!(self, compare::guesses(count))
    }

    /// Somebody who gave no name, by the place among the guesses.
    #[must_use]
    pub fn guesser(self, place: usize) -> String {
        speak!(self, compare::guesser(place))
    }

    /// The picture of the guesses in words.
    #[must_use]
    pub fn spread(self, low: &str, high: &str, answer: &str) -> String {
        speak!(self, compare::spread(low, high, answer))
    }

    /// Yes or no.
    #[must_use]
    pub fn yes_or_no(self, is: bool) -> &'static str {
        speak!(self, compare::yes_or_no(is))
    }
}

impl Words {
    /// A figure of a plan as a number of the unit in which it is told; none where it has none.
    #[must_use]
    pub fn figure_value(self, outlook: &Outlook, system: &System, figure: Figure) -> Option<f64> {
        let value = outlook.figure(system, figure)?;
        Some(match figure.unit() {
            Unit::AmpHour => self.charge_value(AmpHours(value), system.bank.nominal),
            _ => value,
        })
    }

    /// A figure of a plan.
    #[must_use]
    pub fn figure_of(self, outlook: &Outlook, system: &System, figure: Figure) -> String {
        match (figure, self.figure_value(outlook, system, figure)) {
            (Figure::MonthsKept, _) => self.months_kept(outlook.months_kept()),
            (Figure::Autonomy, days) => self.autonomy(days),
            (_, None) => self.beyond(),
            (_, Some(value)) => self.size(figure, value),
        }
    }

    /// A [value](Self::figure_value) of a figure with its unit.
    fn size(self, figure: Figure, value: f64) -> String {
        if figure.unit() == Unit::AmpHour {
            return format!("{}\u{a0}{}", self.rounded(value), self.charge_unit());
        }
        speak!(self.language, compare::size(self, figure, value))
    }

    /// By how much a figure is more than another, both as [values](Self::figure_value); a dash where one has none.
    #[must_use]
    pub fn difference(self, figure: Figure, own: Option<f64>, other: Option<f64>) -> String {
        let (Some(own), Some(other)) = (own, other) else { return "–".into() };
        self.more(figure, own - other)
            .unwrap_or_else(|| speak!(self.language, compare::SAME).into())
    }

    /// By how much a figure is more than that of another plan, by its name.
    #[must_use]
    pub fn than(self, figure: Figure, more: f64, name: &str) -> String {
        let more = self.more(figure, more);
        speak!(self.language, compare::than(more.as_deref(), name))
    }

    /// That a figure is so much more or less; none where nobody could tell.
    fn more(self, figure: Figure, more: f64) -> Option<String> {
        let size = self.size(figure, more.abs());
        let tells = more.abs() >= LEAST;
        tells.then(|| speak!(self.language, compare::more(&size, more > 0.0)))
    }

    /// A guess.
    #[must_use]
    pub fn guess(self, what: Guessed, value: f64) -> String {
        match what {
            Guessed::Hours => self.amount(Hours(value)),
            Guessed::Charge => self.amount(AmpHours(value)),
            Guessed::Month if value < 12.0 => self.month(value as usize).to_owned(),
            Guessed::Month => self.no_month().to_owned(),
        }
    }

    /// What the plan comes to.
    #[must_use]
    pub fn answer(self, what: Guessed, value: Option<f64>) -> String {
        speak!(self.language, compare::answer(self, what, value))
    }

    /// The one in the middle of the guesses.
    #[must_use]
    pub fn median(self, what: Guessed, value: f64) -> String {
        speak!(self.language, compare::median(&self.guess(what, value)))
    }

    /// Why a guess was refused.
    #[must_use]
    pub fn guess_refused(self, what: Guessed, typed: &str) -> String {
        let typed: String = typed.trim().chars().take(20).collect();
        speak!(self.language, compare::guess_refused(&typed, &self.guess(what, what.most())))
    }
}
