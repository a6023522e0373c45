//! Entering loads: found by everyday words, drawn hours, groups, moves, and what is mended with one press.

use serde_json::json;
use sunlarder_engine::document::{Field, When};
use sunlarder_engine::load::catalogue::Appliance;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Page, Site, WORDS, in_browser};
use thirtyfour::prelude::*;

/// The middle of an element, after it was brought to the middle of the window.
async fn middle(page: &Page, selector: &str) -> Outcome<(f64, f64, f64)> {
    let quoted = serde_json::to_string(selector)?;
    let found = page
        .evaluate(&format!(
            "(() => {{ const own = document.querySelector({quoted});
                own.scrollIntoView({{ block: 'center', behavior: 'instant' }});
                const at = own.getBoundingClientRect();
                return [at.left, at.top + at.height / 2, at.width]; }})()"
        ))
        .await?;
    let number = |at: usize| found[at].as_f64().ok_or("no such element");
    Ok((number(0)?, number(1)?, number(2)?))
}

/// A press that is dragged from one point to another, as of a mouse.
async fn drag(page: &Page, from: (f64, f64), to: (f64, f64)) -> Outcome<()> {
    let points = (0..=4).map(|part| {
        let share = f64::from(part) / 4.0;
        (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share)
    });
    let points: Vec<(f64, f64)> = points.collect();
    let mouse = async |kind: &str, (x, y): (f64, f64), buttons: u8| {
        let event = json!({
            "type": kind, "x": x, "y": y, "button": "left", "buttons": buttons, "clickCount": 1
        });
        page.devtools("Input.dispatchMouseEvent", event).await
    };
    mouse("mousePressed", from, 1).await?;
    for point in &points {
        mouse("mouseMoved", *point, 1).await?;
    }
    mouse("mouseReleased", to, 0).await?;
    Ok(())
}

/// The same of a finger.
async fn swipe(page: &Page, from: (f64, f64), to: (f64, f64)) -> Outcome<()> {
    let touch = async |kind: &str, points: serde_json::Value| {
        page.devtools("Input.dispatchTouchEvent", json!({ "type": kind, "touchPoints": points }))
            .await
    };
    touch("touchStart", json!([{ "x": from.0, "y": from.1 }])).await?;
    for part in 1..=8 {
        let share = f64::from(part) / 8.0;
        let (x, y) = (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share);
        touch("touchMove", json!([{ "x": x, "y": y }])).await?;
    }
    touch("touchEnd", json!([])).await?;
    Ok(())
}

#[tokio::test]
async fn several_are_added_in_a_row_and_come_into_view() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "boat").await?;
        let before = page.settled().await?.1.loads.len();
        let kettle = WORDS.appliance(Appliance::Kettle);
        // One letter is missing.
        page.add_from_catalogue("ketle").await?;
        page.wait_for_notice(&WORDS.added(kettle)).await?;
        page.press(By::Css("#found > .results [data-load]")).await?;
        let (_, shown) = page.settled().await?;
        assert_eq!(shown.loads[before..], [kettle, kettle]);
        let in_view =
            "(() => { const at = document.querySelector('li.load.fresh').getBoundingClientRect();
            return at.top >= 0 && at.bottom <= innerHeight; })()";
        page.wait_until(in_view).await?;

        // Enter takes what is found for what was just typed.
        let search = page.element(By::Id("search-appliance")).await?;
        search.clear().await?;
        search.send_keys("charger phone").await?;
        search.send_keys(Key::Enter + "").await?;
        let phone = WORDS.appliance(Appliance::PhoneCharger);
        page.wait_for_notice(&WORDS.added(phone)).await?;
        assert_eq!(page.settled().await?.1.loads[before..], [kettle, kettle, phone]);
        page.undo_in_notice().await?;
        assert_eq!(page.settled().await?.1.loads[before..], [kettle, kettle]);

        search.send_keys(Key::Escape + "").await?;
        page.wait_until("document.activeElement.id === 'add-something'").await?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn hours_are_drawn_with_a_finger_and_with_keys() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        page.open_load(0).await?;
        page.press_button(Label::Evening).await?;
        let spans = async || -> Outcome<String> {
            match &page.settled().await?.0.loads[0].schedule.when {
                When::Spans(spans) => {
                    Ok(spans.iter().map(ToString::to_string).collect::<Vec<_>>().join(" "))
                }
                other => Err(format!("{other:?}").into()),
            }
        };
        assert_eq!(spans().await?, "18:00-22:00");

        let (left, y, width) = middle(&page, ".strip").await?;
        let at = |hour: f64| (left + width * hour / 24.0, y);
        let top = "Math.round(document.querySelector('.strip').getBoundingClientRect().top)";
        let before = page.evaluate(top).await?;
        swipe(&page, at(6.2), (at(9.8).0, y + 40.0)).await?;
        assert_eq!(spans().await?, "06:00-10:00 18:00-22:00");
        assert_eq!(page.evaluate(top).await?, before, "the strip stays under the finger");
        // On what is painted a stroke erases, from right to left too.
        drag(&page, at(20.2), at(19.2)).await?;
        assert_eq!(spans().await?, "06:00-10:00 18:00-19:00 20:30-22:00");

        let strip = page.element(By::Css(".strip")).await?;
        strip.focus().await?;
        strip.send_keys(Key::Home + " ").await?;
        strip.send_keys(Key::Shift + Key::Right + Key::Right).await?;
        assert_eq!(spans().await?, "00:00-00:45 06:00-10:00 18:00-19:00 20:30-22:00");
        let said = strip.attr("aria-valuetext").await?;
        assert_eq!(said, Some(WORDS.on_at("00:30", "00:45", true)));
        page.becomes("document.querySelectorAll('.strip > .night').length", 2).await?;
        Ok(())
    })
    .await
}

