//! An installer who sets up a gauge: reads every setting with its working, prints the sheet of checks, types back a clamp meter that
//! disagrees, and sees the gauge being fooled.

#![allow(clippy::print_stdout, reason = "it prints what it measured")]

use sunlarder_engine::document::{Checked, Document};
use sunlarder_engine::gauge::{
    Card, Check, Course, Judged, Kind, Knob, Mistake, Note, Point, Reading, Sheet, Tried, Truth,
};
use sunlarder_engine::place::SpreadGrid;
use sunlarder_engine::sky::DAYS_PER_YEAR;
use sunlarder_engine::words::{Label, decimal};
use sunlarder_engine::working::Tag;
use sunlarder_tests::browser::{
    Look, Outcome, Page, Site, WORDS, answered, in_browser, installed, on_phone_and_laptop,
};
use thirtyfour::By;
use thirtyfour::components::SelectElement;
use thirtyfour::prelude::*;

const NOTHING: [&str; 0] = [];
/// What the card says.
const CARD: &str = "document.querySelector('#gauge-card').textContent";
/// What the simulated gauge shows.
const PLAYED: &str = "document.querySelector('#fooled .fitted').textContent";
/// Keeps what would be on paper instead of printing it.
const NOTE_PRINT: &str = "(window.print = () => {
    window.printed = document.querySelector('.sheet').textContent;
}) && null";
/// Milliseconds from a move of a slider until the picture has followed.
const MOVE: &str = "new Promise((done) => {
    const slider = document.querySelector('#slide-0'), start = performance.now();
    new MutationObserver(() => done(performance.now() - start))
        .observe(document.querySelector('#fooled .fitted'), { childList: true, subtree: true });
    slider.value = String(Number(slider.value) * 0.99);
    slider.dispatchEvent(new Event('input', { bubbles: true }));
})";

/// The card and the checks of a plan.
fn set_up(plan: &Document) -> Outcome<(Card, Sheet)> {
    let (system, outlook) = answered(plan)?;
    let card = Card::of(&system, &outlook);
    let sheet = Sheet::of_plan((plan, &system, &outlook), &card);
    Ok((card, sheet))
}

fn name(plan: &Document, check: &Check) -> String {
    WORDS.checked(&check.point, &|tag: Tag| WORDS.name_in(plan, tag))
}

/// What is said of a mistake in the plan's first weather that might be.
fn tried(plan: &Document, mistake: Mistake) -> Outcome<[String; 3]> {
    let (system, outlook) = answered(plan)?;
    let card = Card::of(&system, &outlook);
    let spread = SpreadGrid::embedded().at(system.site);
    let course = Course::of((&system, &outlook), Truth::ByMonth, (&spread, 0), DAYS_PER_YEAR);
    let Tried { wrong, .. } = mistake.tried(&card, &system, &course);
    let telltale = WORDS.mistake_shows(mistake.telltale()).to_owned();
    Ok([telltale, WORDS.trial(&wrong), WORDS.drift(&wrong)])
}

async fn open_fold(page: &Page, label: Label) -> Outcome<()> {
    let words = WORDS.label(label);
    page.press(By::XPath(format!("//div[@id='gauge']//summary[.=\"{words}\"]"))).await
}

async fn boxed(page: &Page, label: &str) -> Outcome<WebElement> {
    let path = format!("//div[@class='checked']//div[label[.=\"{label}\"]]//input");
    page.element(By::XPath(path)).await
}

async fn expect_card(page: &Page, plan: &Document) -> Outcome<()> {
    let (card, _) = set_up(plan)?;
    page.wait_until("document.querySelector('#gauge-card .run') !== null").await?;
    let said = page.evaluate(CARD).await?;
    let said = said.as_str().unwrap_or_default();
    for own in &card.settings {
        let [value, range] = WORDS.to_enter(own);
        let told = WORDS.setting(own.kind);
        for part in [&value, &range, told.name, told.why, told.high, told.low] {
            assert!(said.contains(part), "{part}: {said}");
        }
    }
    let first = "document.querySelector('#gauge-card').firstElementChild.textContent";
    page.becomes(first, WORDS.gauge_note(&Note::SheetFirst)).await
}

