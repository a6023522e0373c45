//! The sections of a scenario as people save and share them. Each later room parses its own.
//!
//! Options that are `None` mean "the typical value of the kind"; they stay empty in files and links, so that a plan never
//! pretends that somebody measured what nobody did.

use chrono::NaiveDate;

use super::checks::Check;
use super::logged::Logbook;
use super::promise::Promise;
use super::schedule::{ClockTime, Schedule, When};
use super::sources::{Generator, Turbine};
use super::wiring::Wiring;
use crate::place::{Clock, SummerTime};

/// A whole scenario, format version 1.
#[derive(Clone, Debug, PartialEq)]
pub struct Document {
    /// The format's version; its key marks the file as ours.
    pub version: u32,
    /// What the person calls the plan.
    pub name: String,
    /// Where it stands.
    pub place: Place,
    /// When the run starts, and how full.
    pub start: Start,
    /// What is run.
    pub loads: Vec<Load>,
    /// Standing current of all small things that are always on \[A\].
    pub standing_a: f64,
    /// The inverter, if there is one.
    pub inverter: Option<Inverter>,
    /// What is stored.
    pub bank: Bank,
    /// Arrays, each with its controller.
    pub arrays: Vec<Array>,
    /// Charger on shore power or a grid.
    pub shore: Option<Charger>,
    /// Charger on the engine's alternator.
    pub alternator: Option<Charger>,
    /// Generator that starts and stops by the state of charge.
    pub generator: Option<Generator>,
    /// Small wind or water turbine.
    pub turbine: Option<Turbine>,
    /// What it shall keep, if somebody said so.
    pub promise: Option<Promise>,
    /// How it is wired, if somebody said so.
    pub wiring: Option<Wiring>,
    /// What was measured of it.
    pub checks: Vec<Check>,
    /// What its gauge was told and showed, if somebody wrote it down.
    pub logbook: Option<Logbook>,
}

/// Where the plan stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// What the person calls the place.
    pub name: String,
    /// Latitude \[°\], north positive.
    pub latitude_deg: f64,
    /// Longitude \[°\], east positive.
    pub longitude_deg: f64,
    /// Standard time less universal time \[min\].
    pub utc_offset_min: f64,
    /// The rule by which the clock is put forward in summer.
    pub summer_time: SummerTime,
    /// Own peak sun hours of the twelve mean days on the level \[kWh/m²\]; they override the climate.
    pub peak_sun_h: Option<[f64; 12]>,
    /// Own mean air temperatures of the twelve months \[°C\].
    pub temperature_c: Option<[f64; 12]>,
    /// Share of the light that the ground throws back \[%\].
    pub albedo_pct: f64,
    /// The inside is never colder than this \[°C\].
    pub inside_c: f64,
    /// Lowest temperature on record \[°C\]; without it the cold voltage of arrays can't be checked.
    pub record_low_c: Option<f64>,
    /// How high the horizon stands in twelve directions, every 30° clockwise from north \[°\]; level if not stated.
    pub horizon_deg: Option<[f64; 12]>,
}

impl Place {
    /// The clock that people there live by.
    #[must_use]
    pub fn clock(&self) -> Clock {
        Clock { utc_offset_min: self.utc_offset_min as i16, summer_time: self.summer_time }
    }
}

/// Grass, soil and town together \[%\]; the textbook's usual value.
const DEFAULT_ALBEDO: f64 = 20.0;

/// A frost-free room \[°C\].
const DEFAULT_INSIDE: f64 = 12.0;

/// When the run starts, and how full.
#[derive(Clone, Debug, PartialEq)]
pub struct Start {
    /// The first day, `2026-11-26`.
    pub date: NaiveDate,
    /// Clock time of that day.
    pub time: ClockTime,
    /// State of charge \[%\].
    pub charge_pct: f64,
}

/// How a load's power is stated.
#[derive(Clone, Debug, PartialEq)]
pub enum Rating {
    /// Watts that it takes while it runs.
    PowerW(f64),
    /// Amps at a voltage, as on a rating plate.
    Plate {
        /// Current \[A\].
        current_a: f64,
        /// Voltage \[V\].
        at_v: f64,
    },
    /// Energy of a year as on an energy label \[kWh\].
    LabelKwhPerYear(f64),
    /// Output that is sold by its effect, as a microwave oven's heat.
    Output {
        /// Power that comes out \[W\].
        power_w: f64,
        /// Share of the input that becomes output \[%\].
        efficiency_pct: f64,
    },
}

