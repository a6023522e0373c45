//! The names in a plan's file: which fields an object has, in the order in which they are written, and when one may be
//! left out.
//!
//! The order is for people who open a file; the walk has its own, which links depend on.

/// Whether a field stands in a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Presence {
    /// A file without it is refused.
    Needed,
    /// A file may lack it and then gets its default; it is always written.
    Told,
    /// A file may lack it and then gets its default; it is written only where it differs.
    Spared,
}

/// A field of an object in a file.
#[derive(Clone, Copy, Debug)]
pub(super) struct Key {
    pub(super) name: &'static str,
    pub(super) presence: Presence,
}

/// The fields of an object, in the order in which they are written.
pub(super) type Keys = &'static [Key];

/// The forms that a value may take: a bare word, or an object whose one field is named after the form.
#[derive(Clone, Copy, Debug)]
pub(super) struct Forms {
    /// Their names, in the order of their link numbers.
    pub(super) names: &'static [&'static str],
    /// As bits, those that are a bare word.
    pub(super) bare: u32,
}

impl Forms {
    /// The name of a form and whether it is a bare word.
    pub(super) fn form(&self, kind: u32) -> (&'static str, bool) {
        let name = self.names.get(kind as usize).copied().unwrap_or_default();
        (name, self.bare >> kind & 1 == 1)
    }
}

const fn needed(name: &'static str) -> Key {
    Key { name, presence: Presence::Needed }
}

const fn told(name: &'static str) -> Key {
    Key { name, presence: Presence::Told }
}

const fn spared(name: &'static str) -> Key {
    Key { name, presence: Presence::Spared }
}

pub(super) const DOCUMENT: Keys = &[
    needed("sunlarder"),
    told("name"),
    needed("place"),
    needed("start"),
    told("loads"),
    spared("standing_a"),
    spared("inverter"),
    needed("bank"),
    told("arrays"),
    spared("shore"),
    spared("alternator"),
    spared("generator"),
    spared("turbine"),
    spared("promise"),
    spared("wiring"),
    spared("checks"),
    spared("logbook"),
];

pub(super) const PLACE: Keys = &[
    told("name"),
    needed("latitude_deg"),
    needed("longitude_deg"),
    told("utc_offset_min"),
    told("summer_time"),
    spared("peak_sun_h"),
    spared("temperature_c"),
    told("albedo_pct"),
    told("inside_c"),
    spared("record_low_c"),
    spared("horizon_deg"),
];

pub(super) const START: Keys = &[needed("date"), needed("time"), needed("charge_pct")];

pub(super) const LOAD: Keys = &[
    spared("name"),
    spared("appliance"),
    spared("on"),
    spared("quantity"),
    needed("rating"),
    told("supply"),
    spared("duty_pct"),
    needed("schedule"),
    spared("surge"),
    spared("cooling"),
    spared("vital"),
    spared("power_factor"),
    spared("group"),
];

pub(super) const PLATE: Keys = &[needed("current_a"), needed("at_v")];
pub(super) const OUTPUT: Keys = &[needed("power_w"), needed("efficiency_pct")];
pub(super) const COOLING: Keys = &[needed("inside_c"), needed("reference_c")];
pub(super) const SCHEDULE: Keys = &[needed("when"), spared("days"), spared("months")];

pub(super) const INVERTER: Keys = &[
    needed("rated_w"),
    spared("surge_w"),
    spared("idle_w"),
    spared("efficiency_half_pct"),
    spared("efficiency_full_pct"),
    told("awake"),
    spared("search_w"),
];

pub(super) const BANK: Keys = &[
    needed("chemistry"),
    needed("battery_v"),
    needed("capacity_ah"),
    spared("hour_rate_h"),
    spared("second_capacity_ah"),
    spared("second_hours_h"),
    spared("third_capacity_ah"),
    spared("third_hours_h"),
    spared("in_series"),
    spared("in_parallel"),
    spared("health_pct"),
    needed("reserve_pct"),
    told("kept"),
    spared("charge_limit_a"),
    spared("discharge_limit_a"),
    spared("peak_limit_a"),
    spared("protection_ma"),
    spared("charge_efficiency_pct"),
    spared("rate_exponent"),
    spared("self_discharge_pct"),
    spared("absorption_v"),
    spared("tail_pct"),
    spared("low_cut_off_v"),
];

pub(super) const ARRAY: Keys = &[
    spared("on"),
    needed("module_w"),
    spared("in_series"),
    spared("in_parallel"),
    needed("tilt_deg"),
    needed("azimuth_deg"),
    told("mounting"),
    spared("best_point_v"),
    spared("open_circuit_v"),
    spared("short_circuit_a"),
    spared("power_pct_per_k"),
    told("losses"),
    told("shading"),
    needed("controller"),
    spared("controller_self_use_w"),
];

