//! How soon an edit is on the screen, on a processor four times slower than this one.

#![allow(clippy::print_stdout, reason = "the measured lengths and times are printed")]

use serde_json::json;
use sunlarder_engine::document::{Document, Field, Load, Rating};
use sunlarder_engine::share;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Page, Site, in_browser_alone};
use thirtyfour::prelude::*;

/// How many times slower than this machine a cheap phone is taken to be.
const SLOWER: u32 = 4;
/// An edit is on the screen within this time \[ms\]: three frames.
const LIMIT: f64 = 50.0;
/// Machines that run this share their cores with other work, which stretches every time by up to this, that of the processor, too: one
/// and the same page took 35, 108 and 40 ms for an edit within ten minutes on one of them. The figures are printed, so that a slower page
/// shows before it fails.
const NOISE: f64 = 3.0;
/// Nineteen edits of twenty stay within this many times the limit: now and then a frame is missed.
const MISSED_FRAMES: f64 = 1.5;

/// The time that a share of the sorted times stays within.
fn quantile(sorted: &[f64], share: f64) -> f64 {
    let at = (share * sorted.len() as f64).ceil() as usize;
    sorted.get(at.saturating_sub(1)).copied().unwrap_or(f64::INFINITY)
}

/// Processor time that the page's main thread has spent so far \[ms\]: on a machine with other work, the part of a time from key
/// to paint that is the page's own. In all, in scripts, in styles, in layout.
async fn processor_time(page: &Page) -> Outcome<[f64; 4]> {
    let metrics = page.devtools("Performance.getMetrics", json!({})).await?;
    let metrics = metrics["metrics"].as_array().ok_or("the browser keeps no metrics")?;
    let value = |name: &str| {
        let found = metrics.iter().find(|metric| metric["name"] == name);
        found.and_then(|metric| metric["value"].as_f64()).map_or(f64::NAN, |seconds| seconds * 1e3)
    };
    let names = ["TaskDuration", "ScriptDuration", "RecalcStyleDuration", "LayoutDuration"];
    Ok(names.map(value))
}

/// Scripts, styles and layout of an edit, the pictures that follow included, take the processor for no longer than this \[ms\]. Other
/// work on the machine stretches it less than the clock, so it holds the page to account where the clock cannot.
const BUSY: f64 = 50.0;

/// Presses keys one after another in what has the focus, each once the one before is on the screen.
async fn time_keys(page: &Page, keys: &[char]) -> Outcome<Vec<f64>> {
    let mut times = Vec::new();
    // What came before the first key is not counted.
    page.evaluate("sunlarderPaints.splice(0) && null").await?;
    let before = processor_time(page).await?;
    for key in keys {
        page.session.active_element().await?.send_keys(key.to_string()).await?;
        times.extend(page.paints(1).await?);
    }
    let after = processor_time(page).await?;
    let [all, script, style, layout] =
        [0, 1, 2, 3].map(|at| (after[at] - before[at]) / keys.len() as f64);
    println!(
        "an edit keeps the processor busy for {all:.1} ms: {script:.1} scripts, {style:.1} styles, {layout:.1} layout"
    );
    assert!(script + style + layout <= BUSY * NOISE, "{script:.1} + {style:.1} + {layout:.1} ms");
    Ok(times)
}

fn expect_quick(what: &str, mut times: Vec<f64>) {
    times.sort_by(f64::total_cmp);
    let (middle, most) = (quantile(&times, 0.5), quantile(&times, 1.0));
    let nearly_all = quantile(&times, 0.95);
    println!(
        "{what}: {} edits at {SLOWER}x slow-down: median {middle:.1} ms, 95 % within {nearly_all:.1} ms, longest {most:.1} ms",
        times.len()
    );
    assert!(middle <= LIMIT * NOISE, "{what}: {times:.1?}");
    assert!(nearly_all <= LIMIT * NOISE * MISSED_FRAMES, "{what}: {times:.1?}");
}

