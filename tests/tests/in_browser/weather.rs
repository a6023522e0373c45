//! What weather does with a plan: worked out beside the page, the same as outside the browser, and never in the way of an edit.

use serde_json::json;
use sunlarder_engine::document::Field;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Site, WORDS, in_browser};

#[tokio::test]
async fn weather_is_foretold_as_outside_the_browser_and_anew_after_an_edit() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let before = page.expect_foretold().await?;
        let band = "document.querySelector('.band')?.getAttribute('d').length > 200";
        page.wait_until(band).await?;
        let years = "document.querySelectorAll('.weather > li').length >= 5";
        page.becomes(years, json!(true)).await?;

        page.open_question(Label::WhatDoYouStore).await?;
        page.paste_into(Field::Reserve, "60").await?;
        page.wait_until("document.querySelector('#chance[aria-busy]') !== null").await?;
        let after = page.expect_foretold().await?;
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
        page.becomes("document.querySelector('.weather')", json!(null)).await?;

        // Something runs now, but nowhere.
        page.add_from_catalogue("laptop").await?;
        let nowhere = serde_json::to_string(WORDS.label(Label::WeatherNeedsPlace))?;
        page.wait_until(&format!("document.querySelector('#chance').textContent === {nowhere}"))
            .await?;
        Ok(())
    })
    .await
}
