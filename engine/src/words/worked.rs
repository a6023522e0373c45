//! The layout of a working: each step as its equation, the same with numbers put in, its result and its inputs.
//!
//! It is the same in every language but for the words, and the same on the page and on the command line.

use super::{Language, NameOf, Words};
use crate::quantity::Unit;
use crate::working::{Input, Piece, Step, Symbol, Tag, Working};

/// One step of a working, ready to be shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What the step does.
    pub title: &'static str,
    /// The load, array or month that it is about.
    pub owner: Option<String>,
    /// Symbol of the result.
    pub symbol: &'static str,
    /// What that symbol means.
    pub meaning: &'static str,
    /// Right-hand side in symbols.
    pub equation: String,
    /// Right-hand side with values and units put in.
    pub numbers: String,
    /// The result with its unit.
    pub result: String,
    /// Where the formula comes from.
    pub source: String,
    /// What went in, in the order of the formula.
    pub inputs: Vec<InputLine>,
}

/// An input of a step, ready to be shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct InputLine {
    /// Its symbol.
    pub symbol: &'static str,
    /// What that symbol means.
    pub meaning: &'static str,
    /// Its value with its unit.
    pub value: String,
    /// Where the value comes from.
    pub source: String,
    /// The place of the line that made it.
    pub made_by: Option<usize>,
    /// The load, array or month that it belongs to.
    pub owner: Option<String>,
}

/// The lines of a working, in the order in which its steps were computed; the last is the figure asked for.
///
/// `name_of` gives the names of loads and arrays.
#[must_use]
pub fn lines(working: &Working, words: Words, name_of: NameOf<'_>) -> Vec<Line> {
    working.steps().iter().map(|step| line(step, words, name_of)).collect()
}

fn line(step: &Step, words: Words, name_of: NameOf<'_>) -> Line {
    let symbol = step.formula.symbol();
    let pieces = step.pieces();
    Line {
        title: words.formula(step.formula),
        owner: words.owner(step.tag, name_of),
        symbol: symbol.text(),
        meaning: words.symbol(symbol),
        equation: equation(step, &pieces),
        numbers: numbers(words, step, &pieces),
        result: value(words, step.value, step.unit),
        source: words.source(step.formula.source()),
        inputs: step.inputs.iter().map(|input| input_line(input, words, name_of)).collect(),
    }
}

fn input_line(input: &Input, words: Words, name_of: NameOf<'_>) -> InputLine {
    InputLine {
        symbol: input.symbol.text(),
        meaning: words.symbol(input.symbol),
        value: value(words, input.term.value, input.term.unit),
        source: match input.made_by {
            Some(place) => words.from_step(place + 1),
            None => words.source(input.term.source),
        },
        made_by: input.made_by,
        owner: words.owner(input.term.tag, name_of),
    }
}

/// A number that a calculation can go on with, and its unit: always that of the formula, whatever the habits, or its equation would
/// not hold.
fn value(words: Words, value: f64, unit: Unit) -> String {
    let number = words.precise(value);
    match unit {
        Unit::One => number,
        Unit::Degree => format!("{number}°"),
        unit => format!("{number}\u{a0}{}", unit.symbol()),
    }
}

