//! How a figure was worked out: each step with its equation in symbols and in numbers, and what the symbols mean.

use sunlarder_engine::outlook::Question;
use sunlarder_engine::words::{InputLine, Line, lines};
use sunlarder_engine::working::Working;

use super::About;
use crate::paper::Paper;

/// The working of a figure: the last step first, each under the number by which others refer to it.
pub(super) fn write(question: Question, about: About<'_>) -> String {
    let About { words, document, system, outlook } = about;
    let mut working = Working::new();
    outlook.work(question, system, &mut working);
    sheet(&lines(&working, words, &|tag| words.name_in(document, tag)))
}

/// Steps one under another, the last first.
pub(super) fn sheet(lines: &[Line]) -> String {
    let mut paper = Paper::default();
    for (at, line) in lines.iter().enumerate().rev() {
        step(&mut paper, at + 1, line);
    }
    paper.finish()
}

fn step(paper: &mut Paper, number: usize, line: &Line) {
    let owner = line.owner.as_ref().map(|owner| format!(" – {owner}")).unwrap_or_default();
    paper
        .class("div", "step")
        .said("h3", "", &format!("{number}. {}{owner}", line.title))
        .said("p", "equation", &format!("{} = {}", line.symbol, line.equation))
        .class("p", "equation")
        .text(&format!("= {} = ", line.numbers))
        .said("strong", "", &line.result)
        .close()
        .class("ul", "symbols");
    for line in &line.inputs {
        input(paper, line);
    }
    paper.close().said("p", "source", &line.source).close();
}

fn input(paper: &mut Paper, line: &InputLine) {
    let owner = line.owner.as_ref().map(|owner| format!(" ({owner})")).unwrap_or_default();
    paper
        .open("li")
        .said("b", "", line.symbol)
        .text(&format!(" {}{owner}: {}", line.meaning, line.value))
        .said("span", "source", &format!(" · {}", line.source))
        .close();
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paper::TEXT;

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
        let said: Vec<&str> = text
            .split(TEXT)
            .skip(1)
            .map(|own| own.split(char::is_control).next().unwrap_or_default())
            .collect();
        let step = |title| {
            let input = ["U", " voltage: 12 V", " · your plan"];
            let head = [title, "I = P / U", "= 60 W / 12 V = ", "5 A"];
            [&head[..], &input, &input, &["follows from the definition"]].concat()
        };
        assert_eq!(said, [step("2. Last – Fridge"), step("1. First – Fridge")].concat());
        assert_eq!(sheet(&[]), "");
    }
}
