//! A plan from wherever it is: a file, a link, or standard input; a year of weather and readings from files.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use sunlarder_engine::document::{Document, MAX_BYTES, Problem};
use sunlarder_engine::place::{MAX_FILE_BYTES, WeatherFile, WeatherFileFault};
use sunlarder_engine::share;
use sunlarder_engine::words::command_line::Fault;

/// Shorter than the code of a blank plan; a mistyped file name of that length is no link.
const SHORTEST_CODE: usize = 8;

/// The plan that an argument names.
pub(crate) fn plan(argument: &str) -> Result<Document, Fault> {
    if argument == "-" {
        return parsed(&text(io::stdin().lock(), argument)?);
    }
    if Path::new(argument).exists() {
        let file = File::open(argument).map_err(|_| Fault::Unreadable(argument.to_owned()))?;
        return parsed(&text(file, argument)?);
    }
    if !looks_like_link(argument) {
        return Err(Fault::NoFile(argument.to_owned()));
    }
    share::decode(share::code_in(argument)).map_err(Fault::Refused)
}

/// The year of weather in a file.
pub(crate) fn weather(path: &str) -> Result<WeatherFile, Fault> {
    let file = File::open(path).map_err(|_| Fault::NoWeather(path.to_owned()))?;
    let mut bytes = Vec::new();
    let most = MAX_FILE_BYTES as u64 + 1;
    file.take(most).read_to_end(&mut bytes).map_err(|_| Fault::Unreadable(path.to_owned()))?;
    if bytes.len() > MAX_FILE_BYTES {
        return Err(Fault::Weather(WeatherFileFault::TooLarge { bytes: bytes.len() }));
    }
    // Many such files have names of places in older character sets; nothing else of them is more than ASCII.
    WeatherFile::read(&String::from_utf8_lossy(&bytes)).map_err(Fault::Weather)
}

/// The text of readings in a file.
pub(crate) fn readings(path: &str) -> Result<String, Fault> {
    if path == "-" {
        return text(io::stdin().lock(), path);
    }
    let file = File::open(path).map_err(|_| Fault::NoReadings(path.to_owned()))?;
    text(file, path)
}

/// All text of a source that is no longer than a plan.
fn text(from: impl Read, name: &str) -> Result<String, Fault> {
    let mut bytes = Vec::new();
    let most = MAX_BYTES as u64 + 1;
    from.take(most).read_to_end(&mut bytes).map_err(|_| Fault::Unreadable(name.to_owned()))?;
    if bytes.len() > MAX_BYTES {
        return Err(Fault::Refused(Problem::TooLarge { bytes: bytes.len() }));
    }
    String::from_utf8(bytes).map_err(|_| Fault::NotText(name.to_owned()))
}

/// A plan from the text of a file, which may also hold a link.
fn parsed(text: &str) -> Result<Document, Fault> {
    // A byte order mark, as some editors write it, is no part of the text.
    let text = text.trim_start_matches('\u{feff}');
    let read = if looks_like_link(text.trim()) {
        share::decode(share::code_in(text))
    } else {
        Document::from_json(text)
    };
    read.map_err(Fault::Refused)
}

/// Whether a text is a code or holds an address with one, rather than a file's name or content.
fn looks_like_link(text: &str) -> bool {
    let is_code = |text: &str| {
        text.len() >= SHORTEST_CODE
            && text.bytes().all(|byte| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'_'))
    };
    is_code(text)
        || !text.starts_with(['{', '[']) && text.contains("://") && text.contains('#')
        || text.starts_with('#')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn links_are_told_from_files() {
        for link in ["AQAAAAAAAAA", "https://example.org/#p=AQ", "#p=AQ", "see https://a.b/#p=AQ"] {
            assert!(looks_like_link(link), "{link}");
        }
        for other in
            ["plan.json", "dir/plan", "{\"sunlarder\": 1}", "", "plan", "{\"a\":\"http://b#p=1\"}"]
        {
            assert!(!looks_like_link(other), "{other}");
        }
    }
}
