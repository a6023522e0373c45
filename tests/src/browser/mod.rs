//! Journeys through the built page in headless Chromium.
//!
//! **Use:** start a [`Site`] over `dist/`, then hand a journey to [`in_browser`], which gives it a [`Page`] of a fresh profile
//! and closes the browser however the journey ends. Wait for conditions ([`Page::wait_until`]), never for a time.
//!
//! **Limits:** the emulated phone has a phone's width and media features, not its speed (see [`Page::throttle`]) and not its
//! fingers. Two browsers at most run at once, and a measurement runs alone ([`in_browser_alone`]), because the machines
//! that run this have two cores.

mod answers;
mod checks;
mod driver;
mod paint;
mod paper;
mod planner;
mod site;
mod steps;

use std::error::Error;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use thirtyfour::prelude::*;
use tokio::sync::Semaphore;

pub use answers::{STEPS, answered, worked};
use driver::Driver;
pub use paper::{A4, LETTER};
pub use planner::{Shown, WORDS};
pub use site::{Site, copy_of_dist, dist, installed};
pub use steps::{REPLAY_SAID, REPLAYED};

/// What the harness gives back: any error ends the test with its message.
pub type Outcome<T> = Result<T, Box<dyn Error + Send + Sync>>;

/// How long a condition may take on a slow, shared machine.
const PATIENCE: Duration = Duration::from_secs(30);
/// How often a condition is looked at.
const GLANCE: Duration = Duration::from_millis(25);

/// Browsers that may run at the same time.
const BROWSERS: u32 = 2;
static GATE: Semaphore = Semaphore::const_new(BROWSERS as usize);

/// The window and the wishes of the person before it.
#[derive(Clone, Copy, Debug)]
pub struct Look {
    /// Width of the viewport \[CSS px\]; below 600 the browser behaves like a phone's.
    pub width: u32,
    /// Height of the viewport \[CSS px\].
    pub height: u32,
    /// Whether the person prefers a dark page.
    pub dark: bool,
}

impl Look {
    /// A small phone, upright.
    pub const PHONE: Self = Self { width: 360, height: 740, dark: false };
    /// A laptop.
    pub const DESKTOP: Self = Self { width: 1280, height: 800, dark: false };

    /// The two that everything must be good for.
    pub const BOTH: [Self; 2] = [Self::PHONE, Self::DESKTOP];

    /// The same in the dark.
    #[must_use]
    pub const fn in_the_dark(self) -> Self {
        Self { dark: true, ..self }
    }

    /// A short name for files: `360-light`.
    #[must_use]
    pub fn name(self) -> String {
        format!("{}-{}", self.width, if self.dark { "dark" } else { "light" })
    }
}

/// The root of the repository.
#[must_use]
pub fn repository() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// Opens a browser with a fresh profile, runs `journey` in it and closes it.
///
/// # Errors
/// If Chromium or its driver cannot be started, or what the journey gives back.
pub async fn in_browser<F>(look: Look, journey: impl FnOnce(Page) -> F) -> Outcome<()>
where
    F: Future<Output = Outcome<()>>,
{
    run(look, 1, journey).await
}

/// The same with no other browser of this run beside it, for measurements of time.
///
/// # Errors
/// As [`in_browser`].
pub async fn in_browser_alone<F>(look: Look, journey: impl FnOnce(Page) -> F) -> Outcome<()>
where
    F: Future<Output = Outcome<()>>,
{
    run(look, BROWSERS, journey).await
}

/// Runs a journey from the address of the built page on a phone and on a laptop, each in a fresh profile. At its end nothing
/// may have been complained of and nobody else asked for anything.
///
/// # Errors
/// What the journey gives back, with the size at which it did.
pub async fn on_phone_and_laptop(journey: impl AsyncFn(&Page, &str) -> Outcome<()>) -> Outcome<()> {
    let site = Site::of_dist().await?;
    for look in Look::BOTH {
        let walk = async |page: Page| {
            journey(&page, site.address()).await?;
            page.expect_quiet().await
        };
        in_browser(look, walk).await.map_err(|error| format!("{look:?}: {error}"))?;
    }
    Ok(())
}

async fn run<F>(look: Look, places: u32, journey: impl FnOnce(Page) -> F) -> Outcome<()>
where
    F: Future<Output = Outcome<()>>,
{
    let _permit = GATE.acquire_many(places).await?;
    let driver = Driver::start().await?;
    let session = driver.open_session().await?;
    let ended = session
        .run_and_quit(|session| async move {
            let page = Page { session, look };
            page.take_on_look().await?;
            journey(page).await
        })
        .await;
    ended.map_err(|error| error.to_string().into())
}

/// An open page and what can be done to it.
#[derive(Clone, Debug)]
pub struct Page {
    /// The session, for whatever has no method here.
    pub session: WebDriver,
    /// How the page is looked at.
    pub look: Look,
}

