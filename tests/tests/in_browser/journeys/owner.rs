//! An owner before a trip: what does the plan at home say of next week, with what the gauge shows now?

use std::fs;
use std::path::PathBuf;

use serde_json::json;
use sunlarder_engine::document::{Charger, Field, When};
use sunlarder_engine::outlook::Question;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Outcome, Page, Shown, WORDS, answered, on_phone_and_laptop};
use sunlarder_tests::weather_year::weather_year;
use thirtyfour::By;

#[tokio::test]
async fn an_owner_sees_how_long_the_next_trip_lasts() -> Outcome<()> {
    on_phone_and_laptop(async |page, address| {
        // The plan of last summer is still there when the page is opened anew.
        page.start_from(address, "camper").await?;
        page.open_question(Label::WhatDoYouStore).await?;
        page.type_into(Field::BatteryCapacity, "150").await?;
        page.wait_until("document.querySelector('#fact-usable').textContent.includes('150')")
            .await?;
        let kept = page.stored_plan().await?;
        page.session.goto("about:blank").await?;
        page.open(address).await?;
        assert_eq!(page.stored_plan().await?, kept);
        page.expect_sound().await?;

        set_out_in_february(page).await?;
        drive_and_plug_in(page).await?;
        read_how_long(page).await?;
        replay_a_year(page).await?;
        slip_and_undo(page).await
    })
    .await
}

/// The day of the start, and what the gauge shows now.
async fn set_out_in_february(page: &Page) -> Outcome<()> {
    page.open_question(Label::WhereAndWhen).await?;
    page.element(By::Id("start-date")).await?;
    page.set_moment("start-date", "2027-02-12").await?;
    page.set_moment("start-time", "09:30").await?;
    page.type_into(Field::StartCharge, "64").await?;
    let start = page.settled().await?.0.start;
    assert_eq!((start.date.to_string(), start.charge_pct), ("2027-02-12".to_owned(), 64.0));
    let place = page.evaluate("document.querySelector('.where').textContent").await?;
    let place = place.as_str().unwrap_or_default();
    for said in [WORDS.month(1), WORDS.weekday(4), "9:30", "64"] {
        assert!(place.contains(said), "{said}: {place}");
    }
    Ok(())
}

/// An hour and a half of driving a day, and six hours on shore power.
async fn drive_and_plug_in(page: &Page) -> Outcome<()> {
    let before = page.shown().await?;
    page.open_question(Label::WhatComesIn).await?;
    for (source, hours) in [(Label::ThereIsAnAlternator, "1.5"), (Label::ThereIsShore, "6")] {
        page.flip(source).await?;
        let own = format!(
            "//div[contains(@class, 'part')][label[normalize-space(.)=\"{}\"]]//div[contains(@class, 'field')][label[.=\"{}\"]]//input[@type='text']",
            WORDS.label(source),
            WORDS.field(Field::HoursPerDay)
        );
        let own = page.element(By::XPath(own)).await?;
        page.retype(&own, hours).await?;
    }
    let (plan, now) = page.settled().await?;
    let hours = |own: Option<&Charger>| own.map(|own| own.schedule.when.clone());
    assert_eq!(hours(plan.alternator.as_ref()), Some(When::HoursPerDay(1.5)));
    assert_eq!(hours(plan.shore.as_ref()), Some(When::HoursPerDay(6.0)));
    assert_ne!(now.facts, before.facts);
    page.expect_sound().await?;

    // This week there is no post to plug in at.
    page.flip(Label::ThereIsShore).await?;
    assert_eq!(page.settled().await?.0.shore.map(|own| own.on), Some(false));
    Ok(())
}

/// How long it lasts, in average weather, without sun and in weather as it may be; and how that is worked out.
async fn read_how_long(page: &Page) -> Outcome<()> {
    let plan = page.stored_plan().await?;
    let (_, outlook) = answered(&plan)?;
    assert_eq!(page.shown().await?, Shown::expected(&plan)?);
    page.expect_foretold().await?;
    let times = outlook.times();
    let told = |at: Option<_>| at.map_or_else(|| WORDS.beyond(), |at| WORDS.duration(at));
    let row = [
        WORDS.label(Label::UntilReserve).to_owned(),
        told(times.to_reserve),
        told(times.dark_to_reserve),
    ];
    let rows =
        "[...document.querySelector('.times tbody tr').children].map((own) => own.textContent)";
    page.becomes(rows, json!(row)).await?;
    page.open_panel(Label::HowWorkedOut).await?;
    page.expect_worked(Question::Run).await?;
    page.expect_sound().await?;
    page.open_panel(Label::HowWorkedOut).await
}

/// A year of weather that a friend measured nearby: dull until March.
async fn replay_a_year(page: &Page) -> Outcome<()> {
    let (system, _) = answered(&page.stored_plan().await?)?;
    let text = weather_year(system.site, |month| if month < 3 { 0 } else { 400 });
    let name = format!("owner-{}.epw", page.look.name());
    let file = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::write(&file, &text)?;
    page.bring_weather(&file).await?;
    page.expect_replayed(&text).await?;
    page.expect_sound().await
}

/// A thumb on the wrong switch: the verdict changes, and Undo brings it back.
async fn slip_and_undo(page: &Page) -> Outcome<()> {
    let before = page.settled().await?;
    page.press(By::Css("ul.loads > li.load input[type='checkbox']")).await?;
    let slipped = page.settled().await?;
    assert!(slipped.0 != before.0 && slipped.1.facts != before.1.facts);
    page.press(By::Id("menu-undo")).await?;
    assert_eq!(page.settled().await?, before);
    page.press(By::Id("menu-redo")).await?;
    assert_eq!(page.settled().await?, slipped);
    Ok(())
}
