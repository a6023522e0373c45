//! All that a mouse or finger can do, with keys; and where the keys are is always to be seen.

use serde::Deserialize as _;
use serde_json::json;
use sunlarder_engine::document::Field;
use sunlarder_engine::share;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Page, Site, WORDS, in_browser};
use thirtyfour::prelude::*;

/// What the keyboard has reached: a word for the element, and whether a ring or another mark shows it.
const FOCUSED: &str = "(() => {
    const at = document.activeElement;
    const style = getComputedStyle(at), label = at.closest('label') ?? at;
    const ring = (style) => style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0;
    const shown = ring(style) || ring(getComputedStyle(label))
        || (at.nextElementSibling !== null && ring(getComputedStyle(at.nextElementSibling)));
    const name = at.tagName.toLowerCase() + (at.id && '#' + at.id) + ' ' + (at.textContent || at.ariaLabel || '').trim().slice(0, 40);
    return [at.id, name, shown];
})()";

/// Goes from one element to the next, or to the one before, until something holds of where the keys are; each met on the way must
/// show that it has them.
async fn walk_until(page: &Page, back: bool, holds: &str, hidden: &mut Vec<String>) -> Outcome<()> {
    for _ in 0..250 {
        press_keys(page, if back { Key::Shift + Key::Tab } else { Key::Tab + "" }).await?;
        let (_, name, shown) =
            <(String, String, bool)>::deserialize(&page.evaluate(FOCUSED).await?)?;
        if !shown && !name.starts_with("body") {
            hidden.push(name);
        }
        if page.evaluate(holds).await? == true {
            return Ok(());
        }
    }
    Err(format!("the Tab key does not lead to where {holds}").into())
}

/// The same until the element with this id has the keys.
async fn tab_to(page: &Page, id: &str, hidden: &mut Vec<String>) -> Outcome<()> {
    walk_until(page, false, &format!("document.activeElement.id === '{id}'"), hidden).await
}

async fn press_keys(page: &Page, keys: TypingData) -> Outcome<()> {
    Ok(page.session.active_element().await?.send_keys(keys).await?)
}

/// Opens a question that is closed.
async fn open_question(page: &Page, title: Label, hidden: &mut Vec<String>) -> Outcome<()> {
    let closed = format!(
        "document.activeElement.matches('details.question:not([open]) > summary')
            && document.activeElement.textContent.includes({})",
        json!(WORDS.label(title))
    );
    walk_until(page, false, &closed, hidden).await?;
    press_keys(page, Key::Enter + "").await?;
    page.wait_until("document.activeElement.matches('details.question[open] > summary')").await
}

/// Adds the inverter that is proposed and two batteries more, and goes to a place by its name.
async fn mend_and_move(page: &Page, hidden: &mut Vec<String>) -> Outcome<()> {
    // What stands against the plan is mended where it is told.
    let mend = "document.activeElement.closest('.mend') !== null";
    walk_until(page, true, mend, hidden).await?;
    press_keys(page, Key::Enter + "").await?;
    page.wait_until("document.querySelector('.mend button') === null").await?;
    open_question(page, Label::WhatDoYouStore, hidden).await?;
    let batteries = page.number_box(Field::InParallel).await?.attr("id").await?;
    tab_to(page, &batteries.unwrap_or_default(), hidden).await?;
    press_keys(page, Key::Control + "a").await?;
    press_keys(page, "3".into()).await?;
    page.wait_until("!document.querySelector('.verdict h1 em').classList.contains('bad')").await?;

    open_question(page, Label::WhereAndWhen, hidden).await?;
    tab_to(page, "search-town", hidden).await?;
    press_keys(page, "Nairobi".into()).await?;
    page.wait_until("document.querySelector('.results button') !== null").await?;
    let result = "document.activeElement.matches('.results button')";
    walk_until(page, false, result, hidden).await?;
    press_keys(page, Key::Enter + "").await?;
    page.wait_until("document.querySelector('.where').textContent.includes('Nairobi')").await?;
    Ok(())
}

/// Takes the link to the clipboard; Escape closes the dialog.
async fn send_link(page: &Page, hidden: &mut Vec<String>) -> Outcome<()> {
    // The link on the clipboard.
    let permissions = json!({ "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
    page.devtools("Browser.grantPermissions", permissions).await?;
    walk_until(page, true, "document.activeElement.id === 'menu-share'", hidden).await?;
    press_keys(page, Key::Enter + "").await?;
    tab_to(page, "copy-link", hidden).await?;
    press_keys(page, Key::Enter + "").await?;
    page.wait_for_notice(WORDS.label(Label::LinkCopied)).await?;
    let copied = page.resolve("navigator.clipboard.readText()").await?;
    let code = share::code_in(copied.as_str().unwrap_or_default());
    assert_eq!(share::decode(code).ok(), Some(page.stored_plan().await?));
    press_keys(page, Key::Escape + "").await?;
    page.wait_until("document.querySelector('dialog[open]') === null").await?;
    Ok(())
}

#[tokio::test]
async fn a_plan_is_made_with_the_keyboard_alone() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::DESKTOP, |page| async move {
        let mut hidden = Vec::new();
        page.open(site.address()).await?;
        tab_to(&page, "start-camper", &mut hidden).await?;
        press_keys(&page, Key::Enter + "").await?;
        page.wait_until("document.querySelector('.verdict h1') !== null").await?;

        tab_to(&page, "add-something", &mut hidden).await?;
        press_keys(&page, Key::Enter + "").await?;
        page.wait_until("document.activeElement.id === 'search-appliance'").await?;
        press_keys(&page, "kettle".into()).await?;
        page.wait_until("document.querySelector('#found > .results') !== null").await?;
        press_keys(&page, Key::Tab + "").await?;
        assert_eq!(
            page.evaluate("document.activeElement.closest('#found > .results') !== null").await?,
            true
        );
        let before = page.shown().await?.loads.len();
        press_keys(&page, Key::Enter + "").await?;
        page.wait_until(&format!(
            "document.querySelectorAll('.load:not(.own)').length === {}",
            before + 1
        ))
        .await?;

        mend_and_move(&page, &mut hidden).await?;
        send_link(&page, &mut hidden).await?;
        // Escape has given the keys back to where the dialog was opened.
        page.becomes("document.activeElement.id", "menu-share").await?;
        assert!(hidden.is_empty(), "the focus is not to be seen on {hidden:#?}");
        Ok(())
    })
    .await
}
