//! The colours of the page can be told apart: contrast by WCAG 2.2, success criteria 1.4.3 (text) and 1.4.11 (controls and
//! graphics), in every scheme of `style/tokens.css`.

use std::collections::HashMap;

const TOKENS: &str = include_str!("../../style/tokens.css");

/// 1.4.3, level AA, for text of ordinary size.
const TEXT: f64 = 4.5;
/// 1.4.11, for what is needed to see a control or to read a graphic.
const GRAPHIC: f64 = 3.0;

type Scheme = HashMap<&'static str, [u8; 3]>;

/// The colour tokens between two marks of the file; none where the first is missing, which `every_scheme_is_read` notices.
fn colours(from: &str, to: &str) -> Scheme {
    let rest = TOKENS.split_once(from).map_or("", |(_, rest)| rest);
    let block = rest.split_once(to).map_or(rest, |(block, _)| block);
    block.lines().filter_map(colour).collect()
}

fn colour(line: &'static str) -> Option<(&'static str, [u8; 3])> {
    let (name, value) = line.trim().strip_prefix("--")?.split_once(": #")?;
    let rgb = u32::from_str_radix(value.strip_suffix(';')?, 16).ok()?;
    let [_, red, green, blue] = rgb.to_be_bytes();
    Some((name, [red, green, blue]))
}

/// The schemes with their names; dark and print name only what they change.
fn schemes() -> [(&'static str, Scheme); 3] {
    let light = colours(":root", "@media");
    let over = |changes: Scheme| light.clone().into_iter().chain(changes).collect();
    let dark = over(colours("@media (prefers-color-scheme: dark)", "@media"));
    let print = over(colours("@media print", "\u{0}"));
    [("light", light), ("dark", dark), ("print", print)]
}

/// Relative luminance, as WCAG 2.2 defines it.
fn luminance(rgb: [u8; 3]) -> f64 {
    let [red, green, blue] = rgb.map(|channel| match f64::from(channel) / 255.0 {
        low if low <= 0.04045 => low / 12.92,
        high => ((high + 0.055) / 1.055).powf(2.4),
    });
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

fn contrast(one: [u8; 3], other: [u8; 3]) -> f64 {
    let (a, b) = (luminance(one), luminance(other));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[track_caller]
fn expect(least: f64, fronts: &[&str], grounds: &[&str]) {
    for (name, scheme) in schemes() {
        for (front, ground) in fronts.iter().flat_map(|f| grounds.iter().map(move |g| (*f, *g))) {
            let found = contrast(scheme[front], scheme[ground]);
            assert!(found >= least, "{name}: {front} on {ground} is {found:.2} : 1, not {least}");
        }
    }
}

#[test]
fn black_on_white_is_the_greatest_contrast() {
    assert!((contrast([0; 3], [255; 3]) - 21.0).abs() < 1e-9);
}

#[test]
fn every_scheme_is_read() {
    let papers = schemes().map(|(_, scheme)| scheme["paper"]);
    assert_eq!(papers, [[0xf6, 0xef, 0xe1], [0x12, 0x15, 0x1e], [0xff, 0xff, 0xff]]);
}

#[test]
fn text_can_be_read_on_every_ground() {
    let texts = ["ink", "ink-soft", "sun-text", "night", "ember", "leaf"];
    expect(TEXT, &texts, &["paper", "sheet", "night-shade"]);
    expect(TEXT, &["bar-text", "bar-strong"], &["bar"]);
    expect(TEXT, &["on-sun"], &["sun"]);
}

#[test]
fn chosen_controls_can_be_read() {
    expect(TEXT, &["paper"], &["ink"]);
}

#[test]
fn controls_and_bars_can_be_seen() {
    expect(GRAPHIC, &["edge", "sun-edge", "night", "ember"], &["paper", "sheet"]);
}
