//! A person's own year of weather: opened, replayed, drawn, told where it is wrong, taken away.

use std::fs;
use std::path::PathBuf;

use serde_json::json;
use sunlarder_engine::document::Field;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, REPLAY_SAID, REPLAYED, Site, answered, in_browser};
use sunlarder_tests::weather_year::weather_year;

const NOTHING: [String; 0] = [];
/// Whether the plan that is kept on the device starts at 55 %.
const STORED_AT_55: &str = "(() => {
    const id = JSON.parse(localStorage.getItem('sunlarder.current'));
    return JSON.parse(localStorage.getItem('sunlarder.plan.' + id)).start.charge_pct === 55;
})()";

/// Writes a file for the page to open.
fn written(name: &str, text: &str) -> Outcome<PathBuf> {
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::write(&path, text)?;
    Ok(path)
}

#[tokio::test]
async fn a_year_of_weather_is_opened_followed_told_wrong_and_taken_away() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let plan = page.stored_plan().await?;
        let (system, _) = answered(&plan)?;
        let text = weather_year(system.site, |month| if month < 3 { 0 } else { 400 });
        let good = written("replayed.epw", &text)?;
        page.open_question(Label::WhereAndWhen).await?;
        page.bring_weather(&good).await?;
        page.expect_replayed(&text).await?;
        assert_eq!(page.accessibility().await?, NOTHING);
        assert_eq!(page.overflow().await?, NOTHING);
        page.screenshot("replay").await?;

        // It follows an edit, and nothing of it is kept on the device.
        page.type_into(Field::StartCharge, "55").await?;
        page.wait_until(STORED_AT_55).await?;
        page.expect_replayed(&text).await?;
        let kept = page.evaluate("JSON.stringify(localStorage).includes('Some Bay')").await?;
        assert_eq!(kept, json!(false));

        // A wrong one is told by line and column, and can be followed by a good one.
        let wrong = written("wrong.epw", &text.replacen("8.0", "88.0", 1))?;
        page.bring_weather(&wrong).await?;
        page.wait_until(&format!("{REPLAY_SAID}.includes('(line 9, column 7) is 88 °C')")).await?;
        page.wait_until("document.querySelector('.key-replayed') === null").await?;
        page.bring_weather(&good).await?;
        page.expect_replayed(&text).await?;

        page.press_button(Label::TakeYearAway).await?;
        page.wait_until(&format!("{REPLAY_SAID} === '[]' && !({REPLAYED})")).await?;
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}
