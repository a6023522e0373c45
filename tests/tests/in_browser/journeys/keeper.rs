//! An owner who keeps a logbook: types a reading, pastes a week, is told of a current past the shunt, and takes over what was learned.

use std::time::Duration;

use chrono::NaiveDate;
use sunlarder_engine::digits;
use sunlarder_engine::document::{Document, Field, List, LoggedCharge};
use sunlarder_engine::logbook::{
    Adoption, GaugeSetUp, Reading, Readings, Shown, Study, Symptom, What, adoptable, suspects,
};
use sunlarder_engine::place::SpreadGrid;
use sunlarder_engine::system::System;
use sunlarder_engine::words::logbook::OnLogbook;
use sunlarder_engine::words::{Label, decimal};
use sunlarder_tests::browser::{Outcome, Page, WORDS, answered, installed, on_phone_and_laptop};
use sunlarder_tests::logkeeper::{Fault, Stage};
use sunlarder_tests::plans::EXAMPLES;
use thirtyfour::By;

const NOTHING: [&str; 0] = [];
/// What is said of the readings.
const WEIGHED: &str = "document.querySelector('.weighed').textContent";
/// What is said of a table.
const TAKEN: &str = "document.querySelector('.taken').textContent";

fn stage(name: &str) -> Outcome<Stage> {
    let text = EXAMPLES.iter().find(|own| own.0 == name).ok_or("no such example")?.1;
    Ok(Stage::new(text, NaiveDate::from_ymd_opt(2026, 9, 7).ok_or("no such day")?))
}

/// Readings as a table of a spreadsheet.
fn table(readings: &[Reading]) -> String {
    let mut text = "date,time,percent,volts,amps\n".to_owned();
    for own in readings {
        let Some(Shown::Percent(shown)) = own.shown else { continue };
        let (volts, amps) = (own.volts.unwrap_or_default().0, own.amps.unwrap_or_default().0);
        text.push_str(&format!("{},{},{},{volts},{amps}\n", own.at.date(), own.at.time(), shown.0));
    }
    text
}

/// What the engine says of the readings of a plan, by the spreads as the page sends them.
fn studied(plan: &Document) -> Outcome<(System, Study)> {
    let (system, _) = answered(plan)?;
    let spread = SpreadGrid::embedded().at(system.site);
    let spread = spread.map(|own| digits::number(&decimal(own, 9)).unwrap_or_default());
    let (readings, _) = Readings::stated(plan, &system);
    let study = Study::of(&system, &spread, &GaugeSetUp::stated(plan, &system), &readings);
    Ok((system, study))
}

/// Whether a plan would take more use over from readings.
fn tells_of_use(plan: &Document, readings: &[Reading]) -> bool {
    let mut plan = plan.clone();
    let logbook = plan.logbook.get_or_insert_default();
    readings.iter().filter_map(|own| own.logged().ok()).for_each(|own| logbook.add(own));
    studied(&plan).is_ok_and(|(system, study)| {
        matches!(adoptable(&study, &system)[..], [Adoption::Use(_), ..])
    })
}

async fn open(page: &Page) -> Outcome<()> {
    page.open_question(Label::DoesGaugeAgree).await
}

async fn unfold(page: &Page, label: Label) -> Outcome<()> {
    let fold = format!("//div[@id='logbook']//summary[.=\"{}\"]", WORDS.label(label));
    page.press(By::XPath(fold)).await
}

/// Puts a text into the box for a table, as by pasting, and presses the button.
async fn paste(page: &Page, text: &str) -> Outcome<()> {
    // A fold is filled a moment after it opened.
    page.element(By::Id("table")).await?;
    let text = serde_json::to_string(text)?;
    page.evaluate(&format!(
        "(() => {{ const box = document.getElementById('table'); box.value = {text};
            box.dispatchEvent(new Event('input', {{ bubbles: true }})); }})()"
    ))
    .await?;
    page.press_button(Label::TakeReadings).await
}

async fn kept(page: &Page, count: usize) -> Outcome<Document> {
    for _ in 0..60 {
        let plan = page.stored_plan().await?;
        if plan.logbook.as_ref().map_or(0, |own| own.readings.len()) == count {
            return Ok(plan);
        }
        tokio::time::sleep(Duration::from_millis(200)).await;
    }
    Err(format!("there are never {count} readings").into())
}

async fn expect_weighed(page: &Page, sentence: &str) -> Outcome<()> {
    let sentence = serde_json::to_string(sentence)?;
    page.wait_until(&format!("{WEIGHED}.includes({sentence})")).await
}

