//! What only lead-acid has: two wells, and plates that resist charge the more, the fuller they are.
//!
//! **Question answered:** which current does a bank take at its absorption voltage?
//!
//! **Method.** Voltage while charging: V = V_open + (I/C₁₀)·(6/(1 + I^0.86) + 0.48/(1 − s)^1.2 + 0.036)·(1 − 0.025·ΔT) a cell
//! (Copetti, Lorenzo & Chenlo 1993, Prog. Photovolt. 1:283-292; the paper's identity was seen, its constants are recalled).
//! The first term bends with the current, which is in ampere and so belongs to one size of battery; it is taken at
//! 10 A, the ten-hour current of 100 Ah, which makes the law a resistance. Near full the second term rules by far. Solved for
//! the current at the absorption voltage this *is* the taper; there is no other.
//!
//! **Left out:** hysteresis, stratification, sulphation, gas voltage, the fade of the activation term at high currents.

use crate::quantity::{AmpHours, Amps, Celsius, Hours};

use super::wells::Fit;

/// 6/(1 + I^0.86) at 10 A \[V of a cell by the hour of C₁₀\].
const ACTIVATION: f64 = 0.727770;
/// The constant term.
const OHMIC: f64 = 0.036;
/// The term that grows towards full, and its power.
const CROWDING: f64 = 0.48;
const CROWDING_POWER: f64 = 1.2;
/// What a kelvin over 25 °C takes of the resistance to charge.
const CHARGE_PER_K: f64 = 0.025;
/// The linear law in temperature is not followed beyond these shares.
const CHARGE_COLD: (f64, f64) = (0.25, 2.25);
/// Resistance to discharge by a typical rule: about twice as much at empty as at full, and at -20 °C as at 25 °C.
const EMPTY_DOUBLES: f64 = 1.0;
const COLD_DOUBLES_BY: Celsius = Celsius(45.0);
/// Temperature of all figures.
const STATED_AT: Celsius = Celsius(25.0);
/// Parts of the state of charge between which the conductance is drawn straight.
const PARTS: usize = 64;
/// Hours of the discharge that capacities of the law are stated for.
const TEN: Hours = Hours(10.0);

/// The shape of a lead-acid bank, whatever its size.
#[derive(Clone, Debug, PartialEq)]
pub struct LeadAcid {
    /// Its wells; a whole of 1 has the rated capacity that its ratio says.
    pub fit: Fit,
    /// All charge over the rated capacity, at least 1.
    pub whole: f64,
    /// Capacity in ten hours over the rated one.
    ten_hours: f64,
    /// Conductance to charge from empty to full \[A by V of a cell, by Ah of C₁₀\].
    conductance: [f64; PARTS + 1],
}

impl LeadAcid {
    /// Typical of a rating in so many hours and an exponent of the loss of capacity with current.
    #[must_use]
    pub fn typical(exponent: f64, hour_rate: Hours) -> Self {
        Self::of(Fit::typical(exponent, hour_rate))
    }

    /// Of wells whose whole is over a rated capacity of 1.
    pub(super) fn of(fit: Fit) -> Self {
        let whole = f64::max(fit.whole.0, 1.0);
        let mut conductance = [0.0; PARTS + 1];
        for (place, value) in conductance.iter_mut().enumerate().take(PARTS) {
            let left = 1.0 - place as f64 / PARTS as f64;
            *value = 1.0 / (ACTIVATION + OHMIC + CROWDING / libm::pow(left, CROWDING_POWER));
        }
        let ten_hours = fit.wells.capacity(AmpHours(whole), TEN).0;
        Self { fit, whole, ten_hours, conductance }
    }

    /// Current that empties so much rated capacity in ten hours.
    #[must_use]
    pub fn ten_hour_current(&self, rated: AmpHours) -> Amps {
        rated * self.ten_hours / TEN
    }

    /// Conductance to charge at a state of charge (ratio) and a temperature \[A by V of a cell, by Ah of C₁₀\].
    #[inline]
    #[must_use]
    pub fn conductance(&self, charge: f64, temperature: Celsius) -> f64 {
        let at = charge * PARTS as f64;
        let at = if at > 0.0 { at } else { 0.0 };
        let place = (at as usize).min(PARTS - 1);
        let (low, high) = (self.conductance[place], self.conductance[place + 1]);
        let value = low + (high - low) * (at - place as f64);
        let cold = 1.0 - CHARGE_PER_K * (temperature - STATED_AT).0;
        let cold = if cold < CHARGE_COLD.0 { CHARGE_COLD.0 } else { cold };
        let cold = if cold > CHARGE_COLD.1 { CHARGE_COLD.1 } else { cold };
        if value > 0.0 { value / cold } else { 0.0 }
    }

    /// Resistance to discharge over that of a full bank at 25 °C.
    #[inline]
    #[must_use]
    pub fn resistance_factor(charge: f64, temperature: Celsius) -> f64 {
        let cold = (STATED_AT - temperature).at_least(Celsius::ZERO) / COLD_DOUBLES_BY;
        (1.0 + EMPTY_DOUBLES * (1.0 - charge)) * (1.0 + cold)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MILD: Celsius = Celsius(25.0);

    fn flooded() -> LeadAcid {
        LeadAcid::typical(1.2, Hours(20.0))
    }

    #[test]
    fn the_activation_is_what_the_law_says_at_ten_ampere() {
        assert!((ACTIVATION - 6.0 / (1.0 + libm::pow(10.0, 0.86))).abs() < 1e-6);
    }

    #[test]
    fn the_fuller_the_less_it_takes_and_full_takes_nothing() {
        let bank = flooded();
        let at = |percent: i32| bank.conductance(f64::from(percent) / 100.0, MILD);
        assert!((0..100).all(|percent| at(percent + 1) < at(percent)));
        assert_eq!(at(100), 0.0);
        let law = 1.0 / (ACTIVATION + OHMIC + CROWDING / libm::pow(0.3, CROWDING_POWER));
        assert!((at(70) - law).abs() < 2e-3 * law);
    }

    #[test]
    fn cold_plates_resist_more() {
        let bank = flooded();
        assert!(bank.conductance(0.5, Celsius(0.0)) < bank.conductance(0.5, MILD) / 1.5);
        assert_eq!(LeadAcid::resistance_factor(1.0, MILD), 1.0);
        assert_eq!(LeadAcid::resistance_factor(0.0, MILD), 2.0);
        assert_eq!(LeadAcid::resistance_factor(1.0, Celsius(-20.0)), 2.0);
    }

    #[test]
    fn ten_hours_draw_less_than_twenty() {
        let current = flooded().ten_hour_current(AmpHours(100.0));
        assert!(current > Amps(8.0) && current < Amps(10.0), "{current:?}");
    }
}
