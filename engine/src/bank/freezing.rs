//! When the electrolyte of flooded lead-acid freezes: it bursts the case, and the bank is lost.
//!
//! **Question answered:** how cold may a bank get that has sunk to a state of charge?
//!
//! **Method.** Density of the electrolyte by state of charge and freezing point by density, both followed in straight lines. Two public
//! technical manuals state them: TM 5-1185 (tables II and III) and, for traction batteries, TM 10-6140-200-14 (table 1-1). They agree on
//! the densities of a full, three-quarter and half-full bank and, to 3 K over the whole range, on when each freezes; a quarter full
//! the second has the thinner acid, which freezes sooner, and is followed. **Range:** density 1.130 empty to 1.280 full, as in
//! temperate climates. **Left out:** sealed kinds, whose acid is denser; the tropics' thinner acid; that a cell freezes as slush
//! before it is hard.

use crate::quantity::{Celsius, Percent};

/// State of charge (ratio) and density \[kg/l\].
const DENSITIES: [(f64, f64); 5] =
    [(0.0, 1.130), (0.25, 1.160), (0.5, 1.220), (0.75, 1.250), (1.0, 1.280)];
/// Density \[kg/l\] and freezing point \[°C\]: 19, 5, -16, -62 and -90 °F.
const FREEZING: [(f64, f64); 5] =
    [(1.100, -7.2), (1.150, -15.0), (1.200, -26.7), (1.250, -52.2), (1.280, -67.8)];

/// The freezing point of the electrolyte at a state of charge.
#[must_use]
pub fn freezing_point(charge: Percent) -> Celsius {
    Celsius(along(&FREEZING, along(&DENSITIES, charge.ratio())))
}

/// A table followed in straight lines; its ends beyond them.
fn along(table: &[(f64, f64); 5], at: f64) -> f64 {
    let mut before = table[0];
    for &own in table {
        if at <= own.0 {
            let width = own.0 - before.0;
            let share = if width > 0.0 { ((at - before.0) / width).max(0.0) } else { 0.0 };
            return before.1 + share * (own.1 - before.1);
        }
        before = own;
    }
    before.1
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(percent: f64) -> f64 {
        freezing_point(Percent(percent)).0
    }

    #[test]
    fn the_tables_are_followed() {
        assert!((at(100.0) + 67.8).abs() < 1e-9);
        assert!((at(75.0) + 52.2).abs() < 1e-9);
        // 1.160 lies between 1.150 and 1.200, 1.130 between 1.100 and 1.150.
        assert!((at(25.0) + 17.34).abs() < 0.01);
        assert!((at(0.0) + 11.88).abs() < 0.01);
        assert_eq!((at(-5.0), at(200.0)), (at(0.0), at(100.0)));
        let steps: Vec<f64> = (0..=100).map(|percent| at(f64::from(percent))).collect();
        assert!(steps.is_sorted_by(|one, next| one > next), "fuller freezes later");
    }

    #[test]
    fn the_second_manual_agrees() {
        // Table 1-1 of TM 10-6140-200-14: state of charge [%] and freezing point [°F].
        for (percent, fahrenheit) in [(100.0, -95.0), (75.0, -62.0), (50.0, -31.0), (25.0, 1.0)] {
            let stated = (fahrenheit - 32.0) / 1.8;
            assert!(
                (at(percent) - stated).abs() < 3.0,
                "{percent} %: {} and {stated}",
                at(percent)
            );
        }
    }
}
