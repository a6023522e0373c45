//! What weather does with a plan: worked out beside the page, the same as outside the browser, and never in the way of an edit.

use serde_json::json;
use sunlarder_engine::document::{Document, Field};
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::{Climate, SpreadGrid};
use sunlarder_engine::simulate::Extent;
use sunlarder_engine::system::System;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Page, Site, WORDS, in_browser};
use thirtyfour::By;

/// Whether all weather has been tried.
/// What weather does to the verdict, as the engine says it outside the browser.
fn expected(plan: &Document) -> Outcome<String> {
    let system = System::assemble(plan, Climate::embedded(), &mut ())
        .map_err(|problem| WORDS.problem(&problem, &|_| None))?;
    let outlook = Outlook::of(&system);
    let spread = SpreadGrid::embedded().at(system.site);
    let mut ensemble = outlook.ensemble(&system, &spread, Extent::default());
    while ensemble.advance() {}
    let chances = ensemble.chances();
    let when = WORDS.when_reserve_comes(&chances, &system);
    Ok(format!("{when} {}", WORDS.month_kept(&chances, &outlook)))
}

async fn expect_foretold(page: &Page) -> Outcome<String> {
    page.wait_for_weather().await?;
    let said = page.element(By::Id("chance")).await?.text().await?;
    assert_eq!(said, expected(&page.stored_plan().await?)?);
    Ok(said)
}

#[tokio::test]
async fn weather_is_foretold_as_outside_the_browser_and_anew_after_an_edit() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let before = expect_foretold(&page).await?;
        let band = "document.querySelector('.band')?.getAttribute('d').length > 200";
        page.wait_until(band).await?;
        let years = "document.querySelectorAll('.weather > li').length >= 5";
        assert_eq!(page.evaluate(years).await?, json!(true));

        page.open_question(Label::WhatDoYouStore).await?;
        page.paste_into(Field::Reserve, "60").await?;
        page.wait_until("document.querySelector('#chance[aria-busy]') !== null").await?;
        let after = expect_foretold(&page).await?;
        assert_ne!(after, before);
        assert_eq!(page.complaints().await?, [""; 0]);
        assert_eq!(page.foreign_requests().await?, [""; 0]);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_plan_that_runs_nothing_or_nowhere_has_no_weather() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::DESKTOP, |page| async move {
        page.start_from(site.address(), "blank").await?;
        let nothing = "document.querySelector('#chance').textContent === ''
            && document.querySelector('[aria-busy]') === null";
        page.wait_until(nothing).await?;
        assert_eq!(page.evaluate("document.querySelector('.weather')").await?, json!(null));

        // Something runs now, but nowhere.
        page.add_from_catalogue("laptop").await?;
        let nowhere = serde_json::to_string(WORDS.label(Label::WeatherNeedsPlace))?;
        page.wait_until(&format!("document.querySelector('#chance').textContent === {nowhere}"))
            .await?;
        Ok(())
    })
    .await
}
