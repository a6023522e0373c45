//! All that a mouse or finger can do, with keys; and where the keys are is always to be seen.

use serde::Deserialize as _;
use sunlarder_tests::browser::{Look, Outcome, Page, Site, in_browser};
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

/// Presses Tab until an element with this id has the focus; each element met on the way must show that it has it.
async fn tab_to(page: &Page, id: &str, hidden: &mut Vec<String>) -> Outcome<()> {
    for _ in 0..200 {
        press_keys(page, Key::Tab + "").await?;
        let (at, name, shown) =
            <(String, String, bool)>::deserialize(&page.evaluate(FOCUSED).await?)?;
        if !shown && !name.starts_with("body") {
            hidden.push(name);
        }
        if at == id {
            return Ok(());
        }
    }
    Err(format!("Tab does not lead to #{id}").into())
}

async fn press_keys(page: &Page, keys: TypingData) -> Outcome<()> {
    Ok(page.session.active_element().await?.send_keys(keys).await?)
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

        // A closed question, from wherever the focus is now.
        let question = "document.activeElement.matches('details.question:not([open]) > summary')";
        for _ in 0..100 {
            press_keys(&page, Key::Tab + "").await?;
            let (_, name, shown) =
                <(String, String, bool)>::deserialize(&page.evaluate(FOCUSED).await?)?;
            if !shown && !name.starts_with("body") {
                hidden.push(name);
            }
            if page.evaluate(question).await? == true {
                break;
            }
        }
        press_keys(&page, Key::Enter + "").await?;
        page.wait_until("document.activeElement.matches('details.question[open] > summary')")
            .await?;

        // Escape closes a dialog and gives the focus back.
        page.evaluate("document.getElementById('menu-share').focus()").await?;
        press_keys(&page, Key::Enter + "").await?;
        page.element(By::Css("dialog[open]")).await?;
        press_keys(&page, Key::Escape + "").await?;
        page.wait_until("document.querySelector('dialog[open]') === null").await?;
        assert_eq!(page.evaluate("document.activeElement.id").await?, "menu-share");
        assert!(hidden.is_empty(), "the focus is not to be seen on {hidden:#?}");
        Ok(())
    })
    .await
}
