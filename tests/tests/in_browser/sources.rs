//! What charges beside the sun: a generator and a turbine, from the page into the plan and its answers.

use sunlarder_engine::document::{Field, TurbineOutput};
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Shown, Site, WORDS, in_browser};

#[tokio::test]
async fn a_generator_and_a_turbine_come_into_the_plan() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "cabin").await?;
        page.open_question(Label::WhatComesIn).await?;
        page.flip(Label::ThereIsAGenerator).await?;
        page.type_into(Field::GeneratorStart, "45").await?;
        page.type_into(Field::MinimumRun, "90").await?;
        page.type_into(Field::FuelPerHour, "0.4").await?;
        let month = "document.body.textContent.includes(' a day, ')";
        page.wait_until(month).await?;
        let generator = page.stored_plan().await?.generator.unwrap_or_default();
        let kept = (generator.start_pct, generator.minimum_run_min, generator.fuel_l_per_h);
        assert_eq!(kept, (45.0, 90.0, Some(0.4)));

        page.flip(Label::ThereIsATurbine).await?;
        page.flip(Label::ByHour).await?;
        let boxes = "document.querySelectorAll('.field').length > 36";
        page.wait_until(boxes).await?;
        let turbine = page.stored_plan().await?.turbine.unwrap_or_default();
        assert!(matches!(turbine.output, TurbineOutput::MeanW(_)) && turbine.hours.is_some());

        let shown = page.shown().await?;
        assert_eq!(shown, Shown::expected(&page.stored_plan().await?)?);
        assert_eq!(page.overflow().await?, Vec::<String>::new());
        assert_eq!(page.accessibility().await?, Vec::<String>::new());
        page.screenshot("sources_generator_and_turbine").await?;
        let answer =
            format!("document.body.textContent.includes('{}')", WORDS.label(Label::Turbine));
        page.wait_until(&answer).await?;
        Ok(())
    })
    .await
}
