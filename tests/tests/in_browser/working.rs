//! How a figure is worked out: asked of a worker beside the page, and there with a dead worker or without any.

#![allow(clippy::print_stdout, reason = "the measured times are printed")]

use std::fs;

use serde_json::json;
use sunlarder_engine::document::Field;
use sunlarder_engine::outlook::Question;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{
    Look, Outcome, Page, STEPS, Site, WORDS, copy_of_dist, dist, in_browser,
};
use thirtyfour::prelude::*;

const NOTHING: [String; 0] = [];

/// The text of the open panel without its summary.
const SAID: &str = "[...document.querySelectorAll('.working[open] > :not(summary)')].map((own) => own.textContent).join('')";
/// Writes a picture of the open panel; of the whole page it would be blank, because what is out of sight is not drawn.
async fn look_at_panel(page: &Page) -> Outcome<()> {
    page.resize(page.look.width, 2 * page.look.height).await?;
    page.evaluate(
        "document.querySelector('.working[open]').scrollIntoView({ behavior: 'instant' })",
    )
    .await?;
    page.resolve("new Promise((done) => requestAnimationFrame(() => setTimeout(done)))").await?;
    let folder = sunlarder_tests::browser::repository().join("tests/shots");
    fs::create_dir_all(&folder)?;
    page.session.screenshot(&folder.join(format!("working-{}.png", page.look.name()))).await?;
    page.resize(page.look.width, page.look.height).await
}

/// Lets a script run before any of the page.
pub(super) async fn before_all(page: &Page, script: &str) -> Outcome<()> {
    page.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": script })).await?;
    Ok(())
}

#[tokio::test]
async fn an_open_panel_shows_its_steps_and_follows_an_edit() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        page.open_panel(Label::HowBudget).await?;
        page.expect_worked(Question::Budget).await?;
        let before = page.evaluate(STEPS).await?;

        page.open_load(0).await?;
        page.type_into(Field::LoadPower, "123").await?;
        page.wait_until(&format!("JSON.stringify({STEPS}) !== {}", json!(before.to_string())))
            .await?;
        page.expect_worked(Question::Budget).await?;
        assert_eq!(page.accessibility().await?, NOTHING);
        assert_eq!(page.overflow().await?, NOTHING);
        look_at_panel(&page).await
    })
    .await
}

#[tokio::test]
async fn every_figure_can_be_asked_for() -> Outcome<()> {
    let site = Site::of_dist().await?;
    let figures = [
        (Label::HowUsable, Question::Capacity),
        (Label::HowWorkedOut, Question::Run),
        (Label::HowAutonomy, Question::Autonomy),
        (Label::HowBudget, Question::Budget),
        (Label::HowMonth, Question::Month),
    ];
    assert_eq!(figures.len(), Question::ALL.len());
    in_browser(Look::DESKTOP, |page| async move {
        page.start_from(site.address(), "boat").await?;
        page.open_question(Label::WhatDoYouStore).await?;
        for (label, question) in figures {
            page.open_panel(label).await?;
            page.expect_worked(question).await?;
            page.open_panel(label).await?;
            page.wait_until("document.querySelector('.working[open]') === null").await?;
        }
        Ok(())
    })
    .await
}

/// Counts the workers that are started, and lets a test end them.
const WATCH_WORKERS: &str = "window.started = [];
    window.Worker = class extends Worker {
        constructor(...all) { super(...all); window.started.push(this); this.addEventListener('message', () => { this.stood = true; }); }
    };";

#[tokio::test]
async fn a_worker_that_dies_is_started_anew_once() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        before_all(&page, WATCH_WORKERS).await?;
        page.start_from(site.address(), "camper").await?;
        let die = "started.at(-1).dispatchEvent(new ErrorEvent('error')) && null";
        page.wait_until("started.length === 1 && started[0].stood === true").await?;
        page.evaluate(die).await?;
        page.wait_until("started.length === 2 && started[1].stood === true").await?;
        page.open_panel(Label::HowBudget).await?;
        page.expect_worked(Question::Budget).await?;
        page.evaluate(die).await?;
        let sentence = json!(WORDS.label(Label::NotWorkedOut));
        page.wait_until(&format!("{SAID} === {sentence}")).await?;
        page.becomes("started.length", 2).await?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn without_workers_the_page_works_it_out_itself() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        before_all(&page, "delete window.Worker").await?;
        page.start_from(site.address(), "camper").await?;
        page.open_panel(Label::HowAutonomy).await?;
        page.expect_worked(Question::Autonomy).await?;
        page.becomes("typeof Worker", "undefined").await?;
        Ok(())
    })
    .await
}

