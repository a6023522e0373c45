//! Link codes whose bytes were changed on purpose: the checksum put right again, so that what lies behind it is reached.

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use crc::{CRC_24_OPENPGP, Crc};

const CHECKSUM: Crc<u32> = Crc::<u32>::new(&CRC_24_OPENPGP);
/// Bytes of the checksum at the end of a code.
const LENGTH: usize = 3;

/// A code of these bytes with the checksum that makes it look sound.
#[must_use]
pub fn sealed(mut bytes: Vec<u8>) -> String {
    let sum = CHECKSUM.checksum(&bytes).to_be_bytes();
    bytes.extend_from_slice(&sum[1..]);
    URL_SAFE_NO_PAD.encode(bytes)
}

/// The bytes of a code without their checksum; nothing if it is none.
#[must_use]
pub fn unsealed(code: &str) -> Vec<u8> {
    let mut bytes = URL_SAFE_NO_PAD.decode(code).unwrap_or_default();
    bytes.truncate(bytes.len().saturating_sub(LENGTH));
    bytes
}
