//! What acts in every hour of the weather years, on all sizes alike.

use crate::flat::flat;

/// Hours of a day.
pub const HOURS: usize = 24;

/// What acts in an hour on a bank of any size, beside an array of any size.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hour {
    /// Power of everything but the array: the turbine's less the loads' \[W\].
    pub power: f32,
    /// Power of the plan's array \[W\].
    pub sun_power: f32,
    /// Current of everything but the array \[A\].
    pub current: f32,
    /// Current of the plan's array \[A\].
    pub sun_current: f32,
    /// Share of the hour in which the generator may run.
    pub allowed: f32,
    /// 1 where the bank is warm enough to be charged, else 0.
    pub warm: f32,
    /// Kelvin over 25 °C, by which the absorption voltage goes.
    pub absorption: f32,
    /// Conductance of plates to charge over that at 25 °C.
    pub conducts: f32,
    /// Resistance to discharge over that at 25 °C.
    pub resists: f32,
    /// Whether anything at all comes in.
    pub brings: bool,
}

/// A day of hours, and what month it is in.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HoursOfDay {
    /// January being 0.
    pub month: u8,
    /// Its hours.
    pub hours: [Hour; HOURS],
}

flat!(Hour {
    power: f32,
    sun_power: f32,
    current: f32,
    sun_current: f32,
    allowed: f32,
    warm: f32,
    absorption: f32,
    conducts: f32,
    resists: f32,
    brings: bool,
});

flat!(HoursOfDay { month: u8, hours: [Hour; HOURS] });
