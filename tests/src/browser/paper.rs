//! The printed sheet, and the code that a phone's camera reads.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Value, json};

use super::{Outcome, Page};

/// Width and height of a paper \[inch\].
pub(super) type Paper = (f64, f64);
/// The paper of most of the world.
pub const A4: Paper = (8.27, 11.69);
/// The paper of North America.
pub const LETTER: Paper = (8.5, 11.0);

/// Notes what stands in the page while it is printed, and whether anything of the sheet is seen before and after.
const NOTE_PRINT: &str = "addEventListener('beforeprint', () => setTimeout(() => {}, 0));
    new MutationObserver(() => {
        const sheet = document.querySelector('.sheet');
        if (sheet) window.printed = { text: sheet.textContent, curves: sheet.querySelectorAll('.curve path').length,
            codes: sheet.querySelectorAll('.code').length, places: sheet.querySelectorAll('.day svg, .months svg').length };
    }).observe(document.body, { childList: true });";

/// Where the code of the open dialog stands on the screen, in pixels.
const CODE: &str =
    "(() => { const at = document.querySelector('dialog[open] .code').getBoundingClientRect();
    return { x: at.x, y: at.y, width: at.width, height: at.height, scale: 3 }; })()";

/// Width, height and the grey of each pixel of a picture.
fn grey(picture: &[u8]) -> Outcome<(usize, usize, Vec<u8>)> {
    let mut reader = png::Decoder::new(std::io::Cursor::new(picture)).read_info()?;
    let mut pixels = vec![0; reader.output_buffer_size().ok_or("too large a picture")?];
    let frame = reader.next_frame(&mut pixels)?;
    let samples = frame.color_type.samples();
    // Black and white have the same in every channel; the first will do.
    let grey = pixels.chunks_exact(samples).map(|pixel| pixel[0]).collect();
    Ok((frame.width as usize, frame.height as usize, grey))
}

impl Page {
    /// Prints the page and gives the number of sheets of paper.
    async fn print(&self, (width, height): Paper) -> Outcome<usize> {
        let paper = json!({ "printBackground": true, "paperWidth": width, "paperHeight": height, "marginTop": 0.5,
            "marginBottom": 0.5, "marginLeft": 0.5, "marginRight": 0.5 });
        let printed = self.devtools("Page.printToPDF", paper).await?;
        let data = STANDARD.decode(printed["data"].as_str().unwrap_or_default())?;
        let text = String::from_utf8_lossy(&data);
        // Each page of a document is an object of this type; the one of their tree is of another.
        Ok(text.matches("/Type /Page").count() - text.matches("/Type /Pages").count())
    }

    /// Prints the sheet of the plan that is open, once the worker has written it: the number of sheets of paper, and what stands
    /// on them (`text`, and how many `curves`, `codes`, `places` with pictures).
    ///
    /// # Errors
    /// If none is written within some seconds.
    pub async fn print_sheet(&self, paper: Paper) -> Outcome<(usize, Value)> {
        self.session.execute(NOTE_PRINT, Vec::new()).await?;
        for _ in 0..40 {
            let sheets = self.print(paper).await?;
            let seen = self.evaluate("window.printed ?? null").await?;
            if !seen.is_null() {
                self.wait_until("document.querySelector('.sheet') === null").await?;
                return Ok((sheets, seen));
            }
            self.resolve("new Promise((done) => setTimeout(done, 250))").await?;
        }
        Err("no sheet was printed".into())
    }

    /// Reads the code in the open dialog as a phone would: off the picture on the screen.
    ///
    /// # Errors
    /// If no code is seen, or it cannot be read.
    pub async fn read_code(&self) -> Outcome<String> {
        self.wait_until("document.querySelector('dialog[open] .code') !== null").await?;
        self.session
            .execute(
                "document.querySelector('dialog[open] .code').scrollIntoView({ block: 'center' })",
                Vec::new(),
            )
            .await?;
        let clip = json!({ "format": "png", "clip": self.evaluate(CODE).await? });
        let shot = self.devtools("Page.captureScreenshot", clip).await?;
        let (width, height, grey) =
            grey(&STANDARD.decode(shot["data"].as_str().unwrap_or_default())?)?;
        let at = |x: usize, y: usize| grey.get(y * width + x).copied().unwrap_or(255);
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(width, height, at);
        let grids = image.detect_grids();
        Ok(grids.first().ok_or("no code is seen")?.decode()?.1)
    }
}
