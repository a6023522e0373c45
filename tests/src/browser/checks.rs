//! What must hold on every page: quiet console, no stranger on the line, nothing out of sight, nothing out of reach.

use std::path::PathBuf;

use serde::Deserialize as _;
use serde_json::Value;

use super::{Outcome, Page};

/// Elements that reach past an edge though no ancestor scrolls or clips them, and boxes that cut off what is in them without
/// saying so by an ellipsis, as a list of short descriptions.
const OVERFLOWING: &str = "(() => {
    const root = document.documentElement, width = root.clientWidth;
    const found = [];
    if (root.scrollWidth > width) found.push(`page: ${root.scrollWidth} px in ${width} px`);
    const held = (element) => {
        for (let up = element.parentElement; up && up !== document.body; up = up.parentElement) {
            if (getComputedStyle(up).overflowX !== 'visible') return true;
        }
        return false;
    };
    const cut = (element) => {
        const style = getComputedStyle(element);
        return element.tagName !== 'INPUT' && ['hidden', 'clip'].includes(style.overflowX) && style.textOverflow !== 'ellipsis'
            && element.clientWidth > 1 && element.scrollWidth > element.clientWidth + 1;
    };
    for (const element of document.body.querySelectorAll('*')) {
        const box = element.getBoundingClientRect();
        if (cut(element)) {
            const name = element.tagName.toLowerCase() + (element.id && '#' + element.id);
            found.push(`${name}.${element.getAttribute('class') ?? ''} cuts off ${element.scrollWidth - element.clientWidth} px`);
        }
        if (box.width > 0 && (box.right > width + 0.5 || box.left < -0.5) && !held(element)) {
            const name = element.tagName.toLowerCase() + (element.id && '#' + element.id);
            const text = (element.textContent ?? '').trim().slice(0, 30);
            found.push(`${name}.${element.getAttribute('class') ?? ''} to ${box.right.toFixed(0)} px: ${text}`);
        }
    }
    return found;
})()";

/// Runs the accessibility rules; without `preload` they ask for no file again.
const RUN_AXE: &str =
    "axe.run(document, { resultTypes: ['violations'], preload: false }).then((results) =>
    results.violations.flatMap((rule) => rule.nodes.map((node) =>
        `${rule.id} (${rule.impact}): ${node.target.join(' ')}: ${node.failureSummary}`)))";

/// Once the page has kept its height for a second: what the worker writes moves what stands below it, and a check that began before
/// takes what lies over each other then for what is seen. Whatever grows for longer than ten is looked at as it is.
const SETTLED: &str = "(async () => {
    // What is out of sight has no layout of its own, and would seem to lie over what follows.
    for (const part of document.querySelectorAll('.picture, .load')) part.style.contentVisibility = 'visible';
    let height = 0, kept = 0;
    for (let look = 0; look < 50 && kept < 5; look += 1) {
        await new Promise((done) => setTimeout(done, 200));
        const now = document.documentElement.scrollHeight;
        kept = now === height ? kept + 1 : 0;
        height = now;
    }
})()";

impl Page {
    /// Elements that do not fit the width of the window; elements within a scrolling box may be wider.
    ///
    /// # Errors
    /// If the browser is gone.
    pub async fn overflow(&self) -> Outcome<Vec<String>> {
        strings(&self.evaluate(OVERFLOWING).await?)
    }

    /// Violations of the accessibility rules in what is shown now.
    ///
    /// # Errors
    /// If axe-core is not installed.
    pub async fn accessibility(&self) -> Outcome<Vec<String>> {
        let file = axe_file()?;
        let rules = std::fs::read_to_string(&file)
            .map_err(|error| format!("cannot read {} ({error}): run ./dev test", file.display()))?;
        self.session.execute(rules, Vec::new()).await?;
        self.resolve(SETTLED).await?;
        strings(&self.resolve(RUN_AXE).await?)
    }

    /// Warnings and errors on the console since it was last asked: also refusals of the page's policy and failed requests.
    ///
    /// # Errors
    /// If the browser is gone.
    pub async fn complaints(&self) -> Outcome<Vec<String>> {
        let entries = self.session.get_log("browser").await?;
        let loud = entries
            .into_iter()
            .filter(|entry| matches!(entry.level.as_str(), "SEVERE" | "WARNING"));
        Ok(loud.map(|entry| entry.message).collect())
    }

    /// Addresses that the page asked for since it was last asked, of any host but its own.
    ///
    /// # Errors
    /// If the browser is gone, or has kept no record of requests at all: then nothing would be known.
    pub async fn foreign_requests(&self) -> Outcome<Vec<String>> {
        let own =
            format!("{}/", self.evaluate("location.origin").await?.as_str().unwrap_or_default());
        let mut asked = Vec::new();
        for entry in self.session.get_log("performance").await? {
            let event: Value = serde_json::from_str(&entry.message)?;
            let event = &event["message"];
            if event["method"] == "Network.requestWillBeSent" {
                asked.extend(event["params"]["request"]["url"].as_str().map(str::to_owned));
            }
        }
        if asked.is_empty() {
            return Err("the browser recorded no request".into());
        }
        let local = |address: &String| {
            ["data:", "blob:", "about:"].iter().any(|scheme| address.starts_with(scheme))
                || address.starts_with(&own)
        };
        asked.retain(|address| !local(address));
        Ok(asked)
    }

    /// Expects that nothing of what is shown now sticks out or breaks a rule of accessibility.
    ///
    /// # Errors
    /// What does.
    pub async fn expect_sound(&self) -> Outcome<()> {
        none_of(self.overflow().await?, "overflow")?;
        none_of(self.accessibility().await?, "accessibility")
    }

    /// Expects that since it was last asked nobody has complained and no stranger was asked for anything.
    ///
    /// # Errors
    /// Who has, or who was.
    pub async fn expect_quiet(&self) -> Outcome<()> {
        none_of(self.complaints().await?, "complaints")?;
        none_of(self.foreign_requests().await?, "foreign requests")
    }
}

/// The same findings as an error, if there are any.
fn none_of(found: Vec<String>, what: &str) -> Outcome<()> {
    if found.is_empty() {
        return Ok(());
    }
    Err(format!("{} of {what}:\n{}", found.len(), found.join("\n")).into())
}

/// Where `./dev` has put axe-core.
fn axe_file() -> Outcome<PathBuf> {
    if let Some(file) = std::env::var_os("SUNLARDER_AXE") {
        return Ok(file.into());
    }
    let cache = std::env::var_os("XDG_CACHE_HOME").map(PathBuf::from);
    let cache = cache.or_else(|| std::env::home_dir().map(|home| home.join(".cache")));
    let cache = cache.ok_or("neither SUNLARDER_AXE nor a home folder is set")?;
    Ok(cache.join("sunlarder/tools/node_modules/axe-core/axe.min.js"))
}

fn strings(value: &Value) -> Outcome<Vec<String>> {
    Ok(Vec::deserialize(value)?)
}
