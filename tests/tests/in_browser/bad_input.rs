//! What no plan can hold, and links and files that are none: a sentence, and nothing lost.

use std::fs;

use serde_json::json;
use sunlarder_engine::document::{Document, Field, Problem};
use sunlarder_engine::share;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Page, Site, WORDS, in_browser};
use sunlarder_tests::plans::EXAMPLES;
use thirtyfour::By;

const NOTHING: [String; 0] = [];

#[tokio::test]
async fn a_power_that_cannot_be_is_refused_by_name_and_range() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        page.open_load(0).await?;
        let (plan, shown) = (page.stored_plan().await?, page.shown().await?);
        let range = Field::LoadPower.range();
        for typed in ["1e300", "-1", "", "NaN", "12 W", "1e-300x", "−0.5", "∞"] {
            page.paste_into(Field::LoadPower, typed).await?;
            let fault = page.fault_of(Field::LoadPower).await?;
            assert!(fault.contains(WORDS.field(Field::LoadPower)), "{typed}: {fault}");
            for end in [range.min, range.max] {
                assert!(digits(&fault).contains(&end.to_string()), "{typed}: {fault}");
            }
            assert!(page.stored_plan().await? == plan, "{typed} changed the plan");
            assert_eq!(page.shown().await?, shown, "{typed}");
        }
        page.type_into(Field::LoadPower, "46,5").await?;
        assert_eq!(page.fault_of(Field::LoadPower).await?, "");
        assert_ne!(page.stored_plan().await?, plan);
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}

/// The text without what groups the digits of large numbers.
fn digits(text: &str) -> String {
    text.chars().filter(|own| !['\u{202f}', '\u{a0}', '\u{2009}', ','].contains(own)).collect()
}

/// A good link and what may happen to it on its way, each with why it is refused.
fn damaged_links() -> Outcome<Vec<(String, String)>> {
    let plan = EXAMPLES.iter().find(|(name, _)| *name == "boat").ok_or("no boat")?.1;
    let plan = Document::from_json(plan).map_err(|problem| format!("{problem:?}"))?;
    let code = share::encode(&plan).map_err(|problem| format!("{problem:?}"))?;
    let flipped = |at: usize| {
        let mut letters: Vec<char> = code.chars().collect();
        letters[at] = if letters[at] == 'A' { 'B' } else { 'A' };
        letters.into_iter().collect::<String>()
    };
    let bad = [
        code[..code.len() / 2].to_owned(),
        code[..code.len() - 1].to_owned(),
        flipped(code.len() / 2),
        flipped(code.len() - 3),
        "xyz".into(),
        String::new(),
        "%F0%9F".into(),
        "A".repeat(100_000),
    ];
    let why = |code: String| match share::decode(&code) {
        Ok(_) => Err(format!("{code} is no damage").into()),
        Err(problem) => Ok((code, WORDS.problem(&problem, &|_| None))),
    };
    bad.into_iter().map(why).collect()
}

#[tokio::test]
async fn a_damaged_link_in_the_address_is_told_and_the_open_plan_stays() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        page.open_load(0).await?;
        page.type_into(Field::LoadPower, "51").await?;
        let (plan, shown) = (page.stored_plan().await?, page.shown().await?);
        for (code, why) in damaged_links()? {
            // A link followed while the page stands, then the same link opened anew.
            page.evaluate(&format!("(location.hash = 'p={code}') && null")).await?;
            page.wait_for_notice(&why).await?;
            page.wait_for_notice(WORDS.unchanged()).await?;
            assert_eq!(page.shown().await?, shown, "{code}");
            page.session.goto("about:blank").await?;
            page.open(&format!("{}#p={code}", site.address())).await?;
            page.wait_for_notice(&why).await?;
            assert_eq!(page.shown().await?, shown, "{code}");
            assert_eq!(page.stored_plan().await?, plan, "{code}");
            page.dismiss_notice().await?;
        }
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_damaged_link_on_the_first_visit_leads_to_the_starts() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.open(&format!("{}#p=xyz", site.address())).await?;
        page.wait_for_notice(WORDS.unchanged()).await?;
        page.press(By::Id("start-cabin")).await?;
        page.wait_until("document.querySelector('.verdict h1') !== null").await
    })
    .await
}

/// What the opener says is wrong.
const OPENER_FAULT: &str = "document.querySelector('.opener .error').textContent";

async fn expect_opener_to_say(page: &Page, why: &str) -> Outcome<()> {
    page.wait_until(&format!("{OPENER_FAULT}.includes({})", json!(why))).await
}

