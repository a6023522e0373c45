//! How a number came about: its formula, the values put in, and where each comes from.
//!
//! **Question answered:** "why is this 74 Ah?" Functions that compute a figure for people take `&mut impl Trace` and pass
//! each result through [`Trace::step`]. With `()` as the trace that call compiles to nothing, so loops run at full speed;
//! with a [`Working`] every step is kept and links itself to the steps that made its inputs. The result is the same
//! bit for bit either way, because a step returns the very value it was given.
//!
//! Steps hold ids and numbers only. Names of symbols and formulas in a language are in `words`.

mod formula;
mod source;
mod symbol;

pub use formula::Formula;
pub use source::Source;
pub use symbol::Symbol;

use crate::quantity::{Quantity, Unit};

/// What a term belongs to, where one formula runs over many things.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Tag {
    /// Nothing in particular.
    None,
    /// The load with this place in the plan, from 0.
    Load(u16),
    /// The array with this place in the plan, from 0.
    Array(u16),
    /// The month, from 1.
    Month(u8),
    /// The reading of a check with this place in the plan, from 0.
    Check(u16),
}

/// A value that goes into a formula.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Term {
    /// The bare number.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
    /// What it belongs to.
    pub tag: Tag,
    /// Where it comes from, if it is no result of an earlier step.
    pub source: Source,
    /// Its own symbol, where a sum mixes several kinds; otherwise the formula's.
    pub symbol: Option<Symbol>,
}

/// Makes a term of a quantity that the plan states or an earlier step gave.
#[inline]
pub fn term<Q: Quantity>(quantity: Q) -> Term {
    Term {
        value: quantity.value(),
        unit: Q::UNIT,
        tag: Tag::None,
        source: Source::Plan,
        symbol: None,
    }
}

impl Term {
    /// The same term with the source of a constant or of a typical value.
    #[inline]
    #[must_use]
    pub fn from(self, source: Source) -> Self {
        Self { source, ..self }
    }

    /// The same term as the value of one load, array or month.
    #[inline]
    #[must_use]
    pub fn of(self, tag: Tag) -> Self {
        Self { tag, ..self }
    }

    /// The same term under a symbol of its own, in a sum of several kinds.
    #[inline]
    #[must_use]
    pub fn named(self, symbol: Symbol) -> Self {
        Self { symbol: Some(symbol), ..self }
    }
}

/// Receives the steps of a computation.
pub trait Trace {
    /// Notes that `formula` made `result` of `inputs`, given in the order of [`Formula::inputs`], and gives `result` back.
    fn step<Q: Quantity>(&mut self, formula: Formula, result: Q, inputs: &[Term]) -> Q {
        self.step_of(Tag::None, formula, result, inputs)
    }

    /// The same for the value of one load, array or month.
    fn step_of<Q: Quantity>(&mut self, tag: Tag, formula: Formula, result: Q, inputs: &[Term])
    -> Q;
}

impl Trace for () {
    #[inline(always)]
    fn step_of<Q: Quantity>(&mut self, _: Tag, _: Formula, result: Q, _: &[Term]) -> Q {
        result
    }
}

/// An input of a recorded step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// Its symbol in the formula.
    pub symbol: Symbol,
    /// The value put in.
    pub term: Term,
    /// The place in [`Working::steps`] of the step that made it; none for what was given.
    pub made_by: Option<usize>,
}

/// One recorded step.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The formula used.
    pub formula: Formula,
    /// What the result belongs to.
    pub tag: Tag,
    /// The result's bare number.
    pub value: f64,
    /// The result's unit.
    pub unit: Unit,
    /// What went in.
    pub inputs: Vec<Input>,
}

/// A recorded computation: a list of steps, each linked to the earlier ones that it builds on.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Working {
    steps: Vec<Step>,
}

impl Working {
    /// An empty record.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// All steps in the order in which they were computed; the last is the figure asked for.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }

    /// The figure asked for: the last step.
    #[must_use]
    pub fn result(&self) -> Option<&Step> {
        self.steps.last()
    }

