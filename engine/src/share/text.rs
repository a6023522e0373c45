//! Names in less than six bits a letter.
//!
//! Text is a row of half bytes. The twelve most frequent characters take one; 48 more take two, the first being 12, 13 or
//! 14; any other takes 15 and its code point in six hexadecimal digits. Names begin with a capital, so the case of the first
//! letter is turned round before writing and after reading. The number of half bytes stands in front. The table is frozen: it
//! is part of every link that exists.

use super::bytes::{Reader, Writer};
use crate::document::Problem;

const SHORT: [char; 12] = [' ', 'e', 'a', 'i', 'r', 't', 'n', 'o', 's', 'l', 'h', 'c'];
const LONG: [char; 48] = [
    'd', 'u', 'm', 'p', 'g', 'b', 'f', 'k', 'w', 'v', 'y', ',', '0', '1', '2', '3', '4', '5', '6',
    '7', '8', '9', '-', '.', 'x', 'z', 'j', 'q', 'T', 'S', 'C', 'A', 'P', 'L', 'B', 'M', 'D', 'W',
    'V', 'E', 'U', 'é', 'ä', 'ö', 'ü', 'ñ', '(', ')',
];
const ESCAPE: u8 = 15;
/// Hexadecimal digits that hold any code point.
const ESCAPE_DIGITS: u32 = 6;

/// Turns the case of an ASCII first letter round.
fn turned(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|letter| {
        if letter.is_ascii_lowercase() {
            letter.to_ascii_uppercase()
        } else {
            letter.to_ascii_lowercase()
        }
    });
    first.into_iter().chain(letters).collect()
}

pub(super) fn write(text: &str, out: &mut Writer) {
    let mut halves = Vec::with_capacity(text.len() * 2);
    for letter in turned(text).chars() {
        if let Some(place) = SHORT.iter().position(|known| *known == letter) {
            halves.push(place as u8);
        } else if let Some(place) = LONG.iter().position(|known| *known == letter) {
            halves.push(12 + (place / 16) as u8);
            halves.push((place % 16) as u8);
        } else {
            halves.push(ESCAPE);
            let point = u32::from(letter);
            halves.extend((0..ESCAPE_DIGITS).rev().map(|digit| (point >> (4 * digit) & 15) as u8));
        }
    }
    out.unsigned(halves.len() as u64);
    for pair in halves.chunks(2) {
        out.byte(pair[0] << 4 | pair.get(1).copied().unwrap_or(0));
    }
}

pub(super) fn read(input: &mut Reader<'_>) -> Result<String, Problem> {
    let mut left = input.unsigned()?;
    let mut spare = None;
    let mut half = |input: &mut Reader<'_>| -> Result<Option<u8>, Problem> {
        if left == 0 {
            return Ok(None);
        }
        left -= 1;
        if let Some(low) = spare.take() {
            return Ok(Some(low));
        }
        let byte = input.byte()?;
        spare = Some(byte & 15);
        Ok(Some(byte >> 4))
    };
    let mut text = String::new();
    while let Some(first) = half(input)? {
        let letter = if let Some(letter) = SHORT.get(usize::from(first)) {
            *letter
        } else if first == ESCAPE {
            let mut point = 0;
            for _ in 0..ESCAPE_DIGITS {
                point = point << 4 | u32::from(half(input)?.ok_or(Problem::Damaged)?);
            }
            char::from_u32(point).ok_or(Problem::Damaged)?
        } else {
            let second = half(input)?.ok_or(Problem::Damaged)?;
            let place = usize::from(first - 12) * 16 + usize::from(second);
            *LONG.get(place).ok_or(Problem::Damaged)?
        };
        text.push(letter);
    }
    Ok(turned(&text))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_has_no_letter_twice() {
        let mut all: Vec<char> = SHORT.iter().chain(&LONG).copied().collect();
        all.sort_unstable();
        all.dedup();
        assert_eq!(all.len(), SHORT.len() + LONG.len());
    }

    #[test]
    fn any_text_survives() {
        for text in ["Laptop charger", "", "x", "X", "Été", "灯 🔦", "ALL CAPS", "<b>&\"'"] {
            let mut writer = Writer::default();
            write(text, &mut writer);
            let bytes = writer.into_bytes();
            let mut reader = Reader::new(&bytes);
            assert_eq!(read(&mut reader).unwrap(), text);
            assert!(reader.is_empty());
        }
    }

    #[test]
    fn everyday_names_take_less_than_six_bits_a_letter() {
        let names = ["Laptop charger", "Water pump", "Heater fan", "Reading lights", "Fridge"];
        let (mut letters, mut bytes) = (0, 0);
        for name in names {
            let mut writer = Writer::default();
            write(name, &mut writer);
            letters += name.len();
            bytes += writer.into_bytes().len() - 1;
        }
        let bits = bytes as f64 * 8.0 / letters as f64;
        assert!(bits < 6.0, "{bits}");
    }
}
