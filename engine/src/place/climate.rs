//! Twelve months of clearness and temperature, from the grid or from a person.
//!
//! **Range.** Own irradiation may be 0.1 kWh/m² a day over what arrives outside the air; more is refused. How good the grid
//! is stands in its own header; each climate says its [`Origin`].

use crate::quantity::{Celsius, Irradiation};
use crate::sun::{MONTH_DAY, Site, daily_extraterrestrial, noon};
use crate::working::{Formula, Tag, Trace, term};

/// Irradiation that a person may state above what arrives outside the air \[kWh/m² a day\]: at the edge of polar night
/// the mean of a month differs by this much from its typical day, and the sky is lit before the sun is up.
const EDGE_OF_NIGHT: Irradiation = Irradiation(0.1);

/// Where the clearness of a place comes from, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Origin {
    /// The person's own figures.
    Own,
    /// A weather model, corrected with records of stations, over land.
    Land,
    /// The same model where no station is near.
    Model,
    /// Polar or island land, by regression.
    Regression,
    /// Open sea, from an atlas of ships' observations; about ±15 %.
    Ocean,
    /// Polar sea and ice, filled from the neighbours: a guess.
    Guess,
}

/// Where the temperatures of a place come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TemperatureOrigin {
    /// The person's own figures.
    Own,
    /// Weather reanalysis of 2000 to 2025, mean over some 500 km; off by 2 K, by 5 K in mountains.
    Reanalysis,
}

/// A month's irradiation of which no sky could be that bright, or that is no number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ImplausibleSun {
    /// The month, 1 to 12.
    pub month: u8,
    /// What was stated \[kWh/m² a day\].
    pub stated: Irradiation,
    /// The most that is accepted \[kWh/m² a day\]; the least is 0.
    pub most: Irradiation,
}

/// The climate of a place, January first.
#[derive(Clone, Debug, PartialEq)]
pub struct MonthlyClimate {
    /// Where.
    pub site: Site,
    /// Mean irradiation on the horizontal over that outside the air, 0 to 1.
    pub clearness: [f64; 12],
    /// Mean air temperature at 2 m \[°C\].
    pub temperature: [Celsius; 12],
    /// Where the clearness comes from.
    pub origin: Origin,
    /// Where the temperature comes from.
    pub temperature_origin: TemperatureOrigin,
}

impl MonthlyClimate {
    /// Irradiation outside the air on the typical day of a month, 0 to 11 \[kWh/m²\]; 0 for any other number.
    #[must_use]
    pub fn extraterrestrial(&self, month: usize, trace: &mut impl Trace) -> Irradiation {
        match MONTH_DAY.get(month) {
            Some(&day) => daily_extraterrestrial(self.site.latitude, noon(day), trace),
            None => Irradiation::ZERO,
        }
    }

    /// Irradiation on the horizontal of each month: its peak sun hours \[kWh/m² a day\].
    #[must_use]
    pub fn irradiation(&self) -> [Irradiation; 12] {
        core::array::from_fn(|month| self.extraterrestrial(month, &mut ()) * self.clearness[month])
    }

    /// The clearness of a month, 0 to 11, with its working: read from the grid, or the person's own irradiation over that
    /// outside the air. 0 for any other number.
    #[must_use]
    pub fn clearness_of(&self, month: usize, trace: &mut impl Trace) -> f64 {
        let Some(&clearness) = self.clearness.get(month) else { return 0.0 };
        let tag = Tag::Month(month as u8 + 1);
        if self.origin != Origin::Own {
            let inputs = [term(self.site.latitude), term(self.site.longitude)];
            return trace.step_of(tag, Formula::GridClearness, clearness, &inputs);
        }
        let outside = self.extraterrestrial(month, trace);
        if outside.0 <= 0.0 {
            // Polar night: nothing over nothing is no working.
            return clearness;
        }
        let inputs = [term(outside * clearness), term(outside)];
        trace.step_of(tag, Formula::OwnClearness, clearness, &inputs)
    }

    /// The same place with a person's own irradiation on the horizontal \[kWh/m² a day\], which are its peak sun hours.
    ///
    /// Where the month's typical day is polar night the clearness is 0 and what was stated (at most 0.1) is dropped.
    ///
    /// # Errors
    /// [`ImplausibleSun`] for the first month that is negative, no number, or brighter than outside the air.
    pub fn with_own_sun(mut self, own: [Irradiation; 12]) -> Result<Self, ImplausibleSun> {
        for (month, stated) in own.into_iter().enumerate() {
            let outside = self.extraterrestrial(month, &mut ());
            let most = outside + EDGE_OF_NIGHT;
            if !(0.0..=most.0).contains(&stated.0) {
                return Err(ImplausibleSun { month: month as u8 + 1, stated, most });
            }
            self.clearness[month] = if outside.0 > 0.0 { (stated / outside).min(1.0) } else { 0.0 };
        }
        self.origin = Origin::Own;
        Ok(self)
    }

    /// The same place with a person's own mean temperatures \[°C\].
    #[must_use]
    pub fn with_own_temperature(mut self, own: [Celsius; 12]) -> Self {
        self.temperature = own;
        self.temperature_origin = TemperatureOrigin::Own;
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Degrees;
    use crate::working::Working;

    fn temperate() -> MonthlyClimate {
        MonthlyClimate {
            site: Site { latitude: Degrees(52.0), longitude: Degrees(5.0) },
            clearness: [0.4; 12],
            temperature: [Celsius(9.0); 12],
            origin: Origin::Land,
            temperature_origin: TemperatureOrigin::Reanalysis,
        }
    }

    #[test]
    fn own_peak_sun_hours_come_back() {
        let own = [0.7, 1.4, 2.5, 3.9, 4.9, 5.1, 5.0, 4.3, 3.0, 1.7, 0.8, 0.5].map(Irradiation);
        let climate = temperate().with_own_sun(own).unwrap();
        assert_eq!(climate.origin, Origin::Own);
        for (month, (back, own)) in climate.irradiation().into_iter().zip(own).enumerate() {
            assert!((back.0 - own.0).abs() < 1e-12, "{month}");
        }
        let mut working = Working::new();
        let traced = climate.clearness_of(11, &mut working);
        assert_eq!(traced.to_bits(), climate.clearness[11].to_bits());
        assert!(working.result().unwrap().inputs[1].made_by.is_some());
    }

    #[test]
    fn a_sun_brighter_than_outside_the_air_is_refused() {
        for wrong in [9.0, -0.1, f64::NAN, f64::INFINITY] {
            let mut own = [Irradiation(0.5); 12];
            own[11] = Irradiation(wrong);
            let refusal = temperate().with_own_sun(own).unwrap_err();
            assert_eq!(refusal.month, 12);
            assert!(refusal.most.0 > 1.8 && refusal.most.0 < 2.2, "{refusal:?}");
        }
    }
}