async fn give_group(page: &Page, place: usize, group: &str) -> Outcome<()> {
    page.press(By::Css(format!("li.load[data-place='{place}'] > .load-open"))).await?;
    let name = page.element(By::Css(format!("li.load[data-place='{place}'] input[list]"))).await?;
    name.send_keys(group).await?;
    name.send_keys(Key::Tab + "").await?;
    Ok(())
}

#[tokio::test]
async fn groups_stand_together_and_stay_at_home_together() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let all = page.settled().await?.1;
        give_group(&page, 2, "Galley").await?;
        give_group(&page, 4, "Galley").await?;
        let places = "[...document.querySelectorAll('ul.loads:not(.own-loads) > li')].map((own) =>
            own.dataset.place ?? own.querySelector('.load-name').textContent).slice(0, 4)";
        let none = WORDS.label(Label::NoGroup);
        page.becomes(places, json!(["Galley", "2", "4", none])).await?;

        page.press(By::Css("li.group > .take")).await?;
        let (plan, at_home) = page.settled().await?;
        let off: Vec<usize> = (0..plan.loads.len()).filter(|at| !plan.loads[*at].on).collect();
        assert_eq!(off, [2, 4]);
        assert_ne!(at_home.facts, all.facts);
        page.wait_for_notice(&WORDS.group_switched("Galley", false)).await?;
        page.undo_in_notice().await?;
        assert_eq!(page.settled().await?.1.facts, all.facts);

        page.press(By::Css("li.group > .group-open")).await?;
        page.becomes(places, json!(["Galley", none, "0", "1"])).await?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn loads_are_moved_by_their_grip_and_keep_the_focus() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::DESKTOP, |page| async move {
        page.start_from(site.address(), "camper").await?;
        let start = page.settled().await?.1.loads;
        let grip = page.element(By::Css("li.load[data-place='0'] > .grip")).await?;
        grip.focus().await?;
        grip.send_keys(Key::Down + "").await?;
        page.wait_until("document.activeElement.matches(\"li.load[data-place='1'] > .grip\")").await?;
        let moved = page.settled().await?.1.loads;
        assert_eq!(moved[..2], [start[1].clone(), start[0].clone()]);

        let (left, y, width) = middle(&page, "li.load[data-place='2'] > .grip").await?;
        let top = page
            .evaluate("document.querySelector(\"li.load[data-place='0'] .load-open\").getBoundingClientRect().top")
            .await?;
        let x = left + width / 2.0;
        drag(&page, (x, y), (x, top.as_f64().unwrap_or_default() + 3.0)).await?;
        let dragged = page.settled().await?.1.loads;
        assert_eq!(dragged[..3], [start[2].clone(), start[1].clone(), start[0].clone()]);

        page.press_button(Label::LargestFirst).await?;
        let (plan, _) = page.settled().await?;
        page.press(By::Id("menu-undo")).await?;
        assert_eq!(page.settled().await?.1.loads, dragged);
        assert_ne!(plan.loads, page.stored_plan().await?.loads);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_missing_inverter_is_added_with_one_press() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "blank").await?;
        page.add_from_catalogue("kettle").await?;
        page.press(By::Css(".outlook [data-inverter]")).await?;
        page.wait_until("document.querySelector('[data-inverter]') === null").await?;
        let (plan, _) = page.settled().await?;
        let rated = plan.inverter.as_ref().map(|own| own.rated_w);
        assert_eq!(rated, Some(2500.0), "a quarter more than the kettle's 2000 W");
        page.undo_in_notice().await?;
        assert!(page.settled().await?.0.inverter.is_none());
        page.element(By::Css(".outlook [data-inverter]")).await?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_wrong_entry_is_told_at_the_top_and_led_to() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        page.open_question(Label::WhatDoYouStore).await?;
        page.paste_into(Field::InSeries, "2.5").await?;
        let fault = page.fault_of(Field::InSeries).await?;
        assert_eq!(fault, WORDS.whole_number(Field::InSeries, "2.5"));
        let mark = page.element(By::Css(".wrong-entry button")).await?;
        assert_eq!(mark.text().await?, WORDS.field(Field::InSeries));
        page.evaluate("document.activeElement.blur()").await?;
        page.press(By::Css(".wrong-entry button")).await?;
        page.wait_until("document.activeElement.value === '2.5'").await?;
        page.paste_into(Field::InSeries, "1").await?;
        page.wait_until("document.querySelector('.wrong-entry').textContent === ''").await?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn what_is_typical_is_shown_as_such_until_it_is_typed() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::DESKTOP, |page| async move {
        page.start_from(site.address(), "camper").await?;
        page.open_question(Label::WhatComesIn).await?;
        page.flip(Label::ThereIsAGenerator).await?;
        let start = page.number_box(Field::GeneratorStart).await?;
        let typical = start.attr("placeholder").await?;
        assert_eq!(
            (start.prop("value").await?.as_deref(), typical.as_deref()),
            (Some(""), Some("30"))
        );
        page.type_into(Field::GeneratorStart, "30").await?;
        assert_eq!(start.prop("value").await?.as_deref(), Some("30"), "typed out, it stays");
        page.type_into(Field::GeneratorStart, "25").await?;
        let plan = page.settled().await?.0;
        assert_eq!(plan.generator.map(|own| own.start_pct), Some(25.0));

        page.flip(Label::ThereIsATurbine).await?;
        let all = format!("//div[label[.=\"{}\"]]//input", WORDS.label(Label::SameForAll));
        page.element(By::XPath(all)).await?.send_keys("7").await?;
        let turbine = page.settled().await?.0.turbine.ok_or("no turbine")?;
        assert_eq!(format!("{:?}", turbine.output), format!("MeanW({:?})", [7.0; 12]));

        page.press_button(Label::WhichTiltIsBest).await?;
        let use_it = By::Css("details.question[open] .note .row button");
        let said = page.element(use_it.clone()).await?.text().await?;
        page.press(use_it).await?;
        let plan = page.settled().await?.0;
        assert_eq!(said, WORDS.use_tilt(&format!("{}°", plan.arrays[0].tilt_deg)));
        Ok(())
    })
    .await
}

#[tokio::test]
async fn what_is_said_never_lies_over_what_is_filled_in() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.start_from(site.address(), "camper").await?;
        page.open_load(0).await?;
        page.press_button(Label::Delete).await?;
        page.element(By::Css(".toast")).await?;
        page.open_load(0).await?;
        // A box at the very place where things are said.
        let clear =
            "(() => { const box = document.activeElement.closest('.field').getBoundingClientRect();
            const said = document.querySelector('.toast').getBoundingClientRect();
            return box.bottom <= said.top || box.top >= said.bottom; })()";
        let bring = "(() => { const own = document.querySelector('.editor input[inputmode]');
            own.scrollIntoView({ block: 'end', behavior: 'instant' });
            scrollBy(0, 70); own.focus({ preventScroll: true }); return null; })()";
        page.evaluate(bring).await?;
        page.wait_until(clear).await?;
        page.wait_until("document.querySelector('.toast.above') !== null").await?;
        Ok(())
    })
    .await
}
