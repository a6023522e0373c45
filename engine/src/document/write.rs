//! Writes a plan as the text of a file: JSON with two spaces a level, fields in the order of their tables.
//!
//! Numbers are whole steps of their field's resolution and are written as such, exactly; no float is ever printed.

use chrono::NaiveDate;

use super::keys::{self, Forms, Keys, Presence};
use super::logged::Logged;
use super::schedule::{ClockTime, Span};
use super::visitor::{List, Name, NamedVisitor, TextField, Visited};
use super::walk_logbook::each_part;
use super::{Field, Problem, date_text};
use crate::working::Tag;

/// A value of a file.
enum Node {
    /// As it is written.
    Plain(String),
    List(Vec<Node>),
    Object(Vec<(Name, Node)>),
}

impl Node {
    /// Text in quotes, with escapes for what must not stand in them.
    fn quoted(text: &str) -> Self {
        let mut quoted = String::with_capacity(text.len() + 2);
        quoted.push('"');
        for own in text.chars() {
            match own {
                '"' | '\\' => quoted.extend(['\\', own]),
                '\0'..='\u{1f}' => quoted.push_str(&format!("\\u{:04x}", u32::from(own))),
                own => quoted.push(own),
            }
        }
        quoted.push('"');
        Self::Plain(quoted)
    }

    /// A word or figure that needs no escapes, in quotes.
    fn word(word: impl core::fmt::Display) -> Self {
        Self::Plain(format!("\"{word}\""))
    }

    fn print(&self, out: &mut String, depth: usize) {
        match self {
            Self::Plain(text) => out.push_str(text),
            Self::List(items) => {
                let items = items.iter().map(|item| (None, item));
                print_all(['[', ']'], items, out, depth);
            }
            Self::Object(fields) => {
                let fields = fields.iter().map(|(key, value)| (Some(*key), value));
                print_all(['{', '}'], fields, out, depth);
            }
        }
    }
}

/// Prints what stands between two brackets, a value a line.
fn print_all<'a>(
    [open, close]: [char; 2],
    all: impl ExactSizeIterator<Item = (Option<Name>, &'a Node)>,
    out: &mut String,
    depth: usize,
) {
    let empty = all.len() == 0;
    out.push(open);
    for (at, (key, value)) in all.enumerate() {
        if at > 0 {
            out.push(',');
        }
        line(out, depth + 1);
        if let Some(key) = key {
            out.extend(["\"", key, "\": "]);
        }
        value.print(out, depth + 1);
    }
    if !empty {
        line(out, depth);
    }
    out.push(close);
}

fn line(out: &mut String, depth: usize) {
    out.push('\n');
    (0..depth).for_each(|_| out.push_str("  "));
}

/// A number as a decimal; what is none reads as nothing.
fn decimal(field: Field, value: f64) -> Node {
    if !value.is_finite() {
        return Node::Plain("null".into());
    }
    let range = field.range();
    let (steps, per_unit) = (range.steps(value), range.per_unit as u64);
    let sign = if steps < 0 { "-" } else { "" };
    let places = per_unit.ilog10().max(1) as usize;
    let (units, rest) = (steps.unsigned_abs() / per_unit, steps.unsigned_abs() % per_unit);
    let mut text = format!("{sign}{units}.{rest:0places$}");
    while text.ends_with('0') && !text.ends_with(".0") {
        text.pop();
    }
    Node::Plain(text)
}

/// The object being written.
struct Frame {
    key: Name,
    /// Whether it is an item of a list.
    item: bool,
    keys: Keys,
    /// The form of a value of several forms, and whether it is a bare word.
    form: Option<(Name, bool)>,
    fields: Vec<(Name, Node)>,
}

impl Frame {
    fn new(key: Name, keys: Keys) -> Self {
        Self { key, item: false, keys, form: None, fields: Vec::new() }
    }

    /// Whether a field is left out.
    fn omits(&self, key: Name, is_default: bool) -> bool {
        match self.form {
            Some((name, _)) => name != key,
            None => {
                let place = self.keys.iter().find(|known| known.name == key);
                is_default && place.is_some_and(|known| known.presence == Presence::Spared)
            }
        }
    }

    fn into_node(mut self) -> Node {
        if let Some((name, true)) = self.form {
            return Node::word(name);
        }
        let mut ordered = Vec::with_capacity(self.fields.len());
        for known in self.keys {
            if let Some(at) = self.fields.iter().position(|(key, _)| *key == known.name) {
                ordered.push(self.fields.swap_remove(at));
            }
        }
        // The one field of a value of several forms is in no table.
        ordered.append(&mut self.fields);
        Node::Object(ordered)
    }
}

/// A visitor that writes a plan.
pub(super) struct Writer {
    version: u32,
    /// The plan and the objects around the value that is written, the innermost last.
    frames: Vec<Frame>,
}

impl Writer {
    pub(super) fn new(version: u32) -> Self {
        Self { version, frames: Vec::new() }
    }

    pub(super) fn into_text(mut self) -> String {
        let mut text = String::new();
        if let Some(plan) = self.frames.pop() {
            plan.into_node().print(&mut text, 0);
        }
        text
    }

    fn put(&mut self, key: Name, is_default: bool, value: Node) {
        if let Some(frame) = self.frames.last_mut()
            && !frame.omits(key, is_default)
        {
            frame.fields.push((key, value));
        }
    }

