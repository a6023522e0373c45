//! The section of how a plan is wired: by which rules, in which surroundings, and how long the runs are.

/// Whose tables say how much a conductor may carry.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum WiredBy {
    /// Those that the plan's kind suggests.
    #[default]
    Usual,
    /// Those of boats.
    Marine,
    /// Those of vehicles.
    Vehicle,
    /// Those of buildings.
    Land,
}

impl WiredBy {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Usual, Self::Marine, Self::Vehicle, Self::Land];
}

/// For which temperature the insulation of cables is made.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum CableInsulation {
    /// What is usual by the tables.
    #[default]
    Usual,
    /// 60 °C.
    C60,
    /// 75 °C.
    C75,
    /// 90 °C.
    C90,
    /// 105 °C.
    C105,
}

impl CableInsulation {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Usual, Self::C60, Self::C75, Self::C90, Self::C105];
}

/// How many conductors that carry current lie together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Bundled {
    /// Plus and minus of a run side by side.
    #[default]
    Usual,
    /// Each alone in free air.
    Alone,
    /// Four to six.
    UpTo6,
    /// Seven to twenty-four.
    UpTo24,
    /// More than that.
    More,
}

impl Bundled {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Usual, Self::Alone, Self::UpTo6, Self::UpTo24, Self::More];
}

/// How a plan is wired; what is not stated is as usual.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wiring {
    /// Whose tables.
    pub tables: WiredBy,
    /// The insulation.
    pub insulation: CableInsulation,
    /// How many lie together.
    pub bundle: Bundled,
    /// Whether bank and runs are in a space with an engine.
    pub engine_space: bool,
    /// The hottest air around the runs \[°C\].
    pub ambient_c: Option<f64>,
    /// The maker's figure for the short circuit of the whole bank \[A\].
    pub short_circuit_a: Option<f64>,
    /// The cold-cranking amps of all batteries together \[A\].
    pub cranking_a: Option<f64>,
    /// Lengths one way \[m\]: of the bank to the bus bars.
    pub battery_m: Option<f64>,
    /// The bus bars to the inverter.
    pub inverter_m: Option<f64>,
    /// The bus bars to the panel that distributes.
    pub panel_m: Option<f64>,
    /// The panel to each load.
    pub load_m: Option<f64>,
    /// Each charge controller to the bus bars.
    pub controller_m: Option<f64>,
    /// Each array to its controller.
    pub array_m: Option<f64>,
    /// Each charger to the bus bars.
    pub charger_m: Option<f64>,
}
