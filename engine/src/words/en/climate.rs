//! Where the climate of a place comes from.

use crate::place::{Origin, TemperatureOrigin};

/// Where the clearness of a place comes from, and how far it may be off.
#[must_use]
pub fn origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Own => "your own peak sun hours",
        Origin::Land => "a weather model of 2011 to 2015, corrected with records of stations",
        Origin::Model => "a weather model of 2011 to 2015; no station is near",
        Origin::Regression => "estimated for polar or island land from a weather model",
        Origin::Ocean => "an atlas of ships' observations, good to about 15 %",
        Origin::Guess => "filled in from its neighbours: polar sea or ice, a guess",
    }
}

/// Where the temperature of a place comes from, and how far it may be off.
#[must_use]
pub fn temperature_origin(origin: TemperatureOrigin) -> &'static str {
    match origin {
        TemperatureOrigin::Own => "your own temperatures",
        TemperatureOrigin::Reanalysis => {
            "weather reanalysis of 2000 to 2025 over some 500 km; off by about 2 °C, by 5 °C in mountains"
        }
    }
}
