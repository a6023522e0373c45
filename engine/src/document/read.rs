//! Reads a plan from a file's values, by the names that the walk tells.
//!
//! Strict: a field that is unknown, missing or of the wrong kind ends the reading and is named with its path.

use chrono::NaiveDate;

use super::keys::{self, Forms, Key, Keys, Presence};
use super::logged::Logged;
use super::problem::{Found, Wanted};
use super::schedule::{ClockTime, Span};
use super::value::{Group, Value};
use super::visitor::{List, Name, NamedVisitor, TextField, Visited};
use super::walk_logbook::each_part;
use super::{Field, FieldFault, Problem, date_from};
use crate::working::Tag;

/// The object being read.
struct Frame<'a> {
    /// Its name in the object around it; empty for the plan itself.
    key: Name,
    /// Its place, if it is an item of a list.
    at: Option<u16>,
    /// What the file states; nothing if the whole object is left to its defaults.
    fields: Option<&'a Group>,
    keys: Keys,
}

/// A visitor that fills a plan from a file.
pub(super) struct Reader<'a> {
    file: &'a Value,
    /// The plan and the objects around the value that is read, the innermost last.
    frames: Vec<Frame<'a>>,
}

impl<'a> Reader<'a> {
    pub(super) fn new(file: &'a Value) -> Self {
        Self { file, frames: Vec::new() }
    }

    /// The fault of a field of the innermost object, or of that object itself if the name is empty.
    fn wrong(&self, name: &str, fault: FieldFault) -> Problem {
        let mut path = String::new();
        let mut add = |name: &str, at: Option<u16>| {
            if !path.is_empty() && !name.is_empty() {
                path.push('.');
            }
            path.push_str(name);
            if let Some(at) = at {
                path.push_str(&format!("[{at}]"));
            }
        };
        self.frames.iter().for_each(|frame| add(frame.key, frame.at));
        add(name, None);
        Problem::WrongField { path, fault }
    }

    fn wrong_kind(&self, name: &str, found: &Value, wanted: Wanted) -> Problem {
        self.wrong(name, FieldFault::WrongKind { found: as_found(found), wanted })
    }

    /// A field that is stated as something, read.
    fn read<T>(
        &self,
        key: Name,
        stated: &'a Value,
        wanted: Wanted,
        read: impl FnOnce(&'a Value) -> Option<T>,
    ) -> Result<T, Box<Problem>> {
        read(stated).ok_or_else(|| self.wrong_kind(key, stated, wanted).into())
    }

    /// What the file states of a field; nothing if it is left to its default.
    fn stated(&self, key: Name) -> Result<Option<&'a Value>, Box<Problem>> {
        let Some(frame) = self.frames.last() else { return Ok(None) };
        let Some(fields) = frame.fields else { return Ok(None) };
        let needed = |known: &Key| known.name == key && known.presence == Presence::Needed;
        match fields.get(key) {
            None if frame.keys.iter().any(needed) => {
                Err(self.wrong(key, FieldFault::Missing).into())
            }
            stated => Ok(stated),
        }
    }

    /// The same of a field that may also be stated as nothing.
    fn stated_something(&self, key: Name) -> Result<Option<&'a Value>, Box<Problem>> {
        Ok(self.stated(key)?.filter(|value| !value.is_null()))
    }

    /// Enters an object, if it is stated.
    fn enter(
        &mut self,
        key: Name,
        at: Option<u16>,
        object: Option<&'a Value>,
        keys: Keys,
    ) -> Visited {
        self.frames.push(Frame { key, at, fields: None, keys });
        let Some(object) = object else { return Ok(()) };
        let fields = self.read("", object, Wanted::Group, Value::as_group)?;
        let unknown = fields.keys().find(|name| !keys.iter().any(|key| key.name == **name));
        if let Some(name) = unknown {
            return Err(self.wrong(name, FieldFault::Unknown).into());
        }
        self.fill(fields);
        Ok(())
    }

    /// Notes what is stated of the innermost object.
    fn fill(&mut self, fields: &'a Group) {
        if let Some(frame) = self.frames.last_mut() {
            frame.fields = Some(fields);
        }
    }
}

