//! Journeys through the built page in headless Chromium: what only a browser can show.

#[path = "in_browser"]
mod in_browser {
    mod appearance;
    mod bad_input;
    mod compare;
    mod editing;
    mod guess;
    mod installed;
    mod journeys;
    mod keeping;
    mod keyboard;
    mod languages;
    mod loads;
    mod offline;
    mod paper;
    mod pictures;
    mod place;
    mod replay;
    mod shell;
    mod sizing;
    mod sources;
    mod speed;
    mod stopped;
    mod weather;
    mod working;
}
