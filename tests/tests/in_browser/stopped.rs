//! When the program has stopped: a calm page, and a way to the saved plans.

use std::fs;
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use sunlarder_tests::browser::{Look, Outcome, Page, Site, copy_of_dist, in_browser};
use thirtyfour::By;

const NOTHING: [String; 0] = [];
const STOP: &str =
    "document.dispatchEvent(new CustomEvent('sunlarder:stopped', { detail: 'the cause' })) && null";

async fn press(page: &Page, id: &str) -> Outcome<()> {
    Ok(page.session.find(By::Id(id)).await?.click().await?)
}

#[tokio::test]
async fn the_calm_page_hands_out_the_saved_plans() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        let folder = std::env::temp_dir().join(format!("sunlarder-calm-{}", std::process::id()));
        let behaviour = json!({ "behavior": "allow", "downloadPath": folder });
        page.devtools("Browser.setDownloadBehavior", behaviour).await?;
        page.open(site.address()).await?;
        page.evaluate("localStorage.setItem('sunlarder.probe', '{\"name\":\"Ünder way\"}')")
            .await?;
        page.evaluate("localStorage.setItem('another', 'not ours')").await?;
        page.evaluate(STOP).await?;

        page.wait_until("!document.getElementById('calm').hidden").await?;
        assert_eq!(page.session.find(By::Id("calm-detail")).await?.text().await?, "the cause");
        assert_eq!(
            page.evaluate(
                "[...document.querySelectorAll('main')].filter((m) => m.checkVisibility()).length"
            )
            .await?,
            1
        );
        assert_eq!(page.accessibility().await?, NOTHING);
        assert_eq!(page.overflow().await?, NOTHING);
        page.screenshot("stopped").await?;
        press(&page, "calm-download").await?;

        let file = folder.join("sunlarder-plans.json");
        let plans: Value = serde_json::from_str(&wait_for(&file).await?)?;
        assert_eq!(plans["sunlarder.probe"], "{\"name\":\"Ünder way\"}");
        assert_eq!(plans["another"], Value::Null);
        fs::remove_dir_all(folder)?;

        press(&page, "calm-reload").await?;
        page.wait_until("document.getElementById('calm').hidden").await?;
        page.wait_until_ready().await
    })
    .await
}

#[tokio::test]
async fn without_a_plan_it_says_so() -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look::PHONE, |page| async move {
        page.open(site.address()).await?;
        page.evaluate("localStorage.clear()").await?;
        page.evaluate(STOP).await?;
        press(&page, "calm-download").await?;
        page.wait_until("!document.getElementById('calm-nothing').hidden").await
    })
    .await
}

/// A script that runs the smallest wasm module with an `unreachable` in it, from a timer, where nobody catches.
///
/// It has to come from the site: of what a script from elsewhere throws, the page is told nothing.
const TRAP: &str = "
    const bytes = [0,97,115,109,1,0,0,0, 1,4,1,96,0,0, 3,2,1,0, 7,5,1,1,102,0,0, 10,5,1,3,0,0,11];
    const { instance } = await WebAssembly.instantiate(new Uint8Array(bytes));
    setTimeout(instance.exports.f);";

#[tokio::test]
async fn a_trap_without_a_message_is_noticed_too() -> Outcome<()> {
    let folder = copy_of_dist("trap")?;
    fs::write(folder.join("trap.js"), TRAP)?;
    let site = Site::of_folder(&folder, "/").await?;
    in_browser(Look::PHONE, |page| async move {
        page.open(site.address()).await?;
        page.resolve("import('./trap.js').then(() => null)").await?;
        page.wait_until("!document.getElementById('calm').hidden").await?;
        fs::remove_dir_all(folder)?;
        Ok(())
    })
    .await
}

/// The content of a file that the browser is about to write.
async fn wait_for(file: &std::path::Path) -> Outcome<String> {
    let start = Instant::now();
    loop {
        // The browser writes under another name and renames when it is whole.
        match fs::read_to_string(file) {
            Ok(text) => return Ok(text),
            Err(error) if start.elapsed() > Duration::from_secs(30) => return Err(error.into()),
            Err(_) => tokio::time::sleep(Duration::from_millis(25)).await,
        }
    }
}