async fn expect_printed(page: &Page, plan: &Document) -> Outcome<()> {
    page.evaluate(NOTE_PRINT).await?;
    page.press_button(Label::PrintCommissioning).await?;
    page.wait_until("window.printed !== undefined").await?;
    let printed = page.evaluate("window.printed").await?;
    let printed = printed.as_str().unwrap_or_default();
    let (card, sheet) = set_up(plan)?;
    for own in &card.settings {
        assert!(printed.contains(&WORDS.to_enter(own)[0]), "{own:?}: {printed}");
    }
    for own in &sheet.checks {
        assert!(printed.contains(&name(plan, own)), "{own:?}: {printed}");
        if let (Some(unit), Some(expected)) = (own.point.unit(), own.expected) {
            assert!(printed.contains(&WORDS.metered(expected, unit)), "{own:?}: {printed}");
        }
    }
    Ok(())
}

/// Types back a load that the gauge does not see, and a bank that is as it should be.
async fn type_back(page: &Page, plan: &Document) -> Outcome<()> {
    let (_, sheet) = set_up(plan)?;
    let of_load = |own: &&Check| matches!(own.point, Point::LoadCurrent(_));
    let load = sheet.checks.iter().rfind(of_load).ok_or("no load is checked")?;
    let clamp = decimal(load.expected.unwrap_or_default(), 1);
    let label = name(plan, load);
    page.retype(&boxed(page, &label).await?, &clamp).await?;
    let beside = WORDS.on_gauge(sunlarder_engine::words::gauge::OnGauge::OnTheGauge);
    page.retype(&boxed(page, &format!("{label}: {beside}")).await?, "0").await?;
    let value = clamp.parse()?;
    let judged = load.judge(&Reading { value, beside: Some(0.0) });
    let judged = judged.map_err(|own| format!("{own:?}"))?;
    assert_ne!(judged, Judged::Pass);
    let told =
        "[...document.querySelectorAll('.checked > .caution')].map((own) => own.textContent)";
    let sentence = serde_json::json!(WORDS.judged(load, &judged));
    page.wait_until(&format!("{told}.includes({sentence})")).await?;
    page.retype(&boxed(page, &name(plan, &sheet.checks[0])).await?, "12.7").await?;
    let passes = serde_json::json!(WORDS.judged(&sheet.checks[0], &Judged::Pass));
    page.wait_until(&format!(
        "document.querySelector('.checked > [role=status]').textContent === {passes}"
    ))
    .await?;
    // What cannot be a reading is refused with its range, and nothing is lost.
    let polarity = boxed(page, &name(plan, &sheet.checks[0])).await?;
    page.retype(&polarity, "9000").await?;
    page.wait_until("document.querySelector('.checks .error:not(:empty)') !== null").await?;
    page.retype(&polarity, "12.7").await?;
    let read: Vec<_> = page.stored_plan().await?.checks;
    let of = |what| read.iter().find(|own| own.what == what).map(|own| (own.read, own.beside_a));
    assert_eq!(of(Checked::LoadCurrent), Some((value, Some(0.0))));
    assert_eq!(of(Checked::Polarity), Some((12.7, None)));
    Ok(())
}

async fn see_it_fooled(page: &Page, plan: &Document) -> Outcome<()> {
    open_fold(page, Label::SeeItFooled).await?;
    page.wait_until("document.querySelectorAll('#fooled svg[role=img]').length === 2").await?;
    page.expect_sound().await?;
    let mistake = Mistake::LoadAhead;
    let place = Mistake::ALL.iter().position(|own| *own == mistake).unwrap_or_default();
    let select = SelectElement::new(&page.element(By::Id("mistake")).await?).await?;
    select.select_by_value(&place.to_string()).await?;
    let expected = tried(plan, mistake)?;
    for part in &expected {
        page.wait_until(&format!("{PLAYED}.includes({})", serde_json::json!(part))).await?;
    }
    page.wait_until("document.querySelector('#knob-8').value === '30'").await?;
    // A slider by the keyboard: the figures are somebody's own now.
    let slider = page.element(By::Id("slide-0")).await?;
    slider.send_keys(Key::Left + "").await?;
    page.becomes("document.querySelector('#mistake').value", "own").await?;
    let wrong = serde_json::json!(expected[1]);
    page.wait_until(&format!("!{PLAYED}.includes({wrong})")).await?;
    let mut times = Vec::new();
    for _ in 0..5 {
        times.push(page.resolve(MOVE).await?);
    }
    println!("a move of a slider is answered after {times:?} ms");
    // A figure that cannot be is refused by name and range.
    let capacity = page.element(By::Id("knob-0")).await?;
    page.retype(&capacity, "much").await?;
    let refused = WORDS.misset_text(Knob::ALL[0].figure(), "much");
    page.wait_until(&format!("{PLAYED} === {}", serde_json::json!(refused))).await?;
    let words = WORDS.label(Label::AsATable);
    page.press(By::XPath(format!("//div[@id='fooled']//summary[.=\"{words}\"]"))).await?;
    select.select_by_value("").await?;
    page.wait_until("document.querySelectorAll('#fooled tbody tr').length === 12").await?;
    page.expect_sound().await
}

