//! What can be done to a plan, and taken back.

use sunlarder_engine::document::Field;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Page, Shown, Site, WORDS, in_browser};
use thirtyfour::prelude::*;

/// Waits until the page shows the figures of a plan that the device keeps, and gives what it shows.
async fn settled(page: &Page) -> Outcome<Shown> {
    let shown = page.shown().await?;
    assert_eq!(shown, Shown::expected(&page.stored_plan().await?)?);
    Ok(shown)
}

#[tokio::test]
async fn a_load_is_duplicated_moved_switched_off_and_deleted() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let start = settled(&page).await?.loads;
        let (first, second) = (start[0].clone(), start[1].clone());

        page.open_load(0).await?;
        page.press_button(Label::Duplicate).await?;
        let twice = settled(&page).await?.loads;
        assert_eq!(twice[..3], [first.clone(), first.clone(), second.clone()]);

        // The copy is open now, and moves behind what came after it.
        page.press_button(Label::MoveDown).await?;
        let moved = settled(&page).await?.loads;
        assert_eq!(moved[..3], [first.clone(), second.clone(), first.clone()]);
        page.press_button(Label::MoveUp).await?;
        assert_eq!(settled(&page).await?.loads, twice);

        let before = settled(&page).await?.facts;
        page.press(By::Css("li.load:nth-child(2) > .take")).await?;
        let off = settled(&page).await?;
        assert_ne!(off.facts, before);
        assert_eq!(off.loads, twice);
        assert!(page.stored_plan().await?.loads.iter().any(|load| !load.on));
        let home = WORDS.label(Label::LeftAtHome);
        page.wait_until(&format!(
            "document.querySelector('li.load.off .load-when')?.textContent === '{home}'"
        ))
        .await?;

        page.press_button(Label::Delete).await?;
        page.wait_for_notice(&WORDS.deleted(&first)).await?;
        assert_eq!(settled(&page).await?.loads, start);
        page.undo_in_notice().await?;
        assert_eq!(settled(&page).await?, off);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn changes_are_taken_back_and_made_again() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "boat").await?;
        let start = settled(&page).await?;
        page.becomes("document.getElementById('menu-undo').disabled", true).await?;
        page.open_load(0).await?;
        page.press_button(Label::Delete).await?;
        let deleted = settled(&page).await?;
        page.open_question(Label::WhatDoYouStore).await?;
        page.type_into(Field::BatteryCapacity, "77").await?;
        let smaller = settled(&page).await?;
        assert_ne!(smaller.facts, deleted.facts);

        for expected in [&deleted, &start] {
            page.press(By::Id("menu-undo")).await?;
            assert_eq!(settled(&page).await?, *expected);
        }
        let shown = page.number_box(Field::BatteryCapacity).await?.prop("value").await?;
        assert_ne!(shown.as_deref(), Some("77"), "the box shows what the plan holds");
        for expected in [&deleted, &smaller] {
            page.press(By::Id("menu-redo")).await?;
            assert_eq!(settled(&page).await?, *expected);
        }
        page.becomes("document.getElementById('menu-redo').disabled", true).await?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_month_is_picked_in_its_picture() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "cabin").await?;
        let before = settled(&page).await?;
        page.press(By::Css(".months-picks li:nth-child(6) button.month")).await?;
        let june = settled(&page).await?;
        assert_ne!(june.facts[1], before.facts[1]);
        let where_now = page.element(By::ClassName("where")).await?.text().await?;
        assert!(where_now.contains(WORDS.month(5)), "{where_now}");
        let current = "document.querySelector('.months-picks li:nth-child(6) button').getAttribute('aria-current')";
        page.becomes(current, "true").await?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn the_curve_is_read_hour_by_hour_with_keys() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let readout = async || page.session.find(By::ClassName("readout")).await?.text().await;
        assert_eq!(readout().await?, WORDS.label(Label::ScrubHint));
        page.wait_for_weather().await?;
        let cursor = page.element(By::Css(".curve-cursor")).await?;
        cursor.focus().await?;
        let mut read = Vec::new();
        for key in [Key::Right, Key::Right, Key::PageUp, Key::Left, Key::End, Key::Home] {
            cursor.send_keys(key).await?;
            let said = readout().await?;
            let spoken = cursor.attr("aria-valuetext").await?;
            assert_eq!(spoken.as_deref(), Some(said.as_str()));
            read.push(said);
        }
        let hours: std::collections::BTreeSet<&String> = read.iter().collect();
        assert_eq!(hours.len(), read.len(), "each key leads to another hour: {read:#?}");
        assert!(read.last().is_some_and(|start| start.contains("16:00")), "{read:#?}");
        cursor.send_keys(Key::Escape).await?;
        assert_eq!(readout().await?, WORDS.label(Label::ScrubHint));
        Ok(())
    })
    .await
}
