//! How warm the cells get and what they make of the light.
//!
//! **Method.** Cell temperature by the light alone: Faiman's model with 1 m/s of wind for modules with air behind them, a
//! coefficient for those that lie flat on something. Power falls in a straight line with cell temperature, and with the
//! logarithm of the light in weak light.
//!
//! **Range.** Silicon; −10 to 75 °C and a fifth of full sun and more (see `source`). **Left out:** real wind, spectrum, the
//! time that a module takes to warm.

use crate::quantity::{Celsius, Irradiance};

/// How a module is fixed, which is how well it cools.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Mounting {
    /// Air behind it: on a rack, a rail, a stand.
    #[default]
    Free,
    /// Lying on a roof or a deck.
    Flush,
}

/// Wind near the module when nothing is known \[m/s\]; with it the model of Faiman meets the maker's nominal figure.
const WIND: f64 = 1.0;
/// Ross coefficient of a module that lies on a roof or a deck \[K·m²/W\]: middle of the published 0.04 to 0.056
/// (Skoplaki & Palyvos 2009, doi:10.1016/j.solener.2008.10.008).
const FLUSH_ROSS: f64 = 0.045;
/// Loss of efficiency per e-fold of irradiance, a typical value: 0.968 of it is left at 200 W/m², where data sheets of
/// present modules state 0.95 to 0.98.
const LOW_LIGHT: f64 = 0.02;
/// Irradiance of the standard test conditions.
const STANDARD: Irradiance = Irradiance(1000.0);
/// Cell temperature of the standard test conditions.
const STANDARD_CELL: Celsius = Celsius(25.0);

/// Temperature of the cells \[°C\] at the irradiance on the plane.
#[must_use]
pub fn cell_temperature(mounting: Mounting, air: Celsius, irradiance: Irradiance) -> Celsius {
    match mounting {
        Mounting::Free => cell_temperature_faiman(air, irradiance, WIND),
        Mounting::Flush => cell_temperature_ross(air, irradiance, FLUSH_ROSS),
    }
}

/// Cell temperature \[°C\] with the `wind` near the module \[m/s\]. Source: Faiman 2008, doi:10.1002/pip.813, with
/// u₀ = 25.0 and u₁ = 6.84.
#[must_use]
pub fn cell_temperature_faiman(air: Celsius, irradiance: Irradiance, wind: f64) -> Celsius {
    air + Celsius(irradiance.0 / (25.0 + 6.84 * wind))
}

/// Cell temperature \[°C\] with a Ross coefficient \[K·m²/W\]: (nominal operating temperature − 20)/800 for a module in
/// the open, .031 at 45 °C. Source: Ross 1976, as in Duffie & Beckman section 23.3.
#[must_use]
pub fn cell_temperature_ross(air: Celsius, irradiance: Irradiance, ross: f64) -> Celsius {
    air + Celsius(irradiance.0 * ross)
}

/// Power of an array at its best point over its rated power, from the irradiance on the plane after reflection, the cell
/// temperature and the temperature coefficient of power \[%/K\] (about −0.3 to −0.45 for silicon).
#[must_use]
pub fn array_power_ratio(irradiance: Irradiance, cell: Celsius, gamma_pct_per_k: f64) -> f64 {
    if irradiance.0 <= 0.0 {
        return 0.0;
    }
    let sun = irradiance / STANDARD;
    let warmth = 1.0 + gamma_pct_per_k / 100.0 * (cell - STANDARD_CELL).0;
    let low_light = 1.0 + LOW_LIGHT * libm::log(sun);
    if warmth <= 0.0 || low_light <= 0.0 { 0.0 } else { sun * warmth * low_light }
}

/// The same by the polynomial of Huld et al. 2011 (doi:10.1016/j.solmat.2011.07.026) with its coefficients of crystalline
/// silicon, for comparison: its loss at low light (0.923 of the efficiency at 200 W/m²) is larger than data sheets of
/// present modules state, so the planner does not use it.
#[must_use]
pub fn power_ratio_huld(irradiance: Irradiance, module: Celsius) -> f64 {
    if irradiance.0 <= 0.0 {
        return 0.0;
    }
    let sun = irradiance / STANDARD;
    let warmth = (module - STANDARD_CELL).0;
    let log = libm::log(sun);
    sun * (1.0
        + log * (-0.017_237 - 0.040_465 * log)
        + warmth * (-0.004_702 + log * (0.000_149 + 0.000_170 * log) + 0.000_005 * warmth))
}
