//! The page in another language, and the way there and back with the plan; units and habits.

use serde_json::json;
use sunlarder_engine::document::Field;
use sunlarder_engine::words::{Label, Language, Words};
use sunlarder_tests::browser::{Look, Outcome, Page, Shown, Site, WORDS, in_browser};
use thirtyfour::By;

const SPANISH: Words = Words::of(Language::Spanish);

/// Takes the way to another language and waits for its page.
async fn switch_to(page: &Page, tag: &str) -> Outcome<()> {
    page.press(By::Css(format!("dialog[open] a[hreflang='{tag}']"))).await?;
    let tag = json!(tag);
    page.wait_until(&format!(
        "document.documentElement.lang === {tag} && document.documentElement.dataset.ready === '1'"
    ))
    .await
}

#[tokio::test]
async fn the_plan_goes_along_into_another_language_and_back() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        page.open_question(Label::WhatDoYouStore).await?;
        page.type_into(Field::BatteryCapacity, "123").await?;
        let plan = page.stored_plan().await?;
        let english = page.shown().await?;
        assert_eq!(english, Shown::expected(&plan)?);

        page.open_habits().await?;
        switch_to(&page, "es").await?;
        assert_eq!(page.stored_plan().await?, plan);
        let spanish = page.shown().await?;
        assert_eq!(spanish, Shown::expected_in(SPANISH, &plan)?);
        assert_ne!(spanish.headline, english.headline);
        assert_eq!(page.accessibility().await?, [""; 0]);
        assert_eq!(page.overflow().await?, [""; 0]);
        assert_eq!(page.complaints().await?, [""; 0]);

        // The root goes where somebody chose to be, and takes the link along.
        page.open(&format!("{}#example=boat", site.address())).await?;
        page.wait_until("document.documentElement.lang === 'es' && document.documentElement.dataset.ready === '1'")
            .await?;
        assert_ne!(page.shown().await?.name, spanish.name);

        page.open_habits().await?;
        switch_to(&page, "en").await?;
        let back = page.stored_plan().await?;
        assert_eq!(page.shown().await?, Shown::expected(&back)?);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn habits_change_every_figure_at_once_and_are_kept() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::DESKTOP, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let before = page.stored_plan().await?;
        let unit = "document.querySelector('#fact-out .unit').textContent";
        page.becomes(unit, json!("Ah")).await?;
        page.open_habits().await?;
        page.choose_habit(Label::LeadsWh).await?;
        page.choose_habit(Label::DegreesFahrenheit).await?;
        page.choose_habit(Label::Hours12).await?;
        page.becomes(unit, json!("Wh")).await?;
        assert_eq!(page.accessibility().await?, [""; 0]);
        page.press(By::XPath(format!(
            "//dialog[@open]//button[.=\"{}\"]",
            WORDS.label(Label::Close)
        )))
        .await?;
        let place = page.evaluate("document.querySelector('.where').textContent").await?;
        assert!(place.as_str().is_some_and(|own| own.contains("pm")), "{place}");

        page.open_question(Label::WhereAndWhen).await?;
        page.press(By::XPath(format!(
            "//summary[.=\"{}\"]",
            WORDS.label(Label::TemperaturesAndGround)
        )))
        .await?;
        page.type_into(Field::RecordLow, "14").await?;
        assert_eq!(page.stored_plan().await?.place.record_low_c, Some(-10.0));

        page.reload().await?;
        page.becomes(unit, json!("Wh")).await?;
        let after = page.stored_plan().await?;
        assert_eq!((after.loads, after.bank), (before.loads, before.bank), "habits change no plan");
        Ok(())
    })
    .await
}
