//! The single-diode model of a module, for comparison: five parameters at the standard test, moved to any light and cell
//! temperature by De Soto, Klein & Beckman 2006, Solar Energy 80:78, doi:10.1016/j.solener.2005.06.010.
//!
//! I = I_L − I_0 · (exp((U + I·R_s) / a) − 1) − (U + I·R_s) / R_sh, solved by halving.

/// Light of the standard test \[W/m²\].
const STANDARD_LIGHT: f64 = 1000.0;
/// Cell temperature of the standard test \[K\].
const STANDARD_KELVIN: f64 = 298.15;
/// 0 °C \[K\].
const FREEZING: f64 = 273.15;
/// Boltzmann's constant \[eV/K\].
const BOLTZMANN: f64 = 8.617_332_4e-5;
/// Halvings of an interval: more than a double can tell.
const HALVINGS: usize = 200;

/// Parameters at the standard test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reference {
    /// Change of the light current \[A/K\].
    pub alpha: f64,
    /// Modified ideality, of all cells in series \[V\].
    pub ideality: f64,
    /// Light current \[A\].
    pub light_current: f64,
    /// Saturation current of the diode \[A\].
    pub saturation: f64,
    /// Shunt resistance \[Ω\].
    pub shunt: f64,
    /// Series resistance \[Ω\].
    pub series: f64,
    /// Band gap \[eV\].
    pub gap: f64,
    /// Relative change of the band gap \[1/K\].
    pub gap_per_k: f64,
}

/// The five parameters in some light at some temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Diode {
    light_current: f64,
    saturation: f64,
    series: f64,
    shunt: f64,
    ideality: f64,
}

/// The best point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Best {
    /// Voltage \[V\].
    pub volts: f64,
    /// Current \[A\].
    pub amps: f64,
}

impl Best {
    /// Power \[W\].
    #[must_use]
    pub fn watts(&self) -> f64 {
        self.volts * self.amps
    }
}

impl Reference {
    /// The parameters in light \[W/m²\] at a cell temperature \[°C\].
    #[must_use]
    pub fn at(&self, light: f64, celsius: f64) -> Diode {
        let kelvin = celsius + FREEZING;
        let warmth = kelvin - STANDARD_KELVIN;
        let ratio = kelvin / STANDARD_KELVIN;
        let gap = self.gap * (1.0 + self.gap_per_k * warmth);
        let exponent = self.gap / (BOLTZMANN * STANDARD_KELVIN) - gap / (BOLTZMANN * kelvin);
        Diode {
            light_current: light / STANDARD_LIGHT * (self.light_current + self.alpha * warmth),
            saturation: self.saturation * ratio.powi(3) * exponent.exp(),
            series: self.series,
            shunt: self.shunt * STANDARD_LIGHT / light,
            ideality: self.ideality * ratio,
        }
    }
}

/// Where a falling function crosses zero between two ends.
fn zero(mut low: f64, mut high: f64, falling: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if falling(middle) > 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

impl Diode {
    /// Current at a voltage, never negative \[A\].
    #[must_use]
    pub fn current(&self, volts: f64) -> f64 {
        let balance = |amps: f64| {
            let inner = volts + amps * self.series;
            let diode = self.saturation * (inner / self.ideality).exp_m1();
            self.light_current - diode - inner / self.shunt - amps
        };
        if balance(0.0) <= 0.0 { 0.0 } else { zero(0.0, self.light_current, balance) }
    }

    /// Current at no voltage \[A\].
    #[must_use]
    pub fn short(&self) -> f64 {
        self.current(0.0)
    }

    /// Voltage at no current \[V\].
    #[must_use]
    pub fn open(&self) -> f64 {
        let most = self.ideality * (self.light_current / self.saturation).ln_1p();
        let balance = |volts: f64| {
            let diode = self.saturation * (volts / self.ideality).exp_m1();
            self.light_current - diode - volts / self.shunt
        };
        zero(0.0, most, balance)
    }

    /// The point of most power: where the slope of the power crosses zero.
    #[must_use]
    pub fn best(&self) -> Best {
        let slope = |volts: f64| {
            let amps = self.current(volts);
            let inner = volts + amps * self.series;
            let inward = self.saturation / self.ideality * (inner / self.ideality).exp()
                + self.shunt.recip();
            amps - volts * inward / (1.0 + inward * self.series)
        };
        let volts = zero(0.0, self.open(), slope);
        Best { volts, amps: self.current(volts) }
    }
}
