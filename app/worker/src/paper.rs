//! A piece of the page as one text, which the page only has to put into elements.
//!
//! A row of marks, each up to the next one: a control character that says what it is, then its text. Elements open and close as in
//! markup, but what is text stays text: no name that somebody gave a load can make an element.

/// Opens an element of that name.
pub const OPEN: char = '\u{1}';
/// Opens an element of a picture, which has a namespace of its own.
pub const DRAW: char = '\u{2}';
/// Gives the open element an attribute: its name, `=` and its value. A name that begins with `:` is a property of its style.
pub const ATTR: char = '\u{3}';
/// A text in the open element.
pub const TEXT: char = '\u{4}';
/// Closes the open element.
pub const CLOSE: char = '\u{5}';

/// A piece of the page in the making.
#[derive(Debug, Default)]
pub struct Paper(String);

impl Paper {
    /// Opens an element.
    pub fn open(&mut self, tag: &str) -> &mut Self {
        self.mark(OPEN, tag)
    }

    /// Opens an element with a class.
    pub fn class(&mut self, tag: &str, class: &str) -> &mut Self {
        self.open(tag).attr("class", class)
    }

    /// Opens an element of a picture.
    pub fn draw(&mut self, tag: &str) -> &mut Self {
        self.mark(DRAW, tag)
    }

    /// Gives the open element an attribute.
    pub fn attr(&mut self, name: &str, value: &str) -> &mut Self {
        self.mark(ATTR, name);
        self.0.push('=');
        self.add(value);
        self
    }

    /// Puts a text into the open element.
    pub fn text(&mut self, text: &str) -> &mut Self {
        self.mark(TEXT, text)
    }

    /// Closes the open element.
    pub fn close(&mut self) -> &mut Self {
        self.mark(CLOSE, "")
    }

    /// An element with a class and a text, closed.
    pub fn said(&mut self, tag: &str, class: &str, text: &str) -> &mut Self {
        self.open(tag);
        if !class.is_empty() {
            self.attr("class", class);
        }
        self.text(text).close()
    }

    /// Puts another piece into the open element.
    pub fn piece(&mut self, other: &str) -> &mut Self {
        self.0.push_str(other);
        self
    }

    /// The whole piece.
    #[must_use]
    pub fn finish(self) -> String {
        self.0
    }

    /// The whole piece at the end of a chain; nothing is left.
    #[must_use]
    pub fn take(&mut self) -> String {
        core::mem::take(&mut self.0)
    }

    fn mark(&mut self, mark: char, text: &str) -> &mut Self {
        self.0.push(mark);
        self.add(text);
        self
    }

    /// Adds a text without the marks that would part it.
    fn add(&mut self, text: &str) {
        self.0.extend(text.chars().filter(|own| !(OPEN..=CLOSE).contains(own)));
    }
}

/// The marks of a paper with their texts; what stands before the first one is no mark's.
pub fn marks(paper: &str) -> impl Iterator<Item = (char, &str)> {
    let is_mark = |own: char| (OPEN..=CLOSE).contains(&own);
    let mut rest = paper.trim_start_matches(move |own| !is_mark(own));
    core::iter::from_fn(move || {
        let mark = rest.chars().next()?;
        let own = &rest[mark.len_utf8()..];
        let end = own.find(is_mark).unwrap_or(own.len());
        rest = &own[end..];
        Some((mark, &own[..end]))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_written_is_read() {
        let mut paper = Paper::default();
        paper.class("p", "hint").text("3 °C").close().draw("svg").close();
        let text = paper.finish();
        let read: Vec<(char, &str)> = marks(&text).collect();
        let expected = [
            (OPEN, "p"),
            (ATTR, "class=hint"),
            (TEXT, "3 °C"),
            (CLOSE, ""),
            (DRAW, "svg"),
            (CLOSE, ""),
        ];
        assert_eq!(read, expected);
        assert_eq!(marks("no mark").count(), 0);
        assert_eq!(marks("").count(), 0);
    }

    #[test]
    fn a_text_cannot_make_an_element() {
        let mut paper = Paper::default();
        let name = format!("Fri{CLOSE}d{OPEN}script{TEXT}ge");
        paper.class("p", &name).text(&name).close();
        let expected = format!("{OPEN}p{ATTR}class=Fridscriptge{TEXT}Fridscriptge{CLOSE}");
        assert_eq!(paper.finish(), expected);
    }
}
