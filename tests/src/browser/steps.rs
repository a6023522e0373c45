//! Steps that several journeys take: into dialogs, panels and pictures, and onto the map.

use std::path::Path;

use serde_json::json;
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::place::WeatherFile;
use sunlarder_engine::words::Label;
use thirtyfour::components::SelectElement;
use thirtyfour::prelude::*;

use super::{Outcome, Page, WORDS, answered};

/// What stands under a figure of the page when there is a baseline.
fn under(id: &str) -> String {
    format!("document.querySelector('#{id}').parentElement.querySelector('.against').textContent")
}

/// Whether the curve has a line of a replayed year, and its legend a key.
pub const REPLAYED: &str = "document.querySelector('.replayed-line').getAttribute('d') !== ''
    && document.querySelector('.key-replayed') !== null";
/// The sentences on a replayed year, as a text.
pub const REPLAY_SAID: &str =
    "JSON.stringify([...document.querySelectorAll('#replay li')].map((own) => own.textContent))";

impl Page {
    /// Opens the page and waits until it would open without a network, too.
    ///
    /// # Errors
    /// If it is not kept within half a minute.
    pub async fn visit(&self, address: &str) -> Outcome<()> {
        self.open(address).await?;
        self.wait_until("document.documentElement.dataset.offline === 'ready'").await
    }

    /// Closes the dialog that is open.
    ///
    /// # Errors
    /// If none is.
    pub async fn close_dialog(&self) -> Outcome<()> {
        let close = WORDS.label(Label::Close);
        self.press(By::XPath(format!("//dialog[@open]//button[.=\"{close}\"]"))).await?;
        self.wait_until("document.querySelector('dialog[open]') === null").await
    }

    /// Looks for a place by its name and takes the first that is found, where the question of the place is open.
    ///
    /// # Errors
    /// If nothing is found.
    pub async fn go_to(&self, name: &str) -> Outcome<()> {
        self.element(By::Id("search-town")).await?.send_keys(name).await?;
        self.press(By::Css(".results button")).await?;
        let name = json!(name);
        self.wait_until(&format!(
            "document.querySelector('.where').textContent.toLowerCase().includes({name}.toLowerCase())"
        ))
        .await
    }

    /// Chooses the month of the start, counted from 0, where the question of the place is open.
    ///
    /// # Errors
    /// If the page does not say that it is another.
    pub async fn choose_month(&self, month: usize) -> Outcome<()> {
        let select = format!("//div[label[.=\"{}\"]]//select", WORDS.label(Label::Month));
        let select = SelectElement::new(&self.element(By::XPath(select)).await?).await?;
        select.select_by_value(&month.to_string()).await?;
        let named = json!(WORDS.month(month));
        self.wait_until(&format!("document.querySelector('.where').textContent.includes({named})"))
            .await
    }

