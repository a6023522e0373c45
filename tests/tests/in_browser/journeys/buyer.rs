//! A buyer's ten minutes: from the bare address to a plan that works, and to somebody else's screen.

#![allow(clippy::print_stdout, reason = "the measured lengths and times are printed")]

use serde_json::json;
use sunlarder_engine::document::Field;
use sunlarder_engine::load::catalogue::Appliance;
use sunlarder_engine::outlook::Verdict;
use sunlarder_engine::share;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Page, Shown, Site, WORDS, answered, in_browser};
use thirtyfour::By;

/// Letters of a whole link that a text message or a QR code still takes.
const LONGEST_LINK: usize = 2000;
/// Letters of the plan's own code within it.
const LONGEST_CODE: usize = 400;

#[tokio::test]
async fn a_buyer_plans_a_camper_and_sends_the_link() -> Outcome<()> {
    let site = Site::of_dist().await?;
    let address = site.address();
    for (look, other) in [(Look::PHONE, Look::DESKTOP), (Look::DESKTOP, Look::PHONE)] {
        let mut taken = None;
        let taken_out = &mut taken;
        in_browser(look, |page| async move {
            page.open(address).await?;
            page.expect_sound().await?;
            page.start_from(address, "camper").await?;
            expect_native_figures(&page).await?;
            say_what_drives_it(&page).await?;
            go_to_nairobi_in_july(&page).await?;
            add_a_kettle(&page).await?;
            make_it_work(&page).await?;
            page.expect_sound().await?;
            *taken_out = Some((take_link(&page).await?, page.shown().await?));
            page.expect_sound().await?;
            page.expect_quiet().await
        })
        .await?;
        let (link, sent) = taken.ok_or("no plan was sent")?;
        let link = &link;
        in_browser(other, |page| async move { open_sent(&page, link, sent).await }).await?;
    }
    Ok(())
}

/// Somebody else's screen.
async fn open_sent(page: &Page, link: &str, sent: Shown) -> Outcome<()> {
    page.open(link).await?;
    page.wait_until("document.querySelector('.verdict h1') !== null").await?;
    assert_eq!(page.shown().await?, sent);
    expect_native_figures(page).await?;
    // An edited plan is no longer the link's.
    page.becomes("location.hash", "").await?;
    page.expect_sound().await?;
    page.expect_quiet().await
}

/// The first minute: the verdict in words, and what drives it.
async fn say_what_drives_it(page: &Page) -> Outcome<()> {
    let plan = page.stored_plan().await?;
    let (system, outlook) = answered(&plan)?;
    let name_of = |tag| WORDS.name_in(&plan, tag);
    let why = page.element(By::Id("lede")).await?.text().await?;
    assert_eq!(why, WORDS.explanation(&outlook, &system, &name_of));
    // It stands below the curve, and follows the verdict after a pause.
    let tightest = WORDS.tightest(&outlook, system.bank.nominal);
    page.becomes("document.getElementById('tightest').textContent", tightest).await?;
    page.expect_sound().await
}

/// The page shows the very figures that the engine computes outside the browser.
async fn expect_native_figures(page: &Page) -> Outcome<Shown> {
    let shown = page.shown().await?;
    assert_eq!(shown, Shown::expected(&page.stored_plan().await?)?);
    Ok(shown)
}

async fn go_to_nairobi_in_july(page: &Page) -> Outcome<()> {
    let before = page.shown().await?;
    page.open_question(Label::WhereAndWhen).await?;
    page.go_to("Nairobi").await?;
    let moved = expect_native_figures(page).await?;
    assert_ne!(moved.facts, before.facts);

    page.choose_month(6).await?;
    let july = expect_native_figures(page).await?;
    assert_ne!(july.facts, moved.facts);
    Ok(())
}

async fn add_a_kettle(page: &Page) -> Outcome<()> {
    let before = page.shown().await?;
    assert!(page.stored_plan().await?.inverter.is_none());
    page.add_from_catalogue("kettle").await?;
    let kettle = WORDS.appliance(Appliance::Kettle);
    page.wait_for_notice(&WORDS.added(kettle)).await?;

    let now = expect_native_figures(page).await?;
    assert_eq!(now.loads.len(), before.loads.len() + 1);
    assert_eq!(now.loads.last().map(String::as_str), Some(kettle));
    assert_ne!(now.headline, before.headline);
    assert!(matches!(verdict(page).await?, Verdict::CannotWork { .. }));
    let why = page.element(By::Id("lede")).await?.text().await?;
    assert!(why.contains(kettle), "{why}");
    Ok(())
}

/// An inverter that is large enough, and two more batteries to feed it.
async fn make_it_work(page: &Page) -> Outcome<()> {
    let without = page.shown().await?;
    page.flip(Label::ThereIsAnInverter).await?;
    page.type_into(Field::InverterRated, "3000").await?;
    page.open_question(Label::WhatDoYouStore).await?;
    page.type_into(Field::InParallel, "3").await?;
    page.wait_until("document.querySelector('#fact-usable').textContent.includes('300')").await?;
    let with = expect_native_figures(page).await?;
    let verdict = verdict(page).await?;
    assert!(!matches!(verdict, Verdict::CannotWork { .. }), "{verdict:?}: {with:?}");
    assert_ne!(with.headline, without.headline);
    assert_ne!(with.facts, without.facts);
    Ok(())
}

/// The verdict on the stored plan, as the engine gives it outside the browser.
async fn verdict(page: &Page) -> Outcome<Verdict> {
    let plan = page.stored_plan().await?;
    let (_, outlook) = answered(&plan)?;
    Ok(outlook.verdict.clone())
}

/// The link as the box shows it and as the clipboard holds it.
async fn take_link(page: &Page) -> Outcome<String> {
    let permissions = json!({ "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
    page.devtools("Browser.grantPermissions", permissions).await?;
    page.press(By::Id("menu-share")).await?;
    let link = page.element(By::Id("link-box")).await?.prop("value").await?.unwrap_or_default();
    page.press(By::Id("copy-link")).await?;
    page.wait_for_notice(WORDS.label(Label::LinkCopied)).await?;
    assert_eq!(page.resolve("navigator.clipboard.readText()").await?, json!(link));

    let code = share::code_in(&link);
    println!("the link has {} letters, its code {}", link.len(), code.len());
    assert!(link.len() <= LONGEST_LINK && code.len() <= LONGEST_CODE, "{link}");
    assert_eq!(share::decode(code).ok(), Some(page.stored_plan().await?));
    Ok(link)
}
