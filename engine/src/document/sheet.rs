//! A plan as a list of everything that it states, and in what two plans differ.
//!
//! The list is written down on the walk, so that no field can be forgotten: what the walk knows stands on it.

use chrono::NaiveDate;

use super::keys::{Forms, Keys};
use super::schedule::{ClockTime, Span};
use super::visitor::{List, Name, NamedVisitor, TextField, Visited};
use super::walk::walk_named;
use super::{Document, Field, Logged, Problem};
use crate::working::Tag;

/// A part of a plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// What belongs to no other part.
    Plan,
    /// The place.
    Place,
    /// The start.
    Start,
    /// The bank.
    Bank,
    /// The inverter.
    Inverter,
    /// Shore power.
    Shore,
    /// The charger on the engine.
    Alternator,
    /// A load by its place.
    Load(u16),
    /// An array by its place.
    Array(u16),
    /// The generator.
    Generator,
    /// The turbine.
    Turbine,
    /// What it shall keep.
    Promise,
    /// How it is wired.
    Wiring,
    /// A reading of a check by its place.
    Check(u16),
    /// What its gauge showed.
    Logbook,
}

impl Part {
    /// The part that a section of the walk is.
    fn of(key: &str, at: Tag) -> Self {
        match (key, at) {
            (_, Tag::Load(place)) => Self::Load(place),
            (_, Tag::Array(place)) => Self::Array(place),
            (_, Tag::Check(place)) => Self::Check(place),
            ("place", _) => Self::Place,
            ("start", _) => Self::Start,
            ("bank", _) => Self::Bank,
            ("inverter", _) => Self::Inverter,
            ("shore", _) => Self::Shore,
            ("alternator", _) => Self::Alternator,
            ("generator", _) => Self::Generator,
            ("turbine", _) => Self::Turbine,
            ("promise", _) => Self::Promise,
            ("wiring", _) => Self::Wiring,
            ("logbook", _) => Self::Logbook,
            _ => Self::Plan,
        }
    }
}

/// What is stated of something.
#[derive(Clone, Debug, PartialEq)]
pub enum Stated {
    /// A number.
    Number(Field, f64),
    /// Nothing: what is typical is taken.
    Typical,
    /// A number for each month, hour or direction.
    Each(Field, Vec<f64>),
    /// A text.
    Text(String),
    /// Yes or no.
    Flag(bool),
    /// One of several, by its place and its name in a file.
    Word(usize, &'static str),
    /// Days of the week as bits, Monday first.
    Days(u32),
    /// Months of the year as bits, January first.
    Months(u32),
    /// An appliance of the list by its number, if it is one.
    Appliance(Option<u16>),
    /// A date.
    Date(NaiveDate),
    /// A time of the day.
    Time(ClockTime),
    /// A stretch of the day.
    Span(Span),
    /// What a gauge showed.
    Readings(Vec<Logged>),
}

/// Something that a plan states.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// The object around it in a file, if it does not stand in its part itself.
    pub group: &'static str,
    /// Its name in a file.
    pub key: &'static str,
    /// Its place in a list of such; 0 elsewhere.
    pub at: usize,
    /// What is stated.
    pub stated: Stated,
}

/// A part of a plan with all that is stated of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// The part.
    pub part: Part,
    /// What is stated, in the order of the walk.
    pub entries: Vec<Entry>,
}

impl Sheet {
    /// What is stated under a name in the part itself.
    #[must_use]
    pub fn get(&self, key: &str) -> Option<&Stated> {
        self.entries
            .iter()
            .find(|own| own.group.is_empty() && own.key == key)
            .map(|own| &own.stated)
    }
}

/// Everything that a plan states, part by part.
#[must_use]
pub fn sheets(document: &Document) -> Vec<Sheet> {
    let mut recorder = Recorder::default();
    // The walk hands out mutable references; the recorder changes nothing and finds no fault.
    let _ = walk_named(&mut document.clone(), &mut recorder);
    recorder.sheets
}

/// Something in which two plans differ.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// The part in the first plan; none if only the second has it.
    pub first: Option<Part>,
    /// The part in the second plan; none if only the first has it.
    pub second: Option<Part>,
    /// What of it differs: what the first and the second state. None where one lacks the part.
    pub of: Option<(Option<Entry>, Option<Entry>)>,
}

/// In what two plans differ, in the order of the first. Loads are the same if they have the same name, wherever they stand;
/// readings if they are of the same check; arrays if they have the same place.
#[must_use]
pub fn differences(first: &Document, second: &Document) -> Vec<Difference> {
    let mut others: Vec<Option<Sheet>> = sheets(second).into_iter().map(Some).collect();
    let mut found = Vec::new();
    for own in sheets(first) {
        let other =
            others.iter_mut().find(|other| other.as_ref().is_some_and(|other| alike(&own, other)));
        match other.and_then(Option::take) {
            Some(other) => compare(&own, &other, &mut found),
            None => found.push(Difference { first: Some(own.part), second: None, of: None }),
        }
    }
    let left = others.into_iter().flatten();
    found.extend(left.map(|other| Difference { first: None, second: Some(other.part), of: None }));
    found
}

