//! Whole numbers and presence masks as bytes.

use crate::document::Problem;

/// Collects bytes.
#[derive(Default)]
pub(super) struct Writer {
    bytes: Vec<u8>,
}

impl Writer {
    pub(super) fn byte(&mut self, byte: u8) {
        self.bytes.push(byte);
    }

    /// LEB128: seven bits a byte, lowest first.
    pub(super) fn unsigned(&mut self, mut value: u64) {
        while value >= 0x80 {
            self.bytes.push(value as u8 | 0x80);
            value >>= 7;
        }
        self.bytes.push(value as u8);
    }

    /// Zigzag, so that small negative numbers stay short.
    pub(super) fn signed(&mut self, value: i64) {
        self.unsigned(((value << 1) ^ (value >> 63)) as u64);
    }

    /// A presence mask without its trailing absences.
    pub(super) fn mask(&mut self, mask: &[bool]) {
        let used = mask.iter().rposition(|there| *there).map_or(1, |last| last + 1);
        let groups = used.div_ceil(7);
        for group in 0..groups {
            let mut byte = if group + 1 < groups { 0x80 } else { 0 };
            for bit in 0..7 {
                if mask.get(group * 7 + bit).copied().unwrap_or(false) {
                    byte |= 1 << bit;
                }
            }
            self.bytes.push(byte);
        }
    }

    pub(super) fn append(&mut self, other: &Self) {
        self.bytes.extend_from_slice(&other.bytes);
    }

    pub(super) fn into_bytes(self) -> Vec<u8> {
        self.bytes
    }
}

/// Takes bytes off the front.
pub(super) struct Reader<'a> {
    rest: &'a [u8],
}

impl<'a> Reader<'a> {
    pub(super) fn new(bytes: &'a [u8]) -> Self {
        Self { rest: bytes }
    }

    pub(super) fn is_empty(&self) -> bool {
        self.rest.is_empty()
    }

    pub(super) fn byte(&mut self) -> Result<u8, Box<Problem>> {
        let (first, rest) = self.rest.split_first().ok_or(Problem::Damaged)?;
        self.rest = rest;
        Ok(*first)
    }

    pub(super) fn unsigned(&mut self) -> Result<u64, Box<Problem>> {
        let mut value = 0u64;
        for shift in (0..63).step_by(7) {
            let byte = self.byte()?;
            value |= u64::from(byte & 0x7f) << shift;
            if byte < 0x80 {
                return Ok(value);
            }
        }
        Err(Problem::Damaged.into())
    }

    pub(super) fn signed(&mut self) -> Result<i64, Box<Problem>> {
        let value = self.unsigned()?;
        Ok((value >> 1) as i64 ^ -((value & 1) as i64))
    }

    pub(super) fn mask(&mut self) -> Result<Vec<bool>, Box<Problem>> {
        let mut mask = Vec::new();
        loop {
            let byte = self.byte()?;
            mask.extend((0..7).map(|bit| byte >> bit & 1 == 1));
            if byte < 0x80 {
                return Ok(mask);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_survive_at_every_length() {
        for value in [0, 1, -1, 63, 64, -64, -65, 8191, 8192, 1 << 40, -(1 << 40)] {
            let mut writer = Writer::default();
            writer.signed(value);
            let bytes = writer.into_bytes();
            assert_eq!(Reader::new(&bytes).signed(), Ok(value));
            assert_eq!(
                Reader::new(&bytes[..bytes.len() - 1]).signed(),
                Err(Problem::Damaged.into())
            );
        }
    }

    #[test]
    fn masks_survive_and_drop_what_is_absent_at_the_end() {
        let mut mask = vec![false; 20];
        mask[0] = true;
        mask[8] = true;
        let mut writer = Writer::default();
        writer.mask(&mask);
        let bytes = writer.into_bytes();
        assert_eq!(bytes, [0x81, 0x02]);
        let read = Reader::new(&bytes).mask().unwrap();
        assert_eq!(read[..14], mask[..14]);
    }
}