#[tokio::test]
async fn a_damaged_link_that_is_pasted_is_told_beside_its_box() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let shown = page.shown().await?;
        page.press(By::Id("menu-share")).await?;
        let pasted = page.element(By::Id("pasted-link")).await?;
        pasted.send_keys("https://example.org/#p=nothing-of-ours").await?;
        page.press(By::Id("open-link")).await?;
        expect_opener_to_say(&page, WORDS.unchanged()).await?;
        assert_eq!(page.shown().await?, shown);

        // A whole link in the midst of a message opens.
        let link = page.evaluate("document.getElementById('link-box').value").await?;
        let link = link.as_str().unwrap_or_default().to_owned();
        pasted.clear().await?;
        pasted.send_keys(link).await?;
        page.press(By::Id("open-link")).await?;
        page.wait_until("document.querySelector('dialog[open]') === null").await?;
        assert_eq!(page.shown().await?, shown);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn files_that_are_no_plan_are_told_by_what_is_wrong() -> Outcome<()> {
    let site = Site::of_dist().await?;
    let folder = std::env::temp_dir().join(format!("sunlarder-files-{}", std::process::id()));
    fs::create_dir_all(&folder)?;
    let newer = r#"{"sunlarder":99}"#;
    let crowded = format!(r#"{{"sunlarder":1,"loads":[{}]}}"#, vec!["{}"; 10_000].join(","));
    let files = [
        ("other.json", r#"{"project":{"tasks":[1,2,3]}}"#),
        ("cut.json", r#"{"sunlarder":1,"loads":[{"#),
        ("empty.json", ""),
        ("newer.json", newer),
        ("crowded.json", &crowded),
        ("no-bank.json", r#"{"sunlarder":1,"bank":{"capacity_ah":0}}"#),
        ("negative.json", r#"{"sunlarder":1,"loads":[{"rating":{"power_w":-5}}]}"#),
        ("huge.json", r#"{"sunlarder":1,"loads":[{"rating":{"power_w":1e300}}]}"#),
    ];
    let folder_for_files = &folder;
    let tried = in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let (plan, shown) = (page.stored_plan().await?, page.shown().await?);
        page.press(By::Id("menu-share")).await?;
        for (name, text) in files {
            let problem: Problem =
                Document::from_json(text).err().ok_or_else(|| format!("{name} opens"))?;
            // The browser counts the letter that it does not understand, serde those before it.
            let problem = match problem {
                Problem::NotJson { line, column } if column > 0 => {
                    Problem::NotJson { line, column: column + 1 }
                }
                other => other,
            };
            let path = folder_for_files.join(name);
            fs::write(&path, text)?;
            let input = page.element(By::Css(".opener input[type=file]")).await?;
            input.send_keys(path.to_string_lossy()).await?;
            expect_opener_to_say(&page, &WORDS.problem(&problem, &|_| None)).await?;
            assert_eq!(
                (page.stored_plan().await?, page.shown().await?),
                (plan.clone(), shown.clone()),
                "{name}"
            );
        }
        let good = folder_for_files.join("good.json");
        fs::write(&good, plan.to_json().replace("Camper by the sea", "<b>Mine</b>"))?;
        let input = page.element(By::Css(".opener input[type=file]")).await?;
        input.send_keys(good.to_string_lossy()).await?;
        page.wait_until("document.querySelector('.plan-name').textContent === '<b>Mine</b>'")
            .await?;
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await;
    fs::remove_dir_all(&folder)?;
    tried
}

#[tokio::test]
async fn without_the_climate_the_page_says_so_and_tries_again() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.devtools("Network.enable", json!({})).await?;
        page.devtools("Network.setBlockedURLs", json!({ "urls": ["*climate.bin"] })).await?;
        page.session.goto(site.address()).await?;
        page.wait_until("document.querySelector('#skeleton [role=alert]') !== null").await?;
        let said = page.session.find(By::Id("loading")).await?.text().await?;
        assert_eq!(said, WORDS.label(Label::NoClimate));
        assert_eq!(page.accessibility().await?, NOTHING);
        assert_eq!(page.overflow().await?, NOTHING);
        page.screenshot("no-climate").await?;
        page.devtools("Network.setBlockedURLs", json!({ "urls": [] })).await?;
        page.press_button(Label::TryAgain).await?;
        page.wait_until_ready().await
    })
    .await
}

#[tokio::test]
async fn what_is_shut_says_when_it_did_not_come_and_tries_again() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.devtools("Network.enable", json!({})).await?;
        page.devtools("Network.setBlockedURLs", json!({ "urls": ["*/drawers-*"] })).await?;
        page.start_from(site.address(), "camper").await?;
        page.open_question(Label::WhatDoYouStore).await?;
        let sentence = json!(WORDS.label(Label::PartMissed));
        let said = "document.querySelector('.question .hint[role=alert]')?.textContent";
        page.wait_until(&format!("{said} === {sentence}")).await?;
        assert_eq!(page.accessibility().await?, NOTHING);
        assert_eq!(page.overflow().await?, NOTHING);
        page.screenshot("no-drawers").await?;
        page.devtools("Network.setBlockedURLs", json!({ "urls": [] })).await?;
        page.press_button(Label::TryAgain).await?;
        page.number_box(Field::BatteryCapacity).await?;
        Ok(())
    })
    .await
}
