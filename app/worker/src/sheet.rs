//! A working as one text for the page, which only has to put its parts into elements.
//!
//! Steps are parted by [`STEP`], the parts of a step by [`PART`]: title, equation in symbols, equation in numbers, result,
//! source, and then for each input its symbol, its meaning with its value, and where that comes from. The figure asked for
//! comes first. Every part is text and becomes a text on the page, never markup.

use sunlarder_engine::words::{InputLine, Line};

/// Stands between steps: the record separator of ASCII.
pub const STEP: char = '\u{1e}';
/// Stands between the parts of a step: the unit separator of ASCII.
pub const PART: char = '\u{1f}';
/// Parts of a step before its inputs.
pub const HEAD: usize = 5;
/// Parts of an input.
pub const INPUT: usize = 3;

/// The sheet of a working: the last step first, each under the number by which others refer to it.
#[must_use]
pub fn sheet(lines: &[Line]) -> String {
    let mut text = String::new();
    for (at, line) in lines.iter().enumerate().rev() {
        if !text.is_empty() {
            text.push(STEP);
        }
        step(&mut text, at + 1, line);
    }
    text
}

fn step(text: &mut String, number: usize, line: &Line) {
    let owner = line.owner.as_ref().map(|owner| format!(" – {owner}")).unwrap_or_default();
    part(text, &format!("{number}. {}{owner}", line.title));
    text.push(PART);
    part(text, &format!("{} = {}", line.symbol, line.equation));
    text.push(PART);
    part(text, &format!("= {} = ", line.numbers));
    text.push(PART);
    part(text, &line.result);
    text.push(PART);
    part(text, &line.source);
    for line in &line.inputs {
        input(text, line);
    }
}

fn input(text: &mut String, line: &InputLine) {
    let owner = line.owner.as_ref().map(|owner| format!(" ({owner})")).unwrap_or_default();
    text.push(PART);
    part(text, line.symbol);
    text.push(PART);
    part(text, &format!(" {}{owner}: {}", line.meaning, line.value));
    text.push(PART);
    part(text, &format!(" · {}", line.source));
}

/// Sentences as the parts of one step.
#[must_use]
pub fn list(sentences: &[String]) -> String {
    let mut text = String::new();
    for (place, sentence) in sentences.iter().enumerate() {
        if place > 0 {
            text.push(PART);
        }
        part(&mut text, sentence);
    }
    text
}

/// Adds a part; a separator in the name that somebody gave a load would shift all that follows.
fn part(text: &mut String, own: &str) {
    text.extend(own.chars().filter(|own| !matches!(*own, STEP | PART)));
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(title: &'static str, owner: &str) -> Line {
        let input = InputLine {
            symbol: "U",
            meaning: "voltage",
            value: "12 V".into(),
            source: "your plan".into(),
            made_by: None,
            owner: None,
        };
        Line {
            title,
            owner: Some(owner.into()),
            symbol: "I",
            meaning: "current",
            equation: "P / U".into(),
            numbers: "60 W / 12 V".into(),
            result: "5 A".into(),
            source: "follows from the definition".into(),
            inputs: vec![input; 2],
        }
    }

    #[test]
    fn the_figure_comes_first_and_steps_keep_their_numbers() {
        let text = sheet(&[line("First", "Fridge"), line("Last", "Fridge")]);
        let steps: Vec<Vec<&str>> =
            text.split(STEP).map(|step| step.split(PART).collect()).collect();
        assert_eq!(steps.len(), 2);
        assert_eq!(steps[0][0], "2. Last – Fridge");
        assert_eq!(
            steps[1][..HEAD],
            [
                "1. First – Fridge",
                "I = P / U",
                "= 60 W / 12 V = ",
                "5 A",
                "follows from the definition"
            ]
        );
        assert_eq!(steps[1].len(), HEAD + 2 * INPUT);
        assert_eq!(steps[1][HEAD..][..INPUT], ["U", " voltage: 12 V", " · your plan"]);
        assert_eq!(sheet(&[]), "");
    }

    #[test]
    fn a_name_cannot_break_the_sheet() {
        let broken = format!("Fri{STEP}d{PART}ge");
        assert_eq!(sheet(&[line("First", &broken)]), sheet(&[line("First", "Fridge")]));
    }
}
