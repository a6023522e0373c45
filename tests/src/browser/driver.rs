//! Starts Chromium's driver and opens a browser through it.

use std::process::Stdio;

use serde_json::json;
use thirtyfour::prelude::*;
use thirtyfour::{ChromeCapabilities, ChromiumLikeCapabilities};
use tokio::io::{AsyncBufReadExt as _, BufReader, Lines};
use tokio::process::{Child, ChildStdout, Command};

use super::Outcome;

/// A running driver; it ends with this value.
pub(super) struct Driver {
    port: u16,
    _process: Child,
    // Held open, or the driver's next line of output would end it.
    _output: Lines<BufReader<ChildStdout>>,
}

impl Driver {
    /// Starts a driver on a port of its own choice, anew when it ends without taking one.
    ///
    /// Many tests start at once, and a driver was seen to end so on a busy machine.
    pub(super) async fn start() -> Outcome<Self> {
        let mut told = String::new();
        for _ in 0..ATTEMPTS {
            match Self::start_once().await? {
                Ok(driver) => return Ok(driver),
                Err(output) => told = output,
            }
        }
        Err(format!("chromedriver ended {ATTEMPTS} times without saying its port: {told}").into())
    }

    /// Starts a driver once; what it said instead of its port, if it ended before.
    async fn start_once() -> Outcome<Result<Self, String>> {
        let mut process = Command::new("chromedriver")
            .arg("--port=0")
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .kill_on_drop(true)
            .spawn()
            .map_err(|error| {
                format!("cannot start chromedriver ({error}): run ./dev test, which installs it")
            })?;
        let output = process.stdout.take().ok_or("chromedriver has no output")?;
        let mut output = BufReader::new(output).lines();
        let mut told = String::new();
        while let Some(line) = output.next_line().await? {
            if let Some(port) = started_on(&line) {
                return Ok(Ok(Self { port, _process: process, _output: output }));
            }
            told.push_str(&line);
            told.push(' ');
        }
        Ok(Err(told))
    }

    /// Opens a browser with a fresh profile that can reach nothing but this machine.
    pub(super) async fn open_session(&self) -> Outcome<WebDriver> {
        let mut capabilities = ChromeCapabilities::new();
        for argument in ARGUMENTS {
            capabilities.add_arg(argument)?;
        }
        let logs = json!({ "browser": "ALL", "performance": "ALL" });
        capabilities.as_mut().set("goog:loggingPrefs", logs)?;
        Ok(WebDriver::new(format!("http://127.0.0.1:{}", self.port), capabilities).await?)
    }
}

/// How often a driver is started before its test gives up.
const ATTEMPTS: usize = 3;

/// Headless and able to run as root, without the browser's own traffic.
const ARGUMENTS: [&str; 11] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--disable-dev-shm-usage",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--hide-scrollbars",
    // Whatever the page may ask for elsewhere fails, and shows in the checks.
    "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
];

/// The port in the driver's line "ChromeDriver was started successfully on port 40001."
fn started_on(line: &str) -> Option<u16> {
    let (_, port) = line.split_once("started successfully on port ")?;
    port.trim_end_matches('.').trim().parse().ok()
}

#[cfg(test)]
mod tests {
    use super::started_on;

    #[test]
    fn the_port_is_read_from_the_line_that_names_it() {
        assert_eq!(started_on("ChromeDriver was started successfully on port 40001."), Some(40001));
        assert_eq!(started_on("Only local connections are allowed."), None);
    }
}
