//! The first minute, the place and plain words: a start picked, a place found on the map, a word explained where it stands.

use serde_json::json;
use sunlarder_engine::document::Field;
use sunlarder_engine::words::{Label, Term};
use sunlarder_tests::browser::{Look, Outcome, Page, Site, WORDS, answered, in_browser};
use thirtyfour::prelude::*;

#[tokio::test]
async fn eight_starts_are_offered_and_one_tap_tells_a_verdict() -> Outcome<()> {
    let site = Site::of_dist().await?;
    let address = site.address();
    for look in [Look::PHONE, Look::DESKTOP.in_the_dark()] {
        in_browser(look, |page| async move {
            page.open(address).await?;
            let cards = page.evaluate("document.querySelectorAll('.scenario').length").await?;
            assert_eq!(cards, json!(8));
            page.expect_sound().await?;
            page.screenshot(&format!("start_{}", look.width)).await?;
            page.press(By::Id("start-stall")).await?;
            page.wait_until("document.querySelector('.verdict h1 em') !== null").await?;
            assert_eq!(page.complaints().await?, [""; 0]);
            assert_eq!(page.foreign_requests().await?, [""; 0]);
            Ok(())
        })
        .await?;
    }
    Ok(())
}

/// Whether the stored plan that is open has something in it.
fn stored(what: &str) -> String {
    format!(
        "/{what}/.test(localStorage.getItem('sunlarder.plan.' + JSON.parse(localStorage.getItem('sunlarder.current'))))"
    )
}

#[tokio::test]
async fn a_place_is_found_by_its_sea_on_the_map_and_with_arrow_keys() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "sailor").await?;
        page.open_question(Label::WhereAndWhen).await?;
        page.element(By::Id("search-town")).await?.send_keys("biscay").await?;
        page.press(By::Css(".results button")).await?;
        page.wait_until("document.querySelector('.where').textContent.includes('Biscay')").await?;

        // Kathmandu, by a tap: the clock is that of the town.
        page.tap_map(27.7, 85.32).await?;
        page.wait_until("document.querySelector('.where').textContent.includes('Kathmandu')")
            .await?;
        page.wait_until(&stored("utc_offset_min\": ?345")).await?;
        let place = page.stored_plan().await?.place;
        assert!((place.latitude_deg - 27.7).abs() < 1.0, "{place:?}");
        assert!((place.longitude_deg - 85.3).abs() < 1.0, "{place:?}");

        // Ten degrees to the south, by keys: where the plan now stands is said.
        let map = page.element(By::Css(".world")).await?;
        map.send_keys(Key::Shift + Key::Down).await?;
        page.wait_until(&format!("!{}", stored("utc_offset_min\": ?345"))).await?;
        let moved = page.stored_plan().await?.place;
        assert_eq!(moved.longitude_deg, place.longitude_deg);
        assert!((place.latitude_deg - moved.latitude_deg - 10.0).abs() < 0.01, "{moved:?}");
        let said = page.element(By::Id("world-says")).await?.text().await?;
        assert!(said.contains(&moved.name) && !moved.name.contains("Kathmandu"), "{said}");
        page.expect_sound().await?;
        page.screenshot("map_360").await?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn the_climate_that_is_used_is_shown_and_taken_over() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::DESKTOP, |page| async move {
        page.start_from(site.address(), "hut").await?;
        page.open_question(Label::WhereAndWhen).await?;
        let fold = format!(
            "//details[summary[normalize-space(.)=\"{}\"]]/summary",
            WORDS.label(Label::SunAndTemperature)
        );
        page.press(By::XPath(fold)).await?;
        page.wait_until("document.querySelectorAll('svg.climate rect').length === 12").await?;
        let plan = page.stored_plan().await?;
        let (system, _) = answered(&plan)?;
        let text = page.evaluate("document.body.textContent").await?;
        for sentence in WORDS.climate_sources(&system.climate) {
            assert!(text.as_str().is_some_and(|text| text.contains(sentence)), "{sentence}");
        }
        page.expect_sound().await?;
        page.flip(Label::OwnSun).await?;
        page.wait_until("document.querySelectorAll('.twelve input').length === 12").await?;
        page.expect_sound().await?;
        page.screenshot("climate_1280").await?;
        Ok(())
    })
    .await
}

/// Opens what explains a label, and gives what it says.
async fn explained(page: &Page, label: &str) -> Outcome<String> {
    let name = serde_json::to_string(&WORDS.what_is(label))?;
    let button =
        format!("document.querySelector('button[aria-label=' + JSON.stringify({name}) + ']')");
    page.wait_until(&format!("{button} !== null")).await?;
    let before = page.evaluate(&format!("{button}.getAttribute('aria-expanded')")).await?;
    assert_eq!(before, json!("false"));
    page.evaluate(&format!("{button}.focus()")).await?;
    page.session.active_element().await?.send_keys(Key::Enter + "").await?;
    let target = format!("document.getElementById({button}.getAttribute('aria-controls'))");
    page.wait_until(&format!("{target}.querySelector('p:not(.hint)') !== null")).await?;
    let after = page.evaluate(&format!("{button}.getAttribute('aria-expanded')")).await?;
    assert_eq!(after, json!("true"));
    let said = page.evaluate(&format!("{target}.textContent")).await?;
    Ok(said.as_str().unwrap_or_default().to_owned())
}

#[tokio::test]
async fn words_are_explained_where_they_stand_even_while_a_plan_cannot_be_worked_out() -> Outcome<()>
{
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "cabin").await?;
        let said = explained(&page, WORDS.label(Label::MayBeUsed)).await?;
        assert_eq!(said, WORDS.explain_term(Term::Usable));
        page.open_question(Label::WhatComesIn).await?;
        let said = explained(&page, WORDS.field(Field::Tilt)).await?;
        assert_eq!(said, WORDS.explain_field(Field::Tilt));
        let drawn = page.evaluate("document.querySelector('.explained svg path') !== null").await?;
        assert_eq!(drawn, json!(true));
        page.expect_sound().await?;
        page.screenshot("explained_360").await?;

        // An idle draw above all loss: the plan cannot be worked out, words still can be explained.
        page.open_question(Label::WhatDoYouRun).await?;
        page.paste_into(Field::InverterIdle, "900").await?;
        page.wait_until("document.querySelector('.problem').textContent !== ''").await?;
        let said = explained(&page, WORDS.field(Field::InverterRated)).await?;
        assert_eq!(said, WORDS.explain_field(Field::InverterRated));
        let kept = page.evaluate("document.querySelectorAll('.explained p').length").await?;
        assert_eq!(kept, json!(3), "what was open stays");
        Ok(())
    })
    .await
}
