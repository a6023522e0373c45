//! The code of a link, for the camera of a phone.
//!
//! What can be said in a code of [`EASY`] is said with a level of correction that bears a smudge; longer links get the lowest
//! level, which keeps the modules large. Where even that makes them too fine, there is no code but a sentence.

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};
use sunlarder_engine::words::Words;
use sunlarder_engine::words::sheet::OnSheet;

use crate::paper::Paper;

/// The largest code that any phone reads at once: 97 modules wide.
const EASY: u8 = 20;
/// The largest that phones read from a screen of their size or from paper: 145 modules wide.
const LARGEST: u8 = 32;
/// Empty modules that must lie around it.
const QUIET: i32 = 4;
/// A module on paper must not be finer \[tenths of a millimetre\]...
const MODULE: i32 = 4;
/// ...and no code smaller than this \[mm\].
const SMALLEST: i32 = 32;

/// The code of a text; none if it is too long to be read.
#[must_use]
pub fn code_of(text: &str) -> Option<QrCode> {
    let segments = [QrSegment::make_bytes(text.as_bytes())];
    let within = |level, most| {
        QrCode::encode_segments_advanced(
            &segments,
            level,
            Version::MIN,
            Version::new(most),
            None,
            true,
        )
    };
    within(QrCodeEcc::Medium, EASY).or_else(|_| within(QrCodeEcc::Low, LARGEST)).ok()
}

/// Draws the code of a text, or says that it is too long.
pub(super) fn draw(paper: &mut Paper, text: &str, words: Words) {
    let Some(code) = code_of(text) else {
        paper.said("p", "hint", words.on_sheet(OnSheet::CodeTooLong));
        return;
    };
    let side = code.size() + 2 * QUIET;
    let millimetres = (side * MODULE / 10).max(SMALLEST);
    paper
        .draw("svg")
        .attr("class", "code")
        .attr("role", "img")
        .attr("aria-label", words.on_sheet(OnSheet::Code))
        .attr("viewBox", &format!("0 0 {side} {side}"))
        .attr(":--printed", &format!("{millimetres}mm"))
        .draw("rect")
        .attr("class", "code-ground")
        .attr("width", &side.to_string())
        .attr("height", &side.to_string())
        .close()
        .draw("path")
        .attr("class", "code-ink")
        .attr("d", &path(&code))
        .close()
        .close();
}

/// The dark modules, each run of a row as one rectangle.
fn path(code: &QrCode) -> String {
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let run = (x..code.size()).take_while(|at| code.get_module(*at, y)).count() as i32;
            if run > 0 {
                path.push_str(&format!("M{} {}h{run}v1h-{run}z", x + QUIET, y + QUIET));
            }
            x += run.max(1);
        }
    }
    path
}

/// The link to a plan on a page at this address, behind what it may say of a question.
pub(super) fn link(page: &str, code: &str) -> String {
    let joint = if page.contains('#') { '&' } else { '#' };
    format!("{page}{joint}p={code}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use sunlarder_engine::words::Language;

    #[test]
    fn what_no_phone_reads_has_no_code() {
        let longest = |level: &str, length: usize| {
            let code = code_of(&level.repeat(length));
            code.map(|code| (code.version().value(), code.error_correction_level()))
        };
        assert_eq!(longest("a", 100).map(|own| own.0 < EASY), Some(true));
        assert_eq!(longest("a", 1900), Some((LARGEST, QrCodeEcc::Low)));
        assert_eq!(longest("a", 2000), None);
        let mut paper = Paper::default();
        draw(&mut paper, &"a".repeat(2000), Words::of(Language::English));
        assert!(!paper.finish().contains("svg"));
    }
}
