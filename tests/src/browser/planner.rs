//! Steps through the planner by the words a person sees, and what the page shows after them.
//!
//! Words come from the engine, so that a journey does not break when a label is put better.

use std::time::{Duration, Instant};

use serde::Deserialize as _;
use serde_json::json;
use sunlarder_engine::document::{Document, Field};
use sunlarder_engine::words::{Label, Language, Words};
use thirtyfour::prelude::*;

use super::{GLANCE, Outcome, PATIENCE, Page, answered};

/// The language of the page.
pub const WORDS: Words = Words::of(Language::English);

/// How long an element may take to appear after the step that brings it.
const APPEARS: Duration = Duration::from_secs(8);

/// What the page answers about a plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shown {
    /// Name of the plan in the masthead.
    pub name: String,
    /// The verdict.
    pub headline: String,
    /// Out a day, in a day, what may be used, the months that keep up.
    pub facts: [String; 4],
    /// Names of the loads, in order.
    pub loads: Vec<String>,
}

/// Reads [`Shown`] off the page; white space is joined as the browser shows it.
const SHOWN: &str = "(() => {
    const text = (css) => document.querySelector(css)?.textContent.replace(/\\s+/g, ' ').trim() ?? '';
    return [text('.plan-name'), text('.verdict h1'),
        ['#fact-out', '#fact-in', '#fact-usable', '#fact-kept'].map(text),
        [...document.querySelectorAll('.load:not(.own) .load-name')].map((name) => name.textContent)];
})()";

/// The stored plan that is open.
const STORED: &str = "localStorage.getItem('sunlarder.plan.' + JSON.parse(localStorage.getItem('sunlarder.current')))";

impl Shown {
    /// What the page ought to answer, computed here and not in the browser.
    ///
    /// # Errors
    /// If nothing can be answered about the plan.
    pub fn expected(plan: &Document) -> Outcome<Self> {
        Self::expected_in(WORDS, plan)
    }

    /// The same in another language or by other habits.
    ///
    /// # Errors
    /// If nothing can be answered about the plan.
    pub fn expected_in(words: Words, plan: &Document) -> Outcome<Self> {
        let (system, outlook) = answered(plan)?;
        let headline = words.headline(&outlook);
        let gain = outlook.months.get(outlook.month).ok_or("no such month")?.gain.kept;
        let nominal = system.bank.nominal;
        let rated = words.of_rated(system.bank.slowest, nominal);
        let facts = [
            words.charge(outlook.budget.total, nominal),
            words.charge(gain, nominal),
            format!("{} {rated}", words.charge_number(outlook.capacity.usable, nominal)),
            words.months_kept(outlook.months_kept()),
        ];
        let loads = (0..plan.loads.len()).filter_map(|at| {
            words.name_in(plan, sunlarder_engine::working::Tag::Load(u16::try_from(at).ok()?))
        });
        Ok(Self {
            name: plan.name.clone(),
            headline: as_shown(&format!("{}{}{}", headline.before, headline.key, headline.after)),
            facts: facts.map(|fact| as_shown(&fact)),
            loads: loads.collect(),
        })
    }
}