#[tokio::test]
async fn an_edit_repaints_within_three_frames_on_a_slow_phone() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser_alone(Look::PHONE, |page| async move {
        page.record_paints().await?;
        page.start_from(site.address(), "camper").await?;
        page.open_load(0).await?;
        page.open_question(Label::WhatDoYouStore).await?;
        let before = page.shown().await?;
        page.number_box(Field::Reserve).await?;
        page.devtools("Performance.enable", json!({ "timeDomain": "threadTicks" })).await?;
        page.throttle(SLOWER).await?;

        page.number_box(Field::LoadPower).await?.click().await?;
        // From 45 to 450 or 459 is another verdict, and back again.
        let taken_back = |digit| [digit, char::from(Key::Backspace)];
        let keys: Vec<char> = (0..24).flat_map(|at| taken_back(['0', '9'][at % 2])).collect();
        let typed = time_keys(&page, &keys).await?;
        assert_eq!(page.shown().await?, before, "every digit was taken back");

        let slider = page.element(By::Css("details.question[open] input.slider[max='95']")).await?;
        slider.focus().await?;
        let (right, left) = (char::from(Key::Right), char::from(Key::Left));
        let keys: Vec<char> = [[right; 14], [left; 14]].concat();
        let slid = time_keys(&page, &keys).await?;
        assert_eq!(page.shown().await?, before, "the slider is back where it was");

        expect_quick("digits of a power", typed);
        expect_quick("steps of the reserve", slid);
        Ok(())
    })
    .await
}

/// The longest task may take so long \[ms\], as browsers report those over 50.
const LONG_TASK: f64 = 100.0;
/// Counts long tasks from here on.
const WATCH_LONG_TASKS: &str = "(window.sunlarderLongTasks = [], new PerformanceObserver((list) =>
    sunlarderLongTasks.push(...list.getEntries().map((task) => task.duration))).observe({ type: 'longtask' }), null)";

/// The camper's plan with its loads again and again until there are forty, each a little different.
fn forty_loads() -> Outcome<Document> {
    let text = std::fs::read_to_string(
        sunlarder_tests::browser::repository().join("examples/camper.json"),
    )?;
    let mut plan = Document::from_json(&text).map_err(|problem| format!("{problem:?}"))?;
    let own = plan.loads.clone();
    let again = own.iter().cycle().take(40).enumerate();
    plan.loads = again
        .map(|(at, load)| Load {
            name: format!("{} of forty", at + 1),
            rating: Rating::PowerW(5.0 + at as f64),
            group: ["", "Galley", "Desk"][at % 3].to_owned(),
            ..load.clone()
        })
        .collect();
    Ok(plan)
}

#[tokio::test]
async fn forty_loads_are_edited_as_quickly() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser_alone(Look::PHONE, |page| async move {
        page.record_paints().await?;
        let plan = forty_loads()?;
        let code = share::encode(&plan).map_err(|problem| format!("{problem:?}"))?;
        page.open(&format!("{}#{}{code}", site.address(), share::PARAMETER)).await?;
        page.wait_until("document.querySelectorAll('li.load:not(.own)').length === 40").await?;
        page.press(By::Css("li.load[data-place='20'] > .load-open")).await?;
        page.open_question(Label::WhatDoYouStore).await?;
        let before = page.shown().await?;
        page.number_box(Field::Reserve).await?;
        page.devtools("Performance.enable", json!({ "timeDomain": "threadTicks" })).await?;
        page.throttle(SLOWER).await?;
        page.evaluate(WATCH_LONG_TASKS).await?;

        page.number_box(Field::LoadPower).await?.click().await?;
        let taken_back = |digit| [digit, char::from(Key::Backspace)];
        let keys: Vec<char> = (0..35).flat_map(|at| taken_back(['0', '9'][at % 2])).collect();
        let typed = time_keys(&page, &keys).await?;
        assert_eq!(page.shown().await?, before, "every digit was taken back");

        let slider = page.element(By::Css("details.question[open] input.slider[max='95']")).await?;
        slider.focus().await?;
        let (right, left) = (char::from(Key::Right), char::from(Key::Left));
        let keys: Vec<char> = [[right; 15], [left; 15]].concat();
        let slid = time_keys(&page, &keys).await?;
        let tasks = page.evaluate("sunlarderLongTasks").await?;
        let tasks: Vec<f64> =
            tasks.as_array().into_iter().flatten().filter_map(serde_json::Value::as_f64).collect();
        let longest = tasks.iter().copied().fold(0.0, f64::max);
        println!("{} tasks over 50 ms, the longest {longest:.0} ms", tasks.len());
        assert!(longest <= LONG_TASK * NOISE, "{tasks:?}");
        expect_quick("digits of a power among forty loads", typed);
        expect_quick("steps of the reserve among forty loads", slid);
        Ok(())
    })
    .await
}
