//! What the page ought to say of a plan, worked out here and not in the browser.

use serde_json::{Value, json};
use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{Guessed, Outlook, Question};
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::quantity::Volts;
use sunlarder_engine::simulate::Extent;
use sunlarder_engine::system::System;
use sunlarder_engine::words::{Line, lines};
use sunlarder_engine::working::Working;

use super::{Outcome, Page, WORDS};

/// A plan, resolved and answered.
///
/// # Errors
/// If nothing can be answered about it.
pub fn answered(plan: &Document) -> Outcome<(System, Outlook)> {
    let system = System::assemble(plan, Climate::embedded(), &mut ())
        .map_err(|problem| WORDS.problem(&problem, &|_| None))?;
    let outlook = Outlook::of(&system);
    Ok((system, outlook))
}

/// What weather does to the verdict.
fn foretold(plan: &Document) -> Outcome<String> {
    let (system, outlook) = answered(plan)?;
    let spread = SpreadGrid::embedded().at(system.site);
    let mut ensemble = outlook.ensemble(&system, &spread, Extent::default());
    while ensemble.advance() {}
    let chances = ensemble.chances();
    let when = WORDS.when_reserve_comes(&chances, &system);
    Ok(format!("{when} {}", WORDS.month_kept(&chances, &outlook)))
}

/// Titles and results of the steps of a panel, last first as the page has them.
///
/// # Errors
/// As [`answered`].
pub fn worked(plan: &Document, question: Question) -> Outcome<Value> {
    let (system, outlook) = answered(plan)?;
    let mut working = Working::new();
    outlook.work(question, &system, &mut working);
    let lines = lines(&working, WORDS, &|tag| WORDS.name_in(plan, tag));
    let shown = |(at, line): (usize, &Line)| {
        let owner = line.owner.as_ref().map(|owner| format!(" – {owner}")).unwrap_or_default();
        json!([format!("{}. {}{owner}", at + 1, line.title), line.result])
    };
    Ok(lines.iter().enumerate().rev().map(shown).collect())
}

/// All that would give the answer to a question away.
fn give_away(outlook: &Outlook) -> Vec<String> {
    let headline = WORDS.headline(outlook);
    let mut all = vec![
        WORDS.short(outlook),
        headline.key,
        WORDS.amount(outlook.budget.total),
        WORDS.rounded(outlook.budget.total.0),
        WORDS.rounded(outlook.capacity.usable.0),
        WORDS.months_kept(outlook.months_kept()),
        // The page of these tests tells amp-hours, whatever the voltage.
        WORDS.tightest(outlook, Volts(12.0)),
    ];
    let hours = [outlook.run.reserve_at, outlook.run.empty_at, outlook.dark.reserve_at];
    all.extend(hours.into_iter().flatten().map(|at| WORDS.duration(at)));
    all.extend(Guessed::ALL.map(|what| WORDS.answer(what, what.answer(outlook))));
    all
}

/// Titles and results of the steps in the open panel, in the order in which they stand.
pub const STEPS: &str = "[...document.querySelectorAll('.working[open] .step')].map((step) =>
    [step.querySelector('h3').textContent, step.querySelector('strong').textContent])";

impl Page {
    /// What of the answer stands anywhere in the document: text, attributes, properties of boxes.
    ///
    /// # Errors
    /// If the browser is gone.
    pub async fn given_away(&self, outlook: &Outlook) -> Outcome<Vec<String>> {
        let all = "document.documentElement.outerHTML + [...document.querySelectorAll('input')].map((own) => own.value + own.placeholder).join(' ') + document.title";
        let all = self.evaluate(all).await?;
        let all = all.as_str().ok_or("there is no document")?;
        Ok(give_away(outlook).into_iter().filter(|own| all.contains(own.as_str())).collect())
    }

    /// Waits until all weather has been tried on the plan that is stored, and gives what it does to the verdict: the same as
    /// outside the browser.
    ///
    /// # Errors
    /// If it says anything else, or nothing within half a minute.
    pub async fn expect_foretold(&self) -> Outcome<String> {
        self.wait_for_weather().await?;
        let said = self.evaluate("document.querySelector('#chance').textContent").await?;
        let expected = foretold(&self.stored_plan().await?)?;
        if said != expected.as_str() {
            return Err(format!("the page says {said}, not “{expected}”").into());
        }
        Ok(expected)
    }

    /// Waits until the open panel shows what it ought to of the plan that is stored.
    ///
    /// # Errors
    /// If it does not within half a minute.
    pub async fn expect_worked(&self, question: Question) -> Outcome<()> {
        self.wait_until("document.querySelector('.working[open] .step') !== null").await?;
        let expected = worked(&self.stored_plan().await?, question)?;
        self.wait_until(&format!("JSON.stringify({STEPS}) === {}", json!(expected.to_string())))
            .await
    }
}
