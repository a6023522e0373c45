//! Who may come along on a walk: a [`Visitor`] that is handed bare numbers and texts, as the checks and the link need
//! them, and a [`NamedVisitor`] that is told the names and forms of a file as well.

use chrono::NaiveDate;

use super::keys::{Forms, Keys};
use super::logged::{Logged, LoggedCharge};
use super::schedule::{ClockTime, DAY_MIN, Span};
use super::{Field, Problem, first_date};
use crate::working::Tag;

/// The kinds of list in a scenario.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum List {
    /// Loads.
    Loads,
    /// Arrays.
    Arrays,
    /// Stretches of the day in one schedule.
    Spans,
    /// Readings of checks.
    Checks,
    /// Readings of the gauge.
    Readings,
}

impl List {
    /// How many are allowed.
    #[must_use]
    pub const fn limit(self) -> usize {
        match self {
            Self::Loads => 200,
            Self::Arrays => 8,
            Self::Spans => 12,
            Self::Checks => 400,
            Self::Readings => 400,
        }
    }
}

/// The texts in a scenario.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TextField {
    /// Name of the plan.
    PlanName,
    /// Name of the place.
    PlaceName,
    /// Name of a load.
    LoadName,
    /// Name of the group that a load belongs to.
    GroupName,
}

impl TextField {
    /// How many characters are allowed.
    #[must_use]
    pub const fn limit(self) -> usize {
        80
    }
}

/// Does something to every value of a scenario.
pub trait Visitor {
    /// A section starts: in a link, its presence mask stands here.
    fn open(&mut self, at: Tag) -> Result<(), Box<Problem>>;
    /// The section ends.
    fn close(&mut self) -> Result<(), Box<Problem>>;
    /// A number with its default.
    fn number(&mut self, field: Field, value: &mut f64, default: f64) -> Result<(), Box<Problem>>;
    /// A number that may be left to what is typical.
    fn option(&mut self, field: Field, value: &mut Option<f64>) -> Result<(), Box<Problem>>;
    /// A small whole number that is no quantity (a choice, a mask, a minute), at most `max`.
    fn whole(&mut self, value: &mut u32, default: u32, max: u32) -> Result<(), Box<Problem>>;
    /// A text.
    fn text(&mut self, field: TextField, value: &mut String) -> Result<(), Box<Problem>>;
    /// The length of a list.
    fn length(&mut self, list: List, length: usize) -> Result<usize, Box<Problem>>;

    /// A reading of the gauge, value by value; `at` is its place among the others.
    fn reading(&mut self, _at: usize, value: &mut Logged) -> Result<(), Box<Problem>> {
        let mut days = (value.minute() / u64::from(DAY_MIN)) as u32;
        self.whole(&mut days, u32::MAX, super::LAST_DAY)?;
        value.date = first_date() + chrono::Days::new(days.into());
        let mut minute = u32::from(value.time.0);
        self.whole(&mut minute, u32::MAX, u32::from(DAY_MIN) - 1)?;
        value.time = ClockTime(minute as u16);
        let mut kind = value.shown.kind();
        self.whole(&mut kind, 0, 3)?;
        value.shown.turn_into(kind);
        if let Some((field, own)) = value.shown.number() {
            self.number(field, own, f64::NAN)?;
        }
        self.option(Field::ReadVolts, &mut value.volts)?;
        self.option(Field::ReadAmps, &mut value.amps)
    }
}

impl LoggedCharge {
    /// Its number in a link.
    pub(crate) fn kind(&self) -> u32 {
        match self {
            Self::Nothing => 0,
            Self::Percent(_) => 1,
            Self::Left(_) => 2,
            Self::Taken(_) => 3,
        }
    }

    /// Turns it into that of a number, if it is another.
    pub(crate) fn turn_into(&mut self, kind: u32) {
        if kind != self.kind() {
            *self = match kind {
                0 => Self::Nothing,
                1 => Self::Percent(0.0),
                2 => Self::Left(0.0),
                _ => Self::Taken(0.0),
            };
        }
    }

    /// Its field and its value, if it has one.
    pub(crate) fn number(&mut self) -> Option<(Field, &mut f64)> {
        match self {
            Self::Nothing => None,
            Self::Percent(own) => Some((Field::ReadPercent, own)),
            Self::Left(own) => Some((Field::ReadLeft, own)),
            Self::Taken(own) => Some((Field::ReadTaken, own)),
        }
    }
}

/// The name of a field in a file.
pub(super) type Name = &'static str;

/// What a visit gives.
pub(super) type Visited = Result<(), Box<Problem>>;

