//! Plans kept on the device: they survive, stay apart, and no content of the storage stops the page.

use serde_json::json;
use sunlarder_engine::document::Field;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Page, Site, WORDS, in_browser};
use thirtyfour::By;

const NOTHING: [String; 0] = [];

#[tokio::test]
async fn an_edit_survives_a_reload() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "classroom").await?;
        page.open_question(Label::WhatDoYouStore).await?;
        page.type_into(Field::BatteryCapacity, "123").await?;
        let (plan, shown) = (page.stored_plan().await?, page.shown().await?);
        assert_eq!(plan.bank.capacity_ah, 123.0);
        page.reload().await?;
        assert_eq!((page.stored_plan().await?, page.shown().await?), (plan, shown));
        Ok(())
    })
    .await
}

/// A button in the row of a stored plan.
fn in_row_of(plan: &str, label: Label) -> By {
    By::XPath(format!(
        "//dialog[@open]//li[span[starts-with(normalize-space(.), \"{plan}\")]]//button[.=\"{}\"]",
        WORDS.label(label)
    ))
}

const ROWS: &str = "[...document.querySelectorAll('dialog[open] .list .list-name')].map((own) => own.textContent.trim())";

#[tokio::test]
async fn plans_stay_apart_and_are_switched_copied_and_deleted() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let camper = page.shown().await?;
        page.press(By::Id("menu-plans")).await?;
        page.press_button(Label::NewPlan).await?;
        page.press(By::Id("start-boat")).await?;
        page.wait_until(&format!(
            "document.querySelector('.plan-name')?.textContent && document.querySelector('.plan-name').textContent !== {}",
            json!(camper.name)
        ))
        .await?;
        let boat = page.shown().await?;

        page.press(By::Id("menu-plans")).await?;
        page.press(in_row_of(&camper.name, Label::OpenPlan)).await?;
        page.wait_until("document.querySelector('dialog[open]') === null").await?;
        assert_eq!(page.shown().await?, camper);
        page.reload().await?;
        assert_eq!(page.shown().await?, camper, "the plan last open is the one that opens");

        page.press(By::Id("menu-plans")).await?;
        page.press_button(Label::CopyPlan).await?;
        let copy = page.shown().await?;
        assert_eq!(copy.name, WORDS.copy_of(&camper.name));
        assert_eq!((&copy.facts, &copy.loads), (&camper.facts, &camper.loads));

        page.press(By::Id("menu-plans")).await?;
        page.element(in_row_of(&boat.name, Label::Delete)).await?;
        assert_eq!(page.evaluate(ROWS).await?.as_array().map(Vec::len), Some(3));
        page.press(in_row_of(&boat.name, Label::Delete)).await?;
        page.wait_until(&format!("{ROWS}.length === 2")).await?;
        page.press(By::XPath(format!("//dialog[@open]//button[.=\"{}\"]", WORDS.label(Label::Undo)))).await?;
        page.wait_until(&format!("{ROWS}.length === 3")).await?;
        page.press(in_row_of(&boat.name, Label::Delete)).await?;
        page.wait_until(&format!("{ROWS}.length === 2")).await?;
        assert_eq!(page.shown().await?, copy);
        let kept = "Object.keys(localStorage).filter((key) => key.startsWith('sunlarder.plan.')).length";
        page.becomes(kept, 2).await?;
        Ok(())
    })
    .await
}

/// Puts texts into the storage before the page stands: all at once, and the page of before goes with it, which would keep its plan.
async fn fill_storage(page: &Page, address: &str, entries: &[(&str, &str)]) -> Outcome<()> {
    page.open(address).await?;
    let entries = json!(entries);
    page.evaluate(&format!(
        "(() => {{
            localStorage.clear();
            for (const [key, text] of {entries}) localStorage.setItem(key, text);
            document.documentElement.dataset.ready = 'going';
            location.reload();
        }})()"
    ))
    .await?;
    page.wait_until_ready().await
}

async fn expect_in_storage(page: &Page, entries: &[(&str, &str)]) -> Outcome<()> {
    for (key, text) in entries {
        let now = page.evaluate(&format!("localStorage.getItem({})", json!(key))).await?;
        assert_eq!(now, *text, "{key}");
    }
    Ok(())
}

#[tokio::test]
async fn garbage_in_the_storage_is_told_and_left_alone() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        let garbage = [
            ("sunlarder.plan.X", "{\"sunlarder\":1,\"loads\":[{]"),
            ("sunlarder.plan.", "\u{0}\u{fffd} ]]>"),
            ("sunlarder.plan.Y", "{\"another\":\"program\"}"),
            ("sunlarder.elsewhere", "untouched"),
        ];
        let mut entries = garbage.to_vec();
        entries.push(("sunlarder.current", "\"X\""));
        fill_storage(&page, site.address(), &entries).await?;
        page.wait_for_notice(WORDS.label(Label::StoredPlanUnreadable)).await?;
        page.press(By::Id("start-camper")).await?;
        page.wait_until("document.querySelector('.verdict h1') !== null").await?;
        expect_in_storage(&page, &garbage).await?;

        page.press(By::Id("menu-plans")).await?;
        let unreadable = format!(
            "{ROWS}.filter((own) => own === {}).length",
            json!(WORDS.label(Label::UnreadablePlan))
        );
        page.becomes(&unreadable, 3).await?;
        assert_eq!(page.overflow().await?, NOTHING);
        assert_eq!(page.accessibility().await?, NOTHING);

        // Garbage where the key of the open plan belongs.
        for current in ["", "{", "42", "null", "\"nobody\""] {
            let mut entries = garbage.to_vec();
            entries.push(("sunlarder.current", current));
            fill_storage(&page, site.address(), &entries).await?;
            expect_in_storage(&page, &garbage).await?;
            page.element(By::Id("start-camper")).await?;
        }
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}

/// Counts the times at which the page tells that the storage is refused.
fn count_of(words: &str) -> String {
    format!(
        "window.told = 0;
         new MutationObserver((changes) => {{
             for (const change of changes) for (const node of change.addedNodes)
                 if (node.textContent?.includes({})) window.told += 1;
         }}).observe(document, {{ childList: true, subtree: true }});",
        json!(words)
    )
}

async fn expect_to_work_without_storage(refusal: &str) -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        let source = format!("{refusal};{}", count_of(WORDS.label(Label::StorageRefused)));
        let script = json!({ "source": source });
        page.devtools("Page.addScriptToEvaluateOnNewDocument", script).await?;
        page.start_from(site.address(), "camper").await?;
        page.wait_for_notice(WORDS.label(Label::StorageRefused)).await?;
        let before = page.shown().await?;
        page.dismiss_notice().await?;
        page.open_question(Label::WhatDoYouStore).await?;
        page.type_into(Field::BatteryCapacity, "250").await?;
        page.wait_until("document.querySelector('#fact-usable').textContent.includes('250')")
            .await?;
        assert_ne!(page.shown().await?.facts, before.facts);
        assert_eq!(page.notice().await?, "", "it is told once, not at every key");
        page.becomes("window.told", 1).await?;
        page.press(By::Id("menu-plans")).await?;
        page.press_button(Label::CopyPlan).await?;
        assert_eq!(page.shown().await?.name, WORDS.copy_of(&before.name));
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_full_storage_is_told_once_and_harmless() -> Outcome<()> {
    let full = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }";
    expect_to_work_without_storage(full).await
}

#[tokio::test]
async fn a_refused_storage_is_told_once_and_harmless() -> Outcome<()> {
    let refused = "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('refused', 'SecurityError'); } })";
    expect_to_work_without_storage(refused).await
}
