//! What was measured before a system was trusted: readings, each of a check. What is to be measured is told by `gauge`.

use super::field::Field;

/// What was checked. Their places are frozen numbers of links: others only join at the end.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Checked {
    /// Voltage and sign where the bank is connected.
    #[default]
    Polarity,
    /// Posts, studs and lugs; done.
    Tightness,
    /// The insulation of an array; done.
    Insulation,
    /// The current with everything off.
    ZeroCurrent,
    /// The current of a load, by clamp meter and by gauge.
    LoadCurrent,
    /// Absorption voltage, read back.
    Absorption,
    /// Float voltage, read back.
    Float,
    /// Low cut-off, read back.
    CutOff,
    /// What the gauge shows after the first full charge.
    FirstFull,
    /// The drop over each string of batteries.
    DropBatteryString,
    /// That from the bank to the bus bars.
    DropBattery,
    /// That to the inverter.
    DropInverter,
    /// That to the panel.
    DropDistribution,
    /// That to a load.
    DropBranch,
    /// That from a controller.
    DropController,
    /// That from an array.
    DropArray,
    /// That from each string of modules.
    DropModuleString,
    /// That from the charger on the engine.
    DropAlternator,
    /// That from the charger on the mains.
    DropShore,
    /// That from the generator's charger.
    DropGenerator,
}

impl Checked {
    /// All of them in the order of their numbers.
    pub const ALL: [Self; 20] = [
        Self::Polarity,
        Self::Tightness,
        Self::Insulation,
        Self::ZeroCurrent,
        Self::LoadCurrent,
        Self::Absorption,
        Self::Float,
        Self::CutOff,
        Self::FirstFull,
        Self::DropBatteryString,
        Self::DropBattery,
        Self::DropInverter,
        Self::DropDistribution,
        Self::DropBranch,
        Self::DropController,
        Self::DropArray,
        Self::DropModuleString,
        Self::DropAlternator,
        Self::DropShore,
        Self::DropGenerator,
    ];

    /// What its figure is; none where it is done or not.
    #[must_use]
    pub const fn field(self) -> Option<Field> {
        match self {
            Self::Tightness | Self::Insulation => None,
            Self::ZeroCurrent | Self::LoadCurrent => Some(Field::CheckCurrent),
            Self::FirstFull => Some(Field::CheckCharge),
            _ => Some(Field::CheckVoltage),
        }
    }

    /// Whether it is of a load.
    const fn is_of_load(self) -> bool {
        matches!(self, Self::LoadCurrent | Self::DropBranch)
    }

    /// Whether it is of an array.
    const fn is_of_array(self) -> bool {
        matches!(
            self,
            Self::Insulation | Self::DropController | Self::DropArray | Self::DropModuleString
        )
    }
}

/// A reading.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Check {
    /// Of what.
    pub what: Checked,
    /// Of which load or array, by its place in the plan, from 0.
    pub of: Option<u16>,
    /// The figure, in the unit of its field; means nothing where it was done.
    pub read: f64,
    /// What the gauge showed beside the clamp meter; of a drop the current at which it was read \[A\].
    pub beside_a: Option<f64>,
}

/// Takes what was read of loads along when they move: each goes to where its load went, or goes with it.
pub fn loads_moved(checks: &mut Vec<Check>, to: &dyn Fn(u16) -> Option<u16>) {
    moved(checks, Checked::is_of_load, to);
}

/// Lets what was read of an array go with it.
pub fn array_removed(checks: &mut Vec<Check>, gone: u16) {
    moved(checks, Checked::is_of_array, &|own| (own != gone).then(|| own - u16::from(own > gone)));
}

fn moved(checks: &mut Vec<Check>, own: fn(Checked) -> bool, to: &dyn Fn(u16) -> Option<u16>) {
    checks.retain_mut(|check| {
        if own(check.what) {
            check.of = check.of.and_then(to);
            return check.of.is_some();
        }
        true
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn readings_follow_their_loads_and_arrays() {
        let of = |what, of| Check { what, of: Some(of), ..Check::default() };
        let bank = Check { read: 12.6, ..Check::default() };
        let mut checks = vec![
            bank.clone(),
            of(Checked::LoadCurrent, 0),
            of(Checked::DropBranch, 2),
            of(Checked::DropArray, 2),
            of(Checked::Insulation, 1),
        ];
        // The first load goes, and the second comes last.
        loads_moved(&mut checks, &|own| (own > 0).then(|| if own == 1 { 3 } else { own - 2 }));
        array_removed(&mut checks, 1);
        assert_eq!(checks, [bank, of(Checked::DropBranch, 0), of(Checked::DropArray, 1)]);
    }
}
