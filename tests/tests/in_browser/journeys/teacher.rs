//! A teacher in a hall without a network: everybody guesses, then they see why.

use serde_json::json;
use sunlarder_engine::outlook::{Guessed, Question};
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Page, Site, WORDS, answered, in_browser, worked};
use thirtyfour::By;

const PUPILS: [(&str, f64); 5] = [("Ada", 0.5), ("Ben", 0.9), ("", 1.1), ("Cy", 2.0), ("Di", 9.0)];

#[tokio::test]
async fn a_hall_without_a_network_guesses_and_then_sees_why() -> Outcome<()> {
    for look in Look::BOTH {
        let site = Site::of_dist().await?;
        in_browser(look, |page| async move {
            page.visit(site.address()).await?;
            page.expect_quiet().await?;
            // From here on there is nothing but what the device keeps.
            site.take_away().await?;
            page.set_offline(true).await?;
            page.reload().await?;
            page.press(By::Id("start-camper")).await?;
            page.wait_until("document.querySelector('.verdict h1') !== null").await?;
            show_the_code(&page).await?;
            ask(&page).await?;
            guess(&page).await?;
            reveal(&page).await?;
            page.expect_quiet().await
        })
        .await?;
    }
    Ok(())
}

/// As large as the screen, for a hall of phones: the question, for the link of the plan would give the answer away.
async fn show_the_code(page: &Page) -> Outcome<()> {
    page.press(By::Id("menu-share")).await?;
    let link = page.element(By::Id("question-box")).await?.prop("value").await?;
    assert!(link.as_ref().is_some_and(|own| own.contains("#guess=hours&p=")), "{link:?}");
    page.expect_sound().await?;
    let large = WORDS.label(Label::BigCode);
    let beside = WORDS.label(Label::GuessFirst);
    page.press(By::XPath(format!("//button[.=\"{beside}\"]/../button[.=\"{large}\"]"))).await?;
    let least = page.look.width.min(page.look.height) * 3 / 4;
    page.wait_until(&format!(
        "document.querySelector('dialog.whole[open] .code')?.clientWidth > {least}"
    ))
    .await?;
    assert_eq!(Some(page.read_code().await?), link);
    page.expect_sound().await?;
    page.close_dialog().await
}

/// The question hides its answer.
async fn ask(page: &Page) -> Outcome<()> {
    let (_, outlook) = answered(&page.stored_plan().await?)?;
    page.press(By::Id("menu-share")).await?;
    page.press_button(Label::GuessFirst).await?;
    page.wait_until("document.querySelector('.known') !== null").await?;
    let asked = page.element(By::Css("main.guess h1")).await?.text().await?;
    assert_eq!(asked, WORDS.asked(Guessed::Hours, outlook.month));
    assert_eq!(page.given_away(&outlook).await?, [""; 0]);
    page.expect_sound().await
}

/// What the pupils say, near and far.
async fn guess(page: &Page) -> Outcome<()> {
    let (_, outlook) = answered(&page.stored_plan().await?)?;
    let answer = Guessed::Hours.answer(&outlook).ok_or("the camper reaches its reserve")?;
    for (name, share) in PUPILS {
        page.add_guess(name, &WORDS.rounded((answer * share).round())).await?;
    }
    let said = json!(WORDS.guesses(PUPILS.len()));
    page.wait_until(&format!("document.getElementById('guess-count').textContent === {said}"))
        .await?;
    assert_eq!(page.given_away(&outlook).await?, [""; 0]);
    page.expect_sound().await
}

/// The answer with its working and everybody's guesses.
async fn reveal(page: &Page) -> Outcome<()> {
    let plan = page.stored_plan().await?;
    let (_, outlook) = answered(&plan)?;
    page.press(By::Id("reveal")).await?;
    let said = json!(WORDS.answer(Guessed::Hours, Guessed::Hours.answer(&outlook)));
    page.wait_until(&format!("document.querySelector('.answer-words')?.textContent === {said}"))
        .await?;
    let revealed = page.evaluate("document.querySelector('.revealed').textContent").await?;
    let revealed = revealed.as_str().unwrap_or_default();
    assert!(revealed.contains(&WORDS.guesses_near(Guessed::Hours, 2, PUPILS.len())), "{revealed}");
    assert!(revealed.contains("Ada") && revealed.contains(&WORDS.guesser(2)), "{revealed}");
    let dots = "document.querySelectorAll('.guess-dot').length";
    page.becomes(dots, PUPILS.len()).await?;
    let steps = "[...document.querySelectorAll('.revealed .step')].map((step) =>
        [step.querySelector('h3').textContent, step.querySelector('strong').textContent])";
    page.becomes(steps, worked(&plan, Question::Run)?).await?;
    page.expect_sound().await
}
