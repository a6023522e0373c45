//! Where chargers and controllers are set, by chemistry: typical of the trade, the maker's sheet first.

use crate::bank::Bank;
use crate::document::Chemistry;
use crate::quantity::{Celsius, Percent, Volts};

/// From the least to the most.
pub type Span = (Volts, Volts);

/// Whether cells are brought level at a higher voltage now and then.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Equalise {
    /// Under supervision, at such a voltage.
    Supervised(Span),
    /// Only where the maker's sheet says so.
    UnlessSheet,
    /// Never.
    Never,
}

/// Set-points for the whole bank at 25 °C.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChargerPoints {
    /// Voltage that is held until the current has faded, as the plan has it.
    pub absorption: Volts,
    /// What is usual of it.
    pub absorption_usual: Span,
    /// Voltage held after that; none where charging just ends.
    pub float: Option<Span>,
    /// Whether float may be left out.
    pub float_optional: bool,
    /// Bringing cells level.
    pub equalise: Equalise,
    /// Current at which absorption ends, of the rated capacity in an hour.
    pub tail: Percent,
    /// How much lower chargers hold for each kelvin over 25 °C; nothing but for lead-acid.
    pub by_kelvin: Volts,
    /// Voltage at which loads go off, as the plan has it.
    pub cut_off: Volts,
    /// What is usual of it.
    pub cut_off_usual: Span,
    /// Voltage at which they come on again.
    pub reconnect: Volts,
}

/// A row of the table: volts of so many cells in a row.
struct Row {
    cells: f64,
    absorption: (f64, f64),
    float: Option<(f64, f64)>,
    equalise: Option<(f64, f64)>,
    cut_off: (f64, f64),
    reconnect: f64,
}

const LEAD: Row = Row {
    cells: 6.0,
    absorption: (14.4, 14.8),
    float: Some((13.2, 13.5)),
    equalise: Some((15.0, 15.8)),
    cut_off: (11.0, 11.8),
    reconnect: 12.5,
};
const SEALED: (f64, f64) = (13.5, 13.8);

/// Rounded figures usual in the trade.
const fn row(chemistry: Chemistry) -> Row {
    match chemistry {
        Chemistry::FloodedLeadAcid => LEAD,
        Chemistry::Agm => {
            Row { absorption: (14.3, 14.7), float: Some(SEALED), equalise: None, ..LEAD }
        }
        Chemistry::Gel => {
            Row { absorption: (14.0, 14.2), float: Some(SEALED), equalise: None, ..LEAD }
        }
        Chemistry::Lifepo4 => Row {
            cells: 4.0,
            absorption: (14.0, 14.4),
            float: Some((13.4, 13.6)),
            equalise: None,
            cut_off: (11.2, 12.0),
            reconnect: 12.8,
        },
        Chemistry::Nmc => Row {
            cells: 1.0,
            absorption: (4.1, 4.2),
            float: None,
            equalise: None,
            cut_off: (3.0, 3.3),
            reconnect: 3.5,
        },
        Chemistry::SodiumIon => Row {
            cells: 1.0,
            absorption: (3.8, 3.95),
            float: None,
            equalise: None,
            cut_off: (1.5, 2.2),
            reconnect: 2.6,
        },
    }
}

impl ChargerPoints {
    /// Those of a bank.
    #[must_use]
    pub fn of(bank: &Bank) -> Self {
        let row = row(bank.chemistry);
        let volts = |of_row: f64| Volts(of_row / row.cells * bank.cells);
        let span = |(least, most): (f64, f64)| (volts(least), volts(most));
        let stated = bank.absorption_voltage(Celsius(25.0));
        Self {
            absorption: stated,
            absorption_usual: span(row.absorption),
            float: row.float.map(span),
            float_optional: bank.chemistry == Chemistry::Lifepo4,
            equalise: match (row.equalise, bank.chemistry) {
                (Some(own), _) => Equalise::Supervised(span(own)),
                (None, Chemistry::Agm) => Equalise::UnlessSheet,
                (None, _) => Equalise::Never,
            },
            tail: bank.set_points.tail,
            by_kelvin: stated - bank.absorption_voltage(Celsius(26.0)),
            cut_off: bank.low_voltage(),
            cut_off_usual: span(row.cut_off),
            reconnect: volts(row.reconnect),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document;

    #[test]
    fn what_a_plan_takes_for_typical_lies_in_what_is_usual() {
        for chemistry in Chemistry::ALL {
            let section = document::Bank { chemistry: *chemistry, ..document::Bank::default() };
            let bank = Bank::parse(&section).unwrap();
            let points = ChargerPoints::of(&bank);
            let inside = |value: Volts, (least, most): Span| {
                least <= value + Volts(1e-9) && value <= most + Volts(1e-9) && least < most
            };
            assert!(inside(points.absorption, points.absorption_usual), "{points:?}");
            assert!(inside(points.cut_off, points.cut_off_usual), "{points:?}");
            assert!(points.cut_off_usual.1 < points.reconnect, "{points:?}");
            assert!(points.float.is_none_or(|own| own.1 < points.absorption_usual.0));
            assert_eq!(points.by_kelvin.0 > 0.01, bank.lead_acid.is_some());
        }
    }

    #[test]
    fn batteries_in_a_row_stand_at_the_sum() {
        let section = document::Bank {
            chemistry: Chemistry::FloodedLeadAcid,
            battery_v: 12.0,
            in_series: 2.0,
            ..document::Bank::default()
        };
        let points = ChargerPoints::of(&Bank::parse(&section).unwrap());
        assert!((points.reconnect.0 - 25.0).abs() < 1e-9);
        let Equalise::Supervised((least, most)) = points.equalise else { panic!("{points:?}") };
        assert!((least.0 - 30.0).abs() < 1e-9 && (most.0 - 31.6).abs() < 1e-9);
    }
}
