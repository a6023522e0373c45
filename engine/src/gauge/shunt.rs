//! What a battery gauge measures, and how far it strays.
//!
//! **Question answered:** which current does a voltage across the shunt mean, and how wrong is a count of amp-hours by now?
//!
//! **Method.** A shunt is a resistance, stated by the current that drops a certain voltage across it. A gauge adds up that
//! current; an offset is added up with it hour by hour, a gain error with every amp-hour that is moved. Neither shows in the count, so
//! only their largest sum can be told, until the count is set anew at full.
//!
//! **Left out:** heating of the shunt. Thresholds, efficiency and standing losses are in `counter`.

use crate::quantity::{AmpHours, Amps, Hours, Ohms, Percent, Volts, Watts};

/// A shunt, by the current at which it drops a voltage: 200 A at 75 mV.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shunt {
    /// The current that it is stated for; more than nothing.
    pub rated: Amps,
    /// The voltage across it at that current; more than nothing.
    pub drop: Volts,
}

impl Shunt {
    /// Its resistance \[Ω\].
    #[must_use]
    pub fn resistance(&self) -> Ohms {
        self.drop / self.rated
    }

    /// The current that a voltage across it means \[A\]; its sign is that of the voltage.
    #[must_use]
    pub fn current(&self, across: Volts) -> Amps {
        across / self.resistance()
    }

    /// The heat in it at a current \[W\].
    #[must_use]
    pub fn heat(&self, current: Amps) -> Watts {
        current * self.resistance() * current
    }
}

/// What is wrong with a gauge's current.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CurrentError {
    /// Current shown at none; of a bound, at most in either direction.
    pub offset: Amps,
    /// Share of any current by which it is shown too large; of a bound, too large or too small.
    pub gain: Percent,
}

impl CurrentError {
    /// How far a count of charge may be off after a time in which so much charge was moved, in or out, taken together.
    #[must_use]
    pub fn drift(&self, time: Hours, moved: AmpHours) -> AmpHours {
        self.offset.abs() * time + moved.abs() * self.gain.abs().ratio()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_shunt_shows_both_directions_and_warms_by_the_square() {
        let shunt = Shunt { rated: Amps(500.0), drop: Volts(0.05) };
        assert!((shunt.current(Volts(-0.005)) - Amps(-50.0)).0.abs() < 1e-9);
        assert!((shunt.heat(Amps(500.0)) - Watts(25.0)).0.abs() < 1e-9);
        assert!((shunt.heat(Amps(-250.0)) - Watts(6.25)).0.abs() < 1e-9);
    }

    #[test]
    fn offset_counts_by_time_and_gain_by_what_is_moved() {
        let error = CurrentError { offset: Amps(-0.01), gain: Percent(0.5) };
        assert!((error.drift(Hours(24.0), AmpHours::ZERO).0 - 0.24).abs() < 1e-12);
        assert!((error.drift(Hours::ZERO, AmpHours(100.0)).0 - 0.5).abs() < 1e-12);
        assert!((error.drift(Hours(24.0), AmpHours(100.0)).0 - 0.74).abs() < 1e-12);
    }
}
