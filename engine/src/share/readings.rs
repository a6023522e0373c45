//! Readings of a gauge in a few bytes each: by how much they differ from the one before.
//!
//! A reading is the minutes since the one before (of the first: since the first date allowed), doubled, and one more if other parts
//! were noted than in the one before. Then that shape follows: what the gauge showed in two bits, a bit for the voltage, one for the
//! current. Then what was noted, as steps of its resolution more than when it was last noted.

use super::bytes::{Reader, Writer};
use crate::document::{Field, Logged, Problem};

/// What is known of the readings before.
#[derive(Default)]
pub(super) struct Row {
    minute: u64,
    shape: u64,
    /// Steps of charge, voltage and current when they were last noted.
    steps: [i64; 3],
}

const VOLTS: u64 = 0b0100;
const AMPS: u64 = 0b1000;

impl Row {
    /// Writes a reading that is no earlier than the one before.
    pub(super) fn write(&mut self, at: usize, reading: &mut Logged, out: &mut Writer) {
        if at == 0 {
            *self = Self::default();
        }
        let volts = if reading.volts.is_some() { VOLTS } else { 0 };
        let amps = if reading.amps.is_some() { AMPS } else { 0 };
        let shape = u64::from(reading.shown.kind()) | volts | amps;
        let minute = reading.minute();
        out.unsigned(minute.saturating_sub(self.minute) << 1 | u64::from(shape != self.shape));
        if shape != self.shape {
            out.unsigned(shape);
        }
        (self.minute, self.shape) = (minute, shape);
        let shown = reading.shown.number().map(|(field, own)| (field, *own));
        let noted = [
            shown,
            reading.volts.map(|own| (Field::ReadVolts, own)),
            reading.amps.map(|own| (Field::ReadAmps, own)),
        ];
        for (before, noted) in self.steps.iter_mut().zip(noted) {
            let Some((field, value)) = noted else { continue };
            let steps = field.range().steps(value);
            out.signed(steps.wrapping_sub(*before));
            *before = steps;
        }
    }

    /// Reads one.
    pub(super) fn read(
        &mut self,
        at: usize,
        reading: &mut Logged,
        input: &mut Reader<'_>,
    ) -> Result<(), Box<Problem>> {
        if at == 0 {
            *self = Self::default();
        }
        let later = input.unsigned()?;
        if later & 1 == 1 {
            self.shape = input.unsigned()?;
        }
        if self.shape > VOLTS + AMPS + 3 {
            return Err(Problem::NewerVersion { version: 0 }.into());
        }
        self.minute += later >> 1;
        reading.put_at(self.minute).ok_or(Problem::Damaged)?;
        let [shown, volts, amps] = &mut self.steps;
        let mut next = |before: &mut i64, field: Field| -> Result<f64, Box<Problem>> {
            *before = before.wrapping_add(input.signed()?);
            Ok(field.range().value(*before))
        };
        reading.shown.turn_into((self.shape & 3) as u32);
        if let Some((field, own)) = reading.shown.number() {
            *own = next(shown, field)?;
        }
        let has = |bit: u64| self.shape & bit != 0;
        reading.volts = has(VOLTS).then(|| next(volts, Field::ReadVolts)).transpose()?;
        reading.amps = has(AMPS).then(|| next(amps, Field::ReadAmps)).transpose()?;
        Ok(())
    }
}
