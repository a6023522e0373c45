//! Sentences as one text for the page, which only has to part them. Every part becomes a text on the page, never markup.

/// Stands between sentences: the unit separator of ASCII.
pub const PART: char = '\u{1f}';

/// Sentences one after the other; a separator in the name that somebody gave a load would shift all that follows.
#[must_use]
pub fn list(sentences: &[String]) -> String {
    let mut text = String::new();
    for (place, sentence) in sentences.iter().enumerate() {
        if place > 0 {
            text.push(PART);
        }
        text.extend(sentence.chars().filter(|own| *own != PART));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_cannot_part_a_sentence() {
        let broken = format!("Fri{PART}dge");
        assert_eq!(list(&[broken, "runs".into()]), format!("Fridge{PART}runs"));
        assert_eq!(list(&[]), "");
    }
}
