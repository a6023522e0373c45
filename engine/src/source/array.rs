//! An array of modules with its charge controller.
//!
//! **Method.** Light on the plane, less shade, dirt, ageing and unequal modules, warms the cells and makes power. A
//! maximum-power-point controller passes that power on at its efficiency, up to its current limit. A series-regulating one holds the
//! array at the bank's voltage, so what counts is the current there, from a curve through the two points that a data sheet
//! states (short circuit and best point). Heat moves the best point faster than the open-circuit voltage; how fast follows from the
//! power coefficient, so that both kinds of controller see the same module.
//!
//! **Validity.** From −10 to 75 °C and down to a fifth of full sun the two-point curve meets a single-diode model within 3 % of the
//! short-circuit current while the bank's voltage lies under nine tenths of the best point of the moment; at that point itself it
//! gives up to a tenth too little in weak light. The power meets it within 3.6 %. See the reference tests. Left out: partial shade
//! by cells, wind, snow.

use crate::document::{Array as Section, ControllerKind, Mounting as Mounted};
use crate::quantity::{Amps, Celsius, Irradiance, Percent, Volts, Watts, Within};
use crate::sky::{Facing, Mounting, Plane, Shade, SkyStep, array_power_ratio, cell_temperature};

/// Tracking times conversion of a maximum-power-point controller, typical (0.98 · 0.96).
pub const MPPT_EFFICIENCY: f64 = 0.94;
/// What the array must stand over the bank for such a controller to start \[V\], typical.
pub const START_MARGIN: Volts = Volts(1.0);
/// Drop over a series regulator and its blocking diode \[V\], typical.
pub const SERIES_DROP: Volts = Volts(0.3);
/// Change of open-circuit voltage with temperature \[1/K\], typical of crystalline silicon.
pub const VOLTAGE_PER_K: f64 = -0.003;
/// Change of short-circuit current with temperature \[1/K\], typical of crystalline silicon.
const CURRENT_PER_K: f64 = 0.0005;
/// Change of open-circuit voltage with each e-fold of light, typical: the thermal voltage of a cell over its voltage.
const VOLTAGE_PER_LIGHT: f64 = 0.045;
/// Change of power with temperature \[%/K\], typical of present crystalline modules.
pub const POWER_PER_K: Percent = Percent(-0.36);
/// Short-circuit current over the current at the best point, typical.
const SHORT_OVER_BEST: f64 = 1.06;
/// Open-circuit voltage over the voltage at the best point, typical.
const OPEN_OVER_BEST: f64 = 1.21;
/// Modules up to this power usually have 36 cells...
const SMALL_MODULE: Watts = Watts(220.0);
/// ...with this best-point voltage...
const SMALL_BEST: Volts = Volts(18.4);
/// ...larger ones up to this power 60 cells or twice as many halves...
const MIDDLE_MODULE: Watts = Watts(430.0);
/// ...with this one...
const MIDDLE_BEST: Volts = Volts(33.0);
/// ...and the largest 72, with this one.
const LARGE_BEST: Volts = Volts(41.5);
/// Temperature of the standard test.
const STANDARD_CELL: Celsius = Celsius(25.0);
/// Bounds of the best-point voltage over the open-circuit one: no module comes near them, extreme figures do.
const LEAST_BEST_SHARE: f64 = 0.4;
const MOST_BEST_SHARE: f64 = 0.98;
/// Light of the standard test.
const STANDARD_LIGHT: Irradiance = Irradiance(1000.0);

/// One module, as its data sheet states it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Module {
    /// Power in the standard test.
    pub power: Watts,
    /// Voltage at the best point.
    pub best: Volts,
    /// Open-circuit voltage, above that at the best point.
    pub open: Volts,
    /// Short-circuit current, above that at the best point.
    pub short: Amps,
    /// Change of power with temperature \[%/K\].
    pub power_per_k: Percent,
}

