//! A whole scenario as a code short enough for a text message or a QR code.
//!
//! **Layout.** The code is base64 (URL alphabet, no padding) of: one byte of format version; the sections of
//! [`walk`] in its order; three bytes of CRC-24 over all before. A section is a presence mask followed by the values that
//! differ from their default, in order; readings of a gauge have a layout of their own (see `readings.rs`). A mask is a run of bytes of seven bits, lowest first, the eighth bit saying that
//! another follows. Numbers are whole steps of their field's resolution, zigzag and LEB128. Texts have an alphabet of their own
//! (see `text.rs`).
//!
//! **Stability.** Old codes open for ever: sections only grow at their end, resolutions and defaults are frozen,
//! appliances are frozen numbers. A code of a newer release shows fields unknown here, which is told as such. Golden
//! codes under `tests/golden` prove it.

mod address;
mod bytes;
mod readings;
mod text;

pub use address::{PARAMETER, code_in};

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use crc::{CRC_24_OPENPGP, Crc, NoTable};

use crate::document::{Document, Field, List, Logged, Problem, TextField, Visitor, walk};
use crate::working::Tag;
use bytes::{Reader, Writer};
use readings::Row;

/// Format version of the link; the first byte.
const LINK_VERSION: u8 = 1;

/// Longest code that is read: far beyond the largest plan, small enough to do no harm.
const MAX_CODE: usize = 65_536;

/// Detects every change of up to 24 neighbouring bits and all but one in 16 million others.
/// Bit by bit: a table of 1 kB would weigh more on the page than it saves on some hundred bytes.
const CHECKSUM: Crc<u32, NoTable> = Crc::<u32, NoTable>::new(&CRC_24_OPENPGP);

/// The code of a scenario.
///
/// # Errors
/// A [`Problem`] if the scenario itself is out of its limits.
pub fn encode(document: &Document) -> Result<String, Problem> {
    let mut document = document.clone().checked()?;
    let mut encoder = Encoder {
        out: Writer::default(),
        section: Writer::default(),
        mask: Vec::new(),
        row: Row::default(),
    };
    encoder.out.byte(LINK_VERSION);
    walk(&mut document, &mut encoder)?;
    let mut bytes = encoder.out.into_bytes();
    let sum = CHECKSUM.checksum(&bytes).to_be_bytes();
    bytes.extend_from_slice(&sum[1..]);
    Ok(URL_SAFE_NO_PAD.encode(bytes))
}

/// The scenario of a code.
///
/// # Errors
/// A [`Problem`] that tells a damaged code from one of a newer release.
pub fn decode(code: &str) -> Result<Document, Problem> {
    let code = code.trim();
    if code.len() > MAX_CODE {
        return Err(Problem::TooLarge { bytes: code.len() });
    }
    let bytes = URL_SAFE_NO_PAD.decode(code).map_err(|fault| match fault {
        base64::DecodeError::InvalidByte(..) => Problem::BadLetters,
        _ => Problem::Damaged,
    })?;
    let (body, sum) = bytes.split_last_chunk::<3>().ok_or(Problem::Damaged)?;
    if CHECKSUM.checksum(body).to_be_bytes()[1..] != *sum {
        return Err(Problem::Damaged);
    }
    let (version, body) = body.split_first().ok_or(Problem::Damaged)?;
    if *version != LINK_VERSION {
        return Err(Problem::NewerVersion { version: (*version).into() });
    }
    let mut decoder =
        Decoder { input: Reader::new(body), mask: Vec::new(), at: 0, row: Row::default() };
    let mut document = Document::default();
    walk(&mut document, &mut decoder)?;
    if !decoder.input.is_empty() {
        return Err(Problem::NewerVersion { version: 0 });
    }
    document.checked()
}

/// Writes what differs from its default.
struct Encoder {
    out: Writer,
    section: Writer,
    mask: Vec<bool>,
    row: Row,
}