/// A text with its white space joined.
fn as_shown(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

impl Page {
    /// Opens the bare address and picks a start scenario (`camper`, `boat`...; `blank` for none).
    ///
    /// # Errors
    /// If the planner does not stand within half a minute.
    pub async fn start_from(&self, address: &str, scenario: &str) -> Outcome<()> {
        self.open(address).await?;
        self.pick(scenario).await
    }

    /// Leaves the open plan for another start scenario.
    ///
    /// # Errors
    /// If the planner does not stand within half a minute.
    pub async fn start_anew_from(&self, scenario: &str) -> Outcome<()> {
        self.press(By::Id("menu-plans")).await?;
        self.press_button(Label::NewPlan).await?;
        self.pick(scenario).await
    }

    async fn pick(&self, scenario: &str) -> Outcome<()> {
        self.press(By::Id(format!("start-{scenario}"))).await?;
        self.wait_until("document.querySelector('.verdict h1') !== null").await
    }

    /// An element, once it is there: what is folded away is made only after its fold has opened.
    ///
    /// # Errors
    /// If it does not come within some seconds.
    pub async fn element(&self, what: By) -> Outcome<WebElement> {
        let sought = format!("{what}");
        let found = self.session.query(what).wait(APPEARS, GLANCE).first().await;
        // The driver's own message is a stack of addresses.
        found.map_err(|_| format!("there is no {sought}").into())
    }

    /// Scrolls an element to the middle, away from bars at the edges, and clicks it.
    ///
    /// # Errors
    /// If it is not there or something lies over it.
    pub async fn press(&self, what: By) -> Outcome<()> {
        // A finger presses what is there by then: what was made anew since it was looked for is looked for again.
        for _ in 0..3 {
            match self.press_once(what.clone()).await {
                Err(error) if error.to_string().contains("stale") => {}
                ended => return ended,
            }
        }
        self.press_once(what).await
    }

    async fn press_once(&self, what: By) -> Outcome<()> {
        let element = self.element(what).await?;
        self.bring_into_view(&element).await?;
        Ok(element.click().await?)
    }

    async fn bring_into_view(&self, element: &WebElement) -> Outcome<()> {
        let script = "arguments[0].scrollIntoView({ block: 'center', behavior: 'instant' });";
        self.session.execute(script, vec![element.to_json()?]).await?;
        Ok(())
    }

    /// Presses the first button that carries this label.
    ///
    /// # Errors
    /// As [`Page::press`].
    pub async fn press_button(&self, label: Label) -> Outcome<()> {
        self.press(By::XPath(format!("//button[normalize-space(.)=\"{}\"]", WORDS.label(label))))
            .await
    }

    /// Opens a question of the ledger, if it is closed.
    ///
    /// # Errors
    /// If there is no such question.
    pub async fn open_question(&self, title: Label) -> Outcome<()> {
        let question = format!(
            "//details[contains(@class, 'question')][summary/h2[normalize-space(.)=\"{}\"]]",
            WORDS.label(title)
        );
        let details = self.element(By::XPath(question.clone())).await?;
        if details.attr("open").await?.is_none() {
            self.press(By::XPath(format!("{question}/summary"))).await?;
        }
        Ok(())
    }

    /// Flips the first switch that carries this label.
    ///
    /// # Errors
    /// If there is none.
    pub async fn flip(&self, label: Label) -> Outcome<()> {
        let switch = format!(
            "//label[contains(@class, 'toggle')][normalize-space(.)=\"{}\"]",
            WORDS.label(label)
        );
        self.press(By::XPath(switch)).await
    }

    /// The first number box of a field.
    ///
    /// # Errors
    /// If none is shown.
    pub async fn number_box(&self, field: Field) -> Outcome<WebElement> {
        let path = format!(
            "//div[contains(@class, 'field')][label[normalize-space(.)=\"{}\"]]//input[@type='text']",
            WORDS.field(field)
        );
        let element = self.element(By::XPath(path)).await?;
        self.bring_into_view(&element).await?;
        Ok(element)
    }

    /// Replaces what stands in a number box by typing.
    ///
    /// # Errors
    /// If the box is not shown.
    pub async fn type_into(&self, field: Field, text: &str) -> Outcome<()> {
        let element = self.number_box(field).await?;
        self.retype(&element, text).await
    }

    /// Replaces what stands in a box by typing.
    ///
    /// # Errors
    /// If the box is not shown.
    pub async fn retype(&self, element: &WebElement, text: &str) -> Outcome<()> {
        self.bring_into_view(element).await?;
        element.click().await?;
        element.send_keys(Key::Control + "a").await?;
        element.send_keys(Key::Backspace + text).await?;
        Ok(())
    }

    /// Puts a date (`2027-02-12`) or a time (`09:30`) into its box; how it is typed depends on the browser's language.
    ///
    /// # Errors
    /// If the box is not shown.
    pub async fn set_moment(&self, id: &str, text: &str) -> Outcome<()> {
        let element = self.element(By::Id(id)).await?;
        let script = "arguments[0].value = arguments[1];
            arguments[0].dispatchEvent(new Event('change', { bubbles: true }));";
        self.session.execute(script, vec![element.to_json()?, json!(text)]).await?;
        Ok(())
    }

    /// Replaces what stands in a number box at once, as by pasting: nothing shorter is ever in it.
    ///
    /// # Errors
    /// If the box is not shown.
    pub async fn paste_into(&self, field: Field, text: &str) -> Outcome<()> {
        let element = self.number_box(field).await?;
        element.click().await?;
        element.send_keys(Key::Control + "a").await?;
        if text.is_empty() {
            element.send_keys(Key::Backspace + "").await?;
        } else {
            self.devtools("Input.insertText", json!({ "text": text })).await?;
        }
        Ok(())
    }

    /// Puts away what is said in passing.
    ///
    /// # Errors
    /// If nothing is said.
    pub async fn dismiss_notice(&self) -> Outcome<()> {
        self.press(By::Css(".toast-acts > button:last-child")).await
    }

    /// The sentence under a number box that says what is wrong; empty if nothing is.
    ///
    /// # Errors
    /// If the box is not shown.
    pub async fn fault_of(&self, field: Field) -> Outcome<String> {
        let script = "return arguments[0].closest('.field').querySelector('.error').textContent;";
        let element = self.number_box(field).await?;
        let said = self.session.execute(script, vec![element.to_json()?]).await?;
        Ok(String::deserialize(said.json())?)
    }

    /// Opens the editor of a load by its place in the list, counted from 0.
    ///
    /// # Errors
    /// If there is no such load.
    pub async fn open_load(&self, place: usize) -> Outcome<()> {
        let row = format!("ul.loads > li.load:nth-child({}) > button.load-open", place + 1);
        self.press(By::Css(row)).await
    }

    /// Looks for an appliance in the catalogue, which is opened for it, and adds the first that is found.
    ///
    /// # Errors
    /// If nothing is found.
    pub async fn add_from_catalogue(&self, query: &str) -> Outcome<()> {
        if self.evaluate("document.getElementById('search-appliance') === null").await? == true {
            self.press(By::Id("add-something")).await?;
        }
        let search = self.element(By::Id("search-appliance")).await?;
        search.clear().await?;
        search.send_keys(query).await?;
        self.wait_until("document.querySelector('#found > .results [data-load]') !== null").await?;
        self.press(By::Css("#found > .results [data-load]")).await
    }

    /// Takes back what was said in passing.
    ///
    /// # Errors
    /// If what was said cannot be taken back.
    pub async fn undo_in_notice(&self) -> Outcome<()> {
        let undo = format!("//div[@class='toast-acts']/button[.=\"{}\"]", WORDS.label(Label::Undo));
        self.press(By::XPath(undo)).await
    }

    /// Waits until what weather does to the plan is told.
    ///
    /// # Errors
    /// It is never told.
    pub async fn wait_for_weather(&self) -> Outcome<()> {
        self.wait_until(
            "document.querySelector('#chance').textContent !== ''
                && document.querySelector('[aria-busy]') === null",
        )
        .await
    }

    /// What the page answers now.
    ///
    /// # Errors
    /// If the browser is gone.
    pub async fn shown(&self) -> Outcome<Shown> {
        // An edit shows with the next frame, what needs the whole year with the one after.
        self.resolve("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done))))").await?;
        let (name, headline, facts, loads) =
            <(String, String, [String; 4], Vec<String>)>::deserialize(
                &self.evaluate(SHOWN).await?,
            )?;
        Ok(Shown { name, headline, facts, loads })
    }

    /// The plan that the device keeps at this moment.
    ///
    /// # Errors
    /// If it keeps none, or what it keeps cannot be read.
    pub async fn stored_plan(&self) -> Outcome<Document> {
        // As when the window is left, so that what waits to be kept is kept.
        self.evaluate("dispatchEvent(new Event('blur'))").await?;
        let text = self.evaluate(STORED).await?;
        let text = text.as_str().ok_or("no plan is stored")?;
        Document::from_json(text).map_err(|problem| WORDS.problem(&problem, &|_| None).into())
    }

    /// The plan that the device keeps, once the page shows its figures, and what it shows.
    ///
    /// # Errors
    /// If they do not come to agree within half a minute.
    pub async fn settled(&self) -> Outcome<(Document, Shown)> {
        let start = Instant::now();
        loop {
            let (shown, plan) = (self.shown().await?, self.stored_plan().await?);
            let expected = Shown::expected(&plan)?;
            if (&shown.headline, &shown.facts) == (&expected.headline, &expected.facts) {
                return Ok((plan, shown));
            }
            if start.elapsed() > PATIENCE {
                return Err(format!("the page shows {shown:?}, not {expected:?}").into());
            }
        }
    }

    /// The text of what is said in passing; empty if nothing is.
    ///
    /// # Errors
    /// If the browser is gone.
    pub async fn notice(&self) -> Outcome<String> {
        let said = self.evaluate("document.querySelector('.toast p')?.textContent ?? ''").await?;
        Ok(String::deserialize(&said)?)
    }

    /// Waits until the page says in passing something with this in it.
    ///
    /// # Errors
    /// If it does not within half a minute.
    pub async fn wait_for_notice(&self, part: &str) -> Outcome<()> {
        let quoted = serde_json::to_string(part)?;
        self.wait_until(&format!(
            "[...document.querySelectorAll('.toast p')].some((own) => own.textContent.includes({quoted}))"
        ))
        .await
    }
}
