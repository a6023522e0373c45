//! Every state of the page on every screen: nothing sticks out, and no rule of accessibility is broken.

use sunlarder_engine::document::Field;
use sunlarder_engine::words::Label;
use sunlarder_tests::browser::{Look, Outcome, Page, Site, WORDS, in_browser};
use thirtyfour::By;

/// What is wrong with each state of the page; empty is good.
#[derive(Default)]
struct Findings(Vec<String>);

/// What a tour through the states checks.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Check {
    /// That nothing reaches past the edge.
    Width,
    /// That no rule of accessibility is broken.
    Access,
    /// Nothing: pictures are taken of it.
    Picture,
}

impl Findings {
    async fn look(&mut self, page: &Page, check: Check, state: &str) -> Outcome<()> {
        let found = match check {
            Check::Width => page.overflow().await?,
            Check::Access => page.accessibility().await?,
            Check::Picture => {
                page.screenshot(state).await?;
                Vec::new()
            }
        };
        self.0.extend(found.into_iter().map(|finding| format!("{state}: {finding}")));
        Ok(())
    }

    fn expect_none(self) {
        assert!(self.0.is_empty(), "{} findings:\n{}", self.0.len(), self.0.join("\n"));
    }
}

/// Opens all folds that are closed and tells how many there were; what is inside may bring more.
const OPEN_FOLDS: &str = "(() => {
    const closed = [...document.querySelectorAll('details:not([open])')];
    closed.forEach((details) => details.open = true);
    return closed.length;
})()";

async fn open_all_folds(page: &Page) -> Outcome<()> {
    while page.evaluate(OPEN_FOLDS).await? != 0 {
        // The page hears of an opened fold in a task of its own, and draws what is inside then.
        page.resolve("new Promise((done) => setTimeout(done, 100))").await?;
    }
    Ok(())
}

/// Chooses one of a few by its label, within the first editor.
async fn choose(page: &Page, label: Label) -> Outcome<()> {
    let choice = format!(
        "//fieldset[contains(@class, 'choice')]/label[normalize-space(.)=\"{}\"]",
        WORDS.label(label)
    );
    page.press(By::XPath(choice)).await
}

/// The longest name that a load can have, without a place to break it.
const LONG_NAME: &str =
    "Wwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwww";

/// Walks through the states of the page and looks at each.
async fn tour(page: &Page, address: &str, check: Check) -> Outcome<Findings> {
    let mut findings = Findings::default();
    page.open(address).await?;
    findings.look(page, check, "start").await?;
    page.start_from(address, "blank").await?;
    findings.look(page, check, "blank").await?;
    page.start_anew_from("camper").await?;
    findings.look(page, check, "planner").await?;
    page.press(By::Id("add-something")).await?;
    findings.look(page, check, "catalogue").await?;
    page.press(By::Id("add-something")).await?;

    page.open_load(1).await?;
    findings.look(page, check, "load").await?;
    page.type_into(Field::LoadPower, "abc").await?;
    findings.look(page, check, "refused").await?;
    page.type_into(Field::LoadPower, "9000").await?;
    findings.look(page, check, "overloaded").await?;
    let name = page.element(By::Css(".load .editor input[maxlength='80']")).await?;
    name.send_keys(LONG_NAME).await?;
    choose(page, Label::HoursPerDay).await?;
    findings.look(page, check, "hours").await?;
    choose(page, Label::Always).await?;
    page.flip(Label::ThereIsAnInverter).await?;
    open_all_folds(page).await?;
    page.flip(Label::ThereIsAnAlternator).await?;
    page.flip(Label::ThereIsShore).await?;
    page.flip(Label::OwnSun).await?;
    page.flip(Label::OwnAir).await?;
    open_all_folds(page).await?;
    findings.look(page, check, "opened").await?;

    page.press(By::Id("menu-plans")).await?;
    findings.look(page, check, "plans").await?;
    page.press(By::XPath(format!("//dialog[@open]//button[.=\"{}\"]", WORDS.label(Label::Close))))
        .await?;
    page.press(By::Id("menu-share")).await?;
    page.element(By::Id("pasted-link")).await?.send_keys("#p=xyz").await?;
    page.press(By::Id("open-link")).await?;
    findings.look(page, check, "share").await?;
    page.session.goto("about:blank").await?;
    page.open(&format!("{address}#p=xyz")).await?;
    page.wait_for_notice(WORDS.unchanged()).await?;
    findings.look(page, check, "broken-link").await?;
    Ok(findings)
}

async fn expect_to_fit(width: u32, height: u32) -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(Look { width, height, dark: false }, |page| async move {
        tour(&page, site.address(), Check::Width).await?.expect_none();
        Ok(())
    })
    .await
}

#[tokio::test]
async fn nothing_sticks_out_of_a_phone() -> Outcome<()> {
    expect_to_fit(360, 740).await
}

#[tokio::test]
async fn nothing_sticks_out_of_the_smallest_phone() -> Outcome<()> {
    expect_to_fit(320, 640).await
}

#[tokio::test]
async fn nothing_sticks_out_of_a_laptop() -> Outcome<()> {
    expect_to_fit(1280, 800).await
}

async fn expect_accessible(look: Look) -> Outcome<()> {
    let site = Site::of_dist().await?;
    in_browser(look, |page| async move {
        tour(&page, site.address(), Check::Access).await?.expect_none();
        Ok(())
    })
    .await
}

#[tokio::test]
async fn every_state_is_accessible_by_day() -> Outcome<()> {
    expect_accessible(Look::PHONE).await
}

#[tokio::test]
async fn every_state_is_accessible_in_the_dark() -> Outcome<()> {
    expect_accessible(Look::DESKTOP.in_the_dark()).await
}

/// Pictures of all states, to be looked at by people.
#[tokio::test]
async fn every_state_has_its_picture_taken() -> Outcome<()> {
    let site = Site::of_dist().await?;
    let address = site.address();
    for look in [Look::PHONE, Look::PHONE.in_the_dark(), Look::DESKTOP, Look::DESKTOP.in_the_dark()]
    {
        in_browser(look, |page| async move {
            tour(&page, address, Check::Picture).await?;
            Ok(())
        })
        .await?;
    }
    Ok(())
}