pub(super) const LOSSES: Keys =
    &[needed("dirt_pct"), needed("cable_pct"), needed("ageing_pct"), needed("other_pct")];
pub(super) const SHADING: Keys = &[told("morning_pct"), told("midday_pct"), told("afternoon_pct")];
pub(super) const CONTROLLER: Keys = &[needed("kind"), needed("limit_a"), spared("max_v")];
pub(super) const CHARGER: Keys =
    &[spared("on"), needed("limit_a"), needed("schedule"), spared("derating_pct")];
pub(super) const GENERATOR: Keys = &[
    spared("on"),
    needed("limit_a"),
    needed("start_pct"),
    needed("stop_pct"),
    told("minimum_run_min"),
    told("schedule"),
    spared("fuel_l_per_h"),
    spared("fuel_l_per_kwh"),
];
pub(super) const TURBINE: Keys = &[spared("on"), needed("output"), spared("hours")];

pub(super) const PROMISE: Keys = &[
    needed("what"),
    spared("chance_pct"),
    spared("months"),
    spared("bank_price"),
    spared("array_price"),
    spared("bank_kg"),
    spared("array_kg"),
];

pub(super) const WIRING: Keys = &[
    spared("tables"),
    spared("insulation"),
    spared("bundle"),
    spared("engine_space"),
    spared("ambient_c"),
    spared("bank_short_circuit_a"),
    spared("cranking_a"),
    spared("battery_m"),
    spared("inverter_m"),
    spared("panel_m"),
    spared("load_m"),
    spared("controller_m"),
    spared("array_m"),
    spared("charger_m"),
];
pub(super) const WIRED_BY: [&str; 4] = ["usual", "marine", "vehicle", "land"];
pub(super) const INSULATION: [&str; 5] = ["usual", "60_c", "75_c", "90_c", "105_c"];
pub(super) const BUNDLED: [&str; 5] = ["usual", "alone", "up_to_6", "up_to_24", "more"];

pub(super) const CHECK: Keys = &[needed("read"), spared("of"), spared("beside_a")];
pub(super) const CHECKED: &Forms = &Forms {
    names: &[
        "polarity_v",
        "tightness",
        "insulation",
        "zero_current_a",
        "load_current_a",
        "absorption_v",
        "float_v",
        "cut_off_v",
        "first_full_pct",
        "drop_battery_string_v",
        "drop_battery_v",
        "drop_inverter_v",
        "drop_distribution_v",
        "drop_branch_v",
        "drop_controller_v",
        "drop_array_v",
        "drop_module_string_v",
        "drop_alternator_v",
        "drop_shore_v",
        "drop_generator_v",
    ],
    bare: 0b110,
};
pub(super) const LOGBOOK: Keys =
    &[spared("gauge_capacity_ah"), spared("gauge_efficiency_pct"), spared("readings")];
pub(super) const READING: Keys =
    &[needed("date"), needed("time"), told("shown"), spared("bank_v"), spared("into_a")];
pub(super) const SHOWN: &Forms =
    &Forms { names: &["nothing", "charge_pct", "left_ah", "taken_ah"], bare: 0b0001 };

pub(super) const PROMISED: &Forms =
    &Forms { names: &["through", "short_days", "without_sun", "trip"], bare: 0b0001 };
pub(super) const RATING: &Forms =
    &Forms { names: &["power_w", "plate", "label_kwh_per_year", "output"], bare: 0 };
pub(super) const WHEN: &Forms =
    &Forms { names: &["hours_per_day", "always", "spans"], bare: 0b010 };
pub(super) const KEPT: &Forms = &Forms { names: &["inside", "outside", "at_c"], bare: 0b011 };

pub(super) const TURBINE_OUTPUT: &Forms = &Forms { names: &["mean_w", "ah_per_day"], bare: 0 };

pub(super) const CHEMISTRY: [&str; 6] =
    ["flooded_lead_acid", "agm", "gel", "lifepo4", "nmc", "sodium_ion"];
pub(super) const SUMMER_TIME: [&str; 10] = [
    "none",
    "europe",
    "north_america",
    "australia",
    "lord_howe",
    "new_zealand",
    "chile",
    "egypt",
    "israel",
    "palestine",
];
pub(super) const SUPPLY: [&str; 2] = ["dc", "ac"];
pub(super) const AWAKE: [&str; 3] = ["with_loads", "always", "search"];
pub(super) const MOUNTING: [&str; 2] = ["open", "flush"];
pub(super) const CONTROLLER_KIND: [&str; 2] = ["mppt", "pwm"];
/// Days of the week, Monday first.
pub(super) const DAYS: [&str; 7] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
