//! A dealer with three offers for one cabin: each against the first, two side by side, and the sheet of the one chosen.

use serde_json::json;
use sunlarder_engine::document::Field;
use sunlarder_engine::outlook::Figure;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{A4, LETTER, Outcome, Page, WORDS, answered, on_phone_and_laptop};
use thirtyfour::By;

/// The offers, by how many strings of batteries are in parallel.
const OFFERS: [(&str, &str); 3] =
    [("Cabin, light", "1"), ("Cabin, two strings", "2"), ("Cabin, winter", "4")];

#[tokio::test]
async fn a_dealer_compares_three_offers_and_prints_the_chosen_one() -> Outcome<()> {
    on_phone_and_laptop(async |page, address| {
        page.start_from(address, "cabin").await?;
        let customer = page.stored_plan().await?;
        page.press_button(Label::KeepAsBaseline).await?;
        page.expect_against("fact-usable", &WORDS.than(Figure::Usable, 0.0, "")).await?;

        let (system, outlook) = answered(&customer)?;
        let before = outlook.figure(&system, Figure::Usable).ok_or("nothing to use")?;
        for (name, strings) in OFFERS {
            assert_eq!(page.make_variant(Some(name)).await?, name);
            page.open_question(Label::WhatDoYouStore).await?;
            page.paste_into(Field::InParallel, strings).await?;
            let mut offer = customer.clone();
            offer.bank.in_parallel = strings.parse()?;
            let (system, outlook) = answered(&offer)?;
            let more = outlook.figure(&system, Figure::Usable).ok_or("nothing to use")? - before;
            let said = WORDS.than(Figure::Usable, more, &customer.name);
            page.expect_against("fact-usable", &said).await?;
        }
        page.wait_until(
            "document.querySelector('.baseline-line')?.getAttribute('d').length > 100
                && document.querySelector('.key-baseline') !== null",
        )
        .await?;
        page.expect_sound().await?;

        choose_the_middle_one(page).await?;
        lay_beside_the_first(page).await?;
        print_the_offer(page).await
    })
    .await
}

/// All offers stand together under the plan of the customer.
async fn choose_the_middle_one(page: &Page) -> Outcome<()> {
    page.press(By::Id("menu-plans")).await?;
    let rows = "document.querySelectorAll('dialog[open] #variants > li').length";
    page.wait_until(&format!("{rows} === {}", OFFERS.len() + 1)).await?;
    page.expect_sound().await?;
    page.close_dialog().await?;
    page.switch_to(OFFERS[1].0).await?;
    assert_eq!(page.shown().await?.name, OFFERS[1].0);
    assert_eq!(page.stored_plan().await?.bank.in_parallel, 2.0);
    Ok(())
}

/// Two plans with every figure of both, and the one thing that differs.
async fn lay_beside_the_first(page: &Page) -> Outcome<()> {
    page.press_button(Label::Compare).await?;
    page.expect_sound().await?;
    let beside = WORDS.label(Label::SideBySide);
    let name = OFFERS[2].0;
    page.press(By::XPath(format!(
        "//dialog[@open]//li[span[.=\"{name}\"]]//button[.=\"{beside}\"]"
    )))
    .await?;
    page.wait_until("document.querySelectorAll('.beside-plan').length === 2").await?;
    let tops = "[...document.querySelectorAll('.beside-plan')].map((own) => own.getBoundingClientRect().top)";
    let apart = page.evaluate(&format!("Math.abs({tops}[0] - {tops}[1]) < 1")).await?;
    assert_eq!(apart, page.look.width >= 1100, "beside each other where there is room");
    let rows = |table: usize| {
        format!(
            "document.querySelectorAll('.beside table')[{table}].querySelectorAll('tbody tr').length"
        )
    };
    page.becomes(&rows(0), Figure::ALL.len()).await?;
    page.becomes(&rows(1), 1).await?;
    let differs = "document.querySelectorAll('.beside table')[1].textContent";
    let differs = page.evaluate(differs).await?;
    let differs = differs.as_str().unwrap_or_default();
    assert!(differs.contains(WORDS.field(Field::InParallel)), "{differs}");
    page.expect_sound().await?;
    page.press_button(Label::BackToPlan).await?;
    page.wait_until("document.querySelector('.verdict h1') !== null").await
}

/// The sheet that is handed over: this offer, with its verdict and the code of its link.
async fn print_the_offer(page: &Page) -> Outcome<()> {
    let plan = page.stored_plan().await?;
    let (_, outlook) = answered(&plan)?;
    for paper in [A4, LETTER] {
        let (sheets, seen) = page.print_sheet(paper).await?;
        assert!((1..=2).contains(&sheets), "{sheets} sheets of {paper:?}");
        let said = seen["text"].as_str().unwrap_or_default();
        let headline = WORDS.headline(&outlook).text();
        assert!(said.contains(&plan.name) && said.contains(&headline), "{said}");
        assert_eq!((&seen["codes"], &seen["places"]), (&json!(1), &json!(2)));
    }
    Ok(())
}