    /// Presses the map of the world at a point \[°\].
    ///
    /// # Errors
    /// If the map is not shown.
    pub async fn tap_map(&self, north: f64, east: f64) -> Outcome<()> {
        self.element(By::Css(".world")).await?;
        let (east, south) = ((east + 180.0) / 360.0, (90.0 - north) / 180.0);
        self.evaluate(&format!(
            "(() => {{
                const map = document.querySelector('.world'), box = map.getBoundingClientRect();
                map.dispatchEvent(new PointerEvent('click', {{ bubbles: true,
                    clientX: box.left + map.clientLeft + map.clientWidth * {east},
                    clientY: box.top + map.clientTop + map.clientHeight * {south} }}));
            }})()"
        ))
        .await?;
        Ok(())
    }

    /// Opens the dialog of units, habits and language.
    ///
    /// # Errors
    /// If it does not open.
    pub async fn open_habits(&self) -> Outcome<()> {
        self.press(By::Id("menu-habits")).await?;
        self.wait_until("document.querySelector('dialog[open] .habits') !== null").await
    }

    /// Chooses a way in that dialog by its words.
    ///
    /// # Errors
    /// If there is no such way.
    pub async fn choose_habit(&self, way: Label) -> Outcome<()> {
        let words = WORDS.label(way);
        self.press(By::XPath(format!("//dialog[@open]//label[span[.=\"{words}\"]]"))).await
    }

    /// Opens the working behind a label, or closes it.
    ///
    /// # Errors
    /// If there is none.
    pub async fn open_panel(&self, label: Label) -> Outcome<()> {
        let path = format!(
            "//details[contains(@class, 'working')]/summary[normalize-space(.)=\"{}\"]",
            WORDS.label(label)
        );
        self.press(By::XPath(path)).await
    }

    /// Brings a picture into sight, so that it is asked for, and waits until it is drawn.
    ///
    /// # Errors
    /// If it is not drawn within half a minute.
    pub async fn come_to(&self, id: &str) -> Outcome<()> {
        let own = format!("document.getElementById({})", json!(id));
        self.wait_until(&format!("{own} !== null")).await?;
        self.evaluate(&format!("{own}.scrollIntoView({{ behavior: 'instant', block: 'center' }})"))
            .await?;
        self.wait_until(&format!("{own}.querySelector('svg path') !== null")).await
    }

    /// Waits until a sentence stands under a picture; it is written anew as often as something is asked.
    ///
    /// # Errors
    /// If it does not within half a minute.
    pub async fn expect_note(&self, id: &str, sentence: &str) -> Outcome<()> {
        let note = format!("document.querySelector('#{id} p.note')?.textContent");
        self.wait_until(&format!("{note} === {}", json!(sentence))).await
    }

    /// Opens the table of a picture and counts its rows.
    ///
    /// # Errors
    /// If it stays empty.
    pub async fn rows(&self, id: &str) -> Outcome<usize> {
        self.press(By::Css(format!("#{id} details.more > summary"))).await?;
        let rows = format!("document.querySelectorAll('#{id} tbody tr').length");
        self.wait_until(&format!("{rows} > 0")).await?;
        Ok(self.evaluate(&rows).await?.as_u64().ok_or("no count")?.try_into()?)
    }

    /// Waits until this stands under a figure, of how it differs from the baseline.
    ///
    /// # Errors
    /// If it does not within half a minute.
    pub async fn expect_against(&self, id: &str, said: &str) -> Outcome<()> {
        self.wait_until(&format!("{} === {}", under(id), json!(said))).await
    }

    /// Makes a variant of the plan that is open, under this name or the one that is proposed, and gives its name.
    ///
    /// # Errors
    /// If it is not open within half a minute.
    pub async fn make_variant(&self, name: Option<&str>) -> Outcome<String> {
        let before = json!(self.shown().await?.name);
        self.press(By::Id("menu-plans")).await?;
        if let Some(name) = name {
            let own = WORDS.label(Label::NameOfVariant);
            let own = format!("//div[contains(@class, 'field')][label[.=\"{own}\"]]//input");
            let own = self.element(By::XPath(own)).await?;
            own.send_keys(Key::Control + "a").await?;
            own.send_keys(name).await?;
        }
        self.press_button(Label::MakeVariant).await?;
        self.wait_until(&format!(
            "document.querySelector('.plan-name').textContent !== {before} && document.querySelector('dialog[open]') === null"
        ))
        .await?;
        Ok(self.settled().await?.1.name)
    }

    /// Opens another variant by its whole name.
    ///
    /// # Errors
    /// If there is none of that name.
    pub async fn switch_to(&self, name: &str) -> Outcome<()> {
        self.press(By::Id("menu-plans")).await?;
        let open = WORDS.label(Label::OpenPlan);
        let row = format!(
            "//ul[@id='variants']/li[span[normalize-space(.)=\"{name}\"]]//button[.=\"{open}\"]"
        );
        self.press(By::XPath(row)).await?;
        self.wait_until("document.querySelector('dialog[open]') === null").await?;
        self.settled().await?;
        Ok(())
    }

    /// Adds somebody's guess to a question.
    ///
    /// # Errors
    /// If no question is asked.
    pub async fn add_guess(&self, name: &str, guess: &str) -> Outcome<()> {
        let name_box = self.element(By::Css(".guess .field input:not(.guess-box)")).await?;
        name_box.send_keys(name).await?;
        let guess_box = self.element(By::Css(".guess-box")).await?;
        guess_box.send_keys(Key::Control + "a").await?;
        guess_box.send_keys(guess).await?;
        guess_box.send_keys(Key::Enter + "").await?;
        Ok(())
    }

    /// Brings a file with a year of weather, where the question of the place is open.
    ///
    /// # Errors
    /// If there is no button for it.
    pub async fn bring_weather(&self, path: &Path) -> Outcome<()> {
        let input = self.element(By::Css("#replay input[type='file']")).await?;
        Ok(input.send_keys(path.to_string_lossy().into_owned()).await?)
    }

    /// Waits until the sentences are those of the plan that is stored in the weather of a file, and its line is drawn.
    ///
    /// # Errors
    /// If they are not within half a minute.
    pub async fn expect_replayed(&self, text: &str) -> Outcome<()> {
        let (system, _) = answered(&self.stored_plan().await?)?;
        let file = WeatherFile::read(text).map_err(|fault| WORDS.weather_file_fault(&fault))?;
        let replayed = Outlook::of(&system).replay(&system, &file);
        let sentences = json!(json!(WORDS.replayed(&replayed, &system)).to_string());
        self.wait_until(&format!("{REPLAY_SAID} === {sentences}")).await?;
        self.wait_until(REPLAYED).await
    }
}