/// Whether a load hangs on the bank or on the inverter.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Supply {
    /// Direct current from the bank.
    #[default]
    Dc,
    /// Alternating current by the inverter.
    Ac,
}

/// Something that is run.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    /// A name of one's own; empty to take the appliance's.
    pub name: String,
    /// Frozen number of the appliance in the catalogue, for its name only.
    pub appliance: Option<u16>,
    /// Whether it is counted.
    pub on: bool,
    /// How many of it.
    pub quantity: f64,
    /// Its power.
    pub rating: Rating,
    /// What it hangs on.
    pub supply: Supply,
    /// Share of the time in which it really runs while it is on \[%\].
    pub duty_pct: f64,
    /// When it is on.
    pub schedule: Schedule,
    /// Its running power times this is its power at the start.
    pub surge: f64,
    /// For refrigeration: the temperatures by which its duty follows the heat.
    pub cooling: Option<Cooling>,
    /// Whether a life depends on it.
    pub vital: bool,
    /// On alternating current: power over volts times amps (ratio).
    pub power_factor: f64,
    /// The person's own group that it is listed in; empty for none. Nothing is computed from it.
    pub group: String,
}

/// What a refrigerator keeps, and for which air its figure holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cooling {
    /// Temperature inside \[°C\].
    pub inside_c: f64,
    /// Air temperature at which the duty or the label was stated \[°C\].
    pub reference_c: f64,
}

/// When the inverter is switched on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Awake {
    /// Only while one of its loads is on.
    #[default]
    WithLoads,
    /// Always.
    Always,
    /// While none of its loads is on it only looks for one, at a small draw.
    Search,
}

/// The inverter.
#[derive(Clone, Debug, PartialEq)]
pub struct Inverter {
    /// Continuous output \[W\].
    pub rated_w: f64,
    /// Short output for starting motors \[W\]; twice the continuous one if not stated.
    pub surge_w: Option<f64>,
    /// Draw when on and idle \[W\]; typical for the size if not stated.
    pub idle_w: Option<f64>,
    /// Efficiency at half load \[%\].
    pub efficiency_half_pct: Option<f64>,
    /// Efficiency at full load \[%\].
    pub efficiency_full_pct: Option<f64>,
    /// When it is on.
    pub awake: Awake,
    /// Draw while it looks for a load \[W\]; typical if not stated.
    pub search_w: Option<f64>,
}

/// What stores the charge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Chemistry {
    /// Lead-acid with liquid electrolyte.
    FloodedLeadAcid,
    /// Lead-acid with absorbent glass mat.
    Agm,
    /// Lead-acid with gelled electrolyte.
    Gel,
    /// Lithium iron phosphate.
    #[default]
    Lifepo4,
    /// Lithium nickel manganese cobalt oxide.
    Nmc,
    /// Sodium-ion.
    SodiumIon,
}

impl Chemistry {
    /// All of them, in the order of their link numbers.
    pub const ALL: &[Self; 6] =
        &[Self::FloodedLeadAcid, Self::Agm, Self::Gel, Self::Lifepo4, Self::Nmc, Self::SodiumIon];
}

/// Where the bank stands, which sets its temperature.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Kept {
    /// Inside: as warm as the air, but not colder than the inside.
    #[default]
    Inside,
    /// Outside: as warm as the air.
    Outside,
    /// At a temperature of its own \[°C\].
    AtC(f64),
}

