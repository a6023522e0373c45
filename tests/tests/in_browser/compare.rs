//! A plan against a baseline, its variants, and two plans side by side.

use sunlarder_engine::document::{Document, Field};
use sunlarder_engine::outlook::Figure;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Site, WORDS, answered, in_browser};
use thirtyfour::By;

const NOTHING: [String; 0] = [];

/// A figure of a plan, worked out here and not in the browser.
fn figure(plan: &Document, figure: Figure) -> Outcome<f64> {
    let (system, outlook) = answered(plan)?;
    Ok(outlook.figure(&system, figure).ok_or("there is no such figure")?)
}

#[tokio::test]
async fn figures_and_curve_are_held_against_a_baseline_also_after_a_reload() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let before = page.stored_plan().await?;
        assert_eq!(
            page.evaluate("document.querySelector('.facts .against').textContent").await?,
            ""
        );
        page.press_button(Label::KeepAsBaseline).await?;
        page.expect_against("fact-usable", &WORDS.than(Figure::Usable, 0.0, "")).await?;
        page.open_question(Label::WhatDoYouStore).await?;
        page.type_into(Field::BatteryCapacity, "200").await?;
        let more = |after: &Document| -> Outcome<String> {
            let more = figure(after, Figure::Usable)? - figure(&before, Figure::Usable)?;
            Ok(WORDS.than(Figure::Usable, more, ""))
        };
        let after = Document { bank: before.bank.clone(), ..before.clone() };
        let mut after = after;
        after.bank.capacity_ah = 200.0;
        page.expect_against("fact-usable", &more(&after)?).await?;
        let drawn = "document.querySelector('.baseline-line')?.getAttribute('d').length > 100
            && document.querySelectorAll('.baseline-outline').length === 2
            && document.querySelector('.key-baseline') !== null";
        page.wait_until(drawn).await?;
        assert_eq!(page.overflow().await?, NOTHING);
        assert_eq!(page.accessibility().await?, NOTHING);
        page.wait_until(
            "Object.values(localStorage).some((own) => own.includes('\"capacity_ah\": 200'))",
        )
        .await?;

        page.reload().await?;
        page.expect_against("fact-usable", &more(&page.stored_plan().await?)?).await?;
        page.wait_until(drawn).await?;
        page.press_button(Label::ClearBaseline).await?;
        page.expect_against("fact-usable", "").await?;
        let kept = "Object.keys(localStorage).filter((key) => key.includes('baseline')).length";
        page.becomes(kept, 0).await?;
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn three_variants_stand_together_and_switching_loses_no_undo() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let first = page.shown().await?.name;
        let mut names = vec![first.clone()];
        for _ in 0..3 {
            names.push(page.make_variant(None).await?);
        }
        let proposed: Vec<String> =
            WORDS.variants().iter().take(3).map(|own| format!("{first} · {own}")).collect();
        assert_eq!(names[1..], proposed);
        page.open_question(Label::WhatDoYouStore).await?;
        page.type_into(Field::BatteryCapacity, "333").await?;
        page.wait_until("document.querySelector('#fact-usable').textContent.includes('333')")
            .await?;
        page.press(By::Id("menu-plans")).await?;
        let rows = "document.querySelectorAll('dialog[open] #variants > li').length";
        page.becomes(rows, 4).await?;
        assert_eq!(page.overflow().await?, NOTHING);
        assert_eq!(page.accessibility().await?, NOTHING);
        page.press_button(Label::Close).await?;

        page.switch_to(&first).await?;
        page.wait_until("!document.querySelector('#fact-usable').textContent.includes('333')")
            .await?;
        page.switch_to(&names[3]).await?;
        page.wait_until("document.querySelector('#fact-usable').textContent.includes('333')")
            .await?;
        page.press(By::Id("menu-undo")).await?;
        page.wait_until("!document.querySelector('#fact-usable').textContent.includes('333')")
            .await?;
        assert_eq!(page.shown().await?.name, names[3], "the edit is undone, not the switch");
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_plan_opened_over_another_is_undone_and_made_again() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let camper = page.shown().await?;
        page.start_anew_from("boat").await?;
        let boat = page.shown().await?;
        assert_ne!(camper.name, boat.name);
        page.press(By::Id("menu-undo")).await?;
        assert_eq!(page.shown().await?, camper);
        page.press(By::Id("menu-redo")).await?;
        assert_eq!(page.shown().await?, boat);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn two_plans_lie_side_by_side_with_what_differs() -> Outcome<()> {
    let site = Site::of_dist().await?;
    for look in [Look::DESKTOP, Look::PHONE, Look::DESKTOP.in_the_dark()] {
        let address = site.address().to_owned();
        in_browser(look, |page| async move {
            page.start_from(&address, "camper").await?;
            page.make_variant(None).await?;
            page.open_question(Label::WhatDoYouStore).await?;
            page.type_into(Field::BatteryCapacity, "150").await?;
            page.wait_until("document.querySelector('#fact-usable').textContent.includes('150')").await?;
            page.press_button(Label::Compare).await?;
            assert_eq!(page.accessibility().await?, NOTHING);
            page.press_button(Label::SideBySide).await?;
            page.wait_until("document.querySelectorAll('.beside-plan').length === 2").await?;
            let tops = "[...document.querySelectorAll('.beside-plan')].map((own) => own.getBoundingClientRect().top)";
            let apart = page.evaluate(&format!("Math.abs({tops}[0] - {tops}[1]) < 1")).await?;
            assert_eq!(apart, look.width >= 1100, "beside each other where there is room");
            let rows = "document.querySelectorAll('.beside table')[0].querySelectorAll('tbody tr').length";
            page.becomes(rows, Figure::ALL.len()).await?;
            let said = page.evaluate("document.querySelectorAll('.beside table')[1].textContent").await?;
            let said = said.as_str().unwrap_or_default().replace('\u{a0}', " ");
            let field = WORDS.field(Field::BatteryCapacity);
            assert!(said.contains(field) && said.contains("150 Ah100 Ah"), "{said}");
            page.becomes("document.querySelectorAll('.beside table')[1].querySelectorAll('tbody tr').length", 1).await?;
            assert_eq!(page.overflow().await?, NOTHING);
            assert_eq!(page.accessibility().await?, NOTHING);
            page.press_button(Label::BackToPlan).await?;
            page.wait_until("document.querySelector('.verdict h1') !== null").await?;
            assert_eq!(page.complaints().await?, NOTHING);
            Ok(())
        })
        .await?;
    }
    Ok(())
}
