//! A sailor before an ocean, in the habits of an American: which weeks of the year are dark, and does the wind make up for it?

use serde_json::json;
use sunlarder_engine::document::TurbineOutput;
use sunlarder_engine::words::{ClockHabit, Habits, Label, Temperature, Words};
use sunlarder_tests::browser::{Outcome, Page, WORDS, answered, on_phone_and_laptop};
use thirtyfour::prelude::*;

/// What the sailor reads in.
const HABITS: Words = Words {
    habits: Habits {
        clock: ClockHabit::Hours12,
        temperature: Temperature::Fahrenheit,
        ..Habits::USUAL
    },
    language: WORDS.language,
};

#[tokio::test]
async fn a_sailor_reads_the_year_of_an_ocean() -> Outcome<()> {
    on_phone_and_laptop(async |page, address| {
        page.start_from(address, "sailor").await?;
        take_on_habits(page).await?;
        go_to_sea(page).await?;
        put_up_a_turbine(page).await?;
        read_the_year(page).await
    })
    .await
}

async fn take_on_habits(page: &Page) -> Outcome<()> {
    page.open_habits().await?;
    for way in [Label::DegreesFahrenheit, Label::Hours12, Label::Miles] {
        page.choose_habit(way).await?;
    }
    page.expect_sound().await?;
    page.close_dialog().await?;
    let start = page.evaluate("document.querySelector('.where').textContent").await?;
    let clock = HABITS.clock(page.stored_plan().await?.start.time.0);
    assert!(
        clock.contains("am") && start.as_str().is_some_and(|own| own.contains(&clock)),
        "{start}"
    );
    Ok(())
}

/// Out of the Bay of Biscay, then by the map to the middle of the Pacific.
async fn go_to_sea(page: &Page) -> Outcome<()> {
    page.open_question(Label::WhereAndWhen).await?;
    page.go_to("Biscay").await?;
    let biscay = page.shown().await?;
    page.tap_map(-10.0, -140.0).await?;
    page.wait_until("!document.querySelector('.where').textContent.includes('Biscay')").await?;
    let (plan, _) = page.settled().await?;
    let place = &plan.place;
    assert!((place.latitude_deg + 10.0).abs() < 1.0, "{place:?}");
    assert!((place.longitude_deg + 140.0).abs() < 1.0, "{place:?}");
    assert!(plan.place.utc_offset_min <= -540.0, "the clock goes along: {place:?}");
    let said = page.element(By::Id("world-says")).await?.text().await?;
    assert!(said.contains(&WORDS.place_name(&plan)), "{said}");
    assert_ne!(page.shown().await?.facts, biscay.facts);

    // How warm it will be, in their own degrees.
    let fold = WORDS.label(Label::SunAndTemperature);
    page.press(By::XPath(format!("//details/summary[normalize-space(.)=\"{fold}\"]"))).await?;
    let (system, _) = answered(&plan)?;
    let climate = HABITS.climate_in_words(&system.climate);
    assert!(climate.contains("°F"), "{climate}");
    page.wait_until(&format!("document.body.innerHTML.includes({})", json!(climate))).await?;
    page.expect_sound().await
}

/// No generator: sun, and the wind at night as well.
async fn put_up_a_turbine(page: &Page) -> Outcome<()> {
    let calm = page.shown().await?;
    page.open_question(Label::WhatComesIn).await?;
    page.flip(Label::ThereIsATurbine).await?;
    let all = format!("//div[label[.=\"{}\"]]//input", WORDS.label(Label::SameForAll));
    page.element(By::XPath(all)).await?.send_keys("25").await?;
    let (plan, _) = page.settled().await?;
    assert!(plan.generator.is_none() && !plan.arrays.is_empty());
    let turbine = plan.turbine.map(|own| format!("{:?}", own.output));
    assert_eq!(turbine, Some(format!("{:?}", TurbineOutput::MeanW([25.0; 12]))));
    assert_ne!(page.shown().await?.facts, calm.facts);
    page.expect_sound().await
}

/// The carpet and its table, and one hour of it.
async fn read_the_year(page: &Page) -> Outcome<()> {
    let (system, outlook) = answered(&page.settled().await?.0)?;
    let year = outlook.mean_year(&system);
    page.come_to("carpet").await?;
    page.expect_note("carpet", &HABITS.year(&year, system.bank.reserve)).await?;
    assert_eq!(page.rows("carpet").await?, 12);

    let cut = "[...document.querySelectorAll('#carpet .carpet-hours > span')].filter((own) =>
        own.getBoundingClientRect().left < own.closest('figure').getBoundingClientRect().left - 0.5)
        .map((own) => own.textContent)";
    // No hour is cut at the edge.
    page.becomes(cut, json!([])).await?;

    let reader = page.element(By::Css("#carpet .reader")).await?;
    reader.send_keys(Key::PageUp + Key::Down).await?;
    let value = reader.attr("aria-valuetext").await?.unwrap_or_default();
    let charge = format!("{:.0} %", year.hours[30 * 24 + 1].charge * 100.0);
    assert!(value.contains(&charge) && value.contains("am"), "{value}: {charge}");
    let readout = page.evaluate("document.querySelector('#carpet .readout').textContent").await?;
    assert_eq!(readout, value);
    page.expect_sound().await
}
