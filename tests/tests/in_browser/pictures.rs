//! The pictures of the worker: drawn, read by keys and by finger, told in a table, saved as files.

use std::fs;
use std::time::Duration;

use serde_json::json;
use sunlarder_engine::simulate::Sunlight;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Site, WORDS, answered, in_browser};
use thirtyfour::prelude::*;

const NOTHING: [String; 0] = [];

#[tokio::test]
async fn the_year_and_the_flow_are_drawn_read_and_told() -> Outcome<()> {
    let site = Site::of_dist().await?;
    for look in [Look::PHONE, Look::DESKTOP.in_the_dark()] {
        let address = site.address().to_owned();
        in_browser(look, |page| async move {
            page.start_from(&address, "camper").await?;
            let plan = page.stored_plan().await?;
            let (system, outlook) = answered(&plan)?;

            page.come_to("flow").await?;
            let flow = outlook.day_flow(&system, &mut Sunlight::default());
            page.expect_note("flow", &WORDS.flow(&flow)).await?;
            let sums = 2 + usize::from(flow.unmet.0 > 0.0);
            assert_eq!(page.rows("flow").await?, flow.from.len() + flow.to.len() + sums);

            page.come_to("carpet").await?;
            let year = outlook.mean_year(&system);
            let said = WORDS.year(&year, system.bank.reserve);
            page.expect_note("carpet", &said).await?;
            assert_eq!(page.rows("carpet").await?, 12);

            let reader = page.element(By::Css("#carpet .reader")).await?;
            reader.send_keys(Key::PageUp + Key::Down).await?;
            let charge = format!("{:.0} %", year.hours[30 * 24 + 1].charge * 100.0);
            let value = reader.attr("aria-valuetext").await?.unwrap_or_default();
            assert!(value.contains(&charge), "{value}: {charge}");
            assert_eq!(page.element(By::Css("#carpet .readout")).await?.text().await?, value);
            reader.send_keys(Key::Escape + "").await?;
            let hint = WORDS.label(Label::YearHint);
            assert_eq!(reader.attr("aria-valuetext").await?.as_deref(), Some(hint));

            // One year of weather is another picture.
            page.press_button(Label::OneWeatherYear).await?;
            let other = json!(said);
            page.wait_until(&format!(
                "!['', {other}].includes(document.querySelector('#carpet p.note')?.textContent ?? '')"
            ))
            .await?;
            assert_eq!(page.accessibility().await?, NOTHING);
            assert_eq!(page.overflow().await?, NOTHING);
            assert_eq!(page.complaints().await?, NOTHING);
            Ok(())
        })
        .await?;
    }
    Ok(())
}

#[tokio::test]
async fn the_first_point_of_the_curve_sets_the_charge_at_the_start() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let before = page.stored_plan().await?.start.charge_pct;
        let handle = page.element(By::Css(".curve-start")).await?;
        handle.send_keys(Key::Home + Key::PageUp + Key::Up).await?;
        assert_ne!(before, 11.0);
        page.wait_until("document.querySelector('.curve-start').ariaValueNow === '11'").await?;
        tokio::time::sleep(Duration::from_millis(500)).await;
        assert_eq!(page.stored_plan().await?.start.charge_pct, 11.0);
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn every_picture_is_saved_as_a_drawing_and_as_pixels() -> Outcome<()> {
    let site = Site::of_dist().await?;
    let folder = std::env::temp_dir().join(format!("sunlarder-pictures-{}", std::process::id()));
    fs::create_dir_all(&folder)?;
    let saved = folder.clone();
    in_browser(Look::PHONE, |page| async move {
        let behaviour = json!({ "behavior": "allow", "downloadPath": saved });
        page.devtools("Browser.setDownloadBehavior", behaviour).await?;
        page.start_from(site.address(), "camper").await?;
        for id in ["flow", "carpet"] {
            page.come_to(id).await?;
        }
        let count = page.evaluate("document.querySelectorAll('figure .save').length").await?;
        let count = usize::try_from(count.as_u64().unwrap_or_default())?;
        assert!(count >= 4, "the curve, the day, the flow, the year: {count}");
        for at in 0..count {
            for button in 0..2 {
                page.evaluate(&format!(
                    "document.querySelectorAll('figure .save')[{at}].children[{button}].click()"
                ))
                .await?;
                tokio::time::sleep(Duration::from_millis(300)).await;
            }
        }
        for _ in 0..50 {
            let whole = |entry: &fs::DirEntry| {
                entry.path().extension().is_some_and(|own| own == "svg" || own == "png")
            };
            if fs::read_dir(&saved)?.flatten().filter(whole).count() == 2 * count {
                break;
            }
            tokio::time::sleep(Duration::from_millis(200)).await;
        }
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await?;
    let (mut drawings, mut photos) = (0, 0);
    for entry in fs::read_dir(&folder)? {
        let path = entry?.path();
        let bytes = fs::read(&path)?;
        match path.extension().and_then(|own| own.to_str()) {
            Some("svg") => {
                let text = String::from_utf8(bytes)?;
                assert!(text.starts_with("<svg") && text.contains("<path"), "{path:?}");
                assert!(!text.contains("NaN") && !text.contains("undefined"), "{path:?}");
                assert!(!text.contains("var(--"), "{path:?}: it stands alone");
                drawings += 1;
            }
            Some("png") => {
                assert!(bytes.starts_with(b"\x89PNG") && bytes.len() > 20_000, "{path:?}");
                photos += 1;
            }
            _ => return Err(format!("{}", path.display()).into()),
        }
    }
    assert!(drawings >= 4 && drawings == photos, "{drawings} {photos}");
    fs::remove_dir_all(folder)?;
    Ok(())
}
