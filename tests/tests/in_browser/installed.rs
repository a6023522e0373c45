//! The page about the installed system: the way there and back with the plan, in both languages and without a network.

use serde_json::json;
use sunlarder_engine::document::Field;
use sunlarder_engine::words::{Label, Language};
use sunlarder_tests::browser::{Look, Outcome, Page, Site, WORDS, dist, in_browser, installed};
use thirtyfour::By;

/// Goes across to the other page of the same language, and waits for it.
async fn go_across(page: &Page, folder: &str) -> Outcome<()> {
    page.press(By::Css(".across a")).await?;
    let end = json!(folder);
    page.wait_until(&format!(
        "location.pathname.endsWith({end}) && document.documentElement.dataset.ready === '1'"
    ))
    .await
}

#[tokio::test]
async fn the_plan_goes_along_to_the_installed_system_and_back() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "boat").await?;
        page.open_question(Label::WhatDoYouStore).await?;
        page.type_into(Field::BatteryCapacity, "123").await?;
        // Not waiting for it to be kept: who leaves at once loses nothing.
        go_across(&page, "/installed/").await?;
        let plan = page.stored_plan().await?;
        assert_eq!(plan.bank.capacity_ah, 123.0);
        let questions =
            "[...document.querySelectorAll('.ledger h2')].map((own) => own.textContent)";
        let asked = page.evaluate(questions).await?;
        assert_eq!(asked[0], WORDS.label(Label::HowDoYouFitIt), "{asked}");
        let planned = WORDS.label(Label::WhatDoYouStore);
        assert!(!asked.to_string().contains(planned), "the plan has a page of its own: {asked}");
        page.expect_sound().await?;

        page.open_question(Label::HowDoYouFitIt).await?;
        let lengths = WORDS.label(Label::RunLengths);
        page.press(By::XPath(format!("//div[@id='fitting']//summary[.=\"{lengths}\"]"))).await?;
        page.type_into(Field::InverterRun, "4.5").await?;
        go_across(&page, "/").await?;
        let back = page.stored_plan().await?;
        assert_eq!(back.wiring.and_then(|own| own.inverter_m), Some(4.5));
        Ok(())
    })
    .await
}

#[tokio::test]
async fn each_language_has_its_page_of_the_installed_system() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::DESKTOP, |page| async move {
        page.start_from(&installed(site.address()), "hut").await?;
        page.open_habits().await?;
        page.press(By::Css("dialog[open] a[hreflang='es']")).await?;
        page.wait_until(
            "location.pathname.endsWith('/es/installed/') && document.documentElement.dataset.ready === '1'",
        )
        .await?;
        let title = page.evaluate("document.title").await?;
        assert_eq!(title, "Sunlarder: el sistema instalado");
        page.expect_sound().await?;
        go_across(&page, "/es/").await?;
        let question = "[...document.querySelectorAll('.ledger h2')][0].textContent";
        page.becomes(question, Language::Spanish.label(Label::WhatDoYouRun)).await?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn after_one_visit_the_installed_system_is_there_without_a_network() -> Outcome<()> {
    let site = Site::of_folder(&dist()?, "/some/where/").await?;
    in_browser(Look::PHONE, |page| async move {
        let address = installed(site.address());
        page.visit(&address).await?;
        site.take_away().await?;
        page.set_offline(true).await?;
        page.open(&format!("{address}#example=camper")).await?;
        page.wait_until("document.querySelector('.verdict h1') !== null").await?;
        page.open_question(Label::HowDoYouFitIt).await?;
        page.wait_until("document.querySelector('.fitted .run') !== null").await
    })
    .await
}