impl Module {
    /// Reads a section; what is not stated is typical for the size.
    fn parse(section: &Section) -> Self {
        let power = Watts(section.module_w);
        let best = section.best_point_v.map_or(typical_best(power), Volts);
        // A sheet with an open-circuit voltage under the best point is a slip of the pen; the curve needs them apart.
        let open = section.open_circuit_v.map_or(best * OPEN_OVER_BEST, Volts);
        let open = open.at_least(best / MOST_BEST_SHARE);
        let least = power / best * 1.01;
        let short = section.short_circuit_a.map_or(power / best * SHORT_OVER_BEST, Amps);
        Self {
            power,
            best,
            open,
            short: short.at_least(least),
            power_per_k: section.power_pct_per_k.map_or(POWER_PER_K, Percent),
        }
    }

    /// Open-circuit voltage of cells at a temperature in full light.
    #[must_use]
    pub fn open_at(&self, cell: Celsius) -> Volts {
        self.open * (1.0 + VOLTAGE_PER_K * (cell - STANDARD_CELL).0)
    }

    /// Exponent m of the curve through short circuit and best point, at a cell temperature.
    ///
    /// Both currents change alike, so the best-point voltage takes what the power coefficient leaves.
    fn knee(&self, cell: Celsius) -> f64 {
        let warmth = (cell - STANDARD_CELL).0;
        let best = self.best * (1.0 + (self.power_per_k.ratio() - CURRENT_PER_K) * warmth);
        let share = (best / self.open_at(cell)).within(LEAST_BEST_SHARE, MOST_BEST_SHARE);
        libm::log(1.0 - self.power / self.best / self.short) / libm::log(share)
    }

    /// Current at a voltage, light and cell temperature: I = I_sc · (1 − (U/U_oc)^m), never negative.
    #[must_use]
    pub fn current_at(&self, volts: Volts, light: Irradiance, cell: Celsius) -> Amps {
        let sun = light / STANDARD_LIGHT;
        if sun <= 0.0 {
            return Amps::ZERO;
        }
        let open = self.open_at(cell) + self.open * (VOLTAGE_PER_LIGHT * libm::log(sun));
        if open <= volts {
            return Amps::ZERO;
        }
        let warmth = 1.0 + CURRENT_PER_K * (cell - STANDARD_CELL).0;
        let short = self.short * (sun * warmth);
        (short * (1.0 - libm::pow(volts / open, self.knee(cell)))).at_least(Amps::ZERO)
    }
}

fn typical_best(power: Watts) -> Volts {
    if power <= SMALL_MODULE {
        SMALL_BEST
    } else if power <= MIDDLE_MODULE {
        MIDDLE_BEST
    } else {
        LARGE_BEST
    }
}

/// An array.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Array {
    /// Its place in the plan.
    pub place: u16,
    /// One of its modules.
    pub module: Module,
    /// Modules in one string.
    pub series: f64,
    /// Strings side by side.
    pub parallel: f64,
    /// Where it faces.
    pub plane: Plane,
    facing: Facing,
    /// How it is mounted.
    pub mounting: Mounting,
    /// Whether the sheet stated how its power changes with temperature.
    pub power_per_k_stated: bool,
    /// Loss to dirt.
    pub dirt: Percent,
    /// Loss in the cable.
    pub cable: Percent,
    /// Loss to years.
    pub ageing: Percent,
    /// Other losses.
    pub other: Percent,
    /// Shade by the time of day.
    pub shade: Shade,
    /// Kind of controller.
    pub controller: ControllerKind,
    /// Limit of the controller's output.
    pub limit: Amps,
    /// Highest voltage that the controller takes.
    pub max_voltage: Option<Volts>,
}

/// What an array could give in a step: a power whatever the voltage, or a current.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Feed {
    /// From a maximum-power-point controller.
    pub power: Watts,
    /// From a series regulator.
    pub current: Amps,
}

impl Array {
    /// Reads its section.
    #[must_use]
    pub fn parse(section: &Section, place: u16) -> Self {
        let plane = Plane {
            tilt: crate::quantity::Degrees(section.tilt_deg),
            azimuth: crate::quantity::Degrees(section.azimuth_deg),
        };
        Self {
            place,
            module: Module::parse(section),
            series: section.in_series,
            parallel: section.in_parallel,
            plane,
            facing: plane.facing(),
            mounting: match section.mounting {
                Mounted::Open => Mounting::Free,
                Mounted::Flush => Mounting::Flush,
            },
            power_per_k_stated: section.power_pct_per_k.is_some(),
            dirt: Percent(section.losses.dirt_pct),
            cable: Percent(section.losses.cable_pct),
            ageing: Percent(section.losses.ageing_pct),
            other: Percent(section.losses.other_pct),
            shade: Shade {
                morning: Percent(section.shading.morning_pct),
                midday: Percent(section.shading.midday_pct),
                afternoon: Percent(section.shading.afternoon_pct),
            },
            controller: section.controller.kind,
            limit: Amps(section.controller.limit_a),
            max_voltage: section.controller.max_v.map(Volts),
        }
    }

