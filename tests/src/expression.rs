//! Works out the text of a formula, so that what people are shown can be held against what the engine computed.
//!
//! Understands `+ − · /`, brackets, `²` and `³`, π, and the functions of `FUNCTIONS`. Angles are in degrees, as they are
//! shown; unit signs are passed over.

use std::str::Chars;

use sunlarder_engine::quantity::Unit;
use sunlarder_engine::working::{Piece, Step};

/// A function by its name as it stands in formulas; the second argument is 0 for those that take one.
type Function = (&'static str, fn(f64, f64) -> f64);

/// What a formula may call. The longest of two names that begin alike comes first.
const FUNCTIONS: [Function; 9] = [
    ("arccos", |x, _| libm::acos(x.clamp(-1.0, 1.0)).to_degrees()),
    ("cos", |x, _| libm::cos(x.to_radians())),
    ("sin", |x, _| libm::sin(x.to_radians())),
    ("tan", |x, _| libm::tan(x.to_radians())),
    ("exp", |x, _| libm::exp(x)),
    ("ln", |x, _| libm::log(x)),
    ("√", |x, _| x.sqrt()),
    ("min", f64::min),
    ("max", f64::max),
];

/// Signs of units, which carry no value.
const UNITS: [&str; 4] = ["kW/m²", "W/m²", "°", "h"];

#[derive(Clone, Copy, Debug)]
enum Token {
    Number(f64),
    Sign(char),
    Call(fn(f64, f64) -> f64),
}

/// A number as it goes into a formula: 20 % are 0.2.
#[must_use]
pub fn plain(value: f64, unit: Unit) -> f64 {
    if unit == Unit::Percent { value / 100.0 } else { value }
}

/// The value of a step's formula with its inputs put in, per cent as hundredths.
///
/// # Errors
/// What could not be read, with the text around it.
pub fn value(step: &Step) -> Result<f64, String> {
    let mut tokens = Vec::new();
    for piece in step.pieces() {
        match piece {
            Piece::Text(text) => read(text, &mut tokens)?,
            Piece::Input(place) => {
                let input = step.inputs.get(place).ok_or_else(|| format!("no input {place}"))?;
                tokens.push(Token::Number(plain(input.term.value, input.term.unit)));
            }
        }
    }
    let mut rest = tokens.as_slice();
    let value = sum(&mut rest)?;
    if rest.is_empty() { Ok(value) } else { Err(format!("left over: {rest:?}")) }
}

fn read(text: &str, tokens: &mut Vec<Token>) -> Result<(), String> {
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        if first == ' ' {
            rest = &rest[1..];
        } else if let Some((name, call)) = FUNCTIONS.iter().find(|(name, _)| rest.starts_with(name))
        {
            tokens.push(Token::Call(*call));
            rest = &rest[name.len()..];
        } else if let Some(unit) = UNITS.iter().find(|unit| rest.starts_with(**unit)) {
            rest = &rest[unit.len()..];
        } else if first.is_ascii_digit() {
            let end = rest.find(|sign: char| !sign.is_ascii_digit() && sign != '.');
            let (number, after) = rest.split_at(end.unwrap_or(rest.len()));
            tokens.push(Token::Number(number.parse().map_err(|_| format!("{number} in {text}"))?));
            rest = after;
        } else if "+−·/^(),²³π".contains(first) {
            tokens.push(Token::Sign(first));
            rest = after_first(rest);
        } else {
            return Err(format!("cannot read {rest}"));
        }
    }
    Ok(())
}

fn after_first(text: &str) -> &str {
    let mut signs: Chars<'_> = text.chars();
    signs.next();
    signs.as_str()
}

fn take(tokens: &mut &[Token], sign: char) -> bool {
    let found = matches!(tokens.first(), Some(Token::Sign(first)) if *first == sign);
    if found {
        *tokens = &tokens[1..];
    }
    found
}

fn sum(tokens: &mut &[Token]) -> Result<f64, String> {
    let mut total = if take(tokens, '−') { -product(tokens)? } else { product(tokens)? };
    loop {
        if take(tokens, '+') {
            total += product(tokens)?;
        } else if take(tokens, '−') {
            total -= product(tokens)?;
        } else {
            return Ok(total);
        }
    }
}

fn product(tokens: &mut &[Token]) -> Result<f64, String> {
    let mut total = power(tokens)?;
    loop {
        if take(tokens, '·') {
            total *= power(tokens)?;
        } else if take(tokens, '/') {
            total /= power(tokens)?;
        } else {
            return Ok(total);
        }
    }
}

fn power(tokens: &mut &[Token]) -> Result<f64, String> {
    let base = atom(tokens)?;
    if take(tokens, '²') {
        Ok(base * base)
    } else if take(tokens, '³') {
        Ok(base * base * base)
    } else if take(tokens, '^') {
        Ok(libm::pow(base, power(tokens)?))
    } else {
        Ok(base)
    }
}

fn atom(tokens: &mut &[Token]) -> Result<f64, String> {
    let Some((first, rest)) = tokens.split_first() else { return Err("it ends too early".into()) };
    *tokens = rest;
    match *first {
        Token::Number(number) => Ok(number),
        Token::Sign('π') => Ok(std::f64::consts::PI),
        Token::Sign('(') => {
            let value = sum(tokens)?;
            close(tokens, value)
        }
        Token::Call(call) => {
            if !take(tokens, '(') {
                return Err("a function without a bracket".into());
            }
            let argument = sum(tokens)?;
            let second = if take(tokens, ',') { sum(tokens)? } else { 0.0 };
            close(tokens, call(argument, second))
        }
        Token::Sign(sign) => Err(format!("{sign} where a value should stand")),
    }
}

fn close(tokens: &mut &[Token], value: f64) -> Result<f64, String> {
    if take(tokens, ')') { Ok(value) } else { Err("a bracket stays open".into()) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(text: &str) -> Result<f64, String> {
        let mut tokens = Vec::new();
        read(text, &mut tokens)?;
        sum(&mut tokens.as_slice())
    }

    #[test]
    fn reads_what_people_are_shown() {
        assert_eq!(text("2 + 3 · 4 − 6 / 3"), Ok(12.0));
        assert_eq!(text("−(1 − 3)² + 2³"), Ok(4.0));
        assert_eq!(text("3 · 2^(5 − 2) / (1 kW/m²)"), Ok(24.0));
        assert_eq!(text("min(1, 2) + max(1, 2)"), Ok(3.0));
        assert!(
            (text("arccos(cos(60°)) · π / 180°").unwrap() - 1.047_197_551_196_597_6).abs() < 1e-12
        );
        assert!(text("2 +").is_err() && text("(2").is_err() && text("a").is_err());
    }
}