/// The path of a file with a hash in a folder.
fn hashed(folder: &std::path::Path, begins: &str, ends: &str) -> Outcome<std::path::PathBuf> {
    let files = fs::read_dir(folder)?.filter_map(|entry| Some(entry.ok()?.path()));
    let is_it = |path: &std::path::PathBuf| {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        name.starts_with(begins) && name.ends_with(ends)
    };
    Ok(files.into_iter().find(is_it).ok_or("there is no such file")?)
}

#[tokio::test]
async fn without_the_worker_the_panel_says_that_it_cannot_be_worked_out() -> Outcome<()> {
    cannot_be_worked_out_without("worker-", ".js").await
}

#[tokio::test]
async fn without_the_desk_the_panel_says_that_it_cannot_be_worked_out() -> Outcome<()> {
    cannot_be_worked_out_without("desk-", ".wasm").await
}

async fn cannot_be_worked_out_without(begins: &str, ends: &str) -> Outcome<()> {
    let folder = copy_of_dist(&format!("no-{begins}"))?;
    fs::remove_file(hashed(&folder, begins, ends)?)?;
    let site = Site::of_folder(&folder, "/").await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        page.open_panel(Label::HowBudget).await?;
        let sentence = json!(WORDS.label(Label::NotWorkedOut));
        page.wait_until(&format!("{SAID} === {sentence}")).await?;
        fs::remove_dir_all(folder)?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_panel_that_waits_says_so() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        // A worker that never answers.
        before_all(
            &page,
            "window.Worker = class extends EventTarget { postMessage() {} terminate() {} };",
        )
        .await?;
        page.start_from(site.address(), "camper").await?;
        page.open_panel(Label::HowBudget).await?;
        let sentence = json!(WORDS.label(Label::BeingWorkedOut));
        page.wait_until(&format!("{SAID} === {sentence}")).await
    })
    .await
}

#[tokio::test]
async fn after_one_visit_figures_are_worked_out_without_a_network() -> Outcome<()> {
    let site = Site::of_folder(&dist()?, "/some/where/").await?;
    in_browser(Look::PHONE, |page| async move {
        page.open(site.address()).await?;
        page.wait_until("document.documentElement.dataset.offline === 'ready'").await?;
        site.take_away().await?;
        page.set_offline(true).await?;
        page.reload().await?;
        page.press(By::Id("start-cabin")).await?;
        page.open_panel(Label::HowMonth).await?;
        page.expect_worked(Question::Month).await
    })
    .await
}

/// Gives the time from the click that opens a panel to its steps \[ms\].
const TIME_TO_STEPS: &str = "new Promise((done) => {
    const panel = [...document.querySelectorAll('.working')].find((own) => own.textContent.startsWith(LABEL));
    const start = performance.now();
    new MutationObserver((_, observer) => {
        if (panel.querySelector('.step') === null) return;
        observer.disconnect();
        requestAnimationFrame(() => setTimeout(() => done(performance.now() - start)));
    }).observe(panel, { childList: true, subtree: true });
    panel.querySelector('summary').click();
})";

#[tokio::test]
async fn a_panel_is_there_at_once() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        for label in [Label::HowBudget, Label::HowMonth, Label::HowWorkedOut] {
            let promise = TIME_TO_STEPS.replace("LABEL", &json!(WORDS.label(label)).to_string());
            let time = page.resolve(&promise).await?;
            let time = time.as_f64().ok_or("no time")?;
            println!("from opening a panel to its steps: {time:.0} ms");
            assert!(time < 2_000.0, "{time} ms");
        }
        Ok(())
    })
    .await
}
