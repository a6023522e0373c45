//! A question without its answer, and then the answer with everybody's guesses.

use sunlarder_engine::outlook::{Guessed, Question, median};
use sunlarder_engine::words::Label as L;

use super::About;
use super::beside::{start, table};
use super::drawing::dots;
use super::other::number;
use super::working;
use crate::paper::Paper;
use crate::sentences::PART;

/// What is asked and what is known: nothing that the plan comes to.
pub(super) fn question(what: Guessed, about: About<'_>) -> String {
    let About { words, document, outlook, .. } = about;
    let mut paper = Paper::default();
    paper
        .said("h1", "", &words.asked(what, outlook.month))
        .said("p", "where", &start(words, document))
        .said("h2", "", words.label(L::WhatIsKnown))
        .class("dl", "known");
    for (part, said) in words.stated_lines(document) {
        paper.open("div").said("dt", "", &part).said("dd", "", &said).close();
    }
    paper.close().take()
}

/// A guess with the name of whoever made it.
struct Guess<'a> {
    name: &'a str,
    value: f64,
}

/// The argument for guesses: the number of what is guessed, then each name and guess.
#[must_use]
pub fn argument(what: Guessed, guesses: &[(String, f64)]) -> String {
    let mut text = (what as u32).to_string();
    for (name, value) in guesses {
        text.push(PART);
        text.extend(name.chars().filter(|own| *own != PART));
        text.push(PART);
        text.push_str(&format!("{:x}", value.to_bits()));
    }
    text
}

/// What is guessed, by its number.
pub(super) fn guessed(number: &str) -> Option<Guessed> {
    Guessed::ALL.get(number.parse::<usize>().ok()?).copied()
}

/// What is guessed, and the guesses.
fn read(argument: &str) -> Option<(Guessed, Vec<Guess<'_>>)> {
    let mut parts = argument.split(PART);
    let what = guessed(parts.next()?)?;
    let mut guesses = Vec::new();
    while let (Some(name), Some(bits)) = (parts.next(), parts.next()) {
        guesses.push(Guess { name, value: number(bits).filter(|own| what.holds(*own))? });
    }
    Some((what, guesses))
}

/// The answer, how the guesses lie about it, and how it was worked out; nothing for an argument that means nothing.
pub(super) fn answer(argument: &str, about: About<'_>) -> Option<String> {
    let About { words, system, outlook, .. } = about;
    let (what, guesses) = read(argument)?;
    let answer = what.answer(outlook);
    let said = words.answer(what, answer);
    let mut paper = Paper::default();
    paper
        .class("div", "outcome")
        .class("p", "answer-words")
        .attr("role", "status")
        .text(&said)
        .close();
    spread(&mut paper, what, &guesses, answer, about);
    paper.close();
    if what == Guessed::Month {
        let nominal = system.bank.nominal;
        let row = |own: &sunlarder_engine::outlook::Month| {
            [
                words.month(own.month).to_owned(),
                words.charge_number(own.gain.kept, nominal),
                words.charge_number(own.need, nominal),
                words.charge_number(own.balance, nominal),
            ]
        };
        let rows: Vec<_> = outlook.months.iter().map(row).collect();
        let heads = [L::Month, L::InAh, L::OutAh, L::BalanceAh];
        let heads = heads.map(|own| words.label(words.fitting(own)));
        table(&mut paper, words.label(L::MonthByMonth), &heads, &rows);
    }
    let (title, question) = match what {
        Guessed::Hours => (L::HowWorkedOut, Question::Run),
        Guessed::Charge => (L::HowBudget, Question::Budget),
        Guessed::Month => (L::HowMonth, Question::Month),
    };
    paper.said("h2", "", words.label(title));
    Some(paper.take() + &working::write(question, about))
}

/// Median, how many came near, a dot for each and the table behind.
fn spread(
    paper: &mut Paper,
    what: Guessed,
    guesses: &[Guess<'_>],
    answer: Option<f64>,
    about: About<'_>,
) {
    let words = about.words;
    let mut values: Vec<f64> = guesses.iter().map(|own| own.value).collect();
    let (Some(middle), Some(low), Some(high)) =
        (median(&mut values), values.first().copied(), values.last().copied())
    else {
        return;
    };
    let near = guesses.iter().filter(|own| what.near(own.value, answer)).count();
    paper.said("p", "", &words.guesses_near(what, near, guesses.len()));
    // Months have no middle: they go round.
    let middle = (what != Guessed::Month).then_some(middle);
    if let Some(middle) = middle {
        paper.said("p", "", &words.median(what, middle));
    }
    let said = |value| words.guess(what, value);
    let aria = words.spread(&said(low), &said(high), &words.answer(what, answer));
    paper.class("figure", "spread");
    dots(paper, words, (what, &values), (middle, answer), &aria);
    paper.class("ul", "legend").said("li", "key key-answer", words.label(L::TheAnswer));
    if middle.is_some() {
        paper.said("li", "key key-median", words.label(L::MiddleGuess));
    }
    paper.close().close();
    let rows: Vec<_> = guesses
        .iter()
        .enumerate()
        .map(|(at, own)| {
            let name = if own.name.is_empty() { words.guesser(at) } else { own.name.to_owned() };
            let near = words.yes_or_no(what.near(own.value, answer));
            [name, said(own.value), near.to_owned()]
        })
        .collect();
    let heads = [L::Name, L::YourGuess, L::Near].map(|own| words.label(own));
    paper.class("details", "more").said("summary", "", words.label(L::AsATable));
    table(paper, words.label(L::Guesses), &heads, &rows);
    paper.close();
}