/// Whether two sheets are of the same part.
fn alike(one: &Sheet, other: &Sheet) -> bool {
    match (one.part, other.part) {
        (Part::Load(_), Part::Load(_)) => {
            ["name", "appliance"].iter().all(|key| one.get(key) == other.get(key))
        }
        (Part::Check(_), Part::Check(_)) => {
            ["read", "of"].iter().all(|key| one.get(key) == other.get(key))
        }
        (part, other) => part == other,
    }
}

/// Adds in what two sheets of the same part differ.
fn compare(first: &Sheet, second: &Sheet, found: &mut Vec<Difference>) {
    let same = |one: &Entry, other: &Entry| {
        one.group == other.group && one.key == other.key && one.at == other.at
    };
    let mut add = |one: Option<&Entry>, other: Option<&Entry>| {
        found.push(Difference {
            first: Some(first.part),
            second: Some(second.part),
            of: Some((one.cloned(), other.cloned())),
        });
    };
    for own in &first.entries {
        let other = second.entries.iter().find(|other| same(own, other));
        if other.is_none_or(|other| other.stated != own.stated) {
            add(Some(own), other);
        }
    }
    for other in &second.entries {
        if !first.entries.iter().any(|own| same(own, other)) {
            add(None, Some(other));
        }
    }
}

/// Writes down what it is shown.
#[derive(Default)]
struct Recorder {
    sheets: Vec<Sheet>,
    groups: Vec<Name>,
}

impl Recorder {
    fn add(&mut self, key: Name, at: usize, stated: Stated) -> Visited {
        let group = self.groups.last().copied().unwrap_or_default();
        if let Some(sheet) = self.sheets.last_mut() {
            sheet.entries.push(Entry { group, key, at, stated });
        }
        Ok(())
    }
}

impl NamedVisitor for Recorder {
    fn open(&mut self, key: Name, at: Tag, _: Keys) -> Visited {
        self.sheets.push(Sheet { part: Part::of(key, at), entries: Vec::new() });
        Ok(())
    }

    fn close(&mut self) -> Visited {
        Ok(())
    }

    fn group(&mut self, key: Name, _: Keys) -> Visited {
        self.groups.push(key);
        Ok(())
    }

    fn variant(&mut self, key: Name, kind: &mut u32, forms: &'static Forms) -> Visited {
        let place = *kind as usize;
        self.add(key, 0, Stated::Word(place, forms.form(*kind).0))?;
        self.groups.push(key);
        Ok(())
    }

    fn end(&mut self) {
        self.groups.pop();
    }

    fn number(&mut self, key: Name, field: Field, value: &mut f64, _: f64) -> Visited {
        self.add(key, 0, Stated::Number(field, *value))
    }

    fn option(&mut self, key: Name, field: Field, value: &mut Option<f64>) -> Visited {
        self.add(key, 0, value.map_or(Stated::Typical, |value| Stated::Number(field, value)))
    }

    fn each(&mut self, key: Name, field: Field, values: &mut [f64]) -> Visited {
        // In the place of the word that they are there.
        if let Some(sheet) = self.sheets.last_mut() {
            sheet.entries.pop_if(|own| own.key == key && own.stated == Stated::Flag(true));
        }
        self.add(key, 0, Stated::Each(field, values.to_vec()))
    }

    fn text(&mut self, key: Name, _: TextField, value: &mut String) -> Visited {
        self.add(key, 0, Stated::Text(value.clone()))
    }

    fn flag(&mut self, key: Name, value: &mut bool, _: bool) -> Visited {
        self.add(key, 0, Stated::Flag(*value))
    }

    fn there(&mut self, key: Name, value: &mut bool) -> Visited {
        // A part that is there has a sheet of its own.
        match self.sheets.last() {
            Some(Sheet { part: Part::Plan, .. }) => Ok(()),
            _ => self.add(key, 0, Stated::Flag(*value)),
        }
    }

