//! What holds for the page as a whole, on every screen and under any address.

use serde_json::json;
use sunlarder_tests::browser::{Look, Outcome, Page, Site, in_browser, in_browser_alone};

const NOTHING: [String; 0] = [];

/// Opens the page and expects it to be quiet, at home, accessible and within its width.
async fn expect_in_order(page: &Page, address: &str) -> Outcome<()> {
    page.open(address).await?;
    page.becomes("document.title", "Sunlarder").await?;
    page.becomes("document.getElementById('skeleton')", json!(null)).await?;
    assert_eq!(page.overflow().await?, NOTHING);
    assert_eq!(page.accessibility().await?, NOTHING);
    page.screenshot("shell").await?;
    assert_eq!(page.complaints().await?, NOTHING);
    assert_eq!(page.foreign_requests().await?, NOTHING);
    Ok(())
}

async fn expect_in_order_at(look: Look) -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(look, |page| async move { expect_in_order(&page, site.address()).await }).await
}

#[tokio::test]
async fn the_page_is_in_order_on_a_phone() -> Outcome<()> {
    expect_in_order_at(Look::PHONE).await
}

#[tokio::test]
async fn the_page_is_in_order_on_a_phone_in_the_dark() -> Outcome<()> {
    expect_in_order_at(Look::PHONE.in_the_dark()).await
}

#[tokio::test]
async fn the_page_is_in_order_on_a_laptop() -> Outcome<()> {
    expect_in_order_at(Look::DESKTOP).await
}

#[tokio::test]
async fn the_page_is_in_order_on_a_laptop_in_the_dark() -> Outcome<()> {
    expect_in_order_at(Look::DESKTOP.in_the_dark()).await
}

#[tokio::test]
async fn the_checks_see_what_they_look_for() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.open(site.address()).await?;
        let spoil = "(() => {
            const wide = document.createElement('img');
            wide.src = 'http://elsewhere.invalid/picture.png';
            wide.width = 900;
            wide.height = 10;
            document.body.append(wide);
        })()";
        page.evaluate(spoil).await?;
        page.resolve("fetch('missing.json')").await?;
        assert!(!page.overflow().await?.is_empty(), "a wide image was not seen");
        let findings = page.accessibility().await?;
        assert!(findings.iter().any(|finding| finding.starts_with("image-alt")), "{findings:?}");
        let complaints = page.complaints().await?;
        assert!(complaints.iter().any(|c| c.contains("Content Security Policy")), "{complaints:?}");
        assert!(complaints.iter().any(|c| c.contains("missing.json")), "{complaints:?}");
        page.devtools("Page.setBypassCSP", json!({ "enabled": true })).await?;
        page.reload().await?;
        page.evaluate(spoil).await?;
        page.wait_until("document.images[0].complete").await?;
        let strangers = page.foreign_requests().await?;
        assert!(
            strangers.iter().any(|s| s == "http://elsewhere.invalid/picture.png"),
            "{strangers:?}"
        );
        Ok(())
    })
    .await
}

#[tokio::test]
async fn the_look_is_the_one_asked_for() -> Outcome<()> {
    let site = Site::of_dist().await?;
    let address = site.address();
    for look in Look::BOTH.map(Look::in_the_dark) {
        in_browser(look, |page| async move {
            page.open(address).await?;
            let size = page.evaluate("[innerWidth, innerHeight]").await?;
            assert_eq!(size, json!([look.width, look.height]));
            assert_eq!(
                page.evaluate("matchMedia('(prefers-color-scheme: dark)').matches").await?,
                true
            );
            Ok(())
        })
        .await?;
    }
    Ok(())
}

#[tokio::test]
async fn an_edit_is_timed_from_key_to_paint() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser_alone(Look::PHONE, |page| async move {
        page.record_paints().await?;
        page.open(site.address()).await?;
        // A field that keeps the main thread busy for a known time at each key.
        page.evaluate(
            "(() => {
                const field = document.body.appendChild(document.createElement('input'));
                field.oninput = () => { const end = performance.now() + 60; while (performance.now() < end); };
                field.focus();
            })()",
        )
        .await?;
        page.throttle(4).await?;
        page.session.active_element().await?.send_keys("12").await?;
        let times = page.paints(2).await?;
        assert!(times.iter().all(|&time| (60.0..1000.0).contains(&time)), "{times:?}");
        Ok(())
    })
    .await
}