#[tokio::test]
async fn an_owner_pastes_a_week_and_is_told_of_a_bypass() -> Outcome<()> {
    on_phone_and_laptop(async |page, address| {
        let stage = stage("stall")?;
        let readings = stage.keep(Fault::Bypass(2.0), 0).readings;
        page.start_from(&installed(address), "stall").await?;
        open(page).await?;
        expect_weighed(page, WORDS.label(Label::NoReadings)).await?;
        page.expect_sound().await?;

        // A table with a line that is wrong: the rest is taken, the line is named and stays in the box.
        unfold(page, Label::GaugeWasTold).await?;
        page.type_into(Field::ToldCapacity, &decimal(stage.full, 1)).await?;
        unfold(page, Label::PasteReadings).await?;
        let week = table(&readings[..14]);
        paste(page, &format!("{week}2026-09-14,7:00,high,12.6,-1\n")).await?;
        page.wait_until(&format!("{TAKEN}.includes('Readings added: 14.')")).await?;
        page.wait_until(&format!("{TAKEN}.includes('Line 16:')")).await?;
        page.wait_until("document.getElementById('table').value.includes('high')").await?;
        let plan = kept(page, 14).await?;
        let (system, study) = studied(&plan)?;
        let bypass = study.get(What::Bypass).ok_or("nothing of a bypass")?;
        assert!(bypass.alarm && bypass.estimate.holds(2.0), "{bypass:?}");
        expect_weighed(page, &WORDS.learned(bypass, None)).await?;
        let first = "document.querySelector('.weighed .found').textContent";
        let found = page.evaluate(first).await?;
        assert!(found.as_str().unwrap_or_default().contains(&WORDS.learned(bypass, None)));
        let caution = "document.querySelector('.weighed .caution').textContent";
        page.becomes(caution, WORDS.measuring_caution()).await?;
        page.expect_sound().await?;

        // It shows its working.
        page.press(By::Css(".weighed .found [data-fold]")).await?;
        page.wait_until("document.querySelector('.weighed .found .run-working .step') !== null")
            .await?;
        page.expect_sound().await?;
        page.press(By::Css(".weighed .found [data-fold]")).await?;

        // What is behind a gauge that is never full, by these readings.
        let (_, outlook) = answered(&plan)?;
        let ranked = suspects(Symptom::NeverFull, &system, &outlook, Some(&study));
        page.evaluate(
            "(() => { const list = document.querySelector('#logbook > div select');
                list.value = '1'; list.dispatchEvent(new Event('change', { bubbles: true })); })()",
        )
        .await?;
        let likeliest = "document.querySelector('.suspects > li > b')?.textContent";
        page.becomes(likeliest, WORDS.cause(ranked.first().ok_or("no cause")?.cause)).await?;
        unfold(page, Label::CareOfBank).await?;
        let care = WORDS.on_logbook(OnLogbook::LayUp);
        page.wait_until(&format!(
            "document.querySelector('#logbook').textContent.includes('{care}')"
        ))
        .await?;
        page.expect_sound().await?;

        // All of it is there again after a reload; a reading is taken away, and brought back.
        page.reload().await?;
        assert_eq!(kept(page, 14).await?.logbook, plan.logbook);
        open(page).await?;
        expect_weighed(page, &WORDS.learned(bypass, None)).await?;
        unfold(page, Label::ReadingsOfGauge).await?;
        page.press(By::Css("[data-remove='13']")).await?;
        kept(page, 13).await?;
        page.undo_in_notice().await?;
        kept(page, 14).await?;
        page.expect_sound().await?;

        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_reading_is_typed_in_seconds_and_a_wrong_one_is_refused() -> Outcome<()> {
    on_phone_and_laptop(async |page, address| {
        page.start_from(&installed(address), "sailor").await?;
        open(page).await?;
        let today = "document.getElementById('reading-date').value";
        let device = "(d => `${d.getFullYear()}-${String(d.getMonth() + 1).padStart(2, '0')}-${String(d.getDate()).padStart(2, '0')}`)(new Date())";
        page.wait_until(&format!("{today} === {device}")).await?;
        page.set_moment("reading-date", "2026-09-07").await?;
        page.set_moment("reading-time", "07:05").await?;
        page.type_into(Field::ReadPercent, "81,5").await?;
        page.type_into(Field::ReadVolts, "12.64").await?;
        let amps = page.number_box(Field::ReadAmps).await?;
        amps.send_keys("−3.2\u{e007}").await?;
        let plan = kept(page, 1).await?;
        let own = plan.logbook.as_ref().and_then(|own| own.readings.first()).ok_or("none")?;
        assert_eq!((own.date.to_string(), own.time.to_string()), ("2026-09-07".into(), "07:05".into()));
        assert_eq!((own.shown, own.volts, own.amps), (LoggedCharge::Percent(81.5), Some(12.64), Some(-3.2)));
        page.becomes("document.querySelector('#reading input[inputmode]').value", "").await?;

        // Nothing noted, a figure out of range, a text: each is told, and nothing is added.
        page.press_button(Label::AddReading).await?;
        page.becomes("document.querySelector('#reading > .error').textContent", WORDS.label(Label::ReadingNeeds)).await?;
        page.type_into(Field::ReadPercent, "120").await?;
        page.press_button(Label::AddReading).await?;
        let fault = page.fault_of(Field::ReadPercent).await?;
        assert!(fault.contains("120") && fault.contains("100"), "{fault}");
        page.becomes("document.activeElement.value", "120").await?;
        page.expect_sound().await?;
        page.type_into(Field::ReadPercent, "").await?;

        // A voltage that this bank cannot have is kept, and told as not used.
        page.type_into(Field::ReadVolts, "52").await?;
        page.press_button(Label::AddReading).await?;
        let plan = kept(page, 2).await?;
        let wrong = plan.logbook.as_ref().and_then(|own| own.readings.last()).ok_or("none")?;
        let (system, _) = answered(&plan)?;
        let (_, slips) = Readings::stated(&plan, &system);
        let (_, slip) = slips.first().ok_or("no slip")?;
        expect_weighed(page, &WORDS.slip_at(Reading::from(wrong).at, slip)).await?;

        // All of them go with one press and come back with another.
        unfold(page, Label::ReadingsOfGauge).await?;
        page.dismiss_notice().await?;
        page.press_button(Label::RemoveReadings).await?;
        assert_eq!(kept(page, 0).await?.logbook, None);
        page.undo_in_notice().await?;
        kept(page, 2).await?;

        // No text, another's text, two thousand lines.
        unfold(page, Label::PasteReadings).await?;
        page.wait_until("document.getElementById('table').closest('.inside') !== null").await?;
        paste(page, "Dear diary, the lights went dim at nine.").await?;
        page.wait_until(&format!("{TAKEN}.includes('Readings added: 0.')")).await?;
        let start = NaiveDate::from_ymd_opt(2026, 8, 1).and_then(|own| own.and_hms_opt(0, 0, 0)).ok_or("no day")?;
        let huge: String = (0..2000).map(|at| format!("{},{},12.5,1\n", start + chrono::TimeDelta::hours(at), at % 90)).collect();
        paste(page, &huge).await?;
        page.wait_until(&format!("{TAKEN}.includes('Readings added: 2000.')")).await?;
        kept(page, List::Readings.limit()).await?;
        page.wait_until(&format!("{TAKEN}.includes('The oldest 1602 found no room')")).await?;
        page.wait_until("document.querySelector('.weighed .found') !== null").await?;
        page.expect_sound().await?;
        // There is no room for one more.
        page.type_into(Field::ReadVolts, "12.5").await?;
        page.press_button(Label::AddReading).await?;
        page.wait_until("document.querySelector('#reading > .error').textContent.includes('400')").await?;
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn what_was_learned_is_taken_over_into_a_variant() -> Outcome<()> {
    on_phone_and_laptop(async |page, address| {
        let stage = stage("sailor")?;
        page.start_from(&installed(address), "sailor").await?;
        open(page).await?;
        unfold(page, Label::PasteReadings).await?;
        let bare = page.stored_plan().await?;
        // Not every fortnight tells: the first that does.
        let fortnight = (0..20)
            .map(|seed| stage.keep(Fault::Consumption(1.3), seed).readings)
            .find(|own| tells_of_use(&bare, own));
        paste(page, &table(&fortnight.ok_or("no fortnight tells")?)).await?;
        let plan = kept(page, 28).await?;
        page.becomes("document.getElementById('table').value", "").await?;
        let (system, study) = studied(&plan)?;
        let adoptions = adoptable(&study, &system);
        let [Adoption::Use(share), ..] = adoptions[..] else {
            return Err(format!("{adoptions:?}").into());
        };
        for own in &adoptions {
            expect_weighed(page, &WORDS.adoption(own)).await?;
        }
        page.press_button(Label::AdoptLearned).await?;
        let name = format!("{} · {}", plan.name, WORDS.label(Label::AsRead));
        let mut adopted = page.stored_plan().await?;
        for _ in 0..60 {
            if adopted.name == name {
                break;
            }
            tokio::time::sleep(Duration::from_millis(200)).await;
            adopted = page.stored_plan().await?;
        }
        assert_eq!(adopted.name, name);
        let mut told = plan.clone();
        for own in &adoptions {
            own.write(&mut told);
        }
        assert_eq!((&adopted.loads, &adopted.bank), (&told.loads, &told.bank));
        let newest = plan.logbook.as_ref().and_then(|own| own.readings.last()).ok_or("none")?;
        assert_eq!((adopted.start.date, adopted.start.time), (newest.date, newest.time));
        let used = |plan: &Document| -> Outcome<f64> { Ok(answered(plan)?.1.budget.total.0) };
        let moved = Document { start: adopted.start.clone(), ..plan.clone() };
        let ratio = used(&adopted)? / used(&moved)?;
        assert!((ratio / share - 1.0).abs() < 0.02, "{ratio} {share}");
        // It is held against the plan that it came from.
        page.wait_until("document.querySelector('#against').textContent !== ''").await?;
        page.expect_sound().await?;
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}