    fn choice(&mut self, key: Name, value: &mut u32, names: &'static [&'static str]) -> Visited {
        let place = *value as usize;
        self.add(key, 0, Stated::Word(place, names.get(place).copied().unwrap_or_default()))
    }

    fn some(&mut self, key: Name, bits: &mut u32, _: u32, names: &[&'static str]) -> Visited {
        let stated = if names.is_empty() { Stated::Months(*bits) } else { Stated::Days(*bits) };
        self.add(key, 0, stated)
    }

    fn id(&mut self, key: Name, value: &mut Option<u16>) -> Visited {
        self.add(key, 0, Stated::Appliance(*value))
    }

    fn date(&mut self, key: Name, value: &mut NaiveDate) -> Visited {
        self.add(key, 0, Stated::Date(*value))
    }

    fn time(&mut self, key: Name, value: &mut ClockTime) -> Visited {
        self.add(key, 0, Stated::Time(*value))
    }

    fn span(&mut self, key: Name, at: usize, value: &mut Span) -> Visited {
        self.add(key, at, Stated::Span(*value))
    }

    fn reading(&mut self, _: Name, _: usize, value: &mut Logged) -> Visited {
        let entry = self.sheets.last_mut().and_then(|sheet| sheet.entries.last_mut());
        if let Some(Entry { stated: Stated::Readings(all), .. }) = entry {
            all.push(*value);
        }
        Ok(())
    }

    fn length(&mut self, key: Name, list: List, length: usize) -> Result<usize, Box<Problem>> {
        // Readings stand together; whatever else is in a list stands on the sheet itself.
        if list == List::Readings {
            self.add(key, 0, Stated::Readings(Vec::new()))?;
        }
        Ok(length)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Load, Rating, Visitor, walk};

    /// Changes the value of one call of a walk, and counts the calls.
    struct Nudge {
        at: usize,
        met: usize,
    }

    impl Nudge {
        fn mine(&mut self) -> bool {
            self.met += 1;
            self.met - 1 == self.at
        }
    }

    impl Visitor for Nudge {
        fn open(&mut self, _: Tag) -> Visited {
            Ok(())
        }

        fn close(&mut self) -> Visited {
            Ok(())
        }

        fn number(&mut self, field: Field, value: &mut f64, _: f64) -> Visited {
            if self.mine() {
                let range = field.range();
                *value = if *value == range.max { range.min } else { range.max };
            }
            Ok(())
        }

        fn option(&mut self, field: Field, value: &mut Option<f64>) -> Visited {
            if self.mine() {
                *value = if value.is_some() { None } else { Some(field.range().min) };
            }
            Ok(())
        }

        fn whole(&mut self, value: &mut u32, _: u32, max: u32) -> Visited {
            if self.mine() {
                *value = if *value == 0 { max.min(1) } else { *value - 1 };
            }
            Ok(())
        }

        fn text(&mut self, _: TextField, value: &mut String) -> Visited {
            if self.mine() {
                value.push('!');
            }
            Ok(())
        }

        fn length(&mut self, _: List, length: usize) -> Result<usize, Box<Problem>> {
            Ok(if self.mine() { length + 1 } else { length })
        }
    }

    /// Plans that state, between them, every field.
    fn full() -> [Document; 4] {
        [
            include_str!("../../../tests/golden/v1/rich.json"),
            include_str!("../../../tests/golden/v1/all_at_their_highest.json"),
            include_str!("../../../tests/golden/v1/hut_by_a_stream.json"),
            include_str!("../../../tests/golden/v1/read_twice_a_day.json"),
        ]
        .map(|text| Document::from_json(text).unwrap())
    }

    #[test]
    fn whatever_is_changed_is_found() {
        for plan in full() {
            let mut count = Nudge { at: usize::MAX, met: 0 };
            walk(&mut plan.clone(), &mut count).unwrap();
            assert!(count.met > 60, "{}", count.met);
            for at in 0..count.met {
                let mut other = plan.clone();
                // A change may leave what cannot be walked on, which is a change all the same.
                let _ = walk(&mut other, &mut Nudge { at, met: 0 });
                let found = differences(&plan, &other);
                assert_eq!(found.is_empty(), plan == other, "{} {at}: {found:?}", plan.name);
                assert_eq!(differences(&other, &plan).is_empty(), found.is_empty(), "call {at}");
            }
        }
    }

    #[test]
    fn a_plan_does_not_differ_from_itself() {
        for plan in full() {
            assert_eq!(differences(&plan, &plan), []);
        }
    }

    #[test]
    fn loads_are_known_by_name_wherever_they_stand() {
        let load = |name: &str, power| Load {
            name: name.into(),
            rating: Rating::PowerW(power),
            ..Load::default()
        };
        let first =
            Document { loads: vec![load("Lamp", 5.0), load("Fan", 9.0)], ..Document::default() };
        let loads = vec![load("Pump", 40.0), load("Fan", 8.0)];
        let second = Document { loads, ..Document::default() };
        let found = differences(&first, &second);
        assert_eq!(found.len(), 3);
        assert_eq!((found[0].first, found[0].second), (Some(Part::Load(0)), None));
        assert_eq!((found[1].first, found[1].second), (Some(Part::Load(1)), Some(Part::Load(1))));
        let (one, other) = found[1].of.clone().unwrap();
        let power = |entry: Option<Entry>| entry.map(|own| own.stated);
        assert_eq!(power(one), Some(Stated::Number(Field::LoadPower, 9.0)));
        assert_eq!(power(other), Some(Stated::Number(Field::LoadPower, 8.0)));
        assert_eq!((found[2].first, found[2].second), (None, Some(Part::Load(0))));
    }
}
