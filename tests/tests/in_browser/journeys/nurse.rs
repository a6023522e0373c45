//! A nurse at a health post with a vaccine fridge: what must she know, and what does she pin to the wall?

use sunlarder_engine::load::catalogue::Appliance;
use sunlarder_engine::outlook::Obstacle;
use sunlarder_engine::words::Label;
use sunlarder_engine::words::sheet::Rule;
use sunlarder_engine::working::Tag;
use sunlarder_tests::browser::{A4, Outcome, Page, WORDS, answered, on_phone_and_laptop};
use thirtyfour::By;

/// What the page must have told of the plan that is stored: that each vital load needs a backup of its own and an alarm.
async fn expect_warned(page: &Page) -> Outcome<()> {
    let plan = page.stored_plan().await?;
    let (_, outlook) = answered(&plan)?;
    let name_of = |tag| WORDS.name_in(&plan, tag);
    let said = page.element(By::Css(".verdict .vital")).await?.text().await?;
    assert_eq!(Some(&said), WORDS.vital(&outlook, &name_of).as_ref());
    let mut vital = 0;
    for obstacle in &outlook.obstacles {
        if let Obstacle::VitalLoad { load } = obstacle {
            let name = name_of(Tag::Load(*load)).unwrap_or_default();
            assert!(said.contains(&format!("“{name}”")), "{name}: {said}");
            vital += 1;
        }
    }
    assert!(vital > 0 && said.contains("a backup of its own and an alarm"), "{said}");
    // Neither an average nor nine chances in ten is good news here.
    assert!(page.evaluate("document.querySelector('.verdict em.good')").await?.is_null());
    let chance = page.expect_foretold().await?;
    assert!(chance.contains("a life must not rest on that alone"), "{chance}");
    assert!(!chance.contains("of ten years you") && !chance.contains("stay above"), "{chance}");
    Ok(())
}

#[tokio::test]
async fn a_nurse_learns_that_the_fridge_needs_a_backup_and_an_alarm() -> Outcome<()> {
    on_phone_and_laptop(async |page, address| {
        page.start_from(address, "clinic").await?;
        let fridge = WORDS.appliance(Appliance::VaccineFridge);
        let first = page.shown().await?;
        assert_eq!(first.loads.first().map(String::as_str), Some(fridge));
        expect_warned(page).await?;
        page.expect_sound().await?;

        // The fridge itself says why.
        page.open_load(0).await?;
        page.press(By::XPath(format!(
            "//*[contains(@class, 'editor')]//details/summary[normalize-space(.)=\"{}\"]",
            WORDS.label(Label::More)
        )))
        .await?;
        let vital = format!("//label[normalize-space(.)=\"{}\"]/input", WORDS.label(Label::Vital));
        let vital = page.element(By::XPath(vital)).await?;
        assert!(vital.is_selected().await?, "the fridge is known to be vital");
        page.expect_sound().await?;
        page.open_load(0).await?;

        // October is hotter there, and the fridge runs longer.
        page.open_question(Label::WhereAndWhen).await?;
        page.choose_month(9).await?;
        let october = page.shown().await?;
        assert_ne!(october.facts, first.facts);
        expect_warned(page).await?;
        page.expect_sound().await?;

        // It is kept, and what is printed warns as well.
        let plan = page.stored_plan().await?;
        page.reload().await?;
        assert_eq!((page.stored_plan().await?, page.shown().await?), (plan, october));
        expect_warned(page).await?;
        let (sheets, seen) = page.print_sheet(A4).await?;
        assert!((1..=2).contains(&sheets), "{sheets} sheets");
        let printed = seen["text"].as_str().unwrap_or_default();
        let (plan, _) = page.settled().await?;
        let name_of = |tag| WORDS.name_in(&plan, tag);
        let of_fridge = WORDS.obstacle(&Obstacle::VitalLoad { load: 0 }, &name_of);
        for said in [WORDS.rule(Rule::Lives), &of_fridge, WORDS.month(9)] {
            assert!(printed.contains(said), "{said}: {printed}");
        }
        Ok(())
    })
    .await
}
