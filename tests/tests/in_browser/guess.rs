//! Guess first: nothing of the answer is on the page before it is revealed.

use serde_json::json;
use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::{Guessed, Outlook};
use sunlarder_engine::share;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Site, WORDS, answered, in_browser};
use sunlarder_tests::plans::EXAMPLES;
use thirtyfour::prelude::*;

const NOTHING: [String; 0] = [];

fn camper() -> Outcome<(Document, Outlook)> {
    let (_, text) = EXAMPLES.iter().find(|(name, _)| *name == "camper").ok_or("no camper")?;
    let plan = Document::from_json(text).map_err(|problem| WORDS.problem(&problem, &|_| None))?;
    let (_, outlook) = answered(&plan)?;
    Ok((plan, outlook))
}

#[tokio::test]
async fn a_question_hides_its_answer_until_it_is_revealed() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        let (plan, outlook) = camper()?;
        let code = share::encode(&plan).map_err(|problem| WORDS.problem(&problem, &|_| None))?;
        page.open(&format!("{}#guess=hours&p={code}", site.address())).await?;
        page.wait_until("document.querySelector('.known') !== null").await?;
        let hidden = page.given_away(&outlook).await?;
        assert_eq!(hidden, NOTHING);
        assert_eq!(page.overflow().await?, NOTHING);
        assert_eq!(page.accessibility().await?, NOTHING);
        page.reload().await?;
        page.wait_until("document.querySelector('.known') !== null").await?;
        assert_eq!(page.given_away(&outlook).await?, NOTHING, "loading it anew hides it still");

        let answer = Guessed::Hours.answer(&outlook).ok_or("the camper reaches its reserve")?;
        let guesses =
            [0.5, 0.9, 1.1, 2.0, 40.0].map(|share| WORDS.rounded((answer * share).round()));
        for (name, guess) in ["Ada", "", "Ben", "Cy", "Di"].iter().zip(&guesses) {
            page.add_guess(name, guess).await?;
        }
        page.add_guess("", "many").await?;
        let fault = json!(WORDS.guess_refused(Guessed::Hours, "many"));
        page.wait_until(&format!(
            "document.querySelector('.guess > .error').textContent === {fault}"
        ))
        .await?;
        let count = "document.querySelectorAll('.guesses > li').length";
        page.becomes(count, 5).await?;
        assert_eq!(page.given_away(&outlook).await?, NOTHING);
        assert_eq!(page.accessibility().await?, NOTHING);

        page.press(By::Id("reveal")).await?;
        let said = json!(WORDS.answer(Guessed::Hours, Some(answer)));
        page.wait_until(&format!(
            "document.querySelector('.answer-words')?.textContent === {said}"
        ))
        .await?;
        page.becomes("document.querySelectorAll('.guess-dot').length", 5).await?;
        let near = WORDS.guesses_near(Guessed::Hours, 2, 5);
        let text = page.evaluate("document.querySelector('.revealed').textContent").await?;
        assert!(text.as_str().is_some_and(|text| text.contains(&near)), "{text}");
        assert_eq!(
            page.evaluate("document.querySelectorAll('.revealed .step').length > 0").await?,
            true
        );
        assert_eq!(page.overflow().await?, NOTHING);
        assert_eq!(page.accessibility().await?, NOTHING);

        page.press(By::Id("reveal")).await?;
        page.wait_until(&format!("{count} === 5")).await?;
        assert_eq!(page.given_away(&outlook).await?, NOTHING, "hidden again, it is gone");
        page.press_button(Label::BackToPlan).await?;
        page.wait_until("document.querySelector('.verdict h1') !== null && location.hash === ''")
            .await?;
        assert_eq!(page.complaints().await?, NOTHING);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_plan_is_asked_as_a_question_of_any_kind() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE.in_the_dark(), |page| async move {
        let (_, outlook) = camper()?;
        page.start_from(site.address(), "camper").await?;
        page.press(By::Id("menu-share")).await?;
        assert_eq!(page.accessibility().await?, NOTHING);
        let link = "document.querySelector('#question-box').value";
        page.wait_until(&format!("{link}.includes('#guess=hours&p=')")).await?;
        page.press_button(Label::GuessFirst).await?;
        page.wait_until("document.querySelector('.known') !== null").await?;
        assert_eq!(page.given_away(&outlook).await?, NOTHING);
        let month = WORDS.label(Label::GuessMonth);
        page.press(By::XPath(format!("//fieldset//label[normalize-space(.)=\"{month}\"]"))).await?;
        page.wait_until("document.querySelector('.guess select') !== null && location.hash.includes('guess=month')")
            .await?;
        page.press_button(Label::AddGuess).await?;
        page.press(By::Id("reveal")).await?;
        let said = json!(WORDS.answer(Guessed::Month, Guessed::Month.answer(&outlook)));
        page.wait_until(&format!("document.querySelector('.answer-words')?.textContent === {said}"))
            .await?;
        assert_eq!(page.overflow().await?, NOTHING);
        assert_eq!(page.accessibility().await?, NOTHING);
        Ok(())
    })
    .await
}
