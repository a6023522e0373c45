//! The printed sheet, the code of the link, and what is dropped on the page.

use serde_json::{Value, json};
use sunlarder_engine::document::{Document, Load};
use sunlarder_engine::share;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{
    A4, LETTER, Look, Outcome, Page, Site, WORDS, answered, in_browser,
};
use sunlarder_tests::plans::EXAMPLES;
use thirtyfour::By;

const NOTHING: [String; 0] = [];

/// Opens a plan by its link in a fresh page.
async fn open_plan(page: &Page, address: &str, plan: &Document) -> Outcome<String> {
    let code = share::encode(plan).map_err(|problem| format!("{problem:?}"))?;
    let link = format!("{address}#p={code}");
    page.session.goto("about:blank").await?;
    page.open(&link).await?;
    page.wait_until("document.querySelector('.verdict h1') !== null").await?;
    Ok(link)
}

fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[tokio::test]
async fn every_example_prints_on_one_or_two_sheets() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::DESKTOP, |page| async move {
        for (name, text) in EXAMPLES {
            let plan = Document::from_json(text).map_err(|problem| format!("{problem:?}"))?;
            let link = open_plan(&page, site.address(), &plan).await?;
            for paper in [A4, LETTER] {
                let (sheets, seen) = page.print_sheet(paper).await?;
                assert!((1..=2).contains(&sheets), "{name}: {sheets} sheets of {paper:?}");
                let said = plain(seen["text"].as_str().unwrap_or_default());
                let (system, outlook) = answered(&plan)?;
                assert!(said.contains(&plain(&WORDS.headline(&outlook).text())), "{name}: {said}");
                assert!(said.contains(&link), "{name}: {said}");
                for load in &system.loads {
                    let load =
                        WORDS.name_in(&plan, sunlarder_engine::working::Tag::Load(load.place));
                    assert!(said.contains(&plain(&load.unwrap_or_default())), "{name}: {said}");
                }
                assert_eq!((&seen["codes"], &seen["places"]), (&json!(1), &json!(2)), "{name}");
                assert!(seen["curves"].as_u64() > Some(3), "{name}: {seen}");
            }
        }
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn blank_full_and_hopeless_plans_print_too() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        let mut full =
            Document::from_json(EXAMPLES[0].1).map_err(|problem| format!("{problem:?}"))?;
        let load = full.loads.first().cloned().unwrap_or_default();
        full.loads = (0..40)
            .map(|at| Load { name: format!("{at} {}", "W".repeat(76)), ..load.clone() })
            .collect();
        let mut hopeless = Document::default();
        let supply = sunlarder_engine::document::Supply::Ac;
        hopeless.loads = vec![Load { supply, ..Load::default() }];
        for (plan, most) in [(Document::default(), 1), (hopeless, 2), (full, 8)] {
            open_plan(&page, site.address(), &plan).await?;
            let (sheets, _) = page.print_sheet(A4).await?;
            assert!((1..=most).contains(&sheets), "{sheets} sheets");
        }
        Ok(())
    })
    .await
}

/// Drops a text or a file on the page, as a browser does.
fn drop_of(file: bool, text: &str) -> String {
    let put = if file {
        "items.add(new File([text], 'plan.json'))"
    } else {
        "setData('text/plain', text)"
    };
    format!(
        "(() => {{ const text = {}, data = new DataTransfer(); data.{put};
            for (const name of ['dragover', 'drop']) document.body.dispatchEvent(
                new DragEvent(name, {{ bubbles: true, cancelable: true, dataTransfer: data }}));
            return true; }})()",
        json!(text)
    )
}

#[tokio::test]
async fn what_is_dropped_opens_and_loses_nothing() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let camper = page.shown().await?;
        page.evaluate(&drop_of(true, "{\"sunlarder\":1,\"place\":5}")).await?;
        page.wait_for_notice("“place” is 5").await?;
        assert_eq!(page.shown().await?, camper);
        page.evaluate(&drop_of(false, "  ")).await?;
        page.wait_for_notice(WORDS.label(Label::NothingToOpen)).await?;
        page.evaluate(&drop_of(true, EXAMPLES[1].1)).await?;
        page.wait_for_notice(WORDS.label(Label::KeptUnderPlans)).await?;
        let boat = page.shown().await?;
        assert_ne!(boat.name, camper.name);
        let kept =
            "Object.keys(localStorage).filter((key) => key.startsWith('sunlarder.plan.')).length";
        page.wait_until(&format!("{kept} === 2")).await?;
        page.becomes("document.querySelector('.drop')", Value::Null).await?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn the_code_stands_in_the_dialog_and_as_large_as_the_screen() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE.in_the_dark(), |page| async move {
        let plan = Document::from_json(EXAMPLES[2].1).map_err(|problem| format!("{problem:?}"))?;
        let link = open_plan(&page, site.address(), &plan).await?;
        page.press(By::Id("menu-share")).await?;
        assert_eq!(page.read_code().await?, link);
        page.press_button(Label::BigCode).await?;
        page.wait_until("document.querySelector('dialog.whole[open] .code')?.clientWidth > 300")
            .await?;
        assert_eq!(page.overflow().await?, NOTHING);
        assert_eq!(page.accessibility().await?, NOTHING);
        page.element(By::Css("body")).await?.send_keys("\u{e00c}").await?;
        page.wait_until("document.querySelector('dialog[open]') === null").await?;
        Ok(())
    })
    .await
}
