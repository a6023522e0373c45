//! Names in less than five bits a letter.
//!
//! Each letter has a code of 4 to 14 bits, the shorter the more often it stands in names of appliances and places (Huffman's
//! method over the catalogue's names and search words, the towns, and everyday names in six languages). The codes are canonical:
//! the lengths alone tell them. Letters without a code are written as [`OTHER`] and their code point. [`END`] closes a text, and zeros
//! fill its last byte. Names begin with a capital, so the case of the first letter is turned round before writing and after
//! reading. The table is frozen: it is part of every link that exists.

use super::bytes::{Reader, Writer};
use crate::document::Problem;

/// The end of a text.
const END: char = '\0';
/// A letter without a code of its own follows.
const OTHER: char = '\u{1}';
/// Bits that hold any code point.
const OTHER_BITS: u32 = 21;

/// Bits of the shortest code.
const SHORTEST: u32 = 4;
/// Letters by the length of their code, the shortest first; in the order of their codes.
const LETTERS: [&str; 11] = [
    "\0 aeilnort",
    "cdghmpsu",
    "bfk",
    "vwy",
    "(),z",
    "-02PSjx",
    "\u{1}1ABCDGMVWqé",
    "'3468EFHIKLNRTáóü",
    "5JOàãåçèíöø",
    ".Uæëñú",
    "!\"#%&*+/79:;=?QXYZ_¡°²¿ßâäêîïôõû",
];

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

/// Code and length of a letter.
fn code(letter: char) -> Option<(u32, u32)> {
    let mut first = 0;
    for (length, letters) in (SHORTEST..).zip(LETTERS) {
        if let Some(place) = letters.chars().position(|known| known == letter) {
            return Some((first + place as u32, length));
        }
        first = (first + letters.chars().count() as u32) << 1;
    }
    None
}

/// Collects bits into bytes, the highest first.
struct Bits<'a> {
    out: &'a mut Writer,
    byte: u8,
    used: u32,
}

impl Bits<'_> {
    fn push(&mut self, value: u32, length: u32) {
        for bit in (0..length).rev() {
            self.byte = self.byte << 1 | (value >> bit & 1) as u8;
            self.used += 1;
            if self.used == 8 {
                self.out.byte(self.byte);
                (self.byte, self.used) = (0, 0);
            }
        }
    }

    fn letter(&mut self, letter: char) {
        // The marks themselves are no letters of a text.
        let known = if letter == END || letter == OTHER { None } else { code(letter) };
        match known {
            Some((value, length)) => self.push(value, length),
            None => {
                self.mark(OTHER);
                self.push(letter.into(), OTHER_BITS);
            }
        }
    }

    fn mark(&mut self, mark: char) {
        if let Some((value, length)) = code(mark) {
            self.push(value, length);
        }
    }
}

pub(super) fn write(text: &str, out: &mut Writer) {
    let mut bits = Bits { out, byte: 0, used: 0 };
    for letter in turned(text).chars() {
        bits.letter(letter);
    }
    bits.mark(END);
    if bits.used > 0 {
        bits.push(0, 8 - bits.used);
    }
}

/// Takes bits off the front, byte by byte.
struct Taken<'a, 'b> {
    input: &'a mut Reader<'b>,
    byte: u8,
    left: u32,
}

impl Taken<'_, '_> {
    fn bit(&mut self) -> Result<u32, Box<Problem>> {
        if self.left == 0 {
            (self.byte, self.left) = (self.input.byte()?, 8);
        }
        self.left -= 1;
        Ok(u32::from(self.byte >> self.left & 1))
    }

    fn bits(&mut self, length: u32) -> Result<u32, Box<Problem>> {
        let mut value = 0;
        for _ in 0..length {
            value = value << 1 | self.bit()?;
        }
        Ok(value)
    }

    fn letter(&mut self) -> Result<char, Box<Problem>> {
        let (mut value, mut first) = (self.bits(SHORTEST)?, 0);
        for letters in LETTERS {
            if let Some(letter) = letters.chars().nth((value - first) as usize) {
                return Ok(letter);
            }
            first = (first + letters.chars().count() as u32) << 1;
            value = value << 1 | self.bit()?;
        }
        Err(Problem::Damaged.into())
    }
}

pub(super) fn read(input: &mut Reader<'_>) -> Result<String, Box<Problem>> {
    let mut bits = Taken { input, byte: 0, left: 0 };
    let mut text = String::new();
    loop {
        match bits.letter()? {
            END => return Ok(turned(&text)),
            OTHER => {
                let point = bits.bits(OTHER_BITS)?;
                text.push(char::from_u32(point).ok_or(Problem::Damaged)?);
            }
            letter => text.push(letter),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn written(text: &str) -> Vec<u8> {
        let mut writer = Writer::default();
        write(text, &mut writer);
        writer.into_bytes()
    }

    #[test]
    fn the_codes_are_complete_and_no_letter_has_two() {
        let mut all: Vec<char> = LETTERS.iter().flat_map(|letters| letters.chars()).collect();
        let count = all.len();
        all.sort_unstable();
        all.dedup();
        assert_eq!(all.len(), count);
        // Every row of bits is the beginning of some code, and no code is the beginning of another.
        let shares = all.iter().map(|letter| 1_u32 << (16 - code(*letter).unwrap().1));
        assert_eq!(shares.sum::<u32>(), 1 << 16);
    }

    #[test]
    fn any_text_survives() {
        let texts =
            ["Laptop charger", "", "x", "X", "Été", "灯 🔦", "ALL CAPS", "<b>&\"'", "\0\u{1}"];
        for text in texts {
            let bytes = written(text);
            let mut reader = Reader::new(&bytes);
            assert_eq!(read(&mut reader).unwrap(), text);
            assert!(reader.is_empty());
            for cut in 0..bytes.len() {
                assert_eq!(
                    read(&mut Reader::new(&bytes[..cut])),
                    Err(Problem::Damaged.into()),
                    "{text}"
                );
            }
        }
    }

    #[test]
    fn everyday_names_take_less_than_five_bits_a_letter() {
        let names = ["Laptop charger", "Water pump", "Heater fan", "Reading lights", "Fridge"];
        let bits = |text: &str| -> u32 {
            turned(text).chars().map(|letter| code(letter).unwrap().1).sum()
        };
        let letters: usize = names.iter().map(|name| name.len()).sum();
        let mean = f64::from(names.map(bits).iter().sum::<u32>()) / letters as f64;
        assert!(mean < 5.0, "{mean}");
    }
}