/// The pieces with the symbols in the places of the inputs; a row of one symbol becomes a sum sign.
fn equation(step: &Step, pieces: &[Piece<'_>]) -> String {
    if step.formula.template().starts_with("each:") {
        return sum(&step.inputs);
    }
    set(pieces, |place| step.inputs.get(place).map_or("", |input| input.symbol.text()).to_owned())
}

fn sum(inputs: &[Input]) -> String {
    let symbols: Vec<Symbol> = inputs.iter().map(|input| input.symbol).collect();
    let rows = symbols.chunk_by(|a, b| a == b);
    let terms = rows.filter_map(|row| {
        let symbol = row.first()?.text();
        Some(if row.len() > 1 { format!("Σ {symbol}") } else { symbol.to_owned() })
    });
    terms.collect::<Vec<_>>().join(" + ")
}

/// The pieces with values and units in the places of the inputs.
fn numbers(words: Words, step: &Step, pieces: &[Piece<'_>]) -> String {
    let mut at = 0;
    set(pieces, |place| {
        let Some(input) = step.inputs.get(place) else { return String::new() };
        let text = value(words, input.term.value, input.term.unit);
        // Which piece this is decides whether a sign needs parentheses.
        while !matches!(pieces.get(at), Some(Piece::Input(_)) | None) {
            at += 1;
        }
        let before = at.checked_sub(1).and_then(|before| pieces.get(before));
        let after = pieces.get(at + 1);
        at += 1;
        if input.term.value < 0.0 && !stands_free(before, after) {
            format!("({text})")
        } else {
            text
        }
    })
}

/// Whether a negative number between these pieces can be read without parentheses of its own.
fn stands_free(before: Option<&Piece<'_>>, after: Option<&Piece<'_>>) -> bool {
    let opened = match before {
        None => true,
        Some(Piece::Text(text)) => text.ends_with('(') || text.ends_with(", "),
        Some(Piece::Input(_)) => false,
    };
    let powered = matches!(after, Some(Piece::Text(text)) if text.starts_with(['²', '³', '^']));
    opened && !powered
}

fn set(pieces: &[Piece<'_>], mut input: impl FnMut(usize) -> String) -> String {
    let mut text = String::new();
    for piece in pieces {
        match piece {
            Piece::Text(own) => text.push_str(own),
            Piece::Input(place) => text.push_str(&input(*place)),
        }
    }
    text
}

impl Language {
    /// The load, array or month that a value belongs to, by its name if it has one.
    #[must_use]
    pub fn owner(self, tag: Tag, name_of: NameOf<'_>) -> Option<String> {
        match tag {
            Tag::None => None,
            Tag::Month(month) => Some(self.month(usize::from(month).saturating_sub(1)).to_owned()),
            Tag::Load(_) | Tag::Array(_) | Tag::Check(_) => {
                name_of(tag).or_else(|| self.unnamed(tag))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;
    use crate::quantity::{AmpHours, Celsius, Percent, Volts, WattHours};
    use crate::working::{Formula, Source, Trace, term};

    fn nameless(_: Tag) -> Option<String> {
        None
    }

    #[test]
    fn a_step_can_be_redone_by_hand() {
        let mut working = Working::new();
        let tag = Tag::Load(2);
        let inputs = [term(WattHours(1234.6)).of(tag), term(Volts(12.8))];
        let charge = working.step_of(tag, Formula::LoadCharge, AmpHours(96.453_125), &inputs);
        working.step(Formula::Autonomy, 2.0, &[term(AmpHours(192.906_25)), term(charge)]);
        let name_of = |tag| (tag == Tag::Load(2)).then(|| "Kettle".to_owned());
        let lines = lines(&working, Words::of(Language::English), &name_of);
        let line = &lines[0];
        assert_eq!(line.title, "Charge of the load");
        assert_eq!(line.owner.as_deref(), Some("Kettle"));
        assert_eq!((line.symbol, line.equation.as_str()), ("Q_l", "E_b / U_n"));
        assert_eq!(line.numbers, "1235\u{a0}Wh / 12.8\u{a0}V");
        assert_eq!(line.result, "96.45\u{a0}Ah");
        assert_eq!(line.source, "follows from the definition");
        assert_eq!(line.inputs[1].meaning, "nominal voltage of the bank");
        assert_eq!(line.inputs[1].source, "your plan");
    }

    #[test]
    fn signs_stay_apart_from_the_signs_of_the_formula() {
        let mut working = Working::new();
        let inputs = [Celsius(30.0), Celsius(-18.0), Celsius(-25.0), Celsius(12.0)].map(term);
        let [air, inside, evaporator, lift] = inputs;
        let reference = term(Celsius(25.0)).from(Source::Typical);
        let inputs = [term(Percent(40.0)), air, inside, lift, evaporator, reference];
        working.step(Formula::CoolingDuty, Percent(46.0), &inputs);
        let lines = lines(&working, Words::of(Language::English), &nameless);
        let numbers = lines[0].numbers.replace('\u{a0}', " ");
        assert!(
            numbers.starts_with("40 % · (30 °C − (−18 °C)) · (30 °C + 12 °C − (−25 °C))"),
            "{numbers}"
        );
        assert!(!numbers.contains("− −"), "{numbers}");
    }

    #[test]
    fn a_sum_names_its_kinds_once() {
        let mut working = Working::new();
        let load = |place| term(AmpHours(1.5)).of(Tag::Load(place));
        let inverter = term(AmpHours(2.0)).named(Symbol::InverterDay);
        working.step(Formula::DayTotal, AmpHours(5.0), &[load(0), load(1), inverter]);
        let lines = lines(&working, Words::of(Language::English), &nameless);
        assert_eq!(lines[0].equation, "Σ Q_l + Q_inv");
        assert_eq!(lines[0].numbers.replace('\u{a0}', " "), "1.5 Ah + 1.5 Ah + 2 Ah");
        assert_eq!(lines[0].inputs[1].owner.as_deref(), Some("Load 2"));
    }

    #[test]
    fn the_working_of_a_whole_plan_leads_from_step_to_step() {
        use crate::document::{Array, Inverter, Load, Supply};
        use crate::outlook::Outlook;
        use crate::system::System;
        let mut plan = Document { inverter: Some(Inverter::default()), ..Document::default() };
        plan.loads = vec![Load::default(), Load { supply: Supply::Ac, ..Load::default() }];
        plan.arrays = vec![Array::default()];
        let system = System::assemble(&plan, crate::place::Climate::embedded(), &mut ()).unwrap();
        let mut working = Working::new();
        let outlook = Outlook::of(&system);
        outlook.autonomy_worked(&system, &mut working);
        outlook.month_worked(&system, 6, &mut working);
        let lines = lines(&working, Words::of(Language::English), &nameless);
        assert!(lines.len() > 15, "{}", lines.len());
        for (at, line) in lines.iter().enumerate() {
            assert!(!line.title.is_empty() && !line.meaning.is_empty() && !line.source.is_empty());
            assert!(!line.numbers.contains('{') && !line.equation.contains('{'), "{line:?}");
            for input in &line.inputs {
                assert!(!input.source.is_empty() && !input.meaning.is_empty(), "{line:?}");
                assert!(input.made_by.is_none_or(|before| before < at));
            }
        }
        let total = lines.iter().find(|line| line.symbol == "Q_day").unwrap();
        assert!(total.inputs.iter().all(|input| input.made_by.is_some()), "{total:?}");
    }
}