impl Encoder {
    /// Notes whether the next value of the section is written.
    fn present(&mut self, there: bool) -> bool {
        self.mask.push(there);
        there
    }
}

impl Visitor for Encoder {
    fn open(&mut self, _: Tag) -> Result<(), Box<Problem>> {
        self.section = Writer::default();
        self.mask.clear();
        Ok(())
    }

    fn close(&mut self) -> Result<(), Box<Problem>> {
        self.out.mask(&self.mask);
        self.out.append(&self.section);
        Ok(())
    }

    fn number(&mut self, field: Field, value: &mut f64, default: f64) -> Result<(), Box<Problem>> {
        if self.present(*value != default) {
            self.section.signed(field.range().steps(*value));
        }
        Ok(())
    }

    fn option(&mut self, field: Field, value: &mut Option<f64>) -> Result<(), Box<Problem>> {
        self.present(value.is_some());
        if let Some(value) = value {
            self.section.signed(field.range().steps(*value));
        }
        Ok(())
    }

    fn whole(&mut self, value: &mut u32, default: u32, _: u32) -> Result<(), Box<Problem>> {
        if self.present(*value != default) {
            self.section.unsigned((*value).into());
        }
        Ok(())
    }

    fn text(&mut self, _: TextField, value: &mut String) -> Result<(), Box<Problem>> {
        if self.present(!value.is_empty()) {
            text::write(value, &mut self.section);
        }
        Ok(())
    }

    fn length(&mut self, _: List, length: usize) -> Result<usize, Box<Problem>> {
        if self.present(length > 0) {
            self.section.unsigned(length as u64);
        }
        Ok(length)
    }

    fn reading(&mut self, at: usize, value: &mut Logged) -> Result<(), Box<Problem>> {
        self.row.write(at, value, &mut self.section);
        Ok(())
    }
}

/// Reads what is present and sets the rest to its default.
struct Decoder<'a> {
    input: Reader<'a>,
    mask: Vec<bool>,
    at: usize,
    row: Row,
}

impl Decoder<'_> {
    fn present(&mut self) -> bool {
        let there = self.mask.get(self.at).copied().unwrap_or(false);
        self.at += 1;
        there
    }
}

