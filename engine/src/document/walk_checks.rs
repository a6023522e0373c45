//! The walk through a reading of a check.

use super::checks::Check;
use super::field::Field;
use super::keys;
use super::problem::Problem;
use super::visitor::NamedVisitor;
use crate::working::Tag;

pub(super) fn check(
    own: &mut Check,
    at: Tag,
    v: &mut dyn NamedVisitor,
) -> Result<(), Box<Problem>> {
    v.open("checks", at, keys::CHECK)?;
    let place = super::Checked::ALL.iter().position(|known| *known == own.what);
    let mut kind = place.unwrap_or_default() as u32;
    v.variant("read", &mut kind, keys::CHECKED)?;
    own.what = super::Checked::ALL.get(kind as usize).copied().unwrap_or_default();
    if let Some(field) = own.what.field() {
        v.number(keys::CHECKED.form(kind).0, field, &mut own.read, 0.0)?;
    }
    v.end();
    v.id("of", &mut own.of)?;
    v.option("beside_a", Field::CheckCurrent, &mut own.beside_a)?;
    v.close()
}
