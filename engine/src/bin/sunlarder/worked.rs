//! How a figure comes about, step by step.

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{Outlook, Question};
use sunlarder_engine::place::Climate;
use sunlarder_engine::system::System;
use sunlarder_engine::words::command_line::{Caption, Fault};
use sunlarder_engine::words::{Line, lines};
use sunlarder_engine::working::Working;

use crate::words;

/// The working of a figure of a plan; in the month of the start, or in another one, January being 0.
pub(crate) fn text(
    plan: &Document,
    figure: Question,
    month: Option<usize>,
) -> Result<String, Fault> {
    let mut plan = plan.clone();
    if let Some(month) = month {
        // Every figure is that of the starting month, so another month is another start.
        plan.start.date = in_month(plan.start.date, month);
    }
    let mut working = Working::new();
    let system =
        System::assemble(&plan, Climate::embedded(), &mut working).map_err(Fault::Refused)?;
    let outlook = Outlook::of(&system);
    if figure == Question::Autonomy && outlook.autonomy_days.is_none() {
        return Err(Fault::NothingUsed);
    }
    if figure == Question::Capacity {
        // What the loads take by their plates has no part in it.
        working = Working::new();
    }
    outlook.work(figure, &system, &mut working);
    let lines = lines(&working, words(), &|tag| words().name_in(&plan, tag));
    let steps: Vec<String> =
        lines.iter().enumerate().map(|(at, line)| step(at + 1, line)).collect();
    Ok(steps.join("\n"))
}

/// The same day in another month, or that month's last day.
fn in_month(date: chrono::NaiveDate, month: usize) -> chrono::NaiveDate {
    use chrono::Datelike;
    let first = date.with_day(1).and_then(|first| first.with_month0(month as u32)).unwrap_or(date);
    first.with_day(date.day()).unwrap_or(first)
}

/// One step: its title, the equation in symbols and in numbers, its source and its inputs.
fn step(number: usize, line: &Line) -> String {
    let owner = line.owner.as_ref().map(|owner| format!(" · {owner}")).unwrap_or_default();
    let mut text = format!("{number}. {}{owner}\n", line.title);
    text.push_str(&format!("   {} = {}\n", line.symbol, line.equation));
    text.push_str(&format!("   {} = {} = {}\n", line.symbol, line.numbers, line.result));
    for input in &line.inputs {
        let owner = input.owner.as_ref().map(|owner| format!(", {owner}")).unwrap_or_default();
        text.push_str(&format!(
            "     {} = {}  {}{owner} ({})\n",
            input.symbol, input.value, input.meaning, input.source
        ));
    }
    text.push_str(&format!("   {}: {}\n", words().caption(Caption::Source), line.source));
    text
}