    /// Adds an item to a list of the innermost object.
    fn put_item(&mut self, key: Name, value: Node) {
        let fields = self.frames.last_mut().map(|frame| frame.fields.iter_mut());
        let list = fields.and_then(|mut fields| fields.find(|(known, _)| *known == key));
        if let Some((_, Node::List(items))) = list {
            items.push(value);
        }
    }
}

impl NamedVisitor for Writer {
    fn open(&mut self, key: Name, at: Tag, keys: Keys) -> Visited {
        let item = matches!(at, Tag::Load(_) | Tag::Array(_) | Tag::Check(_));
        self.frames.push(Frame { item, ..Frame::new(key, keys) });
        if key.is_empty() {
            self.put("sunlarder", false, Node::Plain(self.version.to_string()));
        }
        Ok(())
    }

    fn close(&mut self) -> Visited {
        // The plan itself stays: all other sections are fields of it.
        if self.frames.len() > 1 {
            self.end();
        }
        Ok(())
    }

    fn group(&mut self, key: Name, keys: Keys) -> Visited {
        self.frames.push(Frame::new(key, keys));
        Ok(())
    }

    fn variant(&mut self, key: Name, kind: &mut u32, forms: &'static Forms) -> Visited {
        let form = Some(forms.form(*kind));
        self.frames.push(Frame { form, ..Frame::new(key, &[]) });
        Ok(())
    }

    fn end(&mut self) {
        let Some(frame) = self.frames.pop() else { return };
        let (key, item) = (frame.key, frame.item);
        let node = frame.into_node();
        if item {
            self.put_item(key, node);
        } else {
            self.put(key, false, node);
        }
    }

    fn number(&mut self, key: Name, field: Field, value: &mut f64, default: f64) -> Visited {
        self.put(key, *value == default, decimal(field, *value));
        Ok(())
    }

    fn option(&mut self, key: Name, field: Field, value: &mut Option<f64>) -> Visited {
        if let Some(value) = value {
            self.put(key, false, decimal(field, *value));
        }
        Ok(())
    }

    fn each(&mut self, key: Name, field: Field, values: &mut [f64]) -> Visited {
        let items = values.iter().map(|value| decimal(field, *value)).collect();
        self.put(key, false, Node::List(items));
        Ok(())
    }

    fn text(&mut self, key: Name, _: TextField, value: &mut String) -> Visited {
        self.put(key, value.is_empty(), Node::quoted(value));
        Ok(())
    }

    fn flag(&mut self, key: Name, value: &mut bool, default: bool) -> Visited {
        let word = if *value { "true" } else { "false" };
        self.put(key, *value == default, Node::Plain(word.into()));
        Ok(())
    }

    fn there(&mut self, _: Name, _: &mut bool) -> Visited {
        Ok(())
    }

    fn choice(&mut self, key: Name, value: &mut u32, names: &'static [&'static str]) -> Visited {
        let name = names.get(*value as usize).copied().unwrap_or_default();
        self.put(key, *value == 0, Node::word(name));
        Ok(())
    }

    fn some(
        &mut self,
        key: Name,
        bits: &mut u32,
        all: u32,
        names: &'static [&'static str],
    ) -> Visited {
        let chosen = (0..u32::BITS).filter(|bit| *bits & all & 1 << bit != 0);
        let item = |bit: u32| match names.get(bit as usize) {
            Some(name) => Node::word(name),
            None => Node::Plain((bit + 1).to_string()),
        };
        self.put(key, *bits == all, Node::List(chosen.map(item).collect()));
        Ok(())
    }

    fn id(&mut self, key: Name, value: &mut Option<u16>) -> Visited {
        if let Some(value) = value {
            self.put(key, false, Node::Plain(value.to_string()));
        }
        Ok(())
    }

    fn date(&mut self, key: Name, value: &mut NaiveDate) -> Visited {
        self.put(key, false, Node::word(date_text(*value)));
        Ok(())
    }

    fn time(&mut self, key: Name, value: &mut ClockTime) -> Visited {
        self.put(key, false, Node::word(*value));
        Ok(())
    }

    fn span(&mut self, key: Name, _: usize, value: &mut Span) -> Visited {
        self.put_item(key, Node::word(*value));
        Ok(())
    }

    fn reading(&mut self, key: Name, _: usize, value: &mut Logged) -> Visited {
        self.frames.push(Frame { item: true, ..Frame::new(key, keys::READING) });
        each_part(value, self)?;
        self.end();
        Ok(())
    }

    fn length(&mut self, key: Name, _: List, length: usize) -> Result<usize, Box<Problem>> {
        self.put(key, length == 0, Node::List(Vec::new()));
        Ok(length)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_written_as_the_shortest_decimals() {
        for field in Field::ALL {
            let range = field.range();
            assert_eq!(range.per_unit, libm::pow(10.0, libm::round(libm::log10(range.per_unit))));
            let (first, last) = (range.steps(range.min), range.steps(range.max));
            let stride = ((last - first) / 997).max(1) as usize;
            for steps in (first..=last).step_by(stride).chain([last]) {
                let value = range.value(steps);
                let Node::Plain(text) = decimal(*field, value) else { panic!("{field:?}") };
                // The standard library prints the fewest digits that read as the same number.
                assert_eq!(text, format!("{value:?}"), "{field:?}");
            }
        }
    }

    #[test]
    fn what_is_no_number_is_written_as_none() {
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(matches!(decimal(Field::Loss, value), Node::Plain(text) if text == "null"));
        }
    }
}