impl Page {
    async fn take_on_look(&self) -> Outcome<()> {
        let Look { width, height, dark } = self.look;
        self.resize(width, height).await?;
        let scheme = if dark { "dark" } else { "light" };
        let features = json!([{ "name": "prefers-color-scheme", "value": scheme }]);
        self.devtools("Emulation.setEmulatedMedia", json!({ "features": features })).await?;
        Ok(())
    }

    /// Sends one command of the browser's debugging protocol.
    ///
    /// # Errors
    /// If the browser refuses it.
    pub async fn devtools(&self, method: &str, parameters: Value) -> Outcome<Value> {
        Ok(self.session.cdp().send_raw(method, parameters).await?)
    }

    /// Gives the viewport another size \[CSS px\].
    ///
    /// # Errors
    /// If the browser is gone.
    pub async fn resize(&self, width: u32, height: u32) -> Outcome<()> {
        // Not the window's size: a headless window has a least width of its own, well above a phone's.
        let metrics = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 600 });
        self.devtools("Emulation.setDeviceMetricsOverride", metrics).await?;
        Ok(())
    }

    /// Opens an address and waits until the program says that it stands.
    ///
    /// # Errors
    /// If it does not within half a minute.
    pub async fn open(&self, address: &str) -> Outcome<()> {
        self.session.goto(address).await?;
        self.wait_until_ready().await
    }

    /// Waits until the program says that it stands, as after a reload.
    ///
    /// # Errors
    /// If it does not within half a minute.
    pub async fn wait_until_ready(&self) -> Outcome<()> {
        self.wait_until("document.documentElement.dataset.ready === '1'").await
    }

    /// Loads the page anew and waits until it stands.
    ///
    /// # Errors
    /// If it does not within half a minute.
    pub async fn reload(&self) -> Outcome<()> {
        self.session.refresh().await?;
        self.wait_until_ready().await
    }

    /// Evaluates one JavaScript expression in the page.
    ///
    /// # Errors
    /// If it throws.
    pub async fn evaluate(&self, expression: &str) -> Outcome<Value> {
        let result = self.session.execute(format!("return ({expression});"), Vec::new()).await?;
        Ok(result.json().clone())
    }

    /// Evaluates an expression that is a promise, and waits for what it promises.
    ///
    /// # Errors
    /// If it throws, is rejected, or takes longer than the driver's limit of half a minute.
    pub async fn resolve(&self, promise: &str) -> Outcome<Value> {
        let script = format!(
            "const done = arguments[0];
             Promise.resolve({promise}).then((value) => done({{ value }}), (e) => done({{ error: String(e) }}));"
        );
        let mut result = self.session.execute_async(script, Vec::new()).await?.json().clone();
        match result["error"].as_str() {
            Some(error) => Err(format!("{promise}: {error}").into()),
            None => Ok(result["value"].take()),
        }
    }

    /// Waits until a JavaScript expression is true. An expression that throws, as in the midst of a navigation, is not yet true.
    ///
    /// # Errors
    /// If that takes longer than half a minute.
    pub async fn wait_until(&self, expression: &str) -> Outcome<()> {
        self.becomes(expression, true).await
    }

    /// Waits until a JavaScript expression has a value: pictures follow the words by some frames, longer on a machine that has other work.
    ///
    /// # Errors
    /// If that takes longer than half a minute.
    pub async fn becomes(&self, expression: &str, expected: impl Into<Value>) -> Outcome<()> {
        let (start, expected) = (Instant::now(), expected.into());
        loop {
            let seen = self.evaluate(expression).await;
            if matches!(&seen, Ok(value) if value == &expected) {
                return Ok(());
            }
            if start.elapsed() > PATIENCE {
                let waited = format!("waited in vain for `{expression}` to be {expected}");
                return Err(format!("{waited}; it is now {seen:?}").into());
            }
            tokio::time::sleep(GLANCE).await;
        }
    }

    /// Cuts the page off from every network, or connects it again.
    ///
    /// A service worker has a network of its own: stop the [`Site`], too.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn set_offline(&self, offline: bool) -> Outcome<()> {
        self.devtools("Network.enable", json!({})).await?;
        let conditions = json!({
            "offline": offline, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1
        });
        self.devtools("Network.emulateNetworkConditions", conditions).await?;
        Ok(())
    }

    /// Slows the page's main thread down by this factor; workers keep their speed.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn throttle(&self, factor: u32) -> Outcome<()> {
        self.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": factor })).await?;
        Ok(())
    }

    /// Writes a picture of the whole page, below the fold too, to `tests/shots/NAME-WIDTH-SCHEME.png`.
    ///
    /// # Errors
    /// If the file cannot be written.
    pub async fn screenshot(&self, name: &str) -> Outcome<PathBuf> {
        let folder = repository().join("tests/shots");
        std::fs::create_dir_all(&folder)?;
        let file = folder.join(format!("{name}-{}.png", self.look.name()));
        let whole = self.evaluate("document.documentElement.scrollHeight").await?;
        let height = u32::try_from(whole.as_u64().unwrap_or_default())?.max(self.look.height);
        self.resize(self.look.width, height).await?;
        self.session.screenshot(&file).await?;
        self.resize(self.look.width, self.look.height).await?;
        Ok(file)
    }
}