    /// Finds the newest step that gave just this value: same symbol, unit, owner and bits.
    fn maker_of(&self, symbol: Symbol, term: &Term) -> Option<usize> {
        self.steps.iter().rposition(|step| {
            step.formula.symbol() == symbol
                && step.unit == term.unit
                && step.value.to_bits() == term.value.to_bits()
                && (step.tag == term.tag || term.tag == Tag::None)
        })
    }
}

impl Trace for Working {
    fn step_of<Q: Quantity>(
        &mut self,
        tag: Tag,
        formula: Formula,
        result: Q,
        inputs: &[Term],
    ) -> Q {
        let inputs = inputs
            .iter()
            .enumerate()
            .map(|(place, term)| {
                let symbol = term.symbol.unwrap_or(formula.input(place));
                Input { symbol, term: *term, made_by: self.maker_of(symbol, term) }
            })
            .collect();
        self.steps.push(Step { formula, tag, value: result.value(), unit: Q::UNIT, inputs });
        result
    }
}

/// A place in a formula's template: literal text, or the input of that number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Piece<'a> {
    /// Text that stands as it is.
    Text(&'a str),
    /// The input with this place.
    Input(usize),
}

impl Step {
    /// The formula's right-hand side in pieces, so that a view can set symbols or numbers in the places of the inputs.
    ///
    /// A formula over many things (a sum over loads) repeats its last input as often as there are inputs.
    #[must_use]
    pub fn pieces(&self) -> Vec<Piece<'static>> {
        if let Some(joint) = self.formula.template().strip_prefix("each:") {
            let mut pieces = Vec::with_capacity(2 * self.inputs.len());
            for place in 0..self.inputs.len() {
                if place > 0 {
                    pieces.push(Piece::Text(joint));
                }
                pieces.push(Piece::Input(place));
            }
            return pieces;
        }
        split_template(self.formula.template())
    }
}

/// Cuts a template such as `{0} / ({1} · {2})` into its pieces.
fn split_template(template: &'static str) -> Vec<Piece<'static>> {
    let mut pieces = Vec::new();
    let mut rest = template;
    while let Some((text, after)) = rest.split_once('{') {
        if !text.is_empty() {
            pieces.push(Piece::Text(text));
        }
        let Some((place, after)) = after.split_once('}') else { break };
        if let Ok(place) = place.parse() {
            pieces.push(Piece::Input(place));
        }
        rest = after;
    }
    if !rest.is_empty() {
        pieces.push(Piece::Text(rest));
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Amps, Hours, Volts, Watts};

    fn charge(trace: &mut impl Trace) -> crate::quantity::AmpHours {
        let (power, volts, hours) = (Watts(60.0), Volts(12.0), Hours(2.0));
        let amps = trace.step(Formula::LoadCurrent, power / volts, &[term(power), term(volts)]);
        trace.step(Formula::Charge, amps * hours, &[term(amps), term(hours)])
    }

    #[test]
    fn tracing_changes_no_bit_and_links_the_steps() {
        let mut working = Working::new();
        let traced = charge(&mut working);
        assert_eq!(traced.0.to_bits(), charge(&mut ()).0.to_bits());
        let result = working.result().unwrap();
        assert_eq!(result.inputs[0].made_by, Some(0), "the current was made by the first step");
        assert_eq!(result.inputs[1].made_by, None, "the hours were given");
        assert_eq!(result.value, 10.0);
        assert_eq!(working.steps()[0].value, Amps(5.0).0);
    }

    #[test]
    fn every_template_names_its_inputs() {
        for formula in Formula::ALL {
            let template = formula.template();
            if template.starts_with("each:") {
                assert_eq!(formula.inputs().len(), 1, "{formula:?}");
                continue;
            }
            let mut named: Vec<usize> = split_template(template)
                .into_iter()
                .filter_map(
                    |piece| if let Piece::Input(place) = piece { Some(place) } else { None },
                )
                .collect();
            named.sort_unstable();
            named.dedup();
            let all: Vec<usize> = (0..formula.inputs().len()).collect();
            assert_eq!(named, all, "{formula:?}: {template}");
        }
    }
}
