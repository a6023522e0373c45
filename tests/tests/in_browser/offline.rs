//! The page after its first visit: without a network, under any path, and when a new version comes out.

use std::fs;
use std::path::Path;

use serde_json::json;
use sunlarder_tests::browser::{Look, Outcome, Site, copy_of_dist, dist, in_browser};

async fn expect_to_work_without_a_host(path: &'static str) -> Outcome<()> {
    let site = Site::of_folder(&dist()?, path).await?;
    in_browser(Look::PHONE, |page| async move {
        let address = site.address().to_owned();
        page.visit(&address).await?;
        site.take_away().await?;
        page.set_offline(true).await?;
        page.reload().await?;
        // A new visit, by the other name of the page and with a plan in the link.
        page.open(&format!("{address}index.html?from=home#example=camper")).await?;
        page.wait_until("document.querySelector('.verdict h1') !== null").await?;
        let colour = "getComputedStyle(document.documentElement).getPropertyValue('--sun').trim()";
        assert_ne!(page.evaluate(colour).await?, "", "the style sheet is kept as well");
        let icon = page.resolve("fetch('icon.svg').then((answer) => answer.status)").await?;
        assert_eq!(icon, 200);
        let stranger =
            page.resolve("fetch('not-kept.txt').then(() => 'answered', () => 'refused')").await?;
        assert_eq!(stranger, "refused");
        Ok(())
    })
    .await
}

#[tokio::test]
async fn after_one_visit_the_page_works_without_a_network() -> Outcome<()> {
    expect_to_work_without_a_host("/").await
}

#[tokio::test]
async fn under_a_path_of_a_host_the_page_works_and_stays() -> Outcome<()> {
    expect_to_work_without_a_host("/some/where/").await
}

/// Once nothing more has been fetched for a second: a browser lets the old worker finish what it is at before a new one takes over.
const FETCHED: &str = "(async () => {
    let known = -1, kept = 0;
    while (kept < 5) {
        await new Promise((done) => setTimeout(done, 200));
        const now = performance.getEntriesByType('resource').length;
        kept = now === known ? kept + 1 : 0;
        known = now;
    }
})()";

#[tokio::test]
async fn a_new_version_waits_until_it_is_wanted() -> Outcome<()> {
    let folder = copy_of_dist("update")?;
    let site = Site::of_folder(&folder, "/").await?;
    in_browser(Look::PHONE, |page| async move {
        page.visit(site.address()).await?;
        publish_second_version(&folder)?;
        page.reload().await?;
        page.wait_until("document.documentElement.dataset.update === 'waiting'").await?;
        page.resolve(FETCHED).await?;
        page.reload().await?;
        page.becomes("document.documentElement.dataset.version", json!(null)).await?;
        page.wait_until("document.documentElement.dataset.update === 'waiting'").await?;
        page.resolve(FETCHED).await?;

        page.evaluate("document.dispatchEvent(new CustomEvent('sunlarder:take-over')) && null")
            .await?;
        page.wait_until("document.documentElement.dataset.version === 'second'").await?;
        page.wait_until_ready().await?;
        let caches = page.resolve("caches.keys()").await?;
        assert_eq!(caches.as_array().map(Vec::len), Some(1), "{caches}");
        fs::remove_dir_all(folder)?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_half_uploaded_version_is_not_taken() -> Outcome<()> {
    let folder = copy_of_dist("half")?;
    let site = Site::of_folder(&folder, "/").await?;
    in_browser(Look::PHONE, |page| async move {
        page.visit(site.address()).await?;
        // The new worker names a program that the page of this moment does not load.
        publish_second_version(&folder)?;
        let worker = folder.join("offline.js");
        let listed = fs::read_to_string(&worker)?.replacen('[', "[\"program-0123456789abcdef.js\",", 1);
        fs::write(worker, listed)?;
        fs::write(folder.join("program-0123456789abcdef.js"), "")?;
        let ended = page
            .resolve(
                "navigator.serviceWorker.getRegistration().then((registration) => new Promise((done) => {
                    registration.onupdatefound = () => {
                        const incoming = registration.installing;
                        incoming.onstatechange = () => done(incoming.state);
                    };
                    registration.update().catch(() => {});
                }))",
            )
            .await?;
        assert_eq!(ended, "redundant");
        page.reload().await?;
        page.becomes("document.documentElement.dataset.version", json!(null)).await?;
        fs::remove_dir_all(folder)?;
        Ok(())
    })
    .await
}

/// Marks the page as another version, as a build of changed sources would.
fn publish_second_version(folder: &Path) -> Outcome<()> {
    let index = folder.join("index.html");
    let page = fs::read_to_string(&index)?;
    let changed = page.replacen("<html ", "<html data-version=\"second\" ", 1);
    assert_ne!(page, changed);
    fs::write(index, changed)?;
    let worker = folder.join("offline.js");
    let script = fs::read_to_string(&worker)?;
    let (before, rest) = script.split_once("REVISION").ok_or("it has no revision")?;
    let changed = format!("{before}REVISION{}", rest.replacen('"', "\"second-", 1));
    assert_ne!(script, changed);
    Ok(fs::write(worker, changed)?)
}