    /// Power of all modules in the standard test.
    #[must_use]
    pub fn rated(&self) -> Watts {
        self.module.power * (self.series * self.parallel)
    }

    /// Share that dirt, ageing and other losses leave of the light.
    #[must_use]
    pub fn light_kept(&self) -> f64 {
        self.dirt.remainder() * self.ageing.remainder() * self.other.remainder()
    }

    /// Light on the plane after shade and the glass, before dirt.
    #[must_use]
    pub fn light(&self, step: &SkyStep, albedo: f64) -> Irradiance {
        self.facing.irradiance(step, albedo) * self.shade.remainder(step)
    }

    /// Whether the strings' best point stands high enough over the bank for the controller to work.
    #[must_use]
    pub fn starts(&self, charging: Volts) -> bool {
        let best = self.module.best * self.series;
        match self.controller {
            ControllerKind::Mppt => best > charging + START_MARGIN,
            ControllerKind::Pwm => self.module.open * self.series > charging + SERIES_DROP,
        }
    }

    /// Open-circuit voltage of a string in the cold.
    #[must_use]
    pub fn cold_voltage(&self, lowest: Celsius) -> Volts {
        self.module.open_at(lowest) * self.series
    }

    /// What the array gives in a step to a bank that charges at this voltage.
    #[must_use]
    pub fn feed(&self, step: &SkyStep, albedo: f64, charging: Volts) -> Feed {
        let light = self.light(step, albedo);
        if light.0 <= 0.0 || !self.starts(charging) {
            return Feed::default();
        }
        let cell = cell_temperature(self.mounting, step.air, light);
        match self.controller {
            ControllerKind::Mppt => {
                let ratio = array_power_ratio(light, cell, self.module.power_per_k.0);
                let kept = self.light_kept() * self.cable.remainder() * MPPT_EFFICIENCY;
                let power = self.rated() * (ratio * kept);
                Feed { power: power.at_most(charging * self.limit), current: Amps::ZERO }
            }
            ControllerKind::Pwm => {
                let at = (charging / self.cable.remainder().max(0.1) + SERIES_DROP) / self.series;
                let current = self.module.current_at(at, light * self.light_kept(), cell);
                let current = (current * self.parallel).at_most(self.limit);
                Feed { power: Watts::ZERO, current }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn module() -> Module {
        Module {
            power: Watts(102.9),
            best: Volts(18.157),
            open: Volts(22.3),
            short: Amps(6.0975),
            power_per_k: POWER_PER_K,
        }
    }

    #[test]
    fn the_curve_goes_through_both_stated_points() {
        let (light, cell) = (STANDARD_LIGHT, STANDARD_CELL);
        assert_eq!(module().current_at(Volts(0.0), light, cell), Amps(6.0975));
        let best = module().current_at(module().best, light, cell);
        assert!((best.0 - 102.9 / 18.157).abs() < 1e-9);
        assert_eq!(module().current_at(Volts(22.3), light, cell), Amps::ZERO);
    }

    #[test]
    fn a_hot_or_dark_module_below_the_bank_gives_nothing() {
        assert_eq!(module().current_at(Volts(14.4), Irradiance(0.0), STANDARD_CELL), Amps::ZERO);
        assert_eq!(module().current_at(Volts(18.0), STANDARD_LIGHT, Celsius(120.0)), Amps::ZERO);
    }

    #[test]
    fn a_slip_in_the_data_sheet_keeps_the_curve_finite() {
        let section = Section {
            best_point_v: Some(20.0),
            open_circuit_v: Some(10.0),
            short_circuit_a: Some(0.1),
            ..Section::default()
        };
        let array = Array::parse(&section, 0);
        let current = array.module.current_at(Volts(13.0), STANDARD_LIGHT, STANDARD_CELL);
        assert!(current.0.is_finite() && current.0 > 0.0);
    }
}