/// What is stored.
#[derive(Clone, Debug, PartialEq)]
pub struct Bank {
    /// The chemistry.
    pub chemistry: Chemistry,
    /// Nominal voltage of one battery or cell \[V\].
    pub battery_v: f64,
    /// Rated capacity of one battery \[Ah\].
    pub capacity_ah: f64,
    /// Hours in which that capacity was measured \[h\]; usual for the chemistry if not stated.
    pub hour_rate_h: Option<f64>,
    /// Batteries in one string.
    pub in_series: f64,
    /// Strings side by side.
    pub in_parallel: f64,
    /// Capacity that age has left \[%\].
    pub health_pct: f64,
    /// State of charge that shall not be undercut \[%\]: the other side of the depth-of-discharge limit.
    pub reserve_pct: f64,
    /// Where it stands.
    pub kept: Kept,
    /// Continuous charge limit of one battery or its protection \[A\].
    pub charge_limit_a: Option<f64>,
    /// Continuous discharge limit of one battery or its protection \[A\].
    pub discharge_limit_a: Option<f64>,
    /// Peak discharge limit of one battery or its protection \[A\].
    pub peak_limit_a: Option<f64>,
    /// Draw of the protection circuit of one battery \[mA\].
    pub protection_ma: Option<f64>,
    /// Charge that comes out again, of the charge put in \[%\].
    pub charge_efficiency_pct: Option<f64>,
    /// Exponent of the loss of capacity with current.
    pub rate_exponent: Option<f64>,
    /// Charge lost by standing in a month \[%\].
    pub self_discharge_pct: Option<f64>,
    /// A second rated capacity of one battery \[Ah\]...
    pub second_capacity_ah: Option<f64>,
    /// ...and the hours in which it was measured \[h\]; neither goes without the other.
    pub second_hours_h: Option<f64>,
    /// A third rated capacity of one battery \[Ah\]...
    pub third_capacity_ah: Option<f64>,
    /// ...and its hours \[h\].
    pub third_hours_h: Option<f64>,
    /// Voltage of one battery that chargers hold until the current has faded, at 25 °C \[V\].
    pub absorption_v: Option<f64>,
    /// Current at which charging ends, of the rated capacity in an hour \[%\].
    pub tail_pct: Option<f64>,
    /// Voltage of one battery at which its protection or the inverter cuts loads off, whichever is higher \[V\].
    pub low_cut_off_v: Option<f64>,
}

/// How the modules are mounted, which sets how hot they get.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Mounting {
    /// Air behind them.
    #[default]
    Open,
    /// Close on a roof or deck.
    Flush,
}

/// The kind of charge controller.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ControllerKind {
    /// Series-regulating: the array works at the bank's voltage.
    Pwm,
    /// Maximum-power-point tracking.
    #[default]
    Mppt,
}

/// The charge controller of an array.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Controller {
    /// Its kind.
    pub kind: ControllerKind,
    /// Limit of its output current \[A\].
    pub limit_a: f64,
    /// Highest voltage that it takes from the array \[V\].
    pub max_v: Option<f64>,
}

/// Shade by the time of day: the share of the light that it takes \[%\].
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Shading {
    /// More than two hours before solar noon.
    pub morning_pct: f64,
    /// Within two hours of solar noon.
    pub midday_pct: f64,
    /// More than two hours after solar noon.
    pub afternoon_pct: f64,
}

/// Losses of an array by cause \[%\]; heat is computed, not stated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Losses {
    /// Dust, salt and droppings.
    pub dirt_pct: f64,
    /// Resistance between array and bank.
    pub cable_pct: f64,
    /// Years in the sun.
    pub ageing_pct: f64,
    /// Unequal modules, first-light loss, contacts.
    pub other_pct: f64,
}

impl Default for Losses {
    fn default() -> Self {
        Self { dirt_pct: 3.0, cable_pct: 2.0, ageing_pct: 3.0, other_pct: 3.0 }
    }
}

/// An array of modules with its controller.
#[derive(Clone, Debug, PartialEq)]
pub struct Array {
    /// Whether it is counted.
    pub on: bool,
    /// Power of one module \[W\].
    pub module_w: f64,
    /// Modules in one string.
    pub in_series: f64,
    /// Strings side by side.
    pub in_parallel: f64,
    /// Tilt, 0 is flat \[°\].
    pub tilt_deg: f64,
    /// Direction it faces, clockwise from north \[°\].
    pub azimuth_deg: f64,
    /// How it is mounted.
    pub mounting: Mounting,
    /// Voltage of one module at its best point \[V\]; typical for its size if not stated.
    pub best_point_v: Option<f64>,
    /// Open-circuit voltage of one module \[V\].
    pub open_circuit_v: Option<f64>,
    /// Short-circuit current of one module \[A\].
    pub short_circuit_a: Option<f64>,
    /// Change of power with each degree \[%\].
    pub power_pct_per_k: Option<f64>,
    /// Losses by cause.
    pub losses: Losses,
    /// Shade by the time of day.
    pub shading: Shading,
    /// Its charge controller.
    pub controller: Controller,
    /// Draw of that controller, by day and by night \[W\].
    pub controller_self_use_w: f64,
}