impl Visitor for Decoder<'_> {
    fn open(&mut self, _: Tag) -> Result<(), Box<Problem>> {
        self.mask = self.input.mask()?;
        self.at = 0;
        Ok(())
    }

    fn close(&mut self) -> Result<(), Box<Problem>> {
        // Values beyond those known here: a newer release wrote them.
        if self.mask.iter().skip(self.at).any(|there| *there) {
            return Err(Problem::NewerVersion { version: 0 }.into());
        }
        Ok(())
    }

    fn number(&mut self, field: Field, value: &mut f64, default: f64) -> Result<(), Box<Problem>> {
        *value = if self.present() { field.range().value(self.input.signed()?) } else { default };
        Ok(())
    }

    fn option(&mut self, field: Field, value: &mut Option<f64>) -> Result<(), Box<Problem>> {
        *value =
            if self.present() { Some(field.range().value(self.input.signed()?)) } else { None };
        Ok(())
    }

    fn whole(&mut self, value: &mut u32, default: u32, max: u32) -> Result<(), Box<Problem>> {
        *value = default;
        if self.present() {
            let found = self.input.unsigned()?;
            // A choice beyond those known here: a newer release has more of them.
            if found > u64::from(max) {
                return Err(Problem::NewerVersion { version: 0 }.into());
            }
            *value = found as u32;
        }
        Ok(())
    }

    fn text(&mut self, _: TextField, value: &mut String) -> Result<(), Box<Problem>> {
        *value = if self.present() { text::read(&mut self.input)? } else { String::new() };
        Ok(())
    }

    fn length(&mut self, list: List, _: usize) -> Result<usize, Box<Problem>> {
        if !self.present() {
            return Ok(0);
        }
        let length = usize::try_from(self.input.unsigned()?).unwrap_or(usize::MAX);
        if length > list.limit() {
            return Err(Problem::TooMany { list, length }.into());
        }
        Ok(length)
    }

    fn reading(&mut self, at: usize, value: &mut Logged) -> Result<(), Box<Problem>> {
        self.row.read(at, value, &mut self.input)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Array, Charger, Cooling, Inverter, Kept, Load, Rating, Span, When};

    fn rich() -> Document {
        let mut plan = Document {
            name: "Émile's boat, 7 °C".into(),
            standing_a: 0.08,
            inverter: Some(Inverter { idle_w: Some(8.0), ..Inverter::default() }),
            alternator: Some(Charger::default()),
            arrays: vec![Array { tilt_deg: 30.0, ..Array::default() }],
            ..Document::default()
        };
        plan.place.peak_sun_h = Some([0.5; 12]);
        plan.bank.kept = Kept::AtC(-3.5);
        for (at, name) in ["Fridge", "灯", ""].iter().enumerate() {
            let mut load = Load { name: (*name).to_owned(), ..Load::default() };
            load.rating = Rating::Plate { current_a: 0.5 + at as f64, at_v: 230.0 };
            load.cooling = Some(Cooling { inside_c: -18.0, reference_c: 32.0 });
            load.schedule.when = When::Spans(vec![Span { from_min: 1320, to_min: 390 }]);
            plan.loads.push(load);
        }
        plan.loads[2].appliance = Some(17);
        plan
    }

    #[test]
    fn a_plan_survives_its_code() {
        for plan in [Document::default(), rich()] {
            let code = encode(&plan).unwrap();
            assert_eq!(decode(&code).unwrap(), plan);
        }
    }

    #[test]
    fn every_cut_and_every_flipped_bit_is_noticed() {
        let code = encode(&rich()).unwrap();
        for length in 0..code.len() {
            assert!(decode(&code[..length]).is_err(), "cut to {length}");
        }
        let bytes = URL_SAFE_NO_PAD.decode(&code).unwrap();
        for bit in 0..bytes.len() * 8 {
            let mut bytes = bytes.clone();
            bytes[bit / 8] ^= 1 << (bit % 8);
            let flipped = decode(&URL_SAFE_NO_PAD.encode(bytes));
            assert_eq!(flipped, Err(Problem::Damaged), "bit {bit}");
        }
    }

    #[test]
    fn codes_of_newer_releases_are_told_as_such() {
        let seal = |mut bytes: Vec<u8>| {
            let sum = CHECKSUM.checksum(&bytes).to_be_bytes();
            bytes.extend_from_slice(&sum[1..]);
            URL_SAFE_NO_PAD.encode(bytes)
        };
        assert_eq!(decode(&seal(vec![2])), Err(Problem::NewerVersion { version: 2 }));
        let bytes = URL_SAFE_NO_PAD.decode(encode(&Document::default()).unwrap()).unwrap();
        let body = &bytes[..bytes.len() - 3];
        let mut longer = body.to_vec();
        longer.push(0);
        assert_eq!(decode(&seal(longer)), Err(Problem::NewerVersion { version: 0 }));
        // The first mask of a blank plan is one empty byte; a mask with its fourteenth bit set claims a field unknown here.
        let mut unknown = vec![body[0], 0x80, 0x40];
        unknown.extend_from_slice(&body[2..]);
        assert_eq!(decode(&seal(unknown)), Err(Problem::NewerVersion { version: 0 }));
    }

    #[test]
    fn other_letters_are_told_from_damage() {
        assert_eq!(decode("no such code!"), Err(Problem::BadLetters));
        assert_eq!(decode(""), Err(Problem::Damaged));
        assert_eq!(decode(&"A".repeat(70_000)), Err(Problem::TooLarge { bytes: 70_000 }));
    }
}
