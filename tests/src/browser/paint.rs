//! How long an edit takes until it is on the screen.

use std::time::Duration;

use serde::Deserialize as _;
use serde_json::json;

use super::{Outcome, Page};

/// Nobody asks the page for so long after a key: the question itself would be worked on beside the edit.
const LOOKED_AWAY: Duration = Duration::from_millis(60);

/// Notes for each edit the time from its event to the message after the next frame, when the browser has painted.
///
/// The event's own stamp is taken: that of a click is its moment, so waiting behind earlier work counts; an input has begun once the browser has
/// put the digit into its box.
const RECORDER: &str = "
    window.sunlarderPaints = [];
    for (const kind of ['input', 'change', 'click']) {
        addEventListener(kind, (event) => requestAnimationFrame(() => {
            const channel = new MessageChannel();
            channel.port1.onmessage = () => sunlarderPaints.push(performance.now() - event.timeStamp);
            channel.port2.postMessage(0);
        }), { capture: true });
    }";

impl Page {
    /// Records edits in every document that is opened from now on; call it before [`Page::open`].
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn record_paints(&self) -> Outcome<()> {
        self.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": RECORDER }))
            .await?;
        Ok(())
    }

    /// The times from input to paint so far \[ms\], in order, once there are at least `count` of them; they start anew then.
    ///
    /// # Errors
    /// If there are not within half a minute.
    pub async fn paints(&self, count: usize) -> Outcome<Vec<f64>> {
        tokio::time::sleep(LOOKED_AWAY).await;
        self.wait_until(&format!("sunlarderPaints.length >= {count}")).await?;
        let times = self.evaluate("sunlarderPaints.splice(0)").await?;
        Ok(Vec::deserialize(&times)?)
    }
}
