//! Journeys through the built page in headless Chromium: what only a browser can show.

#[path = "in_browser"]
mod in_browser {
    mod appearance;
    mod bad_input;
    mod buyer;
    mod editing;
    mod keeping;
    mod keyboard;
    mod languages;
    mod offline;
    mod pictures;
    mod replay;
    mod shell;
    mod sources;
    mod speed;
    mod stopped;
    mod weather;
    mod working;
}