impl NamedVisitor for Reader<'_> {
    fn open(&mut self, key: Name, at: Tag, keys: Keys) -> Visited {
        if key.is_empty() {
            return self.enter(key, None, Some(self.file), keys);
        }
        let section = self.stated(key)?;
        let (Tag::Load(at) | Tag::Array(at) | Tag::Check(at)) = at else {
            return self.enter(key, None, section, keys);
        };
        let item = section.and_then(|list| list.as_list()?.get(usize::from(at)));
        self.enter(key, Some(at), item, keys)
    }

    fn close(&mut self) -> Visited {
        // The plan itself stays: all other sections are fields of it.
        self.frames.truncate(1);
        Ok(())
    }

    fn group(&mut self, key: Name, keys: Keys) -> Visited {
        let object = self.stated(key)?;
        self.enter(key, None, object, keys)
    }

    fn variant(&mut self, key: Name, kind: &mut u32, forms: &'static Forms) -> Visited {
        *kind = 0;
        let stated = self.stated(key)?;
        self.frames.push(Frame { key, at: None, fields: None, keys: &[] });
        let Some(stated) = stated else { return Ok(()) };
        let fields = stated.as_group().filter(|fields| fields.0.len() == 1);
        let name = match fields {
            None => stated.as_str(),
            Some(fields) => fields.keys().next().map(String::as_str),
        };
        let place = forms.names.iter().position(|known| Some(*known) == name);
        let found =
            place.map(|place| place as u32).filter(|kind| forms.form(*kind).1 == fields.is_none());
        let wanted = Wanted::Form(forms.names, forms.bare);
        *kind = found.ok_or_else(|| self.wrong_kind("", stated, wanted))?;
        if let Some(fields) = fields {
            self.fill(fields);
        }
        Ok(())
    }

    fn end(&mut self) {
        self.frames.pop();
    }

    fn number(&mut self, key: Name, field: Field, value: &mut f64, default: f64) -> Visited {
        *value = match self.stated(key)? {
            None => default,
            Some(stated) => self.read(key, stated, Wanted::Number(field), Value::as_f64)?,
        };
        Ok(())
    }

    fn option(&mut self, key: Name, field: Field, value: &mut Option<f64>) -> Visited {
        let stated = self.stated_something(key)?;
        let read = |own| self.read(key, own, Wanted::Number(field), Value::as_f64);
        *value = stated.map(read).transpose()?;
        Ok(())
    }

    fn each(&mut self, key: Name, field: Field, values: &mut [f64]) -> Visited {
        let Some(stated) = self.stated(key)? else { return Ok(()) };
        let wanted = Wanted::Numbers(values.len(), field);
        let list = stated.as_list().filter(|list| list.len() == values.len());
        let list = list.ok_or_else(|| self.wrong_kind(key, stated, wanted))?;
        for (at, (value, stated)) in values.iter_mut().zip(list).enumerate() {
            let wrong = || self.wrong_kind(&item(key, at), stated, Wanted::Number(field));
            *value = stated.as_f64().ok_or_else(wrong)?;
        }
        Ok(())
    }

    fn text(&mut self, key: Name, field: TextField, value: &mut String) -> Visited {
        *value = match self.stated(key)? {
            None => String::new(),
            Some(stated) => self.read(key, stated, Wanted::Text(field), Value::as_str)?.to_owned(),
        };
        Ok(())
    }

    fn flag(&mut self, key: Name, value: &mut bool, default: bool) -> Visited {
        *value = match self.stated(key)? {
            None => default,
            Some(stated) => self.read(key, stated, Wanted::YesNo, Value::as_bool)?,
        };
        Ok(())
    }

    fn there(&mut self, key: Name, value: &mut bool) -> Visited {
        *value = self.stated_something(key)?.is_some();
        Ok(())
    }

    fn choice(&mut self, key: Name, value: &mut u32, names: &'static [&'static str]) -> Visited {
        *value = 0;
        if let Some(stated) = self.stated(key)? {
            let place = |own: &Value| names.iter().position(|name| own.as_str() == Some(name));
            *value = self.read(key, stated, Wanted::OneOf(names), place)? as u32;
        }
        Ok(())
    }

    fn some(
        &mut self,
        key: Name,
        bits: &mut u32,
        all: u32,
        names: &'static [&'static str],
    ) -> Visited {
        *bits = all;
        let Some(stated) = self.stated(key)? else { return Ok(()) };
        *bits = 0;
        let wanted = match names {
            [] => Wanted::Numbered(all.count_ones()),
            names => Wanted::SomeOf(names),
        };
        for (at, one) in self.read(key, stated, wanted, Value::as_list)?.iter().enumerate() {
            let bit = match one.as_u64() {
                Some(number) if names.is_empty() => number.checked_sub(1),
                _ => names.iter().position(|name| one.as_str() == Some(name)).map(|at| at as u64),
            };
            let bit = bit.and_then(|bit| 1_u32.checked_shl(u32::try_from(bit).ok()?));
            let wanted = match names {
                [] => wanted,
                names => Wanted::OneOf(names),
            };
            let wrong = || self.wrong_kind(&item(key, at), one, wanted);
            *bits |= bit.filter(|bit| bit & all != 0).ok_or_else(wrong)?;
        }
        Ok(())
    }

    fn id(&mut self, key: Name, value: &mut Option<u16>) -> Visited {
        let small = |own: &Value| own.as_u64().and_then(|number| u16::try_from(number).ok());
        let stated = self.stated_something(key)?;
        let read = |own| self.read(key, own, Wanted::Whole(u16::MAX), small);
        *value = stated.map(read).transpose()?;
        Ok(())
    }

    fn date(&mut self, key: Name, value: &mut NaiveDate) -> Visited {
        if let Some(stated) = self.stated(key)? {
            *value =
                self.read(key, stated, Wanted::Date, |own| own.as_str().and_then(date_from))?;
        }
        Ok(())
    }

    fn time(&mut self, key: Name, value: &mut ClockTime) -> Visited {
        if let Some(stated) = self.stated(key)? {
            let time = |own: &Value| own.as_str()?.parse().ok();
            *value = self.read(key, stated, Wanted::Time, time)?;
        }
        Ok(())
    }

    fn span(&mut self, key: Name, at: usize, value: &mut Span) -> Visited {
        if let Some(stated) = self.stated(key)?.and_then(|list| list.as_list()?.get(at)) {
            let span = stated.as_str().and_then(|text| text.parse().ok());
            *value = span.ok_or_else(|| self.wrong_kind(&item(key, at), stated, Wanted::Span))?;
        }
        Ok(())
    }

    fn reading(&mut self, key: Name, at: usize, value: &mut Logged) -> Visited {
        let item = self.stated(key)?.and_then(|list| list.as_list()?.get(at));
        self.enter(key, Some(at as u16), item, keys::READING)?;
        each_part(value, self)?;
        self.end();
        Ok(())
    }

    fn length(&mut self, key: Name, list: List, _: usize) -> Result<usize, Box<Problem>> {
        let Some(stated) = self.stated(key)? else { return Ok(0) };
        let length = self.read(key, stated, Wanted::List(list), Value::as_list)?.len();
        // Before room is made for them.
        if length > list.limit() {
            Err(Problem::TooMany { list, length }.into())
        } else {
            Ok(length)
        }
    }
}

/// An item of a list.
fn item(key: &str, at: usize) -> String {
    format!("{key}[{at}]")
}

/// Characters of a text that are told of one in the wrong place.
const TOLD: usize = 40;

/// What a value of a file is.
fn as_found(value: &Value) -> Found {
    match value {
        Value::Null => Found::Nothing,
        Value::Bool(own) => Found::YesNo(*own),
        Value::Number(own) => Found::Number(*own),
        Value::Text(own) => Found::Text(own.chars().take(TOLD).collect()),
        Value::List(own) => Found::List(own.len()),
        Value::Group(_) => Found::Group,
    }
}