/// Does something to every value of a scenario, by its name and form in a file.
pub(super) trait NamedVisitor {
    /// A section starts: the plan itself if `key` is empty, else a field of it or an item of a list of it.
    fn open(&mut self, key: Name, at: Tag, keys: Keys) -> Visited;
    /// The section ends.
    fn close(&mut self) -> Visited;
    /// An object inside a section starts.
    fn group(&mut self, key: Name, keys: Keys) -> Visited;
    /// A value of several forms starts.
    fn variant(&mut self, key: Name, kind: &mut u32, forms: &'static Forms) -> Visited;
    /// The object or value of several forms ends.
    fn end(&mut self);
    /// A number with its default.
    fn number(&mut self, key: Name, field: Field, value: &mut f64, default: f64) -> Visited;
    /// A number that may be left to what is typical.
    fn option(&mut self, key: Name, field: Field, value: &mut Option<f64>) -> Visited;
    /// A number for each of so many months, hours or directions.
    fn each(&mut self, key: Name, field: Field, values: &mut [f64]) -> Visited;
    /// A text.
    fn text(&mut self, key: Name, field: TextField, value: &mut String) -> Visited;
    /// Yes or no.
    fn flag(&mut self, key: Name, value: &mut bool, default: bool) -> Visited;
    /// Whether something that may be missing is there.
    fn there(&mut self, key: Name, value: &mut bool) -> Visited;
    /// One of several words, by its place among them; the first is the default.
    fn choice(&mut self, key: Name, value: &mut u32, names: &'static [&'static str]) -> Visited;
    /// Some of several things as bits, all by default; numbered from 1 if they have no names.
    fn some(
        &mut self,
        key: Name,
        bits: &mut u32,
        all: u32,
        names: &'static [&'static str],
    ) -> Visited;
    /// A frozen number that may be missing.
    fn id(&mut self, key: Name, value: &mut Option<u16>) -> Visited;
    /// A date.
    fn date(&mut self, key: Name, value: &mut NaiveDate) -> Visited;
    /// A time of the day.
    fn time(&mut self, key: Name, value: &mut ClockTime) -> Visited;
    /// An item of a list of stretches of the day.
    fn span(&mut self, key: Name, at: usize, value: &mut Span) -> Visited;
    /// A reading of the gauge by its place among the others.
    fn reading(&mut self, key: Name, at: usize, value: &mut Logged) -> Visited;
    /// The length of a list.
    fn length(&mut self, key: Name, list: List, length: usize) -> Result<usize, Box<Problem>>;
}

/// Brings a visitor along that wants bare numbers. How each form becomes numbers is part of the link format.
pub(super) struct Bare<'a>(pub(super) &'a mut dyn Visitor);

impl Bare<'_> {
    /// A minute of the day; always written, because none is more likely than another.
    fn minute(&mut self, value: &mut u16, max: u16) -> Visited {
        let mut number = u32::from(*value);
        self.0.whole(&mut number, u32::MAX, max.into())?;
        *value = number as u16;
        Ok(())
    }
}

impl NamedVisitor for Bare<'_> {
    fn open(&mut self, _: Name, at: Tag, _: Keys) -> Visited {
        self.0.open(at)
    }

    fn close(&mut self) -> Visited {
        self.0.close()
    }

    fn group(&mut self, _: Name, _: Keys) -> Visited {
        Ok(())
    }

    fn variant(&mut self, _: Name, kind: &mut u32, forms: &'static Forms) -> Visited {
        self.0.whole(kind, 0, forms.names.len() as u32 - 1)
    }

    fn end(&mut self) {}

    fn number(&mut self, _: Name, field: Field, value: &mut f64, default: f64) -> Visited {
        self.0.number(field, value, default)
    }

    fn option(&mut self, _: Name, field: Field, value: &mut Option<f64>) -> Visited {
        self.0.option(field, value)
    }

    fn each(&mut self, _: Name, field: Field, values: &mut [f64]) -> Visited {
        // Never equal to a default, so that all of them are written.
        values.iter_mut().try_for_each(|value| self.0.number(field, value, f64::NAN))
    }

    fn text(&mut self, _: Name, field: TextField, value: &mut String) -> Visited {
        self.0.text(field, value)
    }

    fn flag(&mut self, _: Name, value: &mut bool, default: bool) -> Visited {
        let mut number = u32::from(*value);
        self.0.whole(&mut number, u32::from(default), 1)?;
        *value = number == 1;
        Ok(())
    }

    fn there(&mut self, key: Name, value: &mut bool) -> Visited {
        self.flag(key, value, false)
    }

    fn choice(&mut self, _: Name, value: &mut u32, names: &'static [&'static str]) -> Visited {
        self.0.whole(value, 0, names.len() as u32 - 1)
    }

    fn some(&mut self, _: Name, bits: &mut u32, all: u32, _: &'static [&'static str]) -> Visited {
        self.0.whole(bits, all, all)
    }

    fn id(&mut self, _: Name, value: &mut Option<u16>) -> Visited {
        let mut number = value.map_or(0, |number| u32::from(number) + 1);
        self.0.whole(&mut number, 0, 1 + u32::from(u16::MAX))?;
        *value = number.checked_sub(1).map(|number| number as u16);
        Ok(())
    }

    fn date(&mut self, _: Name, value: &mut NaiveDate) -> Visited {
        let mut days = value.signed_duration_since(first_date()).num_days().max(0) as u32;
        self.0.whole(&mut days, 0, super::LAST_DAY)?;
        *value = first_date() + chrono::Days::new(days.into());
        Ok(())
    }

    fn time(&mut self, _: Name, value: &mut ClockTime) -> Visited {
        let mut time = u32::from(value.0);
        self.0.whole(&mut time, 16 * 60, u32::from(DAY_MIN) - 1)?;
        *value = ClockTime(time as u16);
        Ok(())
    }

    fn span(&mut self, _: Name, _: usize, value: &mut Span) -> Visited {
        self.minute(&mut value.from_min, DAY_MIN - 1)?;
        self.minute(&mut value.to_min, DAY_MIN)?;
        if value.is_valid() { Ok(()) } else { Err(Problem::BadSpan { span: *value }.into()) }
    }

    fn reading(&mut self, _: Name, at: usize, value: &mut Logged) -> Visited {
        self.0.reading(at, value)
    }

    fn length(&mut self, _: Name, list: List, length: usize) -> Result<usize, Box<Problem>> {
        self.0.length(list, length)
    }
}