/// A charger that runs at times.
#[derive(Clone, Debug, PartialEq)]
pub struct Charger {
    /// Whether it is counted.
    pub on: bool,
    /// Output limit \[A\].
    pub limit_a: f64,
    /// When its source is there: hours on shore power, hours of driving.
    pub schedule: Schedule,
    /// What heat takes from the limit when it works for long \[%\].
    pub derating_pct: f64,
}

impl Default for Document {
    /// A blank plan: nothing runs, a common bank stores, nothing comes in.
    fn default() -> Self {
        Self {
            version: super::VERSION,
            name: String::new(),
            place: Place::default(),
            start: Start::default(),
            loads: Vec::new(),
            standing_a: 0.0,
            inverter: None,
            bank: Bank::default(),
            arrays: Vec::new(),
            shore: None,
            alternator: None,
            generator: None,
            turbine: None,
            promise: None,
            wiring: None,
            checks: Vec::new(),
            logbook: None,
        }
    }
}

impl Default for Place {
    fn default() -> Self {
        Self {
            name: String::new(),
            latitude_deg: 0.0,
            longitude_deg: 0.0,
            utc_offset_min: 0.0,
            summer_time: SummerTime::None,
            peak_sun_h: None,
            temperature_c: None,
            albedo_pct: DEFAULT_ALBEDO,
            inside_c: DEFAULT_INSIDE,
            record_low_c: None,
            horizon_deg: None,
        }
    }
}

impl Default for Start {
    fn default() -> Self {
        Self { date: super::first_date(), time: ClockTime(16 * 60), charge_pct: 100.0 }
    }
}

impl Default for Load {
    fn default() -> Self {
        Self {
            name: String::new(),
            appliance: None,
            on: true,
            quantity: 1.0,
            rating: Rating::PowerW(10.0),
            supply: Supply::Dc,
            duty_pct: 100.0,
            schedule: Schedule::daily(When::HoursPerDay(1.0)),
            surge: 1.0,
            cooling: None,
            vital: false,
            power_factor: 1.0,
            group: String::new(),
        }
    }
}

impl Default for Inverter {
    fn default() -> Self {
        Self {
            rated_w: 1000.0,
            surge_w: None,
            idle_w: None,
            efficiency_half_pct: None,
            efficiency_full_pct: None,
            awake: Awake::WithLoads,
            search_w: None,
        }
    }
}

impl Default for Bank {
    fn default() -> Self {
        Self {
            chemistry: Chemistry::Lifepo4,
            battery_v: 12.8,
            capacity_ah: 100.0,
            hour_rate_h: None,
            in_series: 1.0,
            in_parallel: 1.0,
            health_pct: 100.0,
            reserve_pct: 20.0,
            kept: Kept::Inside,
            charge_limit_a: None,
            discharge_limit_a: None,
            peak_limit_a: None,
            protection_ma: None,
            charge_efficiency_pct: None,
            rate_exponent: None,
            self_discharge_pct: None,
            second_capacity_ah: None,
            second_hours_h: None,
            third_capacity_ah: None,
            third_hours_h: None,
            absorption_v: None,
            tail_pct: None,
            low_cut_off_v: None,
        }
    }
}

impl Default for Array {
    fn default() -> Self {
        Self {
            on: true,
            module_w: 100.0,
            in_series: 1.0,
            in_parallel: 1.0,
            tilt_deg: 0.0,
            azimuth_deg: 180.0,
            mounting: Mounting::Open,
            best_point_v: None,
            open_circuit_v: None,
            short_circuit_a: None,
            power_pct_per_k: None,
            losses: Losses::default(),
            shading: Shading::default(),
            controller: Controller { kind: ControllerKind::Mppt, limit_a: 20.0, max_v: None },
            controller_self_use_w: 0.0,
        }
    }
}

impl Default for Charger {
    fn default() -> Self {
        Self {
            on: true,
            limit_a: 20.0,
            schedule: Schedule::daily(When::HoursPerDay(1.0)),
            derating_pct: 0.0,
        }
    }
}
