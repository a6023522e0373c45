//! What somebody sees, and what may be behind it.

/// What somebody sees.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Symptom {
    /// The gauge never reaches full.
    NeverFull,
    /// The inverter or the loads go off while the gauge shows plenty.
    CutsOutEarly,
    /// Full in the evening, empty in the morning.
    EmptyByMorning,
    /// The gauge shows full and lights are dim.
    FullButDim,
    /// The percentage jumps.
    Jumps,
    /// The percentage falls with everything off.
    FallsAtRest,
}

impl Symptom {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::NeverFull,
        Self::CutsOutEarly,
        Self::EmptyByMorning,
        Self::FullButDim,
        Self::Jumps,
        Self::FallsAtRest,
    ];

    /// Its name on a command line.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::NeverFull => "never-full",
            Self::CutsOutEarly => "cuts-out-early",
            Self::EmptyByMorning => "empty-by-morning",
            Self::FullButDim => "full-but-dim",
            Self::Jumps => "jumps",
            Self::FallsAtRest => "falls-at-rest",
        }
    }
}

/// What may be behind it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// By the plan itself less comes in than goes out.
    PlanShort,
    /// More is used than the plan says.
    UsesMore,
    /// The arrays bring less than they should.
    ArrayWeak,
    /// The bank holds less than its label.
    CapacityLost,
    /// The gauge was told another capacity.
    CapacitySet,
    /// The gauge was told another charge efficiency.
    EfficiencySet,
    /// The gauge was set to full while the bank was not.
    FalseFull,
    /// The gauge's conditions for full are never met.
    FullNotSeen,
    /// A charger or load hangs on the wrong side of the shunt while something charges.
    Bypass,
    /// A load hangs on the wrong side of the shunt.
    HiddenDrain,
    /// Something draws when everything is off.
    StandingDrain,
    /// The gauge shows a current where there is none.
    ZeroOff,
    /// A cell or a battery is failing.
    DyingCell,
    /// Cables, lugs or fuses drop too much voltage.
    CableDrop,
    /// The cut-off voltage is set too high.
    CutOffHigh,
    /// The loads pull the voltage down.
    DrawTooLarge,
    /// Charging ends too early or at too low a voltage.
    ChargeEndsEarly,
    /// It is too cold.
    TooCold,
    /// The bank discharges by itself.
    SelfDischarge,
}

impl Cause {
    /// All of them.
    pub const ALL: [Self; 19] = [
        Self::PlanShort,
        Self::UsesMore,
        Self::ArrayWeak,
        Self::CapacityLost,
        Self::CapacitySet,
        Self::EfficiencySet,
        Self::FalseFull,
        Self::FullNotSeen,
        Self::Bypass,
        Self::HiddenDrain,
        Self::StandingDrain,
        Self::ZeroOff,
        Self::DyingCell,
        Self::CableDrop,
        Self::CutOffHigh,
        Self::DrawTooLarge,
        Self::ChargeEndsEarly,
        Self::TooCold,
        Self::SelfDischarge,
    ];
}

/// Causes of a gauge that never reaches full.
const NEVER_FULL: &[(Cause, f64)] = &[
    (Cause::FullNotSeen, 4.0),
    (Cause::PlanShort, 3.0),
    (Cause::UsesMore, 3.0),
    (Cause::ArrayWeak, 3.0),
    (Cause::ChargeEndsEarly, 3.0),
    (Cause::Bypass, 2.0),
    (Cause::EfficiencySet, 2.0),
    (Cause::CapacitySet, 2.0),
    (Cause::TooCold, 1.0),
    (Cause::DyingCell, 1.0),
];

/// The causes of each symptom, with their weights.
pub(super) fn causes(symptom: Symptom) -> &'static [(Cause, f64)] {
    use Cause as C;
    match symptom {
        Symptom::NeverFull => NEVER_FULL,
        Symptom::CutsOutEarly => &[
            (C::CapacityLost, 4.0),
            (C::CableDrop, 4.0),
            (C::FalseFull, 3.0),
            (C::DyingCell, 3.0),
            (C::DrawTooLarge, 3.0),
            (C::CutOffHigh, 2.0),
            (C::CapacitySet, 2.0),
            (C::HiddenDrain, 2.0),
            (C::TooCold, 2.0),
        ],
        Symptom::EmptyByMorning => &[
            (C::UsesMore, 4.0),
            (C::StandingDrain, 3.0),
            (C::CapacityLost, 3.0),
            (C::PlanShort, 3.0),
            (C::FalseFull, 2.0),
            (C::ChargeEndsEarly, 2.0),
            (C::HiddenDrain, 2.0),
            (C::TooCold, 1.0),
            (C::DyingCell, 1.0),
        ],
        Symptom::FullButDim => &[
            (C::FalseFull, 4.0),
            (C::CableDrop, 4.0),
            (C::DyingCell, 4.0),
            (C::CapacityLost, 3.0),
            (C::HiddenDrain, 2.0),
            (C::DrawTooLarge, 1.0),
        ],
        Symptom::Jumps => &[
            (C::FalseFull, 4.0),
            (C::EfficiencySet, 3.0),
            (C::Bypass, 3.0),
            (C::CapacitySet, 2.0),
            (C::HiddenDrain, 2.0),
            (C::ZeroOff, 2.0),
            (C::CapacityLost, 1.0),
        ],
        Symptom::FallsAtRest => &[
            (C::StandingDrain, 5.0),
            (C::ZeroOff, 3.0),
            (C::SelfDischarge, 1.0),
            (C::DyingCell, 1.0),
        ],
    }
}