#[tokio::test]
async fn an_installer_sets_up_a_gauge_checks_it_and_sees_it_fooled() -> Outcome<()> {
    on_phone_and_laptop(async |page, address| {
        page.start_from(&installed(address), "boat").await?;
        page.open_question(Label::HowDoYouSetUpTheGauge).await?;
        let plan = page.stored_plan().await?;
        expect_card(page, &plan).await?;

        // A setting shows its working.
        let place = Kind::ALL.iter().position(|own| *own == Kind::Tail).unwrap_or_default();
        let button = format!("#gauge-card [data-fold='{place}']");
        page.press(By::Css(&button)).await?;
        let steps = format!("document.querySelectorAll(\"{button} + .run-working .step\").length");
        page.wait_until(&format!("{steps} > 1")).await?;
        page.expect_sound().await?;
        page.press(By::Css(&button)).await?;
        page.wait_until("document.querySelector('.run-working') === null").await?;

        expect_printed(page, &plan).await?;
        open_fold(page, Label::WhatWasMeasured).await?;
        type_back(page, &plan).await?;
        page.expect_sound().await?;
        page.screenshot("installer").await?;
        page.reload().await?;
        page.open_question(Label::HowDoYouSetUpTheGauge).await?;
        page.wait_until("document.querySelector('#gauge-card .run') !== null").await?;
        open_fold(page, Label::WhatWasMeasured).await?;
        page.wait_until("document.querySelector('.checked') !== null").await?;
        let (_, sheet) = set_up(&plan)?;
        let polarity = name(&plan, &sheet.checks[0]);
        assert_eq!(boxed(page, &polarity).await?.prop("value").await?.as_deref(), Some("12.7"));
        page.wait_until("document.querySelector('.checked > .caution') !== null").await?;

        see_it_fooled(page, &plan).await?;
        page.screenshot("fooled").await?;
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn the_gauge_is_accessible_in_small_windows_and_in_the_dark() -> Outcome<()> {
    let site = Site::of_dist().await?;
    let address = site.address();
    // The last is a laptop at 200 %, the one before the narrowest phone.
    let small = |width, height| Look { width, height, dark: false };
    let looks =
        [Look::PHONE.in_the_dark(), Look::DESKTOP.in_the_dark(), small(320, 640), small(640, 400)];
    for look in looks {
        in_browser(look, |page| async move {
            page.start_from(&installed(address), "cabin").await?;
            page.open_question(Label::HowDoYouSetUpTheGauge).await?;
            // What comes moves what stands below it.
            page.wait_until("document.querySelector('#gauge-card .run') !== null").await?;
            open_fold(&page, Label::WhatWasMeasured).await?;
            page.wait_until("document.querySelector('.checked') !== null").await?;
            open_fold(&page, Label::SeeItFooled).await?;
            page.wait_until("document.querySelectorAll('#fooled svg[role=img]').length === 2")
                .await?;
            page.press(By::Css("#gauge-card [data-fold='0']")).await?;
            page.wait_until("document.querySelector('#gauge .run-working .step') !== null").await?;
            page.expect_sound().await?;
            page.expect_quiet().await
        })
        .await?;
    }
    Ok(())
}
