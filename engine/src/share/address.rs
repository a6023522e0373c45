//! Codes in addresses: `https://…/#p=CODE`.
//!
//! The code stands behind the `#`, which browsers never send to a server.

/// What stands before a code behind the `#` of an address.
pub const PARAMETER: &str = "p=";

/// Finds the code in whatever a person pastes: a whole address, one inside a message, or the bare code.
///
/// What holds no `#p=` comes back without the space around it; [`super::decode`] judges it.
#[must_use]
pub fn code_in(text: &str) -> &str {
    text.split_once('#')
        .and_then(|(_, fragment)| {
            fragment.split(['&', '#']).find_map(|part| part.strip_prefix(PARAMETER))
        })
        .map_or(text.trim(), leading_code)
}

/// The part before anything that no code has, such as the full stop of the message.
fn leading_code(text: &str) -> &str {
    let is_code = |letter: char| letter.is_ascii_alphanumeric() || letter == '-' || letter == '_';
    text.split(|letter| !is_code(letter)).next().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_are_found_wherever_they_were_pasted() {
        let cases = [
            ("AQ-_9", "AQ-_9"),
            ("  AQ-_9\n", "AQ-_9"),
            ("https://example.org/plan/#p=AQ-_9", "AQ-_9"),
            ("https://example.org/?p=no#p=AQ-_9", "AQ-_9"),
            ("https://example.org/#from=mail&p=AQ-_9&x=1", "AQ-_9"),
            ("Look at this: https://example.org/#p=AQ-_9. Will it do?", "AQ-_9"),
            ("#p=", ""),
            ("", ""),
            ("https://example.org/#other", "https://example.org/#other"),
        ];
        for (pasted, code) in cases {
            assert_eq!(code_in(pasted), code, "{pasted}");
        }
    }
}
