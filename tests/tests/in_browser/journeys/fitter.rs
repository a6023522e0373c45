//! A fitter who wires a boat: states what was measured, reads every cable and fuse with its working, and prints the sheet.

use sunlarder_engine::document::{Document, Field};
use sunlarder_engine::fitting::{Basis, Fitting, Lengths, RunKind};
use sunlarder_engine::words::Label;
use sunlarder_engine::working::Tag;
use sunlarder_tests::browser::{Outcome, Page, WORDS, answered, installed, on_phone_and_laptop};
use thirtyfour::By;

const NOTHING: [&str; 0] = [];
/// What is said of the wiring.
const FITTED: &str = "document.querySelector('.fitted').textContent";
/// Keeps what would be on paper instead of printing it.
const NOTE_PRINT: &str = "(window.print = () => {
    window.printed = document.querySelector('.sheet').textContent;
}) && null";

fn wired(plan: &Document) -> Outcome<Fitting> {
    let (system, outlook) = answered(plan)?;
    let (basis, lengths) = (Basis::stated(plan), Lengths::stated(plan));
    Fitting::of(plan, &system, &outlook, &basis, &lengths).map_err(|own| format!("{own:?}").into())
}

/// Conductor and fuse of every run, as they are said.
fn said(plan: &Document, own: &Fitting) -> Vec<String> {
    let mut all = Vec::new();
    for run in &own.runs {
        all.push(WORDS.run_name(run.asked.kind, &|tag: Tag| WORDS.name_in(plan, tag)));
        match &run.wire {
            Ok(wire) => {
                all.push(WORDS.conductor(wire.gauge));
                all.extend(wire.fuse.map(|fuse| WORDS.amount(fuse.rating)));
            }
            Err(refusal) => all.push(WORDS.refusal(refusal)),
        }
    }
    all.extend(own.shopping.iter().map(|bought| WORDS.to_buy(&bought.item)));
    all
}

async fn expect_said(page: &Page, plan: &Document) -> Outcome<()> {
    let own = wired(plan)?;
    let first = WORDS
        .conductor(own.run(RunKind::Battery).ok_or("no bank")?.wire.map_err(|_| "refused")?.gauge);
    page.wait_until(&format!("{FITTED}.includes('{first}')")).await?;
    let text = page.evaluate(FITTED).await?;
    let text = text.as_str().unwrap_or_default();
    for part in said(plan, &own) {
        assert!(text.contains(&part), "{part}: {text}");
    }
    Ok(())
}

#[tokio::test]
async fn a_fitter_wires_a_boat_and_prints_the_sheet() -> Outcome<()> {
    on_phone_and_laptop(async |page, address| {
        page.start_from(&installed(address), "boat").await?;
        page.open_question(Label::HowDoYouFitIt).await?;
        page.wait_until("document.querySelector('.fitted .run') !== null").await?;
        let plan = page.stored_plan().await?;
        expect_said(page, &plan).await?;
        // The cautions stand before the results.
        let first = "document.querySelector('.fitted').firstElementChild.textContent";
        page.becomes(first, WORDS.label(Label::FittingDeference)).await?;
        page.expect_sound().await?;

        // The cable to the inverter is longer than usual, and so is the drop in it.
        let before = wired(&plan)?;
        page.press(By::XPath(format!(
            "//div[@id='fitting']//summary[.=\"{}\"]",
            WORDS.label(Label::RunLengths)
        )))
        .await?;
        page.type_into(Field::InverterRun, "4.5").await?;
        page.wait_until("document.querySelector('.fitted').textContent.includes('4.5\u{a0}m')")
            .await?;
        let mut longer = plan.clone();
        longer.wiring = Some(sunlarder_engine::document::Wiring {
            inverter_m: Some(4.5),
            ..Default::default()
        });
        let after = wired(&longer)?;
        let copper = |own: &Fitting| {
            let run = own.run(RunKind::Inverter).and_then(|run| run.wire.as_ref().ok());
            run.map(|wire| wire.gauge.metric().0)
        };
        assert!(copper(&after) > copper(&before), "{:?} {:?}", copper(&before), copper(&after));
        expect_said(page, &longer).await?;

        // Every run shows its working.
        page.press(By::Css(".run [data-fold='1']")).await?;
        page.wait_until(
            "document.querySelectorAll(\".run [data-fold='1'] + .run-working .step\").length > 3",
        )
        .await?;
        page.expect_sound().await?;
        page.press(By::Css(".run [data-fold='1']")).await?;
        page.wait_until("document.querySelector('.run-working') === null").await?;

        // A length that cannot be is refused by name and range, and nothing is lost.
        page.type_into(Field::BatteryRun, "900").await?;
        page.wait_until("document.querySelector('#fitting .error:not(:empty)') !== null").await?;
        page.type_into(Field::BatteryRun, "").await?;

        page.evaluate(NOTE_PRINT).await?;
        page.press_button(Label::PrintFitting).await?;
        page.wait_until("window.printed !== undefined").await?;
        let sheet = page.evaluate("window.printed").await?;
        let sheet = sheet.as_str().unwrap_or_default();
        for part in said(&longer, &after) {
            assert!(sheet.contains(&part), "{part}: {sheet}");
        }
        assert!(sheet.contains(WORDS.label(Label::FittingDeference)), "{sheet}");

        page.reload().await?;
        assert_eq!(page.stored_plan().await?.wiring, longer.wiring);
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}
